//! One verdict an opening, wherever it is told: review, client's page, installer's sheet, drawings, form.
//!
//! Tried on every opening of every whole book, as it stands and after each single change that bears on a
//! size, so that both sides of the line are met.

use std::collections::BTreeMap;

use bookmatch::book::{Book, Opening, Room, Selection};
use bookmatch::finding::Finding;
use bookmatch::pipeline;
use bookmatch::units::Date;
use bookmatch::views::client::item::ItemPage;
use bookmatch::views::pages::{BookPages, Subject};
use bookmatch::views::shared::drawing::Drawing;
use bookmatch::views::trades::opening::OpeningPage;
use rayon::prelude::*;
use roxmltree::Document;
use serde_json::Value;

use super::changes::changes;
use super::shelf::{TODAY, Texts, books_in, folder, place, shelf};

/// Each size: the rule that speaks of it, the row of the sheet, what drawings say of a misfit, and the
/// views that show it.
type Size = (&'static str, &'static str, &'static str, &'static str, &'static [&'static str]);

const SIZES: [Size; 3] = [
    ("fit/width", "Width", "too wide", "opening too wide", &["Front", "Plan"]),
    ("fit/height", "Height", "too tall", "opening too high", &["Front"]),
    ("fit/depth", "Depth", "too deep", "opening too deep", &["Side", "Plan"]),
];

/// How a size stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Is {
    Small,
    Large,
    Well,
}

/// What was met, and what did not agree.
#[derive(Default)]
struct Met {
    openings: usize,
    misfits: usize,
    faults: Vec<String>,
}

fn met(texts: &Texts, whose: &str) -> Met {
    let review = pipeline::review(&folder(texts), Date::parse(TODAY).unwrap()).expect("a book");
    let pictures = BTreeMap::new();
    let subject = Subject {
        book: &review.book,
        assessment: &review.assessment,
        files: &review.files,
        pictures: &pictures,
        today: review.today,
        draft: true,
    };
    let pages = BookPages::of(subject);
    let (mut items, mut openings) = (Vec::new(), Vec::new());
    for portion in pages.pages() {
        let site = portion();
        items.extend(site.client.items);
        openings.extend(site.installer.openings);
    }
    let mut met = Met::default();
    let selections = review.book.rooms.iter().flat_map(|room| room.selections.iter().map(move |one| (room, one)));
    assert_eq!(items.len(), selections.clone().count(), "{whose}: a page a selection");
    let pages: Vec<Page<'_>> =
        selections.zip(&items).map(|((room, selection), page)| (room, selection, page)).collect();
    for sheet in &openings {
        let one = one((&review.book, &review.assessment.findings), &pages, sheet, whose);
        met.openings += one.openings;
        met.misfits += one.misfits;
        met.faults.extend(one.faults);
    }
    met
}

/// A selection at its place, and its page for the client.
type Page<'a> = (&'a Room, &'a Selection, &'a ItemPage);

fn one((book, findings): (&Book, &[Finding]), pages: &[Page<'_>], sheet: &OpeningPage, whose: &str) -> Met {
    let mut met = Met { openings: 1, ..Met::default() };
    let form: Value = serde_json::from_str(sheet.asks.as_str()).unwrap();
    let (folder, name) = (form["room"].as_str().unwrap(), form["opening"].as_str().unwrap());
    let room = book.rooms.iter().find(|room| room.folder == folder).unwrap();
    let opening = room.opening(name).unwrap();
    let stands_here =
        |one: &&Page<'_>| std::ptr::eq(one.0, room) && one.1.place.get().is_some_and(|place| place == name);
    let Some((_, selection, page)) = pages.iter().find(stands_here) else { return met };
    let item = selection.name.value.as_str();
    let found = |rule: &str| {
        let here = |one: &&Finding| one.room.as_deref() == Some(folder) && one.subject.name() == Some(item);
        findings.iter().filter(here).any(|one| one.rule.text() == rule)
    };
    let (mut misfits, mut faults) = (0, Vec::new());
    for size in SIZES {
        let Some(row) = sheet.sizes.iter().find(|row| row.name == size.1) else { continue };
        let is = match row.verdict.word.as_str() {
            "Too small" => Is::Small,
            "Too large" => Is::Large,
            _ => Is::Well,
        };
        misfits += usize::from(is != Is::Well);
        // What is not known of a size is not known of the whole.
        let fits = sheet.verdict.word.starts_with("Fits");
        if fits && row.verdict.word == "Not known" {
            faults.push(format!("{} is not known, and the sheet says `{}`", size.1, sheet.verdict.word));
        }
        // Two that are stacked share a height: what is wrong of it is told at the lower one alone.
        let shared = form_asks(&form, size.1).is_some_and(|asked| asked["unsure"] == "stack");
        if !shared && found(size.0) != (is != Is::Well) {
            faults.push(format!("the review's {} is {}, the sheet says {is:?}", size.0, found(size.0)));
        }
        let by_form = form_says(&form, opening, size.1);
        if by_form.is_some_and(|by_form| by_form != is) {
            faults.push(format!("{} is {is:?} on the sheet and {by_form:?} by the form", size.1));
        }
        faults.extend(by_sheet_and_drawings(sheet, size, is));
    }
    let cards = page.options.iter().filter(|card| card.chosen || page.options.len() == 1);
    for fit in cards.filter_map(|card| card.fit.as_ref()).filter(|fit| fit.verdict != sheet.verdict) {
        faults.push(format!("the client reads `{}`, the installer `{}`", fit.verdict.word, sheet.verdict.word));
    }
    met.misfits = misfits;
    met.faults = faults.into_iter().map(|fault| format!("{whose}: {folder}/{name}: {fault}")).collect();
    met
}

/// The sheet's own verdict and each drawing on it, against one size.
fn by_sheet_and_drawings(sheet: &OpeningPage, (_, size, thing, hole, views): Size, is: Is) -> Vec<String> {
    let mut faults = Vec::new();
    if is != Is::Well && sheet.verdict.word != "Does not fit" {
        faults.push(format!("{size} is {is:?} and the sheet says `{}`", sheet.verdict.word));
    }
    for drawing in &sheet.drawings {
        let shown = views.iter().any(|view| drawing_is(drawing, view));
        let says = letters(drawing);
        let ends = |words: &str| says.iter().any(|text| text.ends_with(&format!(" {words}")));
        let drawn = (ends(thing) && !ends(hole), ends(hole));
        if drawn != (shown && is == Is::Small, shown && is == Is::Large) {
            faults.push(format!("{size} is {is:?} and `{}` says {says:?}", drawing.name));
        }
    }
    faults
}

fn drawing_is(drawing: &Drawing, view: &str) -> bool {
    let svg = drawing.svg.as_str();
    let title = svg.split("<title").nth(1).and_then(|rest| rest.split('>').nth(1)).unwrap_or_default();
    title.split(' ').next() == Some(view)
}

/// All the lettering of a drawing.
fn letters(drawing: &Drawing) -> Vec<String> {
    let svg = drawing.svg.as_str();
    let document = Document::parse(svg).unwrap();
    let texts = document.descendants().filter(|node| node.has_tag_name("text"));
    let all = |node: roxmltree::Node<'_, '_>| {
        node.descendants().filter_map(|inner| inner.text().filter(|_| inner.is_text())).collect()
    };
    texts.map(all).collect()
}

/// What the form asks of a size.
fn form_asks<'a>(form: &'a Value, size: &str) -> Option<&'a Value> {
    form["asks"].as_array()?.iter().find(|one| one["what"] == size.to_lowercase().as_str())
}

/// What the form makes of the readings that the book has, by the figures that it was given.
fn form_says(form: &Value, opening: &Opening, size: &str) -> Option<Is> {
    let asked = form_asks(form, size)?;
    // The book's readings are from the faces that the form takes for the usual ones.
    let (finished, studs) = (form["from"]["floor"] == "finished-floor", form["from"]["walls"] == "studs");
    let unknown = asked["on_floor"] == true && form["from"]["floor_unknown"] == true && !finished;
    if unknown || !asked["unsure"].is_null() && (asked["unsure"] != "studs" || studs) {
        return None;
    }
    let readings = match size {
        "Width" => &opening.width,
        "Height" => &opening.height,
        _ => &opening.depth,
    };
    let number = |value: &Value| value.as_str().map(|text| text.parse::<i64>().unwrap());
    let comes = |one: &&Value| if one["of"] == "floor" { !finished } else { studs };
    let to_come: i64 = asked["less"]
        .as_array()
        .map_or(0, |less| less.iter().filter(comes).filter_map(|one| number(&one["length"])).sum());
    let above = number(&asked["above"]).unwrap_or(i64::MAX);
    let least = readings.get()?.least()?.value.nanometres() - to_come;
    let least = least.min(above);
    Some(match (number(&asked["least"]), number(&asked["most"])) {
        (Some(asks), _) if least < asks => Is::Small,
        (_, Some(most)) if least > most => Is::Large,
        _ => Is::Well,
    })
}

#[test]
fn review_client_installer_drawing_and_form_give_one_verdict_on_every_opening() {
    let books = shelf();
    let sizes = ["fit/width", "fit/height", "fit/depth", "fit/face", "fit/play"];
    let changes = changes(&books);
    let bears = changes.iter().filter(|one| one.rule.as_deref().is_some_and(|rule| sizes.contains(&rule)));
    let evenings = books_in(&place().join("evenings"));
    let whole = books.iter().chain(&evenings).map(|book| (book.files.clone(), book.name.clone()));
    let changed = bears.filter_map(|one| Some((one.made(&books[one.book].files).ok()?.0, one.line.clone())));
    let all: Vec<(Texts, String)> = whole.chain(changed).collect();
    let met: Vec<Met> = all.par_iter().map(|(texts, whose)| met(texts, whose)).collect();
    let openings: usize = met.iter().map(|one| one.openings).sum();
    let misfits: usize = met.iter().map(|one| one.misfits).sum();
    let faults: Vec<&String> = met.iter().flat_map(|one| &one.faults).collect();
    println!("{openings} openings of {} books, {misfits} sizes that do not fit, {} faults", all.len(), faults.len());
    assert!(faults.is_empty(), "\n{}", faults.iter().map(|one| one.as_str()).collect::<Vec<_>>().join("\n"));
    assert!(misfits >= 50 && openings >= 200, "too little was met: {misfits} misfits at {openings} openings");
}
