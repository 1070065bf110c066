//! A basin that hangs on a wall or stands on a foot, against the drain behind it.

use crate::assess::{Context, say};
use crate::book::{DetailName, ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::outlets::height_of_the_drain;
use crate::site::rims::rim_of;
use crate::site::vanity::vanity_of;
use crate::units::Length;
use crate::vocabulary::{Hazard, Kind, Mount};

/// No basin is shallower, with its waste (common practice).
const SHALLOWEST: Length = Length::from_inches(4);
/// What is higher than this stands on a foot, and is no bowl alone (common practice).
const BOWL: Length = Length::from_inches(12);

/// Whether the drain is higher than water leaves a basin of which nobody says how deep its bowl is.
pub(super) fn no_fall(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let (selection, option) = (fitted.selection, fitted.option);
    let is_set_in = matches!(option.mount(), Some(Mount::Under | Mount::DropIn | Mount::Apron));
    let is_asked = selection.is(Kind::Basin) && !is_set_in && option.length(DetailName::BowlDepth).is_none();
    let on_a_vanity = vanity_of(fitted.room, selection).is_some();
    if is_asked && !on_a_vanity { above(context, fitted) } else { None }
}

/// The same of a basin that stands on a vanity, by the drain behind that.
pub(super) fn on_a_vanity(
    context: &Context<'_>,
    (room, selection, option): (&Room, &Selection, &ProductOption),
) -> Option<Remark> {
    let vanity = vanity_of(room, selection)?;
    let stands = option.mount() == Some(Mount::OnCounter) && option.length(DetailName::BowlDepth).is_none();
    if stands { above(context, &Placement::at((room, vanity.opening), (selection, option))) } else { None }
}

fn above(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let (selection, option) = (fitted.selection, fitted.option);
    let rim = rim_of(fitted.room, selection, option)?.value;
    let (drain, at) = height_of_the_drain(fitted.opening)?;
    let deep = height_of(option).filter(|high| *high <= BOWL);
    let outlet = rim - deep.unwrap_or(SHALLOWEST);
    if drain <= outlet {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let name = &selection.name.value;
    // A drain above the rim is above the bowl, however shallow that is.
    let is_certain = deep.is_some() || drain >= rim;
    let message = match deep {
        Some(_) => {
            phrase!("`{name}` comes out {} above the floor, {} below the drain", name, say(outlet), say(drain - outlet))
        }
        None => phrase!(
            "the drain for `{name}` is {} above the finished floor, and the rim of its bowl at {}",
            name,
            say(drain),
            say(rim)
        ),
    };
    let severity = if is_certain { Severity::Stop } else { Severity::Query };
    let finding = fitted.finding(severity, at, message);
    let finding = if is_certain { finding } else { finding.source("common practice") };
    let finding = finding.remedy("have the drain lowered before the wall is closed, or hang the basin higher");
    Some(Remark { caution: Some(Hazard::Water), ..finding })
}

fn height_of(option: &ProductOption) -> Option<Length> {
    option.size.height.get().and_then(|high| high.least.or(high.most))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn basin(drain: &str, rim: &str, option: &str) -> Trial {
        Trial::of("fit/below")
            .room(&format!("clearances: {{basin height: {rim}}}"))
            .opening("place", &format!("{{takes: basin, service: {{drain: '{drain}'}}}}"))
            .selection("selection: Basin\nkind: basin\nplace: place", option)
    }

    /// Source: arithmetic; trade reports F-59 (a drain above the bowl).
    #[test]
    fn a_basin_that_hangs_drains_downward() {
        let hung = "mount: on the wall\nsize: {height: 6\"}";
        basin("1 1/2\", 35\" AFF", "34\"", hung)
            .finds("`Basin` comes out 28\" (711 mm) above the floor, 7\" (178 mm) below the drain")
            .weighs("stop")
            .cautions();
        basin("1 1/2\", 30\" AFF", "34\"", hung).finds_one().weighs("stop");
        basin("1 1/2\", 20\" AFF", "34\"", hung).stays_silent();
        basin("32 mm, 880 mm above finished floor", "850 mm", "mount: wall-hung").finds_one().weighs("stop");
        basin("DN 40, 800 mm über OKFF", "850 mm", "mount: wall-hung").finds_one().weighs("query");
        basin("32 mm, 550 mm above finished floor", "850 mm", "mount: wall-hung").stays_silent();
    }

    #[test]
    fn so_does_one_that_stands_on_a_vanity() {
        let basin = |drain: &str| {
            Trial::of("fit/below")
                .room("clearances: {basin height: 860 mm}")
                .opening("vanity", &format!("{{takes: cabinet, service: {{drain: '{drain}'}}}}"))
                .selection("selection: Vanity\nkind: cabinet\nplace: vanity", "model: V")
                .selection("selection: Basin\nkind: basin", "mount: on the counter\nsize: {height: 130 mm}")
        };
        basin("40 mm, 800 mm AFF").finds_one().weighs("stop").cautions();
        basin("40 mm, 500 mm AFF").stays_silent();
    }

    #[test]
    fn so_does_one_on_a_foot_whose_height_is_no_bowl_s() {
        let foot = "description: on a pedestal\nsize: {height: 33\"}";
        basin("1 1/4\" trap, 34\" AFF", "33\"", foot)
            .finds("the drain for `Basin` is 34\" (864 mm) above the finished floor, and the rim of its bowl at 33\" (838 mm)")
            .weighs("stop");
        basin("1 1/4\" trap, 30\" AFF", "33\"", foot).finds_one().weighs("query");
        basin("1 1/4\" trap, 18\" AFF", "33\"", foot).stays_silent();
        basin("1 1/4\" trap, 34\" AFF", "33\"", "mount: undermount\nsize: {height: 6\"}").stays_silent();
    }
}
