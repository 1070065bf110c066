//! A name that is nobody's.

use crate::assess::rules::{Check, declare};

declare! {
    /// A name stands for nothing in the book
    ///
    /// ## What it checks
    /// Openings, milestones, products, options, allowances, rooms, kinds, other selections, and the
    /// rules that waivers name. The nearest name that exists is told. A supplier under `suppliers` that no selection
    /// and no product names is a query where another name is near, and else a note: a list of suppliers may be
    /// longer than what is bought.
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
    fn a_supplier_from_whom_nothing_is_bought_is_told_with_the_name_that_is_near() {
        let of = |recorded: &str| {
            let suppliers = format!("suppliers: {{{recorded}: {{claim within: 5 days}}}}");
            Trial::of("source/unknown-name")
                .book(&suppliers)
                .selection("selection: Rug\nkind: rug", "supplier: Ardwin & Quill")
        };
        of("Ardwin & Quill").stays_silent();
        of("Ardwinn & Quill")
            .finds("nothing in this book is bought from a supplier called `Ardwinn & Quill`")
            .remedies("did you mean `Ardwin & Quill`?")
            .weighs("query");
        of("Ardwinn & Quill").mends_nothing();
        of("ardwin & quill").finds_one().remedies("did you mean `Ardwin & Quill`?").weighs("query");
        of("Tessel").finds("nothing in this book is bought from a supplier called `Tessel`").weighs("note");
    }

    #[test]
    fn a_supplier_of_one_option_or_of_a_product_is_named_and_a_near_one_with_terms_of_its_own_is_no_other_name() {
        let of = |book: &str| Trial::of("source/unknown-name").book(book).selection("selection: Rug\nkind: rug", "");
        of("suppliers: {Ardwin: {claim within: 5 days}}").finds_one().weighs("note");
        let two = "suppliers: {Ardwin: {claim within: 5 days}, Ardwinn: {claim within: 3 days}}";
        Trial::of("source/unknown-name")
            .book(two)
            .selection("selection: Rug\nkind: rug", "supplier: Ardwin")
            .finds_one()
            .weighs("note");
        let options = "selection: Rug\nkind: rug\noptions:\n- {id: a, supplier: Oren}\n- {id: b, supplier: Ardwin}";
        Trial::of("source/unknown-name")
            .book("suppliers: {Ardwin: {claim within: 5 days}}")
            .selection(options, "")
            .stays_silent();
        Trial::of("source/unknown-name")
            .book("suppliers: {Ardwn: {claim within: 5 days}}")
            .selection(options, "")
            .finds_one();
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
    fn what_a_switch_is_set_out_from_and_works_must_be_there() {
        let at = |keys: &str| {
            Trial::of("source/unknown-name")
                .room(&format!(
                    "outline: 12' x 9'\ndoors: {{hall door: {{wall: D, at: 20\", width: 34\"}}}}\nswitches: {{by the door: {{height: 42\", {keys}}}}}"
                ))
                .selection("selection: Pendants\nkind: pendant", "")
        };
        at("beside: hall door, centre: 6\", works: [Pendants]").stays_silent();
        at("beside: halldoor, centre: 6\"").finds("there is no door or window called `halldoor`");
        at("island: island, side: left, centre: 6\"").finds("there is no island called `island`");
        at("wall: D, centre: 6\", works: [Pendant]")
            .finds("there is nothing chosen, no light and no outlet called `Pendant`");
        at("wall: D, centre: 6\", selection: Dimmers").finds_one();
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
