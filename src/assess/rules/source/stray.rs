//! A YAML file that no part of the book reads.

use crate::assess::rules::{Check, declare};

declare! {
    /// A YAML file stands where no part of the book reads it
    ///
    /// ## What it checks
    /// YAML files outside `book.yaml`, `rooms/ROOM/` and `products/`.
    ///
    /// ## Why it matters
    /// A selection saved one folder too deep is a selection that nobody reviews.
    ///
    /// ## Remedy
    /// Move it to `rooms/ROOM/` or `products/`, or take it out of the book.
    ///
    /// ## Example
    /// ```yaml
    /// rooms/kitchen/old/range.yaml
    /// ```
    ///
    /// ## Source
    /// The book's own format.
    "source/stray", Query,
    sources: ["the book's own format"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_selection_one_folder_too_deep_is_told() {
        let text = "selection: Tap\nkind: tap\n";
        let found = Trial::of("source/stray").file("rooms/kitchen/old/a.yaml", text);
        found.finds("no part of a book is read from `rooms/kitchen/old/a.yaml`").weighs("query");
        Trial::of("source/stray").file("rooms/kitchen/a.yaml", text).is_silent();
    }
}
