//! Reads a selection: its own fields, and its options.

use std::collections::BTreeSet;

use crate::book::vocabulary::{NameOf, OPTION, SELECTION, Shape};
use crate::book::{NeededFor, Room, Selection, short_name_of};
use crate::finding::Finding;
use crate::source::Spanned;
use crate::source::yaml::{Node, Value};
use crate::units::Date;

use super::faults::Faults;
use super::fields::Fields;
use super::room::Common;
use super::values::{area, date, kind_name, scalar, spanned_text, text};
use super::{choice, light, project, surface};

/// Reads one record of a selection's file.
pub fn read(common: &Common<'_>, node: &Node, faults: &mut Faults) -> Option<Selection> {
    let mut fields = Fields::of(node, &SELECTION, faults)?.beside(&OPTION);
    faults.item = node.at("selection").and_then(name_of);
    let name = fields.read("selection", faults, text);
    let id = fields.read("id", faults, short_name);
    let options = fields.node("options");
    let tag = fields.read("tag", faults, text);
    let kind = fields.read("kind", faults, kind_name);
    let selection = Selection {
        id: id.text().to_string(),
        tag: tag.text().to_string(),
        tag_at: tag.span().filter(|_| !tag.text().is_empty()),
        place: fields.read("place", faults, text),
        needed_for: fields.read("needed for", faults, needed_for),
        why: fields.read("why", faults, text),
        chosen: fields.read("chosen", faults, text),
        chosen_on: fields.read("chosen on", faults, date),
        depends_on: fields.list("depends on", faults, spanned_text),
        meets: fields.list("meets", faults, spanned_text),
        hangs: fields.read("hangs", faults, light::hanging),
        papered: fields.read("papered", faults, surface::papered),
        allowance: fields.read("allowance", faults, text),
        furnished_by: fields.read("furnished by", faults, text),
        installed_by: fields.read("installed by", faults, text),
        covers: fields.read("covers", faults, area),
        private: fields.read("private", faults, text),
        waivers: fields.list("waive", faults, project::waiver),
        options: choice::read_all(common, node, kind.get().copied(), options, faults),
        kind,
        span: name.span().unwrap_or_else(|| first_line(node)),
        name: name.spanned().cloned().unwrap_or_else(|| Spanned::new("a selection with no name".into(), node.span)),
    };
    fields.finish(faults);
    faults.item = None;
    Some(selection)
}

fn name_of(node: &Node) -> Option<Spanned<String>> {
    match &node.value {
        Value::Scalar { text, .. } => Some(Spanned::new(text.trim().to_string(), node.span)),
        _ => None,
    }
}

fn first_line(node: &Node) -> crate::source::Span {
    match &node.value {
        Value::Map(pairs) => pairs.first().map_or(node.span, |(key, _)| key.span),
        _ => node.span,
    }
}

/// A short name of letters, figures and hyphens.
pub fn short_name(node: &Node, faults: &mut Faults) -> Option<String> {
    let text = scalar(node, &Shape::Text, faults)?;
    if !text.is_empty() && text == short_name_of(text) {
        return Some(text.to_string());
    }
    let message = format!("`{text}` can't be used as a short name");
    faults.stop(
        "source/wrong-type",
        node.span,
        message,
        format!("use lower-case letters, figures and hyphens: `{}`", short_name_of(text)),
    );
    None
}

/// A day, or the name of a milestone (whether it exists is seen when all is read).
pub fn needed_for(node: &Node, faults: &mut Faults) -> Option<NeededFor> {
    let text = scalar(node, &Shape::Name(NameOf::Milestone), faults)?;
    let dated = text.starts_with(|first: char| first.is_ascii_digit());
    match Date::parse(text) {
        Ok(day) => Some(NeededFor::Day(day)),
        Err(_) if !dated => Some(NeededFor::Milestone(text.to_string())),
        Err(error) => {
            faults.stop("source/wrong-type", node.span, error.to_string(), error.remedy());
            None
        }
    }
}

/// Gives each selection a short name and a tag that no other in the room has, and orders them by tag.
pub fn number(room: &mut Room, findings: &mut Vec<Finding>) {
    let mut faults = Faults::of_room(&room.folder);
    let mut ids = BTreeSet::new();
    let mut tags = BTreeSet::new();
    for selection in &room.selections {
        faults.item = Some(selection.name.clone());
        let twice = [("id", &selection.id, &mut ids), ("tag", &selection.tag, &mut tags)];
        for (what, name, seen) in twice {
            if !name.is_empty() && !seen.insert(name.clone()) {
                let message = format!("another selection of this room has the {what} `{name}`");
                faults.stop(
                    "source/duplicate",
                    selection.span,
                    message,
                    format!("give each selection a {what} of its own"),
                );
            }
        }
    }
    for selection in &mut room.selections {
        if selection.id.is_empty() {
            selection.id = free(&short_name_of(&selection.name), &ids);
            ids.insert(selection.id.clone());
        }
        if selection.tag.is_empty() {
            selection.tag = free_tag(&room.letter, &tags);
            tags.insert(selection.tag.clone());
        }
    }
    room.selections.sort_by_key(|selection| tag_order(&selection.tag));
    findings.append(&mut faults.findings);
}

/// The first number of a room that is not taken, such as `K-07`.
pub fn free_tag(letter: &str, taken: &BTreeSet<String>) -> String {
    let mut numbers = (1_u32..).map(|number| format!("{letter}-{number:02}"));
    numbers.find(|tag| !taken.contains(tag)).unwrap_or_default()
}

fn free(name: &str, taken: &BTreeSet<String>) -> String {
    let mut names = std::iter::once(name.to_string()).chain((2_u32..).map(|number| format!("{name}-{number}")));
    names.find(|name| !taken.contains(name)).unwrap_or_default()
}

/// Letters, then the number, so that `K-9` comes before `K-10`.
pub fn tag_order(tag: &str) -> (String, u32, String) {
    let at = tag.find(|letter: char| letter.is_ascii_digit()).unwrap_or(tag.len());
    let (letters, rest) = tag.split_at(at);
    let figures: String = rest.chars().take_while(char::is_ascii_digit).collect();
    (letters.to_string(), figures.parse().unwrap_or(u32::MAX), rest.to_string())
}
