//! Puts what was read at an opening in the place of what the book says, each from the face that the book counts from.

use crate::book::{
    AsWritten, HollowFrom, Measured, MeasuredBetween, MeasuredFrom, Opening, Plumb, Readings, Slot, TakenFigure,
    WallBuildUp,
};
use crate::ledger::{self, Read, ReadFrom, ReadingSpot, Side};
use crate::source::{Span, Spanned};
use crate::units::Length;

/// Puts readings into their opening; `to_lay` is what is still to be laid on the floor, where that is known.
pub fn put(opening: &mut Opening, to_lay: Option<Length>, fact: &ledger::Measured, reads: &[&Read]) {
    let span = opening.span;
    if opening.as_written.is_none() {
        opening.as_written = Some(as_written(opening));
    }
    let mut reads: Vec<Read> = reads.iter().map(|read| (*read).clone()).collect();
    on_its_walls(opening, &mut reads);
    on_its_floor(opening, &reads);
    for (side, slot) in
        [(Side::Width, &mut opening.width), (Side::Height, &mut opening.height), (Side::Depth, &mut opening.depth)]
    {
        let lengths: Vec<_> = of(&reads, side).into_iter().map(|length| Spanned::new(length, span)).collect();
        if !lengths.is_empty() {
            *slot = given(Readings(lengths), span);
        }
    }
    if let [one, other] = of(&reads, Side::Diagonal)[..] {
        opening.diagonals = given((one, other), span);
    }
    if let Some(plumb) = plumb(&reads) {
        opening.plumb = given(plumb, span);
    }
    reads.iter().for_each(|read| besides(opening, to_lay, read));
    taken(opening, fact, &reads);
    let who = Measured {
        on: given(fact.on, span),
        by: given(fact.by.clone(), span),
        with: Slot::Absent,
        again: Slot::Absent,
    };
    opening.measured = given(who, span);
}

/// Whose each figure is from now on: nobody else's who read it before.
fn taken(opening: &mut Opening, fact: &ledger::Measured, reads: &[Read]) {
    let counts = |what: &Side| match what {
        Side::PlumbLeft => plumb(reads).is_some(),
        Side::Diagonal => of(reads, Side::Diagonal).len() == 2,
        _ => *what != Side::PlumbRight,
    };
    let mut sides: Vec<Side> = reads.iter().map(|read| read.what).filter(counts).collect();
    sides.sort_unstable();
    sides.dedup();
    opening.taken.retain(|one| !sides.contains(&one.what));
    let by = |what| TakenFigure { what, by: fact.by.clone(), on: fact.on };
    opening.taken.extend(sides.into_iter().map(by));
}

fn as_written(opening: &Opening) -> AsWritten {
    AsWritten {
        width: opening.width.clone(),
        height: opening.height.clone(),
        depth: opening.depth.clone(),
        diagonals: opening.diagonals.clone(),
        plumb: opening.plumb.clone(),
        measured: opening.measured.clone(),
    }
}

/// Heights are replaced as a whole: what they were read from is what they count from.
fn on_its_floor(opening: &mut Opening, reads: &[Read]) {
    let from = reads.iter().filter(|read| read.what == Side::Height).find_map(|read| match read.from? {
        ReadFrom::PresentFloor => Some(MeasuredFrom::PresentFloor),
        ReadFrom::FinishedFloor => Some(MeasuredFrom::FinishedFloor),
        ReadFrom::Studs | ReadFrom::FinishedWalls => None,
    });
    if let Some(from) = from {
        opening.measured_from = given(from, opening.span);
    }
}

/// Widths and depths that were read from other faces than the book's are turned to those, where what comes on them is
/// known; else the new faces count, and what the book has from the old ones is no longer known.
fn on_its_walls(opening: &mut Opening, reads: &mut [Read]) {
    let from = reads.iter().find_map(|read| match (is_between(read.what), read.from?) {
        (true, ReadFrom::Studs) => Some(MeasuredBetween::Studs),
        (true, ReadFrom::FinishedWalls) => Some(MeasuredBetween::FinishedWalls),
        _ => None,
    });
    let was = opening.measured_between.get().copied().unwrap_or(MeasuredBetween::FinishedWalls);
    let Some(from) = from.filter(|from| *from != was) else { return };
    let has = |what| reads.iter().any(|read| read.what == what);
    let kept = [
        !opening.width.is_absent() && !has(Side::Width),
        !opening.plumb.is_absent() && plumb(reads).is_none(),
        !opening.depth.is_absent() && !has(Side::Depth),
    ];
    let is_kept = kept.contains(&true);
    if let Some(to_come) = opening.wall_build_up.get().copied().filter(|_| is_kept) {
        reads.iter_mut().for_each(|read| turned(read, from, to_come));
        return;
    }
    let [width, plumb, depth] = kept;
    if width {
        opening.width = Slot::Absent;
    }
    if plumb {
        opening.plumb = Slot::Absent;
    }
    if depth {
        opening.depth = Slot::Absent;
    }
    opening.measured_between = given(from, opening.span);
}

fn is_between(what: Side) -> bool {
    matches!(what, Side::Width | Side::Depth | Side::PlumbLeft | Side::PlumbRight)
}

/// A reading from those faces as it would be from the others.
fn turned(read: &mut Read, from: MeasuredBetween, to_come: WallBuildUp) {
    let less = match read.what {
        Side::Width => to_come.left + to_come.right,
        Side::Depth => to_come.back,
        // From one line, the left side comes nearer to the middle and so farther from the line.
        Side::PlumbLeft => -to_come.left,
        Side::PlumbRight => to_come.right,
        _ => return,
    };
    read.length = match from {
        MeasuredBetween::Studs => read.length - less,
        MeasuredBetween::FinishedWalls => read.length + less,
    };
}

/// What else is read at an opening.
fn besides(opening: &mut Opening, to_lay: Option<Length>, read: &Read) {
    let (span, length) = (opening.span, read.length);
    let level = level(read, to_lay);
    if is_a_level(read) {
        opening.unlevelled.retain(|side| *side != read.what);
        opening.unlevelled.extend(level.is_none().then_some(read.what));
    }
    let service = match read.what {
        Side::Sill => return set_level(&mut opening.sill, level, span),
        Side::InFront => return set(&mut opening.in_front, Some(length), span),
        Side::CounterDepth => return set(&mut opening.counter_depth, Some(length), span),
        Side::CounterHeight => return set_level(&mut opening.counter_height, level, span),
        Side::Apron => return set(&mut opening.apron_opening, Some(length), span),
        Side::Below => return opening.below.get_mut().map_or((), |below| set(&mut below.clear, Some(length), span)),
        Side::InsideWidth | Side::InsideDepth | Side::InsideHeight => return in_cabinet(opening, read),
        Side::Cavity | Side::RoughIn | Side::Valve => return in_wall(opening, read),
        Side::Power | Side::Gas | Side::Water | Side::Drain | Side::Duct => read.what,
        Side::Width | Side::Height | Side::Depth | Side::Diagonal | Side::PlumbLeft | Side::PlumbRight => return,
    };
    let Some(points) = within(&mut opening.points, span) else { return };
    let point = match service {
        Side::Power => &mut points.power,
        Side::Gas => &mut points.gas,
        Side::Water => &mut points.water,
        Side::Drain => &mut points.drain,
        _ => &mut points.duct,
    };
    let Some(point) = within(point, span) else { return };
    match read.at {
        Some(ReadingSpot::FromLeft) => set(&mut point.from_left, Some(length), span),
        Some(ReadingSpot::Height) => set_level(&mut point.height, level, span),
        Some(ReadingSpot::Proud) => set(&mut point.proud, Some(length), span),
        _ => {}
    }
}

fn in_cabinet(opening: &mut Opening, read: &Read) {
    let span = opening.span;
    let Some(cabinet) = within(&mut opening.cabinet, span) else { return };
    let slot = match read.what {
        Side::InsideWidth => &mut cabinet.inside_width,
        Side::InsideDepth => &mut cabinet.inside_depth,
        _ => &mut cabinet.inside_height,
    };
    set(slot, Some(read.length), span);
}

/// What is in the wall counts from one face: a reading from another takes the place of all that was read before.
fn in_wall(opening: &mut Opening, read: &Read) {
    let span = opening.span;
    let Some(hollow) = within(&mut opening.hollow, span) else { return };
    if read.what == Side::Cavity {
        return set(&mut hollow.cavity, Some(read.length), span);
    }
    let from = if read.from == Some(ReadFrom::Studs) { HollowFrom::Studs } else { HollowFrom::FinishedWall };
    let was = hollow.from.get().copied().unwrap_or(HollowFrom::FinishedWall);
    if read.from.is_some() && from != was {
        (hollow.rough_in, hollow.valve) = (Slot::Absent, Slot::Absent);
        hollow.from = given(from, span);
    }
    let slot = if read.what == Side::RoughIn { &mut hollow.rough_in } else { &mut hollow.valve };
    set(slot, Some(read.length), span);
}

/// A height above the floor, from the finished one; none where it was read from one on which nobody knows what comes.
fn level(read: &Read, to_lay: Option<Length>) -> Option<Length> {
    match read.from {
        Some(ReadFrom::PresentFloor) => Some(read.length - to_lay?),
        _ => Some(read.length),
    }
}

/// Whether it is a height above the floor, besides the opening's own, which keeps the floor that it was read from.
fn is_a_level(read: &Read) -> bool {
    let services = [Side::Power, Side::Gas, Side::Water, Side::Drain, Side::Duct];
    matches!(read.what, Side::Sill | Side::CounterHeight)
        || read.at == Some(ReadingSpot::Height) && services.contains(&read.what)
}

/// What was read last counts, and what is not known of it is not known: an older height does not stand for it.
fn set_level(slot: &mut Slot<Length>, level: Option<Length>, span: Span) {
    *slot = level.map_or(Slot::Invalid, |level| given(level, span));
}

/// What is written in a slot, made where nothing is; none where it could not be read.
fn within<T: Default>(slot: &mut Slot<T>, span: Span) -> Option<&mut T> {
    if slot.is_absent() {
        *slot = given(T::default(), span);
    }
    slot.get_mut()
}

fn set(slot: &mut Slot<Length>, length: Option<Length>, span: Span) {
    if let Some(length) = length {
        *slot = given(length, span);
    }
}

fn of(reads: &[Read], side: Side) -> Vec<Length> {
    reads.iter().filter(|read| read.what == side).map(|read| read.length).collect()
}

/// Both distances from the plumb line, at each height where both were read.
fn plumb(reads: &[Read]) -> Option<Plumb> {
    let of = |side| reads.iter().filter(move |read| read.what == side);
    let beside = |left: &&Read| of(Side::PlumbRight).find(|right| right.at == left.at).map(|right| right.length);
    let both = of(Side::PlumbLeft).filter_map(|left| Some((left.length, beside(&left)?)));
    let (left, right): (Vec<Length>, Vec<Length>) = both.unzip();
    (!left.is_empty()).then_some(Plumb { left, right })
}

fn given<T>(value: T, span: Span) -> Slot<T> {
    Slot::Given(Spanned::new(value, span))
}

#[cfg(test)]
mod tests {
    use super::super::tests::{book_of, confirmed, first};
    use super::*;
    use crate::ledger::Fact;

    fn inches(text: &str) -> Length {
        Length::parse(text).unwrap()
    }

    /// The opening of a room after these readings.
    fn after(room: &str, opening: &str, reads: &[(Side, Option<ReadingSpot>, &str, Option<ReadFrom>)]) -> Opening {
        let mut told = first("hole");
        let one = told.readings[0].clone();
        let read = |(what, at, length, from): &(Side, Option<ReadingSpot>, &str, Option<ReadFrom>)| Read {
            what: *what,
            at: *at,
            length: inches(length),
            from: *from,
            ..one.clone()
        };
        told.readings = reads.iter().map(read).collect();
        let room = format!("name: Kitchen\n{room}openings:\n  hole: {{{opening}}}\n");
        let confirmed = confirmed(&told);
        let book = book_of(&room, vec![Fact::Measured(told), confirmed]);
        book.rooms[0].openings[0].clone()
    }

    const LAY: &str = "floor build-up: 3/4\"\n";
    const PRESENT: Option<ReadFrom> = Some(ReadFrom::PresentFloor);
    const FINISHED: Option<ReadFrom> = Some(ReadFrom::FinishedFloor);

    /// Source: trade reports F-17, F-25: the floor that a height was taken from goes with it.
    #[test]
    fn a_height_counts_from_the_floor_that_it_was_read_from() {
        let of = |from, was| {
            after(LAY, &format!("takes: dishwasher, height: 35\"{was}"), &[(Side::Height, None, "37\"", from)])
        };
        for was in ["", ", measured from: finished floor", ", measured from: present floor"] {
            assert_eq!(of(FINISHED, was).measured_from.get(), Some(&MeasuredFrom::FinishedFloor), "{was}");
            assert_eq!(of(PRESENT, was).measured_from.get(), Some(&MeasuredFrom::PresentFloor), "{was}");
        }
        assert_eq!(of(None, ", measured from: finished floor").measured_from.get(), Some(&MeasuredFrom::FinishedFloor));
        assert!(of(None, "").measured_from.is_absent(), "an older reading says nothing of it");
    }

    #[test]
    fn what_the_book_has_from_the_finished_floor_is_turned_to_it() {
        let reads = |from| {
            [
                (Side::Sill, None, "31\"", from),
                (Side::Power, Some(ReadingSpot::Height), "12\"", from),
                (Side::CounterHeight, None, "36 3/4\"", from),
            ]
        };
        let opening = after(LAY, "takes: wall oven, width: 30\"", &reads(PRESENT));
        assert_eq!(opening.sill.get(), Some(&inches("30 1/4\"")));
        assert_eq!(opening.counter_height.get(), Some(&inches("36\"")));
        let height = |opening: &Opening| opening.points.get()?.power.get()?.height.get().copied();
        assert_eq!(height(&opening), Some(inches("11 1/4\"")));
        assert_eq!(height(&after(LAY, "takes: wall oven", &reads(FINISHED))), Some(inches("12\"")));
        assert_eq!(height(&after("", "takes: wall oven", &reads(PRESENT))), Some(inches("12\"")), "none is to come");
    }

    /// Source: trade reports F-17, F-25: right number, wrong datum.
    #[test]
    fn a_height_from_a_floor_on_which_nobody_knows_what_comes_is_not_known() {
        let read = |from| [(Side::Sill, None, "31\"", from), (Side::Power, Some(ReadingSpot::Height), "12\"", from)];
        let opening =
            "takes: wall oven, width: 30\", sill: 29\", service points: {power: {height: 9\", from left: 6\"}}";
        let unread = "floor build-up: much\n";
        let of = |room: &str, from| after(room, opening, &read(from));
        let unknown = of(unread, PRESENT);
        assert!(unknown.sill.is_faulty() && !unknown.stands_on_the_floor(), "{:?}", unknown.sill);
        let power = unknown.points.get().unwrap().power.get().unwrap();
        assert!(power.height.is_faulty(), "the book's older figure does not stand for it");
        assert_eq!(power.from_left.get(), Some(&inches("6\"")));
        assert_eq!(unknown.unlevelled, [Side::Sill, Side::Power]);
        assert_eq!((of(unread, FINISHED).sill.get(), of(unread, FINISHED).unlevelled), (Some(&inches("31\"")), vec![]));
        assert_eq!((of(LAY, PRESENT).sill.get(), of(LAY, PRESENT).unlevelled), (Some(&inches("30 1/4\"")), vec![]));
    }

    /// Source: trade reports F-77, F-85: board and tile still to come on the studs.
    #[test]
    fn a_width_between_other_faces_than_the_book_s_is_turned_to_those_where_its_depth_stays() {
        let studs = Some(ReadFrom::Studs);
        let walls = "wall build-up: {left: 1/2\", right: 5/8\", back: 1\"}";
        let width = |opening: &str, from| {
            after("", &format!("takes: bathtub, {walls}{opening}"), &[(Side::Width, None, "61 1/8\"", from)])
        };
        let kept = width(", depth: 32\"", studs);
        assert_eq!((kept.governing_width(), kept.governing_depth()), (Some(inches("60\"")), Some(inches("32\""))));
        let alone = width("", studs);
        assert_eq!(
            (alone.governing_width(), alone.measured_between.get()),
            (Some(inches("60\"")), Some(&MeasuredBetween::Studs))
        );
        let finished = width(", measured between: studs, depth: 33\"", Some(ReadFrom::FinishedWalls));
        assert_eq!(
            (finished.governing_width(), finished.governing_depth()),
            (Some(inches("61 1/8\"")), Some(inches("32\"")))
        );
        // Nobody knows what comes on them: what the book has from other faces does not count.
        let unknown = after("", "takes: bathtub, depth: 32\"", &[(Side::Width, None, "61\"", studs)]);
        assert_eq!((unknown.governing_width(), unknown.governing_depth()), (None, None));
    }

    #[test]
    fn everything_that_the_form_asks_takes_its_place() {
        let all = [
            (Side::InFront, None, "42\"", None),
            (Side::CounterDepth, None, "25 1/2\"", None),
            (Side::InsideWidth, None, "34 1/2\"", None),
            (Side::InsideDepth, None, "23 1/2\"", None),
            (Side::InsideHeight, None, "28\"", None),
            (Side::Below, None, "5\"", None),
            (Side::Apron, None, "8\"", None),
            (Side::Cavity, None, "3 1/2\"", None),
            (Side::Valve, None, "3\"", Some(ReadFrom::Studs)),
            (Side::Drain, Some(ReadingSpot::FromLeft), "12\"", None),
            (Side::Drain, Some(ReadingSpot::Proud), "1\"", None),
        ];
        let opening = after("", "takes: sink, below: drawer, wall build-up: {back: 1\"}", &all);
        let cabinet = opening.cabinet.get().unwrap();
        let inside =
            [&cabinet.inside_width, &cabinet.inside_depth, &cabinet.inside_height].map(|slot| slot.get().copied());
        assert_eq!(inside, [Some(inches("34 1/2\"")), Some(inches("23 1/2\"")), Some(inches("28\""))]);
        let own = [&opening.in_front, &opening.counter_depth, &opening.apron_opening].map(|slot| slot.get().copied());
        assert_eq!(own, [Some(inches("42\"")), Some(inches("25 1/2\"")), Some(inches("8\""))]);
        assert_eq!(opening.below.get().unwrap().clear.get(), Some(&inches("5\"")));
        let wall = opening.hollow.get().unwrap();
        assert_eq!((wall.cavity.get(), wall.valve.get()), (Some(&inches("3 1/2\"")), Some(&inches("3\""))));
        assert_eq!(wall.from.get(), Some(&HollowFrom::Studs));
        let drain = opening.points.get().unwrap().drain.get().unwrap();
        assert_eq!((drain.from_left.get(), drain.proud.get()), (Some(&inches("12\"")), Some(&inches("1\""))));
        let none = after("", "takes: sink", &all);
        assert!(none.below.is_absent(), "what stands below is the book's to name");
    }
}
