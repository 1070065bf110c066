//! Books that designers who had never seen the program wrote in an evening, from the README and `explain` alone:
//! galley, range cooker, oven tower, two rooms in Spanish, a bath for a wheelchair, one under a roof, a mudroom,
//! an island, a flat. Each holds its questions, and where the answer is.

use std::path::PathBuf;

use super::only_what_is_listed;
use super::shelf::{books_in, place};
use crate::project::Project;

/// The day on which they were written.
const THE_EVENING: &str = "2026-11-29";

fn evenings() -> PathBuf {
    place().join("evenings")
}

#[test]
fn the_books_of_an_evening_are_clean_but_for_what_is_listed_with_its_reason() {
    let books = books_in(&evenings());
    only_what_is_listed(&books, &evenings(), THE_EVENING);
    assert!(books.len() >= 9, "only {} books", books.len());
}

/// `questions.md`: a row each, `question | what is asked of explain | what its page says`.
#[test]
fn what_was_asked_in_an_evening_is_answered_by_the_page_that_one_asks_for() {
    let project = Project::new();
    let mut asked = 0;
    for book in books_in(&evenings()) {
        let text = book.files.get("questions.md").unwrap_or_else(|| panic!("{}: no questions", book.name));
        for row in text.lines().skip(4) {
            let cells: Vec<&str> = row.trim_matches('|').split('|').map(str::trim).collect();
            let [question, page, says] = cells[..] else { panic!("{}: {row}", book.name) };
            let shown = project.run(["explain", page]).exits(0).stdout;
            assert!(shown.to_lowercase().contains(&says.to_lowercase()), "{}: {question}: {page}: {shown}", book.name);
            asked += 1;
        }
    }
    println!("{asked} questions answered");
    assert!(asked >= 45, "only {asked} questions");
}
