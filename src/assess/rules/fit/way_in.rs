//! Whether a thing can be carried in.

use crate::assess::context::about;
use crate::assess::fitting::{PLAY_ON_THE_WAY, Passage, Passes, way_in};
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, say};
use crate::book::{Choice, NarrowPoint, Room, Selection};
use crate::finding::{Finding, Severity};
use crate::units::Length;
use crate::vocabulary::Hazard;

declare! {
    /// The thing can't be carried through a narrow point on the way in
    ///
    /// ## What it checks
    /// The carton, turned whichever way suits, against every narrow point of the book and then of the
    /// room; at a point that turns, also round a corner between two halls of that width. What is larger
    /// stops; where the body with its doors off passes, it is a query. What goes through with less than
    /// 1" (25.4 mm) of play beside it or above it is asked about: that much is usual, and no sheet's figure.
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
    due: GoodsReleased, tells: [Installer],
    sources: ["trade practice: 1 in of play; geometry for the corner"],
    caution: Some(Hazard::Weight.caution()),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (room, selection, option) in context.options() {
        findings.extend(judge(context, room, selection, option));
    }
}

fn judge(context: &Context<'_>, room: &Room, selection: &Selection, option: &Choice) -> Option<Finding> {
    let say = |length: Length| say(length.abs(), context.book.project.units);
    let fit = option.fit.get()?;
    let name = &selection.name.value;
    let passages = way_in(context.book, room, option);
    let carton = tightest(&passages, |passage| passage.carton);
    let bare = tightest(&passages, |passage| passage.doors_off);
    let passes = |found: &Option<(Length, &NarrowPoint)>| found.map(|(spare, _)| Passes::with(spare));
    let tight = |what: String, (spare, point): (Length, &NarrowPoint)| {
        format!(
            "{what} goes through the {} with {} to spare; {} is usual",
            point.name,
            say(spare),
            say(PLAY_ON_THE_WAY)
        )
    };
    let large = |what: String, (spare, point): (Length, &NarrowPoint)| {
        format!("{what} is {} too large for the {}", say(spare), point.name)
    };
    let crate_of = || format!("the carton of `{name}`");
    let bare_of = || format!("`{name}`, doors off,");
    let (severity, message, at, point) = match (carton.zip(passes(&carton)), bare.zip(passes(&bare))) {
        (Some((_, Passes::Freely)), _) | (None, None | Some((_, Passes::Freely))) => return None,
        (_, Some((short, Passes::Not))) => (Severity::Stop, large(bare_of(), short), fit.doors_off.span()?, short.1),
        (Some((close, Passes::Tightly)), _) => (Severity::Query, tight(crate_of(), close), fit.carton.span()?, close.1),
        (Some((short, Passes::Not)), bare) => {
            let (severity, rest) = match bare {
                Some(_) => (Severity::Query, "; it goes in out of its carton, doors off"),
                None => (Severity::Stop, ", and the size without it is not known"),
            };
            (severity, large(crate_of(), short) + rest, fit.carton.span()?, short.1)
        }
        (None, Some((close, Passes::Tightly))) => {
            (Severity::Query, tight(bare_of(), close), fit.doors_off.span()?, close.1)
        }
    };
    let finding = about(room, selection, option, RULE.code, severity, at, message).also(point.span, "the narrow point");
    Some(finding.remedy("plan how it is carried (out of its carton, doors off, another way), or choose another model"))
}

/// The point with the least left, the first of equals.
fn tightest<'a>(
    passages: &[Passage<'a>],
    spare: impl Fn(&Passage<'a>) -> Option<Length>,
) -> Option<(Length, &'a NarrowPoint)> {
    passages.iter().filter_map(|passage| Some((spare(passage)?, passage.point))).min_by_key(|(spare, _)| *spare)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(fit: &str, way: &str) -> Trial {
        let trial = Trial::of("fit/way-in").book(&format!("way in: [{way}]")).opening("hole", "{takes: refrigerator}");
        trial.selection("selection: Fridge\nkind: refrigerator\nplace: hole", &format!("fit: {{{fit}}}"))
    }

    /// Source: trade reports F-111: a 29" door and a unit of 30" × 33 1/2".
    #[test]
    fn a_unit_wider_than_the_door_is_told() {
        let door = "{name: kitchen door, width: 29\", height: 80\"}";
        trial("doors off: 30\" x 33 1/2\" x 68\"", door)
            .finds("`Fridge`, doors off, is 1\" (25.4 mm) too large for the kitchen door")
            .weighs("stop")
            .cautions();
        let wider = "{name: kitchen door, width: 31\", height: 80\"}";
        trial("doors off: 30\" x 33 1/2\" x 68\"", wider).stays_silent();
    }

    #[test]
    fn what_goes_in_only_out_of_its_carton_is_a_query() {
        let door = "{name: porch door, width: 33\", height: 80\"}";
        trial("carton: 34\" x 36\" x 72\", doors off: 30\" x 33\" x 68\"", door)
            .finds("the carton of `Fridge` is 1\" (25.4 mm) too large for the porch door; it goes in out of its carton, doors off")
            .weighs("query");
    }

    #[test]
    fn a_room_has_narrow_points_of_its_own() {
        let trial = trial("carton: 30\" x 30\" x 60\"", "{name: front door, width: 34\", height: 80\"}");
        trial.room("way in: [{name: stair, width: 30\", height: 76\"}]").finds_one();
    }

    /// Source: trade reports F-111 (smallest dimension and 1"): exactly an inch more passes, a hair less is
    /// asked about, and only what is larger than the point is told as too large.
    #[test]
    fn an_inch_of_play_is_usual_and_the_narrowest_point_is_named() {
        let door = |width: &str, height: &str| {
            format!("{{name: porch, width: 40\", height: 80\"}}, {{name: stair, width: {width}, height: {height}}}")
        };
        let carton = "carton: 30\" x 70\" x 33\"";
        trial(carton, &door("31\"", "80\"")).stays_silent();
        trial(carton, &door("30 1/2\"", "80\""))
            .finds(
                "the carton of `Fridge` goes through the stair with 1/2\" (12.7 mm) to spare; 1\" (25.4 mm) is usual",
            )
            .weighs("query");
        trial(carton, &door("29 15/16\"", "80\""))
            .finds("the carton of `Fridge` is 1/16\" (≈ 1.6 mm) too large for the stair, and the size without it is not known")
            .weighs("stop");
        trial("carton: 30\" x 70\" x 33\", doors off: 30\" x 69\" x 31\"", &door("29 1/2\"", "80\""))
            .finds("`Fridge`, doors off, is 1/2\" (12.7 mm) too large for the stair")
            .cautions();
        trial("doors off: 30\" x 69\" x 31\"", &door("30 1/2\"", "80\"")).finds_one().weighs("query");
        // As high as the door, to half an inch.
        trial("carton: 30\" x 79 1/2\" x 33\"", &door("34\"", "80\"")).stays_silent();
    }

    /// Geometry: halls 38" wide take `q + 2p ≤ 38" × √8 = 107.48"`; the play of an inch is wanted once.
    #[test]
    fn a_long_box_must_get_round_the_corner_too() {
        let hall = |turns: bool| format!("{{name: hall, width: 38\", height: 80\", turns: {turns}}}");
        let tub = "carton: 60\" x 80\" x 30\"";
        trial(tub, &hall(false)).stays_silent();
        trial(tub, &hall(true)).finds_one().weighs("stop");
        trial("carton: 44\" x 79\" x 30\"", &hall(true)).stays_silent();
        trial("carton: 45\" x 79\" x 30\"", &hall(true)).finds_one().weighs("query");
        trial("carton: 37\" x 79\" x 37\"", &hall(true)).stays_silent();
    }

    #[test]
    fn what_has_no_opening_is_carried_in_too_and_a_choice_still_open_is_a_query() {
        let two = "options:\n  - {id: wide, fit: {carton: 40\" x 70\" x 40\"}}\n  - {id: slim}";
        Trial::of("fit/way-in")
            .book("way in: [{name: stair, width: 32\", height: 76\"}]")
            .selection("selection: Tub\nkind: bathtub", two)
            .finds_one()
            .weighs("query")
            .cautions();
    }
}
