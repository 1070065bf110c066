//! Where a book stands, for people and for programs.

use serde::Serialize;

use crate::assess::{BuiltOtherwise, DecideBy, InTheWay, RunsOut, Unapproved, built_since};
use crate::book::Uncounted;
use crate::finding::{Code, Finding, Severity};
use crate::ledger::Purpose;
use crate::pipeline::Review;

use super::approvals::{self, Approvals};
use super::deliveries::{self, DeliveriesReport};
use super::holders::{self, HolderReport};
use super::open::{self, OpenReport, OpenShown};
use super::sheets::{self, SheetReport};
use super::shown::add_line;
use super::taken::{self, TakenReport};

#[derive(Serialize)]
struct StatusReport<'a> {
    title: &'a str,
    today: String,
    /// Files that can't be read: what they tell is missing below, and nothing of it is gone.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    not_read: Vec<String>,
    selections: Selections<'a>,
    /// What stands as `…` and is still to be said.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    open: Vec<OpenReport<'a>>,
    /// Absent while nothing was issued.
    #[serde(skip_serializing_if = "Option::is_none")]
    approvals: Option<Approvals<'a>>,
    /// What is built although it was not approved.
    #[serde(skip_serializing_if = "Option::is_none")]
    unapproved: Option<TakenReport>,
    /// What of the record is lost or not as it was written: nothing below counts until it is mended.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    record: Vec<Obstacle<'a>>,
    /// Readings that do not count.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    readings: Vec<ReadingsReport<'a>>,
    /// Openings whose sheets are others than those that were issued for construction last.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    sheets: Vec<SheetReport<'a>>,
    /// Who was sent which issue, and says that it came.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    holders: Vec<HolderReport>,
    /// What is ordered and came; absent while nothing is.
    #[serde(skip_serializing_if = "Option::is_none")]
    deliveries: Option<DeliveriesReport<'a>>,
    hold_points: Vec<HoldPointReport<'a>>,
    counts: CountsReport,
}

#[derive(Serialize)]
struct ReadingsReport<'a> {
    /// The first digits of their digest.
    digits: String,
    by: &'a str,
    on: String,
    count: usize,
    /// They say that they were made after they came in, and never count.
    ahead: bool,
    /// The day of the book's own measurement, where that is later: they were confirmed and do not count.
    #[serde(skip_serializing_if = "Option::is_none")]
    older_than: Option<String>,
}

#[derive(Serialize)]
struct Selections<'a> {
    all: usize,
    /// One option stands.
    settled: usize,
    waiting: Vec<WaitingReport<'a>>,
    /// Chosen by those who approve, and not written into the book yet.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    to_write: Vec<ToWrite<'a>>,
}

#[derive(Serialize)]
struct ToWrite<'a> {
    room: &'a str,
    item: &'a str,
    tag: &'a str,
    /// The id of the option that was signed.
    chosen: &'a str,
}

#[derive(Serialize)]
struct WaitingReport<'a> {
    room: &'a str,
    item: &'a str,
    tag: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    decide_by: Option<String>,
    /// Why it is that day, where something else than its own order decides.
    #[serde(skip_serializing_if = "Option::is_none")]
    because: Option<String>,
    late: bool,
}

#[derive(Serialize)]
struct HoldPointReport<'a> {
    name: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    date: Option<String>,
    #[serde(skip)]
    at_once: bool,
    in_the_way: Vec<Obstacle<'a>>,
    /// What may not be ordered before it is approved.
    unapproved: Vec<Wanting<'a>>,
}

#[derive(Serialize)]
struct Wanting<'a> {
    room: &'a str,
    item: &'a str,
    tag: &'a str,
    stands: &'a str,
    /// Who has still to sign, by name.
    waits_for: Vec<String>,
    #[serde(skip)]
    stands_for: String,
}

#[derive(Serialize)]
struct Obstacle<'a> {
    rule: &'a str,
    severity: &'a str,
    room: Option<&'a str>,
    item: Option<&'a str>,
    message: &'a str,
    remedy: &'a str,
}

#[derive(Serialize)]
struct CountsReport {
    stop: usize,
    query: usize,
    note: usize,
    waived: usize,
}

/// The standing as JSON.
pub fn json(review: &Review) -> String {
    let superseded = superseded(review);
    // Strings and numbers alone: there is nothing in it that JSON can't hold.
    serde_json::to_string_pretty(&standing(review, &superseded)).map(|text| text + "\n").unwrap_or_default()
}

/// The standing as text.
pub fn text(review: &Review) -> String {
    let superseded = superseded(review);
    let told = standing(review, &superseded);
    let mut text = format!("{}, {}\n", told.title, review.today);
    text += &chosen(&told);
    if !told.open.is_empty() {
        text += "\n";
        text += &open::text(&told.open, OpenShown::Few);
    }
    text += &told.approvals.as_ref().map_or(String::new(), Approvals::text);
    text += &told.unapproved.as_ref().map_or_else(String::new, TakenReport::text);
    text += &to_confirm(&told.readings);
    text += &sheets::text("to be built from another sheet than was issued for construction", &superseded);
    text += &holders::text(&told.holders);
    text += &told.deliveries.as_ref().map_or_else(String::new, DeliveriesReport::text);
    text += "\nhold points\n";
    for point in &told.hold_points {
        let on = point.date.as_deref().unwrap_or(if point.at_once { "now" } else { "no date yet" });
        let count = match point.in_the_way.len() + point.unapproved.len() {
            0 => "nothing stands in the way".to_string(),
            1 => "1 in the way".into(),
            many => format!("{many} in the way"),
        };
        add_line!(text, "  {on:<12} {}: {count}", point.name);
        for obstacle in &point.in_the_way {
            let of: Vec<&str> = [obstacle.room, obstacle.item].into_iter().flatten().collect();
            add_line!(text, "      {} {}: {} [{}]", obstacle.severity, of.join(", "), obstacle.message, obstacle.rule);
        }
        for wanting in &point.unapproved {
            let Wanting { room, item, tag, stands_for, .. } = wanting;
            add_line!(text, "      approval {room}, {tag} {item}: {stands_for}");
        }
    }
    text
}

/// What can't be read or does not count, then what is chosen and what is not.
fn chosen(told: &StatusReport<'_>) -> String {
    let mut text = String::new();
    for path in &told.not_read {
        add_line!(text, "stop: `{path}` can't be read: what it tells is missing below, and is not gone");
    }
    for fault in &told.record {
        add_line!(text, "{}: {} [{}]", fault.severity, fault.message, fault.rule);
        add_line!(text, "  {}", fault.remedy);
    }
    let selections = &told.selections;
    let approved = told.approvals.as_ref().map_or(String::new(), |asked| format!(", {} approved", asked.approved()));
    let read = if told.not_read.is_empty() { "" } else { " that could be read" };
    add_line!(text, "{} of {} selections{read} are settled{approved}", selections.settled, selections.all);
    if !selections.waiting.is_empty() {
        text += "\nwaiting for a choice\n";
    }
    for waiting in &selections.waiting {
        let by = waiting.decide_by.as_deref().unwrap_or("no date yet");
        let late = if waiting.late { ", which has passed" } else { "" };
        let why = waiting.because.as_ref().map_or(String::new(), |why| format!(": {why}"));
        add_line!(text, "  {by:<12} {} {} ({}){late}{why}", waiting.tag, waiting.item, waiting.room);
    }
    if !selections.to_write.is_empty() {
        text += "\nchosen by all who must, and to be written into the book\n";
    }
    for ToWrite { room, item, tag, chosen } in &selections.to_write {
        add_line!(text, "  {tag} {item} ({room}): write `chosen: {chosen}`");
    }
    text
}

/// Readings that do not count, a line each: those that wait, then those that are older than the book's own.
fn to_confirm(readings: &[ReadingsReport<'_>]) -> String {
    let mut text = String::new();
    let (older, waiting): (Vec<_>, Vec<_>) = readings.iter().partition(|one| one.older_than.is_some());
    for (heading, all) in [("readings to be confirmed", waiting), ("readings that do not count", older)] {
        if !all.is_empty() {
            add_line!(text, "\n{heading}");
        }
        for ReadingsReport { digits, by, on, count, ahead, older_than } in all {
            let ahead = if *ahead { ", which lies ahead of their receipt: they never count" } else { "" };
            let older =
                older_than.as_ref().map_or(String::new(), |day| format!(": the book has it measured later, on {day}"));
            add_line!(text, "  {digits}     {count} by {by}, {on}{ahead}{older}");
        }
    }
    text
}

/// The openings that are built from other figures than those of the newest issue for construction.
fn superseded(review: &Review) -> Vec<BuiltOtherwise> {
    let units = review.book.project.units;
    let issued = review.book.record.latest_for(Purpose::Construction).and_then(|issue| issue.built.as_deref());
    let otherwise = issued.map_or_else(Vec::new, |issued| built_since(issued, &review.book));
    let known = otherwise.into_iter().filter(|one| !review.book.is_unsure_of(&one.room));
    known.map(|one| one.in_units(units)).collect()
}

fn standing<'a>(review: &'a Review, superseded: &'a [BuiltOtherwise]) -> StatusReport<'a> {
    let counts = review.assessment.counts;
    StatusReport {
        title: review.book.project.title.text(),
        today: review.today.iso(),
        not_read: review.book.not_read(),
        selections: selections(review),
        open: open::told(review),
        approvals: approvals::of(review),
        unapproved: taken::of(review),
        record: of_record(review).map(obstacle).collect(),
        readings: review.book.record.waiting.iter().map(readings).collect(),
        sheets: sheets::told(superseded),
        holders: holders::told(&review.book.record),
        deliveries: deliveries::of(review),
        hold_points: review.assessment.in_the_way(&review.book).into_iter().map(hold_point).collect(),
        counts: CountsReport { stop: counts.stops, query: counts.queries, note: counts.notes, waived: counts.waived },
    }
}

fn selections(review: &Review) -> Selections<'_> {
    let dates = &review.assessment.dates;
    let open = review.book.selections().filter(|(_, selection)| selection.settled().is_none());
    let mut waiting: Vec<_> = open
        .map(|(room, selection)| WaitingReport {
            room: room.title(),
            item: &selection.name.value,
            tag: &selection.tag,
            decide_by: dates.decide_by(selection).map(|day| day.iso()),
            because: dates.decision(selection).and_then(DecideBy::reason).map(|why| why.text().to_owned()),
            late: dates.runs_out(selection) == RunsOut::Past,
        })
        .collect();
    waiting.sort_by(|one, other| {
        (one.decide_by.is_none(), &one.decide_by).cmp(&(other.decide_by.is_none(), &other.decide_by))
    });
    let all = review.book.selections().count();
    let to_write =
        review.book.selections().filter(|(_, selection)| selection.chosen_by_record).filter_map(|(room, one)| {
            Some(ToWrite { room: room.title(), item: &one.name.value, tag: &one.tag, chosen: one.chosen.get()? })
        });
    Selections { all, settled: all - waiting.len(), waiting, to_write: to_write.collect() }
}

/// What stops all work on the record.
fn of_record(review: &Review) -> impl Iterator<Item = &Finding> {
    let findings = review.assessment.findings.iter();
    findings.filter(|finding| finding.rule == Code::LEDGER && finding.severity == Severity::Stop)
}

fn readings(waiting: &crate::book::WaitingReadings) -> ReadingsReport<'_> {
    let measured = &waiting.measured;
    ReadingsReport {
        digits: measured.response.to_string().chars().take(8).collect(),
        by: &measured.by,
        on: measured.on.iso(),
        count: measured.readings.len(),
        ahead: matches!(waiting.because, Uncounted::Ahead(_)),
        older_than: match waiting.because {
            Uncounted::Older(day) => Some(day.iso()),
            Uncounted::Unconfirmed | Uncounted::Ahead(_) => None,
        },
    }
}

fn hold_point(held: InTheWay<'_>) -> HoldPointReport<'_> {
    HoldPointReport {
        name: held.point.name,
        date: held.point.on.map(|on| on.iso()),
        at_once: held.at_once,
        in_the_way: held.findings.into_iter().map(obstacle).collect(),
        unapproved: held.unapproved.iter().map(wanting).collect(),
    }
}

fn wanting<'a>(thing: &Unapproved<'a>) -> Wanting<'a> {
    let Unapproved { room, selection, stands, .. } = *thing;
    Wanting {
        room: room.title(),
        item: &selection.name.value,
        tag: &selection.tag,
        stands,
        waits_for: thing.of.clone(),
        stands_for: thing.stands_for(),
    }
}

fn obstacle(finding: &Finding) -> Obstacle<'_> {
    debug_assert!(finding.severity != Severity::Note, "advice stands in nobody's way");
    Obstacle {
        rule: finding.rule.text(),
        severity: finding.severity.word(),
        room: finding.room.as_deref(),
        item: finding.subject.name(),
        message: finding.message.text(),
        remedy: finding.remedy.text(),
    }
}
