//! Sets every fraction of a page as one, whoever wrote it and wherever it stands.

use memchr::{memchr, memchr3};

use crate::language::next_fraction;

/// Elements in which text stays as it is written, or that can hold no markup of a page.
const AS_WRITTEN: [&str; 8] = ["script", "style", "svg", "pre", "code", "title", "textarea", "select"];

/// A page with the fractions in its text marked up; one that is marked up already stays so.
pub fn set(page: &str) -> String {
    let mut out = String::with_capacity(page.len());
    let mut rest = page;
    while let Some((text, tag, after)) = next_tag(rest) {
        set_text(text, &mut out);
        out.push_str(tag);
        rest = after;
        let kept = element(tag).filter(|name| AS_WRITTEN.contains(name) || tag.starts_with("<i class=\"fr"));
        if let Some(name) = kept {
            let end = end_of(rest, name);
            let (inner, after) = rest.split_at_checked(end).unwrap_or((rest, ""));
            out.push_str(inner);
            rest = after;
        }
    }
    set_text(rest, &mut out);
    out
}

/// The text before the next tag, that tag, and what comes after it.
fn next_tag(page: &str) -> Option<(&str, &str, &str)> {
    let (text, rest) = page.split_at_checked(page.find('<')?)?;
    let (tag, after) = rest.split_at_checked(tag_end(rest)?)?;
    Some((text, tag, after))
}

/// Where a tag ends: at the first `>` that stands in no attribute.
fn tag_end(tag: &str) -> Option<usize> {
    let bytes = tag.as_bytes();
    let mut from = 0;
    loop {
        let at = from + memchr3(b'>', b'"', b'\'', bytes.get(from..)?)?;
        match *bytes.get(at)? {
            b'>' => return Some(at + 1),
            quote => from = at + 2 + memchr(quote, bytes.get(at + 1..)?)?,
        }
    }
}

/// The name of the element that a tag opens.
fn element(tag: &str) -> Option<&str> {
    let name = tag.strip_prefix('<')?;
    let end = name.find(|letter: char| !letter.is_ascii_alphanumeric())?;
    name.get(..end).filter(|name| !name.is_empty())
}

/// Where the end tag of an element stands.
fn end_of(page: &str, name: &str) -> usize {
    page.find(&format!("</{name}>")).unwrap_or(page.len())
}

/// Adds a stretch of text with its fractions marked up.
fn set_text(text: &str, out: &mut String) {
    let mut rest = text;
    while let Some((before, fraction, after)) = next_fraction(rest) {
        match before.strip_suffix([' ', '\u{a0}']).filter(|whole| whole.ends_with(|end: char| end.is_ascii_digit())) {
            Some(whole) => out.push_str(&format!("{whole}\u{a0}<i class=\"fr w\">{fraction}</i>")),
            None => out.push_str(&format!("{before}<i class=\"fr\">{fraction}</i>")),
        }
        rest = after;
    }
    out.push_str(rest);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fraction_is_set_as_one_wherever_it_stands_in_text() {
        let rows = [
            ("<p>30 1/16&quot; wide</p>", "<p>30\u{a0}<i class=\"fr w\">1/16</i>&quot; wide</p>"),
            ("<p>1/2&quot; gas</p>", "<p><i class=\"fr\">1/2</i>&quot; gas</p>"),
            ("7 3/4 and (5/8)", "7\u{a0}<i class=\"fr w\">3/4</i> and (<i class=\"fr\">5/8</i>)"),
            ("3′-4 1/2″", "3′-4\u{a0}<i class=\"fr w\">1/2</i>″"),
        ];
        for (written, wanted) in rows {
            assert_eq!(set(written), wanted);
        }
    }

    #[test]
    fn what_is_no_fraction_or_is_set_already_stays_as_it_is() {
        for page in [
            "<i class=\"fr w\">1/16</i>",
            "<img alt=\"30 1/16 > 3\" src=\"a/1/2.jpg\">",
            "<img alt='a \" 1/16 > 3' title=\"it's > 1/2\">",
            "<svg><title>1/2</title><text>1/2</text></svg>",
            "<pre>a: 1/2\"</pre><code>1/2</code><script>1/2</script>",
            "on 11/12/2026, K-1/2, 3/5, 8/2, 24/7, 01/16, km/h, 1/2x, 0/2, and/or",
            "no end <b",
        ] {
            assert_eq!(set(page), page);
        }
    }
}
