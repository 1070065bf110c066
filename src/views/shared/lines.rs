//! The lines that describe an option, worded once for pages, tables and sheets.

use crate::book::{ProductOption, Selection};
use crate::units::series;
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::html::Html;
use crate::views::shared::sheet::Fact;
use crate::vocabulary::Words;

/// Labels of the facts that only some kinds have, where the key itself does not read well.
const LABELS: [(&str, &str); 3] =
    [("kelvin", "Colour of light, K"), ("drop", "Drop from ceiling"), ("canopy", "Canopy")];

impl PageBuilder<'_> {
    /// What the client is told of an option, from finish to the kind's own facts.
    pub fn description(&self, option: &ProductOption) -> Vec<Fact> {
        let mut facts = Vec::new();
        let words = [
            ("Maker", &option.maker),
            ("Model", &option.model),
            ("Finish", &option.finish),
            ("Colour", &option.colour),
        ];
        facts.extend(words.into_iter().filter_map(|(name, slot)| Some(fact(name, Html::text(slot.get()?)))));
        facts.extend(option.hinge.get().map(|hinge| fact("Hinge", Html::text(hinge.word()))));
        facts.extend(self.sizes(option));
        facts.extend(self.more(option));
        facts
    }

    /// The kind's own facts, and what is ordered with it.
    pub fn more(&self, option: &ProductOption) -> Vec<Fact> {
        let mut facts = Vec::new();
        for detail in &option.details {
            let label = LABELS.iter().find(|(key, _)| *key == detail.key).map(|(_, label)| (*label).to_string());
            facts.push(Fact {
                name: label.unwrap_or_else(|| capital(detail.key)),
                value: figures::detail(self.wording, &detail.value),
            });
        }
        if !option.accessories.is_empty() {
            let with: Vec<String> = option.accessories.iter().map(|with| with.name.value.clone()).collect();
            facts.push(fact("With it", Html::text(&series(&with))));
        }
        facts
    }

    /// The thing's own sizes.
    pub fn sizes(&self, option: &ProductOption) -> Vec<Fact> {
        let size = &option.size;
        let length = |name: &str, slot: &crate::book::Slot<crate::units::Length>| {
            slot.get().map(|length| fact(name, figures::length(self.wording, *length)))
        };
        let height = size.height.get().map(|height| fact("Height", figures::range(self.wording, *height)));
        let all = [
            length("Width", &size.width),
            height,
            length("Height to hinge", &size.height_to_hinge),
            length("Depth", &size.depth),
            length("Depth with door", &size.depth_with_door),
            length("Depth with handle", &size.depth_with_handle),
            length("Length", &size.length),
            length("Diameter", &size.diameter),
            length("Thickness", &size.thickness),
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
            None => figures::count(selection.options.len(), "option", "options") + " to choose from",
        }
    }

    /// An option's quantity.
    pub fn quantity(&self, option: &ProductOption) -> Option<String> {
        option.quantity.get().map(ToString::to_string)
    }
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
