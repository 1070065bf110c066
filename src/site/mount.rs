//! How a sink or basin is fixed, read from its `mount`.

use crate::book::{CutOut, ProductOption};
use crate::source::Span;
use crate::vocabulary::Words;

/// How a sink or basin is fixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mount {
    /// Under the counter.
    Under,
    /// Into the counter from above, its rim on it.
    DropIn,
    /// With a front of its own, in a base cabinet.
    Apron,
    /// Standing on the counter.
    OnCounter,
    /// On the wall, or on a foot or legs of its own: in no cabinet.
    InNoCabinet,
}

/// Words by which each is known, the telling ones first.
const WORDS: &[(Mount, &[&str])] = &[
    (Mount::Under, &["under"]),
    (Mount::Apron, &["apron", "farmhouse", "belfast", "butler"]),
    (Mount::OnCounter, &["vessel", "on the counter", "on counter", "countertop", "sit-on"]),
    (Mount::InNoCabinet, &["wall", "pedestal", "free", "legs", "console", "brackets"]),
    (Mount::DropIn, &["drop", "top", "inset", "self-rim", "flush", "lay-on"]),
];

impl Mount {
    /// As the option's `mount` says; none where it says nothing that is understood.
    pub fn of(option: &ProductOption) -> Option<Self> {
        let (words, _) = option.words("mount")?;
        let words = words.to_lowercase();
        let known = WORDS.iter().find(|(_, known)| known.iter().any(|word| words.contains(word)));
        known.map(|(mount, _)| *mount)
    }

    /// Whether it hangs in, or is carried by, a base cabinet.
    pub fn is_in_a_cabinet(self) -> bool {
        matches!(self, Self::Under | Self::DropIn | Self::Apron)
    }
}

/// How a unit is made to be set in, and where that is written: as it says itself, else by its `mount`.
pub fn made_as(option: &ProductOption) -> Option<(CutOut, Span)> {
    let own = option.words("made as").and_then(|(word, at)| Some((CutOut::of(word)?, at)));
    own.or_else(|| {
        let (_, at) = option.words("mount")?;
        let as_bowl = match Mount::of(option)? {
            Mount::Under => CutOut::Undermount,
            Mount::DropIn => CutOut::TopMount,
            Mount::Apron => CutOut::Apron,
            Mount::OnCounter | Mount::InNoCabinet => return None,
        };
        Some((as_bowl, at))
    })
}
