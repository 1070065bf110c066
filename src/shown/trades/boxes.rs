//! The boxes of switches and outlets by their places, and from where each light is worked.

use crate::book::{End, Fixture, Room, Selection, WallBox};
use crate::site::lights::set_out;
use crate::site::plan::{Plan, Stands, chosen_for};
use crate::units::Length;
use crate::vocabulary::{Kind, Shown, ShownField, ShownValue, Since, Words};

use super::InRoom;
use super::built::BuiltTable;
use super::cells::{dash, from, length, named, or_dash, text};

/// A box, wherever the book has it.
struct Placed<'a> {
    name: &'a str,
    selection: Option<&'a Selection>,
    holds: u32,
    /// What it is in, and its centre from the left end of that.
    stands: Option<Stands>,
    along: Option<Length>,
    /// The door or window that it is set out from.
    beside: Option<&'a str>,
    height: Option<Length>,
    /// What it works, of a switch; what is there to plug in, of an outlet.
    serves: ShownValue,
    note: ShownValue,
}

impl<'a> Placed<'a> {
    fn of(at: InRoom<'a, '_>, one: &'a WallBox, serves: ShownValue) -> Self {
        let place = at.plan.and_then(|plan| plan.wall_box(one));
        Self {
            name: &one.name.value,
            selection: one.selection.get().and_then(|name| called(at.room, name)),
            holds: one.holds(),
            stands: place.map(|place| place.stands),
            along: place.and_then(|place| place.along),
            beside: one.beside.get().map(String::as_str),
            height: one.height.get().copied(),
            serves,
            note: one.note.shown(),
        }
    }

    /// An outlet that is set out as fixtures are, by its bottom and its height.
    fn of_fixture(at: InRoom<'a, '_>, fixture: &'a Fixture) -> Self {
        let wall = at.plan.and_then(|plan| {
            let number = plan.wall_named(fixture.wall.get()?)?;
            Some((number, plan.walls.get(number)?.frame.length()))
        });
        let along = wall.zip(fixture.centre.get()).map(|((_, long), centre)| match fixture.from {
            End::Left => *centre,
            End::Right => long - *centre,
        });
        let sides = fixture.sill.get().zip(fixture.height.get());
        Self {
            name: &fixture.name.value,
            selection: chosen_for(at.room, fixture),
            holds: 1,
            stands: wall.map(|(number, _)| Stands::Wall(number)),
            along,
            beside: None,
            height: sides.map(|(sill, high)| *sill + high.half()),
            serves: ShownValue::Nothing,
            note: ShownValue::Nothing,
        }
    }

    fn row(&self, at: InRoom<'_, '_>, notes: bool) -> Vec<ShownValue> {
        let mut row = vec![
            text(self.name),
            self.selection.map_or(ShownValue::Nothing, named),
            text(self.holds.to_string()),
            self.along_its_face(at).unwrap_or(ShownValue::Nothing),
            self.beside_a_door(at),
            length(self.height),
            self.serves.clone(),
        ];
        row.extend(notes.then(|| or_dash(self.note.clone())));
        row
    }

    /// Its centre from the left end of its wall, or of the side of an island.
    fn along_its_face(&self, at: InRoom<'_, '_>) -> Option<ShownValue> {
        let along = self.along?;
        Some(match self.stands? {
            Stands::Wall(wall) => from(at.plan?.walls.get(wall)?.name(), along),
            Stands::Island(number, side) => {
                let field = |key, value| ShownField::new(key, Since::Second, value);
                let island = at.room.islands.get(number)?;
                ShownValue::Group(vec![
                    field("name", text(island.name.value.clone())),
                    field("by", ShownValue::Word(side.word())),
                    field("at", ShownValue::Length(along)),
                ])
            }
        })
    }

    /// From the door or window that it is set out from, else from the nearest one in its wall.
    fn beside_a_door(&self, at: InRoom<'_, '_>) -> ShownValue {
        let (Some(plan), Some(Stands::Wall(wall)), Some(along)) = (at.plan, self.stands, self.along) else {
            return if matches!(self.stands, Some(Stands::Island(..))) { dash() } else { ShownValue::Nothing };
        };
        let told = |(name, away): (&str, Length)| from(name, away);
        let own = self.beside.and_then(|name| {
            let hole = plan.holes.iter().find(|hole| hole.name() == name)?;
            Some((name, (hole.along.0 - along).max(along - hole.along.1)))
        });
        own.or_else(|| nearest(plan, wall, along)).map_or_else(dash, told)
    }
}

fn nearest<'p>(plan: &'p Plan<'_>, wall: usize, along: Length) -> Option<(&'p str, Length)> {
    plan.nearest_hole(wall, along).map(|(hole, away)| (hole.name(), away))
}

fn called<'a>(room: &'a Room, name: &str) -> Option<&'a Selection> {
    room.selections.iter().find(|selection| selection.name.value == name)
}

/// Switches, with what they work.
pub fn switches(at: InRoom<'_, '_>) -> BuiltTable {
    let works = |one: &WallBox| ShownValue::List(one.works.iter().map(|name| text(name.value.clone())).collect());
    let placed: Vec<Placed<'_>> = at.room.switches.iter().map(|one| Placed::of(at, one, works(one))).collect();
    table(at, "switches", "works", &placed)
}

/// Outlets besides those behind what goes into openings.
pub fn sockets(at: InRoom<'_, '_>) -> BuiltTable {
    let own = at.room.outlets.iter().map(|one| Placed::of(at, one, one.power.shown()));
    let is_one = |fixture: &&Fixture| {
        let is_chosen = || chosen_for(at.room, fixture).is_some_and(|chosen| chosen.is(Kind::Outlet));
        fixture.takes.get().map_or_else(is_chosen, |kind| *kind == Kind::Outlet)
    };
    let fixtures = at.room.fixtures.iter().filter(is_one).map(|fixture| Placed::of_fixture(at, fixture));
    let placed: Vec<Placed<'_>> = own.chain(fixtures).collect();
    table(at, "sockets", "there", &placed)
}

fn table(at: InRoom<'_, '_>, key: &'static str, serves: &'static str, placed: &[Placed<'_>]) -> BuiltTable {
    let notes = placed.iter().any(|one| !one.note.is_empty());
    let mut rows: Vec<Vec<ShownValue>> = placed.iter().map(|one| one.row(at, notes)).collect();
    for selection in &at.room.selections {
        let is_its = |one: &&Placed<'_>| one.selection.is_some_and(|own| std::ptr::eq(own, selection));
        let set_out: u64 = placed.iter().filter(is_its).map(|one| u64::from(one.holds)).sum();
        let more = ordered(selection).filter(|ordered| set_out > 0 && *ordered > set_out);
        rows.extend(more.map(|ordered| {
            let mut row = vec![named(selection), dash(), text((ordered - set_out).to_string())];
            row.resize(if notes { 8 } else { 7 }, ShownValue::Nothing);
            row
        }));
    }
    let mut columns = vec!["box", "chosen", "how many", "from wall end", "from door", "aff", serves];
    columns.extend(notes.then_some("note"));
    BuiltTable { key, of: String::new(), columns, rows }
}

/// How many are ordered, where all that may stand are ordered alike.
fn ordered(selection: &Selection) -> Option<u64> {
    let mut all = selection.standing().iter().map(|option| option.quantity.get().and_then(|quantity| quantity.whole()));
    let first = all.next()??;
    all.all(|other| other == Some(first)).then_some(first)
}

/// Whether the place of some of a selection is told here.
pub fn is_set_out(room: &Room, selection: &Selection) -> bool {
    let in_box = |one: &WallBox| one.selection.get() == Some(&selection.name.value);
    let by_fixture = |fixture: &Fixture| {
        selection.is(Kind::Outlet) && chosen_for(room, fixture).is_some_and(|chosen| std::ptr::eq(chosen, selection))
    };
    room.switches.iter().chain(&room.outlets).any(in_box) || room.fixtures.iter().any(by_fixture)
}

/// From where each of some things is worked.
pub fn worked<'a>(room: &'a Room, things: impl Iterator<Item = &'a Selection>) -> BuiltTable {
    let row = |selection: &Selection| {
        let its_lights = set_out(room, selection);
        let is_it =
            |name: &String| *name == selection.name.value || its_lights.iter().any(|lights| lights.name.value == *name);
        let by = room.switches.iter().filter(|one| one.works.iter().any(|name| is_it(&name.value)));
        let names: Vec<ShownValue> = by.map(|one| text(one.name.value.clone())).collect();
        vec![named(selection), if names.is_empty() { ShownValue::Nothing } else { ShownValue::List(names) }]
    };
    BuiltTable {
        key: "worked",
        of: String::new(),
        columns: vec!["thing", "worked from"],
        rows: things.map(row).collect(),
    }
}

/// Whether the book says of any switch what it works.
pub fn is_told(room: &Room) -> bool {
    room.switches.iter().any(|one| !one.works.is_empty())
}
