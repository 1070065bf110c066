//! The lines that describe an option, worded once for pages, tables and sheets.

use crate::book::{Hinge, ProductOption, Selection};
use crate::language::{Words, say};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::html::Html;
use crate::views::shared::sheet::Fact;
use crate::vocabulary::Words as _;

impl PageBuilder<'_> {
    /// What the client is told of an option, from finish to the kind's own facts.
    pub fn description(&self, option: &ProductOption) -> Vec<Fact> {
        let mut facts = Vec::new();
        let words = [
            ("lines.maker", &option.maker),
            ("lines.model", &option.model),
            ("lines.finish", &option.finish),
            ("lines.colour", &option.colour),
        ];
        facts.extend(words.into_iter().filter_map(|(key, slot)| Some(self.worded(key, Html::text(slot.get()?)))));
        facts.extend(option.hinge.get().map(|hinge| self.worded("lines.hinge", self.hinge(*hinge))));
        facts.extend(self.sizes(option));
        facts.extend(self.more(option));
        facts
    }

    /// The kind's own facts, and what is ordered with it.
    pub fn more(&self, option: &ProductOption) -> Vec<Fact> {
        let mut facts = Vec::new();
        for detail in &option.details {
            facts.push(Fact {
                name: field(self.words, detail.name.word()),
                value: figures::detail(self.wording, &detail.value),
            });
        }
        if !option.accessories.is_empty() {
            let with: Vec<String> = option.accessories.iter().map(|with| with.name.value.clone()).collect();
            facts.push(self.worded("lines.with_it", self.words.series(&with)));
        }
        facts
    }

    /// The thing's own sizes.
    pub fn sizes(&self, option: &ProductOption) -> Vec<Fact> {
        let size = &option.size;
        let length = |name: &str, slot: &crate::book::Slot<crate::units::Length>| {
            slot.get().map(|length| self.worded(name, figures::length(self.wording, *length)))
        };
        let height = size.height.get().map(|height| self.worded("lines.height", figures::range(self.wording, *height)));
        let all = [
            length("lines.width", &size.width),
            height,
            length("lines.height_to_hinge", &size.height_to_hinge),
            length("lines.depth", &size.depth),
            length("lines.depth_with_door", &size.depth_with_door),
            length("lines.depth_with_handle", &size.depth_with_handle),
            length("lines.length", &size.length),
            length("lines.diameter", &size.diameter),
            length("lines.thickness", &size.thickness),
        ];
        all.into_iter().flatten().collect()
    }

    /// Maker, model and finish in a line.
    pub fn in_a_line(&self, option: &ProductOption) -> String {
        let maker = [option.maker.text(), option.model.text()].into_iter().filter(|word| !word.is_empty());
        let maker = maker.collect::<Vec<_>>().join(" ");
        let parts = [maker.as_str(), option.finish.text(), option.colour.text()];
        let mut told: Vec<&str> = Vec::new();
        for part in parts.into_iter().filter(|part| !part.is_empty()) {
            if !told.contains(&part) {
                told.push(part);
            }
        }
        told.join(", ")
    }

    /// What a selection is, in a line: the settled option, or how many there are to choose from.
    pub fn selection_line(&self, selection: &Selection) -> String {
        match selection.settled() {
            Some(option) => self.in_a_line(option),
            None => say!(self.words, "lines.to_choose", n = selection.options.len()),
        }
    }

    /// A value by the key of its name.
    pub fn worded(&self, key: &str, value: impl Into<Html>) -> Fact {
        fact(&say!(self.words, key), value)
    }

    /// On which side a door is hinged.
    pub fn hinge(&self, hinge: Hinge) -> String {
        say!(self.words, &format!("lines.hinged.{}", hinge.word()))
    }

    /// An option's quantity.
    pub fn quantity(&self, option: &ProductOption) -> Option<String> {
        option.quantity.get().map(ToString::to_string)
    }
}

/// What a page calls a field of the book, by its key there.
pub fn field(words: Words, key: &str) -> String {
    let named = format!("fields.{}", key.replace([' ', '-'], "_"));
    if words.has(&named) { say!(words, &named) } else { capital(key) }
}

/// A named value.
pub fn fact(name: &str, value: impl Into<Html>) -> Fact {
    Fact { name: name.into(), value: value.into() }
}

/// A key with a capital first letter.
pub fn capital(key: &str) -> String {
    let mut letters = key.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
