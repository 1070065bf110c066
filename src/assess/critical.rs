//! How late each milestone may be before the last one moves.

use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet, VecDeque};

use crate::book::{Later, Milestone, Project, When};
use crate::units::Date;

/// The milestones that can be dated, each after all that it comes after: once through all links, however long
/// the chain. What stands in a circle, or comes after what is not there, is left out.
pub fn in_order(project: &Project) -> Vec<&Milestone> {
    let mut following: HashMap<&str, Vec<usize>> = HashMap::new();
    let mut waits: Vec<usize> = Vec::new();
    for (number, milestone) in project.milestones.iter().enumerate() {
        let before: BTreeSet<&str> = match &milestone.when {
            When::On(_) | When::Faulty(_) => BTreeSet::new(),
            When::After(Later { milestones, .. }) => milestones.iter().map(|name| name.value.as_str()).collect(),
        };
        let undated = before.is_empty() && matches!(milestone.when, When::After(Later { .. }));
        waits.push(before.len() + usize::from(undated));
        for name in before {
            following.entry(name).or_default().push(number);
        }
    }
    let mut ready: VecDeque<usize> = (0..waits.len()).filter(|number| waits.get(*number) == Some(&0)).collect();
    let (mut dated, mut ordered) = (HashSet::new(), Vec::new());
    while let Some(milestone) = ready.pop_front().and_then(|number| project.milestones.get(number)) {
        ordered.push(milestone);
        let name = milestone.name.value.as_str();
        for next in following.get(name).into_iter().flatten().filter(|_| !dated.contains(name)) {
            let Some(left) = waits.get_mut(*next) else { continue };
            *left = left.saturating_sub(1);
            if *left == 0 {
                ready.push_back(*next);
            }
        }
        dated.insert(name);
    }
    ordered
}

/// For each dated milestone, the days by which it can slip before the last of all moves: none for those
/// on the critical path. Forward and backward pass as the trade knows them: latest day = the earliest
/// of what follows, less how long that lasts.
pub fn slack(project: &Project, days: &BTreeMap<String, Date>) -> BTreeMap<String, i64> {
    let Some(end) = days.values().max() else { return BTreeMap::new() };
    let mut latest: BTreeMap<&str, Date> = days.keys().map(|name| (name.as_str(), *end)).collect();
    for milestone in in_order(project).into_iter().rev() {
        let (When::After(Later { milestones, lasts }), Some(own)) =
            (&milestone.when, latest.get(milestone.name.value.as_str()))
        else {
            continue;
        };
        let by = lasts.latest().before(*own, &project.calendar);
        for before in milestones {
            if let Some(last) = latest.get_mut(before.value.as_str()) {
                *last = by.min(*last);
            }
        }
    }
    days.iter().filter_map(|(name, day)| Some((name.clone(), day.days_until(*latest.get(name.as_str())?)))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::Milestone;
    use crate::source::{Files, Span, Spanned};
    use crate::units::LeadTime;
    use crate::vocabulary::Named;

    /// A network of activities, each after others and lasting so many days, from a first day on.
    fn network(activities: &[(&str, &[&str], u32)]) -> Project {
        let file = Files::default().add("book.yaml".into(), String::new());
        let span = Span { file, start: 0, end: 0 };
        let name = |name: &str| Spanned::new(name.to_string(), span);
        let after = |before: &[&str], days: u32| {
            let before = if before.is_empty() { &["start"][..] } else { before };
            let milestones = before.iter().map(|at| name(at)).collect();
            When::After(Later { milestones, lasts: LeadTime::parse(&format!("{days} days")).unwrap() })
        };
        let milestones = activities.iter().map(|(at, before, days)| (*at, after(before, *days)));
        let start = ("start", When::On(Date::parse("2027-01-01").unwrap()));
        let milestones = std::iter::once(start).chain(milestones);
        let milestones = Named(milestones.map(|(at, when)| Milestone { name: name(at), when }).collect());
        Project { milestones, ..Project::default() }
    }

    fn told(project: Project) -> (i64, Vec<String>, BTreeMap<String, i64>) {
        let book = crate::book::Book { project, ..crate::book::Book::default() };
        let start = Date::parse("2027-01-01").unwrap();
        let dates = crate::assess::Dates::of(&book, start);
        let slack = slack(&book.project, &dates.milestones);
        let last = dates.milestones.values().max().unwrap();
        let critical = slack.iter().filter(|(name, days)| **days == 0 && *name != "start");
        (start.days_until(*last), critical.map(|(name, _)| name.clone()).collect(), slack)
    }

    /// Twenty thousand links, written from the last to the first, and as many in a circle: each is passed once, so
    /// that this ends within the other tests.
    #[test]
    fn a_long_chain_is_dated_in_one_pass_and_a_long_circle_never() {
        const LINKS: usize = 20_000;
        let names: Vec<String> = (0..LINKS).map(|number| format!("m{number}")).collect();
        let before: Vec<[&str; 1]> =
            (0..LINKS).map(|number| [if number == 0 { "start" } else { names[number - 1].as_str() }]).collect();
        let mut chain: Vec<(&str, &[&str], u32)> =
            names.iter().zip(&before).map(|(name, before)| (name.as_str(), before.as_slice(), 1)).collect();
        chain.reverse();
        let project = network(&chain);
        assert_eq!(in_order(&project).len(), LINKS + 1);
        let (days, critical, _) = told(project);
        assert_eq!((days, critical.len()), (20_000, LINKS));
        let last = [names[LINKS - 1].as_str()];
        *chain.last_mut().unwrap() = ("m0", &last, 1);
        assert_eq!(in_order(&network(&chain)).len(), 1, "the start alone");
    }

    /// Source: check values SD-02: 53 days; critical 1-2, 2-3, 3-5, 5-6, 6-7.
    #[test]
    fn a_published_network_of_seven_nodes_takes_53_days() {
        let (days, critical, slack) = told(network(&[
            ("1-2", &[], 4),
            ("2-3", &["1-2"], 8),
            ("2-4", &["1-2"], 7),
            ("2-5", &["1-2"], 6),
            ("3-4", &["2-3"], 0),
            ("3-5", &["2-3"], 9),
            ("4-6", &["2-4", "3-4"], 15),
            ("5-6", &["2-5", "3-5"], 12),
            ("6-7", &["4-6", "5-6"], 20),
        ]));
        assert_eq!(days, 53);
        assert_eq!(critical, ["1-2", "2-3", "3-5", "5-6", "6-7"]);
        for (activity, days) in [("2-4", 7), ("2-5", 11), ("3-4", 6), ("4-6", 6)] {
            assert_eq!(slack[activity], days, "{activity}");
        }
    }

    /// Source: check values SD-03: 41 days; critical A-B-F-I-K-L-N.
    #[test]
    fn a_published_network_of_fourteen_activities_takes_41_days() {
        let (days, critical, slack) = told(network(&[
            ("A", &[], 2),
            ("B", &["A"], 10),
            ("C", &["A"], 13),
            ("D", &["A"], 12),
            ("E", &["B"], 12),
            ("F", &["B"], 7),
            ("G", &["D"], 10),
            ("H", &["D"], 16),
            ("I", &["F"], 6),
            ("J", &["C", "G"], 12),
            ("K", &["I"], 5),
            ("L", &["E", "K"], 8),
            ("M", &["H"], 5),
            ("N", &["J", "L", "M"], 3),
        ]));
        assert_eq!(days, 41);
        assert_eq!(critical.concat(), "ABFIKLN");
        for (activity, days) in [("C", 11), ("D", 2), ("E", 6), ("G", 2), ("H", 3), ("J", 2), ("M", 3)] {
            assert_eq!(slack[activity], days, "{activity}");
        }
    }
}
