//! A thing named in a sentence, with its article.

use super::{Phrase, Told, phrase};

/// `a run`, `an island`; several are named without one: `papered walls`. What has an article keeps it.
pub fn with_article(thing: impl Told) -> Phrase {
    let thing = Phrase::said(&thing);
    phrase!("{}{}", article(thing.text()), thing)
}

fn article(name: &str) -> &'static str {
    // `unit` and `used` begin as `you` does.
    let as_you = ["uni", "use"].iter().any(|begin| name.starts_with(begin));
    match name.starts_with(['a', 'e', 'i', 'o', 'u']) {
        _ if is_several(name) || ["the ", "a ", "an "].iter().any(|own| name.starts_with(own)) => "",
        true if !as_you => "an ",
        _ => "a ",
    }
}

/// Whether a name is that of several things: its last word ends as a plural does.
pub fn is_several(name: &str) -> bool {
    name.ends_with('s') && !["ss", "us", "gas"].iter().any(|end| name.ends_with(end))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_thing_has_an_article_and_several_have_none() {
        let named = ["run", "island", "unit", "access", "papered walls", "drawers", "the sink"].map(with_article);
        let told = named.each_ref().map(Phrase::text);
        assert_eq!(told, ["a run", "an island", "a unit", "an access", "papered walls", "drawers", "the sink"]);
    }
}
