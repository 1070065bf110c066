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

/// What is in a book's folder and nobody's business, with words that must stand on no page.
const SECRETS: [&str; 5] =
    ["record/keys/odile.txt", ".env", ".git/config", ".bookmatch/cache/sheets/kept", "site/office/margins.html"];

/// No file that a draft publishes for client or installer, and no word of the program, says what may not be said.
#[track_caller]
fn is_kept(published: &Published, secret: &str) {
    let draft = published.project.beside("draft");
    published.publish_to(&draft, &["--draft"]).exits(0).does_not_say(secret);
    for page in walkdir::WalkDir::new(&draft).into_iter().map(Result::unwrap) {
        if page.file_type().is_file() {
            let bytes = fs::read(page.path()).unwrap();
            assert!(!bytes.windows(secret.len()).any(|words| words == secret.as_bytes()), "{}", page.path().display());
        }
    }
}

#[test]
fn a_link_inside_the_book_to_what_is_nobodys_business_is_refused_and_never_published() {
    for secret in SECRETS {
        let words = "5f0c1e77aa words of nobody";
        let published = Published::new().with(secret, words.as_bytes()).with("site/.bookmatch-manifest.json", b"{}");
        let target = format!("../../{secret}");
        fs::remove_file(published.project.root().join("rooms/kitchen/notes.md")).unwrap();
        let published = with_link(published, "rooms/kitchen/notes.md", &target);
        let published = with_link(published, "rooms/kitchen/tap.yaml", "notes.md");
        let published = with_link(published, "rooms/kitchen/photos/a.png", &format!("../{target}"));
        published.is_refused(1, &["source/outside-book", &format!("is a link to `{secret}`"), "delete the link"]);
        is_kept(&published, words);
    }
}

#[test]
fn the_cache_is_not_written_through_a_link() {
    for link in [".bookmatch", ".bookmatch/cache"] {
        let published = Published::new();
        let elsewhere = published.project.beside("elsewhere");
        fs::create_dir(&elsewhere).unwrap();
        fs::remove_dir_all(published.project.root().join(".bookmatch")).unwrap();
        let published = with_link(published, link, elsewhere.to_str().unwrap());
        for ran in [published.review(), published.publish(&[])] {
            ran.exits(1)
                .says("source/outside-book")
                .says(&format!("`{link}` is a link"))
                .says("the cache is made anew");
        }
        published.publish_to(&published.project.beside("draft"), &["--draft"]).does_not_say("panicked");
        assert_eq!(fs::read_dir(&elsewhere).unwrap().count(), 0, "{link}");
    }
}

#[test]
fn prose_that_is_not_the_rooms_notes_is_told_and_not_shown() {
    let words = "5f0c1e77aa they would pay more";
    let published = Published::new().with("rooms/kitchen/margins.md", words.as_bytes());
    published.review().exits(0).says("`rooms/kitchen/margins.md` is shown to nobody");
    is_kept(&published, words);
}

/// A link in the place of a room's notes would show a file of the book as it stands: prices of the firm, notes for
/// the office, prose that the handbook says is shown to nobody.
#[test]
fn a_link_from_notes_to_any_other_file_of_the_book_is_told_and_not_shown() {
    let words = "5f0c1e77aa they would pay more";
    for hidden in
        ["costs.yaml", "rooms/kitchen/margins.md", "products/margins.md", "rooms/bath/margins.md", "costs.txt"]
    {
        let published = Published::new().with(hidden, format!("# {words}\nselection: X\n").as_bytes());
        fs::remove_file(published.project.root().join("rooms/kitchen/notes.md")).unwrap();
        let published = with_link(published, "rooms/kitchen/notes.md", &format!("../../{hidden}"));
        published.review().says(&format!("`rooms/kitchen/notes.md` is a link to `{hidden}`"));
        is_kept(&published, words);
    }
    // What a link in the prose itself names is not published either.
    let published = Published::new()
        .with("costs.yaml", format!("# {words}\n").as_bytes())
        .with("rooms/kitchen/notes.md", b"See [costs](../../costs.yaml) and ![costs](../../costs.yaml).");
    is_kept(&published, words);
    let page = fs::read_to_string(published.project.beside("draft/client/rooms/kitchen.html")).unwrap();
    assert!(page.contains("costs") && !page.contains("costs.yaml"), "{page}");
}

#[test]
fn notes_may_be_shared_by_rooms() {
    let words = b"The light comes from the north.";
    let published = Published::new().with("rooms/kitchen/notes.md", words);
    let published = published.with("rooms/bath/room.yaml", b"name: Bath\n");
    let published = with_link(published, "rooms/bath/notes.md", "../kitchen/notes.md");
    published.review().does_not_say("is a link");
}
