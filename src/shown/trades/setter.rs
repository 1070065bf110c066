//! The setter's sheet: tile and floors, with what decides how they are laid.

use crate::book::{DetailName, Selection};
use crate::site::is_floor;
use crate::vocabulary::{Kind, Shown};

use super::InRoom;
use super::built::{Asked, Built, BuiltFact, BuiltItem, may, must};
use super::cells::detail;
use super::notes::notes;

/// The kinds that a setter lays.
const LAID: [Kind; 2] = [Kind::Tile, Kind::Floor];

/// What is asked of tile.
const TILE: [Asked; 24] = [
    may("maker", |option| option.maker.shown()),
    may("model", |option| option.model.shown()),
    may("finish", |option| option.finish.shown()),
    may("colour", |option| option.colour.shown()),
    must("face size", |option| detail(option, DetailName::FaceSize)),
    must("thickness", |option| detail(option, DetailName::Thickness)),
    must("pattern", |option| detail(option, DetailName::Pattern)),
    must("runs", |option| option.laid.runs.shown()),
    must("starts", |option| option.laid.starts.shown()),
    may("offset", |option| option.laid.offset.shown()),
    must("joint", |option| detail(option, DetailName::Joint)),
    may("least joint", |option| option.laid.least_joint.shown()),
    must("grout", |option| detail(option, DetailName::Grout)),
    may("edges", |option| option.laid.edges.shown()),
    must("edge trim", |option| detail(option, DetailName::EdgeTrim)),
    may("open edges", |option| option.laid.open_edges.shown()),
    may("niche", |option| option.laid.niche.shown()),
    may("behind", |option| option.laid.behind.shown()),
    must("bed", |option| option.laid.bed.shown()),
    may("varies by", |option| option.laid.varies_by.shown()),
    must("area", |option| option.laid.area.shown()),
    may("waste", |option| option.laid.waste.shown()),
    must("quantity", |option| option.quantity.shown()),
    may("lot", |option| option.sold.lot.shown()),
];

/// What is asked of a floor other than tile.
const FLOOR: [Asked; 19] = [
    may("maker", |option| option.maker.shown()),
    may("model", |option| option.model.shown()),
    may("finish", |option| option.finish.shown()),
    may("colour", |option| option.colour.shown()),
    may("face size", |option| detail(option, DetailName::FaceSize)),
    must("thickness", |option| detail(option, DetailName::Thickness)),
    must("pattern", |option| detail(option, DetailName::Pattern)),
    must("runs", |option| option.laid.runs.shown()),
    must("starts", |option| option.laid.starts.shown()),
    may("offset", |option| option.laid.offset.shown()),
    may("joint", |option| detail(option, DetailName::Joint)),
    may("grain", |option| detail(option, DetailName::Grain)),
    may("edge", |option| detail(option, DetailName::Edge)),
    must("edge trim", |option| detail(option, DetailName::EdgeTrim)),
    must("bed", |option| option.laid.bed.shown()),
    must("area", |option| option.laid.area.shown()),
    may("waste", |option| option.laid.waste.shown()),
    must("quantity", |option| option.quantity.shown()),
    may("lot", |option| option.sold.lot.shown()),
];

/// What there is to lay in a room.
pub fn builds<'a>(at: InRoom<'a, '_>) -> Built<'a> {
    let laid = at.room.selections.iter().filter(|selection| selection.is_any(&LAID));
    let by_sheet: Vec<&Selection> = laid.clone().collect();
    let noted = notes(at.room, |_| false, by_sheet.iter().copied());
    let tables = if noted.rows.is_empty() { vec![] } else { vec![noted] };
    let item = |selection: &'a Selection| {
        let asked: &[Asked] = if selection.is(Kind::Tile) { &TILE } else { &FLOOR };
        let mut item = BuiltItem::of(selection, asked);
        let whole = at.plan.and_then(|plan| plan.area).filter(|_| is_floor(selection));
        item.facts.extend(whole.map(|area| BuiltFact { key: "floor in all", value: area.shown() }));
        item
    };
    Built { tables, items: laid.map(item).collect(), by_sheet, ..Built::default() }
}
