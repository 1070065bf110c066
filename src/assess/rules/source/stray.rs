//! A YAML file or prose that no part of the book reads.

use crate::assess::rules::{Check, declare};

declare! {
    /// A file stands where no part of the book reads it
    ///
    /// ## What it checks
    /// YAML files outside `book.yaml`, `rooms/ROOM/` and `products/`. Markdown in a room's folder other
    /// than `notes.md` is a note: it is yours, and stands on no page. `notes.md` itself is shown as it stands:
    /// where it is a link, it may lead to another room's `notes.md`, and to no other file of the book.
    ///
    /// ## Why it matters
    /// A selection saved one folder too deep is a selection that nobody reviews. Words that you take to
    /// be on the client's page, and are not, are words that nobody reads.
    ///
    /// ## Remedy
    /// Move it to `rooms/ROOM/` or `products/`, or take it out of the book. Move what the client is to
    /// read into `notes.md`.
    ///
    /// ## Example
    /// ```yaml
    /// rooms/kitchen/old/range.yaml
    /// ```
    ///
    /// ## Source
    /// The book's own format.
    "source/stray", Query,
    due: AtOnce, tells: [],
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
        Trial::of("source/stray").file("rooms/kitchen/a.yaml", text).stays_silent();
    }

    #[test]
    fn prose_that_stands_on_no_page_is_told() {
        for name in ["margins.md", "Notes.md", "notes.markdown", "supplier.MD"] {
            let path = format!("rooms/kitchen/{name}");
            let found = Trial::of("source/stray").file(&path, "They would pay more.");
            found.finds(&format!("`{path}` is shown to nobody: of a room's prose `notes.md` alone stands on its page"));
        }
        Trial::of("source/stray").file("rooms/kitchen/margins.md", "Hm.").run().weighs("note");
        Trial::of("source/stray").file("rooms/kitchen/notes.md", "A window.").stays_silent();
        Trial::of("source/stray").file("products/sheet.md", "A sheet.").stays_silent();
    }
}
