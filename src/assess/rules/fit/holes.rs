//! Holes in counters and sinks against the taps that go through them.

mod beside;
mod diameter;
#[cfg(test)]
mod tests;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, behind, say, say_range};
use crate::book::{DetailName, Hole, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, Value, phrase};
use crate::site::{deck, taps, window_trim_behind};
use crate::source::Span;
use crate::units::{Length, LengthRange};
use crate::vocabulary::{Hazard, Kind, Mount};

declare! {
    /// A tap has no hole, or one of another size, or no room behind it for its lever
    ///
    /// ## What it checks
    /// The holes that a room lists (`drilled` at the counter or the sink) and those that a sink or basin
    /// comes with (`holes`, `spread`, `hole diameter` of its own): each tap has as many as it takes, as
    /// far apart as it asks, of a diameter that its sheet allows, and its lever or handle turns free of
    /// the splash, sill or wall behind; a counter in which a tap stands has such a list. Where no list says how much is left there, it is asked about as the plan
    /// has it: the counter's depth less what stands behind it (a `splash`, tile, a raised back, the trim of a window),
    /// the bowl and {4"} of counter before it. Holes of a bowl that stay open are asked about, unless a plate or
    /// something else that goes through them is ordered. A tap serves the only bowl of its room, or the
    /// one that its name shares a word with; a basin that hangs on a wall or stands free has a hole for the tap that stands
    /// on it, and says how many, and none stays open, or is on a list, where the tap comes out of the wall. One that fills a tub (`kind: bath filler`), comes out of the wall or
    /// stands on the floor (`mount`) is not looked for among the holes of a counter or a bowl. What is ordered to stand
    /// beside the tap (a soap dispenser, a side spray, an air switch, a filter tap), or planned there (an air gap in the
    /// words of a drain), has a hole of its own, on the list or in the bowl.
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
    judges: [Sink, Basin, Bathtub, Tap, TubFiller, Counter],
    sources: ["the maker's sheet", "the fabricator's list of holes"],
    caution: Some(Hazard::Stone),
    remedy: "have the list of holes signed at the template: each by purpose, diameter and place",
    Check::Book(check)
}

/// How far apart two spreads may be: 1/8 in (common practice: what a washer hides).
const PLAY: Length = Length::from_sixty_fourths(8);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(beside::check(room));
        let of_kind = room.selections.iter().filter(|selection| selection.is_any(&[Kind::Tap, Kind::TubFiller]));
        for tap in of_kind {
            let listed = taps::listed_for(room, tap);
            let bowl = taps::served_by(room, tap);
            for option in tap.standing() {
                let at = At { context, room, tap, option };
                findings.extend(at.judge(&listed, bowl));
                findings.extend(at.lever_by_the_plan(&listed, bowl));
            }
        }
    }
}

/// A tap's option in its room.
struct At<'a> {
    context: &'a Context<'a>,
    room: &'a Room,
    tap: &'a Selection,
    option: &'a ProductOption,
}

impl At<'_> {
    fn finding(&self, severity: Severity, at: Span, message: Phrase) -> Remark {
        about(self.room, self.tap, self.option, severity, at, message)
    }

    fn say(&self, length: Length) -> Value {
        say(length, self.context.book.project.units)
    }

    fn judge(&self, listed: &[&Hole], bowl: Option<&Selection>) -> Vec<Remark> {
        let its = taps::drilled_for(self.room, listed, self.tap);
        let takes = taps::holes(self.option);
        let free = taps::stands_free(self.tap, self.option);
        let bowls = bowl.into_iter().flat_map(Selection::standing);
        if let Some(told) = beside::on_the_wall(self.room, self.tap, self.option, &its) {
            return vec![told];
        }
        let enough = takes.is_none_or(|(takes, _)| its.len() >= takes);
        if !its.is_empty() && enough {
            let told = self.of_list(&its);
            return if told.is_empty() { self.more_than_it_takes(&its).into_iter().collect() } else { told };
        }
        let in_bowl: Vec<&ProductOption> =
            bowls.filter(|option| taps::holes(option).is_some_and(|(has, _)| has > 0)).collect();
        let has_its_own = in_bowl.iter().any(|option| taps::holes(option) >= takes);
        match takes {
            _ if free && its.is_empty() => {
                let on_the_wall = taps::is_on_the_wall(self.tap, self.option);
                let open = in_bowl.into_iter().filter(|_| on_the_wall);
                open.filter_map(|option| self.serves_none(bowl?, option)).collect()
            }
            Some((takes, _)) if !listed.is_empty() && !has_its_own => {
                let takes = if takes == 1 { Phrase::from("1 hole") } else { phrase!("{takes} holes", takes) };
                let message = phrase!("`{}` takes {takes}, and the list has {}", self.tap.name.value, takes, its.len());
                vec![self.finding(Severity::Stop, self.tap.span, message)]
            }
            _ if listed.is_empty() && in_bowl.is_empty() => {
                let told = self.no_hole(bowl).or_else(|| self.no_list(bowl));
                told.or_else(|| self.not_counted(bowl)).into_iter().collect()
            }
            _ => in_bowl.into_iter().filter_map(|option| self.in_a_bowl(bowl?, option)).collect(),
        }
    }

    /// It comes out of the wall, and the bowl that it serves has holes that nothing covers.
    fn serves_none(&self, bowl: &Selection, option: &ProductOption) -> Option<Remark> {
        let (open, at) = taps::holes(option)?;
        let others = self.room.selections.iter().filter(|one| one.is_any(&[Kind::Tap, Kind::TubFiller]));
        let mut others = others.filter(|one| one.span != self.tap.span);
        let served = others.any(|one| taps::served_by(self.room, one).is_some_and(|own| own.span == bowl.span));
        let is_a_bowl = bowl.is_any(&[Kind::Basin, Kind::Sink]);
        if served || !is_a_bowl || taps::comes_with(option) || [self.option, option].into_iter().any(taps::fills_a_hole)
        {
            return None;
        }
        let holes = if open == 1 { Phrase::from("1 hole stays") } else { phrase!("{open} holes stay", open) };
        let (bowl, tap) = (&bowl.name.value, &self.tap.name.value);
        let message = phrase!("`{tap}` comes out of the wall, and {holes} open in `{bowl}`", tap, holes, bowl);
        Some(
            self.finding(Severity::Query, at, message)
                .remedy("take a bowl that is not drilled, or a tap that stands on it"),
        )
    }

    /// It stands on a basin that hangs or stands free, which has no hole for it, or of which nobody says whether it has.
    fn no_hole(&self, bowl: Option<&Selection>) -> Option<Remark> {
        let bowl = bowl.filter(|bowl| bowl.is_any(&[Kind::Basin, Kind::Bathtub]))?;
        // A tub is no cabinet's, and its rim or the deck around it is drilled only where somebody says so.
        let own = bowl.settled().filter(|own| bowl.is(Kind::Bathtub) || own.mount() == Some(Mount::InNoCabinet))?;
        let (takes, at) = taps::holes(self.option).filter(|(takes, _)| *takes > 0)?;
        let (tap, name) = (&self.tap.name.value, &bowl.name.value);
        if let Some((_, none)) = taps::holes(own) {
            let message = match takes {
                1 => phrase!("`{tap}` takes 1 hole, and `{name}` has none", tap, name),
                _ => phrase!("`{tap}` takes {takes} holes, and `{name}` has none", tap, takes, name),
            };
            return Some(self.finding(Severity::Stop, at, message).also(none, "its holes").remedy(ANOTHER));
        }
        let is_unsaid = bowl.is(Kind::Basin) && own.lacks(DetailName::Holes) && self.tap.settled().is_some();
        let message = phrase!("`{tap}` stands on `{name}`, and nobody says how many holes that has", tap, name);
        is_unsaid.then(|| {
            let finding = self.finding(Severity::Query, bowl.name.span, message).also(at, "what it takes");
            finding.remedy("look at the basin's sheet, and add `holes: …` to it, and `spread` where there are several")
        })
    }

    /// It serves a bowl that is let in from above, whose rim is drilled or not, and nobody says which.
    fn not_counted(&self, bowl: Option<&Selection>) -> Option<Remark> {
        let bowl = bowl.filter(|bowl| bowl.is_any(&[Kind::Sink, Kind::Basin]))?;
        let own = bowl.settled().filter(|own| own.mount() == Some(Mount::DropIn) && own.lacks(DetailName::Holes))?;
        let (takes, at) =
            taps::holes(self.option).filter(|_| self.tap.settled().is_some() && !taps::comes_with(own))?;
        let (tap, name) = (&self.tap.name.value, &bowl.name.value);
        let message = phrase!("`{tap}` stands on `{name}`, and nobody says how many holes that has", tap, name);
        let finding = self.finding(Severity::Query, bowl.name.span, message).also(at, "what it takes");
        let remedy = "look at its sheet, and add `holes: …` to it: `0` where the tap stands in the counter behind it";
        (takes > 0).then(|| finding.remedy(remedy))
    }

    /// Its hole goes through a counter, and nobody lists what is drilled there.
    fn no_list(&self, bowl: Option<&Selection>) -> Option<Remark> {
        let bowl = bowl?;
        let beside = |option: &ProductOption| {
            let undrilled = matches!(option.mount(), Some(Mount::Under | Mount::OnCounter | Mount::Apron))
                && option.lacks(DetailName::Holes);
            // One that says that it has none leaves the tap to the counter, however it is set.
            let has_none = taps::holes(option).is_some_and(|(holes, _)| holes == 0);
            undrilled || has_none && option.mount() != Some(Mount::InNoCabinet)
        };
        let counter = self.room.selections.iter().find(|selection| selection.is(Kind::Counter))?;
        // Which holes are wanted is known once the tap is chosen.
        if self.tap.settled().is_none() || bowl.options.is_empty() || !bowl.standing().iter().all(beside) {
            return None;
        }
        let (tap, top) = (&self.tap.name.value, &counter.name.value);
        let message =
            phrase!("`{tap}` stands in a counter, and no list says where `{top}` is drilled for it", tap, top);
        let finding = self.finding(Severity::Query, counter.name.span, message).also(self.tap.name.span, "its tap");
        Some(finding.remedy("add `drilled` to the counter: each hole by what it is for, its diameter and its place"))
    }

    /// The list has more holes for it than it takes, and nothing that is ordered goes through the others; or they are too
    /// small for any tap.
    fn more_than_it_takes(&self, its: &[&Hole]) -> Option<Remark> {
        let bowls = taps::served_by(self.room, self.tap).into_iter().flat_map(Selection::standing);
        let filled = taps::fills_a_hole(self.option) || bowls.into_iter().any(taps::fills_a_hole);
        let own: Vec<&&Hole> = its.iter().filter(|hole| !beside::has_another_use(&hole.purpose.value)).collect();
        let name = &self.tap.name.value;
        if let Some((takes, _)) = taps::holes(self.option).filter(|(takes, _)| own.len() > *takes && !filled) {
            let takes = if takes == 1 { Phrase::from("1 hole") } else { phrase!("{takes} holes", takes) };
            let message = phrase!("`{name}` takes {takes}, and the list has {} for it", name, takes, own.len());
            return Some(self.finding(Severity::Query, own.last()?.purpose.span, message));
        }
        let is_small = |hole: &&&Hole| hole.diameter.get().is_some_and(|is| *is < LEAST_HOLE);
        let of_sheet = self.option.range(DetailName::HoleDiameter).is_some();
        let small = own.into_iter().find(is_small).filter(|_| !of_sheet)?;
        let (is, least) = (self.say(*small.diameter.get()?), self.say(LEAST_HOLE));
        let message = phrase!(
            "the hole for `{name}` is {is} across, where taps go through {least} and more, and its sheet's figure is not written",
            name,
            is,
            least
        );
        let finding = self.finding(Severity::Query, small.purpose.span, message).source("common practice");
        Some(finding.remedy("look at the tap's sheet, and add `hole diameter: …` to it"))
    }

    fn of_list(&self, its: &[&Hole]) -> Vec<Remark> {
        let mut told: Vec<Remark> = diameter::judge(self, its).into_iter().collect();
        // Of holes that are alike, what is wrong is told once.
        let mut alike: Vec<(Option<&Length>, Option<&Length>)> = Vec::new();
        for hole in its {
            let is = (hole.spread.get(), hole.behind.get());
            if let Some(message) = self.fault(hole).filter(|_| !alike.contains(&is)) {
                told.push(self.finding(Severity::Stop, hole.purpose.span, message));
            }
            alike.push(is);
        }
        told
    }

    /// What is wrong with a hole of the list.
    fn fault(&self, hole: &Hole) -> Option<Phrase> {
        let units = self.context.book.project.units;
        let name = &self.tap.name.value;
        if let (Some((asked, _)), Some(spread)) = (taps::spread(self.option), hole.spread.get())
            && !taps::meet(asked, LengthRange::exactly(*spread), PLAY)
        {
            let (is, asked) = (self.say(*spread), say_range(asked, units));
            return Some(phrase!(
                "the holes for `{name}` are {is} apart, and it takes them {asked} apart",
                name,
                is,
                asked
            ));
        }
        let (travel, _) = self.option.length(DetailName::RearTravel)?;
        let behind = *hole.behind.get()?;
        (travel > behind).then(|| {
            let (travels, more) = (self.say(travel), self.say(travel - behind));
            phrase!("the lever of `{name}` moves {travels} behind its hole, {more} more than there is to what stands behind", name, travels, more)
        })
    }

    /// It takes several holes so far apart, and nobody says how far apart those of its bowl are.
    fn spread_unsaid(&self, bowl: &Selection, option: &ProductOption, at: Span) -> Option<Remark> {
        let several = taps::holes(self.option).is_some_and(|(takes, _)| takes > 1);
        let unsaid = bowl.is_any(&[Kind::Basin, Kind::Sink]) && option.lacks(DetailName::Spread);
        let (asked, own) = taps::spread(self.option).filter(|_| several && unsaid)?;
        let message = phrase!(
            "`{tap}` takes its holes {asked} apart, and nobody says how far apart those of `{bowl}` are",
            self.tap.name.value,
            say_range(asked, self.context.book.project.units),
            bowl.name.value
        );
        let finding = self.finding(Severity::Query, at, message).also(own, "its spread");
        Some(finding.remedy("look at the bowl's sheet, and add `spread: …` to it"))
    }

    /// What is wrong with the holes that a bowl comes with.
    fn in_a_bowl(&self, bowl: &Selection, option: &ProductOption) -> Option<Remark> {
        let (has, at) = taps::holes(option)?;
        let whole = bowl;
        let (tap, bowl) = (&self.tap.name.value, &bowl.name.value);
        let units = self.context.book.project.units;
        let takes = taps::holes(self.option);
        if let Some((takes, own)) = takes.filter(|(takes, _)| *takes > has) {
            let message = phrase!("`{tap}` takes {takes} holes, and `{bowl}` has {has}", tap, takes, bowl, has);
            return Some(self.finding(Severity::Stop, own, message).also(at, "its holes").remedy(ANOTHER));
        }
        let spreads = taps::spread(self.option).zip(taps::spread(option));
        if let Some(((asked, own), (there, at))) = spreads.filter(|(one, two)| !taps::meet(one.0, two.0, PLAY)) {
            let (is, asked) = (say_range(there, units), say_range(asked, units));
            let message = phrase!(
                "the holes of `{bowl}` are {is} apart, and `{tap}` takes them {asked} apart",
                bowl,
                is,
                tap,
                asked
            );
            return Some(self.finding(Severity::Stop, own, message).also(at, "its spread").remedy(ANOTHER));
        }
        if let (Some(asked), Some(there)) =
            (self.option.range(DetailName::HoleDiameter), option.range(DetailName::HoleDiameter))
            && !taps::meet(asked, there, Length::ZERO)
        {
            let (is, asked) = (say_range(there, units), say_range(asked, units));
            let message = phrase!(
                "the holes of `{bowl}` are {is} across, where the sheet of `{tap}` asks {asked}",
                bowl,
                is,
                tap,
                asked
            );
            return Some(self.finding(Severity::Stop, at, message).remedy(ANOTHER));
        }
        if let Some(finding) = self.spread_unsaid(whole, option, at) {
            return Some(finding);
        }
        let open = takes.map_or(0, |(takes, _)| has - takes);
        let filled = [self.option, option].into_iter().any(taps::fills_a_hole);
        if open == 0 || filled {
            return None;
        }
        let holes = if open == 1 { Phrase::from("1 hole stays") } else { phrase!("{open} holes stay", open) };
        let message = phrase!("{holes} open in `{bowl}` beside `{tap}`", holes, bowl, tap);
        Some(self.finding(Severity::Query, at, message).remedy(
            "order a plate or what else goes through, and name it among `accessories`; or take a bowl with fewer holes",
        ))
    }
}

impl At<'_> {
    /// The lever against what the plan has behind it, where no list of holes says how far that is.
    fn lever_by_the_plan(&self, listed: &[&Hole], bowl: Option<&Selection>) -> Option<Remark> {
        let its = taps::drilled_for(self.room, listed, self.tap);
        let is_said = its.iter().any(|hole| !hole.behind.is_absent());
        let bowl = bowl.filter(|_| !is_said && !taps::stands_free(self.tap, self.option))?;
        let own = bowl.settled().filter(|own| taps::holes(own).is_none_or(|(has, _)| has == 0))?;
        let (travel, at) = self.option.length(DetailName::RearTravel).filter(|(travel, _)| *travel > Length::ZERO)?;
        let opening = self.room.opening(bowl.place.get()?)?;
        let deck = deck(self.room, opening)?;
        let plan = self.context.site.plan(self.room);
        let trim = plan.and_then(|plan| window_trim_behind(plan, self.room, opening));
        let splash = deck.behind.as_ref().map_or(Length::ZERO, |behind| behind.thickness);
        let trim = trim.filter(|trim| trim.thickness > splash);
        let clear = deck.clear + splash - trim.as_ref().map_or(splash, |trim| trim.thickness);
        let rail = match own.mount()? {
            Mount::Under if bowl.is(Kind::Basin) => RAIL_OF_A_VANITY,
            Mount::Under => RAIL,
            Mount::Apron => Length::ZERO,
            // The hole is in the rim of what is let in from above, or in no counter at all.
            Mount::DropIn | Mount::OnCounter | Mount::InNoCabinet => return None,
        };
        let inside = *own.size.depth.get()? - RIMS;
        let before = its.iter().find_map(|hole| hole.to_bowl.get().copied()).unwrap_or(BEFORE_THE_HOLE);
        let left = (clear - rail - inside - before).max(Length::ZERO);
        let there = trim.or(deck.behind);
        let what = there.as_ref().map_or(Phrase::from("the wall"), |there| behind(&there.is));
        let message = phrase!(
            "the lever of `{}` moves {} behind its hole, and the plan leaves about {} to {what}",
            self.tap.name.value,
            self.say(travel),
            self.say(left),
            what
        );
        let finding = || self.finding(Severity::Query, at, message).source("common practice");
        (travel > left).then(|| match &there {
            Some(there) => finding().also(there.at, "what stands behind"),
            None => finding().also(deck.at, "the counter's depth"),
        })
    }
}

/// The counter before a bowl, and before one of a vanity (common practice: 4\" and 3 1/2\").
const RAIL: Length = Length::from_inches(4);
const RAIL_OF_A_VANITY: Length = Length::from_sixty_fourths(224);
/// What the rims of a bowl take of its outside, front and back together (common practice).
const RIMS: Length = Length::from_inches(2);
/// From a bowl to the hole behind it, as is usual: 2 1/2 in (common practice).
const BEFORE_THE_HOLE: Length = Length::from_sixty_fourths(160);

/// Less across goes no tap through a counter (common practice: 1 1/4" to 1 1/2").
const LEAST_HOLE: Length = Length::from_sixty_fourths(72);

const ANOTHER: &str = "take another tap, or a bowl that is drilled for this one";
