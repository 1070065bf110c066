//! Takes a group of keys apart: what is asked for, what is missing, what nobody knows.

use std::any::Any;

use crate::finding::{Code, Phrase, Remark, phrase};
use crate::source::yaml::{Node, Value};
use crate::source::{Span, Spanned};
use crate::units::{is_several, with_article};

use super::key_filter::KeyFilter;
use super::natural_keys::where_it_is_written;
use super::{Faults, Field, FieldType, Kind, Layers, Record, Slot, nearest, of_the_same_words, only_near};

mod cut;

/// So many keys are listed where none is near; more of them are no answer.
const MOST_LISTED: usize = 24;
/// Quotes that an editor sets by itself, and YAML takes for letters.
const CURLY: [char; 5] = ['“', '”', '‘', '’', '„'];

/// Reads one value; `None` when it is faulty, having said so.
pub type Parse<T> = fn(&Node, &mut Faults) -> Option<T>;

/// The keys of one group, by the records that name them.
pub struct Fields<'n> {
    record: &'static Record,
    /// Keys of this record are read elsewhere, and so not unknown.
    elsewhere: Option<&'static Record>,
    pairs: Vec<Pair<'n>>,
    keys: KeyFilter,
    /// The value of a key that was read before, as it is kept.
    read_before: Option<(&'static str, &'n dyn Any)>,
    /// Where the group is written.
    pub span: Span,
    /// What the book calls it, where its name is the designer's own.
    pub name: Option<Spanned<String>>,
    /// Every field that was asked for, written or not: checked against the vocabulary while we work on it.
    #[cfg(debug_assertions)]
    asked: Vec<&'static str>,
}

/// A key, its value, and whether anybody asked for it.
struct Pair<'n> {
    key: Spanned<&'n str>,
    node: &'n Node,
    asked: bool,
}

impl<'n> Fields<'n> {
    /// Takes a group apart; says so and gives `None` if it is no group.
    pub fn of(node: &'n Node, record: &'static Record, faults: &mut Faults) -> Option<Self> {
        let Value::Map(pairs) = &node.value else {
            faults.wrong_type(node, &FieldType::Record(record));
            return None;
        };
        Some(Self::from_pairs(pairs.iter().map(|(key, node)| (key, node)), record, node.span))
    }

    /// The same where a single value may stand for the whole group: it is the value of that key.
    pub fn of_short(node: &'n Node, record: &'static Record, key: &'static str, faults: &mut Faults) -> Option<Self> {
        let Value::Scalar { .. } = node.value else { return Self::of(node, record, faults) };
        let pair = Pair { key: Spanned::new(key, node.span), node, asked: false };
        Some(Self::of_pairs(vec![pair], record, node.span))
    }

    /// The same of keys that stand in several places.
    pub fn of_layers(layers: &'n Layers<'n>, record: &'static Record, span: Span) -> Self {
        Self::from_pairs(layers.iter(), record, span)
    }

    fn from_pairs(
        pairs: impl Iterator<Item = (&'n Spanned<String>, &'n Node)>,
        record: &'static Record,
        span: Span,
    ) -> Self {
        let of = |key: &'n Spanned<String>| Spanned::new(key.value.as_str(), key.span);
        Self::of_pairs(pairs.map(|(key, node)| Pair { key: of(key), node, asked: false }).collect(), record, span)
    }

    fn of_pairs(pairs: Vec<Pair<'n>>, record: &'static Record, span: Span) -> Self {
        let mut keys = KeyFilter::default();
        pairs.iter().for_each(|pair| keys.add(pair.key.value));
        Self {
            record,
            elsewhere: None,
            pairs,
            keys,
            read_before: None,
            span,
            name: None,
            #[cfg(debug_assertions)]
            asked: vec![],
        }
    }

    /// The same under a name of the designer's own.
    #[must_use]
    pub fn called(mut self, name: &Spanned<String>) -> Self {
        self.name = Some(name.clone());
        self
    }

    /// The same where the value of a key was read before, as it is kept.
    #[must_use]
    pub fn with_read(self, key: &'static str, value: &'n dyn Any) -> Self {
        Self { read_before: Some((key, value)), ..self }
    }

    /// What was read before of the value of a key.
    pub fn read_before<T: Clone + 'static>(&mut self, key: &'static str) -> Option<T> {
        let (_, value) = self.read_before.filter(|(read, _)| *read == key)?;
        self.node(key);
        value.downcast_ref().cloned()
    }

    /// Where among the pairs a key stands.
    fn position(&self, key: &str) -> Option<usize> {
        if !self.keys.may_hold(key) {
            return None;
        }
        self.pairs.iter().position(|pair| pair.key.value == key)
    }

    /// What somebody makes of them as they are written.
    pub fn tell<T>(&self, how: impl FnOnce(&Self) -> T) -> T {
        how(self)
    }

    /// Where the value of a key is written, if one is.
    pub fn place_of(&self, key: &str) -> Option<Span> {
        let pair = self.pairs.get(self.position(key)?)?;
        Some(pair.node.span).filter(|_| !pair.node.is_nothing())
    }

    /// Lets the keys of another record stand here too; they are read elsewhere.
    #[must_use]
    pub fn beside(mut self, record: &'static Record) -> Self {
        self.elsewhere = Some(record);
        self
    }

    /// The value of a key, if one is written.
    pub fn node(&mut self, key: &'static str) -> Option<&'n Node> {
        debug_assert!(self.field(key).is_some(), "`{key}` is not in the vocabulary of {}", self.record.name);
        #[cfg(debug_assertions)]
        self.asked.push(key);
        let at = self.position(key)?;
        let pair = self.pairs.get_mut(at)?;
        pair.asked = true;
        Some(pair.node).filter(|node| !node.is_nothing())
    }

    /// Reads the value of a key.
    pub fn read<T>(&mut self, key: &'static str, faults: &mut Faults, parse: Parse<T>) -> Slot<T> {
        match self.node(key) {
            None => Slot::Absent,
            // A part of what is meant, which `finish` tells.
            Some(_) if self.is_cut(key) => Slot::Invalid,
            Some(node) => {
                faults.key = key;
                match parse(node, faults) {
                    Some(value) => Slot::Given(Spanned::new(value, node.span)),
                    None => Slot::Invalid,
                }
            }
        }
    }

    /// Reads a list, leaving out the items that are faulty.
    pub fn list<T>(&mut self, key: &'static str, faults: &mut Faults, parse: Parse<T>) -> Vec<T> {
        let Some(node) = self.node(key) else { return vec![] };
        match &node.value {
            Value::List(items) => items.iter().filter_map(|item| parse(item, faults)).collect(),
            _ => {
                if let Some(field) = self.field(key) {
                    faults.wrong_type(node, &field.shape);
                }
                vec![]
            }
        }
    }

    /// The pairs of a field whose names are the designer's own.
    pub fn named(&mut self, key: &'static str, faults: &mut Faults) -> &'n [(Spanned<String>, Node)] {
        let Some(node) = self.node(key) else { return &[] };
        match &node.value {
            Value::Map(pairs) => pairs,
            _ => {
                if let Some(field) = self.field(key) {
                    faults.wrong_type(node, &field.shape);
                }
                &[]
            }
        }
    }

    fn field(&self, key: &str) -> Option<&'static Field> {
        self.record.field(key)
    }

    /// Ends the reading: tells keys that nobody knows, and required ones that are missing.
    pub fn finish(self, faults: &mut Faults) {
        let rests = self.tell_cuts(faults);
        for (at, Pair { key, .. }) in self.pairs.iter().enumerate().filter(|(_, pair)| !pair.asked) {
            // Of a key that stands twice the first was asked for; the second has been told.
            if !self.knows(key.value) && !rests.contains(&at) {
                self.unknown(key, faults);
            }
        }
        // Every field of the vocabulary is read: a table and a reader that differ show at once.
        #[cfg(debug_assertions)]
        for field in self.record.fields {
            assert!(self.asked.contains(&field.key), "nothing reads `{}` of {}", field.key, self.record.name);
        }
        let is_written = |key| self.pairs.iter().any(|pair| pair.key.value == key && !pair.node.is_nothing());
        for field in self.record.fields.iter().filter(|field| field.required) {
            if !is_written(field.key) {
                self.missing(field, faults);
            }
        }
    }

    fn knows(&self, key: &str) -> bool {
        self.field(key).is_some() || self.elsewhere.is_some_and(|record| record.field(key).is_some())
    }

    fn unknown(&self, name: &Spanned<&str>, faults: &mut Faults) {
        let records = std::iter::once(self.record).chain(self.elsewhere);
        let known = records.flat_map(|record| record.fields).map(|field| field.key);
        let curly = name.value.trim_start_matches(CURLY).trim_end_matches(CURLY);
        let same_words = of_the_same_words(curly, known.clone());
        let in_a_group = self.groups_with(curly);
        let near = || nearest(curly, known.clone()).filter(|near| *near == curly || in_a_group.is_none());
        let natural = if same_words.is_none() { self.natural(curly) } else { None };
        if let Some(remedy) = natural {
            let remark = Remark::stop(name.span, phrase!("unknown key `{}`", name.value)).remedy(remedy);
            faults.add(remark.of(Code::UNKNOWN_KEY));
            return;
        }
        let remedy = match same_words.or_else(near) {
            Some(near) if curly != name.value => {
                phrase!("write `{near}` without quotes: curly ones are letters of the key", near)
            }
            Some(near) => phrase!("did you mean `{near}`?", near),
            None => self.where_it_goes(in_a_group.map(|group| (group, curly))),
        };
        // Where the key that is near stands there too, nobody knows what the other was to be.
        // What only joins words may have been meant to say more.
        let certain = same_words.filter(|word| word.contains(' '));
        let meant = certain
            .or_else(|| only_near(curly, known))
            .filter(|near| self.pairs.iter().all(|pair| pair.key.value != *near));
        let remark = Remark::stop(name.span, phrase!("unknown key `{}`", name.value)).remedy(remedy).mended_by(meant);
        faults.add(remark.of(Code::UNKNOWN_KEY));
    }

    /// The only group of the record that knows a key, by its own.
    fn groups_with(&self, key: &str) -> Option<&'static str> {
        let records = std::iter::once(self.record).chain(self.elsewhere);
        let fields = records.flat_map(|record| record.fields);
        let is_a_group = |shape: &FieldType| matches!(shape, FieldType::Record(_) | FieldType::Either(..));
        let knows = |field: &&Field| {
            is_a_group(&field.shape) && field.shape.records().iter().any(|record| record.field(key).is_some())
        };
        let mut groups = fields.filter(knows);
        groups.next().filter(|_| groups.next().is_none()).map(|field| field.key)
    }

    /// Where what a key of one's first thought tells is written.
    fn natural(&self, key: &str) -> Option<Phrase> {
        let records = std::iter::once(self.record).chain(self.elsewhere);
        records.into_iter().find_map(|record| where_it_is_written(key, record, self.kind()))
    }

    /// The kind that stands among the keys.
    fn kind(&self) -> Option<Kind> {
        let pair = self.pairs.get(self.position("kind")?)?;
        match &pair.node.value {
            Value::Scalar { text, .. } => Kind::named(text.trim()),
            _ => None,
        }
    }

    /// What to do about a key that is near no other: the group that knows it, the kind whose keys are listed, or the keys.
    fn where_it_goes(&self, in_a_group: Option<(&'static str, &str)>) -> Phrase {
        if let Some((group, key)) = in_a_group {
            return phrase!("write it under `{group}`: `{group}: {{{key}: …}}`", group, group, key);
        }
        if let Some(kind) = self.kind() {
            return phrase!("`bookmatch explain {}` lists what it may have", kind.name());
        }
        let records = std::iter::once(self.record).chain(self.elsewhere);
        let known = records.flat_map(|record| record.fields).map(|field| field.key);
        if known.clone().nth(MOST_LISTED).is_some() {
            return phrase!(
                "`bookmatch explain {}` lists the keys of {}",
                self.record.name,
                with_article(self.record.name)
            );
        }
        let knows = if is_several(self.record.name) { "know" } else { "knows" };
        phrase!("{} {knows}: {}", with_article(self.record.name), knows, Phrase::joined(known, ", "))
    }

    fn missing(&self, field: &Field, faults: &mut Faults) {
        // A long group is pointed at by its first line.
        let at = self.pairs.first().map_or(self.span, |pair| pair.key.span);
        let lacks = if is_several(self.record.name) { "lack their" } else { "lacks its" };
        let message = phrase!("{} {lacks} `{}`", with_article(self.record.name), lacks, field.key);
        let remedy = phrase!("add `{}: …`{}: {}", field.key, field.shape.choice(), Phrase::from(field.about));
        faults.stop(Code::FIELD, at, message, remedy);
    }
}
