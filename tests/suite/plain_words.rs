//! What pages say to clients and installers: sentences that are understood when they are read once.
//!
//! `themes/standard/words/STYLE.md` has the rules with examples, and the words that no client reads.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// The most words of a sentence.
const LONGEST: usize = 24;

/// Groups of words that clients read, and those that installers read besides.
const CLIENTS: [&str; 26] = [
    "cover",
    "room",
    "item",
    "sign",
    "act",
    "signs",
    "hand",
    "means",
    "state",
    "living",
    "cover_says",
    "item_says",
    "room_says",
    "sign_says",
    "fit",
    "found",
    "stands",
    "given",
    "older",
    "on_paper",
    "cautions",
    "changes",
    "paper_says",
    "issued",
    "revised",
    "pages",
];
const INSTALLERS: [&str; 12] = [
    "installer",
    "opening",
    "installer_says",
    "opening_says",
    "heat",
    "sizes",
    "tape",
    "told",
    "readings",
    "way_in",
    "trades",
    "stands_on_paper",
];

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("themes/standard/words")
}

/// Each language's sentences, by their key.
fn languages() -> BTreeMap<String, BTreeMap<String, String>> {
    let files = fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().path());
    let yaml = files.filter(|path| path.extension().is_some_and(|ending| ending == "yaml"));
    yaml.map(|path| {
        let tree: serde_yaml::Value = serde_yaml::from_str(&fs::read_to_string(&path).unwrap()).unwrap();
        let mut said = BTreeMap::new();
        walk(&tree, "", &mut said);
        (path.file_stem().unwrap().to_string_lossy().into_owned(), said)
    })
    .collect()
}

fn walk(tree: &serde_yaml::Value, above: &str, said: &mut BTreeMap<String, String>) {
    match tree {
        serde_yaml::Value::Mapping(pairs) => pairs.iter().for_each(|(key, one)| {
            walk(one, &format!("{above}{}.", key.as_str().unwrap_or_default()), said);
        }),
        serde_yaml::Value::String(text) => _ = said.insert(above.trim_end_matches('.').to_owned(), text.clone()),
        _ => {}
    }
}

/// The words that no client reads, by language, out of the guide.
fn of_the_trade() -> BTreeMap<String, Vec<String>> {
    let guide = fs::read_to_string(folder().join("STYLE.md")).unwrap();
    let (_, list) = guide.split_once("## Words that a client never reads").unwrap();
    let lines =
        list.split("\n## ").next().unwrap().lines().filter_map(|line| line.strip_prefix("- ")?.split_once(": "));
    lines.map(|(tag, words)| (tag.to_owned(), words.split(", ").map(str::to_owned).collect())).collect()
}

/// Every fault of a language's words, by its key.
fn faults(said: &BTreeMap<String, String>, of_the_trade: &[String]) -> Vec<String> {
    let mut faults = vec![];
    for (key, text) in said {
        let group = key.split('.').next().unwrap();
        let (client, installer) = (CLIENTS.contains(&group), INSTALLERS.contains(&group));
        if !client && !installer {
            continue;
        }
        for sentence in text.split_inclusive(['.', '!', '?']).map(str::trim) {
            let long = sentence.split_whitespace().count();
            if long > LONGEST {
                faults.push(format!("{key}: {long} words: {sentence}"));
            }
            if sentence.ends_with('.') && sentence.contains(';') {
                faults.push(format!("{key}: two things in one: {sentence}"));
            }
        }
        let trade = of_the_trade.iter().find(|word| client && text.to_lowercase().contains(word.as_str()));
        faults.extend(trade.map(|word| format!("{key}: `{word}` is a word of the trade: {text}")));
    }
    faults
}

#[test]
fn sentences_to_clients_and_installers_are_read_once() {
    let of_the_trade = of_the_trade();
    for (tag, said) in languages() {
        let none = vec![];
        let trade = of_the_trade.get(&tag).unwrap_or(&none);
        assert!(!trade.is_empty(), "the guide lists no words for `{tag}`");
        let faults = faults(&said, trade);
        assert!(faults.is_empty(), "{tag}:\n{}", faults.join("\n"));
    }
}

#[test]
fn a_sentence_that_needs_reading_twice_is_met() {
    let told = |key: &str, text: &str| {
        faults(&BTreeMap::from([(key.to_owned(), text.to_owned())]), &["datum".to_owned()]).len()
    };
    assert_eq!(told("item.x", "This changed since you decided. Look again."), 0);
    assert_eq!(told("item.x", "This changed; your decision is dropped."), 1);
    assert_eq!(told("item.x", "Taken from the Datum of the room"), 1);
    assert_eq!(told("sizes.x", "Taken from the datum of the room"), 0);
    assert_eq!(told("office.x", "One; two."), 0);
    assert_eq!(told("tape.x", &"word ".repeat(25)), 1);
}
