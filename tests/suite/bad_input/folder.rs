//! Folders that are no book, and places that nothing can be published to.

use std::fs;

use super::Published;

#[test]
fn an_empty_folder() {
    let published = Published::new();
    fs::remove_dir_all(published.project.root()).unwrap();
    fs::create_dir(published.project.root()).unwrap();
    published.is_refused(2, &["the folder is empty", "`bookmatch start DIR` lays out a small book"]);
}

#[test]
fn a_folder_without_book_yaml() {
    let mut published = Published::new();
    published.project = published.project.without("book.yaml");
    published.is_refused(2, &["the folder has no `book.yaml`", "name the folder that holds one"]);
}

#[test]
fn a_book_that_is_not_there_or_is_a_file() {
    let published = Published::new();
    let before = published.now();
    for (book, words) in [("nowhere", "`nowhere` is not a folder"), ("book.yaml", "`book.yaml` is not a folder")] {
        published.project.run(["review", book]).exits(2).says(words);
        let out = published.out.to_str().unwrap();
        published.project.run(["publish", book, "--out", out]).exits(2).says(words);
    }
    before.stands(&published);
}

#[test]
fn a_file_where_the_output_folder_should_be() {
    let published = Published::new();
    let file = published.project.beside("mine.txt");
    fs::write(&file, "mine").unwrap();
    let before = published.now();
    published.publish_to(&file, &[]).exits(2).says("mine.txt` is a file, not a folder").says("name another folder");
    published.publish_to(&file.join("under"), &[]).exits(2).says("mine.txt").does_not_say("panicked");
    assert_eq!(fs::read_to_string(&file).unwrap(), "mine");
    before.stands(&published);
}

#[test]
fn a_place_that_the_system_lets_nobody_write_to() {
    let published = Published::new();
    let before = published.now();
    let ran = published.publish_to("/proc/bookmatch".as_ref(), &[]);
    ran.exits(2).says("cannot make the folder `/proc/bookmatch`").does_not_say("panicked");
    before.stands(&published);
}

#[test]
fn the_book_itself_as_the_output_folder() {
    let published = Published::new();
    let before = published.now();
    for part in ["", "rooms", "rooms/kitchen/photos", ".."] {
        let ran = published.publish_to(&published.project.root().join(part), &[]);
        ran.exits(2).says("belongs to the book itself").says("publish to a folder beside the book");
    }
    before.stands(&published);
}

/// A file of the user's stands where a page should go: the whole run is refused, and both stay.
#[test]
fn a_file_of_the_users_in_the_way_of_a_new_page() {
    let published = Published::new().with("rooms/attic/room.yaml", b"name: Attic\n");
    let mine = published.out.join("client/rooms/attic.html");
    fs::create_dir_all(mine.parent().unwrap()).unwrap();
    fs::write(&mine, "mine").unwrap();
    let before = published.now();
    published.publish(&["--draft"]).exits(2).says("attic.html` stands in the way and was not written by bookmatch");
    before.stands(&published);
}
