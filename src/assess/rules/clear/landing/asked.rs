//! How much counter each kind of opening asks for.

use crate::assess::codes::{
    COOKTOP_LANDING_ONE, COOKTOP_LANDING_OTHER, FRIDGE_LANDING, Family, Figure, LANDINGS_SHARED, MICROWAVE_LANDING,
    OVEN_LANDING, PREP_WIDTH, Rulings, SINK_LANDING_ONE, SINK_LANDING_OTHER,
};
use crate::book::{Landing, Opening};
use crate::finding::Severity;
use crate::units::Length;
use crate::vocabulary::Kind;

/// Counter asked for, on both sides or in one place.
pub struct LandingCounter {
    /// On one side, or in the one place.
    pub greater: Length,
    /// On the other side; nothing where one place is enough.
    pub lesser: Length,
    /// Whether a counter across from it counts.
    pub across: bool,
    /// Whether that counts only where nobody walks between.
    pub not_a_walkway: bool,
    /// Whether only the side of the handle counts.
    pub by_the_handle: bool,
    /// What is published where.
    pub source: String,
    /// What missing it weighs.
    pub severity: Severity,
}

/// Whether a figure that a book sets by that name is one of landings.
pub fn is_of_landings(name: &str) -> bool {
    let all: [&Figure; 9] = [
        &COOKTOP_LANDING_ONE,
        &COOKTOP_LANDING_OTHER,
        &FRIDGE_LANDING,
        &LANDINGS_SHARED,
        &MICROWAVE_LANDING,
        &OVEN_LANDING,
        &SINK_LANDING_ONE,
        &SINK_LANDING_OTHER,
        &PREP_WIDTH,
    ];
    all.iter().any(|figure| figure.name == name)
}

/// What is added to the longer of two landings that share a counter.
pub fn shared(rulings: Rulings<'_>) -> Length {
    rulings.length(&LANDINGS_SHARED).map_or(Length::ZERO, |ruling| ruling.value)
}

const SECOND_SINK: &str = "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 15";

/// Whether counter across from a kind counts.
pub fn counts_across(kind: Kind) -> bool {
    matches!(kind, Kind::Refrigerator | Kind::PanelRefrigerator | Kind::WallOven)
}

/// What an opening for that kind asks for.
pub fn of_kind(rulings: Rulings<'_>, kind: Kind, landing: &Landing) -> Option<LandingCounter> {
    match kind {
        Kind::Sink if landing.second_sink.get() == Some(&true) => {
            rulings.offers(Family::KitchenAndBath).then(|| LandingCounter {
                greater: Length::from_inches(18),
                lesser: Length::from_inches(3),
                source: SECOND_SINK.into(),
                severity: Severity::Query,
                across: false,
                not_a_walkway: false,
                by_the_handle: false,
            })
        }
        Kind::Sink => both(rulings, &SINK_LANDING_ONE, &SINK_LANDING_OTHER),
        Kind::Cooktop | Kind::Range => both(rulings, &COOKTOP_LANDING_OTHER, &COOKTOP_LANDING_ONE),
        Kind::Refrigerator | Kind::PanelRefrigerator => one(rulings, &FRIDGE_LANDING).map(|one| LandingCounter {
            across: counts_across(kind),
            by_the_handle: true,
            ..one
        }),
        Kind::Microwave => one(rulings, &MICROWAVE_LANDING).map(|one| LandingCounter { by_the_handle: true, ..one }),
        Kind::WallOven => one(rulings, &OVEN_LANDING).map(|one| LandingCounter {
            across: counts_across(kind),
            not_a_walkway: true,
            ..one
        }),
        _ => None,
    }
}

/// Counter on both sides.
fn both(rulings: Rulings<'_>, greater: &'static Figure, lesser: &'static Figure) -> Option<LandingCounter> {
    let (one, lesser) = (one(rulings, greater)?, rulings.length(lesser)?);
    Some(LandingCounter { lesser: lesser.value, severity: one.severity.min(lesser.severity), ..one })
}

/// Counter in one place.
fn one(rulings: Rulings<'_>, figure: &'static Figure) -> Option<LandingCounter> {
    let ruling = rulings.length(figure)?;
    Some(LandingCounter {
        greater: ruling.value,
        lesser: Length::ZERO,
        source: ruling.source,
        severity: ruling.severity,
        across: false,
        not_a_walkway: false,
        by_the_handle: false,
    })
}

/// What an opening asks for of a counter that it shares with another: the lesser length, where its
/// other side is long enough for the greater or is not known; none for what sets nothing down.
pub fn at_a_side(rulings: Rulings<'_>, opening: &Opening, landing: &Landing, shared_with: &str) -> Option<Length> {
    let asked = of_kind(rulings, *opening.takes.get()?, landing)?;
    if asked.lesser == Length::ZERO {
        return Some(asked.greater);
    }
    let sides = [&landing.left, &landing.right].into_iter().filter_map(|side| side.get());
    let mut others = sides.filter(|side| side.to.get().is_none_or(|to| to != shared_with));
    let short = others.next().is_some_and(|other| other.counter < asked.greater);
    Some(if short { asked.greater } else { asked.lesser })
}
