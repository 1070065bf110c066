//! The same name twice.

use crate::assess::rules::{Check, declare};

declare! {
    /// A name or a key stands twice where it must be one
    ///
    /// ## What it checks
    /// Keys of a group, ids and tags of a room's selections, ids of a selection's options, letters
    /// of rooms, ids and names of approvers.
    ///
    /// ## Why it matters
    /// Of two that bear one name only one can count, and nobody sees which.
    ///
    /// ## Remedy
    /// Rename one of the two, or take it out. Of a key that stands twice the first counts.
    ///
    /// ## Example
    /// ```yaml
    /// width: 30"
    /// width: 31"
    /// ```
    ///
    /// ## Source
    /// YAML 1.2.2, section 3.2.1.3 (keys are unique); the book's own format.
    "source/duplicate", Stop,
    due: AtOnce, tells: [],
    sources: ["YAML 1.2.2", "the book's own format"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn a_key_that_stands_twice_is_told() {
        Trial::of("source/duplicate").book("tax: 8 %\ntax: 9 %").finds("the key `tax` appears twice in the same group");
        Trial::of("source/duplicate").book("tax: 8 %").stays_silent();
    }

    #[test]
    fn two_selections_with_one_tag_are_told() {
        let two = |other: &str| {
            let trial = Trial::of("source/duplicate").selection("selection: Tap\nkind: tap\ntag: K-01", "");
            trial.selection(&format!("selection: Sink\nkind: sink\ntag: {other}"), "")
        };
        two("K-01").finds("another selection of this room has the tag `K-01`");
        two("K-02").stays_silent();
    }

    #[test]
    fn two_approvers_of_one_name_are_told() {
        let two = |other: &str| {
            let both = format!("approvers: [{{id: jan, name: Jan Møller}}, {{id: young, name: \"{other}\"}}]");
            Trial::of("source/duplicate").book(&both)
        };
        two("Jan  Møller").finds("two approvers have the name `Jan  Møller`");
        two("Jan Møller (son)").stays_silent();
    }

    #[test]
    fn two_options_with_one_id_are_told() {
        let options = |other: &str| format!("options:\n  - {{id: steel, maker: A}}\n  - {{id: {other}, maker: B}}");
        let trial = |other: &str| Trial::of("source/duplicate").selection("selection: Tap\nkind: tap", &options(other));
        trial("steel").finds("two options have the id `steel`");
        trial("brass").stays_silent();
    }
}
