//! `start`: lays out a small book to begin with.

use std::path::PathBuf;

use crate::start::start;

use super::clock::Today;
use super::report::{print, say};
use super::{CLEAN, Failure};

/// Lays out a small book that teaches the format
#[derive(clap::Args)]
pub struct Start {
    /// A new or empty folder
    #[arg(value_name = "DIR")]
    folder: PathBuf,
    #[command(flatten)]
    today: Today,
}

impl Start {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        for path in start(&self.folder, self.today.date()?)? {
            print(&format!("{}\n", self.folder.join(path).display()))?;
        }
        let folder = self.folder.display();
        say(&format!("next: bookmatch review {folder}"));
        say(&format!("then: bookmatch publish {folder} --out {folder}/site"));
        Ok(CLEAN)
    }
}
