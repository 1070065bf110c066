//! The drawing's sizes are the book's: what is drawn and what is printed agree.

use super::read_back::{across, attribute, lettering, named};
use super::{anything, deep, gallery};
use crate::drawings::scale::Mil;
use crate::drawings::sizes::{Behind, Door, Foot, Hand, Hinged, Misfit, OpeningFront, OpeningSide, ReadAt, Reading};
use crate::drawings::{Paper, opening_front, opening_plan, opening_side, option_plan};
use crate::units::length::Length;
use proptest::prelude::*;
use roxmltree::Document;

/// Thousandths of a unit for so many 64ths of an inch at 1:24: an inch is 96 CSS pixels (CSS Values
/// and Units 3, section 6.2), so 4 of them at 1:24.
fn at_one_to_24(sixty_fourths: i64) -> Mil {
    (sixty_fourths * 4_000 + 32).div_euclid(64)
}

fn opening_of(width: i64, thing: i64, gap: i64) -> OpeningFront {
    let mut what = gallery::refrigerator();
    let width = Length::from_sixty_fourths(width);
    what.opening.widths = vec![Reading { held: ReadAt::Throughout, width }];
    if let Some(drawn) = &mut what.thing {
        drawn.width = Length::from_sixty_fourths(thing);
        drawn.gap_left = Length::from_sixty_fourths(gap);
        let over = Length::from_sixty_fourths(thing) - width;
        drawn.laps.width = Some(over).filter(|_| gap < 0 || over > -drawn.gap_left);
    }
    what
}

/// The printed gaps at the left and the right of the thing; below zero where it lies over the edge.
fn printed_gaps(document: &Document) -> Vec<Length> {
    let texts = document.descendants().filter(|node| node.has_tag_name("text"));
    let upright = texts.filter(|node| attribute(*node, "y") > 0);
    let read = |text: String| {
        let (figure, words) = text.split_once("\u{2033} ")?;
        let length: Length = format!("{figure}\"").parse().ok()?;
        match words {
            "gap" => Some(length),
            "laps over" => Some(Length::ZERO - length),
            _ => None,
        }
    };
    upright.filter_map(|node| read(lettering(node))).collect()
}

#[test]
fn awkward_fractions_are_drawn_to_the_thousandth_of_a_unit() {
    for (width, thing, gap) in [(1924, 1904, 10), (1925, 1911, 1), (575, 571, 3), (1539, 1501, 21)] {
        let svg = opening_front(&opening_of(width, thing, gap), Paper::Desk);
        let document = Document::parse(&svg).expect("XML");
        let xs = across(named(&document, "opening")[0]);
        let drawn = xs.iter().max().expect("points") - xs.iter().min().expect("points");
        assert!((drawn - at_one_to_24(width)).abs() <= 1, "{width}/64: {drawn}");
        let rect = named(&document, "thing")[0];
        assert!((attribute(rect, "width") - at_one_to_24(thing)).abs() <= 1);
        assert!((attribute(rect, "x") - at_one_to_24(gap)).abs() <= 1);
        // 69 7/8 in high, standing on the floor.
        assert_eq!(attribute(rect, "height"), 279_500);
        assert_eq!(attribute(rect, "y"), -279_500);
    }
}

#[test]
fn three_readings_are_each_drawn_as_wide_as_they_were_read() {
    let svg = opening_front(&gallery::refrigerator(), Paper::Desk);
    let document = Document::parse(&svg).expect("XML");
    let xs = across(named(&document, "opening")[0]);
    // 30 1/16 at the floor, 30 1/8 in the middle, 30 1/4 at the top; the floor's left edge is 0.
    assert_eq!(xs, [0, 0, -125, -375, -375, 120_625, 120_625, 120_375, 120_250, 120_250]);
}

#[test]
fn sides_plans_and_options_keep_the_depths_of_the_book() {
    let body = |svg: &str| {
        let document = Document::parse(svg).expect("XML");
        let rect = named(&document, "thing")[0];
        ["x", "y", "width", "height"].map(|name| attribute(rect, name))
    };
    // 1/2 in of air, 23 1/2 in of body, 69 7/8 in high; in plan 29 3/4 in wide, 5/32 in from the left.
    let side = opening_side(&deep::sides()[0], Paper::Desk);
    assert_eq!(body(&side), [2_000, -279_500, 94_000, 279_500]);
    let plan = opening_plan(&deep::plans()[0], Paper::Desk);
    // With what stands across it has room at a third of the scale of the thing alone.
    assert_eq!(body(&plan), [208, 667, 39_667, 31_333]);
    let option = option_plan(&deep::options()[0]);
    assert_eq!(body(&option), [625, 2_000, 119_000, 94_000]);
}

proptest! {
    #[test]
    fn the_printed_gaps_are_what_the_thing_leaves_of_the_opening(
        (width, thing, gap) in (300..1920_i64, 200..2000_i64, -60..200_i64)
    ) {
        // Drawings print 32nds.
        let (width, thing, gap) = (width * 2, thing * 2, gap * 2);
        let svg = opening_front(&opening_of(width, thing, gap), Paper::Desk);
        let document = Document::parse(&svg).expect("XML");
        let mut printed = printed_gaps(&document);
        let mut gaps = [gap, width - thing - gap].map(Length::from_sixty_fourths);
        printed.sort();
        gaps.sort();
        prop_assert_eq!(printed, gaps);
    }

    /// Words and hatching of a misfit stand in a drawing if and only if the verdict has it, with its figure.
    #[test]
    fn what_the_verdict_says_does_not_fit_is_hatched_and_said_and_nothing_else_is(what in anything::front()) {
        let svg = opening_front(&what, Paper::Desk);
        let document = Document::parse(&svg).expect("XML");
        let told = [what.misfits.width, what.misfits.height];
        prop_assert_eq!(named(&document, "misfit").len(), told.iter().flatten().count());
        let letters: Vec<String> = document.descendants().filter(|node| node.has_tag_name("text")).map(lettering).collect();
        for (misfit, [thing, opening]) in
            told.into_iter().zip([["too wide", "opening too wide"], ["too tall", "opening too high"]])
        {
            let says = |words: &str| letters.iter().any(|text| text.ends_with(&format!(" {words}")));
            prop_assert_eq!(says(thing) && !says(opening), matches!(misfit, Some(Misfit::TooSmall(_))), "{}", thing);
            prop_assert_eq!(says(opening), matches!(misfit, Some(Misfit::TooLarge(_))), "{}", opening);
        }
    }
}

/// A wall that nobody built and a floor at a height that nobody knows are not drawn.
#[test]
fn an_island_has_no_wall_behind_it_and_what_hangs_nowhere_has_no_floor() {
    let side = deep::sides().into_iter().next().expect("a side view");
    let cut = |behind: Behind, foot: Foot| {
        let mut what = OpeningSide { behind, ..side.clone() };
        what.opening.foot = foot;
        let drawn = opening_side(&what, Paper::Desk);
        (drawn.contains("url(#"), drawn.contains(">FF<"))
    };
    assert_eq!(cut(Behind::Wall, Foot::Floor), (true, true));
    assert_eq!(cut(Behind::Island, Foot::Floor), (false, true));
    assert_eq!(cut(Behind::Wall, Foot::Unknown), (true, false));
}

/// French doors are two leaves, and no leaf is drawn where nobody says on which side it hangs.
#[test]
fn a_door_is_drawn_as_it_hangs() {
    let plan = deep::plans().into_iter().next().expect("a plan");
    let leaves = |hinge: Hinged| {
        let mut what = plan.clone();
        if let Some(thing) = &mut what.thing {
            thing.door = Door::Swings { leaf: Length::from_inches(18), hinge };
        }
        opening_plan(&what, Paper::Desk).matches(" 0 0 ").count()
    };
    let none = leaves(Hinged::Unknown);
    assert_eq!(leaves(Hinged::At(Hand::Left)) - none, 1);
    assert_eq!(leaves(Hinged::BothSides) - none, 2);
}

/// A hob hangs from its counter and a basin from its wall: what is left of their openings is under them.
#[test]
fn what_hangs_is_drawn_from_the_top_of_its_opening_down() {
    for below in [0, 64] {
        let mut what = gallery::refrigerator();
        let inches = Length::from_inches;
        what.opening.foot = Foot::Above(inches(4));
        what.opening.height = inches(30);
        let thing = what.thing.as_mut().unwrap();
        thing.height = crate::drawings::sizes::Between { least: inches(6), most: inches(6) };
        thing.hangs = Some(Length::from_sixty_fourths(below));
        let svg = opening_front(&what, Paper::Desk);
        let document = Document::parse(&svg).expect("XML");
        let rect = named(&document, "thing")[0];
        assert_eq!(attribute(rect, "y"), -4_000 * 34 + 4_000 * below / 64, "its top is that far under 34 in");
        assert_eq!(attribute(rect, "height"), 24_000);
        assert_eq!(what.gap_below(), Some(inches(24) - Length::from_sixty_fourths(below)));
    }
}
