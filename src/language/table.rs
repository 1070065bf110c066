//! A language's file as a table: each key with its sentence in parts, and how the language counts and joins.

use std::collections::BTreeMap;
use std::fmt;

use crate::source::yaml::{self, Node, Value};
use crate::source::{Files, Place, Span};
use crate::units::{Date, Money};

use super::list::{Before, Joins};
use super::plural::{FORMS, Rules};
use super::{Language, Say, say};

/// The hole for how many: by it a sentence takes its plural form.
pub const COUNT: &str = "n";

/// The group in which a language says how it counts, joins and writes days and amounts.
const OF_ITSELF: &str = "language";

/// The group that findings are told by, each by the English pattern of its sentence.
pub(super) const FINDINGS: &str = "findings";

/// What is wrong with the file of a language.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LanguageError {
    /// The file, inside the theme: `words/es.yaml`.
    pub file: String,
    /// The line, from 1.
    pub line: u32,
    /// What is wrong, and what is wanted.
    pub what: String,
}

impl fmt::Display for LanguageError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "`{}`, line {}: {}", self.file, self.line, self.what)
    }
}

impl std::error::Error for LanguageError {}

/// A part of a sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Part {
    /// Words.
    Words(String),
    /// A hole, by its name.
    Hole(String),
}

/// A sentence, or one for each plural form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Sentence {
    pub forms: Vec<(String, Vec<Part>)>,
    pub line: u32,
}

/// What a file says.
#[derive(Debug, Default)]
pub(super) struct Table {
    pub tag: String,
    pub file: String,
    pub sentences: BTreeMap<String, Sentence>,
    /// The line of each group.
    pub groups: BTreeMap<String, u32>,
    pub plural: Rules,
    joins: Option<Joins>,
    /// All that templates and scripts say.
    tree: serde_json::Value,
}

/// The words of a language. They are read once and kept as long as the program runs.
#[derive(Clone, Copy)]
pub struct Words(Option<&'static Table>);

impl Default for Words {
    fn default() -> Self {
        Language::default().words()
    }
}

impl PartialEq for Words {
    fn eq(&self, other: &Self) -> bool {
        self.tag() == other.tag()
    }
}

impl Eq for Words {}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.tag())
    }
}

impl Words {
    /// No words at all: each key stands for itself.
    pub(super) const NONE: Self = Self(None);

    pub(super) fn keep(table: Table) -> Self {
        Self(Some(Box::leak(Box::new(table))))
    }

    /// The language's tag.
    pub fn tag(self) -> &'static str {
        self.0.map_or("", |table| &table.tag)
    }

    /// Whether it is the language that the code is written in.
    pub fn is_first(self) -> bool {
        self.tag() == Language::default().tag()
    }

    /// All of them as data, for templates and scripts.
    pub fn tree(self) -> &'static serde_json::Value {
        self.0.map_or(&serde_json::Value::Null, |table| &table.tree)
    }

    /// Whether there is a sentence of this key.
    pub fn has(self, key: &str) -> bool {
        self.0.is_some_and(|table| table.sentences.contains_key(key))
    }

    /// Every key that there are words of.
    #[cfg(test)]
    pub fn keys(self) -> std::collections::BTreeSet<&'static str> {
        self.0.map(|table| table.sentences.keys().map(String::as_str).collect()).unwrap_or_default()
    }

    /// The parts of a key's sentence, in the plural form of a count; of a key that is not there, the key.
    pub fn parts(self, key: &str, count: Option<u64>) -> Vec<Part> {
        let of_key = || {
            let table = self.0?;
            let sentence = table.sentences.get(key)?;
            let form = count.map_or("other", |count| table.plural.form(count));
            let named = |name: &str| sentence.forms.iter().find(|(form, _)| form == name).map(|(_, parts)| parts);
            named(form).or_else(|| named("other")).cloned()
        };
        of_key().unwrap_or_else(|| vec![Part::Words(key.to_owned())])
    }

    /// A key's sentence with what stands in its holes; `say!` is the way to write it.
    pub fn fill(self, key: &str, values: &[(&str, &dyn Say)]) -> String {
        let count = values.iter().find(|(name, _)| *name == COUNT).and_then(|(_, value)| value.count());
        let part = |part: Part| match part {
            Part::Words(words) => words,
            Part::Hole(name) => {
                values.iter().find(|(known, _)| *known == name).map_or_else(String::new, |(_, value)| value.said(self))
            }
        };
        self.parts(key, count).into_iter().map(part).collect()
    }

    /// Several in a row: `a, b and c`.
    pub fn series<T: AsRef<str>>(self, parts: &[T]) -> String {
        let parts: Vec<String> = parts.iter().map(|part| part.as_ref().to_owned()).collect();
        let joints = self.joints(&parts);
        parts.iter().enumerate().fold(String::new(), |text, (at, part)| {
            let joint = at.checked_sub(1).and_then(|before| joints.get(before)).map_or("", String::as_str);
            text + joint + part
        })
    }

    /// The first of several in a row, and how many more there are: `a, b and 3 more`.
    pub fn series_of_most<T: AsRef<str>>(self, parts: &[T], most: usize) -> String {
        let named: Vec<&str> = parts.iter().take(most).map(AsRef::as_ref).collect();
        match parts.len().saturating_sub(most) {
            0 => self.series(&named),
            more => {
                let more = say!(self, "units.more", n = more);
                self.series(&named.into_iter().chain([more.as_str()]).collect::<Vec<_>>())
            }
        }
    }

    /// What stands before each of a row but the first.
    pub fn joints(self, parts: &[String]) -> Vec<String> {
        let joins = self.0.and_then(|table| table.joins.as_ref());
        joins.map_or_else(Vec::new, |joins| joins.joints(parts).into_iter().map(str::to_owned).collect())
    }

    /// A day: `16 Jan 2027`.
    pub fn day(self, day: Date) -> String {
        let month = say!(self, &format!("language.months.{}", day.month()));
        say!(self, "language.day", day = day.day().to_string(), month = month, year = day.year().to_string())
    }

    /// A day as a card shows it: its number in the month, and the month and year below it.
    pub fn day_apart(self, day: Date) -> (String, String) {
        let month = say!(self, &format!("language.months.{}", day.month()));
        (day.day().to_string(), say!(self, "language.month", month = month, year = day.year().to_string()))
    }

    /// A whole number of many digits as it is: `1200`.
    pub fn number(self, digits: &str) -> String {
        digits.to_owned()
    }

    /// A number with this language's decimal mark, from one with a point.
    pub fn decimal(self, number: &str) -> String {
        number.replace('.', &say!(self, "language.decimal"))
    }

    /// An amount with this language's marks: `$3,180.00`.
    pub fn amount(self, amount: Money) -> String {
        let (decimal, group) = (say!(self, "language.decimal"), say!(self, "language.thousands"));
        amount
            .to_string()
            .chars()
            .map(|letter| match letter {
                '.' => decimal.clone(),
                ',' => group.clone(),
                other => other.to_string(),
            })
            .collect()
    }
}

/// Reads a language's file.
pub(super) fn read(tag: &str, text: &str) -> Result<Table, LanguageError> {
    let file = format!("words/{tag}.yaml");
    let mut files = Files::default();
    let id = files.add(file.clone(), text.to_owned());
    let mut reader = Reader { files: &files, file: &file };
    let tree = yaml::parse(id, text).map_err(|error| reader.at(error.span, error.kind.to_string()))?;
    if let Some((key, _)) = tree.repeated.first() {
        return Err(reader.at(key.span, format!("`{}` stands twice in its group", key.value)));
    }
    let Some(root) = tree.root else { return Err(LanguageError { file, line: 1, what: "the file is empty".into() }) };
    let mut table = Table { tag: tag.to_owned(), file: file.clone(), tree: json(&root), ..Table::default() };
    // Findings are said by the program alone.
    table.tree.as_object_mut().and_then(|tree| tree.remove(FINDINGS));
    reader.take("", &root, &mut table)?;
    reader.itself(&root, &mut table)?;
    Ok(table)
}

struct Reader<'a> {
    files: &'a Files,
    file: &'a str,
}

impl Reader<'_> {
    fn at(&self, span: Span, what: String) -> LanguageError {
        LanguageError { file: self.file.to_owned(), line: self.line(span), what }
    }

    fn line(&self, span: Span) -> u32 {
        self.files.start(&Place::Text(span)).line
    }

    /// Every sentence below a node, by the keys that lead to it.
    fn take(&mut self, above: &str, node: &Node, table: &mut Table) -> Result<(), LanguageError> {
        let line = self.line(node.span);
        let of = |key: &str| if above.is_empty() { key.to_owned() } else { format!("{above}.{key}") };
        match &node.value {
            Value::Scalar { text, .. } => {
                let parts =
                    parts(text).ok_or_else(|| self.at(node.span, format!("a brace of `{text}` is not closed")))?;
                table.sentences.insert(above.to_owned(), Sentence { forms: vec![("other".into(), parts)], line });
            }
            Value::List(items) => {
                table.groups.insert(above.to_owned(), line);
                items.iter().enumerate().try_for_each(|(at, item)| self.take(&of(&at.to_string()), item, table))?;
            }
            Value::Map(pairs) if is_plural(node) => {
                let mut forms = Vec::new();
                for (form, one) in pairs {
                    let Value::Scalar { text, .. } = &one.value else {
                        return Err(self.at(one.span, format!("the plural form `{}` is one sentence", form.value)));
                    };
                    let parts =
                        parts(text).ok_or_else(|| self.at(one.span, format!("a brace of `{text}` is not closed")))?;
                    forms.push((form.value.clone(), parts));
                }
                table.sentences.insert(above.to_owned(), Sentence { forms, line });
            }
            Value::Map(pairs) => {
                table.groups.insert(above.to_owned(), line);
                pairs.iter().try_for_each(|(key, one)| self.take(&of(&key.value), one, table))?;
            }
        }
        Ok(())
    }

    /// How the language counts and joins.
    fn itself(&self, root: &Node, table: &mut Table) -> Result<(), LanguageError> {
        let Some(node) = root.at(OF_ITSELF) else {
            return Err(self.at(root.span, format!("`{OF_ITSELF}` is missing: how the language counts and joins")));
        };
        if let Some(Value::Map(rules)) = node.at("plural").map(|plural| &plural.value) {
            for (form, rule) in rules {
                let text = texts(rule).into_iter().next().unwrap_or_default();
                if table.plural.add(&form.value, &text).is_none() {
                    let what = format!("`{}: {text}` is no plural rule as the CLDR writes it", form.value);
                    return Err(self.at(form.span, what));
                }
            }
        }
        let list = node.at("list");
        let text = |key: &str| {
            let found = list.and_then(|list| list.at(key)).and_then(|node| texts(node).into_iter().next());
            found.ok_or_else(|| self.at(node.span, format!("`list: {{{key}: …}}` is missing")))
        };
        let before = list.and_then(|list| list.at("before")).into_iter().map(|before| Before {
            last: before.at("last").map(texts).unwrap_or_default().concat(),
            letters: before.at("letters").map(texts).unwrap_or_default(),
            but_not: before.at("but_not").map(texts).unwrap_or_default(),
        });
        table.joins = Some(Joins { between: text("between")?, last: text("last")?, before: before.collect() });
        Ok(())
    }
}

/// Whether a group is one sentence in its plural forms.
fn is_plural(node: &Node) -> bool {
    let Value::Map(pairs) = &node.value else { return false };
    node.at("other").is_some() && pairs.iter().all(|(key, _)| FORMS.contains(&key.value.as_str()))
}

/// The texts of a value or a list.
fn texts(node: &Node) -> Vec<String> {
    match &node.value {
        Value::Scalar { text, .. } => vec![text.clone()],
        Value::List(items) => items.iter().flat_map(texts).collect(),
        Value::Map(_) => vec![],
    }
}

/// A sentence in parts; none where a brace is not closed.
fn parts(text: &str) -> Option<Vec<Part>> {
    let mut parts = Vec::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        let (name, behind) = after.split_once('}')?;
        if !before.is_empty() {
            parts.push(Part::Words(before.to_owned()));
        }
        parts.push(Part::Hole(name.to_owned()));
        rest = behind;
    }
    if !rest.is_empty() || parts.is_empty() {
        parts.push(Part::Words(rest.to_owned()));
    }
    Some(parts)
}

/// A node as data.
fn json(node: &Node) -> serde_json::Value {
    match &node.value {
        Value::Scalar { text, .. } => serde_json::Value::String(text.clone()),
        Value::List(items) => items.iter().map(json).collect(),
        Value::Map(pairs) => {
            serde_json::Value::Object(pairs.iter().map(|(key, one)| (key.value.clone(), json(one))).collect())
        }
    }
}
