//! A plan that cannot be as it is written.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::plan::{Plan, PlanFault, Wrong};
use crate::units::{Length, Wrote};

declare! {
    /// A room's plan cannot be as it is written
    ///
    /// ## What it checks
    /// The outline: at least three corners, no wall without length, no wall that crosses another.
    /// Everything set out from a wall: the wall is there, and the thing lies within it. No two doors or
    /// windows are in one place of a wall. Islands lie inside the room, and no opening is set out twice. (A run
    /// that is longer than its wall has a rule of its own, `run/sum`, and so have bodies that stand in one
    /// another's place, `fit/clash`.)
    ///
    /// ## Why it matters
    /// Aisles, landings and swings are computed from the plan: from a wrong one they come out wrong.
    ///
    /// ## Remedy
    /// Correct the figure, or the wall that the thing is set out from. Distances along a wall are taken
    /// from its left end, seen from inside the room.
    ///
    /// ## Example
    /// ```yaml
    /// outline: 10' x 8'
    /// doors:
    ///   hall door: {wall: B, at: 80", width: 32"}
    /// ```
    /// Wall B is {8'} long, and the door would reach {16"} past its end.
    ///
    /// ## Source
    /// The book's own figures.
    "source/geometry", Stop,
    due: AtOnce, tells: [],
    sources: ["the book's own figures"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for plan in context.site.plans() {
        // Bodies in one another's place are told by `fit/clash`: nothing is wrong with the file.
        let of_the_file = plan.faults.iter().filter(|fault| !fault.is_of_the_work());
        findings.extend(of_the_file.map(|fault| told(context, plan, fault)));
    }
}

fn told(context: &Context<'_>, plan: &Plan<'_>, fault: &PlanFault) -> Remark {
    let (message, remedy) = words(context, fault);
    let finding = Remark::stop(fault.span, message).remedy(remedy).room(&plan.room.folder);
    let finding = match &fault.item {
        Some(item) => finding.part(item),
        None => finding,
    };
    match (fault.also, &fault.wrong) {
        (Some(also), Wrong::Overlaps { other, .. }) => finding.also(also, phrase!("`{other}`", other)),
        (Some(also), _) => finding.also(also, "the first place"),
        (None, _) => finding,
    }
}

fn words(context: &Context<'_>, fault: &PlanFault) -> (Phrase, Phrase) {
    let say = |length| say(length, context.book.project.units);
    let item = fault.item.as_deref().unwrap_or("the outline");
    match &fault.wrong {
        Wrong::FewCorners(count) => (
            phrase!("the outline has {count} corner{}", count, if *count == 1 { "" } else { "s" }),
            "write at least three corners, or length and width: `… x …`".into(),
        ),
        Wrong::ManyCorners(count) => {
            (phrase!("the outline has {count} corners", count), "write the corners of the room's walls alone".into())
        }
        Wrong::NoLength(wall) => (
            phrase!("wall {wall} begins and ends at one corner", Wrote(wall)),
            "leave out the corner that is written twice".into(),
        ),
        Wrong::Crosses(one, other) => (
            phrase!("wall {one} and wall {other} of the outline cross", Wrote(one), Wrote(other)),
            "write the corners in order, going round the room once".into(),
        ),
        Wrong::UnknownWall(wall, known) => (
            phrase!("the outline has no wall `{wall}`", wall),
            phrase!(
                "its walls are {}; give one of them that name, or write its letter",
                Phrase::joined(known.iter().map(|name| Wrote(name)), ", ")
            ),
        ),
        Wrong::NoOutline(wall) => (
            phrase!("`{item}` is set out from wall `{wall}`, and the room has no outline", item, wall),
            "write the room's `outline`: length and width, or its corners".into(),
        ),
        Wrong::Outside { wall, by, long } => (
            past_the_end(context, item, wall, (*by, *long)),
            "correct where it stands or how wide it is, or the wall's length in the outline".into(),
        ),
        Wrong::Overlaps { other, by } => (
            phrase!("`{item}` is in the wall where `{other}` is, by {} along it", item, other, say(*by)),
            "correct where one of them is, or its size".into(),
        ),
        Wrong::Clashes { other, .. } | Wrong::Closes { door: other, .. } => {
            (phrase!("`{item}` stands where `{other}` is", item, other), "move one of them, or correct its size".into())
        }
        Wrong::OutOfRoom => (
            phrase!("`{item}` reaches out of the room", item),
            "correct its `at`, `away` or `size`, or the outline".into(),
        ),
        Wrong::Twice => (phrase!("`{item}` is set out at two places", item), "leave one of them out".into()),
    }
}

fn past_the_end(context: &Context<'_>, item: &str, wall: &str, (by, long): (Length, Length)) -> Phrase {
    let say = |length| say(length, context.book.project.units);
    let long = say_room(long, context.book.project.units);
    phrase!("`{item}` reaches {} past the end of {}, which is {} long", item, say(by), named(wall), long)
}

fn named(wall: &str) -> Phrase {
    if wall.len() < 3 { phrase!("wall {wall}", Wrote(wall)) } else { phrase!("`{wall}`", wall) }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn room(lines: &str) -> Trial {
        Trial::of("source/geometry").room(lines)
    }

    #[test]
    fn an_outline_goes_round_at_least_three_corners() {
        room("outline: [[0\", 0\"], [10', 0\"]]").finds("the outline has 2 corners").weighs("stop");
        room("outline: [[0\", 0\"], [10', 0\"], [0\", 8']]").stays_silent();
    }

    #[test]
    fn a_wall_has_a_length() {
        room("outline: [[0\", 0\"], [10', 0\"], [10', 0\"], [0\", 8']]").finds("wall B begins and ends at one corner");
    }

    #[test]
    fn walls_do_not_cross_touch_or_run_back() {
        room("outline: [[0\", 0\"], [10', 8'], [10', 0\"], [0\", 8']]").finds("wall A and wall C of the outline cross");
        room("outline: [[0\", 0\"], [10', 0\"], [5', 0\"], [5', 8']]").finds_one();
        room("outline: [[0\", 0\"], [10', 0\"], [10', 8'], [5', 0\"], [0\", 8']]").finds_one();
        room("outline: [[0\", 0\"], [10', 0\"], [10', 8'], [5', 4'], [0\", 8']]").stays_silent();
    }

    #[test]
    fn what_is_set_out_from_a_wall_lies_within_it() {
        let door = |wall: &str, at: &str| {
            format!("outline: 10' x 8'\ndoors: {{hall door: {{wall: {wall}, at: {at}, width: 32\"}}}}")
        };
        room(&door("B", "80\""))
            .finds("`hall door` reaches 16\" (406 mm) past the end of wall B, which is 8'-0\" (2438 mm) long");
        room(&door("B", "64\"")).stays_silent();
        room(&door("A", "80\"")).stays_silent();
        room(&door("E", "0\"")).finds("the outline has no wall `E`");
        room("doors: {hall door: {wall: A, at: 0\", width: 32\"}}")
            .finds("`hall door` is set out from wall `A`, and the room has no outline");
    }

    /// A window in the roof is set out from the wall below it: by its word, by where it lies, or by its name.
    #[test]
    fn a_window_in_the_roof_ends_with_its_wall() {
        let light = |ceiling: &str, name: &str, at: &str, more: &str| {
            room(&format!(
                "outline: 12' x 8'\nceiling: {{low: 62\", high: 102\", {ceiling}}}\nwindows: {{{name}: {{wall: C, at: {at}, width: 30\"{more}}}}}"
            ))
        };
        for (ceiling, name, more) in [
            ("low at: C", "light", ", in: roof"),
            ("low at: C", "light", ", sill: 50\", height: 46\""),
            ("rises along: width", "roof window", ""),
        ] {
            light(ceiling, name, "120\"", more)
                .finds(&format!(
                    "`{name}` reaches 6\" (152 mm) past the end of wall C, which is 12'-0\" (3658 mm) long"
                ))
                .weighs("stop");
            light(ceiling, name, "114\"", more).stays_silent();
        }
    }

    #[test]
    fn two_doors_or_windows_are_not_in_one_place() {
        let window = |at: &str| {
            format!(
                "outline: 10' x 8'\ndoors: {{hall door: {{wall: A, at: 0\", width: 32\"}}}}\nwindows: {{yard: {{wall: A, at: {at}, width: 30\", sill: 40\", height: 40\"}}}}"
            )
        };
        room(&window("32\"")).stays_silent();
        room(&window("30\"")).finds("`yard` is in the wall where `hall door` is, by 2\" (51 mm) along it");
    }

    #[test]
    fn an_island_lies_inside_the_room() {
        let island = |away: &str| {
            format!("outline: 16' x 14'\nislands: {{island: {{wall: A, at: 40\", away: {away}, size: 96\" x 42\"}}}}")
        };
        room(&island("66\"")).stays_silent();
        room(&island("130\"")).finds("`island` reaches out of the room");
    }

    #[test]
    fn an_opening_has_one_place() {
        let runs = "outline: 16' x 14'\nruns:\n  one: {wall: A, parts: [{opening: range}]}\n  two: {wall: C, parts: [{opening: range}]}";
        room(runs).opening("range", "{takes: range, width: 30\"}").finds("`range` is set out at two places");
    }
}
