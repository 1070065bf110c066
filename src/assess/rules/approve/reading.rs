//! Readings that nobody has confirmed.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{Uncounted, WaitingReadings};
use crate::finding::{Phrase, Remark, phrase};
use crate::source::Place;
use crate::units::{Date, Wrote};

declare! {
    /// Readings came in, and nobody has confirmed them
    ///
    /// ## What it checks
    /// Readings at openings that were handed over, and that the designer has neither confirmed nor taken
    /// back. They count for nothing until then: every fit is decided on what the book says. Readings that
    /// say that they were made after they came in are told too, and never count. Those that were confirmed, and are older
    /// than the day on which the book says that the opening was measured, are a note: the book's own figures count.
    ///
    /// ## Why it matters
    /// Anyone who has the installer's pages can hand readings in. Cabinets are made to them.
    ///
    /// ## Remedy
    /// Ask who measured, and record it: `bookmatch receive --confirm DIGITS --by NAME`. What is wrong is
    /// taken back, before or after: `bookmatch receive --withdraw DIGITS --by NAME`.
    ///
    /// ## Example
    /// ```text
    /// 3 readings of `range` by Teo Varrick, 18 Jan 2027, wait to be confirmed
    /// ```
    ///
    /// ## Source
    /// Trade practice: whoever orders answers for the field measurement.
    "approve/reading", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.book.record.waiting.iter().map(|waiting| told(context, waiting)));
}

fn told(context: &Context<'_>, waiting: &WaitingReadings) -> Remark {
    let measured = &waiting.measured;
    let first = measured.readings.first();
    let opening = first.and_then(|read| {
        let room = context.book.room(&read.room)?;
        Some((room, room.opening(&read.opening)?))
    });
    let place = opening.map_or_else(|| Place::Path("record/ledger.jsonl".into()), |(_, one)| one.name.span.into());
    let (message, remedy) = worded(waiting);
    let finding = match waiting.because {
        Uncounted::Older(_) => Remark::note(place, message),
        Uncounted::Unconfirmed | Uncounted::Ahead(_) => Remark::query(place, message),
    };
    let finding = finding.remedy(remedy);
    match opening {
        Some((room, _)) => finding.room(&room.folder),
        None => finding,
    }
}

/// What is told of readings that do not count, and what to do.
fn worded(waiting: &WaitingReadings) -> (Phrase, Phrase) {
    let measured = &waiting.measured;
    let (count, openings) = (measured.readings.len(), of(waiting));
    let readings = if count == 1 { "1 reading".into() } else { phrase!("{count} readings", count) };
    let digits = measured.response.short(8);
    match waiting.because {
        Uncounted::Unconfirmed => (
            phrase!(
                "{readings} of {openings} by {}, {}, wait to be confirmed",
                readings,
                openings,
                Wrote(&measured.by),
                measured.on
            ),
            phrase!(
                "ask who measured, and record it: `bookmatch receive --confirm {digits} --by NAME`, or take them \
                 back with `--withdraw {digits}`; until then they count for nothing",
                digits,
                digits
            ),
        ),
        Uncounted::Older(day) => older(waiting, (readings, openings), day),
        Uncounted::Ahead(came) => (
            phrase!(
                "{readings} of {openings} by {} say {}, and came in on {came}",
                readings,
                openings,
                Wrote(&measured.by),
                measured.on,
                came
            ),
            phrase!(
                "they never count: have it measured anew with the clock set right, and take them back: `bookmatch \
                 receive --withdraw {digits} --by NAME`",
                digits
            ),
        ),
    }
}

/// Of readings that were confirmed, and of which the book has a later measurement.
fn older(waiting: &WaitingReadings, (readings, openings): (Phrase, Phrase), day: Date) -> (Phrase, Phrase) {
    let message = phrase!(
        "{readings} of {openings} by {}, {}, do not count: the book has it measured on {day}, which is later",
        readings,
        openings,
        Wrote(&waiting.measured.by),
        waiting.measured.on,
        day
    );
    let remedy = phrase!(
        "where these are the right ones, write the day of the book's own under `measured` again; else take them back: \
         `bookmatch receive --withdraw {digits} --by NAME`",
        waiting.measured.response.short(8)
    );
    (message, remedy)
}

/// "`range`" or "`range` and 2 more openings".
fn of(waiting: &WaitingReadings) -> Phrase {
    let mut names: Vec<(&str, &str)> =
        waiting.measured.readings.iter().map(|read| (read.room.as_str(), read.opening.as_str())).collect();
    names.dedup();
    let more = names.iter().skip(1).filter(|one| Some(*one) != names.first()).count();
    let first = names.first().map_or("", |(_, opening)| opening);
    match more {
        0 => phrase!("`{first}`", first),
        1 => phrase!("`{first}` and 1 more opening", first),
        more => phrase!("`{first}` and {more} more openings", first, more),
    }
}
