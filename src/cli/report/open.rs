//! What is still to be said in a book: the values that stand as `…`.

use serde::Serialize;

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

/// A value that is still open, for programs.
#[derive(Serialize)]
pub struct OpenReport<'a> {
    file: &'a str,
    line: u32,
    column: u32,
    key: &'a str,
}

/// All values that are open, in the order of their files.
pub fn told(review: &Review) -> Vec<OpenReport<'_>> {
    let each = review.book.open.iter().filter_map(|key| {
        let file = review.files.get(key.span.file)?;
        let at = file.position(key.span.start);
        Some(OpenReport { file: &file.path, line: at.line, column: at.column, key: &key.value })
    });
    each.collect()
}

/// The keys whose values are open, each with its place; empty where there is none.
pub fn open_values(review: &Review, which: OpenShown) -> String {
    text(&told(review), which)
}

/// The same of what was told already.
pub fn text(open: &[OpenReport<'_>], which: OpenShown) -> String {
    if open.is_empty() {
        return String::new();
    }
    let most = if which == OpenShown::All { open.len() } else { FEW };
    let line = |one: &OpenReport<'_>| format!("  {}:{}: {}\n", shown::line(one.file), one.line, shown::line(one.key));
    let places: String = open.iter().take(most).map(line).collect();
    let values = if open.len() == 1 { "value is" } else { "values are" };
    let more = open.len() - most.min(open.len());
    let rest = if more > 0 { format!("  and {more} more\n") } else { String::new() };
    format!("{} {values} still open (`…`, `TBD` and the like):\n{places}{rest}", open.len())
}
