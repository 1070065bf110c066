//! A thing with no opening, or an opening with nothing in it.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{Opening, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::units::{Wrote, with_article};
use crate::vocabulary::Kind;

declare! {
    /// A thing has no opening, or an opening is empty, shared, or for another kind
    ///
    /// ## What it checks
    /// A selection of a kind that must have an opening names one in its room; each opening is taken
    /// by one selection, of the kind that it says it takes. What hangs from that, as a disposer or a tap does from a
    /// sink, may name the same opening.
    ///
    /// ## Why it matters
    /// What has no opening is checked against nothing. Of two things in one hole, one will stand in
    /// the hall.
    ///
    /// ## Remedy
    /// Name the opening with `place`, add it to `room.yaml`, or say with `takes` what goes in.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   range: {takes: range, width: 30"}     # no selection has `place: range`
    /// ```
    ///
    /// ## Source
    /// The book's own format; common practice: no appliance is undecided when cabinets are ordered.
    "complete/opening", Stop,
    due: WithThing, tells: [],
    judges: placed,
    sources: ["the book's own format"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(room.selections.iter().filter_map(|selection| placeless(room, selection)));
        // What is absent from a room that could not be read whole proves nothing.
        if !context.book.unread.contains(&room.folder) {
            findings.extend(room.openings.iter().filter_map(|opening| taken(room, opening)));
        }
    }
}

/// The most openings that a remedy names.
const MOST_NAMED: usize = 12;

fn placeless(room: &Room, selection: &Selection) -> Option<Remark> {
    let kind = selection.kind.get().filter(|kind| kind.takes_opening() && selection.place.is_absent())?;
    let standing = selection.standing();
    if !standing.is_empty() && standing.iter().all(|option| super::hangs_before_the_wall(selection, option)) {
        return None;
    }
    let message = phrase!("the {} goes into no opening", kind.name());
    let finding = Remark::stop(selection.span, message).room(&room.folder);
    if let Some(fixture) = room.fixtures.iter().find(|one| one.selection.get() == Some(&selection.name.value)) {
        let remedy = phrase!(
            "the plan sets it out as `{}`: add an opening for it that says `takes: {}` and no `wall`, name that with \
             `place: …`, and at that fixture write `opening: …` in place of `selection`",
            fixture.name.value,
            kind.name()
        );
        return Some(finding.selection(&selection.name).remedy(remedy));
    }
    let known: Vec<_> = room.openings.iter().take(MOST_NAMED).map(|opening| Wrote(&opening.name)).collect();
    let remedy = match known.is_empty() {
        true => "add an opening to `room.yaml`, and name it with `place: …`".into(),
        false => phrase!("name one with `place: …`: {}", Phrase::joined(known, ", ")),
    };
    let remedy = match kind {
        Kind::MirrorCabinet => phrase!("{remedy}; of one that hangs before the wall, say `mount: on the wall`", remedy),
        _ => remedy,
    };
    Some(finding.selection(&selection.name).remedy(remedy))
}

fn taken(room: &Room, opening: &Opening) -> Option<Remark> {
    let name = &opening.name.value;
    let inside: Vec<&Selection> = room.goes_into(name).collect();
    let told = |message: Phrase, remedy: &'static str| {
        let finding = Remark::stop(opening.span, message).room(&room.folder);
        Some(finding.opening(&opening.name).remedy(remedy))
    };
    match inside.as_slice() {
        [] => told(
            phrase!("nothing goes into the opening `{name}`", name),
            "choose something for it, or take it out of `room.yaml`",
        ),
        [one] => {
            let (takes, kind) = (opening.takes.get()?, one.kind.get()?);
            if kind.hangs_from(*takes) {
                let message = phrase!(
                    "only `{}` is chosen for the opening `{name}`, and no {} that it belongs to",
                    one.name.value,
                    name,
                    takes.name()
                );
                return told(message, "choose it, or say of the one that is chosen that this is its place");
            }
            // A tray may stand for the shower that stands in it.
            let other = takes != kind && !takes.hangs_from(*kind);
            let message = phrase!(
                "the opening `{name}` takes {}, and {} is chosen for it",
                name,
                with_article(takes.name()),
                with_article(kind.name())
            );
            other.then(|| told(message, "put it into another opening, or say with `takes` what goes in"))?
        }
        [one, two, ..] => {
            let message =
                phrase!("`{}` and `{}` both go into the opening `{name}`", one.name.value, two.name.value, name);
            told(message, "give each an opening of its own, or make them options of one selection")
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Whoever follows the remedy to the letter has a sound book.
    #[test]
    fn what_the_plan_sets_out_gets_an_opening_without_a_place_of_its_own() {
        let bath = |fixture: &str| {
            Trial::of("complete/opening").room(&format!(
                "outline: 8' x 6'\nfixtures: {{wc: {{wall: A, centre: 40\", width: 15\", depth: 28\", {fixture}}}}}"
            ))
        };
        bath("selection: Toilet")
            .selection("selection: Toilet\nkind: toilet", "")
            .finds("the toilet goes into no opening")
            .remedies("the plan sets it out as `wc`: add an opening for it that says `takes: toilet` and no `wall`, name that with `place: …`, and at that fixture write `opening: …` in place of `selection`");
        bath("opening: bowl")
            .opening("bowl", "{takes: toilet, width: 30\"}")
            .selection("selection: Toilet\nkind: toilet\nplace: bowl", "size: {width: 15\"}")
            .stays_silent();
    }

    fn trial(lines: &str) -> Trial {
        Trial::of("complete/opening")
            .opening("hole", "{takes: range}")
            .selection(&format!("selection: It\n{lines}"), "")
    }

    #[test]
    fn a_range_without_a_place_and_its_empty_opening_are_both_told() {
        trial("kind: range").run().counts(2);
        trial("kind: range\nplace: hole").stays_silent();
    }

    #[test]
    fn another_kind_than_the_opening_takes_is_told() {
        trial("kind: dishwasher\nplace: hole")
            .finds("the opening `hole` takes a range, and a dishwasher is chosen for it");
    }

    #[test]
    fn two_things_in_one_opening_are_told() {
        trial("kind: range\nplace: hole")
            .selection("selection: Other\nkind: range\nplace: hole", "")
            .finds("`It` and `Other` both go into the opening `hole`");
    }

    #[test]
    fn what_hangs_from_a_thing_may_name_its_opening() {
        let at_the_sink = |kind: &str| {
            Trial::of("complete/opening")
                .opening("sink", "{takes: sink}")
                .selection("selection: Sink\nkind: sink\nplace: sink", "")
                .selection(&format!("selection: Other\nkind: {kind}\nplace: sink"), "")
        };
        for kind in ["garbage disposal", "disposer", "faucet", "drain"] {
            at_the_sink(kind).stays_silent();
        }
        at_the_sink("sink").finds_one();
        at_the_sink("dishwasher").finds_one();
        let shower = |kinds: &[&str]| {
            let trial = Trial::of("complete/opening").opening("shower", "{takes: shower}");
            kinds.iter().enumerate().fold(trial, |trial, (number, kind)| {
                trial.selection(&format!("selection: S{number}\nkind: {kind}\nplace: shower"), "")
            })
        };
        shower(&["shower set", "shower glass", "shower tray"]).stays_silent();
        shower(&["shower glass", "shower set"]).stays_silent();
        shower(&["shower tray", "bathtub"]).finds_one();
        // Alone, it leaves the opening empty.
        let alone = Trial::of("complete/opening").opening("sink", "{takes: sink}");
        alone
            .selection("selection: Tap\nkind: tap\nplace: sink", "")
            .finds("only `Tap` is chosen for the opening `sink`, and no sink that it belongs to")
            .remedies("choose it, or say of the one that is chosen that this is its place");
    }

    #[test]
    fn a_pendant_needs_no_opening() {
        Trial::of("complete/opening").selection("selection: It\nkind: pendant", "").stays_silent();
    }

    #[test]
    fn an_opening_of_a_room_that_could_not_be_read_whole_is_not_called_empty() {
        let trial = Trial::of("complete/opening").opening("hole", "{takes: range}");
        trial.file("rooms/kitchen/range.yaml", "selection: {\n").of_any_yaml().stays_silent();
    }

    #[test]
    fn a_mirror_cabinet_before_the_wall_goes_into_no_opening() {
        let cabinet = |rule: &'static str, lines: &str| {
            Trial::of(rule).selection("selection: Mirror cabinet\nkind: medicine cabinet", lines)
        };
        cabinet("complete/opening", "").finds_one();
        cabinet("complete/cut-sheet", "").finds_one();
        for mount in ["on the wall", "surface-mounted", "wall-hung"] {
            cabinet("complete/opening", &format!("mount: {mount}")).stays_silent();
            cabinet("complete/cut-sheet", &format!("mount: {mount}")).stays_silent();
        }
        cabinet("complete/opening", "mount: recessed").finds_one();
        cabinet("complete/opening", "mount: recessed into the wall").finds_one();
    }
}
