//! Tests of `order/quantity`.

use crate::assess::rules::trial::Trial;

fn floor(option: &str) -> Trial {
    Trial::of("order/quantity").selection("selection: Floor\nkind: tile", option)
}

/// Source: trade reports F-123: 84 sq ft in herringbone, 9.7 sq ft a box: eleven boxes, not ten.
#[test]
fn herringbone_ordered_at_the_waste_of_straight_courses_is_told() {
    let boxes = |pattern: &str, boxes: &str| {
        floor(&format!(
            "pattern: {pattern}\nlaid: {{area: 84 sq ft}}\nsold: {{box holds: 9.7 sq ft}}\nquantity: {boxes}"
        ))
    };
    let found = boxes("herringbone", "10 boxes").finds_one().weighs("query");
    assert!(found.findings()[0].remedy.text().starts_with("order 11 boxes at once"), "{:?}", found.findings());
    boxes("herringbone", "11 boxes").stays_silent();
    boxes("straight", "10 boxes").stays_silent();
}

#[test]
fn boxes_of_which_nobody_says_what_they_hold_are_asked_about() {
    floor("laid: {area: 84 sq ft}\nquantity: 8 boxes")
        .finds("8 boxes of `Floor` are ordered for 84 sq ft (≈ 7.8 m²), and nobody says what a box holds")
        .weighs("query");
    floor("laid: {area: 84 sq ft}\nquantity: 10 boxes\nsold: {box holds: 9.7 sq ft}").stays_silent();
    floor("quantity: 8 boxes").stays_silent();
}

/// Source: check values TL-12, FL-02.
#[test]
fn waste_follows_the_pattern_unless_the_book_says_otherwise() {
    let ordered = |pattern: &str, laid: &str, quantity: u32| {
        floor(&format!("pattern: {pattern}\nlaid: {{area: 200 sq ft{laid}}}\nquantity: {quantity} sq ft"))
    };
    for (pattern, enough) in [("straight", 220), ("running bond", 220), ("diagonal", 230), ("herringbone", 240)] {
        ordered(pattern, "", enough).stays_silent();
        ordered(pattern, "", enough - 1).finds_one().weighs("query");
    }
    ordered("herringbone", ", waste: 5 %", 210).stays_silent();
    ordered("straight", ", waste: 0 %", 199).finds_one().weighs("stop");
}

/// Source: trade reports F-93: short by a few, and the next box is of another lot.
#[test]
fn less_than_the_area_itself_stops() {
    floor("pattern: straight\nlaid: {area: 42 sq ft}\nquantity: 40 sq ft").finds_one().weighs("stop");
    floor("pattern: straight\nlaid: {area: 42 sq ft}\nquantity: 46.2 sq ft").stays_silent();
}

/// Source: check values TL-13: 12 × 24 in, 8 a box.
#[test]
fn pieces_and_boxes_of_pieces_are_counted() {
    let option = |quantity: &str| {
        floor(&format!(
            "pattern: straight\nface size: 12\" x 24\"\nlaid: {{area: 40 sq ft}}\nsold: {{box holds: 8}}\nquantity: {quantity}"
        ))
    };
    option("22").stays_silent();
    option("21").finds_one();
    option("3 boxes").stays_silent();
    option("2 boxes").finds_one().weighs("stop");
}

#[test]
fn an_area_that_is_no_whole_number_of_boxes_is_told() {
    let option = |quantity: &str| {
        floor(&format!(
            "pattern: straight\nlaid: {{area: 42 sq ft}}\nsold: {{box holds: 9.7 sq ft}}\nquantity: {quantity}"
        ))
    };
    let found = option("47 sq ft").finds_one();
    assert!(found.findings()[0].remedy.text().starts_with("order 5 boxes"), "{:?}", found.findings());
    option("48.5 sq ft").stays_silent();
}

/// Source: check values WP-01, WP-02.
#[test]
fn paper_is_counted_in_strips_and_rolls() {
    let rolls = |quantity: &str| {
        Trial::of("order/quantity").selection(
            "selection: Paper\nkind: wallpaper\npapered: {along: 480\", height: 96\", trim: 4\"}",
            &format!("sold: {{roll: 20 1/2\" x 33', repeat: 21\"}}\nquantity: {quantity}"),
        )
    };
    rolls("8 rolls").stays_silent();
    rolls("7 rolls")
        .finds("7 rolls of `Paper` are ordered, and the walls take 8 rolls, each strip cut at 105\" (2667 mm)");
}

/// Source: check values TL-15: 0.256 kg/m² for 300 × 300 × 8 mm with 3 mm joints.
#[test]
fn grout_that_does_not_fill_the_joints_is_told() {
    let bag = |weight: &str| {
        floor(&format!(
            "pattern: straight\nface size: 300 mm x 300 mm\nthickness: 8 mm\njoint: 3 mm\nlaid: {{area: 10 m2}}\nquantity: 11 m2\naccessories: [{{name: grout, quantity: {weight}}}]"
        ))
    };
    bag("2.56 kg").stays_silent();
    bag("2.5 kg").finds_one().weighs("query");
}

/// Source: trade reports F-93: lot and calibre stand on every box.
#[test]
fn one_product_of_two_lots_is_told() {
    let trial = |lot: &str| {
        let tile = |lot: &str| format!("maker: Kilnessy\nmodel: TX\nsold: {{lot: {lot}}}");
        Trial::of("order/quantity")
            .selection("selection: Floor\nkind: tile", &tile("7714"))
            .selection("selection: Hearth\nkind: tile", &tile(lot))
    };
    trial("7715").finds("`Hearth` is of lot 7715, and `Floor`, the same product, of lot 7714");
    trial("7714").stays_silent();
}

#[test]
fn as_many_lights_are_ordered_as_are_set_out() {
    let plan = "outline: 16' x 14'\nislands: {island: {wall: A, at: 40\", away: 66\", size: 96\" x 42\"}}";
    let lights = |set_out: &str, ordered: &str| {
        Trial::of("order/quantity")
            .room(&format!("{plan}\nlights: {{row: {{selection: Pendants, over: island, {set_out}}}}}"))
            .selection("selection: Pendants\nkind: pendant", &format!("quantity: {ordered}"))
    };
    lights("count: 3", "2").finds("3 of `Pendants` are set out, and 2 ordered").weighs("stop");
    lights("at: [20\", 48\", 76\"]", "2").finds_one().points_at(&["rooms/kitchen/selection-0.yaml:3:11"]);
    lights("count: 2", "3").finds("3 of `Pendants` are ordered, and 2 set out").weighs("query");
    lights("count: 3", "3").stays_silent();
    let listed = |ordered: &str| {
        Trial::of("order/quantity").selection(
            "selection: Pendants\nkind: pendant\nhangs: {over: island, at: [20\", 60\", 100\"]}",
            &format!("quantity: {ordered}"),
        )
    };
    listed("2").finds_one();
    listed("3").stays_silent();
    Trial::of("order/quantity")
        .room(&format!("{plan}\nlights: {{row: {{selection: Stools, over: island, count: 3}}}}"))
        .selection("selection: Stools\nkind: rug", "quantity: 3")
        .finds("the plan hangs `Stools` as lights, and it is a rug");
    let fan = |count: &str| {
        Trial::of("order/quantity")
            .room(&format!("{plan}\nlights: {{fan: {{selection: Fan, over: island, count: {count}}}}}"))
            .selection("selection: Fan\nkind: bath fan", "quantity: 1")
    };
    fan("1").stays_silent();
    fan("2").finds("2 of `Fan` are set out, and 1 ordered").weighs("stop");
}

/// Source: arithmetic; trade reports F-96 (trim is ordered by length, with the tile).
#[test]
fn edge_pieces_reach_along_the_open_edges_wherever_they_are_ordered() {
    let tile = |trim: &str| {
        Trial::of("order/quantity")
            .selection("selection: Splash\nkind: tile", &format!("laid: {{open edges: 14'}}\n{trim}"))
    };
    tile("edge trim: glazed edge pieces, 10 ft")
        .finds("120\" (3048 mm) of edge pieces are ordered for `Splash`, and its open edges are 168\" (4267 mm) long")
        .weighs("stop");
    tile("edge trim: glazed edge pieces, 14 ft").stays_silent();
    tile("edge trim: metal strip 1/2\"").stays_silent();
    tile("accessories: [{name: metal trim, quantity: 12 ft}]").finds_one();
    tile("accessories: [{name: metal trim, quantity: 15 ft}]").stays_silent();
    let alone = |count: &str| {
        tile("").selection(
            "selection: Edge strip\nkind: tile\nmeets: [Splash]",
            &format!("face size: 1/2\" x 8'\nquantity: {count} pieces"),
        )
    };
    alone("1").finds_one();
    alone("2").stays_silent();
    // Arithmetic: two cabinets of 36" under one counter have 6' of front.
    let counter = |length: &str| {
        Trial::of("order/quantity")
            .room("outline: 12' x 10'\nruns: {wet side: {wall: A, counter: {depth: 25\", height: 36\"}, parts: [{cabinet: a, width: 36\"}, {cabinet: b, width: 36\"}, {tall: c, width: 24\"}]}}")
            .selection("selection: Counter\nkind: counter", &format!("top: {{lies on: [wet side]}}\naccessories: [{{name: edge banding, quantity: {length}}}]"))
    };
    counter("5 ft").finds_one();
    counter("6 ft").stays_silent();
    // Arithmetic: 6' of front and 2' at each end in the open.
    let open = |length: &str, ends: &str| {
        Trial::of("order/quantity")
            .room(&format!("runs: {{wet side: {{{ends}, counter: {{depth: 24\"}}, parts: [{{cabinet: a, width: 36\"}}, {{cabinet: b, width: 36\"}}]}}}}"))
            .selection("selection: Counter\nkind: counter", &format!("edge: postformed, {length} of matching band"))
    };
    open("8 ft", "left end: open, right end: open").finds_one();
    open("10 ft", "left end: open, right end: open").stays_silent();
    open("7 ft", "left end: wall, right end: open").finds_one();
    open("8 ft", "left end: wall, right end: open").stays_silent();
    open("6 ft", "left end: wall, right end: wall").stays_silent();
    let in_plan = |length: &str| {
        Trial::of("order/quantity")
            .room("outline: 12' x 10'\nruns: {wet side: {wall: A, counter: {depth: 24\", height: 36\"}, parts: [{cabinet: a, width: 72\"}]}}")
            .selection("selection: Counter\nkind: counter", &format!("accessories: [{{name: edge banding, quantity: {length}}}]"))
    };
    in_plan("7 ft").finds_one();
    in_plan("8 ft").stays_silent();
}

#[test]
fn a_floor_is_no_larger_than_the_rooms_that_it_lies_in() {
    let floor = |area: &str| {
        Trial::of("order/quantity")
            .room("outline: 12' x 10'")
            .selection("selection: Oak\nkind: floor", &format!("laid: {{area: {area}}}"))
    };
    floor("160 sq ft").finds_one().weighs("query");
    floor("118 sq ft").stays_silent();
    floor("160 sq ft").file("rooms/hall/room.yaml", "name: Hall\n").stays_silent();
}

#[test]
fn a_metric_book_says_areas_in_metric_first() {
    let floor = |quantity: &str| {
        Trial::of("order/quantity")
            .file("book.yaml", "title: Trial\nclient: Nobody\nunits: metric\ncountry: DE\ncurrency: EUR\n".to_string())
            .selection(
                "selection: Bodenfliesen\nkind: tile",
                &format!("pattern: straight\nlaid: {{area: 6.7 m²}}\nsold: {{box holds: 1 m²}}\nquantity: {quantity}"),
            )
    };
    floor("6 boxes")
        .finds("6 boxes of `Bodenfliesen` are ordered, and 6.7 m² (≈ 72.1 sq ft) and 10 % more for its pattern come to ≈ 7.4 m² (≈ 79.3 sq ft)");
    floor("8 boxes").stays_silent();
}

/// Source: arithmetic: 11 m² and 15 % are 12.65 m²: who orders what the remedy says has enough.
#[test]
fn what_the_remedy_says_is_enough() {
    let tile = |quantity: &str| {
        Trial::of("order/quantity").metric().selection(
            "selection: Tile\nkind: tile\ncovers: 11 m2",
            &format!("quantity: {quantity}\npattern: herringbone\nlaid: {{waste: 15 %}}"),
        )
    };
    tile("12 m2").finds_one().remedies("order 12.7 m² (≈ 136.7 sq ft) at once, of one lot, and keep what is over");
    tile("12.7 m2").stays_silent();
    tile("12.6 m2").finds_one();
}

/// Two runs of 10' by 25 1/2" are 42.5 sq ft, and an island of 8' by 3' 24 more.
#[test]
fn stone_that_is_ordered_by_its_area_covers_what_it_lies_on() {
    let kitchen = |quantity: &str, top: &str| {
        let run = |wall: &str| {
            format!(
                "{{wall: {wall}, counter: {{depth: 25 1/2\", height: 36\"}}, parts: [{{cabinet: drawers, width: 60\"}}, {{cabinet: bin, width: 60\"}}]}}"
            )
        };
        Trial::of("order/quantity")
            .room(&format!(
                "outline: 20' x 16'\nruns: {{sink wall: {}, range wall: {}}}\nislands: {{island: {{size: 8' x 3'}}}}",
                run("A"),
                run("C")
            ))
            .selection("selection: Stone\nkind: counter", &format!("quantity: {quantity}\ntop: {{{top}}}"))
    };
    let both = "lies on: [sink wall, range wall]";
    let found = kitchen("20 sq ft", both).finds_one().weighs("stop");
    let message = found.findings()[0].message.text();
    assert!(
        message.starts_with("20 sq ft of `Stone` are ordered, and what it lies on by the plan comes to 42.5 sq ft"),
        "{message}"
    );
    kitchen("43 sq ft", both).stays_silent();
    kitchen("39 sq ft", both).stays_silent();
    kitchen("2 pieces", both).stays_silent();
    kitchen("43 sq ft", "lies on: [sink wall, range wall, island]").finds_one();
    kitchen("43 sq ft", "material: stone").finds_one();
    kitchen("67 sq ft", "material: stone").stays_silent();
    kitchen("20 sq ft", "lies on: [island], pieces: {island: 8' x 3'}").finds_one();
    kitchen("24 sq ft", "lies on: [island], pieces: {island: 8' x 3'}").stays_silent();
}

/// Two walls of 12' and two of 10' are 44'; a doorway takes 30", and a run of 5' the wall behind it.
#[test]
fn skirting_goes_around_the_room_but_for_doorways_and_what_stands_there() {
    let room = |name: &str, kind: &str, quantity: &str| {
        Trial::of("order/quantity")
            .room(
                "outline: 12' x 10'\ndoors: {hall: {wall: C, at: 20\", width: 30\", height: 80\"}}\nruns: {base: {wall: A, parts: [{cabinet: drawers, width: 60\"}]}, shelf: {wall: B, above floor: 54\", parts: [{cabinet: glasses, width: 30\", height: 12\"}]}}",
            )
            .selection(&format!("selection: {name}\nkind: {kind}"), &format!("quantity: {quantity}"))
    };
    room("Baseboard", "baseboard", "36 ft").finds_one().weighs("query").says("36'-6\"");
    room("Baseboard", "baseboard", "37 ft").stays_silent();
    for (name, kind) in [("Rodapié", "trim"), ("Skirting", "skirting board"), ("Feet", "skirting")] {
        room(name, kind, "6 m").finds_one();
        room(name, kind, "12 m").stays_silent();
    }
    // What runs elsewhere is no skirting, and of two nobody says which goes where.
    room("Crown", "crown", "6 m").stays_silent();
    room("Baseboard", "baseboard", "6 m").selection("selection: More\nkind: skirting", "quantity: 6 m").stays_silent();
}

#[test]
fn what_stands_in_the_plan_twice_is_ordered_twice() {
    let basins = |quantity: &str, kind: &str| {
        Trial::of("order/quantity")
            .room("outline: 10' x 7'\nfixtures: {left: {wall: A, centre: 30\", selection: Pair}, right: {wall: A, centre: 70\", selection: Pair}}")
            .selection(&format!("selection: Pair\nkind: {kind}"), &format!("quantity: {quantity}\nsize: {{width: 20\", depth: 17\"}}"))
    };
    for kind in ["basin", "sconce", "grab bar"] {
        basins("1", kind)
            .finds("2 of `Pair` are set out, and 1 ordered")
            .weighs("stop")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:11"]);
        basins("2", kind).stays_silent();
        basins("3", kind).stays_silent();
    }
    // Panes of one enclosure come together.
    basins("1", "shower glass").stays_silent();
    basins("1 set", "basin").stays_silent();
}

#[test]
fn what_boxes_hold_is_ordered() {
    let dimmers = |quantity: &str| {
        Trial::of("order/quantity")
            .room("outline: 10' x 7'\nswitches: {by the door: {wall: A, centre: 30\", count: 2, selection: Dimmers}}\noutlets: {window: {wall: C, centre: 30\", selection: Dimmers}}")
            .selection("selection: Dimmers\nkind: dimmer", &format!("quantity: {quantity}"))
    };
    dimmers("2").finds("3 of `Dimmers` are set out, and 2 ordered").weighs("stop");
    dimmers("3").stays_silent();
}

#[test]
fn what_is_chosen_is_ordered_at_all() {
    let hooks = |quantity: &str| {
        Trial::of("order/quantity").selection("selection: Hooks\nkind: hook", &format!("quantity: {quantity}"))
    };
    hooks("0").finds("`Hooks` is chosen, and none is ordered").weighs("query");
    hooks("4").stays_silent();
}

#[test]
fn two_basins_have_two_taps() {
    let pair = |taps: &str| {
        Trial::of("order/quantity")
            .selection("selection: Basins\nkind: basin", "quantity: 2")
            .selection("selection: Taps\nkind: basin tap", taps)
    };
    pair("quantity: 1")
        .finds("2 of `Basins` are ordered, and 1 of `Taps`")
        .weighs("query")
        .points_at(&["rooms/kitchen/selection-1.yaml:3:11"]);
    pair("quantity: 2").stays_silent();
    pair("quantity: 1").selection("selection: Second tap\nkind: basin tap", "quantity: 1").stays_silent();
}

/// Source: arithmetic: 10' of counter 25 1/2" deep are 21 1/4 sq ft, a splash of 18" along them 15 more.
#[test]
fn a_counter_with_its_splash_takes_more() {
    let kitchen = |quantity: &str, splash: &str| {
        Trial::of("order/quantity")
            .room("outline: 14' x 10'\nruns: {w: {wall: A, starts: 12\", depth: 24\", counter: {depth: 25 1/2\", height: 36\"}, parts: [{cabinet: drawers, width: 10'}]}}")
            .selection(
                "selection: Counter\nkind: counter",
                &format!("quantity: {quantity}\ntop: {{material: quartz, lies on: [w]{splash}}}"),
            )
    };
    let splash = ", splash: {thickness: 3/4\", height: 18\"}";
    kitchen("21 1/2 sq ft", splash).finds_one().weighs("stop");
    kitchen("37 sq ft", splash).stays_silent();
    kitchen("21 1/2 sq ft", "").stays_silent();
}

#[test]
fn a_splashback_is_as_large_as_what_it_covers() {
    let splash = |quantity: &str| {
        Trial::of("order/quantity")
            .selection("selection: Splashback\nkind: splashback\ncovers: 16 sq ft", &format!("quantity: {quantity}"))
    };
    splash("12 sq ft")
        .finds("12 sq ft of `Splashback` are ordered, and 16 sq ft (≈ 1.5 m²) to cover come to 16 sq ft (≈ 1.5 m²)")
        .weighs("stop");
    splash("16 sq ft").stays_silent();
}

/// What nobody understands may be a pattern that wastes a fifth.
#[test]
fn a_pattern_that_is_not_understood_is_asked_about_where_it_counts() {
    let tile = |pattern: &str, ordered: &str| {
        Trial::of("order/quantity").selection(
            "selection: Tile\nkind: tile",
            &format!("pattern: {pattern}\nlaid: {{area: 100 sq ft}}\nquantity: {ordered}"),
        )
    };
    tile("as the old one", "112 sq ft").finds_one().weighs("query").says("can't be understood (`as the old one`)");
    tile("as the old one", "120 sq ft").stays_silent();
    tile("stacked", "112 sq ft").stays_silent();
    tile("half bond", "112 sq ft").stays_silent();
    tile("as the old one", "100 sq ft").finds_one().says("are ordered");
}
