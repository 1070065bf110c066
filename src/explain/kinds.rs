//! The page of a kind.

use crate::assess::rules::{RULES, Rule};
use crate::book::vocabulary::OPTION;
use crate::vocabulary::{FieldType, Kind, Trade};

use super::page::{cut, entry, heading, item, paragraph};
use super::whole;

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
    let keys: Vec<String> = kind.may_have().map(|key| format!("`{key}`")).collect();
    text += &paragraph(&format!("{}; `bookmatch explain NAME` tells what each is.", keys.join(", ")));
    text += &checks(kind);
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

/// The rules that judge one of it; those that judge whatever is chosen by their codes alone.
fn checks(kind: Kind) -> String {
    let judges_all =
        |rule: &&Rule| Kind::ALL.iter().filter(|kind| **kind != Kind::Labour).all(|kind| (rule.judges)(*kind));
    let judging = RULES.iter().filter(|rule| (rule.judges)(kind));
    let (general, own): (Vec<&Rule>, Vec<&Rule>) = judging.partition(judges_all);
    let mut text = heading("The review checks");
    let blank = if own.is_empty() { "" } else { "\n" };
    for rule in own {
        text += &entry(rule.code.text(), rule.summary());
    }
    text += blank;
    let codes: Vec<String> = general.iter().map(|rule| format!("`{}`", rule.code)).collect();
    text += &paragraph(&format!(
        "Of whatever is chosen: {}; `bookmatch explain RULE` tells what each checks.",
        codes.join(", ")
    ));
    text
}

/// A phrase with a capital.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_kind_may_have_are_fields_of_an_option_and_every_field_is_some_kind_s() {
        let known: Vec<&str> = OPTION.fields.iter().map(|field| field.key).collect();
        let of = |kind: Kind| kind.needs().map(|path| path.split('.').next().unwrap()).chain(kind.may_have());
        for kind in Kind::ALL {
            let mut may: Vec<&str> = kind.may_have().collect();
            assert!(may.iter().all(|key| known.contains(key)), "{kind}: {may:?}");
            may.sort_unstable();
            let count = may.len();
            may.dedup();
            assert_eq!(may.len(), count, "{kind} may have a field twice: {may:?}");
        }
        let all: Vec<&str> = Kind::ALL.iter().flat_map(|kind| of(*kind)).collect();
        for key in known {
            assert!(all.contains(&key), "`{key}` is no kind's");
        }
    }

    #[test]
    fn a_page_names_no_field_and_no_check_that_makes_no_sense_of_its_kind() {
        let part = |kind, from: &str, to: &str| {
            let page = page(kind);
            page.split_once(from).unwrap().1.split_once(to).unwrap().0.to_string()
        };
        let may = |kind| part(kind, "It may have", "The review checks");
        for (kind, key) in [
            (Kind::Tile, "`panel`"),
            (Kind::Hook, "`trap seal`"),
            (Kind::PanelRefrigerator, "`screws`"),
            (Kind::Labour, "`size`"),
            (Kind::Sink, "`lumens`"),
        ] {
            assert!(!may(kind).contains(key), "{kind}: {key}");
        }
        assert!(may(Kind::Sink).contains("`drilled`") && may(Kind::Tile).contains("`laid`"));
        let checks = |kind| part(kind, "The review checks", "Example");
        assert!(checks(Kind::Sink).contains("fit/sink") && checks(Kind::Sink).contains("`order/late`"));
        assert!(!checks(Kind::Tile).contains("fit/sink") && checks(Kind::Tile).contains("finish/joint"));
        assert!(checks(Kind::Labour).contains("`complete/field`"));
    }
}
