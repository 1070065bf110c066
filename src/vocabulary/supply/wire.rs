//! What a wire carries, by the size that the trade's words give it.

use super::phrase;

/// AWG, and what copper and aluminium of it carry at 60 °C, in amperes, as cable in a house is counted
/// (NEC Table 310.16 with 240.4(D) and 334.80, from memory).
const AWG: [(u32, u32, u32); 6] = [(14, 15, 0), (12, 20, 15), (10, 30, 25), (8, 40, 35), (6, 55, 40), (4, 70, 55)];
/// Tenths of a square millimetre, and the most that copper of it carries, clipped to a wall in the open, in amperes
/// (IEC 60364-5-52, method C, from memory): in a wall or in insulation it is less.
const METRIC: [(u32, u32); 6] = [(10, 15), (15, 19), (25, 27), (40, 36), (60, 46), (100, 63)];

/// What a size of wire is called by.
const GAUGES: [&str; 5] = ["awg", "gauge", "gauges", "ga", "ga."];
/// How cables of several wires are called, by the beginnings of words.
const CABLES: [&str; 20] = [
    "nm", "romex", "loomex", "cable", "wire", "mc", "bx", "ac", "ac90", "uf", "ser", "seu", "tc", "with", "w/", "wg",
    "copper", "cu", "armo", "alumin",
];

/// The most that the wire carries that the words name, in amperes; none where they name none.
pub(super) fn carries(plain: &str) -> Option<u32> {
    awg(plain).or_else(|| metric(plain)).or_else(|| cable(plain))
}

fn awg(plain: &str) -> Option<u32> {
    let words: Vec<&str> = plain
        .split(|letter: char| letter.is_whitespace() || ",;()".contains(letter))
        .filter(|word| !word.is_empty())
        .collect();
    let is_a_size = |word: &str| word.parse::<u32>().ok().filter(|size| AWG.iter().any(|(awg, ..)| awg == size));
    let size = words.iter().enumerate().find_map(|(at, word)| {
        let next = words.get(at + 1).copied().unwrap_or_default();
        let after = |unit: &str| word.strip_suffix(unit).and_then(is_a_size);
        let number = word.strip_prefix('#').or(word.strip_prefix("no.")).unwrap_or(word);
        let hash = word.strip_prefix('#').and_then(is_a_size);
        // `12 AWG`, `12 gauge`, `10-gauge`, `#10 wire`, `12AWG`, `12ga`.
        let counted = is_a_size(word).filter(|_| GAUGES.contains(&next));
        let joined =
            || word.split_once('-').filter(|(_, unit)| GAUGES.contains(unit)).and_then(|(size, _)| is_a_size(size));
        // `12-2 NM`, `10/3 NM-B`, `10/3 NMD90`, `#10/3 cable`, `10/3 copper`.
        let cable = || {
            let (size, wires) = number.split_once(['-', '/'])?;
            let is_cable = ["2", "3", "4"].contains(&wires) && CABLES.iter().any(|cable| next.starts_with(cable));
            is_a_size(size).filter(|_| is_cable)
        };
        hash.or(counted).or_else(|| after("awg")).or_else(|| after("ga")).or_else(joined).or_else(cable)
    })?;
    let (_, copper, aluminium) = AWG.iter().find(|(awg, ..)| *awg == size)?;
    Some(if plain.contains("alumin") { *aluminium } else { *copper })
}

/// A cable of so many wires of one size, which the trade gives without its unit: `3x2.5`, `5G6`. What amperes follow are
/// fuses: `3x10 A`.
fn cable(plain: &str) -> Option<u32> {
    let text = phrase::with_points(plain);
    let words: Vec<&str> = text
        .split(|letter: char| letter.is_whitespace() || ",;()/".contains(letter))
        .filter(|word| !word.is_empty())
        .collect();
    words.iter().enumerate().find_map(|(at, word)| {
        let (wires, size) = word.split_once(['x', 'g', '×'])?;
        let is_fuses = words.get(at + 1).is_some_and(|next| next.starts_with('a'));
        if is_fuses || !["3", "4", "5"].contains(&wires) {
            return None;
        }
        let (whole, part) = size.split_once('.').unwrap_or((size, "0"));
        let tenths = whole.parse::<u32>().ok()?.checked_mul(10)?.checked_add(part.parse().ok()?)?;
        METRIC.iter().find(|(size, _)| *size == tenths).map(|(_, amps)| *amps)
    })
}

fn metric(plain: &str) -> Option<u32> {
    let text = phrase::with_points(plain);
    let unit = ["mm²", "mm2", "sq mm", "sqmm", "sq. mm"].iter().filter_map(|unit| text.find(unit)).min()?;
    let before = text.get(..unit)?.trim_end();
    let from = before.rfind(|letter: char| !letter.is_ascii_digit() && letter != '.').map_or(0, |at| at + 1);
    let from = if before.is_char_boundary(from) { from } else { return None };
    let (whole, part) = before.get(from..)?.split_once('.').unwrap_or((before.get(from..)?, "0"));
    let tenths = whole.parse::<u32>().ok()?.checked_mul(10)?.checked_add(part.get(..1)?.parse().ok()?)?;
    METRIC.iter().find(|(size, _)| *size == tenths).map(|(_, amps)| *amps)
}

#[cfg(test)]
mod tests {
    use super::carries;

    /// Source: trade reports F-33 (8 AWG on 40 A); the other rows as the tables say.
    #[test]
    fn sizes_of_wire_are_read_in_the_trade_s_words() {
        for (words, amps) in [
            ("240 v 50 a 14-50, 8 awg copper", 40),
            ("240 v 50 a, #10 wire", 30),
            ("30 a, 12 gauge", 20),
            ("120 v 20 a, 14-2 nm", 15),
            ("240 v 50 a, 8 awg aluminium", 35),
            ("240 v 40 a, 10/3 nm-b, 14-50", 30),
            ("240 v 40 a, 10/3 nmd90, 14-50r", 30),
            ("240 v 40 a, 8/3 nmd90, 14-50r", 40),
            ("240 v 40 a, 14-50, 10-gauge", 30),
            ("240 v 40 a, 10-gauge wire", 30),
            ("240 v 40 a, 10/3 w/g romex", 30),
            ("120 v 20 a, 14/2 with ground", 15),
            ("230 v 32 a, nym 3x1.5", 19),
            ("230 v 32 a, 3g2,5", 27),
            ("400 v 3n 32 a, 5x6", 46),
            ("230 v 32 a, 2.5 mm2 cable", 27),
            ("230 v 32 a, 2,5 mm² cable", 27),
            ("230 v 32 a, 6mm² t&e", 46),
        ] {
            assert_eq!(carries(words), Some(amps), "{words}");
        }
        for words in [
            "240 v 50 a 14-50",
            "no. 12 wire nut",
            "230 v 16 a, 500 mm above the floor",
            "é mm²",
            "3/4 cable gland",
            "120/240 v, 40 a",
            "14/50 receptacle",
            "400 v 3n, 3x10 a",
            "400 v 3n, 3 x 16 a",
            "2x4 box",
        ] {
            assert_eq!(carries(words), None, "{words}");
        }
    }
}
