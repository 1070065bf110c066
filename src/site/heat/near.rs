//! A thing near a cooking surface, against how far it must stay.

use crate::book::Burning;
use crate::site::fitting::Side;
use crate::units::Length;

use super::asked::RequiredDistance;
use super::body::Body;

/// Where a thing is, seen from a cooking surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Where {
    /// Above it.
    Above,
    /// At that side of it, and higher than it.
    Beside(Side),
}

/// A thing near a cooking surface.
#[derive(Clone, Debug)]
pub struct Near<'a> {
    /// What it is.
    pub body: Body<'a>,
    /// From the cooking surface to it.
    pub distance: Length,
    /// Whether it burns, as far as anybody says.
    pub burning: Option<Burning>,
    /// Whether a hood that does not burn hangs between it and the cooking surface.
    pub under_a_hood: bool,
    /// Whether it is only said, in words that nobody need understand so, to rise above the cooking surface.
    pub may_be_lower: bool,
    /// How far it must stay.
    pub asked: RequiredDistance,
}

impl Near<'_> {
    /// How much is missing.
    pub fn short(&self) -> Option<Length> {
        Some(self.asked.length - self.distance).filter(|short| *short > Length::ZERO)
    }

    /// Whether nobody says that it burns, and it would be far enough away if it did not.
    pub fn hangs_on_its_material(&self) -> bool {
        self.burning.is_none() && self.short().is_some() && self.distance >= self.asked.unless_it_burns
    }
}

/// The one of which most is missing; of those that are far enough, the one with least to spare.
pub fn nearest<'n, 'a>(near: &'n [Near<'a>]) -> Option<&'n Near<'a>> {
    near.iter().max_by_key(|near| near.asked.length - near.distance)
}
