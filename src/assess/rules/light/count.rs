//! How many pendants hang over an island.

use super::{Hung, hung, spacing};
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::HangsOver;
use crate::finding::{Remark, Severity, phrase};
use crate::units::Length;

declare! {
    /// More or fewer pendants than such an island usually takes
    ///
    /// ## What it checks
    /// How many pendants hang over an island, a counter or a table, by its length and their width. Of
    /// what the table gives, as many are asked for as `light/spacing` leaves apart.
    ///
    /// | length | {15"} and wider | {9"} to {14"} | up to {8"} |
    /// | --- | --- | --- | --- |
    /// | {4 ft} to under {6 ft} | 1 | 1 or 2 | 2 |
    /// | {6 ft} to under {7 ft} | 2 | 2 | 2 |
    /// | {7 ft} to under {9 ft} | 2 | 2 or 3 | 3 |
    /// | {9 ft} to under {11 ft} | 2 | 2 or 3 | 3 or 4 |
    /// | {11 ft} to {12 ft} | 2 or 3 | 3 | 3 or 4 |
    ///
    /// ## Why it matters
    /// Two small lights over a long island look forgotten; four wide ones are a ceiling of their own.
    /// The boxes are in the ceiling before anybody sees it.
    ///
    /// ## Remedy
    /// Choose the number or the width with the elevation in front of you.
    ///
    /// ## Example
    /// ```yaml
    /// hangs: {over: island, length: 10'}
    /// size: {diameter: 8"}
    /// quantity: 2     # three or four are usual
    /// ```
    ///
    /// ## Source
    /// Common practice.
    "light/count", Note,
    due: RoughInClosed, tells: [Client],
    living: "living.light.count",
    judges: [Pendant],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// Length in feet from which a row holds, then least and most for wide, middling and small ones.
const USUAL: [(i64, [(usize, usize); 3]); 5] = [
    (4, [(1, 1), (1, 2), (2, 2)]),
    (6, [(2, 2), (2, 2), (2, 2)]),
    (7, [(2, 2), (2, 3), (3, 3)]),
    (9, [(2, 2), (2, 3), (3, 4)]),
    (11, [(2, 3), (3, 3), (3, 4)]),
];
/// Past this the table says nothing.
const LONGEST: Length = Length::from_inches(12 * 12);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(hung(context).filter_map(|hung| judge(context, &hung)));
}

fn judge(context: &Context<'_>, hung: &Hung<'_>) -> Option<Remark> {
    if !(hung.over_work() || hung.hangs.over.get() == Some(&HangsOver::Table)) {
        return None;
    }
    let (length, count, diameter) = (*hung.hangs.length.get()?, hung.count()?, hung.diameter()?);
    let (least, most) = usual(length, diameter)?;
    if (least..=most).contains(&count) {
        return None;
    }
    let units = context.book.project.units;
    // What `light/spacing` would tell as close is not asked for here.
    let most = (least..=most).rev().find(|count| !spacing::is_close(length, *count, diameter)).unwrap_or(least);
    let asked = if least == most { phrase!("{least}", least) } else { phrase!("{least} or {most}", least, most) };
    let message = phrase!(
        "{count} of `{}`, {} wide, hang over {}; {asked} are usual",
        count,
        hung.selection.name.value,
        say(diameter, units),
        say(length, units),
        asked
    );
    let at = hung.selection.hangs.span().unwrap_or(hung.selection.span);
    let finding = about(hung.room, hung.selection, hung.option, Severity::Note, at, message);
    Some(
        finding
            .source("common practice")
            .remedy("look at the elevation with other numbers and widths, then keep what looks right"),
    )
}

/// The least and the most that usually hang over something so long, by the width of one.
pub(super) fn usual(length: Length, diameter: Length) -> Option<(usize, usize)> {
    let row = USUAL.iter().rev().find(|(feet, _)| length >= Length::from_inches(feet * 12))?;
    let [wide, middling, small] = row.1;
    let usual = if diameter >= Length::from_inches(15) {
        wide
    } else if diameter > Length::from_inches(8) {
        middling
    } else {
        small
    };
    (length <= LONGEST).then_some(usual)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn island(length: &str, diameter: &str, count: u32) -> Trial {
        Trial::of("light/count").selection(
            &format!("selection: Pendants\nkind: pendant\nhangs: {{over: island, length: {length}}}"),
            &format!("size: {{diameter: {diameter}}}\nquantity: {count}"),
        )
    }

    /// Common practice: over ten feet two of 15 to 16", or three, perhaps four, of 6 to 8".
    #[test]
    fn over_ten_feet_two_wide_ones_or_three_or_four_small_ones() {
        island("10'", "16\"", 2).stays_silent();
        island("10'", "8\"", 3).stays_silent();
        island("10'", "8\"", 4).stays_silent();
        island("10'", "8\"", 2)
            .finds("2 of `Pendants`, 8\" (203 mm) wide, hang over 120\" (3048 mm); 3 are usual")
            .weighs("note");
        island("10'", "16\"", 4).finds_one();
    }

    /// Source: trade reports section 7: 4 to 5 ft one large or two small; 6 ft two.
    #[test]
    fn short_islands_take_one_large_or_two_small() {
        island("5'", "16\"", 1).stays_silent();
        island("5'", "8\"", 2).stays_silent();
        island("5'", "16\"", 2).finds_one();
        island("6'", "12\"", 2).stays_silent();
        island("14'", "12\"", 9).stays_silent();
    }

    /// What one rule calls usual, the other does not call close: over every length, with every width.
    #[test]
    fn what_is_asked_for_is_not_refused_by_the_spacing() {
        for feet in 4..=12 {
            for diameter in [4, 6, 8, 10, 12, 15, 18] {
                let trial = |rule: &'static str, count: usize, at: &str| {
                    Trial::of(rule).selection(
                        &format!("selection: Pendants\nkind: pendant\nhangs: {{over: island, length: {feet}'{at}}}"),
                        &format!("size: {{diameter: {diameter}\"}}\nquantity: {count}"),
                    )
                };
                let found = trial("light/count", 9, "").run();
                let [finding] = found.findings() else { panic!("{feet}' and {diameter}\": {:?}", found.findings()) };
                let asked = finding.message.text().rsplit("; ").next().unwrap().trim_end_matches(" are usual");
                for count in asked.split(" or ").map(|count| count.parse::<usize>().unwrap()) {
                    let step = feet * 12 * 2 / count;
                    let centres: Vec<String> = (0..count).map(|at| format!("{}\"", step * (2 * at + 1) / 4)).collect();
                    let at = format!(", at: [{}]", centres.join(", "));
                    trial("light/spacing", count, &at).stays_silent();
                    trial("light/count", count, &at).stays_silent();
                }
            }
        }
    }
}
