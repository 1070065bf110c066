//! The templates of a theme of somebody's own, and what they must set all the same.

use std::ops::Range;

use serde::Serialize;
use typst::foundations::Bytes;
use typst::layout::{Frame, FrameItem};
use typst::syntax::{DiagSpanKind, FileId, Source};
use typst_layout::PagedDocument;

use crate::publish::press::SheetLook;
use crate::publish::stays::{MustSay, must_say};
use crate::theme::{Group, ThemeFiles};

use super::engine::named;
use super::error::SheetError;

/// The templates of a theme that are its own, and the pictures beside them.
#[derive(Default)]
pub struct OwnSheets {
    /// The templates.
    pub sources: Vec<Source>,
    theme: ThemeFiles,
}

impl OwnSheets {
    /// Those of a theme.
    ///
    /// # Errors
    /// When one is not text, or has a name that none can have.
    pub fn of(theme: &ThemeFiles) -> Result<Self, SheetError> {
        let source = |name: &str| {
            let fault = |why: &str| SheetError::Template(format!("{}: {why}", theme.place(Group::Sheets, name)));
            let text = std::str::from_utf8(theme.bytes(Group::Sheets, name).unwrap_or_default());
            let text = text.map_err(|_| fault("it is not text in UTF-8"))?;
            Ok(Source::new(named(name).ok_or_else(|| fault("no template can be called so"))?, text.to_owned()))
        };
        let templates = theme.own_names(Group::Sheets).filter(|name| name.ends_with(".typ"));
        Ok(Self { sources: templates.map(source).collect::<Result<_, _>>()?, theme: theme.clone() })
    }

    /// A picture that lies beside the templates.
    pub fn picture(&self, id: FileId) -> Option<Bytes> {
        let name = id.vpath().get_without_slash();
        let is_own = self.theme.own_names(Group::Sheets).any(|own| own == name);
        is_own.then(|| self.theme.bytes(Group::Sheets, name)).flatten().map(|bytes| Bytes::new(bytes.to_vec()))
    }

    /// The place of a stretch of a template: file, line and column.
    pub fn place(&self, source: &Source, stretch: Range<usize>) -> String {
        let file = self.theme.place(Group::Sheets, source.id().vpath().get_without_slash());
        let (line, column) = source.lines().byte_to_line_column(stretch.start).unwrap_or_default();
        format!("`{file}`, line {}, column {}", line + 1, column + 1)
    }
}

/// Looks whether the templates of a theme can be read.
pub fn check(theme: &ThemeFiles) -> Result<(), SheetError> {
    let own = OwnSheets::of(theme)?;
    let faults = own.sources.iter().flat_map(|source| {
        let (errors, _) = source.root().errors_and_warnings();
        errors.into_iter().map(move |error| (source, error))
    });
    let told: Vec<String> = faults
        .map(|(source, error)| {
            let at = match error.span.get() {
                DiagSpanKind::Number { num, sub_range, .. } => source.range(num, sub_range),
                DiagSpanKind::Range { range, .. } => Some(range),
                DiagSpanKind::Detached => None,
            };
            let at = at.unwrap_or_default();
            format!("{}: {}", own.place(source, at), error.message)
        })
        .collect();
    if told.is_empty() { Ok(()) } else { Err(SheetError::Template(told.join("; "))) }
}

/// What a sheet must say, whatever its templates are.
#[derive(Default)]
pub struct Must(Vec<MustSay>);

impl Must {
    /// Nothing for the standard templates, which say it.
    pub fn of(view: &impl Serialize, look: &SheetLook, draft: bool) -> Self {
        if look.theme.own_names(Group::Sheets).next().is_none() {
            return Self::default();
        }
        let view = serde_json::to_value(view).unwrap_or_default();
        let mut all = must_say(&view);
        if draft {
            let tag = view.get("language").and_then(serde_json::Value::as_str).unwrap_or_default();
            let text = look.words(tag).tree().pointer("/on_paper/draft").and_then(|text| text.as_str());
            all.extend(text.map(|text| MustSay { what: "the word", text: text.to_owned() }));
        }
        Self(all)
    }

    /// Looks whether all of it stands on the pages.
    ///
    /// # Errors
    /// The first that does not.
    pub fn stands(&self, document: &PagedDocument) -> Result<(), SheetError> {
        if self.0.is_empty() {
            return Ok(());
        }
        let pages: Vec<String> = document.pages().iter().map(|page| bare(&text(&page.frame))).collect();
        let absent = self.0.iter().find(|must| !stands(&bare(&must.text), &pages));
        absent.map_or(Ok(()), |must| Err(SheetError::LeftOut(must.what, must.text.clone())))
    }
}

/// Letters and figures alone: how words are broken, spaced and set says nothing.
fn bare(text: &str) -> String {
    text.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

/// Whether a text stands on a page, or begins on one and ends on the next.
fn stands(text: &str, pages: &[String]) -> bool {
    let broken = |pair: &[String]| match pair {
        [one, next] => {
            let ends = text.char_indices().map(|(at, _)| at);
            ends.filter_map(|at| text.split_at_checked(at))
                .any(|(head, tail)| one.contains(head) && next.contains(tail))
        }
        _ => false,
    };
    pages.iter().any(|page| page.contains(text)) || pages.windows(2).any(broken)
}

fn text(frame: &Frame) -> String {
    let one = |item: &FrameItem| match item {
        FrameItem::Group(group) => text(&group.frame),
        FrameItem::Text(run) => run.text.to_string(),
        _ => String::new(),
    };
    frame.items().map(|(_, item)| one(item)).collect()
}
