//! One figure that two places of the book tell differently.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, Severity, Value, phrase};
use crate::site::twice::{ComparedValue, Differ, Joined, Twice, of_room};

declare! {
    /// Two places tell the same fact differently
    ///
    /// ## What it checks
    /// Width, depth, sill, counter height and counter depth of an opening against the run, island or
    /// fixture that it stands in; the cabinet around it against the part that holds it, which can't be
    /// larger inside than outside; a cabinet against the part of its name; what is chosen against the fixture of the plan that
    /// it is larger than; what is above an opening against
    /// what the plan hangs there; the gap to a wall beside it against row and plan ({2"} more is one gap); a ceiling above it against a level room's own ({1"} apart is one ceiling);
    /// clear distances against what the plan leaves ({2"} more is one distance), headroom, shower head and the covering of
    /// a shower's walls against the ceiling there; a counter's depth, overhang
    /// and height against what it lies on; number, centres and what is below of lights; the side that a
    /// door hangs on; a door's leaf against its doorway, and a blind against its window ({2"} and {1"}, where no leaf is
    /// told), each of that `place` or that name; the pieces of a counter against its seams ({1/2"}, or {6"} where it stands out past its run); the bars and the shower that are written for access against what is ordered
    /// and drawn; what a counter is made of; a thickness that is written twice; a floor, with its bed, that is thicker
    /// than the floor build-up of its room, and tile that is thicker than the wall build-up around a tub; what stands beside and below an opening, against its row, and the counter beside it ({2"} more is one); the rim of a basin against what carries it ({3/4"}); a counter against the thickness in its model's name; a pull
    /// against the way between its screws.
    /// Other figures of one thing that are {1/8"} apart are one. What decides no fit is asked.
    ///
    /// ## Why it matters
    /// One of the two is built and the other is ordered for.
    ///
    /// ## Remedy
    /// Correct the one that is wrong, or leave it out: one place is enough. Meanwhile what was measured
    /// counts, else what is written at the thing itself, else the plan.
    ///
    /// ## Example
    /// ```yaml
    /// openings: {range: {takes: range, counter height: 36"}}
    /// runs: {range wall: {counter: {height: 37"}, parts: [{opening: range}]}}
    /// ```
    ///
    /// ## Source
    /// The book's own figures; how far they may differ is common practice.
    "source/contradiction", Stop,
    due: AtOnce, tells: [],
    sources: ["the book's own figures", "common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let twice = of_room(context.site, room);
        findings.extend(twice.iter().map(|twice| told(context, twice).room(&room.folder)));
    }
}

fn told(context: &Context<'_>, twice: &Twice<'_>) -> Remark {
    let say = |said| words(context, said);
    let (counts, differs) = (&twice.counts, &twice.differs);
    let is = say(counts.value);
    let (other, spot) = (say(differs.value), differs.spot);
    let what = match twice.joined {
        Joined::Of => phrase!("{} of `{}`", twice.what, twice.about.value),
        Joined::At => phrase!("{} `{}`", twice.what, twice.about.value),
    };
    let message = match twice.how {
        Differ::Apart => {
            phrase!("{what} is {is} {}, and {other} {spot}", what, is, counts.spot, other, spot)
        }
        Differ::InsideOut => {
            phrase!("{what} is {is}, more than the {other} outside {spot}", what, is, other, spot)
        }
        Differ::MoreThan(than) => {
            phrase!("{what} is {is}, more than {than} of {other} {spot}", what, is, than, other, spot)
        }
        Differ::LessThan(than) => {
            phrase!("{what} is {is}, less than {than}, {other} {spot}", what, is, than, other, spot)
        }
    };
    let remedy = phrase!("correct the one that is wrong, or leave it out; meanwhile {} counts", say(counts.value));
    let severity = if twice.decides_a_fit { Severity::Stop } else { Severity::Query };
    let finding = Remark::new(severity, differs.at, message).thing(twice.about);
    finding.also(counts.at, phrase!("{} here", say(counts.value))).remedy(remedy)
}

fn words(context: &Context<'_>, said: ComparedValue<'_>) -> Phrase {
    match said {
        ComparedValue::Length(length) => say(length, context.book.project.units).into(),
        ComparedValue::Count(count) => Value::Count(count.into()).into(),
        ComparedValue::Word(word) => Phrase::plain(word),
    }
}

#[cfg(test)]
mod heated;
#[cfg(test)]
mod hung;
#[cfg(test)]
mod rooms;
#[cfg(test)]
mod seams;
#[cfg(test)]
mod tests;
