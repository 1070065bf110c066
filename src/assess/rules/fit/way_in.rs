//! Whether a thing can be carried in.

use crate::assess::fitting::{Passage, way_in};
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::book::vocabulary::Hazard;
use crate::finding::{Finding, Severity};
use crate::units::Length;

declare! {
    /// The thing can't be carried through a narrow point on the way in
    ///
    /// ## What it checks
    /// The carton, with 1" of play in each direction and turned whichever way suits, against every
    /// narrow point of the book and then of the room; at a point that turns, also round a corner
    /// between two halls of that width. Where the carton fails and the body with its doors off
    /// passes, it is a query.
    ///
    /// ## Why it matters
    /// An appliance that does not pass the way in goes back to the shop with up to a third of its
    /// price kept.
    ///
    /// ## Remedy
    /// Take it out of its carton and its doors off, take a door off its hinges, choose another way
    /// or another model; tell whoever delivers.
    ///
    /// ## Example
    /// ```yaml
    /// way in: [{name: hall turn, width: 29", height: 80", turns: true}]
    /// # carton: 32" x 41" x 30"
    /// ```
    ///
    /// ## Source
    /// Trade report F-111 (29 in door, unit 30 x 33 1/2 in; smallest side with doors off and 1 in
    /// more). A corner: a rectangle turned at 45 degrees, by geometry.
    "fit/way-in", Stop,
    sources: ["trade practice: 1 in of play; geometry for the corner"],
    caution: Some(Hazard::Weight.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    findings.extend(context.fitted().filter_map(|fitted| judge(context, &fitted)));
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let passages = way_in(context.book, fitted.room, fitted.option);
    let tightest = |spare: fn(&Passage<'_>) -> Option<Length>| {
        passages.iter().filter_map(|passage| Some((spare(passage)?, passage.point))).min_by_key(|(spare, _)| *spare)
    };
    let fit = fitted.option.fit.get()?;
    let name = &fitted.selection.name.value;
    let carton = tightest(|passage| passage.carton).filter(|(spare, _)| spare.is_negative());
    let bare = tightest(|passage| passage.doors_off);
    let (severity, message, at, point) = match (carton, bare) {
        (None, Some((spare, point))) if fit.carton.is_absent() && spare.is_negative() => (
            Severity::Stop,
            format!("`{name}`, doors off, is {} too large for the {}", say(spare.abs()), point.name),
            fit.doors_off.span(),
            point,
        ),
        (Some((short, point)), Some((spare, _))) if !spare.is_negative() => (
            Severity::Query,
            format!(
                "the carton of `{name}` is {} too large for the {}; it goes in out of its carton, doors off",
                say(short.abs()),
                point.name
            ),
            fit.carton.span(),
            point,
        ),
        (Some((short, point)), None) => (
            Severity::Stop,
            format!(
                "the carton of `{name}` is {} too large for the {}, and the size without it is not known",
                say(short.abs()),
                point.name
            ),
            fit.carton.span(),
            point,
        ),
        (Some(_), Some((spare, point))) => (
            Severity::Stop,
            format!("`{name}` is {} too large for the {}, even with its doors off", say(spare.abs()), point.name),
            fit.doors_off.span(),
            point,
        ),
        _ => return None,
    };
    let finding = fitted
        .finding(RULE.code, severity, at.unwrap_or(fitted.option.span), message)
        .also(point.span, "the narrow point");
    Some(finding.remedy("plan how it is carried (out of its carton, doors off, another way), or choose another model"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(fit: &str, way: &str) -> Trial {
        let trial = Trial::of("fit/way-in").book(&format!("way in: [{way}]")).opening("hole", "{takes: refrigerator}");
        trial.selection("selection: Fridge\nkind: refrigerator\nplace: hole", &format!("fit: {{{fit}}}"))
    }

    /// Source: trade.md F-111: a 29" door and a unit of 30" × 33 1/2".
    #[test]
    fn a_unit_wider_than_the_door_is_told() {
        let door = "{name: kitchen door, width: 29\", height: 80\"}";
        trial("doors off: 30\" x 33 1/2\" x 68\"", door)
            .finds("`Fridge`, doors off, is 2\" (50.8 mm) too large for the kitchen door")
            .weighs("stop")
            .cautions();
        let wider = "{name: kitchen door, width: 31\", height: 80\"}";
        trial("doors off: 30\" x 33 1/2\" x 68\"", wider).is_silent();
    }

    #[test]
    fn what_goes_in_only_out_of_its_carton_is_a_query() {
        let door = "{name: porch door, width: 33\", height: 80\"}";
        trial("carton: 34\" x 36\" x 72\", doors off: 30\" x 33\" x 68\"", door)
            .finds("the carton of `Fridge` is 2\" (50.8 mm) too large for the porch door; it goes in out of its carton, doors off")
            .weighs("query");
    }

    #[test]
    fn a_room_has_narrow_points_of_its_own() {
        let trial = trial("carton: 30\" x 30\" x 60\"", "{name: front door, width: 34\", height: 80\"}");
        trial.room("way in: [{name: stair, width: 30\", height: 76\"}]").finds_one();
    }
}
