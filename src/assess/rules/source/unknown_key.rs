//! A key that nobody knows.

use crate::assess::rules::{Check, declare};

declare! {
    /// A key is written that no part of the book reads
    ///
    /// ## What it checks
    /// Every key of every record against the vocabulary of that record. The nearest known key is
    /// named. And a `product` beside several `options`, of which none takes anything from it.
    ///
    /// ## Why it matters
    /// A misspelt key is a value that silently does not count: a clearance that was written and
    /// never checked.
    ///
    /// ## Remedy
    /// Write the key that is meant; `bookmatch explain RECORD` lists those of a record.
    ///
    /// ## Example
    /// ```yaml
    /// size: {widht: 29 7/8"}     # width
    /// ```
    ///
    /// ## Source
    /// The book's own format.
    "source/unknown-key", Stop,
    due: AtOnce, tells: [],
    sources: ["the book's own format"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn the_nearest_known_key_is_named() {
        let found = Trial::of("source/unknown-key").book("adress: 12 Alder Court").finds("unknown key `adress`");
        found.remedies("did you mean `address`?");
        Trial::of("source/unknown-key").book("address: 12 Alder Court").stays_silent();
    }

    #[test]
    fn the_one_key_that_is_near_is_a_certain_mend() {
        let key = |line: &str| Trial::of("source/unknown-key").book(line);
        key("adress: 12 Alder Court").mends();
        key("\"adress\": 12 Alder Court").mends();
        key("Address: 12 Alder Court").mends();
        Trial::of("source/unknown-key").room("calledd: attic").mends_nothing();
        // The key that is near is written already: what the other was to be, nobody knows.
        key("address: 12 Alder Court\nadress: 14 Alder Court").mends_nothing();
    }

    /// The words of a key in another order, or joined by others, are that key.
    #[test]
    fn a_key_of_the_same_words_is_named() {
        for (written, meant) in [
            ("hinge height", "height to hinge"),
            ("height of hinge", "height to hinge"),
            ("door depth", "depth with door"),
            ("depth incl. handle", "depth with handle"),
            ("handle_depth", "depth with handle"),
        ] {
            let option = format!("size: {{{written}: 70\"}}");
            let found = Trial::of("source/unknown-key").selection("selection: Fridge\nkind: refrigerator", &option);
            found.finds(&format!("unknown key `{written}`")).remedies(&format!("did you mean `{meant}`?"));
        }
    }

    #[test]
    fn a_key_with_a_joining_word_too_many_is_named_and_is_no_certain_mend() {
        let island = |key: &str| Trial::of("source/unknown-key").room(&format!("islands: {{bar: {{{key}: A}}}}"));
        island("from wall").finds("unknown key `from wall`").remedies("did you mean `wall`?");
        island("from wall").mends_nothing();
    }

    #[test]
    fn keys_within_groups_are_known_by_their_group() {
        let option = "size: {widht: 29 7/8\"}\nfit: {carton: 3\" x 4\" x 5\"}";
        Trial::of("source/unknown-key").selection("selection: Range\nkind: range", option).finds("unknown key `widht`");
        let option = "size: {width: 29 7/8\"}\nfit: {carton: 3\" x 4\" x 5\"}";
        Trial::of("source/unknown-key").selection("selection: Range\nkind: range", option).stays_silent();
    }

    /// What one writes at first sight is told its place, and never taken for a key that only looks like it.
    #[test]
    fn a_key_of_one_s_first_thought_is_told_where_it_goes() {
        let told = |kind: &str, line: &str| {
            let trial = Trial::of("source/unknown-key").selection(&format!("selection: It\nkind: {kind}"), line);
            trial.finds_one()
        };
        told("grab bar", "holds: 150 kg").remedies("did you mean `capacity`?");
        told("counter", "backsplash: 4\"").remedies("write it under `top`: `top: {splash: …}`");
        told("counter", "upstand: {height: 100 mm}").remedies("write it under `top`: `top: {splash: …}`");
        told("sink", "apron: 10\"").remedies("did you mean `apron height`?");
        told("wall light", "rated: wet location").remedies("did you mean `damp rating`?");
        told("toilet", "outlet: 180 mm").remedies("did you mean `outlet height`?");
        told("towel warmer", "output: 600 W").remedies("write it under `fit`: `fit: {needs: {power: …}}`");
        told("range", "gas: 51000 Btu/h").remedies("write it under `fit`: `fit: {needs: {gas: …}}`");
        told("refrigerator", "fit: {air: {sides: 1/8\"}}")
            .remedies("write what is asked at the left and at the right, each by itself");
        told("wallpaper", "roll width: 21\"")
            .remedies("write it in `description`, which the client reads, or in `note`, for those who build");
        Trial::of("source/unknown-key").selection("selection: It\nkind: grab bar", "capacity: 150 kg").stays_silent();
        let noted = |line: &str| Trial::of("source/unknown-key").selection("selection: It\nkind: toilet", line);
        for line in ["note: with the seat on", "fit: {note: from the top}", "hangs: {note: above the worktop}"] {
            noted(line).stays_silent();
        }
        let plan =
            "doors: {way: {wall: A, note: pocket}}\nruns: {row: {note: scribe, parts: [{filler: 2\", note: on site}]}}";
        Trial::of("source/unknown-key").room(plan).stays_silent();
    }

    #[test]
    fn a_product_beside_options_is_taken_by_none_of_them() {
        let range = |options: &str| {
            Trial::of("source/unknown-key")
                .file("products/thing.yaml", "model: Z\n")
                .selection("selection: Range\nkind: range", options)
        };
        range("product: thing\noptions: [{id: one, model: X}, {id: two, model: Y}]")
            .finds("`product` stands beside `options`, and none of them takes anything from it")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:1"]);
        range("options: [{id: one, product: thing}, {id: two, model: Y}]").stays_silent();
        range("product: thing").stays_silent();
    }
}
