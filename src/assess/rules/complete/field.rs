//! A field without which a thing can't be ordered or fitted.

use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::vocabulary::OPTION;
use crate::book::{Ceiling, DetailName, ProductOption, Room, Selection};
use crate::finding::{Phrase, Severity, phrase};
use crate::site::outlets::{OutletGoes, height_of_the_drain, height_of_the_outlet, outlet_of};
use crate::site::taps;
use crate::vocabulary::{Field, FieldType, Kind, Mention, Words};

declare! {
    /// Fields are missing that the thing can't be ordered or fitted without
    ///
    /// ## What it checks
    /// Every field that the kind needs, for every option that still counts: finish, supplier, lead
    /// time, price, quantity and photos for all, and the kind's own (`bookmatch explain KIND` lists
    /// them). One finding names all that an option lacks. A field that is written wrongly is not
    /// missing: it has a finding of its own.
    ///
    /// ## Why it matters
    /// The commonest root cause is not arithmetic: a needed number was never asked. A refrigerator
    /// ordered without its hinge side, its height to the hinge or its depth with the handle does
    /// not open where it stands.
    ///
    /// ## Remedy
    /// Ask the maker's sheet, and write the fields that are named.
    ///
    /// ## Example
    /// ```yaml
    /// selection: Refrigerator
    /// kind: refrigerator     # its three depths, hinge side and height to hinge are missing
    /// ```
    ///
    /// ## Source
    /// Common practice: completeness by class of product is the strongest check.
    "complete/field", Stop,
    due: WithThing, tells: [],
    judges: each,
    sources: ["trade practice: completeness by class of product"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let Some(kind) = selection.kind.get() else { continue };
        let missing = missing(context, (room, selection), (*kind, option));
        if missing.is_empty() {
            continue;
        }
        let named: Vec<Phrase> = missing.iter().map(|path| phrase!("`{}`", path.replace('.', ": "))).collect();
        let message = phrase!("the {} lacks {}", kind.name(), Phrase::joined(named, ", "));
        let wanted: Vec<Phrase> = missing.iter().filter_map(|path| how(path)).collect();
        let at = if selection.options.len() > 1 { option.id.span } else { selection.span };
        let finding = about(room, selection, option, Severity::Stop, at, message);
        findings.push(finding.remedy(phrase!("add {}", Phrase::joined(wanted, "; "))));
    }
}

/// What is asked of a tap that stands in a counter or a rim, and makes no sense of one that comes out of the wall or
/// stands on the floor.
const OF_A_DECK: [DetailName; 3] = [DetailName::Holes, DetailName::Spread, DetailName::RearTravel];

/// What the kind needs and the option lacks. Without any figures of the maker's, all of them are
/// missing together, which `complete/cut-sheet` tells.
fn missing(
    context: &Context<'_>,
    (room, selection): (&Room, &Selection),
    (kind, option): (Kind, &ProductOption),
) -> Vec<&'static str> {
    let no_sheet = kind.wants_sheet() && option.fit.is_absent();
    let through_nothing = matches!(kind, Kind::Tap | Kind::TubFiller) && taps::stands_free(selection, option);
    let of_a_deck = |path: &&str| OF_A_DECK.iter().any(|name| name.word() == *path);
    let own = |path: &&str| *path != DetailName::RoughIn.word() && !(through_nothing && of_a_deck(path));
    // A panel that comes from the maker has the maker's size.
    let comes_with = option.accessories.iter().any(|with| Mention::Panel.is_in(&with.name.value));
    let is_asked = |path: &&str| !(no_sheet && path.starts_with("fit") || comes_with && path.starts_with("panel."));
    let is_elsewhere = context.book.project.where_it_is().is_some_and(|country| !country.is_north_american());
    let otherwise = |path: &&str| is_said_otherwise(path, (room, selection), (kind, option), is_elsewhere);
    let missing = option.unwritten.iter().copied().filter(own).filter(is_asked).filter(|path| !otherwise(path));
    missing.chain((kind == Kind::Toilet).then(|| place_of_outlet(room, selection, option)).flatten()).collect()
}

/// Whether another field answers the question of one, or the room leaves nothing to ask.
fn is_said_otherwise(
    path: &str,
    (room, selection): (&Room, &Selection),
    (kind, option): (Kind, &ProductOption),
    is_elsewhere: bool,
) -> bool {
    let hole = || option.fit.get().map(|fit| &fit.opening);
    match path.split_once('.').unwrap_or(("", path)) {
        // Sheets of other countries have one height, that of the niche it stands in counted with its hinges.
        ("size", "height to hinge") => is_elsewhere && !option.size.height.is_absent(),
        // Their niche is the inside of the cabinet.
        ("fit", "cabinet") => {
            is_elsewhere && hole().is_some_and(|hole| !hole.width.is_absent() && !hole.height.is_absent())
        }
        ("", "slope rating") => matches!(room.ceiling.get(), Some(Ceiling::Level(_))),
        // Between the holes of one that stands in one hole nothing is to be measured.
        ("", "spread") => taps::holes(option).is_some_and(|(holes, _)| holes == 1),
        // Nobody sees a frame in the wall, nor what heats a floor.
        ("", "finish") => kind == Kind::FloorHeating || kind == Kind::Cistern && !is_a_plate(selection, option),
        // Of paint the finish is the sheen.
        ("", "sheen") => kind == Kind::Paint && Mention::Sheen.is_in(option.finish.text()),
        _ => false,
    }
}

/// Whether what belongs to a tank in the wall is the plate that is pressed.
fn is_a_plate(selection: &Selection, option: &ProductOption) -> bool {
    let words = [selection.name.value.as_str(), option.name.text(), option.description.text()];
    Mention::Plate.is_in_any(words)
}

/// Where a toilet's outlet is, where that is missing: a distance from the wall for one that goes into the floor, a height
/// for one that goes out through the wall. Where its own words do not tell, the pipe that is there does.
fn place_of_outlet(room: &Room, selection: &Selection, option: &ProductOption) -> Option<&'static str> {
    let pipe_in_the_wall = || {
        let opening = room.opening(selection.place.get()?)?;
        height_of_the_drain(opening)
    };
    let through_the_wall = match outlet_of(selection, option) {
        Some(goes) => goes == OutletGoes::ThroughTheWall,
        None => pipe_in_the_wall().is_some(),
    };
    let asked = if through_the_wall { DetailName::OutletHeight } else { DetailName::RoughIn };
    let in_words = through_the_wall && height_of_the_outlet(option).is_some();
    (option.lacks(asked) && !in_words).then_some(asked.word())
}

/// What to add, as it stands in the record: its keys, with `…` for what only the maker or the designer knows.
fn how(path: &str) -> Option<Phrase> {
    let field = field(path)?;
    let inner = path.split('.').rev().fold(None::<String>, |inside, key| {
        Some(inside.map_or_else(|| format!("{key}: …"), |inside| format!("{key}: {{{inside}}}")))
    })?;
    let otherwise = match path == DetailName::RoughIn.word() {
        true => Phrase::from(", or `outlet height: …` of one that goes out through the wall"),
        false => Phrase::default(),
    };
    Some(phrase!("`{inner}`{}{otherwise}", inner, field.shape.choice(), otherwise))
}

fn field(path: &str) -> Option<&'static Field> {
    let mut record = &OPTION;
    let mut found = None;
    for key in path.split('.') {
        let field = record.field(key)?;
        if let FieldType::Record(inner) = field.shape {
            record = inner;
        }
        found = Some(field);
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::{Found, Trial};

    const PULL: &str = "maker: Vessary\nmodel: P-4\nfinish: brass\nsupplier: Oren\nlead time: 2 weeks\nprice: 14\nquantity: 12\nphotos: [a.jpg]\nprojection: 1\"";

    fn trial(kind: &str, option: &str) -> Trial {
        Trial::of("complete/field").selection(&format!("selection: It\nkind: {kind}"), option)
    }

    /// A field is not asked for where another one answers, or the room leaves nothing to ask.
    #[test]
    fn what_is_said_otherwise_is_not_asked() {
        let lacks = |book: &str, room: &str, kind: &str, option: &str| {
            Trial::of("complete/field")
                .book(book)
                .room(room)
                .selection(&format!("selection: It\nkind: {kind}"), option)
                .finds_one()
        };
        let message = |found: Found| found.findings()[0].remark.message.to_string();
        let all = |found: &str, path: &str| found.contains(&format!("`{path}`"));
        let rows = [
            ("refrigerator", "size: {height: 1770 mm}", "size: height to hinge", "country: AU", "country: US"),
            (
                "wall oven",
                "fit: {opening: {width: 560 mm, height: 600 mm}}",
                "fit: cabinet",
                "country: ES",
                "country: CA",
            ),
        ];
        for (kind, option, path, there, here) in rows {
            assert!(!all(&message(lacks(there, "", kind, option)), path), "{kind}");
            assert!(all(&message(lacks(here, "", kind, option)), path), "{kind}");
        }
        assert!(!all(&message(lacks("", "ceiling: 9'", "pendant", "")), "slope rating"));
        assert!(all(&message(lacks("", "ceiling: {low: 7', high: 10'}", "pendant", "")), "slope rating"));
        assert!(!all(&message(lacks("", "", "paint", "finish: 'satin, bath rated'")), "sheen"));
        assert!(all(&message(lacks("", "", "paint", "finish: off-white")), "sheen"));
        let pan = "mount: wall\nfit: {needs: {drain: '110 mm soil, 220 mm above finished floor'}}";
        assert!(!all(&message(lacks("", "", "toilet", pan)), "outlet height"));
    }

    /// Figures of a product's sheet are those of its model.
    #[test]
    fn the_sheet_of_a_product_speaks_for_its_own_model() {
        let toilet = |own: &str| {
            Trial::of("complete/field")
                .file("products/ct.yaml", "maker: Marl\nmodel: CT-2\nfit: {sheet: {name: CT-2, revision: B}}\n")
                .selection(
                    "selection: Toilet\nkind: item",
                    &format!("product: ct\nsupplier: Oren\nlead time: 2 weeks\nprice: 14\nphotos: [a.jpg]\n{own}"),
                )
        };
        toilet("model: CT-9")
            .finds("the model is `CT-9`, and the figures of the sheet are those of its product, `CT-2`")
            .weighs("stop")
            .points_at(&["rooms/kitchen/selection-0.yaml:8:8"]);
        toilet("model: ct-2").stays_silent();
        toilet("").stays_silent();
        toilet("model: CT-9\nfit: {sheet: {name: CT-9, revision: A}}").stays_silent();
    }

    #[test]
    fn one_finding_names_all_that_a_pull_lacks() {
        trial("pull", PULL).finds("the pull lacks `centre to centre`");
        trial("pull", &format!("{PULL}\ncentre to centre: 5 1/16\"")).stays_silent();
        trial("pull", "maker: Vessary").finds_one();
    }

    /// An empty list is written, and says no more than none.
    #[test]
    fn a_list_that_holds_nothing_is_lacking() {
        let whole = format!("{PULL}\ncentre to centre: 5 1/16\"");
        trial("pull", &whole.replace("[a.jpg]", "[]")).finds("the pull lacks `photos`");
        trial("pull", &whole).stays_silent();
    }

    /// A remedy is a shape to be filled, in the record where it is taken, and no fact to be pasted.
    #[test]
    fn a_remedy_leaves_open_what_only_the_maker_knows() {
        let range = "maker: Vessary\nmodel: 30\nfinish: steel\nsupplier: Oren\nlead time: 2 weeks\nprice: 1400\nquantity: 1\nphotos: [a.jpg]\nsize: {height: 36\", depth: 25\", depth with handle: 27\"}\nfit: {weight: 200 lb}";
        trial("range", range)
            .finds("the range lacks `size: width`, `fit: needs: power`")
            .remedies("add `size: {width: …}`; `fit: {needs: {power: …}}`");
    }

    /// Source: trade reports F-07, F-09, F-11: depth with door and handle, height to hinge and hinge side of a refrigerator.
    #[test]
    fn a_refrigerator_needs_its_three_depths_its_hinge_height_and_its_hinge_side() {
        let shop = "maker: Vessary\nmodel: 30\nfinish: steel\nsupplier: Oren\nlead time: 2 weeks\nprice: 1400\nquantity: 1\nphotos: [a.jpg]\nfit: {needs: {power: 120 V}}";
        let some = format!("{shop}\nsize: {{width: 30\", height: 69\", depth: 25\"}}");
        trial("refrigerator", &some).finds("the refrigerator lacks `size: depth with door`, `size: depth with handle`, `size: height to hinge`, `hinge`");
        let all = format!(
            "{shop}\nhinge: left\nsize: {{width: 30\", height: 69\", depth: 25\", depth with door: 27\", depth with handle: 29\", height to hinge: 69 7/8\"}}"
        );
        trial("refrigerator", &all).stays_silent();
    }

    /// One that hangs on the wall has no distance from the wall to its outlet: its outlet has a height.
    #[test]
    fn a_toilet_needs_the_place_of_its_outlet_as_it_has_one() {
        let of_kind = |kind: &str, name: &str, lines: &str| {
            let shop = "maker: Vessary\nfinish: white\nsupplier: Oren\nlead time: 2 weeks\nprice: 400\nquantity: 1\nphotos: [a.jpg]\nseat height: 17\"\nsize: {width: 15\", depth: 24\"}";
            Trial::of("complete/field")
                .opening("wall", "{takes: toilet, service: {drain: '90 mm, 220 mm AFF'}}")
                .selection(&format!("selection: {name}\nkind: {kind}"), &format!("{shop}\n{lines}"))
        };
        let toilet = |name: &str, lines: &str| of_kind("toilet", name, lines);
        of_kind("wall-hung toilet", "Toilet", "model: W-2").finds("the toilet lacks `outlet height`");
        for (name, lines) in [
            ("Toilet", "model: W-2\nmount: wall-hung"),
            ("Toilet", "model: W-2\nmount: back-to-wall, on the floor"),
            ("Toilet", "model: W-2\ndrain: horizontal"),
            ("Toilet", "model: W-2\ndrain: P-trap"),
            ("Wall-hung toilet", "model: W-2"),
            ("Inodoro", "model: RF Suspendido"),
            ("Toilet", "model: W-2\nplace: wall"),
            ("Wall-hung toilet", "model: W-2\nrough-in: 12\""),
        ] {
            toilet(name, lines).finds("the toilet lacks `outlet height`").remedies("add `outlet height: …`");
            toilet(name, &format!("{lines}\noutlet height: 220 mm")).stays_silent();
        }
        toilet("Toilet", "model: F-2")
            .finds("the toilet lacks `rough-in`")
            .remedies("add `rough-in: …`, or `outlet height: …` of one that goes out through the wall");
        toilet("Toilet", "model: F-2\nrough-in: 12\"").stays_silent();
        for floor in ["mount: close coupled, back to wall", "mount: floor standing, back to wall"] {
            toilet("Toilet", &format!("model: F-2\n{floor}\ndrain: S-trap\nrough-in: 140 mm")).stays_silent();
            toilet("Toilet", &format!("model: F-2\n{floor}\nrough-in: 140 mm"))
                .finds("the toilet lacks `outlet height`");
        }
        toilet("Toilet", "model: F-2\nmount: wall-hung\ndrain: S-trap\nrough-in: 140 mm")
            .finds("the toilet lacks `outlet height`");
        toilet("Toilet", "model: F-2\ndrain: S-trap").finds("the toilet lacks `rough-in`");
    }

    /// A tap in the wall goes through no counter: it has no holes there, no spread, and no lever before a splash.
    #[test]
    fn a_tap_that_goes_through_no_counter_is_asked_for_no_holes() {
        let shop = "maker: Vessary\nmodel: T-1\nfinish: brass\nsupplier: Oren\nlead time: 2 weeks\nprice: 140\nquantity: 1\nphotos: [a.jpg]";
        let tap = |name: &str, kind: &str, lines: &str| {
            Trial::of("complete/field")
                .selection(&format!("selection: {name}\nkind: {kind}"), &format!("{shop}\n{lines}"))
        };
        for (name, kind, lines) in [
            ("Tap", "wall-mounted tap", ""),
            ("Tap", "wall tap", ""),
            ("Tap", "tap", "mount: wall-mounted"),
            ("Tap", "tap", "mount: in the wall"),
            ("Wall tap", "tap", ""),
            ("Grifo mural", "tap", ""),
            ("Grifo de pared", "faucet", ""),
            ("Tap", "floor-standing tap", "mount: floor"),
        ] {
            tap(name, kind, lines).finds("the tap lacks `spout reach`");
            tap(name, kind, &format!("{lines}\nspout reach: 200 mm")).stays_silent();
        }
        tap("Tap", "tap", "").finds("the tap lacks `holes`, `spread`, `rear travel`, `spout reach`");
    }

    /// What the word for a kind says is said.
    #[test]
    fn a_bowl_whose_kind_says_how_it_is_fixed_is_not_asked_for_its_mount() {
        let shop = "maker: Vessary\nmodel: S-1\nfinish: steel\nsupplier: Oren\nlead time: 2 weeks\nprice: 140\nquantity: 1\nphotos: [a.jpg]\ndrain: centre\nsize: {width: 20\", depth: 16\"}\nbowl depth: 8\"";
        for kind in
            ["undermount sink", "drop-in sink", "farmhouse sink", "wall-hung basin", "vessel sink", "pedestal basin"]
        {
            trial(kind, shop).stays_silent();
        }
        trial("sink", shop).finds("the sink lacks `mount`");
    }

    #[test]
    fn a_field_that_is_written_wrongly_is_not_told_a_second_time() {
        let option = format!("{PULL}\ncentre to centre: [1\", 2\"]");
        let found = trial("pull", &option);
        found.of_any_yaml().stays_silent();
    }

    #[test]
    fn fields_of_a_product_and_of_the_selection_count_for_its_options() {
        let product = format!("{PULL}\ncentre to centre: 5 1/16\"\n");
        let lines = "selection: It\nkind: pull\noptions: [{id: long, product: pull}, {id: short, product: pull}]";
        Trial::of("complete/field").file("products/pull.yaml", product).selection(lines, "").stays_silent();
    }

    #[test]
    fn what_makes_no_sense_for_a_thing_is_not_asked_of_it() {
        let lacks = |kind: &str, option: &str, field: &str| {
            let found = trial(kind, &format!("maker: Vessary\n{option}")).run();
            found.findings()[0].message.text().contains(&format!("`{field}`"))
        };
        assert!(lacks("tap", "holes: 3", "spread") && !lacks("tap", "holes: 1", "spread"));
        assert!(!lacks("floor heating", "", "finish") && !lacks("cistern", "name: Frame", "finish"));
        assert!(
            lacks("cistern", "name: Flush plate", "finish") && lacks("cistern", "name: Betätigungsplatte", "finish")
        );
    }

    /// A panel that is ordered with the thing is the maker's own: its size is no question.
    #[test]
    fn a_panel_of_the_maker_s_own_needs_no_size() {
        let fridge = |with: &str| trial("panel refrigerator", &format!("maker: Vessary\n{with}")).run();
        let asks = |with: &str| fridge(with).findings()[0].message.text().contains("panel: width");
        assert!(asks(""));
        assert!(!asks("accessories: [{name: stainless door panel, model: SP-30}]"));
    }
}
