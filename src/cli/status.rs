//! `status`: what is decided, what waits, and what stands in the way of each hold point.

use crate::pipeline::{self, Review};
use crate::record::Store;
use crate::source::Folder;
use crate::views::client::reminder::{WayThere, reminder};

use super::book_folder::BookFolder;
use super::clock::Today;
use super::invite::way_there;
use super::report::{self, StatusFormat, say};
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
            report::print(&letter(&folder, &review, who)?)?;
            return Ok(CLEAN);
        }
        report::print_status(&review, self.format)?;
        Ok(if review.assessment.counts.stops == 0 { CLEAN } else { STOPPED })
    }
}

/// A reminder to an approver, in the first language that clients read. It holds the private link that `invite` prints
/// for the same person, where its key is on this disk.
fn letter(folder: &Folder, review: &Review, who: &str) -> Result<String, Failure> {
    let project = &review.book.project;
    let approver = project.approvers.iter().find(|approver| approver.id.value == who);
    let approver = approver.ok_or_else(|| format!("`book.yaml` names no approver `{who}`"))?;
    if review.assessment.approvals.issue.is_none() {
        return Err("nothing was issued for approval; begin with `bookmatch issue --for approval`".into());
    }
    let words = project.languages_of_client().first().copied().unwrap_or_default().words();
    let way = folder.root().map_or(WayThere::AsTold, |root| way_there(&Store::of_book(root), &review.book, who));
    let letter = reminder(words, (&review.book, &review.assessment), approver, &way);
    let letter = letter.ok_or_else(|| format!("nothing waits for {}", approver.name))?;
    if matches!(way, WayThere::PrivateLink(_)) {
        say("the letter holds a private link, which decides in that person's name: send it to that person alone");
    }
    Ok(letter)
}
