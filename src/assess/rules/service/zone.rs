//! Where a service comes out against where the maker's sheet wants it.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_range};
use crate::book::{Service, ServicePoint, ServiceZone};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::{behind_the_back_panel, left_behind};
use crate::site::{Placement, counter_height, raised_back};
use crate::source::Spanned;
use crate::units::{Length, LengthRange};
use crate::vocabulary::Hazard;

declare! {
    /// An outlet, valve or stub is outside the sheet's zone, or stands too far out of the wall
    ///
    /// ## What it checks
    /// Each service point of the opening against the sheet's zone: from the left edge, above the finished
    /// floor, how far proud of the wall, and whether it must be in the cabinet beside. Where the sheet
    /// leaves out how far a point may stand out, the room behind the thing is what counts: the opening's
    /// depth, that inside its cabinet, or that of an island before its raised back, less the thing's. What stands
    /// out behind a cabinet's back panel must have room between panel and wall, and the plate of a receptacle in
    /// a raised back must fit between counter and its top.
    ///
    /// ## Why it matters
    /// A stub {3"} proud of the wall keeps a range {3"} out of it, and the wall is opened from both sides.
    ///
    /// ## Remedy
    /// Have the point moved, or recessed, before the wall is closed.
    ///
    /// ## Example
    /// ```yaml
    /// service points: {gas: {from left: 15", height: 4", proud: 3"}}
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement.
    "service/zone", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: served,
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Power),
    Check::Book(check)
}

/// Half of what a receptacle's plate is high on its side (common practice: 2 3/4").
const HALF_A_PLATE: Length = Length::from_sixty_fourths(88);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        findings.extend(proud_in_words(context, &fitted));
        let Some(points) = fitted.opening.points.get() else { continue };
        let zones = fitted.option.fit.get().and_then(|fit| fit.zones.get());
        for (service, point) in points.named() {
            let Some(point) = point.spanned() else { continue };
            let named = zones.and_then(|zones| zones.named().into_iter().find(|(name, _)| *name == service));
            let zone = named.and_then(|(_, zone)| zone.spanned());
            let told = judge(context, &fitted, service, (point, zone));
            let told = told.or_else(|| behind_a_back_panel(context, &fitted, service, point));
            findings.extend(told.or_else(|| in_a_raised_back(context, &fitted, service, point)));
        }
    }
}

fn judge(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    service: Service,
    (point, zone): (&Spanned<ServicePoint>, Option<&Spanned<ServiceZone>>),
) -> Option<Remark> {
    let fault = fault(context, fitted, service, &point.value, zone.map(|zone| &zone.value))?;
    let mut finding = fitted
        .finding(Severity::Stop, point.span, fault)
        .remedy("have the point moved or recessed before the wall is closed, or choose what reaches it");
    if service == Service::Gas {
        finding.caution = Some(Hazard::Gas);
    }
    Some(zone.map_or(finding.clone(), |zone| finding.also(zone.span, "the sheet's zone")))
}

fn fault(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    service: Service,
    point: &ServicePoint,
    zone: Option<&ServiceZone>,
) -> Option<Phrase> {
    let say = |length: Length| say(length, context.book.project.units);
    let name = &fitted.selection.name.value;
    let outside = |way: &'static str, at: Option<&Length>, range: Option<&LengthRange>| {
        let (at, range) = (at?, range?);
        (!range.contains(*at)).then(|| {
            phrase!(
                "the {service} for `{name}` comes out {} {way}, where its sheet wants {}",
                service,
                name,
                say(*at),
                way,
                say_range(*range, context.book.project.units)
            )
        })
    };
    let beside = zone.and_then(|zone| zone.beside.get()).is_some_and(|beside| *beside);
    if beside && point.beside.get() == Some(&false) {
        return Some(phrase!(
            "the {service} for `{name}` is behind it, where its sheet wants it in the cabinet beside",
            service,
            name
        ));
    }
    outside("from the left", point.from_left.get(), zone.and_then(|zone| zone.from_left.get()))
        .or_else(|| outside("above the finished floor", point.height.get(), zone.and_then(|zone| zone.height.get())))
        .or_else(|| {
            let proud = *point.proud.get()?;
            let behind = || Some(left_behind(fitted.room, fitted.opening, fitted.option)?.0);
            let most = zone.and_then(|zone| zone.proud.get()).copied().or_else(behind)?;
            let is_beside = point.beside.get() == Some(&true);
            (proud > most && !is_beside).then(|| {
                let (proud, over, most) = (say(proud), say(proud - most), say(most));
                phrase!("the {service} behind `{name}` stands {proud} out of the wall, {over} more than the {most} there is", service, name, proud, over, most)
            })
        })
}

/// What stands out of the wall by the words of a service, where no point says it, against what is left behind the thing.
fn proud_in_words(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let opening = fitted.opening;
    let is_a_point = |service: Service| {
        let points = opening.points.get();
        points.is_some_and(|points| points.named().iter().any(|(name, point)| *name == service && !point.is_absent()))
    };
    let water = opening.service.water.spanned().and_then(|told| Some((Service::Water, told.is.proud?, told.span)));
    let power = opening.service.power.spanned().and_then(|told| Some((Service::Power, told.is.proud?, told.span)));
    let told = [water, power].into_iter().flatten().filter(|(service, ..)| !is_a_point(*service));
    let (service, proud, at) = told.max_by_key(|(_, proud, _)| *proud)?;
    let (most, _) = left_behind(fitted.room, opening, fitted.option).filter(|(most, _)| proud > *most)?;
    let say = |length| say(length, context.book.project.units);
    let name = &fitted.selection.name.value;
    let (out, over, most) = (say(proud), say(proud - most), say(most));
    let message = phrase!(
        "the {service} behind `{name}` stands {proud} out of the wall, {over} more than the {most} there is",
        service,
        name,
        out,
        over,
        most
    );
    let finding = fitted.finding(Severity::Stop, at, message);
    Some(finding.remedy("have the point moved or recessed before the wall is closed, or choose what reaches it"))
}

/// A point that the back panel of its cabinet can't get past, on its way to the wall.
fn behind_a_back_panel(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    service: Service,
    point: &Spanned<ServicePoint>,
) -> Option<Remark> {
    let proud = *point.value.proud.get().filter(|_| point.value.beside.get() != Some(&true))?;
    let (left, at) = behind_the_back_panel(fitted.room, fitted.opening).filter(|(left, _)| proud > *left)?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the {service} behind `{}` stands {} out of the wall, {} more than is left behind the back panel of its cabinet: {}",
        service,
        fitted.selection.name.value,
        say(proud),
        say(proud - left),
        say(left)
    );
    let finding = fitted.finding(Severity::Stop, point.span, message).also(at, "to the back panel");
    Some(finding.remedy("have the point recessed, the back panel cut away before it, or the cabinet made deeper"))
}

/// A receptacle whose plate finds no room in the raised back over the counter.
fn in_a_raised_back(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    service: Service,
    point: &Spanned<ServicePoint>,
) -> Option<Remark> {
    let at = *point.value.height.get().filter(|_| service == Service::Power)?;
    let back = raised_back(fitted.room, fitted.opening)?;
    let (high, counter) = (back.height.spanned()?, counter_height(fitted.room, fitted.opening).value()?);
    let above = Some(at - counter).filter(|above| *above > Length::ZERO)?;
    if above >= HALF_A_PLATE && above + HALF_A_PLATE <= high.value {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the {service} for `{}` is {} above the counter, and a raised back of {} leaves no room there for its plate",
        service,
        fitted.selection.name.value,
        say(above),
        say(high.value)
    );
    let finding = fitted.finding(Severity::Query, point.span, message).also(high.span, "the raised back");
    let finding = finding.source("common practice: a plate lies 2 3/4\" high on its side");
    Some(finding.remedy("have the box set in the middle of the raised back, or the back made higher"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(points: &str, sheet: &str) -> Trial {
        Trial::of("service/zone")
            .opening("hole", &format!("{{takes: range, depth: 25\", service points: {points}}}"))
            .selection("selection: Range\nkind: range\nplace: hole", &format!("size: {{depth: 24\"}}\nfit: {sheet}"))
    }

    /// Source: trade reports F-31: a gas stub 3" proud of the wall behind a range without a recess.
    #[test]
    fn a_stub_that_stands_out_farther_than_there_is_room_stops() {
        range("{gas: {proud: 3\"}}", "{}")
            .finds("the gas behind `Range` stands 3\" (76 mm) out of the wall, 2\" (51 mm) more than the 1\" (25.4 mm) there is")
            .cautions();
        range("{gas: {proud: 1\"}}", "{}").stays_silent();
        range("{gas: {proud: 3\"}}", "{zones: {gas: {proud: 3\"}}}").stays_silent();
    }

    /// Source: trade reports F-31, F-35 (an outlet behind an oven's back panel keeps the cabinet off the wall).
    #[test]
    fn a_point_behind_a_back_panel_or_a_raised_back_is_judged_by_what_is_left() {
        let oven = |inside: &str, point: &str| {
            Trial::of("service/zone")
                .room("runs: {tall wall: {depth: 24\", parts: [{tall: oven tower, width: 30\", holds: [niche]}]}}")
                .opening("niche", &format!("{{takes: wall oven, cabinet: {{inside depth: {inside}}}, service points: {{power: {{{point}}}}}}}"))
                .selection("selection: Oven\nkind: wall oven\nplace: niche", "size: {depth: 21\"}")
        };
        oven("21 1/2\"", "proud: 3\"").finds("the power behind `Oven` stands 3\" (76 mm) out of the wall, 2 1/2\" (64 mm) more than the 1/2\" (12.7 mm) there is");
        oven("23\"", "proud: 2\"").finds("the power behind `Oven` stands 2\" (51 mm) out of the wall, 1\" (25.4 mm) more than is left behind the back panel of its cabinet: 1\" (25.4 mm)");
        oven("23\"", "proud: 1\"").stays_silent();
        oven("23\"", "proud: 2\", beside: true").stays_silent();
        oven("23\", back panel: cut away", "proud: 2\"").stays_silent();
        let island = |size: &str, point: &str| {
            Trial::of("service/zone")
                .room(&format!("islands: {{bar: {{size: {size}, height: 36\", wall side: {{parts: [{{opening: range}}]}}, room side: {{splash: {{thickness: 5\", height: 6\"}}}}}}}}"))
                .opening("range", &format!("{{takes: range, width: 30\", service points: {{power: {{{point}}}}}}}"))
                .selection("selection: Range\nkind: range\nplace: range", "size: {depth: 25\"}")
        };
        island("60\" x 31\"", "proud: 2\"")
            .finds("the power behind `Range` stands 2\" (51 mm) out of the wall, 1\" (25.4 mm) more than the 1\" (25.4 mm) there is");
        island("60\" x 32\"", "proud: 2\"").stays_silent();
        island("60\" x 42\"", "height: 41 1/2\"").finds_one().weighs("query");
        island("60\" x 42\"", "height: 36 1/2\"").finds_one();
        island("60\" x 42\"", "height: 39\"").stays_silent();
        island("60\" x 42\"", "height: 12\"").stays_silent();
    }

    /// Source: trade reports F-15: the receptacle in the bay where the unit goes.
    #[test]
    fn a_receptacle_outside_the_sheet_s_zone_stops() {
        let zone = "{zones: {power: {from left: 2\" to 28\", height: at most 6\"}}}";
        range("{power: {from left: 30\", height: 5\"}}", zone).finds_one().weighs("stop");
        range("{power: {from left: 14\", height: 12\"}}", zone).finds_one();
        range("{power: {from left: 28\", height: 6\"}}", zone).stays_silent();
        range("{power: {beside: false}}", "{zones: {power: {beside: true}}}").finds_one();
        range("{power: {beside: true, proud: 2\"}}", "{zones: {power: {beside: true}}}").stays_silent();
    }

    /// Source: trade reports F-121 (a valve behind the refrigerator).
    #[test]
    fn what_stands_out_by_its_words_stands_out() {
        let fridge = |water: &str| {
            Trial::of("service/zone")
                .opening("cold", &format!("{{takes: refrigerator, depth: 26\", service: {{water: '{water}'}}}}"))
                .selection("selection: It\nkind: refrigerator\nplace: cold", "size: {depth: 24\"}")
        };
        fridge("1/4\" with shut-off, surface valve 3\" proud")
            .finds("the water behind `It` stands 3\" (76 mm) out of the wall, 1\" (25.4 mm) more than the 2\" (51 mm) there is")
            .weighs("stop");
        fridge("1/4\" with shut-off, surface valve 2\" proud").stays_silent();
        fridge("1/4\" with shut-off, recessed box").stays_silent();
    }
}
