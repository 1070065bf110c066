//! One direction of a thing against its opening.

use crate::source::Span;
use crate::units::{Length, LengthRange};

/// A direction in which a thing is set against its opening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// From side to side.
    Width,
    /// From its bottom up.
    Height,
    /// From the wall out.
    Depth,
}

impl Direction {
    /// The field of an opening that has it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Width => "width",
            Self::Height => "height",
            Self::Depth => "depth",
        }
    }

    /// The path of a thing's own size in that direction.
    pub const fn of_its_size(self) -> &'static str {
        match self {
            Self::Width => "size.width",
            Self::Height => "size.height",
            Self::Depth => "size.depth",
        }
    }
}

/// One direction of a thing against its opening.
#[derive(Clone, Debug, Default)]
pub struct DimensionCheck {
    /// What the maker's sheet asks of the opening.
    pub asked: Option<LengthRange>,
    /// Where the sheet's figure is written.
    pub asked_at: Option<Span>,
    /// The thing's own size: the least, where legs can be set.
    pub body: Option<Length>,
    /// Where its size is written.
    pub body_at: Option<Span>,
    /// Clear space that the sheet asks for on both sides together.
    pub air: Length,
    /// The governing size of the opening.
    pub there: Option<Length>,
    /// Where that is written.
    pub there_at: Option<Span>,
    /// The opening where it is largest; none where that is the governing size too.
    pub largest: Option<Length>,
    /// Where that is written.
    pub largest_at: Option<Span>,
    /// Whether the sheet alone decides: the thing's own size is not what goes into the hole.
    pub sheet_alone: bool,
    /// Whether what is there is known from a neighbour alone: it can be too small, never too large.
    pub bound: bool,
    /// Whether its own size is that of the body, which goes into the hole whatever its front covers.
    pub is_of_the_body: bool,
    /// How much more than the sheet's single figure is no matter; none where that is a limit.
    pub hides: Option<Length>,
}

/// How an opening misses what goes into it, in one direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Misfit {
    /// The opening is so much smaller than the least that is needed.
    TooSmall(Length),
    /// The opening is so much larger than the most that the maker's sheet allows.
    TooLarge(Length),
}

/// What is left between a thing and the edges of its opening: what the sheet asks for at each side,
/// and the rest shared equally; negative where it does not go in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Gaps {
    /// At the left.
    pub left: Option<Length>,
    /// At the right.
    pub right: Option<Length>,
    /// Above.
    pub top: Option<Length>,
}

impl Gaps {
    /// What is left at each side, where it is the same: but for the nanometre that no half parts.
    pub fn each_side(&self) -> Option<Length> {
        let (left, right) = self.left.zip(self.right)?;
        Some(left).filter(|_| (left - right).abs() <= Length::from_nanometres(1))
    }
}

impl DimensionCheck {
    /// The least that the opening must be: by the sheet, or by the thing and the air around it,
    /// whichever is more.
    pub fn least(&self) -> Option<Length> {
        let body = self.body.filter(|_| !self.sheet_alone).map(|body| body + self.air);
        let asked = self.asked.and_then(|asked| asked.least);
        asked.into_iter().chain(body).max()
    }

    /// What is left when the least is taken from what is there; negative when it does not fit.
    pub fn left_over(&self) -> Option<Length> {
        Some(self.there? - self.least()?)
    }

    /// What is left when the thing itself is taken from what is there: the play in all.
    pub fn play(&self) -> Option<Length> {
        Some(self.there? - self.body.filter(|_| !self.sheet_alone)?)
    }

    /// By how much the opening, where it is largest, exceeds the most that the sheet allows.
    pub fn too_large_by(&self) -> Option<Length> {
        let excess = self.at_most()? - self.most().filter(|_| !self.bound)?;
        Some(excess).filter(|excess| *excess > Length::ZERO)
    }

    /// The most that the opening may be: as the sheet allows, or so much over its single figure as is no matter.
    pub fn most(&self) -> Option<Length> {
        Some(self.asked?.most? + self.hides.unwrap_or_default())
    }

    /// By how much the opening, where it is largest, exceeds the single figure of a sheet, where that is seen.
    pub fn wider_than_its_figure_by(&self) -> Option<Length> {
        let more = self.too_large_by().filter(|_| self.too_small_by().is_none())?;
        self.hides.map(|hides| more + hides)
    }

    /// The opening where it is largest.
    pub fn at_most(&self) -> Option<Length> {
        self.largest.into_iter().chain(self.there).max()
    }

    /// What does not meet in this direction; what is too small counts first.
    pub fn misfit(&self) -> Option<Misfit> {
        let small = self.too_small_by().map(Misfit::TooSmall);
        small.or_else(|| self.too_large_by().map(Misfit::TooLarge))
    }

    /// What goes into the hole: the thing itself, or, where its front lies over the edge, no more
    /// than the least hole that its sheet asks for.
    pub fn goes_in(&self) -> Option<Length> {
        if self.sheet_alone { self.asked.and_then(|asked| asked.least) } else { self.body }
    }

    /// By how much the body, with the air that its sheet asks for, is larger than what is there, where the sheet asks for
    /// a hole that it does not go into: one of the sheet's figures is another's.
    pub fn body_is_larger_by(&self) -> Option<Length> {
        let decides = self.sheet_alone && self.is_of_the_body && self.asked.is_some() && self.misfit().is_none();
        let body = self.body.filter(|_| decides)? + self.air;
        Some(body - self.there?).filter(|over| *over > Length::ZERO)
    }

    /// By how much the opening is too small.
    pub fn too_small_by(&self) -> Option<Length> {
        self.left_over().filter(|left| left.is_negative()).map(Length::abs)
    }
}
