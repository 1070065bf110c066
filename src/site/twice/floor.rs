//! Floors and tile against what was planned to be laid, and surfaces whose thickness stands twice.

use crate::book::{DetailName, Opening, ProductOption, Room, Selection};
use crate::site::is_floor;
use crate::site::told::{Answer, Provenance, SourcedFigure, Spot};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

use super::{Differ, Twice, differing};

/// A floor may be thicker than was planned by so much: 1/32 in (common practice).
const HAIR: Length = Length::from_sixty_fourths(2);

/// Of what is laid in a room.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    let mut all: Vec<Twice<'_>> = room.selections.iter().flat_map(thicknesses).collect();
    all.extend(room.selections.iter().filter_map(|selection| floor(room, selection)));
    all.extend(room.openings.iter().filter_map(|opening| walls(room, opening)));
    all
}

/// The thickness of a surface, which may stand in its sizes too.
fn thicknesses(selection: &Selection) -> impl Iterator<Item = Twice<'_>> {
    selection.standing().iter().filter_map(|option| {
        let spot = Spot::Selection(&selection.name);
        let (value, at) = option.length(DetailName::Thickness)?;
        let own = SourcedFigure { value, at, provenance: Provenance::Written, spot };
        let size = SourcedFigure::planned(option.size.thickness.spanned()?, spot);
        differing(&selection.name, "the thickness", &Answer::of([Some(own), Some(size)]), Length::ZERO)
    })
}

/// How thick it is with the bed below it, where that is written, and whether there is one.
fn with_bed(option: &ProductOption) -> Option<(Length, Span, bool)> {
    let (thickness, at) = option.length(DetailName::Thickness)?;
    Some(match option.laid.bed.spanned() {
        Some(bed) => (thickness + bed.value, bed.span, true),
        None => (thickness, at, false),
    })
}

/// How thick what is laid is, where that is written, and what is counted in it.
struct Laid {
    thick: Length,
    at: Span,
    what: &'static str,
}

/// The same with a heating mat below it, which lies in the bed as far as that is thick enough; past it the mat is what
/// makes it so thick.
fn on_a_mat(option: &ProductOption, mat: Option<(Length, Span)>) -> Option<Laid> {
    let (thick, at, has_bed) = with_bed(option)?;
    let bed = option.laid.bed.get().copied().unwrap_or_default();
    let above_the_bed = mat.map(|(mat, at)| (mat - bed, at)).filter(|(more, _)| *more > Length::ZERO);
    Some(match (above_the_bed, has_bed) {
        (Some((more, at)), true) => Laid { thick: thick + more, at, what: "the thickness with the heating in its bed" },
        (Some((more, at)), false) => Laid { thick: thick + more, at, what: "the thickness with the heating below it" },
        (None, true) => Laid { thick, at, what: "the thickness with its bed" },
        (None, false) => Laid { thick, at, what: "the thickness" },
    })
}

/// How thick the heating is that is laid under the floor of a room, and where that is written; of several that may be
/// chosen, the thinnest.
fn heating(room: &Room) -> Option<(Length, Span)> {
    let mats = room.selections.iter().filter(|selection| selection.is(Kind::FloorHeating));
    let thick = mats.flat_map(Selection::standing).filter_map(|option| option.length(DetailName::Thickness));
    thick.min_by_key(|(thick, _)| *thick)
}

/// A floor that is thicker, with its bed, than all that was to be laid on the present one.
fn floor<'a>(room: &'a Room, selection: &'a Selection) -> Option<Twice<'a>> {
    let planned = SourcedFigure::planned(room.floor_build_up.spanned().filter(|_| is_floor(selection))?, Spot::Room);
    let mat = heating(room);
    let thickest = selection.standing().iter().filter_map(|option| on_a_mat(option, mat));
    let Laid { thick: value, at, what } = thickest.max_by_key(|laid| laid.thick)?;
    let counts = SourcedFigure { value, at, provenance: Provenance::Written, spot: Spot::Selection(&selection.name) };
    let thicker = value > planned.value + HAIR;
    thicker.then(|| Twice::of(&selection.name, what, (counts, planned), Differ::MoreThan("the floor build-up")))
}

/// Tile that is thicker by itself than all that was to come on the studs around a tub or a shower.
fn walls<'a>(room: &'a Room, opening: &'a Opening) -> Option<Twice<'a>> {
    let build_up = opening.wall_build_up.spanned().filter(|_| opening.takes_one(Trait::Bathes))?;
    let sides = [build_up.value.left, build_up.value.right, build_up.value.back];
    let least = sides.into_iter().filter(|side| *side > Length::ZERO).min()?;
    let tiles = room.selections.iter().filter(|selection| selection.is(Kind::Tile) && !is_floor(selection));
    let thinnest = |selection: &'a Selection| {
        let each = selection.standing().iter().filter_map(with_bed);
        each.min_by_key(|(thick, ..)| *thick).map(|(thick, at, _)| (selection, thick, at))
    };
    // Which of several tiles comes there is not said: the thinnest must be thicker.
    let (tile, value, at) = tiles.filter_map(thinnest).min_by_key(|(_, thick, _)| *thick)?;
    let counts = SourcedFigure { value, at, provenance: Provenance::Written, spot: Spot::Selection(&tile.name) };
    let planned = SourcedFigure {
        value: least,
        at: build_up.span,
        provenance: Provenance::Plan,
        spot: Spot::Opening(&opening.name),
    };
    (value > least + HAIR)
        .then(|| Twice::of(&tile.name, "the thickness", (counts, planned), Differ::MoreThan("the wall build-up")))
}
