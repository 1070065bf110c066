//! Markdown to HTML that is safe to stand in a page: raw HTML is shown as text, links stay plain.

use crate::views::shared::html::Html;
use pulldown_cmark::{CowStr, Event, HeadingLevel, Options, Parser, Tag, TagEnd};

/// Prose as blocks: paragraphs, lists, emphasis. Pictures are left to the book's own.
pub fn blocks(markdown: &str) -> Html {
    let mut html = String::new();
    pulldown_cmark::html::push_html(&mut html, events(&with_primes(markdown)));
    Html::trusted(html.trim().to_string())
}

/// Prose that is one paragraph, without its tags, so that it can stand inside another.
pub fn line(markdown: &str) -> Html {
    let markdown = with_primes(markdown);
    let inline = events(&markdown)
        .filter(|event| !matches!(event, Event::Start(Tag::Paragraph) | Event::End(TagEnd::Paragraph)));
    let mut html = String::new();
    pulldown_cmark::html::push_html(&mut html, inline);
    Html::trusted(html.trim().to_string())
}

/// The mark of inches after a figure as a double prime, which no typographer takes for a quotation: `6"`. One that ends
/// what a quotation mark began stays one: `"model 12"`.
fn with_primes(markdown: &str) -> String {
    let (mut is_open, mut before) = (false, None::<char>);
    let marks = markdown.chars().map(|letter| {
        let after_a_figure = before.is_some_and(char::is_numeric);
        before = Some(letter);
        match letter {
            '"' if after_a_figure && !is_open => '″',
            '"' => {
                is_open = !is_open;
                letter
            }
            '\n' => {
                is_open = false;
                letter
            }
            other => other,
        }
    });
    marks.collect()
}

fn events(markdown: &str) -> impl Iterator<Item = Event<'_>> {
    let options = Options::ENABLE_STRIKETHROUGH | Options::ENABLE_SMART_PUNCTUATION | Options::ENABLE_TABLES;
    Parser::new_ext(markdown, options).filter_map(|event| {
        match event {
            // Whatever someone typed as HTML is words.
            Event::Html(text) | Event::InlineHtml(text) => Some(Event::Text(text)),
            // The page has its own first and second headings.
            Event::Start(Tag::Heading { level, id, classes, attrs }) => {
                Some(Event::Start(Tag::Heading { level: lower(level), id, classes, attrs }))
            }
            Event::End(TagEnd::Heading(level)) => Some(Event::End(TagEnd::Heading(lower(level)))),
            Event::Start(Tag::Link { link_type, dest_url, title, id }) => {
                Some(Event::Start(Tag::Link { link_type, dest_url: harmless(dest_url), title, id }))
            }
            // A book carries its pictures by name; an address would send the reader elsewhere.
            Event::Start(Tag::Image { .. }) | Event::End(TagEnd::Image) => None,
            other => Some(other),
        }
    })
}

fn lower(level: HeadingLevel) -> HeadingLevel {
    match level {
        HeadingLevel::H1 | HeadingLevel::H2 => HeadingLevel::H3,
        HeadingLevel::H3 => HeadingLevel::H4,
        _ => HeadingLevel::H5,
    }
}

/// Only addresses that a page may lead to.
fn harmless(address: CowStr<'_>) -> CowStr<'_> {
    let fine = ["http://", "https://", "mailto:", "tel:", "#"].iter().any(|start| address.starts_with(start));
    if fine { address } else { CowStr::from("#") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn html_in_a_note_is_shown_as_words() {
        let html = blocks("Hello <script>alert(1)</script> <b>there</b>\n\n<div>x</div>");
        assert!(
            !html.as_str().contains("<script") && !html.as_str().contains("<b>") && !html.as_str().contains("<div")
        );
        assert!(html.as_str().contains("&lt;script&gt;"));
    }

    #[test]
    fn a_link_that_runs_a_script_leads_nowhere() {
        assert_eq!(blocks("[x](javascript:alert(1))").as_str(), "<p><a href=\"#\">x</a></p>");
    }

    #[test]
    fn headings_stand_below_those_of_the_page() {
        assert_eq!(blocks("# Why").as_str(), "<h3>Why</h3>");
    }

    #[test]
    fn the_mark_of_inches_is_no_quotation() {
        assert_eq!(
            line("Shut-off 6\" above the floor, 1 1/2\" pipe.").as_str(),
            "Shut-off 6″ above the floor, 1 1/2″ pipe."
        );
        assert_eq!(line("It is the \"model 12\" of \"old\".").as_str(), "It is the “model 12” of “old”.");
    }

    #[test]
    fn one_line_has_no_paragraph_around_it() {
        assert_eq!(line("A *galley*.").as_str(), "A <em>galley</em>.");
    }
}
