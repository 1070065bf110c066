//! How much counter each kind of opening asks for.

use crate::book::{Landing, Opening};
use crate::units::Length;

/// What is added to the longer of two landings that share a counter (kitchen guideline 24).
pub const ONE: Length = Length::from_inches(12);

/// Counter asked for, on both sides or in one place.
pub struct Asked {
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
    pub source: &'static str,
}

macro_rules! guideline {
    ($number:literal) => {
        concat!("Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline ", $number)
    };
}

const fn both(greater: i64, lesser: i64, source: &'static str) -> Asked {
    Asked {
        greater: Length::from_inches(greater),
        lesser: Length::from_inches(lesser),
        across: false,
        not_a_walkway: false,
        by_the_handle: false,
        source,
    }
}

const SINK: Asked = both(24, 18, guideline!("11"));
const SECOND_SINK: Asked = both(18, 3, guideline!("15"));
const COOKING: Asked = both(15, 12, guideline!("17"));
const REFRIGERATOR: Asked = Asked { across: true, by_the_handle: true, ..both(15, 0, guideline!("16")) };
const MICROWAVE: Asked = Asked { by_the_handle: true, ..both(15, 0, guideline!("22")) };
const OVEN: Asked = Asked { across: true, not_a_walkway: true, ..both(15, 0, guideline!("23")) };

/// What an opening for that kind asks for.
pub fn of_kind(kind: &str, landing: &Landing) -> Option<Asked> {
    match kind {
        "sink" if landing.second_sink.get() == Some(&true) => Some(SECOND_SINK),
        "sink" => Some(SINK),
        "cooktop" | "range" => Some(COOKING),
        "refrigerator" => Some(REFRIGERATOR),
        "microwave" => Some(MICROWAVE),
        "wall oven" => Some(OVEN),
        _ => None,
    }
}

/// What an opening asks for of a counter that it shares with another: the lesser length, where its
/// other side is long enough for the greater or is not known; none for what sets nothing down.
pub fn at_a_side(opening: &Opening, landing: &Landing, shared_with: &str) -> Option<Length> {
    let asked = of_kind(opening.takes.get()?.name, landing)?;
    if asked.lesser == Length::ZERO {
        return Some(asked.greater);
    }
    let sides = [&landing.left, &landing.right].into_iter().filter_map(|side| side.get());
    let mut others = sides.filter(|side| side.to.as_ref().is_none_or(|to| to.value != shared_with));
    let short = others.next().is_some_and(|other| other.counter < asked.greater);
    Some(if short { asked.greater } else { asked.lesser })
}
