//! What is still to be said in a book: the values that stand as `…`.

use crate::pipeline::Review;

use super::shown;

/// Most of them shown where they are not what was asked for.
const FEW: usize = 3;

/// How many are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OpenShown {
    /// Each, with its place.
    All,
    /// How many, and the first ones.
    Few,
}

/// The keys whose values are open, each with its place; empty where there is none.
pub fn open_values(review: &Review, which: OpenShown) -> String {
    let open = &review.book.open;
    if open.is_empty() {
        return String::new();
    }
    let most = if which == OpenShown::All { open.len() } else { FEW };
    let line = |file: &str, line: u32, key: &str| format!("  {}:{line}: {}\n", shown::line(file), shown::line(key));
    let places = open.iter().take(most).filter_map(|key| {
        let file = review.files.get(key.span.file)?;
        Some(line(&file.path, file.position(key.span.start).line, &key.value))
    });
    let text: String = places.collect();
    let values = if open.len() == 1 { "value is" } else { "values are" };
    let more = open.len() - most.min(open.len());
    let rest = if more > 0 { format!("  and {more} more\n") } else { String::new() };
    format!("{} {values} still open (`…`, `TBD` and the like):\n{text}{rest}", open.len())
}
