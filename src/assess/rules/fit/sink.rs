//! A sink in its cabinet.

mod carried;
mod stack;
mod together;
mod top;
mod vanity;

use crate::assess::codes::metric;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{DetailName, Room};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::fitting::{FigureBasis, Housing};
use crate::site::{Inside, inside_width};
use crate::units::Length;
use crate::vocabulary::{Hazard, Kind, Mount};

declare! {
    /// A sink does not fit its cabinet: its sides, its clips, its apron
    ///
    /// ## What it checks
    /// The sink's or basin's width and room for its clips on both sides, against the cabinet inside: as
    /// it is written at the opening, else what the part of the run or island that holds it, or the vanity below
    /// the only basin of its room, leaves
    /// between its sides ({3/4"}, or {18 mm} where it is set out in millimetres, for each). By the maker's
    /// sheet; where that is silent, by what is usual: an undermount bowl wants {1/2"} for clips at each
    /// side, an apron its own width, one that stands on its vanity no more than that, whose top is as deep as it is, as long as it is and up
    /// to {3"} longer, and no longer than there is between two walls, and a bowl that is let in from above {1"} less than its rim.
    /// Several bowls in one cabinet need room for all of them.
    /// The bowl from front to back against the cabinet's inside depth; and, as is usual, its hole with the tap's behind it
    /// (`behind` and `to bowl` of the list of holes) and {2"} of counter before it against the counter's depth, less what
    /// stands up behind. The height of an apron against the opening left in the cabinet's front; and, for an undermount
    /// bowl, whether the reveal of its rim is said, and, below a top of laminate that has a core of board (thicker than
    /// {20 mm}), whether that is made for it. A bowl whose rim lies on the counter has a cutout that is smaller than it is,
    /// and a basin that stands on a counter has one in its room.
    ///
    /// ## Why it matters
    /// A {33"} sink does not go into a {33"} cabinet, whose inside is {31 1/2"}. An apron of {10"} wants doors that
    /// are made shorter.
    ///
    /// ## Remedy
    /// Take a wider cabinet or a narrower sink; have the front made for the apron; agree the reveal with
    /// the fabricator.
    ///
    /// ## Example
    /// ```yaml
    /// cabinet: {inside width: 31 1/2"}      # for a sink of 33"
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the cabinet's drawing; what is usual is common practice.
    "fit/sink", Stop,
    due: WithThing, tells: [Installer],
    judges: [Sink, Basin, Counter],
    sources: ["the maker's sheet", "the cabinet's drawing", "common practice"],
    caution: Some(Hazard::Weight),
    remedy: "take a wider cabinet, or a narrower sink",
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted().filter(is_sink) {
        findings.extend(sides(context, &fitted));
        findings.extend(front_to_back(context, &fitted).or_else(|| stack::judge(context, &fitted)));
        findings.extend(apron(context, &fitted));
        findings.extend(reveal(&fitted));
        findings.extend(carried::falls_through(context, &fitted));
        findings.extend(top::ask(context, &fitted));
    }
    findings.extend(context.site.options().filter_map(|one| vanity::ask(context, one)));
    findings.extend(context.site.options().filter_map(carried::stands_on_nothing));
    together::judge(context, findings);
    findings.extend(context.book.rooms.iter().filter_map(|room| vanity::top(context, room)));
    let in_vanities: Vec<Remark> = context.site.options().filter_map(|one| stack::in_a_vanity(context, one)).collect();
    let is_told = |room: &Room| in_vanities.iter().any(|told| told.room.as_deref() == Some(room.folder.as_str()));
    findings.extend(
        context.book.rooms.iter().filter(|room| !is_told(room)).filter_map(|room| vanity::shallow_top(context, room)),
    );
    findings.extend(in_vanities);
}

fn is_sink(fitted: &Placement<'_>) -> bool {
    fitted.selection.is_any(&[Kind::Sink, Kind::Basin])
}

/// Room for clips at each side of an undermount bowl where no sheet says: 1/2 in (common practice, F-51).
const CLIPS: Length = Length::from_sixty_fourths(32);
/// How far the rim of a bowl that is let in from above lies on the counter at each side (common practice).
const RIM: Length = Length::from_sixty_fourths(32);
fn sides(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let inside = inside_width(fitted.room, fitted.opening, context.book.project.units)?;
    let clips = fitted.option.fit.get().and_then(|fit| fit.clips.get()).copied();
    let width = fitted.option.size.width.get().copied();
    if let (Some(clips), Some(width)) = (clips, width) {
        return too_narrow(context, fitted, &inside, (width + clips.times(2), Severity::Stop, " with its clips"));
    }
    // What the sheet asks of the cabinet is held to it by `fit/cabinet`, wherever the cabinet is written; the
    // bowl itself must go in all the same.
    let asked = fitted.option.fit.get().and_then(|fit| fit.cabinet.get());
    let by_sheet = asked.is_some_and(|asked| asked.inside_width.get().is_some() || asked.outside_width.get().is_some());
    let as_usual = || metric::advised(CLIPS, inside.told.value, context.book.project.units);
    let clips = if by_sheet { Length::ZERO } else { as_usual() };
    usual(context, fitted, &inside, (width?, clips))
}

fn too_narrow(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    inside: &Inside<'_>,
    (needs, severity, with): (Length, Severity, &'static str),
) -> Option<Remark> {
    let there = &inside.told;
    if needs <= there.value {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let from = inside
        .from_outside
        .map_or(Phrase::default(), |outside| phrase!(" {}, which is {} wide outside", there.spot, say(outside)));
    let message = phrase!(
        "`{}`{with} needs {} inside the cabinet, {} more than the {} there are{from}",
        fitted.selection.name.value,
        with,
        say(needs),
        say(needs - there.value),
        say(there.value),
        from
    );
    Some(fitted.finding(severity, there.at, message))
}

/// What is usual for its kind, with clips of that room at each side.
fn usual(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    inside: &Inside<'_>,
    (width, clips): (Length, Length),
) -> Option<Remark> {
    let (needs, with) = match fitted.option.mount() {
        Some(Mount::Under) if clips == Length::ZERO => (width, ""),
        Some(Mount::Under) => (width + clips.times(2), " with clips as usual"),
        // Its sheet says how wide a unit it stands on, and `fit/cabinet` holds the unit to it.
        Some(Mount::Apron) if asks_for_its_outside(fitted) => return None,
        Some(Mount::Apron) => (width, ""),
        // Its sides are not said: it is let in from above at least.
        Some(Mount::DropIn) | None => (width - RIM.times(2), " below its rim"),
        Some(Mount::OnCounter | Mount::InNoCabinet) => return None,
    };
    let finding = too_narrow(context, fitted, inside, (needs, Severity::Query, with))?;
    Some(finding.source("common practice"))
}

/// Whether the sheet asks for the cabinet by its outside width alone.
fn asks_for_its_outside(fitted: &Placement<'_>) -> bool {
    let asked = fitted.option.fit.get().and_then(|fit| fit.cabinet.get());
    asked.is_some_and(|asked| asked.outside_width.get().is_some() && asked.inside_width.is_absent())
}

/// A bowl that hangs in a cabinet against the cabinet's depth.
fn front_to_back(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let deep = *fitted.option.size.depth.get()?;
    let needs = match fitted.option.mount()? {
        Mount::Under | Mount::Apron => deep,
        Mount::DropIn => deep - RIM.times(2),
        Mount::OnCounter | Mount::InNoCabinet => return None,
    };
    let inside = Housing::of(fitted.room, fitted.opening, context.book.project.units)?.inside_depth?;
    let over = Some(needs - inside.length).filter(|over| *over > Length::ZERO)?;
    let severity = if inside.by == FigureBasis::Written { Severity::Stop } else { Severity::Query };
    let message = phrase!(
        "`{}` needs {} from front to back inside the cabinet, {} more than the {} there are",
        fitted.selection.name.value,
        say(needs),
        say(over),
        say(inside.length)
    );
    Some(fitted.finding(severity, inside.span, message).remedy("take a deeper cabinet, or a sink that is less deep"))
}

fn apron(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let (apron, at) = fitted.option.length(DetailName::ApronHeight)?;
    let left = fitted.opening.apron_opening.spanned()?;
    if apron <= left.value {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "the apron of `{}` is {} high, {} more than the cabinet's front leaves for it",
        fitted.selection.name.value,
        say(apron),
        say(apron - left.value)
    );
    let finding = fitted.finding(Severity::Stop, at, message).also(left.span, "left for the apron");
    Some(finding.remedy("have the doors below made shorter, before the cabinets are ordered"))
}

fn reveal(fitted: &Placement<'_>) -> Option<Remark> {
    let (mount, at) = fitted.option.mount_and_place()?;
    let unsaid = mount == Mount::Under && fitted.option.lacks(DetailName::Reveal);
    let message =
        phrase!("nobody says whether the rim of `{}` shows, is flush, or is covered", fitted.selection.name.value);
    unsaid.then(|| {
        fitted
            .finding(Severity::Query, at, message)
            .remedy("agree it with the fabricator, and write `reveal: …`: `positive`, `flush` or `negative`")
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// What is said in words that could not be read has been told.
    #[test]
    fn a_reveal_that_cannot_be_read_is_not_asked_for_again() {
        let bowl = |reveal: &str| sink("", &format!("mount: undermount{reveal}")).of_any_yaml();
        bowl("\nreveal: zero reveal").stays_silent();
        bowl("").finds_one();
    }

    fn sink(opening: &str, option: &str) -> Trial {
        Trial::of("fit/sink")
            .opening("hole", &format!("{{takes: sink, {opening}}}"))
            .selection("selection: Sink\nkind: sink\nplace: hole", option)
    }

    /// Source: trade reports F-51: a 33" sink in a 33" box, 31 1/2" inside; a 36" box takes it.
    #[test]
    fn a_sink_as_wide_as_its_box_does_not_go_in() {
        let option = "size: {width: 33\"}\nfit: {clips: 1/2\"}";
        sink("cabinet: {inside width: 31 1/2\"}", option)
            .finds("`Sink` with its clips needs 34\" (864 mm) inside the cabinet, 2 1/2\" (64 mm) more than the 31 1/2\" (800 mm) there are")
            .weighs("stop");
        sink("cabinet: {inside width: 34 1/2\"}", option).stays_silent();
    }

    /// Source: common practice (an apron sink of 595 mm stands on the sides of a unit of 600 mm).
    #[test]
    fn a_sink_that_stands_on_its_unit_goes_into_no_inside() {
        let on = |rule: &'static str, wide: &str, sheet: &str| {
            Trial::of(rule)
                .metric()
                .room(&format!("runs: {{sink wall: {{parts: [{{cabinet: unit, width: {wide}, holds: [hole]}}]}}}}"))
                .opening("hole", "{takes: sink, width: 596 mm}")
                .selection(
                    "selection: Sink\nkind: sink\nplace: hole",
                    &format!("mount: apron front\nsize: {{width: 595 mm}}\nfit: {{opening: {{width: at least 595 mm}}{sheet}}}"),
                )
        };
        let outside = ", cabinet: {outside width: at least 600 mm}";
        for rule in ["fit/sink", "fit/cabinet"] {
            on(rule, "600 mm", outside).stays_silent();
            on(rule, "600 mm", "").finds_one();
        }
        on("fit/cabinet", "500 mm", outside).finds_one().weighs("stop");
    }

    fn held_by(part: &str, option: &str) -> Trial {
        Trial::of("fit/sink")
            .room(part)
            .opening("hole", "{takes: sink}")
            .selection("selection: Sink\nkind: sink\nplace: hole", option)
    }

    /// Source: trade reports F-51: a 33" box leaves 31 1/2" inside.
    #[test]
    fn the_part_of_a_run_or_island_that_holds_a_sink_is_its_cabinet() {
        let run = |width: &str| {
            format!("runs:\n  sink wall:\n    parts:\n    - {{cabinet: sink base, width: {width}, holds: [hole]}}")
        };
        let by_sheet = "size: {width: 33\"}\nfit: {clips: 1/2\"}";
        held_by(&run("33\""), by_sheet)
            .finds("`Sink` with its clips needs 34\" (864 mm) inside the cabinet, 2 1/2\" (64 mm) more than the 31 1/2\" (800 mm) there are at `sink base` in `sink wall`, which is 33\" (838 mm) wide outside")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:5:35"]);
        held_by(&run("36\""), by_sheet).stays_silent();
        let island = |width: &str| {
            format!(
                "islands: {{island: {{room side: {{parts: [{{cabinet: sink base, width: {width}, holds: [hole]}}]}}}}}}"
            )
        };
        held_by(&island("33\""), by_sheet).finds_one().weighs("stop");
        held_by(&island("36\""), by_sheet).stays_silent();
    }

    /// Source: trade reports F-51 (a 36" box takes a 33" sink at most); common practice.
    #[test]
    fn where_no_sheet_says_what_is_usual_is_asked() {
        let run =
            |width: &str| format!("runs: {{wall: {{parts: [{{cabinet: base, width: {width}, holds: [hole]}}]}}}}");
        for (mount, width) in [("undermount\nreveal: flush", "33\""), ("drop-in", "33\""), ("apron front", "33\"")] {
            let option = format!("size: {{width: 33\"}}\nmount: {mount}");
            held_by(&run(width), &option).finds_one().weighs("query");
            held_by(&run("36\""), &option).stays_silent();
        }
        held_by(&run("24\""), "size: {width: 33\"}\nmount: on the wall").stays_silent();
        // 600 mm leave 564 mm between sides of 18 mm.
        let metric = |wide: &str| held_by(&run("600 mm"), &format!("size: {{width: {wide}}}\nmount: apron front"));
        metric("564 mm").book("country: DE").stays_silent();
        metric("566 mm").finds_one();
    }

    /// A sheet that names too small a cabinet does not make a bowl narrower.
    #[test]
    fn a_bowl_wider_than_the_cabinet_is_told_whatever_cabinet_its_sheet_names() {
        let run = "runs: {wall: {parts: [{cabinet: base, width: 900 mm, holds: [hole]}]}}";
        let wide = |width: &str| {
            let sheet = "fit: {cabinet: {outside width: at least 900 mm}}";
            held_by(run, &format!("size: {{width: {width}}}\nmount: undermount\nreveal: flush\n{sheet}"))
        };
        wide("880 mm").finds_one().weighs("query");
        wide("860 mm").stays_silent();
    }

    /// Source: arithmetic: a bowl of 22" in a cabinet 20" deep inside.
    #[test]
    fn a_bowl_is_no_deeper_than_its_cabinet() {
        let option = "size: {depth: 22\"}\nmount: undermount\nreveal: flush";
        sink("cabinet: {inside depth: 20\"}", option)
            .finds("`Sink` needs 22\" (559 mm) from front to back inside the cabinet, 2\" (51 mm) more than the 20\" (508 mm) there are")
            .weighs("stop");
        sink("cabinet: {inside depth: 22\"}", option).stays_silent();
        let run =
            |depth: &str| format!("runs: {{wall: {{depth: {depth}, parts: [{{cabinet: base, holds: [hole]}}]}}}}");
        held_by(&run("21\""), option).finds_one().weighs("query");
        held_by(&run("24\""), option).stays_silent();
        held_by(&run("21\""), "size: {depth: 22\"}\nmount: drop-in").stays_silent();
    }

    /// Source: trade reports F-49: an apron of 9" to 10", a stock front that leaves 6" to 8".
    #[test]
    fn an_apron_higher_than_the_front_leaves_stops() {
        sink("apron opening: 8\"", "apron height: 9 1/2\"").finds_one().weighs("stop");
        sink("apron opening: 9 1/2\"", "apron height: 9 1/2\"").stays_silent();
    }

    #[test]
    fn the_reveal_of_an_undermount_bowl_is_asked_for() {
        sink("width: 33\"", "mount: undermount").finds_one().weighs("query");
        sink("width: 33\"", "mount: undermount\nreveal: flush").stays_silent();
    }
}
