//! `review`: reads everything and reports every finding at once.

use crate::pipeline;

use super::book_folder::BookFolder;
use super::clock::Today;
use super::narrow::Narrow;
use super::report::{self, Format};
use super::{CLEAN, Failure, STOPPED};

/// Reads everything, and reports every finding at once
///
/// Exit code 0 when nothing stops the work, 1 when findings do, 2 when the folder can't be read. With `--only`
/// or `--until` the findings that are told decide.
#[derive(clap::Args)]
pub struct Review {
    #[command(flatten)]
    book: BookFolder,
    /// How to print the findings
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    #[command(flatten)]
    narrow: Narrow,
    #[command(flatten)]
    today: Today,
}

impl Review {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let folder = self.book.open()?;
        let mut review = pipeline::review(&folder, self.today.date()?)?;
        let left_out = self.narrow.of(&mut review)?;
        report::print_review(&review, self.format)?;
        if left_out > 0 {
            let findings = if left_out == 1 { "finding is" } else { "findings are" };
            report::say(&format!("{left_out} other {findings} not told here; `bookmatch review` alone tells all"));
        }
        let code = if review.assessment.counts.stops == 0 { CLEAN } else { STOPPED };
        // The program ends: nobody waits until every part of a large book is let go of.
        std::mem::forget(review);
        Ok(code)
    }
}
