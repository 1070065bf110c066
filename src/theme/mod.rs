//! The files of a theme: the standard ones, which are in the program, and a folder of the book's own laid over them.
//!
//! A file of the book's own takes the place of the standard one of its name; what the folder leaves out is the
//! standard one. Scripts and the look of cautions are nobody's to change: what is signed and what can hurt does
//! not hang on a theme.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use include_dir::{Dir, include_dir};

use crate::digest::Digest;

static TEMPLATES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/standard/templates");
static STYLES: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/standard/css");
static SCRIPTS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/standard/scripts");
static WORDS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/standard/words");
static SHEETS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/standard/sheets");
static FONTS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/themes/standard/fonts");

/// What is said of a theme to whoever changes it.
const README: &str = include_str!("../../themes/standard/README.md");

/// The style of cautions: always the standard one, and a file of its own that each page links last.
pub const CAUTIONS: &str = "95-cautions.css";

/// What files of a theme are for, by the folder of the theme that they stand in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// Templates of pages.
    Templates,
    /// Style sheets, joined in the order of their names.
    Styles,
    /// Scripts of pages: the standard ones alone.
    Scripts,
    /// Languages.
    Words,
    /// Templates of sheets of paper, and the pictures on them.
    Sheets,
    /// Fonts of pages.
    Fonts,
    /// Pictures that templates and styles show.
    Pictures,
}

impl Group {
    /// Those that a book's own theme may have.
    pub const OWN: [Self; 6] = [Self::Templates, Self::Styles, Self::Words, Self::Sheets, Self::Fonts, Self::Pictures];

    /// The folder of the theme.
    pub fn folder(self) -> &'static str {
        match self {
            Self::Templates => "templates",
            Self::Styles => "css",
            Self::Scripts => "scripts",
            Self::Words => "words",
            Self::Sheets => "sheets",
            Self::Fonts => "fonts",
            Self::Pictures => "pictures",
        }
    }

    /// How the names of its files end.
    pub fn endings(self) -> &'static [&'static str] {
        match self {
            Self::Templates => &[".html", ".css"],
            Self::Styles => &[".css"],
            Self::Scripts => &[".js"],
            Self::Words => &[".yaml"],
            Self::Sheets => &[".typ", ".png", ".jpg", ".svg"],
            Self::Fonts => &[".woff2"],
            Self::Pictures => &[".png", ".jpg", ".svg", ".webp"],
        }
    }

    fn standard(self) -> Option<&'static Dir<'static>> {
        match self {
            Self::Templates => Some(&TEMPLATES),
            Self::Styles => Some(&STYLES),
            Self::Scripts => Some(&SCRIPTS),
            Self::Words => Some(&WORDS),
            Self::Sheets => Some(&SHEETS),
            Self::Fonts => Some(&FONTS),
            Self::Pictures => None,
        }
    }
}

/// Why a file in the folder of a theme can be no part of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Misplaced {
    /// It stands in no folder that a theme has.
    Nowhere,
    /// Its name does not end as those of its folder do.
    Ending(Group),
    /// It is one that no theme changes.
    NotToChange,
}

/// The files of a theme.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ThemeFiles {
    /// The folder in the book; empty where the theme is the standard one.
    folder: String,
    own: BTreeMap<String, Arc<[u8]>>,
}

impl ThemeFiles {
    /// The standard theme, over which files of that folder of the book are to be laid.
    pub fn over_standard(folder: &str) -> Self {
        Self { folder: folder.to_owned(), own: BTreeMap::new() }
    }

    /// Whether a file of the book's own theme, by its path there, is one; nothing where it is for its reader alone.
    ///
    /// # Errors
    /// Where it can be no part of a theme.
    pub fn belongs(path: &str) -> Result<Option<Group>, Misplaced> {
        if path.ends_with(".md") || path.rsplit('/').next().is_some_and(|name| name.starts_with("LICENSE")) {
            return Ok(None);
        }
        let (folder, name) = path.split_once('/').ok_or(Misplaced::Nowhere)?;
        if folder == Group::Scripts.folder() || (folder, name) == (Group::Styles.folder(), CAUTIONS) {
            return Err(Misplaced::NotToChange);
        }
        let group = Group::OWN.into_iter().find(|group| group.folder() == folder).ok_or(Misplaced::Nowhere)?;
        if name.contains('/') {
            return Err(Misplaced::Nowhere);
        }
        let ends = group.endings().iter().any(|ending| name.ends_with(ending));
        if ends { Ok(Some(group)) } else { Err(Misplaced::Ending(group)) }
    }

    /// Whether a path of the book lies in the folder of its theme.
    pub fn is_in(&self, path: &str) -> bool {
        !self.folder.is_empty() && path.strip_prefix(&self.folder).is_some_and(|rest| rest.starts_with('/'))
    }

    /// Lays a file over the standard one of its name.
    pub fn lay(&mut self, path: &str, bytes: Vec<u8>) {
        self.own.insert(path.to_owned(), bytes.into());
    }

    /// The names of all files of a group, in order.
    pub fn names(&self, group: Group) -> BTreeSet<&str> {
        let standard = group.standard().into_iter().flat_map(|folder| folder.files());
        let standard = standard.filter_map(|file| file.path().to_str());
        let ends = |name: &&str| group.endings().iter().any(|ending| name.ends_with(ending));
        standard.chain(self.own_names(group)).filter(ends).collect()
    }

    /// The names of the book's own files of a group.
    pub fn own_names(&self, group: Group) -> impl Iterator<Item = &str> {
        self.own.keys().filter_map(move |path| path.strip_prefix(group.folder())?.strip_prefix('/'))
    }

    /// What a file holds.
    pub fn bytes(&self, group: Group, name: &str) -> Option<&[u8]> {
        let own = self.own.get(&format!("{}/{name}", group.folder())).map(|bytes| &**bytes);
        own.or_else(|| Self::standard(group, name))
    }

    /// What the standard file of that name holds.
    pub fn standard(group: Group, name: &str) -> Option<&'static [u8]> {
        group.standard()?.get_file(name).map(include_dir::File::contents)
    }

    /// The licences that go with the standard fonts, by name.
    pub fn licences() -> impl Iterator<Item = (&'static str, &'static [u8])> {
        let is_licence = |name: &&str| name.starts_with("LICENSE");
        FONTS.files().filter_map(move |file| Some((file.path().to_str().filter(is_licence)?, file.contents())))
    }

    /// Where a file stands, as whoever mends it finds it: in the book, or in the standard theme.
    pub fn place(&self, group: Group, name: &str) -> String {
        let inside = format!("{}/{name}", group.folder());
        if self.own.contains_key(&inside) { format!("{}/{inside}", self.folder) } else { inside }
    }

    /// The digest of what is the book's own of some groups; none where nothing is.
    pub fn digest(&self, groups: &[Group]) -> Option<Digest> {
        let is_of = |path: &str| groups.iter().any(|group| path.split('/').next() == Some(group.folder()));
        let own = self.own.iter().filter(|(path, _)| is_of(path));
        let parts: Vec<&[u8]> = own.flat_map(|(path, bytes)| [path.as_bytes(), &**bytes]).collect();
        (!parts.is_empty()).then(|| Digest::of_parts(&parts))
    }

    /// Every standard file that a book may change, by its path in the theme, and what is to be known of them.
    pub fn to_change() -> Vec<(String, &'static [u8])> {
        let of = |group: Group| {
            let files = group.standard().into_iter().flat_map(|folder| folder.files());
            files.filter_map(move |file| {
                let path = format!("{}/{}", group.folder(), file.path().to_str()?);
                let is_notes = path == "words/STYLE.md";
                let takes = Self::belongs(&path).is_ok_and(|group| group.is_some());
                (is_notes || takes && group != Group::Fonts).then(|| (path, file.contents()))
            })
        };
        let mut files: Vec<(String, &[u8])> = Group::OWN.into_iter().flat_map(of).collect();
        files.push(("README.md".into(), README.as_bytes()));
        files.sort();
        files
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_of_the_books_own_takes_the_place_of_the_standard_one_and_of_no_other() {
        let mut files = ThemeFiles::over_standard("house");
        files.lay("css/20-type.css", b"p { margin: 0 }".to_vec());
        files.lay("pictures/sign.svg", b"<svg/>".to_vec());
        assert_eq!(files.bytes(Group::Styles, "20-type.css"), Some(b"p { margin: 0 }".as_slice()));
        assert_eq!(files.bytes(Group::Styles, "10-tokens.css"), ThemeFiles::standard(Group::Styles, "10-tokens.css"));
        assert_eq!(files.place(Group::Styles, "20-type.css"), "house/css/20-type.css");
        assert_eq!(files.place(Group::Styles, "10-tokens.css"), "css/10-tokens.css");
        assert_eq!(files.names(Group::Pictures), BTreeSet::from(["sign.svg"]));
        assert!(files.digest(&[Group::Styles]).is_some() && files.digest(&[Group::Words, Group::Sheets]).is_none());
    }

    #[test]
    fn what_is_signed_and_how_cautions_look_is_not_a_themes_to_change() {
        for path in ["scripts/sign.js", "scripts/own.js", "css/95-cautions.css"] {
            assert_eq!(ThemeFiles::belongs(path), Err(Misplaced::NotToChange), "{path}");
        }
        for path in ["cover.html", "template/cover.html", "templates/old/cover.html"] {
            assert_eq!(ThemeFiles::belongs(path), Err(Misplaced::Nowhere), "{path}");
        }
        assert_eq!(ThemeFiles::belongs("words/qq.yml"), Err(Misplaced::Ending(Group::Words)));
        for path in ["README.md", "words/STYLE.md", "fonts/LICENSE-own.txt"] {
            assert_eq!(ThemeFiles::belongs(path), Ok(None), "{path}");
        }
        let laid = ThemeFiles::to_change();
        assert!(laid.iter().all(|(path, _)| !path.starts_with("scripts/") && !path.ends_with(CAUTIONS)));
        assert!(laid.iter().any(|(path, _)| path == "templates/cover.html"));
    }
}
