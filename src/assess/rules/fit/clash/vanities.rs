//! What stands up behind a vanity's top, before the mirror that hangs over it.

use crate::assess::{Context, say};
use crate::book::{ProductOption, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::site::plan::{Plan, Thing};
use crate::site::vanity::vanity_of;
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::Kind;

/// What goes higher up behind a mirror is a wall that is clad, and the mirror hangs on it (common practice).
const CLAD: Length = Length::from_inches(8);
const MIRRORS: [Kind; 3] = [Kind::MirrorCabinet, Kind::Mirror, Kind::LitMirror];

/// Each mirror over the vanity of a room with one basin.
pub fn clash(context: &Context<'_>, plan: &Plan<'_>) -> Vec<Remark> {
    let basin = plan.room.selections.iter().find(|selection| selection.is(Kind::Basin));
    let vanity = basin.and_then(|basin| vanity_of(plan.room, basin));
    let own = vanity.and_then(|vanity| plan.opening(vanity.opening));
    let Some((own, (top, splash))) = own.zip(splash(plan)) else { return vec![] };
    let mirrors = plan.things.iter().filter(|thing| MIRRORS.iter().any(|kind| thing.is(*kind)));
    mirrors.filter_map(|mirror| told(context, plan, (own, mirror), (top, splash))).collect()
}

/// The room's only top of which no run is told, with the height of its splash.
fn splash<'a>(plan: &Plan<'a>) -> Option<(&'a Selection, &'a Spanned<Length>)> {
    let mut tops = plan.room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let top = tops.next().filter(|_| tops.next().is_none() && plan.rows.is_empty())?;
    let high = |option: &'a ProductOption| option.top.get()?.splash.get()?.height.spanned();
    Some((top, high(top.settled()?)?))
}

fn told(
    context: &Context<'_>,
    plan: &Plan<'_>,
    (own, mirror): (&Thing<'_>, &Thing<'_>),
    (top, splash): (&Selection, &Spanned<Length>),
) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let shared = own.along.1.min(mirror.along.1) - own.along.0.max(mirror.along.0);
    let hangs_there = own.stands == mirror.stands && shared > Length::ZERO && mirror.low > own.low;
    let by = Some(own.high? + splash.value - mirror.low).filter(|by| *by > Length::ZERO && *by <= CLAD)?;
    let message =
        phrase!("the splash of `{}` reaches {} above the lower edge of `{}`", top.name.value, say(by), mirror.name);
    let finding = || Remark::query(splash.span, message).room(&plan.room.folder).selection(&top.name);
    hangs_there.then(|| {
        let finding = finding().also(mirror.span, Phrase::name(mirror.name)).source("common practice");
        finding.remedy(phrase!("make it {} lower, or hang what is over it higher", say(by)))
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: arithmetic: 34 1/2" and a splash of 4" come to 38 1/2".
    #[test]
    fn a_mirror_hangs_above_the_splash_of_the_vanity() {
        let bath = |sill: &str, splash: &str| {
            Trial::of("fit/clash")
                .room("outline: 11' x 8'")
                .opening("vanity", "{takes: cabinet, wall: A, at: 0\", width: 48\", height: 34 1/2\", depth: 22\", service: {drain: '1 1/2\", 18\" AFF'}}")
                .opening("mirror", &format!("{{takes: mirror cabinet, wall: A, at: 12\", width: 24\", height: 30\", sill: {sill}}}"))
                .selection("selection: Vanity\nkind: cabinet\nplace: vanity", "size: {width: 48\", depth: 21\", height: 33 3/4\"}")
                .selection("selection: Basin\nkind: basin", "mount: undermount")
                .selection("selection: Top\nkind: counter", &format!("top: {{splash: {{thickness: 3/4\", height: {splash}}}}}"))
        };
        bath("36\"", "4\"")
            .finds_one()
            .says("the splash of `Top` reaches 2 1/2\" (64 mm) above the lower edge of `mirror`")
            .weighs("query");
        bath("44\"", "12\"").finds_one();
        bath("44\"", "4\"").stays_silent();
        bath("38 1/2\"", "4\"").stays_silent();
        bath("44\"", "48\"").stays_silent();
    }
}
