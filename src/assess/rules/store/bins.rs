//! Bins that nobody has placed, or that stand away from the sink.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{BinPlace, Room, Selection};
use crate::finding::{Remark, phrase};
use crate::vocabulary::{Kind, Trait};

declare! {
    /// No bin stands near the sink, or none near where food is prepared
    ///
    /// ## What it checks
    /// A room with a sink whose cabinets say what they hold (`stores`): bins for waste are near the sink
    /// and the place of preparation (`bins near`).
    ///
    /// ## Why it matters
    /// What drips is carried as far as the bin is away. Bins are used next to sink, cooktop, preparation
    /// and refrigerator; anywhere else they stand open in the middle of the floor.
    ///
    /// ## Remedy
    /// Give a pull-out beside the sink to bins, and say so with `bins near`.
    ///
    /// ## Example
    /// ```yaml
    /// stores: {bins near: [sink, preparation]}
    /// ```
    ///
    /// ## Source
    /// Common practice.
    "store/bins", Note,
    due: CabinetsOrdered, tells: [Client],
    living: "living.store.bins",
    judges: [Cabinet],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.book.rooms.iter().filter_map(judge));
}

fn judge(room: &Room) -> Option<Remark> {
    let stands = |of: &dyn Fn(&Selection) -> bool| room.selections.iter().any(of);
    if room.holds_an_unknown_kind()
        || !stands(&|selection| selection.is(Kind::Sink))
        || !stands(&|selection| selection.has(Trait::Cooks))
    {
        return None;
    }
    let stored: Vec<_> = room
        .selections
        .iter()
        .filter(|selection| selection.is(Kind::Cabinet))
        .flat_map(|selection| selection.standing().iter().map(move |option| (selection, option)))
        .filter_map(|(selection, option)| Some((selection, option.stores.spanned()?)))
        .collect();
    let near = |place: BinPlace| {
        stored.iter().any(|(_, stores)| stores.value.bins_near.iter().any(|near| near.value == place))
    };
    let (cabinets, first) = stored.first()?;
    if near(BinPlace::Sink) || near(BinPlace::Preparation) {
        return None;
    }
    let message = phrase!("no bin stands near the sink or the place of preparation in `{}`", room.title());
    let finding = Remark::note(first.span, message).room(&room.folder);
    let remedy = "give a pull-out beside the sink to bins, and say at that cabinet what they are near: `stores: {bins near: […]}`";
    Some(finding.selection(&cabinets.name).source("common practice").remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn kitchen(stores: &str) -> Trial {
        Trial::of("store/bins")
            .selection("selection: Sink\nkind: sink", "")
            .selection("selection: Range\nkind: range", "")
            .selection("selection: Cabinets\nkind: cabinet", stores)
    }

    #[test]
    fn a_kitchen_whose_storage_is_planned_has_a_bin_near_the_sink() {
        kitchen("stores: {depth: 24\", shelves: roll-out}")
            .finds("no bin stands near the sink or the place of preparation in `Kitchen`")
            .weighs("note");
        kitchen("stores: {bins near: [refrigerator]}").finds_one();
        kitchen("stores: {bins near: [sink]}").stays_silent();
        kitchen("").stays_silent();
    }
}
