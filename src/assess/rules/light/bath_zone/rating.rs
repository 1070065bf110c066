//! What hangs over a tub or in a shower, and is made for no such place.

use crate::assess::Context;
use crate::assess::codes::LIGHT_FROM_TUB;
use crate::assess::context::about;
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::plan::{Plan, Point, Thing};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::supply::Worded;
use crate::vocabulary::{Kind, Rating, Trade, Trait};

/// Each light and fan of a room that its plan has over a tub or a shower: its rating must be for that place; and what is
/// for dry places alone, anywhere in a bath.
pub fn check(context: &Context<'_>) -> Vec<Remark> {
    let rooms = context.book.rooms.iter();
    let each = rooms.flat_map(|room| {
        let plan = context.site.sound_plan(room);
        let (told, mut found) = plan.map(|plan| of_room(room, plan)).unwrap_or_default();
        found.extend(dry_in_a_bath(context, room, &told));
        found
    });
    each.collect()
}

/// What its own sheet keeps to dry places, in a room where somebody showers or bathes, unless the plan has it far enough
/// from there.
fn dry_in_a_bath(context: &Context<'_>, room: &Room, told: &[Span]) -> Vec<Remark> {
    if !room.selections.iter().any(|one| one.has(Trait::Bathes) || one.is(Kind::ShowerTray)) {
        return vec![];
    }
    let zone = context.rulings().length(&LIGHT_FROM_TUB).map_or(Length::ZERO, |ruling| ruling.value);
    let is_far = |selection: &Selection| {
        let Some(plan) = context.site.sound_plan(room) else { return false };
        let hung = plan.hung.iter().filter(|hung| hung.lights.selection.get() == Some(&selection.name.value));
        let mut places = hung.flat_map(|hung| &hung.places).peekable();
        let mut wet = plan.things.iter().filter(|thing| is_wet(thing)).peekable();
        places.peek().is_some()
            && wet.peek().is_some()
            && places.all(|place| wet.clone().all(|thing| super::away(thing, *place) >= zone))
    };
    let powered = |selection: &&Selection| {
        let lit = selection.is_any(&[Kind::Fan, Kind::LitMirror, Kind::MirrorCabinet]);
        lit || selection.kind.get().is_some_and(|kind| kind.trade() == Trade::Lighting)
    };
    let things = room.selections.iter().filter(powered).filter(|one| !told.contains(&one.span) && !is_far(one));
    let dry = things.filter_map(|selection| {
        let (option, (rating, at)) = selection.standing().iter().find_map(|option| {
            let rated = option.fact::<Worded<Option<Rating>>>()?;
            (rated.0.is == Some(Rating::Dry)).then_some((option, rated))
        })?;
        let message = phrase!(
            "`{}` is for dry places alone (`{}`), and the room has a tub or a shower",
            selection.name.value,
            rating.words
        );
        let finding = about(room, selection, option, Severity::Query, at, message).source("common practice");
        Some(
            finding
                .remedy("choose one that is rated for a damp place; or show in the plan how far it is from the water"),
        )
    });
    dry.collect()
}

fn of_room(room: &Room, plan: &Plan<'_>) -> (Vec<Span>, Vec<Remark>) {
    let mut told: Vec<Span> = Vec::new();
    let mut found = Vec::new();
    for (selection, place) in over(room, plan) {
        let Some(wet) = plan.things.iter().find(|thing| is_wet(thing) && thing.footprint().contains(place)) else {
            continue;
        };
        if told.contains(&selection.span) {
            continue;
        }
        if let Some(finding) = selection.standing().iter().find_map(|option| judge(room, selection, option, wet)) {
            told.push(selection.span);
            found.push(finding);
        }
    }
    (told, found)
}

/// Every light and fan of a room that is set out over something, with each of its places.
fn over<'a>(room: &'a Room, plan: &Plan<'_>) -> Vec<(&'a Selection, Point)> {
    let named = |name: Option<&String>| room.selections.iter().find(|one| Some(&one.name.value) == name);
    let is_one = |selection: &&Selection| {
        // How high a pendant hangs over a tub is held to the zone there.
        if selection.is(Kind::Pendant) {
            return false;
        }
        selection.is(Kind::Fan) || selection.kind.get().is_some_and(|kind| kind.trade() == Trade::Lighting)
    };
    let hung = plan.hung.iter().filter_map(|hung| Some((named(hung.lights.selection.get())?, &hung.places)));
    let hung = hung.flat_map(|(selection, places)| places.iter().map(move |place| (selection, *place)));
    hung.filter(|(selection, _)| is_one(selection)).collect()
}

fn is_wet(thing: &Thing<'_>) -> bool {
    [Kind::ShowerSet, Kind::ShowerTray, Kind::Bathtub].iter().any(|kind| thing.is(*kind))
}

fn judge(room: &Room, selection: &Selection, option: &ProductOption, wet: &Thing<'_>) -> Option<Remark> {
    let (wants, word) = if wet.is(Kind::Bathtub) { (Rating::Damp, "damp") } else { (Rating::Wet, "wet") };
    let name = &selection.name.value;
    let (at, message) = match option.fact::<Worded<Option<Rating>>>() {
        Some((rating, at)) => {
            let is_less = rating.is.is_some_and(|is| is < wants);
            if rating.is.is_some() && !is_less {
                return None;
            }
            let message = if is_less {
                phrase!(
                    "`{name}` is over `{}`, a place for what is rated {word}, and its rating is `{}`",
                    name,
                    wet.name,
                    word,
                    rating.words
                )
            } else {
                phrase!("`{name}` is over `{}`, and its rating can't be understood: `{}`", name, wet.name, rating.words)
            };
            (at, message)
        }
        None => {
            let message = phrase!(
                "`{name}` is over `{}`, and nobody says whether it is rated for a {word} place",
                name,
                wet.name,
                word
            );
            (selection.name.span, message)
        }
    };
    let finding = about(room, selection, option, Severity::Query, at, message).also(wet.span, "over this");
    let remedy = "look at its sheet, and write `damp rating: wet`, `damp` or its IP code; choose one that is rated for the place";
    Some(finding.source("NEC 410.10(D) (from memory)").remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: NEC 410.10(D), from memory; IEC 60529 for IP codes, from memory.
    #[test]
    fn what_hangs_in_a_shower_is_rated_for_it() {
        let bath = |over: &str, option: &str| {
            Trial::of("light/bath-zone")
                .room(&format!("outline: 9' x 7'\nfixtures:\n  shower: {{wall: A, centre: 20\", width: 36\", depth: 36\", takes: shower}}\n  tub: {{wall: C, centre: 40\", width: 60\", depth: 30\", takes: bathtub}}\n  basin: {{wall: A, centre: 80\", width: 24\", depth: 20\", takes: basin}}\nlights: {{lights: {{selection: Downlights, over: {over}, count: 1}}}}"))
                .selection("selection: Downlights\nkind: downlight", option)
        };
        bath("shower", "damp rating: damp")
            .finds("`Downlights` is over `shower`, a place for what is rated wet, and its rating is `damp`")
            .weighs("query")
            .cautions()
            .points_at(&["rooms/kitchen/selection-0.yaml:3:14"]);
        bath("shower", "").finds("`Downlights` is over `shower`, and nobody says whether it is rated for a wet place");
        bath("shower", "damp rating: see the box").finds_one().says("can't be understood");
        bath("tub", "damp rating: IP20").finds_one();
        for (over, rating) in [("shower", "wet"), ("shower", "IP65"), ("tub", "damp"), ("basin", "dry")] {
            bath(over, &format!("damp rating: {rating}")).stays_silent();
        }
    }

    /// Source: common practice (steam reaches the whole of a bath).
    #[test]
    fn what_is_for_dry_places_alone_is_told_in_a_bath() {
        let light = |kind: &str, rating: &str, bathes: &str| {
            let trial = Trial::of("light/bath-zone")
                .selection(&format!("selection: It\nkind: {kind}"), &format!("damp rating: {rating}"));
            if bathes.is_empty() { trial } else { trial.selection(&format!("selection: Wet\nkind: {bathes}"), "") }
        };
        light("downlight", "IP20", "shower set")
            .finds("`It` is for dry places alone (`IP20`), and the room has a tub or a shower")
            .weighs("query")
            .cautions();
        for (kind, rating) in
            [("sconce", "dry"), ("lit mirror", "IP 20"), ("fan", "dry locations only"), ("led strip", "seco")]
        {
            light(kind, rating, "bathtub").finds_one().weighs("query");
            light(kind, rating, "shower tray").finds_one();
            // A powder room stays dry.
            light(kind, rating, "").stays_silent();
            light(kind, rating, "toilet").stays_silent();
        }
        for rating in ["damp", "IP44", "IPX4", "wet"] {
            light("downlight", rating, "shower set").stays_silent();
        }
    }

    #[test]
    fn what_the_plan_has_far_from_the_water_may_stay_dry() {
        let bath = |away: &str| {
            Trial::of("light/bath-zone")
                .room(&format!("outline: 14' x 7'\nfixtures:\n  tub: {{wall: D, centre: 40\", width: 60\", depth: 30\", takes: bathtub}}\n  basin: {{wall: A, centre: {away}, width: 24\", depth: 20\", takes: basin}}\nlights: {{lights: {{selection: Lamps, over: basin, count: 1}}}}"))
                .selection("selection: Lamps\nkind: downlight", "damp rating: dry")
                .selection("selection: Tub\nkind: bathtub", "")
        };
        bath("120\"").stays_silent();
        bath("50\"").finds_one();
    }
}
