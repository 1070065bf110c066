//! A history by chance: a book changes and is issued, and people say things of it, in no good order.

use std::collections::BTreeMap;

use bookmatch::digest::Digest;
use bookmatch::ledger::{
    Decided, FIRST_BEFORE, Fact, Head, Invited, Issue, Issued, Line, Moment, Opened, Purpose, Received, Sent, Total,
    Withdrawn,
};
use bookmatch::shown;
use bookmatch::units::Date;
use bookmatch::vocabulary::Version;

use super::books::{Books, Stand};
use super::dice::Dice;

const MINUTE: i64 = 60;
const HOUR: i64 = 60 * MINUTE;
pub const DAY: i64 = 24 * HOUR;

/// What happened, and how the book stands after it.
pub struct History {
    /// How the book stands now.
    pub stand: Stand,
    /// The ledger.
    pub lines: Vec<Line>,
    /// The issues.
    pub issues: Vec<Issue>,
    pub(super) dice: Dice,
    /// Seconds since the beginning, by the ledger's own clock.
    pub(super) clock: i64,
    /// What was said and has not come in yet.
    pub(super) under_way: Vec<Decided>,
    pub(super) deliveries: Vec<Received>,
    /// How many responses each device has signed.
    pub(super) turns: [u32; 4],
    /// Only what the program itself would take in comes in.
    pub(super) strict: bool,
}

impl History {
    /// One history; the books are those that it may be of.
    pub fn of(books: &Books, mut dice: Dice) -> Self {
        let stand = Stand {
            range: dice.below(3),
            rug: dice.below(4),
            approvers: *dice.one(&[0, 0, 0, 1, 2]),
            any: dice.is(25),
            with_tax: dice.is(15),
        };
        let strict = dice.is(75);
        let mut history = Self {
            stand,
            lines: vec![],
            issues: vec![],
            dice,
            clock: 0,
            under_way: vec![],
            deliveries: vec![],
            turns: [0; 4],
            strict,
        };
        history.record(Fact::Opened(Opened { book: "0".repeat(32), title: "Trial".into() }));
        if history.dice.is(98) {
            history.issue(books);
        }
        for _ in 0..history.dice.below(16) {
            history.pass_time();
            history.happens(books);
        }
        history
    }

    /// The line of each issue.
    pub fn heads(&self) -> BTreeMap<u32, Head> {
        let head = |line: &Line| match &line.fact {
            Fact::Issued(issued) => Some((issued.number, Head::of(line))),
            _ => None,
        };
        self.lines.iter().filter_map(head).collect()
    }

    /// So many seconds after the beginning.
    pub(super) fn moment(seconds: i64) -> Moment {
        let beginning: Moment = "2027-01-10T09:00:00Z".parse().expect("a moment");
        beginning.plus_seconds(seconds)
    }

    /// The day of so many seconds after the beginning.
    pub(super) fn day(seconds: i64) -> Date {
        Self::moment(seconds).day().expect("a day")
    }

    /// Adds a line at the ledger's own clock.
    pub(super) fn record(&mut self, fact: Fact) {
        let number = u32::try_from(self.lines.len() + 1).expect("a few lines");
        let (before, at) = (self.lines.last().map_or(FIRST_BEFORE, |last| last.digest), Self::moment(self.clock));
        let digest = Digest::of_parts(&[before.as_bytes(), &number.to_be_bytes()]);
        self.lines.push(Line { number, at, before, fact, digest });
    }

    fn pass_time(&mut self) {
        self.clock += match self.dice.below(100) {
            // A ledger whose own clock was set back.
            0 if !self.strict => -self.dice.between(HOUR, 2 * DAY),
            0..30 => self.dice.between(1, 12 * MINUTE),
            30..75 => self.dice.between(MINUTE, 9 * HOUR),
            _ => self.dice.between(HOUR, 3 * DAY),
        };
    }

    fn happens(&mut self, books: &Books) {
        match self.dice.below(100) {
            0..10 => self.book_changes(),
            10..14 => self.rules_change(),
            14..24 => self.issue(books),
            24..62 => self.somebody_says(),
            62..70 => self.something_comes_late(),
            70..77 => self.somebody_is_asked(),
            77..80 => self.proof_comes(),
            80..85 => self.condition_is_met(),
            85..91 => self.delivery_comes(),
            91..96 => self.delivery_is_asked_about(),
            _ => self.other_line(),
        }
    }

    /// Another choice, another figure, an item that goes or comes.
    fn book_changes(&mut self) {
        let (ranges, rugs, _) = Stand::COUNTS;
        let price = self.stand.range / 3 * 3;
        match self.dice.below(10) {
            0..5 => self.stand.range = price + self.dice.below(3),
            5..7 => self.stand.range = self.dice.below(ranges),
            7..9 => self.stand.rug = 1 + self.dice.below(rugs - 1),
            _ => self.stand.rug = self.dice.below(rugs),
        }
    }

    /// Who decides, how many of them must, whether tax is in prices.
    fn rules_change(&mut self) {
        match self.dice.below(5) {
            0..3 => self.stand.approvers = self.dice.below(Stand::COUNTS.2),
            3 => self.stand.any = !self.stand.any,
            _ => self.stand.with_tax = !self.stand.with_tax,
        }
    }

    fn issue(&mut self, books: &Books) {
        let number = u32::try_from(self.issues.len() + 1).expect("a few issues");
        let purpose = if self.dice.is(85) { Purpose::Approval } else { Purpose::Construction };
        let made = self.issues.iter().map(shown::version);
        let (newest, oldest) = (made.clone().max(), made.min());
        // Older releases made the first issues.
        let version =
            *self.dice.one(&[Version::First, Version::Second, Version::Third, Version::Third, Version::Third]);
        let version = newest.map_or(version, |newest| newest.max(version));
        let items = books.items(&self.stand, version, oldest.unwrap_or(version)).to_vec();
        let off = if self.dice.is(88) { 0 } else { self.dice.between(-3, 3) };
        let on = Self::day(self.clock + off * DAY);
        let issue = Issue {
            book: "0".repeat(32),
            number,
            purpose,
            on,
            title: "Trial".into(),
            currency: "USD".into(),
            total: Total::default(),
            terms: (version != Version::First || self.dice.is(50)).then(|| books.terms(&self.stand)),
            after: None,
            items,
            built: None,
            asked: vec![],
            unapproved: None,
            money: None,
            title_block: None,
        };
        let items = u32::try_from(issue.items.len()).expect("a few items");
        let sha256 = Digest::of(&number.to_be_bytes());
        self.issues.push(issue);
        self.record(Fact::Issued(Issued { number, purpose, on, sha256, items }));
    }

    /// What changes no approval.
    fn other_line(&mut self) {
        let (who, key, on) = ("ada".to_string(), "0a1b2c3d".to_string(), Self::day(self.clock));
        let fact = match self.dice.below(3) {
            0 => Fact::Invited(Invited { who, key, on }),
            1 => Fact::Withdrawn(Withdrawn { who, key, on }),
            _ => Fact::Sent(Sent { issue: 1, to: "Ines Tarrow".into(), role: None, on }),
        };
        self.record(fact);
    }
}
