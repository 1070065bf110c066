//! A fixture that the plan sets out, and of which nobody says how large it is: nothing around it can be judged.

use crate::assess::Context;
use crate::assess::rules::Findings;
use crate::book::{Fixture, Hinge, Room};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::plan::{Plan, Thing, What, glass_for, leaf_of};
use crate::vocabulary::{Kind, Trait};

/// Asks of each fixture once.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let Some(plan) = context.site.plan(room).filter(|plan| !plan.walls.is_empty()) else { continue };
        findings.extend(room.fixtures.iter().filter_map(|fixture| unsaid(plan, room, fixture)));
        findings.extend(room.fixtures.iter().filter_map(|fixture| leaf(room, fixture)));
    }
}

/// Hung glass of a shower that is set out, and is wider than any leaf: how wide its door is nobody says.
fn leaf(room: &Room, fixture: &Fixture) -> Option<Remark> {
    let glass = glass_for(room, fixture).filter(|_| fixture.door.is_absent() && fixture.wall.get().is_some())?;
    let option = glass.settled()?;
    let is_hung = option.hinge.get().is_some_and(|hinge| *hinge != Hinge::None);
    let at = option.size.width.span().filter(|_| is_hung && leaf_of(fixture, option).is_none())?;
    let message =
        phrase!("nobody says how wide the door of `{}` is, and where it swings can't be checked", glass.name.value);
    let finding = Remark { caution: None, ..Remark::query(at, message) }.room(&room.folder).selection(&glass.name);
    Some(finding.remedy(phrase!("add `door: …` and `hinge: …` to `{}` in the plan", fixture.name.value)))
}

fn unsaid(plan: &Plan<'_>, room: &Room, fixture: &Fixture) -> Option<Remark> {
    let is_set_out = fixture.wall.get().is_some() && fixture.centre.get().is_some();
    let sizes_are_read = !fixture.width.is_faulty() && !fixture.depth.is_faulty();
    if !is_set_out || !sizes_are_read {
        return None;
    }
    let is_it = |thing: &&Thing<'_>| matches!(thing.what, What::Fixture(own) if std::ptr::eq(own, fixture));
    let what: Phrase = match plan.things.iter().find(is_it) {
        None => "how wide and deep".into(),
        Some(thing) if is_stood_at(thing) && thing.out.1 <= thing.out.0 => "how deep".into(),
        Some(_) => return None,
    };
    let message = phrase!("nobody says {what} `{}` is, and nothing around it can be checked", what, fixture.name.value);
    let finding = Remark { caution: None, ..Remark::query(fixture.name.span, message) }.room(&room.folder);
    let finding = finding.part(&fixture.name.value);
    Some(finding.remedy("name what is chosen for it (`selection: …` or `opening: …`), or add `width` and `depth`"))
}

/// Whether floor is asked for before it.
fn is_stood_at(thing: &Thing<'_>) -> bool {
    thing.has(Trait::Bathes) && !thing.is(Kind::ShowerGlass) && !thing.is(Kind::ShowerTray)
        || thing.is(Kind::Toilet)
        || thing.is(Kind::Basin)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn bath(fixture: &str) -> Trial {
        Trial::of("complete/site")
            .room(&format!("outline: 8' x 46\"\nfixtures:\n  wc: {{wall: A, centre: 40\", {fixture}}}"))
    }

    #[test]
    fn what_is_set_out_has_a_size() {
        bath("takes: toilet")
            .finds("nobody says how wide and deep `wc` is, and nothing around it can be checked")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:4:3"])
            .remedies("name what is chosen for it (`selection: …` or `opening: …`), or add `width` and `depth`");
        bath("takes: toilet, width: 15\"").finds("nobody says how deep `wc` is, and nothing around it can be checked");
        bath("takes: toilet, width: 15\", depth: 27\"").stays_silent();
        bath("takes: wall light, width: 5\"").stays_silent();
    }

    /// Source: arithmetic: a room of 46" less a toilet of 27" leaves 19".
    #[test]
    fn the_only_one_of_its_kind_is_what_is_set_out() {
        let chosen = |trial: Trial| {
            trial.selection("selection: Toilet\nkind: toilet", "size: {width: 14 1/2\", depth: 27\", height: 30\"}")
        };
        chosen(bath("takes: toilet")).stays_silent();
        let floor = |fixture: &str| {
            chosen(
                Trial::of("clear/bath-floor")
                    .room(&format!("outline: 8' x 46\"\nfixtures:\n  wc: {{wall: A, centre: 40\", {fixture}}}")),
            )
        };
        for fixture in ["takes: toilet", "selection: Toilet"] {
            floor(fixture)
                .finds("the floor in front of the toilet is 19\" (483 mm) deep by the plan, 2\" (51 mm) less than the 21\" (533 mm) that the model code asks for");
        }
        // Of two nobody knows which.
        chosen(chosen(bath("takes: toilet"))).of_any_yaml().finds_one();
    }
}
