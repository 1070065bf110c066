//! The text of the files that were read, and their line starts.

use super::span::{FileId, Place, Position, Span};

/// One file's text.
#[derive(Clone, Debug)]
pub struct SourceFile {
    /// Path inside the book, with `/` between its parts.
    pub path: String,
    /// The whole text.
    pub text: String,
    line_starts: Vec<u32>,
}

impl SourceFile {
    fn new(path: String, text: String) -> Self {
        let breaks = text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n');
        let line_starts = std::iter::once(0).chain(breaks.map(|(at, _)| at as u32 + 1)).collect();
        Self { path, text, line_starts }
    }

    /// The line and column of a byte offset; an offset past the end gives the end.
    pub fn position(&self, offset: u32) -> Position {
        let mut offset = (offset as usize).min(self.text.len());
        while !self.text.is_char_boundary(offset) {
            offset -= 1;
        }
        let line = self.line_starts.partition_point(|start| *start as usize <= offset);
        let start = self.line_starts.get(line.saturating_sub(1)).map_or(0, |start| *start as usize);
        let column = self.text.get(start..offset).map_or(0, |text| text.chars().count());
        Position { line: line as u32, column: column as u32 + 1 }
    }
}

/// Every file that was read as text, by number.
#[derive(Clone, Debug, Default)]
pub struct Files {
    files: Vec<SourceFile>,
}

impl Files {
    /// Keeps a file's text and gives its number.
    pub fn add(&mut self, path: String, text: String) -> FileId {
        self.files.push(SourceFile::new(path, text));
        FileId(self.files.len() as u32 - 1)
    }

    /// The file with that number, as given by [`Files::add`] on the same list.
    pub fn get(&self, id: FileId) -> Option<&SourceFile> {
        self.files.get(id.0 as usize)
    }

    /// The files in the order in which they were read.
    pub fn iter(&self) -> impl Iterator<Item = &SourceFile> {
        self.files.iter()
    }

    /// The path that a place is in; empty for the book as a whole.
    pub fn path<'a>(&'a self, place: &'a Place) -> &'a str {
        match place {
            Place::Path(path) => path,
            Place::Text(span) => self.get(span.file).map_or("", |file| &file.path),
        }
    }

    /// Where a place begins; the first line for a file as a whole.
    pub fn start(&self, place: &Place) -> Position {
        self.position(place, |span| span.start)
    }

    /// Where a place ends; the first line for a file as a whole.
    pub fn end(&self, place: &Place) -> Position {
        self.position(place, |span| span.end)
    }

    fn position(&self, place: &Place, offset: impl Fn(&Span) -> u32) -> Position {
        match place {
            Place::Text(span) => self.get(span.file).map(|file| file.position(offset(span))),
            Place::Path(_) => None,
        }
        .unwrap_or(Position { line: 1, column: 1 })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_count_characters_not_bytes() {
        let mut files = Files::default();
        let id = files.add("a.yaml".into(), "é: 34½\"\nb: 2\n".into());
        let file = files.get(id).unwrap();
        assert_eq!(file.position(4), Position { line: 1, column: 4 });
        assert_eq!(file.position(10), Position { line: 2, column: 1 });
        assert_eq!(file.position(900), Position { line: 3, column: 1 });
    }

    #[test]
    fn an_offset_inside_a_character_gives_its_start() {
        let mut files = Files::default();
        let id = files.add("a.yaml".into(), "é".into());
        assert_eq!(files.get(id).unwrap().position(1), Position { line: 1, column: 1 });
    }
}
