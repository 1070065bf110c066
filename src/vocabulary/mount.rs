//! How a sink, a basin or a tap is fixed, read from the words of its `mount`.

use super::supply::InWords;

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
    /// On the wall, on the floor, or on a foot or legs of its own: in no cabinet and through no counter.
    InNoCabinet,
}

/// Words by which each is known, the telling ones first.
const WORDS: &[(Mount, &[&str])] = &[
    (Mount::Under, &["under"]),
    (Mount::Apron, &["apron", "farmhouse", "belfast", "butler"]),
    (Mount::OnCounter, &["vessel", "on the counter", "on counter", "countertop", "sit-on"]),
    (Mount::InNoCabinet, &["wall", "floor", "pedestal", "free", "legs", "console", "brackets", "surface"]),
    (Mount::DropIn, &["drop", "top", "inset", "self-rim", "flush", "lay-on"]),
];

impl InWords for Option<Mount> {
    fn of_words(words: &str) -> Self {
        let words = words.to_lowercase();
        let known = WORDS.iter().find(|(_, known)| known.iter().any(|word| words.contains(word)));
        known.map(|(mount, _)| *mount)
    }
}

impl Mount {
    /// Whether it hangs in, or is carried by, a base cabinet.
    pub fn is_in_a_cabinet(self) -> bool {
        matches!(self, Self::Under | Self::DropIn | Self::Apron)
    }
}
