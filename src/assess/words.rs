//! Lengths as findings say them: in the book's own units, the other system beside them.

use rust_decimal::Decimal;

use crate::book::Burning;
use crate::finding::{Phrase, Value, phrase};
use crate::site::BehindIs;
use crate::site::heat::Body;
use crate::site::plan::{HoleIs, RowOf, What};
use crate::units::{Area, Length, LengthRange, System, Weight, Wrote};
use crate::vocabulary::Words;

/// A length in both systems, the book's own first: `30 1/16" (763.6 mm)`.
pub fn say(length: Length, system: System) -> Value {
    Value::Length(length, system)
}

/// A length of a room, which feet and inches tell: `8'-1" (2464 mm)`.
pub fn say_room(length: Length, system: System) -> Value {
    Value::OfRoom(length, system)
}

/// The casing of a door or a window.
pub fn casing(of: HoleIs<'_>) -> Phrase {
    match of {
        HoleIs::Door(door) => phrase!("the casing of the door `{}`", door.name.value),
        HoleIs::Window(window) => phrase!("the casing of the window `{}`", window.name.value),
    }
}

/// What stands up behind a counter.
pub fn behind(is: &BehindIs) -> Phrase {
    match is {
        BehindIs::Splash(of) => phrase!("the splash of `{}`", of),
        BehindIs::RaisedBack(of) => phrase!("the raised back of `{}`", of),
        BehindIs::Tile(name) => phrase!("the tile `{}`", name),
        BehindIs::Window(of) => phrase!("the sill and casing of `{}`", of),
    }
}

/// What stands near a cooking surface: `the oak hood`, `` `plates` of the run `uppers` ``.
pub fn near_heat(body: &Body<'_>) -> Phrase {
    match body {
        Body::Said(neighbour, _) => phrase!("the {}", Wrote(&neighbour.value.what)),
        Body::Placed(_, thing, row) => {
            let name = body.chosen().map_or(thing.name, |selection| selection.name.as_str());
            match row {
                Some(RowOf::Run(run)) => phrase!("`{name}` of the run `{}`", name, run.name.value),
                Some(RowOf::Side(island, _)) => phrase!("`{name}` of the island `{}`", name, island.name.value),
                None => phrase!("`{name}` of the plan", name),
            }
        }
        Body::Hood(hood, opening) => phrase!("`{}` in the opening `{}`", hood.name.value, opening.name.value),
        Body::Window(window) => phrase!("the window `{}`", window.name.value),
        Body::Casing(hole) => casing(*hole),
        Body::Wall(wall) if wall.name() == wall.letter => phrase!("wall {}", Wrote(&wall.letter)),
        Body::Wall(wall) => phrase!("the wall `{}`", wall.name()),
        Body::Top(opening) => phrase!("the top of the opening `{}`", opening.name.value),
        Body::Ceiling(_) => "the ceiling".into(),
    }
}

/// Where to say whether that burns.
pub fn where_to_say_it_burns(body: &Body<'_>) -> Phrase {
    let material =
        phrase!("`material` ({})", Phrase::joined(Burning::WORDS.iter().map(|word| Phrase::name(word)), ", "));
    match body {
        Body::Said(_, None) => phrase!("{material} in the opening's `above`", material),
        Body::Said(_, Some(side)) => phrase!("{material} in the opening's `{}`", material, side.word()),
        Body::Placed(..) if body.chosen().is_some() => phrase!("{material} of what is chosen for it", material),
        Body::Placed(_, thing, _) => match thing.what {
            What::Part(_) => phrase!("{material} of this part, or of its run", material),
            _ => phrase!("{material} of what stands there", material),
        },
        Body::Hood(hood, _) => phrase!("{material} of `{}`", material, hood.name.value),
        Body::Window(_) | Body::Casing(HoleIs::Window(_)) => phrase!("{material} of this window", material),
        Body::Casing(HoleIs::Door(_)) => phrase!("{material} of this door", material),
        Body::Wall(wall) => phrase!("{material} of wall {} under `walls`", material, Wrote(&wall.letter)),
        Body::Top(_) => {
            phrase!("{material} in the opening's `above`, with what it is and the height of its lower edge", material)
        }
        Body::Ceiling(_) => phrase!("{material} of the room's `ceiling`, beside its height", material),
    }
}

/// A range of lengths, the book's own units first: `2" to 28"`, `51 mm to 711 mm (2" to 28")`.
pub fn say_range(range: LengthRange, system: System) -> Value {
    Value::Range(range, system)
}

/// Air that is moved, in the book's own units: `600 cfm`, `1019 m³/h`.
pub fn say_air(cfm: u32, system: System) -> Phrase {
    match system.is_metric() {
        false => phrase!("{} cfm", cfm),
        // A foot is 0.3048 m exactly: 1 cfm is 1.699 010 795 52 m³/h.
        true => phrase!("{} m³/h", (u64::from(cfm) * 1_699_011 + 500_000) / 1_000_000),
    }
}

/// Heat that is given in an hour, in the book's own units: `51000 Btu/h`, `11.5 kW`.
pub fn say_heat(btu: u32, system: System) -> Phrase {
    match system.is_metric() {
        false => phrase!("{} Btu/h", btu),
        // 1 Btu (IT) is 1055.055 852 62 J.
        true => {
            let watts = (u64::from(btu) * 293_071 + 500_000) / 1_000_000;
            phrase!("{} kW", Value::Number(Decimal::new(i64::try_from(watts / 10).unwrap_or(i64::MAX), 2).normalize()))
        }
    }
}

/// An area in the book's units: `6.7 m² (≈ 72.1 sq ft)`.
pub fn say_area(area: Area, system: System) -> Value {
    Value::Area(area, system)
}

/// A small free area in the book's units: `200 cm²`, `31 sq in`.
pub fn say_vent(area: Area, system: System) -> Phrase {
    match system.is_metric() {
        false => phrase!("{} sq in", Wrote(&area.square_inches())),
        true => phrase!("{} cm²", Wrote(&area.square_centimetres())),
    }
}

/// A weight in the book's units: `93 kg (≈ 205 lb)`.
pub fn say_weight(weight: Weight, system: System) -> Value {
    Value::Weight(weight, system)
}
