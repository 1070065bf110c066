//! `publish`: reviews, then writes the site, sheets and schedules.

use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use crate::finding::Finding;
use crate::pictures::Cache;
use crate::pipeline::{self, BuildCaches, BuildOptions, BuildResult, Review};
use crate::publish::output::{OutputFolder, WriteError, is_published, write};
use crate::source::Folder;
use crate::units::Fault;

use super::book_folder::BookFolder;
use super::clock::Today;
use super::one_file::{self, OneFile};
use super::report::{self, say};
use super::stated::published_over_another;
use super::{CLEAN, FAILED, Failure, STOPPED, progress};

/// Reviews the book, then writes the pages, sheets and schedules
///
/// Refuses while findings stop the work, unless it is a draft. What was published before stays whole
/// until the new is complete.
#[derive(clap::Args)]
pub struct Publish {
    #[command(flatten)]
    book: BookFolder,
    /// The folder to write `client`, `installer` and `office` into
    #[arg(long, value_name = "DIR", default_value = "site")]
    out: PathBuf,
    /// Publish though findings stop the work; every page and sheet is marked as a draft
    #[arg(long)]
    draft: bool,
    #[command(flatten)]
    one_file: OneFile,
    #[command(flatten)]
    today: Today,
}

impl Publish {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let interrupt = interrupt()?;
        let folder = self.book.open()?;
        let review = pipeline::review(&folder, self.today.date()?)?;
        if review.book.record.faulty {
            report::say_review(&review);
            say("not published, not even as a draft: the record is not as it was written; put it back first");
            return Ok(STOPPED);
        }
        if review.book.theme_faulty {
            report::say_review(&review);
            say(
                "not published, not even as a draft: the theme can't be read as a whole; what was published before stays",
            );
            return Ok(STOPPED);
        }
        let lines = &review.book.record.lines;
        let over = self.one_file.asked().is_none().then(|| published_over_another(&self.out, lines)).flatten();
        if let Some(fault) = over {
            say(&format!("not published: {fault}; {}", fault.remedy()));
            return Ok(STOPPED);
        }
        if let Some(why) = self.one_file.asked().is_none().then(|| self.would_lose(&review)).flatten() {
            report::say_review(&review);
            say(&format!("not published: {why}; what was published before stays as it was"));
            return Ok(FAILED);
        }
        if review.assessment.counts.stops > 0 {
            report::say_review(&review);
            if !self.draft {
                say("not published: mend or waive what stops the work, or publish a draft with `--draft`");
                return Ok(STOPPED);
            }
        }
        let made = make(&folder, &review, self.draft, &interrupt)?;
        for finding in &made.findings {
            say(&format!("{}: {}; {}", finding.severity.word(), finding.message, finding.remedy));
        }
        if made.findings.iter().any(Finding::stops) && !self.draft {
            say("not published: every picture must be whole; `--draft` publishes without those");
            return Ok(STOPPED);
        }
        if let Some(asked) = self.one_file.asked() {
            return one_file::write(&review, &made, self.draft, asked);
        }
        self.write(&folder, &made, &interrupt)
    }

    /// Why not even a draft takes the place of what was published before: pages would go that nobody took out
    /// of the book.
    fn would_lose(&self, review: &Review) -> Option<String> {
        let unread: Vec<String> = review.book.unread_files.iter().map(|path| format!("`{path}`")).collect();
        let why = match (unread.as_slice(), review.book.rooms.is_empty()) {
            ([], false) => return None,
            ([], true) => "the book has no room, and every page of one would go".to_owned(),
            (files, _) => format!("{} can't be read, and what the pages say of it would go", files.join(", ")),
        };
        (self.draft || unread.is_empty()).then_some(why).filter(|_| is_published(&self.out))
    }

    fn write(&self, folder: &Folder, made: &BuildResult, interrupt: &AtomicBool) -> Result<u8, Failure> {
        let book = folder.root().map_or_else(|| self.book.path.clone(), PathBuf::from);
        let place = OutputFolder { dir: self.out.clone(), book };
        let written = write(&made.output, &place, interrupt).map_err(|error| worded(&error))?;
        say(&format!(
            "published to {}: {} new, {} changed, {} as they were, {} removed",
            self.out.display(),
            written.added,
            written.changed,
            written.same,
            written.removed
        ));
        for (folder, whose) in
            [("client", "for the client"), ("installer", "for the installer"), ("office", "for the office alone")]
        {
            report::print_line(&format!("{} {whose}", self.out.join(folder).join("index.html").display()))?;
        }
        Ok(CLEAN)
    }
}

/// Makes the files, with the book's own cache or, where the book can't be written to, a passing one.
fn make(folder: &Folder, review: &Review, draft: bool, interrupt: &AtomicBool) -> Result<BuildResult, Failure> {
    let cache = open_cache(folder)?;
    let bar = progress::bar("pictures");
    let making = BuildOptions { draft, later: false, progress: &|done, all| bar.at(done, all), interrupt };
    let made = pipeline::make(folder, review, &cache, &making, &mut BuildCaches::new()?);
    bar.end();
    if interrupt.load(Ordering::SeqCst) {
        return Err(worded(&WriteError::Interrupted));
    }
    say_trouble(&cache);
    Ok(made?)
}

/// The book's cache, or a passing one where the book can't be written to.
pub fn open_cache(folder: &Folder) -> Result<Cache, Failure> {
    Ok(match folder.root() {
        Some(root) => Cache::of_book(root),
        None => Cache::temporary()?,
    })
}

/// Says why pictures could not be kept, if so it was, and what to do about it.
pub fn say_trouble(cache: &Cache) {
    if let Some(trouble) = cache.trouble() {
        say(&format!("{trouble}, so pictures and sheets are made anew each time; {}", trouble.remedy()));
    }
}

fn worded(error: &WriteError) -> Failure {
    format!("{error}; {}", error.remedy()).into()
}

/// A flag that Ctrl-C raises, so that what is under way can end whole.
fn interrupt() -> Result<Arc<AtomicBool>, Failure> {
    let flag = Arc::new(AtomicBool::new(false));
    let raised = Arc::clone(&flag);
    ctrlc::set_handler(move || raised.store(true, Ordering::SeqCst))?;
    Ok(flag)
}
