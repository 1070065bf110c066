//! From a sheet's world to the bytes of a PDF file.

use std::sync::mpsc::{RecvTimeoutError, channel};
use std::thread;
use std::time::Duration;

use typst::diag::SourceDiagnostic;
use typst::foundations::Smart;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use super::error::SheetError;
use super::own::Must;
use super::world::SheetWorld;

/// A sheet of more items than this is swept after while it is set.
const LARGE: usize = 40;
/// How often, and how many sweeps a result outlives without being used. Rarer sweeps leave half a gigabyte
/// for two hundred items; without a second look a sheet takes twice as long.
const SWEEP: Duration = Duration::from_millis(100);
const KEPT_SWEEPS: usize = 1;

/// The pages of `world` as PDF, made out to PDF/UA-1 (ISO 14289-1).
///
/// Where the fonts lack a letter (a name in Chinese, say) that standard cannot be claimed: the sheet
/// is then written tagged all the same, the letter shown as a box and its text kept for copying.
pub fn pdf(world: &SheetWorld, ident: &str, must: &Must, items: usize) -> Result<Vec<u8>, SheetError> {
    if items > LARGE { swept(|| set(world, ident, must)) } else { set(world, ident, must) }
}

/// Lets go of all that the engine keeps of past calls: some two megabytes an item.
pub fn forget() {
    typst::comemo::evict(0);
}

/// Does `work` while what the engine has not used for a while is dropped. What is dropped is computed anew
/// where it is needed once more: the bytes are the same, however often and whenever it is done.
fn swept<T>(work: impl FnOnce() -> T) -> T {
    let (working, ended) = channel::<()>();
    thread::scope(|scope| {
        scope.spawn(move || {
            while ended.recv_timeout(SWEEP) == Err(RecvTimeoutError::Timeout) {
                typst::comemo::evict(KEPT_SWEEPS);
            }
        });
        let _working = working;
        work()
    })
}

fn set(world: &SheetWorld, ident: &str, must: &Must) -> Result<Vec<u8>, SheetError> {
    let compiled = typst::compile::<PagedDocument>(world);
    let document = compiled.output.map_err(|faults| SheetError::Template(placed(world, &faults)))?;
    must.stands(&document)?;
    write(&document, ident, &[PdfStandard::Ua_1]).or_else(|_| write(&document, ident, &[]))
}

fn write(document: &PagedDocument, ident: &str, standards: &[PdfStandard]) -> Result<Vec<u8>, SheetError> {
    let standards = PdfStandards::new(standards).map_err(|fault| SheetError::Pdf(fault.message().to_string()))?;
    let options = PdfOptions {
        ident: Smart::Custom(ident.to_owned()),
        creator: Smart::Custom(Some("bookmatch".to_owned())),
        timestamp: None,
        standards,
        ..PdfOptions::default()
    };
    typst_pdf::pdf(document, &options).map_err(|faults| SheetError::Pdf(worded(&faults)))
}

/// The faults in one line, each with the place in the theme's file.
fn placed(world: &SheetWorld, faults: &[SourceDiagnostic]) -> String {
    let one = |fault: &SourceDiagnostic| match world.place(fault) {
        Some(place) => format!("{place}: {}", fault.message),
        None => fault.message.to_string(),
    };
    faults.iter().map(one).collect::<Vec<_>>().join("; ")
}

/// The faults in one line, each once.
fn worded(faults: &[SourceDiagnostic]) -> String {
    let messages: Vec<&str> = faults.iter().map(|fault| fault.message.as_str()).collect();
    messages.join("; ")
}
