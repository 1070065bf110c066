//! Pieces of a counter nested on slabs, with straight cuts from edge to edge.

use std::cmp::Reverse;

use crate::units::Length;

/// Length and width.
pub type Sides = (Length, Length);

/// The slabs that pieces are cut from, all of one size.
#[derive(Clone, Copy, Debug)]
pub struct Stock {
    /// What can be used of each.
    pub slab: Sides,
    /// What the saw takes between two pieces.
    pub kerf: Length,
    /// Whether pieces may be turned by a quarter.
    pub may_turn: bool,
}

/// A piece in its place on a slab.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Nested {
    /// Which piece, by its number.
    pub piece: usize,
    /// On which slab.
    pub slab: usize,
    /// Its corner, from the slab's.
    pub at: Sides,
    /// Its sides, as it lies there.
    pub sides: Sides,
}

/// An unused rectangle of a slab.
#[derive(Clone, Copy)]
struct Free {
    slab: usize,
    at: Sides,
    sides: Sides,
}

/// Which way the first cut beside a piece runs.
#[derive(Clone, Copy)]
enum Cut {
    Across,
    Along,
}

/// So many pieces are tried in every order; more of them in the orders that usually serve.
const EVERY_ORDER: usize = 6;

impl Stock {
    /// The ways in which a piece may lie.
    fn ways(&self, (length, width): Sides) -> impl Iterator<Item = Sides> {
        let turned = (self.may_turn && length != width).then_some((width, length));
        std::iter::once((length, width)).chain(turned)
    }

    /// Whether a piece goes onto one slab at all.
    pub fn takes(&self, piece: Sides) -> bool {
        self.ways(piece).any(|sides| holds(self.slab, sides))
    }

    /// The pieces on as few slabs as were found: the fewest of the orders that are tried, which may be
    /// more than the fewest there are. None where a piece goes onto no slab.
    pub fn nest(&self, pieces: &[Sides]) -> Option<Vec<Nested>> {
        if !pieces.iter().all(|piece| self.takes(*piece)) {
            return None;
        }
        let tries = orders(pieces)
            .into_iter()
            .flat_map(|order| [Cut::Across, Cut::Along].map(|cut| self.in_order(pieces, &order, cut)));
        tries.min_by_key(|nested| slabs(nested))
    }

    fn in_order(&self, pieces: &[Sides], order: &[usize], cut: Cut) -> Vec<Nested> {
        let mut free: Vec<Free> = Vec::new();
        let mut nested: Vec<Nested> = Vec::new();
        let mut opened = 0;
        for (number, piece) in order.iter().filter_map(|number| Some((*number, *pieces.get(*number)?))) {
            let (at, sides) = self.best(&free, piece).unwrap_or_else(|| {
                free.push(Free { slab: opened, at: (Length::ZERO, Length::ZERO), sides: self.slab });
                opened += 1;
                let last = free.len() - 1;
                (last, self.ways(piece).find(|sides| holds(self.slab, *sides)).unwrap_or(piece))
            });
            let place = free.swap_remove(at);
            nested.push(Nested { piece: number, slab: place.slab, at: place.at, sides });
            free.extend(self.left_over(place, sides, cut));
        }
        nested
    }

    /// The free rectangle that a piece fills best, and how it lies there.
    fn best(&self, free: &[Free], piece: Sides) -> Option<(usize, Sides)> {
        let places = free.iter().enumerate().flat_map(|(at, place)| {
            self.ways(piece).filter(|sides| holds(place.sides, *sides)).map(move |sides| (at, place, sides))
        });
        let spare = |place: &Free, sides: Sides| (place.sides.0 - sides.0).min(place.sides.1 - sides.1);
        places.min_by_key(|(_, place, sides)| (place.slab, spare(place, *sides))).map(|(at, _, sides)| (at, sides))
    }

    /// What is left beside and above a piece that lies in the corner of a rectangle.
    fn left_over(&self, place: Free, (length, width): Sides, cut: Cut) -> impl Iterator<Item = Free> {
        let (right, above) = (length + self.kerf, width + self.kerf);
        let rest = (place.sides.0 - right, place.sides.1 - above);
        let beside = match cut {
            Cut::Across => (rest.0, place.sides.1),
            Cut::Along => (rest.0, width),
        };
        let over = match cut {
            Cut::Across => (length, rest.1),
            Cut::Along => (place.sides.0, rest.1),
        };
        let pieces = [
            Free { at: (place.at.0 + right, place.at.1), sides: beside, ..place },
            Free { at: (place.at.0, place.at.1 + above), sides: over, ..place },
        ];
        pieces.into_iter().filter(|free| free.sides.0 > Length::ZERO && free.sides.1 > Length::ZERO)
    }
}

/// How many slabs are used.
pub fn slabs(nested: &[Nested]) -> usize {
    nested.iter().map(|nested| nested.slab + 1).max().unwrap_or(0)
}

fn holds(place: Sides, sides: Sides) -> bool {
    sides.0 <= place.0 && sides.1 <= place.1
}

/// The orders in which pieces are laid.
fn orders(pieces: &[Sides]) -> Vec<Vec<usize>> {
    let written: Vec<usize> = (0..pieces.len()).collect();
    if pieces.len() <= EVERY_ORDER {
        let mut all = Vec::new();
        permute(&mut Vec::new(), &written, &mut all);
        return all;
    }
    let sorted = |key: &dyn Fn(Sides) -> (Length, Length)| {
        let mut order = written.clone();
        order.sort_by_key(|number| Reverse(pieces.get(*number).map(|piece| key(*piece))));
        order
    };
    vec![
        sorted(&|(length, width)| (width, length)),
        sorted(&|(length, width)| (length, width)),
        sorted(&|(length, width)| (length.max(width), length.min(width))),
        sorted(&|(length, width)| (length.min(width), length.max(width))),
    ]
}

fn permute(head: &mut Vec<usize>, rest: &[usize], all: &mut Vec<Vec<usize>>) {
    if rest.is_empty() {
        all.push(head.clone());
    }
    for (at, next) in rest.iter().enumerate() {
        let others: Vec<usize> =
            rest.iter().enumerate().filter(|(other, _)| *other != at).map(|(_, one)| *one).collect();
        head.push(*next);
        permute(head, &others, all);
        head.pop();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const fn inches(length: i64, width: i64) -> Sides {
        (Length::from_sixty_fourths(length * 64), Length::from_sixty_fourths(width * 64))
    }

    fn stock(slab: Sides, kerf: i64, may_turn: bool) -> Stock {
        Stock { slab, kerf: Length::from_sixty_fourths(kerf), may_turn }
    }

    /// 25 1/2" in 64ths.
    const RUN: Length = Length::from_sixty_fourths(25 * 64 + 32);

    /// Source: check values ST-11: an island of 130 goes on no slab of 120; two runs of 25 1/2 come from a width of 55.
    #[test]
    fn what_a_usual_slab_gives() {
        assert!(!stock(inches(120, 72), 8, true).takes(inches(130, 42)));
        let runs = [(inches(100, 0).0, RUN), (inches(96, 0).0, RUN)];
        assert_eq!(stock(inches(114, 55), 8, false).nest(&runs).map(|nested| slabs(&nested)), Some(1));
        let three = [runs[0], runs[1], runs[0]];
        assert_eq!(stock(inches(114, 55), 8, false).nest(&three).map(|nested| slabs(&nested)), Some(2));
    }

    #[test]
    fn the_saw_takes_its_share_and_the_last_hair_counts() {
        let runs = [(inches(100, 0).0, RUN), (inches(100, 0).0, RUN)];
        let wide = |sixty_fourths: i64| (inches(100, 0).0, Length::from_sixty_fourths(51 * 64 + sixty_fourths));
        let on = |slab: Sides| stock(slab, 8, false).nest(&runs).map(|nested| slabs(&nested));
        assert_eq!(on(wide(8)), Some(1));
        assert_eq!(on(wide(7)), Some(2));
    }

    #[test]
    fn a_stone_with_a_direction_is_not_turned() {
        assert!(!stock(inches(100, 60), 8, false).takes(inches(50, 80)));
        assert!(stock(inches(100, 60), 8, true).takes(inches(50, 80)));
    }

    proptest! {
        #[test]
        fn no_two_pieces_share_stone_and_none_leaves_its_slab(
            pieces in prop::collection::vec((1_i64..100, 1_i64..60), 1..12),
            kerf in 0_i64..16,
            may_turn: bool,
        ) {
            let pieces: Vec<Sides> = pieces.into_iter().map(|(length, width)| inches(length, width)).collect();
            let stock = stock(inches(100, 60), kerf, may_turn);
            let nested = stock.nest(&pieces).unwrap();
            let mut seen: Vec<usize> = nested.iter().map(|one| one.piece).collect();
            seen.sort_unstable();
            prop_assert_eq!(seen, (0..pieces.len()).collect::<Vec<_>>());
            for (number, one) in nested.iter().enumerate() {
                let piece = pieces[one.piece];
                prop_assert!(one.sides == piece || may_turn && one.sides == (piece.1, piece.0));
                prop_assert!(!one.at.0.is_negative() && !one.at.1.is_negative());
                prop_assert!(one.at.0 + one.sides.0 <= stock.slab.0 && one.at.1 + one.sides.1 <= stock.slab.1);
                for other in nested.iter().skip(number + 1).filter(|other| other.slab == one.slab) {
                    let apart = |from: Length, long: Length, to: Length| from + long + stock.kerf <= to;
                    prop_assert!(
                        apart(one.at.0, one.sides.0, other.at.0)
                            || apart(other.at.0, other.sides.0, one.at.0)
                            || apart(one.at.1, one.sides.1, other.at.1)
                            || apart(other.at.1, other.sides.1, one.at.1)
                    );
                }
            }
        }

        /// Pieces that a slab was cut into go back onto it.
        #[test]
        fn a_slab_sawn_in_strips_is_nested_on_one(cuts in prop::collection::vec(5_i64..15, 2..5)) {
            let total: i64 = cuts.iter().sum();
            let pieces: Vec<Sides> = cuts.iter().map(|width| inches(100, *width)).collect();
            let slab = (inches(100, 0).0, Length::from_sixty_fourths(total * 64 + 8 * (cuts.len() as i64 - 1)));
            let nested = stock(slab, 8, false).nest(&pieces).unwrap();
            prop_assert_eq!(slabs(&nested), 1);
        }
    }
}
