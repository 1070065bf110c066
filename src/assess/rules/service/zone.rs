//! Where a service comes out against where the maker's sheet wants it.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_range};
use crate::book::{Service, ServicePoint, ServiceZone};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
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
    /// depth less the thing's.
    ///
    /// ## Why it matters
    /// A stub 3" proud of the wall keeps a range 3" out of it, and the wall is opened from both sides.
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
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Power.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let Some(points) = fitted.opening.points.get() else { continue };
        let zones = fitted.option.fit.get().and_then(|fit| fit.zones.get());
        for (service, point) in points.named() {
            let Some(point) = point.spanned() else { continue };
            let named = zones.and_then(|zones| zones.named().into_iter().find(|(name, _)| *name == service));
            let zone = named.and_then(|(_, zone)| zone.spanned());
            findings.extend(judge(context, &fitted, service, (point, zone)));
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
        finding.caution = Some(Hazard::Gas.caution().words());
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
    let outside = |way: &str, at: Option<&Length>, range: Option<&LengthRange>| {
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
            let most = zone.and_then(|zone| zone.proud.get()).copied().or_else(|| behind(fitted))?;
            let is_beside = point.beside.get() == Some(&true);
            (proud > most && !is_beside).then(|| {
                let (proud, over, most) = (say(proud), say(proud - most), say(most));
                phrase!("the {service} behind `{name}` stands {proud} out of the wall, {over} more than the {most} there is", service, name, proud, over, most)
            })
        })
}

/// What is left behind a thing whose front must not stand out: the opening's depth less the thing's.
fn behind(fitted: &Placement<'_>) -> Option<Length> {
    let depth = fitted.opening.governing_depth()?;
    let body = *fitted.option.size.depth.get()?;
    Some(if depth > body { depth - body } else { Length::ZERO })
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
            .finds("the gas behind `Range` stands 3\" (76.2 mm) out of the wall, 2\" (50.8 mm) more than the 1\" (25.4 mm) there is")
            .cautions();
        range("{gas: {proud: 1\"}}", "{}").stays_silent();
        range("{gas: {proud: 3\"}}", "{zones: {gas: {proud: 3\"}}}").stays_silent();
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
}
