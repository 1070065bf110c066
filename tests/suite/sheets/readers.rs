//! Programs that had no part in making the PDF, asked what they see in it.

use std::io::Write;
use std::process::Command;

/// A PDF on disk for as long as it is read.
pub struct Pdf(tempfile::NamedTempFile);

/// A word and where it stands on its page, in points from the top left.
#[derive(Debug, Clone)]
pub struct Word {
    pub text: String,
    pub left: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Pdf {
    pub fn of(bytes: &[u8]) -> Pdf {
        let mut file = tempfile::NamedTempFile::new().expect("a temporary file");
        file.write_all(bytes).expect("room for the file");
        Pdf(file)
    }

    /// What `program` prints about the file; it must succeed.
    pub fn ask(&self, program: &str, before: &[&str], after: &[&str]) -> String {
        let output = Command::new(program)
            .args(before)
            .arg(self.0.path())
            .args(after)
            .output()
            .unwrap_or_else(|fault| panic!("`{program}` is needed to read the sheets: {fault}"));
        assert!(output.status.success(), "{program}: {}", String::from_utf8_lossy(&output.stderr));
        String::from_utf8_lossy(&output.stdout).into_owned()
    }

    /// The text of each page.
    pub fn pages(&self) -> Vec<String> {
        let text = self.ask("pdftotext", &["-layout"], &["-"]);
        text.trim_end_matches('\u{c}').split('\u{c}').map(str::to_owned).collect()
    }

    /// The value of a line of `pdfinfo`.
    pub fn info(&self, name: &str) -> String {
        let info = self.ask("pdfinfo", &[], &[]);
        let line = info.lines().find_map(|line| line.strip_prefix(&format!("{name}:")));
        line.unwrap_or_default().trim().to_owned()
    }

    /// Each text with the tags that it stands in, from the outermost on, in the order in which it is read aloud.
    pub fn texts(&self) -> Vec<(Vec<String>, String)> {
        let mut above: Vec<(usize, String)> = vec![];
        let mut texts = vec![];
        for line in self.ask("pdfinfo", &["-struct-text"], &[]).lines() {
            let deep = line.len() - line.trim_start().len();
            let line = line.trim();
            above.retain(|(level, _)| *level < deep);
            if let Some(text) = line.strip_prefix('"') {
                let tags = above.iter().map(|(_, tag)| tag.clone()).collect();
                texts.push((tags, text.trim_end_matches('"').to_owned()));
            } else if !line.starts_with('/') && !line.is_empty() {
                let tag = line.split([' ', ':']).next().unwrap_or_default();
                above.push((deep, tag.to_owned()));
            }
        }
        texts
    }

    /// The sizes of type that are set anywhere, in points, to a third of one.
    pub fn sizes(&self) -> Vec<f64> {
        // Three is the most that this program enlarges by.
        let fonts = self.ask("pdftohtml", &["-xml", "-i", "-stdout", "-zoom", "3"], &[]);
        let sizes = fonts.lines().filter(|line| line.contains("<fontspec "));
        let mut sizes: Vec<f64> =
            sizes.map(|line| attribute(line, "size").parse::<f64>().expect("a size") / 3.0).collect();
        sizes.sort_by(f64::total_cmp);
        sizes
    }

    /// Every word with its place.
    pub fn words(&self) -> Vec<Word> {
        let mut words = Vec::new();
        for line in self.ask("pdftotext", &["-bbox"], &["-"]).lines() {
            if let Some(rest) = line.trim_start().strip_prefix("<word ") {
                let number = |name: &str| attribute(rest, name).parse::<f64>().expect("a number");
                let text = rest.split_once('>').map_or("", |(_, text)| text);
                words.push(Word {
                    text: text.trim_end_matches("</word>").replace("&quot;", "\""),
                    left: number("xMin"),
                    right: number("xMax"),
                    bottom: number("yMax"),
                });
            }
        }
        words
    }
}

fn attribute<'a>(tag: &'a str, name: &str) -> &'a str {
    let from = tag.split_once(&format!("{name}=\"")).map_or("", |(_, rest)| rest);
    from.split_once('"').map_or("", |(value, _)| value)
}
