//! What the template of one sheet may read: the view, its pictures, and nothing else.

use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, Source};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::visualize::{ExchangeFormat, RasterImage};
use typst::{Library, World, WorldExt as _};

use crate::theme::ThemeFiles;

use super::engine::{Engine, engine, file};
use super::error::SheetError;
use super::own::OwnSheets;

/// The world of one sheet: no disk, no clock, no network.
pub struct SheetWorld {
    engine: &'static Engine,
    own: OwnSheets,
    main: FileId,
    files: Vec<(FileId, Bytes)>,
}

impl SheetWorld {
    /// Begins with the template `main`. The view is read as `view.json`, the pictures as `picture/0`, `picture/1` and so on.
    ///
    /// # Errors
    /// When a template of the theme can't be read.
    pub fn new(main: &str, view: Vec<u8>, pictures: Vec<Bytes>, theme: &ThemeFiles) -> Result<SheetWorld, SheetError> {
        let pictures = pictures.into_iter().enumerate();
        let files = std::iter::once((file("view.json"), Bytes::new(view)))
            .chain(pictures.map(|(n, bytes)| (file(&format!("picture/{n}")), bytes)))
            .collect();
        Ok(SheetWorld { engine: engine(), own: OwnSheets::of(theme)?, main: file(main), files })
    }

    /// Where in the theme a fault is: file, line and column.
    pub fn place(&self, fault: &SourceDiagnostic) -> Option<String> {
        let source = self.source(fault.span.id()?).ok()?;
        Some(self.own.place(&source, self.range(fault.span)?))
    }
}

/// A picture that can be put on a sheet, decoded once to be sure of it.
pub fn picture(key: &str, bytes: Vec<u8>) -> Result<Bytes, SheetError> {
    let refused = |why: String| SheetError::Picture { key: key.to_owned(), why };
    let bytes = Bytes::new(bytes);
    let format =
        ExchangeFormat::detect(&bytes).ok_or_else(|| refused("it is neither JPEG, PNG nor WebP".to_owned()))?;
    RasterImage::plain(bytes.clone(), format).map_err(|why| refused(why.to_string()))?;
    Ok(bytes)
}

impl World for SheetWorld {
    fn library(&self) -> &LazyHash<Library> {
        &self.engine.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.engine.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let found = self.own.sources.iter().chain(&self.engine.sources).find(|source| source.id() == id);
        found.cloned().ok_or_else(|| not_found(id))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let found = self.files.iter().find(|(known, _)| *known == id);
        found.map(|(_, bytes)| bytes.clone()).or_else(|| self.own.picture(id)).ok_or_else(|| not_found(id))
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.engine.fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

fn not_found(id: FileId) -> FileError {
    FileError::NotFound(id.vpath().get_without_slash().into())
}
