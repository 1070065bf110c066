//! Several bowls in one cabinet: one beside the other they take the room of all.

use crate::assess::rules::Findings;
use crate::assess::{Context, say};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::{Placement, inside_width};
use crate::units::Length;
use crate::vocabulary::Mount;

use super::{CLIPS, RIM, is_sink};

/// Each cabinet once, at the last of its bowls, by the widest option of each.
pub fn judge(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let bowls: Vec<Placement<'_>> = context.site.fitted_in(room).filter(is_sink).collect();
        let holder = |bowl: &Placement<'_>| room.holder(&bowl.opening.name).map(|row| row.part.span);
        for (number, last) in bowls.iter().enumerate() {
            let Some(cabinet) = holder(last) else { continue };
            let is_here = |bowl: &&Placement<'_>| holder(bowl) == Some(cabinet);
            if bowls.iter().skip(number + 1).any(|later| is_here(&later)) {
                continue;
            }
            let here: Vec<&Placement<'_>> = bowls.iter().filter(is_here).collect();
            findings.extend(too_wide(context, &here, last));
        }
    }
}

fn too_wide(context: &Context<'_>, bowls: &[&Placement<'_>], last: &Placement<'_>) -> Option<Remark> {
    let inside = inside_width(last.room, last.opening, context.book.project.units)?;
    let mut needs: Vec<(&str, Length)> = Vec::new();
    for bowl in bowls {
        let wide = *bowl.option.size.width.get()?;
        let needed = match bowl.option.mount() {
            Some(Mount::Under) => wide + CLIPS.times(2),
            Some(Mount::Apron) => wide,
            Some(Mount::DropIn) | None => wide - RIM.times(2),
            // What stands on the counter takes its room there.
            Some(Mount::OnCounter | Mount::InNoCabinet) => return None,
        };
        let name = bowl.opening.name.value.as_str();
        match needs.iter_mut().find(|(known, _)| *known == name) {
            Some((_, known)) => *known = (*known).max(needed),
            None => needs.push((name, needed)),
        }
    }
    let sum: Length = needs.iter().map(|(_, needed)| *needed).sum();
    let over = Some(sum - inside.told.value).filter(|over| needs.len() > 1 && *over > Length::ZERO)?;
    let say = |length| say(length, context.book.project.units);
    let names = Phrase::series(needs.iter().map(|(name, _)| Phrase::name(name)));
    let message = phrase!(
        "the bowls of {} need {} side by side inside their cabinet, {} more than the {} there are",
        names,
        say(sum),
        say(over),
        say(inside.told.value)
    );
    let finding = last.finding(Severity::Query, inside.told.at, message).source("common practice");
    Some(finding.remedy("take a wider cabinet, or smaller bowls"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic: two of 17" with 1/2" for clips at each side need 36"; a cabinet of 36" has 34 1/2" inside.
    #[test]
    fn two_bowls_in_one_cabinet_need_the_room_of_both() {
        let vanity = |cabinet: &str, held: &str| {
            let basin = |name: &str| {
                (
                    format!("selection: Basin {name}\nkind: basin\nplace: {name}"),
                    "size: {width: 17\", depth: 13\"}\nmount: undermount\nreveal: flush",
                )
            };
            let trial = Trial::of("fit/sink")
                .room(&format!("outline: 8' x 5'\nruns: {{vanity: {{wall: A, depth: 21\", parts: [{{cabinet: vanity, width: {cabinet}, holds: {held}}}]}}}}"))
                .opening("b1", "{takes: basin, width: 17 1/4\", depth: 14\"}")
                .opening("b2", "{takes: basin, width: 17 1/4\", depth: 14\"}");
            let (one, other) = (basin("b1"), basin("b2"));
            trial.selection(&one.0, one.1).selection(&other.0, other.1)
        };
        vanity("36\"", "[b1, b2]")
            .finds("the bowls of `b1` and `b2` need 36\" (914 mm) side by side inside their cabinet, 1 1/2\" (38.1 mm) more than the 34 1/2\" (876 mm) there are")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:71"])
            .remedies("take a wider cabinet, or smaller bowls");
        vanity("38\"", "[b1, b2]").stays_silent();
        vanity("36\"", "[b1]").stays_silent();
    }
}
