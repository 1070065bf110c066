//! A hood's or a fan's airflow against what the rules ask.

use crate::assess::codes::{
    BATH_EXHAUST, DOWNDRAFT_EXHAUST, EXHAUST_ADVISED, EXHAUST_WITHOUT_MAKE_UP_AIR, Family, Figure, ISLAND_HOOD_A_FOOT,
    KITCHEN_EXHAUST, KITCHEN_EXHAUST_ASHRAE, WALL_HOOD_A_FOOT, WALL_HOOD_A_FOOT_LEAST,
};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::words::say_air;
use crate::assess::{Context, about};
use crate::book::{Country, Opening, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::units::{Length, Wrote};
use crate::vocabulary::supply::{Airflow, Worded};
use crate::vocabulary::{Hazard, Kind, Mention, Mount, Trait};

declare! {
    /// A hood or a fan moves less air than the rules ask
    ///
    /// ## What it checks
    /// The rated airflow of each hood against the code's least ({100 cfm}; {300 cfm} for what is no hood
    /// by ASHRAE 62.2), against the guideline's {150 cfm}, and against the trade's rules of thumb: so much for
    /// its width, and, in North America, so much for the burners under it. The rules disagree: each that
    /// is missed is told, and the largest is what to aim at. A bath's fan wants {50 cfm} by the code, and {30 cfm} where none is at hand. Where the book adopts
    /// a code that asks for exhaust, a room where somebody cooks and nothing moves air out is asked about; and, in every
    /// book, a room with a tub or a shower that is drawn with its doors, without a window, and has no fan.
    ///
    /// ## Why it matters
    /// Grease and steam that are not caught settle in the cabinets; moisture that stays rots a bath.
    ///
    /// ## Remedy
    /// Choose a stronger hood or fan, and look at its duct and at make-up air in the same step.
    ///
    /// ## Example
    /// ```yaml
    /// kind: hood
    /// airflow: 250 cfm       # over 40,000 Btu/h of burners: one rule asks 400
    /// ```
    ///
    /// ## Source
    /// IRC Table M1505.4.4 (M1507.4 in older editions); ASHRAE 62.2-2016; kitchen planning guideline 19;
    /// IRC R303.3, M1505 (bath); HVI guidance and 1 cfm for 100 Btu/h as the trade press quotes them.
    "service/exhaust", Query,
    due: RoughInClosed, tells: [Installer],
    judges: [Hood, Fan, Range, Cooktop, Bathtub, ShowerSet, ShowerGlass],
    sources: ["IRC Table M1505.4.4", "ASHRAE 62.2-2016", "kitchen planning guideline 19", "HVI guidance (trade press)"],
    caution: Some(Hazard::Air),
    Check::Book(check)
}

/// Burner input for each cubic foot a minute (trade rule).
const BTU_A_CFM: u32 = 100;

/// What one rule asks.
struct Asks {
    cfm: u32,
    who: Phrase,
    severity: Severity,
}

/// Rooms in which somebody cooks and nothing moves air out, where the book adopts a code that asks for it.
fn no_hood(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let editions = context.rulings().editions();
    let is_asked = editions.year(Family::Irc).or_else(|| editions.year(Family::Ashrae622)).is_some();
    let ruling = context.rulings().number(&KITCHEN_EXHAUST).filter(|_| is_asked)?;
    let moves_air = |selection: &Selection| {
        selection.is_any(&[Kind::Hood, Kind::Fan])
            || selection.standing().iter().any(|option| option.understood::<Option<Airflow>>().is_some())
    };
    let hood_is_said = |opening: &Opening| {
        let above = opening.above.get().is_some_and(|above| Mention::Hood.is_in(&above.what));
        opening.takes_a(Kind::Hood) || above
    };
    let by_fixture = room.fixtures.iter().any(|fixture| fixture.takes.get() == Some(&Kind::Hood));
    if by_fixture
        || room.holds_an_unknown_kind()
        || room.selections.iter().any(moves_air)
        || room.openings.iter().any(hood_is_said)
    {
        return None;
    }
    // A grill stands outdoors.
    let cooks = room.selections.iter().find(|one| one.has(Trait::Cooks) && !one.is(Kind::Grill))?;
    let message = phrase!(
        "nothing moves air out over `{}`, and the code asks {} in a room where somebody cooks",
        cooks.name.value,
        say_air(ruling.value, context.book.project.units)
    );
    let finding = Remark::query(cooks.name.span, message).room(&room.folder);
    let remedy = "add the hood, or whatever moves the air out there, with its `airflow`";
    Some(finding.thing(&cooks.name).remedy(remedy).source(ruling.source))
}

/// A bath that is drawn without a window, and in which nothing moves air out.
fn no_fan(context: &Context<'_>, room: &Room) -> Option<Remark> {
    // Where nobody drew its doors, windows may be left out too.
    let is_drawn = !room.outline.is_absent() && !room.doors.is_empty() && room.windows.is_empty();
    let is_fan = |kind: Option<&Kind>| kind == Some(&Kind::Fan);
    let moves_air = room.selections.iter().any(|selection| {
        selection.is(Kind::Fan) || selection.standing().iter().any(|one| one.understood::<Option<Airflow>>().is_some())
    });
    let is_set_out = room.fixtures.iter().any(|fixture| is_fan(fixture.takes.get()))
        || room.openings.iter().any(|opening| is_fan(opening.takes.get()));
    if !is_drawn || moves_air || is_set_out || room.partly_unread || room.holds_an_unknown_kind() {
        return None;
    }
    let bathes = room.selections.iter().find(|selection| selection.has(Trait::Bathes))?;
    let ruling = context.rulings().number(&BATH_EXHAUST);
    let message = phrase!("the room has no window, and nothing moves air out over `{}`", bathes.name.value);
    let finding = Remark::query(bathes.name.span, message).room(&room.folder).thing(&bathes.name);
    let finding = match ruling {
        Some(ruling) => finding.source(ruling.source),
        None => finding.source("common practice"),
    };
    Some(
        finding.remedy("add the fan with its `airflow`, also one that is there already; or draw the window that opens"),
    )
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.book.rooms.iter().filter_map(|room| no_fan(context, room)));
    let air = |cfm| say_air(cfm, context.book.project.units);
    findings.extend(context.book.rooms.iter().filter_map(|room| no_hood(context, room)));
    for (room, selection, option) in context.site.options() {
        let Some((airflow, at)) = option.fact::<Worded<Option<Airflow>>>() else { continue };
        let Some(Airflow(moves)) = airflow.is else {
            let message = phrase!("the airflow of `{}` can't be read: `{words}`", selection.name.value, airflow.words);
            let finding = about(room, selection, option, Severity::Query, at, message);
            findings.push(finding.remedy("write a number and its unit: `airflow: … cfm`, `… m³/h` or `… l/s`"));
            continue;
        };
        let asks = match selection.kind.get() {
            Some(Kind::Hood) => hood(context, room, option),
            Some(Kind::Fan) => of_a_fan(context, room).into_iter().collect(),
            _ => continue,
        };
        let missed: Vec<&Asks> = asks.iter().filter(|asks| asks.cfm > moves).collect();
        let Some(most) = missed.iter().map(|asks| asks.cfm).max() else { continue };
        let severity = missed.iter().map(|asks| asks.severity).min().unwrap_or(Severity::Query);
        let told: Vec<Phrase> = missed.iter().map(|asks| phrase!("{} asks {}", asks.who, air(asks.cfm))).collect();
        let message =
            phrase!("`{}` moves {moves}: {}", selection.name.value, Wrote(&airflow.words), Phrase::joined(told, ", "));
        let stronger = "and look at its duct and at make-up air in the same step";
        let least = context.rulings().number(&EXHAUST_WITHOUT_MAKE_UP_AIR).map(|ruling| ruling.value);
        // Nothing need come in for what it moves, and much would for what is asked.
        let weaker_is_meant = severity != Severity::Stop && least.is_some_and(|least| moves <= least && most > least);
        let remedy = match weaker_is_meant {
            true => phrase!(
                "choose one that moves {most}, {stronger}; or show that this one is meant, since nothing need let air in for it, and waive this",
                air(most),
                stronger
            ),
            false => phrase!("choose one that moves {most}, {stronger}", air(most), stronger),
        };
        findings.push(about(room, selection, option, severity, at, message).remedy(remedy));
    }
}

/// What is asked of a fan: by the code, else, in a room where somebody bathes, what is usual wherever that is.
fn of_a_fan(context: &Context<'_>, room: &Room) -> Option<Asks> {
    let bathes = room.selections.iter().any(|one| one.has(Trait::Bathes));
    let usual = Asks { cfm: USUAL_IN_A_BATH, who: "what is usual for a bath".into(), severity: Severity::Query };
    named(context, &BATH_EXHAUST, "the code for a bath").or_else(|| bathes.then_some(usual))
}

/// A bath's fan, where no code of the country is at hand: 51 m³/h, or 14 l/s (common practice; 15 l/s are often asked).
const USUAL_IN_A_BATH: u32 = 30;

/// Everything that is asked of a hood.
fn hood(context: &Context<'_>, room: &Room, option: &ProductOption) -> Vec<Asks> {
    let words = [
        option.fact::<Worded<Option<Mount>>>().map_or("", |(mount, _)| mount.words.as_str()),
        option.description.text(),
    ];
    let island = Mention::Island.is_in_any(words);
    let ashrae = if Mention::Downdraft.is_in_any(words) { &DOWNDRAFT_EXHAUST } else { &KITCHEN_EXHAUST_ASHRAE };
    let mut asks: Vec<Asks> = [
        named(context, &KITCHEN_EXHAUST, "the code"),
        named(context, ashrae, "ASHRAE 62.2"),
        named(context, &EXHAUST_ADVISED, "the guideline"),
    ]
    .into_iter()
    .flatten()
    .collect();
    let a_foot = if island { &ISLAND_HOOD_A_FOOT } else { &WALL_HOOD_A_FOOT };
    let rule = context.rulings().number(a_foot);
    if let (Some(width), Some(rule)) = (option.size.width.get(), rule) {
        let from = context.rulings().number(&WALL_HOOD_A_FOOT_LEAST).filter(|_| !island);
        let who = match from.map(|least| by_width(*width, least.value)) {
            Some(from) => phrase!(
                "the rule of thumb for its width, whose band begins at {from},",
                say_air(from, context.book.project.units)
            ),
            None => "the rule of thumb for an island".into(),
        };
        asks.push(Asks { cfm: by_width(*width, rule.value), who, severity: rule.severity });
    }
    if let Some(btu) = burners(room).filter(|_| reckons_by_burners(context)) {
        asks.push(Asks {
            cfm: btu.div_ceil(BTU_A_CFM),
            who: "the rule of thumb for its burners".into(),
            severity: Severity::Query,
        });
    }
    asks
}

/// Whether the trade reckons a hood by its burners where the work is: in North America.
fn reckons_by_burners(context: &Context<'_>) -> bool {
    let here = context.book.project.where_it_is().is_some_and(Country::is_north_american);
    here || context.rulings().offers(Family::Irc)
}

fn named(context: &Context<'_>, figure: &'static Figure, who: &'static str) -> Option<Asks> {
    let ruling = context.rulings().number(figure)?;
    Some(Asks { cfm: ruling.value, who: who.into(), severity: ruling.severity })
}

/// So many cubic feet a minute for each foot of width, rounded up.
fn by_width(width: Length, a_foot: u32) -> u32 {
    let foot = Length::from_inches(12).nanometres();
    let whole = i128::from(width.nanometres()) * i128::from(a_foot);
    u32::try_from((whole + i128::from(foot) - 1) / i128::from(foot)).unwrap_or(u32::MAX)
}

/// The largest input of the gas burners that still may be chosen in a room.
fn burners(room: &Room) -> Option<u32> {
    let cooks = |selection: &&Selection| selection.has(Trait::Cooks);
    let options = room.selections.iter().filter(cooks).flat_map(Selection::standing);
    options.filter_map(|option| Some(option.fit.get()?.needs.gas.get()?.is.btu?.taken())).max()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn hood(hood: &str, range: &str) -> Trial {
        Trial::of("service/exhaust")
            .selection("selection: Hood\nkind: hood", hood)
            .selection("selection: Range\nkind: range", &format!("fit: {{needs: {{gas: '{range}'}}}}"))
    }

    /// Source: check values HD-01…04, HD-07: a 30 in wall hood over 40 000 Btu/h: 250 and 400 cfm; all are shown.
    #[test]
    fn rules_that_disagree_are_all_told_and_the_largest_is_advised() {
        hood("size: {width: 30\"}\nairflow: 240 cfm", "natural gas, 40000 Btu/h")
            .finds("`Hood` moves 240 cfm: the rule of thumb for its width, whose band begins at 100 cfm, asks 250 cfm, the rule of thumb for its burners asks 400 cfm")
            .weighs("query")
            .cautions()
            .remedies("choose one that moves 400 cfm, and look at its duct and at make-up air in the same step");
        hood("size: {width: 30\"}\nairflow: 400 cfm", "natural gas, 40000 Btu/h").stays_silent();
    }

    /// Source: check values HD-01, HD-02, HD-03, HD-04.
    #[test]
    fn rules_of_thumb_are_reckoned_as_printed() {
        let by_width = |inches, a_foot| super::by_width(crate::units::Length::from_inches(inches), a_foot);
        assert_eq!([30, 36, 48].map(|inches| by_width(inches, 100)), [250, 300, 400]);
        assert_eq!((by_width(36, 150), by_width(30, 40)), (450, 100));
        for (btu, cfm) in [(40_000, 400), (45_000, 450), (60_000, 600)] {
            let short = |cfm: u32| hood(&format!("airflow: {cfm} cfm"), &format!("natural gas, {btu} Btu/h"));
            short(cfm).stays_silent();
            short(cfm - 1).finds_one();
        }
    }

    #[test]
    fn rules_of_thumb_of_one_country_are_told_in_no_other() {
        let hood = |book: &str, airflow: &str| {
            let book = format!("title: Trial\nclient: Nobody\ncurrency: EUR\n{book}\n");
            hood(&format!("size: {{width: 898 mm}}\nairflow: {airflow}"), "natural gas, 62 MJ/h")
                .file("book.yaml", book)
        };
        for country in ["AU", "GB", "DE", "ES"] {
            hood(&format!("units: metric\ncountry: {country}"), "600 m3/h").stays_silent();
        }
        hood("units: metric\ncountry: CA", "600 m3/h").finds_one().weighs("query");
        hood("units: metric\ncountry: AU\ncodes: {adopts: [IRC 2021]}", "600 m3/h").finds_one();
    }

    /// Source: IRC M1503.6: nothing need let air in for 400 cfm.
    #[test]
    fn a_hood_for_which_nothing_need_let_air_in_may_be_meant() {
        hood("airflow: 395 cfm", "natural gas, 92000 Btu/h").finds_one().remedies(
            "choose one that moves 920 cfm, and look at its duct and at make-up air in the same step; or show that this one is meant, since nothing need let air in for it, and waive this",
        );
    }

    /// Source: check values HD-02: a 36 in island hood wants 450 cfm.
    #[test]
    fn an_island_hood_wants_more() {
        hood("size: {width: 36\"}\nairflow: 449 cfm\nmount: island", "electric").finds_one();
        hood("size: {width: 36\"}\nairflow: 450 cfm\nmount: island", "electric").stays_silent();
    }

    /// Source: check values IR-07, KP-32: 100 cfm meets the code and misses the guideline; 90 misses both.
    #[test]
    fn the_code_s_least_stops_where_it_is_adopted_and_the_guideline_asks() {
        hood("airflow: 100 cfm", "electric").finds("`Hood` moves 100 cfm: the guideline asks 150 cfm").weighs("query");
        hood("airflow: 90 cfm", "electric").book("codes: {adopts: [IRC 2021]}").finds_one().weighs("stop");
        hood("airflow: 150 cfm", "electric").book("codes: {adopts: [IRC 2021]}").stays_silent();
    }

    /// Source: check values IR-08: a downdraft of 250 cfm misses the 300 of ASHRAE 62.2.
    #[test]
    fn what_is_no_hood_wants_three_times_as_much() {
        hood("airflow: 250 cfm\nmount: downdraft", "electric").finds("`Hood` moves 250 cfm: ASHRAE 62.2 asks 300 cfm");
        hood("airflow: 300 cfm\nmount: downdraft", "electric").stays_silent();
    }

    /// Source: check values BP-29: a bath's fan of 40 cfm fails.
    #[test]
    fn a_bath_s_fan_moves_50() {
        let fan = |airflow: &str| {
            Trial::of("service/exhaust").selection("selection: Fan\nkind: fan", &format!("airflow: {airflow}"))
        };
        fan("40 cfm").finds("`Fan` moves 40 cfm: the code for a bath asks 50 cfm");
        fan("50 cfm").stays_silent();
    }

    /// Source: common practice: 15 l/s in a bath.
    #[test]
    fn a_bath_s_fan_moves_what_is_usual_where_no_code_is_at_hand() {
        let fan = |airflow: &str, bathes: &str| {
            Trial::of("service/exhaust")
                .file(
                    "book.yaml",
                    "title: Trial\nclient: Nobody\ncurrency: GBP\nunits: metric\ncountry: GB\n".to_string(),
                )
                .selection("selection: Fan\nkind: fan", &format!("airflow: {airflow}"))
                .selection(&format!("selection: It\nkind: {bathes}"), "")
        };
        for little in ["8 l/s", "8 L/s", "20 m3/h", "20 m³/h", "45 m3/h"] {
            fan(little, "shower set").finds_one().weighs("query");
            fan(little, "bathtub").finds_one();
            // A toilet alone wants less.
            fan(little, "toilet").stays_silent();
        }
        for enough in ["15 l/s", "30 l/s", "54 m3/h", "85 m³/h"] {
            fan(enough, "shower set").stays_silent();
        }
    }

    /// Source: check values IR-07: 100 cfm in a kitchen, where the code is adopted.
    #[test]
    fn cooking_with_no_hood_is_asked_about_where_the_code_asks_for_one() {
        let range = |book: &str| {
            Trial::of("service/exhaust")
                .book(book)
                .selection("selection: Range\nkind: range\nplace: range", "fuel: gas")
        };
        let adopted = "codes: {adopts: [IRC 2021]}";
        let bare = || range(adopted).opening("range", "{takes: range}");
        bare()
            .finds("nothing moves air out over `Range`, and the code asks 100 cfm in a room where somebody cooks")
            .weighs("query")
            .cautions();
        range("").opening("range", "{takes: range}").stays_silent();
        bare().selection("selection: Hood\nkind: hood", "airflow: 400 cfm").stays_silent();
        bare().selection("selection: Microwave\nkind: microwave", "airflow: 300 cfm").stays_silent();
        range(adopted).opening("range", "{takes: range, above: hood}").stays_silent();
    }

    /// Source: IRC R303.3 (a window or a fan), as the book's own code has it; elsewhere common practice.
    #[test]
    fn a_bath_without_a_window_has_a_fan() {
        let bath = |room: &str| {
            Trial::of("service/exhaust")
                .room(&format!("outline: 8' x 5'\ndoors: {{hall: {{wall: C, at: 10\", width: 30\"}}}}\n{room}"))
                .selection("selection: Tub\nkind: bathtub", "size: {width: 60\", depth: 30\"}")
        };
        bath("").finds("the room has no window, and nothing moves air out over `Tub`").weighs("query").cautions();
        bath("windows: {yard: {wall: A, at: 30\", width: 20\", sill: 50\", height: 24\"}}").stays_silent();
        bath("").selection("selection: Fan\nkind: bath fan", "airflow: 80 cfm").stays_silent();
        bath("fixtures: {fan: {wall: A, centre: 40\", width: 10\", depth: 10\", sill: 84\", takes: fan}}")
            .stays_silent();
        // A room that is not drawn may have a window.
        for room in ["", "outline: 8' x 5'"] {
            Trial::of("service/exhaust").room(room).selection("selection: Tub\nkind: bathtub", "").stays_silent();
        }
    }
}
