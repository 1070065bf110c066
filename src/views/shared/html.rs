//! Text that is safe to stand in a page as it is.

use serde::Serialize;

/// A run of text, escaped, in which figures may be marked up.
///
/// It can be made from plain text, from other safe runs, or from [`trusted`](Html::trusted) markup,
/// so whatever a person typed has always been escaped.
#[derive(Clone, Debug, Default, Eq, PartialEq, Serialize)]
pub struct Html {
    html: String,
}

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

    /// The markup.
    pub fn as_str(&self) -> &str {
        &self.html
    }
}

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
