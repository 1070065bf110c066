//! How far long work has come: on a terminal alone.

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle, TermLike};

use super::report;

/// How often a bar is drawn at most, in a second.
const DRAWN: u8 = 10;

/// A bar that shows nothing when nobody looks.
pub struct Bar(Option<ProgressBar>);

/// A bar for work of that name.
pub fn bar(name: &'static str) -> Bar {
    report::for_a_bar().map_or(Bar(None), |terminal| drawn(terminal, name))
}

/// A bar that is drawn there.
pub fn drawn(terminal: Box<dyn TermLike>, name: &'static str) -> Bar {
    let target = ProgressDrawTarget::term_like_with_hz(terminal, DRAWN);
    let bar = ProgressBar::with_draw_target(Some(0), target).with_prefix(name);
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
