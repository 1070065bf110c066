//! A path or a link that leaves the book.

use crate::assess::rules::{Check, declare};

declare! {
    /// A path or a link leads out of the book
    ///
    /// ## What it checks
    /// Pictures named with an absolute path or with `..`, and links in the folder that lead out of
    /// it, to a folder, or to nothing. What is in the folder and no part of the book counts as outside:
    /// `record/`, hidden files, the cache and what was published. Links in the cache, which is written to.
    ///
    /// ## Why it matters
    /// The book is a folder that is sent, copied and published. Nothing outside it is ever read, so
    /// that no private file ends up on a page: a link to a key would show the key to the client.
    ///
    /// ## Remedy
    /// Copy the file into the book and name it from there.
    ///
    /// ## Example
    /// ```yaml
    /// photos: [../other-house/range.jpg]
    /// ```
    ///
    /// ## Source
    /// The book's own format.
    "source/outside-book", Stop,
    due: AtOnce, tells: [],
    sources: ["the book's own format"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_picture_is_named_from_within_the_book() {
        let photo = |path: &str| {
            Trial::of("source/outside-book").selection("selection: Tap\nkind: tap", &format!("photos: ['{path}']"))
        };
        for path in
            ["../../secret.jpg", "/etc/passwd", "a/../../b.jpg", "C:\\pictures\\a.jpg", "https://example.com/a.jpg"]
        {
            photo(path).finds(&format!("`{path}` leads out of the book"));
        }
        for path in ["record/keys/ada.key", "Record/a.jpg", ".env", ".git/a.jpg", "old/.a.jpg"] {
            photo(path).finds(&format!("`{path}` is no part of a book"));
        }
        photo("a.jpg").stays_silent();
    }
}
