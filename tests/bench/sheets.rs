//! `publish` of 200 and of 2,000 selections with every sheet to set: time, and the most memory that it took.

#[path = "many.rs"]
mod many;

use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

fn main() {
    let [few, very_many] = [200, 2_000].map(measure);
    println!("ratio of time {:.1} for ten times the selections (goal: about 10)", very_many / few);
}

#[allow(clippy::disallowed_methods)]
fn measure(count: usize) -> f64 {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let (book, out) = (folder.path().join("book"), folder.path().join("site"));
    many::lay_out(&book, count);
    let began = Instant::now();
    let mut child = Command::new(env!("CARGO_BIN_EXE_bookmatch"))
        .args(["publish", "--draft", "--today", "2027-01-15", "--out"])
        .args([&out, &book])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("bookmatch");
    let mut peak = String::new();
    while child.try_wait().expect("a child").is_none() {
        // The system's own mark of the most that was held, while there is a process to ask.
        let status = std::fs::read_to_string(format!("/proc/{}/status", child.id())).unwrap_or_default();
        if let Some(line) = status.lines().find(|line| line.starts_with("VmHWM")) {
            peak = line.trim_start_matches("VmHWM:").trim().to_owned();
        }
        std::thread::sleep(Duration::from_millis(10));
    }
    let took = began.elapsed().as_secs_f64();
    println!("{count} selections: {took:.1} s, at most {peak}");
    took
}
