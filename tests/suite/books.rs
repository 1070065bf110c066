//! Whole books of unlike rooms and countries: clean as they stand, and one change away from a finding.
//!
//! `tests/books/NAME/` holds a book each. Photographs stand in for themselves: a small picture is laid
//! at every path that a book names.

mod agreement;
mod changes;
mod evenings;
mod shelf;
mod unread;

use std::path::Path;

use shelf::{TODAY, Whole, review_on, shelf};

/// Books that are held to be clean, at least.
const AT_LEAST: usize = 8;

#[test]
fn every_whole_book_is_clean_but_for_what_is_listed_with_its_reason() {
    let books = shelf();
    only_what_is_listed(&books, &shelf::place(), TODAY);
    assert!(books.len() >= AT_LEAST, "only {} books", books.len());
}

/// Holds books to the list of their shelf: each finding stands there, and each line of it is found.
#[track_caller]
fn only_what_is_listed(books: &[Whole], shelf: &Path, day: &str) {
    let remains = shelf::remains(shelf);
    let (mut faults, mut met) = (Vec::new(), vec![false; remains.len()]);
    for book in books {
        for finding in review_on(&book.files, day).findings {
            let known = remains.iter().position(|rest| rest.is(&book.name, &finding));
            match known {
                Some(nth) => met[nth] = true,
                None => faults.push(format!(
                    "{}: {} {}: {} [{}]",
                    book.name,
                    finding.severity.word(),
                    finding.rule,
                    finding.message,
                    finding.remedy
                )),
            }
        }
    }
    let gone = remains.iter().zip(&met).filter(|(_, met)| !**met).map(|(rest, _)| rest);
    faults.extend(gone.map(|rest| format!("{}: `{}` says `{}` no longer", rest.book, rest.rule, rest.says)));
    println!("{} whole books: {} findings that are right and stay, {} others", books.len(), met.len(), faults.len());
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}
