//! Links that run in a circle, and links that leave the book.

use std::fs;

use super::Published;

fn with_link(mut published: Published, path: &str, target: &str) -> Published {
    published.project = published.project.link(path, target);
    published
}

#[test]
fn a_loop_of_links() {
    let links = [("rooms/kitchen/again", "../.."), ("rooms/a.yaml", "b.yaml"), ("rooms/b.yaml", "a.yaml")];
    let published = links.iter().fold(Published::new(), |book, (path, target)| with_link(book, path, target));
    let words = ["source/outside-book", "`rooms/kitchen/again` is a link to a folder, or to nothing", "`rooms/a.yaml`"];
    published.is_refused(1, &words);
    published.is_refused(1, &["links to folders are not followed", "3 stops"]);
}

#[test]
fn links_that_leave_the_folder_are_refused_and_what_they_lead_to_is_not_read() {
    let published = Published::new();
    let outside = published.project.beside("outside");
    fs::create_dir(&outside).unwrap();
    fs::write(outside.join("secret.yaml"), "selection: Stolen words\nkind: tap\n").unwrap();
    let (file, folder) = (outside.join("secret.yaml"), outside.display().to_string());
    let published = with_link(published, "rooms/kitchen/x.yaml", file.to_str().unwrap());
    let published = with_link(published, "rooms/stolen", &folder);
    let published = with_link(published, "rooms/bath/y.yaml", "../../../outside/secret.yaml");
    published
        .is_refused(1, &["`rooms/kitchen/x.yaml` is a link that leads out of the book", "copy the file into the book"]);
    published.is_refused(1, &["`rooms/bath/y.yaml`", "`rooms/stolen`", "3 stops"]);
    published.publish_to(&published.project.beside("draft"), &["--draft"]).exits(0).does_not_say("Stolen words");
    let draft = walkdir::WalkDir::new(published.project.beside("draft")).into_iter().map(Result::unwrap);
    for page in draft.filter(|entry| entry.file_type().is_file()) {
        let bytes = fs::read(page.path()).unwrap();
        assert!(!bytes.windows(12).any(|words| words == b"Stolen words"), "{}", page.path().display());
    }
    assert_eq!(fs::read_dir(&outside).unwrap().count(), 1, "nothing was written outside");
}

#[test]
fn a_photo_named_by_a_path_that_leaves_the_folder() {
    for path in ["../../../site/client/index.html", "/etc/hostname"] {
        let published = Published::new().replacing(super::RANGE, "[steel.png]", &format!("[{path}]"));
        published.is_refused(1, &["source/outside-book", path]);
    }
}
