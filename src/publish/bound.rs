//! One file that holds some pages with all that they show, to be mailed and opened from a telephone's files.
//!
//! One page keeps its scripts, so that an opening's readings are judged where the file is opened. Of several the
//! words, drawings and pictures are bound one after the other, as they would be on paper, each leaf with the number
//! and the mark of its own sheet. A link to what is not in the file says so.

use std::collections::BTreeSet;
use std::fmt;
use std::io;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

use crate::language::{Tongues, Words, say};

use super::markup::{Becomes, between, with_attributes, without};
use super::output::{Content, Output};

/// By this a file is known as one that was bound, and may be bound anew.
pub const MARK: &str = "<meta name=\"generator\" content=\"bookmatch, one file\">";

/// What keeps pages for a server's sake: a file of its own has none.
const OF_SERVED_PAGES: &str = "assets/keep.js";

/// The widest picture that is bound, in pixels: a telephone's screen, and no heavier than mail takes.
const WIDEST: u32 = 960;

/// Where the name of a sheet, its issue and its mark stand, which the margins of its leaves of paper say.
const MARGINS: &str = "assets/margins/";

/// Stands in the place of the address of a link that leads out of the file, until that is said in words.
const ABSENT: &str = "data-absent";

const FIELD: &str = "<main class=\"field\" id=\"field\">";

/// Why pages could not be bound.
#[derive(Debug)]
pub enum BindError {
    /// A page or what it shows is not among what is published.
    Absent(String),
    /// What was made could not be read back.
    Unreadable(String, io::Error),
}

impl fmt::Display for BindError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Absent(path) => write!(f, "`{path}` is not among what is published"),
            Self::Unreadable(path, error) => write!(f, "`{path}` can't be read back: {error}"),
        }
    }
}

impl std::error::Error for BindError {}

/// Binds pages of one folder, by their paths in it, into one file; the first one gives its title.
///
/// # Errors
/// When one of them, or what it shows, is not there or can't be read.
pub fn bind(output: &Output, tongues: &Tongues, folder: &str, pages: &[String]) -> Result<String, BindError> {
    let binder = Binder { output, tongues, folder, pages: pages.iter().map(String::as_str).collect() };
    match pages {
        [one] => binder.whole(one),
        _ => binder.joined(pages),
    }
}

struct Binder<'a> {
    output: &'a Output,
    tongues: &'a Tongues,
    folder: &'a str,
    pages: BTreeSet<&'a str>,
}

impl Binder<'_> {
    /// One page with all that it is made of.
    fn whole(&self, path: &str) -> Result<String, BindError> {
        let page = self.text(path)?;
        let head = between(&page, "<head>", "</head>").unwrap_or_default();
        let rest = page.split_once("</head>").map_or("", |(_, rest)| rest);
        let mut scripts = String::new();
        for script in named(head, "src").into_iter().map(|src| resolved(path, &src)).filter(|src| src.ends_with(".js"))
        {
            if script != OF_SERVED_PAGES {
                scripts += &format!("<script>{}</script>\n", self.text(&script)?);
            }
        }
        let body = self.shown(path, rest, None)?.replacen("</body>", &format!("{scripts}</body>"), 1);
        Ok(format!("{}{body}", self.head(path, &page)?))
    }

    /// Several pages, one after the other.
    fn joined(&self, pages: &[String]) -> Result<String, BindError> {
        let first = pages.first().map(String::as_str).unwrap_or_default();
        let page = self.text(first)?;
        let signs = between(&page, "</a>\n", "<div class=\"sheet\">").unwrap_or_default();
        let mut out = self.head(first, &page)?;
        let mut leaves = String::new();
        for (number, path) in pages.iter().enumerate() {
            leaves += &self.leaves(path, number)?;
        }
        out = out.replacen("</head>", &format!("<style media=\"print\">{leaves}</style>\n</head>"), 1);
        out += &format!("\n<body>\n{signs}<div class=\"sheet\"><div class=\"trim\"><div class=\"frame\"><main>\n");
        for (number, path) in pages.iter().enumerate() {
            let page = without(&self.text(path)?, "<script", "</script>");
            let field = between(&page, FIELD, "</main>").ok_or_else(|| BindError::Absent(path.clone()))?;
            let field = self.shown(path, &without(field, "<nav class=\"match\"", "</nav>"), Some(number))?;
            // On a sheet of its own the margins of the paper say which issue and mark it is; here each says so itself.
            let footer = between(&page, "<footer class=\"tb\"", "</footer>").unwrap_or_default();
            let block = between(footer, "<dl>", "</dl>").unwrap_or_default();
            let block = self.shown(path, block, Some(number))?;
            out += &format!(
                "<article class=\"field\" id=\"{}\"><div class=\"bound\"><dl>{block}</dl></div>{field}</article>\n",
                anchor(path)
            );
        }
        Ok(out + "</main></div></div></div>\n</body>\n</html>\n")
    }

    /// What the margins of a page's leaves say: they are leaves of a name of their own, since others follow.
    fn leaves(&self, path: &str, number: usize) -> Result<String, BindError> {
        let page = self.text(path)?;
        let head = between(&page, "<head>", "</head>").unwrap_or_default();
        let mut leaves = format!("#{} {{ page: leaf-{number} }}\n", anchor(path));
        for sheet in named(head, "href").into_iter().map(|href| resolved(path, &href)) {
            if sheet.starts_with(MARGINS) {
                leaves += &self.style(&sheet)?.replace("@page", &format!("@page leaf-{number}"));
            }
        }
        Ok(leaves)
    }

    /// The head of the file: language, title and styles of a page.
    fn head(&self, path: &str, page: &str) -> Result<String, BindError> {
        let language = between(page, "<html lang=\"", "\"").unwrap_or("en");
        let title = between(page, "<title>", "</title>").unwrap_or_default();
        let mut styles = String::new();
        let head = between(page, "<head>", "</head>").unwrap_or_default();
        for line in head.split("<link rel=\"stylesheet\"").skip(1) {
            let Some(href) = between(line, "href=\"", "\"") else { continue };
            let sheet = resolved(path, href);
            // Of several each names its own leaves.
            if self.pages.len() > 1 && sheet.starts_with(MARGINS) {
                continue;
            }
            let media = between(line.split('>').next().unwrap_or_default(), "media=\"", "\"");
            let media = media.map(|media| format!(" media=\"{media}\"")).unwrap_or_default();
            styles += &format!("<style{media}>{}</style>\n", self.style(&sheet)?);
        }
        Ok(format!(
            "<!doctype html>\n<html lang=\"{language}\">\n<head>\n<meta charset=\"utf-8\">\n{MARK}\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>{title}</title>\n\
             <link rel=\"icon\" href=\"data:,\">\n{styles}</head>"
        ))
    }

    /// A style sheet with the fonts that it names.
    fn style(&self, path: &str) -> Result<String, BindError> {
        let style = self.text(path)?;
        let mut out = String::new();
        let mut rest = style.as_str();
        while let Some((before, after)) = rest.split_once("url(") {
            let (named, after) = after.split_once(')').unwrap_or((after, ""));
            let bare = named.trim_matches('"');
            let is_file = !bare.starts_with("data:") && !bare.starts_with('#');
            let url = if is_file { self.data(&resolved(path, bare))? } else { named.to_owned() };
            out += &format!("{before}url({url})");
            rest = after;
        }
        Ok(out + rest)
    }

    /// The markup of a page with its pictures in it, and its links to what is bound too. Several pages are in one
    /// file: what each names within itself bears its number.
    fn shown(&self, path: &str, markup: &str, number: Option<usize>) -> Result<String, BindError> {
        let mut failed = None;
        let own = |id: &str| number.map_or_else(|| id.to_owned(), |number| format!("s{number}-{id}"));
        let owned: BTreeSet<String> = named(markup, "id").into_iter().collect();
        // Of a picture in several sizes, the one that is bound.
        let mut chosen: Vec<String> = named_pairs(markup).into_iter().rev().collect();
        let said = with_attributes(markup, |tag, name, value| match (tag, name) {
            (_, "id") => Becomes::Value(own(value)),
            // Parts of several pages have the same names: none of them is a landmark of the file.
            ("section", "aria-labelledby") if number.is_some() => Becomes::Gone,
            (_, "aria-labelledby" | "aria-describedby" | "for") => {
                Becomes::Value(value.split(' ').map(own).collect::<Vec<_>>().join(" "))
            }
            ("img", "srcset" | "sizes") => Becomes::Gone,
            ("img", "src") | ("image", "href") => {
                let value =
                    if tag == "img" { chosen.pop().unwrap_or_else(|| value.to_owned()) } else { value.to_owned() };
                match self.data(&resolved(path, &value)) {
                    Ok(data) => Becomes::Value(data),
                    Err(error) => {
                        failed = Some(error);
                        Becomes::Same
                    }
                }
            }
            (_, "href") => self.link((path, tag), value, |id| if owned.contains(id) { own(id) } else { id.to_owned() }),
            _ if value.contains("url(#") => {
                let inside = owned.iter().fold(value.to_owned(), |text, id| {
                    text.replace(&format!("url(#{id})"), &format!("url(#{})", own(id)))
                });
                Becomes::Value(inside)
            }
            _ => Becomes::Same,
        });
        let words = self.language(path)?;
        failed.map_or_else(|| Ok(with_absence(&said, words)), Err)
    }

    /// The words of a page's language.
    fn language(&self, path: &str) -> Result<Words, BindError> {
        let page = self.text(path)?;
        let tag = between(&page, "<html lang=\"", "\"").unwrap_or_default();
        Ok(self.tongues.named(tag).unwrap_or_else(|| self.tongues.usual()).words())
    }

    /// Where a link leads in the file: within it, or outside of the publication; what else it led to is not there,
    /// which a link of words says.
    fn link(&self, (path, tag): (&str, &str), href: &str, own: impl Fn(&str) -> String) -> Becomes {
        if let Some(id) = href.strip_prefix('#') {
            return Becomes::Value(format!("#{}", own(id)));
        }
        if href.split_once(':').is_some_and(|(scheme, _)| scheme.chars().all(|letter| letter.is_ascii_alphabetic())) {
            return Becomes::Same;
        }
        let to = resolved(path, href.split('#').next().unwrap_or_default());
        match self.pages.get(to.as_str()) {
            Some(_) if self.pages.len() > 1 => Becomes::Value(format!("#{}", anchor(&to))),
            Some(_) => Becomes::Value("#field".into()),
            None if tag == "a" => Becomes::Named(ABSENT),
            None => Becomes::Gone,
        }
    }

    fn text(&self, path: &str) -> Result<String, BindError> {
        String::from_utf8(self.bytes(path)?).map_err(|_| BindError::Absent(self.full(path)))
    }

    /// A file as a `data:` address (RFC 2397).
    fn data(&self, path: &str) -> Result<String, BindError> {
        Ok(format!("data:{};base64,{}", media_of(path), STANDARD.encode(self.bytes(path)?)))
    }

    fn bytes(&self, path: &str) -> Result<Vec<u8>, BindError> {
        let full = self.full(path);
        let content = self.output.get(&full).ok_or_else(|| BindError::Absent(full.clone()))?;
        content.read().map_err(|error| BindError::Unreadable(full, error))
    }

    fn full(&self, path: &str) -> String {
        format!("{}/{path}", self.folder)
    }
}

/// Markup in which each link that leads out of the file says so after its words.
fn with_absence(markup: &str, words: Words) -> String {
    let mark = format!(" {ABSENT}=\"\"");
    let mut out = String::with_capacity(markup.len());
    let mut rest = markup;
    while let Some((before, after)) = rest.split_once(&mark) {
        let (link, after) = after.split_once("</a>").unwrap_or((after, ""));
        out.extend([before, link]);
        // Drawings have no room for it; what they lead to their tables name too.
        if !link.contains("<text") {
            out.push_str(&format!(" <small>({})</small>", say!(words, "bound.absent")));
        }
        out.push_str("</a>");
        rest = after;
    }
    out + rest
}

impl Content {
    /// All that it holds.
    ///
    /// # Errors
    /// When a file that lies aside or in the cache can't be read.
    fn read(&self) -> io::Result<Vec<u8>> {
        match self {
            Self::Bytes(bytes) => Ok(bytes.to_vec()),
            Self::Laid(laid) => laid.whole(),
            Self::File { path, .. } => std::fs::read(path),
        }
    }
}

/// The media type of what a page shows, as IANA registers it.
fn media_of(path: &str) -> &'static str {
    match path.rsplit_once('.').map(|(_, ending)| ending) {
        Some("jpg") => "image/jpeg",
        Some("png") => "image/png",
        Some("svg") => "image/svg+xml",
        Some("webp") => "image/webp",
        Some("woff2") => "font/woff2",
        _ => "application/octet-stream",
    }
}

/// The name of a page within the file.
fn anchor(path: &str) -> String {
    format!("page-{}", path.trim_end_matches(".html").replace('/', "-"))
}

/// A path in the folder, from one that a page names.
fn resolved(page: &str, href: &str) -> String {
    let mut steps: Vec<&str> = page.split('/').collect();
    steps.pop();
    for step in href.split('/') {
        match step {
            ".." => drop(steps.pop()),
            "." | "" => {}
            step => steps.push(step),
        }
    }
    steps.join("/")
}

/// Every value of an attribute, in the order of the page.
fn named(markup: &str, attribute: &str) -> Vec<String> {
    let mut values = Vec::new();
    with_attributes(markup, |_, name, value| {
        if name == attribute {
            values.push(value.to_owned());
        }
        Becomes::Same
    });
    values
}

/// The picture to bind for each `img` of a page, in its order: of several sizes the widest that is not too wide.
fn named_pairs(markup: &str) -> Vec<String> {
    let mut pictures: Vec<String> = Vec::new();
    with_attributes(markup, |tag, name, value| {
        match (tag, name) {
            ("img", "src") => pictures.push(value.to_owned()),
            ("img", "srcset") => {
                let sizes = value.split(", ").filter_map(|size| {
                    let (path, width) = size.rsplit_once(' ')?;
                    Some((width.trim_end_matches('w').parse::<u32>().ok()?, path))
                });
                let fits = sizes.filter(|(width, _)| *width <= WIDEST).max();
                if let (Some((_, path)), Some(last)) = (fits, pictures.last_mut()) {
                    path.clone_into(last);
                }
            }
            _ => {}
        }
        Becomes::Same
    });
    pictures
}
