//! Text that is safe to stand in a page as it is.

use serde::Serialize;

use crate::language::{COUNT, Part, Say, Words};

/// A run of text, escaped, in which figures may be marked up.
///
/// It can be made from plain text, from other safe runs, or from [`trusted`](Html::trusted) markup,
/// so whatever a person typed has always been escaped.
#[derive(Clone, Debug, Default, Eq, PartialEq, Serialize)]
pub struct Html {
    html: String,
}

/// What the other system of units stands in.
pub const SOFT: &str = "<span class=\"mm\">";

/// Before and after what a sheet sets smaller: U+2063, which is not seen and which sheets take out.
const SMALLER: char = '\u{2063}';

impl Html {
    /// Plain text, with `&`, `<`, `>` and both quotes escaped.
    pub fn text(text: &str) -> Html {
        let mut html = String::with_capacity(text.len());
        for letter in text.chars() {
            match letter {
                '&' => html.push_str("&amp;"),
                '<' => html.push_str("&lt;"),
                '>' => html.push_str("&gt;"),
                '"' => html.push_str("&quot;"),
                '\'' => html.push_str("&#39;"),
                other => html.push(other),
            }
        }
        Html { html }
    }

    /// Markup that we made ourselves: a drawing, or Markdown turned to HTML with raw HTML off.
    pub fn trusted(markup: impl Into<String>) -> Html {
        Html { html: markup.into() }
    }

    /// The same run in bold.
    pub fn bold(&self) -> Html {
        Html::trusted(format!("<b>{}</b>", self.html))
    }

    /// This run with `next` after it.
    pub fn then(mut self, next: impl Into<Html>) -> Html {
        self.html.push_str(&next.into().html);
        self
    }

    /// Whether there is nothing to show.
    pub fn is_empty(&self) -> bool {
        self.html.is_empty()
    }

    /// The words of the run: its tags left out and its escapes undone. Paper sets its own fractions.
    pub fn plain(&self) -> String {
        let mut text = String::with_capacity(self.html.len());
        let mut in_tag = false;
        for letter in self.html.chars() {
            match letter {
                '<' => in_tag = true,
                '>' => in_tag = false,
                _ if in_tag => {}
                '\u{a0}' => text.push(' '),
                other => text.push(other),
            }
        }
        let escapes = [("&nbsp;", " "), ("&lt;", "<"), ("&gt;", ">"), ("&quot;", "\""), ("&#39;", "'"), ("&amp;", "&")];
        escapes.into_iter().fold(text, |text, (escape, letter)| text.replace(escape, letter))
    }

    /// As [`Html::plain`], with what stands in the softer ink between marks that sheets set it smaller by.
    pub fn on_paper(&self) -> String {
        let marked = self.html.split(SOFT).enumerate().map(|(at, part)| match (at, part.split_once("</span>")) {
            (0, _) | (_, None) => part.to_string(),
            (_, Some((soft, rest))) => format!("{SMALLER}{soft}{SMALLER}{rest}"),
        });
        Html::trusted(marked.collect::<String>()).plain()
    }

    /// The markup.
    pub fn as_str(&self) -> &str {
        &self.html
    }
}

/// Can stand in a sentence on a page.
pub trait Shown {
    /// It in a language.
    fn shown(&self, words: Words) -> Html;

    /// How many it is, by which a sentence takes its plural form.
    fn count(&self) -> Option<u64>;
}

impl<T: Say> Shown for T {
    fn shown(&self, words: Words) -> Html {
        Html::text(&self.said(words))
    }

    fn count(&self) -> Option<u64> {
        Say::count(self)
    }
}

impl Shown for Html {
    fn shown(&self, _: Words) -> Html {
        self.clone()
    }

    fn count(&self) -> Option<u64> {
        None
    }
}

impl Html {
    /// A key's sentence with what stands in its holes; `show!` is the way to write it.
    pub fn filled(words: Words, key: &str, values: &[(&str, &dyn Shown)]) -> Html {
        let count = values.iter().find(|(name, _)| *name == COUNT).and_then(|(_, value)| value.count());
        words.parts(key, count).into_iter().fold(Html::default(), |text, part| match part {
            Part::Words(words) => text.then(words),
            Part::Hole(name) => match values.iter().find(|(known, _)| *known == name) {
                Some((_, value)) => text.then(value.shown(words)),
                None => text,
            },
        })
    }

    /// Several in a row, as a language joins them: `a, b and c`.
    pub fn series(words: Words, parts: Vec<Html>) -> Html {
        let joints = words.joints(&parts.iter().map(Html::plain).collect::<Vec<_>>());
        parts.into_iter().enumerate().fold(Html::default(), |text, (at, part)| {
            let joint = at.checked_sub(1).and_then(|before| joints.get(before)).map_or("", String::as_str);
            text.then(joint).then(part)
        })
    }
}

/// The sentence of a key as markup, with what stands in its holes by name: `show!(words, "fit.gaps.each", gap = gap)`.
macro_rules! show {
    ($words:expr, $key:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::views::shared::html::Html::filled($words, $key, &[
            $((stringify!($name), &$value as &dyn $crate::views::shared::html::Shown)),*
        ])
    };
}
pub(crate) use show;

impl From<&str> for Html {
    fn from(text: &str) -> Html {
        Html::text(text)
    }
}

impl From<String> for Html {
    fn from(text: String) -> Html {
        Html::text(&text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn typed_text_cannot_become_markup() {
        let run = Html::text("<b onclick=\"x\">Tom & 'Jo'</b>");
        assert_eq!(run.as_str(), "&lt;b onclick=&quot;x&quot;&gt;Tom &amp; &#39;Jo&#39;&lt;/b&gt;");
    }

    #[test]
    fn safe_runs_join_without_being_escaped_twice() {
        let run = Html::text("Fits,").bold().then(" a < b");
        assert_eq!(run.as_str(), "<b>Fits,</b> a &lt; b");
    }

    #[test]
    fn a_figure_on_paper_reads_as_it_is_written() {
        let html = "<span class=\"dim\">30\u{a0}<i class=\"fr w\">1/16</i>″</span> &lt;b&gt; &amp;amp;";
        assert_eq!(Html::trusted(html).plain(), "30 1/16″ <b> &amp;");
    }
}
