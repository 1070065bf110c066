//! How far long work has come: on a terminal alone.

use std::io::IsTerminal;

use indicatif::{ProgressBar, ProgressStyle};

/// A bar that shows nothing when nobody looks.
pub struct Bar(Option<ProgressBar>);

/// A bar for work of that name.
pub fn bar(name: &'static str) -> Bar {
    if !std::io::stderr().is_terminal() {
        return Bar(None);
    }
    let bar = ProgressBar::new(0).with_prefix(name);
    let style = ProgressStyle::with_template("{prefix} {bar:32} {pos}/{len}");
    Bar(Some(style.map_or(bar.clone(), |style| bar.with_style(style))))
}

impl Bar {
    /// So many of so many are done.
    pub fn at(&self, done: usize, all: usize) {
        if let Self(Some(bar)) = self {
            bar.set_length(all as u64);
            bar.set_position(done as u64);
        }
    }

    /// The work is done: the line is cleared.
    pub fn end(&self) {
        if let Self(Some(bar)) = self {
            bar.finish_and_clear();
        }
    }
}
