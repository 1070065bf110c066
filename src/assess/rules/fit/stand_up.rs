//! A tall cabinet or appliance that is stood up in its room.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, about, say, say_room};
use crate::book::{Ceiling, PartIs, Room, Run};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::overhead;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Hazard, Kind, Trade};

declare! {
    /// A tall cabinet or appliance can't be stood up under the ceiling
    ///
    /// ## What it checks
    /// The diagonal of the side (height and depth) of a cabinet, of a `tall` part of a run, and of an
    /// appliance, against the ceiling above the floor that will be there, where it can be stood up: under a
    /// slope, at its own width from the high side. What goes up there alone, if at all, is asked about; so is
    /// a part whose depth nobody says ({24"} is usual), an appliance, which may come in upright, and furniture that holds
    /// things, which may come in parts. Exactly, by
    /// squares: no root is taken.
    ///
    /// ## Why it matters
    /// A cabinet of {95 1/2"} fits under a ceiling of {96"} and can't be tilted up under it.
    ///
    /// ## Remedy
    /// Order it in two parts, or without its base, or a lower one.
    ///
    /// ## Example
    /// ```yaml
    /// kind: cabinet
    /// size: {height: 94", depth: 24"}        # 97" across its side
    /// ```
    ///
    /// ## Source
    /// Pythagoras; trade practice.
    "fit/stand-up", Stop,
    due: GoodsReleased, tells: [Installer],
    judges: stands,
    sources: ["geometry", "common practice"],
    caution: Some(Hazard::Weight),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut told = Vec::new();
    for (room, selection, option) in context.site.options() {
        let Some(kind) = selection.kind.get() else { continue };
        // Furniture may come in parts.
        let upright = kind.trade() == Trade::Appliance || *kind == Kind::StorageFurniture;
        let stands = upright || *kind == Kind::Cabinet;
        let height = option.size.height.spanned().filter(|_| stands);
        let (Some(height), Some(deep)) = (height, option.size.depth.get()) else { continue };
        let Some(high) = height.value.least.or(height.value.most) else { continue };
        // What is higher than its ceiling is told by `run/ceiling`.
        if is_too_high(room, high) {
            continue;
        }
        let body = Body { high, deep: *deep, wide: option.size.width.get().copied(), asks_only: upright };
        let Some((severity, message)) = judged(context, room, Phrase::name(&selection.name.value), &body) else {
            continue;
        };
        let finding = about(room, selection, option, severity, height.span, message);
        findings.push(finding.remedy(remedy(severity, upright)));
        told.push((room.folder.as_str(), high));
    }
    for room in &context.book.rooms {
        for run in &room.runs {
            // A cabinet that is chosen for it, and so high, is told already.
            let is_told = |high: Length| told.contains(&(room.folder.as_str(), high)) || is_too_high(room, high);
            findings.extend(tall_parts(run, &is_told).iter().filter_map(|tall| of_run(context, room, run, tall)));
        }
    }
}

/// The tall parts of a run that are of one height and depth: what is wrong with one is wrong with all.
struct TallParts<'a> {
    names: Vec<&'a str>,
    body: Body,
    at: Span,
}

fn tall_parts<'a>(run: &'a Run, is_told: &dyn Fn(Length) -> bool) -> Vec<TallParts<'a>> {
    let mut all: Vec<TallParts<'a>> = Vec::new();
    for part in &run.parts {
        let height = part.height.spanned().or_else(|| run.height.spanned());
        let (PartIs::Tall(name), Some(height)) = (&part.is, height) else { continue };
        if is_told(height.value) {
            continue;
        }
        let deep = part.depth.get().or_else(|| run.depth.get()).copied();
        let (deep, asks_only) = (deep.unwrap_or(USUAL_DEPTH), deep.is_none());
        let body = Body { high: height.value, deep, wide: part.width.get().copied(), asks_only };
        let same = |known: &&mut TallParts<'a>| {
            (known.body.high, known.body.deep, known.body.asks_only) == (body.high, deep, asks_only)
        };
        match all.iter_mut().find(same) {
            Some(known) => {
                known.names.push(name);
                // The widest of them has the least ceiling where it is stood up.
                known.body.wide = known.body.wide.max(body.wide);
            }
            None => all.push(TallParts { names: vec![name], body, at: height.span }),
        }
    }
    all
}

fn of_run(context: &Context<'_>, room: &Room, run: &Run, tall: &TallParts<'_>) -> Option<Remark> {
    let each = if tall.names.len() > 1 { "each of " } else { "" };
    let names = Phrase::series(tall.names.iter().map(|name| Phrase::name(name)));
    let called = phrase!("{each}{names} of the run `{}`", each, names, run.name.value);
    let (severity, message) = judged(context, room, called, &tall.body)?;
    let finding = Remark::new(severity, tall.at, message).room(&room.folder).thing(&run.name);
    Some(finding.remedy(remedy(severity, false)))
}

fn is_too_high(room: &Room, high: Length) -> bool {
    let most = match room.ceiling.get() {
        Some(Ceiling::Level(height) | Ceiling::Sloped { high: height, .. }) => *height,
        None => return false,
    };
    high > most
}

/// How deep a tall part is where nobody says (common practice).
const USUAL_DEPTH: Length = Length::from_inches(24);

/// What is to be stood up.
struct Body {
    high: Length,
    deep: Length,
    wide: Option<Length>,
    /// Whether it need not be tilted, or not all of it is known.
    asks_only: bool,
}

/// What is wrong with standing it up, and how much that weighs; nothing where it goes freely.
fn judged(context: &Context<'_>, room: &Room, name: Phrase, body: &Body) -> Option<(Severity, Phrase)> {
    let say = |length| say(length, context.book.project.units);
    let of_room = |length| say_room(length, context.book.project.units);
    let of = phrase!("{name}, {} high and {} deep,", name, of_room(body.high), say(body.deep));
    Some(match where_it_stands_up(context, room, (body.high, body.deep), body.wide)? {
        StandsUp::Freely => return None,
        StandsUp::Nowhere(ceiling) => (
            if body.asks_only { Severity::Query } else { Severity::Stop },
            phrase!("{of} is longer across its side than the {} under the ceiling", of, of_room(ceiling)),
        ),
        StandsUp::AtTheHighSide(ceiling) => (
            Severity::Query,
            phrase!("{of} stands up at the high side alone, where the ceiling is {}", of, of_room(ceiling)),
        ),
    })
}

fn remedy(severity: Severity, upright: bool) -> &'static str {
    match (severity, upright) {
        (_, true) => "ask whether it can come in upright all the way, or choose a lower one",
        (Severity::Stop, false) => "order it in two parts or without its base, or choose a lower one",
        (_, false) => "plan where it is stood up, and have the ceiling measured there; or order it in two parts",
    }
}

/// Where a cabinet can be stood up.
enum StandsUp {
    /// With room to spare.
    Freely,
    /// Close to the high side, if at all: that is so high.
    AtTheHighSide(Length),
    /// Nowhere in the room, which is at most so high.
    Nowhere(Length),
}

/// A cabinet is stood up where the ceiling is high, and then moved to its place: the diagonal of its side
/// is held against the ceiling at its own width from the high side. Exactly, by squares.
fn where_it_stands_up(
    context: &Context<'_>,
    room: &Room,
    (high, deep): (Length, Length),
    wide: Option<Length>,
) -> Option<StandsUp> {
    let square = |length: Length| i128::from(length.nanometres()).pow(2);
    let goes_under = |ceiling: Length| square(high) + square(deep) <= square(ceiling);
    let (low, top) = match room.ceiling.get()? {
        Ceiling::Level(height) => (*height, *height),
        Ceiling::Sloped { low, high, .. } => (*low, *high),
    };
    if goes_under(low) {
        return Some(StandsUp::Freely);
    }
    if !goes_under(top) {
        return Some(StandsUp::Nowhere(top));
    }
    let there = overhead::run(context.site.plan(room), room).and_then(|run| {
        let from_low_side = run - wide?.max(deep);
        overhead::height_at(low, top, run, from_low_side).filter(|_| !from_low_side.is_negative())
    });
    Some(if there.is_some_and(goes_under) { StandsUp::Freely } else { StandsUp::AtTheHighSide(top) })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn pantry(height: &str, ceiling: &str) -> Trial {
        Trial::of("fit/stand-up")
            .room(&format!("ceiling: {ceiling}"))
            .selection("selection: Pantry\nkind: cabinet", &format!("size: {{height: {height}, depth: 28\"}}"))
    }

    /// Source: trade reports section 7 (diagonal less than the ceiling); the triangle of 28, 96, 100 has whole sides.
    #[test]
    fn a_pantry_longer_across_its_side_than_the_ceiling_is_high_stops() {
        pantry("96\"", "99 15/16\"").finds_one().weighs("stop").cautions();
        pantry("96\"", "100\"").stays_silent();
    }

    /// Source: geometry; the triangle of 28, 96, 100 has whole sides. Wherever a tall thing is written.
    #[test]
    fn a_tall_part_of_a_run_and_a_tall_appliance_are_stood_up_too() {
        let run = |ceiling: &str, depth: &str| {
            Trial::of("fit/stand-up").room(&format!(
                "ceiling: {ceiling}\nruns: {{end: {{{depth}parts: [{{cabinet: pots, width: 30\"}}, {{tall: larder, width: 24\", height: 96\"}}]}}}}"
            ))
        };
        run("99 15/16\"", "depth: 28\", ")
            .finds("`larder` of the run `end`, 8'-0\" (2438 mm) high and 28\" (711 mm) deep, is longer across its side than the 8'-3 15/16\" (2538 mm) under the ceiling")
            .weighs("stop")
            .cautions();
        run("100\"", "depth: 28\", ").stays_silent();
        run("{low: 60\", high: 99\"}", "depth: 28\", ").finds_one().weighs("stop");
        // Nobody says how deep: 24" is usual, 98.95" across, and only asked about.
        run("98\"", "").finds_one().weighs("query");
        run("99\"", "").stays_silent();
        let chosen = run("99\"", "depth: 28\", ")
            .selection("selection: Larder\nkind: cabinet", "size: {height: 96\", depth: 28\"}");
        chosen.finds_one();
        let fridge = |ceiling: &str| {
            Trial::of("fit/stand-up")
                .room(&format!("ceiling: {ceiling}"))
                .selection("selection: Column\nkind: refrigerator", "size: {height: 84\", depth: 35\", width: 30\"}")
        };
        // 35, 84, 91.
        fridge("90 15/16\"").finds_one().weighs("query").cautions();
        fridge("91\"").stays_silent();
    }

    /// What is higher than the ceiling is told by `run/ceiling` alone, and what is of one height once.
    #[test]
    fn three_of_one_height_are_told_once_and_what_is_too_high_elsewhere() {
        let run = |rule: &'static str, parts: &str| {
            Trial::of(rule).room(&format!("ceiling: 88\"\nruns: {{end: {{depth: 24\", parts: [{parts}]}}}}"))
        };
        let tall = |name: &str, height: &str| format!("{{tall: {name}, width: 24\", height: {height}}}");
        let row = |height: &str| [tall("brooms", height), tall("larder", height), tall("ovens", height)].join(", ");
        run("fit/stand-up", &row("86\"")).finds("each of `brooms`, `larder` and `ovens` of the run `end`, 7'-2\" (2184 mm) high and 24\" (610 mm) deep, is longer across its side than the 7'-4\" (2235 mm) under the ceiling");
        run("fit/stand-up", &row("84 1/2\"")).stays_silent();
        run("fit/stand-up", &row("90\"")).stays_silent();
        run("run/ceiling", &row("90\"")).finds("each of `brooms`, `larder` and `ovens` reaches 7'-6\" (2286 mm) above the finished floor, 2\" (51 mm) more than the 7'-4\" (2235 mm) of the ceiling over it");
        run("run/ceiling", &row("86\"")).stays_silent();
        Trial::of("fit/stand-up")
            .room("ceiling: 88\"")
            .selection("selection: Press\nkind: cabinet", "size: {height: 90\", depth: 24\"}")
            .stays_silent();
    }

    /// Geometry: from 60" to 132" over 144" the ceiling is 120" high at 24" from the high side, and 101" at 62".
    /// Where the cabinet stands afterwards is judged by `run/ceiling`.
    #[test]
    fn under_a_slope_it_is_stood_up_where_the_ceiling_is_high() {
        let under = |ceiling: &str, width: &str| {
            Trial::of("fit/stand-up").room(&format!("outline: 16' x 12'\nceiling: {ceiling}")).selection(
                "selection: Pantry\nkind: cabinet",
                &format!("size: {{height: 96\", depth: 28\", width: {width}}}"),
            )
        };
        under("{low: 60\", high: 132\", low at: A}", "24\"").stays_silent();
        under("{low: 60\", high: 132\", rises along: width}", "24\"").stays_silent();
        under("{low: 60\", high: 99\", low at: A}", "24\"").finds_one().weighs("stop");
        under("{low: 60\", high: 104\", low at: A}", "24\"")
            .finds("`Pantry`, 8'-0\" (2438 mm) high and 28\" (711 mm) deep, stands up at the high side alone, where the ceiling is 8'-8\" (2642 mm)")
            .weighs("query");
        pantry("96\"", "{low: 99\", high: 110\"}").finds_one().weighs("query");
        pantry("96\"", "{low: 100\", high: 110\"}").stays_silent();
    }
}
