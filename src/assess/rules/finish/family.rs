//! One named finish from several makers.

use std::collections::{BTreeMap, BTreeSet};

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::vocabulary::Trade;

declare! {
    /// One metal finish comes from several makers, and nobody has seen it side by side
    ///
    /// ## What it checks
    /// The metals named in the finishes of one room (brass, bronze, chrome, copper, nickel, pewter,
    /// gold) by maker. A query names the makers until each of the things has a `sample seen`.
    ///
    /// ## Why it matters
    /// Brass is not a colour. Three makers' brass are three colours, and on one wall they look like
    /// a mistake. Exchanging them costs thousands and weeks.
    ///
    /// ## Remedy
    /// Lay samples of all of them side by side in the room's own light; write the day after
    /// `sample seen` at each, or take all from one maker.
    ///
    /// ## Example
    /// ```yaml
    /// - {selection: Tap, kind: tap, maker: Wellam, finish: brushed brass}
    /// - {selection: Pulls, kind: pull, maker: Ferrowthorn, finish: brushed brass}
    /// ```
    ///
    /// ## Source
    /// Trade practice: one finish, one maker's code, a sample in hand.
    "finish/family", Query,
    due: WithThing, tells: [Client],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// Metals that makers give one name and several colours.
const METALS: [&str; 7] = ["brass", "bronze", "chrome", "copper", "nickel", "pewter", "gold"];

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let mut of_metal: BTreeMap<&str, Vec<Finished<'_>>> = BTreeMap::new();
        for finished in finished(room) {
            for metal in metals(finished.1.finish.text()) {
                of_metal.entry(metal).or_default().push(finished);
            }
        }
        findings.extend(of_metal.iter().filter_map(|(metal, things)| judge(room, metal, things)));
    }
}

/// The metals that a finish names, each once.
fn metals(finish: &str) -> BTreeSet<&'static str> {
    let words = finish.split(|letter: char| !letter.is_alphabetic());
    words.filter_map(|word| METALS.into_iter().find(|metal| metal.eq_ignore_ascii_case(word))).collect()
}

fn judge(room: &Room, metal: &str, things: &[Finished<'_>]) -> Option<Remark> {
    let mut makers: BTreeMap<&str, Vec<&Selection>> = BTreeMap::new();
    for (selection, option) in things {
        let of = makers.entry(option.maker.text()).or_default();
        if !of.iter().any(|other| other.span == selection.span) {
            of.push(selection);
        }
    }
    let all_seen = things.iter().all(|(_, option)| option.sample_seen.get().is_some());
    if makers.len() < 2 || all_seen {
        return None;
    }
    let told = |(maker, of): (&&str, &Vec<&Selection>)| {
        let names: Vec<Phrase> = of.iter().map(|selection| Phrase::name(&selection.name.value)).collect();
        phrase!("{maker} ({})", maker, Phrase::joined(names, ", "))
    };
    let told: Vec<Phrase> = makers.iter().map(told).collect();
    let message =
        phrase!("{metal} comes from {} makers and will differ: {}", metal, makers.len(), Phrase::joined(told, ", "));
    let (first, option) = things.first()?;
    let at = option.finish.span().unwrap_or(first.span);
    let finding = Remark::query(at, message).room(&room.folder).source("common practice");
    Some(finding.remedy(
        "lay samples of all side by side in the room's own light, and write `sample seen: …` at each selection",
    ))
}

/// A thing, and its maker's option.
type Finished<'a> = (&'a Selection, &'a ProductOption);

/// Each thing with a maker and a finish, tile aside.
fn finished(room: &Room) -> Vec<Finished<'_>> {
    let metallic = |selection: &&Selection| selection.kind.get().is_some_and(|kind| kind.trade() != Trade::Tile);
    let options = room
        .selections
        .iter()
        .filter(metallic)
        .flat_map(|selection| selection.standing().iter().map(move |option| (selection, option)));
    options.filter(|(_, option)| option.maker.get().is_some() && option.finish.get().is_some()).collect()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn bath(maker: &str, seen: &str) -> Trial {
        let option = |maker: &str| format!("maker: {maker}\nfinish: brushed brass\n{seen}");
        Trial::of("finish/family")
            .selection("selection: Tap\nkind: tap", &option("Wellam"))
            .selection("selection: Pulls\nkind: pull", &option(maker))
            .selection("selection: Sconce\nkind: wall light", &option(maker))
    }

    /// Source: trade reports F-101: three brass finishes that do not match.
    #[test]
    fn brass_of_two_makers_is_told_once_until_samples_are_seen() {
        bath("Ferrowthorn", "")
            .finds("brass comes from 2 makers and will differ: Ferrowthorn (`Pulls`, `Sconce`), Wellam (`Tap`)")
            .weighs("query");
        bath("Ferrowthorn", "sample seen: 2027-01-09").stays_silent();
        bath("Wellam", "").stays_silent();
    }

    #[test]
    fn an_option_that_was_not_chosen_does_not_count() {
        let trial = |chosen: &str| {
            Trial::of("finish/family").selection("selection: Tap\nkind: tap", "maker: Wellam\nfinish: brass").selection(
                &format!("selection: Pulls\nkind: pull\noptions: [{{id: a, maker: Oren, finish: brass}}, {{id: b, maker: Oren, finish: black}}]\n{chosen}"),
                "",
            )
        };
        trial("chosen: b").stays_silent();
        trial("").finds_one();
    }
}
