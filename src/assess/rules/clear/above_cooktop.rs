//! What is above a cooking surface.

use crate::assess::codes::{ABOVE_COOKTOP_BARE, ABOVE_COOKTOP_SHIELDED};
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::book::vocabulary::Hazard;
use crate::book::{Neighbour, Room, Window};
use crate::finding::{Finding, Severity};
use crate::source::Spanned;
use crate::units::Length;

declare! {
    /// What burns is nearer above a cooking surface than it may be
    ///
    /// ## What it checks
    /// From the cooking surface (the top of a range, or the counter of a cooktop) to what is above it:
    /// the distance of the maker's sheet where it gives one (`fit: {air: {top: …}}`), else 30" to what
    /// burns and 24" to a metal hood or a shielded surface. A hood counts as a shield only when it is at
    /// least as wide as the cooking surface. A window that opens above it is told too.
    ///
    /// ## Why it matters
    /// Cabinets above burners char for years before they catch fire.
    ///
    /// ## Remedy
    /// Raise what is above, shield it as the code says, or fit a hood that is wide enough.
    ///
    /// ## Example
    /// ```yaml
    /// above: {what: wood cabinet, height: 65"}     # a range 36" high: 29" to the wood
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; IRC M1901.1 (30"); IFGC 623.7 and IRC G2447.5 from memory, UMC 906.1 (1998) for
    /// 24" under a shield; kitchen planning guidelines 18 and 20. Free summaries cite another section for
    /// the 30": check locally.
    "clear/above-cooktop", Query,
    sources: ["the maker's sheet", "IRC M1901.1", "IFGC 623.7 (from memory)", "kitchen planning guidelines 18 and 20"],
    caution: Some(Hazard::Heat.caution()),
    Check::Book(check)
}

const REMEDY: &str = "raise what is above, shield it as the code says, or fit a hood that is wide enough";

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for fitted in context.fitted().filter(cooks) {
        let Some(above) = fitted.opening.above.spanned() else { continue };
        findings.extend(judge(context, &fitted, above));
    }
    for room in &context.book.rooms {
        let in_the_roof = |window: &&Window| {
            let planned = context.plan(room).map(|plan| plan.in_the_roof.as_slice()).unwrap_or_default();
            window.in_roof.get() == Some(&true) || planned.iter().any(|planned| std::ptr::eq(*planned, *window))
        };
        findings.extend(room.layout.windows.iter().filter(|window| !in_the_roof(window)).filter_map(|window| {
            let under = window.above.get()?.to_lowercase();
            let cooks = ["cooktop", "range", "burner", "hob"].iter().any(|word| under.contains(word));
            let message = format!("the window `{}` opens above the {under}", window.name.value);
            (cooks && window.opens.get().is_some_and(|opens| *opens != "fixed")).then(|| {
                Finding::new(RULE.code, Severity::Query, window.name.span, message)
                    .room(&room.folder)
                    .item(&window.name.value)
                    .remedy("move one of them, or fix the sash; nothing that burns hangs there")
                    .source("kitchen planning guideline 20")
            })
        }));
    }
}

fn cooks(fitted: &Fitted<'_>) -> bool {
    fitted.selection.kind.get().is_some_and(|kind| matches!(kind.name, "range" | "cooktop"))
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>, above: &Spanned<Neighbour>) -> Option<Finding> {
    let under = above.value.height.get()?;
    let surface = surface(fitted)?;
    if *under <= surface {
        return None;
    }
    let there = *under - surface;
    let (asked, whose, severity, source) = asked(context, fitted, &above.value)?;
    if there >= asked {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = format!(
        "the {} is {} above the cooking surface of `{}`, {} less than {whose} {}",
        above.value.what,
        say(there),
        fitted.selection.name.value,
        say(asked - there),
        say(asked)
    );
    Some(fitted.finding(RULE.code, severity, above.span, message).remedy(REMEDY).source(source))
}

/// The top of a range; the counter that a cooktop lies in.
fn surface(fitted: &Fitted<'_>) -> Option<Length> {
    let counter = fitted.opening.counter_height.get().copied();
    let is_range = fitted.selection.kind.get()?.name == "range";
    let own = fitted.option.size.height.get().filter(|_| is_range).and_then(|height| height.most.or(height.least));
    // A range is set level with the counter where its legs reach it.
    match (counter, own) {
        (Some(counter), Some(own)) => Some(counter.max(fitted.option.size.height.get()?.least.unwrap_or(own))),
        (counter, own) => counter.or(own),
    }
}

fn asked(
    context: &Context<'_>,
    fitted: &Fitted<'_>,
    above: &Neighbour,
) -> Option<(Length, &'static str, Severity, String)> {
    if let Some(top) = fitted.option.fit.get().and_then(|fit| fit.air.top.get()) {
        return Some((top.length, "its sheet's", Severity::Stop, "the maker's sheet".into()));
    }
    let what = above.what.to_lowercase();
    let metal = what.contains("hood") || what.contains("shield") || what.contains("metal");
    let figure = if metal && !narrow_hood(fitted) { &ABOVE_COOKTOP_SHIELDED } else { &ABOVE_COOKTOP_BARE };
    let ruling = context.rulings().length(figure)?;
    Some((ruling.value, "the", ruling.severity, ruling.source))
}

/// Whether the room's hood is known to be narrower than the cooking surface.
fn narrow_hood(fitted: &Fitted<'_>) -> bool {
    let width = fitted.option.size.width.get();
    hood_width(fitted.room).zip(width).is_some_and(|(hood, cooks)| hood < *cooks)
}

fn hood_width(room: &Room) -> Option<Length> {
    let hoods = room.selections.iter().filter(|selection| selection.kind.get().is_some_and(|kind| kind.name == "hood"));
    hoods.flat_map(|hood| hood.standing()).filter_map(|option| option.size.width.get().copied()).min()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn range(above: &str, more: &str) -> Trial {
        Trial::of("clear/above-cooktop")
            .opening("hole", &format!("{{takes: range, counter height: 36\", above: {above}}}"))
            .selection(
                "selection: Range\nkind: range\nplace: hole",
                &format!("size: {{width: 36\", height: 36\"}}\n{more}"),
            )
    }

    /// Source: check values IR-01, KP-31: 30 to unprotected wood passes, 29 fails.
    #[test]
    fn wood_nearer_than_30_inches_is_asked_about_and_stops_where_the_code_is_adopted() {
        range("{what: wood cabinet, height: 65\"}", "")
            .finds("the wood cabinet is 29\" (736.6 mm) above the cooking surface of `Range`, 1\" (25.4 mm) less than the 30\" (762 mm)")
            .weighs("query")
            .cautions();
        range("{what: wood cabinet, height: 65\"}", "").book("codes: {adopts: [IRC 2021]}").finds_one().weighs("stop");
        range("{what: wood cabinet, height: 66\"}", "").stays_silent();
    }

    /// Source: check values IR-02, IR-04, KP-30: 24 under a shield passes; a hood of 30 over a top of 36 is none.
    #[test]
    fn a_hood_counts_as_a_shield_when_it_is_wide_enough() {
        range("{what: hood, height: 60\"}", "").stays_silent();
        range("{what: hood, height: 59\"}", "").finds_one();
        range("{what: hood, height: 60\"}", "")
            .selection("selection: Hood\nkind: hood", "size: {width: 30\"}")
            .finds_one();
        range("{what: hood, height: 60\"}", "")
            .selection("selection: Hood\nkind: hood", "size: {width: 36\"}")
            .stays_silent();
    }

    /// Source: check values IR-06: what is listed for use over a range goes by its own instructions.
    #[test]
    fn the_maker_s_own_figure_decides() {
        range("{what: microwave, height: 54\"}", "fit: {air: {top: 18\"}}").stays_silent();
        range("{what: wood cabinet, height: 66\"}", "fit: {air: {top: 36\"}}").finds_one().weighs("stop");
    }

    /// Source: check values IR-05: Ontario asks 750 mm of what burns, which is not 30 in.
    #[test]
    fn another_country_s_figure_is_written_as_an_amendment() {
        let ontario = "codes: {figures: [{figure: cooking surface to what burns above, is: 750 mm, because: Ontario Building Code, by: Ontario}]}";
        range("{what: wood cabinet, height: 1664.4 mm}", "").book(ontario).stays_silent();
        range("{what: wood cabinet, height: 1654.4 mm}", "").book(ontario).finds_one().weighs("stop");
    }

    /// Source: check values KP-33: no cooktop under a window that opens.
    #[test]
    fn a_window_that_opens_above_a_cooktop_is_told() {
        let window = |opens: &str| {
            Trial::of("clear/above-cooktop").room(&format!("windows: {{yard: {{opens: {opens}, above: cooktop}}}}"))
        };
        window("up").finds("the window `yard` opens above the cooktop").weighs("query");
        window("fixed").stays_silent();
        window("up, in: wall").finds_one();
        window("up, in: roof").stays_silent();
    }
}
