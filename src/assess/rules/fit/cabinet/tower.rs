//! Openings one above the other in one cabinet.

use crate::assess::{Context, say};
use crate::book::Room;
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::tower::{Outside, Past, TooHigh, outside, too_high};

/// What reaches out of its cabinet, or into the opening below.
pub fn check(context: &Context<'_>) -> Vec<Remark> {
    let of_room = |room| {
        let outside = outside(room);
        let in_all = too_high(context.book, room);
        // What does not stay inside at its written place is told alone.
        let is_told = |part| outside.iter().any(|found: &Outside<'_>| std::ptr::eq(found.part, part));
        let in_all = in_all.into_iter().filter(|found| !is_told(found.part)).map(|found| sum(context, room, &found));
        let in_all: Vec<Remark> = in_all.collect();
        let each = outside.iter().map(|found| told(context, room, found)).collect::<Vec<_>>();
        each.into_iter().chain(in_all)
    };
    context.book.rooms.iter().flat_map(of_room).collect()
}

/// What is higher in all than the cabinet that holds it.
fn sum(context: &Context<'_>, room: &Room, found: &TooHigh<'_>) -> Remark {
    let say = |length| say(length, context.book.project.units);
    let cabinet = found.part.is.word();
    let held = Phrase::series(found.holds.iter().map(|opening| Phrase::name(&opening.name.value)).collect::<Vec<_>>());
    let (needs, more, inside) = (say(found.needs), say(found.needs - found.inside), say(found.inside));
    let (severity, message) = if found.less_its_panels {
        let message = phrase!(
            "{held} need {needs} of height in all, {more} more than the {inside} between bottom and top panel of `{cabinet}`",
            held,
            needs,
            more,
            inside,
            cabinet
        );
        (Severity::Query, message)
    } else {
        let message = phrase!(
            "{held} need {needs} of height in all, {more} more than the {inside} of `{cabinet}`",
            held,
            needs,
            more,
            inside,
            cabinet
        );
        (Severity::Stop, message)
    };
    let at = found.part.height.span().unwrap_or(found.part.span);
    let finding = Remark { severity, ..Remark::stop(at, message) }.room(&room.folder).part(cabinet);
    let finding = found
        .holds
        .iter()
        .fold(finding, |finding, opening| finding.also(opening.name.span, Phrase::name(&opening.name.value)));
    finding.remedy("order the cabinet higher, or take one of them out of it; write each one's `sill` and `height`")
}

fn told(context: &Context<'_>, room: &Room, found: &Outside<'_>) -> Remark {
    let say = |length| say(length, context.book.project.units);
    let (name, cabinet, by) = (&found.opening.name.value, found.part.is.word(), say(found.by));
    let (message, remedy) = match found.past {
        Past::Top(top) => (
            phrase!(
                "the opening `{name}` ends {by} above the top of its cabinet `{cabinet}`, {}",
                name,
                by,
                cabinet,
                say(top)
            ),
            "lower its `sill`, or order the cabinet higher",
        ),
        Past::Bottom(bottom) => (
            phrase!(
                "the opening `{name}` begins {by} below its cabinet `{cabinet}`, which begins at {}",
                name,
                by,
                cabinet,
                say(bottom)
            ),
            "raise its `sill`, or hang the cabinet lower",
        ),
        Past::Into(lower) => (
            phrase!(
                "the opening `{name}` begins {by} below the top of `{}` in the same cabinet",
                name,
                by,
                lower.name.value
            ),
            "raise the `sill` of the upper one, or lower that of the one below it",
        ),
    };
    let at = found.opening.sill.span().unwrap_or(found.opening.span);
    let finding = Remark::stop(at, message).room(&room.folder).opening(&found.opening.name).remedy(remedy);
    match found.past {
        Past::Into(lower) => finding.also(lower.span, Phrase::name(&lower.name.value)),
        Past::Top(_) | Past::Bottom(_) => finding.also(found.part.span, Phrase::name(cabinet)),
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// A tower of 2200 mm: an oven from 900 to 1500 mm, and a steam oven of 450 mm over it.
    fn tower(row: &str, steamer: &str) -> Trial {
        Trial::of("fit/cabinet")
            .metric()
            .room(row)
            .opening("oven", "{takes: wall oven, width: 560 mm, sill: 900 mm, height: 600 mm}")
            .opening("steamer", &format!("{{takes: wall oven, width: 560 mm, {steamer}}}"))
    }

    const PART: &str = "tall: oven tower, width: 600 mm, height: 2200 mm, holds: [oven, steamer]";

    #[test]
    fn what_is_set_into_a_tower_ends_below_its_top() {
        for row in [
            format!("runs: {{tall: {{parts: [{{{PART}}}]}}}}"),
            format!("outline: 4 m x 3 m\nruns: {{tall: {{wall: A, parts: [{{{PART}}}]}}}}"),
            format!(
                "outline: 4 m x 3 m\nruns: {{tall: {{wall: A, height: 2200 mm, parts: [{{{}}}]}}}}",
                PART.replace(" height: 2200 mm,", "")
            ),
        ] {
            tower(&row, "sill: 1900 mm, height: 450 mm")
                .finds_one()
                .weighs("stop")
                .says("the opening `steamer` ends 150 mm")
                .says("above the top of its cabinet `oven tower`, 2200 mm")
                .remedies("lower its `sill`, or order the cabinet higher");
            tower(&row, "sill: 1750 mm, height: 450 mm").stays_silent();
            tower(&row, "height: 450 mm").stays_silent();
        }
    }

    /// Arithmetic: a hob that reaches 60 mm down from a counter at 920 mm ends at 860 mm.
    #[test]
    fn an_oven_ends_below_the_hob_over_it() {
        let base = |sill: &str, hob: &str| {
            Trial::of("fit/cabinet")
                .metric()
                .room("runs: {base: {counter: {height: 920 mm}, parts: [{cabinet: oven unit, width: 600 mm, holds: [oven, hob]}]}}")
                .opening("oven", &format!("{{takes: wall oven, width: 560 mm, sill: {sill}, height: 600 mm}}"))
                .opening("hob", &format!("{{takes: cooktop, width: 560 mm{hob}}}"))
        };
        base("290 mm", ", height: 60 mm")
            .finds_one()
            .weighs("stop")
            .says("the opening `hob` begins 30 mm")
            .says("below the top of `oven` in the same cabinet");
        base("250 mm", ", height: 60 mm").stays_silent();
        base("290 mm", "").stays_silent();
        let chosen = "selection: Hob\nkind: cooktop\nplace: hob";
        base("290 mm", "").selection(chosen, "size: {height: 55 mm}").finds_one();
        base("250 mm", "").selection(chosen, "size: {height: 55 mm}").stays_silent();
    }

    #[test]
    fn two_in_one_tower_do_not_overlap() {
        let row = format!("runs: {{tall: {{parts: [{{{PART}}}]}}}}");
        tower(&row, "sill: 1428 mm, height: 450 mm")
            .finds_one()
            .weighs("stop")
            .says("the opening `steamer` begins 72 mm")
            .says("below the top of `oven` in the same cabinet");
        tower(&row, "sill: 1500 mm, height: 450 mm").stays_silent();
        tower(&row, "sill: 450 mm, height: 450 mm").stays_silent();
        let hung = "runs: {uppers: {above floor: 1400 mm, parts: [{cabinet: box, width: 600 mm, height: 700 mm, holds: [steamer]}]}}";
        tower(hung, "sill: 1350 mm, height: 450 mm").finds_one();
        tower(hung, "sill: 1420 mm, height: 450 mm").stays_silent();
    }

    /// Source: arithmetic: an oven of 29" and a microwave of 18 1/2", with 1/2" of air above it, in a tower of 52" on a
    /// plinth of 4".
    #[test]
    fn what_is_chosen_for_one_tower_is_no_higher_in_all_than_its_inside() {
        let tower = |high: &str, oven: &str, plinth: &str| {
            Trial::of("fit/cabinet")
                .room(&format!("runs: {{tall: {{{plinth}parts: [{{tall: tower, width: 30\", height: {high}, holds: [oven, micro]}}]}}}}"))
                .opening("oven", &format!("{{takes: wall oven{oven}}}"))
                .opening("micro", "{takes: microwave}")
                .selection("selection: Oven\nkind: wall oven\nplace: oven", "size: {height: 29\"}")
                .selection("selection: Micro\nkind: microwave\nplace: micro", "size: {height: 18 1/2\"}\nfit: {air: {top: 1/2\"}}")
        };
        tower("47\"", "", "")
            .finds("`oven` and `micro` need 48\" (1219 mm) of height in all, 1\" (25.4 mm) more than the 47\" (1194 mm) of `tower`")
            .weighs("stop")
            .points_at(&["rooms/kitchen/room.yaml:2:57"]);
        tower("49\"", "", "").finds_one().weighs("query").says("1/2\" (12.7 mm) more");
        tower("49 1/2\"", "", "").stays_silent();
        tower("51 1/2\"", "", "toe kick: 4\", ").finds_one().weighs("stop");
        tower("53 1/2\"", "", "toe kick: 4\", ").stays_silent();
        // As its opening is written, it takes more.
        tower("52\"", ", height: 34\"", "").finds_one();
        tower("54 1/2\"", ", height: 34\"", "").stays_silent();
    }

    /// A thing that is chosen is as high as its sheet has it, where nobody wrote the height of its opening.
    #[test]
    fn what_stands_at_a_written_height_reaches_as_far_as_what_is_chosen() {
        let oven = |sill: &str| {
            Trial::of("fit/cabinet")
                .room("runs: {tall: {parts: [{tall: tower, width: 30\", height: 84\", holds: [oven]}]}}")
                .opening("oven", &format!("{{takes: wall oven, sill: {sill}}}"))
                .selection("selection: Oven\nkind: wall oven\nplace: oven", "size: {height: 29\"}")
        };
        oven("56\"").finds_one().says("the opening `oven` ends 1\" (25.4 mm) above the top of its cabinet");
        oven("55\"").stays_silent();
    }

    /// A box ends under the counter that lies on it, and begins above its toe kick, whatever else is written of it.
    #[test]
    fn a_cutout_in_a_base_cabinet_stays_under_its_counter_and_above_its_foot() {
        let base = |row: &str, sill: &str| {
            Trial::of("fit/cabinet")
                .room(row)
                .opening("micro", &format!("{{takes: microwave, width: 22 1/4\", sill: {sill}, height: 16\"}}"))
                .selection("selection: Top\nkind: counter", "thickness: 1 1/4\"")
        };
        let run = "runs: {a: {toe kick: 4\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: m, width: 24\", holds: [micro]}]}}";
        base(run, "22\"")
            .finds("the opening `micro` ends 3 1/4\" (83 mm) above the top of its cabinet `m`, 34 3/4\" (883 mm)")
            .weighs("stop");
        base(run, "18 3/4\"").stays_silent();
        base(run, "3\"")
            .finds("the opening `micro` begins 1\" (25.4 mm) below its cabinet `m`, which begins at 4\" (102 mm)");
        let island = "islands: {i: {height: 36\", wall side: {parts: [{cabinet: m, width: 24\", holds: [micro]}]}}}";
        base(island, "21\"").finds_one();
        base(island, "17\"").stays_silent();
        let tall = run.replace("cabinet: m", "tall: m");
        base(&tall, "22\"").stays_silent();
    }

    /// What follows from it is told nowhere else: no raised opening, no door that sweeps another's floor.
    #[test]
    fn an_overlap_is_told_once() {
        let row = format!("outline: 4 m x 3 m\nruns: {{tall: {{wall: A, parts: [{{{PART}}}]}}}}");
        for rule in ["fit/height", "fit/clash"] {
            let it =
                |name: &str, place: &str| format!("selection: {name}\nkind: wall oven\nplace: {place}\nhinge: left");
            Trial::of(rule)
                .metric()
                .room(&row)
                .opening("oven", "{takes: wall oven, width: 560 mm, sill: 900 mm, height: 600 mm}")
                .opening("steamer", "{takes: wall oven, width: 560 mm, sill: 1428 mm, height: 450 mm}")
                .selection(&it("Oven", "oven"), "size: {height: 595 mm}\nfit: {door: {swings: 500 mm}}")
                .selection(&it("Steamer", "steamer"), "size: {height: 445 mm}\nfit: {door: {swings: 500 mm}}")
                .stays_silent();
        }
    }
}
