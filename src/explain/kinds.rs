//! The page of a kind.

use crate::book::vocabulary::OPTION;
use crate::vocabulary::{Kind, Shape, Trade};

use super::page::{cut, entry, heading, item, paragraph};

/// Every kind, by schedule.
pub fn all() -> String {
    let mut text = heading("Kinds");
    for trade in Trade::ALL {
        let names: Vec<&str> = Kind::ALL.iter().filter(|kind| kind.trade() == trade).map(|kind| kind.name()).collect();
        text += &entry(trade.word(), &names.join(", "));
    }
    text + "\n"
}

/// A kind's page.
pub fn page(kind: Kind) -> String {
    let mut text = heading(&format!("{} (kind, {} schedule)", kind.name(), kind.trade().word()));
    text += &paragraph(&format!("{}.", capital(kind.about())));
    let also: Vec<String> = kind.words().skip(1).map(|word| format!("`{word}`")).collect();
    if !also.is_empty() {
        text += &paragraph(&format!("Also written {}.", also.join(", ")));
    }
    text += &heading("It needs");
    for path in kind.needs() {
        text += &need(path);
    }
    if kind.takes_opening() {
        text += &item("`place`: an opening in `room.yaml` that takes it");
    }
    if kind.wants_sheet() {
        text += &item("`fit`: the figures of the maker's own sheet, with its name, revision and date");
    }
    if !kind.hazards().is_empty() {
        text += "\n";
        text += &heading("Caution");
        for hazard in kind.hazards() {
            text += &item(hazard.caution().words());
        }
    }
    text += "\n";
    text += &heading("Example");
    text + &example(kind)
}

fn need(path: &str) -> String {
    let mut record = &OPTION;
    let mut about = String::new();
    for key in path.split('.') {
        let Some(field) = record.field(key) else { continue };
        about = format!("{}, such as `{}`", field.about, field.example);
        if let Shape::Record(inner) = field.shape {
            record = inner;
        }
    }
    item(&format!("`{}`: {about}", path.replace('.', ": ")))
}

/// A selection of that kind with what it needs, as one would write it.
fn example(kind: Kind) -> String {
    let mut lines = vec![format!("selection: {}", capital(kind.name())), format!("kind: {}", kind.name())];
    if kind.takes_opening() {
        lines.push("place: …".into());
    }
    let mut groups: Vec<(&str, Vec<String>)> = Vec::new();
    for path in kind.needs() {
        let (group, key) = path.split_once('.').unwrap_or(("", path));
        let record = OPTION.field(group).map(|field| field.shape);
        let field = match record {
            Some(Shape::Record(inner)) => key.split('.').next().and_then(|key| inner.field(key)),
            _ => OPTION.field(key),
        };
        let Some(field) = field else { continue };
        if group.is_empty() {
            lines.push(format!("{}: {}", field.key, field.example));
            continue;
        }
        let line = format!("  {}: {}", field.key, field.example);
        match groups.iter_mut().find(|(name, _)| *name == group) {
            Some((_, lines)) if lines.contains(&line) => {}
            Some((_, lines)) => lines.push(line),
            None => groups.push((group, vec![line])),
        }
    }
    for (group, inner) in groups {
        lines.push(format!("{group}:"));
        lines.extend(inner);
    }
    lines.iter().map(|line| cut(&format!("    {line}"))).collect()
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
