//! `status`: what is decided, what waits, and what stands in the way of each hold point.

use crate::pipeline;

use super::book_folder::BookFolder;
use super::clock::Today;
use super::report::{self, StatusFormat};
use super::{CLEAN, Failure, STOPPED};

/// Tells what is decided, what waits, and what stands in the way
///
/// Exit code 0 when nothing stops the work, 1 when findings do, 2 when the folder can't be read.
#[derive(clap::Args)]
pub struct Status {
    #[command(flatten)]
    book: BookFolder,
    /// How to print it
    #[arg(long, value_enum, default_value = "text")]
    format: StatusFormat,
    #[command(flatten)]
    today: Today,
}

impl Status {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let folder = self.book.open()?;
        let review = pipeline::review(&folder, self.today.date()?)?;
        report::print_status(&review, self.format)?;
        Ok(if review.assessment.counts.stops == 0 { CLEAN } else { STOPPED })
    }
}
