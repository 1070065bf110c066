//! A value of the wrong shape.

use crate::assess::rules::{Check, declare};

declare! {
    /// A value is not of the shape that its key wants
    ///
    /// ## What it checks
    /// Each value against what its key holds: lengths, money, dates, lists, groups, words of a
    /// fixed list. Every faulty value of every file is told in one run.
    ///
    /// ## Why it matters
    /// A price with a stray comma is a thousand times too much or too little; a date in another
    /// order is a month off. What can be read in two ways is not read at all.
    ///
    /// ## Remedy
    /// Write the value as the message shows.
    ///
    /// ## Example
    /// ```yaml
    /// price: 3180,00     # write 3180.00
    /// ```
    ///
    /// ## Source
    /// The book's own format; ISO 8601 for dates; ISO 4217 for the decimals of a currency.
    "source/wrong-type", Stop,
    due: AtOnce, tells: [],
    sources: ["the book's own format", "ISO 8601", "ISO 4217"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// A door's hand (LH, RH) is counted from outside by some makers, and by others from the side that it opens to: what
    /// is asked for is the side that its hinges are on. Of an appliance or a cabinet, both are the same.
    #[test]
    fn a_hinge_is_understood_as_it_is_called_and_a_door_s_hand_is_asked_for() {
        let fridge = |hinge: &str| {
            Trial::of("source/wrong-type")
                .selection("selection: Fridge\nkind: refrigerator", &format!("hinge: {hinge}"))
        };
        for hinge in ["R", "RH", "right hand", "right-hand", "right side", "reversible", "french doors"] {
            fridge(hinge).stays_silent();
        }
        fridge("zzz").finds_one();
        let door = |hinge: &str| {
            Trial::of("source/wrong-type")
                .room(&format!("doors: {{hall: {{wall: A, at: 20\", width: 34\", hinge: {hinge}}}}}"))
        };
        for hinge in ["left", "on the left", "hinged right"] {
            door(hinge).stays_silent();
        }
        for hand in ["LH", "RH", "right hand", "LHR"] {
            door(hand).finds(&format!("`{hand}` does not say on which side the door hangs"));
        }
    }

    #[test]
    fn the_box_of_a_switch_is_set_out_from_one_thing() {
        let at = |keys: &str| {
            Trial::of("source/wrong-type").room(&format!(
                "outline: 12' x 9'\ndoors: {{hall door: {{wall: D, at: 20\", width: 34\"}}}}\nswitches: {{by the door: {{{keys}}}}}"
            ))
        };
        at("wall: D, centre: 60\"").stays_silent();
        at("beside: hall door, from: right, centre: 6\"").stays_silent();
        at("wall: D, beside: hall door, centre: 6\"").finds("this box is set out from more than one thing");
        at("side: left, centre: 6\"").finds("this box is in a side, and nobody says of which island");
    }

    fn tap(option: &str) -> Trial {
        Trial::of("source/wrong-type").selection("selection: Tap\nkind: tap", option)
    }

    #[test]
    fn a_price_with_a_stray_comma_is_not_guessed_at() {
        for written in ["3180,00", "31,80.00", "3,18", "3.180,00"] {
            tap(&format!("price: {written}")).finds_one();
        }
        for written in ["3180.00", "3180", "3,180.00"] {
            tap(&format!("price: {written}")).stays_silent();
        }
    }

    #[test]
    fn a_milestone_comes_after_at_least_one() {
        let after = |after: &str| {
            let lines = format!("milestones: {{a: 2027-03-01, b: 2027-03-08, c: {{after: {after}, lasts: 2 days}}}}");
            Trial::of("source/wrong-type").book(&lines)
        };
        after("[]").finds("no milestone stands after `after`");
        after("[a, b]").stays_silent();
        after("a").stays_silent();
    }

    #[test]
    fn a_list_where_one_value_is_wanted_is_told() {
        tap("maker: [Vessary, Ormund]").finds("this should be words, and is a list");
    }

    /// Source: check values SD-23 (ISO 4217: the yen has no minor unit).
    #[test]
    fn an_amount_has_no_more_decimals_than_its_currency() {
        tap("price: 3180.005").finds_one();
    }

    #[test]
    fn every_faulty_value_is_told_in_one_run() {
        let found = tap("price: free\nquantity: some\nlead time: soon\nholes: two\nsize: {width: wide}").run();
        found.counts(5);
    }

    #[test]
    fn a_word_that_is_not_in_the_list_names_the_nearest() {
        tap("hinge: lefft").finds("`lefft` is not among the words for this").remedies("did you mean `left`?");
    }

    #[test]
    fn a_word_in_other_letters_is_a_certain_mend_and_one_that_is_only_near_is_not() {
        tap("hinge: Left").mends();
        tap("hinge: 'LEFT'").mends();
        tap("hinge: lefft").mends_nothing();
        Trial::of("source/wrong-type").book("house: {open flue: True}").mends();
    }

    #[test]
    fn a_word_counts_however_its_parts_are_joined() {
        let range = |lines: &str| Trial::of("source/wrong-type").selection("selection: It\nkind: range", lines);
        for word in
            ["slide-in", "slide in", "slide_in", "slidein", "free-standing", "free standing", "built in", "drop in"]
        {
            range(&format!("made as: {word}")).stays_silent();
        }
        range("made as: slid in").finds_one().remedies("did you mean `slide-in`?");
        for word in ["does not burn", "does-not-burn"] {
            range(&format!("material: {word}")).stays_silent();
        }
        Trial::of("source/unknown-name").selection("selection: It\nkind: dish washer", "").stays_silent();
        Trial::of("source/unknown-name").selection("selection: It\nkind: wall-oven", "").stays_silent();
    }

    #[test]
    fn what_a_thing_is_made_of_is_told_apart_from_whether_it_burns() {
        let told = |word: &str| format!("`{word}` does not say whether it burns, which is what `material` tells here");
        let says = "write `burns`, `shielded` or `does not burn`, as its maker says; what it is made of goes in its words, such as `what`, `finish` or `note`";
        for word in ["steel", "quartz", "oak", "gypsum board"] {
            let above = format!("{{takes: range, above: {{what: hood, height: 66\", material: {word}}}}}");
            Trial::of("source/wrong-type").opening("bay", &above).finds(&told(word)).remedies(says);
        }
        tap("material: steel").finds("this does not say whether it burns, which is what `material` tells here");
        let counter = |lines: &str| Trial::of("source/wrong-type").selection("selection: It\nkind: counter", lines);
        for word in ["quartz", "granite", "solid surface", "butcher-block", "stainless steel", "burns"] {
            counter(&format!("material: {word}")).stays_silent();
        }
        counter("top: {material: marble}").stays_silent();
        counter("material: unobtainium").finds_one();
    }

    #[test]
    fn a_bare_number_has_no_certain_mend() {
        Trial::of("source/bare-length").room("clearances: {work aisle: 42}").mends_nothing();
    }
}
