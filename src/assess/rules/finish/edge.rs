//! A tile field, or a counter, that ends in the open with nothing to end it.

use super::{has_no_trim, is_tile};
use crate::assess::context::about;
use crate::assess::rules::order::quantity::trim;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{CabinetEnds, DetailName, End, ProductOption, Room, Run, Selection, TopMaterial};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::counter_edges;
use crate::site::counters::covers;
use crate::units::Length;
use crate::vocabulary::Kind;

declare! {
    /// A field of tile or a counter ends in the open with nothing to end it
    ///
    /// ## What it checks
    /// Tile whose `edge trim` is `none`: how much of its edge ends against nothing (`laid: open
    /// edges`). More than nothing stops; nobody saying is a query. A word on how it ends (`none; it
    /// runs under the door`) is enough. And a counter on a run that ends in the open, by its `right end: open` or
    /// by the plan, whose `finished ends` leave that end out; of laminate, whose core is raw, also one of which
    /// nobody says, and for which no edge pieces are ordered by length. How long its edge pieces must be, `order/quantity` reckons.
    ///
    /// ## Why it matters
    /// Cut tile shows its body. The trim must be ordered with the tile, in its glaze, and set with it.
    ///
    /// ## Remedy
    /// Order edge pieces or a metal trim for the length; or write `laid: {open edges: 0"}` where every
    /// edge ends against something.
    ///
    /// ## Example
    /// ```yaml
    /// edge trim: none
    /// laid: {open edges: 14'}     # beside the window, and above the counter's end
    /// ```
    ///
    /// ## Source
    /// Trade practice: trim stands on the signed drawing.
    "finish/edge", Query,
    due: WithThing, tells: [],
    judges: [Tile, Counter, Splashback],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.site.options().filter_map(|one| raw_ends(context, one)));
    for (room, selection, option) in context.site.options() {
        if !is_tile(selection) || !has_no_trim(option) {
            continue;
        }
        let name = &selection.name.value;
        let (severity, message, remedy) = match option.laid.open_edges.get() {
            Some(open) if *open > Length::ZERO => (
                Severity::Stop,
                phrase!(
                    "{} of the edges of `{name}` end against nothing, and no trim is ordered",
                    say(*open, context.book.project.units),
                    name
                ),
                "order edge pieces or a trim for that length, from the same batch",
            ),
            None if option.laid.open_edges.is_absent() => (
                Severity::Query,
                phrase!("`{name}` gets no trim, and nobody says where it ends", name),
                "write how it ends, or `laid: {open edges: …}`, the length that ends against nothing",
            ),
            _ => continue,
        };
        let at = option.detail(DetailName::EdgeTrim).map_or(selection.span, |detail| detail.span);
        findings.push(about(room, selection, option, severity, at, message).remedy(remedy));
    }
}

/// The ends of a counter that are seen, and whose edges are not finished.
fn raw_ends(context: &Context<'_>, (room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    if !selection.is(Kind::Counter) {
        return None;
    }
    let finished = option.fact::<CabinetEnds>();
    let is_laminate = option.top.get().and_then(|top| top.material.get()) == Some(&TopMaterial::Laminate);
    if finished.is_none() && (!is_laminate || trim::is_ordered(room, selection, option)) {
        return None;
    }
    let runs = room.runs.iter().filter(|run| covers(room, option, &run.name));
    let ends = runs.filter_map(|run| Some((run, counter_edges(context.site.plan(room), room, run)?.open_ends)));
    let ends = ends.flat_map(|(run, ends)| ends.into_iter().map(move |end| (run, end)));
    let raw: Vec<(&Run, End)> = ends.filter(|(_, end)| finished.is_none_or(|(ends, _)| !ends.has(*end))).collect();
    let (first, _) = raw.first()?;
    let seen = raw.iter().map(|(run, end)| phrase!("the {end} end on `{}`", end, run.name.value));
    let (seen, name) = (Phrase::joined(seen, ", "), &selection.name.value);
    let (message, at) = match finished {
        Some((_, at)) => (phrase!("of `{name}`, {seen} is seen, and its edge is not finished", name, seen), at),
        None => (
            phrase!("of `{name}`, {seen} is seen, and nobody says that its edge is finished", name, seen),
            selection.span,
        ),
    };
    let finding =
        about(room, selection, option, Severity::Query, at, message).also(first.name.span, "ends in the open");
    let remedy = "order the edge there with the counter, and say so: `finished ends: …` (`left`, `right`, `all`)";
    Some(finding.source("common practice").remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn tile(trim: &str, laid: &str) -> Trial {
        let option = format!("edge trim: {trim}\nlaid: {{{laid}}}");
        Trial::of("finish/edge").selection("selection: Splash\nkind: tile", &option)
    }

    /// Source: trade reports F-96.
    #[test]
    fn a_field_that_ends_in_the_open_wants_trim() {
        tile("none", "open edges: 14'")
            .finds("168\" (4267 mm) of the edges of `Splash` end against nothing, and no trim is ordered")
            .weighs("stop");
        tile("glazed edge pieces", "open edges: 14'").stays_silent();
        tile("none", "").finds("`Splash` gets no trim, and nobody says where it ends").weighs("query");
        tile("none", "open edges: 0\"").stays_silent();
        tile("none; it ends at the casings", "").stays_silent();
    }

    /// Source: common practice: the edge of a counter is ordered with it, for each end that is seen.
    #[test]
    fn an_end_of_a_counter_that_is_seen_is_finished() {
        let counter = |room: &str, lines: &str| {
            Trial::of("finish/edge").room(room).selection("selection: Worktop\nkind: counter", lines)
        };
        let said = |end: &str| {
            format!(
                "runs: {{sink wall: {{left end: wall, right end: {end}, counter: {{depth: 25\"}}, parts: [{{cabinet: drawers, width: 24\"}}]}}}}"
            )
        };
        counter(&said("open"), "finished ends: none")
            .finds("of `Worktop`, the right end on `sink wall` is seen, and its edge is not finished")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:16"]);
        counter(&said("open"), "finished ends: left").finds_one();
        counter(&said("open"), "finished ends: right").stays_silent();
        counter(&said("open"), "finished ends: all").stays_silent();
        counter(&said("wall"), "finished ends: none").stays_silent();
        counter(&said("open"), "material: laminate").finds_one();
        counter(&said("open"), "material: quartz").stays_silent();
        let planned = |outline: &str| {
            format!(
                "outline: {outline}\nruns: {{sink wall: {{wall: A, counter: {{depth: 25\", height: 36\"}}, parts: [{{cabinet: drawers, width: 120\"}}]}}}}"
            )
        };
        counter(&planned("12' x 10'"), "finished ends: left").finds_one();
        counter(&planned("10' x 10'"), "finished ends: none").stays_silent();
    }
}
