//! Sheets to sign as PDF: tagged, fonts embedded, the same bytes from the same view.
//!
//! The sheet is set by Typst from `themes/standard/sheets/`. What the client wrote reaches the
//! template as JSON and as nothing else, so that no text of a book is ever read as markup.

mod content;
mod engine;
mod error;
mod export;
mod own;
mod world;

use sha2::{Digest, Sha256};
use typst::foundations::Bytes;

use crate::theme::ThemeFiles;
use crate::views::paper::change_order::ChangeOrder;
use crate::views::paper::sign_off::SignOff;
use crate::views::paper::sign_off_item::PictureRef;

use super::press::SheetLook;
pub use content::missing_letters;
pub use error::SheetError;
pub use export::forget;
use own::Must;
use world::SheetWorld;

/// How many different pictures one sheet may show. Typst never gives back the names of files.
const MOST_PICTURES: usize = 10_000;

/// A sign-off sheet as the bytes of a PDF file.
///
/// `pictures` gives the bytes of a picture (JPEG, PNG or WebP) by its key; where it answers `None`
/// the sheet says that there is no picture. May be called from several threads at once.
///
/// # Errors
/// A picture that cannot be decoded, too many of them, or a sheet that cannot be set; each says
/// what to do.
pub fn sign_off(
    view: &SignOff,
    look: &SheetLook,
    pictures: &dyn Fn(&str) -> Option<Vec<u8>>,
) -> Result<Vec<u8>, SheetError> {
    let gallery = Gallery::of(view, pictures)?;
    let json = content::json(view, look.words(&view.language), &gallery.keys)?;
    let ident = identifier(&json, &gallery.files);
    let world = SheetWorld::new(engine::SIGN_OFF, json, gallery.files, &look.theme)?;
    let must = Must::of(view, look, view.draft);
    export::pdf(&world, &ident, &must, view.count())
}

/// A change order as the bytes of a PDF file.
///
/// # Errors
/// A sheet that cannot be set.
pub fn change_order(view: &ChangeOrder, look: &SheetLook) -> Result<Vec<u8>, SheetError> {
    let json = content::json(view, look.words(&view.language), &[])?;
    let ident = identifier(&json, &[]);
    let world = SheetWorld::new(engine::CHANGE_ORDER, json, vec![], &look.theme)?;
    let bytes = export::pdf(&world, &ident, &Must::of(view, look, view.draft), view.count());
    forget();
    bytes
}

/// Looks whether the templates of a theme can be read.
///
/// # Errors
/// The faults of the first that can't, with file, line and column.
pub fn check(theme: &ThemeFiles) -> Result<(), SheetError> {
    own::check(theme)
}

/// The pictures of a sheet, each once.
struct Gallery {
    keys: Vec<String>,
    files: Vec<Bytes>,
}

impl Gallery {
    fn of(view: &SignOff, pictures: &dyn Fn(&str) -> Option<Vec<u8>>) -> Result<Gallery, SheetError> {
        let mut gallery = Gallery { keys: Vec::new(), files: Vec::new() };
        let mut asked = std::collections::BTreeSet::new();
        for PictureRef { key, .. } in view.pictures() {
            if !asked.insert(key) {
                continue;
            }
            let Some(bytes) = pictures(key) else { continue };
            if gallery.files.len() == MOST_PICTURES {
                return Err(SheetError::TooManyPictures(MOST_PICTURES));
            }
            gallery.files.push(world::picture(key, bytes)?);
            gallery.keys.push(key.clone());
        }
        Ok(gallery)
    }
}

/// The same for the same content, whenever and wherever the sheet is set.
fn identifier(json: &[u8], pictures: &[Bytes]) -> String {
    let mut digest = Sha256::new();
    digest.update(json);
    for picture in pictures {
        digest.update(Sha256::digest(picture.as_slice()));
    }
    digest.finalize().iter().map(|byte| format!("{byte:02x}")).collect()
}
