//! Sign-off sheets, read back with independent readers: poppler (`pdftotext`, `pdffonts`,
//! `pdfinfo`) and `qpdf`.

mod change_order;
mod file;
mod hostile;
mod opened_again;
mod pages;
pub mod readers;
mod revised;
mod sample;
mod shown;
mod signed;
mod tags;
