//! What else a tape can read at an opening, besides its three sizes: each where what goes in there makes it a question.
//!
//! What stands beside and above an opening is the designer's to name, and is measured with the room: its ceiling, its
//! walls, doors and windows and the way in stand on no opening's sheet, and are read into the book itself. That a
//! floor is out of level or a wall out of plumb shows in the heights at both ends and in the plumb lines.

use crate::book::{DetailName, Opening, Room, Service, ServicePoint, ServiceZone};
use crate::language::{Words, say};
use crate::units::{Length, LengthRange};
use crate::views::trades::opening::SheetOpening;
use crate::views::trades::opening_tape::{StillToCome, TapeLine, TapeRange, text};
use crate::vocabulary::{Kind, Slot, Trait};

/// A reading that can be taken besides the sizes.
pub struct More {
    /// What, as it is handed over.
    pub what: &'static str,
    /// Which distance of it.
    pub at: Option<&'static str>,
    /// How its line is called.
    pub name: String,
    /// What its maker's sheet asks of it.
    pub asks: Option<LengthRange>,
    /// Whether it is read from the floor.
    pub from_floor: bool,
}

/// All that can be read here.
pub fn more(words: Words, at: SheetOpening<'_>) -> Vec<More> {
    let opening = at.opening;
    let line = |what: &'static str, key: &str, from_floor| More {
        what,
        at: None,
        name: say!(words, key),
        asks: None,
        from_floor,
    };
    let by_counter = opening.takes_one(Trait::BreaksCounter) || opening.takes_one(Trait::CutIntoCounter);
    let stands = !opening.takes_one(Trait::Hangs) && !opening.takes_one(Trait::CutIntoCounter);
    let apron = at.thing.is_some_and(|(_, option)| option.length(DetailName::ApronHeight).is_some());
    let valve = opening.takes_a(Kind::ShowerSet) || valve_depth(at).is_some() || in_wall(opening, |wall| &wall.valve);
    let lines = [
        (!opening.stands_on_the_floor()).then(|| line("sill", "readings.more.sill", true)),
        stands.then(|| line("in-front", "readings.more.in_front", false)),
        by_counter.then(|| line("counter-depth", "readings.more.counter_depth", false)),
        by_counter.then(|| line("counter-height", "readings.more.counter_height", true)),
        opening.below.get().map(|_| line("below", "readings.more.below", false)),
        (apron || !opening.apron_opening.is_absent()).then(|| line("apron", "readings.more.apron", false)),
        in_wall(opening, |wall| &wall.cavity).then(|| line("cavity", "readings.more.cavity", false)),
        opening.takes_a(Kind::Toilet).then(|| line("rough-in", "readings.more.rough_in", false)),
        valve.then(|| More { asks: valve_depth(at), ..line("valve", "readings.more.valve", false) }),
    ];
    let mut found: Vec<More> = lines.into_iter().flatten().collect();
    found.extend(in_cabinet(words, at));
    found.extend(services(words, at));
    found
}

fn valve_depth(at: SheetOpening<'_>) -> Option<LengthRange> {
    at.thing.and_then(|(_, option)| option.fit.get()?.valve_depth.get().copied())
}

fn in_wall(opening: &Opening, of: impl Fn(&crate::book::Hollow) -> &Slot<Length>) -> bool {
    opening.hollow.get().is_some_and(|wall| !of(wall).is_absent())
}

/// The inside of the cabinet that it is cut into or built into.
fn in_cabinet(words: Words, at: SheetOpening<'_>) -> Vec<More> {
    let housed = at.opening.cabinet.get().is_some() || at.room.holder(&at.opening.name).is_some();
    if !housed && !at.opening.takes_one(Trait::LapsOver) {
        return vec![];
    }
    let asked = at.thing.and_then(|(_, option)| option.fit.get()?.cabinet.get());
    let line = |what, key: &str, asks: Option<LengthRange>| More {
        what,
        at: None,
        name: say!(words, key),
        asks,
        from_floor: false,
    };
    vec![
        line("inside-width", "readings.more.inside_width", asked.and_then(|asked| asked.inside_width.get().copied())),
        line("inside-depth", "readings.more.inside_depth", asked.and_then(|asked| asked.inside_depth.get().copied())),
        line(
            "inside-height",
            "readings.more.inside_height",
            asked.and_then(|asked| asked.inside_height.get().copied()),
        ),
    ]
}

/// Each service that is brought here: from the left edge, above the floor, and how far it stands out.
fn services(words: Words, at: SheetOpening<'_>) -> Vec<More> {
    let fit = at.thing.and_then(|(_, option)| option.fit.get());
    let (there, needs) = (&at.opening.service, fit.map(|fit| &fit.needs));
    let asked = |service: Service| match service {
        Service::Power => !there.power.is_absent() || needs.is_some_and(|needs| !needs.power.is_absent()),
        Service::Gas => !there.gas.is_absent() || needs.is_some_and(|needs| !needs.gas.is_absent()),
        Service::Water => !there.water.is_absent() || needs.is_some_and(|needs| !needs.water.is_absent()),
        Service::Drain => !there.drain.is_absent() || needs.is_some_and(|needs| !needs.drain.is_absent()),
        Service::Duct => !there.duct.is_absent() || needs.is_some_and(|needs| !needs.duct.is_absent()),
    };
    let point = |service: Service| -> Option<&ServicePoint> {
        let points = at.opening.points.get()?;
        points.named().into_iter().find(|(name, _)| *name == service).and_then(|(_, point)| point.get())
    };
    let zone = |service: Service| -> Option<&ServiceZone> {
        let zones = fit?.zones.get()?;
        zones.named().into_iter().find(|(name, _)| *name == service).and_then(|(_, zone)| zone.get())
    };
    let all = [
        (Service::Power, "power", "opening_says.services.power"),
        (Service::Gas, "gas", "opening_says.services.gas"),
        (Service::Water, "water", "opening_says.services.water"),
        (Service::Drain, "drain", "opening_says.services.drain"),
        (Service::Duct, "duct", "opening_says.services.duct"),
    ];
    let here = |(service, _, _): &(Service, &str, &str)| asked(*service) || point(*service).is_some();
    let lines = all.into_iter().filter(here).flat_map(|(service, what, key)| {
        let zone = zone(service);
        // What must be in the cabinet beside is judged by where it is, not by how far it stands out.
        let beside = zone.and_then(|zone| zone.beside.get()).is_some_and(|beside| *beside);
        let proud = zone.and_then(|zone| zone.proud.get()).filter(|_| !beside).map(|most| LengthRange::at_most(*most));
        let each = [
            ("from-left", "readings.more.from_left", zone.and_then(|zone| zone.from_left.get().copied()), false),
            ("height", "readings.more.height", zone.and_then(|zone| zone.height.get().copied()), true),
            ("proud", "readings.more.proud", proud, false),
        ];
        each.map(|(spot, named, asks, from_floor)| More {
            what,
            at: Some(spot),
            name: say!(words, named, service = say!(words, key)),
            asks,
            from_floor,
        })
    });
    lines.collect()
}

impl More {
    /// Its line on the form.
    pub fn line(&self) -> TapeLine {
        TapeLine {
            name: self.name.clone(),
            what: self.what.into(),
            at: self.at.map(Into::into),
            on_screen_alone: self.asks.is_none(),
        }
    }

    /// How it is judged.
    pub fn range(&self, room: &Room) -> TapeRange {
        let asks = self.asks.unwrap_or_default();
        TapeRange {
            what: self.what.into(),
            at: self.at.map(Into::into),
            least: asks.least.map(text),
            most: asks.most.map(text),
            less: if self.from_floor { of_floor(room) } else { vec![] },
            on_floor: self.from_floor,
            ..TapeRange::default()
        }
    }
}

/// What is still to be laid where the tape stands on today's floor.
pub fn of_floor(room: &Room) -> Vec<StillToCome> {
    let to_lay = room.still_to_lay().filter(|to_lay| *to_lay > Length::ZERO);
    to_lay.map(|length| StillToCome { of: "floor".into(), length: text(length) }).into_iter().collect()
}
