//! Published pages in a real browser, and the proof that each of its checks finds a fault.

mod acts;
mod agreed;
mod cautions;
mod cut_sheets;
mod deciding;
mod engines;
mod faulty;
mod following;
mod hosting;
mod one_file;
mod paper;
mod photographed;
mod published;
mod receiving;
mod tape;

use serde::Deserialize;
use std::fmt;
use std::path::{Path, PathBuf};
use std::process::Command;

/// What the browser found in a published folder.
#[derive(Deserialize)]
pub struct BrowserReport {
    /// Every page that was looked at, by its path in the folder.
    pub pages: Vec<String>,
    pub faults: Vec<Fault>,
}

/// One thing that is wrong with one page.
#[derive(Debug, Deserialize)]
pub struct Fault {
    pub page: String,
    /// Width in pixels at which it shows; none where it shows at any.
    pub width: Option<u32>,
    pub check: String,
    pub fault: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, out: &mut fmt::Formatter) -> fmt::Result {
        let Self { page, width, check, fault } = self;
        write!(out, "{page} ")?;
        if let Some(width) = width {
            write!(out, "at {width} px ")?;
        }
        write!(out, "[{check}] {fault}")
    }
}

/// Looks at every page of a folder that holds `client`, `installer` and `office`, or is one whole.
pub fn look_at(folder: &Path) -> BrowserReport {
    let said = driver(&[folder.as_os_str().to_str().expect("a path in UTF-8")]);
    serde_json::from_str(&said).expect("what the driver says is JSON")
}

impl BrowserReport {
    /// Fails with a line a fault; so does a folder without pages.
    #[track_caller]
    pub fn is_sound(&self) {
        assert!(!self.pages.is_empty(), "there is no page to look at");
        let lines: Vec<String> = self.faults.iter().map(Fault::to_string).collect();
        assert!(lines.is_empty(), "\n{} faults:\n{}\n", lines.len(), lines.join("\n"));
    }
}

/// Runs the driver and returns what it printed; stops the test where it cannot run.
fn driver(arguments: &[&str]) -> String {
    drive("check.mjs", arguments)
}

/// Runs one of the scripts beside the driver and returns what it printed; it must not fail.
#[track_caller]
pub fn drive(script: &str, arguments: &[&str]) -> String {
    let home = home();
    let ready = home.join("node_modules").is_dir();
    assert!(ready, "the browser's driver is not installed; `tests/run` installs it");
    let mut command = Command::new("node");
    command.arg(home.join(script)).args(arguments);
    let output = command.output().expect("node starts; `tests/run` installs it");
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{script} failed:\n{complaint}");
    String::from_utf8(output.stdout).expect("UTF-8")
}

fn home() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/browser")
}
