//! The page of a kind.

use std::collections::BTreeSet;

use crate::book::vocabulary::OPTION;
use crate::vocabulary::{FieldType, Kind, Trade};

use super::page::{cut, entry, heading, item, paragraph};
use super::whole;

/// Keys that some kinds must have, and any may.
const GENERAL: [&str; 6] = ["size", "fit", "colour", "description", "panel", "material"];

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
        let takes =
            format!("`place`: an opening in `room.yaml` that says `takes: {}`, with its measured sizes", kind.name());
        text += &item(&takes);
    }
    if kind.wants_sheet() {
        text += &item("`fit`: the figures of the maker's own sheet, with its name, revision and date");
    }
    if !kind.hazards().is_empty() {
        text += "\n";
        text += &heading("Caution");
        for hazard in kind.hazards() {
            text += &item(hazard.caution());
        }
    }
    text += "\n";
    text += &heading("It may have");
    let keys: Vec<String> = may_have(kind).iter().map(|key| format!("`{key}`")).collect();
    text += &paragraph(&format!("{}; `bookmatch explain NAME` tells what each is.", keys.join(", ")));
    text += &heading("Example");
    text + &whole::files(kind).lines().map(|line| cut(&format!("    {line}"))).collect::<String>()
}

fn need(path: &str) -> String {
    let mut record = &OPTION;
    let mut about = String::new();
    for key in path.split('.') {
        let Some(field) = record.field(key) else { continue };
        about = format!("{}, such as `{}`", field.about, field.example);
        if let FieldType::Record(inner) = field.shape {
            record = inner;
        }
    }
    item(&format!("`{}`: {about}", path.replace('.', ": ")))
}

/// The keys that one of it may have besides: those that no other kind has for itself.
fn may_have(kind: Kind) -> Vec<&'static str> {
    let first = |path: &'static str| path.split('.').next().unwrap_or(path);
    let own: Vec<&str> = kind.needs().map(first).collect();
    let of_others: BTreeSet<&str> = Kind::ALL.iter().flat_map(|other| other.needs()).map(first).collect();
    let keys = OPTION.fields.iter().map(|field| field.key);
    keys.filter(|key| !own.contains(key) && (!of_others.contains(key) || GENERAL.contains(key))).collect()
}

/// A phrase with a capital.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
