//! Views to files: the site, drawings, sheets, and the one writer.

#[cfg(feature = "sheets")]
pub mod sheets;
