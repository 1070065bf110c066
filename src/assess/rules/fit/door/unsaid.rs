//! How far a door opens, where nobody says and the floor before it may be too little.

use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{NeededBefore, floor_before};
use crate::units::Length;
use crate::vocabulary::Kind;

/// How far the door of an oven drops, at most (common practice).
const OVEN: Length = Length::from_inches(24);
/// How far the door of a dishwasher drops, at most (common practice).
const DISHWASHER: Length = Length::from_inches(28);
/// A door of a refrigerator is no wider than this: above it, there are two (common practice).
const WIDEST_DOOR: Length = Length::from_inches(36);

/// The field of its door that tells how far it opens, and how far such doors do.
fn usual(fitted: &Placement<'_>) -> Option<(&'static str, Length)> {
    let wide = || fitted.option.size.width.get().copied().map(|wide| wide.min(WIDEST_DOOR));
    match fitted.selection.kind.get()? {
        Kind::Range | Kind::WallOven => Some(("drops", OVEN)),
        Kind::Dishwasher | Kind::PanelDishwasher => Some(("drops", DISHWASHER)),
        Kind::Refrigerator | Kind::PanelRefrigerator | Kind::Washer | Kind::Dryer => Some(("swings", wide()?)),
        _ => None,
    }
}

/// Less floor in front than such doors may reach, and nobody says how far this one does.
pub(super) fn reach(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let door = fitted.option.fit.get().and_then(|fit| fit.door.get());
    let is_said = door.is_some_and(|door| {
        [&door.drops, &door.swings, &door.pulls, &door.in_front].into_iter().any(|field| !field.is_absent())
    });
    let is_faulty = fitted.option.fit.get().is_some_and(|fit| fit.door.is_faulty());
    if is_said || is_faulty {
        return None;
    }
    let (field, reach) = usual(fitted)?;
    let needed = NeededBefore { asked: None, reach: Some(reach) };
    let short = floor_before(context.site.plan(fitted.room), fitted.room, fitted.opening, fitted.option, needed)?;
    let message = phrase!(
        "nobody says how far the door of `{}` opens, and {} of floor is clear in front of the opening `{}`",
        fitted.selection.name.value,
        say(short.there, context.book.project.units),
        fitted.opening.name.value
    );
    let finding = fitted.finding(Severity::Query, fitted.selection.name.span, message).also(short.at, "the floor");
    let remedy = phrase!("add what its sheet says, taken from the case: `fit: {{door: {{{field}: …}}}}`", field);
    Some(finding.remedy(remedy).source("common practice"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: common practice: doors of ovens drop 20" to 24", of dishwashers 24" to 28"; a hung door swings by its width.
    #[test]
    fn how_far_a_door_opens_is_asked_where_the_floor_may_be_too_little() {
        let thing = |kind: &str, floor: &str, fit: &str| {
            Trial::of("fit/door").opening("hole", &format!("{{takes: {kind}, in front: {floor}}}")).selection(
                &format!("selection: It\nkind: {kind}\nplace: hole"),
                &format!("size: {{width: 30\"}}\n{fit}"),
            )
        };
        thing("range", "22\"", "")
            .finds("nobody says how far the door of `It` opens, and 22\" (559 mm) of floor is clear in front of the opening `hole`")
            .weighs("query")
            .remedies("add what its sheet says, taken from the case: `fit: {door: {drops: …}}`");
        for (kind, little, enough) in [
            ("wall oven", "600 mm", "42\""),
            ("dishwasher", "27\"", "28\""),
            ("panel dishwasher", "600 mm", "39\""),
            ("refrigerator", "29\"", "30\""),
            ("washer", "700 mm", "800 mm"),
        ] {
            thing(kind, little, "").finds_one().weighs("query");
            thing(kind, enough, "").stays_silent();
        }
        // What the sheet says decides.
        thing("range", "22\"", "fit: {door: {drops: 20\"}}").stays_silent();
        thing("washer", "700 mm", "fit: {door: {swings: 480 mm}}").stays_silent();
        // A drawer for a microwave and a hob have no such door.
        thing("cooktop", "20\"", "").stays_silent();
    }

    /// What stands at the hinges is a light, and no wall: `clear/door-swing` tells of it, with what mends it.
    #[test]
    fn a_wall_light_at_the_hinges_is_no_wall() {
        let mirror = |what: &str| {
            Trial::of("fit/door")
                .opening("bay", &format!("{{takes: mirror cabinet, width: 24\", left: {{what: {what}, gap: 3\"}}}}"))
                .selection(
                    "selection: Mirror\nkind: mirror cabinet\nplace: bay",
                    "hinge: left\nfit: {door: {wall clearance: 4\"}}",
                )
        };
        for light in ["wall light", "sconce", "aplique"] {
            mirror(light).stays_silent();
        }
        mirror("wall").finds_one();
    }
}
