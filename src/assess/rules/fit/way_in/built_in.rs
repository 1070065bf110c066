//! The way inside the room, past what is built in by the time that a thing comes.

use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::least_side;
use crate::source::Span;
use crate::vocabulary::Trade;

/// An appliance that stands on the floor, against the gaps that cabinets, islands and walls leave on the way to it.
pub fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let plan = context.site.sound_plan(fitted.room)?;
    let is_appliance = fitted.selection.kind.get().is_some_and(|kind| kind.trade() == Trade::Appliance);
    let place = plan.opening(fitted.opening).filter(|place| is_appliance && place.within.is_none())?;
    let stands = place.low <= crate::units::Length::ZERO && fitted.opening.stands_on_the_floor();
    let (needs, is_given) = least_side(fitted.option).filter(|_| stands)?;
    let found = plan.narrow_on_the_way(place, needs)?;
    let [one, other] = found.between;
    let units = context.book.project.units;
    let (name, more, wide) = (&fitted.selection.name.value, say(needs - found.wide, units), say(found.wide, units));
    let (one_name, other_name) = (one.name(plan), other.name(plan));
    let message = match is_given {
        true => phrase!(
            "`{name}`, doors off, is {more} wider than the way between `{}` and `{}`, {}, and no wider one leads to its place",
            name,
            more,
            one_name,
            other_name,
            wide
        ),
        false => phrase!(
            "`{name}` is {more} wider than the way between `{}` and `{}`, {}, and no wider one leads to its place",
            name,
            more,
            one_name,
            other_name,
            wide
        ),
    };
    let (severity, at) = if is_given {
        (Severity::Stop, fitted.option.fit.get()?.doors_off.span()?)
    } else {
        (Severity::Query, fitted.option.size.width.span().or_else(|| fitted.option.size.depth.span())?)
    };
    let places: Vec<(Span, Phrase)> = [(one, one_name), (other, other_name)]
        .into_iter()
        .filter_map(|(met, name)| Some((met.thing()?.span, phrase!("`{}`", name))))
        .collect();
    let finding =
        places.into_iter().fold(fitted.finding(severity, at, message), |finding, (at, words)| finding.also(at, words));
    Some(finding.remedy("bring it in before those are set, and plan how it is ever taken out; or move them apart"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// A kitchen of 12' by 15': the island leaves one aisle along the back row, and passages at both its ends.
    fn kitchen(away: &str, at: &str, fit: &str) -> Trial {
        Trial::of("fit/way-in")
            .book("way in: [{name: front door, width: 40\", height: 84\"}]")
            .room(&format!("outline: 12' x 15'\ndoors: {{hall: {{wall: C, at: 60\", width: 36\"}}}}\nruns: {{back: {{wall: A, depth: 24\", parts: [{{cabinet: a, width: 54\"}}, {{opening: cold}}, {{cabinet: b, width: 54\"}}]}}}}\nislands: {{island: {{wall: A, at: {at}, away: {away}, size: 88\" x 40\"}}}}"))
            .opening("cold", "{takes: refrigerator, width: 36\", depth: 24\"}")
            .selection("selection: Fridge\nkind: refrigerator\nplace: cold", &format!("size: {{width: 35 3/4\", height: 70\", depth: 28\"}}\n{fit}"))
    }

    /// Source: trade reports F-111, for the gaps that are left inside the room; arithmetic.
    #[test]
    fn a_refrigerator_comes_past_the_island() {
        let bare = "fit: {doors off: 29\" x 34\" x 69\"}";
        // 27 1/2" along the row, 28" at both ends.
        kitchen("51 1/2\"", "28\"", bare)
            .finds("`Fridge`, doors off, is 1 1/2\" (38.1 mm) wider than the way between `island` and `b`, 27 1/2\" (698 mm), and no wider one leads to its place")
            .weighs("stop")
            .cautions();
        // 42" along the row, and 28" at both ends: one of them is enough.
        kitchen("66\"", "28\"", bare).finds_one().says("1\" (25.4 mm) wider");
        kitchen("66\"", "27\"", bare).stays_silent();
        kitchen("53\"", "27\"", bare).stays_silent();
        kitchen("52 3/4\"", "27\"", bare).finds_one();
        // As it stands.
        kitchen("51\"", "28\"", "").finds_one().weighs("query").says("`Fridge` is 1\" (25.4 mm) wider");
    }
}
