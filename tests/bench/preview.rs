//! From a saved file to the page with the new words, on the example: as served, and as shown by Chromium.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

const SAVES: usize = 15;
const FILE: &str = "rooms/kitchen/room.yaml";
const PAGE: &str = "client/rooms/kitchen.html";
const WORDS: &str = "A galley between the party wall and the yard";

fn main() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let book = folder.path().join("book");
    copy(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/example-project")), &book);
    let mut preview = Preview::start(&book);
    let served = (0..SAVES).map(|save| preview.served(&book, save)).collect();
    println!("save to page, as served: median {} ms of {SAVES} saves", median(served));
    match preview.shown(&book) {
        Some(shown) => {
            println!("save to page, in Chromium: median {} ms of {SAVES} saves (goal: under 150)", median(shown))
        }
        None => println!("no browser: `tests/run` installs one"),
    }
}

struct Preview {
    child: Child,
    address: String,
    /// What the edited file says.
    original: String,
}

impl Preview {
    #[allow(clippy::disallowed_methods)]
    fn start(book: &Path) -> Self {
        let original = std::fs::read_to_string(book.join(FILE)).expect("the room's file");
        let mut child = Command::new(env!("CARGO_BIN_EXE_bookmatch"))
            .args(["preview", "--today", "2027-01-15"])
            .arg(book)
            .stderr(Stdio::piped())
            .spawn()
            .expect("bookmatch");
        let mut said = BufReader::new(child.stderr.take().expect("its messages")).lines();
        let mut next = || said.next().expect("a message").expect("text");
        let address = loop {
            if let Some((_, rest)) = next().split_once("http://") {
                break rest.split('/').next().unwrap_or_default().to_owned();
            }
        };
        while !next().contains("files changed") {}
        // Nobody would read on: a full pipe would hold the program up.
        std::thread::spawn(move || said.for_each(drop));
        Self { child, address, original }
    }

    #[allow(clippy::disallowed_methods)]
    fn served(&mut self, book: &Path, save: usize) -> u128 {
        let fresh = format!("{WORDS}, take {save}");
        std::thread::sleep(Duration::from_millis(300));
        write(book, &self.original.replace(WORDS, &fresh));
        let saved = Instant::now();
        while !self.get().contains(&fresh) {
            std::thread::sleep(Duration::from_millis(1));
        }
        let taken = saved.elapsed().as_millis();
        write(book, &self.original);
        taken
    }

    fn get(&self) -> String {
        let mut stream = TcpStream::connect(&self.address).expect("the preview");
        write!(stream, "GET /{PAGE} HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n", self.address)
            .expect("a request");
        let mut page = Vec::new();
        stream.read_to_end(&mut page).expect("a page");
        String::from_utf8_lossy(&page).into_owned()
    }

    fn shown(&self, book: &Path) -> Option<Vec<u128>> {
        std::thread::sleep(Duration::from_millis(500));
        let run = Command::new("node")
            .arg(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/browser/preview.mjs"))
            .arg(format!("http://{}/{PAGE}", self.address))
            .arg(book.join(FILE))
            .args([WORDS, &SAVES.to_string()])
            .output()
            .ok()?;
        assert!(run.stderr.is_empty(), "{}", String::from_utf8_lossy(&run.stderr));
        let told = String::from_utf8_lossy(&run.stdout).into_owned();
        let taken: Vec<u128> = told.split_whitespace().filter_map(|word| word.parse().ok()).collect();
        (taken.len() == SAVES).then_some(taken)
    }
}

impl Drop for Preview {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn median(mut taken: Vec<u128>) -> u128 {
    taken.sort_unstable();
    taken.get(taken.len() / 2).copied().unwrap_or_default()
}

#[allow(clippy::disallowed_methods)]
fn write(book: &Path, text: &str) {
    std::fs::write(book.join(FILE), text).expect("the room's file");
}

#[allow(clippy::disallowed_methods)]
fn copy(from: &Path, to: &Path) {
    for entry in walkdir::WalkDir::new(from).into_iter().map(|entry| entry.expect("the example")) {
        let inside = entry.path().strip_prefix(from).expect("inside");
        if inside.starts_with(".bookmatch") {
            continue;
        }
        let place = to.join(inside);
        if entry.file_type().is_dir() {
            std::fs::create_dir_all(place).expect("a folder");
        } else {
            std::fs::copy(entry.path(), place).expect("a copy");
        }
    }
}
