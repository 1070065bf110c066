//! The site: a view and a template make a page.

use super::File;
use super::theme::{Theme, ThemeError};
use crate::pictures::Digest;
use crate::views::sheet::OnSheet;
use crate::views::site::Site;
use rayon::prelude::*;
use serde::Serialize;
use std::collections::BTreeMap;
use std::sync::Arc;
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
    pub leaves: fn(&Site) -> Vec<Leaf<'_>>,
}

/// Pages as they were rendered last, so that only those whose views changed are rendered anew.
#[derive(Debug, Default)]
pub struct Kept(BTreeMap<String, Made>);

/// A page as it was rendered, and the digest of all that it was rendered from.
#[derive(Debug)]
struct Made {
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

fn leaves<View: OnSheet + Sync>(views: &[View]) -> Vec<Leaf<'_>> {
    views.iter().map(leaf).collect()
}

fn leaf<View: OnSheet + Serialize + Sync>(view: &View) -> Leaf<'_> {
    let path = view.sheet().path.clone();
    let margins = format!("assets/margins/{}.css", path.trim_end_matches(".html").replace('/', "--"));
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

/// Renders one page and the style sheet of its margins: what to write, by path in its folder.
///
/// # Errors
/// When the template asks for something that the page does not say.
pub fn render_page(theme: &Theme, language: &str, page: &Page, leaf: &Leaf<'_>) -> Result<[File; 2], ThemeError> {
    let mut values = (leaf.values)();
    values.insert("folder", page.folder);
    let html = theme.render(page.template, language, &values)?;
    let margins = theme.render("margins.css", language, &values)?;
    Ok([(leaf.path.clone(), html.into_bytes().into()), (leaf.margins.clone(), margins.into_bytes().into())])
}

/// Renders the whole site, pictures and papers excepted: path from the site's root → bytes.
///
/// # Errors
/// When a template asks for something that a page does not say, or the language has no words.
pub fn render(site: &Site, theme: &Theme, kept: &mut Kept) -> Result<BTreeMap<String, Arc<[u8]>>, ThemeError> {
    let mut files = BTreeMap::new();
    for folder in FOLDERS {
        let carried = theme.assets_of(folder).map(|(path, bytes)| (format!("{folder}/{path}"), bytes.clone()));
        files.extend(carried);
        // By this a page that is older than what is published now can know it; the office's own has no script.
        if let Some(issued) = site.client.cover.sheet.project.issued.as_ref().filter(|_| folder != "office") {
            let text = serde_json::to_vec(issued).unwrap_or_default();
            files.insert(format!("{folder}/issue.json"), text.into());
        }
    }
    let pages: Vec<&Page> = PAGES.iter().collect();
    let leaves: Vec<(&Page, Leaf<'_>)> =
        pages.par_iter().flat_map_iter(|page| (page.leaves)(site).into_iter().map(move |leaf| (*page, leaf))).collect();
    let before = std::mem::take(kept);
    let make = |(page, leaf): &(&Page, Leaf<'_>)| before.or_render(theme, &site.language, page, leaf);
    let made: Vec<Result<(String, Made), ThemeError>> = leaves.par_iter().map(make).collect();
    for made in made {
        let (key, made) = made?;
        let (folder, _) = key.split_once('/').unwrap_or((&key, ""));
        files.extend(made.files.iter().map(|(path, bytes)| (format!("{folder}/{path}"), bytes.clone())));
        kept.0.insert(key, made);
    }
    Ok(files)
}

impl Kept {
    /// The page as it was kept, or rendered anew when what it says has changed.
    fn or_render(
        &self,
        theme: &Theme,
        language: &str,
        page: &Page,
        leaf: &Leaf<'_>,
    ) -> Result<(String, Made), ThemeError> {
        let key = format!("{}/{}", page.folder, leaf.path);
        let from = Digest::of_parts(&[language.as_bytes(), page.template.as_bytes(), leaf.said.to_string().as_bytes()]);
        let files = match self.0.get(&key) {
            Some(made) if made.from == from => made.files.clone(),
            _ => render_page(theme, language, page, leaf)?,
        };
        Ok((key, Made { from, files }))
    }
}
