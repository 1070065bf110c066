//! The findings by what they are about, sorted once, so that no page looks through those of the others.

use std::collections::BTreeMap;

use crate::finding::{Finding, Id, Phrase};
use crate::language::{Words, say};
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines::capital;
use crate::vocabulary::Hazard;

/// What was found, as a sentence on a page; where the language has no words for it, in English, which is
/// marked as such.
pub fn sentence(words: Words, message: &Phrase) -> Html {
    let told = |text: &str| Html::text(&format!("{}.", capital(text)));
    let english = || {
        Html::trusted("<span lang=\"en\">").then(told(&message.printed_bare(["", ""]))).then(Html::trusted("</span>"))
    };
    words.phrase(message).map_or_else(|_| english(), |text| told(&text))
}

/// Where a figure comes from, in the reader's language as far as that has words for it.
pub fn source(words: Words, source: &str) -> Html {
    let is_worded = words.is_first() || !source.split_whitespace().any(is_a_word);
    if is_worded {
        return Html::text(source);
    }
    let english = || Html::trusted("<span lang=\"en\">").then(Html::text(source)).then(Html::trusted("</span>"));
    words.bare(source).map_or_else(english, |text| Html::text(&text))
}

/// Whether it is a word of a language, and no number or name of a code.
fn is_a_word(part: &str) -> bool {
    part.chars().any(char::is_lowercase) && !part.chars().any(|letter| letter.is_ascii_digit())
}

/// Something that can hurt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hurts<'a> {
    /// As the maker's sheet says it.
    AsItsMakerSays(&'a str),
    /// By what the thing is, needs, or was found to be.
    By(Hazard),
}

impl Hurts<'_> {
    /// In full words.
    pub fn in_full(self, words: Words) -> Html {
        match self {
            Self::AsItsMakerSays(caution) => Html::text(caution),
            Self::By(hazard) => caution(words, hazard),
        }
    }
}

/// What can hurt, each once: by its name, for a line, and in full words.
pub fn in_short_and_in_full<'a>(words: Words, all: impl Iterator<Item = Hurts<'a>>) -> (Vec<String>, Vec<Html>) {
    let (mut names, mut full): (Vec<String>, Vec<Html>) = (vec![], vec![]);
    for one in all {
        let name = match one {
            Hurts::By(by) => hazard(words, by),
            Hurts::AsItsMakerSays(_) => say!(words, "trades.by_its_maker"),
        };
        let said = one.in_full(words);
        if !names.contains(&name) {
            names.push(name);
        }
        if !full.contains(&said) {
            full.push(said);
        }
    }
    (names, full)
}

/// A caution on a page.
pub fn caution(words: Words, hazard: Hazard) -> Html {
    let (full, _) = keys(hazard);
    show!(words, full)
}

/// What a line calls a hazard whose caution stands elsewhere.
pub fn hazard(words: Words, hazard: Hazard) -> String {
    let (_, name) = keys(hazard);
    say!(words, name)
}

/// The keys of its caution and of its name.
const fn keys(hazard: Hazard) -> (&'static str, &'static str) {
    match hazard {
        Hazard::Gas => ("cautions.gas", "hazards.gas"),
        Hazard::Power => ("cautions.power", "hazards.power"),
        Hazard::Heat => ("cautions.heat", "hazards.heat"),
        Hazard::Air => ("cautions.air", "hazards.air"),
        Hazard::Weight => ("cautions.weight", "hazards.weight"),
        Hazard::Tipping => ("cautions.tipping", "hazards.tipping"),
        Hazard::Fall => ("cautions.fall", "hazards.fall"),
        Hazard::Cords => ("cautions.cords", "hazards.cords"),
        Hazard::Glass => ("cautions.glass", "hazards.glass"),
        Hazard::Stone => ("cautions.stone", "hazards.stone"),
        Hazard::Dust => ("cautions.dust", "hazards.dust"),
        Hazard::Water => ("cautions.water", "hazards.water"),
        Hazard::Overhang => ("cautions.overhang", "hazards.overhang"),
    }
}

/// The findings of a book.
#[derive(Debug, Default)]
pub struct Found<'a> {
    all: &'a [Finding],
    /// The numbers of those of each room, or of none.
    rooms: BTreeMap<Option<&'a str>, Vec<usize>>,
    /// The numbers of those about what is written at a place.
    about: BTreeMap<Id, Vec<usize>>,
}

impl<'a> Found<'a> {
    /// Sorts all that was found.
    pub fn of(all: &'a [Finding]) -> Self {
        let mut found = Self { all, ..Self::default() };
        for (number, finding) in all.iter().enumerate() {
            found.rooms.entry(finding.room.as_deref()).or_default().push(number);
            for about in finding.subject.id().into_iter().chain(finding.others.iter().copied()) {
                found.about.entry(about).or_default().push(number);
            }
        }
        found
    }

    /// Those of a room, by its folder, or of none, in the order in which they are told.
    pub fn of_room(&self, room: Option<&str>) -> Vec<&'a Finding> {
        self.rooms.get(&room).map_or_else(Vec::new, |numbers| self.told(numbers))
    }

    /// Those of a room about one of a few things, by where their names are written.
    pub fn about(&self, room: &str, things: &[Id]) -> Vec<&'a Finding> {
        let mut numbers: Vec<usize> =
            things.iter().filter_map(|thing| self.about.get(thing)).flatten().copied().collect();
        numbers.sort_unstable();
        numbers.dedup();
        let mut told = self.told(&numbers);
        told.retain(|finding| finding.room.as_deref() == Some(room));
        told
    }

    fn told(&self, numbers: &[usize]) -> Vec<&'a Finding> {
        numbers.iter().filter_map(|number| self.all.get(*number)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::finding::{Code, Remark};
    use crate::language::Language;
    use crate::source::Place;

    #[test]
    fn findings_are_told_in_their_order_and_each_once() {
        let of = |room: Option<&str>, message: &'static str| {
            Remark::stop(Place::Path("a".into()), message).in_room(room.map(Into::into)).of(Code::PHOTO)
        };
        let all = [of(Some("bath"), "1"), of(None, "2"), of(Some("bath"), "3")];
        let found = Found::of(&all);
        let told = |room| found.of_room(room).into_iter().map(|finding| finding.message.text()).collect::<Vec<_>>();
        assert_eq!((told(Some("bath")), told(None), told(Some("hall"))), (vec!["1", "3"], vec!["2"], vec![]));
    }

    #[test]
    fn a_caution_on_an_english_page_is_that_of_the_review_and_a_spanish_one_is_spanish() {
        let spanish = Language::named("es").unwrap().words();
        for hazard in [Hazard::Gas, Hazard::Power, Hazard::Heat, Hazard::Tipping, Hazard::Cords, Hazard::Water] {
            assert_eq!(caution(Words::default(), hazard).plain(), hazard.caution());
            assert_ne!(caution(spanish, hazard).plain(), hazard.caution());
        }
    }
}
