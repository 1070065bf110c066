//! Exhaust that needs make-up air.

use crate::assess::codes::{EXHAUST_NOT_REPLACED, EXHAUST_WITHOUT_MAKE_UP_AIR, Family, Ruling};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::words::say_air;
use crate::assess::{Context, about};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Phrase, Severity, phrase};
use crate::units::Wrote;
use crate::vocabulary::supply::{Airflow, Worded, is_none};
use crate::vocabulary::{Hazard, Kind, Mention};

declare! {
    /// A hood moves so much air that the house must be given some, and no line orders it
    ///
    /// ## What it checks
    /// A hood that can move more than {400 cfm} (its rating, not the speed that is used), where nothing in
    /// the room's selections or their accessories is make-up air. From its 2018 edition the model code
    /// asks this only of a house with an open flue: where the book adopts such an edition, its
    /// `house: {open flue: …}` decides. A town's amendment is written under `codes`: of the amount that is
    /// allowed without, and of the `exhaust that make-up air need not replace`. The remedy names how much
    /// air is wanted. In a country that the code is not published for, and in a book that does not adopt it, the
    /// same hood is asked about where nobody says whether the house has an open flue, and any hood that blows its air out
    /// where it has one.
    ///
    /// ## Why it matters
    /// A strong hood in a tight house draws smoke down the flue. Make-up air that is found out late
    /// costs a couple of thousand, and a wall.
    ///
    /// ## Remedy
    /// Order make-up air with its damper and wiring, choose a smaller hood, or ask the town for its
    /// amendment.
    ///
    /// ## Example
    /// ```yaml
    /// airflow: 600 cfm
    /// accessories: [{name: make-up air damper, model: MD-8}]
    /// ```
    ///
    /// ## Source
    /// IRC M1503.4 (2009 to 2015), M1503.6 (2018 on). Elsewhere common practice.
    "service/make-up-air", Query,
    due: RoughInClosed, tells: [Installer],
    judges: cooking_and_its_air,
    sources: ["IRC M1503.4 (2009 to 2015), M1503.6 (2018 on)", "common practice"],
    caution: Some(Hazard::Air),
    Check::Book(check)
}

/// From this edition on, only a house with an open flue is asked.
const OPEN_FLUES_ONLY: u16 = 2018;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let rulings = context.rulings();
    let Some(most) = rulings.number(&EXHAUST_WITHOUT_MAKE_UP_AIR) else { return };
    let has_code = rulings.offers(Family::Irc) || most.severity == Severity::Stop;
    if context.book.project.house.open_flue.is_faulty() {
        return;
    }
    let open_flue = context.book.project.house.open_flue.get().copied();
    let is_asked_of_open_flues_only =
        !has_code || rulings.editions().year(Family::Irc).is_some_and(|year| year >= OPEN_FLUES_ONLY);
    if open_flue == Some(false) && is_asked_of_open_flues_only {
        return;
    }
    for (room, selection, option) in context.site.options() {
        let Some((airflow, at)) = option.fact::<Worded<Option<Airflow>>>() else { continue };
        let Some(Airflow(moves)) = airflow.is else { continue };
        // Where no code sets an amount, any air that is drawn out of rooms with an open flue counts.
        let any = !has_code && open_flue == Some(true) && !stays_inside(room, selection, option);
        let is_little = moves <= most.value && !(any && moves > 0);
        if !selection.is(Kind::Hood) || is_little || has_make_up(room, option) {
            continue;
        }
        let told = match has_code {
            true => by_the_code(context, &selection.name.value, (airflow, &most)),
            false => by_custom(&selection.name.value, (airflow, open_flue.is_some())),
        };
        findings.push(
            about(room, selection, option, most.severity, at, told.message).remedy(told.remedy).source(told.source),
        );
    }
}

/// What is said of a hood.
struct Told {
    message: Phrase,
    remedy: Phrase,
    source: String,
}

/// Where a code that is published for the book's country, or that it adopts, sets the amount.
fn by_the_code(context: &Context<'_>, name: &str, (moves, most): (&Worded<Option<Airflow>>, &Ruling<u32>)) -> Told {
    let air = |cfm| say_air(cfm, context.book.project.units);
    Told {
        message: phrase!(
            "`{}` can move {moves}, more than the {} allowed without make-up air, and no line orders any",
            name,
            Wrote(&moves.words),
            air(most.value)
        ),
        remedy: phrase!(
            "order about {} of make-up air with its damper, choose a smaller hood, or ask the town for its amendment",
            air(moves.is.map_or(0, |Airflow(moves)| amount(context, moves)))
        ),
        source: most.source.clone(),
    }
}

/// Elsewhere what can poison is asked about all the same, by what is known of the house.
fn by_custom(name: &str, (moves, has_open_flue): (&Worded<Option<Airflow>>, bool)) -> Told {
    let (house, remedy) = match has_open_flue {
        true => (
            "the house has an open flue",
            "have whoever installs and tests what burns say how air comes in, and order it; local rules decide",
        ),
        false => (
            "nobody says whether the house has an open flue",
            "ask whether an appliance in the house draws its air from the rooms, and write it into `book.yaml`, as `open flue` \
             under `house`; where one does, whoever installs it says how air comes in",
        ),
    };
    Told {
        message: phrase!(
            "`{}` can move {moves} out of the rooms, no line orders air to come in, and {house}",
            name,
            Wrote(&moves.words),
            house
        ),
        remedy: Phrase::from(remedy),
        source: "common practice".into(),
    }
}

/// How much air is wanted: as much as the exhaust, less what the town's amendment leaves out.
fn amount(context: &Context<'_>, moves: u32) -> u32 {
    moves.saturating_sub(context.rulings().number(&EXHAUST_NOT_REPLACED).map_or(0, |ruling| ruling.value))
}

/// Whether a hood gives its air back to the room, by its sheet or by what is at its opening.
fn stays_inside(room: &Room, selection: &Selection, option: &ProductOption) -> bool {
    let asked = option.fit.get().and_then(|fit| fit.needs.duct.get());
    let there = selection.place.get().and_then(|place| room.opening(place)?.service.duct.get());
    [asked, there].into_iter().flatten().any(|duct| is_none(&duct.words))
}

fn has_make_up(room: &Room, option: &ProductOption) -> bool {
    let is = |words: &str| Mention::MakeUpAir.is_in(words);
    option.accessories.iter().any(|with| is(&with.name.value))
        || room.selections.iter().any(|selection| is(&selection.name.value))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn hood(airflow: &str, book: &str) -> Trial {
        Trial::of("service/make-up-air")
            .book(book)
            .selection("selection: Hood\nkind: hood", &format!("airflow: {airflow}"))
    }

    /// Source: check values IR-09: 400 cfm needs none, 401 does; trade reports F-45.
    #[test]
    fn more_than_400_cfm_wants_make_up_air() {
        hood("401 cfm", "codes: {adopts: [IRC 2015]}").finds_one().weighs("stop").cautions();
        hood("400 cfm", "codes: {adopts: [IRC 2015]}").stays_silent();
        hood("401 cfm", "").finds_one().weighs("query");
        hood("401 cfm\naccessories: [{name: make-up air damper}]", "").stays_silent();
    }

    /// Source: check values IR-10: from 2018 on, a house without an open flue is not asked.
    #[test]
    fn a_sealed_house_is_not_asked_by_the_later_editions() {
        hood("600 cfm", "codes: {adopts: [IRC 2021]}\nhouse: {open flue: false}").stays_silent();
        hood("600 cfm", "codes: {adopts: [IRC 2021]}\nhouse: {open flue: true}").finds_one().weighs("stop");
        hood("600 cfm", "codes: {adopts: [IRC 2015]}\nhouse: {open flue: false}").finds_one();
        hood("600 cfm", "codes: {adopts: [IRC 2006]}").stays_silent();
        // A word for the flue that can't be read is told as that, once.
        hood("600 cfm", "house: {open flue: zebra}").of_any_yaml().stays_silent();
    }

    /// Source: check values IR-10, IR-11; top check value 12: 450 cfm want about 450 cfm; a hood of 700 cfm wants 700
    /// by the model code, and 300 where the town's amendment asks only for what is over 400.
    #[test]
    fn the_air_that_is_wanted_is_named_and_follows_the_amendment() {
        let wanted = |airflow: &str, book: &str| {
            let found = hood(airflow, book).finds_one();
            let remedy = found.findings()[0].remedy.text();
            remedy.strip_prefix("order about ").and_then(|rest| rest.split_once(" cfm")).map(|(cfm, _)| cfm.to_owned())
        };
        let open = "codes: {adopts: [IRC 2021]}\nhouse: {open flue: true}";
        assert_eq!(wanted("450 cfm", open).as_deref(), Some("450"));
        assert_eq!(wanted("700 cfm", open).as_deref(), Some("700"));
        let amended = "codes: {figures: [{figure: exhaust that make-up air need not replace, is: 400 cfm, because: amendment of M1503.6, by: the town}]}";
        assert_eq!(wanted("700 cfm", amended).as_deref(), Some("300"));
    }

    /// One country's code is no other's; that a strong hood draws smoke down an open flue holds everywhere.
    #[test]
    fn in_another_country_it_is_a_question_of_the_flue_in_the_book_s_own_units() {
        let in_britain = |house: &str| {
            let book = format!("title: Trial\nclient: Nobody\ncurrency: GBP\nunits: metric\ncountry: GB\n{house}\n");
            hood("780 m3/h", "").file("book.yaml", book)
        };
        in_britain("house: {open flue: no}").stays_silent();
        in_britain("house: {open flue: yes}")
            .finds("`Hood` can move 780 m3/h out of the rooms, no line orders air to come in, and the house has an open flue")
            .weighs("query")
            .cautions();
        let in_germany = |house: &str, option: &str| {
            let book = format!("title: Trial\nclient: Nobody\ncurrency: EUR\nunits: metric\ncountry: DE\n{house}\n");
            hood(&format!("600 m3/h\n{option}"), "").file("book.yaml", book)
        };
        in_germany("house: {open flue: true}", "").finds_one().weighs("query").cautions();
        in_germany("house: {open flue: true}", "fit: {needs: {duct: recirculating}}").stays_silent();
        in_germany("house: {open flue: false}", "").stays_silent();
        in_germany("", "").stays_silent();
        in_britain("").finds(
            "`Hood` can move 780 m3/h out of the rooms, no line orders air to come in, and nobody says whether the house has an open flue",
        );
    }

    /// Source: check values IR-11: a town's amendment moves the threshold to 600 cfm.
    #[test]
    fn an_amendment_counts() {
        let amended = "codes: {figures: [{figure: exhaust without make-up air, is: 600 cfm, because: amendment of M1503.6, by: the town}]}";
        hood("600 cfm", amended).stays_silent();
        hood("700 cfm", amended).finds_one().weighs("stop");
    }
}
