//! Reads the file of a language into its table.

use crate::source::yaml::{self, Node, Value};
use crate::source::{FileId, Files, Place, Span};

use super::list::{Before, Joins};
use super::plural::{FORMS, Rules};
use super::table::{At, FINDINGS, LanguageError, OF_ITSELF, Part, Sentence, Table};

/// Reads a language's file, one of those given. One that words `a part` of a language that is there already need
/// not say how that counts and joins.
pub fn read(tag: &str, files: &Files, id: FileId, a_part: bool) -> Result<Table, LanguageError> {
    let (file, text) = files.get(id).map_or(("", ""), |file| (&file.path, &file.text));
    let mut reader = Reader { files, file };
    let tree = yaml::parse(id, text).map_err(|error| reader.fault(error.span, error.kind.to_string()))?;
    if let Some((key, _)) = tree.repeated.first() {
        return Err(reader.fault(key.span, format!("`{}` stands twice in its group", key.value)));
    }
    let start = Span { file: id, start: 0, end: 0 };
    let root = tree.root.ok_or_else(|| reader.fault(start, "the file is empty".into()))?;
    let mut table = Table {
        tag: tag.to_owned(),
        file: file.to_owned(),
        sentences: std::collections::BTreeMap::new(),
        groups: std::collections::BTreeMap::new(),
        top: reader.at(root.span),
        plural: Rules::default(),
        joins: None,
        tree: json(&root),
    };
    // Findings are said by the program alone.
    table.tree.as_object_mut().and_then(|tree| tree.remove(FINDINGS));
    if !matches!(root.value, Value::Map(_)) {
        return Err(reader.fault(root.span, "no words stand here: write groups of keys".into()));
    }
    reader.take("", &root, &mut table)?;
    match root.at(OF_ITSELF) {
        Some(node) => reader.itself(node, &mut table, a_part)?,
        None if a_part => {}
        None => {
            return Err(reader.fault(root.span, format!("`{OF_ITSELF}` is missing: how the language counts and joins")));
        }
    }
    Ok(table)
}

struct Reader<'a> {
    files: &'a Files,
    file: &'a str,
}

impl Reader<'_> {
    fn fault(&self, span: Span, what: String) -> LanguageError {
        LanguageError { file: self.file.to_owned(), at: self.at(span), what }
    }

    fn at(&self, span: Span) -> At {
        let start = self.files.start(&Place::Text(span));
        At { span, line: start.line, column: start.column }
    }

    /// Every sentence below a node, by the keys that lead to it.
    fn take(&mut self, above: &str, node: &Node, table: &mut Table) -> Result<(), LanguageError> {
        let at = self.at(node.span);
        let of = |key: &str| if above.is_empty() { key.to_owned() } else { format!("{above}.{key}") };
        match &node.value {
            Value::Scalar { text, .. } => {
                let parts =
                    parts(text).ok_or_else(|| self.fault(node.span, format!("a brace of `{text}` is not closed")))?;
                table.sentences.insert(above.to_owned(), Sentence { forms: vec![("other".into(), parts)], at });
            }
            Value::List(items) => {
                table.groups.insert(above.to_owned(), at);
                items.iter().enumerate().try_for_each(|(nth, item)| self.take(&of(&nth.to_string()), item, table))?;
            }
            Value::Map(pairs) if is_plural(node) => {
                let mut forms = Vec::new();
                for (form, one) in pairs {
                    let Value::Scalar { text, .. } = &one.value else {
                        return Err(self.fault(one.span, format!("the plural form `{}` is one sentence", form.value)));
                    };
                    let parts = parts(text)
                        .ok_or_else(|| self.fault(one.span, format!("a brace of `{text}` is not closed")))?;
                    forms.push((form.value.clone(), parts));
                }
                table.sentences.insert(above.to_owned(), Sentence { forms, at });
            }
            Value::Map(pairs) => {
                table.groups.insert(above.to_owned(), at);
                pairs.iter().try_for_each(|(key, one)| self.take(&of(&key.value), one, table))?;
            }
        }
        Ok(())
    }

    /// How the language counts and joins.
    fn itself(&self, node: &Node, table: &mut Table, a_part: bool) -> Result<(), LanguageError> {
        if let Some(Value::Map(rules)) = node.at("plural").map(|plural| &plural.value) {
            for (form, rule) in rules {
                let text = texts(rule).into_iter().next().unwrap_or_default();
                if table.plural.add(&form.value, &text).is_none() {
                    let what = format!("`{}: {text}` is no plural rule as the CLDR writes it", form.value);
                    return Err(self.fault(form.span, what));
                }
            }
        }
        let list = node.at("list");
        if list.is_none() && a_part {
            return Ok(());
        }
        let text = |key: &str| {
            let found = list.and_then(|list| list.at(key)).and_then(|node| texts(node).into_iter().next());
            found.ok_or_else(|| self.fault(node.span, format!("`list: {{{key}: …}}` is missing")))
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
