//! Why something is not recorded: in words, and for a log with nothing in it that a stranger wrote.

use std::fmt;

use super::receive::{Refusal, plain, said};
use super::response::Malformed;

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Malformed(malformed) => malformed.fmt(f),
            Self::OtherBook => f.write_str("it is of another book, or nothing of this one was issued"),
            Self::NoIssue(number) => write!(f, "there is no issue {number}"),
            Self::OtherLedger(line) => write!(
                f,
                "the page that it was made on states line {line} of the ledger, which is not the one that stands \
                 there: the ledger was cut or exchanged; put `record` back from a backup"
            ),
            Self::Ahead(made) => {
                write!(
                    f,
                    "it says that it was made at {made}, which is still to come; have the clock of the device set right, and say it anew"
                )
            }
            Self::NoApprover(who) => write!(f, "`{}` is no approver of this book", plain(who)),
            Self::WrongKey(who) => write!(f, "it was not made with the key of `{}`", plain(who)),
            Self::NothingHolds(refused) => {
                f.write_str("nothing that it decides is what is issued now")?;
                refused.iter().try_for_each(|one| write!(f, "\n    {}", said(one)))
            }
            Self::Full(full) => full.fmt(f),
            Self::NoOpening(room, opening) => {
                write!(f, "there is no opening `{}` in `{}`", plain(opening), plain(room))
            }
            Self::NotShown(room, item) => f.write_str(&not_shown(room, item)),
            Self::Failed(error) => write!(f, "{error}; {}", error.remedy()),
            Self::NotSo(refused) => write!(f, "nothing is recorded, since of one item it can't be: {}", said(refused)),
            Self::SeenOtherwise(item, seen, newest) => f.write_str(&seen_otherwise(item, *seen, *newest)),
            Self::NoItem(name) => write!(f, "the newest issue has no `{}`", plain(name)),
            Self::NoResponse(digits) => {
                write!(f, "not one unsigned response alone begins with `{}`; give 8 digits or more", plain(digits))
            }
            Self::NoCondition(room, item) => {
                write!(f, "`{}/{}` has no such condition that is open", plain(room), plain(item))
            }
            Self::Conditions(open) => {
                f.write_str("several conditions are open; say which one is met, with `--of` and its digits")?;
                open.iter().try_for_each(|one| write!(f, "\n    {}", plain(one)))
            }
            Self::Readings(named, found) => f.write_str(&taken_back(named, found)),
        }
    }
}

impl std::error::Error for Refusal {}

fn seen_otherwise(item: &str, seen: u32, newest: u32) -> String {
    format!(
        "nothing is recorded: when it was given issue {seen} was the newest, and issue {newest} shows `{}` otherwise; \
         ask again, and record what is said then",
        plain(item)
    )
}

fn not_shown(room: &str, item: &str) -> String {
    format!("no issue of this book shows `{}/{}` as it was held beside what came", plain(room), plain(item))
}

/// Why nothing of that name is taken back: there is none, or there are those.
fn taken_back(named: &str, found: &[String]) -> String {
    let named = plain(named);
    if found.is_empty() {
        return format!(
            "nothing that can be taken back begins with `{named}`, and nobody of that name made any; give 8 digits or more"
        );
    }
    format!("several are of `{named}`; name one by its digits: {}", found.join(", "))
}

impl Refusal {
    /// The reason without any word, name or number of letters that came with it: a log is read by more people than
    /// those who may know what was sent, and whoever sends may write anything.
    pub fn for_a_log(&self) -> String {
        match self {
            Self::Malformed(malformed) => malformed.for_a_log(),
            Self::NoApprover(_) => "it names nobody who approves in this book".into(),
            Self::NotSo(_) => "of an item it can't be so".into(),
            Self::SeenOtherwise(..) => "an issue made since shows an item otherwise".into(),
            Self::NothingHolds(_) => "nothing that it decides is what is issued now".into(),
            Self::Full(_) => "as many that bear no key as may wait to be confirmed wait already".into(),
            Self::NoOpening(..) => "it names an opening that the book does not have".into(),
            Self::NotShown(..) => "no issue of this book shows an item as it was held beside what came".into(),
            Self::NoItem(_) => "it names an item that was not issued".into(),
            Self::NoResponse(_) | Self::NoCondition(..) | Self::Conditions(_) | Self::Readings(..) => {
                "it names nothing that is on record".into()
            }
            // Of a person whom the book names, a line, an issue or a moment.
            known @ (Self::OtherBook
            | Self::NoIssue(_)
            | Self::OtherLedger(_)
            | Self::Ahead(_)
            | Self::WrongKey(_)
            | Self::Failed(_)) => known.to_string(),
        }
    }
}

impl Malformed {
    fn for_a_log(&self) -> String {
        match self {
            Self::NotTheForm(_) => "it is not of the form of a response".into(),
            Self::Twice(..) => "it speaks of one item twice".into(),
            Self::NotSaid(..) => "of something that came otherwise it is not said how, or what became of it".into(),
            Self::NoNote(..) => "it approves something as noted, and there is no note".into(),
            counted @ (Self::TooLarge | Self::TooDeep | Self::Text(_) | Self::Count(_) | Self::Photograph(_)) => {
                counted.to_string()
            }
        }
    }
}
