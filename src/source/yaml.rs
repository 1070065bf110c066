//! YAML text to a tree of spanned nodes, with limits against hostile input.
//!
//! Scalars stay text: money and lengths never pass through a float.

use std::collections::HashMap;

use granit_parser::{Event, Parser, ScalarStyle, ScanError};

use super::span::{FileId, Span, Spanned};
use crate::units::{Fault, Phrase, Wrote, phrase, shown};

mod open;

pub use open::take_open;

/// Most values in one file, aliases counted as often as they are used.
pub const MAX_NODES: usize = 400_000;
/// Deepest nesting.
pub const MAX_DEPTH: usize = 64;
/// Most bytes of text in one file, those of aliases counted as often as they are used.
pub const MAX_BYTES: usize = 16 * 1024 * 1024;
/// Most anchors in one file.
pub const MAX_ANCHORS: usize = 1_000;

/// A value and where it is written.
#[derive(Clone, Debug)]
pub struct Node {
    /// What is written.
    pub value: Value,
    /// Where.
    pub span: Span,
}

/// What is written.
#[derive(Clone, Debug)]
pub enum Value {
    /// A single value, as text; `plain` when it stands without quotes.
    Scalar {
        /// The text.
        text: String,
        /// Whether it stands without quotes.
        plain: bool,
    },
    /// A list.
    List(Vec<Node>),
    /// Keys and values, in the order written.
    Map(Vec<(Spanned<String>, Node)>),
}

impl Node {
    /// What the value is, in a word a designer knows.
    pub fn what(&self) -> &'static str {
        match &self.value {
            Value::Scalar { .. } if self.is_nothing() => "nothing",
            Value::Scalar { .. } => "a single value",
            Value::List(_) => "a list",
            Value::Map(_) => "a group of keys",
        }
    }

    /// Whether nothing is written: an empty plain value.
    pub fn is_nothing(&self) -> bool {
        matches!(&self.value, Value::Scalar { text, plain: true } if text.is_empty() || text == "~" || text == "null")
    }

    /// Whether it is a list or a group that holds nothing.
    pub fn is_empty(&self) -> bool {
        match &self.value {
            Value::Scalar { .. } => false,
            Value::List(items) => items.is_empty(),
            Value::Map(pairs) => pairs.is_empty(),
        }
    }

    /// The value of a key, where something is written there.
    pub fn at(&self, key: &str) -> Option<&Node> {
        let Value::Map(pairs) = &self.value else { return None };
        pairs.iter().find(|(name, _)| name.value == key).map(|(_, node)| node).filter(|node| !node.is_nothing())
    }

    /// How many values it holds, and how many bytes of text.
    fn size(&self) -> (usize, usize) {
        let add = |all: (usize, usize), more: (usize, usize)| (all.0 + more.0, all.1 + more.1);
        match &self.value {
            Value::Scalar { text, .. } => (1, text.len()),
            Value::List(items) => items.iter().map(Node::size).fold((1, 0), add),
            Value::Map(pairs) => {
                pairs.iter().map(|(key, node)| add((1, key.value.len()), node.size())).fold((1, 0), add)
            }
        }
    }
}

/// Why a file can't be made into a tree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct YamlError {
    /// What is wrong.
    pub kind: YamlErrorKind,
    /// Where.
    pub span: Span,
}

/// What is wrong with a file's YAML.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum YamlErrorKind {
    /// Not YAML: the parser's words.
    Syntax(String),
    /// A tab where spaces are needed.
    Tab,
    /// A second document in the file.
    SecondDocument,
    /// A key that is not a single value.
    KeyNotText,
    /// An anchor that holds itself.
    AliasOfItself,
    /// Too many values, aliases counted as often as used.
    TooManyNodes,
    /// Too much text, aliases counted as often as used.
    TooMuchText,
    /// Nested too deeply.
    TooDeep,
    /// Too many anchors.
    TooManyAnchors,
}

impl Fault for YamlErrorKind {
    fn message(&self) -> Phrase {
        match self {
            Self::Syntax(words) => phrase!("this is not YAML: {words}", Wrote(words)),
            Self::Tab => phrase!("a tab stands where YAML needs spaces"),
            Self::SecondDocument => phrase!("a second document begins in the same file"),
            Self::KeyNotText => phrase!("a key must be a word or a few words"),
            Self::AliasOfItself => phrase!("this alias stands inside what it repeats"),
            Self::TooManyNodes => {
                phrase!("the file holds more than {MAX_NODES} values, aliases counted as used", MAX_NODES)
            }
            Self::TooMuchText => {
                phrase!("the file holds more than {} MB of text, aliases counted as used", MAX_BYTES / 1024 / 1024)
            }
            Self::TooDeep => phrase!("values are nested more than {MAX_DEPTH} deep", MAX_DEPTH),
            Self::TooManyAnchors => phrase!("the file has more than {MAX_ANCHORS} anchors", MAX_ANCHORS),
        }
    }

    fn remedy(&self) -> Phrase {
        let remedy = match self {
            Self::Tab => "use spaces, two for each step in",
            Self::SecondDocument => "write one record, or a list of records, and no `---` between",
            Self::KeyNotText => "write the key as plain words before the colon",
            Self::Syntax(_) => "look at this line and the one before: a colon, a quote or an indent is off",
            Self::TooMuchText => "say a long text once, and split the file: one selection a file is the usual way",
            Self::TooDeep => "a book needs no such nesting: write it flatter",
            Self::AliasOfItself | Self::TooManyNodes | Self::TooManyAnchors => {
                "write the values out instead of repeating them by alias"
            }
        };
        remedy.into()
    }
}

shown!(YamlErrorKind);

/// A tree, and the keys that stand twice in one group (the first counts).
#[derive(Debug)]
pub struct Tree {
    /// The document; none when the file is empty.
    pub root: Option<Node>,
    /// Every key met again in its group: the key's place, and the first one's.
    pub repeated: Vec<(Spanned<String>, Span)>,
}

/// Reads the text of one file.
///
/// # Errors
/// The first fault after which the rest of the file can't be understood.
pub fn parse(file: FileId, text: &str) -> Result<Tree, YamlError> {
    let options = granit_parser::options! { emit_comments: false };
    let mut builder = Builder { file, text, ..Builder::new(file) };
    for event in Parser::new_from_str_with_options(text, options) {
        let (event, at) = event.map_err(|error| builder.syntax(&error))?;
        let span = builder.span(&at);
        builder.take(event, span)?;
    }
    Ok(Tree { root: builder.root, repeated: builder.repeated })
}

/// A list or a group that is still open.
struct Open {
    span: Span,
    anchor: usize,
    items: Items,
}

enum Items {
    List(Vec<Node>),
    Map { pairs: Vec<(Spanned<String>, Node)>, seen: HashMap<String, Span>, key: Option<Spanned<String>> },
}

struct Builder<'t> {
    file: FileId,
    text: &'t str,
    open: Vec<Open>,
    anchors: HashMap<usize, Option<Node>>,
    nodes: usize,
    bytes: usize,
    root: Option<Node>,
    documents: usize,
    repeated: Vec<(Spanned<String>, Span)>,
}

impl<'t> Builder<'t> {
    fn new(file: FileId) -> Self {
        Self {
            file,
            text: "",
            open: vec![],
            anchors: HashMap::new(),
            nodes: 0,
            bytes: 0,
            root: None,
            documents: 0,
            repeated: vec![],
        }
    }

    fn span(&self, at: &granit_parser::Span) -> Span {
        let range = at.byte_range().unwrap_or(0..0);
        let written = self.text.get(range.clone()).unwrap_or("");
        // Plain values reach to the next token: leave the blanks out.
        let end = range.start + written.trim_end().len();
        Span { file: self.file, start: range.start as u32, end: end.max(range.start) as u32 }
    }

    fn syntax(&self, error: &ScanError) -> YamlError {
        let at = error.marker().byte_offset().unwrap_or(0).min(self.text.len());
        let (before, after) = self.text.split_at_checked(at).unwrap_or((self.text, ""));
        let line_start = before.rfind('\n').map_or(0, |found| found + 1);
        let line_end = after.find('\n').map_or(self.text.len(), |found| before.len() + found);
        if let Some(tab) = self.tab_from(line_start) {
            let start = tab as u32;
            return YamlError { kind: YamlErrorKind::Tab, span: Span { file: self.file, start, end: start + 1 } };
        }
        let line = self.text.get(line_start..line_end).unwrap_or_default();
        let start = at.min(line_start + line.trim_end().len()) as u32;
        let end = (line_start + line.trim_end().len()).max(start as usize) as u32;
        YamlError { kind: YamlErrorKind::Syntax(error.kind().to_string()), span: Span { file: self.file, start, end } }
    }

    /// The first tab that a line is set in by, in the line that begins there or the next that is not empty: the
    /// parser stops at the value before such a line.
    fn tab_from(&self, line_start: usize) -> Option<usize> {
        let mut start = line_start;
        let lines = self.text.get(line_start..)?.split_inclusive('\n').map(|line| {
            let at = start;
            start += line.len();
            (at, line)
        });
        lines.filter(|(_, line)| !line.trim().is_empty()).take(2).find_map(|(at, line)| {
            let indent = line.strip_suffix(line.trim_start()).unwrap_or_default();
            indent.find('\t').map(|tab| at + tab)
        })
    }

    fn take(&mut self, event: Event<'_>, span: Span) -> Result<(), YamlError> {
        match event {
            Event::DocumentStart(..) => {
                self.documents += 1;
                if self.documents > 1 {
                    return Err(YamlError { kind: YamlErrorKind::SecondDocument, span });
                }
            }
            Event::Scalar(text, style, anchor, _) => {
                let plain = style == ScalarStyle::Plain;
                self.finish(Node { value: Value::Scalar { text: text.into_owned(), plain }, span }, anchor)?;
            }
            Event::Alias(anchor) => {
                let node = self.repeat(anchor, span)?;
                self.place(node)?;
            }
            Event::SequenceStart(_, anchor, _) => self.start(Items::List(vec![]), anchor, span)?,
            Event::MappingStart(_, anchor, _) => {
                self.start(Items::Map { pairs: vec![], seen: HashMap::new(), key: None }, anchor, span)?;
            }
            Event::SequenceEnd | Event::MappingEnd => self.end(span)?,
            _ => {}
        }
        Ok(())
    }

    fn start(&mut self, items: Items, anchor: usize, span: Span) -> Result<(), YamlError> {
        if self.open.len() >= MAX_DEPTH {
            return Err(YamlError { kind: YamlErrorKind::TooDeep, span });
        }
        self.keep(anchor, None, span)?;
        self.open.push(Open { span, anchor, items });
        Ok(())
    }

    fn end(&mut self, span: Span) -> Result<(), YamlError> {
        let Some(open) = self.open.pop() else { return Ok(()) };
        let value = match open.items {
            Items::List(items) => Value::List(items),
            Items::Map { pairs, .. } => Value::Map(pairs),
        };
        let last = match &value {
            Value::List(items) => items.last().map(|node| node.span.end),
            Value::Map(pairs) => pairs.last().map(|(key, node)| node.span.end.max(key.span.end)),
            Value::Scalar { .. } => None,
        };
        let flow = self.text.as_bytes().get(open.span.start as usize).is_some_and(|byte| b"[{".contains(byte));
        let end = if flow { span.end } else { last.unwrap_or(open.span.end) };
        let span = Span { end: end.max(open.span.start), ..open.span };
        self.finish(Node { value, span }, open.anchor)
    }

    /// A finished node: kept under its anchor, and set in its place.
    fn finish(&mut self, node: Node, anchor: usize) -> Result<(), YamlError> {
        self.nodes += 1;
        if let Value::Scalar { text, .. } = &node.value {
            self.bytes += text.len();
        }
        self.within_budget(node.span)?;
        if anchor != 0 {
            // What an anchor keeps is a copy, and anchors may stand within anchors.
            self.bytes += node.size().1;
            self.within_budget(node.span)?;
            self.keep(anchor, Some(node.clone()), node.span)?;
        }
        self.place(node)
    }

    fn keep(&mut self, anchor: usize, node: Option<Node>, span: Span) -> Result<(), YamlError> {
        if anchor != 0 {
            self.anchors.insert(anchor, node);
            if self.anchors.len() > MAX_ANCHORS {
                return Err(YamlError { kind: YamlErrorKind::TooManyAnchors, span });
            }
        }
        Ok(())
    }

    fn repeat(&mut self, anchor: usize, span: Span) -> Result<Node, YamlError> {
        let Some(Some(node)) = self.anchors.get(&anchor) else {
            return Err(YamlError { kind: YamlErrorKind::AliasOfItself, span });
        };
        // Counted before it is copied, so that a bomb is refused before it grows.
        let (nodes, bytes) = node.size();
        self.nodes += nodes;
        self.bytes += bytes;
        self.within_budget(span)?;
        match self.anchors.get(&anchor) {
            Some(Some(node)) => Ok(node.clone()),
            _ => Err(YamlError { kind: YamlErrorKind::AliasOfItself, span }),
        }
    }

    fn within_budget(&self, span: Span) -> Result<(), YamlError> {
        if self.nodes > MAX_NODES {
            return Err(YamlError { kind: YamlErrorKind::TooManyNodes, span });
        }
        if self.bytes > MAX_BYTES {
            return Err(YamlError { kind: YamlErrorKind::TooMuchText, span });
        }
        Ok(())
    }

    /// Sets a node where it belongs: as a key, a value, an item, or the root.
    fn place(&mut self, node: Node) -> Result<(), YamlError> {
        let Some(open) = self.open.last_mut() else {
            self.root = Some(node).filter(|node| !node.is_nothing());
            return Ok(());
        };
        match &mut open.items {
            Items::List(items) => items.push(node),
            Items::Map { pairs, seen, key } => match key.take() {
                None => match node.value {
                    Value::Scalar { text, .. } => *key = Some(Spanned::new(text, node.span)),
                    _ => return Err(YamlError { kind: YamlErrorKind::KeyNotText, span: node.span }),
                },
                Some(key) => match seen.get(&key.value) {
                    Some(first) => self.repeated.push((key, *first)),
                    None => {
                        seen.insert(key.value.clone(), key.span);
                        pairs.push((key, node));
                    }
                },
            },
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests;
