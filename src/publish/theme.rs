//! A theme made ready: templates that parse, styles and scripts put together, and what belongs to them.

use crate::language::{Language, LanguageError};
use crate::pictures::Digest;
use crate::theme::{CAUTIONS, Group, ThemeFiles};
use crate::views::shared::data::Data;
use serde_json::Value;
use std::collections::BTreeMap;
use std::error::Error;
use std::fmt;
use std::sync::Arc;
use tera::{Context, ErrorKind, Kwargs, State, Tera};

mod bundles;
mod says;

use bundles::BUNDLES;

/// The style of what scripts put on a page.
const ACTS: &str = "assets/act.css";

/// How cautions look: no other style is in this file, so that no fault of one reaches it.
const OF_CAUTIONS: &str = "assets/cautions.css";

/// What is wrong with a theme, or with a page that it was asked to show.
#[derive(Debug)]
pub enum ThemeError {
    /// A template is faulty, or names something that is not there: its place, and what.
    Template {
        /// File, line and column, as far as they are known.
        place: String,
        /// What is wrong.
        what: String,
    },
    /// A template of sheets is faulty; told with file, line and column.
    Sheets(String),
    /// A file of words is faulty; told with file and line.
    Words(LanguageError),
    /// A file is not text.
    NotText(String),
    /// A template leaves out of a page what no theme may: the template, the page, and what is missing.
    LeftOut {
        /// The template.
        template: String,
        /// The page.
        page: String,
        /// What it must say.
        what: String,
    },
}

impl fmt::Display for ThemeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ThemeError::Template { place, what } => {
                write!(
                    f,
                    "a template of the theme is faulty: {place}{what}; mend it, or delete the file for the standard one"
                )
            }
            ThemeError::Sheets(what) => f.write_str(what),
            ThemeError::Words(error) => write!(f, "the words of the theme are faulty: {error}"),
            ThemeError::NotText(file) => {
                write!(f, "the theme's file `{file}` is not text in UTF-8; save it anew, or delete it")
            }
            ThemeError::LeftOut { template, page, what } => {
                write!(
                    f,
                    "`{template}`, or what it includes, leaves out of `{page}` what no theme may: {what}; put it back"
                )
            }
        }
    }
}

impl Error for ThemeError {}

/// A theme that has been read and checked: every template parses and names only what exists.
pub struct Theme {
    files: ThemeFiles,
    templates: Tera,
    assets: BTreeMap<String, Arc<[u8]>>,
}

impl Theme {
    /// The theme that comes with the program.
    ///
    /// # Errors
    /// When one of its files is faulty.
    pub fn standard() -> Result<Theme, ThemeError> {
        Theme::of(ThemeFiles::default())
    }

    /// A theme by its files.
    ///
    /// # Errors
    /// When one of them is faulty.
    pub fn of(files: ThemeFiles) -> Result<Theme, ThemeError> {
        let mut templates = Tera::new();
        templates.register_filter("css_text", css_text);
        let pages = text_files(&files, Group::Templates)?;
        let added = templates.add_raw_templates(pages.iter().map(|(name, text)| (name.as_str(), *text)));
        added.map_err(|error| faulty(&files, &error))?;
        Language::check().map_err(ThemeError::Words)?;
        check_sheets(&files)?;
        let assets = assets(&files)?;
        Ok(Theme { templates, assets, files })
    }

    /// The files that it is made of.
    pub fn files(&self) -> &ThemeFiles {
        &self.files
    }

    /// By what pages that are made with it differ from those of the standard one; none where they do not.
    pub fn digest(&self) -> Option<Digest> {
        self.files.digest(&[Group::Templates, Group::Words])
    }

    /// Files that every folder of the site carries, by their path in that folder.
    pub fn assets(&self) -> &BTreeMap<String, Arc<[u8]>> {
        &self.assets
    }

    /// The files that one folder carries: those of every folder, and the scripts of its own pages.
    pub fn assets_of(&self, folder: &str) -> impl Iterator<Item = (&String, &Arc<[u8]>)> {
        let other =
            move |path: &str| BUNDLES.iter().any(|bundle| !bundle.folders.contains(&folder) && bundle.path == path);
        let acts = BUNDLES.iter().any(|bundle| bundle.folders.contains(&folder));
        self.assets.iter().filter(move |(path, _)| !other(path) && (acts || *path != ACTS))
    }

    /// A page with the link to the look of cautions as the last of its head, wherever else a template has links.
    ///
    /// # Errors
    /// When it has no head that ends.
    pub fn with_cautions(&self, (template, page): (&str, &str), base: &str, html: &str) -> Result<String, ThemeError> {
        let link = format!("<link rel=\"stylesheet\" href=\"{base}{OF_CAUTIONS}\">\n");
        let (head, rest) = html.split_once("</head>").ok_or_else(|| ThemeError::LeftOut {
            template: self.files.place(Group::Templates, template),
            page: page.to_owned(),
            what: "the end of its head, `</head>`".into(),
        })?;
        Ok(format!("{head}{link}</head>{rest}"))
    }

    /// Renders a template with a page's values and the words of a language, which it sees as `w`.
    ///
    /// # Errors
    /// When the template names a value that the page does not have.
    pub fn render(&self, template: &str, language: Language, page: &Context) -> Result<String, ThemeError> {
        let words = language.words();
        let mut context = page.clone();
        context.insert("w", words.tree());
        context.insert("said_by_scripts", &said_by_scripts(words.tree()));
        context.insert("lang", language.tag());
        self.templates.render(template, &context).map_err(|error| faulty(&self.files, &error))
    }
}

/// What is wrong with a template, with its place.
fn faulty(files: &ThemeFiles, error: &tera::Error) -> ThemeError {
    let place = |name: &str| files.place(Group::Templates, name);
    let fault = |place: String, what: String| ThemeError::Template { place, what };
    match error.kind() {
        ErrorKind::SyntaxError(report) | ErrorKind::RenderingError(report) => {
            let (line, column) = (report.span().start_line, report.span().start_col + 1);
            let at = format!("`{}`, line {line}, column {column}: ", place(report.filename()));
            fault(at, report.message().to_owned())
        }
        ErrorKind::MissingParent { current, parent } => {
            fault(format!("`{}`: ", place(current)), format!("it extends `{parent}`, which is not there"))
        }
        ErrorKind::CircularExtend { tpl, .. } => fault(format!("`{}`: ", place(tpl)), "it extends itself".into()),
        ErrorKind::CircularInclude { tpl, .. } => fault(format!("`{}`: ", place(tpl)), "it includes itself".into()),
        other => {
            let cause = error.source().map(|cause| format!(": {cause}")).unwrap_or_default();
            fault(String::new(), format!("{other}{cause}"))
        }
    }
}

#[cfg(feature = "sheets")]
fn check_sheets(files: &ThemeFiles) -> Result<(), ThemeError> {
    super::sheets::check(files).map_err(|error| ThemeError::Sheets(error.to_string()))
}

/// Without the feature there are no sheets.
#[cfg(not(feature = "sheets"))]
fn check_sheets(_: &ThemeFiles) -> Result<(), ThemeError> {
    Ok(())
}

/// The texts of a group, by name.
fn text_files(files: &ThemeFiles, group: Group) -> Result<BTreeMap<String, &str>, ThemeError> {
    let text = |name: &str| {
        let bytes = files.bytes(group, name).unwrap_or_default();
        let text = std::str::from_utf8(bytes).map_err(|_| ThemeError::NotText(files.place(group, name)))?;
        Ok((name.to_owned(), text))
    };
    files.names(group).into_iter().map(text).collect()
}

/// The styles, joined in the order of their names, and the fonts with their licences. What paper alone
/// needs is a file of its own, for which no screen waits; how cautions look, another.
fn assets(files: &ThemeFiles) -> Result<BTreeMap<String, Arc<[u8]>>, ThemeError> {
    let mut assets = BTreeMap::<String, Vec<u8>>::new();
    for (name, style) in text_files(files, Group::Styles)? {
        let file = match name.as_str() {
            CAUTIONS => OF_CAUTIONS,
            name if name.ends_with("-print.css") => "assets/print.css",
            name if name.ends_with("-act.css") => ACTS,
            _ => "assets/book.css",
        };
        assets.entry(file.to_owned()).or_default().extend(compact(style).into_bytes());
    }
    let scripts = text_files(files, Group::Scripts)?;
    for bundle in &BUNDLES {
        let parts = bundle.scripts.iter().filter_map(|name| scripts.get(&format!("{name}.js")));
        let whole: String = parts.map(|script| lean(script)).collect();
        assets.insert(bundle.path.to_owned(), whole.into_bytes());
    }
    for (name, bytes) in ThemeFiles::licences() {
        assets.insert(format!("assets/fonts/{name}"), bytes.to_vec());
    }
    for group in [Group::Fonts, Group::Pictures] {
        for name in files.names(group) {
            let bytes = files.bytes(group, name).unwrap_or_default();
            assets.insert(format!("assets/{}/{name}", group.folder()), bytes.to_vec());
        }
    }
    Ok(assets.into_iter().map(|(path, bytes)| (path, bytes.into())).collect())
}

/// The words that each bundle of scripts says, as data, with how the language counts.
fn said_by_scripts(words: &Value) -> BTreeMap<&'static str, String> {
    let said = BUNDLES.iter().flat_map(|bundle| bundle.words).map(|(name, groups)| {
        let mut groups: BTreeMap<&str, &Value> =
            groups.iter().filter_map(|group| Some((*group, words.get(*group)?))).collect();
        groups.extend(words.pointer("/language/plural").map(|rules| ("plural", rules)));
        let itself = |key: &'static str| Some((key, words.pointer("/language")?.get(key)?));
        let figures: BTreeMap<&str, &Value> =
            ["decimal", "thousands", "amount"].into_iter().filter_map(itself).collect();
        let figures = serde_json::to_value(figures).unwrap_or_default();
        groups.insert("figures", &figures);
        (*name, Data::of(&groups).as_str().to_owned())
    });
    said.collect()
}

/// Leaves out lines of comment, and indentation. No text of a script spans lines.
fn lean(script: &str) -> String {
    let lines = script.lines().map(str::trim).filter(|line| !line.is_empty() && !is_comment(line));
    lines.flat_map(|line| [line, "\n"]).collect()
}

fn is_comment(line: &str) -> bool {
    ["//", "/**", "* ", "*/"].iter().any(|mark| line.starts_with(mark))
}

/// Leaves out comments, and the spaces that style sheets do not need.
fn compact(style: &str) -> String {
    let mut out = String::with_capacity(style.len());
    let mut rest = style;
    while let Some((before, comment)) = rest.split_once("/*") {
        squeeze(before, &mut out);
        rest = comment.split_once("*/").map_or("", |(_, after)| after);
    }
    squeeze(rest, &mut out);
    out
}

fn squeeze(style: &str, out: &mut String) {
    for letter in style.chars() {
        let last = out.chars().next_back();
        if letter.is_whitespace() {
            if !matches!(last, None | Some(' ' | ':' | ';' | ',' | '{' | '}' | '>')) {
                out.push(' ');
            }
            continue;
        }
        if matches!(letter, '{' | '}' | '>') && last == Some(' ') {
            out.pop();
        }
        out.push(letter);
    }
}

/// Text that may stand between double quotes in a style sheet.
fn css_text(text: &str, _: Kwargs, _: &State) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '"' | '\\' | '<' | '&' => out.push_str(&format!("\\{:x} ", u32::from(letter))),
            control if control.is_control() => out.push(' '),
            other => out.push(other),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_that_a_page_does_not_have_is_an_error() {
        let error = Theme::standard().unwrap().render("cover.html", Language::default(), &Context::new()).unwrap_err();
        assert!(error.to_string().contains("page"), "{error}");
    }

    #[test]
    fn compacting_a_style_keeps_what_it_says() {
        let style = "/* a */\n.a > b,\n.c :is(d) {\n  margin: 0 calc(1px * -1);\n  content: \"x y\" / \"\";\n}\n";
        assert_eq!(compact(style), ".a>b,.c :is(d){margin:0 calc(1px * -1);content:\"x y\" / \"\";}");
    }

    #[test]
    fn every_script_is_in_a_bundle_and_a_bundle_names_no_other() {
        let standard = ThemeFiles::default();
        let scripts = text_files(&standard, Group::Scripts).unwrap();
        let bundled: Vec<String> =
            BUNDLES.iter().flat_map(|bundle| bundle.scripts).map(|name| format!("{name}.js")).collect();
        assert!(
            scripts.keys().all(|name| bundled.contains(name)) && bundled.iter().all(|name| scripts.contains_key(name))
        );
        assert!(scripts.values().all(|script| !script.lines().any(|line| line.matches('`').count() % 2 == 1)));
    }

    #[test]
    fn each_folder_carries_the_scripts_of_its_own_pages_alone() {
        let theme = Theme::standard().unwrap();
        let scripts = |folder: &str| -> Vec<String> {
            theme.assets_of(folder).map(|(path, _)| path.clone()).filter(|path| path.ends_with(".js")).collect()
        };
        assert_eq!(scripts("client"), ["assets/deciding.js", "assets/keep.js", "assets/newest.js", "kept.js"]);
        let installer =
            "holding keep newest readings receiving stands".split(' ').map(|name| format!("assets/{name}.js"));
        assert_eq!(scripts("installer"), installer.chain(["kept.js".to_owned()]).collect::<Vec<_>>());
        assert_eq!(scripts("office"), [""; 0]);
    }

    /// Most that the scripts of a page weigh.
    const LIGHT: usize = 38_000;

    #[test]
    fn scripts_stay_small() {
        let theme = Theme::standard().unwrap();
        for bundle in &BUNDLES {
            let weight = theme.assets()[bundle.path].len();
            assert!(weight < LIGHT, "{} weighs {weight} bytes", bundle.path);
        }
    }

    #[test]
    fn the_licence_of_each_font_goes_with_it() {
        let theme = Theme::standard().unwrap();
        for family in ["barlow-semi-condensed", "literata"] {
            assert!(theme.assets().contains_key(&format!("assets/fonts/LICENSE-{family}.txt")));
        }
    }
}
