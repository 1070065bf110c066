//! How much of a surface is wanted: waste, pieces, boxes, strips of paper, grout. Whole numbers all the way.

use crate::units::{Area, Length, Percent, Weight};

/// An area with so much more for cuts and breakage; none past what can be held.
pub fn with_waste(area: Area, waste: Percent) -> Option<Area> {
    let more = waste.value();
    let hundred = 10_i128.checked_pow(more.scale())?.checked_mul(100)?;
    let times = hundred.checked_add(more.mantissa())?;
    let square_nanometres = ceiling(area.square_nanometres().checked_mul(times)?, hundred)?;
    Some(Area::from_square_nanometres(square_nanometres))
}

/// How many pieces or boxes, each of that area, cover an area.
pub fn pieces(area: Area, each: Area) -> Option<i128> {
    ceiling(area.square_nanometres(), each.square_nanometres())
}

/// The length of one strip of paper: height and trim, up to the next whole repeat of its pattern.
pub fn strip(height: Length, trim: Length, repeat: Option<Length>) -> Option<Length> {
    let cut = height.checked_add(trim)?;
    let Some(repeat) = repeat.filter(|repeat| *repeat > Length::ZERO) else { return Some(cut) };
    let repeats = ceiling(cut.nanometres().into(), repeat.nanometres().into())?;
    Some(repeat.times(i64::try_from(repeats).ok()?))
}

/// How many rolls paper walls: strips along the walls, over the whole strips in a roll. None where a
/// roll is shorter than a strip.
pub fn rolls(along: Length, strip: Length, roll: (Length, Length)) -> Option<i128> {
    let (width, length) = roll;
    let strips = ceiling(along.nanometres().into(), width.nanometres().into())?;
    let in_a_roll = length.nanometres().checked_div(strip.nanometres())?;
    ceiling(strips, in_a_roll.into())
}

/// The weight of grout for an area: joints as deep as the tile is thick, at 1.6 kg a litre.
pub fn grout(area: Area, face: (Length, Length), thickness: Length, joint: Length) -> Option<Weight> {
    let micro = |length: Length| i128::from(length.nanometres() / 1_000);
    let (long, short) = (micro(face.0), micro(face.1));
    let square_micrometres = area.square_nanometres() / 1_000_000;
    let seams = square_micrometres.checked_mul(long.checked_add(short)?)?.checked_mul(micro(thickness))?;
    let cubic_micrometres = seams.checked_mul(micro(joint))?.checked_div(long.checked_mul(short)?)?;
    // 1.6 kg a litre is 1600 femtograms a cubic micrometre.
    Some(Weight::from_femtograms(cubic_micrometres.checked_mul(1_600)?))
}

/// The quotient, up to the next whole number; none for a divisor that is not above zero.
fn ceiling(over: i128, under: i128) -> Option<i128> {
    (under > 0).then(|| over.div_euclid(under) + i128::from(over.rem_euclid(under) != 0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(text: &str) -> Area {
        Area::parse(text).unwrap()
    }

    fn length(text: &str) -> Length {
        Length::parse(text).unwrap()
    }

    fn percent(text: &str) -> Percent {
        Percent::parse(text).unwrap()
    }

    /// Source: check values TL-12.
    #[test]
    fn waste_is_added_exactly() {
        for (net, waste, all) in [
            ("200 sq ft", "10 %", "220 sq ft"),
            ("200 sq ft", "15 %", "230 sq ft"),
            ("150 sq ft", "15 %", "172.5 sq ft"),
        ] {
            assert_eq!(with_waste(area(net), percent(waste)), Some(area(all)));
        }
        assert_eq!(with_waste(area("200 sq ft"), percent("20 %")), Some(area("240 sq ft")));
    }

    /// Source: check values TL-13: 40 ft² of 12 × 24 in tile at 10 %.
    #[test]
    fn pieces_and_boxes_are_whole() {
        let wanted = with_waste(area("40 sq ft"), percent("10 %")).unwrap();
        assert_eq!(pieces(wanted, area("2 sq ft")), Some(22));
        assert_eq!(pieces(wanted, area("16 sq ft")), Some(3));
    }

    /// Source: check values FL-02: 100 ft² at 22.45 ft² a box.
    #[test]
    fn rounding_to_boxes_hides_or_shows_the_waste() {
        for (waste, boxes) in [("0 %", 5), ("10 %", 5), ("15 %", 6)] {
            let wanted = with_waste(area("100 sq ft"), percent(waste)).unwrap();
            assert_eq!(pieces(wanted, area("22.45 sq ft")), Some(boxes), "{waste}");
        }
    }

    /// Source: check values FL-01: 300 ft² at 7 %, 20 ft² a box.
    #[test]
    fn planks_are_counted_in_boxes() {
        let wanted = with_waste(area("300 sq ft"), percent("7 %")).unwrap();
        assert_eq!((wanted, pieces(wanted, area("20 sq ft"))), (area("321 sq ft"), Some(17)));
    }

    /// Source: check values WP-01, WP-02.
    #[test]
    fn strips_end_on_a_repeat_and_rolls_hold_whole_strips() {
        let strip_of = |repeat| strip(length("96\""), length("4\""), repeat);
        assert_eq!(strip_of(Some(length("21\""))), Some(length("105\"")));
        assert_eq!(strip_of(None), Some(length("100\"")));
        assert_eq!(rolls(length("480\""), length("105\""), (length("20.5\""), length("33'"))), Some(8));
        assert_eq!(rolls(length("480\""), length("400\""), (length("20.5\""), length("33'"))), None);
    }

    /// Source: check values TL-15: 0.256, 0.216 and 0.384 kg/m².
    #[test]
    fn grout_is_reckoned_from_face_joint_and_thickness() {
        let square_metre = area("1 m2");
        for (face, thickness, joint, grams) in
            [((300, 300), 8, 3, 256), ((600, 300), 9, 3, 216), ((100, 100), 6, 2, 384)]
        {
            let millimetres = Length::from_millimetres;
            let face = (millimetres(face.0), millimetres(face.1));
            let weight = grout(square_metre, face, millimetres(thickness), millimetres(joint)).unwrap();
            assert_eq!(weight.femtograms() / 1_000_000_000_000_000, grams);
        }
    }

    #[test]
    fn nothing_is_divided_by_nothing() {
        assert_eq!(pieces(area("10 sq ft"), Area::ZERO), None);
        assert_eq!(rolls(length("480\""), Length::ZERO, (length("20\""), length("33'"))), None);
        assert_eq!(grout(area("10 sq ft"), (Length::ZERO, Length::ZERO), Length::ZERO, Length::ZERO), None);
    }
}
