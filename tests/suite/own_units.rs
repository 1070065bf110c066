//! A book is shown in its own units: pages, drawings, sheets and reviews are read as they were published.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

use crate::project::Project;

const TODAY: [&str; 2] = ["--today", "2027-01-15"];

/// Whole books in metric units, in which nobody wrote an inch; and some in feet and inches.
const METRIC: [&str; 3] = ["attic", "island", "laundry"];
const IMPERIAL: [&str; 2] = ["galley", "bar"];

/// A whole book with other units, published as a draft.
fn published(name: &str, from: &str, to: &str) -> Published {
    let project = Project::copy_of(&format!("tests/books/{name}"));
    let book = fs::read_to_string(project.root().join("book.yaml")).expect("a book");
    assert!(book.contains(from), "{name}: {from}");
    let project = project.file("book.yaml", &book.replacen(from, to, 1));
    let out = project.beside("site");
    let folder = out.to_str().expect("UTF-8");
    project.run(["publish", "--draft", "--out", folder].into_iter().chain(TODAY)).exits(0);
    let review = project.run(["review"].into_iter().chain(TODAY));
    let mut texts = BTreeMap::from([("review".to_string(), review.stdout + &review.stderr)]);
    let mut pages = BTreeMap::new();
    for entry in walkdir::WalkDir::new(&out).sort_by_file_name() {
        let entry = entry.expect("the folder can be read");
        let name = entry.path().strip_prefix(&out).expect("inside").to_string_lossy().into_owned();
        if name.ends_with(".html") {
            let page = fs::read_to_string(entry.path()).expect("a page");
            texts.insert(name.clone(), text_of(&page));
            pages.insert(name, page);
        } else if name.ends_with(".pdf") {
            texts.insert(name, text_of_sheet(entry.path()));
        }
    }
    Published { project, texts, pages }
}

struct Published {
    /// The folder that it stands in while it is read.
    project: Project,
    /// What is read of each page and sheet, and of the review.
    texts: BTreeMap<String, String>,
    /// The pages themselves.
    pages: BTreeMap<String, String>,
}

impl Published {
    /// Whether every inch of a line stands in the designer's own words.
    fn wrote(&self, line: &str) -> bool {
        let files = walkdir::WalkDir::new(self.project.root()).into_iter().filter_map(Result::ok);
        let files = files.filter(|file| file.path().extension().is_some_and(|ending| ending == "yaml"));
        let book: String = files.map(|file| fs::read_to_string(file.path()).expect("a file of the book")).collect();
        let book = book.replace("\\\"", "\"");
        let inches = line.split(' ').filter(|word| word.ends_with('"'));
        inches.clone().count() > 0 && !line.contains(['″', '′']) && inches.into_iter().all(|word| book.contains(word))
    }
}

/// What is read of a page, heard of it, and seen in its drawings: all but scripts and styles.
fn text_of(page: &str) -> String {
    let (mut text, mut rest) = (String::new(), page);
    while let Some((before, tag)) = rest.split_once('<') {
        text += before;
        let (tag, after) = tag.split_once('>').expect("a tag has an end");
        let name = tag.split(|end: char| !end.is_alphanumeric()).next().unwrap_or_default();
        for key in ["alt=\"", "aria-label=\"", "title=\"", "placeholder=\""] {
            let value = tag.split_once(key).and_then(|(_, value)| value.split_once('"'));
            text += &value.map_or(String::new(), |(value, _)| format!("\n{value}\n"));
        }
        text += if matches!(name, "i" | "span" | "tspan" | "b" | "small") || tag.starts_with('/') { "" } else { "\n" };
        rest = match name {
            "script" | "style" => after.split_once(&format!("</{name}>")).map_or("", |(_, after)| after),
            _ => after,
        };
    }
    let escapes = [
        ("&quot;", "\""),
        ("&#39;", "'"),
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&nbsp;", " "),
        ("\u{a0}", " "),
        ("&amp;", "&"),
    ];
    escapes.into_iter().fold(text + rest, |text, (escape, letter)| text.replace(escape, letter))
}

/// What poppler reads of a sheet.
fn text_of_sheet(path: &Path) -> String {
    let output = Command::new("pdftotext").arg("-layout").arg(path).arg("-").output();
    let output = output.unwrap_or_else(|fault| panic!("`pdftotext` is needed to read the sheets: {fault}"));
    assert!(output.status.success(), "{}", path.display());
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// Units that stand after a figure, whatever stands between the two.
const OF_INCHES: [&str; 15] = [
    "\"",
    "″",
    "'",
    "′",
    "ft",
    "feet",
    "foot",
    "inch",
    "inches",
    "sq ft",
    "lb",
    "lbf",
    "oz",
    "square inches",
    "footcandles",
];

/// Each line in which a figure has one of these units.
fn with_unit(text: &str, units: &[&str]) -> Vec<String> {
    let has = |line: &&str| {
        line.char_indices().filter(|(_, letter)| letter.is_ascii_digit()).any(|(at, _)| {
            let after = line[at + 1..].trim_start_matches(' ');
            units.iter().any(|unit| {
                let rest = after.strip_prefix(unit);
                let is_mark = !unit.ends_with(char::is_alphabetic);
                rest.is_some_and(|rest| is_mark || !rest.starts_with(char::is_alphanumeric))
            })
        })
    };
    text.lines().filter(has).map(|line| line.trim().to_string()).collect()
}

/// The handbook of the rules quotes makers and codes as they write, and tells how other books are written.
fn is_of_the_book(name: &str) -> bool {
    name != "office/rules.html"
}

#[test]
fn a_metric_book_without_the_other_system_has_no_inch_anywhere() {
    let mut found = Vec::new();
    for name in METRIC {
        let book = published(name, "units: metric", "units: metric only");
        for (of, text) in book.texts.iter().filter(|(of, _)| is_of_the_book(of)) {
            let lines = with_unit(text, &OF_INCHES).into_iter().filter(|line| !book.wrote(line));
            found.extend(lines.map(|line| format!("{name}/{of}: {line}")));
        }
        assert!(book.texts.keys().any(|of| of.ends_with(".pdf")) || cfg!(not(feature = "sheets")), "{name}: no sheet");
    }
    assert!(found.is_empty(), "{} lines:\n{}", found.len(), found.join("\n"));
}

#[test]
fn an_imperial_book_without_the_other_system_has_no_millimetre_anywhere() {
    let mut found = Vec::new();
    for name in IMPERIAL {
        let book = published(name, "units: imperial", "units: imperial only");
        for (of, text) in book.texts.iter().filter(|(of, _)| is_of_the_book(of)) {
            let metric = with_unit(text, &["mm", "cm", "m²", "kg", "millimetres", "millimetre"]);
            found.extend(metric.into_iter().map(|line| format!("{name}/{of}: {line}")));
        }
    }
    assert!(found.is_empty(), "{} lines:\n{}", found.len(), found.join("\n"));
}

/// Whether the figure that a text ends with is marked as rounded, or has tenths where it is no gap.
fn is_badly_told(text: &str) -> bool {
    let figure = &text[text.trim_end_matches(|letter: char| letter.is_ascii_digit() || letter == '.').len()..];
    let before = text.trim_end_matches(figure).trim_end_matches([' ', '−']);
    let whole = figure.split_once('.').and_then(|(whole, _)| whole.parse::<u32>().ok());
    before.ends_with('≈') || whole.is_some_and(|whole| whole >= 50)
}

#[test]
fn a_metric_figure_bears_no_mark_of_rounding_and_is_whole_but_for_gaps() {
    let mut found = Vec::new();
    for (name, units) in
        METRIC.iter().map(|name| (name, "metric")).chain(IMPERIAL.iter().map(|name| (name, "imperial")))
    {
        let book = published(name, &format!("units: {units}"), &format!("units: {units}"));
        for (of, text) in book.texts.iter().filter(|(of, _)| is_of_the_book(of)) {
            for line in with_unit(text, &["mm"]) {
                if line.match_indices(" mm").any(|(at, _)| is_badly_told(&line[..at])) {
                    found.push(format!("{name}/{of}: {line}"));
                }
            }
        }
    }
    found.dedup();
    assert!(found.is_empty(), "{} lines:\n{}", found.len(), found.join("\n"));
}

/// Of a text: each range whose ends are told in unlike forms, and each fraction that stands in a text as typed.
fn unlike(line: &str) -> bool {
    let in_feet = |end: &str| end.contains('′');
    let figure = |letter: char| letter.is_ascii_digit() || matches!(letter, '′' | '″' | '-' | ' ' | '/' | '≈');
    line.match_indices(" to ").any(|(at, _)| {
        let (before, after) = (&line[..at], &line[at + 4..]);
        let from = &before[before.trim_end_matches(figure).len()..];
        let to = &after[..after.len() - after.trim_start_matches(figure).len()];
        let both = from.contains('″') && to.contains('″');
        both && in_feet(from) != in_feet(to)
    })
}

#[test]
fn an_imperial_book_tells_things_in_inches_rooms_in_feet_and_each_range_in_one_form() {
    assert!(unlike("30″ to 3′-0″") && !unlike("30″ to 36″") && !unlike("7′-6″ to 9′-0″"));
    let mut found = Vec::new();
    for name in IMPERIAL {
        let book = published(name, "units: imperial", "units: imperial");
        for (of, text) in book.texts.iter().filter(|(of, _)| is_of_the_book(of)) {
            let of_things = of.contains("/items/") || of.contains("/openings/");
            let is_wrong = |line: &&str| unlike(line) || (of_things && line.contains("′-"));
            found.extend(text.lines().filter(is_wrong).map(|line| format!("{name}/{of}: {}", line.trim())));
        }
        let rooms = book.texts.iter().filter(|(of, _)| of.starts_with("client/rooms/"));
        for (of, text) in rooms {
            assert!(text.contains("′-"), "{name}/{of} tells no room in feet and inches");
        }
    }
    assert!(found.is_empty(), "{} lines:\n{}", found.len(), found.join("\n"));
}

#[test]
fn every_fraction_of_a_page_is_set_as_one() {
    let mut found = Vec::new();
    for name in IMPERIAL {
        let book = published(name, "units: imperial", "units: imperial");
        for (of, page) in &book.pages {
            let mut rest = page.as_str();
            while let Some((text, tag)) = rest.split_once('<') {
                let raw = ["1/2", "1/4", "3/4", "1/8", "3/8", "5/8", "7/8", "1/16", "1/32"];
                let is_raw = |part: &&&str| {
                    text.match_indices(**part).any(|(at, part)| {
                        let alone = |letter: Option<char>| {
                            letter.is_none_or(|letter| !letter.is_alphanumeric() && letter != '/')
                        };
                        alone(text[..at].chars().next_back()) && alone(text[at + part.len()..].chars().next())
                    })
                };
                found.extend(raw.iter().find(is_raw).map(|_| format!("{name}/{of}: {text}")));
                let (tag, after) = tag.split_once('>').expect("a tag has an end");
                let kept = ["script", "style", "pre", "code", "title", "desc", "tspan"];
                let kept = kept.iter().find(|name| tag.split(' ').next() == Some(**name));
                let kept = kept.or_else(|| tag.starts_with("i class=\"fr").then_some(&"i"));
                rest =
                    kept.map_or(after, |name| after.split_once(&format!("</{name}>")).map_or("", |(_, after)| after));
            }
        }
    }
    assert!(found.is_empty(), "{} texts:\n{}", found.len(), found.join("\n"));
}

/// Beside a figure the other system is set smaller, on pages by its class and in drawings by its size.
#[test]
fn of_two_systems_the_other_one_stands_beside_and_smaller() {
    let book = published("attic", "units: metric", "units: metric");
    let page = &book.pages["installer/openings/bath/toilet.html"];
    assert!(page.contains("<span class=\"mm\">≈\u{a0}"), "inches beside");
    assert!(!page.contains("<span class=\"dim\">≈"), "inches stand beside, in a class of their own");
    let style = fs::read_to_string(book.project.beside("site").join("installer/assets/book.css")).expect("the styles");
    let (_, rule) = style.split_once(".mm{").or(style.split_once(".mm {")).expect("a rule for the other system");
    let (rule, _) = rule.split_once('}').expect("its end");
    assert!(rule.contains("font-size:max(.9em"), "smaller: {rule}");
}

/// Poppler tells how high each word is set.
#[test]
#[cfg(feature = "sheets")]
fn on_a_sheet_too_the_other_system_is_smaller() {
    let book = published("attic", "units: metric", "units: metric");
    let sheet = book.project.beside("site").join("client/sheets/rooms/bath.pdf");
    let output = Command::new("pdftotext").arg("-bbox").arg(sheet).arg("-").output().expect("poppler");
    let words = String::from_utf8_lossy(&output.stdout).into_owned();
    let number = |line: &str, name: &str| -> f64 {
        let value = line.split_once(&format!("{name}=\"")).and_then(|(_, rest)| rest.split_once('"'));
        value.and_then(|(value, _)| value.parse().ok()).expect("a number")
    };
    let high = |line: &str| number(line, "yMax") - number(line, "yMin");
    let lines: Vec<&str> = words.lines().filter(|line| line.contains("<word ")).collect();
    let beside = |pair: &&[&str]| pair[0].contains(">mm<") && pair[1].contains(">≈<");
    let pairs: Vec<_> = lines.windows(2).filter(beside).collect();
    assert!(!pairs.is_empty(), "no length in both systems:\n{words}");
    for pair in pairs {
        assert!(high(pair[1]) < high(pair[0]), "{} {}", pair[0].trim(), pair[1].trim());
    }
    assert!(!words.contains('\u{2063}'), "marks are taken out");
}
