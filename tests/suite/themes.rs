//! Themes of a book's own: laid out from the program, changed file by file, and what is wrong with one told by its
//! place, while what was published before stays.

use std::fs;

use crate::project::{Project, Ran, tree};

/// A small book in its own folder, as `start` lays it out.
fn started() -> Project {
    let project = Project::new();
    let root = project.root();
    project.run(["start", root.to_str().expect("UTF-8"), "--today", "2027-01-15"]).exits(0);
    project
}

/// The same, with files of a theme in `house/`, which it names.
fn themed(files: &[(&str, &str)]) -> Project {
    let project = added(started(), "theme: house\n");
    files.iter().fold(project, |project, (path, text)| project.file(&format!("house/{path}"), text))
}

fn added(project: Project, lines: &str) -> Project {
    let book = fs::read_to_string(project.root().join("book.yaml")).expect("a book");
    project.file("book.yaml", &(book + lines))
}

fn publish(project: &Project) -> Ran {
    let out = project.beside("site");
    project.run(["publish".as_ref(), "--today".as_ref(), "2027-01-15".as_ref(), "--out".as_ref(), out.as_os_str()])
}

fn page(project: &Project, path: &str) -> String {
    fs::read_to_string(project.beside("site").join(path)).expect("a page")
}

/// A file of the standard theme.
fn standard(path: &str) -> String {
    let theme = concat!(env!("CARGO_MANIFEST_DIR"), "/themes/standard/");
    fs::read_to_string(format!("{theme}{path}")).expect("a file of the theme")
}

#[test]
fn the_standard_theme_is_laid_out_and_publishes_the_same_bytes_as_none() {
    let plain = started();
    publish(&plain).exits(0);
    let project = added(started(), "theme: house\n");
    project.run(["start", "--theme", "house"]).exits(0).says("house/templates/cover.html");
    let laid = tree(&project.root().join("house"));
    for path in ["README.md", "templates/item.html", "css/20-type.css", "words/en.yaml", "sheets/sign-off.typ"] {
        assert!(laid.files().any(|file| file == path), "{path} is not laid out");
    }
    publish(&project).exits(0);
    assert!(tree(&plain.beside("site")) == tree(&project.beside("site")), "the pages differ");
    project.run(["start", "--theme", "house"]).exits(2).says("not empty");
    assert!(tree(&project.root().join("house")) == laid);
}

/// What is advised is what the reader of books takes.
#[test]
fn a_theme_is_named_as_the_book_that_it_lies_in_names_it() {
    let laid = |folder: &str, arguments: &[&str]| {
        let project = started();
        fs::create_dir_all(project.root().join(folder)).unwrap();
        let ran = Ran::of(project.command(arguments).current_dir(project.root().join(folder)));
        (project, ran)
    };
    for (folder, arguments, named) in [
        ("house", ["start", "--theme", "."], "house"),
        ("looks/house", ["start", "--theme", "."], "looks/house"),
        ("looks", ["start", "--theme", "house"], "looks/house"),
        ("", ["start", "--theme", "./house"], "house"),
    ] {
        let (project, ran) = laid(folder, &arguments);
        ran.exits(0).says(&format!("next: write `theme: {named}` in `book.yaml`"));
        let project = added(project, &format!("theme: {named}\n"));
        project.run(["review", "--today", "2027-01-15"]).exits(0);
    }
    for (folder, arguments) in [
        ("rooms/looks", ["start", "--theme", "."]),
        ("", ["start", "--theme", ".house"]),
        ("", ["start", "--theme", "rooms/looks"]),
    ] {
        let (project, ran) = laid(folder, &arguments);
        ran.exits(2).says("can't hold a theme");
        assert!(!project.root().join("rooms/looks/README.md").exists() && !project.root().join(".house").exists());
    }
    // In a folder that lies in no book it is told by its own name.
    let project = Project::new();
    project.run(["start", "--theme", "."]).exits(0).says("next: move it into the book's folder");
}

#[test]
fn what_a_theme_changes_shows_and_what_it_leaves_out_is_the_standard() {
    let own = standard("templates/title-block.html").replace(
        "<footer",
        "<p class=\"motto\">{{ w.own.motto }}</p><img src=\"{{ base }}assets/pictures/sign.svg\" alt=\"\"><footer",
    );
    let project = themed(&[
        ("templates/title-block.html", &own),
        ("css/99-ours.css", ".motto { color: rebeccapurple }"),
        ("words/en.yaml", "own: {motto: Made to last}\ncover: {rooms: Every room}\n"),
        ("pictures/sign.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"/>"),
    ]);
    publish(&project).exits(0);
    for path in ["client/index.html", "client/rooms/kitchen.html", "installer/index.html", "office/index.html"] {
        assert!(page(&project, path).contains("<p class=\"motto\">Made to last</p>"), "{path}");
    }
    assert!(page(&project, "client/index.html").contains("Every room"));
    assert!(page(&project, "client/assets/book.css").contains("rebeccapurple"));
    assert!(page(&project, "client/assets/pictures/sign.svg").starts_with("<svg"));
    let bound = project.beside("kitchen.html");
    let asked = ["publish", "--of", "kitchen", "--today", "2027-01-15", "--one-file"].map(AsRef::as_ref);
    project.run(asked.into_iter().chain([bound.as_os_str()])).exits(0);
    let bound = fs::read_to_string(bound).expect("one file");
    assert!(bound.contains("rebeccapurple"));
}

/// Each: a file of the theme, what it says, and what is told: its place above all.
#[test]
fn a_broken_theme_is_told_by_file_line_and_column_and_the_last_good_pages_stay() {
    let project = themed(&[("css/99-ours.css", "p { margin: 0 }")]);
    publish(&project).exits(0);
    let good = tree(&project.beside("site"));
    let cover = standard("templates/cover.html");
    let line = cover.lines().count() + 1;
    let unclosed = format!("{cover}{{% if page.sheet %}}");
    let unknown = cover.replacen("{% block field %}", "{% block field %}\n  {{ page.weather }}", 1);
    let unknown_line = unknown.lines().position(|line| line.contains("page.weather")).unwrap() + 1;
    let sheet = standard("sheets/sign-off.typ");
    let sheet_line = sheet.lines().count() + 1;
    // What the review can see stops the work; the rest can't be done.
    for (path, text, says) in [
        ("templates/cover.html", unclosed.as_str(), format!("house/templates/cover.html`, line {line}, column")),
        ("templates/cover.html", &unknown, format!("house/templates/cover.html`, line {unknown_line}, column 11")),
        ("words/en.yaml", "cover:\n  romms: x\n", "house/words/en.yaml:2:10".into()),
        ("words/en.yaml", "units:\n  more: \"{m} more\"\n", "house/words/en.yaml:2:9".into()),
        ("words/en.yaml", "units:\n  more: \"{n more\"\n", "house/words/en.yaml:2:9".into()),
        ("words/en.yaml", "cautions:\n  gas: Smells.\n", "house/words/en.yaml:2:8".into()),
        ("words/en.yaml", "fit:\n  \"no\": \"\"\n", "house/words/en.yaml:2:9".into()),
        ("words/qq.yaml", "cover:\n  rooms: x\n", "house/words/qq.yaml:1:1".into()),
        (
            "sheets/sign-off.typ",
            &format!("{sheet}#let x = (\n"),
            format!("house/sheets/sign-off.typ`, line {sheet_line}, column"),
        ),
        (
            "sheets/sign-off.typ",
            &format!("{sheet}#weather()\n"),
            format!("house/sheets/sign-off.typ`, line {sheet_line}, column 2"),
        ),
        ("scripts/sign.js", "", "`house/scripts/sign.js` can't be changed by a theme".into()),
        ("templats/cover.html", "", "`house/templats/cover.html` stands in no folder of a theme".into()),
    ] {
        let folder = project.root().join("house");
        let place = folder.join(path);
        fs::create_dir_all(place.parent().unwrap()).unwrap();
        fs::write(&place, text).unwrap();
        let code = if path.starts_with("templates/") || path.starts_with("sheets/") { 2 } else { 1 };
        publish(&project).exits(code).says(&says);
        // Nor does a draft take its place.
        let out = project.beside("site");
        let draft =
            ["publish".as_ref(), "--draft".as_ref(), "--today".as_ref(), "2027-01-15".as_ref(), "--out".as_ref()];
        project.run(draft.into_iter().chain([out.as_os_str()])).exits(code);
        assert!(tree(&project.beside("site")) == good, "{path}: {text}");
        fs::remove_file(&place).unwrap();
    }
    publish(&project).exits(0);
}

/// A template that leaves out what can hurt, what is signed or what is built from makes no page.
#[test]
fn no_theme_leaves_out_a_caution_a_mark_or_what_is_signed() {
    let without = |path: &str, what: &str| {
        let text = standard(path);
        assert!(text.contains(what), "{path} has no {what}");
        text.replace(what, "")
    };
    let item_typ =
        without("sheets/item.typ", "  if item.cautions.len() > 0 { caution(item.cautions.join(\" \"), words) }\n");
    for (path, text, says) in [
        ("templates/parts.html", without("templates/parts.html", "<p>{{ line.html|safe }}</p>"), "a caution"),
        ("templates/title-block.html", without("templates/title-block.html", "{{ page.sheet.mark }}"), "a mark"),
        (
            "templates/parts.html",
            standard("templates/parts.html").replace("<p>{{ line.html|safe }}</p>", "<!-- {{ line.html|safe }} -->"),
            "a caution",
        ),
        ("sheets/item.typ", item_typ, "a caution"),
        ("sheets/sign-off.typ", without("sheets/sign-off.typ", "  cautions(view.cautions)\n"), "a caution"),
        ("sheets/page.typ", without("sheets/page.typ", "    said(view.statement)\n"), "what a signature means"),
    ] {
        publish(&themed(&[(path, &text)])).exits(2).says(says);
    }
    // What stands over a signature on the screen goes into the record with it.
    let own = r#"<script type="application/json" id="words">{"signs":{"statement":"I only looked."}}</script>"#;
    let said = r#"<script type="application/json" id="words">{{ said_by_scripts.signing|safe }}</script>"#;
    for (text, says) in [
        (standard("templates/sign.html").replace(said, own), "what its scripts say"),
        (standard("templates/sign.html").replace(said, &format!("{own}{said}")), "what its scripts say"),
        (without("templates/sign.html", "{{ page.statement.html|safe }}"), "what a signature means"),
    ] {
        assert_ne!(text, standard("templates/sign.html"));
        let project = added(themed(&[("templates/sign.html", &text)]), "");
        project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
        publish(&project).exits(2).says(says);
    }
}

/// What another style says, hides or leaves open reaches no caution: its look is a file of its own, linked last.
#[test]
fn no_theme_changes_how_cautions_look_and_no_fault_of_a_style_reaches_them() {
    let plain = started();
    publish(&plain).exits(0);
    let look = page(&plain, "client/assets/cautions.css");
    assert!(look.contains("display:grid !important"));
    for style in
        [".caution { display: none !important }", "p { margin: 0", "/* ours", ".x { content: \"", "@media print {"]
    {
        let project =
            themed(&[("css/99-ours.css", style), ("css/zz-ours.css", style), ("css/99-ours-print.css", style)]);
        publish(&project).exits(0);
        assert_eq!(page(&project, "client/assets/cautions.css"), look, "{style}");
    }
    let project = themed(&[("css/95-cautions.css", "")]);
    publish(&project).exits(1).says("`house/css/95-cautions.css` can't be changed by a theme");
    let headless = standard("templates/sheet.html").replace("</head>", "");
    publish(&themed(&[("templates/sheet.html", &headless)])).exits(2).says("the end of its head");
}

/// Every mark of a page, in its order.
fn marks(page: &str) -> Vec<&str> {
    page.split("class=\"mark\">").skip(1).filter_map(|rest| rest.split('<').next()).collect()
}

#[test]
fn marks_are_the_same_whatever_the_theme() {
    let plain = started();
    let own = themed(&[("words/en.yaml", "cover: {rooms: Every room}\n"), ("css/99-ours.css", "p { margin: 0 }")]);
    for project in [&plain, &own] {
        publish(project).exits(0);
    }
    let path = "client/sign.html";
    let (plain, own) = (page(&plain, path), page(&own, path));
    assert!(marks(&plain).len() > 3);
    assert_eq!(marks(&plain), marks(&own));
}

#[test]
fn a_folder_that_is_no_theme_is_told_where_it_is_named() {
    for (named, says) in [
        ("nowhere", "the book has no folder `nowhere`"),
        ("../house", "can't hold a theme"),
        ("/tmp", "can't hold a theme"),
        ("rooms", "can't hold a theme"),
        (".", "can't hold a theme"),
    ] {
        let project = added(started(), &format!("theme: {named}\n"));
        project.run(["review", "--today", "2027-01-15"]).exits(1).says(says).says("book.yaml:");
        publish(&project).exits(1);
    }
}
