//! What lies in a counter on its own rim, against the cutout that it must cover.

use crate::assess::{Context, say};
use crate::book::Setting;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::setting;
use crate::units::Length;
use crate::vocabulary::{Kind, Mount};

/// A cooktop, or a bowl that is let in from above, of which the cutout is larger than the whole thing; what is set flush
/// lies in a rebate of its own.
pub(super) fn falls(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let is_flush = setting(fitted.opening, fitted.option).is_some_and(|(set, _)| set == Setting::Flush);
    let has_face = fitted.option.fit.get().is_some_and(|fit| fit.face.get().is_some());
    if !lies_on_its_rim(fitted) || is_flush || has_face {
        return None;
    }
    let (size, hole) = (&fitted.option.size, fitted.opening);
    let deep = size.depth.spanned();
    let ways = [(size.width.spanned(), &hole.width, "wide"), (deep, &hole.depth, "deep")];
    let say = |length: Length| say(length, context.book.project.units);
    ways.into_iter().find_map(|(own, cutout, how)| {
        let (own, cutout) = (own?, cutout.get()?.least()?);
        let message = phrase!(
            "`{}` is {} {how}, less than the {} of the cutout `{}`: it would fall through",
            fitted.selection.name.value,
            say(own.value),
            how,
            say(cutout.value),
            hole.name.value
        );
        let remedy = "ask the maker's sheet for the cutout, and measure the hole again, before stone is cut; write \
                      `set: flush` where it lies in a rebate";
        (own.value < cutout.value).then(|| {
            fitted.finding(Severity::Query, cutout.span, message).also(own.span, "the whole thing").remedy(remedy)
        })
    })
}

fn lies_on_its_rim(fitted: &Placement<'_>) -> bool {
    let let_in = || fitted.option.mount() == Some(Mount::DropIn);
    fitted.selection.is_any(&[Kind::Cooktop, Kind::Grill])
        || fitted.selection.is_any(&[Kind::Sink, Kind::Basin]) && let_in()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn what_is_smaller_than_its_cutout_would_fall_through() {
        let hob = |width: &str, depth: &str, more: &str| {
            Trial::of("fit/face").metric().opening("hob", "{takes: cooktop, width: 560 mm, depth: 490 mm}").selection(
                "selection: Hob\nkind: cooktop\nplace: hob",
                &format!("size: {{width: {width}, depth: {depth}}}\nfit: {{opening: {{width: 560 mm}}}}\n{more}"),
            )
        };
        hob("590 mm", "520 mm", "").stays_silent();
        hob("555 mm", "520 mm", "")
            .finds("`Hob` is 555 mm (≈ 21 7/8\") wide, less than the 560 mm (≈ 22 1/16\") of the cutout `hob`: it would fall through")
            .weighs("query");
        hob("590 mm", "480 mm", "").finds_one();
        hob("555 mm", "480 mm", "set: flush").stays_silent();
        let sink = |mount: &str| {
            Trial::of("fit/face").opening("bowl", "{takes: sink, width: 26 1/2\", depth: 17\"}").selection(
                "selection: Sink\nkind: sink\nplace: bowl",
                &format!("size: {{width: 26\", depth: 18\"}}\nmount: {mount}"),
            )
        };
        sink("drop-in").finds_one();
        sink("Einbauspüle").finds_one();
        sink("undermount").stays_silent();
    }
}
