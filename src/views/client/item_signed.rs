//! What each who decides said of an item, on its page.

use crate::assess::approval::ApproverDecision;
use crate::book::{Room, Selection};
use crate::language::say;
use crate::shown;
use crate::views::client::cover::ReviewStamp;
use crate::views::client::item::Signer;
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::day_of;
use crate::views::shared::html::{Html, show};
use crate::views::shared::state::decision_key;

impl PageBuilder<'_> {
    /// What each who decides said, or by when it is wanted.
    pub(super) fn signers(&self, room: &Room, selection: &Selection) -> Vec<Signer> {
        let approvers = self.subject.book.project.approvers.iter();
        let by = self.subject.assessment.dates.decide_by(selection).filter(|_| !selection.is_ordered());
        let word = |id: &str| self.known_word(id, room, selection);
        approvers
            .map(|approver| Signer {
                name: approver.name.clone(),
                state: self.said_by(approver, room, selection),
                stamp: word(&approver.id.value).map(|word| {
                    let mut stamp = self.stamp_of(word, room, selection);
                    stamp.lines.extend(self.signed_under(word, room, selection));
                    ReviewStamp { void: stamp.void || self.came_otherwise(room, selection), ..stamp }
                }),
                says: match word(&approver.id.value) {
                    Some(word) => word.note.as_ref().map(|note| Html::text(note)),
                    None => by.map(|by| show!(self.words, "item_says.wanted_by", day = by)),
                },
            })
            .collect()
    }

    /// The mark that somebody signed, where what they signed still stands under another.
    fn signed_under(&self, word: &ApproverDecision, room: &Room, selection: &Selection) -> Option<String> {
        let item = self.subject.assessment.approvals.item(room, selection)?;
        let is_another = word.holds && !item.now.is(&word.mark);
        is_another.then(|| say!(self.words, "item_says.signed_as", mark = shown::in_short(&word.mark)))
    }

    /// A review stamp: the decision, of which issue, how it was given; void once the item has changed.
    fn stamp_of(&self, word: &ApproverDecision, room: &Room, selection: &Selection) -> ReviewStamp {
        let day = day_of(self.words, word.made);
        let option = self.option_signed(word, room, selection);
        let option = option.map(|option| say!(self.words, "item_says.option", option = option));
        let lines =
            [option, Some(say!(self.words, "issued.on", issue = word.issue, day = day)), Some(self.how_in_short(word))];
        ReviewStamp {
            word: say!(self.words, decision_key(word.decision)),
            lines: lines.into_iter().flatten().collect(),
            void: !word.holds,
        }
    }
}
