//! The folder that a command works on.

use std::path::PathBuf;

use crate::source::Folder;

use super::Failure;

/// The book's folder, as named on the command line.
#[derive(clap::Args, Clone, Debug)]
pub struct BookFolder {
    /// The folder that holds `book.yaml`
    #[arg(value_name = "BOOK", default_value = ".")]
    pub path: PathBuf,
}

impl BookFolder {
    /// Lists the folder.
    pub fn open(&self) -> Result<Folder, Failure> {
        Ok(Folder::open(&self.path)?)
    }
}
