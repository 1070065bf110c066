//! Keys that one writes at first sight, and where what they tell is written.

use super::{Kind, Record};
use crate::finding::{Phrase, phrase};

/// Each with the ways to what it tells, by keys parted with a point; the first that a record and a kind know counts.
const NATURAL: &[(&[&str], &[&str])] = &[
    (
        &["holds", "load", "max load", "load rating", "load capacity", "weight capacity", "rated load", "carries"],
        &["capacity"],
    ),
    (&["backsplash", "upstand", "splashback", "upstands"], &["top.splash", "splash", "counter.splash"]),
    (&["splash"], &["top.splash", "counter.splash"]),
    (&["apron"], &["apron height"]),
    (&["rated", "rating", "location rating", "IP rating", "ip", "IP"], &["damp rating"]),
    (&["outlet"], &["outlet height", "drain"]),
    (&["waste"], &["drain", "laid.waste"]),
    (&["output", "wattage", "watts", "electric", "circuit", "power"], &["fit.needs.power", "needs.power"]),
    (&["gas", "gas input"], &["fit.needs.gas", "needs.gas"]),
    (&["water", "water supply"], &["fit.needs.water", "needs.water"]),
    (&["duct", "vented", "venting", "flue"], &["fit.needs.duct", "needs.duct"]),
    (&["cutout", "cut-out", "niche size"], &["fit.opening", "opening"]),
    (&["clearance", "clearances", "ventilation"], &["fit.air", "air", "heat"]),
    (&["tolerance", "clearance in all"], &["play", "fit.play", "laid.varies by"]),
    (&["sides"], &["left"]),
    (&["over cooking", "above cooking"], &["heat.over cooking", "fit.heat.over cooking"]),
    (&["repeat", "pattern repeat", "match"], &["pattern"]),
    (&["weight"], &["fit.weight"]),
    (&["from left", "from"], &["at"]),
    (&["cabinets", "parts"], &["wall side.parts"]),
];

/// What is told of a thing and is no field of its own: its words stand in its description.
const IN_WORDS: &[&str] = &[
    "noise",
    "sound",
    "noise level",
    "energy class",
    "warranty",
    "overflow",
    "roll width",
    "features",
    "spec",
    "specs",
];

/// Where what such a key tells is written, in a record and of a kind of thing.
pub(super) fn where_it_is_written(key: &str, record: &Record, kind: Option<Kind>) -> Option<Phrase> {
    let plain = key.trim().to_lowercase().replace(['_', '-'], " ");
    let is = |word: &&str| word.to_lowercase().replace('-', " ") == plain;
    let knows = |path: &&str| {
        let first = path.split('.').next().unwrap_or(path);
        let fits = |kind: Kind| kind.needs().chain(kind.may_have()).any(|own| own.split('.').next() == Some(first));
        leads_somewhere(path, record) && kind.is_none_or(fits)
    };
    let ways = NATURAL.iter().filter(|(words, _)| words.iter().any(is)).flat_map(|(_, ways)| *ways);
    if let Some(way) = ways.into_iter().find(|way| knows(way)) {
        if plain == "sides" {
            return Some(phrase!("write what is asked at the left and at the right, each by itself"));
        }
        let Some((group, _)) = way.split_once('.') else {
            return Some(phrase!("did you mean `{way}`?", Phrase::plain(way)));
        };
        let written = in_braces(way);
        return Some(phrase!("write it under `{group}`: `{written}`", Phrase::plain(group), written));
    }
    let in_words = IN_WORDS.iter().any(is) && record.field("description").is_some();
    in_words.then(|| phrase!("write it in `description`, which the client reads, or in `note`, for those who build"))
}

/// Whether keys lead to a field of a record, through its groups.
fn leads_somewhere(path: &str, record: &Record) -> bool {
    let (first, rest) = path.split_once('.').map_or((path, None), |(first, rest)| (first, Some(rest)));
    let Some(field) = record.field(first) else { return false };
    rest.is_none_or(|rest| field.shape.records().iter().any(|inner| leads_somewhere(rest, inner)))
}

/// `top: {splash: …}`
fn in_braces(path: &str) -> String {
    path.split('.')
        .rev()
        .fold(None::<String>, |inside, key| {
            Some(inside.map_or_else(|| format!("{key}: …"), |inside| format!("{key}: {{{inside}}}")))
        })
        .unwrap_or_default()
}
