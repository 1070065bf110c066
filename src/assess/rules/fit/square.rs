//! Whether an opening is square and its sides upright.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{Opening, Room};
use crate::finding::{Remark, phrase};
use crate::site::fitting::{OutOfSquare, Skew, out_of_square};
use crate::units::Length;

declare! {
    /// The opening is out of square, or its sides lean
    ///
    /// ## What it checks
    /// The difference of the two diagonals, and how far each side wanders from the plumb line over
    /// its height, against the figure of the maker's sheet, or {1/8"} where it gives none. Where both
    /// are out, the diagonals are told: one fault, one finding. Exactly {1/8"} passes.
    ///
    /// ## Why it matters
    /// A square front in an opening that leans shows a wedge of light, and a door scrapes.
    ///
    /// ## Remedy
    /// Have the opening trued before the thing is delivered, or plan trim that is scribed to it.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   oven: {takes: wall oven, diagonals: [46 7/8", 47 1/16"]}
    /// ```
    /// The diagonals differ by {3/16"}.
    ///
    /// ## Source
    /// The maker's own sheet; else common practice: {1/8"}.
    "fit/square", Query,
    due: WithThing, tells: [Installer],
    judges: placed,
    sources: ["the maker's sheet", "common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(room.openings.iter().filter_map(|opening| judge(context, room, opening)));
    }
}

fn judge(context: &Context<'_>, room: &Room, opening: &Opening) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let skew = out_of_square(room, opening).filter(OutOfSquare::is_too_far)?;
    let (what, verb) = match skew.by {
        Skew::Diagonals => ("the diagonals of the opening", "differ"),
        Skew::Side => ("over its height, a side of the opening", "leans"),
    };
    let (whose, source) = match skew.of_sheet {
        true => ("the maker's sheet allows", "the maker's sheet"),
        false => ("is usual", "common practice"),
    };
    // What is usual is told in the book's round figure.
    let usual = context.book.project.units.usual(skew.within, Length::from_millimetres(3));
    let within = if skew.of_sheet { skew.within } else { usual };
    let (name, out, within) = (&opening.name.value, say(skew.out), say(within));
    let message = phrase!(
        "{what} `{name}` {verb} by {out}, more than the {within} that {whose}",
        what,
        name,
        verb,
        out,
        within,
        whose
    );
    let finding = Remark::query(skew.at, message).room(&room.folder).opening(&opening.name);
    Some(finding.source(source).remedy("have the opening trued before delivery, or plan trim that is scribed to it"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn oven(opening: &str, option: &str) -> Trial {
        Trial::of("fit/square")
            .opening("oven", &format!("{{takes: wall oven, {opening}}}"))
            .selection("selection: Oven\nkind: wall oven\nplace: oven", option)
    }

    /// Source: trade reports section 3, Square (two diagonals differ by at most 1/8").
    #[test]
    fn diagonals_that_differ_by_more_than_an_eighth_are_asked_about() {
        oven("diagonals: [46 7/8\", 47 1/16\"]", "maker: Vessary")
            .finds("the diagonals of the opening `oven` differ by 3/16\" (4.8 mm), more than the 1/8\" (3.2 mm) that is usual")
            .weighs("query");
        oven("diagonals: [47\", 46 7/8\"]", "maker: Vessary").stays_silent();
    }

    /// Source: trade reports section 3, Plumb (1/8" over the height).
    #[test]
    fn a_side_that_leans_by_more_than_an_eighth_is_asked_about() {
        let plumb = |right: &str| format!("plumb: {{left: [1\", 1\", 1\"], right: [31\", 31\", {right}]}}");
        oven(&plumb("31 9/64\""), "maker: Vessary").finds_one().weighs("query");
        oven(&plumb("31 1/8\""), "maker: Vessary").stays_silent();
    }

    #[test]
    fn a_stricter_sheet_counts_before_the_usual_figure_though_the_client_still_chooses() {
        let two = "options:\n  - {id: strict, fit: {square: 1/16\"}}\n  - {id: lax}";
        oven("diagonals: [47\", 46 7/8\"]", two).finds_one().weighs("query");
        oven("diagonals: [47\", 46 15/16\"]", two).stays_silent();
    }

    #[test]
    fn what_leans_and_is_out_of_square_is_told_once() {
        oven("diagonals: [47\", 48\"], plumb: {left: [1\", 2\"], right: [31\", 31\"]}", "maker: Vessary").finds_one();
    }
}
