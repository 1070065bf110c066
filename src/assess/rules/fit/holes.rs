//! Holes in counters and sinks against the taps that go through them.

use crate::assess::rules::{Check, declare};
use crate::assess::{Context, about, say, say_range};
use crate::book::{Choice, Hole, Room, Selection};
use crate::finding::{Finding, Severity};
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// A tap has no hole, or one of another size, or no room behind it for its lever
    ///
    /// ## What it checks
    /// Where a room lists the holes to be drilled (`drilled` at the counter or the sink): each tap there
    /// has as many as it takes, of a diameter that its sheet allows, and its lever or handle turns free of
    /// the splash, sill or wall behind.
    ///
    /// ## Why it matters
    /// A hole that is missing is drilled in a kitchen full of dust; one that is too near the splash is
    /// there for good.
    ///
    /// ## Remedy
    /// Have the list of holes signed at the template: each by purpose, diameter and place.
    ///
    /// ## Example
    /// ```yaml
    /// drilled: [{for: kitchen tap, diameter: 1 3/8", behind: 1 1/2"}]     # its lever wants 1 3/4"
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the fabricator's list of holes.
    "fit/holes", Stop,
    due: CounterTemplated, tells: [Installer],
    sources: ["the maker's sheet", "the fabricator's list of holes"],
    caution: Some(Hazard::Stone.caution()),
    Check::Book(check)
}

const REMEDY: &str = "have the list of holes signed at the template: each by purpose, diameter and place";

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for room in &context.book.rooms {
        let holes: Vec<&Hole> =
            room.selections.iter().flat_map(Selection::standing).flat_map(|option| &option.drilled).collect();
        if holes.is_empty() {
            continue;
        }
        let taps = room.selections.iter().filter(|selection| selection.is(Kind::Tap));
        for tap in taps {
            for option in tap.standing() {
                findings.extend(judge(context, (room, tap, option), &holes));
            }
        }
    }
}

fn judge(context: &Context<'_>, (room, tap, option): (&Room, &Selection, &Choice), holes: &[&Hole]) -> Vec<Finding> {
    let name = tap.name.value.to_lowercase();
    let its: Vec<&&Hole> = holes
        .iter()
        .filter(|hole| {
            let purpose = hole.purpose.value.to_lowercase();
            purpose.contains(&name) || name.contains(&purpose)
        })
        .collect();
    let stop = |at, message| about(room, tap, option, RULE.code, Severity::Stop, at, message).remedy(REMEDY);
    let takes: Option<usize> = option.words("holes").and_then(|(words, _)| words.trim().parse().ok());
    if let Some(takes) = takes.filter(|takes| its.len() < *takes) {
        let message = format!("`{}` takes {takes} holes, and {} are on the list", tap.name.value, its.len());
        return vec![stop(tap.span, message)];
    }
    its.into_iter().filter_map(|hole| Some(stop(hole.purpose.span, fault(context, tap, option, hole)?))).collect()
}

fn fault(context: &Context<'_>, tap: &Selection, option: &Choice, hole: &Hole) -> Option<String> {
    let say = |length| say(length, context.book.project.units);
    let name = &tap.name.value;
    if let (Some(range), Some(diameter)) = (option.range("hole diameter"), hole.diameter.get())
        && !range.contains(*diameter)
    {
        return Some(format!(
            "the hole for `{name}` is {} across, where its sheet asks {}",
            say(*diameter),
            say_range(range, context.book.project.units)
        ));
    }
    let (travel, _) = option.length("rear travel")?;
    let behind = *hole.behind.get()?;
    (travel > behind).then(|| {
        format!(
            "the lever of `{name}` moves {} behind its hole, {} more than there is to what stands behind",
            say(travel),
            say(travel - behind)
        )
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn tap(drilled: &str) -> Trial {
        Trial::of("fit/holes")
            .selection("selection: Counter\nkind: counter", &format!("drilled: [{drilled}]"))
            .selection(
                "selection: Kitchen tap\nkind: tap",
                "holes: 1\nhole diameter: 1 3/8\" to 1 1/2\"\nrear travel: 1 3/4\"",
            )
    }

    /// Source: trade reports F-55 (a hole never drilled), F-57 (about 1" free behind the tap).
    #[test]
    fn a_missing_hole_a_wrong_one_and_a_lever_that_hits_the_splash_stop() {
        tap("{for: soap, diameter: 1 1/4\"}").finds("`Kitchen tap` takes 1 holes, and 0 are on the list").cautions();
        tap("{for: kitchen tap, diameter: 1 1/4\"}").finds_one().weighs("stop");
        tap("{for: kitchen tap, diameter: 1 3/8\", behind: 1\"}")
            .finds("the lever of `Kitchen tap` moves 1 3/4\" (≈ 44.4 mm) behind its hole, 3/4\" (≈ 19 mm) more than there is to what stands behind");
        tap("{for: kitchen tap, diameter: 1 3/8\", behind: 1 3/4\"}").stays_silent();
    }
}
