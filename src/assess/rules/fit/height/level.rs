//! A floor, or a counter, that is farther out of level than the legs of what stands between them can take up.

use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::units::Length;

/// So much is shimmed (common practice).
const SHIMMED: Length = Length::from_sixty_fourths(8);
/// What is higher stands under no counter.
const COUNTER: Length = Length::from_inches(42);

/// What is set level with a counter, or under one, by its legs: the readings of its opening's height against how far these
/// can be set.
pub(super) fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let opening = fitted.opening;
    let own = fitted.option.size.height.spanned()?;
    let travel = own.value.most? - own.value.least?;
    let readings = opening.height.get().filter(|_| opening.stands_on_the_floor())?;
    let (least, greatest) = (readings.least()?, readings.greatest()?);
    let spread = greatest.value - least.value;
    if greatest.value > COUNTER || travel <= Length::ZERO || spread <= travel + SHIMMED {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the opening `{}` is {} higher at one place than at another, and the legs of `{}` take up {}",
        opening.name.value,
        say(spread),
        fitted.selection.name.value,
        say(travel)
    );
    let finding = fitted.finding(Severity::Query, greatest.span, message).also(own.span, "its legs");
    let remedy =
        "find out whether the floor or what is above is out of level, and have it levelled or packed before it is set";
    Some(finding.remedy(remedy).source("arithmetic"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic.
    #[test]
    fn legs_take_up_what_a_floor_is_out_of_level() {
        let range = |opening: &str, body: &str| {
            Trial::of("fit/height").opening("hole", &format!("{{takes: range, height: {opening}}}")).selection(
                "selection: Range\nkind: range\nplace: hole",
                &format!("size: {{width: 30\", height: {body}}}"),
            )
        };
        range("[36\", 37 1/4\", 38 1/2\"]", "35 3/4\" to 36 5/8\"")
            .finds("the opening `hole` is 2 1/2\" (64 mm) higher at one place than at another, and the legs of `Range` take up 7/8\" (22.2 mm)")
            .weighs("query");
        range("[36\", 36 1/4\", 36 3/4\"]", "35 3/4\" to 36 5/8\"").stays_silent();
        range("[36\", 37 1/4\", 38 1/2\"]", "36\"").stays_silent();
        range("[70\", 72\", 74\"]", "69\" to 69 1/2\"").stays_silent();
    }
}
