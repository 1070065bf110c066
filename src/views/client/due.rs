//! By when a selection must be decided, and why it is that day.

use crate::assess::{DecideBy, Dependent, Reason, Step};
use crate::language::{Words, say};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::hold_point;

impl PageBuilder<'_> {
    /// Why a selection must be decided by its day, to be read after it.
    pub fn reason(&self, due: &DecideBy) -> Option<String> {
        reason(self.words, due)
    }

    /// `8 Feb 2027, when Cabinets, built around it, must be ordered`.
    pub fn day_and_reason(&self, due: &DecideBy) -> String {
        day_and_reason(self.words, due)
    }
}

/// Why a selection must be decided by its day, to be read after it: `when Cabinets, built around it, must be
/// ordered`. Nothing where its own order decides.
fn reason(words: Words, due: &DecideBy) -> Option<String> {
    let Some(rests) = &due.rests else {
        let point = || hold_point(words, &due.hold_point);
        return (due.is == Step::Closing).then(|| say!(words, "decide.hold_point", point = point()));
    };
    let thing = resting(words, rests);
    Some(match due.is {
        Step::Ordered => say!(words, "decide.ordered", thing = thing),
        Step::Order => say!(words, "decide.order", thing = thing),
        Step::Closing => say!(words, "decide.closing", thing = thing, point = hold_point(words, &due.hold_point)),
    })
}

/// What rests on a selection, and why: `Cabinets, built around it`.
pub fn resting(words: Words, rests: &Dependent) -> String {
    let key = match rests.because {
        Reason::Named => "decide.rests.named",
        Reason::Houses => "decide.rests.houses",
        Reason::CutFor => "decide.rests.cut_for",
        Reason::StandsOn => "decide.rests.stands_on",
        Reason::TrimOf => "decide.rests.trim_of",
        Reason::MeasuredOn => "decide.rests.measured_on",
    };
    say!(words, key, name = rests.name)
}

/// `8 Feb 2027, when Cabinets, built around it, must be ordered`.
pub fn day_and_reason(words: Words, due: &DecideBy) -> String {
    let day = words.day(due.on);
    reason(words, due).map_or_else(|| day.clone(), |reason| format!("{day}, {reason}"))
}
