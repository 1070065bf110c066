//! A picture that the book names.

use crate::digest::Digest;
use crate::source::Span;
use crate::vocabulary::record;

record! {
    marked short "file" as String;
    pub struct Photo = PHOTO("photo", "a picture, and what it shows to those who can't see it") {
        path: String = "file", "its file, beside the record or in a `photos` folder there", "range-front.jpg"
            => told "sha256" "of the file's bytes; null where there is no such file";
        alt: Option<String> = "alt",
            "what it shows, in a sentence",
            "The range from the front, its oven door half open" => marked;
        caption: Option<String> = "caption", "a line under it", "Seen from the ledge" => marked;
    }
    besides {
        /// Where it is named.
        span: Span = |fields| fields.place_of("file").unwrap_or(fields.span);
    }
}

/// What a picture's file says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PhotoFile {
    /// Width in pixels, turned upright.
    pub width: u32,
    /// Height in pixels, turned upright.
    pub height: u32,
    /// The digest of its bytes; taken only when somebody asks for it, such as a book with a record.
    pub digest: Option<Digest>,
}
