//! The terminal itself: what is said there is written out, and a bar stands in one line of it.

use std::fmt::Debug;
use std::io::{self, IsTerminal, Write};
use std::sync::{Mutex, PoisonError};

use indicatif::TermLike;

use super::shown;

/// The width that a bar is drawn for: all of it fits into a narrow terminal.
const WIDTH: u16 = 72;

/// Says something to whoever runs the command, in one line.
pub fn say(message: &str) {
    say_text(&shown::line(message));
}

/// The same, of several lines.
#[expect(clippy::disallowed_methods, reason = "the one place where something is said")]
pub fn say_text(message: &str) {
    // Nothing is left to be done if even the message can't be printed.
    let _ = writeln!(io::stderr().lock(), "{}", shown::plain(message));
}

/// The same in colours of our own.
#[expect(clippy::disallowed_methods, reason = "the one place where something is said")]
pub fn say_styled(message: &str) {
    let _ = writeln!(io::stderr().lock(), "{}", shown::styled(message));
}

/// Prints a result that went through [`shown`]. A reader that stopped reading is no failure.
#[expect(clippy::disallowed_methods, reason = "the one place where something is printed")]
pub fn put(result: &str) -> io::Result<()> {
    match io::stdout().lock().write_all(result.as_bytes()) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => Err(error),
        _ => Ok(()),
    }
}

/// Whether colours can be seen where results are printed.
#[expect(clippy::disallowed_methods, reason = "it is looked at, not written to")]
pub fn prints_colours() -> bool {
    io::stdout().is_terminal() && std::env::var_os("NO_COLOR").is_none()
}

/// Whether colours can be seen where something is said.
#[expect(clippy::disallowed_methods, reason = "it is looked at, not written to")]
pub fn says_colours() -> bool {
    io::stderr().is_terminal() && std::env::var_os("NO_COLOR").is_none()
}

/// Where a bar may be drawn; nothing when nobody looks.
#[expect(clippy::disallowed_methods, reason = "the one place where something is said")]
pub fn for_a_bar() -> Option<Box<dyn TermLike>> {
    let terminal = io::stderr();
    terminal.is_terminal().then(|| Box::new(Drawn(Mutex::new(terminal))) as Box<dyn TermLike>)
}

/// Says why the program failed, where it did, as everything is said: the cause may quote what a stranger wrote.
pub fn say_failures() {
    std::panic::set_hook(Box::new(|failure| say_text(&format!("bookmatch: {failure}"))));
}

/// A terminal as a bar sees it: it may move and clear its own line, and what it writes is written out.
struct Drawn<W>(Mutex<W>);

impl<W> Debug for Drawn<W> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("a terminal")
    }
}

impl<W: Write + Send> Drawn<W> {
    fn steer(&self, codes: &str) -> io::Result<()> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).write_all(codes.as_bytes())
    }

    fn moved(&self, by: usize, direction: char) -> io::Result<()> {
        if by == 0 { Ok(()) } else { self.steer(&format!("\u{1b}[{by}{direction}")) }
    }
}

impl<W: Write + Send> TermLike for Drawn<W> {
    fn width(&self) -> u16 {
        WIDTH
    }

    fn move_cursor_up(&self, n: usize) -> io::Result<()> {
        self.moved(n, 'A')
    }

    fn move_cursor_down(&self, n: usize) -> io::Result<()> {
        self.moved(n, 'B')
    }

    fn move_cursor_right(&self, n: usize) -> io::Result<()> {
        self.moved(n, 'C')
    }

    fn move_cursor_left(&self, n: usize) -> io::Result<()> {
        self.moved(n, 'D')
    }

    fn write_line(&self, text: &str) -> io::Result<()> {
        self.steer(&format!("{}\n", shown::plain(text)))
    }

    fn write_str(&self, text: &str) -> io::Result<()> {
        self.steer(&shown::plain(text))
    }

    fn clear_line(&self) -> io::Result<()> {
        self.steer("\r\u{1b}[2K")
    }

    fn flush(&self) -> io::Result<()> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).flush()
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;

    /// What was written.
    #[derive(Clone, Default)]
    struct Page(Arc<Mutex<Vec<u8>>>);

    impl Write for Page {
        fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
            self.0.lock().unwrap().extend(bytes);
            Ok(bytes.len())
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn a_bar_moves_in_its_own_line_and_what_it_names_is_written_out() {
        let page = Page::default();
        let drawn = Drawn(Mutex::new(page.clone()));
        let bar = super::super::super::progress::drawn(Box::new(drawn), "a\u{1b}[2J\u{202e}b\u{9b}c\u{7}");
        bar.at(3, 7);
        bar.end();
        let text = String::from_utf8(page.0.lock().unwrap().clone()).unwrap();
        assert!(text.contains("a<U+001B>[2J<U+202E>b<U+009B>c<U+0007>") && text.contains("3/7"), "{text:?}");
        // What is left are its own moves: to the beginning of the line, up, down and clear.
        let mut rest = text.clone();
        for own in ["\r\u{1b}[2K", "\r"] {
            rest = rest.replace(own, "");
        }
        for by in 1..3 {
            for direction in ["A", "B"] {
                rest = rest.replace(&format!("\u{1b}[{by}{direction}"), "");
            }
        }
        assert_eq!(shown::plain(&rest), rest);
    }
}
