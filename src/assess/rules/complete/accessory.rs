//! A kit that the sheet requires and nobody orders.

use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::rules::{Check, declare};
use crate::book::{Choice, Room, Selection, Slot};
use crate::finding::{Finding, Severity};

declare! {
    /// A kit, trim or filler that the sheet requires is not ordered
    ///
    /// ## What it checks
    /// Each name under `requires` against what is under `accessories`, and against the other selections of
    /// the room: by name or by model.
    ///
    /// ## Why it matters
    /// A pair of tall units without its joining kit, a range on the wrong gas without its
    /// conversion kit: the opening is made for the sum with the kit, and the remedy is invasive.
    ///
    /// ## Remedy
    /// Order it: add it under `accessories`, with its price, or as a selection of its own.
    ///
    /// ## Example
    /// ```yaml
    /// requires: [joining kit]
    /// accessories: [{name: joining kit, price: 140.00}]
    /// ```
    ///
    /// ## Source
    /// trade reports F-13 (joining kit), F-47 (conversion kit).
    "complete/accessory", Stop,
    due: WithThing, tells: [Installer],
    sources: ["the maker's sheet"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (room, selection, option) in context.options() {
        for required in &option.requires {
            let name = &required.value;
            let (severity, message) = match ordered(room, selection, option, name) {
                Ordered::Yes => continue,
                Ordered::WhereChosen(other) => (
                    Severity::Query,
                    format!("the sheet requires `{name}`, and `{}` orders it only if that option is chosen", other),
                ),
                Ordered::No => (Severity::Stop, format!("the sheet requires `{name}`, and nothing orders it")),
            };
            let finding = about(room, selection, option, RULE.code, severity, required.span, message);
            findings.push(finding.remedy(
                "order it: add its name or model under `accessories`, or make it a selection of its own in this room",
            ));
        }
    }
}

/// Whether something orders what a sheet requires.
enum Ordered<'a> {
    Yes,
    /// One of the options of that selection does, and another can still be chosen.
    WhereChosen(&'a str),
    No,
}

/// Looks for it among what goes with the thing, then among the room's other selections; by name or by model.
fn ordered<'a>(room: &'a Room, selection: &Selection, option: &Choice, required: &str) -> Ordered<'a> {
    let is_it = |words: &str| same(words, required);
    let model = |model: &Slot<String>| model.get().is_some_and(|model| is_it(model));
    if option.accessories.iter().any(|with| is_it(&with.name.value) || model(&with.model)) {
        return Ordered::Yes;
    }
    let mut only_where_chosen = Ordered::No;
    for other in room.selections.iter().filter(|other| !std::ptr::eq(*other, selection)) {
        let orders = |option: &Choice| model(&option.model) || option.name.get().is_some_and(|name| is_it(name));
        let standing = other.standing();
        let count = standing.iter().filter(|option| orders(option)).count();
        if is_it(&other.name.value) || (count > 0 && count == standing.len()) {
            return Ordered::Yes;
        }
        if count > 0 {
            only_where_chosen = Ordered::WhereChosen(&other.name.value);
        }
    }
    only_where_chosen
}

/// The same words, whatever their case and whatever stands between them: `JK 2` and `jk-2`.
fn same(one: &str, other: &str) -> bool {
    let plain = |words: &str| -> String {
        words.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase).collect()
    };
    plain(one) == plain(other)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports F-13, F-47.
    #[test]
    fn a_kit_that_the_sheet_requires_must_be_ordered() {
        let trial = |with: &str| {
            Trial::of("complete/accessory")
                .selection("selection: Pair\nkind: refrigerator", &format!("requires: [joining kit]\n{with}"))
        };
        trial("").finds("the sheet requires `joining kit`, and nothing orders it");
        trial("accessories: [{name: anti-tip bracket}]").finds_one();
        trial("accessories: [{name: Joining kit, price: 140}]").stays_silent();
    }

    /// Source: trade reports F-13: what matters is that somebody orders it, not under which heading.
    #[test]
    fn a_kit_is_ordered_by_its_model_and_as_a_selection_of_its_own_too() {
        let requires = |what: &str, with: &str| {
            Trial::of("complete/accessory")
                .selection("selection: Pair\nkind: refrigerator", &format!("requires: [{what}]\n{with}"))
        };
        requires("JK-2", "accessories: [{name: joining kit, model: jk 2}]").stays_silent();
        requires("joining kit", "").selection("selection: Joining kit\nkind: shelf", "").stays_silent();
        requires("JK-2", "").selection("selection: Kit for the pair\nkind: shelf", "model: JK-2").stays_silent();
        requires("JK-2", "").selection("selection: Kit for the pair\nkind: shelf", "model: JK-4").finds_one();
        let open = "options: [{id: slim, model: JK-2}, {id: wide, model: JK-4}]";
        requires("JK-2", "")
            .selection("selection: Kit for the pair\nkind: shelf", open)
            .finds("the sheet requires `JK-2`, and `Kit for the pair` orders it only if that option is chosen")
            .weighs("query");
    }
}
