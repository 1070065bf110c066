//! Short names, for pages and links: lower-case letters, figures and hyphens.

/// A name as lower-case letters, figures and hyphens.
pub fn short_name_of(name: &str) -> String {
    let mut slug = String::new();
    for letter in name.chars().flat_map(char::to_lowercase) {
        match letter {
            'a'..='z' | '0'..='9' => slug.push(letter),
            _ if !slug.is_empty() && !slug.ends_with('-') => slug.push('-'),
            _ => {}
        }
    }
    slug.truncate(slug.trim_end_matches('-').len());
    if slug.is_empty() { "item".into() } else { slug }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_become_words_with_single_hyphens() {
        for (name, short) in
            [("Wall tile", "wall-tile"), ("  Tap & spray — 2 ", "tap-spray-2"), ("Küche", "k-che"), ("漢字", "item")]
        {
            assert_eq!(short_name_of(name), short);
        }
    }
}
