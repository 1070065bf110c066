//! The `light/` rules: how many, where, how high, how bright, and of one colour.

pub mod bath_zone;
pub mod count;
pub mod drop;
pub mod height;
pub mod level;
pub mod r#match;
pub mod spacing;

use crate::assess::Context;
use crate::book::{Hanging, HangsOver, ProductOption, Room, Selection};
use crate::site::fitting::overhead;
use crate::site::lights::{hanging, planned};
use crate::units::Length;

/// A light that the book says where it hangs.
#[derive(Clone)]
struct Hung<'a> {
    room: &'a Room,
    selection: &'a Selection,
    option: &'a ProductOption,
    /// As it says itself, and for the rest as the plan has it.
    hangs: Hanging,
}

impl Hung<'_> {
    /// How many there are: points given, or the quantity.
    fn count(&self) -> Option<usize> {
        let points = self.hangs.at.get().map(|at| at.0.len());
        let ordered = || usize::try_from(self.option.quantity.get()?.whole()?).ok();
        points.or_else(ordered).or_else(|| planned(self.room, self.selection))
    }

    /// Height of the ceiling where the light of that number hangs.
    fn ceiling(&self, context: &Context<'_>, number: usize) -> Option<Length> {
        overhead::ceiling_over(context.site.plan(self.room), self.room, self.selection, &self.hangs, number)
    }

    /// How many of them the plan sets out.
    fn set_out(&self, context: &Context<'_>) -> usize {
        let hung = context.site.plan(self.room).map(|plan| plan.hung.as_slice()).unwrap_or_default();
        let is_it = |name: &String| *name == self.selection.name.value;
        hung.iter().find(|hung| hung.lights.selection.get().is_some_and(is_it)).map_or(0, |hung| hung.places.len())
    }

    /// How wide one is.
    fn diameter(&self) -> Option<Length> {
        self.option.size.diameter.get().or(self.option.size.width.get()).copied()
    }

    /// Whether they hang over an island or a counter, a place where one works.
    fn over_work(&self) -> bool {
        matches!(self.hangs.over.get(), Some(HangsOver::Island | HangsOver::Counter))
    }
}

fn hung<'a>(context: &Context<'a>) -> impl Iterator<Item = Hung<'a>> {
    context.site.options().filter_map(|(room, selection, option)| {
        Some(Hung { room, selection, option, hangs: hanging(room, selection)? })
    })
}
