//! Hold points: the moments after which a mistake is dear, and by which of them a finding must be settled.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use crate::book::{Book, NeededFor, Part, PartIs, Room, Selection};
use crate::finding::{Code, Family, Finding, SettleBy, Severity};
use crate::units::{Date, series};
use crate::vocabulary::{HoldPoint, Kind};

use super::dates::Dates;
use super::rules::{self, Due};
use super::things::Things;

/// What the moment is called at which a thing is set, where no milestone names it.
const SETTING: &str = "things set";

/// A hold point with its day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DatedHoldPoint {
    /// Its name.
    pub name: String,
    /// Its day; none where nothing dates it, or each item has a day of its own.
    pub on: Option<Date>,
}

/// The hold points of a book.
#[derive(Debug, Default)]
pub struct HoldPoints {
    days: BTreeMap<String, Option<Date>>,
    /// Rule or family → the hold point that the book gives it.
    own: BTreeMap<String, String>,
    /// The day on which cabinets are ordered follows from their own orders alone.
    cabinets_by_order: bool,
    /// Usual ones at which nothing of the book is due.
    idle: BTreeSet<&'static str>,
}

impl HoldPoints {
    /// The hold points of a book: its own dates first, then milestones, then the earliest order of cabinets.
    pub fn of(book: &Book, dates: &Dates) -> Self {
        let day = |on: &NeededFor| match on {
            NeededFor::Day(day) => Some(*day),
            NeededFor::Milestone(name) => dates.milestones.get(name).copied(),
        };
        let mut points = Self::default();
        let used = used(book);
        for moment in HoldPoint::ALL {
            let named = dates.milestones.iter().filter_map(|(name, day)| Some((moment.rank(name)?, *day)));
            let by_milestone = named.min_by_key(|(rank, _)| *rank).map(|(_, day)| day);
            let by_order = || match moment {
                HoldPoint::CabinetsOrdered => cabinets(book).filter_map(|cabinet| dates.last_order(cabinet)).min(),
                _ => None,
            };
            points.cabinets_by_order |= moment == HoldPoint::CabinetsOrdered && by_milestone.is_none();
            points.days.insert(moment.name().into(), by_milestone.or_else(by_order));
            if !used.contains(moment.name()) {
                points.idle.insert(moment.name());
            }
        }
        for point in &book.project.hold_points {
            points.days.insert(point.name.value.clone(), day(&point.on));
            points.idle.remove(point.name.value.as_str());
            points.cabinets_by_order &= point.name.value != HoldPoint::CabinetsOrdered.name();
            points.own.extend(point.settles.iter().map(|rule| (rule.value.clone(), point.name.value.clone())));
        }
        points
    }

    /// The day of a usual moment, where the book or a milestone dates it.
    pub fn day(&self, moment: HoldPoint) -> Option<Date> {
        self.days.get(moment.name()).copied().flatten()
    }

    /// The day of a usual moment, where the book or a milestone says it: not by what happens to be ordered.
    pub fn written_day(&self, moment: HoldPoint) -> Option<Date> {
        self.day(moment).filter(|_| moment != HoldPoint::CabinetsOrdered || !self.cabinets_by_order)
    }

    /// The book's own hold point for a rule, or for its family.
    fn own_of(&self, rule: Code) -> Option<&String> {
        self.own.get(rule.text()).or_else(|| self.own.get(rule.family().word()))
    }

    /// By when what a rule found of a thing must be settled: at its hold point, when the thing is
    /// ordered, or when what rests on it is, whichever comes first.
    fn settle_by(&self, rule: Code, thing: Option<&Selection>, dates: &Dates) -> Option<SettleBy> {
        let due = rules::of(rule)?.due;
        let usual = due.of(thing)?;
        if due == Due::WhenSet && self.own_of(rule).is_none() {
            return Some(setting(thing, dates));
        }
        let ordered = thing.and_then(|thing| dates.last_order(thing));
        let own = self.own_of(rule);
        let (name, on) = match (own, usual) {
            (Some(name), _) => (name.as_str(), self.days.get(name).copied().flatten()),
            (None, HoldPoint::GoodsReleased) => (usual.name(), thing.and_then(|thing| dates.in_hand(thing))),
            (None, _) => (usual.name(), self.days.get(usual.name()).copied().flatten()),
        };
        let earlier = ordered.filter(|ordered| on.is_none_or(|on| *ordered < on));
        let (name, on) = earlier.map_or((name, on), |ordered| (HoldPoint::GoodsOrdered.name(), Some(ordered)));
        let decision = thing.filter(|_| own.is_none() && due == Due::WithThing).and_then(|thing| dates.decision(thing));
        let earlier = decision.filter(|due| due.rests.is_some() && on.is_none_or(|on| due.on < on));
        let (name, on) = earlier.map_or((name, on), |due| (due.hold_point.as_str(), Some(due.on)));
        Some(SettleBy { hold_point: name.into(), on })
    }
}

impl HoldPoints {
    /// What is found in a room that no cabinets are made for is due before its walls are closed.
    fn without_cabinets(&self, bare: &BTreeSet<&str>, finding: &mut Finding) {
        let is_bare = finding.room.as_deref().is_some_and(|room| bare.contains(room));
        let Some(by) = finding.by.as_mut().filter(|_| is_bare) else { return };
        let cabinets = HoldPoint::CabinetsOrdered.name();
        let own = self.own_of(finding.rule).is_some();
        // Where something else rests on the thing, that is what is due then.
        let is_its_own = by.on == self.days.get(cabinets).copied().flatten();
        let closing = self.days.get(HoldPoint::RoughInClosed.name()).copied().flatten();
        let is_distance = finding.rule.family() == Family::Clear;
        if by.hold_point == cabinets && !own && (is_distance || is_its_own && closing.is_some()) {
            let name = HoldPoint::RoughInClosed.name();
            *by = SettleBy { hold_point: name.into(), on: closing };
        }
    }
}

/// The moment at which a thing is set: its milestone, or its day.
fn setting(thing: Option<&Selection>, dates: &Dates) -> SettleBy {
    let needed = thing.and_then(|thing| thing.needed_for.get());
    let name = match needed {
        Some(NeededFor::Milestone(name)) => name.as_str(),
        Some(NeededFor::Day(_)) | None => SETTING,
    };
    SettleBy { hold_point: name.into(), on: needed.and_then(|needed| dates.day(needed)) }
}

/// Whether cabinets are chosen for a room, or stand in its plan.
fn has_cabinets(room: &Room) -> bool {
    let in_parts = |parts: &[Part]| parts.iter().any(|part| matches!(part.is, PartIs::Cabinet(_) | PartIs::Tall(_)));
    let runs = room.runs.iter().any(|run| in_parts(&run.parts));
    let islands = room.islands.iter().any(|island| island.sides().any(|side| in_parts(&side.parts)));
    runs || islands || room.selections.iter().any(|selection| selection.is(Kind::Cabinet))
}

/// The usual hold points at which anything of a book is due, by name.
fn used(book: &Book) -> BTreeSet<&'static str> {
    let cabinets = book.rooms.iter().any(has_cabinets).then_some(HoldPoint::CabinetsOrdered);
    let of_things = book.selections().map(|(_, selection)| rules::for_thing(Some(selection)));
    of_things.chain(cabinets).map(HoldPoint::name).collect()
}

fn cabinets(book: &Book) -> impl Iterator<Item = &Selection> {
    let is_cabinet = |selection: &&Selection| selection.is(Kind::Cabinet);
    book.selections().map(|(_, selection)| selection).filter(is_cabinet)
}

/// Says of each finding by when it must be settled. A query past that day stops the work; advice stays
/// advice, and what is asked of one option of several stays a query, since another can be taken.
pub(super) fn apply(book: &Book, things: &Things<'_>, points: &HoldPoints, dates: &Dates, findings: &mut [Finding]) {
    let bare: BTreeSet<&str> =
        book.rooms.iter().filter(|room| !has_cabinets(room)).map(|room| room.folder.as_str()).collect();
    findings.par_iter_mut().for_each(|finding| {
        let thing = things.of_finding(finding).map(|(_, selection)| selection);
        finding.by = points.settle_by(finding.rule, thing, dates);
        points.without_cabinets(&bare, finding);
        let past = finding.by.as_ref().and_then(|by| by.on).is_some_and(|on| on < dates.today());
        let open = finding.subject.option().is_some() && thing.is_some_and(|thing| thing.settled().is_none());
        if past && !open && finding.severity == Severity::Query {
            finding.severity = Severity::Stop;
            finding.past = true;
        }
    });
}

/// A hold point, and the findings that must be settled before it.
#[derive(Debug)]
pub struct InTheWay<'a> {
    /// The hold point.
    pub point: DatedHoldPoint,
    /// What stands in its way: stops and queries that nobody waived.
    pub findings: Vec<&'a Finding>,
    /// What may not be ordered yet, because not all have approved it who must.
    pub unapproved: Vec<Unapproved<'a>>,
    /// Whether it is no moment of its own: what stops the work and waits for no hold point.
    pub at_once: bool,
}

/// What stands before every hold point.
const AT_ONCE: &str = "before anything else";

/// A thing that wants an approval.
#[derive(Clone, Debug)]
pub struct Unapproved<'a> {
    /// Its room.
    pub room: &'a Room,
    /// The thing.
    pub selection: &'a Selection,
    /// How far its approval has come, in a word or a few.
    pub stands: &'static str,
    /// Whose approval is wanted, by name; nobody while nothing was issued.
    pub of: Vec<String>,
}

impl Unapproved<'_> {
    /// How far it has come, with those who have still to sign: `waiting; still to sign: Ada Okonedo`.
    pub fn stands_for(&self) -> String {
        match self.of.as_slice() {
            [] => self.stands.to_string(),
            names => format!("{}; still to sign: {}", self.stands, series(names)),
        }
    }
}

/// What stands in the way of one moment: what was found, and what is not approved.
type Obstacles<'a> = (Vec<&'a Finding>, Vec<Unapproved<'a>>);

impl HoldPoints {
    /// What stands in the way of each hold point, the next one first; those without a day last. Orders
    /// have a day each; a usual hold point that nothing dates, or at which nothing of the book is due, is left out.
    /// What is not approved stands in the way of its own moment, where it has one, and of its order.
    pub fn in_the_way<'a>(
        &self,
        findings: &'a [Finding],
        unapproved: Vec<(Option<HoldPoint>, Option<Date>, Unapproved<'a>)>,
    ) -> Vec<InTheWay<'a>> {
        let mut all: BTreeMap<(bool, Option<Date>, &str), Obstacles<'a>> = BTreeMap::new();
        for (name, on) in self.days.iter().filter(|(name, on)| on.is_some() && !self.idle.contains(name.as_str())) {
            all.entry((false, *on, name)).or_default();
        }
        let standing = findings.iter().filter(|finding| finding.waived.is_none() && finding.severity != Severity::Note);
        for finding in standing {
            match &finding.by {
                Some(by) => all.entry((by.on.is_none(), by.on, &by.hold_point)).or_default().0.push(finding),
                // What is wrong of the record is told as that.
                None if finding.severity == Severity::Stop && finding.rule != Code::LEDGER => {
                    all.entry((false, None, AT_ONCE)).or_default().0.push(finding);
                }
                None => {}
            }
        }
        for (moment, order, thing) in unapproved {
            let own = moment.map(|moment| (moment.name(), self.days.get(moment.name()).copied().flatten()));
            let ordered = (HoldPoint::GoodsOrdered.name(), order);
            for (name, on) in own.into_iter().chain(Some(ordered).filter(|(_, on)| on.is_some() || own.is_none())) {
                all.entry((on.is_none(), on, name)).or_default().1.push(thing.clone());
            }
        }
        let told =
            |((dateless, on, name), (findings, unapproved)): ((bool, Option<Date>, &str), Obstacles<'a>)| InTheWay {
                at_once: !dateless && on.is_none(),
                point: DatedHoldPoint { name: String::from(name), on },
                findings,
                unapproved,
            };
        all.into_iter().map(told).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::trial::Trial;
    use crate::assess::rules::{RULES, can_be_waived};

    #[test]
    fn every_rule_that_judges_the_work_has_a_hold_point() {
        for rule in RULES {
            assert_eq!(rule.due.of(None).is_none(), !can_be_waived(rule.code), "{}", rule.code);
        }
    }

    fn dishwasher(book: &str) -> Trial {
        Trial::of("fit/projection")
            .book(book)
            .opening("hole", "{takes: dishwasher, width: 24\", depth: 24\", counter depth: 25\"}")
            .selection("selection: It\nkind: dishwasher\nplace: hole", "size: {width: 23 3/4\", depth: 27\"}")
    }

    fn by(trial: Trial) -> (String, String) {
        let found = trial.run();
        let finding = &found.findings()[0];
        (finding.by.as_ref().map_or_else(String::new, SettleBy::words), finding.severity.word().to_string())
    }

    #[test]
    fn a_finding_says_by_which_hold_point_it_must_be_settled_and_past_it_the_work_stops() {
        assert_eq!(by(dishwasher("")), ("cabinets ordered".into(), "query".into()));
        let ahead = "hold points: {cabinets ordered: 2027-01-15}";
        assert_eq!(by(dishwasher(ahead)), ("cabinets ordered, 15 Jan 2027".into(), "query".into()));
        let past = "hold points: {cabinets ordered: 2027-01-14}";
        assert_eq!(by(dishwasher(past)), ("cabinets ordered, 14 Jan 2027".into(), "stop".into()));
    }

    #[test]
    fn cabinets_are_ordered_when_the_earliest_of_them_must_be() {
        let cabinets = dishwasher("").selection(
            "selection: Cabinets\nkind: cabinet\nneeded for: 2027-03-15\nlead time: 6 weeks",
            "maker: Ostrel",
        );
        assert_eq!(by(cabinets).0, "cabinets ordered, 1 Feb 2027");
    }

    #[test]
    fn what_is_ordered_before_its_hold_point_must_be_settled_by_its_order() {
        let early = Trial::of("fit/projection")
            .book("hold points: {cabinets ordered: 2027-03-01}")
            .opening("hole", "{takes: dishwasher, width: 24\", depth: 24\", counter depth: 25\"}")
            .selection(
                "selection: It\nkind: dishwasher\nplace: hole\nneeded for: 2027-06-14\nlead time: 16 weeks",
                "size: {width: 23 3/4\", depth: 27\"}",
            );
        assert_eq!(by(early).0, "goods ordered, 22 Feb 2027");
    }

    #[test]
    fn a_book_names_hold_points_of_its_own_and_what_they_settle() {
        let own = "milestones: {floor inspection: 2027-02-01}\nhold points: {inspection: {on: floor inspection, settles: [fit]}}";
        assert_eq!(by(dishwasher(own)).0, "inspection, 1 Feb 2027");
    }

    #[test]
    fn a_hold_point_on_a_milestone_that_is_not_there_is_told() {
        Trial::of("source/unknown-name").book("hold points: {rough-in closed: ruff-in}").finds_one().weighs("stop");
    }

    #[test]
    fn distances_of_a_room_without_cabinets_are_due_before_its_walls_are_closed() {
        let doorway = |room: &str| {
            Trial::of("clear/doorway")
                .book("hold points: {cabinets ordered: 2027-03-01, rough-in closed: 2027-02-01}")
                .room(&format!("clearances: {{doorways: {{hall door: 28\"}}}}\n{room}"))
        };
        assert_eq!(by(doorway("")).0, "rough-in closed, 1 Feb 2027");
        let run = "runs: {vanity: {parts: [{cabinet: vanity, width: 36\"}]}}";
        assert_eq!(by(doorway(run)).0, "cabinets ordered, 1 Mar 2027");
    }

    /// What is wired or piped, and no cabinet is made for, waits for no order of cabinets.
    #[test]
    fn what_stands_in_no_cabinet_is_due_before_the_walls_are_closed() {
        let asked = |room: &str, kind: &str| {
            let thing = Trial::of("complete/site")
                .book("hold points: {cabinets ordered: 2027-03-01, rough-in closed: 2027-05-17}")
                .room(room)
                .selection(&format!("selection: It\nkind: {kind}"), "fit: {needs: {power: 120 V 15 A}}");
            by(thing).0
        };
        let run = "runs: {vanity: {parts: [{cabinet: vanity, width: 36\"}]}}";
        assert_eq!(asked(run, "exhaust fan"), "rough-in closed, 17 May 2027");
        assert_eq!(asked(run, "disposer"), "cabinets ordered, 1 Mar 2027");
        assert_eq!(asked("", "disposer"), "rough-in closed, 17 May 2027");
    }

    #[test]
    fn no_hold_point_is_shown_in_a_book_that_has_nothing_for_it() {
        let shown = |things: &[(&str, &str)], book: &str| {
            let book = format!("milestones: {{tile set: 2027-05-03}}\n{book}");
            let trial = Trial::of("fit/width").book(&book);
            let trial = things.iter().fold(trial, |trial, (selection, option)| trial.selection(selection, option));
            let book = trial.read();
            let dates = Dates::of(&book, Date::parse("2027-01-15").unwrap());
            let points = HoldPoints::of(&book, &dates);
            let names: Vec<String> = points.in_the_way(&[], vec![]).into_iter().map(|held| held.point.name).collect();
            names
        };
        assert!(shown(&[("selection: Paint\nkind: paint", "")], "").is_empty());
        assert_eq!(shown(&[("selection: Wall tile\nkind: tile", "")], ""), ["tile set"]);
        let both = [("selection: Wall tile\nkind: tile", ""), ("selection: Screen\nkind: shower glass", "")];
        assert_eq!(shown(&both, ""), ["glass measured", "tile set"]);
        // What the book names itself is shown.
        assert_eq!(shown(&[], "hold points: {glass measured: 2027-05-05}"), ["glass measured"]);
    }
}
