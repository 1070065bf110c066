//! The site: a view and a template make a page.

use super::theme::{Theme, ThemeError};
use crate::views::sheet::OnSheet;
use crate::views::site::Site;
use serde::Serialize;
use std::collections::BTreeMap;
use tera::Context;

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
    pub leaves: fn(&Site) -> Vec<Leaf>,
}

/// One page, ready for its template.
pub struct Leaf {
    /// Its path in its folder.
    pub path: String,
    /// Its style sheet for the margins of a printed page.
    pub margins: String,
    values: Context,
}

/// Every kind of page that there is.
pub const PAGES: &[Page] = &[
    Page { folder: "client", template: "cover.html", leaves: |site| vec![leaf(&site.client.cover)] },
    Page { folder: "client", template: "room.html", leaves: |site| leaves(&site.client.rooms) },
    Page { folder: "client", template: "item.html", leaves: |site| leaves(&site.client.items) },
    Page { folder: "client", template: "sign.html", leaves: |site| vec![leaf(&site.client.sign)] },
    Page { folder: "installer", template: "installer.html", leaves: |site| vec![leaf(&site.installer.index)] },
    Page { folder: "installer", template: "opening.html", leaves: |site| leaves(&site.installer.openings) },
    Page { folder: "office", template: "office.html", leaves: |site| vec![leaf(&site.office.index)] },
    Page { folder: "office", template: "schedule.html", leaves: |site| leaves(&site.office.schedules) },
    Page { folder: "office", template: "schedule.html", leaves: |site| vec![leaf(&site.office.orders)] },
    Page { folder: "office", template: "schedule.html", leaves: |site| vec![leaf(&site.office.money)] },
    Page { folder: "office", template: "review.html", leaves: |site| vec![leaf(&site.office.review)] },
    Page { folder: "office", template: "rules.html", leaves: |site| leaves(site.office.rules.as_slice()) },
];

fn leaves<View: OnSheet>(views: &[View]) -> Vec<Leaf> {
    views.iter().map(leaf).collect()
}

fn leaf<View: OnSheet + Serialize>(view: &View) -> Leaf {
    let path = view.sheet().path.clone();
    let margins = format!("assets/margins/{}.css", path.trim_end_matches(".html").replace('/', "--"));
    let mut values = Context::new();
    values.insert("page", view);
    values.insert("root", &"../".repeat(path.matches('/').count()));
    values.insert("margins", &margins);
    Leaf { path, margins, values }
}

/// Renders one page and the style sheet of its margins: what to write, by path in its folder.
///
/// # Errors
/// When the template asks for something that the page does not say.
pub fn render_page(
    theme: &Theme,
    language: &str,
    page: &Page,
    leaf: &Leaf,
) -> Result<[(String, Vec<u8>); 2], ThemeError> {
    let html = theme.render(page.template, language, &leaf.values)?;
    let margins = theme.render("margins.css", language, &leaf.values)?;
    Ok([(leaf.path.clone(), html.into_bytes()), (leaf.margins.clone(), margins.into_bytes())])
}

/// Renders the whole site, pictures and papers excepted: path from the site's root → bytes.
///
/// # Errors
/// When a template asks for something that a page does not say, or the language has no words.
pub fn render(site: &Site, theme: &Theme) -> Result<BTreeMap<String, Vec<u8>>, ThemeError> {
    let mut files = BTreeMap::new();
    for folder in FOLDERS {
        let carried = theme.assets().iter().map(|(path, bytes)| (format!("{folder}/{path}"), bytes.clone()));
        files.extend(carried);
    }
    for page in PAGES {
        for leaf in (page.leaves)(site) {
            for (path, bytes) in render_page(theme, &site.language, page, &leaf)? {
                files.insert(format!("{}/{path}", page.folder), bytes);
            }
        }
    }
    Ok(files)
}
