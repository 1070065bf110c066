//! Options of one selection that read alike.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, phrase};

declare! {
    /// Two options of one selection read alike, so that the client can't tell which is which
    ///
    /// ## What it checks
    /// While a selection is open: what the client reads of each of its options (`name`, or maker and model where
    /// that is left out, or the finish) is not the same as of another one.
    ///
    /// ## Why it matters
    /// Whoever votes between two boxes of one name votes for nothing, and what is signed says nothing either.
    ///
    /// ## Remedy
    /// Give each option a name by what differs: its colour, its finish, its size.
    ///
    /// ## Example
    /// ```yaml
    /// options:
    ///   - {id: sage, maker: Oren, colour: sage 4}      # both read `Oren`
    ///   - {id: oak, maker: Oren, finish: oiled oak}
    /// ```
    ///
    /// ## Source
    /// The book's own words.
    "complete/alike", Query,
    due: WithThing, tells: [],
    judges: each,
    sources: ["the book's own words"],
    caution: None,
    remedy: "give each a `name` by what differs: its colour, its finish, its size",
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.book.selections().filter_map(|(room, selection)| judge(room, selection)));
}

fn judge(room: &Room, selection: &Selection) -> Option<Remark> {
    let standing = selection.standing();
    let mut pairs = standing.iter().enumerate().filter_map(|(at, second)| {
        let earlier = standing.iter().take(at);
        Some((earlier.into_iter().find(|first| read_alike(first, second))?, second))
    });
    let (first, second) = pairs.next()?;
    let message = phrase!(
        "the options `{}` and `{}` of `{}` read alike: `{}`",
        first.id.value,
        second.id.value,
        selection.name.value,
        first.title()
    );
    let finding = Remark::query(second.id.span, message).room(&room.folder).selection(&selection.name);
    Some(finding.also(first.id.span, "reads the same"))
}

/// Whether two options are called the same. What has no name at all is asked for as a field.
fn read_alike(one: &ProductOption, other: &ProductOption) -> bool {
    let (one, other) = (one.title(), other.title());
    !one.is_empty() && one.trim().eq_ignore_ascii_case(other.trim())
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn options_that_the_client_cannot_tell_apart_are_told() {
        let cabinets = |first: &str, second: &str, more: &str| {
            Trial::of("complete/alike").selection(
                &format!("selection: Cabinets\nkind: cabinet\nmaker: Ebanos{more}"),
                &format!("options:\n  - {{id: sage{first}}}\n  - {{id: oak{second}}}"),
            )
        };
        cabinets("", "", "")
            .finds("the options `sage` and `oak` of `Cabinets` read alike: `Ebanos`")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:6:10"])
            .remedies("give each a `name` by what differs: its colour, its finish, its size");
        cabinets(", colour: sage 4", ", colour: oak 2", "").finds_one();
        cabinets(", name: Fronts", ", name: fronts", "").finds_one();
        cabinets(", name: Sage", ", name: Oak", "").stays_silent();
        cabinets(", model: S-1", ", model: S-2", "").stays_silent();
        cabinets("", "", "\nchosen: oak").stays_silent();
    }
}
