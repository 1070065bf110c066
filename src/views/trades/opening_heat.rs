//! What is near a cooking surface, on its sheet: from the same answers that the review judges.

use crate::assess::codes::Rulings;
use crate::book::Burning;
use crate::language::{Words, say};
use crate::site::Placement;
use crate::site::fitting::Side;
use crate::site::heat::{Body, DistanceSource, Hearth, Near, Where, nearest};
use crate::site::plan::{HoleIs, Plans, RowOf};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines::capital;
use crate::views::shared::sheet::Fact;
use crate::views::trades::opening::SheetOpening;

impl PageBuilder<'_> {
    /// What must stay clear above and beside what is cooked on, and what is there; nothing for what is not.
    pub fn heat_facts(&self, plans: &Plans<'_>, at: SheetOpening<'_>) -> Vec<Fact> {
        let Some(hearth) = self.hearth(plans, at) else { return vec![] };
        let places = [
            ("heat.above", Where::Above, hearth.above()),
            ("heat.left", Where::Beside(Side::Left), hearth.beside(Side::Left)),
            ("heat.right", Where::Beside(Side::Right), hearth.beside(Side::Right)),
        ];
        let told = places.into_iter().filter_map(|(key, place, near)| {
            let value = match nearest(&near) {
                Some(near) => self.near(near),
                None => self.kept_clear(&hearth, place)?,
            };
            Some(self.worded(key, value))
        });
        told.collect()
    }

    /// The cooking surface at an opening; none for what has none.
    pub fn hearth<'p>(&self, plans: &'p Plans<'p>, at: SheetOpening<'p>) -> Option<Hearth<'p>>
    where
        Self: 'p,
    {
        let (selection, option) = at.thing?;
        let fitted = Placement::at((at.room, at.opening), (selection, option));
        Hearth::of(fitted, plans.room(at.room), Rulings::of(&self.subject.book.project).heat())
    }

    /// What is there, how near, and what is asked.
    fn near(&self, near: &Near<'_>) -> Html {
        let length = |length| figures::length(self.wording, length);
        let burning = say!(
            self.words,
            match near.burning {
                None => "heat.unknown",
                Some(Burning::Burns) if near.under_a_hood => "heat.under_hood",
                Some(Burning::Burns) => "heat.burns",
                Some(Burning::Shielded) => "heat.shielded",
                Some(Burning::DoesNotBurn) => "heat.does_not_burn",
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

    /// What is asked where nothing is known to stand.
    fn kept_clear(&self, hearth: &Hearth<'_>, place: Where) -> Option<Html> {
        let asked = hearth.asks(place)?;
        let source = source(self.words, asked.whose, &asked.source);
        Some(show!(self.words, "heat.nothing", asked = figures::length(self.wording, asked.length), source = source))
    }
}

/// What stands near what is cooked on, by its name.
pub fn body(words: Words, body: &Body<'_>) -> String {
    match body {
        Body::Said(neighbour, _) => neighbour.value.what.clone(),
        Body::Placed(_, thing, row) => {
            let name = body.chosen().map_or(thing.name, |selection| selection.name.value.as_str());
            match row {
                Some(RowOf::Run(run)) => say!(words, "heat.body.of_run", name = name, row = run.name.value),
                Some(RowOf::Side(island, _)) => {
                    say!(words, "heat.body.of_island", name = name, row = island.name.value)
                }
                None => name.to_owned(),
            }
        }
        Body::Hood(hood, _) => hood.name.value.clone(),
        Body::Window(window) => say!(words, "heat.body.window", name = window.name.value),
        Body::Casing(HoleIs::Door(door)) => say!(words, "heat.body.door_casing", name = door.name.value),
        Body::Casing(HoleIs::Window(window)) => say!(words, "heat.body.window_casing", name = window.name.value),
        Body::Wall(wall) => say!(words, "heat.body.wall", name = wall.name()),
        Body::Ceiling(_) => say!(words, "heat.body.ceiling"),
    }
}

fn source(words: Words, whose: DistanceSource, source: &str) -> String {
    match whose {
        DistanceSource::Sheet => say!(words, "heat.sheet"),
        DistanceSource::SheetAbove => say!(words, "heat.sheet_above"),
        DistanceSource::Figure => source.into(),
    }
}
