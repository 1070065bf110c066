//! What all sheets share: the library, the fonts and the templates, loaded once.

use std::sync::LazyLock;

use typst::foundations::Bytes;
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Feature, Library, LibraryExt};

use crate::theme::{Group, ThemeFiles};

/// The template that a sign-off sheet begins with.
pub const SIGN_OFF: &str = "sign-off.typ";
/// The template that a change order begins with.
pub const CHANGE_ORDER: &str = "change-order.typ";

/// The fonts, in the order in which one is looked for.
const FONTS: [&str; 5] = [
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
        let standard = |name: &str| ThemeFiles::standard(Group::Sheets, name).unwrap_or_default();
        let fonts: Vec<Font> = FONTS.iter().flat_map(|name| Font::iter(Bytes::new(standard(name)))).collect();
        let theme = ThemeFiles::default();
        let templates = theme.names(Group::Sheets).into_iter();
        let sources = templates
            .map(|name| Source::new(file(name), String::from_utf8_lossy(standard(name)).into_owned()))
            .collect();
        Engine {
            // The names of rows are told as such to whoever hears a table.
            library: LazyHash::new(
                Library::builder().with_features([Feature::A11yExtras].into_iter().collect()).build(),
            ),
            book: LazyHash::new(FontBook::from_fonts(&fonts)),
            fonts,
            sources,
        }
    }
}

/// The name of a file in a sheet's world. Names are few and fixed: they are never given back.
#[expect(clippy::expect_used, reason = "each name is written in this program: none climbs out of the theme")]
pub fn file(path: &str) -> FileId {
    named(path).expect("our own paths stay inside the theme")
}

/// The name of a file of somebody's own in a sheet's world; none for one that can't be in it.
pub fn named(path: &str) -> Option<FileId> {
    let path = VirtualPath::new(path).ok()?;
    Some(RootedPath::new(VirtualRoot::Project, path).intern())
}
