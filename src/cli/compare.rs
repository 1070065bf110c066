//! `compare`: the change order between two issues.

use std::path::{Path, PathBuf};

use crate::assess::{ChangeOrder, Heading, freeze};
use crate::book::Book;
use crate::finding::{Finding, Severity};
use crate::ledger::{Issue, Purpose};
use crate::pipeline::{self, Review};
use crate::source::Folder;
use crate::views::paper;
use crate::views::paper::change_order::ChangeOrder as View;

use super::clock::Today;
use super::report::{self, change_order, change_order_json};
use super::{CLEAN, Failure, STOPPED, laid};

/// The change order between two issues: what, money, days, who must sign
///
/// FROM and TO are numbers of issues, or `now` for the book as it stands. As a PDF it is a sheet to sign,
/// with a line for each approver; one that tells of `now` is a draft, since nobody signs what was not issued.
#[derive(clap::Args)]
pub struct Compare {
    /// The folder that holds `book.yaml`, if not this one; then FROM and TO
    #[arg(value_name = "BOOK FROM TO", num_args = 2..=3, required = true)]
    given: Vec<String>,
    /// How to print it
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
    /// The file to write the PDF to; one that is there is replaced
    #[arg(long, value_name = "FILE", required_if_eq("format", "pdf"))]
    out: Option<PathBuf>,
    #[command(flatten)]
    today: Today,
}

/// How a change order is told.
#[derive(clap::ValueEnum, Clone, Copy, Debug, PartialEq, Eq)]
enum Format {
    /// For people
    Text,
    /// For programs
    Json,
    /// To sign: a sheet as PDF, written to `--out`
    Pdf,
}

/// An issue by its number, or the book as it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Edition {
    Issue(u32),
    Now,
}

impl Compare {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let (book, from, to) = match self.given.as_slice() {
            [from, to] => (PathBuf::from("."), edition(from)?, edition(to)?),
            [book, from, to] => (PathBuf::from(book), edition(from)?, edition(to)?),
            _ => return Err("name two issues, such as `1 2` or `1 now`".into()),
        };
        let folder = Folder::open(&book)?;
        let review = pipeline::review(&folder, self.today.date()?)?;
        let with_now = [from, to].contains(&Edition::Now);
        if let Some(unread) = not_read(&review, with_now) {
            report::say_review(&review);
            return Err(format!("not compared: {unread} can't be read, and what it tells would count as gone; mend it, or take it out of the book").into());
        }
        if review.book.record.faulty {
            report::say_review(&review);
            report::say("not compared: the record is not as it was written");
            return Ok(STOPPED);
        }
        if review.book.theme_faulty && self.format == Format::Pdf {
            report::say_review(&review);
            report::say(
                "not compared: the theme can't be read as a whole; mend it, or take `theme` out of `book.yaml`",
            );
            return Ok(STOPPED);
        }
        let (from, to) = (find(&review, from, &book)?, find(&review, to, &book)?);
        let order = ChangeOrder::between(&from, &to).in_units(review.book.project.units);
        let order = order.but_what_was_signed(&to, &review.book, &review.assessment.approvals);
        let (issues, book) = ((&from, &to), &review.book);
        match (self.format, &self.out) {
            (Format::Pdf, Some(out)) => write(out, &order, issues, book)?,
            (_, Some(_)) => return Err("only a PDF is written to a file; give `--format pdf` with `--out`".into()),
            (Format::Json, None) => report::print_json(&change_order_json::json(&order, issues, book))?,
            (_, None) => report::print(&change_order::text(&order, issues, book))?,
        }
        Ok(CLEAN)
    }
}

/// What can't be read of the book: files and, where the book as it stands is compared, single words. What is not
/// there would be told as gone, and what rests on it as nothing.
fn not_read(review: &Review, with_now: bool) -> Option<String> {
    let unread = review.book.not_read();
    let place = |finding: &Finding| {
        let at = review.files.start(&finding.place);
        let path = review.files.path(&finding.place);
        (!unread.iter().any(|file| path.starts_with(file))).then(|| format!("`{path}:{}:{}`", at.line, at.column))
    };
    let is_unread = |finding: &&Finding| finding.severity == Severity::Stop && finding.rule.tells_of_unread_words();
    let words = review.assessment.findings.iter().filter(|finding| with_now && is_unread(finding));
    let all: Vec<String> = unread.iter().map(|path| format!("`{path}`")).chain(words.filter_map(place)).collect();
    let (first, rest) = all.split_first()?;
    let more = if rest.is_empty() { String::new() } else { format!(" (and {} more)", rest.len()) };
    Some(format!("{first}{more}"))
}

fn edition(text: &str) -> Result<Edition, Failure> {
    if text == "now" {
        return Ok(Edition::Now);
    }
    let number = text.parse().map_err(|_| format!("`{text}` is no issue; give its number, or `now`"))?;
    Ok(Edition::Issue(number))
}

fn find(review: &Review, edition: Edition, book: &Path) -> Result<Issue, Failure> {
    let record = &review.book.record;
    let Some(latest) = record.latest() else {
        return Err(format!("nothing was issued in `{}`; begin with `bookmatch issue`", book.display()).into());
    };
    match edition {
        Edition::Issue(number) => record
            .issues
            .get(&number)
            .cloned()
            .ok_or_else(|| format!("there is no issue {number}; the last one is issue {}", latest.number).into()),
        Edition::Now => {
            let heading = Heading {
                book: latest.book.clone(),
                number: 0,
                purpose: Purpose::Approval,
                on: review.today,
                after: None,
            };
            Ok(freeze(&review.book, &review.assessment, heading))
        }
    }
}

/// A part of the change order as a sheet.
#[cfg(feature = "sheets")]
fn sheet(view: &View, book: &Book) -> Result<Vec<u8>, Failure> {
    let look = crate::publish::SheetLook { theme: book.theme.clone(), tongues: book.project.tongues.clone() };
    Ok(crate::publish::sheets::change_order(view, &look)?)
}

/// Without the feature there are no sheets.
#[cfg(not(feature = "sheets"))]
fn sheet(_: &View, _: &Book) -> Result<Vec<u8>, Failure> {
    Err("this program was built without sheets; print it with `--format text`".into())
}

/// Writes the change order whole or not at all: one file or, where it has very many items, a numbered one for
/// each part.
fn write(out: &Path, order: &ChangeOrder, issues: (&Issue, &Issue), book: &Book) -> Result<(), Failure> {
    let parts = paper::change_order::change_order(
        book.project.languages_of_client().first().copied().unwrap_or_default().words(),
        order,
        issues,
        book,
    );
    let paths: Vec<PathBuf> = (1..=parts.len()).map(|part| path_of(out, part, parts.len())).collect();
    paths.iter().try_for_each(|path| laid::may_replace(path, |start| start.starts_with(b"%PDF-"), "PDF"))?;
    let mut sheets = Vec::new();
    for (path, view) in paths.iter().zip(&parts) {
        sheets.push((path, laid::beside(path, &sheet(view, book)?)?));
    }
    for (path, sheet) in sheets {
        laid::put(path, sheet)?;
    }
    if let ([first, .., last], all) = (paths.as_slice(), paths.len()) {
        let (first, last) = (first.display(), last.display());
        report::say(&format!(
            "written in {all} parts, `{first}` to `{last}`; the sums and the signatures stand on the last"
        ));
    }
    Ok(())
}

/// The file of a part: `order.pdf` where there is but one, else `order-1.pdf`.
fn path_of(out: &Path, part: usize, of: usize) -> PathBuf {
    let Some(stem) = out.file_stem().filter(|_| of > 1) else { return out.to_path_buf() };
    let mut name = stem.to_os_string();
    name.push(format!("-{part}"));
    if let Some(ending) = out.extension() {
        name.push(".");
        name.push(ending);
    }
    out.with_file_name(name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_has_a_number_in_its_name() {
        let of = |out: &str, part, of| path_of(Path::new(out), part, of).display().to_string();
        assert_eq!(of("a/order.pdf", 1, 1), "a/order.pdf");
        assert_eq!([of("a/order.pdf", 2, 3), of("order", 1, 2)], ["a/order-2.pdf", "order-1"]);
    }

    #[test]
    fn an_edition_is_a_number_or_now() {
        assert_eq!(edition("now").unwrap(), Edition::Now);
        assert_eq!(edition("12").unwrap(), Edition::Issue(12));
        for text in ["", "-1", "one", "1.0", "Now"] {
            assert!(edition(text).is_err(), "{text}");
        }
    }
}
