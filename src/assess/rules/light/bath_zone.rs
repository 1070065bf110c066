//! Lights that hang near tubs and showers.

mod rating;

use super::{Hung, hung};
use crate::assess::codes::{LIGHT_ABOVE_TUB, LIGHT_FROM_TUB, Ruling};
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::book::DetailName;
use crate::finding::{Remark, Severity, phrase};
use crate::site::fitting::overhead::at;
use crate::site::plan::{ConvexShape, Plan, Point, Thing};
use crate::units::Length;
use crate::vocabulary::{Hazard, Kind, Trait};

declare! {
    /// A hanging light is within reach of a tub or shower
    ///
    /// ## What it checks
    /// Each pendant, and each other light that says how far it drops, whose level distance to the edge of a tub or shower (`from tub`, else as the room's
    /// plan has both) is less than {3'}: its lowest part must be {8'} at least
    /// above the rim or the threshold (`rim`, else the tub's height in the plan). Where a light is so
    /// near, and nobody says how low it hangs or how high the rim is, it asks. And whatever light or fan the plan has over
    /// a tub or in a shower (`lights: {over: shower, …}`) must be rated for a damp place, or for a wet one (`damp rating`,
    /// in words or as an IP code). Where a room has a tub or a shower, what its sheet keeps to dry places is told anywhere in
    /// it, unless the plan has it {3'} away.
    ///
    /// ## Why it matters
    /// Somebody stands wet in the tub, reaches up, and touches metal that may be live.
    ///
    /// ## Remedy
    /// Hang it outside the zone, or take a light that is fixed to the ceiling and rated for wet places.
    ///
    /// ## Example
    /// ```yaml
    /// hangs: {bottom: 110", from tub: 24", rim: 20"}     # 90" above the rim, and 24" away
    /// ```
    ///
    /// ## Source
    /// Bath planning guidelines 25, which print IRC E3903.10; NEC 410.10(D) is from memory.
    "light/bath-zone", Query,
    due: RoughInClosed, tells: [Client, Installer],
    living: "living.light.bath_zone",
    judges: [Pendant, WallLight, CeilingLight, StripLight, Fan, LitMirror, MirrorCabinet],
    sources: ["Bath planning guidelines 25, after IRC E3903.10", "NEC 410.10(D) (from memory)"],
    caution: Some(Hazard::Power),
    Check::Book(check)
}

/// Whether a light hangs, whatever word its kind is named by: what says how far it drops does.
fn hangs_down(hung: &Hung<'_>) -> bool {
    hung.selection.is(Kind::Pendant) || hung.option.range(DetailName::Drop).is_some()
}

/// A light near a tub: how far away, and what is known of the rim.
struct Near {
    away: Length,
    rim: Option<Length>,
    bottom: Option<Length>,
}

const REMEDY: &str = "hang it outside the zone, or take a light that is fixed to the ceiling and rated for wet places";

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(rating::check(context));
    let (Some(zone), Some(above)) =
        (context.rulings().length(&LIGHT_FROM_TUB), context.rulings().length(&LIGHT_ABOVE_TUB))
    else {
        return;
    };
    let pendants = hung(context).filter(hangs_down);
    for hung in pendants {
        let near = near(context, &hung).into_iter().filter(|near| near.away < zone.value);
        // One is told: the first that hangs wrong.
        findings.extend(near.filter_map(|near| judge(context, &hung, &near, &above)).next());
    }
}

fn near(context: &Context<'_>, hung: &Hung<'_>) -> Vec<Near> {
    let hangs = &hung.hangs;
    let lowest = hangs.bottom.get().and_then(|bottom| bottom.least()).map(|bottom| bottom.value);
    if let Some(away) = hangs.from_tub.get() {
        return vec![Near { away: *away, rim: hangs.rim.get().copied(), bottom: lowest }];
    }
    let Some(plan) = context.site.plan(hung.room).filter(|plan| plan.is_sound()) else { return vec![] };
    let lights = plan.hung.iter().filter(|lights| lights.lights.selection.get() == Some(&hung.selection.name.value));
    let places = lights.flat_map(|lights| lights.places.iter().enumerate());
    let radius = hung.diameter().map_or(Length::ZERO, Length::half);
    let near = places.flat_map(|(number, place)| {
        let bottom = hangs.bottom.get().and_then(|bottom| at(&bottom.0, number));
        wet(plan).map(move |thing| Near {
            away: away(thing, *place) - radius,
            rim: hangs.rim.get().copied().or(thing.high),
            bottom,
        })
    });
    near.collect()
}

/// How far a place is from what a thing covers; nothing over it.
fn away(thing: &Thing<'_>, place: Point) -> Length {
    let covered = thing.footprint();
    if covered.contains(place) { Length::ZERO } else { covered.distance(&ConvexShape::new(vec![place])) }
}

/// Tubs and showers in their places.
fn wet<'p, 'a>(plan: &'p Plan<'a>) -> impl Iterator<Item = &'p Thing<'a>> {
    plan.things.iter().filter(|thing| thing.has(Trait::Bathes))
}

fn judge(context: &Context<'_>, hung: &Hung<'_>, near: &Near, above: &Ruling<Length>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let of_room = |length| say_room(length, context.book.project.units);
    let name = &hung.selection.name.value;
    let away = match near.away > Length::ZERO {
        true => phrase!("`{name}` hangs {} from a tub or shower", name, say(near.away)),
        false => phrase!("`{name}` hangs over a tub or shower", name),
    };
    // A rim is never below the floor: what is too low above the floor is too low above it.
    let certain = near.bottom.filter(|bottom| *bottom - near.rim.unwrap_or(Length::ZERO) < above.value);
    let (message, remedy) = match (certain, near.bottom, near.rim) {
        (Some(bottom), _, Some(rim)) => {
            let clear = bottom - rim;
            let short = say(above.value - clear);
            (
                phrase!(
                    "{away}, {} above its rim, {short} less than the {} asked for",
                    away,
                    of_room(clear),
                    short,
                    of_room(above.value)
                ),
                REMEDY,
            )
        }
        (Some(bottom), _, None) => (
            phrase!(
                "{away}, {} above the floor, where {} above the rim are asked for",
                away,
                of_room(bottom),
                of_room(above.value)
            ),
            REMEDY,
        ),
        (None, Some(_), Some(_)) => return None,
        (None, bottom, _) => {
            let unsaid = if bottom.is_none() { "how low" } else { "how high the rim is below it" };
            (
                phrase!("{away}, and nobody says {unsaid}", away, unsaid),
                "write `bottom` and `rim` under `hangs`, and see the light's own sheet",
            )
        }
    };
    let severity = if certain.is_some() { above.severity } else { Severity::Query };
    let at = hung.hangs.from_tub.span().or(hung.hangs.bottom.span()).unwrap_or(hung.selection.span);
    let finding = about(hung.room, hung.selection, hung.option, severity, at, message);
    Some(finding.source(above.source.as_str()).remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn what_drops_from_the_ceiling_hangs_by_whatever_word_it_is_named() {
        let light = |kind: &str, more: &str| {
            Trial::of("light/bath-zone")
                .room("outline: 12' x 10'\nfixtures: {tub: {wall: A, centre: 40\", width: 60\", depth: 30\", height: 20\", takes: bathtub}}\nlights: {over: {selection: It, over: tub, count: 1}}")
                .selection(&format!("selection: It\nkind: {kind}"), more)
        };
        light("ceiling light", "drop: 18\" to 48\"\ndamp rating: wet")
            .finds_one()
            .says("hangs over a tub or shower")
            .cautions();
        light("pendant", "damp rating: wet").finds_one();
        light("ceiling light", "damp rating: wet").stays_silent();
    }

    fn pendant(hangs: &str) -> Trial {
        Trial::of("light/bath-zone").selection(&format!("selection: Lantern\nkind: pendant\nhangs: {{{hangs}}}"), "")
    }

    /// Source: check values BP-28: 90 above the rim and 24 away fails; a rim of 20 asks for 9'-8" to the lowest part.
    #[test]
    fn a_light_near_a_tub_hangs_eight_feet_above_its_rim() {
        pendant("bottom: 110\", from tub: 24\", rim: 20\"")
            .finds("`Lantern` hangs 24\" (610 mm) from a tub or shower, 7'-6\" (2286 mm) above its rim, 6\" (152 mm) less than the 8'-0\" (2438 mm) asked for")
            .weighs("query")
            .cautions();
        pendant("bottom: 9' 8\", from tub: 24\", rim: 20\"").stays_silent();
        pendant("bottom: 9' 7 15/16\", from tub: 24\", rim: 20\"").finds_one();
        pendant("bottom: 80\", from tub: 36\", rim: 20\"").stays_silent();
        pendant("bottom: 80\", from tub: 35 15/16\", rim: 20\"").finds_one();
    }

    #[test]
    fn what_nobody_says_of_a_light_so_near_is_asked() {
        pendant("from tub: 24\", rim: 20\"").finds_one();
        pendant("from tub: 24\", bottom: 100\"").finds_one();
        pendant("from tub: 24\", bottom: 90\"").finds(
            "`Lantern` hangs 24\" (610 mm) from a tub or shower, 7'-6\" (2286 mm) above the floor, where 8'-0\" (2438 mm) above the rim are asked for",
        );
        pendant("bottom: 80\"").stays_silent();
    }

    /// Source: check values BP-28, in a book that adopts the code.
    #[test]
    fn an_adopted_code_stops() {
        pendant("bottom: 110\", from tub: 24\", rim: 20\"")
            .book("codes: {adopts: [NEC 2020]}")
            .finds_one()
            .weighs("stop");
    }

    /// Source: check values BP-28, as the plan of a bath has tub and lights.
    /// Source: check values BP-28, as lights are set out over the tub itself or the basin beside it.
    #[test]
    fn lights_are_set_out_over_a_fixture_or_an_opening() {
        let bath = |fixture: &str, over: &str, hangs: &str| {
            Trial::of("light/bath-zone")
                .room(&format!(
                    "outline: 12' x 8'\nfixtures: {{tub: {{wall: A, centre: 33\", width: 60\", depth: 30\", height: 20\", takes: bathtub{fixture}}}, basin: {{wall: C, centre: 70\", width: 24\", depth: 20\", takes: basin}}}}\nlights: {{lights: {{selection: Lantern, over: {over}, count: 1}}}}"
                ))
                .opening("alcove", "{takes: bathtub, width: 60\", depth: 30\"}")
                .selection(&format!("selection: Lantern\nkind: pendant\n{hangs}"), "size: {diameter: 6\"}")
        };
        bath("", "tub", "hangs: {bottom: 80\"}")
            .finds("`Lantern` hangs over a tub or shower, 5'-0\" (1524 mm) above its rim, 36\" (914 mm) less than the 8'-0\" (2438 mm) asked for");
        bath(", opening: alcove", "alcove", "hangs: {bottom: 80\"}").finds_one();
        bath("", "tub", "").finds("`Lantern` hangs over a tub or shower, and nobody says how low");
        bath("", "tub", "hangs: {bottom: 116\"}").stays_silent();
        bath("", "basin", "hangs: {bottom: 80\"}").stays_silent();
        bath("", "basin", "").stays_silent();
    }

    #[test]
    fn the_plan_answers_where_nobody_measured() {
        let bath = |at: &str| {
            Trial::of("light/bath-zone")
                .room(&format!(
                    "outline: 12' x 8'\nfixtures: {{tub: {{wall: A, centre: 33\", width: 60\", depth: 30\", height: 20\", takes: bathtub}}}}\nruns: {{vanity: {{wall: A, starts: 66\", depth: 21\", parts: [{{cabinet: vanity, width: 72\"}}]}}}}\nlights: {{lights: {{selection: Lantern, over: vanity, at: [{at}]}}}}"
                ))
                .selection("selection: Lantern\nkind: pendant\nhangs: {bottom: 80\"}", "size: {diameter: 6\"}")
        };
        bath("30\"").finds_one();
        bath("36\"").stays_silent();
    }
}
