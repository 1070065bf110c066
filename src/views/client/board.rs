//! The material board: each finish's photograph as large as its share of the room.

use crate::language::{Words, say};
use crate::units::letter;
use crate::views::shared::html::Html;
use crate::views::shared::photo::Photo;
use serde::Serialize;

/// Steps along each side of the board: a hundred per cent in ten-thousandths of one.
const SIDE: u64 = 1_000_000;

/// A finish and how much of the room one sees of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Finish {
    pub name: String,
    /// Where it is, and how it is laid.
    pub place: Option<Html>,
    /// Thousandths of the visible surface; the whole need not come to a thousand.
    pub permille: u32,
    pub photo: Option<Photo>,
    /// The selection it belongs to, relative to the folder's root.
    pub href: Option<String>,
}

/// Samples butted edge to edge, largest first, with a key.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Board {
    pub samples: Vec<Sample>,
}

/// One finish on the board.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Sample {
    /// The letter on the sample and in the key.
    pub letter: String,
    pub name: String,
    pub place: Option<Html>,
    /// `34 %`, or `under 1 %`.
    pub share: String,
    pub photo: Option<Photo>,
    pub href: Option<String>,
    /// Left edge, top edge, width and height as percentages of the board: `12.5%`.
    pub x: String,
    pub y: String,
    pub w: String,
    pub h: String,
}

impl Board {
    /// Lays the finishes out by area; those with no share are left off.
    pub fn new(words: Words, mut finishes: Vec<Finish>) -> Board {
        finishes.retain(|finish| finish.permille > 0);
        finishes.sort_by(|a, b| b.permille.cmp(&a.permille).then(a.name.cmp(&b.name)));
        let shares: Vec<u64> = finishes.iter().map(|f| u64::from(f.permille)).collect();
        let total = shares.iter().sum();
        let samples = finishes
            .into_iter()
            .zip(lay_out(&shares))
            .enumerate()
            .map(|(index, (finish, tile))| sample(words, index, finish, (tile, total)))
            .collect();
        Board { samples }
    }
}

/// A rectangle on the board, in steps.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Tile {
    x: u64,
    y: u64,
    w: u64,
    h: u64,
}

fn sample(words: Words, index: usize, finish: Finish, (tile, total): (Tile, u64)) -> Sample {
    let percent = (u64::from(finish.permille) * 100 + total / 2) / total;
    Sample {
        letter: letter(index),
        name: finish.name,
        place: finish.place,
        share: match percent {
            0 => say!(words, "room_says.under", share = say!(words, "units.percent", number = "1")),
            more => say!(words, "units.percent", number = more),
        },
        photo: finish.photo,
        href: finish.href,
        x: as_percent(tile.x),
        y: as_percent(tile.y),
        w: as_percent(tile.w),
        h: as_percent(tile.h),
    }
}

fn as_percent(steps: u64) -> String {
    let (whole, part) = (steps / 10_000, steps % 10_000);
    if part == 0 {
        return format!("{whole}%");
    }
    let part = format!("{part:04}");
    format!("{whole}.{}%", part.trim_end_matches('0'))
}

/// Fills the board with one tile for each share (largest first), row by row, a row lying along the
/// shorter side of what is left; a row takes tiles as long as that brings them nearer to squares.
fn lay_out(shares: &[u64]) -> Vec<Tile> {
    let mut left = Tile { x: 0, y: 0, w: SIDE, h: SIDE };
    let mut rest = shares;
    let mut tiles = Vec::with_capacity(shares.len());
    while !rest.is_empty() {
        let (long, short) = (left.w.max(left.h), left.w.min(left.h));
        let sum_left: u64 = rest.iter().sum();
        let mut taken = 1;
        while let Some((row, longer)) = rest.get(..taken).zip(rest.get(..=taken))
            && !is_worse(worst(longer, sum_left, long, short), worst(row, sum_left, long, short))
        {
            taken += 1;
        }
        let (row, after) = rest.split_at(taken);
        let deep = rounded(long * row.iter().sum::<u64>(), sum_left);
        tiles.extend(place_row(row, left, deep));
        left = match left.w >= left.h {
            true => Tile { x: left.x + deep, w: left.w - deep, ..left },
            false => Tile { y: left.y + deep, h: left.h - deep, ..left },
        };
        rest = after;
    }
    tiles
}

/// Splits a strip `deep` steps deep, at the left or the top of `left`, by the shares of its row.
fn place_row(row: &[u64], left: Tile, deep: u64) -> Vec<Tile> {
    let upright = left.w >= left.h;
    let length = if upright { left.h } else { left.w };
    let sum: u64 = row.iter().sum();
    let mut before = 0;
    row.iter()
        .map(|share| {
            let start = rounded(length * before, sum);
            before += share;
            let long = rounded(length * before, sum) - start;
            match upright {
                true => Tile { x: left.x, y: left.y + start, w: deep, h: long },
                false => Tile { x: left.x + start, y: left.y, w: long, h: deep },
            }
        })
        .collect()
}

fn rounded(dividend: u64, divisor: u64) -> u64 {
    (dividend + divisor / 2) / divisor
}

/// How far the worst tile of a row is from a square: its longer side over its shorter, as a ratio.
fn worst(row: &[u64], sum_left: u64, long: u64, short: u64) -> (u128, u128) {
    let sum: u128 = row.iter().map(|share| u128::from(*share)).sum();
    row.iter()
        .map(|share| {
            let deep = u128::from(long) * sum * sum;
            let wide = u128::from(sum_left) * u128::from(short) * u128::from(*share);
            (deep.max(wide), deep.min(wide))
        })
        .reduce(|a, b| if is_worse(b, a) { b } else { a })
        .unwrap_or((1, 1))
}

fn is_worse(a: (u128, u128), b: (u128, u128)) -> bool {
    a.0 * b.1 > b.0 * a.1
}

#[cfg(test)]
mod tests {
    use super::*;

    const KITCHEN: [u64; 8] = [340, 210, 170, 110, 80, 50, 30, 10];

    #[test]
    fn each_area_is_its_share_within_one_per_cent() {
        for shares in [KITCHEN.to_vec(), vec![1000], vec![999, 1], vec![500, 499, 1], vec![7; 23], vec![1; 40]] {
            let total: u64 = shares.iter().sum();
            for (share, tile) in shares.iter().zip(lay_out(&shares)) {
                let area = u128::from(tile.w) * u128::from(tile.h) * u128::from(total);
                let wanted = u128::from(SIDE) * u128::from(SIDE) * u128::from(*share);
                assert!(area.abs_diff(wanted) * 100 <= wanted, "{share} in {shares:?}");
            }
        }
    }

    #[test]
    fn tiles_cover_the_board_and_never_overlap() {
        let tiles = lay_out(&KITCHEN);
        let area: u64 = tiles.iter().map(|tile| tile.w * tile.h).sum();
        assert_eq!(area, SIDE * SIDE);
        for (index, a) in tiles.iter().enumerate() {
            for b in &tiles[index + 1..] {
                let apart = a.x + a.w <= b.x || b.x + b.w <= a.x;
                assert!(apart || a.y + a.h <= b.y || b.y + b.h <= a.y, "{a:?} {b:?}");
            }
        }
    }

    #[test]
    fn tiles_stay_near_to_squares() {
        for tile in lay_out(&KITCHEN) {
            assert!(tile.w < tile.h * 3 && tile.h < tile.w * 3, "{tile:?}");
        }
    }

    #[test]
    fn the_largest_finish_is_a_and_one_that_is_not_seen_is_left_off() {
        let finish = |name: &str, permille| Finish { name: name.to_owned(), permille, ..Finish::default() };
        let board = Board::new(
            Words::default(),
            vec![finish("tile", 250), finish("inside of a drawer", 0), finish("paint", 748), finish("brass", 2)],
        );
        let key: Vec<_> =
            board.samples.iter().map(|s| (s.letter.as_str(), s.name.as_str(), s.share.as_str())).collect();
        assert_eq!(key, [("A", "paint", "75 %"), ("B", "tile", "25 %"), ("C", "brass", "under 1 %")]);
        assert_eq!(board.samples[0].w, "74.8%");
    }
}
