//! How far each pendant hangs from its own ceiling, against what it can be set to.

use super::{Hung, hung};
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{Ceiling, DetailName, DetailValue, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, Value, phrase};
use crate::site::fitting::overhead::{Slope, at, slope};
use crate::units::{Length, LengthRange, Wrote};
use crate::vocabulary::supply::Worded;
use crate::vocabulary::{Hazard, Kind, Pitch, Readings};

declare! {
    /// A pendant can't be set to its drop, or its canopy is not made for the slope
    ///
    /// ## What it checks
    /// For each light, the height of the ceiling where it hangs (measured there; from a sloped ceiling
    /// by its distance from the low side; or the level ceiling's) less the height of its lowest part:
    /// its own drop, against what the maker says it can be set to; under a slope of which nobody says where, against its
    /// least and its greatest height. Under a ceiling that slopes, the
    /// slope against the canopy's `slope rating`: in degrees (`30°`, `up to 30 deg`), as a pitch (`6/12`,
    /// `6:12`, `6 in 12`), `level ceilings only` or `any`. One that can't be understood asks, and so does
    /// a slope of which the distance is not known.
    ///
    /// ## Why it matters
    /// Three pendants under a sloped ceiling want three drops. A rod is cut at the maker's; a cord too
    /// short is sent back. A canopy that is not made for the slope stands off, and its rod hangs askew.
    ///
    /// ## Remedy
    /// Order the longer rod or cord, or the sloped-ceiling canopy; give the electrician each drop.
    ///
    /// ## Example
    /// ```yaml
    /// ceiling: {low: 8' 0", high: 13' 0", rises along: length}
    /// ---
    /// drop: 18" to 48"
    /// hangs: {over: island, from low side: [30", 60"], bottom: 69"}     # 42" and 57"
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; drop and slope are geometry, from memory.
    "light/drop", Stop,
    due: RoughInClosed, tells: [Client, Installer],
    living: "living.light.drop",
    judges: [Pendant, CeilingLight],
    sources: ["the maker's sheet", "from memory: geometry"],
    caution: Some(Hazard::Power),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for hung in hung(context) {
        findings.extend(reach(context, &hung));
    }
    for (room, selection, option) in context.site.options() {
        if selection.is(Kind::Pendant) {
            findings.extend(askew(context, room, selection, option));
        }
    }
}

/// One finding for all the lights that can't be set.
fn reach(context: &Context<'_>, hung: &Hung<'_>) -> Option<Remark> {
    let units = context.book.project.units;
    let bottom = hung.hangs.bottom.get()?;
    let range = drop_of(hung.option)?;
    let points = hung.count().unwrap_or(1).max(bottom.0.len()).max(hung.set_out(context));
    let wrong: Vec<Phrase> = (0..points)
        .filter_map(|number| Some((number, hung.ceiling(context, number)? - at(&bottom.0, number)?)))
        .filter(|(_, drop)| !range.contains(*drop))
        .map(|(number, drop)| phrase!("no. {} wants {}", number + 1, say(drop, units)))
        .collect();
    let message = if wrong.is_empty() {
        let (least, most) = anywhere(context, hung, bottom).filter(|ends| {
            range.least.is_some_and(|least| least > ends.1) || range.most.is_some_and(|most| most < ends.0)
        })?;
        phrase!(
            "`{}` drops {}, and hung anywhere under the ceiling it wants {} to {}",
            hung.selection.name.value,
            worded(range, |length| say(length, units)),
            say(least, units),
            say(most, units)
        )
    } else {
        phrase!(
            "`{}` drops {}, and {}",
            hung.selection.name.value,
            worded(range, |length| say(length, units)),
            Phrase::joined(wrong, ", ")
        )
    };
    let span = hung.option.detail(DetailName::Drop).map_or(hung.selection.span, |detail| detail.span);
    let finding = about(hung.room, hung.selection, hung.option, Severity::Stop, span, message);
    Some(finding.source("the maker's sheet").remedy(
        "order the maker's longer or shorter rod or cord, or choose another; give each drop to the electrician",
    ))
}

/// The least and the most drop under a ceiling that slopes, where nobody says at what place of it the light hangs.
fn anywhere(context: &Context<'_>, hung: &Hung<'_>, bottom: &Readings) -> Option<(Length, Length)> {
    let Ceiling::Sloped { low, high, .. } = hung.room.ceiling.get()? else { return None };
    let lowest = at(&bottom.0, 0).filter(|_| bottom.0.len() == 1 && hung.ceiling(context, 0).is_none())?;
    Some(((*low - lowest).max(Length::ZERO), *high - lowest))
}

fn drop_of(option: &ProductOption) -> Option<LengthRange> {
    match option.detail(DetailName::Drop)?.value {
        DetailValue::Range(range) => Some(range),
        _ => None,
    }
}

fn worded(range: LengthRange, say: impl Fn(Length) -> Value) -> Phrase {
    match (range.least, range.most) {
        (Some(least), Some(most)) if least == most => phrase!("exactly {}", say(least)),
        (Some(least), Some(most)) => phrase!("{} to {}", say(least), say(most)),
        (Some(least), None) => phrase!("at least {}", say(least)),
        (None, Some(most)) => phrase!("at most {}", say(most)),
        (None, None) => "as one likes".into(),
    }
}

/// A canopy under a ceiling that slopes more than it is made for; asked where either is not known.
fn askew(context: &Context<'_>, room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let slope = slope(context.site.plan(room), room).filter(|slope| *slope != Slope::Level)?;
    let (rating, at) = option.fact::<Worded<Option<Pitch>>>()?;
    let words = &rating.words;
    let name = &selection.name.value;
    let ask = |message: Phrase, remedy: &'static str| {
        let finding = about(room, selection, option, Severity::Query, at, message);
        Some(finding.source("the maker's sheet").remedy(remedy))
    };
    let Some(made_for) = rating.is else {
        let message =
            phrase!("the ceiling slopes, and `{words}` does not say how steep a one `{name}` is made for", words, name);
        return ask(message, "write `slope rating` in degrees or as rise and run, as the maker's sheet has it");
    };
    let Slope::Degrees(slope) = slope else {
        if made_for == Pitch::Any {
            return None;
        }
        let message =
            phrase!("the ceiling slopes, and how steep is not known: `{name}` is made for `{words}`", name, words);
        return ask(message, "write the room's `outline`, and the wall from which the ceiling rises (`low at`)");
    };
    if made_for.allows(slope) {
        return None;
    }
    let made = match made_for {
        Pitch::Degrees(most) if most > 0.0 => phrase!("at most {most} degrees", Wrote(&format!("{most:.0}"))),
        _ => "level ceilings only".into(),
    };
    let message = phrase!(
        "the ceiling slopes by {slope} degrees, and the canopy of `{name}` is made for {made}",
        Wrote(&format!("{slope:.0}")),
        name,
        made
    );
    let finding = about(room, selection, option, Severity::Stop, at, message).source("the maker's sheet");
    Some(finding.remedy("order the maker's canopy for sloped ceilings, or choose a light that has one"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    const SLOPED: &str = "outline: 10' x 8'\nceiling: {low: 96\", high: 156\", rises along: length}";

    fn pendants(room: &str, hangs: &str, option: &str) -> Trial {
        Trial::of("light/drop")
            .room(room)
            .selection(&format!("selection: Pendants\nkind: pendant\nhangs: {{over: island, {hangs}}}"), option)
    }

    /// Source: check values LT-07: at 60" from the low side 126"; 36" and 33" above it: a drop of 57".
    #[test]
    fn each_pendant_under_a_slope_has_its_own_drop() {
        let hangs = "from low side: [30\", 60\"], bottom: 69\"";
        let message = "`Pendants` drops 18\" (457 mm) to 48\" (1219 mm), and no. 2 wants 57\" (1448 mm)";
        pendants(SLOPED, hangs, "drop: 18\" to 48\"\nquantity: 2").finds(message).weighs("stop").cautions();
        pendants(SLOPED, hangs, "drop: 18\" to 57\"\nquantity: 2").stays_silent();
    }

    /// Source: check values LT-08: with a limit of 30 degrees a pitch of 6/12 passes, 8/12 does not.
    #[test]
    fn a_canopy_is_rated_for_the_slope() {
        let room = |high: &str| format!("outline: 10' x 8'\nceiling: {{low: 96\", high: {high}, rises along: length}}");
        let rated =
            |high: &str, rating: &str| pendants(&room(high), "bottom: 69\"", &format!("slope rating: {rating}"));
        rated("156\"", "up to 30 degrees").stays_silent();
        rated("176\"", "up to 30 degrees")
            .finds("the ceiling slopes by 34 degrees, and the canopy of `Pendants` is made for at most 30 degrees");
        rated("156\"", "up to 6/12").stays_silent();
        rated("156\"", "level ceilings only").finds_one();
        pendants("ceiling: 8'", "bottom: 69\"", "slope rating: level ceilings only").stays_silent();
    }

    /// Source: check values LT-08: 6/12 and 8/12, however they are written.
    #[test]
    fn a_rating_is_read_as_degrees_or_as_a_pitch_and_one_that_can_not_be_read_asks() {
        let rated = |high: &str, rating: &str| {
            let room = format!("outline: 10' x 8'\nceiling: {{low: 96\", high: {high}, rises along: length}}");
            pendants(&room, "bottom: 69\"", &format!("slope rating: '{rating}'"))
        };
        for rating in ["6:12", "6 in 12", "up to 6-in-12", "27°", "max 30 deg"] {
            rated("156\"", rating).stays_silent();
            rated("176\"", rating).finds_one().weighs("stop");
        }
        for rating in ["30", "sloped", "see sheet"] {
            rated("156\"", rating).finds_one().weighs("query");
            pendants("ceiling: 8'", "bottom: 69\"", &format!("slope rating: '{rating}'")).stays_silent();
        }
        pendants("ceiling: {low: 96\", high: 156\"}", "bottom: 69\"", "slope rating: 30 degrees")
            .finds_one()
            .weighs("query");
    }

    /// A ceiling that rises from a short wall rises over the room's length: 60" over 120" is a pitch of 6/12.
    #[test]
    fn the_wall_from_which_the_ceiling_rises_says_over_what_distance() {
        let from = |wall: &str| {
            let room = format!("outline: 10' x 5'\nceiling: {{low: 96\", high: 156\", low at: {wall}}}");
            pendants(&room, "bottom: 69\"", "slope rating: 30 degrees")
        };
        from("D").stays_silent();
        from("A").finds_one();
    }

    /// Source: check values LT-07, the places of the lights taken from the plan: 96" and 60" from the low side.
    #[test]
    fn lights_set_out_in_the_plan_hang_from_the_ceiling_over_each() {
        let room = |at: &str| {
            format!(
                "outline: 10' x 8'\nceiling: {{low: 96\", high: 156\", low at: D}}\nislands: {{island: {{wall: A, at: 20\", away: 30\", size: 80\" x 36\"}}}}\nlights: {{two: {{selection: Pendants, over: island, at: {at}}}}}"
            )
        };
        pendants(&room("[10\", 40\"]"), "bottom: 69\"", "drop: 18\" to 48\"").finds_one();
        pendants(&room("[5\", 20\"]"), "bottom: 69\"", "drop: 18\" to 48\"").stays_silent();
    }

    /// Source: trade reports F-116.
    #[test]
    fn a_ceiling_that_was_measured_at_each_point_counts_first() {
        let hangs = "ceiling: [100\", 110\"], bottom: [69\", 69\"]";
        pendants("ceiling: 8'", hangs, "drop: 18\" to 36\"").finds_one();
        pendants("ceiling: 8'", hangs, "drop: 18\" to 41\"").stays_silent();
    }

    /// Where nobody says at what place of a slope it hangs, it is to be able to hang at one.
    #[test]
    fn a_pendant_can_hang_somewhere_under_its_slope() {
        let somewhere = |drop: &str| {
            let room =
                "outline: 4400 mm x 3200 mm\nceiling: {low: 1900 mm, high: 2650 mm, rises along: width, low at: C}";
            let hangs = "selection: Pendants\nkind: pendant\nhangs: {over: table, bottom: 1450 mm}";
            Trial::of("light/drop").metric().room(room).selection(hangs, &format!("drop: {drop}"))
        };
        somewhere("1800 mm to 2500 mm")
            .finds_one()
            .says("hung anywhere under the ceiling it wants 450 mm")
            .weighs("stop");
        somewhere("1400 mm to 1500 mm").finds_one();
        somewhere("200 mm to 300 mm").finds_one();
        somewhere("400 mm to 1500 mm").stays_silent();
        somewhere("1000 mm to 1500 mm").stays_silent();
    }
}
