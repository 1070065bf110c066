//! What a page of a book's own theme must say: all that no theme may leave out.

use serde_json::Value;
use tera::Context;

use crate::language::Language;
use crate::publish::stays::must_say;
use crate::theme::Group;

use super::{Theme, ThemeError, said_by_scripts};
use crate::publish::markup::without;

impl Theme {
    /// Looks whether a page says all that no theme may leave out: the standard templates do.
    ///
    /// # Errors
    /// The first thing that is missing.
    pub fn says_all(
        &self,
        (template, language): (&str, Language),
        page: &str,
        values: &Context,
        html: &str,
    ) -> Result<(), ThemeError> {
        if self.files.own_names(Group::Templates).next().is_none() {
            return Ok(());
        }
        let shown = without(html, "<!--", "-->");
        let view = values.get("page").and_then(|view| serde_json::to_value(view).ok()).unwrap_or_default();
        let absent = must_say(&view).into_iter().find(|must| !shown.contains(&must.text));
        let is_draft = view.pointer("/sheet/project/draft") == Some(&Value::Bool(true));
        let what = match absent {
            None if !says_by_scripts(&view, language, &shown) => {
                "what its scripts say, in one block of the id `words` as the standard page has it".into()
            }
            Some(must) => format!("{}, `{}`", must.what, must.text),
            None if is_draft && !shown.contains("class=\"draft\"") => {
                "that it is a draft, in an element of the class `draft`".into()
            }
            None => return Ok(()),
        };
        let template = self.files.place(Group::Templates, template);
        Err(ThemeError::LeftOut { template, page: page.to_owned(), what })
    }
}

/// Whether a page that asks something has the words of its scripts once, and as they are: what stands over a
/// signature goes into the record with it.
fn says_by_scripts(view: &Value, language: Language, shown: &str) -> bool {
    let asks = |key: &str| view.get(key).is_some_and(|data| !data.is_null());
    let bundles: &[&str] = match (asks("asked"), asks("asks")) {
        (true, _) => &["deciding", "signing"],
        (_, true) => &["readings", "receiving"],
        _ => return true,
    };
    let said = said_by_scripts(language.words().tree());
    let block = |bundle: &&str| {
        let words = said.get(*bundle).map_or("", String::as_str);
        shown.contains(&format!("<script type=\"application/json\" id=\"words\">{words}</script>"))
    };
    bundles.iter().any(block) && shown.matches("id=\"words\"").count() == 1
}
