//! What is near a cooking surface, on its sheet: from the same answers that the review judges.

use crate::book::Burning;
use crate::language::{Words, say};
use crate::site::Around;
use crate::site::fitting::{Rises, Side, rises};
use crate::site::heat::{Body, DistanceSource, Hearth, Near, Where, nearest};
use crate::site::plan::{HoleIs, RowOf};
use crate::views::pages::PageBuilder;
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines::{capital, neighbour_name, thing_name};
use crate::views::shared::sheet::Fact;
use crate::views::shared::{figures, found};
use crate::views::trades::opening::SheetOpening;

impl PageBuilder<'_> {
    /// What must stay clear above and beside what is cooked on, and what is there; nothing for what is not.
    pub fn heat_facts(&self, around: &Around<'_>, at: SheetOpening<'_>) -> Vec<Fact> {
        let Some(hearth) = &around.hearth else { return vec![] };
        let places = [
            ("heat.above", Where::Above, hearth.above()),
            ("heat.left", Where::Beside(Side::Left), hearth.beside(Side::Left)),
            ("heat.right", Where::Beside(Side::Right), hearth.beside(Side::Right)),
        ];
        let told = places.into_iter().filter_map(|(key, place, near)| {
            let value = match nearest(&near) {
                Some(near) => self.near(near),
                None => self.kept_clear(hearth, at, place)?,
            };
            Some(self.worded(key, value))
        });
        told.collect()
    }

    /// What is there, how near, and what is asked.
    fn near(&self, near: &Near<'_>) -> Html {
        let length = |length| figures::length(self.wording, length);
        let burning = say!(
            self.words,
            match near.burning {
                None => "heat.unknown",
                Some(Burning::Burns) if near.under_a_hood => "heat.under_hood",
                Some(burning) => burning_word(burning),
            }
        );
        let told = show!(
            self.words,
            "heat.near",
            what = capital(&body(self.words, &near.body)),
            distance = length(near.distance),
            burning = burning,
            asked = length(near.asked.length),
            source = source(self.words, near.asked.whose, &near.asked.source),
        );
        match near.short() {
            Some(short) => told.then(" ").then(show!(self.words, "heat.short", by = length(short))),
            None => told,
        }
    }

    /// What is asked where nothing is known to stand, or nobody says how near.
    fn kept_clear(&self, hearth: &Hearth<'_>, at: SheetOpening<'_>, place: Where) -> Option<Html> {
        let asked = hearth.asks(place)?;
        let source = source(self.words, asked.whose, &asked.source);
        let length = figures::length(self.wording, asked.length);
        let written = match place {
            Where::Above => at.opening.above.get(),
            Where::Beside(Side::Left) => at.opening.left.get(),
            Where::Beside(Side::Right) => at.opening.right.get(),
        };
        Some(match written {
            Some(there) if there.is_nothing() => show!(self.words, "heat.clear", asked = length, source = source),
            None => show!(self.words, "heat.nothing", asked = length, source = source),
            Some(there) => {
                let what = capital(&neighbour_name(self.words, there));
                let is_low = place != Where::Above
                    && hearth.surface().is_some_and(|surface| rises(there, Some(surface)) == Rises::ToTheCounter);
                let harmless = there.burning.get().copied().filter(|burning| *burning != Burning::Burns);
                match (harmless, is_low) {
                    (Some(burning), _) => {
                        let burning = say!(self.words, burning_word(burning));
                        show!(
                            self.words,
                            "heat.harmless",
                            what = what,
                            burning = burning,
                            asked = length,
                            source = source
                        )
                    }
                    (None, true) => show!(self.words, "heat.low", what = what, asked = length, source = source),
                    (None, false) => show!(self.words, "heat.untold", what = what, asked = length, source = source),
                }
            }
        })
    }
}

/// Whether something burns.
const fn burning_word(burning: Burning) -> &'static str {
    match burning {
        Burning::Burns => "heat.burns",
        Burning::Shielded => "heat.shielded",
        Burning::DoesNotBurn => "heat.does_not_burn",
    }
}

/// What stands near what is cooked on, by its name.
pub fn body(words: Words, body: &Body<'_>) -> String {
    match body {
        Body::Said(neighbour, _) => neighbour_name(words, &neighbour.value),
        Body::Placed(_, thing, row) => {
            let name = body.chosen().map_or_else(|| thing_name(words, thing), |selection| selection.name.value.clone());
            match row {
                Some(RowOf::Run(run)) => say!(words, "heat.body.of_run", name = name, row = run.name.value),
                Some(RowOf::Side(island, _)) => {
                    say!(words, "heat.body.of_island", name = name, row = island.name.value)
                }
                None => name,
            }
        }
        Body::Hood(hood, _) => hood.name.value.clone(),
        Body::Window(window) => say!(words, "heat.body.window", name = window.name.value),
        Body::Casing(HoleIs::Door(door)) => say!(words, "heat.body.door_casing", name = door.name.value),
        Body::Casing(HoleIs::Window(window)) => say!(words, "heat.body.window_casing", name = window.name.value),
        Body::Wall(wall) => say!(words, "heat.body.wall", name = wall.name()),
        Body::Top(_) => say!(words, "heat.body.top"),
        Body::Ceiling(_) => say!(words, "heat.body.ceiling"),
    }
}

fn source(words: Words, whose: DistanceSource, source: &str) -> Html {
    match whose {
        DistanceSource::Sheet => show!(words, "heat.sheet"),
        DistanceSource::SheetAbove => show!(words, "heat.sheet_above"),
        DistanceSource::Figure => found::source(words, source),
    }
}
