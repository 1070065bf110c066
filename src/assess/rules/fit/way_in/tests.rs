//! Tests of what is carried in.

use crate::assess::rules::trial::Trial;

fn trial(fit: &str, way: &str) -> Trial {
    let trial = Trial::of("fit/way-in").book(&format!("way in: [{way}]")).opening("hole", "{takes: refrigerator}");
    trial.selection("selection: Fridge\nkind: refrigerator\nplace: hole", &format!("fit: {{{fit}}}"))
}

/// Source: trade reports F-111: a 29" door and a unit of 30" × 33 1/2".
#[test]
fn a_unit_wider_than_the_door_is_told() {
    let door = "{name: kitchen door, width: 29\", height: 80\"}";
    trial("doors off: 30\" x 33 1/2\" x 68\"", door)
        .finds("`Fridge`, doors off, is 1\" (25.4 mm) too large for the kitchen door")
        .weighs("stop")
        .cautions();
    let wider = "{name: kitchen door, width: 31\", height: 80\"}";
    trial("doors off: 30\" x 33 1/2\" x 68\"", wider).stays_silent();
}

#[test]
fn what_goes_in_only_out_of_its_carton_is_told_and_asked_about_where_it_is_tight() {
    let door = "{name: porch door, width: 33\", height: 80\"}";
    trial("carton: 34\" x 36\" x 72\", doors off: 30\" x 33\" x 68\"", door)
        .finds("the carton of `Fridge` is 1\" (25.4 mm) too large for the porch door; it goes in out of its carton, doors off")
        .weighs("note")
        .cautions();
    trial("carton: 34\" x 36\" x 72\", doors off: 32 1/2\" x 33\" x 68\"", door).finds_one().weighs("query");
}

#[test]
fn a_room_has_narrow_points_of_its_own() {
    let trial = trial("carton: 30\" x 30\" x 60\"", "{name: front door, width: 34\", height: 80\"}");
    trial.room("way in: [{name: stair, width: 30\", height: 76\"}]").finds_one();
}

/// Source: geometry: a carton that goes through the door of a lift must stand in its cabin.
#[test]
fn a_lift_has_a_depth() {
    let lift = |depth: &str, carton: &str| {
        trial(&format!("carton: {carton}"), &format!("{{name: ascensor, width: 700 mm, height: 2000 mm{depth}}}"))
    };
    lift(", depth: 1000 mm", "640 mm x 1900 mm x 720 mm").stays_silent();
    lift(", depth: 700 mm", "640 mm x 1900 mm x 720 mm").finds_one().weighs("stop").cautions();
    lift("", "640 mm x 1900 mm x 720 mm")
        .finds("nobody says how deep the ascensor is, and `Fridge`, which is large or heavy, goes up in it")
        .weighs("query")
        .points_at(&["book.yaml:5:10"]);
    lift("", "500 mm x 600 mm x 500 mm").stays_silent();
    // What is no lift has no depth.
    trial("carton: 640 mm x 1900 mm x 720 mm", "{name: hall, width: 700 mm, height: 2000 mm}").stays_silent();
}

/// Source: geometry: a sofa of 2180 by 950 by 820 mm at a door of 800 by 1980 mm.
#[test]
fn furniture_is_judged_by_its_own_size() {
    let sofa = |size: &str, fit: &str, way: &str| {
        Trial::of("fit/way-in")
            .book(&format!("way in: [{way}]"))
            .selection("selection: Sofa\nkind: furniture", &format!("size: {{{size}}}\n{fit}"))
    };
    let door = "{name: flat door, width: 800 mm, height: 1980 mm}";
    let large = "width: 2180 mm, height: 820 mm, depth: 950 mm";
    sofa(large, "", door)
        .finds("`Sofa` as it stands is ≈ 13/16\" (20 mm) too large for the flat door, and nobody says how large its carton is, or it in its parts")
        .weighs("query");
    sofa(large, "fit: {carton: 2200 mm x 700 mm x 760 mm}", door).stays_silent();
    sofa("width: 2180 mm, height: 780 mm, depth: 950 mm", "", door).stays_silent();
    sofa(large, "", "{name: flat door, width: 860 mm, height: 1980 mm}").stays_silent();
    sofa("width: 450 mm, height: 820 mm, depth: 500 mm", "", door).stays_silent();
}

/// Source: geometry; a hall 34" wide that turns takes a slab of 93 1/2" and no more.
#[test]
fn glass_stone_and_cabinets_come_in_too() {
    let hall = |thing: &str, option: &str| {
        Trial::of("fit/way-in")
            .book("way in: [{name: hall, width: 34\", height: 80\", turns: true}]")
            .selection(&format!("selection: It\nkind: {thing}"), option)
    };
    let top = |piece: &str| hall("counter", &format!("thickness: 1 1/4\"\ntop: {{pieces: {{long: {piece}}}}}"));
    top("130\" x 40\"")
        .finds("the piece `long` of `It`, 130\" (3302 mm) by 40\" (1016 mm), does not go through the hall")
        .weighs("query");
    top("90\" x 26\"").stays_silent();
    hall("shower glass", "size: {width: 84\", height: 110\"}").finds("`It` does not go through the hall on its edge");
    hall("shower glass", "size: {width: 30\", height: 78\"}").stays_silent();
    hall("mirror", "size: {width: 84\", height: 110\"}").finds_one();
    hall("cabinet", "size: {width: 36\", height: 96\", depth: 36\"}").finds_one().weighs("query");
    hall("cabinet", "size: {width: 24\", height: 78\", depth: 24\"}").stays_silent();
}

/// Source: trade reports F-111 (smallest dimension and 1"): exactly an inch more passes, a hair less is
/// asked about, and only what is larger than the point is told as too large.
#[test]
fn an_inch_of_play_is_usual_and_the_narrowest_point_is_named() {
    let door = |width: &str, height: &str| {
        format!("{{name: porch, width: 40\", height: 80\"}}, {{name: stair, width: {width}, height: {height}}}")
    };
    let carton = "carton: 30\" x 70\" x 33\"";
    trial(carton, &door("31\"", "80\"")).stays_silent();
    trial(carton, &door("30 1/2\"", "80\""))
        .finds("the carton of `Fridge` goes through the stair with 1/2\" (12.7 mm) to spare; 1\" (25.4 mm) is usual")
        .weighs("query");
    trial(carton, &door("29 15/16\"", "80\""))
        .finds(
            "the carton of `Fridge` is 1/16\" (1.6 mm) too large for the stair, and the size without it is not known",
        )
        .weighs("stop");
    trial("carton: 30\" x 70\" x 33\", doors off: 30\" x 69\" x 31\"", &door("29 1/2\"", "80\""))
        .finds("`Fridge`, doors off, is 1/2\" (12.7 mm) too large for the stair")
        .cautions();
    trial("doors off: 30\" x 69\" x 31\"", &door("30 1/2\"", "80\"")).finds_one().weighs("query");
    // As high as the door, to half an inch.
    trial("carton: 30\" x 79 1/2\" x 33\"", &door("34\"", "80\"")).stays_silent();
}

/// Geometry: halls 38" wide take `q + 2p ≤ 38" × √8 = 107.48"`; the play of an inch is wanted once.
#[test]
fn a_long_box_must_get_round_the_corner_too() {
    let hall = |turns: bool| format!("{{name: hall, width: 38\", height: 80\", turns: {turns}}}");
    let tub = "carton: 60\" x 80\" x 30\"";
    trial(tub, &hall(false)).stays_silent();
    trial(tub, &hall(true)).finds_one().weighs("stop");
    trial("carton: 44\" x 79\" x 30\"", &hall(true)).stays_silent();
    trial("carton: 45\" x 79\" x 30\"", &hall(true)).finds_one().weighs("query");
    trial("carton: 37\" x 79\" x 37\"", &hall(true)).stays_silent();
}

#[test]
fn what_has_no_opening_is_carried_in_too_and_a_choice_still_open_is_a_query() {
    let two = "options:\n  - {id: wide, fit: {carton: 40\" x 70\" x 40\"}}\n  - {id: slim}";
    Trial::of("fit/way-in")
        .book("way in: [{name: stair, width: 32\", height: 76\"}]")
        .selection("selection: Tub\nkind: bathtub", two)
        .finds_one()
        .weighs("query")
        .cautions();
}

#[test]
fn the_way_in_is_asked_for_where_something_large_or_heavy_comes() {
    let fridge = |option: &str| {
        Trial::of("fit/way-in")
            .opening("hole", "{takes: refrigerator}")
            .selection("selection: Fridge\nkind: refrigerator\nplace: hole", option)
    };
    fridge("size: {width: 36\", depth: 29\", height: 70\"}")
        .finds("nobody says what the way in is for `Fridge`, which is large or heavy")
        .weighs("query")
        .cautions()
        .points_at(&["rooms/kitchen/selection-0.yaml:1:12"]);
    fridge("fit: {weight: 150 lb}").finds_one();
    fridge("fit: {weight: 149 lb}").stays_silent();
    fridge("size: {width: 24\", depth: 24\", height: 34\"}").stays_silent();
    let two = fridge("fit: {weight: 300 lb}").selection("selection: Tub\nkind: bathtub", "fit: {weight: 300 lb}");
    two.finds_one();
    fridge("fit: {weight: 300 lb}").room("way in: [{name: door, width: 36\", height: 80\"}]").stays_silent();
}

#[test]
fn without_a_carton_s_size_the_thing_itself_is_tried() {
    let fridge = |width: &str, fit: &str| {
        Trial::of("fit/way-in")
            .book(&format!("way in: [{{name: kitchen door, width: {width}, height: 80\"}}]"))
            .opening("hole", "{takes: refrigerator}")
            .selection(
                "selection: Fridge\nkind: refrigerator\nplace: hole",
                &format!("size: {{width: 36\", depth: 30\", height: 70\"}}\n{fit}"),
            )
    };
    fridge("29\"", "")
        .finds("`Fridge` as it stands is 1\" (25.4 mm) too large for the kitchen door, and nobody says how large its carton is, or it without doors")
        .weighs("query");
    fridge("30\"", "").finds_one().says("to spare, and nobody says how large its carton is");
    fridge("33\"", "").stays_silent();
    fridge("29\"", "fit: {doors off: 36\" x 27\" x 69\"}").stays_silent();
}

#[test]
fn the_room_s_widest_doorway_is_on_the_way_in() {
    let room =
        |lines: &str| trial("carton: 30\" x 34\" x 66\"", "{name: porch door, width: 40\", height: 80\"}").room(lines);
    let doors = |wide: &str| {
        format!(
            "outline: 12' x 10'\ndoors: {{hall door: {{wall: C, at: 20\", width: {wide}}}, larder: {{width: 24\"}}}}"
        )
    };
    room(&doors("29\""))
        .finds(
            "the carton of `Fridge` is 1\" (25.4 mm) too large for the hall door, and the size without it is not known",
        )
        .weighs("stop")
        .points_at(&["rooms/kitchen/selection-0.yaml:4:15"]);
    // A plan's width is no measurement: only what is larger is told, until somebody measures it.
    room(&doors("30\"")).stays_silent();
    let measured = |clear: &str| format!("{}\nclearances: {{doorways: {{hall door: {clear}}}}}", doors("34\""));
    room(&measured("30 1/2\"")).finds_one().weighs("query");
    room(&measured("33\"")).stays_silent();
    // Where the room says how one gets in, or a wall is open, or not all is drawn, no doorway decides.
    room(&format!("{}\nway in: [{{name: hall door, width: 36\", height: 80\"}}]", doors("29\""))).stays_silent();
    room(&format!("{}\nwalls: {{A: {{is: open}}}}", doors("29\""))).stays_silent();
    room("doors: {larder: {width: 24\"}}").stays_silent();
}

/// Source: common practice: a carton is 2" to 4" larger than what is in it.
#[test]
fn how_large_a_carton_is_is_asked_where_it_may_not_pass() {
    let fridge = |width: &str, more: &str| {
        Trial::of("fit/way-in").book("way in: [{name: front door, width: 35\", height: 80\"}]").selection(
            "selection: Fridge\nkind: refrigerator",
            &format!("size: {{width: {width}, height: 70\", depth: {width}}}\n{more}"),
        )
    };
    fridge("33\"", "")
        .finds("`Fridge` as it stands goes through the front door with 2\" (51 mm) to spare, and nobody says how large its carton is")
        .weighs("query");
    fridge("32\"", "").stays_silent();
    fridge("33\"", "fit: {carton: 34\" x 34\" x 72\"}").stays_silent();
    fridge("33\"", "fit: {doors off: 30\" x 30\" x 70\"}").stays_silent();
}
