//! Pipes that are called by their outside and the thickness of their wall: `16 x 2 mm`, `Cu 15 x 1`, `20 x 3,4 mm`.

/// Outsides by which pipes are sold, in millimetres (EN 1057, EN ISO 15875 and EN ISO 15874, from memory).
const OUTSIDES: [&str; 22] = [
    "8", "10", "12", "14", "15", "16", "17", "18", "20", "22", "25", "26", "28", "32", "35", "40", "42", "50", "54",
    "63", "75", "110",
];

/// In tenths of a millimetre: no wall of a house's pipe is thicker.
const THICKEST: u32 = 100;

/// A text in small letters in which such a pipe goes by its outside alone: `16 x 2 mm` is `16 mm`.
pub(super) fn by_its_outside(lower: &str) -> String {
    let mut written = String::with_capacity(lower.len());
    let mut rest = lower;
    while let Some(letter) = rest.chars().next() {
        let begins = written
            .chars()
            .next_back()
            .is_none_or(|before: char| !(before.is_alphanumeric() || ".,/".contains(before)));
        match outside(rest).filter(|_| begins) {
            Some((outside, behind)) => {
                written.push_str(outside);
                written.push_str(" mm");
                rest = behind;
            }
            None => {
                written.push(letter);
                rest = rest.get(letter.len_utf8()..).unwrap_or_default();
            }
        }
    }
    written
}

/// The outside of a pipe that a text begins with, and what stands behind its wall.
fn outside(text: &str) -> Option<(&str, &str)> {
    let (outside, after) = split(text, |letter| letter.is_ascii_digit())?;
    if !OUTSIDES.contains(&outside) {
        return None;
    }
    let after = after.strip_prefix(" mm").or_else(|| after.strip_prefix("mm")).unwrap_or(after).trim_start();
    let (wall, divided) = match after.strip_prefix(['x', '×']) {
        Some(wall) => (wall, false),
        // A fraction of an inch is none of millimetres: `15/16"`.
        None => (after.strip_prefix('/')?, true),
    };
    let wall = wall.trim_start();
    let (number, _) = split(wall, |letter| letter.is_ascii_digit() || ".,".contains(letter))?;
    // A comma behind it ends the phrase.
    let (wall, behind) = wall.split_at(number.trim_end_matches([',', '.']).len());
    let unit = behind.trim_start();
    let in_millimetres = unit.strip_prefix("mm").filter(|rest| !rest.starts_with(char::is_alphanumeric));
    let is_bare = !divided && !unit.starts_with(['"', '″', '”', '/', '½', '¼', '¾', '\'', '°']) && !goes_on(unit);
    let is_wall = tenths(wall).is_some_and(|tenths| tenths > 0 && tenths <= THICKEST);
    let thinner = tenths(wall)
        .zip(outside.parse::<u32>().ok())
        .is_some_and(|(wall, outside)| wall.saturating_mul(4) <= outside.saturating_mul(10));
    match in_millimetres {
        Some(rest) if is_wall && thinner => Some((outside, rest)),
        None if is_bare && is_wall && thinner => Some((outside, behind)),
        _ => None,
    }
}

/// Whether a word follows that makes the figure something else than a wall: an inch, a metre, another size.
fn goes_on(unit: &str) -> bool {
    let word = unit.split(|letter: char| !letter.is_alphanumeric()).next().unwrap_or_default();
    ["in", "inch", "cm", "m", "x", "a", "v", "amp"].contains(&word)
}

/// What a text begins with, as far as its letters are of that sort.
fn split(text: &str, is: impl Fn(char) -> bool) -> Option<(&str, &str)> {
    let end = text.find(|letter| !is(letter)).unwrap_or(text.len());
    (end > 0).then(|| text.split_at(end))
}

/// A plain number in tenths, to one place.
fn tenths(number: &str) -> Option<u32> {
    let (whole, part) = number.split_once(['.', ',']).unwrap_or((number, "0"));
    let part = part.get(..1)?.parse::<u32>().ok()?;
    whole.parse::<u32>().ok()?.checked_mul(10)?.checked_add(part)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pipe_goes_by_its_outside_whatever_its_wall() {
        for (words, read) in [
            ("kw/ww 16 x 2 mm", "kw/ww 16 mm"),
            ("hot and cold, 16 x 2.0 mm pex", "hot and cold, 16 mm pex"),
            ("cu 15 x 1 mm", "cu 15 mm"),
            ("cu 15 x 1", "cu 15 mm"),
            ("ppr 20 x 3,4 mm, kalt", "ppr 20 mm, kalt"),
            ("16/2 mm", "16 mm"),
            ("16x2, cold", "16 mm, cold"),
            ("15 mm x 1 mm copper", "15 mm copper"),
            ("16 × 2,0 mm", "16 mm"),
            // Two lines, sides of a duct, fractions and a thread stay as they are.
            ("2 x 15 mm", "2 x 15 mm"),
            ("222 x 89 mm", "222 x 89 mm"),
            ("40 x 50 mm", "40 x 50 mm"),
            ("15/16\"", "15/16\""),
            ("15 x 1/2\"", "15 x 1/2\""),
            ("32/40 mm", "32/40 mm"),
            ("20 x 3/4\"", "20 x 3/4\""),
            ("15 x 2 m", "15 x 2 m"),
            ("3.15 x 1 mm", "3.15 x 1 mm"),
            ("16 x 400000000", "16 x 400000000"),
        ] {
            assert_eq!(by_its_outside(words), read, "{words}");
        }
    }
}
