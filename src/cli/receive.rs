//! `receive`: takes in responses that were handed over as files.

use std::collections::BTreeSet;
use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};

use crate::book::Book;
use crate::finding::{Family, Finding, Severity};
use crate::read::read;
use crate::record::{MAX_HANDED, Outcome, Receiver, plain, said};
use crate::source::Folder;

use super::report::{self, say};
use super::written::Written;
use super::{CLEAN, Failure, STOPPED, clock};

/// Takes in responses and readings that were handed over as files
///
/// A response made with a private link is recorded as its approver's own, one without as unsigned. The
/// same one twice is one fact. What is refused says why, and changes nothing.
#[derive(clap::Args)]
pub struct Receive {
    /// The book's folder, if it is not this one, and the files
    #[arg(value_name = "[BOOK] FILE")]
    paths: Vec<PathBuf>,
    #[command(flatten)]
    written: Written,
}

impl Receive {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let (book, files) = match self.paths.split_first() {
            Some((first, files)) if first.is_dir() => (first.as_path(), files),
            _ => (Path::new("."), self.paths.as_slice()),
        };
        if self.written.is_asked() {
            let outcome = self.written.record(&receiver(&Folder::open(book)?)?)?;
            report::print_line(outcome.words())?;
            return Ok(CLEAN);
        }
        if files.is_empty() {
            return Err("no file is named; name the responses that were handed over".into());
        }
        let receiver = receiver(&Folder::open(book)?)?;
        let mut code = CLEAN;
        for file in files {
            match taken(&receiver, file)? {
                Ok(outcome) => {
                    report::print_line(&format!("{}: {}", shown(file), outcome.words()))?;
                    for refused in outcome.refused() {
                        report::print_line(&format!("    not taken: {}", said(refused)))?;
                        code = STOPPED;
                    }
                }
                Err(why) => {
                    say(&format!("{}: not recorded: {why}", shown(file)));
                    code = STOPPED;
                }
            }
        }
        Ok(code)
    }
}

/// Takes one file in; what is wrong with the file itself is a refusal too.
fn taken(receiver: &Receiver, path: &Path) -> Result<Result<Outcome, String>, Failure> {
    let mut bytes = Vec::new();
    // One byte more than may be, to see that there is more.
    let read = File::open(path).and_then(|file| file.take(MAX_HANDED as u64 + 1).read_to_end(&mut bytes));
    if let Err(error) = read {
        return Ok(Err(format!("it can't be read: {error}")));
    }
    Ok(receiver.take_in(&bytes, clock::now()?).map_err(|refusal| refusal.to_string()))
}

fn shown(path: &Path) -> String {
    plain(&path.display().to_string())
}

/// What takes responses in for a book that can be read whole; none for one that can't.
pub fn receiver_of(folder: &Folder) -> Option<Receiver> {
    let reading = read(folder).ok()?;
    let is_whole = |finding: &Finding| finding.severity != Severity::Stop || finding.rule.family() != Family::Source;
    reading.findings.iter().all(is_whole).then(|| receiver(folder).ok())?
}

/// What takes responses in for a book.
pub fn receiver(folder: &Folder) -> Result<Receiver, Failure> {
    let root = folder.root().ok_or("the book is not on a disk")?.to_path_buf();
    let book = read(folder)?.book;
    let approvers: BTreeSet<String> = book.project.approvers.iter().map(|approver| approver.id.value.clone()).collect();
    Ok(Receiver::new(&root, approvers, openings(&book)))
}

fn openings(book: &Book) -> BTreeSet<(String, String)> {
    let in_rooms = book
        .rooms
        .iter()
        .flat_map(|room| room.openings.iter().map(|opening| (room.folder.clone(), opening.name.value.clone())));
    in_rooms.collect()
}
