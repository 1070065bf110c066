//! What a designer writes down with `receive`: decisions given by other means, whose an answer is, conditions
//! met, readings taken back.

use std::path::PathBuf;

use jiff::civil::{Date as CivilDate, DateTime};
use jiff::tz::TimeZone;

use crate::ledger::{Decision, During, Moment, day_in};
use crate::record::{ByHand, Closed, ItemName, Outcome, Receiver};

use super::{Failure, clock};

/// The largest scan, in bytes.
const MAX_SCAN: u64 = 64 * 1024 * 1024;

/// What is written down instead of taken from a file.
#[derive(clap::Args)]
pub struct Written {
    /// Record a decision that this approver gave by other means
    #[arg(long, value_name = "WHO", requires_all = ["item", "decision", "how"])]
    by_hand: Option<String>,
    /// The item, as room/item or by its number on the drawings, such as K-07; may be given several times
    #[arg(long, value_name = "ROOM/ITEM | TAG", requires = "by_hand", value_parser = place)]
    item: Vec<ItemName>,
    /// What was decided: approved, "approved as noted", "revise and resubmit" or rejected
    #[arg(long, requires = "by_hand", value_parser = decision)]
    decision: Option<Decision>,
    /// The option that was chosen
    #[arg(long, requires = "by_hand")]
    option: Option<String>,
    /// The approver's note, how a condition was met, or what the person said
    #[arg(long)]
    note: Option<String>,
    /// How it was given, and the day if `--given` does not say it, such as "signed on paper, 2027-01-16"
    #[arg(long, requires = "by_hand")]
    how: Option<String>,
    /// When it was given, by the clock here: a day, or a day and an hour such as "2027-01-16 14:30"
    #[arg(long, value_name = "WHEN", requires = "by_hand", value_parser = during)]
    given: Option<During>,
    /// The scan of the sheet that was signed
    #[arg(long, value_name = "FILE", requires = "by_hand")]
    scan: Option<PathBuf>,
    /// Confirm an unsigned response, or readings, by the first 8 digits of its digest or more
    #[arg(long, value_name = "SHA8", requires = "by", conflicts_with_all = ["by_hand", "met"])]
    confirm: Option<String>,
    /// An unsigned response is not of whom it names, by the first 8 digits of its digest or more; may be given
    /// several times
    #[arg(
        long,
        value_name = "SHA8",
        num_args = 1..,
        requires = "by",
        conflicts_with_all = ["by_hand", "met", "confirm", "withdraw"]
    )]
    not_theirs: Vec<String>,
    /// Take readings back, by the first 8 digits of their digest or more, or by who measured
    #[arg(long, value_name = "SHA8 | NAME", requires = "by", conflicts_with_all = ["by_hand", "met", "confirm"])]
    withdraw: Option<String>,
    /// Close the condition of an approval as noted
    #[arg(long, value_name = "ROOM/ITEM | TAG", requires_all = ["by", "note"], conflicts_with = "by_hand", value_parser = place)]
    met: Option<ItemName>,
    /// Which condition is met, by the first 8 digits of the response that states it, where several are open
    #[arg(long, value_name = "SHA8", requires = "met")]
    of: Option<String>,
    /// Who confirms, puts aside, takes back, or says that the condition is met
    #[arg(long, value_name = "NAME")]
    by: Option<String>,
}

fn place(text: &str) -> Result<ItemName, String> {
    match text.trim().split_once('/') {
        Some((room, item)) if !room.is_empty() && !item.is_empty() => Ok(ItemName::Of(room.into(), item.into())),
        None if text.chars().any(|letter| letter.is_ascii_digit()) => Ok(ItemName::Tag(text.trim().into())),
        _ => Err("write it as `room/item`, or by its number on the drawings, such as `K-07`".into()),
    }
}

/// A day or a minute by the clock here.
fn during(text: &str) -> Result<During, String> {
    let odd = || format!("`{text}` is no time; write a day such as `2027-01-16`, or `2027-01-16 14:30`");
    let at = |time: DateTime| -> Option<Moment> { Moment::at(TimeZone::system().to_timestamp(time).ok()?) };
    let (day, hour) = text.trim().split_once([' ', 'T']).map_or((text.trim(), None), |(day, hour)| (day, Some(hour)));
    let day: CivilDate = day.parse().map_err(|_| odd())?;
    let (from, until) = match hour {
        None => (at(day.at(0, 0, 0, 0)), at(day.at(23, 59, 59, 0))),
        Some(hour) => {
            let from = at(day.to_datetime(hour.parse().map_err(|_| odd())?));
            (from, from.map(|from| from.plus_seconds(59)))
        }
    };
    Ok(During { from: from.ok_or_else(odd)?, until: until.ok_or_else(odd)? })
}

fn decision(text: &str) -> Result<Decision, String> {
    let all = [Decision::Approved, Decision::ApprovedAsNoted, Decision::ReviseAndResubmit, Decision::Rejected];
    let words = all.map(|decision| format!("`{}`", decision.words())).join(", ");
    let plain = |words: &str| words.trim().to_lowercase().replace(['-', '_'], " ");
    all.into_iter()
        .find(|decision| plain(decision.words()) == plain(text))
        .ok_or_else(|| format!("write one of {words}"))
}

impl Written {
    /// Whether something is to be written down.
    pub fn is_asked(&self) -> bool {
        let named = self.confirm.is_some() || !self.not_theirs.is_empty() || self.withdraw.is_some();
        named || self.by_hand.is_some() || self.met.is_some()
    }

    /// Records it.
    pub fn record(&self, receiver: &Receiver) -> Result<Outcome, Failure> {
        let now = clock::now()?;
        let by = self.by.as_deref().unwrap_or_default();
        if let Some(digits) = &self.confirm {
            return Ok(receiver.confirm(digits, by, now)?);
        }
        if !self.not_theirs.is_empty() {
            return Ok(receiver.not_theirs(&self.not_theirs, by, self.note.as_deref(), now)?);
        }
        if let Some(named) = &self.withdraw {
            return Ok(receiver.take_back(named, by, self.note.as_deref(), now)?);
        }
        if let Some(item) = &self.met {
            let (digits, note) = (self.of.as_deref(), self.note.as_deref().unwrap_or_default());
            return Ok(receiver.met(&Closed { item, digits, by, note }, now)?);
        }
        let (Some(who), Some(decision), Some(how)) = (&self.by_hand, self.decision, &self.how) else {
            let told =
                "nothing is to be recorded; give `--by-hand`, `--confirm`, `--not-theirs`, `--met` or `--withdraw`";
            return Err(told.into());
        };
        if decision == Decision::ApprovedAsNoted && self.note.is_none() {
            return Err("an approval as noted needs its note; give it with `--note`".into());
        }
        let given = ByHand {
            who: who.clone(),
            items: self.item.clone(),
            decision,
            option: self.option.clone(),
            note: self.note.clone(),
            how: how.clone(),
            given: Some(self.when(how)?),
            scan: self.scanned()?,
        };
        Ok(receiver.by_hand(&given, now)?)
    }

    /// When it was given: what counts is when a thing was said, not when it was written down.
    fn when(&self, how: &str) -> Result<During, Failure> {
        if let Some(given) = self.given {
            return Ok(given);
        }
        let day = day_in(how).map(|day| during(&day.iso())).transpose()?;
        day.ok_or_else(|| {
            "it is not said when it was given; say it with `--given`, such as `--given 2027-01-16`".into()
        })
    }

    /// The bytes of the scan, and the ending of its name.
    fn scanned(&self) -> Result<Option<(Vec<u8>, String)>, Failure> {
        let Some(path) = &self.scan else {
            return Ok(None);
        };
        let ending = path.extension().and_then(|ending| ending.to_str()).unwrap_or_default().to_lowercase();
        if !matches!(ending.as_str(), "pdf" | "jpg" | "jpeg" | "png" | "tif" | "tiff" | "heic" | "webp") {
            return Err(format!("`{}` is no scan; give a PDF or a picture", path.display()).into());
        }
        let size = std::fs::metadata(path).map(|facts| facts.len());
        match size.and_then(|size| if size > MAX_SCAN { Ok(None) } else { std::fs::read(path).map(Some) }) {
            Ok(Some(bytes)) => Ok(Some((bytes, ending))),
            Ok(None) => Err(format!("`{}` is larger than 64 MiB", path.display()).into()),
            Err(error) => Err(format!("`{}` can't be read: {error}", path.display()).into()),
        }
    }
}
