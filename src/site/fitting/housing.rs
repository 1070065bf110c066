//! The cabinet that houses a thing, wherever it is written: at the opening, as the part of a run or island
//! that holds it, as a cabinet selection of that name.

use crate::book::{BackPanel, InRow, Opening, PartIs, Room, Selection, System};
use crate::site::plan::settled;
use crate::site::{counter_height, panel_thickness};
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::{Kind, Slot, Trait};

/// A figure of the cabinet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CabinetFigure {
    /// How much.
    pub length: Length,
    /// Where it, or what it follows from, is written.
    pub span: Span,
    /// How far it can be trusted.
    pub by: FigureBasis,
}

/// How a figure is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FigureBasis {
    /// It is written.
    Written,
    /// It follows from what is written and a usual thickness.
    Usual,
    /// It is no more than that: the cabinet's outside.
    AtMost,
}

/// The cabinet that houses a thing.
#[derive(Clone, Debug, Default)]
pub struct Housing<'a> {
    /// Clear between its sides.
    pub inside_width: Option<CabinetFigure>,
    /// From its front edge to the back panel.
    pub inside_depth: Option<CabinetFigure>,
    /// Clear height.
    pub inside_height: Option<CabinetFigure>,
    /// Over its sides or stiles.
    pub outside_width: Option<CabinetFigure>,
    /// Width of each stile of its face frame.
    pub stiles: Option<CabinetFigure>,
    /// How its back panel is.
    pub back_panel: Option<Spanned<BackPanel>>,
    /// The part of a row that it is.
    pub part: Option<InRow<'a>>,
    /// The cabinet selection that it is.
    pub selection: Option<&'a Selection>,
}

impl<'a> Housing<'a> {
    /// The cabinet of an opening; none where nothing tells of one.
    pub fn of(room: &'a Room, opening: &Opening, system: System) -> Option<Self> {
        let own = opening.cabinet.get();
        let part = room.holder(&opening.name).filter(|holder| is_cabinet(&holder.part.is));
        if own.is_none() && part.is_none() {
            return None;
        }
        let selection = part.and_then(|holder| chosen(room, holder.part.is.word()));
        let size = selection.and_then(Selection::settled).map(|option| &option.size);
        let of_part = part.map(|holder| holder.part);
        let outside = first([
            own.and_then(|own| written(&own.outside_width)),
            of_part.and_then(|part| written(&part.width)),
            size.and_then(|size| written(&size.width)),
        ]);
        let side = own.and_then(|own| own.sides.get().copied());
        let between = outside.map(|outside| CabinetFigure {
            length: outside.length - side.unwrap_or_else(|| panel_thickness(outside.length, system)).times(2),
            by: if side.is_some() { FigureBasis::Written } else { FigureBasis::Usual },
            ..outside
        });
        let deep = first([
            part.and_then(|holder| holder.depth()).map(|depth| at_most(depth.value, depth.span)),
            size.and_then(|size| size.depth.spanned()).map(|depth| at_most(depth.value, depth.span)),
        ]);
        Some(Self {
            inside_width: first([own.and_then(|own| written(&own.inside_width)), between]),
            inside_depth: first([own.and_then(|own| written(&own.inside_depth)), deep]),
            inside_height: inside_height(room, opening),
            outside_width: outside,
            stiles: first([own.and_then(|own| written(&own.stiles)), of_part.and_then(|part| written(&part.stiles))]),
            back_panel: own.and_then(|own| own.back_panel.spanned().cloned()),
            part,
            selection,
        })
    }

    /// What is left of a stile beside a cutout of that width: as written, else half of what the cutout
    /// leaves of the cabinet.
    pub fn stile_beside(&self, cutout: Option<Length>) -> Option<CabinetFigure> {
        let left = self
            .outside_width
            .zip(cutout)
            .map(|(outside, cutout)| CabinetFigure { length: (outside.length - cutout).half(), ..outside });
        first([self.stiles, left])
    }

    /// The other openings that are cut into it.
    pub fn others<'o>(&'o self, opening: &'o Opening) -> impl Iterator<Item = &'o Spanned<String>> {
        let holds = self.part.map_or(&[][..], |holder| holder.part.holds.as_slice());
        holds.iter().filter(|held| !held.eq_ignore_ascii_case(&opening.name))
    }

    /// Where its drawers are told, if it has any.
    pub fn drawers(&self) -> Option<Span> {
        let drawers = &self.part?.part.drawers;
        drawers.span().filter(|_| drawers.get().is_some_and(|count| *count > 0))
    }
}

/// The inside depth of the cabinet that an opening is cut into: as the opening says, else, at most, the depth of
/// the part of a row that holds it.
pub(super) fn inside_depth(room: &Room, opening: &Opening) -> Option<CabinetFigure> {
    let own = opening.cabinet.get().and_then(|own| written(&own.inside_depth));
    own.or_else(|| cabinet_part(room, opening)?.depth().map(|depth| at_most(depth.value, depth.span)))
}

/// The clear height inside the cabinet that an opening is cut into: as the opening says, else, at most, what the part of
/// a row that holds it leaves of its own height, from the opening's sill to its top or to what begins above.
pub(super) fn inside_height(room: &Room, opening: &Opening) -> Option<CabinetFigure> {
    let own = opening.cabinet.get().and_then(|own| written(&own.inside_height));
    own.or_else(|| left_of_its_height(room, opening))
}

fn left_of_its_height(room: &Room, opening: &Opening) -> Option<CabinetFigure> {
    let holder = cabinet_part(room, opening).filter(|_| !opening.takes_one(Trait::CutIntoCounter))?;
    let of_run = holder.run.map(|run| &run.height);
    let height = holder.part.height.spanned().or_else(|| of_run?.spanned());
    let bottom = holder.run.and_then(|run| run.above_floor.get().copied()).unwrap_or_default();
    let Some(sill) = opening.sill.get().copied() else {
        let alone = height.filter(|_| holder.part.holds.len() == 1)?;
        return Some(at_most(alone.value, alone.span));
    };
    let to_the_top = height.map(|height| at_most((bottom + height.value - sill).min(height.value), height.span));
    let held = holder.part.holds.iter().filter_map(|name| room.opening(name));
    let held = held.filter(|other| !other.takes_one(Trait::CutIntoCounter));
    let above = held.filter_map(|other| other.sill.spanned()).filter(|other| other.value > sill);
    let to_the_next = above.map(|other| at_most(other.value - sill, other.span));
    to_the_next.chain(to_the_top).min_by_key(|left| left.length)
}

/// What the cabinet holds below something that is cut into its counter.
#[derive(Clone, Copy, Debug)]
pub struct HeldBelow {
    /// Its kind.
    pub kind: Kind,
    /// From the top of the counter to its top.
    pub clear: Length,
    /// Where its place is written.
    pub at: Span,
}

/// The highest of what the same cabinet holds below what is cut into its counter, by its sill and the height of its
/// opening, or of the one that the sheet of what is chosen asks for.
pub fn held_below(room: &Room, opening: &Opening) -> Option<HeldBelow> {
    let holder = cabinet_part(room, opening).filter(|_| opening.takes_one(Trait::CutIntoCounter))?;
    let counter = counter_height(room, opening).value()?;
    let held = holder.part.holds.iter().filter_map(|name| room.opening(name));
    let tops = held.filter(|other| !other.takes_one(Trait::CutIntoCounter)).filter_map(|other| {
        let measured = other.height.get().and_then(|height| height.greatest()).map(|height| height.value);
        let of_sheet = || settled(room, other)?.fit.get()?.opening.height.get()?.least;
        let sill = other.sill.spanned()?;
        let clear = counter - sill.value - measured.or_else(of_sheet)?;
        Some(HeldBelow { kind: *other.takes.get()?, clear, at: sill.span })
    });
    tops.min_by_key(|held| held.clear)
}

/// The part of a row that an opening is cut into, where that is a cabinet.
pub(super) fn cabinet_part<'a>(room: &'a Room, opening: &Opening) -> Option<InRow<'a>> {
    room.holder(&opening.name).filter(|holder| is_cabinet(&holder.part.is))
}

fn is_cabinet(part: &PartIs) -> bool {
    matches!(part, PartIs::Cabinet(_) | PartIs::Tall(_))
}

/// The cabinet selection that a part names.
fn chosen<'a>(room: &'a Room, name: &str) -> Option<&'a Selection> {
    let cabinets = room.selections.iter().filter(|selection| selection.is(Kind::Cabinet));
    cabinets.into_iter().find(|selection| selection.name.eq_ignore_ascii_case(name))
}

fn written(slot: &Slot<Length>) -> Option<CabinetFigure> {
    slot.spanned().map(|length| CabinetFigure { length: length.value, span: length.span, by: FigureBasis::Written })
}

fn at_most(length: Length, span: Span) -> CabinetFigure {
    CabinetFigure { length, span, by: FigureBasis::AtMost }
}

fn first<const N: usize>(known: [Option<CabinetFigure>; N]) -> Option<CabinetFigure> {
    known.into_iter().flatten().next()
}
