//! A name that is nobody's.

use crate::assess::rules::{Check, declare};

declare! {
    /// A name stands for nothing in the book
    ///
    /// ## What it checks
    /// Openings, milestones, products, options, allowances, rooms, kinds, other selections, and the
    /// rules that waivers name. The nearest name that exists is told.
    ///
    /// ## Why it matters
    /// A selection that points at no opening is never checked against one; one that waits for no
    /// milestone is never late.
    ///
    /// ## Remedy
    /// Write the name that is meant, or add what it names.
    ///
    /// ## Example
    /// ```yaml
    /// place: rnage     # range
    /// ```
    ///
    /// ## Source
    /// The book's own format.
    "source/unknown-name", Stop,
    due: AtOnce, tells: [],
    sources: ["the book's own format"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(lines: &str) -> Trial {
        let trial =
            Trial::of("source/unknown-name").book("milestones: {demolition: 2027-03-01}\nallowances: {tile: 3800}");
        trial.opening("range", "{takes: range}").selection(&format!("selection: Range\nkind: range\n{lines}"), "")
    }

    #[test]
    fn the_nearest_name_is_told() {
        range("place: rnage")
            .finds("there is no opening in this room called `rnage`")
            .remedies("did you mean `range`?");
        range("place: range").stays_silent();
        range("needed for: demolitoin").finds("there is no milestone called `demolitoin`");
        range("needed for: demolition").stays_silent();
        range("allowance: tiles").finds("there is no allowance called `tiles`");
        range("chosen: steel").finds("there is no option of this selection called `steel`");
    }

    #[test]
    fn a_name_in_other_letters_is_a_certain_mend_and_one_that_is_only_near_is_not() {
        range("place: Range").mends();
        range("needed for: Demolition").mends();
        range("needed for: demolitoin").mends_nothing();
        Trial::of("source/unknown-name").book("rooms: [Kitchen]").mends();
        Trial::of("source/unknown-name").selection("selection: Rug\nkind: Rug", "").stays_silent();
    }

    #[test]
    fn an_unknown_kind_product_room_and_rule_are_told() {
        Trial::of("source/unknown-name").selection("selection: Range\nkind: rannge", "").finds_one();
        Trial::of("source/unknown-name").selection("selection: Range\nkind: range", "product: nothing").finds_one();
        Trial::of("source/unknown-name").book("rooms: [kitchn]").finds_one().remedies("did you mean `kitchen`?");
        let waiver = "waive: [{rule: fit/widht, because: a, by: b, on: 2027-01-12}]";
        Trial::of("source/unknown-name").book(waiver).finds("there is no rule called `fit/widht`");
    }

    #[test]
    fn an_unknown_selection_and_the_milestone_of_a_waiver_are_told() {
        range("depends on: [Ragne]").finds("there is no selection called `Ragne`").remedies("did you mean `Range`?");
        range("depends on: [bath/Floor]").finds("there is no selection called `bath/Floor`");
        range("meets: [Counter]").finds_one();
        range("depends on: [kitchen/Range]").stays_silent();
        let waive =
            |until: &str| format!("waive: [{{rule: fit/width, because: a, by: b, on: 2027-01-12, until: {until}}}]");
        range(&waive("demolitoin")).finds("there is no milestone called `demolitoin`");
        range(&waive("demolition")).stays_silent();
        Trial::of("source/unknown-name")
            .book("milestones: {a: 2027-03-01, b: {after: [a, c], lasts: 2 days}}")
            .finds("there is no milestone called `c`");
    }

    #[test]
    fn a_counter_lies_on_what_stands_in_the_room_a_vanity_too() {
        let on = |name: &str| {
            Trial::of("source/unknown-name")
                .room("fixtures: {basin cabinet: {kind: vanity, wall: A, at: 1', width: 30\", depth: 21\"}}")
                .selection("selection: Vanity\nkind: vanity", "")
                .selection("selection: Slab\nkind: counter", &format!("top: {{material: stone, lies on: [{name}]}}"))
        };
        on("Vanity").stays_silent();
        on("basin cabinet").stays_silent();
        on("Vanty").finds_one();
    }
}
