//! The fabricator's sheet: every counter with its pieces, what is let into it, and the holes to be drilled.

use crate::book::{DetailName, Hole, Island, Opening, Piece, ProductOption, Room, Run, Seam, Selection, Top};
use crate::site::layout::{lies_on, same_top};
use crate::site::plan::{Plan, Stands};
use crate::site::{counter_edges, taps};
use crate::vocabulary::supply::Worded;
use crate::vocabulary::{Kind, Mount, Shown, ShownValue, Trait};

use super::InRoom;
use super::built::{Asked, Built, BuiltFact, BuiltItem, BuiltTable, may, must};
use super::cells::{agreed, chosen, dash, detail, from, length, named, or_dash, text};
use super::notes::notes;

/// What is cut by a fabricator.
const CUT: [Kind; 2] = [Kind::Counter, Kind::Splashback];

/// What is asked of a counter that lies on cabinets.
const COUNTER: [Asked; 15] = [
    may("maker", |option| option.maker.shown()),
    must("material", |option| top(option, |top| top.material.shown())),
    must("finish", |option| option.finish.shown()),
    may("colour", |option| option.colour.shown()),
    must("thickness", |option| detail(option, DetailName::Thickness)),
    must("edge", |option| detail(option, DetailName::Edge)),
    must("depth", |option| top(option, |top| top.depth.shown())),
    must("overhang", |option| top(option, |top| top.overhang.shown())),
    may("free span", |option| top(option, |top| top.free_span.shown())),
    must("supports", |option| top(option, |top| top.supports.shown())),
    must("splash", |option| top(option, |top| top.splash.shown())),
    must("inside corners", |option| top(option, |top| top.inside_corners.shown())),
    must("layout", |option| top(option, |top| top.layout.shown())),
    may("grain", |option| detail(option, DetailName::Grain)),
    may("quantity", |option| option.quantity.shown()),
];

/// What is asked of stone besides.
const SLAB: [Asked; 1] = [must("slab", |option| top(option, |top| top.slab.shown()))];

/// What is asked of a sill, a board, a splash.
const SMALL: [Asked; 12] = [
    may("maker", |option| option.maker.shown()),
    may("material", |option| top(option, |top| top.material.shown())),
    must("finish", |option| option.finish.shown()),
    may("colour", |option| option.colour.shown()),
    must("thickness", |option| detail(option, DetailName::Thickness)),
    must("edge", |option| detail(option, DetailName::Edge)),
    must("width", |option| option.size.width.shown()),
    must("length", |option| option.size.length.shown()),
    may("depth", |option| option.size.depth.shown()),
    may("overhang", |option| top(option, |top| top.overhang.shown())),
    may("grain", |option| detail(option, DetailName::Grain)),
    may("quantity", |option| option.quantity.shown()),
];

fn top(option: &ProductOption, of: impl Fn(&Top) -> ShownValue) -> ShownValue {
    option.top.get().map_or(ShownValue::Nothing, of)
}

/// The counters of a room, and what is let into them.
pub fn builds<'a>(at: InRoom<'a, '_>) -> Built<'a> {
    let cut = at.room.selections.iter().filter(|selection| selection.is_any(&CUT));
    let items: Vec<BuiltItem<'a>> = cut.map(|selection| counter(at, selection)).collect();
    if items.is_empty() {
        return Built::default();
    }
    let cut_in =
        |opening: &Opening| opening.takes_one(Trait::CutIntoCounter) || opening.takes_one(Trait::BreaksCounter);
    let is_let_in = |one: &&Selection| one.is_any(&CUT) || one.has(Trait::CutIntoCounter) || one.is(Kind::Tap);
    let by_sheet: Vec<&Selection> = at.room.selections.iter().filter(is_let_in).collect();
    let noted = notes(at.room, cut_in, by_sheet.iter().copied());
    let tables = [runs(at), let_in(at), tap_holes(at.room), holes(at.room), noted];
    Built {
        tables: tables.into_iter().filter(|table| !table.rows.is_empty()).collect(),
        items,
        by_sheet,
        ..Built::default()
    }
}

fn counter<'a>(at: InRoom<'a, '_>, selection: &'a Selection) -> BuiltItem<'a> {
    let lies = lies_on(at.room, selection);
    let of_stone = |option: &ProductOption| {
        option.top.get().and_then(|top| top.material.get()).is_none_or(|material| material.is_stony())
    };
    let is_small = lies.is_empty() || !selection.is(Kind::Counter);
    let slab: &[Asked] = if !is_small && selection.standing().iter().any(of_stone) { &SLAB } else { &[] };
    let asked: &[Asked] = if is_small { &SMALL } else { &COUNTER };
    let mut item = BuiltItem::of(selection, asked.iter().chain(slab));
    let pieces = pieces(selection);
    if pieces.rows.is_empty() && !lies.is_empty() {
        item.facts.push(BuiltFact { key: "pieces", value: ShownValue::Nothing });
    }
    item.tables = [pieces, seams(selection)].into_iter().filter(|table| !table.rows.is_empty()).collect();
    item
}

fn pieces(selection: &Selection) -> BuiltTable {
    let rows = same_top(selection).map_or_else(Vec::new, |top| {
        let row = |piece: &Piece| {
            vec![text(piece.name.value.clone()), ShownValue::Length(piece.length), ShownValue::Length(piece.depth)]
        };
        top.pieces.iter().map(row).collect()
    });
    BuiltTable { key: "pieces", of: String::new(), columns: vec!["piece", "length", "depth"], rows }
}

fn seams(selection: &Selection) -> BuiltTable {
    let rows = same_top(selection).map_or_else(Vec::new, |top| {
        let row = |seam: &Seam| {
            let cells = [seam.over.shown(), seam.on.shown(), seam.from_left.shown()];
            let reinforced = or_dash(seam.reinforced.shown());
            std::iter::once(text(seam.at.value.clone())).chain(cells).chain([reinforced]).collect()
        };
        top.seams.iter().map(row).collect()
    });
    let columns = vec!["seam", "over", "on", "from wall left", "reinforced"];
    BuiltTable { key: "seams", of: String::new(), columns, rows }
}

/// What each counter lies on: how long and deep it is there by the plan, and how high.
fn runs(at: InRoom<'_, '_>) -> BuiltTable {
    let covered = |name: &str| -> Vec<String> {
        let counters = at.room.selections.iter().filter(|selection| selection.is(Kind::Counter));
        let on = counters.filter(|counter| lies_on(at.room, counter).contains(&name));
        on.map(|counter| counter.name.value.clone()).collect()
    };
    let of_run = |run: &Run| {
        let on: Vec<String> = covered(&run.name);
        let edges = counter_edges(at.plan, at.room, run);
        let depth = edges.as_ref().and_then(|edges| edges.depth).or(run.counter.depth.get().copied());
        let open = edges.as_ref().map_or(ShownValue::Nothing, |edges| match edges.open_ends.as_slice() {
            [] => ShownValue::Word("none"),
            ends => ShownValue::List(ends.iter().map(Shown::shown).collect()),
        });
        let long = length(edges.map(|edges| edges.front));
        let row = vec![
            text(run.name.value.clone()),
            text(on.join(", ")),
            long,
            length(depth),
            run.counter.height.shown(),
            open,
        ];
        (!on.is_empty()).then_some(row)
    };
    let of_island = |island: &Island| {
        let on: Vec<String> = covered(&island.name);
        let turned = island.turned.get() == Some(&true);
        let sides = island.size.get().map(|(one, two)| if turned { (*two, *one) } else { (*one, *two) });
        let row = vec![
            text(island.name.value.clone()),
            text(on.join(", ")),
            length(sides.map(|sides| sides.0)),
            length(sides.map(|sides| sides.1)),
            island.height.shown(),
            dash(),
        ];
        (!on.is_empty()).then_some(row)
    };
    let runs = at.room.runs.iter().filter(|run| run.above_floor.is_absent()).filter_map(of_run);
    let rows = runs.chain(at.room.islands.iter().filter_map(of_island)).collect();
    let columns = vec!["lies on", "counter", "along front", "depth", "top height", "open ends"];
    BuiltTable { key: "runs", of: String::new(), columns, rows }
}

/// Sinks, basins and cooktops that are cut into a counter.
fn let_in(at: InRoom<'_, '_>) -> BuiltTable {
    let cut = at.room.selections.iter().filter(|selection| selection.has(Trait::CutIntoCounter));
    let row = |selection: &Selection| {
        let opening = selection.place.get().and_then(|place| at.room.opening(place));
        let sheet = |option: &ProductOption| {
            option.fit.get().and_then(|fit| fit.sheet.get()).map_or(ShownValue::Nothing, |sheet| {
                let words = [sheet.name.text(), sheet.revision.text()].map(str::to_string);
                text(words.into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>().join(", "))
            })
        };
        let mount = |option: &ProductOption| {
            option.fact::<Worded<Option<Mount>>>().map_or(ShownValue::Nothing, |(mount, _)| mount.shown())
        };
        vec![
            named(selection),
            chosen(selection),
            agreed(selection, mount),
            opening.zip(at.plan).map_or(ShownValue::Nothing, |(opening, plan)| middle(plan, opening)),
            opening.map_or(ShownValue::Nothing, hole_of),
            agreed(selection, sheet),
            or_dash(agreed(selection, |option| detail(option, DetailName::Reveal))),
            or_dash(agreed(selection, |option| detail(option, DetailName::CornerRadius))),
        ]
    };
    let columns = vec!["let in", "chosen", "mount", "middle", "opening", "template", "reveal", "corner radius"];
    BuiltTable { key: "let_in", of: String::new(), columns, rows: cut.map(row).collect() }
}

/// Its middle from the left end of its wall, or of the island's side.
fn middle(plan: &Plan<'_>, opening: &Opening) -> ShownValue {
    let Some(thing) = plan.opening(opening) else { return ShownValue::Nothing };
    match thing.stands {
        Stands::Wall(wall) => {
            let name = plan.walls.get(wall).map_or("", |wall| wall.name());
            from(name, thing.centre())
        }
        Stands::Island(number, _) => {
            let island = plan.room.islands.get(number).map_or("", |island| island.name.as_str());
            from(island, thing.centre())
        }
    }
}

/// The opening as it was measured, from side to side and from front to back.
fn hole_of(opening: &Opening) -> ShownValue {
    let sides: Vec<_> = [opening.governing_width(), opening.governing_depth()].into_iter().flatten().collect();
    if sides.len() == 2 { ShownValue::Sides(sides) } else { ShownValue::Nothing }
}

/// Every hole on a list, by what it is listed at.
fn holes(room: &Room) -> BuiltTable {
    let row = |selection: &Selection, hole: &Hole| {
        vec![
            text(hole.purpose.value.clone()),
            named(selection),
            hole.diameter.shown(),
            hole.behind.shown(),
            or_dash(hole.spread.shown()),
            or_dash(hole.to_bowl.shown()),
        ]
    };
    let mut rows: Vec<Vec<ShownValue>> = Vec::new();
    for selection in &room.selections {
        // Three alike are three to be drilled; the same of two options stand there once.
        let mut of_it: Vec<Vec<ShownValue>> = Vec::new();
        for option in selection.standing() {
            let mut listed = of_it.clone();
            for row in option.drilled.iter().map(|hole| row(selection, hole)) {
                match listed.iter().position(|one| *one == row) {
                    Some(at) => _ = listed.swap_remove(at),
                    None => of_it.push(row),
                }
            }
        }
        rows.append(&mut of_it);
    }
    let columns = vec!["hole for", "drilled in", "diameter", "to wall", "next hole", "to bowl"];
    BuiltTable { key: "holes", of: String::new(), columns, rows }
}

/// What each tap takes, and how many of its holes are on a list.
fn tap_holes(room: &Room) -> BuiltTable {
    let on_counter =
        |tap: &&Selection| tap.is(Kind::Tap) && !tap.standing().iter().any(|option| taps::stands_free(tap, option));
    let row = |tap: &Selection| {
        let listed = taps::drilled_for(room, &taps::listed_for(room, tap), tap).len();
        let listed = if listed == 0 { ShownValue::Nothing } else { text(listed.to_string()) };
        vec![
            named(tap),
            chosen(tap),
            agreed(tap, |option| detail(option, DetailName::Holes)),
            agreed(tap, |option| detail(option, DetailName::Spread)),
            agreed(tap, |option| detail(option, DetailName::HoleDiameter)),
            agreed(tap, |option| detail(option, DetailName::RearTravel)),
            listed,
        ]
    };
    let has_bowl = |tap: &&Selection| !taps::serves_no_bowl(tap);
    let rows = room.selections.iter().filter(on_counter).filter(has_bowl).map(row).collect();
    let columns = vec!["tap", "chosen", "holes", "spread", "hole diameter", "rear travel", "listed"];
    BuiltTable { key: "taps", of: String::new(), columns, rows }
}
