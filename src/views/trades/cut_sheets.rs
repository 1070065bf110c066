//! The makers' own sheets that are attached to things: how a page of those who build shows them, and the files.

use std::collections::BTreeMap;

use crate::book::{Book, CutSheet, HeldSheet, OfFigures, ProductOption, Selection};
use crate::language::say;
use crate::views::pages::PageBuilder;
use crate::views::shared::html::{Html, show};
use serde::Serialize;

/// A maker's own sheet that is attached to something.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct CutSheetLine {
    /// What it is of.
    pub of: String,
    /// What it is called, with its revision and its day.
    pub name: String,
    /// Its file, where one is passed on.
    pub file: Option<CutSheetFile>,
    /// Where the maker has it.
    pub link: Option<String>,
    /// That the figures of the page are not of it, or may not be.
    pub warns: Option<Html>,
}

/// The file of a maker's sheet.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct CutSheetFile {
    /// Its path in the folder, which follows from its bytes.
    pub path: String,
    /// `PDF, 3.1 MB`.
    pub size: String,
}

/// The files that are passed on to those who build, by their path in the folder: of what may still be chosen.
pub fn cut_sheet_files(book: &Book) -> BTreeMap<String, &HeldSheet> {
    let options = book.selections().flat_map(|(_, selection)| selection.standing());
    let held = options.filter_map(|option| option.cut_sheet.get()?.held.as_ref());
    held.map(|held| (path(held), held)).collect()
}

fn path(held: &HeldSheet) -> String {
    format!("cut-sheets/{}.pdf", held.digest.short(16))
}

impl PageBuilder<'_> {
    /// The sheets that are attached to some things, of every option that may still be chosen.
    pub fn cut_sheets<'s>(&self, of: impl IntoIterator<Item = &'s Selection>) -> Vec<CutSheetLine> {
        let each = |selection: &'s Selection| {
            let open = selection.settled().is_none();
            let lines = selection.standing().iter().map(move |option| {
                let name = match open {
                    true => say!(self.words, "cut_sheets.of", item = selection.name.value, option = option.title()),
                    false => selection.name.value.clone(),
                };
                Some(self.cut_sheet(name, option, option.cut_sheet.get()?))
            });
            lines.flatten().collect::<Vec<_>>()
        };
        of.into_iter().flat_map(each).collect()
    }

    fn cut_sheet(&self, of: String, option: &ProductOption, sheet: &CutSheet) -> CutSheetLine {
        let title = match (sheet.name.get(), &sheet.held) {
            (Some(name), _) => name.clone(),
            (None, Some(_)) => sheet.file.text().to_string(),
            (None, None) => say!(self.words, "opening_says.sheet"),
        };
        let revision = sheet.revision.get();
        let parts = [
            Some(title),
            revision.map(|revision| say!(self.words, "opening_says.revision", revision = revision)),
            sheet.date.get().map(|day| self.words.day(*day)),
        ];
        let fit = option.fit.get().map(AsRef::as_ref);
        let figures = self.maker_sheet(option).unwrap_or_default();
        CutSheetLine {
            of,
            name: parts.into_iter().flatten().collect::<Vec<_>>().join(", "),
            file: sheet.held.as_ref().map(|held| CutSheetFile { path: path(held), size: self.size_of(held) }),
            link: sheet.link.get().cloned(),
            warns: match sheet.of_figures(fit) {
                OfFigures::Same | OfFigures::NoFigures => None,
                OfFigures::Another => Some(show!(self.words, "cut_sheets.another", figures = figures)),
                OfFigures::Unknown => Some(show!(self.words, "cut_sheets.unknown")),
            },
        }
    }

    /// `PDF, 3.1 MB`: in tenths, and never nothing.
    fn size_of(&self, held: &HeldSheet) -> String {
        let tenths = ((held.bytes + 50_000) / 100_000).max(1);
        let mark = say!(self.words, "language.decimal");
        say!(self.words, "cut_sheets.size", size = format!("{}{mark}{}", tenths / 10, tenths % 10))
    }
}
