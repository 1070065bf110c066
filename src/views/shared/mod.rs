//! What several pages have in common: the frame they stand in, states, figures, pictures, prose.

pub mod bound;
pub mod called;
pub(super) mod concerns;
pub mod data;
pub mod drawing;
pub(super) mod figures;
pub mod fit;
pub(super) mod found;
pub mod html;
pub(super) mod lines;
pub(super) mod page_names;
pub mod photo;
pub(super) mod prose;
pub mod revisions;
pub mod sheet;
pub(super) mod sheet_revisions;
pub mod signature;
pub mod state;
pub mod wording;
