//! Why something is not recorded, for a log: with nothing in it that a stranger wrote.

use super::receive::Refusal;
use super::response::Malformed;

impl Refusal {
    /// The reason without any word, name or number of letters that came with it: a log is read by more people than
    /// those who may know what was sent, and whoever sends may write anything.
    pub fn for_a_log(&self) -> String {
        match self {
            Self::Malformed(malformed) => malformed.for_a_log(),
            Self::NoApprover(_) => "it names nobody who approves in this book".into(),
            Self::NotSo(_) => "of an item it can't be so".into(),
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
