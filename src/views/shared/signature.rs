//! A signature as pages and sheets show it: who signed what is shown, and how; those that still hold, and no other.

use std::fmt::Write;

use crate::assess::approval::{ApproverDecision, Given};
use crate::book::{Approver as Named, Room, Selection};
use crate::digest::Digest;
use crate::language::say;
use crate::ledger::{Decision, Drawing};
use crate::views::pages::PageBuilder;
use crate::views::paper::sign_off::SheetSigner;
use crate::views::paper::sign_off_item::{Decided, DecisionBox};
use crate::views::shared::figures::day_of;
use crate::views::shared::html::Html;
use crate::views::shared::state::decision_key;
use serde::Serialize;

/// The most numbers of items that a signature names before it counts them.
const NAMED: usize = 6;

/// A signature that still holds.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Signature {
    /// The name as typed; that of the approver where none was typed.
    pub name: String,
    /// What stands on the line where nothing was drawn: the name as typed, or `on paper`.
    pub text: String,
    /// The day: `16 Jan 2027`; empty where only the words of how it was given tell it.
    pub date: String,
    /// How it was given, and of what: `by private link; of issue 2, all 5 items`.
    pub how: String,
    /// The drawing, where one was drawn.
    pub drawing: Option<Strokes>,
}

/// A drawing as strokes between points, from its own left and top.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Strokes {
    /// How wide it is; at least 1.
    pub width: u32,
    /// How high it is; at least 1.
    pub height: u32,
    /// A list of points each: how far to the right, how far down.
    pub strokes: Vec<Vec<(u32, u32)>>,
}

impl Strokes {
    /// The strokes of a drawing.
    pub fn of(drawing: &Drawing) -> Strokes {
        let strokes = drawing.strokes();
        let most = |of: fn(&(u32, u32)) -> u32| strokes.iter().flatten().map(of).max().unwrap_or(0).max(1);
        Strokes { width: most(|(x, _)| *x), height: most(|(_, y)| *y), strokes }
    }

    /// As an SVG that says whose it is; made of these numbers alone.
    pub fn svg(&self, whose: &str) -> Html {
        let mut path = String::new();
        for stroke in &self.strokes {
            for (at, (x, y)) in stroke.iter().enumerate() {
                // Writing to a text never fails.
                let _ = write!(path, "{}{x} {y}", if at == 0 { 'M' } else { 'L' });
            }
            if let [(x, y)] = stroke.as_slice() {
                let _ = write!(path, "L{x} {y}");
            }
        }
        // The pen is as wide as on the pad, whatever the size: a margin keeps it inside.
        let (wide, high) = (self.width + 6, self.height + 6);
        let before = format!("<svg class=\"signature\" viewBox=\"-3 -3 {wide} {high}\" role=\"img\" aria-label=\"");
        Html::trusted(before).then(Html::text(whose)).then(Html::trusted(format!("\"><path d=\"{path}\"/></svg>")))
    }
}

impl PageBuilder<'_> {
    /// Those who sign a sheet of these rooms, each with what was signed of it and still holds.
    pub fn who_signed(&self, rooms: &[&Room]) -> Vec<SheetSigner> {
        let approvers = self.subject.book.project.approvers.iter();
        approvers
            .map(|approver| {
                let (signatures, signed) = self.signatures(approver, rooms);
                let items: usize = rooms.iter().map(|room| room.selections.len()).sum();
                SheetSigner { name: approver.name.clone(), signatures, open: signed < items || items == 0 }
            })
            .collect()
    }

    /// An approver's signatures of items of these rooms, a response each, and how many items they hold for.
    pub fn signatures(&self, approver: &Named, rooms: &[&Room]) -> (Vec<Signature>, usize) {
        let mut given: Vec<(Digest, &ApproverDecision, Vec<&str>)> = Vec::new();
        let items = || rooms.iter().flat_map(|room| room.selections.iter().map(move |one| (*room, one)));
        for (room, selection) in items() {
            let Some(word) = self.word_of(approver, room, selection) else { continue };
            match given.iter_mut().find(|(response, ..)| *response == word.response) {
                Some((.., tags)) => tags.push(&selection.tag),
                None => given.push((word.response, word, vec![&selection.tag])),
            }
        }
        let signed = given.iter().map(|(.., tags)| tags.len()).sum();
        let all = items().count();
        (given.iter().map(|(_, word, tags)| self.signature(word, tags, all)).collect(), signed)
    }

    /// What an approver said of an item, where it is known to be theirs and still holds.
    fn word_of(&self, approver: &Named, room: &Room, selection: &Selection) -> Option<&ApproverDecision> {
        self.known_word(&approver.id.value, room, selection).filter(|word| word.stands())
    }

    fn signature(&self, word: &ApproverDecision, tags: &[&str], all: usize) -> Signature {
        let of = match tags.len() {
            some if some == all => say!(self.words, "given.all_items", n = all),
            some if some > NAMED => say!(self.words, "given.of_items", some = some, n = all),
            _ => tags.join(", "),
        };
        let kept = self.subject.book.record.kept.get(&word.response);
        let typed = word.signed.as_ref().map(|signed| signed.name.clone());
        let by_hand = matches!(word.given, Given::ByHand(_));
        let on_paper = kept.is_some_and(|kept| kept.scan.is_some());
        Signature {
            name: typed.clone().unwrap_or_else(|| word.name.clone()),
            text: typed.unwrap_or_else(|| if on_paper { say!(self.words, "given.on_paper") } else { String::new() }),
            date: if by_hand { String::new() } else { day_of(self.words, word.made) },
            how: say!(self.words, "given.of_issue", how = self.how_in_short(word), issue = word.issue, of = of),
            drawing: kept.and_then(|kept| kept.drawing.as_ref()).map(Strokes::of),
        }
    }

    /// How a word was given, and when, where only the designer's own words tell it.
    pub fn how(&self, word: &ApproverDecision) -> String {
        self.how_given(&word.given, &word.response, &day_of(self.words, word.made))
    }

    /// How a word was given, for those who decide: what the designer wrote of it is the office's.
    pub fn how_in_short(&self, word: &ApproverDecision) -> String {
        match &word.given {
            Given::ByHand(_) if self.has_scan(&word.response) => {
                say!(self.words, "given.paper", day = day_of(self.words, word.made))
            }
            Given::ByHand(_) => say!(self.words, "given.hand", day = day_of(self.words, word.made)),
            given => self.how_given(given, &word.response, &day_of(self.words, word.made)),
        }
    }

    fn has_scan(&self, response: &Digest) -> bool {
        self.subject.book.record.kept.get(response).is_some_and(|kept| kept.scan.is_some())
    }

    /// How a response was given; one that the designer wrote down says when that was done.
    pub fn how_given(&self, given: &Given, response: &Digest, recorded: &str) -> String {
        match given {
            Given::ByPrivateLink => say!(self.words, "given.link"),
            Given::Confirmed => say!(self.words, "given.confirmed"),
            Given::Unsigned => say!(self.words, "given.unsigned"),
            Given::ByHand(how) if !self.has_scan(response) => {
                say!(self.words, "given.by_hand", how = how, day = recorded)
            }
            Given::ByHand(how) if how.to_lowercase().starts_with("signed on paper") => {
                say!(self.words, "given.recorded", how = how, day = recorded)
            }
            Given::ByHand(how) => say!(self.words, "given.on_paper_how", how = how, day = recorded),
        }
    }

    /// What each approver decided of an item, as it stands: an empty one where nothing does.
    pub fn decided(&self, room: &Room, selection: &Selection) -> Vec<Decided> {
        let approvers = self.subject.book.project.approvers.iter();
        let told = |word: &ApproverDecision| {
            let is_met = word.decision == Decision::ApprovedAsNoted && word.met;
            let decision =
                say!(self.words, if is_met { "stands.met" } else { decision_key(word.decision) }).to_lowercase();
            let by_hand = matches!(word.given, Given::ByHand(_));
            let on = (!by_hand).then(|| day_of(self.words, word.made));
            let parts = [Some(decision), self.option_signed(word, room, selection), on, Some(self.how_in_short(word))];
            Decided {
                stamp: Some(stamp(word.decision)),
                by: parts.into_iter().flatten().collect::<Vec<_>>().join(", "),
                note: word.note.clone().unwrap_or_default(),
            }
        };
        approvers.map(|approver| self.word_of(approver, room, selection).map_or_else(Decided::default, told)).collect()
    }
}

fn stamp(decision: Decision) -> DecisionBox {
    match decision {
        Decision::Approved => DecisionBox::Approved,
        Decision::ApprovedAsNoted => DecisionBox::Noted,
        Decision::ReviseAndResubmit => DecisionBox::Revise,
        Decision::Rejected => DecisionBox::Rejected,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_is_drawn_from_its_numbers_and_a_name_stays_a_name() {
        let strokes = Strokes::of(&Drawing::parse("M12 40L22 45M12 41").unwrap());
        assert_eq!((strokes.width, strokes.height), (10, 5));
        let svg = strokes.svg("\"><script>");
        assert!(svg.as_str().contains("<path d=\"M0 0L10 5M0 1L0 1\"/>"), "{svg:?}");
        assert!(svg.as_str().contains("aria-label=\"&quot;&gt;&lt;script&gt;\""), "{svg:?}");
    }
}
