//! What is near a cooking surface, on its sheet: from the same answers that the review judges.

use crate::assess::codes::Rulings;
use crate::assess::near_heat;
use crate::book::Burning;
use crate::site::Placement;
use crate::site::fitting::Side;
use crate::site::heat::{DistanceSource, Hearth, Near, Where, nearest};
use crate::site::plan::Plans;
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::html::Html;
use crate::views::shared::lines::{capital, fact};
use crate::views::shared::sheet::Fact;
use crate::views::trades::opening::SheetOpening;
use crate::vocabulary::Words as _;

impl PageBuilder<'_> {
    /// What must stay clear above and beside what is cooked on, and what is there; nothing for what is not.
    pub fn heat_facts(&self, plans: &Plans<'_>, at: SheetOpening<'_>) -> Vec<Fact> {
        let Some(hearth) = self.hearth(plans, at) else { return vec![] };
        let places = [
            ("Above the cooking surface", Where::Above, hearth.above()),
            ("At its left, above the counter", Where::Beside(Side::Left), hearth.beside(Side::Left)),
            ("At its right, above the counter", Where::Beside(Side::Right), hearth.beside(Side::Right)),
        ];
        let told = places.into_iter().filter_map(|(name, place, near)| {
            let value = match nearest(&near) {
                Some(near) => self.near(near),
                None => self.kept_clear(&hearth, place)?,
            };
            Some(fact(name, value))
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
        let counts = match near.burning {
            None => "nobody says whether it burns, so it counts as burning",
            Some(Burning::Burns) if near.under_a_hood => "burns, shielded by the hood below it",
            Some(burning) => burning.word(),
        };
        let told =
            Html::text(&format!("{}, ", capital(&near_heat(&near.body).bare(["", ""])))).then(length(near.distance));
        let told = told.then(format!(" away; {counts}. Asked: ").as_str()).then(length(near.asked.length));
        let told = told.then(format!(" ({}).", source(near.asked.whose, &near.asked.source)).as_str());
        match near.short() {
            Some(short) => told.then(" Short by ").then(length(short)).then("."),
            None => told,
        }
    }

    /// What is asked where nothing is known to stand.
    fn kept_clear(&self, hearth: &Hearth<'_>, place: Where) -> Option<Html> {
        let asked = hearth.asks(place)?;
        let told =
            Html::text("Nothing told. To what burns: at least ").then(figures::length(self.wording, asked.length));
        Some(told.then(format!(" ({}).", source(asked.whose, &asked.source)).as_str()))
    }
}

fn source(whose: DistanceSource, source: &str) -> String {
    match whose {
        DistanceSource::Sheet => "its maker's sheet".into(),
        DistanceSource::SheetAbove => "the sheet of what hangs there".into(),
        DistanceSource::Figure => source.into(),
    }
}
