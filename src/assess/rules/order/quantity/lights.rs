//! Lights: how many the room sets out, and of what kind, against what is ordered.

use crate::assess::rules::Findings;
use crate::assess::{Context, about};
use crate::book::{HungLights, ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::source::Span;
use crate::units::Counted;
use crate::vocabulary::{Kind, Trade};

/// Tells of lights that are set out and not ordered, ordered and not set out, or are none.
pub fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        findings.extend(room.lights.iter().filter_map(|lights| no_light(room, lights)));
    }
    for (room, selection, option) in context.site.options() {
        findings.extend(number(room, selection, option));
    }
}

/// Whether a plan may set it out as it does lights: it is one, or a fan, which is let into a ceiling as they are.
fn is_light(selection: &Selection) -> bool {
    selection.is(Kind::Fan) || selection.kind.get().is_some_and(|kind| kind.trade() == Trade::Lighting)
}

/// Lights of the plan for which something else is chosen.
fn no_light(room: &Room, lights: &HungLights) -> Option<Remark> {
    let named = lights.selection.spanned()?;
    let selection = room.selections.iter().find(|selection| selection.name.value == named.value)?;
    let kind = selection.kind.get().filter(|_| !is_light(selection))?;
    let message = phrase!("the plan hangs `{}` as lights, and it is a {kind}", named.value, kind);
    let finding = Remark::query(named.span, message).room(&room.folder);
    Some(finding.selection(&selection.name).remedy("name the selection of the lights"))
}

/// How many the plan sets out in all, and where the first of them is written.
fn set_out(room: &Room, selection: &Selection) -> Option<(u32, Span)> {
    let own = room.lights.iter().filter(|lights| lights.selection.get() == Some(&selection.name.value));
    let counted = own.map(|lights| {
        let at = lights.at.spanned().and_then(|at| Some((u32::try_from(at.value.0.len()).ok()?, at.span)));
        at.or_else(|| lights.count.spanned().map(|count| (count.value, count.span)))
    });
    let counted: Option<Vec<(u32, Span)>> = counted.collect();
    let counted = counted?;
    let (_, at) = *counted.first()?;
    Some((counted.iter().map(|(count, _)| *count).fold(0, u32::saturating_add), at))
}

fn number(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let ordered = option.quantity.spanned().filter(|_| is_light(selection))?;
    let in_pieces = matches!(ordered.value.counted(), Counted::Unsaid | Counted::Pieces | Counted::Lights);
    let there = ordered.value.whole().filter(|_| in_pieces).and_then(|there| u32::try_from(there).ok())?;
    let listed = selection.hangs.get().and_then(|hangs| hangs.at.spanned());
    let listed = listed.and_then(|at| Some((u32::try_from(at.value.0.len()).ok()?, at.span)));
    let planned = set_out(room, selection);
    let (wanted, at) = planned.into_iter().chain(listed).max_by_key(|(count, _)| *count)?;
    let name = &selection.name.value;
    let (severity, message, remedy) = if there < wanted {
        let message = phrase!("{wanted} of `{name}` are set out, and {there} ordered", wanted, name, there);
        (Severity::Stop, message, phrase!("order {wanted}, or correct where they hang", wanted))
    } else if there > wanted {
        let message = phrase!("{there} of `{name}` are ordered, and {wanted} set out", there, name, wanted);
        (Severity::Query, message, "say where the others hang, or order fewer".into())
    } else {
        return None;
    };
    let finding = about(room, selection, option, severity, ordered.span, message);
    Some(finding.also(at, "set out here").remedy(remedy))
}
