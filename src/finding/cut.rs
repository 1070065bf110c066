//! The one place where what a finding repeats of somebody's text is cut.

/// The most letters of one quoted value.
const MOST_QUOTED: usize = 160;
/// The most letters of a phrase in all.
const MOST: usize = 2_000;

/// A phrase whose quoted values, between backticks, are no longer than [`MOST_QUOTED`] letters each, and which is
/// itself no longer than [`MOST`].
pub fn cut(phrase: String) -> String {
    // Fewer bytes than that are fewer letters.
    if phrase.len() <= MOST_QUOTED {
        return phrase;
    }
    let parts: Vec<String> = phrase
        .split('`')
        .enumerate()
        .map(|(number, part)| if number % 2 == 1 { short(part, MOST_QUOTED) } else { part.to_owned() })
        .collect();
    short(&parts.join("`"), MOST)
}

fn short(text: &str, most: usize) -> String {
    match text.char_indices().nth(most) {
        None => text.to_owned(),
        Some(_) => text.chars().take(most.saturating_sub(1)).chain(['…']).collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_value_is_cut_and_the_words_around_it_stay() {
        let long = "é".repeat(1_000_000);
        let told = cut(format!("`{long}` is not one of `a`, `{long}`"));
        assert!(told.starts_with("`éé") && told.contains("…` is not one of `a`, `é") && told.len() < 700, "{told}");
        let short = "`tap` is not a length".to_string();
        assert_eq!(cut(short.clone()), short);
        assert_eq!(cut("a".repeat(5_000)).chars().count(), MOST);
    }
}
