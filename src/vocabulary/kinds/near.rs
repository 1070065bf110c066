//! The kinds that may be meant by a name that is none's.

use crate::finding::{Phrase, phrase};

use super::Kind;
use crate::vocabulary::nearest;

/// The kinds that share a word with what was written, or a word that is near to one of its words.
pub fn near_kinds(name: &str) -> Phrase {
    let listed = "`bookmatch explain kinds` lists them all; `item` is for what has no kind of its own";
    if let Some(near) = nearest(name, Kind::ALL.iter().flat_map(|kind| kind.words())) {
        return phrase!("did you mean `{near}`?", near);
    }
    let written: Vec<&str> = name.split([' ', '-', '_']).filter(|word| word.chars().count() > 2).collect();
    let shares = |kind: &&Kind| {
        let words = kind.words().flat_map(|word| word.split([' ', '-']));
        words.clone().any(|word| word.chars().count() > 2 && written.iter().any(|own| is_same_word(own, word)))
    };
    let near: Vec<&str> = Kind::ALL.iter().filter(shares).map(|kind| kind.name()).take(6).collect();
    match near.is_empty() {
        true => listed.into(),
        false => {
            let named = near.into_iter().map(|name| phrase!("`{name}`", name)).collect::<Vec<_>>();
            phrase!("did you mean {}? {listed}", Phrase::joined(named, ", "), listed)
        }
    }
}

/// Whether two words are one: but for case, an `s` at the end, or a slip of the pen.
fn is_same_word(one: &str, other: &str) -> bool {
    let plain = |word: &str| word.to_lowercase().trim_end_matches('s').to_owned();
    let (one, other) = (plain(one), plain(other));
    one == other || one.chars().count() > 4 && strsim::damerau_levenshtein(&one, &other) <= 1
}
