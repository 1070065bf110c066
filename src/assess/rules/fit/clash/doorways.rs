//! What stands before a doorway, or before a window, of another wall: as it is set out, and with each option's own door.

use crate::assess::{Context, say};
use crate::book::{Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::plan::{Plan, PlanFault, Thing, Wrong};
use crate::units::Length;

/// What is told of a body that closes one. Where it does so by the door of what was chosen alone, it is said of that
/// option: another would leave it free.
pub fn closes(context: &Context<'_>, plan: &Plan<'_>, fault: &PlanFault) -> Option<Remark> {
    let Wrong::Closes { door, by, of } = &fault.wrong else { return None };
    let (item, at) = (fault.item.as_deref()?, fault.also?);
    let told = Told { item, door, by: *by, of: *of };
    let finding = told.remark(context, fault).also(at, phrase!("`{door}`", door));
    let thing = plan.things.iter().find(|thing| thing.span == fault.span);
    Some(match thing.and_then(|thing| by_its_door(plan, thing, door, *by)) {
        Some((selection, option)) => finding.room(&plan.room.folder).option(&selection.name, option),
        None => finding.room(&plan.room.folder).part(item),
    })
}

/// The option whose door closes more of a doorway than its opening does.
fn by_its_door<'a>(plan: &Plan<'a>, thing: &Thing<'a>, door: &str, by: Length) -> Option<(&'a Selection, &'a str)> {
    let selection = plan.room.goes_into(&thing.opening?.name).next()?;
    let option = selection.settled()?;
    let without = plan.closed_by(thing, plan.front_with(thing, None));
    let is_so_without = without.iter().any(|(hole, closed)| hole.name() == door && *closed >= by);
    (!is_so_without).then_some((selection, option.id.value.as_str()))
}

/// What each option that can still be taken would close with its door, and is free without it.
pub fn closed_by_options(context: &Context<'_>, plan: &Plan<'_>, room: &Room) -> Vec<Remark> {
    let open = context.site.fitted_in(room).filter(|fitted| !fitted.is_settled());
    open.flat_map(|fitted| closed_by_option(context, plan, fitted)).collect()
}

fn closed_by_option(context: &Context<'_>, plan: &Plan<'_>, fitted: Placement<'_>) -> Vec<Remark> {
    let Some(thing) = plan.opening(fitted.opening) else { return vec![] };
    let (bare, front) = (plan.front_with(thing, None), plan.front_with(thing, Some(fitted.option)));
    if front <= bare {
        return vec![];
    }
    let already = plan.closed_by(thing, bare);
    let is_new = |door: &str, by: Length| !already.iter().any(|(hole, closed)| hole.name() == door && *closed >= by);
    let closed = plan.closed_by(thing, front).into_iter().filter(|(hole, by)| is_new(hole.name(), *by));
    let told = closed.map(|(hole, by)| {
        let told = Told { item: thing.name, door: hole.name(), by, of: hole.along.1 - hole.along.0 };
        let finding = fitted.finding(Severity::Stop, thing.span, told.message(context)).remedy(told.remedy(context));
        finding.also(hole.span(), Phrase::name(hole.name()))
    });
    told.collect()
}

/// A doorway or a window, and how much of it something closes.
struct Told<'a> {
    item: &'a str,
    door: &'a str,
    by: Length,
    of: Length,
}

impl Told<'_> {
    fn remark(&self, context: &Context<'_>, fault: &PlanFault) -> Remark {
        Remark::stop(fault.span, self.message(context)).remedy(self.remedy(context))
    }

    fn message(&self, context: &Context<'_>) -> Phrase {
        let say = |length| say(length, context.book.project.units);
        let (item, door) = (self.item, self.door);
        phrase!("`{item}` stands before `{door}` and closes {} of its {}", item, door, say(self.by), say(self.of))
    }

    fn remedy(&self, context: &Context<'_>) -> Phrase {
        let by = say(self.by, context.book.project.units);
        phrase!("move one of them {} along the doorway's or window's wall, or choose a smaller one", by)
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// A refrigerator on wall A against wall D, whose doorway begins 26" from the corner: 30" with the door close 4" of it.
    fn galley(chosen: &str) -> Trial {
        Trial::of("fit/clash")
            .room(
                "outline: 12' x 98\"\ndoors: {hall: {wall: D, at: 36\", width: 36\", height: 80\"}}\nruns: {cold: {wall: A, depth: 24\", parts: [{opening: refrigerator}]}}",
            )
            .opening("refrigerator", "{takes: refrigerator, width: 36\", depth: 24\", height: 72\"}")
            .file(
                "rooms/kitchen/cold.yaml",
                format!("- selection: Refrigerator\n  kind: refrigerator\n  place: refrigerator\n{chosen}  options:\n    - {{id: deep, name: Larderwen 68, size: {{width: 35\", height: 70\", depth: 28\", depth with door: 30\"}}}}\n    - {{id: slim, name: Larderwen 60, size: {{width: 35\", height: 70\", depth: 22\", depth with door: 24\"}}}}\n"),
            )
    }

    #[test]
    fn an_option_is_judged_by_its_own_door_whether_or_not_it_is_chosen() {
        let said = "`refrigerator` stands before `hall` and closes 4\" (102 mm) of its 36\" (914 mm)";
        for (chosen, weight) in [("", "query"), ("  chosen: deep\n", "stop")] {
            let found = galley(chosen).finds_one().says(said).weighs(weight);
            assert_eq!(found.findings()[0].subject.option(), Some("deep"));
            assert_eq!(found.findings()[0].bars, chosen.is_empty());
        }
        galley("  chosen: slim\n").stays_silent();
    }
}
