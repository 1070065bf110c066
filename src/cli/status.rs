//! `status`: what is decided, what waits, and what stands in the way of each hold point.

use crate::pipeline::{self, Review};
use crate::views::client::reminder::reminder;

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
    /// Prints a reminder to mail to an approver, by id: what waits for that person, by when, and why by then
    #[arg(long, value_name = "WHO", conflicts_with = "format")]
    remind: Option<String>,
    #[command(flatten)]
    today: Today,
}

impl Status {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let folder = self.book.open()?;
        let review = pipeline::review(&folder, self.today.date()?)?;
        if let Some(who) = &self.remind {
            report::print(&letter(&review, who)?)?;
            return Ok(CLEAN);
        }
        report::print_status(&review, self.format)?;
        Ok(if review.assessment.counts.stops == 0 { CLEAN } else { STOPPED })
    }
}

/// A reminder to an approver, in the first language that clients read.
fn letter(review: &Review, who: &str) -> Result<String, Failure> {
    let project = &review.book.project;
    let approver = project.approvers.iter().find(|approver| approver.id.value == who);
    let approver = approver.ok_or_else(|| format!("`book.yaml` names no approver `{who}`"))?;
    if review.assessment.approvals.issue.is_none() {
        return Err("nothing was issued for approval; begin with `bookmatch issue --for approval`".into());
    }
    let words = project.languages_of_client().first().copied().unwrap_or_default().words();
    let letter = reminder(words, (&review.book, &review.assessment), approver);
    letter.ok_or_else(|| format!("nothing waits for {}", approver.name).into())
}
