//! The sheet of the example's whole book: all that the client is shown stands on it, on few pages.

use std::fs;
use std::path::Path;

use bookmatch::pipeline;
use bookmatch::source::Folder;
use bookmatch::units::Date;

use super::readers::Pdf;
use crate::project::example::{TODAY, published};

/// What a page lists and no mark is of: both move with the work and the supplier.
const MOVES: [&str; 2] = ["Lead time", "Order by"];

fn whole_book() -> Pdf {
    Pdf::of(&fs::read(published().join("client/sheets/whole-book.pdf")).expect("the sheet of the whole book"))
}

/// Letters and figures alone, so that neither line breaks nor spaces count.
fn bare(text: &str) -> String {
    text.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

/// The text between two marks, again and again, its own marks left out.
fn between<'a>(text: &'a str, from: &'a str, to: &'a str) -> impl Iterator<Item = String> + 'a {
    text.split(from).skip(1).map(move |rest| without_tags(rest.split(to).next().unwrap_or_default()))
}

fn without_tags(markup: &str) -> String {
    let mut pieces = markup.split('<');
    let first = pieces.next().unwrap_or_default().to_owned();
    let text = pieces.fold(first, |text, piece| text + piece.split_once('>').map_or("", |(_, rest)| rest));
    [("&nbsp;", " "), ("&quot;", "\""), ("&#39;", "'"), ("&amp;", "&")]
        .iter()
        .fold(text, |text, (code, letter)| text.replace(code, letter))
}

/// It took 26 sheets: a picture's height alone, with as much paper left empty.
#[test]
fn the_whole_book_takes_few_pages_and_nothing_on_them_is_small() {
    let pdf = whole_book();
    let pages: usize = pdf.info("Pages").parse().expect("a number");
    assert!(pages <= 14, "{pages} pages");
    assert!(pdf.sizes().iter().all(|size| *size >= 7.0), "{:?}", pdf.sizes());
}

/// Every value that the pages of the items show of an option, chosen or not, can be read on the sheet.
#[test]
fn each_option_has_all_that_its_page_shows_of_it() {
    let sheet: String = whole_book().texts().into_iter().map(|(_, text)| text).collect();
    let sheet = bare(&sheet);
    let (mut pages, mut values) = (0, 0);
    for room in fs::read_dir(published().join("client/items")).expect("the items") {
        for page in fs::read_dir(room.expect("a room").path()).expect("its items") {
            let page = page.expect("a page").path();
            let text = fs::read_to_string(&page).expect("a page");
            let names = between(&text, "<dt>", "</dt>").zip(between(&text, "</dt><dd>", "</dd>"));
            for (name, value) in names.filter(|(name, value)| !MOVES.contains(&name.as_str()) && value != "–") {
                assert!(
                    sheet.contains(&bare(&value)) || !is_of_an_option(&text, &name),
                    "{}: {name} {value}",
                    page.display()
                );
                values += 1;
            }
            pages += 1;
        }
    }
    assert!(pages > 40 && values > 300, "{values} values of {pages} pages");
}

/// Whether a fact stands in the description of an option, rather than in the head of the page.
fn is_of_an_option(page: &str, name: &str) -> bool {
    between(page, "<dl class=\"spec\">", "</dl>").any(|list| list.contains(name))
}

#[test]
fn each_option_has_its_picture_and_each_counter_its_drawing() {
    let folder = Folder::open(Path::new("example-project")).expect("the example");
    let review = pipeline::review_to_issue(&folder, Date::parse(TODAY).expect("a day")).expect("a book");
    let options = review.book.selections().flat_map(|(_, selection)| &selection.options);
    let pictures = options.filter(|option| !option.photos.is_empty()).count();
    let inside = whole_book().ask("qpdf", &["--json"], &[]);
    let layouts = inside.matches("\"/Alt\": \"u:Piece ").count();
    assert!(layouts >= 2, "{layouts} layouts");
    assert_eq!(inside.matches("\"/S\": \"/Figure\"").count(), pictures + layouts);
}

#[test]
fn each_caution_is_a_line_at_its_item_and_stands_in_full_words_once() {
    let pdf = whole_book();
    let text = bare(&pdf.texts().into_iter().map(|(_, text)| text).collect::<String>());
    for full in ["Gas can kill. Piping, connection", "Electricity can kill. Circuits", "Heavy enough to injure."] {
        assert_eq!(text.matches(&bare(full)).count(), 1, "{full}");
    }
    let pages = pdf.pages().concat();
    let lines: Vec<&str> = pages.lines().filter(|line| line.contains("Caution:")).collect();
    assert!(lines.len() > 30, "{} cautions", lines.len());
    for line in lines {
        assert!(line.trim_end().ends_with(')'), "a caution that is no line: {line}");
    }
}
