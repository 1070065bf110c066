//! A hand or a direction that nobody has written down.

use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{DetailName, DetailValue, Grain, Part, ProductOption, Room, Selection, TopMaterial};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::doorways::doorway_of;
use crate::vocabulary::{Bond, Kind, Mention, Pattern};

declare! {
    /// Nobody says which way it hangs, runs or is laid
    ///
    /// ## What it checks
    /// The hinge side of what has a hung door: appliances (a microwave's hangs at the left, always), mirror cabinets, shower glass with a door, doors of rooms, and
    /// single doors of runs and islands; the direction of a tile whose sides differ, of planks
    /// and boards (in `pattern`, or as `laid: runs`), and of herringbone; the grain of cabinets, shelves and
    /// counters whose finish names a wood, and of counters of wood.
    ///
    /// ## Why it matters
    /// Who fits it decides, and never asks. A door hung on the wrong side, a tile laid the wrong way
    /// and a grain that turns at the corner are seen every day for twenty years.
    ///
    /// ## Remedy
    /// Write it down: `hinge`, `laid: {runs: …}`, `grain`.
    ///
    /// ## Example
    /// ```yaml
    /// face size: 2" x 8"
    /// pattern: stacked
    /// laid: {runs: long side upright}
    /// ```
    ///
    /// ## Source
    /// Trade practice: direction stands on the drawing that is signed.
    "finish/hand", Query,
    due: WithThing, tells: [],
    judges: [Refrigerator, PanelRefrigerator, WallOven, Washer, Dryer, Cabinet, MirrorCabinet, ShowerGlass, Door, Shelf, Boarding, Floor, Tile, Counter],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.book.rooms.iter().flat_map(single_doors));
    for (room, selection, option) in context.site.options() {
        let missing = [hinge(room, selection, option), direction(selection, option), grain(selection, option)];
        // What a thing of its kind can't be ordered without is asked for by `complete/field`, once.
        let asked = |field: &str| option.unwritten.contains(&field);
        for (_, what, how) in missing.into_iter().flatten().filter(|(field, ..)| !asked(field)) {
            let message = what(&selection.name.value);
            let at = if selection.options.len() > 1 { option.id.span } else { selection.span };
            findings.push(about(room, selection, option, Severity::Query, at, message).remedy(how));
        }
    }
}

/// The field that is missing, what nobody says of the thing of a name, and how to say it.
type Missing = (&'static str, fn(&String) -> Phrase, &'static str);

fn hinge(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Missing> {
    if selection.is(Kind::Door) && option.hinge.is_absent() && is_hung_on_an_unsaid_side(room, selection, option) {
        return Some((
            "hinge",
            |name| phrase!("nobody says on which side `{name}` hangs", name),
            "add `hinge: …` to the door, or to its doorway as seen from inside the room; or say that it slides",
        ));
    }
    let swings = option.fit.get().is_some_and(|fit| fit.door.get().is_some_and(|door| door.swings.get().is_some()));
    // Microwaves are made with their door hung at the left, all of them.
    let swings = swings && !selection.is(Kind::Microwave);
    let handed = swings || selection.is(Kind::MirrorCabinet) || has_a_hung_pane(selection, option);
    (handed && option.hinge.is_absent()).then_some((
        "hinge",
        |name| phrase!("nobody says the hinge side of `{name}`", name),
        "add `hinge: …`: `left`, `right`, `either`, `both` or `none`, seen from the front",
    ))
}

/// Whether one door of a room hangs, and neither it nor its doorway says where; several of a kind are told apart at their
/// doorways.
fn is_hung_on_an_unsaid_side(room: &Room, selection: &Selection, option: &ProductOption) -> bool {
    let doorway = doorway_of(room, selection);
    let slides = doorway.is_some_and(|doorway| doorway.slides.get() == Some(&true));
    let is_told = doorway.is_some_and(|doorway| !doorway.hinge.is_absent());
    let said = [
        selection.name.value.as_str(),
        option.called.as_str(),
        option.name.text(),
        option.description.text(),
        option.mount_words(),
    ];
    let one = option.quantity.get().is_none_or(|count| count.whole() == Some(1));
    one && !slides && !is_told && !Mention::SlidingPane.is_in_any(said)
}

/// Whether shower glass has a door, as its own words say; a fixed pane has none.
fn has_a_hung_pane(selection: &Selection, option: &ProductOption) -> bool {
    let said = [selection.name.value.as_str(), option.name.text(), option.description.text(), option.model.text()];
    selection.is(Kind::ShowerGlass) && Mention::HungPane.is_in_any(said) && !Mention::SlidingPane.is_in_any(said)
}

/// Single doors in runs and islands of which nobody says the side, one finding a row.
fn single_doors(room: &Room) -> Vec<Remark> {
    let runs = room.runs.iter().map(|run| (&run.name, &run.parts));
    let sides = room.islands.iter().flat_map(|island| island.sides().map(|side| (&island.name, &side.parts)));
    let rows = runs.chain(sides).filter_map(|(name, parts)| {
        let single = |part: &&Part| part.doors.get() == Some(&1) && part.hinge.is_absent();
        let unsaid: Vec<&Part> = parts.iter().filter(single).collect();
        let first = unsaid.first()?;
        let names: Vec<Phrase> = unsaid.iter().map(|part| phrase!("`{}`", part.is.word())).collect();
        let message =
            phrase!("nobody says the hinge side of `{name}` in `{}`", Phrase::joined(names, ", "), name.value);
        let finding = Remark::query(first.span, message).room(&room.folder);
        Some(finding.part(&name.value).remedy("add `hinge: …` to each, left or right as seen from the front"))
    });
    rows.collect()
}

fn direction(selection: &Selection, option: &ProductOption) -> Option<Missing> {
    let kind = selection.kind.get()?;
    let (pattern, _) = option.understood::<Pattern>()?;
    let directed = match kind {
        Kind::Tile => is_oblong(option) == Some(true) || pattern.bond == Bond::Herringbone,
        Kind::Floor | Kind::Boarding => {
            !pattern.sheets && (is_oblong(option) != Some(false) || pattern.bond == Bond::Herringbone)
        }
        _ => false,
    };
    let grain = option.fact::<Grain>().is_some_and(|(grain, _)| *grain != Grain::None && *grain != Grain::Matched);
    let told = option.laid.runs.get().is_some() || pattern.directed || (grain && *kind != Kind::Tile);
    (directed && !told).then_some((
        "laid.runs",
        |name| phrase!("nobody says which way the long side of `{name}` runs", name),
        "say it in `pattern`, or add `laid: {runs: …}`",
    ))
}

/// Whether the sides of its face differ, where they are told.
fn is_oblong(option: &ProductOption) -> Option<bool> {
    match &option.detail(DetailName::FaceSize)?.value {
        DetailValue::Sides(sides) => match sides.sides() {
            [one, other] => Some(one != other),
            _ => None,
        },
        _ => None,
    }
}

fn grain(selection: &Selection, option: &ProductOption) -> Option<Missing> {
    let boards = selection.is_any(&[Kind::Cabinet, Kind::Shelf, Kind::Counter]);
    let finish = option.finish.text();
    let of_wood = option.top.get().is_some_and(|top| top.material.get() == Some(&TopMaterial::Wood));
    let (covered, wood) = (Mention::HidesGrain.is_in(finish), of_wood || Mention::Wood.is_in(finish));
    let missing = boards && wood && !covered && option.lacks(DetailName::Grain);
    missing.then_some((
        "grain",
        |name| phrase!("nobody says which way the grain of `{name}` runs", name),
        "add `grain: …`: `upright`, `level`, `matched` or `none`",
    ))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn of(kind: &str, option: &str) -> Trial {
        Trial::of("finish/hand").selection(&format!("selection: It\nkind: {kind}"), option)
    }

    /// Source: trade reports F-98.
    #[test]
    fn an_oblong_tile_without_a_direction_is_told() {
        let tile = |face: &str, pattern: &str| of("tile", &format!("face size: {face}\npattern: {pattern}"));
        tile("2\" x 8\"", "stacked").finds("nobody says which way the long side of `It` runs").weighs("query");
        tile("2\" x 8\"", "upright, stacked").stays_silent();
        tile("2\" x 8\"", "stacked\nlaid: {runs: long side level}").stays_silent();
        for told in [
            "1/3 running bond, long way garage to kitchen",
            "running bond, longways down the hall",
            "recto, lado largo hacia el patio",
            "Halbverband, längs zum Fenster",
            "half bond towards the window",
        ] {
            tile("12\" x 24\"", told).stays_silent();
        }
        tile("12\" x 24\"", "1/3 running bond").finds_one();
        tile("4\" x 4\"", "stacked").stays_silent();
        tile("4\" x 4\"", "herringbone").finds_one();
    }

    /// Source: trade reports F-118.
    #[test]
    fn planks_and_grain_want_a_direction() {
        of("floor", "pattern: straight planks").finds_one();
        of("floor", "face size: 330 mm x 330 mm\npattern: straight").stays_silent();
        of("floor", "face size: 300 mm x 600 mm\npattern: straight").finds_one();
        of("floor", "pattern: straight planks along the room").stays_silent();
        of("floor", "pattern: \"one sheet, no seam\"").stays_silent();
        of("floor", "pattern: straight planks\ngrain: along the room").stays_silent();
        of("floor", "pattern: straight planks\ngrain: crosswise").stays_silent();
        of("cabinet", "finish: oiled oak").finds("nobody says which way the grain of `It` runs");
        of("cabinet", "finish: oiled larch").finds_one();
        of("cabinet", "finish: oiled oak\ngrain: level").stays_silent();
        of("cabinet", "finish: painted ash").stays_silent();
        of("shelf", "finish: stained walnut").finds_one();
        of("shelf", "finish: stained walnut\ngrain: level").stays_silent();
        of("counter", "finish: oiled\ntop: {material: wood}").finds_one();
        of("counter", "finish: oiled\ntop: {material: wood}\ngrain: level").stays_silent();
        of("counter", "finish: honed\ntop: {material: stone}").stays_silent();
    }

    /// Source: trade reports F-74.
    #[test]
    fn a_hung_door_wants_a_hinge_side() {
        of("washer", "fit: {door: {swings: 19\"}}").finds("nobody says the hinge side of `It`");
        of("washer", "hinge: left\nfit: {door: {swings: 19\"}}").stays_silent();
        of("dishwasher", "fit: {door: {drops: 24\"}}").stays_silent();
    }

    /// One fault, one finding: a refrigerator can't be ordered without its hinge side, and `complete/field` asks.
    #[test]
    fn a_hinge_that_the_kind_needs_is_asked_for_once() {
        let option = "maker: Vessary\nmodel: 30\nfinish: steel\nsupplier: Oren\nlead time: 2 weeks\nprice: 1400\nquantity: 1\nphotos: [a.jpg]\nfit: {needs: {power: 120 V}, door: {swings: 30\"}}\nsize: {width: 30\", height: 69\", depth: 25\", depth with door: 27\", depth with handle: 29\", height to hinge: 69 7/8\"}";
        let fridge = |rule| Trial::of(rule).selection("selection: It\nkind: refrigerator", option);
        fridge("finish/hand").stays_silent();
        fridge("complete/field").finds("the refrigerator lacks `hinge`").weighs("stop");
    }

    /// Source: trade reports F-74.
    #[test]
    fn a_door_of_a_room_has_a_side_of_its_own_or_of_its_doorway() {
        let door = |doorway: &str, option: &str| {
            Trial::of("finish/hand")
                .room(&format!("outline: 8' x 5'\ndoors: {{hall: {{wall: A, at: 2\", width: 30\"{doorway}}}}}"))
                .selection("selection: Hall door\nkind: door\nplace: hall", option)
        };
        door("", "model: D").finds("nobody says on which side `Hall door` hangs").weighs("query");
        door("", "hinge: left").stays_silent();
        door(", hinge: left", "model: D").stays_silent();
        door(", slides: true", "model: D").stays_silent();
        door("", "description: Pocket door").stays_silent();
        of("door", "model: D").finds_one();
        of("pocket door", "model: D").stays_silent();
        of("door", "quantity: 4").stays_silent();
    }

    #[test]
    fn mirror_cabinets_shower_doors_and_single_doors_of_a_run_have_a_side() {
        of("mirror cabinet", "model: MC").finds("nobody says the hinge side of `It`");
        of("mirror cabinet", "hinge: right").stays_silent();
        of("shower glass", "name: Pivot door").finds_one();
        of("shower glass", "name: Pivot door\nhinge: left").stays_silent();
        of("shower glass", "name: Fixed pane").stays_silent();
        of("shower glass", "name: Sliding door").stays_silent();
        let run = |part: &str| {
            Trial::of("finish/hand")
                .room(&format!("runs: {{wall: {{parts: [{{cabinet: base, width: 18\", {part}}}]}}}}"))
        };
        run("doors: 1").finds("nobody says the hinge side of `base` in `wall`").weighs("query");
        run("doors: 1, hinge: left").stays_silent();
        run("doors: 2").stays_silent();
        run("drawers: 3").stays_silent();
    }
}
