//! Whom a finding concerns, and what it says to them: the client, the installer, or the office alone.

use crate::book::{Opening, Room, Selection};
use crate::finding::Finding;
use crate::source::Span;
use crate::views::html::Html;

use super::Teller;
use super::fit::sentence_of;

/// Who reads a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reader {
    /// Those who decide and pay, and will live with it.
    Client,
    /// Those who measure and fit.
    Installer,
}

/// Rules, or families of rules, that tell the client something about living with a choice. What does
/// not fit stands beside each option; what the firm has still to do is the office's.
const CLIENTS: &[&str] = &[
    "clear/seating",
    "clear/work-aisle",
    "clear/walkway",
    "clear/landing",
    "clear/toilet",
    "clear/lavatory",
    "clear/shower",
    "clear/headroom",
    "top/overhang",
    "top/corner",
    "top/seats",
    "light",
    "store",
    "finish/family",
    "finish/hand",
];

/// Rules, or families of rules, that tell the installer what to look out for.
const INSTALLERS: &[&str] = &[
    "fit",
    "service",
    "clear",
    "top",
    "run",
    "light/height",
    "light/drop",
    "light/bath-zone",
    "complete/measured",
    "complete/datum",
    "complete/accessory",
];

impl Reader {
    /// Whether what a rule finds concerns this reader.
    pub fn is_told(self, rule: &str) -> bool {
        let family = rule.split_once('/').map_or(rule, |(family, _)| family);
        let list = match self {
            Self::Client => CLIENTS,
            Self::Installer => INSTALLERS,
        };
        list.contains(&rule) || list.contains(&family)
    }
}

impl Teller<'_> {
    /// What was found of a room as a whole: of no item, or of one that has no page of this reader's.
    pub fn told_of_room(&self, room: &Room, reader: Reader) -> Vec<Html> {
        let has_page = |about: &Span| match reader {
            Reader::Client => room.selections.iter().any(|selection| selection.name.span == *about),
            Reader::Installer => {
                let mut fitted = room.selections.iter().filter(|selection| selection.name.span == *about);
                room.openings.iter().any(|opening| opening.name.span == *about)
                    || fitted.any(|selection| selection.place.get().and_then(|place| room.opening(place)).is_some())
            }
        };
        let here = |finding: &&Finding| {
            finding.room.as_deref() == Some(room.folder.as_str()) && !finding.about.as_ref().is_some_and(has_page)
        };
        self.sentences(reader, here)
    }

    /// What was found at an opening: of itself, of what goes in, and of the option shown there.
    pub fn told_at_opening(&self, room: &Room, opening: &Opening, thing: Option<(&Selection, &str)>) -> Vec<Html> {
        let here = |finding: &&Finding| {
            let named = finding.about.is_some_and(|about| {
                about == opening.name.span || thing.is_some_and(|(selection, _)| selection.name.span == about)
            });
            // What was found of another option says nothing of the one that is drawn here.
            let shown = finding.option.is_none() || finding.option.as_deref() == thing.map(|(_, option)| option);
            named && shown && finding.room.as_deref() == Some(room.folder.as_str())
        };
        self.sentences(Reader::Installer, here)
    }

    /// What a client should know of a selection before deciding.
    pub fn told_of_selection(&self, room: &Room, selection: &Selection) -> Vec<Html> {
        let here = |finding: &&Finding| {
            finding.room.as_deref() == Some(room.folder.as_str()) && finding.about == Some(selection.name.span)
        };
        let mut lines = self.sentences(Reader::Client, here);
        // A misfit that someone accepted is no secret from those who will live with it.
        let accepted =
            |finding: &&Finding| here(finding) && finding.waived.is_some() && finding.rule.starts_with("fit/");
        lines.extend(
            self.subject.assessment.findings.iter().filter(accepted).map(|finding| sentence(Reader::Client, finding)),
        );
        lines
    }

    fn sentences(&self, reader: Reader, here: impl Fn(&&Finding) -> bool) -> Vec<Html> {
        let findings = self.subject.assessment.findings.iter();
        findings
            .filter(|finding| reader.is_told(finding.rule))
            .filter(here)
            .map(|finding| sentence(reader, finding))
            .collect()
    }
}

/// A finding as a sentence, and that it was accepted if someone did so. Why, and by whom, is told to the
/// trade that works by it; the client reads that it is known.
fn sentence(reader: Reader, finding: &Finding) -> Html {
    let waived = finding.waived.as_ref().map_or(String::new(), |waived| match reader {
        Reader::Client => " The designer lets it stand.".into(),
        Reader::Installer => format!(" Waived by {}: {}.", waived.words(), waived.because),
    });
    sentence_of(finding).then(waived)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::RULES;

    #[test]
    fn what_the_firm_has_to_do_is_nobody_elses() {
        for rule in RULES
            .iter()
            .filter(|rule| ["source/", "order/", "money/"].iter().any(|family| rule.code.starts_with(family)))
        {
            assert!(!Reader::Client.is_told(rule.code) && !Reader::Installer.is_told(rule.code), "{}", rule.code);
        }
    }

    #[test]
    fn a_misfit_concerns_the_installer_and_stands_beside_the_option_for_the_client() {
        assert!(Reader::Installer.is_told("fit/width") && !Reader::Client.is_told("fit/width"));
    }
}
