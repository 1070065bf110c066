//! How far what burns must stay from a cooking surface: the makers' sheets first, then codes and practice.

use crate::book::{Burning, Clearance, ProductOption, Slot};
use crate::site::fitting::Side;
use crate::units::Length;

use super::Hearth;
use super::body::Body;

/// Air above a thing that is less than this is around its case, and no distance to what hangs over its
/// burners (common practice; the least that published instructions allow over a range is 13").
const OVER_BURNERS: Length = Length::from_inches(12);

/// A figure of a code, the book or the trade.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HeatFigure {
    /// How far.
    pub length: Length,
    /// Whether missing it stops the work, or is asked about.
    pub stops: bool,
    /// Who says so.
    pub source: String,
}

/// The figures that count for a book where no sheet gives any; none where it adopts an edition that has none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct HeatFigures {
    /// To what burns above.
    pub above: Option<HeatFigure>,
    /// To what is shielded or does not burn above.
    pub above_shielded: Option<HeatFigure>,
    /// To what burns beside.
    pub beside: Option<HeatFigure>,
    /// How far up from the cooking surface that holds.
    pub beside_up_to: Option<Length>,
}

/// Whose figure it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DistanceSource {
    /// The cooking surface's own sheet.
    Sheet,
    /// The sheet of what hangs over it.
    SheetAbove,
    /// A code's, the book's or the trade's.
    Figure,
}

/// A distance that is asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RequiredDistance {
    /// How much.
    pub length: Length,
    /// What would do if the thing did not burn.
    pub unless_it_burns: Length,
    /// Whose figure it is.
    pub whose: DistanceSource,
    /// Whether missing it stops the work, or is asked about.
    pub stops: bool,
    /// Who says so.
    pub source: String,
}

impl RequiredDistance {
    fn of_sheet(length: Length, whose: DistanceSource) -> Self {
        let source = "the maker's sheet".into();
        Self { length, unless_it_burns: length, whose, stops: true, source }
    }

    fn of_figure(figure: &HeatFigure) -> Self {
        let HeatFigure { length, stops, source } = figure.clone();
        Self { length, unless_it_burns: length, whose: DistanceSource::Figure, stops, source }
    }
}

/// How far something above must stay that burns so, or that is this body; none where the book adopts an
/// edition that does not say.
pub fn above(hearth: &Hearth<'_>, burning: Burning, body: Option<&Body<'_>>) -> Option<RequiredDistance> {
    let asked = above_one(hearth, burning, body)?;
    let shielded = above_one(hearth, Burning::Shielded, body).map_or(asked.length, |asked| asked.length);
    Some(RequiredDistance { unless_it_burns: shielded, ..asked })
}

fn above_one(hearth: &Hearth<'_>, burning: Burning, body: Option<&Body<'_>>) -> Option<RequiredDistance> {
    let of_sheet = sheet_above(hearth, burning).map(|length| RequiredDistance::of_sheet(length, DistanceSource::Sheet));
    let of_body =
        body.and_then(over_cooking).map(|length| RequiredDistance::of_sheet(length, DistanceSource::SheetAbove));
    let of_sheets = of_sheet.into_iter().chain(of_body).max_by_key(|asked| asked.length);
    let figures = &hearth.figures;
    let figure = if burning == Burning::Burns { &figures.above } else { &figures.above_shielded };
    of_sheets.or_else(|| figure.as_ref().map(RequiredDistance::of_figure))
}

fn sheet_above(hearth: &Hearth<'_>, burning: Burning) -> Option<Length> {
    let fit = hearth.fitted.option.fit.get()?;
    let own = if burning == Burning::Burns { &fit.heat.above } else { &fit.heat.above_shielded };
    let air = || fit.air.top.get().map(|top| top.length).filter(|top| *top >= OVER_BURNERS);
    own.get().copied().or_else(air)
}

/// How high its own sheet wants a thing above a cooking surface, the most of its options.
fn over_cooking(body: &Body<'_>) -> Option<Length> {
    let options = body.options().iter();
    // A hood's sheet says it from the burners up: `above` is what is below it.
    let asks = |option: &ProductOption| {
        let heat = &option.fit.get()?.heat;
        let of_a_hood = heat.above.get().filter(|_| body.is_hood());
        heat.over_cooking.get().into_iter().chain(of_a_hood).max().copied()
    };
    options.filter_map(asks).max()
}

/// How far what burns must stay beside a cooking surface, and how far up that holds.
#[derive(Clone, Debug)]
pub struct Reach {
    /// How far.
    pub asked: RequiredDistance,
    /// How far up from the cooking surface; none: all the way.
    pub up_to: Option<Length>,
    /// Whether it is the sheet's air above the counter, which is judged by words as well.
    pub is_air: bool,
}

/// What is asked for at a side.
pub fn beside(hearth: &Hearth<'_>, side: Side) -> Option<Reach> {
    let none = RequiredDistance { unless_it_burns: Length::ZERO, ..common(hearth)? };
    let up_to = hearth.figures.beside_up_to;
    let Some(fit) = hearth.fitted.option.fit.get() else {
        return Some(Reach { asked: none, up_to, is_air: false });
    };
    let own = if side == Side::Left { &fit.heat.left } else { &fit.heat.right };
    let air = if side == Side::Left { &fit.air.left } else { &fit.air.right };
    let of_sheet = |length| RequiredDistance {
        unless_it_burns: Length::ZERO,
        ..RequiredDistance::of_sheet(length, DistanceSource::Sheet)
    };
    let said_up_to = fit.heat.up_to.get().copied();
    Some(match (own.get(), above_the_counter(air)) {
        (Some(length), _) => Reach { asked: of_sheet(*length), up_to: said_up_to, is_air: false },
        (None, Some(length)) => Reach { asked: of_sheet(length), up_to: said_up_to, is_air: true },
        (None, None) => Reach { asked: none, up_to: said_up_to.or(up_to), is_air: false },
    })
}

fn common(hearth: &Hearth<'_>) -> Option<RequiredDistance> {
    hearth.figures.beside.as_ref().map(RequiredDistance::of_figure)
}

fn above_the_counter(air: &Slot<Clearance>) -> Option<Length> {
    air.get().filter(|air| air.above).map(|air| air.length)
}
