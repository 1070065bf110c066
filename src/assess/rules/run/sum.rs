//! The parts of a run against the length that they have.

use super::widths;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::book::{Island, IslandSide, Room, Run};
use crate::finding::{Phrase, Remark, phrase};
use crate::source::Span;
use crate::units::{Length, Wrote};
use crate::vocabulary::Words;

declare! {
    /// A run is longer than its wall, or what stands in an island than the island
    ///
    /// ## What it checks
    /// The sum of a run's cabinets, fillers, panels, gaps and openings (each opening by its governing
    /// measured width), with the distance at which it starts, against the least of: the wall in the
    /// outline, the wall as measured (`walls: {A: {length: …}}`), and the clear `space` that was
    /// measured for the run. The parts in a side of an island likewise, against what its `size` and the overhangs at
    /// both ends leave of that side. A row that fills it exactly passes. One with a part of no width is not
    /// added up.
    ///
    /// ## Why it matters
    /// A wall that is drawn {6' 3"} long and built {6' 1 1/2"} takes no cabinets of {75"}: one of them goes
    /// back, and the counter waits.
    ///
    /// ## Remedy
    /// Take it out of a filler, order one cabinet narrower, or have the wall measured again, at the
    /// floor, at counter height and above, before cabinets are ordered.
    ///
    /// ## Example
    /// ```yaml
    /// outline: 75" x 96"
    /// walls: {A: {length: [73 5/8", 73 1/2", 73 5/8"]}}
    /// runs:
    ///   sink wall: {wall: A, parts: [{filler: 3"}, {cabinet: sink base, width: 36"}, {cabinet: drawers, width: 36"}]}
    /// ```
    /// The parts add up to {75"}, and {73 1/2"} is there.
    ///
    /// ## Source
    /// The book's own figures and the field measurement.
    "run/sum", Stop,
    due: CabinetsOrdered, tells: [Installer],
    judges: [Cabinet],
    sources: ["the field measurement", "the book's own figures"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(room.runs.iter().filter_map(|run| judge(context, room, run)));
        for island in &room.islands {
            findings.extend(IslandSide::ALL.into_iter().filter_map(|side| in_a_side(context, room, island, side)));
        }
    }
}

/// What stands in a side of an island, against what its counter's overhangs leave of that side.
fn in_a_side(context: &Context<'_>, room: &Room, island: &Island, side: IslandSide) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let of_room = |length| say_room(length, context.book.project.units);
    let size = island.size.spanned()?;
    let edge = island.side(side);
    let parts: Length = widths(room, &edge.parts)?.into_iter().sum();
    let (one, other) = size.value;
    let turned = island.turned.get() == Some(&true);
    let is_long = matches!(side, IslandSide::Wall | IslandSide::Room);
    let (edge_long, ends) = match (is_long, turned) {
        (true, false) | (false, true) => (one, is_long),
        (true, true) | (false, false) => (other, is_long),
    };
    let beside = if ends { [IslandSide::Left, IslandSide::Right] } else { [IslandSide::Wall, IslandSide::Room] };
    let over: Length =
        beside.into_iter().map(|side| island.side(side).overhang.get().copied().unwrap_or_default()).sum();
    let there = edge_long - over;
    let by = Some(parts - there).filter(|by| *by > Length::ZERO && !edge.parts.is_empty())?;
    let between = if over > Length::ZERO { " between its overhangs" } else { "" };
    let message = phrase!(
        "the parts at the {} of the island `{}` add up to {}, {} more than the {} of it{between}",
        side.word(),
        island.name.value,
        of_room(parts),
        say(by),
        of_room(there),
        between
    );
    let finding = Remark::stop(island.name.span, message).room(&room.folder).thing(&island.name);
    let remedy = "order a cabinet narrower, or make the island longer before cabinets and counter are ordered";
    Some(finding.also(size.span, "its size").remedy(remedy))
}

/// The length that a run has, where that is written, and what it is called.
struct There {
    length: Length,
    at: Span,
    what: Phrase,
}

fn judge(context: &Context<'_>, room: &Room, run: &Run) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let of_room = |length| say_room(length, context.book.project.units);
    let parts: Length = widths(room, &run.parts)?.into_iter().sum();
    let starts = run.starts.get().copied().unwrap_or_default();
    let space = run.space.get().and_then(|space| space.least());
    let space = space.map(|space| There { length: space.value, at: space.span, what: "space measured for it".into() });
    let there = space.into_iter().chain(wall(context, room, run, starts)).min_by_key(|there| there.length)?;
    let by = Some(parts - there.length).filter(|by| *by > Length::ZERO)?;
    let message = phrase!(
        "the parts of the run `{}` add up to {}, {} more than the {} of {}",
        run.name.value,
        of_room(parts),
        say(by),
        of_room(there.length),
        there.what
    );
    let finding = Remark::stop(run.name.span, message).room(&room.folder).thing(&run.name);
    let remedy = "take it out of a filler, order a cabinet narrower, or have the wall measured again before cabinets are ordered";
    Some(finding.also(there.at, there.what).remedy(remedy))
}

/// What is left of the wall from where the run starts.
fn wall(context: &Context<'_>, room: &Room, run: &Run, starts: Length) -> Option<There> {
    let plan = context.site.plan(room)?;
    let wall = plan.walls.get(plan.wall_named(run.wall.get()?)?)?;
    let measured = wall.measured().filter(|measured| measured.value <= wall.frame.length());
    let at = measured.map(|measured| measured.span).or_else(|| room.outline.span())?;
    let name =
        if wall.name() == wall.letter { phrase!("wall {}", Wrote(&wall.letter)) } else { phrase!("`{}`", wall.name()) };
    let how = if measured.is_some() { " as measured" } else { "" };
    let from = if starts > Length::ZERO { "the rest of " } else { "" };
    Some(There { length: wall.length() - starts, at, what: phrase!("{from}{name}{how}", from, name, how) })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn wall(measured: &str) -> Trial {
        Trial::of("run/sum").room(&format!(
            "outline: 75\" x 96\"\nwalls: {{A: {{length: {measured}}}}}\nruns:\n  sink wall: {{wall: A, parts: [{{filler: 3\"}}, {{cabinet: sink base, width: 36\"}}, {{cabinet: drawers, width: 36\"}}]}}"
        ))
    }

    /// Source: trade reports F-67 (6' 3" drawn, 6' 1 1/2" real).
    #[test]
    fn a_wall_that_was_built_shorter_than_drawn_is_told() {
        wall("[73 5/8\", 73 1/2\", 73 5/8\"]")
            .finds("the parts of the run `sink wall` add up to 6'-3\" (1905 mm), 1 1/2\" (38.1 mm) more than the 6'-1 1/2\" (1867 mm) of wall A as measured")
            .weighs("stop");
        wall("[75\", 75 1/8\", 75\"]").stays_silent();
    }

    /// An island of 96" by 42": 96" of cabinets, or 84" where the counter overhangs 12" at one end.
    #[test]
    fn what_stands_in_an_island_is_no_longer_than_the_island() {
        let island = |more: &str, side: &str, parts: &str| {
            Trial::of("run/sum")
                .room(&format!("islands: {{island: {{size: 96\" x 42\", {more}{side}: {{parts: [{parts}]}}}}}}"))
        };
        let cabinets = |last: &str| {
            format!(
                "{{cabinet: drawers, width: 36\"}}, {{cabinet: bin, width: 24\"}}, {{cabinet: pots, width: {last}}}"
            )
        };
        island("", "wall side", &cabinets("40\""))
            .finds("the parts at the wall side of the island `island` add up to 8'-4\" (2540 mm), 4\" (102 mm) more than the 8'-0\" (2438 mm) of it")
            .weighs("stop");
        island("", "room side", &cabinets("40\"")).finds_one();
        island("", "wall side", &cabinets("36\"")).stays_silent();
        island("left side: {overhang: 12\"}, ", "wall side", &cabinets("24\"")).stays_silent();
        island("left side: {overhang: 12\"}, ", "wall side", &cabinets("25\"")).finds_one();
        island("", "left side", "{cabinet: books, width: 43\"}").finds_one();
        island("turned: true, ", "left side", "{cabinet: books, width: 43\"}").stays_silent();
        island("turned: true, ", "wall side", "{cabinet: books, width: 43\"}").finds_one();
        island("", "wall side", "{cabinet: drawers, width: 96\"}, {cabinet: bin}").stays_silent();
    }

    /// Source: trade reports F-67.
    #[test]
    fn a_measured_space_counts_without_any_outline() {
        let run = |space: &str| {
            Trial::of("run/sum").room(&format!(
                "runs:\n  sink wall: {{space: {space}, parts: [{{filler: 3\"}}, {{cabinet: sink base, width: 36\"}}, {{opening: range}}]}}"
            ))
        };
        let range = "{takes: range, width: [30 1/8\", 30 1/16\"]}";
        run("[69\", 69 1/8\"]").opening("range", range).finds_one();
        run("69 1/16\"").opening("range", range).stays_silent();
    }

    #[test]
    fn what_starts_away_from_the_end_has_the_rest_of_the_wall() {
        let run = |starts: &str| {
            Trial::of("run/sum")
                .room(&format!("outline: 10' x 8'\nruns: {{run: {{wall: B, from: right, starts: {starts}, parts: [{{cabinet: drawers, width: 60\"}}]}}}}"))
        };
        run("36\"").stays_silent();
        run("37\"").finds("the parts of the run `run` add up to 5'-0\" (1524 mm), 1\" (25.4 mm) more than the 4'-11\" (1499 mm) of the rest of wall B");
    }
}
