//! Two things that are joined side by side or stacked.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{Stack, joined};
use crate::source::Span;
use crate::units::{Length, Wrote};

declare! {
    /// Two things that are joined do not fit together, or may not stand together
    ///
    /// ## What it checks
    /// An opening that names its `pair`: the widths of both things and what the joining kit adds, against
    /// both openings together (the heights of two that are stacked are judged by `fit/height`); and whether the sheet's list of models that it `pairs with` holds the other
    /// one's model. That is asked of either sheet, and of all that stands on one another: two in a stack, two machines that
    /// the plan sets one over the other, a cooktop over what the same cabinet holds.
    ///
    /// ## Why it matters
    /// A pair of built-ins takes a kit that nobody reads about until the cabinets stand.
    ///
    /// ## Remedy
    /// Make the opening the sum with the kit, or choose a combination that the sheet lists.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   refrigerator: {takes: refrigerator, width: 30", pair: freezer}
    /// ```
    ///
    /// ## Source
    /// The makers' sheets.
    "fit/pair", Stop,
    due: WithThing, tells: [Installer],
    judges: [Refrigerator, PanelRefrigerator, Washer, Dryer, WallOven, Microwave, WarmingDrawer, Cooktop],
    sources: ["the makers' sheets"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for one in context.site.fitted() {
        let plan = context.site.plan(one.room);
        for other in context.site.fitted_in(one.room).filter(|other| !std::ptr::eq(other.opening, one.opening)) {
            let at = joined(plan, one.room, one.opening, other.opening).or_else(|| beside(&one, &other));
            let Some(at) = at else { continue };
            let named = one.opening.pair.get().is_some_and(|pair| *pair == other.opening.name.value)
                || beside(&one, &other).is_some();
            let wide = || if named { too_wide(context, &one, &other) } else { None };
            findings.extend(not_listed(&one, &other, at).or_else(wide));
        }
    }
}

/// Where the sheet lists the model that stands right beside it in its row, with the kit that joins both.
fn beside(one: &Placement<'_>, other: &Placement<'_>) -> Option<Span> {
    let fit = one.option.fit.get()?;
    let kit = fit.joining_kit.span()?;
    let model = other.option.model.get()?;
    let lists = fit.pairs_with.iter().any(|named| named.value.eq_ignore_ascii_case(model));
    let (own, others) = (one.room.part_of(&one.opening.name)?, one.room.part_of(&other.opening.name)?);
    let is_next = std::ptr::eq(own.parts, others.parts) && own.number.abs_diff(others.number) == 1;
    (lists && is_next).then_some(kit)
}

fn not_listed(one: &Placement<'_>, other: &Placement<'_>, at: Span) -> Option<Remark> {
    let listed = &one.option.fit.get()?.pairs_with;
    let model = other.option.model.get()?;
    let first = listed.first()?;
    if listed.iter().any(|named| named.value.eq_ignore_ascii_case(model)) {
        return None;
    }
    let message = phrase!(
        "`{}` may not be joined to `{}`: its sheet does not list the model {model}",
        one.selection.name.value,
        other.selection.name.value,
        Wrote(model)
    );
    let finding = one.finding(Severity::Stop, at, message);
    Some(finding.also(first.span, "the sheet's list").remedy("choose a combination that the sheet lists"))
}

fn too_wide(context: &Context<'_>, one: &Placement<'_>, other: &Placement<'_>) -> Option<Remark> {
    // What is stacked shares a height, which `fit/height` judges, and no width.
    if Stack::of(one.room, one.opening).is_some() {
        return None;
    }
    let there = one.opening.governing_width()? + other.opening.governing_width()?;
    let kit = one.option.fit.get().and_then(|fit| fit.joining_kit.get().copied()).unwrap_or(Length::ZERO);
    let needs = *one.option.size.width.get()? + *other.option.size.width.get()? + kit;
    if needs <= there {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` and `{}` are {} wide together with their joining kit, {} more than both openings",
        one.selection.name.value,
        other.selection.name.value,
        say(needs),
        say(needs - there)
    );
    let at = one.opening.pair.span().or_else(|| beside(one, other))?;
    let finding = one.finding(Severity::Stop, at, message);
    Some(finding.remedy("make the opening the sum with the kit, before the cabinets are ordered"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn pair(cold: &str, opening: &str) -> Trial {
        Trial::of("fit/pair")
            .opening("cold", &format!("{{takes: refrigerator, width: {opening}, pair: ice}}"))
            .opening("ice", "{takes: refrigerator, width: 18\"}")
            .selection(
                "selection: Cold\nkind: refrigerator\nplace: cold",
                &format!("size: {{width: 30\"}}\nfit: {{{cold}}}"),
            )
            .selection("selection: Ice\nkind: refrigerator\nplace: ice", "model: FZ-18\nsize: {width: 18\"}")
    }

    /// Source: trade reports F-13: a pair of built-ins needs its joining kit counted in.
    #[test]
    fn a_pair_takes_its_kit_too_and_only_what_the_sheet_lists() {
        pair("joining kit: 1/4\"", "30\"")
            .finds("`Cold` and `Ice` are 48 1/4\" (1226 mm) wide together with their joining kit, 1/4\" (6.4 mm) more than both openings")
            .weighs("stop");
        pair("joining kit: 1/4\"", "30 1/4\"").stays_silent();
        pair("pairs with: [FZ-24]", "31\"")
            .finds("`Cold` may not be joined to `Ice`: its sheet does not list the model FZ-18");
        pair("pairs with: [FZ-24, FZ-18]", "31\"").stays_silent();
    }

    #[test]
    fn two_that_the_sheet_joins_are_a_pair_where_they_stand_side_by_side() {
        let row = |kit: &str, between: &str| {
            Trial::of("fit/pair")
                .room(&format!("runs: {{a: {{parts: [{{opening: cold}}, {between}{{opening: ice}}]}}}}"))
                .opening("cold", "{takes: refrigerator, width: 30 1/4\"}")
                .opening("ice", "{takes: refrigerator, width: 18 1/4\"}")
                .selection(
                    "selection: Cold\nkind: refrigerator\nplace: cold",
                    &format!("size: {{width: 30\"}}\nfit: {{joining kit: {kit}, pairs with: [FZ-18]}}"),
                )
                .selection("selection: Ice\nkind: refrigerator\nplace: ice", "model: FZ-18\nsize: {width: 18\"}")
        };
        row("1 1/4\"", "").finds_one().weighs("stop");
        row("1/4\"", "").stays_silent();
        row("1 1/4\"", "{cabinet: b, width: 12\"}, ").stays_silent();
    }

    /// Source: trade reports F-13: one on the other, each is as wide as its own opening.
    #[test]
    fn two_that_are_stacked_do_not_add_their_widths() {
        let dryer = |sill: &str| {
            Trial::of("fit/pair")
                .opening("washer", "{takes: washer, width: 27 1/4\", height: 39\", pair: dryer}")
                .opening("dryer", &format!("{{takes: dryer, width: 27 1/4\", height: 39\"{sill}}}"))
                .selection(
                    "selection: Washer\nkind: washer\nplace: washer",
                    "size: {width: 27\"}\nfit: {joining kit: 1\"}",
                )
                .selection("selection: Dryer\nkind: dryer\nplace: dryer", "size: {width: 27\"}")
        };
        dryer(", sill: 40\"").stays_silent();
        dryer("").finds_one();
    }

    /// Source: trade reports F-13: the list counts on whichever sheet it stands, and whatever tells that two are joined.
    #[test]
    fn a_list_counts_on_either_sheet_and_wherever_two_stand_on_one_another() {
        let machines = |washer: &str, dryer: &str, sheet: &str| {
            Trial::of("fit/pair")
                .room("outline: 14' x 12'")
                .opening(
                    "washer",
                    &format!("{{takes: washer, wall: A, at: 4\", width: 28\", height: 39 1/2\", depth: 36\"{washer}}}"),
                )
                .opening(
                    "dryer",
                    &format!("{{takes: dryer, wall: A, {dryer}, width: 28\", height: 44\", depth: 36\"}}"),
                )
                .selection("selection: Washer\nkind: washer\nplace: washer", "model: W-7")
                .selection(
                    "selection: Dryer\nkind: dryer\nplace: dryer",
                    &format!("model: D-7\nfit: {{pairs with: [{sheet}]}}"),
                )
        };
        let over = "at: 4\", sill: 39 1/2\"";
        machines(", pair: dryer", over, "W-9")
            .finds("`Dryer` may not be joined to `Washer`: its sheet does not list the model W-7")
            .weighs("stop");
        machines(", pair: dryer", over, "W-7").stays_silent();
        machines("", over, "W-9").finds_one();
        machines(", above: {what: dryer}", over, "W-9").finds_one();
        // Side by side, with no kit between them, nothing is joined.
        machines("", "at: 40\"", "W-9").stays_silent();
    }

    #[test]
    fn a_cooktop_and_the_oven_under_it_are_a_pair_without_a_word() {
        let over = |list: &str, holds: &str| {
            Trial::of("fit/pair")
                .room(&format!("runs: {{w: {{parts: [{{cabinet: oven base, width: 33\", holds: [{holds}]}}, {{cabinet: other, width: 30\", holds: [oven]}}]}}}}"))
                .opening("hob", "{takes: cooktop}")
                .opening("oven", "{takes: wall oven}")
                .selection("selection: Cooktop\nkind: cooktop\nplace: hob", &format!("model: C-30\nfit: {{pairs with: [{list}]}}"))
                .selection("selection: Oven\nkind: wall oven\nplace: oven", "model: O-30")
                .of_any_yaml()
        };
        over("O-24, O-27", "hob, oven")
            .finds("`Cooktop` may not be joined to `Oven`: its sheet does not list the model O-30")
            .points_at(&["rooms/kitchen/room.yaml:2:66"]);
        over("O-24, O-30", "hob, oven").stays_silent();
        over("O-24", "hob").stays_silent();
    }
}
