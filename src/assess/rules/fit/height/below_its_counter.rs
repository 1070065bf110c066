//! A range whose top stays below the counter beside it.

use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::{Placement, counter_height};
use crate::units::Length;
use crate::vocabulary::Kind;

/// So little below the counter its top is set level on site (common practice).
const LEVEL: Length = Length::from_sixty_fourths(16);

/// The top of what stands between counters and is cooked on, as high as its legs can be set, below those counters.
pub(super) fn judge(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    if !fitted.selection.is(Kind::Range) || !fitted.opening.stands_on_the_floor() {
        return None;
    }
    let own = fitted.option.size.height.spanned()?;
    let most = own.value.most.or(own.value.least)?;
    let counter = *counter_height(fitted.room, fitted.opening).best()?;
    // Where the opening has a height of its own, the counter there may be no higher.
    let high = fitted.opening.height.get().and_then(|own| own.least());
    let high = high.map_or(counter.value, |own| own.value.min(counter.value));
    let below = Some(high - most).filter(|below| *below > LEVEL)?;
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` is {} high at most, {} lower than the counter at the opening `{}`: {}",
        fitted.selection.name.value,
        say(most),
        say(below),
        fitted.opening.name.value,
        say(high)
    );
    let finding = fitted.finding(Severity::Query, own.span, message).also(counter.at, "the counter");
    let remedy = "look at its sheet for how high its legs can be set, and write both ends: `size: {height: … to …}`; else it is raised on \
                  a plinth, or another one is chosen";
    Some(finding.remedy(remedy).source("common practice"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: common practice: the top of a range is level with the counter beside it, or a hair above.
    #[test]
    fn a_range_is_as_high_as_the_counter_beside_it() {
        let range = |height: &str, opening: &str| {
            Trial::of("fit/height").opening("hole", &format!("{{takes: range, {opening}}}")).selection(
                "selection: Range\nkind: range\nplace: hole",
                &format!("size: {{width: 30\", height: {height}}}"),
            )
        };
        let counter = "counter height: 36\"";
        range("34\" to 35\"", counter)
            .finds("`Range` is 35\" (889 mm) high at most, 1\" (25.4 mm) lower than the counter at the opening `hole`: 36\" (914 mm)")
            .weighs("query");
        range("35 1/8\"", counter).finds_one();
        range("880 mm", "counter height: 910 mm").finds_one();
        for (height, opening) in [
            ("35 7/8\" to 37\"", counter),
            ("36\"", counter),
            ("35 3/4\"", counter),
            ("895 mm to 930 mm", "counter height: 920 mm"),
            ("34\" to 35\"", "width: 30\""),
        ] {
            range(height, opening).stays_silent();
        }
    }
}
