//! A third language is a file of a theme and no Rust: a whole book in one that is made up. What stands in its file
//! and what is filled in bear marks there; what bears none is the designer's own, or a sentence left in code.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use serde_json::{Map, Value, json};

use crate::project::Project;
use crate::sheets::readers::Pdf;

/// What stands in the file of the language, and around what is filled in.
const MARKS: [char; 2] = ['«', '»'];
const HOLES: [char; 2] = ['‹', '›'];

/// Ends one text of a page, so that it is not read together with the next.
const END: char = '\u{1}';

/// Signs, units and codes that are the same in every language.
const SIGNS: &str = "mm cm m in ft sq lb kg oz gal L l V A W K kW cfm Btu h s PDF RGB HEX NEC IRC CRI LED NEMA no x";

/// A file of the standard theme as data, keys that are numbers as text.
fn standard(file: &str) -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("themes/standard/words").join(file);
    as_json(&serde_yaml::from_str(&fs::read_to_string(path).expect("words")).expect("YAML"))
}

fn as_json(yaml: &serde_yaml::Value) -> Value {
    let text = |value: &serde_yaml::Value| serde_yaml::to_string(value).expect("YAML").trim_end().to_owned();
    match yaml {
        serde_yaml::Value::Mapping(pairs) => {
            let key = |key: &serde_yaml::Value| key.as_str().map_or_else(|| text(key), str::to_owned);
            Value::Object(pairs.iter().map(|(name, one)| (key(name), as_json(one))).collect())
        }
        serde_yaml::Value::Sequence(items) => items.iter().map(as_json).collect(),
        serde_yaml::Value::String(text) => Value::String(text.clone()),
        other => Value::String(text(other)),
    }
}

/// A text of the language with its marks.
fn marked(text: &str) -> String {
    let holes = text.replace('{', "‹{").replace('}', "}›");
    if text.is_empty() { String::new() } else { format!("«{holes}»") }
}

fn marked_tree(tree: &Value, path: &str) -> Value {
    match tree {
        // How it counts, and signs that are set between figures, are no words.
        Value::String(text)
            if path.starts_with("/language/") && !path.contains("/months/") && !path.ends_with("/name") =>
        {
            Value::String(text.clone())
        }
        Value::String(text) => Value::String(marked(text)),
        Value::Array(items) => items.iter().map(|item| marked_tree(item, path)).collect(),
        Value::Object(pairs) => {
            let one = |(key, one): (&String, &Value)| (key.clone(), marked_tree(one, &format!("{path}/{key}")));
            Value::Object(pairs.iter().map(one).collect())
        }
        other => other.clone(),
    }
}

/// The file of the made-up language: the first one's with marks, and words for every finding that another words.
fn made_up() -> String {
    let mut tree = marked_tree(&standard("en.yaml"), "");
    let spanish = standard("es.yaml");
    let patterns = spanish["findings"].as_object().expect("findings").keys();
    let worded = patterns.map(|pattern| {
        let parts = pattern.split('{').enumerate();
        let numbered = parts.fold(String::new(), |text, (at, part)| match part.split_once('}') {
            Some((_, rest)) if at > 0 => format!("{text}{{{at}}}{rest}"),
            _ => text + part,
        });
        (pattern.clone(), Value::String(marked(&numbered.replace('`', ""))))
    });
    tree["findings"] = Value::Object(worded.collect::<Map<_, _>>());
    json!(tree).to_string()
}

/// What the designer wrote: each value in the files, and their prose; no key of theirs, and none of our words.
struct Own {
    /// Each text by its letters alone.
    texts: BTreeSet<String>,
    /// Each word of a short one.
    words: BTreeSet<String>,
}

/// The most words of something short.
const SHORT: usize = 8;

/// Names of the book's own things are keys in these.
const NAMED: [&str; 15] = [
    "openings",
    "runs",
    "islands",
    "fixtures",
    "doors",
    "windows",
    "lights",
    "switches",
    "outlets",
    "allowances",
    "milestones",
    "walls",
    "service points",
    "pieces",
    "columns",
];

/// Values in these are words of ours.
const OURS: [&str; 9] = ["hinge", "swings", "material", "from", "opens", "country", "units", "approval", "direction"];

impl Own {
    /// What stands in the texts of a folder.
    fn of(root: &Path) -> Self {
        let mut own = Self { texts: BTreeSet::new(), words: BTreeSet::new() };
        own.words.extend(SIGNS.split(' ').map(str::to_lowercase));
        for entry in walkdir::WalkDir::new(root).into_iter().map(|entry| entry.expect("an entry")) {
            let ending = entry.path().extension().and_then(|ending| ending.to_str()).unwrap_or_default();
            if !matches!(ending, "yaml" | "md") || entry.path().starts_with(root.join("house")) {
                continue;
            }
            let text = fs::read_to_string(entry.path()).expect("a text");
            match ending {
                "md" => own.take(&text),
                _ => serde_yaml::Deserializer::from_str(&text)
                    .for_each(|document| own.add(&serde::Deserialize::deserialize(document).expect("YAML"), "")),
            }
        }
        own
    }

    fn add(&mut self, value: &serde_yaml::Value, key: &str) {
        match value {
            serde_yaml::Value::Mapping(pairs) => {
                for (name, one) in pairs {
                    let name = name.as_str().unwrap_or_default();
                    if NAMED.contains(&key) {
                        self.take(name);
                    }
                    self.add(one, name);
                }
            }
            serde_yaml::Value::Sequence(items) => items.iter().for_each(|item| self.add(item, key)),
            serde_yaml::Value::String(text) if !OURS.contains(&key) => self.take(text),
            _ => {}
        }
    }

    fn take(&mut self, text: &str) {
        self.texts.insert(letters(text));
        if text.split_whitespace().count() <= SHORT {
            self.words.extend(words(text).map(str::to_lowercase));
        }
    }

    /// Whether a text that bears no marks is theirs, or figures with their signs: it stands in their files, or each
    /// word of it in something short that they wrote.
    fn is_theirs(&self, text: &str) -> bool {
        // In a list a number stands before their words.
        let all = letters(text.trim_start_matches(|one: char| one.is_ascii_digit() || one.is_whitespace()));
        let in_theirs = || self.texts.iter().any(|own| own.contains(&all));
        // A code or a mark has figures in it, or is in capitals; four letters of a mark may have none.
        let is_mark = |token: &str| token.len() == 4 && token.bytes().all(|letter| letter.is_ascii_hexdigit());
        let has_figure = |token: &str| token.contains(|one: char| one.is_ascii_digit());
        let is_word = |token: &&str| !has_figure(token) && !is_mark(token) && token.contains(char::is_lowercase);
        let known = |word: &str| word.len() < 2 || self.words.contains(&word.to_lowercase());
        text.split_whitespace().filter(is_word).flat_map(words).all(known) || in_theirs()
    }
}

fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|one: char| !one.is_alphabetic()).filter(|word| !word.is_empty())
}

/// A text by its letters alone, however it was broken into lines.
fn letters(text: &str) -> String {
    text.to_lowercase().chars().filter(|one| one.is_alphanumeric()).collect()
}

/// The stretches of a text that stand in no mark of the language, or where something was filled in.
fn unmarked(text: &str) -> Vec<String> {
    let (mut stack, mut runs): (Vec<char>, Vec<String>) = (vec![], vec![String::new()]);
    for letter in text.chars() {
        match letter {
            one if one == MARKS[0] || one == HOLES[0] => {
                stack.push(one);
                runs.push(String::new());
            }
            one if one == MARKS[1] || one == HOLES[1] => {
                stack.pop();
                runs.push(String::new());
            }
            END => runs.push(String::new()),
            other if stack.last() != Some(&MARKS[0]) => runs.last_mut().expect("a run").push(other),
            _ => {}
        }
    }
    runs.retain(|run| run.chars().any(char::is_alphabetic));
    runs
}

/// What a page says: its text and what is told of pictures and fields, apart; and the data that scripts read.
fn said(html: &str) -> (String, Vec<String>) {
    let (mut text, mut data) = (String::new(), vec![]);
    let mut rest = html;
    while let Some((before, after)) = rest.split_once('<') {
        text += before;
        let (tag, behind) = after.split_once('>').unwrap_or((after, ""));
        rest = behind;
        let of_page = tag.contains("viewport") || tag.contains("http-equiv");
        for name in ["alt", "aria-label", "title", "placeholder", "content", "data-l"] {
            if let Some((_, value)) = tag.split_once(&format!(" {name}=\"")).filter(|_| !of_page) {
                text += &format!("{END}{}{END}", value.split('"').next().unwrap_or_default());
            }
        }
        let name = tag.split([' ', '/']).find(|part| !part.is_empty()).unwrap_or_default();
        if matches!(name, "script" | "style") {
            let (block, behind) = behind.split_once(&format!("</{name}")).expect("its end");
            rest = behind;
            // The words themselves have holes that are still open.
            data.extend((name == "script" && !tag.contains("id=\"words\"")).then(|| block.to_owned()));
        }
        let inline = matches!(name, "b" | "i" | "em" | "strong" | "span" | "small" | "s" | "tspan");
        text.push(if inline { ' ' } else { END });
    }
    let decoded = [("&amp;", "&"), ("&lt;", "<"), ("&gt;", ">"), ("&quot;", "\""), ("&#39;", "'"), ("&#x27;", "'")];
    (decoded.iter().fold(text, |text, (entity, letter)| text.replace(entity, letter)), data)
}

fn strings(value: &Value, all: &mut Vec<String>) {
    match value {
        Value::String(text) => all.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| strings(item, all)),
        Value::Object(pairs) => pairs.values().for_each(|one| strings(one, all)),
        _ => {}
    }
}

/// Everything that a published book says to client and installer and that bears no mark, by the file it stands in.
fn left_in_code(site: &Path, own: &Own) -> BTreeMap<String, BTreeSet<String>> {
    let mut left: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    let mut read = 0;
    for folder in ["client", "installer"] {
        for entry in walkdir::WalkDir::new(site.join(folder)).into_iter().map(|entry| entry.expect("an entry")) {
            let ending = entry.path().extension().and_then(|ending| ending.to_str()).unwrap_or_default();
            let (text, data) = match ending {
                "html" => said(&fs::read_to_string(entry.path()).expect("a page")),
                "pdf" => (
                    Pdf::of(&fs::read(entry.path()).expect("a sheet"))
                        .ask("pdftotext", &["-raw"], &["-"])
                        .replace('\n', &END.to_string()),
                    vec![],
                ),
                _ => continue,
            };
            read += 1;
            let mut take = |run: String| {
                let at = entry.path().strip_prefix(site).expect("inside").display().to_string();
                left.entry(run.split_whitespace().collect::<Vec<_>>().join(" ")).or_default().insert(at);
            };
            unmarked(&text).into_iter().filter(|run| !own.is_theirs(run)).for_each(&mut take);
            for block in data.iter().filter(|block| !block.trim().is_empty()) {
                let mut all = vec![];
                strings(&serde_json::from_str(block).expect("data"), &mut all);
                let sentences = all.iter().filter(|text| text.trim().contains(' '));
                sentences.flat_map(|text| unmarked(text)).filter(|run| !own.is_theirs(run)).for_each(&mut take);
            }
        }
    }
    assert!(read > 20, "only {read} pages and sheets");
    left
}

#[test]
fn a_third_language_is_a_file_of_a_theme_and_nothing_is_left_in_code() {
    let project = Project::of_the_example();
    let book = fs::read_to_string(project.root().join("book.yaml")).expect("a book");
    let asks = "languages: {client: qp, installer: qp, office: en}\ntheme: house";
    let project =
        project.file("book.yaml", &book.replace("languages: [en]", asks)).file("house/words/qp.yaml", &made_up());
    let site = project.beside("site");
    let asked = ["publish", "--draft", "--today", "2027-01-15", "--out"].map(AsRef::as_ref);
    project.run(asked.into_iter().chain([site.as_os_str()])).exits(0);
    let left = left_in_code(&site, &Own::of(&project.root()));
    let told: Vec<String> =
        left.iter().map(|(text, at)| format!("{text}   [{}: {}]", at.len(), at.first().expect("a place"))).collect();
    assert!(left.is_empty(), "{} left:\n{}", left.len(), told.join("\n"));
}

/// A sentence that is left is found between marks, in what is filled in, and in what pictures tell.
#[test]
fn what_bears_no_mark_is_found() {
    let (text, data) = said(
        "<p>«Fits ‹12 mm wide›.» not so <b>bold</b></p><img alt=\"A plan\"><script type=\"application/json\">{\"a\": \"left here\"}</script>",
    );
    assert_eq!(unmarked(&text), ["12 mm wide", " not so  bold ", "A plan"]);
    assert_eq!(data, ["{\"a\": \"left here\"}"]);
    let own =
        Own { texts: BTreeSet::from([letters("The pale oak of the hall")]), words: BTreeSet::from(["mm".into()]) };
    assert!(own.is_theirs("12 mm") && own.is_theirs("pale oak") && own.is_theirs("K-07 RGB"));
    assert!(!own.is_theirs("pale ash") && !own.is_theirs("12 mm wide"));
}
