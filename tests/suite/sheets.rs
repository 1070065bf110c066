//! Sign-off sheets, read back with independent readers: poppler and qpdf.

mod sample;
mod text;
