//! What nobody says of services that a sheet is exact about, or that a heated thing must have.

use super::{blocking, zones};
use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::rules::Findings;
use crate::book::{DetailName, Needs, Opening, ProductOption, Room, Selection, Services};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::outlets::height_of_the_drain;
use crate::site::vanity::vanity_of;
use crate::site::{Placement, connected_at, counter_height};
use crate::source::Span;
use crate::units::{Length, Wrote};
use crate::vocabulary::supply::{Backing, InWords, Worded, is_none};
use crate::vocabulary::{Hazard, Kind, Mention, Slot};

/// Kinds of which some are heated, and most are not.
const MAY_BE_HEATED: [Kind; 6] = [Kind::Bar, Kind::Floor, Kind::Tile, Kind::Mirror, Kind::MirrorCabinet, Kind::Bathtub];

/// Kinds that do nothing unless something heats them.
const HEATERS: [Kind; 2] = [Kind::TowelWarmer, Kind::FloorHeating];

/// Everything that is to be asked of services.
pub fn ask(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.connected() {
        findings.extend(super::words::ask(&fitted));
        findings.extend(pattern(context, &fitted));
        findings.extend(blocking::ask(context, &fitted));
        findings.extend(zones::ask(&fitted));
        findings.extend(height_of_drain(&fitted));
    }
    for (room, selection, option) in context.site.options() {
        findings.extend(no_place(room, selection, option).or_else(|| heated(room, selection, option)));
    }
}

fn with_power(finding: Remark) -> Remark {
    Remark { caution: Some(Hazard::Power), ..finding }
}

/// The plug is known, and the receptacle is not.
fn pattern(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let of_the_country = context.book.project.country.get().and_then(|country| country.receptacle());
    let needs = fitted.option.fit.get()?.needs.power.spanned()?;
    let there = fitted.opening.service.power.spanned()?;
    let plug = needs.is.pattern.as_ref()?;
    if there.is.tells_of(plug, of_the_country) || there.is.hardwired || !there.is_understood() {
        return None;
    }
    let message = phrase!(
        "`{}` has a {plug} plug, and nobody says which receptacle is at the opening `{}`",
        fitted.selection.name.value,
        Wrote(&plug.to_string()),
        fitted.opening.name.value
    );
    let finding = fitted.finding(Severity::Query, there.span, message).also(needs.span, "needs this");
    Some(with_power(finding.remedy("look at the receptacle and add its pattern to the opening's `power`")))
}

/// A drain is seldom higher than this (common practice: 16 in to 24 in).
const USUAL_DRAIN: Length = Length::from_inches(24);

/// A bowl drains into a pipe of the wall, and nobody says how high that is.
fn height_of_drain(fitted: &Placement<'_>) -> Option<Remark> {
    let (bowl, deep) = fitted.option.length(DetailName::BowlDepth).filter(|_| fitted.selection.is(Kind::Sink))?;
    // A shallow bowl comes out above any usual drain, unless a disposer hangs under it.
    let top = counter_height(fitted.room, fitted.opening).value();
    let is_shallow = top.is_none_or(|top| top - bowl >= USUAL_DRAIN);
    let is_its = |place: &String| *place == fitted.opening.name.value;
    let has_disposer =
        fitted.room.selections.iter().any(|one| one.is(Kind::Disposer) && one.place.get().is_none_or(is_its));
    if is_shallow && !has_disposer {
        return None;
    }
    let there = fitted.opening.service.drain.spanned()?;
    let is_a_pipe = there.is.pipe.size.is_some() && !is_none(&there.words);
    if !is_a_pipe || there.is.pipe.limits.is_some() || height_of_the_drain(fitted.opening).is_some() {
        return None;
    }
    let message = phrase!(
        "nobody says how high the drain at the opening `{}` is, below which the bowl of `{}` must not come out",
        fitted.opening.name.value,
        fitted.selection.name.value
    );
    let finding = fitted.finding(Severity::Query, there.span, message).also(deep, "how deep the bowl is");
    let remedy = "measure its centre from the finished floor and add it to the opening's `service points`, or to the words \
                  of its `drain`: `… AFF`";
    Some(Remark { caution: Some(Hazard::Water), ..finding.remedy(remedy) })
}

/// It needs something that is in the wall, and has no opening that could tell what is there.
fn no_place(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let needs = &option.fit.get()?.needs;
    let takes_opening = selection.kind.get().is_some_and(|kind| kind.takes_opening());
    // What a basin or a tray drains into, an opening of another thing may tell.
    let elsewhere = vanity_of(room, selection).is_some() || connected_at(room, selection).is_some();
    if takes_opening || selection.place.get().is_some() || elsewhere || is_set_out(room, selection) {
        return None;
    }
    let asked = connections(selection, needs);
    let first = asked.first()?;
    let (hazard, at) = (first.hazard, first.at);
    let told = asked.iter().map(|one| phrase!("{key} ({})", one.key, Wrote(one.words)));
    let told = Phrase::series(told.collect::<Vec<_>>());
    let message = phrase!("`{}` needs {told}, and nobody says what is there", selection.name.value, told);
    let keys = Phrase::joined(asked.iter().map(|one| phrase!("{key}: …", one.key)), ", ");
    let finding = about(room, selection, option, Severity::Query, at, message);
    let kind = selection.kind.get().map_or("", |kind| kind.name());
    let new = phrase!(
        "say what is there where it is connected: under the room's `openings`, without sizes, `{{takes: {kind}, service: {{{keys}}}}}`; and name that as its `place`",
        kind,
        keys
    );
    let remedy = match there_already((room, selection), &asked) {
        Some(places) => phrase!("where it is told at an opening already, name that: {places}; else {new}", places, new),
        None => new,
    };
    Some(Remark { caution: Some(hazard), ..finding.remedy(remedy) })
}

/// So many openings at most are named where a thing may be connected.
const MOST_NAMED: usize = 3;

/// What a thing is connected or fixed to.
struct Connection<'a> {
    key: &'static str,
    hazard: Hazard,
    words: &'a str,
    at: Span,
    /// Whether an opening tells of it.
    is_told: fn(&Services) -> bool,
}

/// Everything that a sheet wants in the wall, but for what it wants none of.
fn connections<'a>(selection: &Selection, needs: &'a Needs) -> Vec<Connection<'a>> {
    let one = |key, hazard, asked: Option<(&'a str, Span)>, is_told| {
        let (words, at) = asked.filter(|(words, _)| !is_none(words))?;
        Some(Connection { key, hazard, words, at, is_told })
    };
    let (power, duct, gas) = (needs.power.spanned(), needs.duct.spanned(), needs.gas.spanned());
    let each = [
        one("power", Hazard::Power, power.map(|is| (is.value.words.as_str(), is.span)), |there| is_there(&there.power)),
        one("duct", Hazard::Air, duct.map(|is| (is.value.words.as_str(), is.span)), |there| is_there(&there.duct)),
        one("gas", Hazard::Gas, gas.map(|is| (is.value.words.as_str(), is.span)), |there| is_there(&there.gas)),
        one(
            "blocking",
            blocking::without(selection),
            needs.blocking.spanned().map(|is| (is.value.as_str(), is.span)),
            |there| there.blocking.get().is_some_and(|there| there.is.is == Some(Backing::There)),
        ),
    ];
    each.into_iter().flatten().collect()
}

/// Whether the words at an opening are understood, and say that something is there.
fn is_there<T: InWords + Default + PartialEq>(there: &Slot<Worded<T>>) -> bool {
    there.get().is_some_and(|there| there.is_understood() && !is_none(&there.words))
}

/// The openings that tell of all of them, each as its `place` would be written: what a disposer plugs into is told at the
/// sink, and what bars are fixed to at the toilet.
fn there_already((room, selection): (&Room, &Selection), asked: &[Connection<'_>]) -> Option<Phrase> {
    // A tap has no place in a niche that was made for a refrigerator, whatever comes out there.
    let may_be_its = |opening: &&Opening| {
        let both = selection.kind.get().zip(opening.takes.get());
        both.is_none_or(|(kind, takes)| kind == takes || kind.hangs_from(*takes))
    };
    let has = |opening: &&Opening| asked.iter().all(|one| (one.is_told)(&opening.service));
    let told = room.openings.iter().filter(may_be_its).filter(has).take(MOST_NAMED);
    let places: Vec<Phrase> = told.map(|one| phrase!("`place: {}`", one.name.value)).collect();
    (!places.is_empty()).then(|| Phrase::joined(places, ", "))
}

/// Whether the plan sets it out at an opening, which tells what is there.
fn is_set_out(room: &Room, selection: &Selection) -> bool {
    let name = &selection.name.value;
    room.fixtures.iter().any(|fixture| fixture.selection.get() == Some(name) && !fixture.opening.is_absent())
}

/// It may be heated, by its words, and nobody says with what.
fn heated(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Remark> {
    let fit = option.fit.get();
    let is_said = fit.is_some_and(|fit| !fit.needs.power.is_absent() || !fit.needs.water.is_absent());
    let is_a_heater = selection.is_any(&HEATERS);
    if is_said || !(is_a_heater || selection.is_any(&MAY_BE_HEATED)) {
        return None;
    }
    let words = [selection.name.value.as_str(), option.name.text(), option.description.text(), option.model.text()];
    let with = option.accessories.iter().map(|with| with.name.value.as_str());
    let told = is_a_heater || Mention::Heated.is_in_any(words.into_iter().chain(with));
    let message = phrase!("nobody says what heats `{}`", selection.name.value);
    told.then(|| {
        let finding = about(room, selection, option, Severity::Query, selection.name.span, message);
        with_power(
            finding.remedy("add what its sheet asks for: `fit: {needs: {power: …}}`, or `water` where that heats it"),
        )
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn dryer(opening: &str, option: &str) -> Trial {
        Trial::of("complete/site")
            .opening("laundry", &format!("{{takes: dryer, {opening}}}"))
            .selection("selection: Dryer\nkind: dryer\nplace: laundry", option)
    }

    /// Source: trade reports F-33: 10-30 and 14-30 look alike in a sentence and not at the wall.
    #[test]
    fn a_receptacle_whose_pattern_nobody_wrote_is_asked_for() {
        let sheet = "fit: {needs: {power: 240 V 30 A 14-30}}";
        dryer("service: {power: 240 V 30 A}", sheet)
            .finds("`Dryer` has a 14-30 plug, and nobody says which receptacle is at the opening `laundry`")
            .weighs("query")
            .cautions()
            .points_at(&["rooms/kitchen/room.yaml:3:44"]);
        dryer("service: {power: 240 V 30 A 10-30}", sheet).stays_silent();
        dryer("service: {power: 240 V 30 A hardwired}", sheet).stays_silent();
        dryer("service: {power: 240 V 30 A}", "fit: {needs: {power: 240 V 30 A}}").stays_silent();
        // Whatever plain receptacle there is on such a circuit, it takes the usual plug.
        let gas = "fit: {needs: {power: 120 V 15 A 5-15}}";
        dryer("service: {power: '120 V 20 A dedicated, GFCI, duplex receptacle'}", gas).stays_silent();
        dryer("service: {power: '120 V 20 A'}", gas).finds_one();
        // And a plain socket is the one that its country has.
        let socket = |country: &str| {
            dryer("service: {power: 'Steckdose 230 V 16 A'}", "fit: {needs: {power: 230 V 10 A Schuko}}")
                .book(&format!("country: {country}"))
        };
        socket("DE").stays_silent();
        for other in ["GB", "CH"] {
            socket(other).finds_one().cautions();
        }
    }

    #[test]
    fn a_zone_that_the_sheet_gives_wants_a_point() {
        let sheet = "fit: {zones: {power: {height: at most 6\"}, duct: {height: at most 8\"}}}";
        dryer("width: 27\"", sheet)
            .finds("the sheet of `Dryer` says where power and duct must come out, and nobody says where at the opening `laundry`")
            .weighs("query");
        dryer("service points: {power: {height: 5\"}}", sheet).finds(
            "the sheet of `Dryer` says where duct must come out, and nobody says where at the opening `laundry`",
        );
        dryer("service points: {power: {height: 5\"}, duct: {height: 5\"}}", sheet).stays_silent();
    }

    /// Of a fan its duct, of a bar what it is fixed to.
    #[test]
    fn what_a_thing_without_an_opening_needs_is_asked_for_once() {
        let of = |kind: &str, needs: &str, more: &str| {
            Trial::of("complete/site")
                .selection(&format!("selection: It\nkind: {kind}\n{more}"), &format!("fit: {{needs: {{{needs}}}}}"))
        };
        of("bath fan", "duct: '4\" round'", "")
            .finds("`It` needs duct (4\" round), and nobody says what is there")
            .weighs("query")
            .cautions()
            .remedies("say what is there where it is connected: under the room's `openings`, without sizes, `{takes: fan, service: {duct: …}}`; and name that as its `place`");
        of("bath fan", "power: 120 V 15 A, duct: '4\" round'", "")
            .finds("`It` needs power (120 V 15 A) and duct (4\" round), and nobody says what is there");
        of("grab bar", "blocking: '2x10 at 34\"'", "").finds_one().cautions();
        of("grab bar", "blocking: none", "").stays_silent();
        // What it needs is told where something else goes.
        let new = |takes: &str, key: &str| {
            format!(
                "say what is there where it is connected: under the room's `openings`, without sizes, `{{takes: {takes}, service: {{{key}: …}}}}`; and name that as its `place`"
            )
        };
        let at_the_toilet = "{takes: toilet, service: {blocking: '2x10, 30\" to 39\" AFF, for the bars'}}";
        of("grab bar", "blocking: '2x10 at 34\"'", "").opening("toilet", at_the_toilet).run().remedies(&format!(
            "where it is told at an opening already, name that: `place: toilet`; else {}",
            new("grab bar", "blocking")
        ));
        of("grab bar", "blocking: '2x10 at 34\"'", "place: toilet").opening("toilet", at_the_toilet).stays_silent();
        of("disposer", "power: 120 V 15 A", "")
            .opening("sink", "{takes: sink, service: {power: 120 V 20 A 5-20}}")
            .run()
            .remedies(&format!(
                "where it is told at an opening already, name that: `place: sink`; else {}",
                new("disposer", "power")
            ));
        let nothing = "{takes: toilet, service: {blocking: none}}";
        for elsewhere in [at_the_toilet, nothing] {
            of("bath fan", "duct: '4\" round'", "").opening("toilet", elsewhere).run().remedies(&new("fan", "duct"));
        }
        of("bath fan", "duct: '4\" round'", "place: fan")
            .opening("fan", "{takes: fan, service: {duct: '4\" round'}}")
            .stays_silent();
    }

    /// A tap that boils water and a disposer are connected where their bowl is, whether or not they say so.
    #[test]
    fn what_stands_at_a_bowl_is_connected_where_the_bowl_is() {
        for kind in ["tap", "disposer"] {
            let at = |place: &str, service: &str| {
                Trial::of("complete/site")
                    .opening("sink", &format!("{{takes: sink, service: {{{service}}}}}"))
                    .opening("fridge", "{takes: refrigerator, service: {power: 230 V 10 A}}")
                    .selection("selection: Sink\nkind: sink\nplace: sink", "accessories: [{name: mixer tap}]")
                    .selection(
                        &format!("selection: It\nkind: {kind}"),
                        &format!("{place}\nfit: {{needs: {{power: '230 V, 10 A'}}}}"),
                    )
            };
            at("", "power: 230 V socket for the tank").stays_silent();
            at("place: sink", "power: 230 V socket for the tank").stays_silent();
            let two = at("", "").selection("selection: Other sink\nkind: sink", "accessories: [{name: mixer tap}]");
            // No refrigerator's niche is offered for it.
            two.finds("`It` needs power (230 V, 10 A), and nobody says what is there")
                .remedies(&format!(
                "say what is there where it is connected: under the room's `openings`, without sizes, `{{takes: {kind}, service: {{power: …}}}}`; and name that as its `place`"
            ));
        }
    }

    #[test]
    fn what_is_heated_is_connected_to_something() {
        let bar = |name: &str, option: &str| {
            Trial::of("complete/site").selection(&format!("selection: {name}\nkind: bar"), option)
        };
        bar("Heated towel bar", "model: TB-2").finds("nobody says what heats `Heated towel bar`").cautions();
        bar("Towel bar", "description: electric, with a timer").finds_one();
        bar("Towel bar", "model: TB-2").stays_silent();
        bar("Towel bar", "fit: {needs: {power: 120 V 15 A hardwired}}")
            .finds("`Towel bar` needs power (120 V 15 A hardwired), and nobody says what is there");
        bar("Towel bar", "place: rail\nfit: {needs: {power: 120 V 15 A}}")
            .opening("rail", "{takes: bar, service: {power: 120 V 15 A}}")
            .stays_silent();
        for kind in ["heated towel rail", "radiator", "underfloor heating"] {
            let warm =
                |option: &str| Trial::of("complete/site").selection(&format!("selection: It\nkind: {kind}"), option);
            warm("model: R-1").finds("nobody says what heats `It`").cautions();
            warm("fit: {needs: {water: 'heating flow and return, 15 mm'}}").stays_silent();
        }
        bar("Toallero eléctrico", "model: TB-2").finds_one();
        Trial::of("complete/site")
            .selection("selection: Bath floor\nkind: tile", "accessories: [{name: heating mat}]")
            .finds_one();
    }

    /// Source: trade reports F-59 (a bowl below its drain).
    #[test]
    fn how_high_a_drain_is_is_asked_where_a_bowl_s_depth_is_known() {
        let sink = |opening: &str| {
            Trial::of("complete/site")
                .opening(
                    "sink",
                    &format!("{{takes: sink, width: 31\", cabinet: {{inside width: 34 1/2\"}}, {opening}}}"),
                )
                .selection(
                    "selection: Sink\nkind: sink\nplace: sink",
                    "bowl depth: 9\"\nmount: undermount\naccessories: [{name: mixer tap}]",
                )
                .selection("selection: Disposer\nkind: disposer", "")
        };
        sink("service: {drain: '1 1/2\"'}")
            .finds("nobody says how high the drain at the opening `sink` is, below which the bowl of `Sink` must not come out")
            .weighs("query");
        sink("service: {drain: '1 1/2\", 20\" AFF'}").stays_silent();
        sink("service: {drain: '40 mm, a 450 mm del suelo'}").stays_silent();
        sink("service: {drain: '1 1/2\"'}, service points: {drain: {height: 20\"}}").stays_silent();
    }
}
