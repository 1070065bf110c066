//! Bad input gets a clear error, and nothing is lost: neither the user's files nor what was published.

use std::os::unix::process::ExitStatusExt;
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::time::Duration;

use crate::project::{Project, tree};

/// A small book that was published once.
struct Published {
    project: Project,
    out: PathBuf,
}

fn published() -> Published {
    let project = Project::new();
    let (book, out) = (project.beside("book-of-start"), project.beside("site"));
    let book = book.to_str().unwrap();
    project.run(["start", book, "--today", "2027-01-15"]).exits(0);
    let project = Project::copy_of(book);
    project.run(["publish", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    Published { project, out }
}

/// Publishes a book with one file put wrong: it says so, and neither book nor site is touched.
fn refuses(path: &str, bytes: &[u8], code: i32, words: &[&str]) {
    let Published { project, out } = published();
    let project = project.bytes(path, bytes);
    let (book, site) = (project.tree().without(".bookmatch"), tree(&out));
    let mut ran = project.run(["publish", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(code);
    for words in words {
        ran = ran.says(words);
    }
    ran.does_not_say("panicked");
    book.same_as(&project.tree().without(".bookmatch"));
    site.same_as(&tree(&out));
}

const RANGE: &str = "rooms/kitchen/range.yaml";

#[test]
fn an_empty_folder() {
    let project = Project::new();
    project.run(["review"]).exits(2).says("the folder is empty").says("bookmatch start");
}

#[test]
fn no_book_yaml() {
    let project = Project::new().file("rooms/kitchen/room.yaml", "name: Kitchen\n");
    project.run(["review"]).exits(2).says("no `book.yaml`");
    project.run(["review", "nowhere"]).exits(2).says("`nowhere` is not a folder");
}

#[test]
fn a_file_in_another_encoding() {
    let utf_16: Vec<u8> = [0xFF, 0xFE].into_iter().chain("kind: tap\n".encode_utf16().flat_map(u16::to_le_bytes)).collect();
    refuses(RANGE, &utf_16, 1, &["is written as UTF-16", "save it again as UTF-8"]);
    refuses(RANGE, b"selection: Caf\xE9\n", 1, &["is not written as UTF-8"]);
}

#[test]
fn tabs_in_yaml() {
    refuses(RANGE, b"selection: Range\nsize:\n\twidth: 3\"\n", 1, &["a tab stands where YAML needs spaces", "range.yaml:3:1"]);
}

#[test]
fn duplicate_keys() {
    refuses(RANGE, b"selection: Range\nkind: range\nkind: hood\n", 1, &["the key `kind` stands twice", "range.yaml:3:1"]);
}

#[test]
fn a_length_with_no_unit() {
    refuses(RANGE, b"selection: Range\nkind: range\nsize: {width: 30}\n", 1, &["`30` has no unit", "write `30\"` for inches"]);
}

#[test]
fn a_price_with_a_stray_comma() {
    refuses(RANGE, b"selection: Range\nkind: range\nprice: 3180,00\n", 1, &["source/wrong-type", "3180,00"]);
}

#[test]
fn an_unknown_room() {
    let book = "title: A\nclient: B\nunits: imperial\ncurrency: USD\nrooms: [kichen]\n";
    refuses("book.yaml", book.as_bytes(), 1, &["there is no room called `kichen`", "did you mean `kitchen`?"]);
}

#[test]
fn a_photo_that_is_a_text_file() {
    refuses("rooms/kitchen/photos/steel.png", b"this is no picture at all\n", 1, &["complete/photo", "steel.png"]);
}

#[test]
fn a_png_of_thirty_thousand_pixels_square() {
    let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR".to_vec();
    png.extend(30_000_u32.to_be_bytes());
    png.extend(30_000_u32.to_be_bytes());
    png.extend(b"\x08\x02\0\0\0\0\0\0\0\0\0\0\0IEND\xaeB`\x82");
    refuses("rooms/kitchen/photos/steel.png", &png, 1, &["source/too-large", "steel.png"]);
}

#[test]
fn an_alias_bomb() {
    let mut bomb = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
    for level in 1..12 {
        bomb += &format!("a{level}: &a{level} [{}]\n", format!("*a{}, ", level - 1).repeat(10));
    }
    refuses(RANGE, bomb.as_bytes(), 1, &["source/too-large", "aliases counted as used"]);
}

#[test]
fn a_loop_of_links_and_links_that_leave_the_book() {
    let Published { project, out } = published();
    let secret = project.beside("secret.yaml");
    std::fs::write(&secret, "selection: Stolen words\nkind: tap\n").unwrap();
    let project = project.link("rooms/kitchen/again", "../..").link("a", "b").link("b", "a").link("rooms/kitchen/x.yaml", &secret);
    let site = tree(&out);
    let ran = project.run(["publish", "--out", out.to_str().unwrap()]).exits(1);
    ran.says("is a link that leads out of the book").says("links to folders are not followed").does_not_say("Stolen words");
    site.same_as(&tree(&out));
}

#[test]
fn an_unwritable_output_folder() {
    let Published { project, .. } = published();
    let file = project.beside("a-file");
    std::fs::write(&file, "mine").unwrap();
    project.run(["publish", "--out", file.to_str().unwrap()]).exits(2).says("a-file");
    project.run(["publish", "--out", file.join("under").to_str().unwrap()]).exits(2);
    project.run(["publish", "--out", "/proc/no-such-place"]).exits(2).does_not_say("panicked");
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "mine");
    // The book itself is no place to publish to.
    project.run(["publish", "--out", "rooms"]).exits(2);
}

/// The disk is full for files past 60 kB: the kernel refuses to write on (`ulimit -f`).
#[test]
fn a_full_disk() {
    let Published { project, out } = published();
    let book = project.tree().without(".bookmatch");
    let site = tree(&out);
    let changed = project.bytes("book.yaml", &[b"# changed\n".as_slice(), &std::fs::read(project_file(&out)).unwrap()].concat());
    let _ = book;
    let line = format!("trap '' XFSZ; ulimit -f 16; exec {} publish --draft --out {}", env!("CARGO_BIN_EXE_bookmatch"), out.display());
    let ran = Command::new("bash").args(["-c", &line]).current_dir(changed.root()).output().unwrap();
    let said = String::from_utf8_lossy(&ran.stderr).into_owned();
    assert!(!ran.status.success() && !said.contains("panicked"), "{said}");
    site.same_as(&tree(&out));
}

/// A text file of the site, long enough to matter.
fn project_file(out: &std::path::Path) -> PathBuf {
    out.join("client/assets/book.css")
}

/// SIGINT and SIGKILL at many moments: what is published afterwards is the old or the new, whole.
#[test]
fn ended_half_way_through() {
    let Published { project, out } = published();
    let old = tree(&out);
    let range = std::fs::read_to_string(project.root().join(RANGE)).unwrap();
    std::fs::write(project.root().join(RANGE), range.replace("2380.00", "2381.00")).unwrap();
    let other = project.beside("whole");
    project.run(["publish", "--today", "2027-01-15", "--out", other.to_str().unwrap()]).exits(0);
    let new = tree(&other);
    let mut ended = 0;
    for (moment, signal) in (0..24).map(|moment| (moment, if moment % 2 == 0 { "INT" } else { "KILL" })) {
        let mut child = project
            .command(["publish", "--today", "2027-01-15", "--out", out.to_str().unwrap()])
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        std::thread::sleep(Duration::from_millis(moment * 7));
        let _ = Command::new("kill").args([&format!("-{signal}"), &child.id().to_string()]).status();
        let status = child.wait().unwrap();
        ended += usize::from(status.signal().is_some() || status.code() == Some(2));
        if signal == "INT" {
            let now = tree(&out);
            assert!(now.differences(&old).is_empty() || now.differences(&new).is_empty(), "a mixture after {moment}");
        }
    }
    assert!(ended > 0, "no run was ended half way");
    project.run(["publish", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    new.same_as(&tree(&out));
}
