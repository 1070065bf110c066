//! The cabinet that something is cut into, against what the sheet asks of it.

mod bins;
mod tower;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{CutOut, RequiredCabinet, Slot};
use crate::finding::{Remark, Severity, phrase};
use crate::site::fitting::{CabinetFigure, FigureBasis, Fitting, Housing};
use crate::site::{Placement, made_as};
use crate::units::{Length, LengthRange, with_article};
use crate::vocabulary::{Hazard, Kind, Mount};

declare! {
    /// The housing cabinet is not as the sheet asks, or the cutout meets its sides
    ///
    /// ## What it checks
    /// What the maker's sheet asks of the cabinet (inside width, depth and height, outside width,
    /// stiles, back panel whole or cut away) against the cabinet as it is: as the opening has it, as the
    /// part of a run or island that `holds` the opening, as a cabinet selection of that name. Its inside
    /// is its outside less two sides of {3/4"}, unless the book says; what rests on that is asked
    /// about. And the cutout that the sheet asks for against the inside of the cabinet, where it asks
    /// nothing of the cabinet itself; in height too, as far as the part that holds it leaves it, from the
    /// opening's sill to its top or to what begins above. And whether the opening is `made for` another type of unit than
    /// the thing is `made as`, or a bowl's `mount` says. Bins for waste go into the cabinet that is called after them, else into
    /// one of their room. A
    /// figure that is met exactly passes.
    ///
    /// ## Why it matters
    /// A cutout wider than the cabinet's inside runs through its sides; a back panel or an outlet
    /// keeps an oven from going home.
    ///
    /// ## Remedy
    /// Order a wider or deeper cabinet, or ask its maker whether sides may be notched and the back
    /// cut away.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   cooktop: {takes: cooktop, cabinet: {inside width: 34 1/2", outside width: 36"}}
    /// ```
    /// A cooktop whose cutout is {34 7/8"} wide meets the sides of this cabinet.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement.
    "fit/cabinet", Stop,
    due: WithThing, tells: [Installer],
    judges: [Sink, Basin, Range, Cooktop, WallOven, Microwave, WarmingDrawer, WasteBin],
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Weight),
    remedy: "order a cabinet to the sheet, or ask its maker whether it may be cut",
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let housing = Housing::of(fitted.room, fitted.opening, context.book.project.units);
        let Some((fit, cabinet)) = fitted.option.fit.get().zip(housing) else { continue };
        let fitting = context.site.fitting(&fitted);
        let none = RequiredCabinet::default();
        let asked = fit.cabinet.get().unwrap_or(&none);
        // What stands on the sides of its unit, and whose sheet asks for that by its outside, goes into no inside.
        let unasked = Slot::Absent;
        let stands_on_its_unit = fitted.option.mount() == Some(Mount::Apron) && asked.outside_width.get().is_some();
        let cutout = if stands_on_its_unit { &unasked } else { &fit.opening.width };
        let width = [&asked.inside_width, cutout];
        let depth = [&asked.inside_depth, &fit.opening.depth];
        for (name, there, asked) in [
            ("inside width", cabinet.inside_width, either(width, fitting.width.too_small_by())),
            ("inside depth", cabinet.inside_depth, either(depth, fitting.depth.too_small_by())),
            ("inside height", cabinet.inside_height, inside_height(&fitted, asked, &fitting)),
            ("outside width", cabinet.outside_width, asked.outside_width.get().copied()),
        ] {
            findings.extend(asked.and_then(|asked| measure(context, &fitted, name, there?, asked)));
        }
        findings.extend(stiles(context, &fitted, asked, &cabinet));
        findings.extend(back(&fitted, asked, &cabinet));
    }
    findings.extend(context.site.fitted().filter_map(|fitted| other_type(&fitted)));
    findings.extend(tower::check(context));
    findings.extend(context.site.options().filter_map(|one| bins::judge(context, one)));
}

/// What is asked of the cabinet; else the least that the cutout itself needs, unless the opening is
/// told to be too small for it already.
fn either([cabinet, cutout]: [&Slot<LengthRange>; 2], told: Option<Length>) -> Option<LengthRange> {
    let cutout = cutout.get().filter(|_| told.is_none()).and_then(|cutout| cutout.least).map(LengthRange::at_least);
    cabinet.get().copied().or(cutout)
}

/// What is asked of the height inside: of the cabinet; else, where the opening has no height of its own, of the niche
/// that the cabinet is. One whose front lies over its edge may stand in a higher one.
fn inside_height(fitted: &Placement<'_>, asked: &RequiredCabinet, fitting: &Fitting) -> Option<LengthRange> {
    let own = asked.inside_height.get().copied();
    let told = fitting.height.too_small_by().is_some() || !fitted.opening.height.is_absent();
    let cutout = || {
        let cutout = *fitted.option.fit.get().filter(|_| !told)?.opening.height.get()?;
        let is_single = cutout.least == cutout.most;
        let at_least = fitting.height.sheet_alone || is_single;
        if at_least { cutout.least.map(LengthRange::at_least) } else { Some(cutout) }
    };
    own.or_else(cutout)
}

fn measure(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    name: &'static str,
    is: CabinetFigure,
    asked: LengthRange,
) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let beyond = |length: Length| Some(length).filter(|length| *length > Length::ZERO);
    let short = asked.least.and_then(|least| Some((beyond(least - is.length)?, "less", least)));
    // What is no more than the cabinet's outside can be too small, never too large.
    let most = asked.most.filter(|_| is.by != FigureBasis::AtMost);
    let over = most.and_then(|most| Some((beyond(is.length - most)?, "more", most)));
    let (by, word, figure) = short.or(over)?;
    let message = phrase!(
        "the cabinet of the opening `{}` has an {name} of {}{}, {} {word} than the {} that the maker's sheet asks for",
        fitted.opening.name.value,
        name,
        if is.by == FigureBasis::AtMost { "at most " } else { "" },
        say(is.length),
        say(by),
        word,
        say(figure)
    );
    let finding = fitted.finding(severity(is), is.span, message);
    Some(if is.by == FigureBasis::Usual {
        finding.source("common practice: its outside less two sides")
    } else {
        finding
    })
}

/// What rests on a usual thickness is only asked about.
fn severity(known: CabinetFigure) -> Severity {
    if known.by == FigureBasis::Usual { Severity::Query } else { Severity::Stop }
}

/// What is left of the face frame beside the cutout.
fn stiles(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    asked: &RequiredCabinet,
    cabinet: &Housing<'_>,
) -> Option<Remark> {
    let least = *asked.stiles.get()?;
    let cutout = fitted.option.fit.get().and_then(|fit| fit.opening.width.get()?.least);
    let measured = fitted.opening.width.get().and_then(|width| width.greatest()).map(|width| width.value);
    let left = cabinet.stile_beside(measured.or(cutout))?;
    let say = |length| say(length, context.book.project.units);
    let message = || {
        phrase!(
            "the cabinet of the opening `{}` has {} of stile on each side, {} less than the {} that the maker's sheet \
             asks for",
            fitted.opening.name.value,
            say(left.length.max(Length::ZERO)),
            say(least - left.length.max(Length::ZERO)),
            say(least)
        )
    };
    (left.length < least).then(|| fitted.finding(severity(left), left.span, message()))
}

fn back(fitted: &Placement<'_>, asked: &RequiredCabinet, cabinet: &Housing<'_>) -> Option<Remark> {
    let (wanted, is) = (asked.back_panel.get()?, cabinet.back_panel.as_ref()?);
    let message = phrase!(
        "the back panel of the cabinet of the opening `{}` is {}, and the maker's sheet asks for it {}",
        fitted.opening.name.value,
        is.value,
        wanted
    );
    (*wanted != is.value).then(|| fitted.finding(Severity::Stop, is.span, message))
}

fn is_a_bowl(fitted: &Placement<'_>) -> bool {
    fitted.selection.is_any(&[Kind::Sink, Kind::Basin])
}

/// An opening that is made for one type of unit, and a unit that is made as another.
fn other_type(fitted: &Placement<'_>) -> Option<Remark> {
    let made_for = fitted.opening.made_for.spanned()?;
    let (made_as, at) = made_as(fitted.option)?;
    // A bowl that is dropped in lies on the counter with its rim.
    let wanted = if made_for.value == CutOut::DropIn && is_a_bowl(fitted) { CutOut::TopMount } else { made_for.value };
    let made_as = Some(made_as).filter(|made_as| *made_as != wanted)?;
    let message = phrase!(
        "the opening `{}` is made for {} unit, and `{}` is made as {}",
        fitted.opening.name.value,
        with_article(made_for.value),
        fitted.selection.name.value,
        made_as
    );
    let finding = fitted.finding(Severity::Stop, at, message).also(made_for.span, "the opening");
    Some(finding.remedy(
        "choose a unit of the type that the opening is made for, or have opening and counter made for this one",
    ))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn into(kind: &str, opening: &str, option: &str) -> Trial {
        Trial::of("fit/cabinet")
            .opening("niche", &format!("{{takes: {kind}, {opening}}}"))
            .selection(&format!("selection: It\nkind: {kind}\nplace: niche"), option)
    }

    /// Source: trade reports F-35 (23" where 23 1/2" is the least).
    #[test]
    fn a_cabinet_too_shallow_inside_is_told() {
        let sheet = "fit: {cabinet: {inside depth: at least 23 1/2\"}}";
        into("wall oven", "cabinet: {inside depth: 23\"}", sheet)
            .finds("the cabinet of the opening `niche` has an inside depth of 23\" (584 mm), 1/2\" (12.7 mm) less than the 23 1/2\" (597 mm) that the maker's sheet asks for")
            .weighs("stop")
            .cautions();
        into("wall oven", "cabinet: {inside depth: 23 1/2\"}", sheet).stays_silent();
    }

    /// Source: trade reports F-41 (cutout 33 7/8" to 34 7/8" in a 36" cabinet, 34 1/2" inside).
    #[test]
    fn a_cutout_that_meets_the_cabinet_s_sides_is_told() {
        let cabinet = "cabinet: {inside width: 34 1/2\", outside width: 36\"}";
        into("cooktop", cabinet, "fit: {opening: {width: 34 7/8\"}}").finds_one().weighs("stop");
        into("cooktop", cabinet, "fit: {opening: {width: 34 1/2\"}}").stays_silent();
        into("cooktop", cabinet, "fit: {opening: {width: 33 7/8\" to 34 7/8\"}}").stays_silent();
        let two = "options:\n  - {id: wide, fit: {opening: {width: 34 7/8\"}}}\n  - {id: slim}";
        into("cooktop", cabinet, two).finds_one().weighs("query");
    }

    #[test]
    fn a_hole_that_is_too_small_itself_is_told_by_the_width_alone() {
        let both = "width: 34 1/2\", cabinet: {inside width: 34 1/2\"}";
        into("cooktop", both, "fit: {opening: {width: 34 7/8\"}}").stays_silent();
    }

    /// Source: trade reports F-35 (`cut back panel allowed?`), section 6 (30" oven: cabinet about 33").
    #[test]
    fn outside_width_and_back_panel_are_held_to_the_sheet() {
        let sheet = "fit: {cabinet: {outside width: at least 33\", back panel: cut away}}";
        into("wall oven", "cabinet: {outside width: 33\", back panel: whole}", sheet).finds(
            "the back panel of the cabinet of the opening `niche` is whole, and the maker's sheet asks for it cut away",
        );
        into("wall oven", "cabinet: {outside width: 30\", back panel: cut away}", sheet).finds_one();
        into("wall oven", "cabinet: {outside width: 33\", back panel: cut away}", sheet).stays_silent();
    }

    /// The cabinet of a wall oven in the run: 30" outside, 28 1/2" inside with sides of 3/4" (common practice).
    fn held(part: &str, sheet: &str) -> Trial {
        Trial::of("fit/cabinet")
            .room(&format!("runs: {{tall wall: {{depth: 24\", parts: [{{{part}, holds: [niche]}}]}}}}"))
            .opening("niche", "{takes: wall oven}")
            .selection("selection: Oven\nkind: wall oven\nplace: niche", &format!("fit: {{{sheet}}}"))
    }

    #[test]
    fn the_part_of_a_run_that_holds_it_is_its_cabinet() {
        let sheet = "cabinet: {inside width: at least 28 1/2\"}";
        held("tall: oven, width: 30\"", sheet).stays_silent();
        held("tall: oven, width: 29 1/2\"", sheet)
            .finds("the cabinet of the opening `niche` has an inside width of 28\" (711 mm), 1/2\" (12.7 mm) less than the 28 1/2\" (724 mm) that the maker's sheet asks for")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:2:60"]);
        held("tall: oven, width: 29 1/2\"", "cabinet: {outside width: at least 30\"}").finds_one().weighs("stop");
        held("tall: oven, width: 30\"", "cabinet: {inside depth: at least 24 1/2\"}").finds_one().weighs("stop");
        held("tall: oven, width: 30\"", "cabinet: {inside depth: at most 20\"}").stays_silent();
        held("tall: oven, width: 30\"", "opening: {width: 28 1/2\"}").stays_silent();
        held("tall: oven, width: 30\"", "opening: {width: 28 5/8\"}").finds_one();
    }

    #[test]
    fn a_cabinet_selection_is_its_cabinet_too_and_thin_sides_are_said() {
        let by_selection = |width: &str| {
            held("tall: oven tower", "cabinet: {inside width: at least 28 1/2\"}")
                .selection("selection: Oven tower\nkind: cabinet", &format!("size: {{width: {width}}}"))
        };
        by_selection("30\"").stays_silent();
        by_selection("29\"").finds_one();
        let sides = |sides: &str| {
            into(
                "wall oven",
                &format!("cabinet: {{outside width: 30\", sides: {sides}}}"),
                "fit: {cabinet: {inside width: at least 28 3/4\"}}",
            )
        };
        sides("5/8\"").stays_silent();
        sides("3/4\"").finds_one().weighs("stop");
    }

    /// Source: a sheet's own figure: a face frame keeps 1 1/2" of stile beside the cutout.
    #[test]
    fn the_least_stile_of_a_face_frame_is_kept_wherever_the_cabinet_is_written() {
        let sheet = "opening: {width: 28 1/2\"}, cabinet: {stiles: 1 1/2\"}";
        let opening =
            |cabinet: &str| into("wall oven", &format!("cabinet: {{{cabinet}}}"), &format!("fit: {{{sheet}}}"));
        opening("outside width: 31 1/2\"").stays_silent();
        opening("outside width: 31\"")
            .finds("the cabinet of the opening `niche` has 1 1/4\" (31.8 mm) of stile on each side, 1/4\" (6.4 mm) less than the 1 1/2\" (38.1 mm) that the maker's sheet asks for")
            .weighs("stop");
        opening("stiles: 1\"").finds_one();
        opening("stiles: 1 1/2\"").stays_silent();
        held("tall: oven, width: 31\"", sheet).finds_one();
        held("tall: oven, width: 31 1/2\"", sheet).stays_silent();
        held("tall: oven, width: 33\", stiles: 1\"", sheet).finds_one();
    }

    #[test]
    fn an_opening_is_made_for_one_type_of_unit() {
        let range = |made_as: &str| {
            Trial::of("fit/cabinet")
                .opening("bay", "{takes: range, made for: slide-in}")
                .selection("selection: Range\nkind: range\nplace: bay", &format!("made as: {made_as}"))
        };
        range("freestanding")
            .finds("the opening `bay` is made for a slide-in unit, and `Range` is made as freestanding")
            .weighs("stop");
        range("slide-in").stays_silent();
    }

    /// Source: a sheet's own figures: a niche of 1772 mm to 1778 mm.
    #[test]
    fn the_height_inside_is_held_to_the_cutout_too() {
        let niche = |kind: &str, opening: &str, asked: &str| {
            into(kind, opening, &format!("fit: {{opening: {{height: {asked}}}}}")).metric()
        };
        let fridge = "1772 mm to 1778 mm";
        niche("integrated fridge", "cabinet: {inside height: 1790 mm}", fridge)
            .finds_one()
            .weighs("stop")
            .says("an inside height of 1790 mm")
            .says("12 mm")
            .points_at(&["rooms/kitchen/room.yaml:3:62"]);
        niche("integrated fridge", "cabinet: {inside height: 1765 mm}", fridge).finds_one();
        niche("integrated fridge", "cabinet: {inside height: 1775 mm}", fridge).stays_silent();
        niche("integrated fridge", "height: 1775 mm, cabinet: {inside height: 1790 mm}", fridge).stays_silent();
        // A front that lies over the edge hides what is left above.
        niche("wall oven", "cabinet: {inside height: 660 mm}", "711 mm").finds_one();
        niche("wall oven", "cabinet: {inside height: 800 mm}", "711 mm").stays_silent();
    }

    /// Source: arithmetic: a tower of 84", its oven from 40" up, leaves 44" for a cutout of 51 1/4".
    #[test]
    fn what_the_cabinet_leaves_above_a_sill_is_the_height_inside() {
        let oven = |opening: &str, tower: &str| {
            Trial::of("fit/cabinet")
                .room(&format!("runs: {{t: {{parts: [{{tall: oven tower, width: 33\"{tower}}}]}}}}"))
                .opening("oven", &format!("{{takes: double oven{opening}}}"))
                .opening("micro", "{takes: microwave, sill: 62\"}")
                .selection(
                    "selection: Oven\nkind: double oven\nplace: oven",
                    "fit: {opening: {height: 51 1/4\" to 51 1/2\"}}",
                )
        };
        let alone = ", height: 84\", holds: [oven]";
        oven(", sill: 40\"", alone)
            .finds("the cabinet of the opening `oven` has an inside height of at most 44\" (1118 mm), 7 1/4\" (184 mm) less than the 51 1/4\" (1302 mm) that the maker's sheet asks for")
            .points_at(&["rooms/kitchen/room.yaml:2:59"]);
        oven(", sill: 30\"", alone).stays_silent();
        oven(", sill: 12\"", ", height: 84\", holds: [oven, micro]").finds_one().says("at most 50\"");
        oven(", sill: 10\"", ", height: 84\", holds: [oven, micro]").stays_silent();
        let hood = |height: &str| {
            Trial::of("fit/cabinet")
                .room(&format!("runs: {{u: {{above floor: 66\", height: {height}, parts: [{{cabinet: hood box, width: 39\", holds: [hood]}}]}}}}"))
                .opening("hood", "{takes: hood, sill: 66\"}")
                .selection("selection: Liner\nkind: hood\nplace: hood", "fit: {opening: {height: at least 18\"}}")
        };
        hood("14\"").finds_one();
        hood("18\"").stays_silent();
    }
}
