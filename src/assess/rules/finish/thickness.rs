//! Tiles of different thickness edge to edge.

use crate::vocabulary::EdgeTrim;
use std::collections::HashSet;

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{DetailName, Names, ProductOption, Room, Selection, System};
use crate::finding::{Phrase, Remark, phrase};
use crate::source::Span;
use crate::units::Length;

declare! {
    /// Surfaces that meet differ in thickness, and no trim is chosen for the step
    ///
    /// ## What it checks
    /// The thickness of surfaces that the book says lie edge to edge (`meets`), each with the bed that it is `laid` on,
    /// where the book gives one: more than {1/16"} apart wants a trim on one of them.
    /// And the size of the profile that the words of an `edge trim` name, against the
    /// tile's own thickness: a thicker tile stands proud of it.
    ///
    /// ## Why it matters
    /// The raw edge of the thicker one shows, and catches cloth and toes. The trim is three weeks
    /// away, and the setter stands in the room.
    ///
    /// ## Remedy
    /// Choose a trim or an edge piece for the thicker one, or have the bed of the thinner one built up.
    ///
    /// ## Example
    /// ```yaml
    /// selection: Accent tile
    /// thickness: 3/8"
    /// meets: [Wall tile]     # 1/8" thick
    /// edge trim: none
    /// ```
    ///
    /// ## Source
    /// {1/16"}: common practice.
    "finish/thickness", Query,
    due: WithThing, tells: [],
    judges: surfaces,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// A step up to which grout makes up for the difference: 1/16" (common practice).
const STEP: Length = Length::from_sixty_fourths(4);

/// So much a tile may stand proud of its profile (common practice: no more than a grain of grout hides).
const PROUD: Length = Length::from_sixty_fourths(2);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    let units = context.book.project.units;
    findings.extend(context.book.selections().filter_map(|(room, selection)| profile(room, selection, units)));
    let names = Names::of(context.book);
    // What meets what, by where it is written.
    let met = |(room, one): (&Room, &Selection)| -> Vec<(Span, Span)> {
        let others = one.meets.iter().filter_map(|name| names.selection(room, name));
        others.map(|(_, other)| (one.span, other.span)).collect()
    };
    let meets: HashSet<(Span, Span)> = context.book.selections().flat_map(met).collect();
    for (room, selection) in context.book.selections() {
        for name in &selection.meets {
            let Some((_, other)) = names.selection(room, name) else { continue };
            // Where both name each other, the first of them tells.
            let told = other.span < selection.span && meets.contains(&(other.span, selection.span));
            if !told {
                findings.extend(judge(room, selection, other, units));
            }
        }
    }
}

/// A profile that takes a thinner tile than the one whose edge it ends.
fn profile(room: &Room, selection: &Selection, units: System) -> Option<Remark> {
    let option = selection.settled()?;
    let (trim, at) = option.understood::<EdgeTrim>()?;
    let takes = trim.profile?;
    let (thick, there) = option.length(DetailName::Thickness).filter(|(thick, _)| *thick > takes + PROUD)?;
    let message = phrase!(
        "`{}` is {} thick, and the profile at its edge is {}: the tile stands {} proud of it",
        selection.name.value,
        say(thick, units),
        say(takes, units),
        say(thick - takes, units)
    );
    let finding = Remark::query(at, message).room(&room.folder).selection(&selection.name);
    let remedy = "order the profile of the tile's thickness, its bed not counted";
    Some(finding.also(there, "the thickness").source("common practice").remedy(remedy))
}

fn judge(room: &Room, one: &Selection, other: &Selection, units: System) -> Option<Remark> {
    let (first, second) = (one.settled()?, other.settled()?);
    let (own, at) = first.length(DetailName::Thickness)?;
    let (theirs, there) = second.length(DetailName::Thickness)?;
    let (own_bed, their_bed) = (bed(first), bed(second));
    let step = Length::abs((own + own_bed).checked_add((theirs + their_bed).times(-1))?);
    if step <= STEP || trimmed(first) || trimmed(second) {
        return None;
    }
    let on = |bed: Length| match bed > Length::ZERO {
        true => phrase!(" on a bed of {}", say(bed, units)),
        false => Phrase::default(),
    };
    let message = phrase!(
        "`{}` is {} thick{} and meets `{}` of {}{}: a step of {} with no trim",
        one.name.value,
        say(own, units),
        on(own_bed),
        other.name.value,
        say(theirs, units),
        on(their_bed),
        say(step, units)
    );
    let finding = Remark::query(at, message).room(&room.folder).selection(&one.name);
    let remedy = "choose an edge piece or a trim for the thicker one, or have the bed of the thinner one built up";
    Some(finding.also(there, "the other thickness").source("common practice").remedy(remedy))
}

/// What it lies on, where the book says so.
fn bed(option: &ProductOption) -> Length {
    option.laid.bed.get().copied().unwrap_or_default()
}

fn trimmed(option: &ProductOption) -> bool {
    option.understood::<EdgeTrim>().is_some_and(|(trim, _)| !trim.is_none)
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn tiles(thickness: &str, trim: &str, back: &str) -> Trial {
        let accent = format!("selection: Accent\nkind: tile\nthickness: {thickness}\nmeets: [Field]");
        Trial::of("finish/thickness")
            .selection(&accent, &format!("edge trim: {trim}"))
            .selection(&format!("selection: Field\nkind: tile\nthickness: 1/8\"\n{back}"), "edge trim: none")
    }

    /// Source: trade reports F-95: a quarter of an inch, and the accent's edge raw.
    #[test]
    fn a_step_without_trim_is_told_once() {
        let message = "`Accent` is 3/8\" (9.5 mm) thick and meets `Field` of 1/8\" (3.2 mm): a step of 1/4\" (6.4 mm) with no trim";
        tiles("3/8\"", "none", "").finds(message).weighs("query");
        tiles("3/8\"", "none", "meets: [Accent]").finds_one();
        for none in ["none; it runs wall to wall", "none, it ends at the casing", "'-'", "no trim"] {
            tiles("3/8\"", none, "").finds_one();
        }
        tiles("3/8\"", "bullnose pieces", "").stays_silent();
        tiles("3/16\"", "none", "").stays_silent();
    }

    /// Source: arithmetic: 3/8" on a bed of 1/8" is 1/4" lower than 3/8" on 3/8", and level with 1/8" on 3/8".
    #[test]
    fn what_they_lie_on_counts() {
        let floors = |own: &str, theirs: &str| {
            Trial::of("finish/thickness")
                .selection("selection: Accent\nkind: tile\nmeets: [Field]", &format!("edge trim: none\n{own}"))
                .selection("selection: Field\nkind: tile", &format!("edge trim: none\n{theirs}"))
        };
        let on = |thick: &str, bed: &str| format!("thickness: {thick}\nlaid: {{bed: {bed}}}");
        floors(&on("3/8\"", "1/8\""), &on("1/8\"", "3/8\"")).stays_silent();
        floors(&on("3/8\"", "1/8\""), &on("3/8\"", "3/8\""))
            .finds("`Accent` is 3/8\" (9.5 mm) thick on a bed of 1/8\" (3.2 mm) and meets `Field` of 3/8\" (9.5 mm) on a bed of 3/8\" (9.5 mm): a step of 1/4\" (6.4 mm) with no trim")
            .weighs("query");
        // The thinner one is built up, as the remedy says.
        floors(&on("3/8\"", "3/8\""), "thickness: 3/4\"").stays_silent();
        floors(&on("3/8\"", "1/8\""), "thickness: 3/4\"").finds_one();
    }

    #[test]
    fn a_profile_is_as_high_as_its_tile_is_thick() {
        let tile = |thickness: &str, trim: &str| {
            Trial::of("finish/thickness").selection(
                &format!("selection: Wall tile\nkind: tile\nthickness: {thickness}"),
                &format!("edge trim: {trim}"),
            )
        };
        tile("9 mm", "6 mm brass profile")
            .finds("`Wall tile` is ≈ 3/8\" (9 mm) thick, and the profile at its edge is ≈ 1/4\" (6 mm): the tile stands ≈ 1/8\" (3 mm) proud of it")
            .weighs("query");
        tile("9 mm", "brass profile, 10 mm").stays_silent();
        tile("9 mm", "brass profile, 9 mm").stays_silent();
        // What is no profile, or of more than one size.
        tile("9 mm", "bullnose pieces of 6 mm").stays_silent();
        tile("9 mm", "6 mm or 10 mm profile").stays_silent();
    }
}
