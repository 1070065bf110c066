//! `explain`: the handbook page of a rule, a kind, a record or a field.

use std::path::Path;

use crate::explain::explain;
use crate::read::{PROJECT_FILES, read};
use crate::source::Folder;
use crate::units::System;

use super::report::print;
use super::{CLEAN, Failure};

/// Explains a rule, a kind of selection, a record or a field
///
/// Without a name it lists what can be explained. In a book's folder, in the units of that book.
#[derive(clap::Args)]
pub struct Explain {
    /// Such as `fit/width`, `refrigerator`, `opening` or `lead time`
    #[arg(value_name = "RULE|KIND|FIELD")]
    name: Vec<String>,
}

impl Explain {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        print(&explain(&self.name.join(" "), units_here())?)?;
        Ok(CLEAN)
    }
}

/// The units of the book whose folder this is; feet and inches where it is none.
fn units_here() -> System {
    let is_book = PROJECT_FILES.iter().any(|name| Path::new(name).is_file());
    let book = is_book.then(|| Folder::open(Path::new(".")).ok()).flatten().and_then(|folder| read(&folder).ok());
    book.map_or_else(System::default, |reading| reading.book.project.units)
}
