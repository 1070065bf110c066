//! The cabinet that houses a thing, wherever it is written: at the opening, as the part of a run or island
//! that holds it, as a cabinet selection of that name.

use crate::book::{BackPanel, InRow, Opening, PartIs, Room, Selection, System};
use crate::site::panel_thickness;
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::{Kind, Slot};

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
        let alone = of_part.filter(|part| part.holds.len() == 1);
        let high = alone.and_then(|part| part.height.spanned()).map(|height| at_most(height.value, height.span));
        Some(Self {
            inside_width: first([own.and_then(|own| written(&own.inside_width)), between]),
            inside_depth: first([own.and_then(|own| written(&own.inside_depth)), deep]),
            inside_height: first([own.and_then(|own| written(&own.inside_height)), high]),
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
