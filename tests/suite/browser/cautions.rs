//! Cautions are seen in the browser, whatever a theme of the book's own says of them.

use super::drive;
use crate::project::Project;
use std::fs;

const PAGES: [&str; 3] =
    ["client/items/kitchen/range.html", "installer/openings/kitchen/range.html", "installer/index.html"];

/// Looks at pages of a small book whose theme has that style, and that template of its parts.
#[track_caller]
fn are_seen(style: &str, parts: &str) {
    let project = Project::new();
    let root = project.root();
    project.run(["start", root.to_str().expect("UTF-8"), "--today", "2027-01-15"]).exits(0);
    let book = fs::read_to_string(root.join("book.yaml")).expect("a book") + "theme: house\n";
    let project = project
        .file("book.yaml", &book)
        .file("house/css/99-ours.css", style)
        .file("house/css/99-ours-act.css", style)
        .file("house/templates/parts.html", parts);
    let out = project.beside("site");
    project
        .run(["publish".as_ref(), "--today".as_ref(), "2027-01-15".as_ref(), "--out".as_ref(), out.as_os_str()])
        .exits(0);
    let pages = PAGES.map(|page| out.join(page).to_str().expect("UTF-8").to_owned());
    let said = drive("cautions.mjs", &pages.each_ref().map(String::as_str));
    assert_eq!(said.trim(), format!("{} pages", PAGES.len()));
}

#[test]
fn a_theme_hides_no_caution() {
    let standard = concat!(env!("CARGO_MANIFEST_DIR"), "/themes/standard/templates/parts.html");
    let standard = fs::read_to_string(standard).expect("a template");
    are_seen(
        "main .caution, main .caution p, body#x .caution { display: none !important; visibility: hidden !important; \
         opacity: 0 !important; position: absolute !important; left: -9999px !important; width: 1px !important; \
         height: 1px !important; overflow: hidden !important; transform: scale(0) !important; \
         clip-path: inset(50%) !important }",
        &standard,
    );
    // Nothing after a brace that is left open counts, and neither does what hides by an attribute.
    let hidden = standard.replace("<div class=\"caution\">", "<div class=\"caution\" hidden>");
    assert_ne!(hidden, standard);
    are_seen("@media screen { .caution { display: none", &hidden);
}
