//! How wide a hole is against what the tap's sheet asks.

use super::At;
use crate::assess::say_range;
use crate::book::{DetailName, Hole};
use crate::finding::{Remark, Severity, phrase};
use crate::units::Length;

/// Two figures of one hole: 35 mm and 1 3/8 in, 1/32 in (common practice).
const ALIKE: Length = Length::from_sixty_fourths(2);

/// So much more than a single figure may be covered by what goes over the hole: 1/4 in (common practice).
const MAY_BE_COVERED: Length = Length::from_sixty_fourths(16);

/// Holes of a list that are not as wide as the sheet asks, told once. A single figure of a sheet is what is drilled for
/// it: whether a little more is covered is asked.
pub(super) fn judge(at: &At<'_>, its: &[&Hole]) -> Option<Remark> {
    let asked = at.option.range(DetailName::HoleDiameter)?;
    let across = its.iter().filter_map(|hole| Some((*hole.diameter.get()?, hole.purpose.span)));
    let small = |is: Length| asked.least.is_some_and(|least| is + ALIKE < least);
    let large = |is: Length| asked.most.is_some_and(|most| is > most + ALIKE);
    let wrong: Vec<_> = across.filter(|(is, _)| small(*is) || large(*is)).collect();
    let (is, place) = *wrong.iter().find(|(is, _)| small(*is)).or_else(|| wrong.iter().max_by_key(|(is, _)| *is))?;
    let name = &at.tap.name.value;
    let figure = asked.most.filter(|most| asked.least == Some(*most) && is > *most);
    let said = (at.say(is), say_range(asked, at.context.book.project.units));
    if let Some(figure) = figure.filter(|figure| is - *figure <= MAY_BE_COVERED) {
        let (more, figure) = (at.say(is - figure), at.say(figure));
        let message =
            phrase!("the hole for `{name}` is {} across, {} more than the {} of its sheet", name, said.0, more, figure);
        let finding = at.finding(Severity::Query, place, message).source("common practice");
        return Some(finding.remedy(
            "look at its sheet for the widest hole that it covers, and write both ends, `hole diameter: … to …`; or drill what it says",
        ));
    }
    let message = phrase!("the hole for `{name}` is {is} across, where its sheet asks {asked}", name, said.0, said.1);
    Some(at.finding(Severity::Stop, place, message))
}
