//! One named finish from several makers.

use crate::units::Wrote;
use std::collections::{BTreeMap, BTreeSet};

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::vocabulary::{Kind, Trade};

declare! {
    /// One metal finish comes from several makers, and nobody has seen it side by side
    ///
    /// ## What it checks
    /// The metals named in finishes and colours, or in the name of an option, of one room (brass or gold, bronze,
    /// chrome, copper, nickel, pewter) by maker. A query names the makers until each of the things has a
    /// `sample seen`. And tap, shower set and bars of one metal that are made to look two ways, polished and
    /// brushed.
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
    living: "living.finish.family",
    judges: [Tap, ShowerSet, Bar, Hook, GrabBar, Pull, Knob, DoorHandle, Pendant, WallLight, CeilingLight, MirrorCabinet, Mirror, LitMirror, ShowerGlass, Sink],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// Metals that makers give one name and several colours, each with its family: gold is brass by another name.
const METALS: [(&str, &str); 23] = [
    ("latón", "brass"),
    ("laton", "brass"),
    ("oro", "brass"),
    ("dorado", "brass"),
    ("messing", "brass"),
    ("laiton", "brass"),
    ("bronce", "bronze"),
    ("cromo", "chrome"),
    ("cromado", "chrome"),
    ("cromada", "chrome"),
    ("chrom", "chrome"),
    ("krom", "chrome"),
    ("cobre", "copper"),
    ("kupfer", "copper"),
    ("níquel", "nickel"),
    ("brass", "brass"),
    ("gold", "brass"),
    ("golden", "brass"),
    ("bronze", "bronze"),
    ("chrome", "chrome"),
    ("copper", "copper"),
    ("nickel", "nickel"),
    ("pewter", "pewter"),
];

/// How one metal is made to look, so that one maker's two are two colours.
const TREATMENTS: [&str; 19] = [
    POLISHED,
    "pulido",
    "poliert",
    "brushed",
    "cepillado",
    "cepillada",
    "gebürstet",
    "satin",
    "satinado",
    "mate",
    "matte",
    "matt",
    "aged",
    "antique",
    "envejecido",
    "unlacquered",
    "hammered",
    "champagne",
    "black",
];

/// What is plated and polished: of chrome the one that looks alike whoever makes it.
const POLISHED: &str = "polished";
const AS_POLISHED: [&str; 3] = [POLISHED, "pulido", "poliert"];

/// Whether all of them are plain or polished chrome, which is plated the same everywhere (common practice).
fn is_plain_chrome(family: &str, things: &[Finished<'_>]) -> bool {
    let is_treated = |finish: &str| {
        words(finish).any(|word| TREATMENTS.contains(&word.as_str()) && !AS_POLISHED.contains(&word.as_str()))
    };
    family == CHROME && !things.iter().any(|(_, _, finish)| is_treated(finish))
}

const CHROME: &str = "chrome";

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let mut of_family: BTreeMap<&str, Vec<Finished<'_>>> = BTreeMap::new();
        for finished in finished(room) {
            for (_, family) in metals(&finished.2) {
                of_family.entry(family).or_default().push(finished.clone());
            }
        }
        let told = of_family.iter().filter(|(family, things)| !is_plain_chrome(family, things));
        findings.extend(told.filter_map(|(_, things)| judge(room, things).or_else(|| siblings(room, things))));
    }
}

/// The words of a phrase that are among those.
fn words(phrase: &str) -> impl Iterator<Item = String> {
    let words = phrase.split(|letter: char| !letter.is_alphabetic()).map(str::to_lowercase);
    words.collect::<Vec<_>>().into_iter()
}

/// The metals that a finish names, each once, with its family.
fn metals(finish: &str) -> BTreeSet<(&'static str, &'static str)> {
    words(finish).filter_map(|word| METALS.into_iter().find(|(metal, _)| *metal == word)).collect()
}

/// One metal of several makers.
fn judge(room: &Room, things: &[Finished<'_>]) -> Option<Remark> {
    let mut makers: BTreeMap<&str, Vec<&Selection>> = BTreeMap::new();
    for (selection, option, _) in things {
        let of = makers.entry(option.maker.text()).or_default();
        if !of.iter().any(|other| other.span == selection.span) {
            of.push(selection);
        }
    }
    if makers.len() < 2 || all_seen(things) {
        return None;
    }
    let told = |(maker, of): (&&str, &Vec<&Selection>)| {
        let names: Vec<Phrase> = of.iter().map(|selection| Phrase::name(&selection.name.value)).collect();
        phrase!("{maker} ({})", Wrote(maker), Phrase::joined(names, ", "))
    };
    let told: Vec<Phrase> = makers.iter().map(told).collect();
    let families = things.iter().flat_map(|(_, _, finish)| metals(finish)).map(|(metal, _)| metal);
    let of_family: BTreeSet<&str> = families.collect();
    let named: Vec<_> = of_family.into_iter().filter(|metal| shares_a_family(metal, things)).map(Wrote).collect();
    let comes = if named.len() == 1 { "comes" } else { "come" };
    let message = phrase!(
        "{} {comes} from {} makers and will differ: {}",
        Phrase::series(named),
        comes,
        makers.len(),
        Phrase::joined(told, ", ")
    );
    Some(remark(room, things, message)?.remedy(
        "lay samples of all side by side in the room's own light, and write `sample seen: …` at each selection",
    ))
}

/// Whether a metal is of the family that all of them have.
fn shares_a_family(metal: &str, things: &[Finished<'_>]) -> bool {
    let family = METALS.into_iter().find(|(own, _)| *own == metal).map(|(_, family)| family);
    let has = |finish: &str| metals(finish).into_iter().any(|(_, of)| Some(of) == family);
    things.iter().all(|(_, _, finish)| has(finish))
}

/// Tap, shower set and bars of one room, of one metal that is made to look two ways.
fn siblings(room: &Room, things: &[Finished<'_>]) -> Option<Remark> {
    let wet = |thing: &&Finished<'_>| thing.0.is_any(&[Kind::Tap, Kind::TubFiller, Kind::ShowerSet, Kind::Bar]);
    let fittings: Vec<Finished<'_>> = things.iter().filter(wet).cloned().collect();
    let looks = |finish: &str| -> BTreeSet<String> {
        words(finish).filter(|word| TREATMENTS.contains(&word.as_str())).collect()
    };
    let (first, others) = fittings.split_first()?;
    let own = looks(&first.2);
    let other = others.iter().find(|other| !looks(&other.2).is_empty() && !own.is_empty() && looks(&other.2) != own)?;
    let message =
        phrase!("`{}` is `{}`, and `{}` beside it `{}`", first.0.name.value, first.2, other.0.name.value, other.2);
    let finding = remark(room, &[first.clone(), other.clone()], message).filter(|_| !all_seen(&fittings))?;
    Some(finding.remedy(
        "take one finish for both, or lay both samples side by side and write `sample seen: …` at each selection",
    ))
}

/// A day that can't be read is told by itself: somebody saw it.
fn all_seen(things: &[Finished<'_>]) -> bool {
    things.iter().all(|(_, option, _)| !option.sample_seen.is_absent())
}

/// Points at the first finish, and at that of the next thing.
fn remark(room: &Room, things: &[Finished<'_>], message: Phrase) -> Option<Remark> {
    let at = |(selection, option, _): &Finished<'_>| {
        option.finish.span().or_else(|| option.colour.span()).unwrap_or(selection.span)
    };
    let mut places = things.iter().map(at);
    let finding = Remark::query(places.next()?, message).room(&room.folder);
    let finding = finding.source("common practice");
    Some(match places.next() {
        Some(other) => finding.also(other, "the other finish"),
        None => finding,
    })
}

/// A thing, its maker's option, and what is said of its finish and colour.
type Finished<'a> = (&'a Selection, &'a ProductOption, String);

/// Each thing with a maker and a finish, wherever it is written, tile aside.
fn finished(room: &Room) -> Vec<Finished<'_>> {
    let metallic = |selection: &&Selection| selection.kind.get().is_some_and(|kind| kind.trade() != Trade::Tile);
    let options = room
        .selections
        .iter()
        .filter(metallic)
        .flat_map(|selection| selection.standing().iter().map(move |option| (selection, option)));
    let of = |option: &ProductOption| {
        let said = [option.finish.text(), option.colour.text()].into_iter().filter(|said| !said.is_empty());
        let said = said.collect::<Vec<_>>().join(", ");
        // An option is often called by its finish.
        let named = if metals(&said).is_empty() { option.name.text() } else { "" };
        let said = if named.is_empty() { said } else { named.to_string() };
        (option.maker.get().is_some() && !said.is_empty()).then_some(said)
    };
    options.filter_map(|(selection, option)| Some((selection, option, of(option)?))).collect()
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

    /// Source: trade reports F-101.
    #[test]
    fn a_finish_counts_wherever_it_is_written_and_gold_is_brass() {
        let pair = |tap: &str, set: &str| {
            Trial::of("finish/family")
                .selection("selection: Tap\nkind: tap", &format!("maker: Wellam\n{tap}"))
                .selection("selection: Shower\nkind: shower set", &format!("maker: Oren\n{set}"))
        };
        pair("colour: brushed brass", "finish: brass").finds_one().weighs("query");
        pair("finish: satin brass", "finish: brushed gold")
            .finds("brass and gold come from 2 makers and will differ: Oren (`Shower`), Wellam (`Tap`)");
        pair("name: Brushed nickel", "finish: nickel").finds_one();
        pair("finish: chrome", "finish: brass").stays_silent();
    }

    #[test]
    fn tap_and_shower_set_of_one_maker_look_alike() {
        let pair = |tap: &str, set: &str| {
            Trial::of("finish/family")
                .selection("selection: Tap\nkind: tap", &format!("maker: Wellam\nfinish: {tap}"))
                .selection("selection: Shower\nkind: shower set", &format!("maker: Wellam\nfinish: {set}"))
        };
        pair("polished nickel", "brushed nickel")
            .finds("`Tap` is `polished nickel`, and `Shower` beside it `brushed nickel`")
            .weighs("query");
        pair("polished nickel", "nickel, polished").stays_silent();
        pair("nickel", "brushed nickel").stays_silent();
        // A metal is one in another language too.
        pair("latón cepillado", "latón pulido").finds_one();
    }

    /// Source: common practice: bright chrome is one plating, whoever makes it.
    #[test]
    fn chrome_of_several_makers_looks_alike_unless_it_is_brushed() {
        let pair = |one: &str, other: &str| {
            Trial::of("finish/family")
                .selection("selection: Tap\nkind: tap", &format!("maker: Wellam\nfinish: {one}"))
                .selection("selection: Shower\nkind: shower set", &format!("maker: Oren\nfinish: {other}"))
        };
        pair("chrome", "polished chrome").stays_silent();
        pair("cromo", "cromado").stays_silent();
        pair("brushed chrome", "chrome").finds_one();
        pair("latón", "brass").finds_one();
    }
}
