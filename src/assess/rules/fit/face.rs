//! The front or flange against the cutout that it covers.

mod through;
mod trims;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{Plainly, ProductOption, Readings, Slot};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{self, Housing, Side};
use crate::site::plan::settled;
use crate::source::Spanned;
use crate::units::{Length, LengthRange};
use crate::vocabulary::{Mention, Trait};

declare! {
    /// The front does not cover the edge of its cutout, or has no room beside it
    ///
    /// ## What it checks
    /// The greatest reading of the cutout against the front less twice the overlap that the sheet
    /// asks for: `cutout ≤ front − 2 × overlap`, in width and in height. And the front's width (the
    /// thing's own, where its kind lies over the hole and the sheet tells no other) against the cabinet's outside, or, where that is not written, against a wall beside the
    /// cutout; with the `gap` to the fronts around it that its sheet asks for. And fronts one over the
    /// other in one cabinet of a run, with the gaps between them, against its height; and the trims of two, with what each
    /// must cover of the edge, against what is left between their cutouts. And the joiner's panel
    /// before a thing that stands between cabinets, against its opening. A figure that is met exactly passes.
    /// What lies in a counter on its own rim, a cooktop or a drop-in bowl, is asked about where it is
    /// narrower or less deep than its cutout: it would fall through.
    ///
    /// ## Why it matters
    /// The front of the old oven was measured instead of the hole, and the new flange shows a slot.
    ///
    /// ## Remedy
    /// Measure the hole itself; then have the cutout made smaller or order the maker's wider trim.
    ///
    /// ## Example
    /// ```yaml
    /// openings:
    ///   oven: {takes: wall oven, width: 29 1/2"}
    /// ```
    /// A front {30"} wide that must cover {3/4"} on each side covers a cutout of {28 1/2"} at most.
    ///
    /// ## Source
    /// The maker's own sheet and the field measurement.
    "fit/face", Stop,
    due: WithThing, tells: [Installer],
    judges: [WallOven, Microwave, WarmingDrawer, Cooktop, Sink, Basin, Refrigerator, PanelRefrigerator, Dishwasher, PanelDishwasher],
    sources: ["the maker's sheet", "the field measurement"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        findings.extend(over_one_another(context, &fitted));
        findings.extend(trims::meet(context, &fitted));
        findings.extend(through::falls(context, &fitted));
        findings.extend(own_front(context, &fitted).and_then(|front| has_room(context, &fitted, &front)));
        findings.extend(panel(context, &fitted));
        let Some(face) = fitted.option.fit.get().and_then(|fit| fit.face.get()) else { continue };
        let overlap = face.overlap.get().copied().unwrap_or(Length::ZERO);
        let (hole, asked) = (fitted.opening, fitted.option.fit.get().map(|fit| &fit.opening));
        let cover = |front: &Slot<Length>, cutout: &Slot<Readings>, asked: Option<&Slot<LengthRange>>, word| {
            // A sheet that asks for no overlap and lets the hole be so large means a front within it.
            let most = asked.filter(|_| face.overlap.is_absent()).and_then(|asked| asked.get()?.most);
            let is_meant = cutout.get()?.0.iter().all(|reading| most.is_some_and(|most| reading.value <= most));
            if is_meant { None } else { covers(context, &fitted, front.get()?, cutout, (overlap, word)) }
        };
        findings.extend(cover(&face.width, &hole.width, asked.map(|asked| &asked.width), "wide"));
        findings.extend(cover(&face.height, &hole.height, asked.map(|asked| &asked.height), "high"));
        findings.extend(face.width.spanned().and_then(|front| has_room(context, &fitted, front)));
        findings.extend(face.width.spanned().and_then(|front| before_a_light(context, &fitted, front)));
    }
}

/// The thing's own width, where it is that of a front that lies over the hole in a cabinet and the
/// sheet tells no other front.
fn own_front(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Spanned<Length>> {
    let told = fitted.option.fit.get().is_some_and(|fit| fit.face.get().is_some());
    let set = context.site.fitting(fitted);
    let in_a_cabinet = fitted.opening.takes.get().is_some_and(|kind| !kind.is(Trait::DropsIn));
    let front = set.front.width.filter(|_| !told && in_a_cabinet && set.laps().width.is_some())?;
    Some(Spanned::new(front, fitted.option.size.width.span()?))
}

fn covers(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    front: &Length,
    cutout: &Slot<Readings>,
    (overlap, word): (Length, &'static str),
) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let largest = cutout.get()?.0.iter().max_by_key(|reading| reading.value)?;
    let most = *front - overlap.times(2);
    let excess = Some(largest.value - most).filter(|excess| *excess > Length::ZERO)?;
    let message = phrase!(
        "the cutout `{}` is {} {word}, {} more than the {} that a front of {} covers by {} on each side",
        fitted.opening.name.value,
        say(largest.value),
        word,
        say(excess),
        say(most),
        say(*front),
        say(overlap)
    );
    let finding = fitted.finding(Severity::Stop, largest.span, message);
    Some(finding.remedy(
        "make sure that the hole was measured and not the old front; then have it made smaller, or order wider trim",
    ))
}

/// The front against the cabinet's outside, or against a wall right beside the cutout.
fn has_room(context: &Context<'_>, fitted: &Placement<'_>, front: &Spanned<Length>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let housing = Housing::of(fitted.room, fitted.opening, context.book.project.units);
    let outside = housing.and_then(|cabinet| cabinet.outside_width).map(|outside| outside.length);
    let (room, what) = match outside {
        Some(outside) => (outside, Phrase::from("its cabinet is over all")),
        None => [Side::Left, Side::Right]
            .into_iter()
            .filter_map(|side| up_to_the_wall(fitted, side))
            .min_by_key(|(leaves, _)| *leaves)?,
    };
    let gap = gap(fitted);
    let excess = Some(front.value + gap.times(2) - room).filter(|excess| *excess > Length::ZERO)?;
    let with = if gap > Length::ZERO { phrase!(" with a gap of {} on each side", say(gap)) } else { Phrase::default() };
    let message = phrase!(
        "the front in the opening `{}` is {} wide{with}, {} more than {what}: {}",
        fitted.opening.name.value,
        say(front.value),
        with,
        say(excess),
        what,
        say(room)
    );
    let finding = fitted.finding(Severity::Stop, front.span, message);
    Some(finding.remedy("choose a narrower front, or have the cabinet made wider"))
}

/// A front that reaches past its cutout, and a light right beside that.
fn before_a_light(context: &Context<'_>, fitted: &Placement<'_>, front: &Spanned<Length>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let past = (front.value - fitted.opening.governing_width()?).half();
    let near = [Side::Left, Side::Right].into_iter().find_map(|side| {
        let said = side.of(fitted.opening).spanned().filter(|said| Mention::Light.is_in(&said.what))?;
        let gap = said.gap.get().copied().filter(|gap| *gap < past)?;
        Some((said, gap))
    });
    let (said, gap) = near?;
    let message = phrase!(
        "the front in the opening `{}` reaches {} past it, and `{}` is {} from it",
        fitted.opening.name.value,
        say(past),
        said.what,
        say(gap)
    );
    let finding = fitted.finding(Severity::Query, said.span, message).also(front.span, "the front");
    Some(finding.remedy("move the light, before its box is set"))
}

/// The gap that the front must have to those around it, by the sheet.
fn gap(fitted: &Placement<'_>) -> Length {
    let face = fitted.option.fit.get().and_then(|fit| fit.face.get());
    face.and_then(|face| face.gap.get().copied()).unwrap_or_default()
}

/// The joiner's panel before a thing that stands between cabinets: with the gaps that its sheet asks for, it is
/// no wider than the opening.
fn panel(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let panel = fitting::panel(fitted.room, fitted.opening, fitted.option)?;
    let panel = panel.width.spanned()?;
    if Housing::of(fitted.room, fitted.opening, context.book.project.units).is_some() {
        return None;
    }
    let opening = fitted.opening.governing_width()?;
    let gap = gap(fitted);
    let excess = Some(panel.value + gap.times(2) - opening).filter(|excess| *excess > Length::ZERO)?;
    let (severity, with) = match gap {
        Length::ZERO => (Severity::Query, Phrase::default()),
        gap => (Severity::Stop, phrase!(" with a gap of {} on each side", say(gap))),
    };
    let message = phrase!(
        "the panel of `{}` is {} wide{with}, {} more than the opening `{}`: {}",
        fitted.selection.name.value,
        say(panel.value),
        with,
        say(excess),
        fitted.opening.name.value,
        say(opening)
    );
    let finding = fitted.finding(severity, panel.span, message);
    let finding = finding.remedy("draw a narrower panel, or show that the fronts beside it leave it room");
    Some(if severity == Severity::Query { finding.source("common practice: a front leaves a gap") } else { finding })
}

/// The height of the front as its sheet gives it, else its own.
fn front_height(option: &ProductOption) -> Option<Length> {
    let face = option.fit.get().and_then(|fit| fit.face.get());
    let own = || option.size.height.get().and_then(|height| height.least.or(height.most));
    face.and_then(|face| face.height.get().copied()).or_else(own)
}

/// Fronts one over the other in one cabinet, with the gaps between them, against its height.
fn over_one_another(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let housing = Housing::of(fitted.room, fitted.opening, context.book.project.units)?;
    let cabinet = housing.part?.part;
    let height = cabinet.height.spanned()?;
    // What lies in the counter over them shows no front.
    let is_front = |name: &str| {
        let opening = fitted.room.opening(name);
        opening.is_some_and(|opening| !opening.takes_one(Trait::CutIntoCounter))
    };
    // SourcedFigure once, of the last that is written.
    let fronts: Vec<_> = cabinet.holds.iter().filter(|held| is_front(&held.value)).collect();
    fronts.last().filter(|last| fronts.len() > 1 && last.value == fitted.opening.name.value)?;
    let others = housing.others(fitted.opening).filter(|other| is_front(&other.value)).map(|other| {
        let opening = fitted.room.opening(&other.value)?;
        front_height(settled(fitted.room, opening)?)
    });
    let others: Option<Vec<Length>> = others.collect();
    let others = others?;
    let gaps = gap(fitted).times(i64::try_from(others.len()).ok()?);
    let needs = others.into_iter().sum::<Length>() + front_height(fitted.option)? + gaps;
    let message = phrase!(
        "the fronts in the cabinet `{}` are {} high with the gaps between them, {} more than it is: {}",
        cabinet.is.word(),
        say(needs),
        say(needs - height.value),
        say(height.value)
    );
    (needs > height.value).then(|| {
        let finding = fitted.finding(Severity::Stop, height.span, message);
        finding.remedy("have the cabinet made higher, or choose lower ones")
    })
}

/// The widest front, centred on the cutout, that a wall with a gap of its own lets in.
fn up_to_the_wall(fitted: &Placement<'_>, side: Side) -> Option<(Length, Phrase)> {
    let neighbour = side.of(fitted.opening).get()?;
    let gap = neighbour.gap.get().filter(|_| neighbour.plainly() == Some(Plainly::Wall))?;
    let cutout = fitted.opening.governing_width()?;
    Some((cutout + gap.times(2), phrase!("the wall to the {} leaves it", side.word())))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: the niche of 600 mm is made for fronts of 595 mm, which stand within it.
    #[test]
    fn a_sheet_that_lets_the_hole_be_larger_than_its_front_means_it() {
        let oven = |sheet: &str| {
            Trial::of("fit/face").opening("niche", "{takes: wall oven, width: 560 mm, height: 600 mm}").selection(
                "selection: Oven\nkind: wall oven\nplace: niche",
                &format!("fit: {{face: {{height: 595 mm}}, opening: {{height: {sheet}}}}}"),
            )
        };
        oven("585 mm to 600 mm").stays_silent();
        oven("585 mm to 595 mm").finds_one();
    }

    const FRONT: &str = "fit: {face: {width: 30\", height: 29\", overlap: 3/4\"}}";

    fn oven(opening: &str, option: &str) -> Trial {
        Trial::of("fit/face")
            .opening("oven", &format!("{{takes: wall oven, {opening}}}"))
            .selection("selection: Oven\nkind: wall oven\nplace: oven", option)
    }

    /// Source: trade reports F-37 (a front is 1" to 1 1/2" wider than the body; `cutout ≤ trim − 2 × overlap`)
    /// and section 6 (overlap about 3/4" on each side; cutout 28 1/2").
    #[test]
    fn a_cutout_as_wide_as_the_old_front_is_told() {
        oven("width: 29 1/2\"", FRONT)
            .finds("the cutout `oven` is 29 1/2\" (749 mm) wide, 1\" (25.4 mm) more than the 28 1/2\" (724 mm) that a front of 30\" (762 mm) covers by 3/4\" (19 mm) on each side")
            .weighs("stop");
        oven("width: 28 1/2\", height: 27 1/2\"", FRONT).stays_silent();
        oven("height: 27 5/8\"", FRONT).finds_one();
    }

    #[test]
    fn the_widest_point_of_the_cutout_must_be_covered() {
        oven("width: [28 1/2\", 28 1/2\", 28 33/64\"]", FRONT).finds_one();
    }

    #[test]
    fn while_the_client_still_chooses_an_uncovered_edge_is_a_query() {
        oven("width: 29 1/2\"", "options:\n  - {id: slim, fit: {face: {width: 30\", overlap: 3/4\"}}}\n  - {id: bare}")
            .finds_one()
            .weighs("query");
    }

    #[test]
    fn a_front_wider_than_its_cabinet_or_cut_off_by_a_wall_is_told() {
        oven("cabinet: {outside width: 29 7/8\"}", FRONT).finds_one();
        oven("cabinet: {outside width: 30\"}", FRONT).stays_silent();
        oven("width: 28 1/2\", right: {what: wall, gap: 5/8\"}", FRONT).finds_one();
        oven("width: 28 1/2\", right: {what: wall, gap: 3/4\"}", FRONT).stays_silent();
        let own = "size: {width: 29 3/4\"}\nfit: {opening: {width: 28 1/2\"}}";
        oven("width: 28 1/2\", cabinet: {outside width: 29 1/2\"}", own).finds_one();
        oven("width: 28 1/2\", cabinet: {outside width: 29 3/4\"}", own).stays_silent();
    }

    #[test]
    fn a_front_keeps_the_gap_that_its_sheet_asks_for() {
        let front = "fit: {face: {width: 29 3/4\", gap: 1/8\"}}";
        oven("cabinet: {outside width: 30\"}", front).stays_silent();
        oven("cabinet: {outside width: 29 7/8\"}", front).finds("the front in the opening `oven` is 29 3/4\" (756 mm) wide with a gap of 1/8\" (3.2 mm) on each side, 1/8\" (3.2 mm) more than its cabinet is over all: 29 7/8\" (759 mm)");
    }

    /// Source: a sheet's own figures: fronts of 28 1/2" and 17 1/2" with 1/8" between them want 46 1/8".
    #[test]
    fn two_fronts_in_one_cabinet_share_its_height() {
        let tower = |height: &str| {
            Trial::of("fit/face")
                .room(&format!("runs: {{tall wall: {{parts: [{{tall: ovens, width: 30\", height: {height}, holds: [upper, oven]}}]}}}}"))
                .opening("upper", "{takes: microwave}")
                .selection("selection: Microwave\nkind: microwave\nplace: upper", "fit: {face: {height: 17 1/2\"}}")
                .opening("oven", "{takes: wall oven}")
                .selection("selection: Oven\nkind: wall oven\nplace: oven", "fit: {face: {height: 28 1/2\", gap: 1/8\"}}")
        };
        tower("46 1/8\"").stays_silent();
        tower("46\"").finds_one().weighs("stop");
        // A cooktop over an oven is no front.
        Trial::of("fit/face")
            .room("runs: {hob wall: {parts: [{cabinet: base, width: 36\", height: 34 1/2\", holds: [hob, oven]}]}}")
            .opening("hob", "{takes: cooktop}")
            .selection("selection: Cooktop\nkind: cooktop\nplace: hob", "size: {height: 7\"}")
            .opening("oven", "{takes: wall oven}")
            .selection("selection: Oven\nkind: wall oven\nplace: oven", "fit: {face: {height: 28 1/2\"}}")
            .stays_silent();
    }

    /// Source: arithmetic: a front of 25 1/2" over a hole of 24 1/2" reaches 1/2" past it at each side.
    #[test]
    fn a_light_stands_clear_of_the_front_beside_it() {
        let mirror = |gap: &str| {
            Trial::of("fit/face")
                .opening(
                    "mirror",
                    &format!("{{takes: mirror cabinet, width: 24 1/2\", left: {{what: wall light, gap: {gap}}}}}"),
                )
                .selection("selection: Mirror\nkind: mirror cabinet\nplace: mirror", "fit: {face: {width: 25 1/2\"}}")
        };
        mirror("0\"")
            .finds("the front in the opening `mirror` reaches 1/2\" (12.7 mm) past it, and `wall light` is 0\" (0 mm) from it")
            .weighs("query");
        mirror("1/2\"").stays_silent();
        mirror("3\"").stays_silent();
    }
}
