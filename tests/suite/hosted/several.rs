//! Several books of one process.

use std::path::Path;
use std::time::{Duration, Instant};

use super::at_work::{Host, PROJECT, ask, pages};
use crate::issued::IssuedBook;
use crate::project::Project;

/// A folder for books, with one that was issued and one that nobody issued yet.
fn books() -> (tempfile::TempDir, IssuedBook) {
    let (all, book) = (tempfile::tempdir().unwrap(), IssuedBook::new());
    std::fs::write(book.path().join("book.yaml"), PROJECT).unwrap();
    pages(&book.path().join("site"), "Elm Row");
    (all, book)
}

fn named(name: &str, folder: &Path) -> String {
    format!("{name}={}", folder.display())
}

/// Waits until the server answers so: it looks every few seconds.
fn until(host: &Host, head: &str, wanted: &str) {
    let began = Instant::now();
    loop {
        let answer = ask(&host.address, head, b"");
        if answer.contains(wanted) {
            return;
        }
        assert!(began.elapsed() < Duration::from_secs(60), "{head} is never `{wanted}`, but {answer}");
        std::thread::sleep(Duration::from_millis(300));
    }
}

#[test]
fn each_book_is_served_under_its_path_as_soon_as_it_is_issued_and_published() {
    let (_all, elm) = books();
    let rug = Project::with_a_rug();
    let host = Host::start(&[&named("elm", elm.path()), &named("rug", &rug.root())]);
    assert!(ask(&host.address, "GET /elm/client/", b"").ends_with("<title>Elm Row</title>"));
    assert!(ask(&host.address, "GET /rug/client/", b"").starts_with("HTTP/1.1 404"));
    assert!(ask(&host.address, "POST /elm/responses", &elm.sealed(1)).contains("\"recorded\""));
    assert!(ask(&host.address, "POST /rug/responses", &elm.sealed(2)).contains(" 400 "), "it is of another book");
    let publish = || {
        let out = rug.root().join("site");
        rug.run(["publish", "--out", out.to_str().unwrap(), "--today", "2027-01-15"]).exits(0);
    };
    rug.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    publish();
    until(&host, "GET /rug/client/", "Issue 1");
    // What is published over another ledger is not served, and what was served stays.
    let record = rug.root().join("record");
    std::fs::rename(&record, rug.beside("record")).unwrap();
    let manifest = rug.root().join("site/.bookmatch-manifest.json");
    let list = std::fs::read(&manifest).unwrap();
    std::fs::write(&manifest, [&list[..], b"\n"].concat()).unwrap();
    std::thread::sleep(Duration::from_secs(6));
    until(&host, "GET /rug/client/", "Issue 1");
    // What was asked to be recorded there meanwhile finds nothing, and leaves its lock.
    std::fs::remove_dir_all(&record).unwrap();
    std::fs::rename(rug.beside("record"), &record).unwrap();
    std::fs::write(&manifest, list).unwrap();
    let log = host.ends();
    assert!(log.contains("rug: nothing newer is served: nothing of this book was issued; issue it first"), "{log}");
    assert!(log.contains("/elm/client/") && log.contains(" elm: 127.0.0.1 response 200"), "{log}");
    assert!(log.contains("rug: 127.0.0.1 response 400, not recorded: it is of another book"), "{log}");
}

#[test]
fn books_that_collide_and_those_that_can_not_be_served_are_told_before_anything_is_served() {
    let (all, elm) = books();
    let inside = all.path().join("elm");
    std::fs::create_dir(&inside).unwrap();
    let run = |arguments: &[&str]| {
        let mut command = std::process::Command::new(env!("CARGO_BIN_EXE_bookmatch"));
        crate::project::Ran::of(command.arg("host").args(arguments).args(["--address", "127.0.0.1:0"]))
    };
    let (named_elm, inside) = (named("Elm", elm.path()), inside.to_str().unwrap().to_owned());
    run(&[&named_elm, &inside]).exits(2).says("would both be served at `/elm/`").says("`NAME=FOLDER`");
    run(&[&named_elm, elm.path().to_str().unwrap()]).exits(2);
    run(&[&inside, &named("other", all.path())]).exits(2).says("none of these books can be served");
    run(&["--behind-proxy", "the-proxy"]).exits(2).says("`the-proxy` is no address");
}
