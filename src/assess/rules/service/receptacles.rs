//! Receptacles along counters and islands.

use crate::assess::codes::{COUNTER_THAT_NEEDS_ONE, Family, RECEPTACLE_SPACING};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{CounterRun, Island, Room, WallBox};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::units::Length;
use crate::vocabulary::Hazard;

declare! {
    /// A counter or an island has fewer receptacles than the electrical code asks
    ///
    /// ## What it checks
    /// Each stretch of counter under `counters` (sink, cooktop and refrigerator break a counter into
    /// stretches): none for one shorter than {12"}, else one for every {48"} or part of it, so that no point
    /// is farther than {24"} from one. An island by the adopted edition of the NEC: to 2017 one if it is
    /// {24"} × {12"} or more; 2020 one for the first 9 sq ft and one for each further 18 or part; 2023 none,
    /// but a box provided for a later one. Where `counters` does not count them, the plan's `outlets` in its sides do. Where
    /// the book adopts an edition, and neither says anything of an island of the plan that has cabinets, it is asked.
    ///
    /// ## Why it matters
    /// Boxes that are missing when the stone is set are cut into it afterwards, or never.
    ///
    /// ## Remedy
    /// Have the electrician plan the boxes before the counter is templated.
    ///
    /// ## Example
    /// ```yaml
    /// counters:
    ///   left of range: {length: 49", receptacles: 1}     # wants two
    /// ```
    ///
    /// ## Source
    /// NEC 210.52(C), editions 2017, 2020, 2023; IRC E3901.4.
    "service/receptacles", Query,
    due: RoughInClosed, tells: [Installer],
    sources: ["NEC 210.52(C), editions 2017, 2020, 2023", "IRC E3901.4"],
    caution: Some(Hazard::Power),
    Check::Book(check)
}

/// The edition that counts where the book adopts none: the one before islands were freed of the duty.
const USUAL_EDITION: u16 = 2020;
const SQUARE_INCHES_IN_A_FOOT: i128 = 144;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        for counter in &room.counters {
            let finding = if counter.island.get() == Some(&true) {
                island(context, room, counter)
            } else {
                wall(context, room, counter)
            };
            findings.extend(finding);
        }
        findings.extend(room.islands.iter().filter_map(|island| nobody_says(context, room, island)));
    }
}

fn wall(context: &Context<'_>, room: &Room, counter: &CounterRun) -> Option<Remark> {
    let (length, has) = (counter.length.value, *counter.receptacles.get()?);
    let least = context.rulings().length(&COUNTER_THAT_NEEDS_ONE)?;
    let spacing = context.rulings().length(&RECEPTACLE_SPACING)?;
    let wants = on_a_wall(length, least.value, spacing.value);
    tell(context, room, counter, Wants { has, wants, severity: spacing.severity, source: spacing.source })
}

/// One for each spacing or part of it; none for a counter that is shorter than needs one.
fn on_a_wall(length: Length, least: Length, spacing: Length) -> u32 {
    if length < least || spacing <= Length::ZERO {
        return 0;
    }
    let (length, spacing) = (length.nanometres(), spacing.nanometres());
    u32::try_from((length + spacing - 1) / spacing).unwrap_or(u32::MAX)
}

fn island(context: &Context<'_>, room: &Room, counter: &CounterRun) -> Option<Remark> {
    let (length, depth) = (counter.length.value, *counter.depth.get()?);
    if !context.rulings().offers(Family::Nec) || counter.receptacles.is_faulty() {
        return None;
    }
    let adopted = context.rulings().editions().year(Family::Nec);
    let severity = if adopted.is_some() { Severity::Stop } else { Severity::Query };
    let edition = adopted.unwrap_or(USUAL_EDITION);
    let set_out = || of_plan(room, &counter.name.value);
    let has = counter.receptacles.get().copied().unwrap_or_else(set_out);
    let source = format!("NEC {edition}, 210.52(C)(2)");
    if edition >= 2023 {
        let provided = has > 0 || counter.provision.get() == Some(&true);
        let message =
            phrase!("the island `{}` has no receptacle, and no box is provided for a later one", counter.name.value);
        return (!provided).then(|| {
            finding(room, counter, severity, message)
                .remedy("have the electrician provide a box, and say so at that counter, under `provision`")
                .source(source)
        });
    }
    let wants = if edition >= 2020 { by_area(length, depth) } else { by_size(length, depth) };
    tell(context, room, counter, Wants { has, wants, severity, source })
}

/// An island of the plan, with cabinets and a top, of which `counters` says nothing, where the code that the book adopts asks for
/// a receptacle or a box there.
fn nobody_says(context: &Context<'_>, room: &Room, island: &Island) -> Option<Remark> {
    let edition = context.rulings().editions().year(Family::Nec)?;
    let (long, deep) = *island.size.get()?;
    let has_cabinets = island.sides().any(|side| !side.parts.is_empty());
    let is_told = room.counters.iter().any(|counter| {
        counter.island.get() == Some(&true) || counter.name.value.eq_ignore_ascii_case(&island.name.value)
    });
    if by_size(long, deep) == 0 || !has_cabinets || is_told {
        return None;
    }
    let name = &island.name.value;
    let has = of_plan(room, name);
    if has > 0 {
        return fewer(context, room, island, edition, has);
    }
    let message = phrase!("nobody says what receptacles the island `{name}` has", name);
    let finding = Remark::query(island.name.span, message).room(&room.folder).part(name);
    let remedy = "write it under the room's `counters`: at that counter its length and depth, that it is an `island`, and its `receptacles` or `provision`";
    Some(finding.source(format!("NEC {edition}, 210.52(C)(2)")).remedy(remedy))
}

/// How many receptacles the plan sets out in the sides of an island.
fn of_plan(room: &Room, island: &str) -> u32 {
    let in_it = |outlet: &&WallBox| outlet.island.get().is_some_and(|of| of.eq_ignore_ascii_case(island));
    room.outlets.iter().filter(in_it).map(WallBox::holds).fold(0, u32::saturating_add)
}

/// What the plan sets out in an island, where that is fewer than the code asks; what its top has besides, nobody says.
fn fewer(context: &Context<'_>, room: &Room, island: &Island, edition: u16, has: u32) -> Option<Remark> {
    let (long, deep) = *island.size.get()?;
    let wants = match edition {
        2023.. => 0,
        2020.. => by_area(long, deep),
        _ => by_size(long, deep),
    };
    let length = say(long.max(deep), context.book.project.units);
    let name = &island.name.value;
    let message = phrase!("the counter `{}`, {length} long, has {} of {} receptacles", name, length, has, wants);
    let finding = Remark::query(island.name.span, message).room(&room.folder).part(name);
    (has < wants).then(|| finding.source(format!("NEC {edition}, 210.52(C)(2)")).remedy(BOXES))
}

/// How to have the missing ones.
const BOXES: &str = "have the electrician plan the missing boxes before the counter is templated";

/// NEC 2020: one for the first 9 sq ft, one for each further 18 or part of it.
fn by_area(length: Length, depth: Length) -> u32 {
    let inch = i128::from(Length::from_inches(1).nanometres());
    let foot = inch * inch * SQUARE_INCHES_IN_A_FOOT;
    let area = i128::from(length.nanometres()) * i128::from(depth.nanometres());
    let further = (area - 9 * foot).max(0);
    u32::try_from(1 + (further + 18 * foot - 1) / (18 * foot)).unwrap_or(u32::MAX)
}

/// NEC to 2017: one if it is 24" × 12" or more.
fn by_size(length: Length, depth: Length) -> u32 {
    let (long, short) = (length.max(depth), length.min(depth));
    u32::from(long >= Length::from_inches(24) && short >= Length::from_inches(12))
}

struct Wants {
    has: u32,
    wants: u32,
    severity: Severity,
    source: String,
}

fn tell(context: &Context<'_>, room: &Room, counter: &CounterRun, told: Wants) -> Option<Remark> {
    if told.has >= told.wants {
        return None;
    }
    let length = say(counter.length.value, context.book.project.units);
    let message = phrase!(
        "the counter `{}`, {length} long, has {} of {} receptacles",
        counter.name.value,
        length,
        told.has,
        told.wants
    );
    Some(finding(room, counter, told.severity, message).remedy(BOXES).source(told.source))
}

fn finding(room: &Room, counter: &CounterRun, severity: Severity, message: Phrase) -> Remark {
    Remark::new(severity, counter.name.span, message).room(&room.folder).thing(&counter.name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::trial::Trial;

    fn inches(inches: i64) -> Length {
        Length::from_inches(inches)
    }

    /// Source: check values IR-14/15: 11.9 needs none, 12 needs one; 48 one, 49 two, 96 two, 97 three.
    #[test]
    fn every_cell_of_the_spacing_along_a_wall() {
        let wants = |length: Length| on_a_wall(length, inches(12), inches(48));
        assert_eq!(wants("11.9\"".parse().unwrap()), 0);
        for (length, receptacles) in [(12, 1), (48, 1), (49, 2), (96, 2), (97, 3)] {
            assert_eq!(wants(inches(length)), receptacles, "{length}\"");
        }
    }

    /// Source: check values IR-19 (NEC 2020): 9 sq ft one, 18 two, 27 two, 27.1 three, 32 three; CT-06: 48 × 24 in one.
    #[test]
    fn every_cell_of_the_islands_by_area() {
        for (length, depth, receptacles) in [(36, 36, 1), (72, 36, 2), (108, 36, 2), (96, 48, 3), (48, 24, 1)] {
            assert_eq!(by_area(inches(length), inches(depth)), receptacles, "{length} × {depth}");
        }
        assert_eq!(by_area("108.4\"".parse().unwrap(), inches(36)), 3, "27.1 sq ft");
    }

    /// Source: check values IR-18 (NEC to 2017): one from 24 × 12 in on, however large.
    #[test]
    fn every_cell_of_the_islands_by_size() {
        for (length, depth, receptacles) in [(24, 12, 1), (120, 36, 1), (23, 12, 0), (24, 11, 0)] {
            assert_eq!(by_size(inches(length), inches(depth)), receptacles, "{length} × {depth}");
        }
    }

    fn counters(counters: &str, book: &str) -> Trial {
        Trial::of("service/receptacles").book(book).room(&format!("counters: {{{counters}}}"))
    }

    /// Source: check values IR-16: a sink breaks a counter into two, each with its own receptacle.
    #[test]
    fn a_counter_with_too_few_is_asked_about_and_stops_where_the_code_is_adopted() {
        counters("left: {length: 49\", receptacles: 1}", "")
            .finds("the counter `left`, 49\" (1245 mm) long, has 1 of 2 receptacles")
            .weighs("query")
            .cautions();
        counters("left: {length: 49\", receptacles: 1}", "codes: {adopts: [NEC 2020]}").finds_one().weighs("stop");
        counters("left: {length: 30\", receptacles: 1}, right: {length: 30\", receptacles: 1}", "").stays_silent();
    }

    /// Source: check values IR-20 (NEC 2023): none on an island, but provision for one.
    #[test]
    fn from_2023_an_island_wants_a_box_provided() {
        let island = "island: {length: 8', depth: 4', island: true, receptacles: 0";
        counters(&format!("{island}}}"), "codes: {adopts: [NEC 2023]}").finds_one().weighs("stop");
        counters(&format!("{island}, provision: true}}"), "codes: {adopts: [NEC 2023]}").stays_silent();
        counters(&format!("{island}}}"), "codes: {adopts: [NEC 2020]}").finds_one();
        counters(&format!("{island}}}"), "codes: {adopts: [NEC 2017]}").finds_one();
    }

    /// Source: NEC 210.52(C)(2) as adopted (check values IR-18 to IR-20).
    #[test]
    fn an_island_of_the_plan_is_asked_about_where_the_code_is_adopted() {
        let island = |more: &str, book: &str| {
            Trial::of("service/receptacles").book(book).room(&format!("outline: 16' x 14'\nislands: {{island: {{wall: A, at: 40\", away: 70\", size: 84\" x 40\", room side: {{parts: [{{cabinet: drawers, width: 30\"}}]}}}}}}\n{more}"))
        };
        let adopts = "codes: {adopts: [NEC 2020]}";
        island("", adopts)
            .finds("nobody says what receptacles the island `island` has")
            .weighs("query")
            .cautions()
            .points_at(&["rooms/kitchen/room.yaml:3:11"]);
        island("counters: {island: {length: 84\", depth: 40\", island: true, receptacles: 2}}", adopts).stays_silent();
        island("", "").stays_silent();
        // Those that the plan sets out in its sides are told.
        let outlet =
            |name: &str, side: &str| format!("{name}: {{island: island, side: {side}, centre: 12\", height: 30\"}}");
        let one = format!("outlets: {{{}}}", outlet("end", "right side"));
        let both = format!("outlets: {{{}, {}}}", outlet("end", "right side"), outlet("other", "left side"));
        island(&both, adopts).stays_silent();
        island(&one, "codes: {adopts: [NEC 2017]}").stays_silent();
        island(&one, "codes: {adopts: [NEC 2023]}").stays_silent();
        island(&one, adopts).finds("the counter `island`, 84\" (2134 mm) long, has 1 of 2 receptacles").weighs("query");
        let counter = "counters: {island: {length: 84\", depth: 40\", island: true}}";
        island(&format!("{both}\n{counter}"), adopts).stays_silent();
        island(&format!("{one}\n{counter}"), adopts).finds_one().weighs("stop");
        // How many there are can't be read, which is told by itself.
        let unread = "counters: {island: {length: 84\", depth: 40\", island: true, receptacles: some}}";
        island(unread, adopts).of_any_yaml().stays_silent();
    }
}
