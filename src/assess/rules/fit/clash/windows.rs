//! A counter, or what stands up from it, before a window of its wall, or before what hangs on that.

use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::counters::covers;
use crate::site::plan::{Hole, HoleIs, Plan, Row, RowOf, Stands, Thing};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

/// What goes higher up the wall is laid around a window (common practice).
const UPSTAND: Length = Length::from_inches(8);

/// What hangs nearer to its wall than that hangs before what stands up there.
const BEHIND: Length = Length::from_inches(1);

/// Each run and window once.
pub fn clash(context: &Context<'_>, plan: &Plan<'_>) -> Vec<Remark> {
    let windows = || plan.holes.iter().filter(|hole| matches!(hole.is, HoleIs::Window(_)));
    let pairs = plan.rows.iter().flat_map(|row| windows().map(move |window| (row, window)));
    let windows = pairs.filter_map(|(row, window)| told(context, plan, row, window));
    let things = plan.rows.iter().flat_map(|row| plan.things.iter().map(move |thing| (row, thing)));
    windows.chain(things.filter_map(|(row, thing)| before_what_hangs(context, plan, row, thing))).collect()
}

/// What stands up from a counter, behind what hangs over it: the counter itself is told as a body.
fn before_what_hangs(context: &Context<'_>, plan: &Plan<'_>, row: &Row<'_>, thing: &Thing<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let counter = row.counter?.height?;
    let hangs = thing.low >= counter && thing.has(Trait::Hangs) && row.stands == thing.stands && thing.out.0 < BEHIND;
    let (upstand, at) = upstand(plan, row).filter(|_| hangs && is_along(plan, row, thing.along))?;
    let by = Some(counter + upstand - thing.low).filter(|by| *by > Length::ZERO && upstand <= UPSTAND)?;
    let message = phrase!(
        "the splash on the counter of the run `{}` reaches {} above the lower edge of `{}`",
        row.of.name(),
        say(by),
        thing.name
    );
    let finding = Remark::query(at, message).room(&plan.room.folder).part(row.of.name());
    let finding = finding.also(thing.span, Phrase::name(thing.name)).source("common practice");
    Some(finding.remedy(phrase!("make it {} lower, or hang what is over it higher", say(by))))
}

fn told(context: &Context<'_>, plan: &Plan<'_>, row: &Row<'_>, window: &Hole<'_>) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let (counter, sill) = (row.counter?.height?, window.low?);
    let is_here = row.stands == Stands::Wall(window.wall) && is_before(plan, row, window);
    let (upstand, at) =
        upstand(plan, row).filter(|(high, _)| *high <= UPSTAND).unwrap_or((Length::ZERO, row.of.span()));
    let by = Some(counter + upstand - sill).filter(|by| is_here && *by > Length::ZERO)?;
    let what: Phrase = if counter > sill { "counter".into() } else { "splash on the counter".into() };
    let message = phrase!(
        "the {what} of the run `{}` reaches {} above the sill of the window `{}`",
        what,
        row.of.name(),
        say(by),
        window.name()
    );
    let finding = Remark::query(at, message).room(&plan.room.folder).part(row.of.name());
    let finding = finding.also(window.span(), phrase!("`{}`", window.name())).source("common practice");
    Some(finding.remedy(phrase!("end it at the window or make it {} lower, or have the sill raised", say(by))))
}

/// Whether any of the row's counter lies before the window.
fn is_before(plan: &Plan<'_>, row: &Row<'_>, window: &Hole<'_>) -> bool {
    is_along(plan, row, window.along)
}

/// Whether any of the row's counter lies along that stretch of its wall.
fn is_along(plan: &Plan<'_>, row: &Row<'_>, along: (Length, Length)) -> bool {
    let things = row.things.iter().filter_map(|at| plan.things.get(*at)).filter(|thing| plan.lies_over(row, thing));
    let shared = |thing: &Thing<'_>| thing.along.1.min(along.1) - thing.along.0.max(along.0) > Length::ZERO;
    things.into_iter().any(shared)
}

/// What stands up from the counter along the wall: as the run says, else as the counter does that lies on it.
fn upstand(plan: &Plan<'_>, row: &Row<'_>) -> Option<(Length, Span)> {
    let RowOf::Run(run) = row.of else { return None };
    let high = |splash: &crate::book::Splash| splash.height.spanned().map(|high| (high.value, high.span));
    if !run.counter.splash.is_absent() {
        return high(run.counter.splash.get()?);
    }
    let counters = plan.room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let options =
        counters.filter_map(|counter| counter.settled()).filter(|option| covers(plan.room, option, &run.name));
    let mut splashes = options.filter_map(|option| option.top.get()?.splash.get());
    high(splashes.next()?)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn run(sill: &str, splash: &str) -> Trial {
        Trial::of("fit/clash").room(&format!(
            "outline: 12' x 10'\nwindows: {{garden: {{wall: A, at: 50\", width: 40\", sill: {sill}, height: 44\"}}}}\nruns: {{w: {{wall: A, starts: 24\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"{splash}}}, parts: [{{cabinet: sink base, width: 36\"}}, {{cabinet: drawers, width: 36\"}}]}}}}"
        ))
    }

    /// Source: arithmetic: a counter at 36" and a splash of 4" reach 2" above what hangs at 38", and 1" of the counter
    /// what hangs at 35".
    #[test]
    fn what_hangs_over_a_counter_ends_above_it_and_its_splash() {
        let vanity = |sill: &str, thing: &str| {
            Trial::of("fit/clash").room(&format!(
                "outline: 8' x 5'\nruns: {{vanity: {{wall: A, starts: 24\", depth: 21\", counter: {{depth: 22\", height: 36\", splash: {{height: 4\", thickness: 3/4\"}}}}, parts: [{{cabinet: vanity, width: 36\"}}]}}}}\nfixtures: {{it: {{wall: A, centre: 42\", sill: {sill}, width: 24\", height: 30\", {thing}}}}}"
            ))
        };
        for thing in ["depth: 1\", takes: mirror", "depth: 5\", takes: mirror cabinet", "depth: 2\", takes: lit mirror"]
        {
            vanity("38\"", thing)
                .finds("the splash on the counter of the run `vanity` reaches 2\" (51 mm) above the lower edge of `it`")
                .weighs("query")
                .remedies("make it 2\" (51 mm) lower, or hang what is over it higher");
            vanity("35\"", thing).finds("`it` stands where `vanity` is, and 1\" (25.4 mm) in height would part them");
            vanity("40\"", thing).stays_silent();
        }
    }

    /// Source: arithmetic: 36" and 6" of stone before a sill at 38" cover 4" of the window.
    #[test]
    fn a_counter_and_its_upstand_end_below_the_sill() {
        let six = ", splash: {thickness: 3/4\", height: 6\"}";
        run("38\"", six)
            .finds(
                "the splash on the counter of the run `w` reaches 4\" (102 mm) above the sill of the window `garden`",
            )
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:4:119"])
            .remedies("end it at the window or make it 4\" (102 mm) lower, or have the sill raised");
        run("42\"", six).stays_silent();
        run("35\"", "").finds("the counter of the run `w` reaches 1\" (25.4 mm) above the sill of the window `garden`");
        run("36\"", "").stays_silent();
        // By what a usual counter takes nobody knows how high its cabinets are: the counter alone is told.
        run("34\"", "").finds("the counter of the run `w` reaches 2\" (51 mm) above the sill of the window `garden`");
        // What is clad up to the wall cabinets is cut around the window.
        run("42\"", ", splash: {thickness: 3/4\", height: 18\"}").stays_silent();
        run("38\"", "")
            .selection(
                "selection: Stone\nkind: counter",
                "top: {lies on: [w], splash: {thickness: 3/4\", height: 4\"}}",
            )
            .finds_one();
    }
}
