//! What readers are told of what was found: the client what living with it means, the installer the finding as it
//! is with who let it stand and why, and everybody its caution.

use std::collections::BTreeSet;

use crate::assess::concerns::is_told;
use crate::assess::rules::{self, Reader};
use crate::book::{Opening, Room, Selection};
use crate::finding::{Code, Finding, Hazard, Id, Waived, WaivedUntil};
use crate::language::{Words, say};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::hold_point;
use crate::views::shared::fit::sentence_of;
use crate::views::shared::found;
use crate::views::shared::html::{Html, show};

/// What is told of a place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Told {
    /// What can hurt: of every finding, whomever it tells, waived or not.
    pub hazards: Vec<Hazard>,
    /// The same in full words.
    pub cautions: Vec<Html>,
    /// What was found, as the reader is told it.
    pub lines: Vec<Html>,
}

impl Told {
    /// Both, what can hurt first.
    pub fn all(self) -> Vec<Html> {
        self.cautions.into_iter().chain(self.lines).collect()
    }
}

impl PageBuilder<'_> {
    /// What was found of a room as a whole: of no item, or of one that has no page of this reader's.
    pub fn told_of_room(&self, room: &Room, reader: Reader) -> Told {
        let selections = room.selections.iter();
        let pages: BTreeSet<Id> = match reader {
            Reader::Client => selections.map(|selection| Id::of(&selection.name)).collect(),
            Reader::Installer => {
                let is_fitted = |one: &&Selection| one.place.get().and_then(|place| room.opening(place)).is_some();
                let fitted = selections.filter(is_fitted).map(|selection| Id::of(&selection.name));
                fitted.chain(room.openings.iter().map(|opening| Id::of(&opening.name))).collect()
            }
        };
        let mut found = self.found.of_room(Some(&room.folder));
        found.retain(|finding| !finding.subject.id().is_some_and(|about| pages.contains(&about)));
        self.told(reader, &found, room, None)
    }

    /// What was found at an opening: of itself, of what goes in, and of the option shown there.
    pub fn told_at_opening(&self, room: &Room, opening: &Opening, thing: Option<(&Selection, &str)>) -> Told {
        let things: Vec<Id> =
            std::iter::once(Id::of(&opening.name)).chain(thing.map(|(selection, _)| Id::of(&selection.name))).collect();
        let mut found = self.found.about(&room.folder, &things);
        // What was found of another option says nothing of the one that is drawn here.
        found.retain(|finding| {
            finding.subject.option().is_none() || finding.subject.option() == thing.map(|(_, option)| option)
        });
        self.told(Reader::Installer, &found, room, thing.map(|(selection, _)| selection))
    }

    /// What was found of some things of a room and at their openings, as those who build are told it: by some
    /// rules, with what can hurt of all.
    pub fn told_of_things(&self, room: &Room, things: &[&Selection], is_theirs: impl Fn(Code) -> bool) -> Told {
        let at = |selection: &&&Selection| selection.place.get().and_then(|place| room.opening(place));
        let openings = things.iter().filter_map(|selection| at(&selection)).map(|opening| Id::of(&opening.name));
        let all: Vec<Id> = things.iter().map(|selection| Id::of(&selection.name)).chain(openings).collect();
        let found = self.found.about(&room.folder, &all);
        let theirs: Vec<&Finding> = found.iter().filter(|finding| is_theirs(finding.rule)).copied().collect();
        let all = self.told(Reader::Installer, &found, room, None);
        Told { lines: self.told(Reader::Installer, &theirs, room, None).lines, ..all }
    }

    /// What a client should know of a selection before deciding.
    pub fn told_of_selection(&self, room: &Room, selection: &Selection) -> Told {
        let found = self.found.about(&room.folder, &[Id::of(&selection.name)]);
        self.told(Reader::Client, &found, room, Some(selection))
    }

    fn told(&self, reader: Reader, found: &[&Finding], room: &Room, of: Option<&Selection>) -> Told {
        let mut hazards: Vec<Hazard> = found.iter().filter_map(|finding| finding.caution).collect();
        hazards.sort_unstable();
        hazards.dedup();
        let mut told = Told {
            cautions: hazards.iter().map(|hazard| found::caution(self.words, *hazard)).collect(),
            hazards,
            lines: vec![],
        };
        for finding in found.iter().filter(|finding| is_told(reader, finding, room, of)) {
            let line = match reader {
                Reader::Client => living(self.words, finding),
                Reader::Installer => Some(as_found(self.words, finding)),
            };
            told.lines.extend(line.filter(|line| !told.lines.contains(line)));
        }
        told
    }
}

/// What living with it means, in plain words: no figure of the review, and neither who let it stand nor why.
fn living(words: Words, finding: &Finding) -> Option<Html> {
    Some(show!(words, rules::of(finding.rule)?.living?))
}

/// A finding as a sentence and, if someone let it stand, who and why.
fn as_found(words: Words, finding: &Finding) -> Html {
    let sentence = sentence_of(words, finding);
    let Some(waived) = &finding.waived else { return sentence };
    let waived = say!(words, "found.waived", who = who(words, waived), because = waived.because.as_str());
    sentence.then(" ").then(waived)
}

/// Who let it stand, when and until when: `Ines Tarrow, 12 Jan 2027, until 1 Jun 2027`.
fn who(words: Words, waived: &Waived) -> String {
    let until = waived.until.as_ref().map(|until| match until {
        WaivedUntil::Day(day) => words.day(*day),
        WaivedUntil::Milestone(name) => hold_point(words, name),
    });
    let until = until.map(|until| say!(words, "found.until", until = until));
    [Some(waived.by.clone()), Some(words.day(waived.on)), until].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::RULES;
    use crate::finding::Family;
    use crate::language;
    use crate::units::Date;

    /// Day and end of a waiver are told in the reader's language, and what the book alone has a name for by that.
    #[test]
    fn until_when_a_finding_is_let_stand_is_in_the_readers_language() {
        let day = |text: &str| Date::parse(text).unwrap();
        let told = |tag: &str, until: Option<WaivedUntil>| {
            let (because, by) = ("cut back on site".into(), "Ines Tarrow".into());
            who(language::Language::named(tag).unwrap().words(), &Waived { because, by, on: day("2027-01-12"), until })
        };
        let until = |name: &str| Some(WaivedUntil::Milestone(name.into()));
        assert_eq!(told("es", Some(WaivedUntil::Day(day("2027-06-01")))), "Ines Tarrow, 12 ene 2027, hasta 1 jun 2027");
        assert_eq!(told("en", Some(WaivedUntil::Day(day("2027-06-01")))), "Ines Tarrow, 12 Jan 2027, until 1 Jun 2027");
        let usual = told("es", until("cabinets ordered"));
        assert!(usual.starts_with("Ines Tarrow, 12 ene 2027, hasta ") && !usual.contains("cabinets"), "{usual}");
        assert_eq!(told("en", until("crate opened")), "Ines Tarrow, 12 Jan 2027, until crate opened");
        assert_eq!(told("es", None), "Ines Tarrow, 12 ene 2027");
    }

    #[test]
    fn what_the_firm_has_to_do_is_nobody_elses() {
        for rule in
            RULES.iter().filter(|rule| [Family::Source, Family::Order, Family::Money].contains(&rule.code.family()))
        {
            assert_eq!(rule.tells, [], "{}", rule.code);
        }
    }

    #[test]
    fn whom_the_client_is_told_by_has_plain_words_in_every_language_and_no_other() {
        for rule in RULES {
            assert_eq!(rule.tells.contains(&Reader::Client), rule.living.is_some(), "{}", rule.code);
            for tag in language::tags() {
                let words = language::Language::named(tag).unwrap().words();
                assert!(rule.living.is_none_or(|key| words.has(key)), "{}: {tag}", rule.code);
            }
        }
    }

    #[test]
    fn a_misfit_concerns_the_installer_and_stands_beside_the_option_for_the_client() {
        let tells = rules::of(rules::WIDTH).unwrap().tells;
        assert_eq!(tells, [Reader::Installer]);
    }
}
