//! What is in a wall to fix brackets and bars to.

use crate::assess::{Context, say};
use crate::book::{AccessDistance, Opening, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::distances::for_access;
use crate::units::{Length, LengthRange, Wrote};
use crate::vocabulary::supply::{Backing, heights, is_none};
use crate::vocabulary::{Hazard, Kind};

/// What is held on to, or sat on: whatever its sheet says, who falls pulls on it.
const HELD_ON_TO: [Kind; 2] = [Kind::GrabBar, Kind::ShowerSeat];

/// The sheet wants something to fix a bracket to, or a person hangs on it, and nobody says what is in the wall, or nothing
/// that holds is.
pub(super) fn ask(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.blocking.spanned());
    let needs = needs.filter(|needs| !is_none(&needs.value));
    if needs.is_none() && !is_first_to_be_held(fitted) {
        return None;
    }
    let there = &fitted.opening.service.blocking;
    let is = match there.get() {
        None if !there.is_absent() => return None,
        Some(words) if words.is.is == Some(Backing::There) => return at_other_heights(context, fitted),
        _ => is_there(fitted.opening),
    };
    let name = &fitted.selection.name.value;
    let at = there.span().unwrap_or(fitted.opening.span);
    let remedy = "have it set before the wall is closed, and add it to the opening, with what it is of: `service: {blocking: …}`";
    let finding = match needs {
        Some(needs) => {
            let message = phrase!("`{name}` is fixed to blocking ({}), and {is}", name, Wrote(&needs.value), is);
            fitted.finding(Severity::Query, at, message).also(needs.span, "needs this")
        }
        None => {
            let message = phrase!("`{name}` is held on to, and {is}", name, is);
            fitted.finding(Severity::Query, at, message).source("common practice")
        }
    };
    Some(Remark { caution: Some(without(fitted.selection)), ..finding.remedy(remedy) })
}

/// What an opening tells of what is in its wall, where that is nothing that holds.
fn is_there(opening: &Opening) -> Phrase {
    let name = &opening.name.value;
    let Some(words) = opening.service.blocking.get() else {
        return phrase!("nobody says what there is in the wall at the opening `{name}`", name);
    };
    match words.is.is {
        _ if is_none(&words.words) => phrase!("there is none in the wall at the opening `{name}`", name),
        Some(Backing::StudsAlone) => phrase!(
            "at the opening `{}` there are studs alone (`{}`), which may not be where it is fixed",
            name,
            words.words
        ),
        None => phrase!("what is written of it at the opening `{}` can't be understood: `{}`", name, words.words),
        Some(_) => phrase!("at the opening `{}` there is none by its words: `{}`", name, words.words),
    }
}

/// Whether it is held on to, and the first such at its opening: what is in the wall there is asked once.
fn is_first_to_be_held(fitted: &Placement<'_>) -> bool {
    let is_there = |one: &&Selection| one.is_any(&HELD_ON_TO) && one.place.get() == Some(&fitted.opening.name.value);
    fitted.room.selections.iter().find(is_there).is_some_and(|first| std::ptr::eq(first, fitted.selection))
}

/// How a thing hurts that is not held: it tips over, gives way under who holds on to it, or comes off its wall.
pub(super) fn without(selection: &Selection) -> Hazard {
    let hazards = selection.kind.get().map_or(&[][..], |kind| kind.hazards());
    [Hazard::Tipping, Hazard::Fall].into_iter().find(|hazard| hazards.contains(hazard)).unwrap_or(Hazard::Weight)
}

/// Blocking is there, and not at the heights that the sheet names, or at which a bar is planned.
fn at_other_heights(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.blocking.spanned());
    let there = fitted.opening.service.blocking.spanned()?;
    let bar = || for_access(fitted.room, AccessDistance::GrabBarHeight).filter(|_| fitted.selection.is(Kind::GrabBar));
    let wanted = match needs {
        Some(needs) => heights(&needs.value),
        None => vec![LengthRange::exactly(bar()?.value)],
    };
    let found = heights(&there.words);
    let has = |height: Length| {
        let ends = |found: &LengthRange| Some((found.least? - RAIL, found.most? + RAIL));
        found.iter().filter_map(ends).any(|(low, high)| low <= height && height <= high)
    };
    let lacks = wanted.iter().flat_map(|height| [height.least, height.most]).flatten().any(|height| !has(height));
    if found.is_empty() || !lacks {
        return None;
    }
    let (name, opening) = (&fitted.selection.name.value, &fitted.opening.name.value);
    let finding = match (needs, wanted.first().and_then(|height| height.least)) {
        (Some(needs), _) => {
            let message = phrase!(
                "`{}` is fixed to blocking ({}), and at the opening `{}` there is some at other heights: `{}`",
                name,
                Wrote(&needs.value),
                opening,
                there.words
            );
            fitted.finding(Severity::Query, there.span, message).also(needs.span, "needs this")
        }
        (None, bar) => {
            let message = phrase!(
                "`{}` is held on to {} above the floor, and at the opening `{}` there is blocking at other heights: `{}`",
                name,
                say(bar?, context.book.project.units),
                opening,
                there.words
            );
            fitted.finding(Severity::Query, there.span, message).source("common practice")
        }
    };
    let remedy =
        "have it set at the heights where it is fixed before the wall is closed, and write them at the opening";
    Some(Remark { caution: Some(without(fitted.selection)), ..finding.remedy(remedy) })
}

/// A rail is so high on each side of its middle (common practice: a 2 by 4 laid flat).
const RAIL: Length = Length::from_sixty_fourths(112);

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn what_a_bracket_is_fixed_to_is_asked_for() {
        let tall = |service: &str| {
            Trial::of("complete/site").opening("bay", &format!("{{takes: refrigerator{service}}}")).selection(
                "selection: It\nkind: refrigerator\nplace: bay",
                "fit: {needs: {blocking: 'solid, 66\" to 70\" AFF'}}",
            )
        };
        tall("").finds("`It` is fixed to blocking (solid, 66\" to 70\" AFF), and nobody says what there is in the wall at the opening `bay`").cautions();
        tall(", service: {blocking: 'solid, 66\" to 72\" AFF'}").stays_silent();
        tall(", service: {blocking: none}").finds_one();
    }

    /// Whatever its sheet says: who falls pulls on it (common practice).
    #[test]
    fn what_is_held_on_to_is_fixed_to_something() {
        let bar = |there: &str| {
            Trial::of("complete/site")
                .opening("rail", &format!("{{takes: grab bar, service: {{blocking: '{there}'}}}}"))
                .selection("selection: Bar\nkind: grab bar\nplace: rail", "model: G")
        };
        bar("toggle bolts")
            .finds("`Bar` is held on to, and at the opening `rail` there is none by its words: `toggle bolts`")
            .weighs("query")
            .cautions();
        bar("tacos en pladur").finds_one();
        bar("none").finds("`Bar` is held on to, and there is none in the wall at the opening `rail`");
        bar("2x10 all round").stays_silent();
        bar("solid timber, 30\" to 40\" AFF").stays_silent();
    }

    /// Two bars at one toilet, whose opening tells what is in its wall: asked once, at the height of the bars.
    #[test]
    fn what_is_in_the_wall_behind_bars_is_asked_once() {
        let bars = |service: &str| {
            Trial::of("complete/site")
                .room("access: {grab bar height: 34\"}")
                .opening("wc", &format!("{{takes: toilet{service}}}"))
                .selection("selection: Toilet\nkind: toilet\nplace: wc", "rough-in: 12\"")
                .selection("selection: Side bar\nkind: grab bar\nplace: wc", "model: G")
                .selection("selection: Rear bar\nkind: grab bar\nplace: wc", "model: H")
        };
        let water = |more: &str| format!(", service: {{water: '1/2\" cold, shut-off', drain: '3\" flange'{more}}}");
        bars(&water(""))
            .finds("`Side bar` is held on to, and nobody says what there is in the wall at the opening `wc`")
            .weighs("query")
            .cautions();
        bars(&water(", blocking: '2x10, 12\" to 26\" AFF'"))
            .finds("`Side bar` is held on to 34\" (864 mm) above the floor, and at the opening `wc` there is blocking at other heights: `2x10, 12\" to 26\" AFF`")
            .weighs("query");
        bars(&water(", blocking: '2x10, 30\" to 40\" AFF'")).stays_silent();
        bars(&water(", blocking: '3/4\" plywood behind the whole wall'")).stays_silent();
    }

    #[test]
    fn blocking_is_at_the_heights_that_the_sheet_names() {
        let hood = |there: &str| {
            Trial::of("complete/site")
                .opening("hood", &format!("{{takes: hood, service: {{blocking: '{there}'}}}}"))
                .selection(
                    "selection: Hood\nkind: hood\nplace: hood",
                    "fit: {needs: {blocking: 'two rails, 72\" and 84\" AFF'}}",
                )
        };
        hood("one rail, 60\" AFF").finds_one().weighs("query").cautions();
        hood("one rail, 72\" AFF").finds_one();
        for none in ["drywall only, no blocking", "drywall anchors", "toggle bolts", "none yet", "no fixing"] {
            hood(none)
                .finds(&format!("`Hood` is fixed to blocking (two rails, 72\" and 84\" AFF), and at the opening `hood` there is none by its words: `{none}`"))
                .weighs("query")
                .cautions();
        }
        hood("existing studs").finds_one();
        hood("as drawn").finds_one();
        hood("18 mm plywood, 60\" to 90\" AFF").stays_silent();
        hood("brick wall").stays_silent();
        hood("two rails, 72\" and 84\" AFF").stays_silent();
        hood("rails at 71 1/2\" and 84\" AFF").stays_silent();
        hood("solid blocking, 66\" to 86\" AFF").stays_silent();
        hood("two rails as the sheet asks").stays_silent();
    }
}
