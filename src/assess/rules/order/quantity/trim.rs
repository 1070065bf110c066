//! Trim and edge pieces against the edges that need them.

use crate::assess::{Context, about, say};
use crate::book::{DetailName, ProductOption, Room, Selection};
use crate::finding::{Severity, phrase};
use crate::site::counter_edges;
use crate::site::counters::covers;
use crate::site::plan::Plan;
use crate::source::Span;
use crate::units::{Counted, Length, Quantity};
use crate::vocabulary::supply::InWords;
use crate::vocabulary::{EdgeTrim, Kind, words_of};

use super::Findings;

/// Words of what ends an edge.
const TRIM: [&str; 9] = ["edge", "edges", "edging", "trim", "strip", "profile", "bullnose", "banding", "band"];

/// What is ordered by length to end edges, and where that is written.
struct Ordered {
    length: Length,
    at: Span,
}

pub fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let needs = match selection.kind.get() {
            Some(Kind::Tile) => option.laid.open_edges.get().copied(),
            Some(Kind::Counter) => seen_edges(context.site.plan(room), room, option),
            _ => None,
        };
        let needs = needs.filter(|needs| *needs > Length::ZERO);
        let ordered = needs.and_then(|_| ordered(room, selection, option));
        findings.extend(needs.zip(ordered).and_then(|(needs, ordered)| {
            let say = |length| say(length, context.book.project.units);
            let message = phrase!(
                "{} of edge pieces are ordered for `{}`, and its open edges are {} long",
                say(ordered.length),
                selection.name.value,
                say(needs)
            );
            let remark = || about(room, selection, option, Severity::Stop, ordered.at, message);
            (ordered.length < needs).then(|| {
                remark().remedy("order edge pieces for the whole length, and some over for cuts, from one lot")
            })
        }));
    }
}

/// The edges that are seen of what a counter lies on: fronts, and ends in the open.
fn seen_edges(plan: Option<&Plan<'_>>, room: &Room, option: &ProductOption) -> Option<Length> {
    let lies_on = option.top.get().map_or(&[][..], |top| &top.lies_on);
    let runs: Vec<_> = room.runs.iter().filter(|run| covers(room, option, &run.name)).collect();
    // Of an island, and of what nobody says where it lies, not all is known.
    let is_known = if lies_on.is_empty() { room.islands.is_empty() } else { runs.len() == lies_on.len() };
    if runs.is_empty() || !is_known {
        return None;
    }
    runs.into_iter().map(|run| Some(counter_edges(plan, room, run)?.length())).sum()
}

/// Whether edge pieces are ordered by length for a thing.
pub fn is_ordered(room: &Room, selection: &Selection, option: &ProductOption) -> bool {
    ordered(room, selection, option).is_some()
}

/// What is ordered with it, said in its own words, or ordered by itself for it.
fn ordered(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Ordered> {
    let with = option.accessories.iter().filter(|with| is_trim(&with.name.value));
    let with = with.filter_map(|with| Some((with.quantity.spanned()?, in_its_name(&with.name.value))));
    let alone = by_itself(room, selection).into_iter().flat_map(Selection::standing);
    let alone = alone.filter_map(|trim| Some((trim.quantity.spanned()?, piece(trim))));
    let lines = with
        .chain(alone)
        .filter_map(|(quantity, each)| Some(Ordered { length: length_of(&quantity.value, each)?, at: quantity.span }));
    let said = option.understood::<EdgeTrim>();
    let said = said.and_then(|(trim, at)| Some(Ordered { length: trim.length?, at }));
    lines.chain(said).reduce(|one, other| Ordered { length: one.length + other.length, at: one.at })
}

/// The one length that the name of an accessory gives of each piece: `metal edge profile, 8 ft`.
fn in_its_name(name: &str) -> Option<Length> {
    EdgeTrim::of_words(name).length
}

fn is_trim(phrase: &str) -> bool {
    let words = phrase.split(|letter: char| !letter.is_alphanumeric()).map(str::to_lowercase);
    words.into_iter().any(|word| TRIM.contains(&word.as_str()))
}

/// A selection that is trim, and lies edge to edge with this one, by either's `meets`.
fn by_itself<'a>(room: &'a Room, selection: &Selection) -> Option<&'a Selection> {
    let meets = |one: &Selection, other: &Selection| one.meets.iter().any(|name| name.value == other.name.value);
    let trims = || room.selections.iter().filter(|trim| is_trim(&trim.name.value));
    let named = || trims().find(|trim| trim.is(Kind::Trim) && is_called_after(&trim.name.value, &selection.name.value));
    trims().find(|trim| meets(trim, selection) || meets(selection, trim)).or_else(named)
}

/// Whether a name holds all words of another: `Wall tile edge trim` of `Wall tile`.
fn is_called_after(name: &str, other: &str) -> bool {
    let own = words_of(name);
    words_of(other).iter().all(|word| own.contains(word))
}

/// How long one piece of it is.
pub fn piece(option: &ProductOption) -> Option<Length> {
    let face = option.detail(DetailName::FaceSize).and_then(|face| match &face.value {
        crate::book::DetailValue::Sides(sides) => sides.sides().iter().max().copied(),
        _ => None,
    });
    option.size.length.get().copied().or(face)
}

/// A quantity as a length: a length itself, or so many pieces of one.
pub fn length_of(quantity: &Quantity, each: Option<Length>) -> Option<Length> {
    Length::parse(&quantity.to_string()).ok().or_else(|| {
        let pieces = matches!(quantity.counted(), Counted::Unsaid | Counted::Pieces | Counted::Lengths);
        let count = i64::try_from(quantity.whole().filter(|_| pieces)?).ok()?;
        Some(each?.times(count))
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn paper_says_which_walls_it_covers() {
        let paper = |walls: &str| {
            Trial::of("order/quantity").selection(
                &format!("selection: Fern\nkind: wallpaper{walls}"),
                "quantity: 3 rolls\nsold: {roll: 27\" x 27'}",
            )
        };
        paper("")
            .finds("3 rolls of `Fern` are ordered, and nobody says which walls it covers")
            .weighs("query")
            .remedies("add the walls: `papered: {along: …, height: …}`");
        paper("\npapered: {along: 10', height: 8'}").stays_silent();
    }

    /// Source: arithmetic: two pieces of 8' are 16' of 22'; three are 24'.
    #[test]
    fn pieces_and_bags_count_by_what_their_names_say() {
        let tile = |with: &str| {
            Trial::of("order/quantity").selection(
                "selection: Wall tile\nkind: tile",
                &format!("edge trim: metal profile\nlaid: {{open edges: 22'}}\n{with}"),
            )
        };
        for name in ["\"metal edge profile, 8 ft\"", "8' edge trim", "\"edge profile 8 ft\""] {
            tile(&format!("accessories: [{{name: {name}, quantity: 2}}]")).finds_one().weighs("stop").says("192\"");
            tile(&format!("accessories: [{{name: {name}, quantity: 3}}]")).stays_silent();
        }
        let trim = |quantity: &str| {
            tile("").selection("selection: Wall tile edge trim\nkind: trim", &format!("quantity: {quantity}"))
        };
        trim("16 ft").finds_one().weighs("stop");
        trim("24 ft").stays_silent();
        let grout = |with: &str| {
            Trial::of("order/quantity").selection("selection: Floor\nkind: tile", &format!(
                "pattern: straight\nface size: 2\" x 2\"\nthickness: 3/8\"\njoint: 1/8\"\nlaid: {{area: 80 sq ft}}\nquantity: 90 sq ft\naccessories: [{with}]"
            ))
        };
        grout("{name: \"grout, 5 lb bag\", quantity: 1}").finds_one().says("of grout are ordered");
        grout("{name: \"grout, 5 lb bag\", quantity: 20}").stays_silent();
        grout("{name: grout, quantity: 1}").stays_silent();
    }
}
