//! Inside corners of a counter's cutouts.

use super::{Counter, counters};
use crate::assess::codes::INSIDE_CORNER;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, Reason, say};
use crate::book::{DetailName, ProductOption, Reveal, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::source::Spanned;
use crate::units::Length;
use crate::vocabulary::{Hazard, Mount};

declare! {
    /// An inside corner of a cutout is square, too tight, or not the sink's
    ///
    /// ## What it checks
    /// The radius of the inside corners (`inside corners` under `top`) of stone, quartz, porcelain and
    /// concrete: never square, and not less than {1/4"}, the smallest of the usual core bits.
    /// Under an undermount sink whose `corner radius` is written, the two must match: equal where the
    /// rim is flush, the cutout's greater where the rim shows, and smaller where stone covers it.
    ///
    /// ## Why it matters
    /// Stone cracks from a square inside corner. A cutout rounder than its bowl hides the bowl's
    /// corners, and leaves a ledge that is never clean.
    ///
    /// ## Remedy
    /// Have corners drilled, by the sink's own template.
    ///
    /// ## Example
    /// ```yaml
    /// top: {material: stone, inside corners: 0"}     # drilled, 1/4" at least
    /// ```
    ///
    /// ## Source
    /// Shop practice; the usual core bits are {1/2"} to {1"} across.
    "top/corner", Query,
    due: CounterTemplated, tells: [Installer],
    judges: [Counter],
    sources: ["shop practice", "the sink's sheet"],
    caution: Some(Hazard::Stone),
    Check::Book(check)
}

const DRILL: &str = "have inside corners drilled, by the sink's own template, and write their radius";

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for counter in counters(context) {
        let Some(radius) = counter.top().and_then(|top| top.inside_corners.spanned()) else { continue };
        if let Some(finding) = tight(context, &counter, radius) {
            findings.push(finding);
            continue;
        }
        let grounds =
            context.depends.grounds(counter.selection).iter().filter(|ground| ground.because == Reason::CutFor);
        for ground in grounds {
            let bowls = ground.selection.standing().iter();
            findings.extend(bowls.filter_map(|bowl| unlike(context, &counter, radius, (ground.selection, bowl))));
        }
    }
}

fn tight(context: &Context<'_>, counter: &Counter<'_>, radius: &Spanned<Length>) -> Option<Remark> {
    let least = context.rulings().length(&INSIDE_CORNER).filter(|_| counter.is_brittle() != Some(false))?;
    if radius.value >= least.value {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let name = counter.name();
    let message = if radius.value == Length::ZERO {
        phrase!("the inside corners of the cutouts in `{name}` are square, where stone is drilled round", name)
    } else {
        phrase!(
            "the inside corners of `{name}` have a radius of {}, less than the {} of the smallest usual bit",
            name,
            say(radius.value),
            say(least.value)
        )
    };
    Some(counter.finding(least.severity, radius.span, message).source(least.source).remedy(DRILL))
}

/// A bowl below the counter whose corners the cutout does not follow.
fn unlike(
    context: &Context<'_>,
    counter: &Counter<'_>,
    radius: &Spanned<Length>,
    (sink, bowl): (&Selection, &ProductOption),
) -> Option<Remark> {
    let (own, at) = bowl.length(DetailName::CornerRadius)?;
    let below = bowl.mount() == Some(Mount::Under);
    let matches = match bowl.fact::<Reveal>().map(|(reveal, _)| reveal) {
        Some(Reveal::Positive) => radius.value >= own,
        Some(Reveal::Negative) => radius.value <= own,
        Some(Reveal::Flush) | None => radius.value == own,
    };
    if matches || !below {
        return None;
    }
    let say = |length| say(length, context.book.project.units);
    let which = match sink.settled() {
        Some(_) => phrase!("`{}`", sink.name.value),
        None => phrase!("`{}`, option `{}`,", sink.name.value, bowl.id.value),
    };
    let message = phrase!(
        "the inside corners of `{}` have a radius of {}, and those of {which} {}",
        counter.name(),
        say(radius.value),
        which,
        say(own)
    );
    let severity = if sink.settled().is_some() { Severity::Stop } else { Severity::Query };
    let finding = counter.finding(severity, radius.span, message).also(at, "the bowl's");
    Some(finding.source("the sink's sheet").remedy(DRILL))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn counter(top: &str, sink: &str) -> Trial {
        Trial::of("top/corner")
            .selection("selection: Counter\nkind: counter", &format!("top: {{{top}}}"))
            .selection("selection: Sink\nkind: sink", sink)
    }

    /// Source: check values ST-09: a radius of 0 fails; 1/4" to 1/2" are usual.
    #[test]
    fn an_inside_corner_is_drilled() {
        counter("material: stone, inside corners: 0\"", "")
            .finds("the inside corners of the cutouts in `Counter` are square, where stone is drilled round")
            .weighs("query")
            .cautions();
        counter("material: stone, inside corners: 1/8\"", "").finds_one();
        for usual in ["1/4\"", "3/8\"", "1/2\""] {
            counter(&format!("material: stone, inside corners: {usual}"), "").stays_silent();
        }
        counter("material: wood, inside corners: 0\"", "").stays_silent();
    }

    /// Source: check values ST-09: the sink's corners must match.
    #[test]
    fn the_cutout_follows_the_bowl() {
        let cut = |bowl: &str| counter("material: stone, inside corners: 3/8\"", bowl);
        cut("mount: undermount\nreveal: flush\ncorner radius: 3/8\"").stays_silent();
        cut("mount: undermount\nreveal: flush\ncorner radius: 3/4\"")
            .finds("the inside corners of `Counter` have a radius of 3/8\" (9.5 mm), and those of `Sink` 3/4\" (19 mm)")
            .weighs("stop");
        cut("mount: undermount\nreveal: negative\ncorner radius: 3/4\"").stays_silent();
        cut("mount: undermount\nreveal: positive\ncorner radius: 3/4\"").finds_one();
        cut("mount: undermount\nreveal: positive\ncorner radius: 1/4\"").stays_silent();
        cut("mount: drop-in\ncorner radius: 3/4\"").stays_silent();
    }
}
