//! `preview`: a draft on a loopback address that follows the folder.

use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::Path;
use std::sync::atomic::AtomicBool;

use crate::assess::concerns::Concerns;
use crate::assess::rules::Reader;
use crate::finding::{Finding, Severity};
use crate::pictures::Cache;
use crate::pipeline::{self, BuildCaches, BuildOptions, Review};
use crate::preview::{
    self, Built, Changes, FindingLine, Later, News, Preview as Server, Run, Severity as Weight, plain,
};
use crate::publish::output::Output;
use crate::serving::Stop;
use crate::source::{Folder, Place};
use crate::units::Date;

use super::book_folder::BookFolder;
use super::clock::Today;
use super::publish::{open_cache, say_trouble};
use super::report::say;
use super::{CLEAN, Failure};

/// Shows a draft at a loopback address, and follows the folder
///
/// A saved file is read, built and shown at once. A broken file shows its finding in the page and
/// here, and the last good page stays.
#[derive(clap::Args)]
pub struct Preview {
    #[command(flatten)]
    book: BookFolder,
    /// The port to listen on; 0 takes any that is free
    #[arg(long, default_value_t = 0)]
    port: u16,
    #[command(flatten)]
    today: Today,
}

impl Preview {
    /// Runs the command until Ctrl-C.
    pub fn run(&self) -> Result<u8, Failure> {
        let path = self.book.path.clone();
        let cache = open_cache(&self.book.open()?)?;
        say_trouble(&cache);
        let today = self.today.date()?;
        let stop = Stop::default();
        let mut workshop = BuildCaches::new()?;
        let ended = stop.clone();
        ctrlc::set_handler(move || ended.now())?;
        let run = Server {
            folder: path.clone(),
            address: SocketAddr::new(IpAddr::V4(Ipv4Addr::LOCALHOST), self.port),
            build: Box::new(move |changes: &Changes| build(&path, today, &cache, &mut workshop, changes)),
            tell: Box::new(|news| tell(&news)),
        };
        preview::run(run, &stop).map_err(|error| format!("{error}; {}", error.remedy()))?;
        Ok(CLEAN)
    }
}

/// Reads the folder anew and makes a draft of it: pictures that changed, pages that say something else,
/// sheets that are not in the cache.
fn build(path: &Path, today: Date, cache: &Cache, workshop: &mut BuildCaches, changes: &Changes) -> Built {
    let broken = |message: String, place: String| Built {
        output: Output::default(),
        findings: vec![FindingLine {
            severity: Weight::Stop,
            place,
            message: vec![(false, message)],
            remedy: vec![],
            told: vec![],
        }],
        broken: true,
        waiting: None,
    };
    let folder = match Folder::open(path) {
        Ok(folder) => folder,
        Err(error) => return broken(error.to_string(), path.display().to_string()),
    };
    let changed: Vec<String> =
        changes.paths.iter().filter_map(|path| Some(path.to_str()?.replace('\\', "/"))).collect();
    let review = match workshop.review(&folder, changed.iter().map(String::as_str), today) {
        Ok(review) => review,
        Err(error) => return broken(error.to_string(), path.display().to_string()),
    };
    let concerns = Concerns::of(&review.book);
    let line = |finding| line(&review, finding, &concerns);
    let mut findings: Vec<FindingLine> = standing(&review).map(line).collect();
    // A file that can't be understood would take its room's pages away: the last good ones stay.
    let unreadable = !review.book.unread_files.is_empty();
    // Setting sheets takes longer than all pages: it waits until the folder rests.
    let making = BuildOptions { draft: true, later: true, progress: &|_, _| {}, interrupt: &AtomicBool::new(false) };
    match pipeline::make(&folder, &review, cache, &making, workshop) {
        Ok(made) => {
            findings.extend(made.findings.iter().map(line));
            findings.sort_by_key(|finding| finding.severity);
            let waiting = made.waiting.map(|job| Box::new(move |left: &AtomicBool| job.run(left)) as Later);
            Built { output: made.output, findings, broken: unreadable, waiting }
        }
        Err(error) => broken(error.to_string(), path.display().to_string()),
    }
}

fn standing(review: &Review) -> impl Iterator<Item = &Finding> {
    review.assessment.findings.iter().filter(|finding| finding.waived.is_none())
}

/// Who reads of a finding, for the designer who decides what the client is told.
fn told(concerns: &Concerns<'_>, finding: &Finding) -> Vec<Run> {
    let readers = concerns.readers(finding);
    let names: Vec<&str> = std::iter::once("office").chain(readers.into_iter().map(Reader::word)).collect();
    let mut told = vec![(false, format!("told to {}", names.join(", ")))];
    if concerns.may_tell_client(finding) {
        told.extend([(false, "; ".to_string()), (true, "tell client: yes".into())]);
        told.push((false, " lets the client read what living with it means".into()));
    }
    told
}

fn line(review: &Review, finding: &Finding, concerns: &Concerns<'_>) -> FindingLine {
    let start = review.files.start(&finding.place);
    let path = review.files.path(&finding.place);
    FindingLine {
        severity: match finding.severity {
            Severity::Stop => Weight::Stop,
            Severity::Query => Weight::Query,
            Severity::Note => Weight::Note,
        },
        place: match &finding.place {
            Place::Path(path) => path.clone(),
            Place::Text(_) => format!("{path}:{}:{}", start.line, start.column),
        },
        message: finding.message.runs(),
        remedy: finding.remedy.runs(),
        told: told(concerns, finding),
    }
}

fn tell(news: &News<'_>) {
    match news {
        News::Serving(address) => say(&format!("preview at http://{address}/ (Ctrl-C ends it)")),
        News::Built { findings, broken, changed } => {
            for finding in findings.iter().filter(|finding| finding.severity == Weight::Stop) {
                say(&format!("{}: stop: {}", finding.place, plain(&finding.message)));
                say(&format!("    {}", plain(&finding.remedy)));
            }
            let kept = if *broken { "; the last good pages stay" } else { "" };
            say(&format!("{changed} files changed, {} findings{kept}", findings.len()));
        }
    }
}
