//! A sheet that is called by another model than the one that was chosen.

use crate::assess::context::about;
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};

/// The letters that makers begin the numbers of one family with: at least so many tell one family from another.
const FAMILY: usize = 2;

/// The name of the sheet has one number of the model's own family, and it is another.
pub(super) fn another((room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let sheet = option.fit.get()?.sheet.get()?;
    let (title, model) = (sheet.name.spanned()?, option.model.spanned()?);
    if !is_of_another(&title.value, &model.value) {
        return None;
    }
    let message = phrase!(
        "the figures of `{}` come from a sheet that is called `{}`, and its model is `{}`",
        selection.name.value,
        title.value,
        model.value
    );
    let finding = about(room, selection, option, Severity::Query, title.span, message).also(model.span, "the model");
    Some(finding.remedy("fetch the sheet of this model and write its figures; or correct the name, or the model"))
}

fn is_of_another(title: &str, model: &str) -> bool {
    let (in_title, own) = (numbers(title), numbers(model));
    let [own] = own.as_slice() else { return false };
    let of_family = in_title.iter().filter(|other| family(other) == family(own)).collect::<Vec<_>>();
    // `TG-30 to TG-48` is a sheet of several, and `TG-3x` too.
    let [other] = of_family.as_slice() else { return false };
    let of_several = other.contains('x') || title.contains('/') || title.contains('*');
    let names_it = other.starts_with(own.as_str()) || own.starts_with(other.as_str());
    family(own).len() >= FAMILY && !names_it && !of_several && !digits_alone(title, own)
}

/// What makers call models by: words of letters and then digits, in small letters without signs.
fn numbers(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let words = lower.split(|letter: char| letter.is_whitespace() || ",;:()/".contains(letter));
    let plain = words.map(|word| word.chars().filter(|letter| letter.is_alphanumeric()).collect::<String>());
    plain.filter(|word| !family(word).is_empty() && family(word).len() < word.len()).collect()
}

/// The letters before the first digit.
fn family(number: &str) -> &str {
    let end = number.find(|letter: char| !letter.is_alphabetic()).unwrap_or(number.len());
    number.get(..end).unwrap_or_default()
}

/// Whether the figure of a model stands in the title by itself: `TG-30, 36 and 48`.
fn digits_alone(title: &str, own: &str) -> bool {
    let digits = own.get(family(own).len()..).unwrap_or_default();
    title.split(|letter: char| !letter.is_alphanumeric()).any(|word| word == digits)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn the_sheet_is_the_chosen_model_s() {
        let range = |title: &str, model: &str| {
            Trial::of("complete/cut-sheet").selection(
                "selection: Range\nkind: range",
                &format!("model: '{model}'\nfit: {{sheet: {{name: '{title}', revision: C}}}}"),
            )
        };
        range("TG-48 installation guide", "TG-36")
            .finds("the figures of `Range` come from a sheet that is called `TG-48 installation guide`, and its model is `TG-36`")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:4:21"]);
        range("TG48 guide, rev C2", "TG-36").finds_one();
        for its in [
            "TG-36 installation guide",
            "TG36S installation guide",
            "TG-30 to TG-48 guide",
            "TG-30, 36 and 48 guide",
            "TG-3x guide",
            "TG series guide",
            "installation guide",
            "MH-2400 guide",
        ] {
            range(its, "TG-36").stays_silent();
        }
        range("T-48 guide", "T-36").stays_silent();
        range("TG-48 guide", "36 inch").stays_silent();
    }
}
