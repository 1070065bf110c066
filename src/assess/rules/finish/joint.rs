//! Joints and offsets that a tile's size and make do not allow.

use crate::source::Span;
use crate::vocabulary::{Bond, Pattern};
use rust_decimal::Decimal;

use super::is_tile;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{DetailName, DetailValue, ProductOption, Room, Selection, System, TileEdges};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::units::Length;

declare! {
    /// The joint is too narrow, or the offset too great, for the tile
    ///
    /// ## What it checks
    ///
    /// | what | figure | from |
    /// | --- | --- | --- |
    /// | joint | at least three times the variation of the faces (`laid: varies by`) | ANSI A108.02, 4.3.8 |
    /// | joint | never below {1/16"} | ANSI A108.02, 4.3.8 |
    /// | joint, running bond, a side over {15"} | {1/8"} rectified, {3/16"} calibrated, and the edge's warpage | ANSI A108.02, 4.3.8.1 |
    /// | offset, side over {15"} | at most 33 % | ANSI A108.02, 4.3.8.2 |
    /// | joint | the maker's own least (`laid: least joint`) | the maker; a stop |
    ///
    /// The greatest figure counts, and one finding names it. Older texts set the {15"} at {18"}.
    ///
    /// ## Why it matters
    /// Long tiles are bowed. Laid half over half, the high middle of one meets the low end of the
    /// next, and every joint throws a shadow.
    ///
    /// ## Remedy
    /// A wider joint, an offset of a third, or rectified tile.
    ///
    /// ## Example
    /// ```yaml
    /// face size: 12" x 24"
    /// laid: {offset: 50 %}     # a third at most
    /// ```
    ///
    /// ## Source
    /// ANSI A108.02, 4.3.8 to 4.3.8.2, as quoted by trade journals.
    "finish/joint", Query,
    due: WithThing, tells: [],
    judges: [Tile],
    sources: ["ANSI A108.02, 4.3.8 to 4.3.8.2"],
    caution: None,
    Check::Book(check)
}

/// The narrowest joint of all: 1/16" (ANSI A108.02, 4.3.8).
const NARROWEST: Length = Length::from_sixty_fourths(4);
/// A side past which warpage counts: 15" (ANSI A108.02, 4.3.8.1; 18" in older texts).
const LONG: Length = Length::from_inches(15);
/// Joints of running bond with a long side: rectified and calibrated (ANSI A108.02, 4.3.8.1).
const RECTIFIED: Length = Length::from_sixty_fourths(8);
const CALIBRATED: Length = Length::from_sixty_fourths(12);

/// A figure that the joint must reach, where it is from, and why.
struct LeastJoint {
    joint: Length,
    source: &'static str,
    why: Phrase,
    by_maker: bool,
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let units = context.book.project.units;
    for (room, selection, option) in context.site.options().filter(|(_, selection, _)| is_tile(selection)) {
        findings.extend(joint(room, selection, option, units));
        findings.extend(offset(room, selection, option, units));
    }
}

fn joint(room: &Room, selection: &Selection, option: &ProductOption, units: System) -> Option<Remark> {
    let (joint, at) = option.length(DetailName::Joint)?;
    // Of figures that are not met, the maker's own comes first, then the greatest.
    let missed = asked(option, units).into_iter().filter(|asked| joint < asked.joint);
    let asked = missed.max_by_key(|asked| (asked.by_maker, asked.joint))?;
    let severity = if asked.by_maker { Severity::Stop } else { Severity::Query };
    let message = phrase!(
        "the joint of `{}` is {}, and {} asks for {}",
        selection.name.value,
        say(joint, units),
        asked.why,
        say(asked.joint, units)
    );
    let finding = about(room, selection, option, severity, at, message).source(asked.source);
    Some(finding.remedy("choose a wider joint, or tile whose faces and edges are truer"))
}

fn asked(option: &ProductOption, units: System) -> Vec<LeastJoint> {
    let laid = &option.laid;
    let by = |joint, source, why| LeastJoint { joint, source, why, by_maker: false };
    let mut asked = vec![by(NARROWEST, "ANSI A108.02, 4.3.8", Phrase::from("every joint"))];
    let of_the_tile = || option.length(DetailName::VariesBy).map(|(varies, _)| varies);
    if let Some(varies) = laid.varies_by.get().copied().or_else(of_the_tile) {
        let why = phrase!("three times the variation of its faces, {},", say(varies, units));
        asked.push(by(varies.times(3), "ANSI A108.02, 4.3.8", why));
    }
    if is_offset(option) && longest(option).is_some_and(|side| side > LONG) {
        let warpage = laid.warps_by.get().copied().unwrap_or(Length::ZERO);
        let (least, made) = match laid.edges.get() {
            Some(TileEdges::Calibrated) => (CALIBRATED, "calibrated tile"),
            _ => (RECTIFIED, "even rectified tile"),
        };
        let why = phrase!("{made} in running bond with a side over {}", made, say(LONG, units));
        asked.extend(least.checked_add(warpage).map(|joint| by(joint, "ANSI A108.02, 4.3.8.1", why)));
    }
    if let Some(least) = laid.least_joint.get() {
        asked.push(LeastJoint { joint: *least, source: "the maker's sheet", why: "the maker".into(), by_maker: true });
    }
    asked
}

fn offset(room: &Room, selection: &Selection, option: &ProductOption, units: System) -> Option<Remark> {
    let side = longest(option).filter(|side| *side > LONG)?;
    let (percent, at) = match option.laid.offset.spanned() {
        Some(offset) => (offset.value.value(), offset.span),
        None => said(option)?,
    };
    // A third is what 33 % means: thirds are laid, not hundredths.
    if percent * Decimal::from(3) <= Decimal::new(10002, 2) {
        return None;
    }
    let message = phrase!(
        "`{}` is laid at an offset of {percent} %, and its side is {}: 33 % at most past {}",
        selection.name.value,
        percent,
        say(side, units),
        say(LONG, units)
    );
    let finding = about(room, selection, option, Severity::Query, at, message);
    Some(finding.source("ANSI A108.02, 4.3.8.2").remedy("lay it in thirds or straight, or choose a shorter tile"))
}

/// The offset that the words of a pattern give: half, unless they say otherwise.
fn said(option: &ProductOption) -> Option<(Decimal, Span)> {
    let (pattern, at) = option.understood::<Pattern>()?;
    (pattern.bond == Bond::Offset && !pattern.less_than_half).then(|| (Decimal::from(50), at))
}

fn is_offset(option: &ProductOption) -> bool {
    match option.laid.offset.get() {
        Some(offset) => offset.value() > Decimal::ZERO,
        None => option.understood::<Pattern>().is_some_and(|(pattern, _)| pattern.bond == Bond::Offset),
    }
}

fn longest(option: &ProductOption) -> Option<Length> {
    match &option.detail(DetailName::FaceSize)?.value {
        DetailValue::Sides(sides) => sides.sides().iter().copied().max(),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn tile(face: &str, joint: &str, laid: &str) -> Trial {
        let option = format!("face size: {face}\njoint: {joint}\nlaid: {{{laid}}}");
        Trial::of("finish/joint").selection("selection: Floor\nkind: tile", &option)
    }

    /// Source: check values TL-01: a variation of 1/16" asks for 3/16".
    #[test]
    fn a_joint_is_three_times_the_variation_of_the_faces() {
        tile("8\" x 8\"", "1/8\"", "varies by: 1/16\"")
            .finds("the joint of `Floor` is 1/8\" (3.2 mm), and three times the variation of its faces, 1/16\" (1.6 mm), asks for 3/16\" (4.8 mm)")
            .weighs("query");
        tile("8\" x 8\"", "3/16\"", "varies by: 1/16\"").stays_silent();
    }

    /// Source: check values TL-01, as the tile itself says it.
    #[test]
    fn the_variation_counts_wherever_it_is_written() {
        let tile = |joint: &str| {
            Trial::of("finish/joint").selection(
                "selection: Floor\nkind: tile",
                &format!("face size: 8\" x 8\"\njoint: {joint}\nvaries by: 1/16\""),
            )
        };
        tile("1/8\"").finds_one();
        tile("3/16\"").stays_silent();
    }

    /// Source: check values TL-01, TL-02: three times 0.01" is 0.03", and 1/16" is the floor.
    #[test]
    fn no_joint_is_below_a_sixteenth() {
        tile("8\" x 8\"", "1/32\"", "varies by: 0.01\"").finds_one();
        tile("8\" x 8\"", "1/16\"", "varies by: 0.01\"").stays_silent();
        tile("8\" x 8\"", "1/32\"", "").finds_one();
    }

    /// Source: check values TL-03: 24" calibrated at 1/8" fails; rectified with 1/32" of warpage asks for 5/32".
    #[test]
    fn a_long_side_in_running_bond_asks_for_more() {
        let bond = |joint: &str, laid: &str| tile("12\" x 24\"", joint, &format!("offset: 33 %, {laid}"));
        bond("1/8\"", "edges: calibrated").finds_one();
        bond("3/16\"", "edges: calibrated").stays_silent();
        bond("1/8\"", "edges: rectified").stays_silent();
        bond("1/8\"", "edges: rectified, warps by: 1/32\"").finds_one();
        bond("5/32\"", "edges: rectified, warps by: 1/32\"").stays_silent();
        tile("12\" x 24\"", "1/8\"", "edges: calibrated").stays_silent();
    }

    /// Source: check values TL-04: 12 × 24 at 50 % fails, 6 × 12 at 50 % passes.
    #[test]
    fn a_long_tile_is_not_laid_half_over_half() {
        tile("12\" x 24\"", "3/16\"", "offset: 50 %").finds(
            "`Floor` is laid at an offset of 50 %, and its side is 24\" (610 mm): 33 % at most past 15\" (381 mm)",
        );
        tile("6\" x 12\"", "3/16\"", "offset: 50 %").stays_silent();
        tile("12\" x 24\"", "3/16\"", "offset: 33.3 %").stays_silent();
        tile("12\" x 24\"", "3/16\"", "offset: 34 %").finds_one();
        tile("15\" x 15\"", "3/16\"", "offset: 50 %").stays_silent();
    }

    /// Source: check values TL-04.
    #[test]
    fn the_words_of_a_pattern_give_the_offset_too() {
        let option = |words: &str| format!("face size: 12\" x 24\"\njoint: 3/16\"\npattern: {words}");
        let trial = |words: &str| Trial::of("finish/joint").selection("selection: Floor\nkind: tile", &option(words));
        trial("running bond").finds_one();
        trial("running bond by a third").stays_silent();
        trial("straight").stays_silent();
    }

    #[test]
    fn the_makers_own_least_joint_stops() {
        tile("8\" x 8\"", "1/8\"", "least joint: 3/16\"").finds_one().weighs("stop");
        tile("8\" x 8\"", "3/16\"", "least joint: 3/16\"").stays_silent();
    }
}
