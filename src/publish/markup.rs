//! Pages as they were rendered, read tag by tag: their attributes, and their scripts.

/// What becomes of an attribute.
pub(super) enum Becomes {
    /// It stays as it is.
    Same,
    /// It has another value, as it is to stand in the page.
    Value(String),
    /// Another attribute stands for it, with nothing in it.
    Named(&'static str),
    /// It goes.
    Gone,
}

/// Where the parts of a page lie: markup of our own templates, in which every attribute that can change has
/// double quotes.
enum Part<'a> {
    /// Words, comments, and whatever lies in scripts and styles.
    Text(&'a str),
    /// A tag, from `<` to `>`.
    Tag(&'a str),
}

/// A page with each attribute of its tags as `change` has it: it is given the tag's name, the attribute's and the
/// value.
pub(super) fn with_attributes(page: &str, mut change: impl FnMut(&str, &str, &str) -> Becomes) -> String {
    let mut out = String::with_capacity(page.len());
    for part in parts(page) {
        match part {
            Part::Text(text) => out.push_str(text),
            Part::Tag(tag) => changed(tag, &mut change, &mut out),
        }
    }
    out
}

/// A page without all that begins and ends so: its scripts, or the way to the next page.
pub(super) fn without(page: &str, start: &str, end: &str) -> String {
    let mut out = String::with_capacity(page.len());
    let mut rest = page;
    while let Some((before, after)) = rest.split_once(start) {
        out.push_str(before);
        rest = after.split_once(end).map_or("", |(_, rest)| rest);
    }
    out + rest
}

/// What lies between two texts that stand in a page once.
pub(super) fn between<'a>(page: &'a str, before: &str, after: &str) -> Option<&'a str> {
    page.split_once(before)?.1.split_once(after).map(|(inside, _)| inside)
}

fn parts(page: &str) -> Vec<Part<'_>> {
    let mut parts = Vec::new();
    let mut rest = page;
    while let Some((before, after)) = rest.split_once('<') {
        parts.push(Part::Text(before));
        let tag_and_rest = rest.get(before.len()..).unwrap_or_default();
        if after.starts_with("!--") {
            let (comment, other) = cut_after(tag_and_rest, "-->");
            parts.push(Part::Text(comment));
            rest = other;
            continue;
        }
        if !after.starts_with(|letter: char| letter.is_ascii_alphabetic() || letter == '/' || letter == '!') {
            parts.push(Part::Text("<"));
            rest = after;
            continue;
        }
        let (tag, other) = tag_of(tag_and_rest);
        parts.push(Part::Tag(tag));
        rest = other;
        for raw in ["script", "style"] {
            if name_of(tag) == raw {
                let (inside, other) = cut_before(rest, &format!("</{raw}"));
                parts.push(Part::Text(inside));
                rest = other;
            }
        }
    }
    parts.push(Part::Text(rest));
    parts
}

/// A tag and what comes after it: its end is the first `>` that stands in no quotes.
fn tag_of(text: &str) -> (&str, &str) {
    let mut quoted = false;
    for (at, letter) in text.char_indices() {
        match letter {
            '"' => quoted = !quoted,
            '>' if !quoted => return text.split_at(at + 1),
            _ => {}
        }
    }
    (text, "")
}

fn cut_after<'a>(text: &'a str, end: &str) -> (&'a str, &'a str) {
    text.find(end).map_or((text, ""), |at| text.split_at(at + end.len()))
}

fn cut_before<'a>(text: &'a str, start: &str) -> (&'a str, &'a str) {
    text.find(start).map_or((text, ""), |at| text.split_at(at))
}

fn name_of(tag: &str) -> &str {
    let name = tag.trim_start_matches('<');
    name.split(|letter: char| letter.is_whitespace() || matches!(letter, '>' | '/')).next().unwrap_or_default()
}

fn changed(tag: &str, change: &mut impl FnMut(&str, &str, &str) -> Becomes, out: &mut String) {
    let mut rest = tag;
    while let Some((before, after)) = rest.split_once("=\"") {
        let (value, after) = after.split_once('"').unwrap_or((after, ""));
        let start = before.rfind(char::is_whitespace).unwrap_or(before.len());
        let (kept, name) = before.split_at(start);
        match change(name_of(tag), name.trim_start(), value) {
            Becomes::Same => {
                out.push_str(before);
                out.extend(["=\"", value, "\""]);
            }
            Becomes::Value(value) => {
                out.push_str(before);
                out.extend(["=\"", &value, "\""]);
            }
            Becomes::Named(name) => out.extend([kept, " ", name, "=\"\""]),
            Becomes::Gone => out.push_str(kept),
        }
        rest = after;
    }
    out.push_str(rest);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn attributes_change_and_words_scripts_and_comments_stay() {
        let page = "<p class=\"a\">1 < 2 <a href=\"x.html\" title=\"a > b\">x</a></p><!-- <a href=\"x\"> --><script>\"<a href=\\\"x\\\">\"</script><img src=\"y\">";
        let said = with_attributes(page, |tag, name, value| match (tag, name, value) {
            ("a", "href", "x.html") => Becomes::Gone,
            ("img", "src", _) => Becomes::Value("z".into()),
            _ => Becomes::Same,
        });
        assert_eq!(
            said,
            "<p class=\"a\">1 < 2 <a title=\"a > b\">x</a></p><!-- <a href=\"x\"> --><script>\"<a href=\\\"x\\\">\"</script><img src=\"z\">"
        );
        assert_eq!(without("a<script defer src=\"b\"></script>c<script>d</script>", "<script", "</script>"), "ac");
        assert_eq!(between("<main id=\"f\">x</main>", "<main id=\"f\">", "</main>"), Some("x"));
    }
}
