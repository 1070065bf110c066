//! The one place where what somebody wrote is cut.

/// The most letters of one quoted value.
pub const MOST_QUOTED: usize = 160;
/// The most letters of a phrase in all.
pub const MOST: usize = 2_000;

/// A text of at most so many letters; the last of one that is cut is `…`.
pub fn short(text: &str, most: usize) -> String {
    // Most are shorter in bytes already, and a letter is no less than one.
    if text.len() <= most {
        return text.to_owned();
    }
    match text.char_indices().nth(most) {
        None => text.to_owned(),
        Some(_) => text.chars().take(most.saturating_sub(1)).chain(['…']).collect(),
    }
}
