//! Holes in counters and sinks against the taps that go through them.

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
    /// one that its name shares a word with.
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
    judges: [Sink, Basin, Tap, Counter],
    sources: ["the maker's sheet", "the fabricator's list of holes"],
    caution: Some(Hazard::Stone),
    remedy: "have the list of holes signed at the template: each by purpose, diameter and place",
    Check::Book(check)
}

/// How far apart two spreads may be (common practice: what a washer hides).
const PLAY: Length = Length::from_sixty_fourths(4);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let listed: Vec<&Hole> =
            room.selections.iter().flat_map(Selection::standing).flat_map(|option| &option.drilled).collect();
        let of_kind = room.selections.iter().filter(|selection| selection.is(Kind::Tap));
        for tap in of_kind {
            let bowl = taps::bowl_of(room, tap);
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
        let its = taps::drilled_for(listed, self.tap);
        let takes = taps::holes(self.option);
        let bowls = bowl.into_iter().flat_map(Selection::standing);
        let enough = takes.is_none_or(|(takes, _)| its.len() >= takes);
        if !its.is_empty() && enough {
            return self.of_list(&its);
        }
        let in_bowl: Vec<&ProductOption> =
            bowls.filter(|option| taps::holes(option).is_some_and(|(has, _)| has > 0)).collect();
        let has_its_own = in_bowl.iter().any(|option| taps::holes(option) >= takes);
        match takes {
            Some((takes, _)) if !listed.is_empty() && !has_its_own => {
                let message =
                    phrase!("`{}` takes {takes} holes, and {} are on the list", self.tap.name.value, takes, its.len());
                vec![self.finding(Severity::Stop, self.tap.span, message)]
            }
            _ if taps::is_on_the_wall(self.tap, self.option) => vec![],
            _ if listed.is_empty() && in_bowl.is_empty() => self.no_list(bowl).into_iter().collect(),
            _ => in_bowl.into_iter().filter_map(|option| self.in_a_bowl(bowl?, option)).collect(),
        }
    }

    /// Its hole goes through a counter, and nobody lists what is drilled there.
    fn no_list(&self, bowl: Option<&Selection>) -> Option<Remark> {
        let bowl = bowl?;
        let beside = |option: &ProductOption| {
            matches!(option.mount(), Some(Mount::Under | Mount::OnCounter | Mount::Apron))
                && option.detail(DetailName::Holes).is_none()
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

    fn of_list(&self, its: &[&Hole]) -> Vec<Remark> {
        let faults = its.iter().filter_map(|hole| Some((hole.purpose.span, self.fault(hole)?)));
        faults.map(|(at, message)| self.finding(Severity::Stop, at, message)).collect()
    }

    /// What is wrong with a hole of the list.
    fn fault(&self, hole: &Hole) -> Option<Phrase> {
        let units = self.context.book.project.units;
        let name = &self.tap.name.value;
        if let (Some(range), Some(diameter)) = (self.option.range(DetailName::HoleDiameter), hole.diameter.get())
            && !range.contains(*diameter)
        {
            let (is, asked) = (self.say(*diameter), say_range(range, units));
            return Some(phrase!(
                "the hole for `{name}` is {is} across, where its sheet asks {asked}",
                name,
                is,
                asked
            ));
        }
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

    /// What is wrong with the holes that a bowl comes with.
    fn in_a_bowl(&self, bowl: &Selection, option: &ProductOption) -> Option<Remark> {
        let (has, at) = taps::holes(option)?;
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
        let its = taps::drilled_for(listed, self.tap);
        let is_said = its.iter().any(|hole| !hole.behind.is_absent());
        let bowl = bowl.filter(|_| !is_said && !taps::is_on_the_wall(self.tap, self.option))?;
        let own = bowl.settled().filter(|own| taps::holes(own).is_none_or(|(has, _)| has == 0))?;
        let (travel, at) = self.option.length(DetailName::RearTravel).filter(|(travel, _)| *travel > Length::ZERO)?;
        let opening = self.room.opening(bowl.place.get()?)?;
        let deck = deck(self.room, opening)?;
        let plan = self.context.site.plan(self.room);
        let trim = plan.and_then(|plan| window_trim_behind(plan, self.room, opening));
        let splash = deck.behind.as_ref().map_or(Length::ZERO, |behind| behind.thickness);
        let trim = trim.filter(|trim| trim.thickness > splash);
        let clear = deck.clear + splash - trim.as_ref().map_or(splash, |trim| trim.thickness);
        let rail = match (*own.understood::<Option<Mount>>()?.0)? {
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

const ANOTHER: &str = "take another tap, or a bowl that is drilled for this one";

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
            .finds("the lever of `Kitchen tap` moves 1 3/4\" (44.4 mm) behind its hole, 3/4\" (19 mm) more than there is to what stands behind");
        tap("{for: kitchen tap, diameter: 1 3/8\", behind: 1 3/4\"}").stays_silent();
    }

    #[test]
    fn a_counter_that_a_tap_stands_in_has_a_list_of_holes() {
        let counter = |counter: &str, mount: &str| {
            Trial::of("fit/holes")
                .selection("selection: Counter\nkind: counter", counter)
                .selection("selection: Sink\nkind: sink", &format!("mount: {mount}"))
                .selection("selection: Kitchen tap\nkind: tap", "holes: 1")
        };
        counter("", "undermount")
            .finds("`Kitchen tap` stands in a counter, and no list says where `Counter` is drilled for it")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
        counter("drilled: [{for: kitchen tap}]", "undermount").stays_silent();
        counter("", "drop-in").stays_silent();
        counter("", "undermount\nholes: 1").stays_silent();
    }

    fn in_bowl(bowl: &str, tap: &str) -> Trial {
        Trial::of("fit/holes")
            .selection("selection: Basin\nkind: basin", bowl)
            .selection("selection: Basin tap\nkind: tap", tap)
    }

    /// Source: common practice: three holes 4" or 8" apart, or one; a plate covers what is left over.
    #[test]
    fn the_holes_that_a_bowl_comes_with_are_those_of_its_tap() {
        in_bowl("holes: 1", "holes: 3\nspread: 8\"")
            .finds("`Basin tap` takes 3 holes, and `Basin` has 1")
            .weighs("stop")
            .points_at(&["rooms/kitchen/selection-1.yaml:3:8"]);
        in_bowl("holes: 3\nspread: 4\"", "holes: 3\nspread: 8\"")
            .finds("the holes of `Basin` are 4\" (102 mm) apart, and `Basin tap` takes them 8\" (203 mm) apart");
        in_bowl("holes: 3\nspread: 4 in centreset", "holes: 3\nspread: widespread 8\"").finds_one().weighs("stop");
        in_bowl("holes: 3\nspread: 8\"", "holes: 3\nspread: 6\" to 12\"").stays_silent();
        in_bowl("holes: 1\nhole diameter: 1 1/8\"", "holes: 1\nhole diameter: 1 3/8\" to 1 1/2\"").finds_one();
        in_bowl("holes: 3\nspread: 4\"", "holes: 1\nspread: single hole")
            .finds("2 holes stay open in `Basin` beside `Basin tap`")
            .weighs("query");
        in_bowl("holes: 3\nspread: 4\"", "holes: 1\naccessories: [{name: deck plate}]").stays_silent();
        in_bowl("holes: 1", "holes: 1").stays_silent();
    }

    /// Source: trade reports F-55 (a lever at the splash), F-57 (at a sill), section 6 (4" of counter before a bowl).
    /// Arithmetic: 25 1/2" less 3/4", 4", 17" and 2 1/2" leave 1 1/4".
    #[test]
    fn where_no_list_says_what_is_behind_the_plan_tells() {
        let sink = |counter: &str, travel: &str, more: &str| {
            Trial::of("fit/holes")
                .room(&format!("runs: {{sink wall: {{counter: {{{counter}}}, parts: [{{cabinet: base, width: 36\", holds: [sink]}}]}}}}\n{more}"))
                .opening("sink", "{takes: sink}")
                .selection("selection: Sink\nkind: sink\nplace: sink", "mount: undermount\nsize: {depth: 19\"}")
                .selection("selection: Tap\nkind: tap", &format!("rear travel: {travel}"))
        };
        let deep = "depth: 25 1/2\", height: 36\"";
        let splash = format!("{deep}, splash: {{thickness: 3/4\"}}");
        sink(&splash, "1 1/2\"", "")
            .finds("the lever of `Tap` moves 1 1/2\" (38.1 mm) behind its hole, and the plan leaves about 1 1/4\" (31.8 mm) to the splash of `sink wall`")
            .weighs("query");
        sink(&splash, "1 1/4\"", "").stays_silent();
        sink(deep, "1 1/2\"", "").stays_silent();
        let tile = |behind: &str| {
            sink(deep, "1 3/4\"", "")
                .selection("selection: Splash tile\nkind: tile", &format!("thickness: 3/8\"\nlaid: {{{behind}}}"))
        };
        tile("behind: [sink wall]").finds_one();
        tile("area: 20 sq ft").stays_silent();
        let drilled = |hole: &str| {
            sink(&splash, "1 1/2\"", "")
                .selection("selection: Counter\nkind: counter", &format!("drilled: [{{for: tap{hole}}}]"))
        };
        drilled(", behind: 2\"").stays_silent();
        drilled(", to bowl: 2\"").stays_silent();
        drilled("").finds_one();
    }

    #[test]
    fn a_hole_of_the_list_may_say_how_far_the_next_one_is() {
        let tap = |spread: &str| {
            Trial::of("fit/holes")
                .selection(
                    "selection: Counter\nkind: counter",
                    &format!("drilled: [{{for: tap, spread: {spread}}}, {{for: tap}}]"),
                )
                .selection("selection: Kitchen tap\nkind: tap", "holes: 2\nspread: 8\"")
        };
        tap("6\"").finds("the holes for `Kitchen tap` are 6\" (152 mm) apart, and it takes them 8\" (203 mm) apart");
        tap("8\"").stays_silent();
    }
}
