//! The depth stack of what is meant to be flush: body, front panel and what is behind, against the recess.

use crate::book::{DetailName, Opening, Panel, ProductOption, Room, Selection, Service, ServicePoints, Setting, Slot};
use crate::site::row_of;
use crate::source::{Span, Spanned};
use crate::units::{Length, LengthRange};
use crate::vocabulary::{Kind, Mention};

use super::{DimensionCheck, everywhere};

/// How deep a thing stands, from the wall to its front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DepthStack {
    /// The case; or with its own door, where no panel goes before it.
    pub case: Length,
    /// The front panel.
    pub panel: Length,
    /// Air behind it by its sheet, or what stands out of the wall there, whichever is more.
    pub behind: Length,
    /// What stands out of the wall by more than that air, if anything does.
    pub struck: Option<Service>,
}

impl DepthStack {
    /// All of it.
    pub fn total(&self) -> Length {
        self.case + self.panel + self.behind
    }
}

/// Where the front of a thing is meant to be, by the thing or by its opening.
pub fn setting(opening: &Opening, option: &ProductOption) -> Option<(Setting, Span)> {
    let own = option.fact::<Setting>().map(|(set, at)| (*set, at));
    own.or_else(|| opening.setting.spanned().map(|set| (set.value, set.span)))
}

/// The depth stack of an option at its opening; none where the depth of its case is not known.
pub fn depth_stack(room: &Room, opening: &Opening, option: &ProductOption) -> Option<DepthStack> {
    let size = &option.size;
    let fit = option.fit.get();
    let own = panel(room, opening, option).and_then(|panel| panel.thickness.get().copied());
    let of_sheet = || fit?.panel.get()?.thickness.get().and_then(|thickness| thickness.most.or(thickness.least));
    let panel = own.or_else(of_sheet);
    let with_door = size.depth_with_door.get().filter(|_| panel.is_none());
    let case = with_door.or_else(|| size.depth.get()).copied()?;
    let air = fit.map_or(Length::ZERO, |fit| everywhere(&fit.air.back));
    let proud = opening.points.get().and_then(|points| most_proud(points, option));
    let struck = proud.filter(|(_, proud)| *proud > air);
    Some(DepthStack {
        case,
        panel: panel.unwrap_or_default(),
        behind: struck.map_or(air, |(_, proud)| proud),
        struck: struck.map(|(service, _)| service),
    })
}

/// The depth of what is meant to be flush, which its stack decides, with that stack: case, panel and what is behind
/// against the recess. None where it is not, or does not go in even with its front before the others.
pub(super) fn meant_flush(
    room: &Room,
    opening: &Opening,
    option: &ProductOption,
    depth: &DimensionCheck,
) -> Option<(DimensionCheck, DepthStack)> {
    setting(opening, option).filter(|(set, _)| *set == Setting::Flush)?;
    let stack = depth_stack(room, opening, option).filter(|_| depth.misfit().is_none())?;
    let (recess, at) = recess(room, opening)?;
    let most = depth.asked.and_then(|asked| asked.most).filter(|most| *most >= stack.total());
    let asked = most.map(|most| LengthRange { least: depth.least(), most: Some(most) });
    let check = DimensionCheck {
        asked,
        body: Some(stack.case + stack.panel),
        air: stack.behind,
        there: Some(recess),
        there_at: Some(at),
        sheet_alone: false,
        bound: depth.bound || depth.there.is_none(),
        ..depth.clone()
    };
    Some((check, stack))
}

/// The front panel of what goes into an opening: its own, or the line of a cabinet order that is for it, by its
/// name: `Refrigerator panel`.
pub fn panel(room: &Room, opening: &Opening, option: &ProductOption) -> Option<Panel> {
    if let Some(own) = option.panel.get() {
        return Some(own.clone());
    }
    let thing = room.goes_into(&opening.name).next()?;
    let words = |phrase: &str| -> Vec<String> { phrase.to_lowercase().split_whitespace().map(Into::into).collect() };
    let mut lines =
        room.selections.iter().filter(|line| line.is(Kind::Cabinet) && Mention::Panel.is_in(&line.name)).peekable();
    // Most rooms order none: nothing is asked of their names.
    lines.peek()?;
    let wanted = words(&thing.name);
    let is_its = |line: &&Selection| {
        let own = words(&line.name);
        wanted.iter().all(|word| own.contains(word))
    };
    let line = lines.find(is_its).and_then(Selection::settled)?;
    let thickness = line.length(DetailName::Thickness).map(|(length, span)| Slot::Given(Spanned::new(length, span)));
    Some(Panel {
        width: line.size.width.clone(),
        height: line.size.height.clone(),
        thickness: thickness.unwrap_or_else(|| line.size.thickness.clone()),
        weight: line.fit.get().map_or(Slot::Absent, |fit| fit.weight.clone()),
        ..Panel::default()
    })
}

/// What stands out of the wall behind it, past what its sheet lets in.
fn most_proud(points: &ServicePoints, option: &ProductOption) -> Option<(Service, Length)> {
    let zones = option.fit.get().and_then(|fit| fit.zones.get());
    let behind = points.named().into_iter().filter_map(|(service, point)| {
        let point = point.get().filter(|point| point.beside.get() != Some(&true))?;
        let proud = *point.proud.get()?;
        let zone = zones.and_then(|zones| zones.named().into_iter().find(|(name, _)| *name == service));
        let let_in = zone.and_then(|(_, zone)| zone.get()?.proud.get().copied());
        (let_in.is_none_or(|most| proud > most)).then_some((service, proud))
    });
    behind.max_by_key(|(_, proud)| *proud)
}

/// How deep the recess is, to the front that a thing is meant to be flush with: the opening's own depth,
/// else the depth of the cabinets beside it in its run, doors counted.
pub fn recess(room: &Room, opening: &Opening) -> Option<(Length, Span)> {
    let own = opening.governing_depth().zip(opening.depth_at());
    own.or_else(|| {
        let to_come = opening.to_come_on_its_walls()?;
        let place = row_of(room, opening)?;
        let depth = place.depth()?;
        Some((depth.value - to_come.back, depth.span))
    })
}

/// What a panel adds to the depth of a thing whose door is not known to be part of it.
pub fn panel_before(option: &ProductOption) -> Length {
    let own = |slot: &Slot<Length>| slot.get().copied();
    option.panel.get().and_then(|panel| own(&panel.thickness)).unwrap_or_default()
}
