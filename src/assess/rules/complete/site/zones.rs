//! Where a sheet wants a service to come out, and nobody says where it does.

use crate::book::{Service, ServicePoint, ServiceZone};
use crate::finding::{Hazard, Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::vocabulary::{Slot, Words};

/// The sheet says where services come out, and the opening does not, or not in every figure that the sheet has.
pub fn ask(fitted: &Placement<'_>) -> Option<Remark> {
    let found = nowhere(fitted).or_else(|| in_part(fitted))?;
    Some(Remark { caution: Some(Hazard::Power), ..found })
}

/// What is told of the point where a service comes out.
fn point<'a>(fitted: &Placement<'a>, service: Service) -> Option<&'a Slot<ServicePoint>> {
    let points = fitted.opening.points.get()?.named();
    points.into_iter().find(|(name, _)| *name == service).map(|(_, point)| point)
}

fn nowhere(fitted: &Placement<'_>) -> Option<Remark> {
    let asked = fitted.option.fit.get()?.zones.get()?.named().into_iter().filter(|(_, zone)| !zone.is_absent());
    let untold: Vec<_> = asked.filter(|(service, _)| point(fitted, *service).is_none_or(Slot::is_absent)).collect();
    let at = untold.iter().find_map(|(_, zone)| zone.span())?;
    let names: Vec<&str> = untold.iter().map(|(service, _)| service.word()).collect();
    let message = phrase!(
        "the sheet of `{}` says where {} must come out, and nobody says where at the opening `{}`",
        fitted.selection.name.value,
        Phrase::series(names),
        fitted.opening.name.value
    );
    let finding = fitted.finding(Severity::Query, fitted.opening.span, message).also(at, "the sheet's zone");
    Some(finding.remedy("measure it and add it to the opening's `service points`"))
}

fn in_part(fitted: &Placement<'_>) -> Option<Remark> {
    let (service, zone, lacks, at) =
        fitted.option.fit.get()?.zones.get()?.named().into_iter().find_map(|(service, zone)| {
            let there = point(fitted, service)?.spanned()?;
            Some((service, zone, lacking(zone.get()?, &there.value)?, there.span))
        })?;
    let (name, place, service) = (&fitted.selection.name.value, &fitted.opening.name.value, service.word());
    let asked = match lacks {
        Lacks::FromLeft => phrase!("how far from the left its {service} comes out", service),
        Lacks::Height => phrase!("how high its {service} comes out", service),
        Lacks::Proud => phrase!("how far its {service} may stand out of the wall", service),
    };
    let message = phrase!(
        "the sheet of `{name}` says {asked}, and nobody says that of the one at the opening `{place}`",
        name,
        asked,
        place
    );
    let finding = fitted.finding(Severity::Query, at, message);
    let finding = zone.span().map_or(finding.clone(), |zone| finding.also(zone, "the sheet's zone"));
    Some(finding.remedy("measure it and add it to that point of the opening's `service points`"))
}

/// A figure that a zone has and a point lacks.
#[derive(Clone, Copy)]
enum Lacks {
    FromLeft,
    Height,
    Proud,
}

/// The first of them. What is beside the thing is not behind it.
fn lacking(zone: &ServiceZone, point: &ServicePoint) -> Option<Lacks> {
    if point.beside.get() == Some(&true) {
        return None;
    }
    let figures = [
        (zone.from_left.is_absent(), point.from_left.is_absent(), Lacks::FromLeft),
        (zone.height.is_absent(), point.height.is_absent(), Lacks::Height),
        (zone.proud.is_absent(), point.proud.is_absent(), Lacks::Proud),
    ];
    figures.into_iter().find(|(unasked, untold, _)| !unasked && *untold).map(|(_, _, lacks)| lacks)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn every_figure_that_the_sheet_has_is_asked_of_the_point() {
        let range = |point: &str, zone: &str| {
            Trial::of("complete/site")
                .opening("range", &format!("{{takes: range, in front: 60\", left: wall, right: wall, above: nothing, service: {{power: 120 V 15 A, gas: 'natural gas, 65000 Btu/h, valve'}}, service points: {{gas: {{{point}}}}}}}"))
                .selection("selection: Range\nkind: range\nplace: range", &format!("fit: {{zones: {{gas: {{{zone}}}}}}}"))
                .run()
        };
        let asks = |point: &str, zone: &str| {
            let found = range(point, zone);
            let of_zone =
                |one: &&crate::finding::Finding| one.remark.message.text().contains("the sheet of `Range` says");
            found.findings().iter().filter(of_zone).map(|one| one.remark.message.text().to_string()).collect::<Vec<_>>()
        };
        let zone = "from left: 10\" to 20\", height: at most 5\", proud: at most 1\"";
        assert_eq!(
            asks("from left: 12\", height: 3\"", zone),
            [
                "the sheet of `Range` says how far its gas may stand out of the wall, and nobody says that of the one at the opening `range`"
            ]
        );
        assert_eq!(asks("height: 3\", proud: 1\"", zone).len(), 1);
        assert!(asks("from left: 12\", height: 3\", proud: 1\"", zone).is_empty());
        assert!(asks("beside: true", zone).is_empty());
        assert!(asks("height: 3\"", "height: at most 5\"").is_empty());
    }
}
