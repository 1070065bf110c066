//! Seams and pieces of one counter.

use crate::assess::rules::trial::Trial;

fn counter(from_left: &str, pieces: &str) -> Trial {
    let run = "{wall: A, depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: pots, width: 30\"}, {cabinet: base, width: 36\"}, {opening: range}, {cabinet: last, width: 46\"}]}";
    Trial::of("source/contradiction")
        .opening("range", "{takes: range, width: 30\", depth: 25 1/2\"}")
        .room(&format!("outline: 12' x 9'\nruns: {{range wall: {run}}}"))
        .selection(
            "selection: Counter\nkind: counter",
            &format!(
                "top: {{lies on: [range wall], pieces: {{{pieces}, right: 46\" x 25 1/2\"}}, seams: [{{at: left of the sink, over: cabinet, on: range wall, from left: {from_left}}}]}}"
            ),
        )
}

/// Source: arithmetic: a seam at 30" leaves 30" and 36" of 66".
#[test]
fn seams_cut_the_pieces_that_are_listed() {
    let pieces = "left: 30\" x 25 1/2\", at the sink: 36\" x 25 1/2\"";
    counter("30\"", pieces).stays_silent();
    counter("30 1/4\"", pieces).stays_silent();
    counter("40\"", pieces)
        .finds("the length of `at the sink` is 36\" (914 mm) at `Counter`, and 40\" (1016 mm) by its seams on `range wall`")
        .weighs("query");
    // In any order.
    counter("30\"", "at the sink: 37 1/2\" x 25 1/2\", left: 31 1/2\" x 25 1/2\"").stays_silent();
    counter("30\"", "left: 20\" x 25 1/2\", at the sink: 36\" x 25 1/2\"").finds_one().says("`left` is 20\"");
    // What stands out past the run is longer than what carries it.
    counter("30\"", "left: 31 1/2\" x 25 1/2\", at the sink: 36\" x 25 1/2\"").stays_silent();
}
