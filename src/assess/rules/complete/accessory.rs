//! A kit that the sheet requires and nobody orders.

mod frame;
mod valve;

use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{Accessory, ProductOption, Room, Selection};
use crate::finding::{Phrase, Severity, phrase};
use crate::source::Span;
use crate::units::{Quantity, Wrote};
use crate::vocabulary::Mention;

declare! {
    /// A kit, trim or filler that the sheet requires is not ordered
    ///
    /// ## What it checks
    /// Each line under `requires` against what is under `accessories`, and against the other selections of
    /// the room: by name, by model, or by both. A kit of that name, but of another model than the one
    /// required, is told as that. And the model that `valve` names, against the valve or the body that is required or
    /// ordered with it.
    ///
    /// ## Why it matters
    /// A pair of tall units without its joining kit, a range on the wrong gas without its
    /// conversion kit: the opening is made for the sum with the kit, and the remedy is invasive.
    ///
    /// ## Remedy
    /// Order it: add it under `accessories`, with its price, or as a selection of its own.
    ///
    /// ## Example
    /// ```yaml
    /// requires: [joining kit]
    /// accessories: [{name: joining kit, price: 140.00}]
    /// ```
    ///
    /// ## Source
    /// The maker's sheet: joining and conversion kits are sold apart.
    "complete/accessory", Stop,
    due: WithThing, tells: [Installer],
    judges: goods,
    sources: ["the maker's sheet"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        for required in &option.requires {
            let name = &required.value;
            let (severity, at, message) = match ordered(room, selection, option, name) {
                Ordered::Yes => continue,
                Ordered::WhereChosen(other) => (
                    Severity::Query,
                    required.span,
                    phrase!(
                        "the sheet requires `{name}`, and `{}` orders it only if that option is chosen",
                        name,
                        other
                    ),
                ),
                Ordered::OtherModel(ordered, at) => (
                    Severity::Stop,
                    at,
                    phrase!(
                        "the sheet requires `{name}`, and what is ordered is of another model: `{ordered}`",
                        name,
                        ordered
                    ),
                ),
                Ordered::No => {
                    (Severity::Stop, required.span, phrase!("the sheet requires `{name}`, and nothing orders it", name))
                }
            };
            let finding = about(room, selection, option, severity, at, message).also(required.span, "required");
            findings.push(finding.remedy(remedy(name)));
        }
        findings.extend(valve::judge(room, selection, option));
        findings.extend(frame::judge(room, selection, option));
    }
}

/// How to mend it: what is done on site is no accessory; what has a model is bought, whatever it is called.
fn remedy(required: &str) -> &'static str {
    if Mention::OnSite.is_in(required) && !has_a_number_of_its_own(required) {
        return "say what the sheet asks of the site where it is read: power, gas, water and drain under `fit: {needs: …}`, \
                clear space as `fit: {air: …}` or `fit: {door: {wall clearance: …}}`; a filler stands in its run";
    }
    "order it: add its name or model under `accessories`, or make it a selection of its own in this room"
}

/// Whether one of its words is a maker's number: letters before figures, as in `RV-1`, and no size.
fn has_a_number_of_its_own(required: &str) -> bool {
    let is_number = |word: &str| {
        let begins = word.starts_with(|first: char| first.is_ascii_uppercase());
        begins && word.chars().any(|one| one.is_ascii_digit())
    };
    required.split_whitespace().any(is_number)
}

/// Whether something orders what a sheet requires.
enum Ordered<'a> {
    Yes,
    /// One of the options of that selection does, and another can still be chosen.
    WhereChosen(&'a str),
    /// A thing of that name is ordered, of a model that the sheet does not name.
    OtherModel(Phrase, Span),
    No,
}

/// Looks for it among what goes with the thing, then among the room's other selections and what goes with those; by
/// name or by model.
fn ordered<'a>(room: &'a Room, selection: &Selection, option: &ProductOption, required: &str) -> Ordered<'a> {
    let mut otherwise = Ordered::No;
    match with_it(option, required) {
        Ordered::No => {}
        Ordered::Yes => return Ordered::Yes,
        other => otherwise = other,
    }
    for other in room.selections.iter().filter(|other| !std::ptr::eq(*other, selection)) {
        let words = |option: &ProductOption| {
            let of_option = [option.name.text(), option.maker.text(), option.model.text()].join(" ");
            let own = meets(&[&other.name.value, &of_option], required);
            if matches!(with_it(option, required), Ordered::Yes) { Meets::Yes } else { own }
        };
        let standing = other.standing();
        let met: Vec<Meets> = standing.iter().map(words).collect();
        let count = met.iter().filter(|met| **met == Meets::Yes).count();
        let by_name = standing.is_empty() && meets(&[&other.name.value], required) == Meets::Yes;
        if by_name || (count > 0 && count == standing.len()) {
            return Ordered::Yes;
        }
        if count > 0 {
            otherwise = Ordered::WhereChosen(&other.name.value);
        } else if met.contains(&Meets::ButForTheModel) && matches!(otherwise, Ordered::No) {
            let model = other.settled().map_or("", |option| option.model.text());
            otherwise = Ordered::OtherModel(titled(&other.name.value, model), other.name.span);
        }
    }
    otherwise
}

/// Whether one of what is ordered with an option is that.
fn with_it<'a>(option: &ProductOption, required: &str) -> Ordered<'a> {
    let mut otherwise = Ordered::No;
    let is_ordered = |with: &&Accessory| with.quantity.get().and_then(Quantity::whole) != Some(0);
    for with in option.accessories.iter().filter(is_ordered) {
        match meets(&[&with.name.value, with.model.text()], required) {
            Meets::Yes => return Ordered::Yes,
            Meets::ButForTheModel => {
                let at = with.model.span().unwrap_or(with.name.span);
                otherwise = Ordered::OtherModel(titled(&with.name.value, with.model.text()), at);
            }
            Meets::No => {}
        }
    }
    otherwise
}

fn titled(name: &str, model: &str) -> Phrase {
    if model.is_empty() { Phrase::plain(name) } else { phrase!("{name} {model}", Wrote(name), Wrote(model)) }
}

/// How what is ordered meets what is required.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Meets {
    Yes,
    /// Its name is that, and its model another one.
    ButForTheModel,
    No,
}

/// The words of a name and of a model against those required, whatever their case and whatever stands
/// between them: `JK 2` and `jk-2`. Words with a figure are a model.
fn meets(ordered: &[&str], required: &str) -> Meets {
    if ordered.iter().any(|words| !words.is_empty() && squeezed(words) == squeezed(required)) {
        return Meets::Yes;
    }
    let all: Vec<String> = ordered.iter().flat_map(|words| words.split_whitespace()).map(squeezed).collect();
    let squeezed_all = all.concat();
    let (models, names): (Vec<&str>, Vec<&str>) =
        required.split_whitespace().filter(|word| !squeezed(word).is_empty()).partition(|word| is_model(word));
    // `UP-Grundkörper` is a `Grundkörper`.
    let parts: Vec<String> = ordered.iter().flat_map(|words| words.split([' ', '-', '/'])).map(squeezed).collect();
    let has_names = names.iter().map(|name| squeezed(name)).all(|name| all.contains(&name) || parts.contains(&name));
    let model: String = models.iter().map(|model| squeezed(model)).collect();
    // As whole words: `SK-2` is not found in `SK-27`.
    let has_model = model.is_empty() || all.contains(&model) || ordered.iter().any(|words| squeezed(words) == model);
    let has_model = has_model || (models.len() > 1 && squeezed_all.ends_with(&model));
    // What has the very model is it, whatever it is called.
    let is_by_model = || !model.is_empty() && ordered.iter().any(|words| squeezed(words) == model);
    match (has_names, has_model, names.is_empty()) {
        (true, true, _) => Meets::Yes,
        (false, true, _) if is_by_model() => Meets::Yes,
        // Without a model of its own, nobody knows which it is.
        (true, false, false) => Meets::ButForTheModel,
        _ => Meets::No,
    }
}

fn is_model(word: &str) -> bool {
    word.chars().any(|letter| letter.is_ascii_digit())
}

fn squeezed(words: &str) -> String {
    words.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports F-13, F-47.
    #[test]
    fn a_kit_that_the_sheet_requires_must_be_ordered() {
        let trial = |with: &str| {
            Trial::of("complete/accessory")
                .selection("selection: Pair\nkind: refrigerator", &format!("requires: [joining kit]\n{with}"))
        };
        trial("").finds("the sheet requires `joining kit`, and nothing orders it");
        trial("accessories: [{name: anti-tip bracket}]").finds_one();
        trial("accessories: [{name: Joining kit, price: 140}]").stays_silent();
        trial("accessories: [{name: Joining kit, price: 140, quantity: 0}]").finds_one();
    }

    #[test]
    fn what_is_done_on_site_is_no_accessory() {
        for required in ["dedicated 20 A circuit", "filler of 2 1/2\\\" at the hinge side"] {
            Trial::of("complete/accessory")
                .selection("selection: Pair\nkind: refrigerator", &format!("requires: [\"{required}\"]"))
                .finds_one()
                .remedies("say what the sheet asks of the site where it is read: power, gas, water and drain under `fit: {needs: …}`, clear space as `fit: {air: …}` or `fit: {door: {wall clearance: …}}`; a filler stands in its run");
        }
    }

    /// A body and a strip with numbers are bought: told to write them as a service, nobody would order them.
    #[test]
    fn what_has_a_maker_s_number_is_ordered_though_its_like_is_made_on_site() {
        for required in ["rough-in valve RV-1", "filler strip FS-27"] {
            Trial::of("complete/accessory")
                .selection("selection: Pair\nkind: refrigerator", &format!("requires: [{required}]"))
                .finds_one()
                .remedies("order it: add its name or model under `accessories`, or make it a selection of its own in this room");
        }
    }

    /// Source: trade reports F-13: what matters is that somebody orders it, not under which heading.
    #[test]
    fn a_kit_is_ordered_by_its_model_and_as_a_selection_of_its_own_too() {
        let requires = |what: &str, with: &str| {
            Trial::of("complete/accessory")
                .selection("selection: Pair\nkind: refrigerator", &format!("requires: [{what}]\n{with}"))
        };
        requires("JK-2", "accessories: [{name: joining kit, model: jk 2}]").stays_silent();
        requires("joining kit", "").selection("selection: Joining kit\nkind: shelf", "").stays_silent();
        requires("JK-2", "").selection("selection: Kit for the pair\nkind: shelf", "model: JK-2").stays_silent();
        requires("JK-2", "").selection("selection: Kit for the pair\nkind: shelf", "model: JK-4").finds_one();
        let open = "options: [{id: slim, model: JK-2}, {id: wide, model: JK-4}]";
        requires("JK-2", "")
            .selection("selection: Kit for the pair\nkind: shelf", open)
            .finds("the sheet requires `JK-2`, and `Kit for the pair` orders it only if that option is chosen")
            .weighs("query");
    }

    /// Source: trade reports F-13: what matters is that somebody orders it; a plate comes with the frame in the wall.
    #[test]
    fn what_is_ordered_with_another_thing_of_the_room_is_ordered() {
        let toilet = |frame: &str| {
            Trial::of("complete/accessory")
                .selection("selection: Toilet\nkind: toilet", "requires: [Betätigungsplatte]")
                .selection("selection: Frame\nkind: cistern", frame)
        };
        let plate = "accessories: [{name: WC-Betätigungsplatte, model: BP-2}]";
        toilet(plate).stays_silent();
        toilet("").finds("the sheet requires `Betätigungsplatte`, and nothing orders it");
        toilet(&plate.replace("model: BP-2", "model: BP-2, quantity: 0")).finds_one();
        let one_of_two = format!("options:\n  - {{id: low, {plate}}}\n  - {{id: high}}");
        toilet(&one_of_two).finds_one().weighs("query");
    }

    /// Source: trade reports F-13: a kit for another pair is no kit for this one.
    #[test]
    fn a_kit_of_another_model_than_the_sheet_requires_is_told() {
        let pair = |requires: &str, with: &str| {
            Trial::of("complete/accessory")
                .selection("selection: Pair\nkind: washer", &format!("requires: [{requires}]\naccessories: [{with}]"))
        };
        let told =
            "the sheet requires `stacking kit SK-27`, and what is ordered is of another model: `stacking kit SK-30`";
        pair("stacking kit SK-27", "{name: stacking kit, model: SK-30}")
            .finds(told)
            .weighs("stop")
            .points_at(&["rooms/kitchen/selection-0.yaml:4:43"]);
        pair("stacking kit SK-27", "{name: Stacking kit SK-30}").finds_one();
        pair("stacking kit SK-27", "{name: stacking kit}").finds_one();
        pair("stacking kit SK-27", "{name: stacking kit, model: sk 27}").stays_silent();
        pair("stacking kit SK-27", "{name: Stacking kit SK-27}").stays_silent();
        pair("SK-27", "{name: stacking kit, model: SK-27}").stays_silent();
        pair("SK-2", "{name: stacking kit, model: SK-27}").finds_one();
        pair("stacking kit", "{name: stacking kit, model: SK-27}").stays_silent();
        pair("rough-in valve RV-7", "{name: pressure balance body, model: RV-7}").stays_silent();
        pair("rough-in valve RV-7", "{name: pressure balance body, model: RV-70}").finds_one();
        pair("LP kit", "{name: conversion kit}").finds("the sheet requires `LP kit`, and nothing orders it");
        pair("LP conversion kit", "{name: 'conversion kit, LP'}").stays_silent();
        pair("stacking kit SK-27", "").selection("selection: Stacking kit\nkind: shelf", "model: SK-27").stays_silent();
        pair("stacking kit SK-27", "")
            .selection("selection: Stacking kit\nkind: shelf", "model: SK-30")
            .finds(told.replace("stacking kit SK-30", "Stacking kit SK-30").as_str());
    }
}
