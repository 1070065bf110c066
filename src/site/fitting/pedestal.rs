//! What a machine is set up on.

use crate::book::ProductOption;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Mention;
use crate::vocabulary::supply::one_length;

/// A pedestal that is ordered with a thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pedestal {
    /// How high it is, where its words say it in one way.
    pub height: Option<Length>,
    /// Where it is written.
    pub at: Span,
}

/// The pedestal among what is ordered with a machine; none is ordered with a basin, whose own is no more than its foot.
pub fn pedestal_under(option: &ProductOption) -> Option<Pedestal> {
    let with = option.accessories.iter().find(|with| Mention::Pedestal.is_in(&with.name.value))?;
    Some(Pedestal { height: one_length(&with.name.value), at: with.name.span })
}
