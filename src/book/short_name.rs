//! Short names, for pages and links: lower-case letters, figures and hyphens.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

use crate::source::yaml::Node;
use crate::source::{Span, Spanned, portable};
use crate::units::phrase;
use crate::vocabulary::{Code, Faults, FieldType, Fields, HeldAs, values};

/// A name as lower-case letters, figures and hyphens.
pub fn short_name_of(name: &str) -> String {
    let mut slug = String::new();
    for letter in name.chars().flat_map(char::to_lowercase) {
        match letter {
            'a'..='z' | '0'..='9' => slug.push(letter),
            _ if !slug.is_empty() && !slug.ends_with('-') => slug.push('-'),
            _ => {}
        }
    }
    slug.truncate(slug.trim_end_matches('-').len());
    if slug.is_empty() { "item".into() } else { slug }
}

/// The same for pages and folders, which are named in no record: letters with their accents left out, as one types
/// them on a keyboard without any. What is signed is known by [`short_name_of`].
pub fn page_name_of(name: &str) -> String {
    let plain: String = name.nfd().filter(|letter| !is_combining_mark(*letter)).flat_map(without_accent).collect();
    short_name_of(&plain)
}

/// Letters that are no other letter with a mark.
fn without_accent(letter: char) -> impl Iterator<Item = char> {
    let plain = match letter {
        'ß' => "ss",
        'æ' | 'Æ' => "ae",
        'œ' | 'Œ' => "oe",
        'ø' | 'Ø' => "o",
        'ł' | 'Ł' => "l",
        'đ' | 'Đ' | 'ð' | 'Ð' => "d",
        'þ' | 'Þ' => "th",
        'ı' => "i",
        _ => "",
    };
    plain.chars().chain(plain.is_empty().then_some(letter))
}

/// A short name of letters, figures and hyphens.
fn short_name(node: &Node, faults: &mut Faults) -> Option<String> {
    let text = values::scalar(node, &FieldType::Text, faults)?;
    if !text.is_empty() && text == short_name_of(text) {
        return Some(text.to_string());
    }
    let message = phrase!("`{text}` can't be used as a short name", text);
    faults.stop(
        Code::WRONG_TYPE,
        node.span,
        message,
        phrase!("use lower-case letters, figures and hyphens: `{}`", short_name_of(text)),
    );
    None
}

/// Tells an id that no file can be named by on some disk.
pub fn file_name(id: &str, at: Span, faults: &mut Faults) {
    if let Some(fault) = portable::fault(id) {
        let remedy = "write another id, of plain letters, figures and hyphens";
        faults.stop(Code::UNPORTABLE, at, phrase!("the id `{id}` {fault}", id, fault), remedy);
    }
}

/// A short name of its own; empty where none is written.
pub enum OwnName {}

impl HeldAs<OwnName> for Spanned<String> {
    const TYPE: FieldType = FieldType::Text;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        let none = Self::new(String::new(), fields.span);
        Some(fields.read(key, faults, short_name).spanned().cloned().unwrap_or(none))
    }
}

/// A short name that a page is stored under; empty where none is written.
pub enum PageName {}

impl HeldAs<PageName> for String {
    const TYPE: FieldType = FieldType::Text;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        let name = fields.read(key, faults, short_name);
        if let Some(name) = name.spanned() {
            file_name(name, name.span, faults);
        }
        Some(name.get_owned().unwrap_or_default())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_become_words_with_single_hyphens() {
        for (name, short) in
            [("Wall tile", "wall-tile"), ("  Tap & spray — 2 ", "tap-spray-2"), ("Küche", "k-che"), ("漢字", "item")]
        {
            assert_eq!(short_name_of(name), short);
        }
    }

    #[test]
    fn pages_are_named_without_accents_and_nothing_that_is_signed_is() {
        let rows = [
            ("frigorífico", "frigorifico"),
            ("Kühlnische", "kuhlnische"),
            ("Spüle", "spule"),
            ("Salón comedor", "salon-comedor"),
            ("Baño", "bano"),
            ("Weißes Regal", "weisses-regal"),
            ("Smørrebrød Øst", "smorrebrod-ost"),
            ("frigori\u{301}fico", "frigorifico"),
            ("漢字", "item"),
        ];
        for (name, page) in rows {
            assert_eq!(page_name_of(name), page);
        }
        assert_eq!(short_name_of("frigorífico"), "frigor-fico");
    }
}
