//! Reads a selection: its own fields, and its options.

use std::collections::{BTreeSet, HashMap};

use crate::book::vocabulary::{OPTION, SELECTION};
use crate::book::{Room, Selection, short_name_of};
use crate::finding::{Code, Finding, phrase};
use crate::source::Spanned;
use crate::source::portable::{self, NameFault};
use crate::source::yaml::{Node, Value};
use crate::vocabulary::{Faults, Fields};

use super::choice;
use super::room::Common;

/// Reads one record of a selection's file.
pub fn read(common: &Common<'_>, node: &Node, faults: &mut Faults) -> Option<Selection> {
    let fields = Fields::of(node, &SELECTION, faults)?.beside(&OPTION);
    let name = node.at("selection").and_then(name_of);
    let span = name.as_ref().map_or_else(|| first_line(node), |name| name.span);
    faults.item = name;
    let read = Selection::of_fields(fields, faults).map(|selection| {
        let kind = selection.kind.get().copied();
        let options = choice::read_all(common, node, kind, node.at("options"), faults);
        Selection { options, span, ..selection }
    });
    faults.item = None;
    read
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
                let message = phrase!("another selection of this room has the {what} `{name}`", what, name);
                faults.stop(
                    Code::DUPLICATE,
                    selection.span,
                    message,
                    phrase!("give each selection a {what} of its own", what),
                );
            }
        }
    }
    let (mut names, mut numbers) = (FreeNames::default(), FreeTags::of(&room.letter));
    for selection in &mut room.selections {
        if selection.id.is_empty() {
            selection.id = names.take(short_name_of(&selection.name), &mut ids);
        }
        if selection.tag.is_empty() {
            selection.tag = numbers.take(&mut tags);
        }
    }
    room.selections.sort_by_cached_key(|selection| tag_order(&selection.tag));
    room.was_changed();
    findings.append(&mut faults.findings);
}

/// The numbers of a room that are not taken, such as `K-07`, each tried once.
pub struct FreeTags<'a> {
    letter: &'a str,
    tried: u32,
}

impl<'a> FreeTags<'a> {
    /// Of a room, by its letter.
    pub fn of(letter: &'a str) -> Self {
        Self { letter, tried: 0 }
    }

    /// The first that is free, which is taken from now on. Nothing that was taken is given back meanwhile.
    pub fn take(&mut self, taken: &mut BTreeSet<String>) -> String {
        loop {
            self.tried += 1;
            let tag = format!("{}-{:02}", self.letter, self.tried);
            if taken.insert(tag.clone()) {
                return tag;
            }
        }
    }
}

/// Short names that are not taken, each tried once: `tap`, `tap-2`.
#[derive(Default)]
struct FreeNames(HashMap<String, u32>);

impl FreeNames {
    fn take(&mut self, name: String, taken: &mut BTreeSet<String>) -> String {
        // What some system takes for a device names no page.
        let name = match portable::fault(&name) {
            Some(NameFault::Device) => format!("{name}-item"),
            Some(NameFault::Long) => name.chars().take(portable::LONGEST_NAME).collect(),
            _ => name,
        };
        if taken.insert(name.clone()) {
            return name;
        }
        let tried = self.0.entry(name.clone()).or_insert(1);
        loop {
            *tried += 1;
            let other = format!("{name}-{tried}");
            if taken.insert(other.clone()) {
                return other;
            }
        }
    }
}

/// Letters, then the number, so that `K-9` comes before `K-10`.
pub fn tag_order(tag: &str) -> (String, u32, String) {
    let at = tag.find(|letter: char| letter.is_ascii_digit()).unwrap_or(tag.len());
    let (letters, rest) = tag.split_at(at);
    let figures: String = rest.chars().take_while(char::is_ascii_digit).collect();
    (letters.to_string(), figures.parse().unwrap_or(u32::MAX), rest.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Names and numbers that were tried are counted: a thousand things that are called alike take a thousand
    /// tries, not half a million.
    #[test]
    fn each_free_name_and_number_is_tried_once() {
        const ALL: u32 = 4_000;
        let (mut names, mut tags, mut taken) = (FreeNames::default(), FreeTags::of("K"), BTreeSet::new());
        let mut ids = BTreeSet::from(["tap-3".to_string()]);
        for _ in 0..ALL {
            tags.take(&mut taken);
            names.take("tap".into(), &mut ids);
        }
        assert_eq!((tags.tried, taken.len()), (ALL, ALL as usize));
        assert_eq!((names.0["tap"], ids.len()), (ALL + 1, ALL as usize + 1));
        assert!(ids.contains("tap") && ids.contains("tap-2") && ids.contains(&format!("tap-{}", ALL + 1)));
    }

    #[test]
    fn a_name_that_is_a_device_to_some_system_names_no_page() {
        let take = |name: &str| FreeNames::default().take(name.into(), &mut BTreeSet::new());
        assert_eq!([take("con"), take("console")], ["con-item", "console"]);
        assert_eq!(take(&"a".repeat(300)).len(), portable::LONGEST_NAME);
    }
}
