//! Whether a door can open.

use crate::assess::fitting::{Side, case_stands_out, hinge_sides, stands_in_the_door_s_way};
use crate::assess::rules::{Check, declare};
use crate::assess::{Context, Fitted, say};
use crate::book::Door;
use crate::finding::{Finding, Severity};
use crate::units::Length;

declare! {
    /// A door can't open as its sheet asks
    ///
    /// ## What it checks
    /// The clearance that the sheet wants to a wall on the hinge side, against what stands there
    /// and how far off; and how far a door drops, swings or a drawer pulls out, past what the case
    /// stands out already, against the clear floor in front (with the floor that the sheet asks
    /// for, where it does).
    ///
    /// ## Why it matters
    /// A refrigerator hung beside a wall opens to ninety degrees, and its drawers need a hundred
    /// and fifteen. An oven door that meets the island is opened once.
    ///
    /// ## Remedy
    /// Plan a filler on the hinge side, hang the door on the other side, move what stands opposite,
    /// or choose another model.
    ///
    /// ## Example
    /// ```yaml
    /// left: {what: wall, gap: 1"}     # hinge left; its sheet: door: {wall clearance: 2 1/2\"}
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; trade report F-11 (2 to 2 1/2 in at a wall for a freestanding unit, 4 1/2
    /// in and more behind thick panels).
    "fit/door", Stop,
    sources: ["the maker's sheet"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for fitted in context.fitted() {
        judge(context, &fitted, findings);
    }
}

fn judge(context: &Context<'_>, fitted: &Fitted<'_>, findings: &mut Vec<Finding>) {
    let Some(door) = fitted.option.fit.get().and_then(|fit| fit.door.get()) else { return };
    findings.extend(wall(context, fitted, door));
    findings.extend(front(context, fitted, door));
}

/// The wall on the hinge side; for a door that can be hung either way one free side is enough.
fn wall(context: &Context<'_>, fitted: &Fitted<'_>, door: &Door) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let asked = door.wall_clearance.spanned()?;
    let (sides, either) = hinge_sides(fitted.option);
    let tight = |side: &&Side| {
        side.of(fitted.opening).get().is_some_and(|beside| {
            let gap = beside.gap.get().copied().unwrap_or(Length::ZERO);
            stands_in_the_door_s_way(beside, fitted.opening) && gap < asked.value
        })
    };
    let tight: Vec<&Side> = sides.iter().filter(tight).collect();
    let side = tight.first().filter(|_| !either || tight.len() == sides.len())?;
    let beside = side.of(fitted.opening).get()?;
    let gap = beside.gap.get().copied().unwrap_or(Length::ZERO);
    let angle = door.angle.get().map_or(String::new(), |angle| format!(" to open to {angle}"));
    let message = format!(
        "the door of `{}` hangs at the {}, {} from the {}; it needs {}{angle}",
        fitted.selection.name.value,
        side.word(),
        say(gap),
        beside.what,
        say(asked.value)
    );
    let finding =
        fitted.finding(RULE.code, Severity::Stop, asked.span, message).also(fitted.opening.span, "the opening");
    Some(finding.remedy(
        "plan a filler on the hinge side, measured from the baseboard or casing, or hang the door on the other side",
    ))
}

/// The clear floor in front.
fn front(context: &Context<'_>, fitted: &Fitted<'_>, door: &Door) -> Option<Finding> {
    let say = |length| say(length, context.book.project.units);
    let there = fitted.opening.in_front.spanned()?;
    let out = case_stands_out(fitted.opening, fitted.option);
    let moves = [("drops", &door.drops), ("swings", &door.swings), ("pulls out", &door.pulls)];
    let reaches =
        moves.into_iter().filter_map(|(how, slot)| slot.spanned().map(|reach| (how, reach.value + out, reach.span)));
    let asked = door.in_front.spanned().map(|asked| ("asks for", asked.value, asked.span));
    let (how, needed, span) = reaches.chain(asked).max_by_key(|(_, needed, _)| *needed)?;
    if needed <= there.value {
        return None;
    }
    let needs = if how == "asks for" {
        format!("asks for {} of clear floor", say(needed))
    } else {
        format!("{how} {} past the front", say(needed))
    };
    let message = format!(
        "`{}` {needs}, and {} is clear in front of the opening `{}`",
        fitted.selection.name.value,
        say(there.value),
        fitted.opening.name.value
    );
    let finding = fitted.finding(RULE.code, Severity::Stop, span, message).also(there.span, "the clear floor");
    Some(finding.remedy("move what stands opposite, or choose another model"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn fridge(opening: &str, hinge: &str, door: &str) -> Trial {
        let trial = Trial::of("fit/door").opening("hole", &format!("{{takes: refrigerator, {opening}}}"));
        trial.selection(
            "selection: Fridge\nkind: refrigerator\nplace: hole",
            &format!("hinge: {hinge}\nfit: {{door: {{{door}}}}}"),
        )
    }

    /// Source: trade.md F-11: a freestanding unit asks for 2 1/2" to a wall on its hinge side.
    #[test]
    fn a_wall_too_near_the_hinge_is_told() {
        let door = "wall clearance: 2 1/2\", angle: 115 degrees";
        fridge("left: {what: wall, gap: 1\"}", "left", door)
            .finds("the door of `Fridge` hangs at the left, 1\" (25.4 mm) from the wall; it needs 2 1/2\" (63.5 mm) to open to 115 degrees");
        fridge("left: {what: wall, gap: 2 1/2\"}", "left", door).is_silent();
        fridge("left: {what: wall, gap: 1\"}", "right", door).is_silent();
        fridge("left: {what: wall, gap: 1\"}", "either", door).is_silent();
        fridge("left: base cabinet", "left", door).is_silent();
    }

    /// Source: trade.md section 3: 21" to 22" free in front of a built-in's door.
    #[test]
    fn a_door_that_meets_what_stands_opposite_is_told() {
        fridge("in front: 21\"", "left", "drops: 21 1/4\"").finds_one().weighs("stop");
        fridge("in front: 21 1/4\"", "left", "drops: 21 1/4\"").is_silent();
        fridge("in front: 40\"", "left", "drops: 20\", in front: 42\"").finds_one();
    }
}
