//! `compare`: the change order between two issues.

use std::path::{Path, PathBuf};

use crate::assess::{ChangeOrder, Heading, freeze};
use crate::ledger::{Issue, Purpose};
use crate::pipeline::{self, Review};
use crate::source::Folder;

use super::report::{self, StatusFormat};
use super::today::Today;
use super::{CLEAN, Failure, STOPPED};

/// Prints the change order between two issues: what changed, money, days and who must sign
///
/// FROM and TO are numbers of issues, or `now` for the book as it stands.
#[derive(clap::Args)]
pub struct Compare {
    /// The folder that holds `book.yaml`, if not this one; then FROM and TO
    #[arg(value_name = "BOOK FROM TO", num_args = 2..=3, required = true)]
    given: Vec<String>,
    /// How to print it
    #[arg(long, value_enum, default_value_t = StatusFormat::Text)]
    format: StatusFormat,
    #[command(flatten)]
    today: Today,
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
        if review.book.record.faulty {
            report::say(report::worded(&review, report::Format::Text, report::to_a_terminal()).trim_end());
            report::say("not compared: the record is not as it was written");
            return Ok(STOPPED);
        }
        let (from, to) = (find(&review, from, &book)?, find(&review, to, &book)?);
        let order = ChangeOrder::between(&from, &to);
        report::print(&report::change_order(&order, (&from, &to), &review.book, self.format))?;
        Ok(CLEAN)
    }
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
            let heading =
                Heading { book: latest.book.clone(), number: 0, purpose: Purpose::Approval, on: review.today };
            Ok(freeze(&review.book, &review.assessment, heading))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edition_is_a_number_or_now() {
        assert_eq!(edition("now").unwrap(), Edition::Now);
        assert_eq!(edition("12").unwrap(), Edition::Issue(12));
        for text in ["", "-1", "one", "1.0", "Now"] {
            assert!(edition(text).is_err(), "{text}");
        }
    }
}
