//! `issue`: freezes the book under a number.

use std::path::Path;
use std::sync::atomic::AtomicBool;

use crate::assess::{ChangeOrder, Heading, freeze};
use crate::finding::{Code, Family, Finding};
use crate::ledger::{Fact, Issue as Frozen, Issued, Purpose};
use crate::pipeline::{self, BuildCaches, BuildOptions, Review};
use crate::record::{Open, RecordError, Store};
use crate::source::Folder;

use super::book_folder::BookFolder;
use super::clock::{self, Today};
use super::publish::{open_cache, say_trouble};
use super::report::{self, say};
use super::{CLEAN, Failure, STOPPED};

/// Freezes the book under a number: items, marks, totals and date
///
/// Refuses while findings stop the work. What changed since the last issue for the same is printed. An
/// issue that would say the same as that is not made.
#[derive(clap::Args)]
pub struct Issue {
    #[command(flatten)]
    book: BookFolder,
    /// What the issue is for
    #[arg(long = "for", value_enum, value_name = "WHAT")]
    purpose: For,
    #[command(flatten)]
    today: Today,
}

/// What an issue is for.
#[derive(clap::ValueEnum, Clone, Copy, Debug)]
enum For {
    /// The client is asked to approve it
    Approval,
    /// It is built from
    Construction,
}

impl Issue {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let folder = self.book.open()?;
        let purpose = match self.purpose {
            For::Approval => Purpose::Approval,
            For::Construction => Purpose::Construction,
        };
        let review = pipeline::review_to_issue(&folder, self.today.date()?)?;
        if review.assessment.findings.iter().any(|finding| in_the_way(finding, purpose)) {
            report::say_review(&review);
            say("not issued: mend or waive what stops the work");
            return Ok(STOPPED);
        }
        if !review.book.open.is_empty() {
            report::say_text(&report::open_values(&review, report::OpenShown::All));
            say("not issued: write what is still open, or take its line out");
            return Ok(STOPPED);
        }
        if !pictures_are_whole(&folder, &review)? {
            say("not issued: every picture must be whole");
            return Ok(STOPPED);
        }
        if review.book.selections().next().is_none() {
            return Err("the book has no selection to issue".into());
        }
        let root = folder.root().unwrap_or(&self.book.path);
        issue(root, &review, purpose)
    }
}

/// What stands in the way of an issue. What was decided can be asked anew at any time, so that only a
/// faulty record stops an issue for approval.
fn in_the_way(finding: &Finding, purpose: Purpose) -> bool {
    let of_approval = finding.rule.family() == Family::Approve && finding.rule != Code::LEDGER;
    finding.stops() && !(of_approval && purpose == Purpose::Approval)
}

/// Makes the pictures, as publishing does, and says what is wrong with them.
fn pictures_are_whole(folder: &Folder, review: &Review) -> Result<bool, Failure> {
    let cache = open_cache(folder)?;
    let bar = super::progress::bar("pictures");
    let (progress, interrupt) = (|done, all| bar.at(done, all), AtomicBool::new(false));
    let making = BuildOptions { draft: false, later: false, progress: &progress, interrupt: &interrupt };
    let findings = pipeline::check_pictures(folder, review, &cache, &making, &mut BuildCaches::new()?);
    say_trouble(&cache);
    bar.end();
    for finding in &findings {
        say(&format!("{}: {}; {}", finding.severity.word(), finding.message, finding.remedy));
    }
    Ok(!findings.iter().any(Finding::stops))
}

fn issue(root: &Path, review: &Review, purpose: Purpose) -> Result<u8, Failure> {
    let store = Store::of_book(root);
    let mut open = store.open().map_err(|error| worded(&error))?;
    let record = &review.book.record;
    if open.chain().lines.len() != record.lines.len() {
        return Err("something was recorded while the book was read; issue it again".into());
    }
    let number = record.issues.keys().next_back().copied().unwrap_or(0) + 1;
    let heading = |book: String| Heading { book, number, purpose, on: review.today, after: None };
    let before = record.latest_for(purpose);
    let draft = freeze(&review.book, &review.assessment, heading(String::new()));
    // Approvals that are held, since the terms or the day are others, can be asked anew by an issue alone.
    let held = purpose == Purpose::Approval && !review.assessment.approvals.held.is_empty();
    let stands = |before: &&Frozen| {
        let order = ChangeOrder::between(before, &draft);
        // What is built from is nobody's to approve.
        if purpose == Purpose::Approval { order.is_nothing_decided() } else { order.is_nothing() }
    };
    if let Some(before) = before.filter(|before| !held && stands(before)) {
        report::print_line(&format!("nothing changed since issue {}; it stands", before.number))?;
        return Ok(CLEAN);
    }
    let at = clock::now()?;
    let book = open.book(review.book.project.title.text(), at).map_err(|error| worded(&error))?;
    let frozen = Frozen { book, after: open.chain().head(), ..draft };
    keep(&mut open, &frozen, at).map_err(|error| worded(&error))?;
    drop(open);
    report::print(&report::change_order::issued(&frozen, before.or(record.latest()), &review.book))?;
    Ok(CLEAN)
}

/// The file first, then the line that names it.
fn keep(open: &mut Open<'_>, frozen: &Frozen, at: crate::ledger::Moment) -> Result<(), RecordError> {
    let sha256 = open.keep_issue(frozen)?;
    let items = u32::try_from(frozen.items.len()).unwrap_or(u32::MAX);
    let issued = Issued { number: frozen.number, purpose: frozen.purpose, on: frozen.on, sha256, items };
    open.append(at, Fact::Issued(issued)).map(|_| ())
}

fn worded(error: &RecordError) -> Failure {
    format!("{error}; {}", error.remedy()).into()
}
