//! Views to files: the site, drawings, sheets, and the one writer.

pub mod drawings;
