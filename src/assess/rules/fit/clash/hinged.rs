//! Two machines beside one another whose doors are hinged at the side that they share.

use crate::assess::{Context, say};
use crate::book::Room;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{Side, flank, hinge_sides};
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

/// Between two doors that stand open back to back, their handles go by with so much (common practice: twice 2 1/2").
const TWO_HANDLES: Length = Length::from_inches(5);
/// A washer and a dryer so near are loaded one into the other (common practice).
const ONE_LOAD: Length = Length::from_inches(12);

/// Each such pair once, at the one on the left.
pub fn together(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let settled = || context.site.fitted_in(room).filter(Placement::is_settled);
    let hung_right = settled().filter(|one| hangs_at(one, Side::Right));
    hung_right
        .filter_map(|one| {
            let beside = flank(room, context.site.plan(room), one.opening, Side::Right)?;
            let is_it = |other: &Placement<'_>| other.opening.name.eq_ignore_ascii_case(&beside.what);
            let other = settled().find(|other| is_it(other) && hangs_at(other, Side::Left))?;
            told(context, &one, &other, beside.gap)
        })
        .collect()
}

/// Whether its door hangs at that side, and can't be hung at the other.
fn hangs_at(one: &Placement<'_>, side: Side) -> bool {
    let (sides, one_is_enough) = hinge_sides(one.option);
    !one_is_enough && sides == [side]
}

fn told(context: &Context<'_>, one: &Placement<'_>, other: &Placement<'_>, gap: Length) -> Option<Remark> {
    let both = |is: &dyn Fn(&Placement<'_>) -> bool| is(one) && is(other);
    let cold = both(&|of| of.selection.has(Trait::Cools));
    let laundry = both(&|of| of.selection.is_any(&[Kind::Washer, Kind::Dryer]));
    let clearance = |of: &Placement<'_>| of.option.fit.get()?.door.get()?.wall_clearance.get().copied();
    let least = [clearance(one), clearance(other)].into_iter().flatten().chain([TWO_HANDLES]).max()?;
    let (near, what): (Length, Phrase) = match (cold, laundry) {
        (true, _) => (least, "open together, their doors and handles meet".into()),
        (_, true) => (ONE_LOAD, "open together, both doors stand between the machines".into()),
        _ => return None,
    };
    if gap >= near {
        return None;
    }
    let message = phrase!(
        "`{}` and `{}` are {} apart, and hinged at the side that they share: {what}",
        one.opening.name.value,
        other.opening.name.value,
        say(gap, context.book.project.units),
        what
    );
    let at = one.option.hinge.span().unwrap_or(one.opening.span);
    let finding = one.finding(Severity::Query, at, message).source("common practice");
    let finding = finding.also(other.option.hinge.span().unwrap_or(other.opening.span), "the other hinge");
    Some(finding.remedy("have one hung at its other side, let them change places, or put a filler between them"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Two in a row, the one on the left first.
    fn beside(room: &str, kinds: (&str, &str), hinges: (&str, &str)) -> Trial {
        Trial::of("fit/clash")
            .room(room)
            .opening("one", &format!("{{takes: {}, width: 24\"}}", kinds.0))
            .opening("other", &format!("{{takes: {}, width: 30\"}}", kinds.1))
            .selection(&format!("selection: One\nkind: {}\nplace: one", kinds.0), &format!("hinge: {}", hinges.0))
            .selection(&format!("selection: Other\nkind: {}\nplace: other", kinds.1), &format!("hinge: {}", hinges.1))
    }

    /// Source: common practice: columns are hinged at their outer sides, a washer and a dryer away from one another.
    #[test]
    fn two_that_are_hinged_at_the_side_that_they_share_are_asked_about() {
        let cold = ("refrigerator", "refrigerator");
        for (start, filler) in [
            ("runs: {w: {", ""),
            ("outline: 14' x 12'\nruns: {w: {wall: A, depth: 25\", ", ""),
            ("runs: {w: {", "{filler: 1\"}, "),
        ] {
            let row = format!("{start}parts: [{{panel: 3/4\"}}, {{opening: one}}, {filler}{{opening: other}}]}}}}");
            beside(&row, cold, ("right", "left"))
                .finds_one()
                .weighs("query")
                .says("and hinged at the side that they share");
            beside(&row, cold, ("left", "right")).stays_silent();
            beside(&row, cold, ("right", "right")).stays_silent();
            beside(&row, cold, ("either", "left")).stays_silent();
        }
        let row = "runs: {w: {parts: [{opening: one}, {opening: other}]}}";
        beside(row, ("washer", "dryer"), ("right", "left"))
            .finds("`one` and `other` are 0\" (0 mm) apart, and hinged at the side that they share: open together, both doors stand between the machines")
            .points_at(&["rooms/kitchen/selection-0.yaml:4:8"]);
        beside(row, ("washer", "refrigerator"), ("right", "left")).stays_silent();
        let far = "runs: {w: {parts: [{opening: one}, {filler: 6\"}, {opening: other}]}}";
        beside(far, cold, ("right", "left")).stays_silent();
    }
}
