//! Views to files: the site, drawings, sheets, and the one writer.

pub mod theme;

pub mod site;

pub mod output;
#[cfg(feature = "sheets")]
pub mod sheets;
