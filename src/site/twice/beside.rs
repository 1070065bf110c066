//! What an opening says of what stands beside and below it, against the row that it stands in.

use crate::book::{Below, BesideWord, End, InRow, Neighbour, Opening, PartIs, Room, Run};
use crate::site::fitting::{Side, held_below};
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::source::{Span, Spanned};
use crate::vocabulary::{Kind, Mention, Trait};

use super::{ComparedValue, Differ, Joined, TOLERANCE, Twice};

/// What stands at a side, as far as a word or a row tells it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stands {
    /// Nothing: it is open there.
    Nothing,
    /// What is built, and no cabinet.
    Building,
    /// A panel.
    Panel,
    /// A cabinet.
    Cabinet,
    /// An appliance, or a sink in its base.
    Appliance(Kind),
}

/// What differs from the row that an opening stands in.
pub(super) fn of_opening<'a>(room: &'a Room, opening: &'a Opening) -> Vec<Twice<'a>> {
    let sides = [Side::Left, Side::Right];
    let mut all: Vec<Twice<'a>> = sides.into_iter().filter_map(|side| beside(room, opening, side)).collect();
    all.extend(below(room, opening));
    all.extend(clear_below(room, opening));
    all
}

/// What the words of a neighbour say of it; none where they are a name, or say more than one thing.
fn said(neighbour: &Neighbour) -> Option<Stands> {
    let what = neighbour.what.as_str();
    if neighbour.is_nothing() {
        return Some(Stands::Nothing);
    }
    if Mention::Panel.is_in(what) {
        return Some(Stands::Panel);
    }
    let kind = Kind::of_a_neighbour(what);
    if let Some(kind) = kind {
        return Some(Stands::Appliance(kind));
    }
    let is_built = Mention::Built.is_in(what) || neighbour.word() == Some(BesideWord::Window);
    if is_built && !Mention::Furniture.is_in(what) && !Mention::Low.is_in(what) && !Mention::Tall.is_in(what) {
        return Some(Stands::Building);
    }
    matches!(neighbour.word(), Some(BesideWord::BaseCabinet | BesideWord::Cabinet)).then_some(Stands::Cabinet)
}

/// What a row has at a side of one of its parts, past fillers and panels, and where; the last that it tells there where
/// it ends, which is a panel or none.
struct InItsRow<'a> {
    /// The next cabinet or opening.
    next: Option<&'a crate::book::Part>,
    /// Whether a panel stands between, or ends the row.
    has_a_panel: bool,
    /// Where it is written.
    at: Span,
}

fn in_its_row<'a>(place: &InRow<'a>, run: &Run, side: Side) -> Option<InItsRow<'a>> {
    let forward = (run.from == End::Left) == (side == Side::Right);
    let (before, from) = place.parts.split_at_checked(place.number)?;
    let after = from.get(1..).unwrap_or_default();
    let others: Vec<_> = if forward { after.iter().collect() } else { before.iter().rev().collect() };
    let mut found = InItsRow { next: None, has_a_panel: false, at: place.part.span };
    for part in others {
        match part.is {
            PartIs::Filler(_) => {}
            PartIs::Panel(_) => found.has_a_panel = true,
            // Whatever stands in a gap is not told by its row.
            PartIs::Gap(_) => return None,
            PartIs::Cabinet(_) | PartIs::Tall(_) | PartIs::Opening(_) => {
                return Some(InItsRow { next: Some(part), at: part.span, ..found });
            }
        }
    }
    Some(found)
}

fn beside<'a>(room: &'a Room, opening: &'a Opening, side: Side) -> Option<Twice<'a>> {
    let neighbour = side.of(opening).spanned()?;
    let says = said(&neighbour.value)?;
    let place = room.part_of(&opening.name)?;
    let run = place.run?;
    let row = in_its_row(&place, run, side)?;
    let differs: &'a str = match row.next {
        None if says == Stands::Panel && !row.has_a_panel => "no panel",
        Some(next) if !agrees(room, &neighbour.value, says, next) => next.is.word(),
        _ => return None,
    };
    let spot = Spot::Opening(&opening.name);
    let value = ComparedValue::Word(&neighbour.value.what);
    let counts = SourcedFigure { value, at: neighbour.span, provenance: Provenance::Written, spot };
    let (provenance, spot) = (Provenance::Plan, Spot::Run(&run.name));
    Some(Twice {
        about: &opening.name,
        what: if side == Side::Left { "what stands at the left" } else { "what stands at the right" },
        joined: Joined::Of,
        counts,
        differs: SourcedFigure { value: ComparedValue::Word(differs), at: row.at, provenance, spot },
        how: Differ::Apart,
        decides_a_fit: false,
    })
}

/// Whether what is said to stand there can be the part that does.
fn agrees(room: &Room, neighbour: &Neighbour, says: Stands, next: &crate::book::Part) -> bool {
    let is_named = next.is.word().eq_ignore_ascii_case(&neighbour.what);
    let held = next.holds.iter().filter_map(|name| room.opening(&name.value)?.takes.get());
    let own = match &next.is {
        PartIs::Opening(name) => match room.opening(name).and_then(|other| other.takes.get()) {
            Some(kind) => Some(*kind),
            // Of what nobody can say what it is, nothing is told.
            None => return true,
        },
        _ => None,
    };
    is_named
        || match says {
            Stands::Nothing | Stands::Building => false,
            // The side of a tall cabinet, or of what is built in, is a panel too.
            Stands::Panel => true,
            Stands::Cabinet => own.is_none_or(|kind| !kind.is(Trait::Cooks) || kind.is(Trait::CutIntoCounter)),
            Stands::Appliance(said) => {
                let names_it = Kind::of_a_neighbour(next.is.word()).is_some_and(|kind| is_one(said, kind));
                names_it
                    || own.is_some_and(|kind| is_one(said, kind))
                    || held.into_iter().any(|kind| is_one(said, *kind))
            }
        }
}

/// Whether two kinds may be one thing, called so and so.
fn is_one(one: Kind, other: Kind) -> bool {
    const FAMILIES: [&[Kind]; 4] = [
        &[Kind::Refrigerator, Kind::PanelRefrigerator],
        &[Kind::Dishwasher, Kind::PanelDishwasher],
        &[Kind::Range, Kind::Cooktop, Kind::WallOven, Kind::Microwave, Kind::WarmingDrawer],
        &[Kind::Washer, Kind::Dryer],
    ];
    one == other || FAMILIES.iter().any(|family| family.contains(&one) && family.contains(&other))
}

/// More that is said to be clear below a thing than what the same cabinet holds leaves.
fn clear_below<'a>(room: &'a Room, opening: &'a Opening) -> Option<Twice<'a>> {
    let clear = opening.below.get()?.clear.spanned()?;
    let held = held_below(room, opening)?;
    let planned = SourcedFigure {
        value: held.clear,
        at: held.at,
        provenance: Provenance::Plan,
        spot: Spot::ByThePlan(held.kind.name()),
    };
    let written = SourcedFigure::written(clear, Spot::Opening(&opening.name));
    let is_more = written.value > planned.value + TOLERANCE;
    is_more.then(|| Twice::of(&opening.name, "what is clear below", (written, planned), Differ::Apart).at_it())
}

/// What is said to be below a thing, against the cabinet that holds it.
fn below<'a>(room: &'a Room, opening: &'a Opening) -> Option<Twice<'a>> {
    let below: &Below = opening.below.get()?;
    let what: &Spanned<String> = &below.what;
    let place = room.holder(&opening.name)?;
    let is_below = |kind: &&Kind| !kind.is(Trait::CutIntoCounter);
    let held = place.part.holds.iter().filter_map(|name| Some((name, room.opening(&name.value)?.takes.get()?)));
    let held: Vec<_> = held.filter(|(_, kind)| is_below(kind)).collect();
    let said = [(Mention::Oven, Kind::WallOven), (Mention::Dishwasher, Kind::Dishwasher)];
    let said = said.into_iter().find(|(mention, _)| mention.is_in(&what.value)).map(|(_, kind)| kind);
    let has_drawers = place.part.drawers.get().is_some_and(|count| *count > 0);
    let (value, at) = match (said, held.first()) {
        (Some(said), Some((name, kind))) if !held.iter().any(|(_, kind)| is_one(said, **kind)) => {
            (kind.name(), name.span)
        }
        (Some(_), None) if has_drawers => ("drawers", place.part.span),
        // Nothing at all, and no figure, is asked about where the thing reaches down.
        (None, _) if has_drawers && below.is_said_to_be_free() && !below.clear.is_absent() => {
            ("drawers", place.part.span)
        }
        (None, Some((name, kind))) if below.is_said_to_be_free() => (kind.name(), name.span),
        (None, Some((name, kind))) if Mention::Drawer.is_in(&what.value) && !has_drawers => (kind.name(), name.span),
        _ => return None,
    };
    let spot = place.run.map_or(Spot::Room, |run| Spot::Part(place.part.is.word(), &run.name));
    let written = SourcedFigure {
        value: ComparedValue::Word(&what.value),
        at: what.span,
        provenance: Provenance::Written,
        spot: Spot::Opening(&opening.name),
    };
    Some(Twice {
        about: &opening.name,
        what: "what stands below",
        joined: Joined::At,
        counts: written,
        differs: SourcedFigure { value: ComparedValue::Word(value), at, provenance: Provenance::Plan, spot },
        how: Differ::Apart,
        decides_a_fit: false,
    })
}
