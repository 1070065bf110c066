//! Counter to set things down on, beside sinks and appliances.

mod asked;
#[cfg(test)]
mod tests;

use std::collections::HashMap;

use super::{Figure, Measure};
use crate::assess::codes::metric::Printed;
use crate::assess::codes::{self, COOKTOP_BEHIND, LANDING_ACROSS, PREP_WIDTH, SINK_RETURN, SINK_TO_CORNER};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{Hinge, Landing, Opening, Room};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::Placement;
use crate::site::distances::{self, Around, landing_of};
use crate::site::fitting::{Side, hinge_sides};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Mention, Trait};

use asked::{LandingCounter, at_a_side, counts_across, of_kind, shared};

declare! {
    /// There is too little counter to set things down on
    ///
    /// ## What it checks
    /// The `landing` of an opening, by what it takes.
    ///
    /// | what | counter advised |
    /// | --- | --- |
    /// | sink | {24"} on one side and {18"} on the other; from its edge to an inside corner {3"}, if {21"} are clear around it |
    /// | second sink | {18"} on one side and {3"} on the other |
    /// | cooktop, range | {15"} on one side and {12"} on the other; {9"} behind it on an island |
    /// | refrigerator | {15"} on the side of its handle, or on top of it, or across from it at most {48"} away |
    /// | microwave | {15"} above, below or on the side of its handle |
    /// | wall oven | {15"} beside or above it, or across from it at most {48"} away and no walkway between |
    ///
    /// Counter that serves two of them, or one and the place of preparation, is as long as the longer of
    /// both and {12"} more. What is not written is not judged.
    ///
    /// ## Why it matters
    /// A pan off the fire, a bag of groceries, a stack of plates: each is set down at once, or dropped.
    ///
    /// ## Remedy
    /// Move one of the two that share a counter, or change the side that a door is hung on.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   cooktop: {takes: cooktop, landing: {left: 12", right: 14"}}
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guidelines 11, 15 to 17 and 22 to 24.
    "clear/landing", Query,
    due: CabinetsOrdered, tells: [Client],
    living: "living.clear.landing",
    judges: [Range, Cooktop, WallOven, Microwave, Refrigerator, PanelRefrigerator, Sink],
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guidelines 11, 15 to 17, 22 to 24"],
    caution: None,
    Check::Book(check)
}

/// Counter behind a cooktop on an island.
const BEHIND: Figure = Figure::of(&COOKTOP_BEHIND);

const SIDES: [Side; 2] = [Side::Left, Side::Right];

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let around = |opening: &Opening| {
            let looks_across = opening.takes.get().is_some_and(|kind| counts_across(*kind));
            Some((opening.name.span, landing_of(context.site, room, opening, looks_across)?))
        };
        let landings: Landings = room.openings.iter().filter_map(around).collect();
        for opening in &room.openings {
            let Some(kind) = opening.takes.get() else { continue };
            if *kind == Kind::Sink && is_for_laundry(room, opening) {
                continue;
            }
            let Some(landing) = landings.get(&opening.name.span) else { continue };
            let Some(asked) = of_kind(context.rulings(), *kind, &landing.landing) else { continue };
            let one = One { context, room, opening, landing, landings: &landings };
            findings.extend(if asked.lesser > Length::ZERO { one.on_both_sides(&asked) } else { one.anywhere(&asked) });
            findings.extend(one.behind());
        }
    }
}

/// Whether clothes are washed at a sink, or in its room where nothing is cooked: it is no kitchen's.
fn is_for_laundry(room: &Room, opening: &Opening) -> bool {
    let any = |is: fn(Kind) -> bool| {
        room.openings.iter().any(|opening| opening.takes.get().is_some_and(|kind| is(*kind)))
            || room.selections.iter().any(|selection| selection.kind.get().is_some_and(|kind| is(*kind)))
    };
    let sinks = room.goes_into(&opening.name).map(|sink| sink.name.value.as_str());
    let is_called_so = || Mention::ForLaundry.is_in_any(sinks.chain([room.title(), &opening.name.value]));
    let washes = any(|kind| matches!(kind, Kind::Washer | Kind::Dryer)) || is_called_so();
    washes && !any(|kind| kind.is(Trait::Cooks))
}

/// One opening with its landing.
struct One<'a> {
    context: &'a Context<'a>,
    room: &'a Room,
    opening: &'a Opening,
    landing: &'a Around,
    /// Those of the room's openings.
    landings: &'a Landings,
}

/// Counter around each opening of a room, by where that is named.
type Landings = HashMap<Span, Around>;

impl One<'_> {
    /// What a figure of the guidelines, or the book's own, asks for.
    fn counts(&self, figure: &'static codes::Figure) -> Length {
        self.context.rulings().length(figure).map_or(figure.length(), |ruling| ruling.value)
    }

    /// A length that is asked for, as it counts against one that may be set out in millimetres.
    fn against(&self, asked: Length, there: Length) -> Length {
        // Figures that the book sets itself are what they are.
        let own = self.context.book.project.codes.figures.iter().any(|own| asked::is_of_landings(&own.figure.value));
        let printed = if own { Printed::AsWritten } else { Printed::InInches };
        printed.least(asked, there, self.context.book.project.units)
    }

    /// The greater length on one side and the lesser on the other, either way around: told as it falls
    /// least short.
    fn on_both_sides(&self, asked: &LandingCounter) -> Option<Remark> {
        let ways = [(asked.greater, asked.lesser), (asked.lesser, asked.greater)];
        let short = |(left, right)| [self.short(Side::Left, left), self.short(Side::Right, right)];
        let total = |short: &[Option<Short>; 2]| -> Length { short.iter().flatten().map(|short| short.by).sum() };
        let least = ways.into_iter().map(short).min_by_key(total)?;
        let told: Vec<_> = least.iter().flatten().map(|short| self.told(short)).collect();
        let first = least.iter().flatten().next()?;
        // What two openings share is told at the first of them.
        if told.len() == 1 && self.is_told_at(first) {
            return None;
        }
        Some(self.finding(Phrase::joined(told, "; "), asked))
    }

    /// By how much the counter at a side is short of what is needed there; nothing where it is not known.
    fn short(&self, side: Side, needed: Length) -> Option<Short> {
        let beside = self.landing.beside(side)?;
        let there = beside.counter;
        let with = beside.to.get().and_then(|to| self.room.opening(to));
        let others = with.and_then(|with| self.asked_by(with)).into_iter();
        let prepared = beside.preparation.get().filter(|prepared| **prepared).map(|_| self.counts(&PREP_WIDTH));
        let longest = others.chain(prepared).max();
        let needed = longest.map_or(needed, |other| needed.max(other) + shared(self.context.rulings()));
        let needed = self.against(needed, there);
        let by = needed - there;
        let turns = longest.is_none() && self.turns_a_corner();
        let with = match (with, longest.is_some()) {
            (Some(with), true) => Some(with.name.value.clone()),
            _ => None,
        };
        (by > Length::ZERO && !turns).then_some(Short { side, there, needed, by, with, prepared: prepared.is_some() })
    }

    /// Whether a sink stands far enough from an inside corner with clear counter around it.
    fn turns_a_corner(&self) -> bool {
        let landing = &self.landing.landing;
        let enough = |there: &crate::book::Slot<Length>, least| {
            there.get().is_some_and(|there| *there >= self.against(least, *there))
        };
        enough(&landing.to_corner, self.counts(&SINK_TO_CORNER))
            && enough(&landing.around_corner, self.counts(&SINK_RETURN))
    }

    /// What another opening asks of the counter that it shares with this one.
    fn asked_by(&self, other: &Opening) -> Option<Length> {
        let none = Landing::default();
        let landing = self.landings.get(&other.name.span).map_or(&none, |around| &around.landing);
        at_a_side(self.context.rulings(), other, landing, &self.opening.name.value)
    }

    fn is_told_at(&self, short: &Short) -> bool {
        let before = self.room.openings.iter().take_while(|other| other.name.value != self.opening.name.value);
        let mut shared = before.filter(|other| short.with.as_ref() == Some(&other.name.value));
        shared.any(|other| self.landings.contains_key(&other.name.span) && self.asked_by(other).is_some())
    }

    fn told(&self, short: &Short) -> Phrase {
        let say = |length| say(length, self.context.book.project.units);
        let for_both = match (&short.with, short.prepared) {
            (Some(with), false) => phrase!(" for it and `{with}` together", with),
            (Some(with), true) => phrase!(" for it, `{with}` and the place of preparation together", with),
            (None, true) => " for it and the place of preparation together".into(),
            (None, false) => Phrase::default(),
        };
        phrase!(
            "the counter at the {} of the opening `{}` is {} long, {} less than the {} advised{for_both}",
            short.side.word(),
            self.opening.name.value,
            say(short.there),
            say(short.by),
            say(short.needed),
            for_both
        )
    }

    /// One counter that is long enough, at a side, on top or across. Where nobody could read which side the door
    /// hangs on, that has been told, and what follows from it waits.
    fn anywhere(&self, asked: &LandingCounter) -> Option<Remark> {
        if asked.by_the_handle && self.chosen().any(|fitted| fitted.option.hinge.is_faulty()) {
            return None;
        }
        let say = |length| say(length, self.context.book.project.units);
        let landing = &self.landing.landing;
        let mut told = Vec::new();
        for side in self.handle_sides(asked) {
            // A side that nobody wrote down may be long enough.
            let beside = self.landing.beside(side)?;
            let short = self.short(side, asked.greater)?;
            // Long enough for one: what it is short by is another's.
            let shared = match (&short.with, short.prepared) {
                (Some(with), _) => phrase!(", which `{}` needs too", with),
                (None, true) => ", which the place of preparation needs too".into(),
                (None, false) => Phrase::default(),
            };
            told.push(phrase!("{} at the {}{shared}", say(beside.counter), side.word(), shared));
        }
        if let Some(above) = landing.above.get() {
            if *above >= self.against(asked.greater, *above) {
                return None;
            }
            told.push(phrase!("{} above or below", say(*above)));
        }
        if let (Some(across), Some(at), true) = (landing.across.get(), landing.across_at.get(), asked.across) {
            let walked = asked.not_a_walkway && landing.across_a_walkway.get() == Some(&true);
            if *across >= self.against(asked.greater, *across) && *at <= self.counts(&LANDING_ACROSS) && !walked {
                return None;
            }
            let walkway = if walked { ", over a walkway" } else { "" };
            told.push(phrase!("{} across, {} away{walkway}", say(*across), say(*at), walkway));
        }
        let message = phrase!(
            "no counter of {} stands near enough to the opening `{}`: {}",
            say(asked.greater),
            self.opening.name.value,
            Phrase::joined(told, "; ")
        );
        Some(self.finding(message, asked))
    }

    /// The sides that count: that of the handle, where the door's hinges are known; else both.
    fn handle_sides(&self, asked: &LandingCounter) -> Vec<Side> {
        let hinges = self.chosen().filter(|_| asked.by_the_handle).map(|fitted| hinge_sides(fitted.option)).next();
        match hinges {
            Some(([hinge], _)) => SIDES.into_iter().filter(|side| side != hinge).collect(),
            _ => SIDES.to_vec(),
        }
    }

    /// What is chosen for it.
    fn chosen(&self) -> impl Iterator<Item = Placement<'_>> {
        let own = |fitted: &Placement<'_>| std::ptr::eq(fitted.opening, self.opening) && fitted.is_settled();
        self.context.site.fitted_in(self.room).filter(own)
    }

    /// Whether its door, if it has one, can be hung on another side: not where it has one at each.
    fn may_hang_elsewhere(&self) -> bool {
        let hinges = self.chosen().next().and_then(|fitted| fitted.option.hinge.get().copied());
        let swings = self.opening.takes.get().is_none_or(|kind| !kind.is(Trait::CutIntoCounter));
        swings && !matches!(hinges, Some(Hinge::Both | Hinge::None))
    }

    fn behind(&self) -> Option<Remark> {
        // The advice is one for kitchens: what stands behind a grill is asked of its sheet.
        let cooks = self.opening.takes_one(Trait::Cooks) && !self.opening.takes_a(Kind::Grill);
        let there = distances::behind(self.context.site, self.room, self.opening).filter(|_| cooks)?;
        let measure = Measure {
            room: self.room,
            item: Some(&self.opening.name),
            is: (phrase!("the counter behind the opening `{}`", self.opening.name.value), "deep"),
            there,
            advised: Some(BEHIND),
            code: None,
            remedy: "move the cooktop forward, or make the island deeper",
        };
        measure.judge(self.context)
    }

    fn finding(&self, message: Phrase, asked: &LandingCounter) -> Remark {
        Remark::new(asked.severity, self.landing.at, message)
            .room(&self.room.folder)
            .opening(&self.opening.name)
            .source(asked.source.clone())
            .remedy(match self.may_hang_elsewhere() {
                true => "move what stands at the counter's other end, or hang the door on the other side",
                false => "move what stands at the counter's other end, or plan more counter there",
            })
    }
}

/// A counter that is too short.
struct Short {
    side: Side,
    there: Length,
    needed: Length,
    by: Length,
    /// The opening that it serves as well.
    with: Option<String>,
    prepared: bool,
}
