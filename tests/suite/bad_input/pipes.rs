//! What is no ordinary file is never waited for.

#![cfg(unix)]

use std::fs;
use std::process::Command;

use super::Published;

#[test]
fn a_pipe_in_the_place_of_any_file_is_told_and_never_read() {
    for path in ["record/ledger.jsonl", "rooms/kitchen/more.yaml", "rooms/kitchen/more.jpg", "products/more.yaml"] {
        let published = Published::new();
        let place = published.project.root().join(path);
        fs::create_dir_all(place.parent().unwrap()).unwrap();
        assert!(Command::new("mkfifo").arg(&place).status().unwrap().success());
        let ran = published.review().exits(1).says(path);
        ran.does_not_say("panicked");
    }
}
