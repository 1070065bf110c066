//! Openings one above the other in one cabinet.

use crate::assess::{Context, say};
use crate::book::Room;
use crate::finding::{Phrase, Remark, phrase};
use crate::site::tower::{Outside, Past, outside};

/// What reaches out of its cabinet, or into the opening below.
pub fn check(context: &Context<'_>) -> Vec<Remark> {
    let rooms = context.book.rooms.iter();
    rooms.flat_map(|room| outside(room).into_iter().map(move |found| told(context, room, &found))).collect()
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
