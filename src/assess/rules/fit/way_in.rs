//! The way from the truck into the room.

use crate::assess::context::about;
use crate::assess::fitting::{Passage, way_in};
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, say};
use crate::book::vocabulary::Hazard;
use crate::book::{Choice, Room, Selection};
use crate::finding::{Finding, Severity};
use crate::units::{Length, Sides};

declare! {
    /// The thing does not pass a narrow point on its way into the room
    ///
    /// ## What it checks
    /// The carton, and the body with its doors off, each with 1" of play in every direction,
    /// against each narrow point: the book's, then the room's. A box passes a doorway if, turned
    /// whichever way suits, its height and the lesser side of its plan pass. Where one turns a
    /// corner between two halls of that width, the box must also get round: pushed on sideways,
    /// or turned, which for a plan `p` by `q` takes `(q + 2p)² ≤ 8w²`. Whether a thing may be laid
    /// down is for its maker to say.
    ///
    /// ## Why it matters
    /// The refrigerator that fits its opening stands on the porch, and goes back at a quarter of
    /// its price.
    ///
    /// ## Remedy
    /// Have door leaves, rails or trim taken off and the point measured again; find another way in;
    /// or choose a smaller model.
    ///
    /// ## Example
    /// ```yaml
    /// way in:
    ///   - {name: back door, width: 29", height: 79"}
    /// ```
    /// A body 30" by 33 1/2" does not pass it, whichever way it is turned.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement; an inch of play, and the geometry of a
    /// rectangle that turns in a right-angled corner.
    "fit/way-in", Stop,
    sources: ["the maker's sheet", "the field measurement", "common practice", "geometry"],
    caution: Some(Hazard::Weight.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (room, selection, option) in context.options() {
        findings.extend(judge(context, room, selection, option));
    }
}

fn judge(context: &Context<'_>, room: &Room, selection: &Selection, option: &Choice) -> Option<Finding> {
    let fit = option.fit.get()?;
    let passages = way_in(context.book, room, option);
    let carton = tightest(&passages, |passage| passage.carton);
    let doors_off = tightest(&passages, |passage| passage.doors_off);
    let fails = |tightest: &Option<(Length, &Passage<'_>)>| tightest.is_some_and(|(spare, _)| spare.is_negative());
    let goes_out_of_its_carton = doors_off.is_some() && !fails(&doors_off);
    let (severity, slot, what, (spare, passage)) = match (fails(&carton), fails(&doors_off)) {
        (_, true) => (Severity::Stop, &fit.doors_off, "its body with the doors off", doors_off?),
        (true, _) if goes_out_of_its_carton => (Severity::Query, &fit.carton, "its carton", carton?),
        (true, _) => (Severity::Stop, &fit.carton, "its carton", carton?),
        _ => return None,
    };
    let sides = slot.spanned()?;
    let say = |length| say(length, context.book.project.units);
    let size = |sides: &Sides| sides.worded(say);
    let only = if severity == Severity::Query { "it goes in only out of its carton, doors off: " } else { "" };
    let message = format!(
        "{only}{what}, {}, does not pass `{}`: {} short, with 1\" of play",
        size(&sides.value),
        passage.point.name,
        say(spare.abs())
    );
    let finding = about(room, selection, option, RULE.code, severity, sides.span, message);
    let finding = finding.also(passage.point.span, "the narrowest point for it");
    Some(finding.remedy(remedy(severity, doors_off.is_some())))
}

fn remedy(severity: Severity, knows_the_body: bool) -> &'static str {
    match (severity, knows_the_body) {
        (Severity::Query, _) => "have it unpacked outside and its doors taken off, and say so on the delivery order",
        (_, false) => "write the size of the body with its doors off (`doors off`), or find another way in",
        _ => "have leaves, rails or trim taken off and measure again, find another way in, or choose a smaller model",
    }
}

/// The point with the least left, the first of equals.
fn tightest<'p, 'a>(
    passages: &'p [Passage<'a>],
    spare: impl Fn(&Passage<'a>) -> Option<Length>,
) -> Option<(Length, &'p Passage<'a>)> {
    passages.iter().filter_map(|passage| Some((spare(passage)?, passage))).min_by_key(|(spare, _)| *spare)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn through(points: &str, option: &str) -> Trial {
        Trial::of("fit/way-in")
            .book(&format!("way in: [{points}]"))
            .opening("fridge", "{takes: refrigerator}")
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", option)
    }

    /// Source: trade.md F-111 (29" door, unit 30" by 33 1/2").
    #[test]
    fn a_body_wider_than_the_door_is_told_with_the_point_and_how_much() {
        let body = "fit: {doors off: 30\" x 70\" x 33 1/2\"}";
        through("{name: back door, width: 29\", height: 79\"}", body)
            .finds("its body with the doors off, 30\" (762 mm) × 5'-10\" (1778 mm) × 33 1/2\" (850.9 mm), does not pass `back door`: 2\" (50.8 mm) short, with 1\" of play")
            .weighs("stop")
            .cautions();
        through("{name: back door, width: 31\", height: 79\"}", body).is_silent();
        through("{name: back door, width: 30 15/16\", height: 79\"}", body).finds_one();
    }

    /// Source: trade.md F-111 (smallest dimension with doors off, or packed, and 1").
    #[test]
    fn what_goes_in_only_out_of_its_carton_is_asked_about() {
        let both = "fit: {carton: 36\" x 74\" x 33\", doors off: 30\" x 70\" x 29\"}";
        through("{name: porch, width: 32\", height: 79\"}", both)
            .finds("it goes in only out of its carton, doors off: its carton, 3'-0\" (914.4 mm) × 6'-2\" (1879.6 mm) × 33\" (838.2 mm), does not pass `porch`: 2\" (50.8 mm) short, with 1\" of play")
            .weighs("query")
            .cautions();
        through("{name: porch, width: 34\", height: 79\"}", both).is_silent();
        through("{name: porch, width: 32\", height: 79\"}", "fit: {carton: 36\" x 74\" x 33\"}")
            .finds_one()
            .weighs("stop");
    }

    #[test]
    fn of_several_points_the_narrowest_is_named() {
        let points = "{name: porch, width: 30\", height: 79\"}, {name: stair, width: 28\", height: 79\"}";
        let found = through(points, "fit: {carton: 30\" x 70\" x 30\"}").finds_one();
        assert!(found.weighs("stop").messages()[0].contains("`stair`: 3\""));
    }

    /// Geometry: halls 38" wide take `q + 2p ≤ 38" × √8 = 107.48"`, play within.
    #[test]
    fn a_long_box_must_get_round_the_corner_too() {
        let hall = |turns: bool| format!("{{name: hall, width: 38\", height: 80\", turns: {turns}}}");
        let tub = "fit: {carton: 60\" x 80\" x 30\"}";
        through(&hall(false), tub).is_silent();
        through(&hall(true), tub).finds_one().weighs("stop");
        through(&hall(true), "fit: {carton: 44\" x 79\" x 30\"}").is_silent();
        through(&hall(true), "fit: {carton: 37\" x 79\" x 37\"}").is_silent();
    }

    #[test]
    fn the_room_s_own_narrow_points_count_and_a_choice_still_open_is_a_query() {
        let two = "options:\n  - {id: wide, fit: {carton: 40\" x 70\" x 40\"}}\n  - {id: slim}";
        Trial::of("fit/way-in")
            .room("way in: [{name: stair, width: 32\", height: 76\"}]")
            .opening("fridge", "{takes: refrigerator}")
            .selection("selection: Refrigerator\nkind: refrigerator\nplace: fridge", two)
            .finds_one()
            .weighs("query")
            .cautions();
    }
}
