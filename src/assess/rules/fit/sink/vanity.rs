//! A washbasin against the cabinet that it stands in, where it has no opening of its own.

use crate::assess::context::about;
use crate::assess::{Context, say};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::panel_thickness;
use crate::site::vanity::vanity_of;
use crate::vocabulary::{Kind, Mount};

use super::{CLIPS, RIM};

/// Width and depth of each basin against each cabinet that may still be chosen below it: the first that is too
/// small.
pub fn ask(context: &Context<'_>, (room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let vanity = vanity_of(room, selection).filter(|_| selection.is(Kind::Basin))?;
    let mount = option.mount();
    if matches!(mount, Some(Mount::OnCounter | Mount::InNoCabinet)) {
        return None;
    }
    let around = if mount == Some(Mount::Under) { CLIPS.times(2) } else { -RIM.times(2) };
    let say = |length| say(length, context.book.project.units);
    let (name, below) = (&selection.name.value, &vanity.selection.name.value);
    let told = |cabinet: &ProductOption| {
        let narrow = || {
            let (wide, outside) = (option.size.width.get()?, cabinet.size.width.spanned()?);
            let inside = outside.value - panel_thickness(outside.value, context.book.project.units).times(2);
            let needs = *wide + around;
            let message = phrase!(
                "`{name}` needs {} inside its cabinet, {} more than the {} there are in `{below}`, which is {} wide outside",
                name,
                say(needs),
                say(needs - inside),
                say(inside),
                below,
                say(outside.value)
            );
            (needs > inside).then_some((outside.span, message))
        };
        let shallow = || {
            let (deep, outside) = (option.size.depth.get()?, cabinet.size.depth.spanned()?);
            let over = *deep - outside.value;
            let message = phrase!("`{name}` is {} deep, {} more than `{below}`", name, say(*deep), say(over), below);
            (over > crate::units::Length::ZERO).then_some((outside.span, message))
        };
        narrow().or_else(shallow)
    };
    let (at, message) = vanity.selection.standing().iter().find_map(told)?;
    let finding = about(room, selection, option, Severity::Query, at, message).also(selection.name.span, "the basin");
    Some(finding.source("common practice"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn basin(basin: &str, vanity: &str) -> Trial {
        Trial::of("fit/sink")
            .opening("vanity", "{takes: cabinet, width: 40\", service: {drain: '1 1/4\", 18\" AFF'}}")
            .selection("selection: Vanity\nkind: cabinet\nplace: vanity", &format!("size: {{{vanity}, height: 30\"}}"))
            .selection("selection: Basin\nkind: basin", &format!("reveal: flush\n{basin}"))
    }

    /// Source: trade reports F-51, for basins: common practice.
    #[test]
    fn a_basin_goes_into_the_cabinet_that_stands_before_its_pipes() {
        let under = |size: &str| format!("mount: undermount\nsize: {{{size}}}");
        basin(&under("width: 22\", depth: 15\""), "width: 24\", depth: 21\"")
            .finds("`Basin` needs 23\" (584 mm) inside its cabinet, 1/2\" (12.7 mm) more than the 22 1/2\" (572 mm) there are in `Vanity`, which is 24\" (610 mm) wide outside")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:4:15"]);
        basin(&under("width: 20\", depth: 15\""), "width: 24\", depth: 21\"").stays_silent();
        basin(&under("width: 18\", depth: 16\""), "width: 24\", depth: 14\"")
            .finds("`Basin` is 16\" (406 mm) deep, 2\" (51 mm) more than `Vanity`");
        basin("mount: on the counter\nsize: {width: 30\", depth: 18\"}", "width: 24\", depth: 14\"").stays_silent();
        basin("mount: drop-in\nsize: {width: 23\", depth: 15\"}", "width: 24\", depth: 21\"").stays_silent();
    }
}
