//! The same of every field of the records that sheets are made from: each is written by its example, and then otherwise,
//! in words, closed sets, counts and free text alike.

use std::collections::{BTreeMap, BTreeSet};

use bookmatch::book::vocabulary::{DOORWAY, FIXTURE, ISLAND, OPENING, OPTION, PART, SELECTION, WALL_BOX, WINDOW};
use bookmatch::vocabulary::{FieldType, Record};

use super::{Bench, FILES, Paper, ROOM as KITCHEN, THINGS};

/// Where a field is written: the file, its text before and after the place, and the record that stands there.
struct Place {
    name: &'static str,
    file: &'static str,
    before: String,
    after: String,
    record: &'static Record,
    /// How far in fields stand in lines of their own; none where they stand in a row.
    indent: Option<usize>,
    /// How far down the groups within it are written too.
    deep: usize,
}

/// What is written there at first, and otherwise.
struct Change {
    what: String,
    first: String,
    then: String,
}

/// What a sheet shows that no mark holds, and why.
const UNMARKED: &[(&str, &str)] = &[
    ("the range itself: tag", "a number is fixed once it is issued; one that moves is a stop"),
    (": range: measured", "who measured, and on which day, is printed there: the same figures are built from"),
];

fn place(
    name: &'static str,
    (text, at): (&str, &str),
    (record, deep): (&'static Record, usize),
    indent: Option<usize>,
) -> Place {
    let (before, after) = text.split_once(at).unwrap_or_else(|| panic!("{name}: no `{at}`"));
    let file = if std::ptr::eq(text, KITCHEN) { FILES[1].0 } else { FILES[2].0 };
    Place { name, file, before: format!("{before}{at}"), after: after.into(), record, indent, deep }
}

fn places() -> Vec<Place> {
    vec![
        place("door", (KITCHEN, "hall: {"), (&DOORWAY, 1), None),
        place("window", (KITCHEN, "yard: {"), (&WINDOW, 1), None),
        place("fixture", (KITCHEN, "bench: {"), (&FIXTURE, 0), None),
        place("island", (KITCHEN, "islands:\n  island: {"), (&ISLAND, 0), None),
        place("part", (KITCHEN, "{cabinet: pots, width: 36\", "), (&PART, 0), None),
        place("range", (KITCHEN, "range: {takes: range, "), (&OPENING, 1), None),
        place("switch", (KITCHEN, "by the door: {"), (&WALL_BOX, 1), None),
        place("the range itself", (THINGS, "- selection: Range\n"), (&SELECTION, 0), Some(2)),
        place("the range that is chosen", (THINGS, "- selection: Range\n"), (&OPTION, 1), Some(2)),
        place("the sink that is chosen", (THINGS, "- selection: Sink\n"), (&OPTION, 0), Some(2)),
    ]
}

impl Place {
    /// The file with a field there.
    fn with(&self, field: &str) -> String {
        match (self.indent, field) {
            (_, "") => format!("{}{}", self.before, self.after),
            (Some(deep), field) => format!("{}{}{field}\n{}", self.before, " ".repeat(deep), self.after),
            (None, field) => format!("{}{field}, {}", self.before, self.after),
        }
    }

    /// What stands there already, so that a second time would be a fault.
    fn has(&self, key: &str) -> bool {
        let own = match self.indent {
            Some(deep) => {
                let end = self.after.match_indices('\n').map(|(at, _)| at).find(|at| {
                    let next = &self.after[at + 1..];
                    next.is_empty() || deep > 0 && !next.starts_with(&" ".repeat(deep))
                });
                self.after[..end.unwrap_or(self.after.len())].to_string()
            }
            None => {
                let begins = self.before.rfind('{').unwrap_or(0);
                let ends = self.after.find('}').unwrap_or(0);
                format!("{}{}", &self.before[begins..], &self.after[..ends])
            }
        };
        own.split(['\n', ',', '{']).any(|part| {
            let deep = part.len() - part.trim_start().len();
            part.trim_start().starts_with(&format!("{key}:")) && self.indent.is_none_or(|own| own == deep)
        })
    }

    fn changes(&self) -> Vec<Change> {
        changes(self.record, self.deep).into_iter().filter(|change| !self.has(key_of(&change.then))).collect()
    }
}

fn key_of(text: &str) -> &str {
    text.split_once(':').map_or("", |(key, _)| key)
}

/// Each field of a record from nothing to its example, and from that to something else; then those within it.
fn changes(record: &Record, deep: usize) -> Vec<Change> {
    let mut all = Vec::new();
    for field in record.fields {
        let (key, example) = (field.key, field.example);
        let written = |value: &str| format!("{key}: {value}");
        all.push(Change { what: key.into(), first: String::new(), then: written(example) });
        for other in others(&field.shape, example) {
            all.push(Change { what: format!("{key}: {other}"), first: written(example), then: written(&other) });
        }
        if deep == 0 {
            continue;
        }
        let (open, inner, close) = opened(&field.shape, example);
        for inner_record in field.shape.records() {
            let mut held = inner.clone();
            if held.is_empty() || !held.contains(':') {
                // What may stand for the group is one of its fields.
                let first = inner_record.fields.first().map_or("", |field| field.key);
                held = format!("{first}: {example}");
            }
            for change in changes(inner_record, deep - 1) {
                let is_there = held.split([',', '{']).any(|part| key_of(part.trim()) == key_of(&change.then));
                if is_there || field.shape.records().len() > 1 {
                    continue;
                }
                let put = |more: &str| match more {
                    "" => written(&format!("{open}{held}{close}")),
                    more => written(&format!("{open}{held}, {more}{close}")),
                };
                let what = format!("{key}: {}", change.what);
                all.push(Change { what, first: put(&change.first), then: put(&change.then) });
            }
        }
    }
    all
}

/// An example taken apart: what opens its group, what stands in it, what closes it.
fn opened(shape: &FieldType, example: &str) -> (String, String, String) {
    let named = matches!(shape, FieldType::Named(_));
    let listed = matches!(shape, FieldType::List(_));
    let inside = |text: &str, from: char, to: char| {
        text.trim().strip_prefix(from).and_then(|text| text.strip_suffix(to)).map(|text| text.trim().to_string())
    };
    if named {
        let inner = inside(example, '{', '}').unwrap_or_default();
        let (name, value) = inner.split_once(':').unwrap_or(("thing", ""));
        let first = inside(value.trim(), '{', '}').unwrap_or_default();
        return (format!("{{{name}: {{"), first, "}}".into());
    }
    if listed {
        let inner = inside(example, '[', ']').unwrap_or_default();
        let first = inside(&inner, '{', '}').filter(|first| !first.contains('{')).unwrap_or_default();
        return ("[{".into(), first, "}]".into());
    }
    ("{".into(), inside(example, '{', '}').unwrap_or_default(), "}".into())
}

/// Other values of a field.
fn others(shape: &FieldType, example: &str) -> Vec<String> {
    match shape {
        FieldType::OneOf(words, _) => {
            words.iter().find(|word| **word != example).map(ToString::to_string).into_iter().collect()
        }
        FieldType::YesNo => vec![if ["true", "yes"].contains(&example) { "false".into() } else { "true".into() }],
        FieldType::Whole => vec![example.parse::<u32>().map_or_else(|_| "7".into(), |count| (count + 1).to_string())],
        FieldType::Text | FieldType::Markdown if !example.starts_with(['{', '[', '"']) => {
            vec![format!("{example} otherwise")]
        }
        FieldType::Either(one, other) => [others(one, example), others(other, example)].concat(),
        _ => vec![],
    }
}

/// What was written in some places, and what came of it.
#[derive(Default)]
struct Tried {
    unmarked: BTreeSet<String>,
    both: usize,
    written: usize,
}

impl Tried {
    fn at(&mut self, bench: &mut Bench, place: &Place) {
        let changes = place.changes();
        let firsts: BTreeSet<&str> = changes.iter().map(|change| change.first.as_str()).collect();
        let mut known: BTreeMap<&str, BTreeMap<String, Paper>> = BTreeMap::new();
        for change in &changes {
            self.written += 1;
            if !known.contains_key(change.first.as_str()) {
                known.insert(&change.first, bench.sheets(place.file, &place.with(&change.first)));
            }
            let now = bench.sheets(place.file, &place.with(&change.then));
            for (sheet, was) in &known[change.first.as_str()] {
                let Some(now) = now.get(sheet) else { continue };
                match (now.page != was.page, now.content != was.content) {
                    (true, false) => {
                        let (old, new) = first_difference(&was.page, &now.page);
                        self.unmarked.insert(format!("{sheet}: {}: {}: {old:?} -> {new:?}", place.name, change.what));
                    }
                    (true, true) => self.both += 1,
                    (false, _) => {}
                }
            }
            // What another change begins with.
            if firsts.contains(change.then.as_str()) {
                known.insert(&change.then, now);
            }
        }
        let (_, text) = FILES.into_iter().find(|(file, _)| *file == place.file).expect("its file");
        bench.sheets(place.file, text);
    }
}

/// Where two pages part, with a few words of each.
fn first_difference<'p>(one: &'p str, other: &'p str) -> (String, String) {
    let same = one.chars().zip(other.chars()).take_while(|(one, other)| one == other).count();
    let from = |page: &'p str| page.chars().skip(same.saturating_sub(30)).take(90).collect();
    (from(one), from(other))
}

/// Half of the places each, at the same time.
fn tried() -> Tried {
    let places = places();
    let half = |odd: usize| {
        let (mut bench, mut tried) = (Bench::of_files(), Tried::default());
        places.iter().skip(odd).step_by(2).for_each(|place| tried.at(&mut bench, place));
        tried
    };
    std::thread::scope(|scope| {
        let other = scope.spawn(|| half(1));
        let mut all = half(0);
        let other = other.join().expect("the other half");
        all.unmarked.extend(other.unmarked);
        (all.both, all.written) = (all.both + other.both, all.written + other.written);
        all
    })
}

#[test]
fn no_field_changes_a_sheet_whose_mark_stays() {
    let Tried { unmarked: found, both, written } = tried();
    println!("{written} fields written, {both} sheets changed");
    for (what, _) in UNMARKED {
        assert!(found.iter().any(|line| line.contains(what)), "`{what}` is in the mark by now");
    }
    let is_named = |line: &&String| UNMARKED.iter().any(|(what, _)| line.contains(what));
    let unmarked: Vec<&str> = found.iter().filter(|line| !is_named(line)).map(String::as_str).collect();
    assert!(unmarked.is_empty(), "{} changed under the same mark:\n{}", unmarked.len(), unmarked.join("\n"));
    assert!(both > 200, "{both}");
}
