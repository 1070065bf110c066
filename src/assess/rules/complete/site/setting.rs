//! What nobody says of the recess, the cabinet or the cutout that a thing is set into.

use crate::assess::rules::Findings;
use crate::assess::{Context, about};
use crate::book::{DetailName, ProductOption, Room, Selection, Setting};
use crate::finding::{Remark, Severity, phrase};
use crate::site::fitting::{Housing, depth_stack, held_below, pedestal_under, recess, setting};
use crate::site::panels::is_told;
use crate::site::{Placement, made_as};
use crate::units::{Length, Wrote, with_article};
use crate::vocabulary::supply::is_none;
use crate::vocabulary::{Hazard, Kind, Mention, Mount, Trait, says_how_it_is_held};

/// Everything that is to be asked of how things are set in.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let below = drawers_below(context, &fitted).or_else(|| drawers_below_a_bowl(context, &fitted));
        let below = below.or_else(|| how_far_below(context, &fitted)).or_else(|| air_below(&fitted));
        findings.extend([no_recess(&fitted), below, type_of_unit(&fitted), pedestal(&fitted)].into_iter().flatten());
    }
    findings.extend(context.site.options().filter_map(|(room, selection, option)| no_panel(room, selection, option)));
    findings.extend(context.site.options().filter_map(|(room, selection, option)| how_held(room, selection, option)));
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

/// How a bowl is held decides its cutout, its holes and its height: words that can't be understood are no answer.
fn how_held(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let (words, at) = option.mount_written().filter(|_| selection.is_any(&[Kind::Sink, Kind::Basin]))?;
    if says_how_it_is_held(words) {
        return None;
    }
    let name = &selection.name.value;
    let message = phrase!("how `{name}` is held can't be understood: `{}`", name, Wrote(words));
    let finding = about(room, selection, option, Severity::Query, at, message);
    let remedy =
        "write its `mount`: `undermount`, `drop-in`, `apron front`, `on the counter`, `on the wall` or `pedestal`";
    Some(with_weight(finding.remedy(remedy)))
}

/// It is set up on a pedestal under something, and nobody says how high that is.
fn pedestal(fitted: &Placement<'_>) -> Option<Remark> {
    let under = pedestal_under(fitted.option).filter(|under| under.height.is_none())?;
    let is_machine = fitted.opening.takes_one(Trait::InNoCabinet);
    if !is_machine || fitted.opening.height.is_absent() || fitted.option.size.height.is_absent() {
        return None;
    }
    let message = phrase!("nobody says how high the pedestal under `{}` is", fitted.selection.name.value);
    let finding = fitted.finding(Severity::Query, under.at, message);
    Some(with_weight(finding.remedy("write it in its name, as its sheet has it: `pedestal, … high`")))
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

/// The opening names what stands below, or says that nothing does over drawers, and not how far below the counter that
/// is, though the thing reaches down.
fn how_far_below(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let below = fitted.opening.below.spanned().filter(|below| below.clear.is_absent())?;
    let fit = fitted.option.fit.get();
    let reaches = fit.is_some_and(|fit| fit.below.get().is_some()) && fitted.selection.has(Trait::CutIntoCounter);
    let bowl = fitted.option.length(DetailName::BowlDepth).is_some();
    let forbidden = fit.is_some_and(|fit| fit.not_over.iter().any(|not| names_it(&not.value, &below.what.value)));
    if !(reaches || bowl) || forbidden || held_below(fitted.room, fitted.opening).is_some() {
        return None;
    }
    let name = &fitted.selection.name.value;
    let what = &below.what.value;
    let finding = if is_none(what) {
        let at = Housing::of(fitted.room, fitted.opening, context.book.project.units)?.drawers()?;
        let message = phrase!("`{name}` stands over drawers, and the opening says that nothing is below it", name);
        fitted.finding(Severity::Query, at, message).also(below.what.span, "nothing, it says here")
    } else if Mention::EmptyCabinet.is_in(what) && !Mention::Drawer.is_in(what) {
        return None;
    } else {
        let message =
            phrase!("`{name}` stands over `{what}`, and nobody says how far below the counter that begins", name, what);
        fitted.finding(Severity::Query, below.what.span, message)
    };
    Some(finding.remedy("add it to the opening: `below: {what: …, clear: …}`, from the top of the counter"))
}

/// Its sheet asks for air below it, and the opening names what is there, and not how far below its foot: what is let into
/// a counter is asked for by itself.
fn air_below(fitted: &Placement<'_>) -> Option<Remark> {
    let opening = fitted.opening;
    if opening.takes_one(Trait::DropsIn) || opening.takes_one(Trait::CutIntoCounter) {
        return None;
    }
    let below = opening.below.get().filter(|below| below.clear.is_absent() && !below.is_said_to_be_free())?;
    let air = fitted.option.fit.get()?.air.bottom.spanned()?;
    if air.value.length == Length::ZERO || air.value.vent.is_some() || !air.value.holds.is_empty() {
        return None;
    }
    let name = &fitted.selection.name.value;
    let what = &below.what.value;
    let message = phrase!(
        "the sheet of `{name}` asks for air below it, and nobody says how far below it `{what}` is",
        name,
        what
    );
    let finding = fitted.finding(Severity::Query, below.what.span, message).also(air.span, "its sheet");
    Some(finding.remedy("add it to the opening: `below: {what: …, clear: …}`, from the foot of what hangs"))
}

/// Whether what a sheet forbids is in the words of what stands there: `drawers` are a `drawer` each.
fn names_it(not: &str, what: &str) -> bool {
    what.to_lowercase().contains(not.to_lowercase().trim_end_matches('s'))
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
    fn how_high_a_pedestal_is_is_asked() {
        let washer = |with: &str| {
            set_in("washer", "height: 44\"", &format!("size: {{height: 38 1/2\"}}\naccessories: [{{name: '{with}'}}]"))
        };
        washer("pedestal").finds("nobody says how high the pedestal under `It` is").weighs("query");
        washer("pedestal, 15 1/2\" high").stays_silent();
        washer("hose").stays_silent();
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

    /// Source: the maker's own sheet; not known is not passed (facts.md, law 4).
    #[test]
    fn how_far_below_a_heater_a_shelf_is_is_asked_where_its_sheet_wants_air() {
        let heater = |below: &str, air: &str| {
            set_in(
                "water heater",
                &format!("sill: 1200 mm, height: 600 mm{below}"),
                &format!("size: {{height: 600 mm}}\nfit: {{air: {{{air}}}}}"),
            )
            .run()
        };
        let message = "the sheet of `It` asks for air below it, and nobody says how far below it `shelf` is";
        let told = |below: &str, air: &str| {
            heater(below, air).findings().iter().filter(|finding| finding.message.text() == message).count()
        };
        for below in [", below: shelf", ", below: {what: shelf}"] {
            assert_eq!(told(below, "bottom: 600 mm"), 1, "{below}");
            assert_eq!(told(below, "top: 600 mm"), 0, "{below}");
        }
        for below in ["", ", below: nothing", ", below: {what: shelf, clear: 20 mm}"] {
            assert_eq!(told(below, "bottom: 600 mm"), 0, "{below}");
        }
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

    /// Source: trade reports F-40 (drawers under the cooktop); facts.md, law 4.
    #[test]
    fn what_is_named_below_and_not_how_far_is_asked() {
        let hob = |part: &str, below: &str| {
            set_in("cooktop", &format!("above: nothing, below: {below}"), "fit: {below: 71 mm}").metric().room(
                &format!("runs: {{hob wall: {{parts: [{{cabinet: base, width: 600 mm, {part}, holds: [bay]}}]}}}}"),
            )
        };
        for below in ["drawer", "{what: drawer}", "oven", "\"drawer, 50 mm below the top\"", "cutlery tray"] {
            hob("doors: 1", below).finds_one().weighs("query");
        }
        hob("doors: 1", "{what: drawer}")
            .finds("`It` stands over `drawer`, and nobody says how far below the counter that begins")
            .remedies("add it to the opening: `below: {what: …, clear: …}`, from the top of the counter");
        hob("drawers: 2", "nothing").finds("`It` stands over drawers, and the opening says that nothing is below it");
        hob("doors: 1", "nothing").stays_silent();
        hob("doors: 1", "cabinet").stays_silent();
        hob("doors: 1", "{what: drawer, clear: 90 mm}").stays_silent();
        set_in(
            "sink",
            "cabinet: {inside width: 34 1/2\"}, below: pull-out bins",
            "mount: undermount\nsize: {width: 32\"}\nbowl depth: 9\"\naccessories: [{name: mixer tap}]",
        )
        .finds_one();
    }
}
