//! What can hurt, on a sheet to sign: a line at its item, by names and numbers, with the full words once at the end.

use crate::book::{Room, Selection};
use crate::language::{Words, say};
use crate::views::pages::PageBuilder;
use crate::views::paper::sign_off::SignOff;
use crate::views::paper::sign_off_item::SignOffItem;
use crate::views::shared::found::{self, Hurts};

/// Something that can hurt: what the line at the item calls it, and its full words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetCaution {
    /// In a word or two.
    pub name: String,
    /// In full.
    pub words: String,
}

impl PageBuilder<'_> {
    /// What of an item can hurt.
    pub(super) fn paper_cautions(&self, room: &Room, selection: &Selection) -> Vec<SheetCaution> {
        let all = self.hurts(room, selection).into_iter();
        all.map(|hurts| SheetCaution {
            name: match hurts {
                Hurts::AsItsMakerSays(_) => say!(self.words, "hazards.maker"),
                Hurts::By(hazard) => found::hazard(self.words, hazard),
            },
            words: hurts.in_full(self.words).plain(),
        })
        .collect()
    }
}

/// The sheet with the full words of all its cautions, each once, and a line of their numbers at each item.
pub(super) fn numbered(words: Words, mut sheet: SignOff) -> SignOff {
    let mut full: Vec<String> = Vec::new();
    for item in sheet.rooms.iter_mut().flat_map(|room| &mut room.items) {
        item.cautions = line(words, item, &mut full).into_iter().collect();
    }
    SignOff { cautions: full, ..sheet }
}

fn line(words: Words, item: &SignOffItem, full: &mut Vec<String>) -> Option<String> {
    let mut named = Vec::new();
    for caution in &item.hurts {
        let number = full.iter().position(|told| *told == caution.words).unwrap_or_else(|| {
            full.push(caution.words.clone());
            full.len() - 1
        });
        named.push(say!(words, "paper_says.caution", name = caution.name, number = number + 1));
    }
    (!named.is_empty()).then(|| words.series(&named))
}
