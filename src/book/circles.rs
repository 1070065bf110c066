//! Which things stand in circles of links: found once for all, however many there are.

/// The groups of things that lead to each other, or to themselves, by the links between them: `links` holds,
/// for each thing, the numbers of those that it leads to. Every group stands in the order of its numbers, and
/// they in that of their first. Each thing and each link is looked at once (H. N. Gabow, *Path-based
/// depth-first search for strong and biconnected components*, 2000; from memory).
pub fn circles(links: &[Vec<usize>]) -> Vec<Vec<usize>> {
    searched(links).0
}

/// The circles, and at how many links and things was looked.
fn searched(links: &[Vec<usize>]) -> (Vec<Vec<usize>>, usize) {
    let mut search = Search { links, order: vec![None; links.len()], ..Search::default() };
    for start in 0..links.len() {
        search.from(start);
    }
    search.found.sort();
    (search.found, search.looked)
}

/// A search in depth that keeps its own path, so that no chain is too long for it.
#[derive(Default)]
struct Search<'a> {
    links: &'a [Vec<usize>],
    /// For each thing when it was reached; `usize::MAX` once its group is known.
    order: Vec<Option<usize>>,
    reached: usize,
    /// Things whose group is not known yet, in the order in which they were reached.
    open: Vec<usize>,
    /// When the first thing of each group so far was reached.
    firsts: Vec<usize>,
    found: Vec<Vec<usize>>,
    looked: usize,
}

impl Search<'_> {
    fn from(&mut self, start: usize) {
        let mut path = vec![];
        self.reach(start, &mut path);
        while let Some((at, next)) = path.pop() {
            self.looked += 1;
            let Some(to) = self.links.get(at).and_then(|links| links.get(next)).copied() else {
                self.leave(at);
                continue;
            };
            path.push((at, next + 1));
            match self.order.get(to).copied().flatten() {
                None => self.reach(to, &mut path),
                // It leads back: all that was reached since is of one group.
                Some(before) => {
                    while self.firsts.last().is_some_and(|first| *first > before) {
                        self.firsts.pop();
                    }
                }
            }
        }
    }

    fn reach(&mut self, thing: usize, path: &mut Vec<(usize, usize)>) {
        let Some(order @ None) = self.order.get_mut(thing) else { return };
        *order = Some(self.reached);
        self.firsts.push(self.reached);
        self.open.push(thing);
        self.reached += 1;
        path.push((thing, 0));
    }

    /// All that a thing leads to was looked at.
    fn leave(&mut self, thing: usize) {
        let own = self.order.get(thing).copied().flatten();
        if self.firsts.last().copied() != own {
            return;
        }
        self.firsts.pop();
        let mut group = vec![];
        while let Some(one) = self.open.pop() {
            if let Some(order) = self.order.get_mut(one) {
                *order = Some(usize::MAX);
            }
            group.push(one);
            if one == thing {
                break;
            }
        }
        group.sort_unstable();
        let leads_to_itself = || self.links.get(thing).is_some_and(|links| links.contains(&thing));
        if group.len() > 1 || leads_to_itself() {
            self.found.push(group);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn circles_are_told_apart_from_chains() {
        assert!(circles(&[vec![1], vec![2], vec![]]).is_empty());
        assert_eq!(circles(&[vec![0], vec![]]), [[0]]);
        assert_eq!(circles(&[vec![1], vec![2, 3], vec![0], vec![4], vec![3], vec![0]]), [vec![0, 1, 2], vec![3, 4]]);
        assert!(circles(&[vec![7]]).is_empty(), "a link to nothing leads nowhere");
    }

    /// Each thing leads to a few others by a fixed rule: two are of one group where each reaches the other, as
    /// found by trying all ways.
    #[test]
    fn groups_are_those_that_reach_each_other() {
        const ALL: usize = 40;
        for seed in 1..60_usize {
            let links: Vec<Vec<usize>> =
                (0..ALL).map(|at| (0..at * seed % 3).map(|n| (at * 7 + n * seed + seed) % ALL).collect()).collect();
            let reach = |from: usize| -> Vec<bool> {
                let (mut seen, mut ahead) = (vec![false; ALL], links[from].clone());
                while let Some(at) = ahead.pop() {
                    if !std::mem::replace(&mut seen[at], true) {
                        ahead.extend(&links[at]);
                    }
                }
                seen
            };
            let reached: Vec<Vec<bool>> = (0..ALL).map(reach).collect();
            let mut wanted: Vec<Vec<usize>> = (0..ALL)
                .filter(|at| reached[*at][*at])
                .map(|at| (0..ALL).filter(|other| reached[at][*other] && reached[*other][at]).collect())
                .collect();
            wanted.sort();
            wanted.dedup();
            assert_eq!(circles(&links), wanted, "{links:?}");
        }
    }

    /// Things and links are counted: a chain, a circle and hundreds that all lead to each other.
    #[test]
    fn each_thing_and_each_link_is_looked_at_once() {
        let chain = |all: usize| -> Vec<Vec<usize>> { (0..all).map(|at| vec![at + 1]).collect() };
        let circle = |all: usize| -> Vec<Vec<usize>> { (0..all).map(|at| vec![(at + 1) % all]).collect() };
        let mutual = |all: usize| -> Vec<Vec<usize>> { vec![(0..all).collect(); all] };
        for links in [chain(20_000), circle(20_000), mutual(300)] {
            let (things, all) = (links.len(), links.iter().map(Vec::len).sum::<usize>());
            assert_eq!(searched(&links).1, things + all);
        }
    }
}
