//! A page of a preview that follows its book.

use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

use super::home;
use crate::project::Project;

/// A preview at work; it ends with the test.
struct Preview(Child);

impl Drop for Preview {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

#[test]
fn a_page_that_followed_its_book_shows_what_a_fresh_load_shows() {
    let maker = Project::new();
    let laid = maker.beside("laid");
    maker.run(["start".as_ref(), laid.as_os_str()]).exits(0);
    let mut command = maker.command(["preview", "--today", "2027-01-15"]);
    let mut preview = Preview(command.arg(&laid).stderr(Stdio::piped()).spawn().unwrap());
    let mut said = BufReader::new(preview.0.stderr.take().unwrap()).lines().map(Result::unwrap);
    let address = said.find_map(|line| Some(line.split_once("http://")?.1.split('/').next()?.to_owned())).unwrap();
    assert!(said.any(|line| line.contains("files changed")));
    // Nobody would read on: a full pipe would hold the program up.
    std::thread::spawn(move || said.for_each(drop));
    let mut driver = Command::new("node");
    driver.arg(home().join("preview.mjs")).arg(format!("http://{address}/client/rooms/kitchen.html"));
    let driven = driver.arg(laid.join("rooms/kitchen/room.yaml")).args(["One wall, to begin with", "3"]).output();
    let driven = driven.expect("node starts; `tests/run` installs it");
    assert!(driven.status.success(), "{}", String::from_utf8_lossy(&driven.stderr));
    assert_eq!(String::from_utf8_lossy(&driven.stdout).split_whitespace().count(), 3);
}
