//! A hand or a direction that nobody has written down.

use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::fitting::bond::{Bond, bond};
use crate::assess::rules::{Check, declare};
use crate::book::{Choice, DetailValue, Selection};
use crate::finding::{Finding, Severity};
use crate::vocabulary::Kind;

declare! {
    /// Nobody says which way it hangs, runs or is laid
    ///
    /// ## What it checks
    /// The hinge side of what has a hung door; the direction of a tile whose sides differ, of planks
    /// and boards (in `pattern`, or as `laid: runs`), and of herringbone; the grain of cabinets whose
    /// finish names a wood.
    ///
    /// ## Why it matters
    /// Who fits it decides, and never asks. A door hung on the wrong side, a tile laid the wrong way
    /// and a grain that turns at the corner are seen every day for twenty years.
    ///
    /// ## Remedy
    /// Write it down: `hinge`, `laid: {runs: …}`, `grain`.
    ///
    /// ## Example
    /// ```yaml
    /// face size: 2" x 8"
    /// pattern: stacked
    /// laid: {runs: long side upright}
    /// ```
    ///
    /// ## Source
    /// Trade practice: direction stands on the drawing that is signed.
    "finish/hand", Query,
    due: WithThing, tells: [Client],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// Words that give a direction.
const DIRECTIONS: [&str; 14] = [
    "level",
    "horizontal",
    "upright",
    "vertical",
    "along",
    "across",
    "lengthwise",
    "crosswise",
    "diagonal",
    "pointing",
    "points",
    "toward",
    "up",
    "parallel",
];

/// Woods whose grain shows.
const WOODS: [&str; 11] =
    ["oak", "ash", "walnut", "maple", "cherry", "birch", "elm", "teak", "beech", "wood", "veneer"];

fn check(context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (room, selection, option) in context.options() {
        let missing = [hinge(option), direction(selection, option), grain(selection, option)];
        for (what, how) in missing.into_iter().flatten() {
            let message = format!("nobody says {}", what.replace("{}", &format!("`{}`", selection.name.value)));
            let at = if selection.options.len() > 1 { option.id.span } else { selection.span };
            findings.push(about(room, selection, option, RULE.code, Severity::Query, at, message).remedy(how));
        }
    }
}

/// What is missing, with `{}` for the thing's name, and how to say it.
type Missing = (&'static str, &'static str);

fn hinge(option: &Choice) -> Option<Missing> {
    let swings = option.fit.get().is_some_and(|fit| fit.door.get().is_some_and(|door| door.swings.get().is_some()));
    (swings && option.hinge.is_absent()).then_some((
        "the hinge side of {}",
        "add `hinge: …`: `left`, `right`, `either`, `both` or `none`, seen from the front",
    ))
}

fn direction(selection: &Selection, option: &Choice) -> Option<Missing> {
    let kind = selection.kind.get()?;
    let (pattern, _) = option.words("pattern")?;
    let says =
        |text: &str| text.to_lowercase().split(|c: char| !c.is_alphabetic()).any(|word| DIRECTIONS.contains(&word));
    let sheet = pattern.to_lowercase().contains("sheet");
    let directed = match kind {
        Kind::Tile => oblong(option) || bond(pattern) == Bond::Herringbone,
        Kind::Floor | Kind::Boarding => !sheet,
        _ => false,
    };
    let told = option.laid.runs.get().is_some() || says(pattern);
    (directed && !told)
        .then_some(("which way the long side of {} runs", "say it in `pattern`, or add `laid: {runs: …}`"))
}

/// Whether a tile's sides differ.
fn oblong(option: &Choice) -> bool {
    option.detail("face size").is_some_and(|detail| match &detail.value {
        DetailValue::Sides(sides) => matches!(sides.sides(), [one, other] if one != other),
        _ => false,
    })
}

fn grain(selection: &Selection, option: &Choice) -> Option<Missing> {
    let cabinet = selection.is(Kind::Cabinet);
    let finish = option.finish.text().to_lowercase();
    let covered = ["paint", "lacquer"].iter().any(|word| finish.contains(word));
    let wood = finish.split(|c: char| !c.is_alphabetic()).any(|word| WOODS.contains(&word));
    let missing = cabinet && wood && !covered && option.detail("grain").is_none();
    missing.then_some(("which way the grain of {} runs", "add `grain: …`: `upright`, `level`, `matched` or `none`"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn of(kind: &str, option: &str) -> Trial {
        Trial::of("finish/hand").selection(&format!("selection: It\nkind: {kind}"), option)
    }

    /// Source: trade reports F-98.
    #[test]
    fn an_oblong_tile_without_a_direction_is_told() {
        let tile = |face: &str, pattern: &str| of("tile", &format!("face size: {face}\npattern: {pattern}"));
        tile("2\" x 8\"", "stacked").finds("nobody says which way the long side of `It` runs").weighs("query");
        tile("2\" x 8\"", "upright, stacked").stays_silent();
        tile("2\" x 8\"", "stacked\nlaid: {runs: long side level}").stays_silent();
        tile("4\" x 4\"", "stacked").stays_silent();
        tile("4\" x 4\"", "herringbone").finds_one();
    }

    /// Source: trade reports F-118.
    #[test]
    fn planks_and_grain_want_a_direction() {
        of("floor", "pattern: straight planks").finds_one();
        of("floor", "pattern: straight planks along the room").stays_silent();
        of("floor", "pattern: \"one sheet, no seam\"").stays_silent();
        of("cabinet", "finish: oiled oak").finds("nobody says which way the grain of `It` runs");
        of("cabinet", "finish: oiled oak\ngrain: level").stays_silent();
        of("cabinet", "finish: painted ash").stays_silent();
    }

    /// Source: trade reports F-74.
    #[test]
    fn a_hung_door_wants_a_hinge_side() {
        of("washer", "fit: {door: {swings: 19\"}}").finds("nobody says the hinge side of `It`");
        of("washer", "hinge: left\nfit: {door: {swings: 19\"}}").stays_silent();
        of("dishwasher", "fit: {door: {drops: 24\"}}").stays_silent();
    }
}
