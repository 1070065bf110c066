//! The site: a view and a template make a page.

use super::File;
use super::output::{Content, Spool};
use super::theme::{Theme, ThemeError};
use crate::language::{Language, say};
use crate::pictures::Digest;
use crate::source::portable::{self, NameFault};
use crate::views::pages::{EditionOf, Pages, Portion};
use crate::views::shared::sheet::{IssuedAs, OnSheet};
use rayon::prelude::*;
use serde::Serialize;
use std::collections::BTreeMap;
use tera::Context;

mod fractions;

#[cfg(test)]
mod tests;

/// The folders of a site, each complete in itself.
pub const FOLDERS: [&str; 3] = ["client", "installer", "office"];

/// A kind of page.
pub struct Page {
    /// The folder it belongs to.
    pub folder: &'static str,
    pub template: &'static str,
    /// Every page of this kind.
    pub leaves: fn(&Pages) -> Vec<Leaf<'_>>,
}

/// Pages as they were rendered last, so that only those whose views changed are rendered anew.
#[derive(Debug, Default)]
pub struct PageCache(BTreeMap<String, RenderedPage>);

/// A page as it was rendered, and the digest of all that it was rendered from.
#[derive(Debug)]
struct RenderedPage {
    from: Digest,
    files: [File; 2],
}

/// One page: what its template is to be given, once it is asked for.
pub struct Leaf<'a> {
    /// Its path in its folder.
    pub path: String,
    /// Its style sheet for the margins of a printed page.
    pub margins: String,
    /// Of what the view says.
    said: Digest,
    values: Box<dyn Fn() -> Context + Send + Sync + 'a>,
}

/// Every kind of page that there is.
pub const PAGES: &[Page] = &[
    Page { folder: "client", template: "cover.html", leaves: |site| leaves(site.client.cover.as_slice()) },
    Page { folder: "client", template: "room.html", leaves: |site| leaves(&site.client.rooms) },
    Page { folder: "client", template: "item.html", leaves: |site| leaves(&site.client.items) },
    Page { folder: "client", template: "sign.html", leaves: |site| leaves(site.client.sign.as_slice()) },
    Page { folder: "installer", template: "installer.html", leaves: |site| leaves(site.installer.index.as_slice()) },
    Page { folder: "installer", template: "opening.html", leaves: |site| leaves(&site.installer.openings) },
    Page { folder: "installer", template: "delivery.html", leaves: |site| leaves(&site.installer.deliveries) },
    Page { folder: "installer", template: "trade.html", leaves: |site| leaves(&site.installer.trades) },
    Page { folder: "office", template: "office.html", leaves: |site| leaves(site.office.index.as_slice()) },
    Page { folder: "office", template: "schedule.html", leaves: |site| leaves(&site.office.schedules) },
    Page { folder: "office", template: "schedule.html", leaves: |site| leaves(site.office.orders.as_slice()) },
    Page { folder: "office", template: "schedule.html", leaves: |site| leaves(site.office.money.as_slice()) },
    Page { folder: "office", template: "review.html", leaves: |site| leaves(site.office.review.as_slice()) },
    Page { folder: "office", template: "rules.html", leaves: |site| leaves(site.office.rules.as_slice()) },
];

/// Another wording of a page, and the way to it.
#[derive(Serialize)]
struct OtherWording {
    /// The language's tag.
    tag: &'static str,
    /// What the language is called in itself.
    name: String,
    href: String,
}

fn leaves<View: OnSheet + Sync>(views: &[View]) -> Vec<Leaf<'_>> {
    views.iter().map(leaf).collect()
}

fn leaf<View: OnSheet + Serialize + Sync>(view: &View) -> Leaf<'_> {
    let path = view.sheet().path.clone();
    let margins = format!("assets/margins/{}.css", margins_of(path.trim_end_matches(".html")));
    let root = "../".repeat(path.matches('/').count());
    let values = Box::new({
        let margins = margins.clone();
        move || {
            let mut values = Context::new();
            values.insert("page", view);
            values.insert("root", &root);
            values.insert("margins", &margins);
            values
        }
    });
    // A view holds texts, numbers and lists alone, which JSON can always hold.
    let said = Digest::of(&serde_json::to_vec(view).unwrap_or_default());
    Leaf { path, margins, said, values }
}

/// What the style sheet of a page's margins is called: by all the steps of its path, or by a digest of them where that
/// would be longer than some disk holds.
fn margins_of(page: &str) -> String {
    let name = page.replace('/', "--");
    if portable::fault(&name) == Some(NameFault::Long) { Digest::of(name.as_bytes()).short(32) } else { name }
}

/// Renders one page and the style sheet of its margins: what to write, by path in its folder.
fn render_page(theme: &Theme, edition: &EditionOf, page: &Page, leaf: &Leaf<'_>) -> Result<[String; 2], ThemeError> {
    let mut values = (leaf.values)();
    values.insert("folder", page.folder);
    let depth = leaf.path.matches('/').count() + edition.prefix.matches('/').count();
    let base = "../".repeat(depth);
    let other = |(language, prefix): &(Language, String)| OtherWording {
        tag: language.tag(),
        name: say!(language.words(), "language.name"),
        href: format!("{base}{prefix}{}", leaf.path),
    };
    values.insert("others", &edition.others.iter().map(other).collect::<Vec<_>>());
    values.insert("base", &base);
    let html = theme.render(page.template, edition.language, &values)?;
    let path = format!("{}/{}{}", page.folder, edition.prefix, leaf.path);
    theme.says_all((page.template, edition.language), &path, &values, &html)?;
    let html = theme.with_cautions((page.template, &path), &base, &html)?;
    Ok([fractions::set(&html), theme.render("margins.css", edition.language, &values)?])
}

/// Renders a site portion by portion, pictures and papers excepted: path from the site's root → what to write.
/// What a page says is dropped as soon as it is rendered. `issued` is the newest issue.
///
/// # Errors
/// When a template asks for something that a page does not say, or the language has no words.
pub fn render(
    portions: &[Portion<'_>],
    issued: Option<&IssuedAs>,
    theme: &Theme,
    spool: &Spool,
    kept: &mut PageCache,
) -> Result<BTreeMap<String, Content>, ThemeError> {
    let mut files = BTreeMap::new();
    for folder in FOLDERS {
        let carried = theme.assets_of(folder);
        files.extend(carried.map(|(path, bytes)| (format!("{folder}/{path}"), Content::Bytes(bytes.clone()))));
        // By this a page that is older than what is published now can know it; the office's own has no script.
        if let Some(issued) = issued.filter(|_| folder != "office") {
            let text = serde_json::to_vec(issued).unwrap_or_default();
            files.insert(format!("{folder}/issue.json"), Content::Bytes(text.into()));
        }
    }
    let before = std::mem::take(kept);
    let rendered: Vec<Result<Vec<(String, RenderedPage)>, ThemeError>> =
        portions.par_iter().map(|portion| before.or_rendered(&portion(), theme, spool)).collect();
    for portion in rendered {
        for (key, made) in portion? {
            let (folder, _) = key.split_once('/').unwrap_or((&key, ""));
            files.extend(made.files.iter().map(|(path, content)| (format!("{folder}/{path}"), content.clone())));
            kept.0.insert(key, made);
        }
    }
    Ok(files)
}

impl PageCache {
    /// Every page of a portion.
    fn or_rendered(
        &self,
        site: &Pages,
        theme: &Theme,
        spool: &Spool,
    ) -> Result<Vec<(String, RenderedPage)>, ThemeError> {
        let leaves = PAGES.iter().flat_map(|page| (page.leaves)(site).into_iter().map(move |leaf| (page, leaf)));
        leaves.map(|(page, leaf)| self.or_render(theme, &site.edition, (page, &leaf), spool)).collect()
    }

    /// The page as it was kept, or rendered anew when what it says has changed.
    fn or_render(
        &self,
        theme: &Theme,
        edition: &EditionOf,
        (page, leaf): (&Page, &Leaf<'_>),
        spool: &Spool,
    ) -> Result<(String, RenderedPage), ThemeError> {
        let key = format!("{}/{}{}", page.folder, edition.prefix, leaf.path);
        let wording = format!("{edition:?}");
        let look = theme.digest().map(|digest| digest.to_string()).unwrap_or_default();
        let said = leaf.said.to_string();
        let from = Digest::of_parts(&[wording.as_bytes(), page.template.as_bytes(), said.as_bytes(), look.as_bytes()]);
        if let Some(made) = self.0.get(&key).filter(|made| made.from == from) {
            return Ok((key, RenderedPage { from, files: made.files.clone() }));
        }
        let [html, margins] = render_page(theme, edition, page, leaf)?;
        let prefix = &edition.prefix;
        let lay = |path: &str, text: String| (format!("{prefix}{path}"), spool.lay(text.into_bytes()));
        Ok((key, RenderedPage { from, files: [lay(&leaf.path, html), lay(&leaf.margins, margins)] }))
    }
}
