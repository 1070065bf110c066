//! `review`: reads everything and reports every finding at once.

use crate::pipeline;

use super::book_folder::BookFolder;
use super::clock::Today;
use super::report::{self, Format};
use super::{CLEAN, Failure, STOPPED};

/// Reads everything, and reports every finding at once
///
/// Exit code 0 when nothing stops the work, 1 when findings do, 2 when the folder can't be read.
#[derive(clap::Args)]
pub struct Review {
    #[command(flatten)]
    book: BookFolder,
    /// How to print the findings
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    #[command(flatten)]
    today: Today,
}

impl Review {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let folder = self.book.open()?;
        let review = pipeline::review(&folder, self.today.date()?)?;
        report::print_review(&review, self.format)?;
        Ok(if review.assessment.counts.stops == 0 { CLEAN } else { STOPPED })
    }
}
