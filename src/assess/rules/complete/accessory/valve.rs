//! The valve that a set is made for, against the one that is ordered with it.

use super::{Ordered, is_model, ordered, squeezed};
use crate::assess::context::about;
use crate::book::{DetailName, ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::source::Span;
use crate::vocabulary::Mention;

/// The model in some words: one of them, with letters and a figure.
fn models(words: &str) -> Vec<String> {
    let words = words.split(|letter: char| letter.is_whitespace() || ",;()".contains(letter));
    let models = words.filter(|word| is_model(word) && word.starts_with(char::is_alphabetic));
    models.map(squeezed).collect()
}

/// Another valve is ordered than the one that is named, or its body is named and nothing orders that.
pub(super) fn judge(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let (words, at) = option.words(DetailName::Valve)?;
    let wanted = models(words);
    if wanted.is_empty() {
        return None;
    }
    let required = option.requires.iter().map(|line| (line.value.clone(), line.span));
    let with = option.accessories.iter().map(|with| {
        let is = [with.name.value.as_str(), with.model.text()].join(" ");
        (is, with.name.span)
    });
    let lines: Vec<(String, Span)> = required.chain(with).collect();
    let names_it = |line: &str| models(line).iter().any(|model| wanted.contains(model));
    if lines.iter().any(|(line, _)| names_it(line)) {
        return None;
    }
    let of_a_valve = |line: &str| Mention::ValveBody.is_in(line) && !models(line).is_empty();
    let name = &selection.name.value;
    if let Some((line, other)) = lines.iter().find(|(line, _)| of_a_valve(line)) {
        let message =
            phrase!("the valve of `{name}` is `{words}`, and what goes with it is `{}`", name, words, line.trim());
        let finding = about(room, selection, option, Severity::Query, at, message).also(*other, "another one");
        return Some(
            finding.remedy("look at the sheet of the trim for the body that it takes, and write that in both places"),
        );
    }
    let has_a_body = lines.iter().any(|(line, _)| Mention::ValveBody.is_in(line));
    let orders = wanted.iter().any(|model| matches!(ordered(room, selection, option, model), Ordered::Yes));
    if lines.is_empty() || has_a_body || orders || !Mention::BuiltInBody.is_in(words) {
        return None;
    }
    let message =
        phrase!("`{name}` is made for `{words}`, and nothing that is ordered with it is that body", name, words);
    let finding = about(room, selection, option, Severity::Query, at, message);
    Some(finding.remedy("add the body under `accessories`, with its price, or make it a selection of its own: it is set before the wall is closed"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn set(lines: &str) -> Trial {
        Trial::of("complete/accessory").selection("selection: Set\nkind: shower set", lines)
    }

    /// Source: common practice: a trim goes on the body that it is made for.
    #[test]
    fn the_valve_that_is_ordered_is_the_one_that_is_named() {
        let with = "requires: [rough-in valve RV-1]\naccessories: [{name: rough-in valve RV-1, model: RV-1}]";
        set(&format!("valve: RV-9 pressure balance\n{with}"))
            .finds("the valve of `Set` is `RV-9 pressure balance`, and what goes with it is `rough-in valve RV-1`")
            .weighs("query");
        set(&format!("valve: RV-1 pressure balance\n{with}")).stays_silent();
        set("valve: rv 1\naccessories: [{name: valve body, model: RV-1}]").stays_silent();
        set("valve: VB-2 thermostatic body\nrequires: [valve body]\naccessories: [{name: valve body, model: VB-2}]")
            .stays_silent();
        set("valve: TV-2\naccessories: [{name: valve body, model: TV-3}, {name: 69-inch hose, model: H-69}]")
            .finds_one();
        set("valve: thermostatic, concealed\naccessories: [{name: valve body, model: TV-3}]").stays_silent();
    }

    #[test]
    fn a_body_that_is_named_is_ordered_with_what_else_is() {
        let rail = "accessories: [{name: riser rail, model: RR-1}]";
        set(&format!("valve: TS-3 built-in body\n{rail}"))
            .finds("`Set` is made for `TS-3 built-in body`, and nothing that is ordered with it is that body")
            .weighs("query");
        set("valve: TS-3 built-in body\naccessories: [{name: TS-3 built-in body, model: TS-3B}]").stays_silent();
        set(&format!("valve: TS-3\n{rail}")).stays_silent();
        set(&format!("valve: visto, sin cuerpo empotrado\n{rail}")).stays_silent();
        // Of a set with nothing beside it, the body may be in the box.
        set("valve: TS-3 built-in body").stays_silent();
        set(&format!("valve: TS-3 built-in body\n{rail}"))
            .selection("selection: Body\nkind: item", "model: TS-3")
            .stays_silent();
    }
}
