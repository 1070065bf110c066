//! `issue`: freezes the book under a number.

use std::io::IsTerminal;
use std::path::Path;
use std::sync::atomic::AtomicBool;

use crate::assess::approval::Withdrawn;
use crate::assess::{ChangeOrder, Changed, Heading, Unapproved, asked, freeze};
use crate::book::Book;
use crate::finding::{Code, Family, Finding};
use crate::ledger::{AskedChange, Fact, Issue as Frozen, Issued, ItemName, Purpose, TakenUnapproved};
use crate::pipeline::{self, BuildCaches, BuildOptions, Review};
use crate::record::{Open, RecordError, Store};
use crate::source::Folder;

use super::book_folder::BookFolder;
use super::clock::{self, Today};
use super::publish::{open_cache, say_trouble};
use super::report::{self, say};
use super::sent::{self, Addressee, addressee};
use super::{Failure, STOPPED};

/// Freezes the book under a number: items, marks, totals and date
///
/// Refuses while findings stop the work; for construction also what is not approved, unless told why it is
/// taken all the same. What changed since the last issue for the same is printed. An
/// issue that would say the same as that is not made.
#[derive(clap::Args)]
pub struct Issue {
    #[command(flatten)]
    book: BookFolder,
    /// What the issue is for
    #[arg(long = "for", value_enum, value_name = "WHAT", required_unless_present = "sent")]
    purpose: Option<For>,
    /// To whom it is sent, as "NAME" or "NAME, ROLE", which is recorded; may be given several times
    #[arg(long, value_name = "NAME, ROLE", value_parser = addressee)]
    to: Vec<Addressee>,
    /// Make no issue: record alone that this one was sent
    #[arg(long, value_name = "NUMBER", requires = "to", conflicts_with = "purpose")]
    sent: Option<u32>,
    /// Why what is not approved is issued for construction all the same; printed on its sheets
    #[arg(long, value_name = "WHY")]
    unapproved: Option<String>,
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
        let root = folder.root().unwrap_or(&self.book.path).to_path_buf();
        let purpose = match (self.sent, self.purpose) {
            (Some(number), _) => return sent::record(&root, number, &self.to),
            (None, Some(For::Construction)) => Purpose::Construction,
            (None, Some(For::Approval) | None) => Purpose::Approval,
        };
        let review = match purpose {
            Purpose::Approval => pipeline::review_to_ask(&folder, self.today.date()?)?,
            Purpose::Construction => pipeline::review_to_issue(&folder, self.today.date()?)?,
        };
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
        if purpose == Purpose::Construction && say_unwritten(&review.book) {
            return Ok(STOPPED);
        }
        let taken = match self.taken(&review, purpose)? {
            Ok(taken) => taken,
            Err(refused) => return Ok(refused),
        };
        let number = issue(&root, &review, purpose, taken)?;
        sent::record(&root, number, &self.to)
    }

    /// What is not approved and is to be built from all the same, with the reason; nothing where all is approved, or
    /// the client is only asked. Without a reason it is refused, with those who have still to sign.
    fn taken(&self, review: &Review, purpose: Purpose) -> Result<Result<Option<TakenUnapproved>, u8>, Failure> {
        let because = self.unapproved.as_deref().map(plain_line);
        let because = match (purpose, because.as_deref()) {
            (Purpose::Approval, Some(_)) => return Err("`--unapproved` goes with `--for construction`".into()),
            (Purpose::Approval, None) => return Ok(Ok(None)),
            (Purpose::Construction, Some("")) => return Err("say why after `--unapproved`".into()),
            (Purpose::Construction, because) => because,
        };
        let book = &review.book;
        let waiting =
            book.selections().filter_map(|(room, selection)| review.assessment.not_approved(book, room, selection));
        let waiting: Vec<Unapproved<'_>> = waiting.collect();
        let gone: Vec<&Withdrawn> = review.assessment.approvals.withdrawn_unasked().collect();
        if waiting.is_empty() && gone.is_empty() {
            return Ok(Ok(None));
        }
        let Some(because) = because else {
            say("not issued for construction: these are not approved");
            alike(&waiting).iter().for_each(|line| say(line));
            gone.iter().for_each(|gone| say(&format!("  {}: {}", gone.stands_for(), gone.named())));
            say(
                "have them approved, or say why they are built all the same: `--unapproved \"…\"`, which is printed on their sheets",
            );
            return Ok(Err(STOPPED));
        };
        let name = |one: &Unapproved<'_>| ItemName { room: one.room.folder.clone(), item: one.selection.id.clone() };
        let withdrawn = gone.iter().map(|gone| ItemName { room: gone.room.clone(), item: gone.item.clone() });
        let items = waiting.iter().map(name).chain(withdrawn).collect();
        Ok(Ok(Some(TakenUnapproved { because: because.into(), items })))
    }
}

/// What stands in the way of an issue. What was decided can be asked anew at any time, so that only a
/// faulty record stops an issue for approval.
fn in_the_way(finding: &Finding, purpose: Purpose) -> bool {
    let of_approval = finding.rule.family() == Family::Approve && finding.rule != Code::LEDGER;
    finding.stops() && !(of_approval && purpose == Purpose::Approval)
}

/// Says which options were signed and are not written yet, where there are any: what is built from stands in the book.
fn say_unwritten(book: &Book) -> bool {
    let unwritten = book.selections().filter(|(_, selection)| selection.chosen_by_record);
    let lines: Vec<String> = unwritten
        .filter_map(|(room, selection)| {
            let option = selection.settled()?;
            let (tag, name, id) = (&selection.tag, &selection.name.value, &option.id.value);
            Some(format!(
                "  {tag} {name} ({}): all who must chose {}; write `chosen: {id}`",
                room.title(),
                option.title()
            ))
        })
        .collect();
    if !lines.is_empty() {
        say("not issued for construction: these choices were signed, and the book does not say them");
        lines.iter().for_each(|line| say(line));
    }
    !lines.is_empty()
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

/// The number of the issue that was made, or that stands.
fn issue(root: &Path, review: &Review, purpose: Purpose, taken: Option<TakenUnapproved>) -> Result<u32, Failure> {
    let record = &review.book.record;
    let number = record.issues.keys().next_back().copied().unwrap_or(0) + 1;
    let heading = |book: String| Heading { book, number, purpose, on: review.today, after: None };
    let before = record.latest_for(purpose);
    let draft = Frozen { unapproved: taken, ..freeze(&review.book, &review.assessment, heading(String::new())) };
    // Approvals that are held, since the terms or the day are others, can be asked anew by an issue alone.
    let held = purpose == Purpose::Approval && !review.assessment.approvals.held.is_empty();
    let order = before.map(|before| (before, ChangeOrder::between(before, &draft)));
    let stands = |order: &ChangeOrder| {
        // What is built from is nobody's to approve.
        if purpose == Purpose::Approval {
            order.is_nothing_decided() && order.who.is_empty()
        } else {
            // Paper that says why it was not approved is replaced once it is, or for another reason.
            order.is_nothing_built() && before.is_some_and(|before| before.unapproved == draft.unapproved)
        }
    };
    if let Some((before, _)) = order.as_ref().filter(|(_, order)| !held && stands(order)) {
        report::print_line(&format!("nothing changed since issue {}; it stands", before.number))?;
        return Ok(before.number);
    }
    // Asked before the record is locked: nobody else waits for an answer.
    let asked = order.map_or_else(Vec::new, |(_, order)| who_asked(&review.book, &order));
    let store = Store::of_book(root);
    let mut open = store.open().map_err(|error| worded(&error))?;
    if open.chain().lines.len() != record.lines.len() {
        return Err("something was recorded while the book was read; issue it again".into());
    }
    let at = clock::now()?;
    let book = open.book(review.book.project.title.text(), at).map_err(|error| worded(&error))?;
    let frozen = Frozen { book, after: open.chain().head(), asked, ..draft };
    keep(&mut open, &frozen, at).map_err(|error| worded(&error))?;
    drop(open);
    report::print(&report::change_order::issued(&frozen, before.or(record.latest()), review))?;
    Ok(number)
}

/// What is not approved, a line for all that stand alike: how far they have come, and who has still to sign.
fn alike(waiting: &[Unapproved<'_>]) -> Vec<String> {
    let mut groups: Vec<(&Unapproved<'_>, Vec<String>)> = Vec::new();
    for one in waiting {
        let name = format!("{} {}", one.selection.tag, one.selection.name.value);
        match groups.iter_mut().find(|(first, _)| (first.stands, &first.of) == (one.stands, &one.of)) {
            Some((_, names)) => names.push(name),
            None => groups.push((one, vec![name])),
        }
    }
    groups.into_iter().map(|(first, names)| format!("  {}: {}", first.stands_for(), names.join(", "))).collect()
}

/// Who asked for each change, as the book says; what it does not say is asked of whoever sits at the terminal.
fn who_asked(book: &Book, order: &ChangeOrder) -> Vec<AskedChange> {
    let mut said = asked(book, order);
    let is_said = |item: &Changed, said: &[AskedChange]| {
        said.iter().any(|one| (&one.room, &one.item) == (&item.room, &item.item))
    };
    let unsaid: Vec<&Changed> =
        order.items.iter().filter(|item| item.is_asked_for() && !is_said(item, &said)).collect();
    if !std::io::stdin().is_terminal() {
        return said;
    }
    for item in unsaid {
        say(&format!("{}  {}: who asked for this change? (nobody says: leave it empty)", item.tag, item.name));
        let by = answer();
        say("why?");
        let because = answer();
        if by.is_some() || because.is_some() {
            said.push(AskedChange { room: item.room.clone(), item: item.item.clone(), by, because });
        }
    }
    said
}

/// A line typed at the terminal; nothing where it is empty.
fn answer() -> Option<String> {
    let mut line = String::new();
    std::io::stdin().read_line(&mut line).ok()?;
    Some(plain_line(&line)).filter(|line| !line.is_empty())
}

/// A line without what steers a terminal.
fn plain_line(text: &str) -> String {
    let line: String = text.chars().filter(|one| !one.is_control()).collect();
    line.trim().to_string()
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
