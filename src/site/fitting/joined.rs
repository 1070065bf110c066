//! Two openings whose things stand beside or on one another, by whatever tells it.

use crate::book::{Opening, Room};
use crate::site::plan::{Plan, Thing};
use crate::source::Span;
use crate::vocabulary::Trait;

use super::Stack;
use super::housing::cabinet_part;

/// Where it is told that the things of two openings are joined: as the `pair` of either, as a stack, as what is let into
/// the counter over the other, in one cabinet, or as two machines that the plan sets one over the other.
pub fn joined(plan: Option<&Plan<'_>>, room: &Room, one: &Opening, other: &Opening) -> Option<Span> {
    let names = |of: &Opening, named: &Opening| {
        let pair = of.pair.spanned().filter(|pair| pair.eq_ignore_ascii_case(&named.name))?;
        Some(pair.span)
    };
    let written = names(one, other).or_else(|| names(other, one));
    let stacked = || Stack::of(room, one).filter(|stack| std::ptr::eq(stack.other(one), other)).map(|_| one.span);
    written.or_else(stacked).or_else(|| over_it(room, one, other)).or_else(|| set_over_it(plan?, one, other))
}

/// One of them cooks in the counter of the cabinet that the other is built into.
fn over_it(room: &Room, one: &Opening, other: &Opening) -> Option<Span> {
    let cooks = |of: &Opening| of.takes_one(Trait::CutIntoCounter) && of.takes_one(Trait::Cooks);
    if cooks(one) == cooks(other) || [one, other].iter().all(|of| of.takes_one(Trait::CutIntoCounter)) {
        return None;
    }
    let holds = &cabinet_part(room, one)?.part.holds;
    holds.iter().find(|name| name.eq_ignore_ascii_case(&other.name)).map(|name| name.span)
}

/// Two machines that stand in no cabinet, one over the other.
fn set_over_it(plan: &Plan<'_>, one: &Opening, other: &Opening) -> Option<Span> {
    let is_machine = |of: &Opening| of.takes_one(Trait::InNoCabinet);
    let (own, others) = (plan.opening(one)?, plan.opening(other)?);
    let over =
        |upper: &Thing<'_>, lower: &Thing<'_>| upper.low > lower.low && upper.footprint().overlaps(&lower.footprint());
    let is_over = is_machine(one) && is_machine(other) && (over(own, others) || over(others, own));
    is_over.then_some(own.span)
}
