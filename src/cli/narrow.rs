//! A part of a review: of a room, an item or a rule, or up to a hold point.

use std::collections::BTreeSet;

use crate::book::Book;
use crate::finding::{Counts, Finding};
use crate::pipeline::Review;
use crate::units::Date;
use crate::vocabulary::nearest;

use super::Failure;

/// Which findings are told.
#[derive(clap::Args)]
pub struct Narrow {
    /// Only what is found of this room, item (by name or number) or rule (or family of rules); several are joined
    #[arg(long, value_name = "ROOM | ITEM | RULE")]
    only: Vec<String>,
    /// Only what must be settled by this hold point, or before it; faults of the folder are always told
    #[arg(long, value_name = "HOLD-POINT")]
    until: Option<String>,
}

impl Narrow {
    /// Leaves the other findings out, and gives how many they are.
    ///
    /// # Errors
    /// When a name is nobody's.
    pub fn of(&self, review: &mut Review) -> Result<usize, Failure> {
        let before = review.assessment.findings.len();
        let only: Vec<Only> = self.only.iter().map(|name| Only::named(name, review)).collect::<Result<_, _>>()?;
        let until = self.until.as_deref().map(|name| Until::named(name, review)).transpose()?;
        let findings = &mut review.assessment.findings;
        findings.retain(|finding| {
            (only.is_empty() || only.iter().any(|only| only.takes(finding)))
                && until.as_ref().is_none_or(|until| until.takes(finding))
        });
        review.assessment.counts = Counts::of(findings);
        Ok(before - review.assessment.findings.len())
    }
}

/// What a name stands for: a rule and its family, a room, things of a room.
#[derive(Default)]
struct Only {
    rules: BTreeSet<&'static str>,
    rooms: BTreeSet<String>,
    things: BTreeSet<(String, String)>,
}

impl Only {
    fn named(name: &str, review: &Review) -> Result<Self, Failure> {
        let is_it = |other: &str| other.to_lowercase() == name.to_lowercase();
        let codes = || crate::assess::rules::RULES.iter().map(|rule| rule.code.text());
        let of_family = |code: &&str| code.split_once('/').is_some_and(|(family, _)| is_it(family));
        let rules = codes().filter(|code| is_it(code) || of_family(code)).collect();
        let book = &review.book;
        let rooms = book.rooms.iter().filter(|room| is_it(&room.folder) || is_it(room.title()));
        let rooms = rooms.map(|room| room.folder.clone()).collect();
        let mut things = BTreeSet::new();
        for (room, names) in things_of(book) {
            if let Some(first) = names.first().filter(|_| names.iter().any(|name| is_it(name))) {
                things.insert((room, (*first).to_string()));
            }
        }
        let only = Self { rules, rooms, things };
        if !only.rules.is_empty() || !only.rooms.is_empty() || !only.things.is_empty() {
            return Ok(only);
        }
        let all = things_of(book);
        let known = codes().map(|code| -> &str { code }).chain(book.rooms.iter().map(|room| room.folder.as_str()));
        let known = known.chain(all.iter().flat_map(|(_, names)| names.iter().copied()));
        Err(match nearest(name, known) {
            Some(near) => format!("no room, item or rule is called `{name}`; did you mean `{near}`?").into(),
            None => {
                format!("no room, item or rule is called `{name}`; `bookmatch explain rules` lists the rules").into()
            }
        })
    }

    fn takes(&self, finding: &Finding) -> bool {
        let room = finding.room.as_deref().unwrap_or_default();
        let thing = || finding.subject.name().map(|name| (room.to_string(), name.to_string()));
        self.rules.contains(finding.rule.text())
            || self.rooms.contains(room)
            || thing().is_some_and(|thing| self.things.contains(&thing))
    }
}

/// Every selection and opening: its room, and what it is called by, its name first.
fn things_of(book: &Book) -> Vec<(String, Vec<&str>)> {
    let mut things = Vec::new();
    for room in &book.rooms {
        let selections = room.selections.iter();
        let names = selections.map(|one| vec![one.name.value.as_str(), one.tag.as_str(), one.id.as_str()]);
        let openings = room.openings.iter().map(|opening| vec![opening.name.value.as_str()]);
        things.extend(names.chain(openings).map(|names| (room.folder.clone(), names)));
    }
    things
}

/// The last moment of which findings are told.
struct Until {
    name: String,
    on: Option<Date>,
}

impl Until {
    fn named(name: &str, review: &Review) -> Result<Self, Failure> {
        let mut points = review.assessment.in_the_way(&review.book);
        points.retain(|held| !held.at_once);
        let found = points.iter().rev().find(|held| held.point.name.to_lowercase() == name.to_lowercase());
        if let Some(held) = found {
            return Ok(Self { name: held.point.name.clone(), on: held.point.on });
        }
        let known: BTreeSet<&str> = points.iter().map(|held| held.point.name.as_str()).collect();
        let named = known.into_iter().collect::<Vec<_>>().join(", ");
        Err(format!("nothing of this book is due at `{name}`; its hold points are {named}").into())
    }

    fn takes(&self, finding: &Finding) -> bool {
        let Some(by) = &finding.by else { return true };
        by.hold_point == self.name || by.on.is_some_and(|on| self.on.is_none_or(|last| on <= last))
    }
}
