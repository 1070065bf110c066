//! A fact of the site that a check needs for a thing, and that nobody gives.

mod access;
mod blocking;
mod doors;
mod glass;
mod hollow;
mod pipes;
mod seen;
mod services;
mod set_out;
mod setting;
mod sizes;
mod words;
mod zones;

use crate::assess::Context;
use crate::assess::rules::clear::door_swing::ask_where_doors_swing;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{Room, Selection};
use crate::finding::{Remark, phrase};
use crate::site::heat::{Hearth, Unsaid};
use crate::site::inside_width;
use crate::site::taps;
use crate::vocabulary::{Hazard, Kind, Mount};

declare! {
    /// A fact of the site that a check needs, and that nobody gives
    ///
    /// ## What it checks
    /// Whether any place tells what is above each range and cooktop: `above` at its opening, wall cabinets,
    /// shelves and hoods of the plan, a window, the room's one hood with the height of its lower edge.
    /// Where the plan sets out what hangs at that wall and nothing of it is above, that is an answer, and
    /// so is `above: nothing`. A ceiling alone is none: every room has one. Which cabinet holds each sink
    /// that is set into one: `cabinet` at its opening, or the part of a run or island that holds it. And
    /// whether any tap is chosen in a room that has a basin or a sink, where none comes with it.
    ///
    /// Besides, where the maker's sheet is exact: words for power, gas, water or a duct that can't be
    /// understood, the pattern of a receptacle, where services come out, what a heated thing is connected
    /// to; the recess of what is meant to be flush; the sizes of a measured opening for which the sheet asks; the drawers below what reaches into their cabinet, and what is below a thing whose sheet asks for air there; the
    /// type of unit that an opening is made for; what a bracket is fixed to. Whether sides of cabinets that are seen are
    /// finished, and, where a room is planned for access, whether the pipes over a knee space are covered, what space for knees is under a
    /// basin, and of a bath with a toilet where a chair turns, the floor and the bars at the toilet, how one comes into
    /// the shower, and how high mirror and controls are; of a kitchen its ways out, the floor and the surface to work at, the
    /// sink, the shelves and the controls. And how
    /// far a low window that is not told to be safety glass is from the tub or shower of its room; and how deep the wall
    /// is hollow, and what runs in it, that a mirror cabinet is let into. How large each fixture is that the plan sets
    /// out, where nothing is chosen for it. And where a door of the room swings, and on which side it hangs, where it may
    /// meet something.
    ///
    /// ## Why it matters
    /// A distance that nobody knows is a distance that nobody checked. What burns above burners chars for
    /// years before it catches fire.
    ///
    /// ## Remedy
    /// Say what is above it, at the opening or in the plan: its lower edge from the finished floor, and
    /// whether it burns.
    ///
    /// ## Example
    /// ```yaml
    /// range: {takes: range, width: 30"}     # above: {what: …, height: …, material: …}
    /// ```
    ///
    /// ## Source
    /// common practice; the distances are those of `clear/above-cooktop`.
    "complete/site", Query,
    due: WithThing, tells: [],
    judges: goods,
    sources: ["common practice"],
    caution: Some(Hazard::Heat),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut asked = Vec::new();
    for fitted in context.site.fitted() {
        let Some(hearth) = context.hearth(fitted) else { continue };
        let Some(unsaid) = hearth.unsaid_above().filter(|_| !asked.contains(&fitted.opening.span)) else { continue };
        asked.push(fitted.opening.span);
        findings.push(ask(&hearth, unsaid));
    }
    services::ask(context, findings);
    setting::ask(context, findings);
    sizes::ask(context, findings);
    seen::ask(context, findings);
    pipes::ask(context, findings);
    bowls(context, findings);
    glass::ask(context, findings);
    doors::ask(context, findings);
    ask_where_doors_swing(context, findings);
    hollow::ask(context, findings);
    access::ask(context, findings);
    set_out::ask(context, findings);
}

/// Asks of the opening, whichever option goes in.
fn ask(hearth: &Hearth<'_>, unsaid: Unsaid<'_>) -> Remark {
    let (room, opening) = (hearth.fitted.room, hearth.fitted.opening);
    let name = &hearth.fitted.selection.name.value;
    let (message, remedy) = match unsaid {
        Unsaid::Everything => (
            phrase!("nobody says what stands above the cooking surface of `{name}`", name),
            "add `above` to the opening: what is there, its lower edge from the finished floor and its `material`; \
             or `nothing`",
        ),
        Unsaid::HoodsHeight(hood) => (
            phrase!("nobody says how high `{}` hangs above the cooking surface of `{name}`", hood.name.value, name),
            "add `sill` to the hood's opening, or `above` to this one: its lower edge from the finished floor",
        ),
    };
    let finding = Remark::query(opening.span, message);
    finding.room(&room.folder).selection(&hearth.fitted.selection.name).remedy(remedy)
}

/// Which cabinet holds a sink, and whether a tap is chosen for it.
fn bowls(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut asked = Vec::new();
    for fitted in context.site.fitted().filter(|fitted| fitted.selection.is(Kind::Sink)) {
        let opening = fitted.opening;
        let set_in = fitted.option.mount().is_some_and(Mount::is_in_a_cabinet);
        let known = inside_width(fitted.room, opening, context.book.project.units).is_some();
        if set_in && !known && !opening.cabinet.is_faulty() && !asked.contains(&opening.span) {
            asked.push(opening.span);
            let message = phrase!("nobody says which cabinet holds `{}`", fitted.selection.name.value);
            let finding = Remark::query(opening.span, message);
            let finding = finding.room(&fitted.room.folder).selection(&fitted.selection.name);
            findings.push(finding.remedy(
                "add `cabinet` to the opening, with its width inside or outside; or name the opening in the part \
                 of the run that holds it",
            ));
        }
    }
    for room in &context.book.rooms {
        findings.extend(no_tap(room));
    }
}

/// The first bowl of a room in which nobody chooses a tap, and none comes with a bowl.
fn no_tap(room: &Room) -> Option<Remark> {
    let bowl = room.selections.iter().find(|selection| selection.is_any(&[Kind::Sink, Kind::Basin]))?;
    let is_tap = |selection: &Selection| selection.is(Kind::Tap) || selection.standing().iter().any(taps::comes_with);
    if room.selections.iter().any(is_tap) || room.holds_an_unknown_kind() {
        return None;
    }
    let message = phrase!("nobody chooses a tap for `{}`", bowl.name.value);
    let finding = Remark::query(bowl.name.span, message);
    let finding = finding.room(&room.folder).thing(&bowl.name);
    Some(finding.remedy("add a selection of the kind `tap`; or, where one comes with it, name it among `accessories`"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn the_cabinet_that_holds_a_sink_is_asked_for() {
        let sink = |opening: &str, mount: &str| {
            Trial::of("complete/site")
                .opening("hole", &format!("{{takes: sink{opening}}}"))
                .selection(
                    "selection: Sink\nkind: sink\nplace: hole",
                    &format!("size: {{width: 33\"}}\nmount: {mount}"),
                )
                .selection("selection: Tap\nkind: tap", "")
        };
        sink("", "undermount")
            .finds("nobody says which cabinet holds `Sink`")
            .points_at(&["rooms/kitchen/room.yaml:3:3"]);
        sink(", cabinet: {inside width: 34 1/2\"}", "undermount").stays_silent();
        sink(", cabinet: {outside width: 36\"}", "undermount").stays_silent();
        sink("", "undermount")
            .room("runs: {wall: {parts: [{cabinet: base, width: 36\", holds: [hole]}]}}")
            .stays_silent();
        sink("", "on the wall, with brackets").stays_silent();
    }

    #[test]
    fn a_room_with_a_bowl_has_a_tap() {
        let basin = |option: &str| Trial::of("complete/site").selection("selection: Basin\nkind: basin", option);
        basin("").finds("nobody chooses a tap for `Basin`").weighs("query");
        basin("").selection("selection: Mixer\nkind: tap", "").stays_silent();
        basin("accessories: [{name: mixer tap, price: 90.00}]").stays_silent();
        basin("description: With its own faucet").stays_silent();
        // It may be what is called by a word that nobody knows.
        basin("").selection("selection: Laundry faucet\nkind: wobbling faucet", "").of_any_yaml().stays_silent();
        basin("").selection("selection: Filler\nkind: bath filler", "").finds_one();
    }

    fn range(opening: &str) -> Trial {
        Trial::of("complete/site")
            .opening("hole", &format!("{{takes: range, width: 30\", counter height: 36\"{opening}}}"))
            .selection("selection: Range\nkind: range\nplace: hole", "size: {width: 30\", height: 36\"}")
    }

    #[test]
    fn what_nobody_says_of_what_is_above_a_flame_is_asked_once() {
        range("").finds("nobody says what stands above the cooking surface of `Range`").weighs("query").cautions();
        // A ceiling alone is no answer; nor is an option more a question more.
        range("").room("ceiling: 96\"").finds_one();
        Trial::of("complete/site")
            .opening("hole", "{takes: cooktop}")
            .selection("selection: Top\nkind: cooktop\nplace: hole", "options: [{id: a}, {id: b}]")
            .finds_one();
    }

    #[test]
    fn what_the_opening_says_is_an_answer_and_nothing_is_one_too() {
        range(", above: {what: hood, height: 66\"}").stays_silent();
        range(", above: nothing").stays_silent();
        // What is named without a height is asked for by its own rule.
        range(", above: wall cabinet").stays_silent();
    }

    /// Asked at the hold point of what is built around it, and after it the work stops.
    #[test]
    fn past_its_hold_point_the_question_stops_the_work() {
        range("").book("hold points: {cabinets ordered: 2027-01-14}").finds_one().weighs("stop");
    }

    #[test]
    fn the_room_s_hood_is_an_answer_once_its_height_is_known() {
        let hood = |opening: &str| {
            range("").opening("over", opening).selection("selection: Hood\nkind: hood\nplace: over", "")
        };
        hood("{takes: hood, sill: 66\"}").stays_silent();
        hood("{takes: hood}").finds("nobody says how high `Hood` hangs above the cooking surface of `Range`");
    }

    #[test]
    fn the_plan_is_an_answer_where_it_sets_out_what_hangs_there() {
        let planned = |more: &str| {
            range("").room(&format!(
                "outline: 144\" x 120\"\nruns:\n  base: {{wall: A, starts: 24\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{{cabinet: pots, width: 30\"}}, {{opening: hole}}]}}\n{more}"
            ))
        };
        planned("").finds_one();
        let uppers = |wall: &str, starts: &str| {
            format!(
                "  uppers: {{wall: {wall}, starts: {starts}, above floor: 66\", parts: [{{cabinet: plates, width: 30\"}}]}}"
            )
        };
        planned(&uppers("A", "54\"")).stays_silent();
        planned(&uppers("A", "24\"")).stays_silent();
        planned(&uppers("C", "24\"")).finds_one();
        planned("windows: {yard: {wall: A, at: 60\", width: 20\", sill: 66\", height: 20\"}}").stays_silent();
    }
}
