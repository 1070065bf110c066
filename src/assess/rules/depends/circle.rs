//! Selections that wait for each other.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::finding::{Phrase, Remark, phrase};

declare! {
    /// Selections depend on each other in a circle
    ///
    /// ## What it checks
    /// `depends on`, with what follows from kinds and places (cabinets on the appliances that they
    /// house, the counter on sink and taps, heights on the floor, trim on its valve, glass on tile).
    /// Where the book names two the other way round, the book counts.
    ///
    /// ## Why it matters
    /// Of things that wait for each other none is ever ordered.
    ///
    /// ## Remedy
    /// Take one `depends on` out: the one that can be decided first.
    ///
    /// ## Example
    /// ```yaml
    /// selection: Sink
    /// depends on: [Tap]     # and the tap has `depends on: [Sink]`
    /// ```
    ///
    /// ## Source
    /// The book's own format; what follows from kinds is trade practice.
    "depends/circle", Stop,
    due: GoodsOrdered, tells: [],
    judges: each,
    sources: ["the book's own format", "common practice"],
    caution: None,
    Check::Book(check)
}

/// The most names that a way is told by.
const MOST_NAMED: usize = 12;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for circle in context.depends.circles(context.book) {
        let selection = circle.selection;
        let mut names: Vec<Phrase> =
            circle.way.iter().take(MOST_NAMED).map(|at| Phrase::name(&at.name.value)).collect();
        if circle.way.len() > MOST_NAMED {
            names.push(phrase!("and {} more", circle.way.len() - MOST_NAMED));
        }
        let others = match circle.others {
            0 => Phrase::default(),
            1 => "; one more stands in a circle with these".into(),
            more => phrase!("; {more} more stand in circles with these", more),
        };
        let message = phrase!(
            "`{}` depends on itself, by way of {}{others}",
            selection.name.value,
            Phrase::joined(names, ", "),
            others
        );
        let at = selection.depends_on.first().map_or(selection.span, |name| name.span);
        let finding = Remark::stop(at, message).room(&circle.room.folder);
        findings.push(finding.selection(&selection.name).remedy("take out the `depends on` that can be decided first"));
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// A sink that is chosen for a counter already there: what the book names counts before what
    /// follows from kinds.
    #[test]
    fn a_name_the_other_way_round_is_no_circle_and_two_names_are() {
        let trial = |sink: &str, counter: &str| {
            Trial::of("depends/circle")
                .opening("sink", "{takes: sink}")
                .selection(&format!("selection: Sink\nkind: sink\nplace: sink\n{sink}"), "")
                .selection(&format!("selection: Counter\nkind: counter\n{counter}"), "")
        };
        trial("depends on: [Counter]", "").stays_silent();
        trial("depends on: [Counter]", "depends on: [Sink]")
            .finds("`Sink` depends on itself, by way of `Counter`, `Sink`")
            .weighs("stop");
    }

    #[test]
    fn a_circle_of_names_is_told_once_and_a_chain_is_not() {
        let trial = |last: &str| {
            Trial::of("depends/circle")
                .selection("selection: A\nkind: rug\ndepends on: [B]", "")
                .selection("selection: B\nkind: rug\ndepends on: [C]", "")
                .selection(&format!("selection: C\nkind: rug\n{last}"), "")
        };
        trial("depends on: [kitchen/A]").finds_one();
        trial("").stays_silent();
    }

    #[test]
    fn circles_that_meet_are_told_once_with_how_many_stand_in_them() {
        Trial::of("depends/circle")
            .selection("selection: A\nkind: rug\ndepends on: [B]", "")
            .selection("selection: B\nkind: rug\ndepends on: [A, C]", "")
            .selection("selection: C\nkind: rug\ndepends on: [B]", "")
            .finds("`A` depends on itself, by way of `B`, `A`; one more stands in a circle with these");
    }

    #[test]
    fn a_long_circle_is_told_by_its_first_names() {
        let all = 40;
        let rug = |n: usize| format!("selection: R{n}\nkind: rug\ndepends on: [R{}]", (n + 1) % all);
        let trial = (0..all).fold(Trial::of("depends/circle"), |trial, n| trial.selection(&rug(n), ""));
        trial.finds("`R0` depends on itself, by way of `R1`, `R2`, `R3`, `R4`, `R5`, `R6`, `R7`, `R8`, `R9`, `R10`, `R11`, `R12`, and 28 more");
    }
}
