//! Pipes in walls and floors against what is set on them.

mod outlet;
mod side;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_range};
use crate::book::{DetailName, HollowFrom, Opening, ProductOption, Slot};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::outlets::{OutletGoes, height_of_the_drain, height_of_the_outlet, outlet_of, to_come_on_the_studs};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::supply::{Drain, Face, Worded};
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// A toilet's outlet, a tub's drain or a valve is not where the thing wants it
    ///
    /// ## What it checks
    /// Whether a toilet's outlet and the drain that is told for it are both in the floor, or both in the wall, and whether
    /// anybody says where there. From the finished wall: the toilet's outlet against its rough-in; of one that goes out through the wall (it hangs
    /// there, stands against it, or has a horizontal outlet), how high its outlet is (`outlet height`) against the drain
    /// in the wall: lower it is asked about, higher it stops; the valve's depth against its
    /// sheet; and the side of a tub's drain. What was measured from the studs is converted by the wall's
    /// build-up (of the `hollow`, else the opening's own at the back), and asked for where nobody gives it. A rough-in that stands in the words of a drain
    /// (`12" from the finished wall`) counts where they name one such distance and the field is left out.
    ///
    /// ## Why it matters
    /// {1/2"} of board and {1/2"} of tile jam a tank that was roughed in from the stud. A
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
    due: RoughInClosed, tells: [Installer],
    judges: [Toilet, Bathtub, ShowerTray, ShowerSet],
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Water),
    Check::Book(check)
}

/// A gap behind a tank that is asked about.
const GAP: Length = Length::from_inches(1);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let outlet = outlet::judge(&fitted).or_else(|| toilet(context, &fitted));
        findings.extend(outlet.or_else(|| through_the_wall(context, &fitted)));
        findings.extend(valve(context, &fitted));
        findings.extend(side::judge(&fitted));
    }
}

/// What was measured from studs of which nobody says what comes on them, for the rule that asks for it.
pub fn from_bare_studs(fitted: &Placement<'_>) -> Vec<Remark> {
    let of_toilet = || {
        fitted.selection.kind.get().filter(|kind| **kind == Kind::Toilet)?;
        let floor = outlet_of(fitted.selection, fitted.option) != Some(OutletGoes::ThroughTheWall);
        RoughIn::wanted(fitted.option).filter(|_| floor)?;
        let told = RoughIn::there(fitted.opening)?;
        let is_unread = fitted.opening.hollow.get().is_some_and(|hollow| hollow.build_up.is_faulty());
        let is_unsaid = told.to_finished_wall(fitted.opening).is_none() && !is_unread;
        is_unsaid.then_some((told.at, "the rough-in"))
    };
    let of_valve = || {
        fitted.option.fit.get()?.valve_depth.get()?;
        let hollow = fitted.opening.hollow.get()?;
        let from_studs = hollow.from.spanned().filter(|from| from.value == HollowFrom::Studs)?;
        hollow.valve.get()?;
        let unsaid = hollow.build_up.is_absent() && to_come_on_the_studs(fitted.opening).is_none();
        unsaid.then_some((from_studs.span, "the valve"))
    };
    let told = [of_toilet(), of_valve()].into_iter().flatten().map(|(at, what)| {
        let name = &fitted.selection.name.value;
        let message =
            phrase!("{what} for `{name}` was measured from the studs, and nobody says what comes on them", what, name);
        fitted
            .finding(Severity::Stop, at, message)
            .remedy("write `hollow: {build-up: …}` at the opening, for board, mortar and tile together")
    });
    told.collect()
}

/// A toilet's rough-in, and where it is told.
struct RoughIn {
    /// From the face that it was taken from.
    distance: Length,
    studs: bool,
    at: Span,
    /// Whether it stands in the words of a drain instead of in its field.
    in_words: bool,
}

impl RoughIn {
    /// The one distance to a wall that the words of a drain name.
    fn in_words(words: &Slot<Worded<Drain>>) -> Option<Self> {
        let words = words.spanned()?;
        let (distance, face) = words.is.rough_in?;
        Some(Self { distance, studs: face == Face::Studs, at: words.span, in_words: true })
    }

    /// As it is at the opening.
    fn there(opening: &Opening) -> Option<Self> {
        let field = opening.hollow.get().and_then(|hollow| {
            let measured = hollow.rough_in.spanned()?;
            let studs = hollow.from.get() == Some(&HollowFrom::Studs);
            Some(Self { distance: measured.value, studs, at: measured.span, in_words: false })
        });
        field.or_else(|| Self::in_words(&opening.service.drain))
    }

    /// As the maker's sheet wants it.
    fn wanted(option: &ProductOption) -> Option<Length> {
        let field = option.length(DetailName::RoughIn).map(|(length, _)| length);
        field.or_else(|| Some(Self::in_words(&option.fit.get()?.needs.drain)?.distance))
    }

    /// From the finished wall; none when it was taken from the studs and nobody says what comes on them.
    fn to_finished_wall(&self, opening: &Opening) -> Option<Length> {
        if self.studs { Some(self.distance - to_come_on_the_studs(opening)?) } else { Some(self.distance) }
    }
}

/// How far the pipe in the wall may be above or below a toilet's outlet (common practice: what a seal takes).
const SEAL: Length = Length::from_millimetres(5);

/// The outlet of a toilet that goes through the wall, against the drain there.
fn through_the_wall(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    fitted.selection.kind.get().filter(|kind| **kind == Kind::Toilet)?;
    let (wants, own) = height_of_the_outlet(fitted.option)?;
    let (there, at) = height_of_the_drain(fitted.opening)?;
    let apart = (there - wants).abs();
    if apart <= SEAL {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the outlet of `{}` is {} above the finished floor, and the drain in the wall is {} above it",
        fitted.selection.name.value,
        say(wants),
        say(there)
    );
    // Lower, a connector may reach it; higher, nothing runs off.
    let severity = if there > wants { Severity::Stop } else { Severity::Query };
    let finding = fitted.finding(severity, at, message).also(own, "its outlet");
    let finding = if severity == Severity::Query { finding.source("common practice") } else { finding };
    Some(
        finding
            .remedy("have the frame or the pipe moved before the wall is closed, or order the model for what is there"),
    )
}

fn toilet(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    fitted.selection.kind.get().filter(|kind| **kind == Kind::Toilet)?;
    if outlet_of(fitted.selection, fitted.option) == Some(OutletGoes::ThroughTheWall) {
        return None;
    }
    let wants = RoughIn::wanted(fitted.option)?;
    let told = RoughIn::there(fitted.opening)?;
    let there = told.to_finished_wall(fitted.opening)?;
    let say = |length| say(length, context.book.project.units);
    let name = &fitted.selection.name.value;
    let of =
        phrase!("`{name}` wants its outlet {} from the finished wall, and it is at {}", name, say(wants), say(there));
    let belongs = match told.in_words {
        true => Phrase::from("; write the distance in its field at the opening, `hollow: {rough-in: …}`"),
        false => Phrase::default(),
    };
    if there < wants {
        let finding = fitted.finding(Severity::Stop, told.at, of);
        let remedy = "move the flange before the floor is closed, or order the model for what is there";
        return Some(finding.remedy(phrase!("{remedy}{belongs}", remedy, belongs)));
    }
    let message = phrase!("{of}: its tank stands {} off the wall", of, say(there - wants));
    let remedy = "order the model for what is there, or agree the gap with those who will see it";
    (there - wants >= GAP).then(|| {
        fitted.finding(Severity::Query, told.at, message).remedy(phrase!("{remedy}{belongs}", remedy, belongs))
    })
}

fn valve(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let asked = fitted.option.fit.get()?.valve_depth.get()?;
    let hollow = fitted.opening.hollow.get()?;
    let measured = hollow.valve.spanned()?;
    let there = match hollow.from.get() {
        // Behind the studs' face, the build-up comes on top.
        Some(&HollowFrom::Studs) => measured.value + to_come_on_the_studs(fitted.opening)?,
        _ => measured.value,
    };
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the valve of `{}` is {} behind the finished wall, where its sheet asks {}",
        fitted.selection.name.value,
        say(there),
        say_range(*asked, context.book.project.units)
    );
    let finding = || fitted.finding(Severity::Stop, measured.span, message);
    (!asked.contains(there))
        .then(|| finding().remedy("move the valve before the wall is closed, or order the maker's extension"))
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
            .finds("`Toilet` wants its outlet 12\" (305 mm) from the finished wall, and it is at 11\" (279 mm)")
            .weighs("stop");
        toilet("fit/rough-in", "{rough-in: 13\", from: studs, build-up: 1\"}").stays_silent();
        toilet("fit/rough-in", "{rough-in: 12\"}").stays_silent();
        toilet("fit/rough-in", "{rough-in: 13\"}").finds_one().weighs("query");
        toilet("complete/datum", "{rough-in: 13\", from: studs}").finds_one().weighs("stop");
    }

    /// Source: arithmetic; a pipe that is higher than the outlet carries nothing off.
    #[test]
    fn the_outlet_of_a_toilet_on_the_wall_meets_the_drain_there() {
        let toilet = |there: &str, own: &str| {
            Trial::of("fit/rough-in")
                .opening("place", &format!("{{takes: toilet, {there}}}"))
                .selection("selection: Toilet\nkind: toilet\nplace: place", own)
        };
        for (there, higher) in [
            ("service: {drain: '90 mm, 220 mm AFF'}", "service: {drain: '90 mm, 250 mm AFF'}"),
            ("service points: {drain: {height: 220 mm}}", "service points: {drain: {height: 250 mm}}"),
        ] {
            for own in [
                "mount: wall-hung\noutlet height: 220 mm",
                "outlet height: 220 mm",
                "fit: {needs: {drain: '90 mm, 220 mm AFF'}}",
                "rough-in: 100 mm\nmount: wall-hung\noutlet height: 220 mm",
            ] {
                toilet(there, own).stays_silent();
                toilet(higher, own).finds_one().weighs("stop");
            }
        }
        toilet("service points: {drain: {height: 7 1/4\"}}", "outlet height: 8 1/4\"")
            .finds("the outlet of `Toilet` is 8 1/4\" (210 mm) above the finished floor, and the drain in the wall is 7 1/4\" (184 mm) above it")
            .weighs("query")
            .cautions();
        // A distance from the wall says nothing of one that goes through it.
        toilet("hollow: {rough-in: 10\"}", "mount: wall-hung\nrough-in: 12\"").stays_silent();
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

    /// Source: trade reports F-77: the rough-in is a distance, and the drain's size another fact.
    #[test]
    fn a_rough_in_in_the_words_of_a_drain_is_a_distance() {
        let toilet = |rule: &'static str, there: &str, sheet: &str| {
            Trial::of(rule).opening("place", &format!("{{takes: toilet, service: {{drain: '{there}'}}}}")).selection(
                "selection: Toilet\nkind: toilet\nplace: place",
                &format!("fit: {{needs: {{drain: '{sheet}'}}}}"),
            )
        };
        let enough = [
            "12\" from the finished wall",
            "3\" flange, 12\" from the finished wall",
            "3\" flange 12\" off the wall",
            "12\" rough-in; 3\" outlet",
        ];
        for there in enough {
            for sheet in ["12\" rough-in", "3\" outlet, 12\" rough-in", "3\" outlet 12\" from the wall"] {
                toilet("service/drain", there, sheet).stays_silent();
                toilet("fit/rough-in", there, sheet).stays_silent();
            }
        }
        toilet("fit/rough-in", "3\" flange, 10\" from the finished wall", "12\" rough-in")
            .finds("`Toilet` wants its outlet 12\" (305 mm) from the finished wall, and it is at 10\" (254 mm)")
            .weighs("stop");
        toilet("complete/datum", "3\" flange, 13\" from the studs", "12\" rough-in").finds_one();
        toilet("service/drain", "3\" flange, 12\" from the wall", "4\" outlet, 12\" rough-in").finds_one();
    }
}
