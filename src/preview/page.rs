//! What a preview adds to a page: the strip of findings, and the script that reloads it.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use serde_json::json;

use super::findings::{self, FindingLine, Run};
use super::live::Shown;

/// The script that hears of builds.
pub(super) const SCRIPT: &str = include_str!("reload.js");
/// The style of the strip and of the preview's own pages.
pub(super) const STYLE: &str = include_str!("strip.css");

/// The parts of a publication, as they are listed on the first page.
const PARTS: [(&str, &str, &str); 3] = [
    ("client", "Client", "cover, rooms, selections, and the page to sign"),
    ("installer", "Installer", "a sheet for each opening"),
    ("office", "Office", "schedules, the review, costs and private notes"),
];

/// A page with the strip and the script put in before its end.
pub(super) fn with_strip(page: &[u8], shown: &Shown) -> Vec<u8> {
    let end = b"</body>";
    let at = page.windows(end.len()).rposition(|part| part.eq_ignore_ascii_case(end));
    let (before, after) = page.split_at(at.unwrap_or(page.len()));
    let foot = format!(
        "<link rel=\"stylesheet\" href=\"/-/strip.css\">\
         <div id=\"bookmatch-preview\">{}</div>\
         <script src=\"/-/reload.js\" data-mark=\"{}\"></script>",
        strip(shown),
        shown.mark
    );
    [before, foot.as_bytes(), after].concat()
}

/// The message of a build: which files changed (nothing: unknown, so reload), and the new strip.
pub(super) fn message(changed: Option<&BTreeSet<String>>, shown: &Shown) -> String {
    json!({ "changed": changed, "strip": strip(shown) }).to_string()
}

/// The strip itself: how many findings, and each with its word, shape, place and remedy.
fn strip(shown: &Shown) -> String {
    if shown.findings.is_empty() && !shown.broken {
        return String::new();
    }
    let (open, lead) = match (shown.broken, &shown.output) {
        (false, _) => ("", "Draft: "),
        (true, Some(_)) => (" open", "The book cannot be built; this is the last good page: "),
        (true, None) => (" open", "The book cannot be built yet: "),
    };
    let lines: String = shown.findings.iter().map(line).collect();
    format!("<details{open}><summary>{lead}{}</summary><ol>{lines}</ol></details>", findings::count(&shown.findings))
}

fn line(finding: &FindingLine) -> String {
    format!(
        "<li><b><svg viewBox=\"0 0 20 20\" aria-hidden=\"true\"><path d=\"{}\"/></svg>{}</b>\
         <p><span>{}</span> {}<br><i>{}</i><br>{}</p></li>",
        finding.severity.shape(),
        finding.severity.word(),
        escape(&finding.place),
        quoted(&finding.message),
        quoted(&finding.remedy),
        quoted(&finding.told),
    )
}

/// The first page: the three parts that there are.
pub(super) fn parts(shown: &Shown) -> Vec<u8> {
    let Some(output) = &shown.output else {
        return own("No page yet", "<p>The pages appear here as soon as the book can be built.</p>", shown);
    };
    let mut list = String::new();
    for (folder, name, what) in PARTS {
        if output.get(&format!("{folder}/index.html")).is_some() {
            let _ = write!(list, "<li><a href=\"/{folder}/\">{name}</a> <span>{what}</span></li>");
        }
    }
    own("Draft", &format!("<p>Follows the folder while you write.</p><ul>{list}</ul>"), shown)
}

/// The page for a path that the draft does not have.
pub(super) fn missing(path: &str, shown: &Shown) -> Vec<u8> {
    if shown.output.is_none() {
        return parts(shown);
    }
    // Sheets take longer than pages, and come after them.
    let yet =
        if path.ends_with(".pdf") { ", or not yet: sheets are set when nobody has saved for a while" } else { "" };
    let text = format!(
        "<p>The draft has no <code>{}</code>{yet}.</p><ul><li><a href=\"/\">All parts</a></li></ul>",
        escape(path)
    );
    own("No such page", &text, shown)
}

fn own(title: &str, body: &str, shown: &Shown) -> Vec<u8> {
    let page = format!(
        "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>{title}</title>\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"></head>\
         <body class=\"bookmatch-own\"><main><h1>{title}</h1>{body}</main></body></html>"
    );
    with_strip(page.as_bytes(), shown)
}

/// Words of a finding, with what stands in backticks set as code.
fn quoted(runs: &[Run]) -> String {
    let run = |(quoted, text): &Run| match quoted {
        true => format!("<code>{}</code>", escape(text)),
        false => escape(text),
    };
    runs.iter().map(run).collect()
}

/// Text for HTML, in elements and attributes.
fn escape(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\'' => escaped.push_str("&#39;"),
            other => escaped.push(other),
        }
    }
    escaped
}

#[cfg(test)]
mod tests {
    use super::super::Severity;
    use super::*;
    use crate::publish::output::Output;

    fn shown(broken: bool) -> Shown {
        let finding = FindingLine {
            severity: Severity::Stop,
            place: "rooms/attic/room.yaml:3:8".into(),
            message: vec![(false, "a <length> without a unit".into())],
            remedy: vec![(false, "write ".into()), (true, "36\"".into()), (false, " or".into())],
            told: vec![(false, "told to the installer".into())],
        };
        Shown { output: Some(Output::default()), findings: vec![finding], broken, mark: "m-1".into() }
    }

    fn text(page: &[u8]) -> String {
        String::from_utf8(page.to_vec()).unwrap()
    }

    #[test]
    fn a_page_gets_one_script_and_one_strip_before_its_end() {
        let page = text(&with_strip(b"<body><p>\"</body>\"</p></BODY></html>", &shown(false)));
        assert_eq!(page.matches("<script").count(), 1);
        assert!(page.starts_with("<body><p>\"</body>\"</p><link"), "{page}");
        assert!(page.ends_with("data-mark=\"m-1\"></script></BODY></html>"), "{page}");
        assert!(text(&with_strip(b"<p>bare", &shown(false))).starts_with("<p>bare<link"));
    }

    #[test]
    fn a_finding_is_told_by_word_place_message_and_remedy() {
        let page = text(&with_strip(b"", &shown(false)));
        for part in [
            "1 stop",
            "stop</b>",
            "room.yaml:3:8",
            "a &lt;length&gt;",
            "write <code>36&quot;</code> or",
            "<br>told to the installer</p>",
        ] {
            assert!(page.contains(part), "{part}: {page}");
        }
        assert!(page.contains("<details><summary>Draft: "));
    }

    #[test]
    fn a_broken_book_says_that_the_page_is_the_last_good_one() {
        let page = text(&with_strip(b"", &shown(true)));
        assert!(page.contains("<details open><summary>The book cannot be built; this is the last"));
        let none = Shown { output: None, ..shown(true) };
        assert!(text(&parts(&none)).contains("The book cannot be built yet: 1 stop"));
    }

    #[test]
    fn a_clean_book_has_no_strip() {
        let clean = Shown { findings: vec![], ..shown(false) };
        assert!(text(&with_strip(b"", &clean)).contains("<div id=\"bookmatch-preview\"></div>"));
    }

    #[test]
    fn what_is_quoted_is_set_as_code() {
        let runs = [(false, "a ".to_string()), (true, "<i>`".to_string()), (false, " c".to_string())];
        assert_eq!(quoted(&runs), "a <code>&lt;i&gt;`</code> c");
        assert_eq!(findings::plain(&runs), "a `<i>`` c");
    }

    #[test]
    fn a_path_is_shown_as_text() {
        assert!(!text(&missing("<script>alert(1)</script>", &shown(false))).contains("<script>a"));
    }
}
