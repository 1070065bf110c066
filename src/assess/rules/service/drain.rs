//! The drain at an opening against what the thing needs.

mod heights;
mod untold;
mod ways;

use super::{ServiceNeed, asked};
use crate::assess::codes::metric::advised;
use crate::assess::codes::{
    BASIN_TRAP, BASIN_TRAP_USUAL, Figure, Ruling, SHOWER_TRAP, SHOWER_TRAP_BY_FLOW, SHOWER_TRAP_LATER,
    SHOWER_TRAP_USUAL, SINK_TRAP, SINK_TRAP_USUAL, TOILET_OUTLET, TRAP_SEAL, TRAP_SEAL_MOST, TRAP_SEAL_USUAL,
    WASHER_TRAP, WASHER_TRAP_USUAL,
};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, say};
use crate::book::{DetailName, ProductOption, Room, Selection, Service};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::vanity::vanity_of;
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::supply::{Drain, Worded};
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// The drain is smaller or higher than the thing needs
    ///
    /// ## What it checks
    /// The drain at the opening against the maker's sheet: its size at least the sheet's, its height (by its words or
    /// its service point) within the sheet's limits, and asked for where the sheet has limits and nobody says it; where
    /// the sheet names one height, no higher than that. What a dishwasher's hose is led through, a high loop or an air
    /// gap, where its sheet asks for it, or where the words at the opening say that there is none. A
    /// washer's standpipe that ends less than {18"} or more than {42"} above its trap. Whatever the sheet says, the trap's least size by the plumbing code: {1 1/4"} for a
    /// basin, {1 1/2"} for a kitchen sink or a tub, {2"} for a laundry trough or a washer's standpipe, {2"} for a
    /// shower ({1 1/2"} up to 5.7 gpm in the edition of 2021). And the water that a trap holds (`trap seal 3"` in
    /// the words of the drain, or `trap seal` of the thing): {2"} to {4"}. Where no
    /// code is at hand, what is usual: {32 mm} for a basin, {40 mm} for a sink, a tub or a washer, {75 mm} for a
    /// toilet. A basin that stands on a vanity is held to the drain of the vanity's opening.
    ///
    /// ## Why it matters
    /// A drain that is too high leaves a deep sink without a fall, and a disposer without room.
    ///
    /// ## Remedy
    /// Have a plumber lower or change the drain before the wall is closed, or choose a shallower bowl.
    ///
    /// ## Example
    /// ```yaml
    /// service: {drain: "1 1/2\", 20\" AFF"}     # the sheet asks at most 16" AFF
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; IRC Table P3201.7 (trap sizes); IRC P3201.2 (seals), P2706.1.2 (standpipes) and P2717.1
    /// (dishwashers), from memory.
    "service/drain", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: [Sink, Basin, Bathtub, ShowerSet, ShowerTray, Drain, Toilet, Washer, Dishwasher, PanelDishwasher, Disposer],
    sources: ["the maker's sheet", "IRC Table P3201.7", "IRC P3201.2, P2706.1.2, P2717.1 (from memory)"],
    caution: Some(Hazard::Water),
    remedy: "have a plumber lower or change the drain before the wall is closed",
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    // Of one drain it is told once that it is too small: of the thing's own sheet, of a tray and the set over it.
    let mut judged: Vec<Span> = Vec::new();
    for asked in asked(context, |needs| &needs.drain, |service| &service.drain) {
        if let Some(absent) = asked.absent(Service::Drain) {
            findings.push(absent);
        } else if let Some(smaller) = smaller(context, &asked) {
            judged.push(asked.fitted.opening.span);
            findings.push(smaller);
        } else if let Some(other) = ways::another(&asked) {
            findings.push(other);
        } else {
            findings.extend(heights::at_another(context, &asked));
        }
    }
    for fitted in context.site.connected() {
        if let Some(told) = trap(context, &fitted).filter(|_| !judged.contains(&fitted.opening.span)) {
            judged.push(fitted.opening.span);
            findings.push(told);
        }
    }
    findings.extend(context.site.connected().filter_map(|fitted| untold::judge(&fitted)));
    findings.extend(context.site.connected().filter_map(|fitted| seal(context, &fitted)));
    findings.extend(context.site.connected().filter_map(|fitted| heights::above_its_trap(context, &fitted)));
    findings.extend(context.site.connected().filter_map(|fitted| ways::without_a_loop(&fitted)));
    findings.extend(context.site.options().filter_map(|one| behind_a_vanity(context, one)));
    findings.extend(context.site.options().filter_map(|one| seal_of_its_own(context, one)));
}

/// A drain that is smaller than the sheet asks.
fn smaller(context: &Context<'_>, asked: &ServiceNeed<'_, Drain>) -> Option<Remark> {
    let units = context.book.project.units;
    let (needs, has) = (asked.needs.is.pipe.size?, asked.there?.is.pipe.size?);
    if has >= advised(needs, has, units) || is_one_size(has, needs) {
        return None;
    }
    let say = |length| say(length, units);
    let name = &asked.fitted.selection.name.value;
    let message = phrase!("`{name}` needs a {} drain, and there is one of {}", name, say(needs), say(has));
    Some(asked.finding(Severity::Stop, message))
}

/// Sizes of waste pipe that are called by inches and by millimetres: 1 1/2" is 40 mm wherever both are sold (EN 1329
/// and BS 5255, from memory).
const ONE_SIZE: [(i64, i64); 6] = [(10, 32), (12, 40), (16, 50), (24, 80), (28, 90), (32, 110)];

fn is_one_size(one: Length, other: Length) -> bool {
    let is = |inches: Length, metric: Length| {
        ONE_SIZE.iter().any(|(eighths, millimetres)| {
            inches == Length::from_sixty_fourths(eighths * 8) && metric <= Length::from_millimetres(*millimetres)
        })
    };
    is(one, other) && one.times(2) > other
}

/// A basin that stands on a vanity, against the drain in the wall behind that.
fn behind_a_vanity(
    context: &Context<'_>,
    (room, selection, option): (&Room, &Selection, &ProductOption),
) -> Option<Remark> {
    let opening = vanity_of(room, selection)?.opening;
    outlet(context, &Placement::at((room, opening), (selection, option)), opening.service.drain.spanned()?)
}

/// The trap's least size by the code.
fn trap(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    outlet(context, fitted, fitted.opening.service.drain.spanned()?)
}

/// The figures that a drain is held to, the first that counts: the code's, or the usual one where no code is at hand.
fn outlets(kind: Kind) -> Vec<&'static Figure> {
    match kind {
        Kind::Basin => vec![&BASIN_TRAP, &BASIN_TRAP_USUAL],
        Kind::Sink | Kind::Bathtub => vec![&SINK_TRAP, &SINK_TRAP_USUAL],
        Kind::Washer => vec![&WASHER_TRAP, &WASHER_TRAP_USUAL],
        Kind::ShowerSet | Kind::ShowerTray => {
            vec![&SHOWER_TRAP, &SHOWER_TRAP_BY_FLOW, &SHOWER_TRAP_LATER, &SHOWER_TRAP_USUAL]
        }
        Kind::Toilet => vec![&TOILET_OUTLET],
        _ => vec![],
    }
}

/// What a drain is to a thing.
fn outlet(context: &Context<'_>, fitted: &Placement<'_>, there: &Spanned<Worded<Drain>>) -> Option<Remark> {
    let figures = outlets(*fitted.selection.kind.get()?);
    let (figure, least): (&'static Figure, Ruling<Length>) =
        figures.into_iter().find_map(|figure| Some((figure, context.rulings().length(figure)?)))?;
    let units = context.book.project.units;
    // Pipes are named by a rounded size: what is 2" in inches is 50 mm in metric.
    let has = there.is.pipe.size.filter(|has| *has < advised(least.value, *has, units))?;
    if is_one_size(has, least.value) {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the drain for `{}` is {}, less than the {} of the {}",
        fitted.selection.name.value,
        say(has),
        say(least.value),
        figure.name
    );
    Some(fitted.finding(least.severity, there.span, message).source(least.source))
}

/// The water that the trap holds, wherever its depth is written: at the drain, on the thing, in what its sheet asks.
fn seal(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.drain.spanned();
    let of_drain = there.and_then(|drain| Some((drain.value.is.seal?, drain.span)));
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.drain.spanned());
    let of_sheet = || needs.and_then(|drain| Some((drain.value.is.seal?, drain.span)));
    let (is, at) = of_drain.or_else(|| fitted.option.length(DetailName::TrapSeal)).or_else(of_sheet)?;
    let (message, ruling) = seal_told(context, fitted.selection, is)?;
    let finding = fitted.finding(ruling.severity, at, message).source(ruling.source);
    Some(finding.remedy(NEITHER_DRY_NOR_FOUL))
}

const NEITHER_DRY_NOR_FOUL: &str = "have a plumber set a trap with a seal that neither dries out nor stays foul";

/// The seal of a thing that is at no opening.
fn seal_of_its_own(
    context: &Context<'_>,
    (room, selection, option): (&Room, &Selection, &ProductOption),
) -> Option<Remark> {
    let (is, at) = option.length(DetailName::TrapSeal)?;
    if context.site.connected().any(|fitted| std::ptr::eq(fitted.option, option)) {
        return None;
    }
    let (message, ruling) = seal_told(context, selection, is)?;
    let finding = about(room, selection, option, ruling.severity, at, message).source(ruling.source);
    Some(finding.remedy(NEITHER_DRY_NOR_FOUL))
}

/// What is wrong with a seal of that depth, and what asks for another.
fn seal_told(context: &Context<'_>, selection: &Selection, is: Length) -> Option<(Phrase, Ruling<Length>)> {
    let say = |length| say(length, context.book.project.units);
    let ruled = |figure: &'static Figure| Some((figure, context.rulings().length(figure)?));
    let least = ruled(&TRAP_SEAL).or_else(|| ruled(&TRAP_SEAL_USUAL));
    let short = least.filter(|(_, least)| is < advised(least.value, is, context.book.project.units));
    let deep = || ruled(&TRAP_SEAL_MOST).filter(|(_, most)| is > most.value);
    let (word, (figure, ruling)) = match short {
        Some(short) => ("less", short),
        None => ("more", deep()?),
    };
    let message = phrase!(
        "the seal of the trap for `{}` is {}, {word} than the {} of the {}",
        selection.name.value,
        say(is),
        word,
        say(ruling.value),
        figure.name
    );
    Some((message, ruling))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn sink(there: &str, needs: &str) -> Trial {
        Trial::of("service/drain")
            .opening("hole", &format!("{{takes: sink, service: {{drain: '{there}'}}}}"))
            .selection("selection: Sink\nkind: sink\nplace: hole", &format!("fit: {{needs: {{drain: '{needs}'}}}}"))
    }

    /// Source: trade reports F-59 (drain too high for a deep bowl).
    #[test]
    fn a_drain_too_high_or_too_small_stops() {
        sink("1 1/2\", 20\" AFF", "1 1/2\", at most 16\" AFF")
            .finds("the drain for `Sink` is 20\" (508 mm) above the finished floor, 4\" (102 mm) higher than its sheet allows")
            .weighs("stop")
            .cautions();
        sink("1 1/2\", 16\" AFF", "1 1/2\", at most 16\" AFF").stays_silent();
        sink("1 1/2\"", "2\"").finds_one();
        sink("1 1/4\"", "2\"").finds_one();
    }

    /// Source: check values IR-47: a shower of 2.5 gpm has 1 1/2" in 2021, and 2" in older editions.
    #[test]
    fn a_shower_s_trap_goes_by_the_edition() {
        let shower = |drain: &str, book: &str| {
            Trial::of("service/drain")
                .book(book)
                .opening("stall", &format!("{{takes: shower set, service: {{drain: '{drain}'}}}}"))
                .selection("selection: Shower\nkind: shower set\nplace: stall", "")
        };
        shower("1 1/2\"", "")
            .finds("the drain for `Shower` is 1 1/2\" (38.1 mm), less than the 2\" (51 mm) of the trap of a shower")
            .weighs("query");
        shower("2\"", "").stays_silent();
        shower("1 1/2\"", "codes: {adopts: [IRC 2018]}").finds_one().weighs("stop");
        shower("1 1/2\"", "codes: {adopts: [IRC 2021]}").stays_silent();
        shower("1 1/4\"", "codes: {adopts: [IRC 2021]}").finds_one();
        shower("1 1/2\"", "codes: {adopts: [IRC 2024]}").finds_one();
        let tray = |drain: &str| {
            Trial::of("service/drain")
                .book("country: ES")
                .opening("stall", &format!("{{takes: shower tray, service: {{drain: '{drain}'}}}}"))
                .selection("selection: Tray\nkind: shower tray\nplace: stall", "")
        };
        tray("32 mm").finds_one().weighs("query");
        tray("32 mm").selection("selection: Shower\nkind: shower set\nplace: stall", "").finds_one();
        tray("40 mm").stays_silent();
        shower("40 mm", "country: DE").stays_silent();
        for country in ["CA", "GB", "AU"] {
            let basin = |drain: &str| {
                Trial::of("service/drain")
                    .book(&format!("country: {country}"))
                    .opening("hole", &format!("{{takes: sink, service: {{drain: '{drain}'}}}}"))
                    .selection("selection: Sink\nkind: sink\nplace: hole", "")
            };
            basin("1 1/2\" ABS, 16\" AFF").stays_silent();
            basin("1 1/4\"").finds_one();
        }
        shower("32 mm", "country: DE").finds_one();
    }

    /// Source: trade reports F-59 (a seal of 2" to 4" is allowed; one of 9" was built).
    #[test]
    fn a_trap_holds_neither_too_little_water_nor_too_much() {
        sink("1 1/2\", trap seal 1 1/2\"", "1 1/2\"")
            .finds("the seal of the trap for `Sink` is 1 1/2\" (38.1 mm), less than the 2\" (51 mm) of the least seal of a trap")
            .weighs("query")
            .cautions();
        sink("1 1/2\", 9\" seal", "1 1/2\"").finds_one();
        for seal in ["2\"", "3\"", "4\""] {
            sink(&format!("1 1/2\", trap seal {seal}"), "1 1/2\"").stays_silent();
        }
        let basin = |lines: &str, book: &str| {
            Trial::of("service/drain")
                .book(book)
                .opening("hole", "{takes: basin, service: {drain: '1 1/2\"'}}")
                .selection("selection: Basin\nkind: basin\nplace: hole", lines)
        };
        basin("trap seal: 1\"", "").finds_one().points_at(&["rooms/kitchen/selection-0.yaml:4:12"]);
        basin("trap seal: 2\"", "").stays_silent();
        let alone = |seal: &str| {
            Trial::of("service/drain").selection("selection: Basin\nkind: basin", &format!("trap seal: {seal}"))
        };
        alone("1\"").finds_one().weighs("query").cautions();
        alone("2\"").stays_silent();
        basin("fit: {needs: {drain: '1 1/4\", 1\" seal'}}", "").finds_one();
        basin("trap seal: 30 mm", "country: DE").finds_one();
        basin("trap seal: 50 mm", "country: DE").stays_silent();
        basin("trap seal: 130 mm", "country: DE").stays_silent();
    }

    /// Source: check values IR-46: a kitchen sink on 1 1/4" fails.
    #[test]
    fn a_trap_under_the_code_s_least_is_asked_about_and_stops_where_the_code_is_adopted() {
        sink("1 1/4\"", "center").finds_one().weighs("query");
        sink("1 1/4\"", "center").book("codes: {adopts: [IRC 2021]}").finds_one().weighs("stop");
        sink("1 1/2\"", "center").stays_silent();
    }

    /// Source: Approved Document H, table 1 (from memory): 32 mm for a basin, 40 mm for a sink or a bath.
    #[test]
    fn where_no_code_is_at_hand_the_usual_bore_is_asked_about() {
        let at = |country: &str, kind: &str, drain: &str| {
            Trial::of("service/drain")
                .file(
                    "book.yaml",
                    format!("title: Trial\nclient: Nobody\ncurrency: EUR\nunits: metric\ncountry: {country}\n"),
                )
                .opening("hole", &format!("{{takes: {kind}, service: {{drain: '{drain}'}}}}"))
                .selection(&format!("selection: It\nkind: {kind}\nplace: hole"), "model: M")
        };
        for country in ["DE", "GB", "AU", "FR"] {
            at(country, "sink", "32 mm, 400 mm AFF").finds_one().weighs("query");
            at(country, "sink", "40 mm, 400 mm AFF").stays_silent();
            at(country, "basin", "25 mm, 500 mm AFF").finds_one();
            at(country, "basin", "32 mm, 500 mm AFF").stays_silent();
            at(country, "toilet", "50 mm").finds_one();
            at(country, "toilet", "90 mm, 200 mm from the finished wall").stays_silent();
        }
        at("US", "toilet", "2\"").finds_one();
        at("US", "toilet", "3\"").stays_silent();
    }

    #[test]
    fn a_basin_on_a_vanity_drains_where_the_vanity_stands() {
        let vanity = |drain: &str| {
            Trial::of("service/drain")
                .opening("vanity", &format!("{{takes: cabinet, service: {{drain: '{drain}'}}}}"))
                .selection("selection: Vanity\nkind: cabinet\nplace: vanity", "")
                .selection("selection: Basin\nkind: basin", "")
        };
        vanity("1\", 18\" AFF").finds_one().weighs("query");
        vanity("1 1/4\", 18\" AFF").stays_silent();
    }

    /// Source: nominal sizes of drain pipe, NPS 1 1/2 beside DN 40 and NPS 2 beside DN 50 (from memory).
    #[test]
    fn a_pipe_named_in_rounded_millimetres_is_the_one_named_in_inches() {
        let washer = |drain: &str| {
            Trial::of("service/drain")
                .book("codes: {adopts: [IRC 2021]}")
                .opening("hole", &format!("{{takes: washer, service: {{drain: {drain}}}}}"))
                .selection("selection: Washer\nkind: washer\nplace: hole", "fit: {needs: {drain: standpipe}}")
        };
        washer("50 mm standpipe").stays_silent();
        washer("40 mm standpipe").finds_one();
    }

    /// Source: the maker's sheet (an air gap where a plumbing code wants one).
    #[test]
    fn a_drain_goes_the_way_that_the_sheet_asks() {
        let it = |kind: &str, there: &str, needs: &str| {
            Trial::of("service/drain")
                .opening("hole", &format!("{{takes: {kind}, service: {{drain: '{there}'}}}}"))
                .selection(
                    &format!("selection: It\nkind: {kind}\nplace: hole"),
                    &format!("fit: {{needs: {{drain: '{needs}'}}}}"),
                )
        };
        it("dishwasher", "to the disposer, high loop", "air gap")
            .finds("`It` needs its drain by an air gap (air gap), and at the opening it is by a high loop (to the disposer, high loop)")
            .weighs("query")
            .cautions();
        it("dishwasher", "to the disposer, air gap at the sink", "high loop").stays_silent();
        it("washer", "into the laundry tub", "standpipe").finds_one();
        it("washer", "floor drain", "standpipe").finds_one();
        it("washer", "2\" standpipe, 36\" AFF", "standpipe").stays_silent();
    }
}
