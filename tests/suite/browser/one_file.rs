//! Pages in one file: complete in themselves, and sound wherever they are opened.

use super::look_at;
use crate::project::example::TODAY;
use crate::project::{Project, Ran};
use std::fs;
use std::path::Path;

/// Every value of an attribute.
fn values<'a>(page: &'a str, attribute: &str) -> Vec<&'a str> {
    let start = format!(" {attribute}=\"");
    page.split(start.as_str()).skip(1).filter_map(|rest| rest.split_once('"')).map(|(value, _)| value).collect()
}

/// Binds what `of` names into a file of the folder.
fn publish(project: &Project, folder: &Path, name: &str, of: &str) -> Ran {
    let file = folder.join(name);
    let args = ["publish", "--today", TODAY, "--one-file", file.to_str().unwrap(), "--of", of];
    project.run(args.map(AsRef::<std::ffi::OsStr>::as_ref))
}

#[test]
fn a_room_an_opening_and_the_sheets_of_a_trade_are_each_one_file_that_asks_for_nothing() {
    let project = Project::of_the_example();
    let folder = project.beside("bound");
    fs::create_dir_all(&folder).unwrap();
    let bound = |name: &str, of: &str| {
        publish(&project, &folder, name, of).exits(0);
        let page = fs::read_to_string(folder.join(name)).unwrap();
        let ids = values(&page, "id");
        for href in values(&page, "href").into_iter().chain(values(&page, "src")) {
            let inside = href.strip_prefix('#').is_some_and(|id| ids.contains(&id));
            let outside = ["data:", "https:", "mailto:", "tel:"].iter().any(|scheme| href.starts_with(scheme));
            assert!(inside || outside, "{name} asks for {href}");
        }
        assert!(!page.contains("srcset=") && !page.contains("url(fonts") && !page.contains("<link rel=\"stylesheet"));
        page
    };
    let room = bound("room.html", "Kitchen");
    assert!(!room.contains("<script") && room.contains("id=\"page-items-kitchen-range\""));
    assert!(room.contains("href=\"#page-items-kitchen-range\"") && room.contains("data:image/jpeg;base64,"));
    // An opening alone judges readings where it is opened.
    let opening = bound("opening.html", "kitchen/refrigerator");
    assert!(opening.contains("id=\"tape-asks\"") && opening.contains("const Tape"));
    let trade = bound("trade.html", "plumbing");
    assert!(trade.contains("id=\"page-openings-") && !trade.contains("id=\"page-openings-kitchen-refrigerator\""));

    // Each sheet bears its own number and mark, on each of its leaves of paper too.
    for page in [&trade, &room] {
        let sheets = page.matches("<article class=\"field\"").count();
        assert_eq!(page.matches("class=\"bound\"").count(), sheets);
        assert_eq!(page.matches(" { page: leaf-").count(), sheets);
        assert_eq!(page.matches("@page leaf-").count(), sheets);
    }
    assert!(
        room.matches("<article").count() > 10 && opening.contains("counter(pages)") && opening.contains("class=\"tb\"")
    );

    for page in [&opening, &room] {
        names_what_is_absent(page);
    }

    // The checker of HTML knows no newer CSS than of 2011, which pages else keep in files of their own.
    let mut report = look_at(&folder);
    report.faults.retain(|fault| !fault.fault.contains("error: CSS:") && fault.fault != "the part has no first page");
    // A picture that is in the file is not loaded at all.
    report.faults.retain(|fault| fault.check != "image-lazy");
    report.is_sound();
}

/// What is not in a file is named still, and says that it is not there: no link is silently its words alone.
#[track_caller]
fn names_what_is_absent(page: &str) {
    const SAYS: &str = "(not in this file)";
    assert!(page.contains(SAYS));
    let links = page.split("<a").skip(1).filter(|rest| rest.starts_with([' ', '>']));
    let links = links.filter_map(|rest| rest.split_once("</a>")).map(|(link, _)| link);
    let leads = |link: &str| link.split('>').next().is_some_and(|tag| tag.contains("href="));
    let silent: Vec<&str> = links.filter(|link| !leads(link) && !link.contains(SAYS)).collect();
    assert_eq!(silent, [""; 0]);
}

#[test]
fn a_file_is_bound_anew_and_nothing_else_is_written_over() {
    let project = Project::of_the_example();
    let folder = project.beside("bound");
    fs::create_dir_all(&folder).unwrap();
    // Bound again it is the same; over anything else, and of what is not there, nothing is written.
    publish(&project, &folder, "trade.html", "plumbing").exits(0);
    let before = fs::read(folder.join("trade.html")).unwrap();
    publish(&project, &folder, "trade.html", "plumbing").exits(0);
    assert_eq!(fs::read(folder.join("trade.html")).unwrap(), before);
    fs::write(folder.join("mine.html"), "mine").unwrap();
    publish(&project, &folder, "mine.html", "kitchen").exits(2);
    assert_eq!(fs::read(folder.join("mine.html")).unwrap(), b"mine");
    fs::remove_file(folder.join("mine.html")).unwrap();
    publish(&project, &folder, "none.html", "pantry").exits(2);
    assert!(!folder.join("none.html").exists() && !project.root().join("site").exists());
}
