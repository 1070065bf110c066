//! Pipes in walls and floors against what is set on them.

use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::book::Hollow;
use crate::book::vocabulary::Hazard;
use crate::finding::{Finding, Severity};
use crate::units::Length;

declare! {
    /// A toilet's outlet, a tub's drain or a valve is not where the thing wants it
    ///
    /// ## What it checks
    /// From the finished wall: the toilet's outlet against its rough-in, the valve's depth against its
    /// sheet; and the hand of a tub's drain. What was measured from the studs is converted by the wall's
    /// build-up, and asked for where nobody gives it.
    ///
    /// ## Why it matters
    /// Half an inch of board and half an inch of tile jam a tank that was roughed in from the stud. A
    /// valve that is set too deep takes no trim.
    ///
    /// ## Remedy
    /// Move the pipe before the wall is closed, or order the model or the extension for what is there.
    ///
    /// ## Example
    /// ```yaml
    /// hollow: {rough-in: 12", from: studs, build-up: 1"}      # 11" from the finished wall
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement.
    "fit/rough-in", Stop,
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Water.caution()),
    Check::Book(check)
}

/// A gap behind a tank that is asked about.
const GAP: Length = Length::from_inches(1);

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for fitted in context.fitted() {
        findings.extend(toilet(context, &fitted));
        findings.extend(valve(context, &fitted));
        findings.extend(hand(&fitted));
    }
}

/// A distance from the finished wall; none when it was taken from the studs and the build-up is unknown.
fn from_finished(hollow: &Hollow, measured: Length) -> Option<Length> {
    match hollow.from.get() {
        Some(&"studs") => Some(measured - *hollow.build_up.get()?),
        _ => Some(measured),
    }
}

fn unknown(fitted: &Fitted<'_>, hollow: &Hollow, what: &str) -> Option<Finding> {
    let message = format!(
        "{what} for `{}` was measured from the studs, and nobody says what comes on them",
        fitted.selection.name.value
    );
    let finding = fitted.finding("complete/datum", Severity::Stop, hollow.from.span()?, message);
    Some(finding.remedy("write `build-up: …` for board, mortar and tile"))
}

fn toilet(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let (wants, _) = fitted.option.length("rough-in")?;
    let hollow = fitted.opening.hollow.get()?;
    let measured = hollow.rough_in.spanned()?;
    let Some(there) = from_finished(hollow, measured.value) else {
        return unknown(fitted, hollow, "the rough-in");
    };
    let say = |length| say(length, context.book.project.units);
    let name = &fitted.selection.name.value;
    let of = format!("`{name}` wants its outlet {} from the finished wall, and it is at {}", say(wants), say(there));
    if there < wants {
        let finding = fitted.finding(RULE.code, Severity::Stop, measured.span, of);
        return Some(
            finding.remedy("move the flange before the floor is closed, or order the model for what is there"),
        );
    }
    let message = format!("{of}: its tank stands {} off the wall", say(there - wants));
    (there - wants >= GAP).then(|| {
        fitted
            .finding(RULE.code, Severity::Query, measured.span, message)
            .remedy("order the model for what is there, or agree the gap with those who will see it")
    })
}

fn valve(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let asked = fitted.option.fit.get()?.valve_depth.get()?;
    let hollow = fitted.opening.hollow.get()?;
    let measured = hollow.valve.spanned()?;
    let there = match hollow.from.get() {
        // Behind the studs' face, the build-up comes on top.
        Some(&"studs") => match hollow.build_up.get() {
            Some(build_up) => measured.value + *build_up,
            None => return unknown(fitted, hollow, "the valve"),
        },
        _ => measured.value,
    };
    let say = |length| say(length, context.book.project.units);
    let message = format!(
        "the valve of `{}` is {} behind the finished wall, where its sheet asks {asked}",
        fitted.selection.name.value,
        say(there)
    );
    let finding = || fitted.finding(RULE.code, Severity::Stop, measured.span, message);
    (!asked.contains(there))
        .then(|| finding().remedy("move the valve before the wall is closed, or order the maker's extension"))
}

fn hand(fitted: &Fitted<'_>) -> Option<Finding> {
    let is_tub = fitted.selection.kind.get().is_some_and(|kind| kind.name == "bathtub");
    let (drain, _) = fitted.option.words("drain").filter(|_| is_tub)?;
    let there = fitted.opening.service.drain.spanned()?;
    let side = |words: &str| {
        let words = words.to_lowercase();
        [("left", words.contains("left")), ("right", words.contains("right"))]
            .into_iter()
            .find(|(_, has)| *has)
            .map(|(side, _)| side)
    };
    let (wants, has) = (side(drain)?, side(&there.value)?);
    let message = format!("`{}` drains at the {wants}, and the drain is at the {has}", fitted.selection.name.value);
    (wants != has).then(|| {
        fitted
            .finding(RULE.code, Severity::Stop, there.span, message)
            .remedy("order the tub of the other hand, or have the drain moved while the floor is open")
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn toilet(rule: &'static str, hollow: &str) -> Trial {
        Trial::of(rule)
            .opening("place", &format!("{{takes: toilet, hollow: {hollow}}}"))
            .selection("selection: Toilet\nkind: toilet\nplace: place", "rough-in: 12\"")
    }

    /// Source: trade reports F-77: measured from the stud, board 1/2" and tile 1/2" to come.
    #[test]
    fn a_rough_in_from_the_studs_loses_the_wall_s_build_up() {
        let jammed = "{rough-in: 12\", from: studs, build-up: 1\"}";
        toilet("fit/rough-in", jammed)
            .finds("`Toilet` wants its outlet 12\" (304.8 mm) from the finished wall, and it is at 11\" (279.4 mm)")
            .weighs("stop");
        toilet("fit/rough-in", "{rough-in: 13\", from: studs, build-up: 1\"}").stays_silent();
        toilet("fit/rough-in", "{rough-in: 12\"}").stays_silent();
        toilet("fit/rough-in", "{rough-in: 13\"}").finds_one().weighs("query");
        toilet("complete/datum", "{rough-in: 13\", from: studs}").finds_one().weighs("stop");
    }

    /// Source: trade reports F-79: 2 3/8" to 3 1/2", and a wall that adds 3/4" to 1".
    #[test]
    fn a_valve_too_deep_for_its_trim_stops() {
        let shower = |hollow: &str| {
            Trial::of("fit/rough-in")
                .opening("wall", &format!("{{takes: shower set, hollow: {hollow}}}"))
                .selection("selection: Shower\nkind: shower set\nplace: wall", "fit: {valve depth: 2 3/8\" to 3 1/2\"}")
        };
        shower("{valve: 3\", from: studs, build-up: 1\"}").finds_one().weighs("stop").cautions();
        shower("{valve: 2 1/2\", from: studs, build-up: 1\"}").stays_silent();
    }

    /// Source: trade reports section 6 (a tub's drain has a hand).
    #[test]
    fn a_tub_of_the_other_hand_stops() {
        let tub = |drain: &str| {
            Trial::of("fit/rough-in")
                .opening("alcove", "{takes: bathtub, service: {drain: at the left}}")
                .selection("selection: Tub\nkind: bathtub\nplace: alcove", &format!("drain: {drain}"))
        };
        tub("right end").finds("`Tub` drains at the right, and the drain is at the left");
        tub("left end").stays_silent();
    }
}
