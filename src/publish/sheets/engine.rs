//! What all sheets share: the library, the fonts and the templates, loaded once.

use std::sync::LazyLock;

use typst::foundations::Bytes;
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt};

/// The template that a sign-off sheet begins with.
pub const SIGN_OFF: &str = "sign-off.typ";
/// The template that a change order begins with.
pub const CHANGE_ORDER: &str = "change-order.typ";

macro_rules! theme {
    ($($path:literal),* $(,)?) => {
        [$(($path, include_bytes!(concat!("../../../themes/standard/sheets/", $path)).as_slice())),*]
    };
}

static TEMPLATES: [(&str, &[u8]); 6] =
    theme!["sign-off.typ", "change-order.typ", "page.typ", "item.typ", "signing.typ", "type.typ"];

static FONTS: [(&str, &[u8]); 5] = theme![
    "fonts/Literata-Regular.ttf",
    "fonts/Literata-Medium.ttf",
    "fonts/LiterataDisplay-Regular.ttf",
    "fonts/BarlowSemiCondensed-Medium.ttf",
    "fonts/BarlowSemiCondensed-SemiBold.ttf",
];

/// The shared part of every sheet's world.
pub struct Engine {
    /// Typst's own functions.
    pub library: LazyHash<Library>,
    /// What the fonts are called, and which letters they have.
    pub book: LazyHash<FontBook>,
    /// The fonts, in the order of the font book.
    pub fonts: Vec<Font>,
    /// The templates.
    pub sources: Vec<Source>,
}

static ENGINE: LazyLock<Engine> = LazyLock::new(Engine::load);

/// The engine, loaded on first use.
pub fn engine() -> &'static Engine {
    &ENGINE
}

impl Engine {
    fn load() -> Engine {
        let fonts: Vec<Font> = FONTS.iter().flat_map(|(_, data)| Font::iter(Bytes::new(*data))).collect();
        let sources = TEMPLATES
            .iter()
            .map(|(path, text)| Source::new(file(path), String::from_utf8_lossy(text).into_owned()))
            .collect();
        Engine {
            library: LazyHash::new(Library::default()),
            book: LazyHash::new(FontBook::from_fonts(&fonts)),
            fonts,
            sources,
        }
    }
}

/// The name of a file in a sheet's world. Names are few and fixed: they are never given back.
#[expect(clippy::expect_used, reason = "each name is written in this program: none climbs out of the theme")]
pub fn file(path: &str) -> FileId {
    let path = VirtualPath::new(path).expect("our own paths stay inside the theme");
    RootedPath::new(VirtualRoot::Project, path).intern()
}
