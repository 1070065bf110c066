//! A tile field that ends in the open with nothing to end it.

use super::{has_no_trim, is_tile};
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::finding::{Severity, phrase};
use crate::units::Length;

declare! {
    /// A field of tile ends with no trim, or nobody says where it ends
    ///
    /// ## What it checks
    /// Tile whose `edge trim` is `none`: how much of its edge ends against nothing (`laid: open
    /// edges`). More than nothing stops; nobody saying is a query. A word on how it ends (`none; it
    /// runs under the door`) is enough.
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
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
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
        let at = option.detail("edge trim").map_or(selection.span, |detail| detail.span);
        findings.push(about(room, selection, option, severity, at, message).remedy(remedy));
    }
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
            .finds("14'-0\" (4267.2 mm) of the edges of `Splash` end against nothing, and no trim is ordered")
            .weighs("stop");
        tile("glazed edge pieces", "open edges: 14'").stays_silent();
        tile("none", "").finds("`Splash` gets no trim, and nobody says where it ends").weighs("query");
        tile("none", "open edges: 0\"").stays_silent();
        tile("none; it ends at the casings", "").stays_silent();
    }
}
