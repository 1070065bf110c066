//! What is in a wall to fix brackets and bars to.

use crate::book::Selection;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::units::{Length, LengthRange, Wrote};
use crate::vocabulary::supply::{Backing, heights, is_none};
use crate::vocabulary::{Hazard, Kind};

/// The sheet wants something to fix a bracket to, and nobody says what is in the wall, or nothing that holds is.
pub(super) fn ask(fitted: &Placement<'_>) -> Option<Remark> {
    let needs = fitted.option.fit.get().and_then(|fit| fit.needs.blocking.spanned());
    let Some(needs) = needs.filter(|needs| !is_none(&needs.value)) else { return held_on_to(fitted) };
    let there = &fitted.opening.service.blocking;
    let (name, opening) = (&fitted.selection.name.value, &fitted.opening.name.value);
    let is = match there.get() {
        None if !there.is_absent() => return None,
        None => phrase!("nobody says what there is in the wall at the opening `{opening}`", opening),
        Some(words) => match words.is.is {
            Some(Backing::There) => return at_other_heights(fitted),
            _ if is_none(&words.words) => phrase!("there is none in the wall at the opening `{opening}`", opening),
            Some(Backing::NotThere) => {
                phrase!("at the opening `{opening}` there is none by its words: `{}`", opening, words.words)
            }
            Some(Backing::StudsAlone) => {
                phrase!(
                    "at the opening `{opening}` there are studs alone (`{}`), which may not be where it is fixed",
                    opening,
                    words.words
                )
            }
            None => phrase!(
                "what is written of it at the opening `{opening}` can't be understood: `{}`",
                opening,
                words.words
            ),
        },
    };
    let message = phrase!("`{name}` is fixed to blocking ({}), and {is}", name, Wrote(&needs.value), is);
    let at = there.span().unwrap_or(fitted.opening.span);
    let finding = fitted.finding(Severity::Query, at, message).also(needs.span, "needs this");
    let remedy = "have it set before the wall is closed, and add it to the opening, with what it is of: `service: {blocking: …}`";
    Some(Remark { caution: Some(without(fitted.selection)), ..finding.remedy(remedy) })
}

/// What somebody holds on to, or sits on, though no sheet says what it is fixed to: nothing that holds is in the wall.
fn held_on_to(fitted: &Placement<'_>) -> Option<Remark> {
    let there = fitted.opening.service.blocking.spanned()?;
    let is_one = fitted.selection.is_any(&[Kind::GrabBar, Kind::ShowerSeat]);
    if !is_one || there.is.is != Some(Backing::NotThere) {
        return None;
    }
    let name = &fitted.selection.name.value;
    let message = phrase!(
        "`{name}` is held on to, and by its words there is nothing that holds it in the wall: `{}`",
        name,
        there.words
    );
    let finding = fitted.finding(Severity::Query, there.span, message).source("common practice");
    let remedy = "have blocking set before the wall is closed, by the maker's sheet, and write what it is of";
    Some(Remark { caution: Some(without(fitted.selection)), ..finding.remedy(remedy) })
}

/// How a thing hurts that is not held: it tips over, gives way under who holds on to it, or comes off its wall.
pub(super) fn without(selection: &Selection) -> Hazard {
    let hazards = selection.kind.get().map_or(&[][..], |kind| kind.hazards());
    [Hazard::Tipping, Hazard::Fall].into_iter().find(|hazard| hazards.contains(hazard)).unwrap_or(Hazard::Weight)
}

/// Blocking is there, and not at the heights that the sheet names.
fn at_other_heights(fitted: &Placement<'_>) -> Option<Remark> {
    let needs = fitted.option.fit.get()?.needs.blocking.spanned()?;
    let there = fitted.opening.service.blocking.spanned()?;
    let (wanted, found) = (heights(&needs.value), heights(&there.words));
    let has = |height: Length| {
        let ends = |found: &LengthRange| Some((found.least? - RAIL, found.most? + RAIL));
        found.iter().filter_map(ends).any(|(low, high)| low <= height && height <= high)
    };
    let lacks = wanted.iter().flat_map(|height| [height.least, height.most]).flatten().any(|height| !has(height));
    if found.is_empty() || !lacks {
        return None;
    }
    let message = phrase!(
        "`{}` is fixed to blocking ({}), and at the opening `{}` there is some at other heights: `{}`",
        fitted.selection.name.value,
        Wrote(&needs.value),
        fitted.opening.name.value,
        there.words
    );
    let finding = fitted.finding(Severity::Query, there.span, message).also(needs.span, "needs this");
    let remedy = "have it set at the sheet's heights before the wall is closed, and write them at the opening";
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
            .finds("`Bar` is held on to, and by its words there is nothing that holds it in the wall: `toggle bolts`")
            .weighs("query")
            .cautions();
        bar("tacos en pladur").finds_one();
        bar("2x10 all round").stays_silent();
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
