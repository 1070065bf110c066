//! How many of a thing the plan sets out as fixtures or in the boxes of switches and outlets, against what is ordered; and what is chosen and not ordered.

use crate::assess::about;
use crate::book::{Fixture, ProductOption, Room, Selection, WallBox};
use crate::finding::{Remark, Severity, phrase};
use crate::source::Span;
use crate::units::Counted;
use crate::vocabulary::Kind;

/// What comes in parts that the plan may set out one by one.
const OF_PARTS: [Kind; 4] = [Kind::ShowerGlass, Kind::ShowerSet, Kind::Cabinet, Kind::Cistern];

/// Fewer ordered than stand in the plan, or none.
pub fn judge((room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let ordered = option.quantity.spanned()?;
    let in_pieces = matches!(ordered.value.counted(), Counted::Unsaid | Counted::Pieces | Counted::Lights);
    let there = ordered.value.whole().filter(|_| in_pieces)?;
    let name = &selection.name.value;
    if there == 0 {
        let message = phrase!("`{name}` is chosen, and none is ordered", name);
        let finding = about(room, selection, option, Severity::Query, ordered.span, message);
        return Some(finding.remedy("say how many, or leave the selection out"));
    }
    let (wanted, at) = set_out(room, selection).filter(|(wanted, _)| *wanted > there)?;
    let message = phrase!("{wanted} of `{name}` are set out, and {there} ordered", wanted, name, there);
    let finding = about(room, selection, option, Severity::Stop, ordered.span, message);
    Some(finding.also(at, "set out here").remedy(phrase!("order {wanted}, or correct the plan", wanted)))
}

/// How many fixtures of one kind are of a selection, or how many of it boxes hold, and where the last of them is
/// written. A vanity and the basin in it may be one thing.
fn set_out(room: &Room, selection: &Selection) -> Option<(u64, Span)> {
    let kind = selection.kind.get().filter(|kind| !OF_PARTS.contains(kind))?;
    let is_its = |fixture: &&Fixture| fixture.selection.get() == Some(&selection.name.value);
    let is_one = |fixture: &&Fixture| fixture.takes.get().is_none_or(|takes| takes == kind);
    let own: Vec<&Fixture> = room.fixtures.iter().filter(is_its).filter(is_one).collect();
    let boxes = room.switches.iter().chain(&room.outlets);
    let boxes: Vec<&WallBox> = boxes.filter(|one| one.selection.get() == Some(&selection.name.value)).collect();
    let held: u64 = boxes.iter().map(|one| u64::from(one.holds())).sum();
    let last = boxes.last().map(|one| one.name.span).or_else(|| Some(own.last()?.name.span))?;
    Some((u64::try_from(own.len()).ok()? + held, last))
}
