//! Holds every remedy of every trial to what it names: keys that are known where it sends the designer, shapes
//! and no facts, and the book's own units.

use serde_yaml::Value;

use crate::book::vocabulary::{
    BOOK, CEILING, COUNTER_RUN, DOORWAY, FILES, FIXTURE, ISLAND, OPENING, OPTION, PART, ROOM, RUN, SEAM, SEATING,
    SELECTION, SIDE, WALL_BOX, WINDOW,
};
use crate::book::{Book, Room};
use crate::finding::{Family, Finding, Phrase, Piece};
use crate::vocabulary::{FieldType, Record};

/// What is wrong with a finding's remedy; none where nothing is.
pub fn fault(book: &Book, finding: &Finding) -> Option<String> {
    let said = |what: String| Some(format!("{}: {what} in the remedy `{}`", finding.rule, finding.remedy));
    if book.project.units.is_metric() && says_inches_first(finding.remedy.text()) {
        return said("inches first in a metric book".into());
    }
    let raw = |phrase: &Phrase| {
        let words = |piece: &Piece| matches!(piece, Piece::Words(words) if words.contains('`'));
        phrase.pieces().iter().any(words)
    };
    if raw(&finding.message) || raw(&finding.remedy) {
        return said("a part that is quoted and went in as words".into());
    }
    let places = places(book, finding);
    for snippet in quoted(&finding.remedy) {
        // A name that is unknown may be mended by any other name.
        let names_a_key = finding.rule.family() != Family::Source && is_key(&snippet);
        if names_a_key && is_known(&snippet, &FILES) && !is_known(&snippet, &places) {
            let names: Vec<_> = places.iter().map(|record| record.name).collect();
            return said(format!("`{snippet}`, which nothing at {names:?} knows,"));
        }
        let Some((key, _)) = snippet.split_once(": ").filter(|(key, _)| is_key(key)) else { continue };
        let Ok(Value::Mapping(written)) = serde_yaml::from_str(&snippet) else {
            return said(format!("`{snippet}`, which is no YAML,"));
        };
        let known = places.iter().any(|record| faults(&Value::Mapping(written.clone()), record).is_none());
        if !known {
            let names: Vec<_> = places.iter().map(|record| record.name).collect();
            let why = places.iter().find_map(|record| faults(&Value::Mapping(written.clone()), record));
            return said(format!("`{key}` at {names:?}: {}", why.unwrap_or_default()));
        }
    }
    None
}

/// What of a finding says inches first in a metric book; what the designer wrote stands as it was written.
pub fn speaks_inches(book: &Book, finding: &Finding) -> Option<String> {
    let own = |phrase: &Phrase| -> String { phrase.runs().into_iter().filter(|run| !run.0).map(|run| run.1).collect() };
    let told = [&finding.message, &finding.remedy].into_iter().find(|text| says_inches_first(&own(text)));
    let said = |text: &Phrase| format!("{}: inches first in a metric book: {text}", finding.rule);
    told.filter(|_| book.project.units.is_metric()).map(said)
}

/// What a phrase quotes.
fn quoted(phrase: &Phrase) -> impl Iterator<Item = String> {
    phrase.pieces().into_iter().filter_map(|piece| if let Piece::Quoted(text) = piece { Some(text) } else { None })
}

fn is_key(text: &str) -> bool {
    text.chars().all(|letter| letter.is_lowercase() || matches!(letter, ' ' | '-'))
}

/// Whether one of these records, or one within them, knows a key.
fn is_known(key: &str, records: &[&'static Record]) -> bool {
    let mut open: Vec<&'static Record> = records.to_vec();
    let mut seen: Vec<&str> = Vec::new();
    while let Some(record) = open.pop() {
        if record.field(key).is_some() {
            return true;
        }
        if !seen.contains(&record.name) {
            seen.push(record.name);
            open.extend(record.fields.iter().flat_map(|field| field.shape.records()));
        }
    }
    false
}

/// The records that the designer is sent to: the one that the finding is about, and those that the remedy names.
fn places(book: &Book, finding: &Finding) -> Vec<&'static Record> {
    let room = finding.room.as_ref().and_then(|folder| book.rooms.iter().find(|room| room.folder == *folder));
    let mut places = match (finding.subject.name(), room) {
        (Some(item), Some(room)) => of_item(room, item),
        (None, Some(_)) => vec![&ROOM],
        (_, None) => vec![&BOOK],
    };
    let named: [(&str, &[&'static Record]); 10] = [
        ("at each selection", &[&SELECTION, &OPTION]),
        ("opening", &[&OPENING]),
        ("room", &[&ROOM]),
        ("under `walls`", &[&ROOM]),
        ("`book.yaml`", &[&BOOK]),
        ("ceiling", &[&CEILING]),
        ("at that counter", &[&COUNTER_RUN]),
        ("at that cabinet", &[&SELECTION, &OPTION]),
        ("at the seam", &[&SEAM]),
        ("at that fixture", &[&FIXTURE]),
    ];
    for (words, records) in named {
        if finding.remedy.text().contains(words) {
            places.extend(records);
        }
    }
    places
}

fn of_item(room: &Room, item: &str) -> Vec<&'static Record> {
    let is = |name: &String| name == item;
    if room.selections.iter().any(|one| is(&one.name)) {
        return vec![&SELECTION, &OPTION];
    }
    let mut found: Vec<&'static Record> = Vec::new();
    let mut add = |here: bool, records: &[&'static Record]| {
        if here {
            found.extend(records);
        }
    };
    add(room.openings.iter().any(|one| is(&one.name)), &[&OPENING]);
    add(room.windows.iter().any(|one| is(&one.name)), &[&WINDOW]);
    add(room.doors.iter().any(|one| is(&one.name)), &[&DOORWAY]);
    add(room.fixtures.iter().any(|one| is(&one.name)), &[&FIXTURE]);
    add(room.runs.iter().any(|one| is(&one.name)), &[&RUN, &PART]);
    add(room.islands.iter().any(|one| is(&one.name)), &[&ISLAND, &SIDE, &PART]);
    add(room.counters.iter().any(|one| is(&one.name)), &[&COUNTER_RUN]);
    add(room.switches.iter().chain(&room.outlets).any(|one| is(&one.name)), &[&WALL_BOX]);
    add(room.seating.iter().any(|one| is(&one.name)), &[&SEATING]);
    if found.is_empty() { vec![&SELECTION, &OPTION, &OPENING, &PART, &WALL_BOX] } else { found }
}

/// The first key that a record does not know, or a leaf that is a fact.
fn faults(value: &Value, record: &Record) -> Option<String> {
    let Value::Mapping(pairs) = value else { return Some(format!("{value:?} is no group of keys")) };
    pairs.iter().find_map(|(key, inner)| {
        let key = key.as_str().unwrap_or("");
        match record.field(key) {
            None => Some(format!("a {} knows no `{key}`", record.name)),
            Some(field) => of_shape(inner, &field.shape),
        }
    })
}

fn of_shape(value: &Value, shape: &FieldType) -> Option<String> {
    match (value, shape) {
        (Value::Mapping(_), FieldType::Record(inner)) => faults(value, inner),
        (Value::Mapping(_), FieldType::Either(one, other)) => of_shape(value, one).and_then(|_| of_shape(value, other)),
        (Value::Sequence(items), FieldType::List(inner)) => items.iter().find_map(|item| of_shape(item, inner)),
        (Value::Mapping(_) | Value::Sequence(_), _) => Some(format!("{value:?} can't stand there")),
        (leaf, _) => {
            let text = leaf.as_str().map_or_else(|| format!("{leaf:?}"), str::to_string);
            text.chars().any(|letter| letter.is_ascii_digit()).then(|| format!("`{text}` is a fact, and no shape"))
        }
    }
}

/// Whether inches stand anywhere but in brackets after millimetres.
fn says_inches_first(remedy: &str) -> bool {
    let mut depth = 0_i32;
    let mut before = ' ';
    for letter in remedy.chars() {
        match letter {
            '(' => depth += 1,
            ')' => depth -= 1,
            '"' | '″' if before.is_ascii_digit() && depth == 0 => return true,
            _ => {}
        }
        before = letter;
    }
    false
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::fit::width;
    use crate::assess::rules::trial::Trial;
    use crate::finding::Remark;
    use crate::source::Place;

    #[test]
    fn a_key_at_the_wrong_place_a_pasted_fact_and_inches_in_a_metric_book_are_faults() {
        let book = Trial::of("fit/width")
            .metric()
            .opening("hole", "{takes: range}")
            .selection("selection: It\nkind: range", "")
            .read();
        let of = |item: &str, remedy: &'static str| {
            let finding = Remark::stop(Place::Path("a".into()), "m").room("kitchen").part(item);
            fault(&book, &finding.remedy(remedy).of(width::RULE.code))
        };
        assert!(of("It", "add `fit: {needs: {power: …}}`").is_none());
        assert!(of("It", "add `power: …` under `fit`").is_some());
        assert!(of("It", "add `service: {gas: …}`").is_some());
        assert!(of("It", "add at the opening `service: {gas: …}`").is_none());
        assert!(of("hole", "add `width: 30 mm`").is_some());
        assert!(of("hole", "add its `top` to the opening's `left`").is_none());
        assert!(of("hole", "write the option after `chosen`").is_some(), "an opening chooses nothing");
        assert!(of("It", "write the option after `chosen`").is_none());
        assert!(of("hole", "make it 30\" wide").is_some());
        assert!(of("hole", "make it 762 mm (30\") wide").is_none());
    }
}
