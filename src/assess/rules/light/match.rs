//! Lights of one room that differ in colour.

use std::collections::BTreeMap;

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{DetailName, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::source::Span;

declare! {
    /// Lights in one room differ in colour temperature
    ///
    /// ## What it checks
    /// `kelvin` of all lights that are chosen in a room.
    ///
    /// ## Why it matters
    /// White tile is blue under one lamp and yellow under the next. The eye takes it for dirt.
    ///
    /// ## Remedy
    /// One colour temperature for each room, 2700 to 3000 K as a rule; or lamps that can be set.
    ///
    /// ## Example
    /// ```yaml
    /// - {selection: Pendants, kind: pendant, kelvin: 2700}
    /// - {selection: Under the cabinets, kind: ceiling light, kelvin: 4000}
    /// ```
    ///
    /// ## Source
    /// Common practice: one colour temperature a room.
    "light/match", Query,
    due: RoughInClosed, tells: [Client],
    living: "living.light.match",
    judges: lights,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.book.rooms.iter().filter_map(judge));
}

fn judge(room: &Room) -> Option<Remark> {
    let mut by_kelvin: BTreeMap<u32, Vec<(&Selection, Span)>> = BTreeMap::new();
    for selection in &room.selections {
        let kelvin = selection.settled().and_then(|option| option.count(DetailName::Kelvin));
        if let Some((kelvin, at)) = kelvin {
            by_kelvin.entry(kelvin).or_default().push((selection, at));
        }
    }
    if by_kelvin.len() < 2 {
        return None;
    }
    let told = |(kelvin, of): (&u32, &Vec<(&Selection, Span)>)| {
        let names: Vec<Phrase> = of.iter().map(|(selection, _)| phrase!("`{}`", selection.name.value)).collect();
        phrase!("{} {kelvin} K", Phrase::joined(names, ", "), kelvin)
    };
    let all: Vec<Phrase> = by_kelvin.iter().map(told).collect();
    let message = phrase!("lights of one room differ in colour: {}", Phrase::joined(all, "; "));
    // The odd one out is pointed at: the colour that fewest lights have.
    let (odd, at) = by_kelvin.values().min_by_key(|of| of.len()).and_then(|of| of.first())?;
    let finding = Remark::query(*at, message).room(&room.folder).selection(&odd.name);
    Some(
        finding
            .source("common practice")
            .remedy("choose one colour temperature for the room, or lamps that can be set"),
    )
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports section 7: 2700 to 3000 or 4000 K, one a room.
    #[test]
    fn one_colour_a_room() {
        let kitchen = |kelvin: u32| {
            Trial::of("light/match")
                .selection("selection: Pendants\nkind: pendant", "kelvin: 2700")
                .selection("selection: Sconces\nkind: wall light", "kelvin: 2700")
                .selection("selection: Spots\nkind: ceiling light", &format!("kelvin: {kelvin}"))
        };
        kitchen(4000)
            .finds("lights of one room differ in colour: `Pendants`, `Sconces` 2700 K; `Spots` 4000 K")
            .weighs("query");
        kitchen(2700).stays_silent();
    }
}
