//! A file that can't be understood.

use crate::assess::rules::{Check, declare};

declare! {
    /// A file can't be understood as YAML or as text
    ///
    /// ## What it checks
    /// Each file of the book is UTF-8 text and, but for notes, YAML 1.2 with one document. Tabs
    /// that indent, a second document, keys that are no words, empty files, names that are no text
    /// and files that can't be read are told here.
    ///
    /// ## Why it matters
    /// Nothing in a file that can't be understood is reviewed. Its room is reviewed as far as it
    /// goes, and what is absent there proves nothing.
    ///
    /// ## Remedy
    /// Mend the line that is named; an editor that knows YAML shows it too. Save the file as UTF-8,
    /// and indent with spaces.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   range: {takes: range, width: 30"     # the closing brace is missing
    /// ```
    ///
    /// ## Source
    /// YAML 1.2.2, chapters 5 and 6 (characters, indentation); the book's own format.
    "source/syntax", Stop,
    due: AtOnce, tells: [],
    sources: ["YAML 1.2.2", "the book's own format"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn an_unclosed_brace_is_told_where_it_matters() {
        Trial::of("source/syntax").file("rooms/kitchen/a.yaml", "selection: {a: 1\n").finds_one();
        Trial::of("source/syntax").file("rooms/kitchen/notes.md", "selection: {a: 1\n").stays_silent();
    }

    /// Source: YAML 1.2.2, section 6.1: tabs must not be used in indentation.
    #[test]
    fn a_tab_that_indents_is_called_a_tab() {
        let tabbed = "selection: Tap\nsize:\n\twidth: 3\"\n";
        Trial::of("source/syntax").file("rooms/kitchen/a.yaml", tabbed).finds("a tab stands where YAML needs spaces");
    }

    #[test]
    fn text_in_another_encoding_is_named_as_such() {
        let utf_16: Vec<u8> =
            [0xFF, 0xFE].into_iter().chain("kind: tap".encode_utf16().flat_map(u16::to_le_bytes)).collect();
        Trial::of("source/syntax")
            .file("rooms/kitchen/a.yaml", utf_16)
            .finds("`rooms/kitchen/a.yaml` is written as UTF-16");
        let latin_1 = b"selection: Caf\xE9\n".to_vec();
        Trial::of("source/syntax")
            .file("rooms/kitchen/a.yaml", latin_1)
            .finds("`rooms/kitchen/a.yaml` is not written as UTF-8");
    }

    #[test]
    fn an_empty_file_and_a_second_document_are_told() {
        Trial::of("source/syntax")
            .file("rooms/kitchen/a.yaml", "# nothing yet\n")
            .finds("`rooms/kitchen/a.yaml` is empty");
        Trial::of("source/syntax").file("rooms/kitchen/a.yaml", "kind: tap\n---\nkind: tap\n").finds_one();
    }
}
