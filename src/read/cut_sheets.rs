//! Finds the makers' sheets that the book attaches, and looks whether each can be passed on.

mod pdf;

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use crate::book::{Book, HeldSheet};
use crate::digest::Digest;
use crate::finding::{Code, Finding, Remark, phrase};
use crate::source::{Folder, FolderError, Span, Spanned};
use crate::units::Fault;

use super::beside::{Sort, find};
use super::load::Loaded;
use pdf::PdfFault;

/// The largest sheet that is passed on, in bytes: it is kept on telephones.
const MAX_SHEET: u64 = 20 * 1024 * 1024;

/// What became of a file that was looked at.
type Looked = Result<HeldSheet, SheetFault>;

/// What was found of each sheet, by path: what is known is not looked at again.
#[derive(Debug, Default)]
pub struct SheetCache(BTreeMap<String, Looked>);

impl SheetCache {
    /// Forgets the sheet at a path of the book: it has changed.
    pub fn forget(&mut self, path: &str) {
        self.0.remove(path);
    }
}

/// Why a file can't be passed on.
#[derive(Clone, Debug, PartialEq, Eq)]
enum SheetFault {
    /// It is larger than is passed on.
    TooLarge,
    /// The system refuses, or it leads out of the book by now.
    Unread(crate::finding::Phrase),
    /// It is no PDF, or not one for everybody.
    Pdf(PdfFault),
}

/// Where a sheet is attached: its file as it is written, and to what.
struct Attached {
    file: Spanned<String>,
    room: String,
    item: Spanned<String>,
}

/// Finds every attached sheet and puts it at its options; one that can't be passed on is told, and put nowhere.
pub fn look(
    folder: &Folder,
    loaded: &Loaded,
    book: &mut Book,
    SheetCache(known): &mut SheetCache,
    findings: &mut Vec<Finding>,
) {
    let attached = attached(book);
    if attached.is_empty() {
        return known.clear();
    }
    let paths: BTreeSet<&str> = folder.entries().iter().map(|entry| entry.path.as_str()).collect();
    let mut found: BTreeMap<Span, String> = BTreeMap::new();
    for one in &attached {
        match find(&loaded.files, &paths, Sort::CutSheet, (&one.file.value, one.file.span)) {
            Ok(path) => _ = found.insert(one.file.span, path),
            Err(finding) => findings.push(of_its_own(one, finding)),
        }
    }
    let wanted: BTreeSet<&String> = found.values().collect();
    known.retain(|path, _| wanted.contains(path));
    let fresh: Vec<&String> = wanted.into_iter().filter(|path| !known.contains_key(*path)).collect();
    let looked: Vec<(String, Looked)> = fresh.into_par_iter().map(|path| (path.clone(), held(folder, path))).collect();
    known.extend(looked);
    for one in &attached {
        let Some((path, Err(fault))) = found.get(&one.file.span).and_then(|path| known.get_key_value(path)) else {
            continue;
        };
        findings.push(of_its_own(one, told(path, fault, one.file.span)));
    }
    for sheet in sheets(book) {
        let path = sheet.file.span().and_then(|at| found.get(&at));
        sheet.held = path.and_then(|path| known.get(path)?.as_ref().ok().cloned());
    }
}

/// Every place that names the file of a sheet, each place once: a product is read with each of its options.
fn attached(book: &Book) -> Vec<Attached> {
    let mut seen = BTreeSet::new();
    let of = |(room, selection): (&crate::book::Room, &crate::book::Selection)| {
        let sheets = selection.options.iter().filter_map(|option| option.cut_sheet.get()?.file.spanned());
        let (room, item) = (room.folder.clone(), selection.name.clone());
        let each = sheets.map(|file| Attached { file: file.clone(), room: room.clone(), item: item.clone() });
        each.collect::<Vec<_>>()
    };
    book.selections().flat_map(of).filter(|one| seen.insert(one.file.span)).collect()
}

fn sheets(book: &mut Book) -> impl Iterator<Item = &mut crate::book::CutSheet> {
    let options = book.rooms.iter_mut().flat_map(|room| &mut room.selections).flat_map(|one| &mut one.options);
    options.filter_map(|option| option.cut_sheet.get_mut())
}

/// A finding about what the sheet is attached to.
fn of_its_own(one: &Attached, mut finding: Finding) -> Finding {
    finding.remark = finding.remark.in_room(Some(one.room.clone())).selection(&one.item);
    finding
}

fn held(folder: &Folder, path: &str) -> Looked {
    let bytes = folder.read(path, MAX_SHEET).map_err(|error| match error {
        FolderError::TooLarge(..) => SheetFault::TooLarge,
        error => SheetFault::Unread(error.message()),
    })?;
    pdf::inspect(&bytes).map_err(SheetFault::Pdf)?;
    Ok(HeldSheet { path: path.into(), bytes: bytes.len() as u64, digest: Digest::of(&bytes) })
}

fn told(path: &str, fault: &SheetFault, at: Span) -> Finding {
    match fault {
        SheetFault::TooLarge => {
            let message = phrase!("the cut sheet `{path}` is larger than {} MB", path, MAX_SHEET / 1024 / 1024);
            let remedy =
                "save a smaller copy, or the pages alone that the opening is built by; the whole of it as `link`";
            Remark::stop(at, message).remedy(remedy).of(Code::TOO_LARGE)
        }
        SheetFault::Unread(message) => {
            Remark::stop(at, message.clone()).remedy("give yourself the right to read it").of(Code::CUT_SHEET)
        }
        SheetFault::Pdf(fault) => {
            let message = phrase!("the cut sheet `{path}` can't be passed on: {fault}", path, fault.message());
            Remark::stop(at, message).remedy(fault.remedy()).of(Code::CUT_SHEET)
        }
    }
}
