//! From a sheet's world to the bytes of a PDF file.

use typst::World;
use typst::diag::SourceDiagnostic;
use typst::foundations::Smart;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use super::error::SheetError;

/// How many sheets ago a result must last have been used to be dropped from the cache.
const KEPT_SHEETS: usize = 1;

/// The pages of `world` as PDF, made out to PDF/UA-1 (ISO 14289-1).
///
/// Where the fonts lack a letter (a name in Chinese, say) that standard cannot be claimed: the sheet
/// is then written tagged all the same, the letter shown as a box and its text kept for copying.
pub fn pdf(world: &dyn World, ident: String) -> Result<Vec<u8>, SheetError> {
    let compiled = typst::compile::<PagedDocument>(world);
    let document = compiled.output.map_err(|faults| SheetError::Template(worded(&faults)))?;
    let accessible = write(&document, &ident, &[PdfStandard::Ua_1]);
    let bytes = match accessible {
        Err(_) => write(&document, &ident, &[]),
        fine => fine,
    };
    typst::comemo::evict(KEPT_SHEETS);
    bytes
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

/// The faults in one line, each once.
fn worded(faults: &[SourceDiagnostic]) -> String {
    let messages: Vec<&str> = faults.iter().map(|fault| fault.message.as_str()).collect();
    messages.join("; ")
}
