//! Room inside a shower.

use super::{Figure, Measure};
use crate::assess::codes::{Family, SHOWER_AREA_CODE, SHOWER_AREA_UPC, SHOWER_SIDE_ADVISED, SHOWER_SIDE_CODE};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_area};
use crate::book::{ClearDistance, Room, System};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::distances::{Distance, ShowerInside, distance, inside_of_a_shower, planned_for_access};
use crate::units::{Area, Length};

declare! {
    /// A shower is too small to stand and turn in
    ///
    /// ## What it checks
    /// Inside the `shower` of `clearances`, between finished faces, else as the plan, an opening or the tray that is chosen has it: the model codes ask for 900 square inches and for {30"}
    /// in every direction, so that a disc of {30"} lies in it; {36"} by {36"} are advised.
    /// A fixed seat must leave the code's area free. It is {17"} to {19"} high and {15"} deep. The waterproof
    /// covering of the walls goes at least {3"} above the head, and in any country no less high than it; that has its outlet {72"} high or more.
    ///
    /// ## Why it matters
    /// The pan is set before the tile is: what backer, mortar and tile take off is lost inside.
    ///
    /// ## Remedy
    /// Move the wall or the curb before the pan is made; give up the seat, or have one that folds away.
    ///
    /// ## Example
    /// ```yaml
    /// clearances: {shower: 28" x 36"}     # 1008 square inches, and yet too narrow
    /// ```
    ///
    /// ## Source
    /// Code: IRC P2708.1, IPC 417.4; codes of the UPC family, where the book adopts one, ask for 1024
    /// square inches. Advice: Kitchen
    /// and Bath Planning Guidelines, 2nd edition, bath guidelines 9, 12 and 13.
    "clear/shower", Query,
    due: RoughInClosed, tells: [Client, Installer],
    living: "living.clear.shower",
    judges: [ShowerSet, ShowerGlass],
    sources: [
        "IRC P2708.1, IPC 417.4",
        "Kitchen and Bath Planning Guidelines, 2nd edition, bath guidelines 9, 12, 13",
    ],
    caution: None,
    Check::Book(check)
}

const ADVISED: Figure = Figure::of(&SHOWER_SIDE_ADVISED);
const CODE: Figure = Figure::of(&SHOWER_SIDE_CODE);
/// Least area by the model codes: 900 square inches.
const AREA: Area = square_inches(900);
const SEAT: &str = "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 12";
const COVERING: &str = "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 13";

const fn square_inches(count: i64) -> Area {
    let inch = Length::from_inches(1).nanometres() as i128;
    Area::from_square_nanometres(inch * inch * count as i128)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        if let Some(inside) = inside_of_a_shower(context.site, room) {
            findings.extend(inside_of(context, room, &inside));
        }
        findings.extend(seat(context, room).into_iter().filter_map(|measure| measure.judge(context)));
        findings.extend(covering(context, room));
        findings.extend(head(context, room));
    }
}

/// The gravest of what is amiss inside: a side, the floor in all, what a seat leaves of it.
fn inside_of(context: &Context<'_>, room: &Room, inside: &ShowerInside) -> Option<Remark> {
    let side = size(context, room, inside);
    if side.as_ref().is_some_and(|finding| finding.severity < Severity::Note) {
        return side;
    }
    floor(context, room, inside).or_else(|| beside_a_seat(context, room, inside)).or(side)
}

/// Its lesser side; where that passes, the greater one is wide enough too.
fn size(context: &Context<'_>, room: &Room, inside: &ShowerInside) -> Option<Remark> {
    // For access other sizes count, which `clear/access` tells.
    let told_for_access = planned_for_access(context.book, room) && !room.access.shower_type.is_absent();
    let measure = Measure {
        is: ("the shower".into(), "in its lesser direction"),
        advised: Some(ADVISED).filter(|_| !told_for_access),
        code: Some(CODE),
        ..of(
            room,
            Distance { value: inside.lesser(), at: inside.at, provenance: inside.provenance },
            "move the wall or the curb before the pan is made",
        )
    };
    measure.judge(context)
}

/// Its floor, where the code in force or the book asks for more than its least sides make.
fn floor(context: &Context<'_>, room: &Room, inside: &ShowerInside) -> Option<Remark> {
    let by_the_upc = context.rulings().editions().year(Family::Upc).is_some();
    let asked = context.rulings().number(if by_the_upc { &SHOWER_AREA_UPC } else { &SHOWER_AREA_CODE })?;
    let (has, least) = (area(inside.sides.0, inside.sides.1), square_inches(asked.value.into()));
    if has >= least {
        return None;
    }
    let units = context.book.project.units;
    let message = phrase!(
        "the shower's floor is {}, less than the {} asked for",
        in_square_inches(has, units),
        in_square_inches(least, units)
    );
    let finding = Remark::new(asked.severity, inside.at, message).room(&room.folder);
    Some(finding.source(asked.source).remedy("move the wall or the curb before the pan is made"))
}

/// An area as the code has it, in whole square inches, the last one begun left out: `1020 square inches`; in a metric
/// book after its own unit.
fn in_square_inches(area: Area, units: System) -> Phrase {
    let inches = phrase!("{} square inches", area.square_nanometres() / square_inches(1).square_nanometres());
    match units {
        System::Imperial | System::ImperialOnly => inches,
        System::Metric => phrase!("{} ({inches})", area.metric(), inches),
        System::MetricOnly => phrase!("{}", area.metric()),
    }
}

/// What a fixed seat leaves free, wherever it stands.
fn beside_a_seat(context: &Context<'_>, room: &Room, inside: &ShowerInside) -> Option<Remark> {
    let units = context.book.project.units;
    let depth = distance(context.site, room, ClearDistance::ShowerSeatDepth)?;
    let (one, other) = inside.sides;
    let free = area(one - depth.value, other).max(area(one, other - depth.value));
    if free >= AREA {
        return None;
    }
    let message = phrase!(
        "the fixed seat, {} deep, leaves {} of the shower free; the model code asks for {}",
        say(depth.value, units),
        say_area(free, units),
        say_area(AREA, units)
    );
    let finding = Remark::query(depth.at, message).room(&room.folder);
    Some(finding.source("IRC P2708.1").remedy("have a seat that folds away, or give it up"))
}

fn area(one: Length, other: Length) -> Area {
    Area::from_square_nanometres(i128::from(one.nanometres()).saturating_mul(other.nanometres().into()))
}

fn seat<'a>(context: &Context<'_>, room: &'a Room) -> Vec<Measure<'a>> {
    let of_seat = |key, tail, advised, remedy| {
        let there = distance(context.site, room, key)?;
        let is = ("the shower's seat".into(), tail);
        Some(Measure { is, advised: Some(advised), ..of(room, there, remedy) })
    };
    let high = |advised| {
        of_seat(
            ClearDistance::ShowerSeatHeight,
            "high",
            advised,
            "set it within the heights that are advised for a seat",
        )
    };
    let deep = of_seat(
        ClearDistance::ShowerSeatDepth,
        "deep",
        Figure::advised(Length::from_inches(15), SEAT),
        "make it as deep as is advised, or tell the client that it is a shelf",
    );
    let high = [
        high(Figure::advised(Length::from_inches(17), SEAT)),
        high(Figure::advised_most(Length::from_inches(19), SEAT)),
    ];
    high.into_iter().chain([deep]).flatten().collect()
}

fn covering(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let head = distance(context.site, room, ClearDistance::ShowerHead)?;
    let there = distance(context.site, room, ClearDistance::ShowerWallCovering)?;
    let of = |advised: Figure| Measure {
        is: ("the waterproof covering".into(), "high"),
        advised: Some(advised),
        ..of(room, there, "take it up past the shower head by what is advised, or to the ceiling")
    };
    let above = Figure::advised(head.value + Length::from_inches(3), COVERING);
    // Whatever a country advises, water runs down below the head.
    let to_the_head = Figure::practice(head.value).told("of the shower head");
    of(above).judge(context).or_else(|| of(to_the_head).judge(context))
}

/// A head that many would have to stoop under. Where the shower is planned for access it hangs on a bar.
fn head(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let there = distance(context.site, room, ClearDistance::ShowerHead)?;
    let measure = Measure {
        is: ("the shower head".into(), "high"),
        advised: Some(Figure::advised(HEAD, "common practice")),
        ..of(room, there, "bring its outlet up before the wall is closed, or take a hand shower on a bar")
    };
    (!planned_for_access(context.book, room)).then(|| measure.judge(context)).flatten()
}

/// Where the outlet of a head is set at least (common practice: 72 to 80 in).
const HEAD: Length = Length::from_inches(72);

fn of<'a>(room: &'a Room, there: Distance, remedy: &'static str) -> Measure<'a> {
    Measure { room, item: None, is: (Phrase::default(), ""), there, advised: None, code: None, remedy }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn shower(inside: &str) -> Trial {
        Trial::of("clear/shower").room(&format!("clearances: {{{inside}}}"))
    }

    /// Source: check values BP-13; top check value 9: 30 by 30 passes the code; 28 by 36 has the area and fails on 28; 29.9 by 31 fails.
    #[test]
    fn a_disc_of_thirty_inches_lies_in_it() {
        shower("shower: 30\" x 30\"").finds_one().weighs("note");
        shower("shower: 28\" x 36\"")
            .finds("the shower is 28\" (711 mm) in its lesser direction, 2\" (51 mm) less than the 30\" (762 mm) that the model code asks for")
            .weighs("query");
        shower("shower: 29.9\" x 31\"").finds_one().weighs("query");
    }

    /// Source: check values BP-13, where the plan, an opening or the tray tells it.
    #[test]
    fn its_inside_is_as_clearances_the_plan_an_opening_or_its_tray_has_it() {
        let room = |lines: &str| Trial::of("clear/shower").room(lines);
        room("outline: 9' x 7'\nfixtures: {shower: {wall: A, centre: 14\", width: 28\", depth: 36\", takes: shower}}")
            .finds("the shower is 28\" (711 mm) in its lesser direction by the plan, 2\" (51 mm) less than the 30\" (762 mm) that the model code asks for")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:12"]);
        let opening = |wide: &str| {
            Trial::of("clear/shower").opening("shower", &format!("{{takes: shower, width: {wide}, depth: 36\"}}"))
        };
        opening("28\"").finds_one().points_at(&["rooms/kitchen/room.yaml:3:3"]);
        opening("36\"").stays_silent();
        let tray = |deep: &str| {
            Trial::of("clear/shower")
                .selection("selection: Tray\nkind: shower tray", &format!("size: {{width: 48\", depth: {deep}}}"))
        };
        tray("28\"").finds_one();
        tray("36\"").stays_silent();
        tray("28\"").room("clearances: {shower: 48\" x 36\"}").stays_silent();
        // A mixer is no shower to stand in.
        Trial::of("clear/shower")
            .selection("selection: Mixer\nkind: shower set", "size: {width: 7\", depth: 3\"}")
            .stays_silent();
    }

    /// Source: check values IR-38; top check value 9: 30 by 34 are 1020 square inches: enough for the IRC, not for the UPC's 1024.
    #[test]
    fn codes_of_the_upc_family_ask_for_a_larger_floor() {
        let by_the_upc = |inside: &str| shower(&format!("shower: {inside}")).book("codes: {adopts: [UPC 2021]}");
        shower("shower: 30\" x 34\"").book("codes: {adopts: [IRC 2021]}").finds_one().weighs("note");
        by_the_upc("30\" x 34\"")
            .finds("the shower's floor is 1020 square inches, less than the 1024 square inches asked for")
            .weighs("stop");
        by_the_upc("32\" x 32\"").finds_one().weighs("note");
        by_the_upc("36\" x 36\"").stays_silent();
    }

    /// Source: check values BP-12: 34 by 48 passes the code and misses the advice.
    #[test]
    fn thirty_six_by_thirty_six_are_advised() {
        shower("shower: 36\" x 36\"").stays_silent();
        shower("shower: 34\" x 48\"").finds_one().weighs("note");
    }

    /// Source: check values BP-14: a seat of 15 fixed in a shower of 36 by 30 leaves too little.
    #[test]
    fn a_fixed_seat_leaves_the_code_s_area_free() {
        shower("shower: 36\" x 36\", shower seat depth: 15\"").finds_one().weighs("query");
        shower("shower: 36\" x 60\", shower seat depth: 15\"").stays_silent();
        shower("shower: 36\" x 30\", shower seat depth: 15\"").finds_one();
        shower("shower: 36\" x 36\", shower seat height: 20\"").finds_one();
        shower("shower: 36\" x 36\", shower seat height: 17\"").stays_silent();
        shower("shower: 60\" x 36\", shower seat depth: 14\"")
            .finds("the shower's seat is 14\" (356 mm) deep, 1\" (25.4 mm) less than the 15\" (381 mm) advised");
    }

    /// Source: check values BP-15: with the head at 80 the covering goes to 83.
    #[test]
    fn the_covering_goes_three_inches_above_the_head() {
        shower("shower head: 80\", shower wall covering: 83\"").stays_silent();
        shower("shower head: 80\", shower wall covering: 82\"").finds_one();
    }

    /// Source: common practice: a head is set at 72 to 80 in.
    #[test]
    fn a_grown_person_stands_under_the_head() {
        shower("shower head: 70\"")
            .finds("the shower head is 70\" (1778 mm) high, 2\" (51 mm) less than the 72\" (1829 mm) advised")
            .weighs("query");
        shower("shower head: 72\"").stays_silent();
        shower("shower head: 70\"").book("access profile: 2010 ADA").stays_silent();
    }

    /// In any country tile that ends below the head is told.
    #[test]
    fn the_covering_goes_up_to_the_head_everywhere() {
        let shower = |country: &str, covering: &str| {
            Trial::of("clear/shower")
                .file(
                    "book.yaml",
                    format!("title: Trial\nclient: Nobody\nunits: metric\ncurrency: EUR\ncountry: {country}\n"),
                )
                .room(&format!("clearances: {{shower head: 2100 mm, shower wall covering: {covering}}}"))
        };
        for country in ["ES", "GB", "US"] {
            shower(country, "1200 mm").finds_one().weighs("query");
            shower(country, "2488 mm").stays_silent();
        }
        shower("ES", "2100 mm").stays_silent();
    }
}
