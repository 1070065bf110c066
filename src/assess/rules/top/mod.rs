//! The `top/` rules: what carries a counter, how it is cut from its slabs, and who sits at it.

pub mod corner;
pub mod overhang;
pub mod seats;
pub mod slab;
pub mod span;
pub mod template_ready;

use crate::assess::Context;
use crate::assess::codes::{Figure, KNEES_AT_30, KNEES_AT_36, KNEES_AT_42, Ruling};
use crate::assess::context::about;
use crate::book::{DetailName, ProductOption, Room, Selection, Top};
use crate::finding::{Phrase, Remark, Severity};
use crate::site::counters::covers;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::Kind;

/// A counter that can be chosen.
#[derive(Clone, Copy)]
struct Counter<'a> {
    room: &'a Room,
    selection: &'a Selection,
    option: &'a ProductOption,
}

/// Thickness from which a slab sold as 2 cm or as 3 cm is one: 3/4" and 1 1/8", since 3/4" and 1 1/4"
/// are the trade's names for them.
const TWO_CM: Length = Length::from_sixty_fourths(48);
const THREE_CM: Length = Length::from_sixty_fourths(72);

/// How deep it must be clear for knees at a surface so high: the nearest of 30", 36" and 42" counts.
fn knee_depth(context: &Context<'_>, height: Length) -> Option<Ruling<Length>> {
    let figure = match height {
        low if low < Length::from_inches(33) => &KNEES_AT_30,
        middle if middle < Length::from_inches(39) => &KNEES_AT_36,
        _ => &KNEES_AT_42,
    };
    context.rulings().length(figure)
}

/// Every counter that still counts.
fn counters<'a>(context: &Context<'a>) -> impl Iterator<Item = Counter<'a>> {
    let counters = context.site.options().filter(|(_, selection, _)| selection.is(Kind::Counter));
    counters.map(|(room, selection, option)| Counter { room, selection, option })
}

impl<'a> Counter<'a> {
    fn name(&self) -> &'a str {
        &self.selection.name.value
    }

    /// What is said of it as a counter.
    fn top(&self) -> Option<&'a Top> {
        self.option.top.get()
    }

    /// Whether it breaks rather than bends; none while nobody says what it is made of.
    fn is_brittle(&self) -> Option<bool> {
        let material = self.top()?.material.get()?;
        Some(material.is_stony())
    }

    fn thickness(&self) -> Option<Length> {
        self.option.length(DetailName::Thickness).map(|(thickness, _)| thickness)
    }

    /// What counts for stone of its thickness, the figure for 2 cm and the one for 3 cm given; none
    /// for thinner stone, of which the manual says nothing.
    fn ruling(&self, context: &Context<'_>, two: &'static Figure, three: &'static Figure) -> Option<Ruling<Length>> {
        let thickness = self.thickness().filter(|thickness| *thickness >= TWO_CM)?;
        context.rulings().length(if thickness < THREE_CM { two } else { three })
    }

    /// Whether it covers the run, island or place to sit of that name. A room's only counter, of which
    /// nobody says where it lies, covers them all.
    fn covers(&self, name: &str) -> bool {
        covers(self.room, self.option, name)
    }

    fn finding(&self, severity: Severity, at: Span, message: Phrase) -> Remark {
        about(self.room, self.selection, self.option, severity, at, message)
    }
}
