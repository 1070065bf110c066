//! Reads the record: the ledger, and the issues that it names.

use std::collections::BTreeSet;

use serde::Deserialize;

use crate::book::Record;
use crate::digest::Digest;
use crate::finding::{Code, Finding, Phrase, Remark, phrase};
use crate::ledger::{
    Attestation, BesideLedger, Chain, Fact, FaultKind, Head, Issue, Issued, LedgerEnd, LedgerFault, Line, Stated,
};
use crate::source::{FileId, Files, Folder, Place, RecordFile, STATED, Span, StatedIn};
use crate::units::Fault;
use crate::vocabulary::{SheetVersion, Version};

use super::kept;

/// The rule that these findings belong to.
const RULE: Code = Code::LEDGER;
/// The rule that tells keys which others can read.
const KEYS: Code = Code::KEYS;
/// Largest head, in bytes.
const MAX_HEAD: u64 = 1024;
/// Largest ledger, in bytes.
const MAX_LEDGER: u64 = 256 * 1024 * 1024;
/// Largest response, in bytes.
const MAX_RESPONSE: u64 = 1024 * 1024;
/// Largest issue, in bytes.
const MAX_ISSUE: u64 = 64 * 1024 * 1024;
/// How much of a line a finding shows, in bytes.
const SHOWN: usize = 60;
/// How to mend a file of the record.
const PUT_BACK: &str = "put it back as it was, from a backup; until then nothing can be recorded";

/// What to do about a record of a later release.
const UPDATE: &str = "install that release or a newer one; until then nothing can be recorded with this one";

/// Reads the record, and tells what of it is not as it was written.
pub fn read(folder: &Folder, files: &mut Files, findings: &mut Vec<Finding>) -> Record {
    let file = RecordFile::Ledger;
    let bytes = match folder.record(file, MAX_LEDGER) {
        Ok(Some(bytes)) => bytes,
        Ok(None) => vec![],
        Err(error) => {
            let remark = Remark::stop(Place::Path(file.path()), error.message());
            findings
                .push(remark.remedy("keep `record` inside the book, and give yourself the right to read it").of(RULE));
            return Record { faulty: true, ..Record::default() };
        }
    };
    let mut chain = Chain::read(&bytes);
    chain.hold_to(&beside(folder));
    let published = published_over_another(folder, &chain.lines);
    if bytes.is_empty() && chain.is_sound() {
        let faulty = !published.is_empty();
        findings.extend(published);
        return Record { faulty, ..Record::default() };
    }
    if !chain.faults.is_empty() || chain.tail != LedgerEnd::Whole {
        tell(&chain, &bytes, files, findings);
    }
    let before = findings.len();
    let mut record = Record { id: chain.opening().map(|opened| opened.book.clone()), ..Record::default() };
    for line in &chain.lines {
        if let Fact::Issued(issued) = &line.fact {
            record.heads.insert(issued.number, Head::of(line));
            match issue(folder, issued, record.id.as_deref()) {
                Ok(issue) => {
                    findings.extend(other_head(&issue, line));
                    record.issues.insert(issued.number, issue);
                }
                Err(finding) => findings.push(finding),
            }
        }
    }
    findings.extend(published);
    findings.extend(answered_another(folder, &chain.lines));
    record.faulty = !chain.faults.is_empty() || findings.len() > before;
    findings.extend(open_keys(folder));
    record.kept = kept::read(folder, &chain.lines, findings);
    record.photographs = kept::photographs(folder, &chain.lines, findings);
    record.lines = chain.lines;
    record
}

/// What lies beside the ledger, to hold it to.
fn beside(folder: &Folder) -> BesideLedger {
    let head = folder.record(RecordFile::Head, MAX_HEAD).ok().flatten();
    let head = head.and_then(|bytes| serde_json::from_slice(&bytes).ok());
    let mut beside = BesideLedger { head, ..BesideLedger::default() };
    for file in folder.recorded() {
        beside.take(file.folder, &file.name);
    }
    beside
}

/// An issue that was made on another ledger than this: it states the line before its own.
fn other_head(issue: &Issue, line: &Line) -> Option<Finding> {
    let stated = issue.after?;
    if (stated.line + 1, stated.sha256) == (line.number, line.before) {
        return None;
    }
    let fault = LedgerFault { at: line.number, kind: FaultKind::OtherHead(issue.number, stated.line) };
    let place = Place::Path(RecordFile::Issue(issue.number).path());
    Some(Remark::stop(place, fault.message()).remedy(fault.remedy()).of(RULE))
}

/// Published folders in the book's own that were published over another ledger than this, or over more of it.
fn published_over_another(folder: &Folder, lines: &[Line]) -> Vec<Finding> {
    let other = |stated: StatedIn| {
        let head = serde_json::from_slice::<Stated>(&stated.bytes).ok()?.ledger;
        if head.is_in(lines) {
            return None;
        }
        let place = Place::Path(format!("{}/{STATED}", stated.site));
        let fault = LedgerFault { at: head.line, kind: FaultKind::PublishedOther(stated.site, head.line) };
        Some(Remark::stop(place, fault.message()).remedy(fault.remedy()).of(RULE))
    };
    folder.stated().into_iter().filter_map(other).collect()
}

/// Responses that state a line of another ledger than this: it was held against the ledger when they came in.
fn answered_another(folder: &Folder, lines: &[Line]) -> Vec<Finding> {
    let stands: BTreeSet<(u32, Digest)> = lines.iter().map(|line| (line.number, line.digest)).collect();
    let other = |line: &Line| {
        let (response, who) = match &line.fact {
            Fact::Decided(decided) if decided.by != Attestation::Hand => (decided.response, decided.who.clone()),
            Fact::Measured(measured) => (measured.response, measured.by.clone()),
            Fact::Received(received) => (received.response, received.by.clone()),
            Fact::Acknowledged(one) => (one.response, one.by.clone()),
            _ => return None,
        };
        let hex = response.to_string();
        let file = RecordFile::Response(&hex);
        let states: States = serde_json::from_slice(&folder.record(file, MAX_RESPONSE).ok()??).ok()?;
        let head = states.ledger.filter(|head| !stands.contains(&(head.line, head.sha256)))?;
        let fault = LedgerFault { at: line.number, kind: FaultKind::AnsweredOther(who, head.line) };
        Some(Remark::stop(Place::Path(file.path()), fault.message()).remedy(fault.remedy()).of(RULE))
    };
    lines.iter().filter_map(other).collect()
}

/// What a response states of the ledger.
#[derive(Deserialize)]
struct States {
    #[serde(default)]
    ledger: Option<Head>,
}

/// Keys that others may read: whoever has one decides in its owner's name.
fn open_keys(folder: &Folder) -> Option<Finding> {
    let open = folder.open_keys();
    let first = open.first()?;
    let more = open.len().saturating_sub(1);
    let more = if more > 0 { phrase!(" and {more} more", more) } else { Phrase::default() };
    let message = phrase!("others on this computer can read `{first}`{more}", first, more);
    let remark = Remark::query(Place::Path(first.clone()), message);
    Some(remark.remedy("take the right from them: `chmod -R go= record/keys`; where somebody may have read a key, renew it with `bookmatch invite --renew WHO`").of(KEYS))
}

/// The faults of a ledger, each at the beginning of its line.
fn tell(chain: &Chain, bytes: &[u8], files: &mut Files, findings: &mut Vec<Finding>) {
    let text = String::from_utf8_lossy(bytes).into_owned();
    let starts: Vec<(usize, usize)> = text
        .split_inclusive('\n')
        .scan(0, |start, line| {
            let at = *start;
            *start += line.len();
            let shown = (0..=SHOWN.min(line.trim_end().len())).rfind(|end| line.is_char_boundary(*end));
            Some((at, at + shown.unwrap_or(0)))
        })
        .collect();
    let file = files.add(RecordFile::Ledger.path(), text);
    let place = |at: Option<usize>| at.and_then(|at| starts.get(at)).map(|&(start, end)| span(file, start, end));
    for fault in &chain.faults {
        let place = place(usize::try_from(fault.at).ok().and_then(|at| at.checked_sub(1)));
        let place = place.unwrap_or_else(|| Place::Path(RecordFile::Ledger.path()));
        findings.push(Remark::stop(place, fault.message()).remedy(fault.remedy()).of(RULE));
    }
    let is_lost = chain.faults.iter().any(|fault| matches!(fault.kind, FaultKind::Lost(..)));
    let (message, remedy) = match chain.tail {
        LedgerEnd::Whole => return,
        // It was recorded, and is told as lost.
        LedgerEnd::Torn if is_lost => return,
        LedgerEnd::NoBreak => {
            ("the ledger's last line has no line break", "nothing needs to be done: the next line adds it")
        }
        LedgerEnd::Torn => (
            "the ledger's last line was not written to its end, and nobody was told that it was recorded",
            "nothing needs to be done: the next line takes its place; whoever sent it can send it again",
        ),
    };
    let place = place(starts.len().checked_sub(1)).unwrap_or_else(|| Place::Path(RecordFile::Ledger.path()));
    findings.push(Remark::note(place, message).remedy(remedy).of(RULE));
}

fn span(file: FileId, start: usize, end: usize) -> Place {
    let at = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
    Place::Text(Span { file, start: at(start), end: at(end) })
}

/// The file of an issue, if it is as it was issued.
fn issue(folder: &Folder, issued: &Issued, book: Option<&str>) -> Result<Issue, Finding> {
    let (number, file) = (issued.number, RecordFile::Issue(issued.number));
    let finding = |message: Phrase| Remark::stop(Place::Path(file.path()), message).remedy(PUT_BACK).of(RULE);
    let bytes = folder.record(file, MAX_ISSUE).map_err(|error| finding(error.message()))?;
    let bytes = bytes.ok_or_else(|| finding(phrase!("the file of issue {number} is gone", number)))?;
    let edited = || finding(phrase!("the file of issue {number} is not as it was issued", number));
    if Digest::of(&bytes) != issued.sha256 {
        return Err(edited());
    }
    // It is as it was issued: what can't be read of it was not known to this program.
    let later = || {
        let message = phrase!(
            "issue {number} was made by a later release of this program, and can't be judged by this one",
            number
        );
        Remark::stop(Place::Path(file.path()), message).remedy(UPDATE).of(RULE)
    };
    let issue: Issue = serde_json::from_slice(&bytes).map_err(|_| later())?;
    let is_known = |content: &serde_json::Value| {
        Version::stated(content.get(Version::STATED_AS).and_then(serde_json::Value::as_str)).is_some()
    };
    let is_known_sheet = |sheet: &crate::ledger::IssuedSheet| {
        let stated = sheet.content.get(SheetVersion::STATED_AS).and_then(serde_json::Value::as_str);
        SheetVersion::stated(stated).is_some()
    };
    let sheets = issue.built.as_deref().unwrap_or_default();
    if !issue.items.iter().map(|item| &item.content).all(is_known) || !sheets.iter().all(is_known_sheet) {
        return Err(later());
    }
    if issue.number == number && book.is_none_or(|book| issue.book == book) { Ok(issue) } else { Err(edited()) }
}
