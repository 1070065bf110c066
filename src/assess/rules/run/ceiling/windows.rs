//! Windows in a wall that are told to reach higher than the ceiling there.

use crate::assess::{Context, say, say_room};
use crate::book::{Ceiling, Room, Window, WindowIn};
use crate::finding::{Remark, phrase};
use crate::site::plan::Plan;
use crate::units::Length;
use crate::vocabulary::Mention;

use super::openings::UNEVEN;

/// Every window whose head is above the ceiling at its wall, and its sill below that: sill, height or wall is wrong, or
/// it lies in the roof and nobody says so.
pub(super) fn judge(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let Some(plan) = context.site.plan(room) else { return vec![] };
    room.windows.iter().filter_map(|window| told(context, plan, window)).collect()
}

fn told(context: &Context<'_>, plan: &Plan<'_>, window: &Window) -> Option<Remark> {
    let slopes = matches!(plan.room.ceiling.get(), Some(Ceiling::Sloped { .. }));
    let is_in_the_roof = window.stands_in.get() == Some(&WindowIn::Roof);
    if is_in_the_roof || slopes && Mention::RoofWindow.is_in(&window.name) {
        return None;
    }
    let frame = plan.walls.get(plan.wall_named(window.wall.get()?)?)?.frame;
    let (at, width) = (*window.at.get()?, *window.width.get()?);
    let ends = [at, at + width].map(|along| plan.ceiling_at(frame.at(along, Length::ZERO)));
    let ceiling = ends.into_iter().flatten().min()?;
    let (sill, height) = (*window.sill.get()?, window.height.spanned()?);
    let high = Some(sill + height.value).filter(|high| *high > ceiling + UNEVEN && sill < ceiling)?;
    let of_room = |length| say_room(length, context.book.project.units);
    let message = phrase!(
        "the window `{}` reaches {} above the floor, {} more than the {} of the ceiling at its wall",
        window.name.value,
        of_room(high),
        say(high - ceiling, context.book.project.units),
        of_room(ceiling)
    );
    let finding = Remark::query(height.span, message).room(&plan.room.folder).part(&window.name.value);
    let finding = match plan.room.ceiling.span() {
        Some(span) => finding.also(span, "the ceiling"),
        None => finding,
    };
    let remedy = "measure its sill, its height and the ceiling again, and correct the one that is wrong; of one that lies in the roof write `in: roof`";
    Some(finding.remedy(remedy))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn window(rule: &'static str, ceiling: &str, place: &str) -> Trial {
        Trial::of(rule)
            .room(&format!("outline: 12' x 8'\nceiling: {ceiling}\nwindows: {{yard: {{{place}, width: 30\"}}}}"))
    }

    #[test]
    fn a_window_ends_below_the_ceiling_at_its_wall() {
        let told = |ceiling: &str, place: &str| window("run/ceiling", ceiling, place);
        let slope = "{low: 62\", high: 102\", low at: C}";
        for (ceiling, place) in [
            ("96\"", "wall: A, at: 20\", sill: 60\", height: 40\""),
            (slope, "wall: C, at: 20\", sill: 36\", height: 40\""),
            (slope, "wall: B, at: 60\", sill: 60\", height: 40\""),
            (slope, "wall: A, at: 20\", sill: 70\", height: 40\""),
        ] {
            told(ceiling, place).finds_one().says("the window `yard` reaches").weighs("query");
        }
        for (ceiling, place) in [
            ("96\"", "wall: A, at: 20\", sill: 60\", height: 36\""),
            (slope, "wall: C, at: 20\", sill: 62\", height: 40\""),
            (slope, "in: roof, wall: C, at: 20\", sill: 36\", height: 40\""),
            (slope, "wall: B, at: 6\", sill: 44\", height: 40\""),
            (slope, "wall: A, at: 20\", sill: 60\", height: 40\""),
            (slope, "wall: C, at: 20\", sill: 36\", height: 24\""),
            ("{low: 62\", high: 102\", rises along: width}", "wall: C, at: 20\", sill: 36\", height: 40\""),
        ] {
            told(ceiling, place).stays_silent();
        }
    }

    /// What is wrong with it besides is told all the same: in a gable it is no window of the roof.
    #[test]
    fn a_head_too_high_hides_no_clash() {
        let row = "runs: {w: {wall: B, starts: 50\", depth: 24\", counter: {depth: 25\", height: 36\"}, parts: [{cabinet: base, width: 40\", height: 34\"}]}}";
        for height in ["24\"", "60\""] {
            let place = format!("wall: B, at: 56\", sill: 35\", height: {height}");
            window("fit/clash", "{low: 62\", high: 102\", low at: C}", &place).room(row).finds_one();
        }
    }
}
