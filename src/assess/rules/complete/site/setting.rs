//! What nobody says of the recess, the cabinet or the cutout that a thing is set into.

use crate::assess::rules::Findings;
use crate::assess::{Context, about};
use crate::book::{ProductOption, Room, Selection, Setting};
use crate::finding::{Remark, Severity, phrase};
use crate::site::fitting::{Housing, depth_stack, recess, setting};
use crate::site::panels::is_told;
use crate::site::{Placement, made_as};
use crate::units::with_article;
use crate::vocabulary::{Hazard, Kind, Mention, Mount, Trait};

/// Everything that is to be asked of how things are set in.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let below = drawers_below(context, &fitted).or_else(|| drawers_below_a_bowl(context, &fitted));
        findings.extend([no_recess(&fitted), below, type_of_unit(&fitted)].into_iter().flatten());
    }
    findings.extend(context.site.options().filter_map(|(room, selection, option)| no_panel(room, selection, option)));
}

fn with_weight(finding: Remark) -> Remark {
    Remark { caution: Some(Hazard::Weight), ..finding }
}

/// It is meant to be flush, and the depth of its recess or its own is not known.
fn no_recess(fitted: &Placement<'_>) -> Option<Remark> {
    let (_, at) = setting(fitted.opening, fitted.option).filter(|(set, _)| *set == Setting::Flush)?;
    let (what, remedy) =
        match (recess(fitted.room, fitted.opening), depth_stack(fitted.room, fitted.opening, fitted.option)) {
            (Some(_), Some(_)) => return None,
            (None, _) => {
                ("how deep its recess is", "add the opening's `depth`, to the front that it is meant to be flush with")
            }
            (_, None) => ("how deep its case is", "add `size: {depth: …}`, and the `panel` that goes before it"),
        };
    let message = phrase!("`{}` is meant to be flush, and nobody says {what}", fitted.selection.name.value, what);
    Some(with_weight(fitted.finding(Severity::Query, at, message).remedy(remedy)))
}

/// It reaches below the counter into a cabinet with drawers, and nobody says where they begin.
fn drawers_below(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let fit = fitted.option.fit.get()?;
    let reaches = fit.below.get().is_some() && fitted.selection.has(Trait::CutIntoCounter);
    let forbidden = fit.not_over.iter().any(|not| Mention::Drawer.is_in(&not.value));
    let at = Housing::of(fitted.room, fitted.opening, context.book.project.units)?.drawers()?;
    if !reaches || forbidden || !fitted.opening.below.is_absent() {
        return None;
    }
    let message = phrase!(
        "`{}` stands over drawers, and nobody says how far below the counter they begin",
        fitted.selection.name.value
    );
    let finding = fitted.finding(Severity::Query, at, message);
    Some(finding.remedy("add it to the opening: `below: {what: drawer, clear: …}`"))
}

/// A bowl hangs into a cabinet of drawers alone, and nobody says what is left for it and its trap.
fn drawers_below_a_bowl(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let hangs = fitted.selection.is_any(&[Kind::Sink, Kind::Basin])
        && fitted.option.mount().is_some_and(Mount::is_in_a_cabinet);
    let housing = Housing::of(fitted.room, fitted.opening, context.book.project.units)?;
    let at = housing.drawers()?;
    let has_doors = housing.part?.part.doors.get().is_some_and(|doors| *doors > 0);
    if !hangs || has_doors || !fitted.opening.below.is_absent() {
        return None;
    }
    let message = phrase!(
        "`{}` hangs into a cabinet of drawers, and nobody says how far below the counter they begin",
        fitted.selection.name.value
    );
    let finding = fitted.finding(Severity::Query, at, message);
    Some(finding.remedy("add it to the opening: `below: {what: drawer, clear: …}`; or give the cabinet doors"))
}

/// The sheet asks for a front panel that nobody draws and nobody orders.
fn no_panel(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let asked = option.fit.get()?.panel.span()?;
    // A panel that the kind must have is asked for with its fields.
    if is_told(room, selection, option) || selection.is(Kind::PanelDishwasher) {
        return None;
    }
    let message =
        phrase!("the sheet of `{}` asks for a front panel, and nobody draws or orders one", selection.name.value);
    let finding = about(room, selection, option, Severity::Query, asked, message);
    Some(with_weight(finding.remedy(
        "add `panel` to it, with size, thickness and weight; or a selection of the kind `cabinet` that is called its panel",
    )))
}

/// The opening is made for a type of unit, and nobody says what type this one is.
fn type_of_unit(fitted: &Placement<'_>) -> Option<Remark> {
    let made_for = fitted.opening.made_for.spanned()?;
    let is_said = made_as(fitted.option).is_some();
    let message = phrase!(
        "the opening `{}` is made for {} unit, and nobody says how `{}` is made",
        fitted.opening.name.value,
        with_article(made_for.value),
        fitted.selection.name.value
    );
    (!is_said).then(|| {
        let finding = fitted.finding(Severity::Query, made_for.span, message);
        with_weight(finding.remedy("add `made as` to what is chosen, as its sheet has it"))
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn set_in(kind: &str, opening: &str, option: &str) -> Trial {
        Trial::of("complete/site")
            .opening("bay", &format!("{{takes: {kind}, {opening}}}"))
            .selection(&format!("selection: It\nkind: {kind}\nplace: bay"), option)
    }

    #[test]
    fn what_is_meant_flush_wants_the_depth_of_its_recess() {
        let option = "size: {depth: 24\"}";
        set_in("refrigerator", "set: flush", option)
            .finds("`It` is meant to be flush, and nobody says how deep its recess is")
            .weighs("query");
        set_in("refrigerator", "set: flush, depth: 25\"", option).stays_silent();
        set_in("refrigerator", "set: flush, depth: 25\"", "model: R-1").finds_one();
        set_in("refrigerator", "set: proud", option).stays_silent();
    }

    #[test]
    fn the_type_of_unit_is_asked_for_where_the_opening_has_one() {
        set_in("refrigerator", "made for: built-in", "model: R-1").finds_one().weighs("query");
        set_in("refrigerator", "made for: built-in", "made as: built-in").stays_silent();
        set_in("refrigerator", "width: 36\"", "made as: built-in").stays_silent();
    }

    #[test]
    fn a_panel_that_the_sheet_asks_for_is_somebody_s() {
        let fridge = |option: &str| {
            Trial::of("complete/site").selection(
                "selection: Refrigerator\nkind: refrigerator",
                &format!("fit: {{panel: {{width: 35 3/4\"}}}}\n{option}"),
            )
        };
        fridge("").finds("the sheet of `Refrigerator` asks for a front panel, and nobody draws or orders one");
        fridge("panel: {width: 35 3/4\"}").stays_silent();
        fridge("").selection("selection: Refrigerator panel\nkind: cabinet", "").stays_silent();
        fridge("").selection("selection: Front panels\nkind: cabinet\ndepends on: [Refrigerator]", "").stays_silent();
    }

    #[test]
    fn drawers_below_a_bowl_are_set_out() {
        let basin = |part: &str, opening: &str| {
            set_in("basin", opening, "mount: undermount\nsize: {width: 18\"}\naccessories: [{name: mixer tap}]")
                .room(&format!("runs: {{vanity: {{parts: [{{cabinet: base, width: 30\", {part}, holds: [bay]}}]}}}}"))
        };
        basin("drawers: 3", "width: 18\"")
            .finds("`It` hangs into a cabinet of drawers, and nobody says how far below the counter they begin");
        basin("drawers: 3", "below: {what: drawer, clear: 9\"}").stays_silent();
        basin("doors: 2, drawers: 1", "width: 18\"").stays_silent();
        basin("doors: 2", "width: 18\"").stays_silent();
    }

    #[test]
    fn drawers_below_a_cooktop_are_set_out() {
        let hob = |part: &str, opening: &str| {
            set_in("cooktop", &format!("above: nothing{opening}"), "fit: {below: 4\"}").room(&format!(
                "runs: {{range wall: {{parts: [{{cabinet: base, width: 36\", {part}, holds: [bay]}}]}}}}"
            ))
        };
        hob("drawers: 3", "").finds("`It` stands over drawers, and nobody says how far below the counter they begin");
        hob("doors: 2", "").stays_silent();
        hob("drawers: 3", ", below: {what: drawer, clear: 5\"}").stays_silent();
    }
}
