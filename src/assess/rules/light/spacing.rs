//! Where pendants hang along an island.

use super::{Hung, count, hung};
use crate::assess::codes::metric;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::units::Length;

declare! {
    /// Pendants are not spaced evenly, or hang close together
    ///
    /// ## What it checks
    /// The centres given with `at`, against equal division of the length (half a share from each end,
    /// one share between), to {1"}; and the clear gap between two, which is usually {24"} to {30"}; the
    /// fewest that `light/count` calls usual may hang as close as equal division sets them.
    ///
    /// ## Why it matters
    /// The boxes go into the ceiling before the island stands. {1"} out is seen from the door.
    ///
    /// ## Remedy
    /// Give the electrician the centres of equal division, from the end of the island as built.
    ///
    /// ## Example
    /// ```yaml
    /// hangs: {over: island, length: 96", at: [18", 48", 78"]}     # 16", 48", 80" are equal
    /// ```
    ///
    /// ## Source
    /// Equal division: geometry, from memory. The gap of {24"} to {30"}: trade pages, common practice.
    "light/spacing", Note,
    due: RoughInClosed, tells: [Client],
    living: "living.light.spacing",
    judges: [Pendant],
    sources: ["from memory: geometry", "common practice"],
    caution: None,
    Check::Book(check)
}

/// How far a centre may be from equal division (common practice).
const NEAR: Length = Length::from_inches(1);
/// The least clear gap that is usual between two pendants (common practice).
const GAP: Length = Length::from_inches(24);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(hung(context).filter_map(|hung| uneven(context, &hung).or_else(|| close(context, &hung))));
}

/// The clear gap between two of so many that divide a length equally.
fn gap_of(length: Length, count: usize, diameter: Length) -> Length {
    match equal(length, count).as_slice() {
        [one, next, ..] => *next - *one - diameter,
        _ => length,
    }
}

/// Whether so many, evenly spaced, hang closer than is usual.
pub(super) fn is_close(length: Length, count: usize, diameter: Length) -> bool {
    count > 1 && gap_of(length, count, diameter) < GAP
}

/// The centres of so many things that divide a length equally.
fn equal(length: Length, count: usize) -> Vec<Length> {
    let parts = i64::try_from(count).unwrap_or(i64::MAX).saturating_mul(2);
    let centre =
        |number: i64| Some(Length::from_nanometres(length.nanometres().checked_mul(number)?.checked_div(parts)?));
    (0..count).filter_map(|at| centre(i64::try_from(at).ok()?.checked_mul(2)?.checked_add(1)?)).collect()
}

fn uneven(context: &Context<'_>, hung: &Hung<'_>) -> Option<Remark> {
    let (length, at) = (*hung.hangs.length.get()?, hung.hangs.at.spanned()?);
    let wanted = equal(length, at.value.0.len());
    let out = at.value.0.iter().zip(&wanted).find(|(there, wanted)| (there.value - **wanted).abs() > NEAR)?;
    let units = context.book.project.units;
    let all = wanted.iter().map(|wanted| say(*wanted, units));
    let message = phrase!(
        "one of `{}` hangs {} from the end; equal division puts them at {}",
        hung.selection.name.value,
        say(out.0.value, units),
        Phrase::joined(all, ", ")
    );
    let finding = about(hung.room, hung.selection, hung.option, Severity::Note, out.0.span, message);
    Some(finding.remedy("give the electrician the centres of equal division, or say why they are not equal"))
}

fn close(context: &Context<'_>, hung: &Hung<'_>) -> Option<Remark> {
    let (at, diameter) = (hung.hangs.at.spanned()?, hung.diameter()?);
    let steps = at.value.0.windows(2).filter_map(|pair| match pair {
        [one, next] => Some((next.value - one.value).abs()),
        _ => None,
    });
    let gap = steps.min()? - diameter;
    // The fewest that are usual over something so long stand as close as equal division sets them.
    let fewest = hung.hangs.length.get().and_then(|length| Some((*length, count::usual(*length, diameter)?.0)));
    let least = fewest.map_or(GAP, |(length, fewest)| GAP.min(gap_of(length, fewest, diameter) - NEAR));
    let units = context.book.project.units;
    let usual = metric::advised(GAP, gap, units);
    if gap >= least.min(usual) {
        return None;
    }
    let message = phrase!(
        "between two of `{}` {} stay clear; {} to {} are usual",
        hung.selection.name.value,
        say(gap, units),
        say(usual, units),
        say(Length::from_inches(30), units)
    );
    let finding = about(hung.room, hung.selection, hung.option, Severity::Note, at.span, message);
    Some(finding.source("common practice").remedy("take one less, or narrower ones"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn island(at: &str, diameter: &str) -> Trial {
        Trial::of("light/spacing").selection(
            &format!("selection: Pendants\nkind: pendant\nhangs: {{over: island, length: 96\", at: {at}}}"),
            &format!("size: {{diameter: {diameter}}}"),
        )
    }

    /// Source: check values LT-05: 96", three: 16", 48", 80".
    #[test]
    fn centres_of_equal_division_are_even() {
        island("[16\", 48\", 80\"]", "6\"").stays_silent();
        island("[18\", 48\", 78\"]", "6\"").finds_one().weighs("note");
        island("[15\", 48\", 81\"]", "6\"").stays_silent();
    }

    /// Source: check values LT-04: three of 10" over 96" leave 22" clear.
    #[test]
    fn three_wide_ones_over_eight_feet_hang_close() {
        island("[16\", 48\", 80\"]", "10\"")
            .finds("between two of `Pendants` 22\" (559 mm) stay clear; 24\" (610 mm) to 30\" (762 mm) are usual");
        island("[24\", 72\"]", "10\"").stays_silent();
    }
}
