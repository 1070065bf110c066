//! A counter's pieces on its slabs, its seams, and who decides where they come.

use super::{Counter, counters};
mod runs;

use crate::assess::codes::{SLAB_LENGTH, SLAB_WIDTH};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{Direction, Seam, SeamOver, Slab, Top};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::fitting::nest::{Sides, Stock, slabs};
use crate::site::plan::Thing;
use crate::source::Span;
use crate::units::{Length, Wrote};
use crate::vocabulary::{Hazard, Trait};

declare! {
    /// A counter does not come out of its slabs, or has a seam where none belongs
    ///
    /// ## What it checks
    /// | what | against | from |
    /// | --- | --- | --- |
    /// | each of the `pieces`, and each island that has none | the slab, turned only where its direction is free; where no slab is written, one of {120"} by {72"} | the yard; trade pages |
    /// | all pieces, laid out with straight cuts and the saw's kerf | how many slabs are held | the yard |
    /// | all pieces | the runs and islands that the counter lies on | the book's own figures |
    /// | each piece | no longer than the only run that it lies on, and {2"} or its overhang at both ends | common practice |
    /// | each run with a counter, each island | some counter `lies on` it, where all say on what they lie | the book's own figures |
    /// | how deep the counter of each run is | the fronts below it | common practice |
    /// | each seam | none over a dishwasher | the stone manual |
    /// | a seam in the cutout of a sink or a cooktop, as it says or by the plan | reinforced | the stone manual; for a cooktop common practice |
    /// | pieces that meet, or a stone whose direction is kept | `layout`: a signed drawing, or the fabricator decides | fabricators' terms |
    ///
    /// A layout that was not found may still exist: where the stone's area alone is enough, too many
    /// pieces are a query, and the fabricator has the last word.
    ///
    /// ## Why it matters
    /// A second slab is another lot, and never the same stone. By most terms the fabricator sets seams
    /// where it suits the saw; the client sees them every day.
    ///
    /// ## Remedy
    /// Lay the pieces out on the slab itself, before it is bought; have a drawing with seams and veins
    /// signed for itself.
    ///
    /// ## Example
    /// ```yaml
    /// top:
    ///   slab: {usable: 116" x 60", kerf: 1/8", direction: kept, count: 1}
    ///   pieces: {island: 130" x 42"}     # longer than the slab
    /// ```
    ///
    /// ## Source
    /// MIA/NSI Dimension Stone Design Manual, drawing 17-D-1; usual slabs and fabricators' terms are
    /// common practice.
    "top/slab", Query,
    due: CounterTemplated, tells: [Installer],
    judges: [Counter],
    sources: ["MIA/NSI Dimension Stone Design Manual, drawing 17-D-1", "common practice"],
    caution: Some(Hazard::Stone),
    Check::Book(check)
}

const SEAMS: &str = "MIA/NSI Dimension Stone Design Manual, drawing 17-D-1, as experts quote it";
const YARD: &str = "the yard's own measure";
const PRACTICE: &str = "common practice";

/// What is cut in one.
struct Piece<'a> {
    name: &'a str,
    sides: Sides,
    at: Span,
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for counter in counters(context) {
        let empty = Top::default();
        let top = counter.top().unwrap_or(&empty);
        let pieces = pieces(&counter, top);
        let large = too_large(context, &counter, top, &pieces);
        // While one piece is too large for a slab, nobody counts slabs.
        findings.extend(large.or_else(|| too_many(&counter, top, &pieces)));
        findings.extend(top.seams.iter().find_map(|seam| misplaced(context, &counter, seam)));
        findings.extend(undecided(&counter, top));
        let short = runs::short(context, &counter, top).or_else(|| runs::small(context, &counter, top));
        let less = || runs::less(context, &counter, top);
        findings.extend(short.or_else(less).or_else(|| runs::long(context, &counter, top)));
    }
    findings.extend(runs::bare(context));
    findings.extend(runs::shallow(context));
}

/// As written; else the islands that stone covers in one.
fn pieces<'a>(counter: &Counter<'a>, top: &'a Top) -> Vec<Piece<'a>> {
    if !top.pieces.is_empty() {
        let piece = |piece: &'a crate::book::Piece| Piece {
            name: &piece.name.value,
            sides: (piece.length, piece.depth),
            at: piece.name.span,
        };
        return top.pieces.iter().map(piece).collect();
    }
    let in_one = counter.is_brittle() == Some(true) && top.seams.is_empty();
    let islands = counter.room.islands.iter().filter(|island| in_one && counter.covers(&island.name));
    let islands = islands.filter_map(|island| {
        let size = island.size.spanned()?;
        Some(Piece { name: &island.name.value, sides: size.value, at: size.span })
    });
    islands.collect()
}

/// The slabs that are held, as they can be used.
fn stock(slab: &Slab) -> Option<Stock> {
    let usable = slab.usable.get().or(slab.size.get())?;
    let kerf = slab.kerf.get().copied().unwrap_or(Length::ZERO);
    Some(Stock { slab: *usable, kerf, may_turn: slab.direction.get() != Some(&Direction::Kept) })
}

fn too_large(context: &Context<'_>, counter: &Counter<'_>, top: &Top, pieces: &[Piece<'_>]) -> Option<Remark> {
    let written = top.slab.get().and_then(stock);
    let (stock, whose, source, severity) = match written {
        Some(stock) => (stock, "the slab that is held", YARD.to_string(), Severity::Stop),
        None => {
            let (long, wide) = (context.rulings().length(&SLAB_LENGTH)?, context.rulings().length(&SLAB_WIDTH)?);
            let usual = Stock { slab: (long.value, wide.value), kerf: Length::ZERO, may_turn: true };
            (usual, "a usual slab", long.source, Severity::Query)
        }
    };
    // Wood, metal and the like are not cut from slabs of stone.
    if written.is_none() && counter.is_brittle() != Some(true) {
        return None;
    }
    let piece = pieces.iter().find(|piece| !stock.takes(piece.sides))?;
    let say = |(one, other): Sides| {
        let say = |length| say(length, context.book.project.units);
        phrase!("{} by {}", say(one), say(other))
    };
    let direction = if stock.may_turn { "" } else { ", whose direction is kept" };
    let message = phrase!(
        "the piece `{}` of `{}`, {}, does not come out of {whose}, {}{direction}",
        piece.name,
        counter.name(),
        say(piece.sides),
        whose,
        say(stock.slab),
        direction
    );
    let finding = counter.finding(severity, piece.at, message).source(source);
    Some(finding.remedy("plan a seam and have it signed, or find a larger slab"))
}

fn too_many(counter: &Counter<'_>, top: &Top, pieces: &[Piece<'_>]) -> Option<Remark> {
    let slab = top.slab.get()?;
    let (stock, count) = (stock(slab)?, slab.count.spanned()?);
    let sides: Vec<Sides> = pieces.iter().map(|piece| piece.sides).collect();
    let found = slabs(&stock.nest(&sides)?);
    if found <= usize::try_from(count.value).unwrap_or(usize::MAX) {
        return None;
    }
    let area = |(one, other): Sides| i128::from(one.nanometres()) * i128::from(other.nanometres());
    let asked: i128 = sides.iter().map(|sides| area(*sides)).sum();
    let certain = asked > area(stock.slab).saturating_mul(count.value.into());
    let (severity, how) = match certain {
        true => (Severity::Stop, "more stone than there is".into()),
        false => (Severity::Query, phrase!("laid out on {found}", found)),
    };
    let message = phrase!(
        "the {} pieces of `{}` are {how}, and {} {} held",
        pieces.len(),
        counter.name(),
        how,
        count.value,
        if count.value == 1 { "slab is" } else { "slabs are" }
    );
    let finding = counter.finding(severity, count.span, message).source(YARD);
    Some(finding.remedy("have the fabricator lay them out on the slabs themselves, or hold another of the same block"))
}

/// A seam over a dishwasher, or one in a cutout that nothing reinforces.
fn misplaced(context: &Context<'_>, counter: &Counter<'_>, seam: &Seam) -> Option<Remark> {
    let washer = planned_under(context, counter, seam, Trait::WashesDishes);
    let cut = planned_under(context, counter, seam, Trait::CutIntoCounter);
    let is_bare = seam.reinforced.get() != Some(&true);
    let reinforce = "have it reinforced front and back, and say so at the seam, under `reinforced`";
    let elsewhere = "move the seam over a cabinet, clear of the cutout";
    let (fault, remedy) = match (seam.over.get(), washer, cut) {
        (Some(SeamOver::Dishwasher), ..) => (Phrase::from("lies over a dishwasher"), "move the seam over a cabinet"),
        (_, Some(washer), _) => (phrase!("lies over `{}` by the plan", washer.name), "move the seam over a cabinet"),
        (Some(SeamOver::Sink), ..) if is_bare => {
            ("runs through a sink's cutout, and nobody says that it is reinforced".into(), reinforce)
        }
        (Some(SeamOver::Cooktop), ..) if is_bare => {
            ("runs through a cooktop's cutout, and nobody says that it is reinforced".into(), elsewhere)
        }
        (_, _, Some(cut)) if is_bare => {
            let remedy = if cut.has(Trait::Cooks) { elsewhere } else { reinforce };
            let fault =
                phrase!("runs through the cutout of `{}` by the plan, and nobody says that it is reinforced", cut.name);
            (fault, remedy)
        }
        _ => return None,
    };
    let message = phrase!("the seam of `{}` {} {fault}", counter.name(), Wrote(&seam.at.value), fault);
    Some(counter.finding(Severity::Query, seam.at.span, message).source(SEAMS).remedy(remedy))
}

/// What has that trait and a seam lies over, or runs through, where the plan has both.
fn planned_under<'a>(context: &Context<'a>, counter: &Counter<'_>, seam: &Seam, what: Trait) -> Option<&'a Thing<'a>> {
    let (run, from_left) = (seam.on.get()?, *seam.from_left.get()?);
    let plan = context.site.plan(counter.room)?;
    let row = plan.rows.iter().find(|row| row.of.name() == run)?;
    let is_here = |thing: &&Thing<'_>| plan.row_of(thing).is_some_and(|own| std::ptr::eq(own, row));
    plan.with(what).filter(is_here).find(|thing| thing.along.0 < from_left && from_left < thing.along.1)
}

/// Nobody says who has the last word on seams and veins.
fn undecided(counter: &Counter<'_>, top: &Top) -> Option<Remark> {
    let kept = top.slab.get().filter(|slab| slab.direction.get() == Some(&Direction::Kept));
    let at = top.seams.first().map(|seam| seam.at.span);
    let at = at.or_else(|| top.pieces.get(1).map(|piece| piece.name.span));
    let at = at.or_else(|| kept?.direction.span())?;
    if !top.layout.is_absent() || counter.is_brittle() == Some(false) {
        return None;
    }
    let message = phrase!("nobody says who decides where seams and veins of `{}` come", counter.name());
    let finding = counter.finding(Severity::Query, at, message).source(PRACTICE);
    Some(finding.remedy(
        "have a drawing with seams and the run of the veins signed for itself, or tell the client that the fabricator decides, and write `layout`",
    ))
}

#[cfg(test)]
mod tests;
