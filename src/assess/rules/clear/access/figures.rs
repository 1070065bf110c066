//! Single distances against the standard's figures.

use super::super::{Bound, Figure};
use super::{judged, stop};
use crate::assess::Context;
use crate::assess::codes::metric::Printed;
use crate::assess::rules::Findings;
use crate::book::{AccessDistance, ClearDistance, DetailName, KitchenWays, Room, ShowerType};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::distances::{Distance, distance, for_access, for_access_there, inside_of_a_shower};
use crate::units::Length;
use crate::vocabulary::{Kind, Trait};

/// What is asked of one distance.
struct AccessFigure<Name> {
    key: Name,
    is: (&'static str, &'static str),
    bound: Bound,
    source: &'static str,
}

const fn least<Name>(
    key: Name,
    is: (&'static str, &'static str),
    inches: i64,
    source: &'static str,
) -> AccessFigure<Name> {
    AccessFigure { key, is, bound: Bound::Least(Length::from_inches(inches)), source }
}

const fn most<Name>(
    key: Name,
    is: (&'static str, &'static str),
    inches: i64,
    source: &'static str,
) -> AccessFigure<Name> {
    AccessFigure { key, is, bound: Bound::Most(Length::from_inches(inches)), source }
}

impl<Name> AccessFigure<Name> {
    fn is(&self) -> (Phrase, &'static str) {
        (Phrase::from(self.is.0), self.is.1)
    }

    fn figure(&self, whose: &'static str) -> Figure {
        Figure { bound: self.bound, whose, source: self.source, printed: Printed::ToFiveMillimetres, named: None }
    }
}

const BARS: &str = "2010 ADA Standards 609.4 (section from memory); ICC A117.1 609";
const CONTROLS: (&str, &str) = ("the shower's control", "high");

/// Distances that stand under `access`.
const OF_ACCESS: [AccessFigure<AccessDistance>; 13] = [
    least(AccessDistance::TurningCircle, ("the turning circle", "across"), 60, "2010 ADA Standards 304.3.1"),
    least(AccessDistance::WorkSurfaceWidth, ("the work surface", "wide"), 30, "2010 ADA Standards 804.3"),
    most(AccessDistance::SinkRim, ("the sink's rim", "high"), 34, "2010 ADA Standards 606.3"),
    least(
        AccessDistance::ToiletSpaceFromSideWall,
        ("the toilet's space", "from the wall at its side"),
        60,
        "2010 ADA Standards 604.3.1",
    ),
    least(
        AccessDistance::ToiletSpaceFromRearWall,
        ("the toilet's space", "from the wall behind it"),
        56,
        "2010 ADA Standards 604.3.1",
    ),
    least(AccessDistance::SideGrabBar, ("the bar at the toilet's side", "long"), 42, "2010 ADA Standards 604.5.1"),
    most(
        AccessDistance::SideGrabBarFromRearWall,
        ("the bar at the toilet's side", "from the wall behind it"),
        12,
        "2010 ADA Standards 604.5.1",
    ),
    least(AccessDistance::RearGrabBar, ("the bar behind the toilet", "long"), 36, "2010 ADA Standards 604.5.2"),
    least(AccessDistance::GrabBarHeight, ("the grab bar", "high"), 33, BARS),
    most(AccessDistance::GrabBarHeight, ("the grab bar", "high"), 36, BARS),
    most(AccessDistance::ShowerControls, CONTROLS, 48, "2010 ADA Standards 608.5 (section from memory)"),
    AccessFigure {
        key: AccessDistance::ShowerThreshold,
        is: ("the step at the shower's entry", "high"),
        bound: Bound::Most(Length::from_sixty_fourths(32)),
        source: "2010 ADA Standards 608.7 (from memory); Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 16",
    },
    most(AccessDistance::Mirror, ("the lower edge of the mirror's glass", "high"), 40, "2010 ADA Standards 603.3"),
];

/// Distances that stand under `clearances`.
const OF_CLEARANCES: [AccessFigure<ClearDistance>; 3] = [
    least(
        ClearDistance::ToiletToSide,
        ("the toilet's centre", "from the wall beside it"),
        16,
        "2010 ADA Standards 604.2",
    ),
    most(
        ClearDistance::ToiletToSide,
        ("the toilet's centre", "from the wall beside it"),
        18,
        "2010 ADA Standards 604.2",
    ),
    most(ClearDistance::BasinHeight, ("the basin's rim", "high"), 34, "2010 ADA Standards 606.3"),
];

/// What only ICC A117.1 or the planning guidelines ask for.
const ADVISED: [AccessFigure<AccessDistance>; 2] = [
    AccessFigure {
        key: AccessDistance::SinkBowlDepth,
        is: ("the bowl over the knee space", "deep"),
        bound: Bound::Most(Length::from_sixty_fourths(416)),
        source: "ICC A117.1 1003.12",
    },
    least(
        AccessDistance::ShowerControls,
        CONTROLS,
        38,
        "Kitchen and Bath Planning Guidelines, 2nd edition, bath guideline 10",
    ),
];

const WHOSE: &str = "that the access profile asks for";
const ADVISED_FOR_ACCESS: &str = "advised for access";

/// Holds every single distance of a room against the profile.
pub fn check(context: &Context<'_>, room: &Room, findings: &mut Findings<'_>) {
    findings.extend(OF_ACCESS.iter().filter_map(|asked| {
        let there = for_access_there(context.site, room, asked.key)?;
        stop(context, room, asked.is(), there, asked.figure(WHOSE))
    }));
    findings.extend(OF_CLEARANCES.iter().filter_map(|asked| {
        stop(context, room, asked.is(), distance(context.site, room, asked.key)?, asked.figure(WHOSE))
    }));
    findings.extend(ADVISED.iter().filter_map(|asked| {
        judged(context, room, asked.is(), for_access(room, asked.key)?, asked.figure(ADVISED_FOR_ACCESS))
    }));
    findings.extend(passage(context, room));
    findings.extend(work_surface(context, room));
    findings.extend(shower(context, room));
    findings.extend(end_of_bar(context, room));
    findings.extend(seats(context, room));
    findings.extend(shelves(room));
    findings.extend(counter_heights(context, room));
    findings.extend(table(context, room));
}

/// Between counters: 40" where one can leave at both ends, 60" where one must turn, unless nothing is
/// cooked there.
pub fn passage(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let cooked = room.openings.iter().any(|opening| opening.takes_one(Trait::Cooks));
    let (inches, source) = match room.access.kitchen.get()? {
        KitchenWays::PassThrough => (40, "2010 ADA Standards 804.2.1"),
        KitchenWays::UShaped if cooked => (60, "2010 ADA Standards 804.2.2"),
        KitchenWays::UShaped => return None,
    };
    let figure = Figure::of_access(Bound::Least(Length::from_inches(inches)), source);
    stop(
        context,
        room,
        ("the passage between the counters".into(), "wide"),
        distance(context.site, room, ClearDistance::WorkAisle)?,
        figure,
    )
}

fn work_surface(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let there = for_access(room, AccessDistance::WorkSurfaceHeight)?;
    let adjusts = room.access.work_surface_adjusts.get() == Some(&true);
    let bound = Bound::Most(Length::from_inches(if adjusts { 36 } else { 34 }));
    let figure = Figure::of_access(bound, "2010 ADA Standards 804.3");
    stop(context, room, ("the work surface".into(), "high"), there, figure)
}

/// Inside and entry of a shower to move over in, or to roll into.
fn shower(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let (sides, entry, source) = match room.access.shower_type.get()? {
        ShowerType::Transfer => ((36, 36), 36, "2010 ADA Standards 608.2.1"),
        ShowerType::RollIn => ((30, 60), 60, "2010 ADA Standards 608.2.2"),
    };
    let figure = |inches| Figure::of_access(Bound::Least(Length::from_inches(inches)), source);
    let is = |tail| (Phrase::from("the shower"), tail);
    let inside = inside_of_a_shower(context.site, room).and_then(|inside| {
        let side = |value| Distance { value, at: inside.at, provenance: inside.provenance };
        stop(context, room, is("in its lesser direction"), side(inside.lesser()), figure(sides.0))
            .or_else(|| stop(context, room, is("in its greater direction"), side(inside.greater()), figure(sides.1)))
    });
    inside.or_else(|| {
        stop(
            context,
            room,
            ("the shower's entry".into(), "wide"),
            for_access(room, AccessDistance::ShowerEntry)?,
            figure(entry),
        )
    })
}

/// A bar that is long enough must also reach far enough from the wall behind the toilet.
fn end_of_bar(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let (bar, from) =
        (for_access(room, AccessDistance::SideGrabBar)?, for_access(room, AccessDistance::SideGrabBarFromRearWall)?);
    let is_alone_at_fault = bar.value >= Length::from_inches(42) && from.value <= Length::from_inches(12);
    let end = Distance { value: bar.value + from.value, ..bar };
    let bound = Bound::Least(Length::from_inches(54));
    let figure = Figure::of_access(bound, "2010 ADA Standards 604.5.1");
    let is = (Phrase::from("the end of the bar at the toilet's side"), "from the wall behind it");
    stop(context, room, is, end, figure).filter(|_| is_alone_at_fault)
}

/// Seats of the toilets, and those in showers and at tubs, that still count.
fn seats(context: &Context<'_>, room: &Room) -> Vec<Remark> {
    let of_room = context.site.options().filter(|(of, _, _)| of.folder == room.folder);
    let seats = of_room.filter(|(_, selection, _)| selection.is_any(&[Kind::Toilet, Kind::ShowerSeat]));
    let bounds = [Bound::Least(Length::from_inches(17)), Bound::Most(Length::from_inches(19))];
    seats
        .filter_map(|(_, selection, option)| {
            let of_toilet = selection.is(Kind::Toilet);
            let source = if of_toilet { "2010 ADA Standards 604.4" } else { "2010 ADA Standards 610.3 (from memory)" };
            let figure = |bound| Figure::of_access(bound, source);
            let (height, at) = option.length(DetailName::SeatHeight)?;
            let is = (phrase!("the seat of `{}`", selection.name.value), "high");
            let there = Distance::written(height, at);
            let finding = bounds.iter().find_map(|bound| judged(context, room, is.clone(), there, figure(*bound)))?;
            let severity = if selection.settled().is_some() { Severity::Stop } else { Severity::Query };
            Some(Remark { severity, ..finding }.option(&selection.name, &option.id.value))
        })
        .collect()
}

fn shelves(room: &Room) -> Option<Remark> {
    let share = room.access.shelves_in_reach.spanned()?;
    let half = crate::units::Percent::parse("50 %").ok()?;
    let message = phrase!(
        "{} of the shelves are within reach, {half} at least are asked for by the access profile",
        share.value,
        half
    );
    let finding = Remark::stop(share.span, message).room(&room.folder);
    let finding = finding.source("2010 ADA Standards 804.5").remedy("lower some shelves, or add base drawers");
    (share.value < half).then_some(finding)
}

/// One counter to sit at, one to stand at.
fn counter_heights(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let heights = room.access.distances.lengths.get(&AccessDistance::CounterHeights)?;
    let within = |(least, most): (i64, i64)| {
        let (least, most) = (Length::from_inches(least), Length::from_inches(most));
        heights.0.iter().any(|height| height.value >= least && height.value <= most)
    };
    let first = heights.0.first()?;
    let say = |inches| crate::assess::say(Length::from_inches(inches), context.book.project.units);
    let (low, middle, high) = (say(28), say(36), say(45));
    let message = phrase!(
        "the counters do not offer two heights to work at, one from {low} to {middle} and one from {middle} to {high}",
        low,
        middle,
        middle,
        high
    );
    let finding = Remark::query(first.span, message).room(&room.folder);
    let source = "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 25, access standard";
    let both = heights.0.len() > 1 && within((28, 36)) && within((36, 45));
    (!both).then(|| finding.source(source).remedy("lower or raise a stretch of counter"))
}

/// One place to sit at whose top a chair goes under.
fn table(context: &Context<'_>, room: &Room) -> Option<Remark> {
    let heights: Vec<_> = room.seating.iter().filter_map(|seating| seating.height.spanned()).collect();
    let (least, most) = (Length::from_inches(28), Length::from_inches(34));
    let fits = heights.iter().any(|height| height.value >= least && height.value <= most);
    let nearest = heights.iter().min_by_key(|height| (height.value - most).abs()).filter(|_| !fits)?;
    let bound = if nearest.value < least { Bound::Least(least) } else { Bound::Most(most) };
    let figure = Figure::of_access(bound, "2010 ADA Standards 902.3");
    stop(context, room, ("the top to sit at".into(), "high"), Distance::from(*nearest), figure)
}
