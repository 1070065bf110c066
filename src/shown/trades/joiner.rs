//! The joiner's sheet: cabinets part by part, panels, what is built around, and what goes on the fronts.

use crate::book::{
    DetailName, FinishedSides, Island, IslandSide, Opening, Part, PartIs, ProductOption, Room, Run, Selection,
};
use crate::site::fitting::{Foot, foot};
use crate::site::panels::{is_told, panel_of};
use crate::site::{SeenSide, inside_width, seen_sides};
use crate::vocabulary::{Kind, Shown, ShownValue, Trait, Words};

use super::InRoom;
use super::built::{Asked, Built, BuiltItem, BuiltTable, may, must};
use super::cells::{agreed, chosen, dash, detail, length, named, or_dash, text};
use super::notes::{notes, of_plan};

/// What a joiner makes.
const MADE: [Kind; 2] = [Kind::Cabinet, Kind::Shelf];
/// What goes on its fronts, or in it.
const FITTED: [Kind; 3] = [Kind::Pull, Kind::Knob, Kind::WasteBin];

/// What is asked of cabinets.
const CABINET: [Asked; 17] = [
    may("maker", |option| option.maker.shown()),
    must("door style", |option| detail(option, DetailName::DoorStyle)),
    must("finish", |option| option.finish.shown()),
    may("colour", |option| option.colour.shown()),
    may("grain", |option| detail(option, DetailName::Grain)),
    may("edge", |option| detail(option, DetailName::Edge)),
    may("glass", |option| detail(option, DetailName::Glass)),
    may("width", |option| option.size.width.shown()),
    may("height", |option| option.size.height.shown()),
    may("depth", |option| option.size.depth.shown()),
    may("hinge", |option| option.hinge.shown()),
    may("finished ends", |option| detail(option, DetailName::FinishedEnds)),
    may("door pulls", |option| option.fronts.doors.shown()),
    may("drawer pulls", |option| option.fronts.drawers.shown()),
    must("front thickness", |option| option.fronts.thickness.shown()),
    may("fronts in all", |option| option.fronts.height.shown()),
    may("stores", |option| option.stores.shown()),
];

/// What is asked of shelves.
const SHELF: [Asked; 9] = [
    may("maker", |option| option.maker.shown()),
    must("finish", |option| option.finish.shown()),
    may("colour", |option| option.colour.shown()),
    must("length", |option| option.size.length.shown()),
    must("depth", |option| option.size.depth.shown()),
    must("thickness", |option| detail(option, DetailName::Thickness)),
    may("edge", |option| detail(option, DetailName::Edge)),
    may("grain", |option| detail(option, DetailName::Grain)),
    must("quantity", |option| option.quantity.shown()),
];

/// What is asked of pulls, knobs and what is fitted inside.
const HARDWARE: [Asked; 10] = [
    may("maker", |option| option.maker.shown()),
    must("model", |option| option.model.shown()),
    may("finish", |option| option.finish.shown()),
    may("length", |option| option.size.length.shown()),
    may("diameter", |option| option.size.diameter.shown()),
    may("centre to centre", |option| detail(option, DetailName::CentreToCentre)),
    may("projection", |option| detail(option, DetailName::Projection)),
    may("fits", |option| detail(option, DetailName::Fits)),
    may("screws", |option| detail(option, DetailName::Screws)),
    must("quantity", |option| option.quantity.shown()),
];

/// The joinery of a room.
pub fn builds<'a>(at: InRoom<'a, '_>) -> Built<'a> {
    let room = at.room;
    let made = |selection: &&Selection| selection.is_any(&MADE);
    let (panels, own) = (panels(room), own_cabinets(room));
    let builds_in = room.openings.iter().any(|opening| opening.takes_one(Trait::LapsOver) && is_own(room, opening));
    if !room.selections.iter().any(|one| made(&one)) && panels.rows.is_empty() && !builds_in {
        return Built::default();
    }
    let item = |selection: &'a Selection| {
        let asked: &[Asked] = match () {
            () if selection.is(Kind::Cabinet) => &CABINET,
            () if selection.is(Kind::Shelf) => &SHELF,
            () => &HARDWARE,
        };
        BuiltItem::of(selection, asked)
    };
    let all = room.selections.iter().filter(|one| one.is_any(&MADE) || one.is_any(&FITTED));
    let mut tables = vec![runs(at)];
    tables.extend(room.runs.iter().map(|run| parts(room, &run.name, &run.parts, Some(run))));
    tables.extend(room.islands.iter().flat_map(|island| of_island(room, island)));
    // Cabinets are made around whatever stands in an opening.
    let is_worked_to = |one: &&Selection| one.is_any(&MADE) || one.is_any(&FITTED) || one.place.get().is_some();
    let by_sheet: Vec<&Selection> = room.selections.iter().filter(is_worked_to).collect();
    let mut noted = notes(room, |_| true, by_sheet.iter().copied());
    noted.rows.extend(of_plan(room).into_iter().map(|(name, note)| vec![text(name), text(note)]));
    tables.extend([ends(at), panels, housed(at), own, noted]);
    tables.retain(|table| !table.rows.is_empty());
    Built { tables, items: all.map(item).collect(), by_sheet, ..Built::default() }
}

/// Every row of cabinets: where it starts, how deep and high it is.
fn runs(at: InRoom<'_, '_>) -> BuiltTable {
    let wall = |letter: Option<&String>| letter.map_or(ShownValue::Nothing, |letter| text(wall_named(at.room, letter)));
    let of_run = |run: &Run| {
        let stands = run.above_floor.is_absent();
        vec![
            text(run.name.value.clone()),
            wall(run.wall.get()),
            run.from.shown(),
            ShownValue::Length(run.starts.get().copied().unwrap_or_default()),
            run.depth.shown(),
            run.height.shown(),
            if stands { run.toe_kick.shown() } else { dash() },
            or_dash(run.above_floor.shown()),
            or_dash(run.crown.shown()),
        ]
    };
    let of_island = |island: &Island| {
        vec![
            text(island.name.value.clone()),
            wall(island.wall.get()),
            ShownValue::Word("left"),
            island.at.shown(),
            island.depth.shown(),
            ShownValue::Nothing,
            island.toe_kick.shown(),
            dash(),
            dash(),
        ]
    };
    let rows = at.room.runs.iter().map(of_run).chain(at.room.islands.iter().map(of_island)).collect();
    let columns = vec!["row", "wall", "from", "starts", "depth", "body height", "toe kick", "above floor", "crown"];
    BuiltTable { key: "rows", of: String::new(), columns, rows }
}

/// A wall by its letter and what the household calls it.
fn wall_named(room: &Room, letter: &str) -> String {
    let note = room.walls.iter().find(|wall| wall.name.value.eq_ignore_ascii_case(letter));
    match note.and_then(|wall| wall.called.get()) {
        Some(called) => format!("{letter}, {called}"),
        None => letter.to_string(),
    }
}

/// The sides of cabinets that are seen, and whether each is finished.
fn ends(at: InRoom<'_, '_>) -> BuiltTable {
    let row = |side: &SeenSide<'_>| {
        let finished = side.finished.map(|(finished, _)| finished);
        vec![
            text(side.of.to_string()),
            text(side.row.to_string()),
            ShownValue::Word(side.side),
            finished.map_or(ShownValue::Nothing, ShownValue::Yes),
            if side.wants_panel { ShownValue::Yes(true) } else { dash() },
        ]
    };
    let rows = seen_sides(at.plan, at.room).iter().map(row).collect();
    let columns = vec!["seen side of", "row", "side", "finished", "wants panel"];
    BuiltTable { key: "ends", of: String::new(), columns, rows }
}

fn of_island(room: &Room, island: &Island) -> Vec<BuiltTable> {
    let side = |side: IslandSide| {
        parts(room, &format!("{}, {}", island.name.value, side.word()), &island.side(side).parts, None)
    };
    IslandSide::ALL.into_iter().map(side).collect()
}

/// The parts of a row from its beginning on.
fn parts(room: &Room, name: &str, parts: &[Part], run: Option<&Run>) -> BuiltTable {
    let row = |part: &Part| {
        let opening = match &part.is {
            PartIs::Opening(name) => room.opening(&name.value),
            _ => None,
        };
        let hangs = run.is_some_and(|run| !run.above_floor.is_absent());
        let is_box = matches!(part.is, PartIs::Cabinet(_) | PartIs::Tall(_)) && !hangs;
        let asked = |value: ShownValue| if is_box { value } else { or_dash(value) };
        let holds: Vec<String> = part.holds.iter().map(|held| held.value.clone()).collect();
        let fronts = part.doors.get().is_some() || part.drawers.get().is_some() || !holds.is_empty();
        let of_fronts = |value: ShownValue| if fronts { or_dash(value) } else { asked(value) };
        let single = part.doors.get() == Some(&1);
        vec![
            match &part.is {
                PartIs::Filler(_) => ShownValue::Word("filler"),
                PartIs::Panel(_) => ShownValue::Word("panel"),
                PartIs::Gap(_) => ShownValue::Word("gap"),
                other => text(other.word().to_string()),
            },
            width(part, opening),
            or_dash(part.depth.shown()),
            or_dash(part.height.shown()),
            of_fronts(part.doors.shown()),
            of_fronts(part.drawers.shown()),
            if single { part.hinge.shown() } else { or_dash(part.hinge.shown()) },
            or_dash(part.finished.get().map_or(ShownValue::Nothing, FinishedSides::shown)),
            if holds.is_empty() { dash() } else { text(holds.join(", ")) },
        ]
    };
    let columns = vec!["part", "width", "depth", "height", "doors", "drawers", "hinge", "finished", "holds"];
    BuiltTable { key: "parts", of: name.to_string(), columns, rows: parts.iter().map(row).collect() }
}

fn width(part: &Part, opening: Option<&Opening>) -> ShownValue {
    match &part.is {
        PartIs::Filler(wide) | PartIs::Panel(wide) | PartIs::Gap(wide) => ShownValue::Length(*wide),
        PartIs::Opening(_) => length(opening.and_then(Opening::governing_width)),
        PartIs::Cabinet(_) | PartIs::Tall(_) => part.width.shown(),
    }
}

/// The front panels of appliances: what their sheets ask, who draws and who makes them.
fn panels(room: &Room) -> BuiltTable {
    let wants = |selection: &&Selection| {
        selection.standing().iter().any(|option| is_told(room, selection, option) || asks_panel(option))
            || selection.is_any(&[Kind::PanelDishwasher, Kind::PanelRefrigerator])
    };
    let row = |selection: &Selection| {
        let of = |field: fn(&crate::book::Panel) -> ShownValue| {
            agreed(selection, |option| panel_of(room, selection, option).map_or(ShownValue::Nothing, |one| field(&one)))
        };
        vec![
            named(selection),
            chosen(selection),
            of(|panel| panel.width.shown()),
            of(|panel| panel.height.shown()),
            of(|panel| panel.thickness.shown()),
            of(|panel| panel.weight.shown()),
            of(|panel| panel.drawn_by.shown()),
            of(|panel| panel.made_by.shown()),
        ]
    };
    let rows = room.selections.iter().filter(wants).map(row).collect();
    let columns = vec!["panel for", "chosen", "width", "height", "thickness", "weight", "drawn by", "made by"];
    BuiltTable { key: "panels", of: String::new(), columns, rows }
}

/// Whether a maker's sheet asks for a front panel.
fn asks_panel(option: &ProductOption) -> bool {
    option.fit.get().is_some_and(|fit| fit.panel.get().is_some())
}

/// What cabinets are built around: the inside that its sheet asks, and the one that is there.
fn housed(at: InRoom<'_, '_>) -> BuiltTable {
    let room = at.room;
    let row = |opening: &Opening| {
        let selection = room.goes_into(&opening.name).next()?;
        let holder = room.holder(&opening.name)?;
        let inside = inside_width(room, opening, at.units).map(|inside| inside.told.value);
        let depth = opening.cabinet.get().map_or(ShownValue::Nothing, |cabinet| cabinet.inside_depth.shown());
        let asks = agreed(selection, |option| {
            let cabinet = option.fit.get().and_then(|fit| fit.cabinet.get());
            cabinet.map_or(ShownValue::Nothing, |cabinet| cabinet.inside_width.shown())
        });
        Some(vec![
            named(selection),
            chosen(selection),
            text(holder.part.is.word().to_string()),
            asks,
            length(inside),
            depth,
            length(opening.governing_width()),
        ])
    };
    let rows = room.openings.iter().filter_map(row).collect();
    let columns =
        vec!["built around", "chosen", "in cabinet", "asks inside", "inside width", "inside depth", "opening width"];
    BuiltTable { key: "housed", of: String::new(), columns, rows }
}

/// Whether the cabinet around an opening is told there, and no row holds it.
fn is_own(room: &Room, opening: &Opening) -> bool {
    opening.cabinet.get().is_some() && room.holder(&opening.name).is_none()
}

/// Cabinets that are told at the openings that they are made for, with the hole that is cut in each.
fn own_cabinets(room: &Room) -> BuiltTable {
    let row = |opening: &Opening| {
        let cabinet = opening.cabinet.get().filter(|_| is_own(room, opening))?;
        let selection = room.goes_into(&opening.name).next();
        let asks = selection.map_or(ShownValue::Nothing, |selection| {
            agreed(selection, |option| {
                let cabinet = option.fit.get().and_then(|fit| fit.cabinet.get());
                cabinet.map_or(ShownValue::Nothing, |cabinet| cabinet.inside_width.shown())
            })
        });
        let bottom = match foot(room, opening) {
            Foot::Above(bottom) => ShownValue::Length(bottom),
            Foot::Floor => dash(),
            Foot::Unknown => ShownValue::Nothing,
        };
        let high = opening.height.get().and_then(|height| height.least()).map(|height| height.value);
        Some(vec![
            selection.map_or_else(|| text(opening.name.value.clone()), named),
            selection.map_or_else(dash, chosen),
            or_dash(cabinet.outside_width.shown()),
            cabinet.inside_width.shown(),
            or_dash(cabinet.inside_height.shown()),
            or_dash(cabinet.inside_depth.shown()),
            or_dash(asks),
            length(opening.governing_width()),
            length(high),
            bottom,
        ])
    };
    let rows = room.openings.iter().filter_map(row).collect();
    let columns = vec![
        "built around",
        "chosen",
        "outside width",
        "inside width",
        "inside height",
        "inside depth",
        "asks inside",
        "opening width",
        "opening height",
        "above floor",
    ];
    BuiltTable { key: "own_cabinets", of: String::new(), columns, rows }
}
