//! Whom a finding concerns, and what it says to them: the client, the installer, or the office alone.

use std::collections::BTreeSet;

use crate::assess::rules::{self, Reader};
use crate::book::{Opening, Room, Selection};
use crate::finding::{Code, Family, Finding, Id};
use crate::language::{Words, say};
use crate::views::pages::PageBuilder;
use crate::views::shared::fit::sentence_of;
use crate::views::shared::html::Html;

impl PageBuilder<'_> {
    /// What was found of a room as a whole: of no item, or of one that has no page of this reader's.
    pub fn told_of_room(&self, room: &Room, reader: Reader) -> Vec<Html> {
        let selections = room.selections.iter();
        let pages: BTreeSet<Id> = match reader {
            Reader::Client => selections.map(|selection| Id::of(&selection.name)).collect(),
            Reader::Installer => {
                let is_fitted = |one: &&Selection| one.place.get().and_then(|place| room.opening(place)).is_some();
                let fitted = selections.filter(is_fitted).map(|selection| Id::of(&selection.name));
                fitted.chain(room.openings.iter().map(|opening| Id::of(&opening.name))).collect()
            }
        };
        let of_room = self.found.of_room(Some(&room.folder)).into_iter();
        sentences(
            self.words,
            reader,
            of_room.filter(|finding| !finding.subject.id().is_some_and(|about| pages.contains(&about))),
        )
    }

    /// What was found at an opening: of itself, of what goes in, and of the option shown there.
    pub fn told_at_opening(&self, room: &Room, opening: &Opening, thing: Option<(&Selection, &str)>) -> Vec<Html> {
        let things: Vec<Id> =
            std::iter::once(Id::of(&opening.name)).chain(thing.map(|(selection, _)| Id::of(&selection.name))).collect();
        // What was found of another option says nothing of the one that is drawn here.
        let is_shown = |finding: &&Finding| {
            finding.subject.option().is_none() || finding.subject.option() == thing.map(|(_, option)| option)
        };
        sentences(self.words, Reader::Installer, self.found.about(&room.folder, &things).into_iter().filter(is_shown))
    }

    /// What a client should know of a selection before deciding.
    pub fn told_of_selection(&self, room: &Room, selection: &Selection) -> Vec<Html> {
        let found = self.found.about(&room.folder, &[Id::of(&selection.name)]);
        let mut lines = sentences(self.words, Reader::Client, found.iter().copied());
        // A misfit that someone accepted is no secret from those who will live with it.
        let accepted =
            found.into_iter().filter(|finding| finding.waived.is_some() && finding.rule.family() == Family::Fit);
        lines.extend(accepted.map(|finding| sentence(self.words, Reader::Client, finding)));
        lines
    }
}

/// Whether what a rule finds concerns this reader.
fn is_told(reader: Reader, code: Code) -> bool {
    rules::of(code).is_some_and(|rule| rule.tells.contains(&reader))
}

fn sentences<'a>(words: Words, reader: Reader, found: impl Iterator<Item = &'a Finding>) -> Vec<Html> {
    found.filter(|finding| is_told(reader, finding.rule)).map(|finding| sentence(words, reader, finding)).collect()
}

/// A finding as a sentence, and that it was accepted if someone did so. Why, and by whom, is told to the
/// trade that works by it; the client reads that it is known.
fn sentence(words: Words, reader: Reader, finding: &Finding) -> Html {
    let sentence = sentence_of(words, finding);
    let waived = finding.waived.as_ref().map(|waived| match reader {
        Reader::Client => say!(words, "found.let_stand"),
        Reader::Installer => say!(words, "found.waived", who = waived.words(), because = waived.because.as_str()),
    });
    waived.map_or(sentence.clone(), |waived| sentence.then(" ").then(waived))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::RULES;

    #[test]
    fn what_the_firm_has_to_do_is_nobody_elses() {
        for rule in
            RULES.iter().filter(|rule| [Family::Source, Family::Order, Family::Money].contains(&rule.code.family()))
        {
            assert!(!is_told(Reader::Client, rule.code) && !is_told(Reader::Installer, rule.code), "{}", rule.code);
        }
    }

    #[test]
    fn a_misfit_concerns_the_installer_and_stands_beside_the_option_for_the_client() {
        assert!(is_told(Reader::Installer, rules::WIDTH) && !is_told(Reader::Client, rules::WIDTH));
    }
}
