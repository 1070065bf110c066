//! What changed is told from what to what, by names and in lengths.

use super::*;
use serde_json::json;

fn told(before: &Value, after: &Value) -> Vec<String> {
    changes(before, after).iter().map(|change| change.words().to_string()).collect()
}

fn range(width: &str, price: &str, picture: &str) -> Value {
    json!({"name": "Range", "chosen": null, "options": [{
        "id": "steel", "name": "Brassel 30", "size": {"width": width, "height": {"least": "908050000", "most": null}},
        "price": price, "total": price, "pictures": [{"sha256": picture, "caption": "The front"}],
    }]})
}

#[test]
fn what_stayed_is_not_told() {
    assert_eq!(told(&range("762000000", "3180.00 USD", "a"), &range("762000000", "3180.00 USD", "a")), [""; 0]);
}

#[test]
fn lengths_and_amounts_are_told_from_and_to() {
    let (before, after) = (range("758825000", "3180.00 USD", "a"), range("762000000", "3280.00 USD", "a"));
    assert_eq!(
        told(&before, &after),
        ["price from 3180.00 USD to 3280.00 USD", "width from 29 7/8\" (759 mm) to 30\" (762 mm)"]
    );
}

/// A model that reads like an amount is a model, and a detail called `total` is a detail.
#[test]
fn only_what_stands_where_prices_stand_is_an_amount() {
    let with = |text: &str| json!({"options": [{"id": "a", "model": text, "price": text, "details": {"total": text}}]});
    let found = changes(&with("120.00 USD"), &with("130.00 USD"));
    let told: Vec<_> =
        found.iter().map(|one| (one.what.to_string(), one.to.as_ref().unwrap().amount().is_some())).collect();
    assert_eq!(told, [("total", false), ("model", false), ("price", true)].map(|(what, is)| (what.to_string(), is)));
}

#[test]
fn a_picture_that_is_another_is_told_by_its_place() {
    let (before, after) = (range("762000000", "1.00 USD", "a"), range("762000000", "1.00 USD", "b"));
    assert_eq!(told(&before, &after), ["picture 1 is another"]);
}

#[test]
fn options_are_known_by_their_id_and_named_where_there_are_several() {
    let before = json!({"options": [{"id": "a", "name": "Ash"}, {"id": "b", "name": "Birch", "finish": "oil"}]});
    let after = json!({"options": [{"id": "b", "name": "Birch", "finish": "wax"}, {"id": "c", "name": "Cherry"}]});
    assert_eq!(
        told(&before, &after),
        ["option gone, which was Ash", "Birch: finish from oil to wax", "option new: Cherry"]
    );
}

#[test]
fn a_choice_is_told_by_its_name_and_a_number_that_is_no_length_stays_as_it_is() {
    let tap = |chosen: &str, model: &str| {
        let option = |id: &str, name: &str| json!({"id": id, "name": name, "model": model, "details": {"lamp": model}});
        json!({"chosen": chosen, "options": [option("a", "Ash"), option("b", "Birch")]})
    };
    assert_eq!(told(&tap("a", "1"), &tap("b", "1")), ["chosen from Ash to Birch"]);
    assert_eq!(
        told(&tap("a", "30480000"), &tap("a", "30480001"))[..2],
        ["Ash: lamp from 30480000 to 30480001", "Ash: model from 30480000 to 30480001"]
    );
}

#[test]
fn ranges_and_sides_are_said_as_one_says_them() {
    let with = |value: Value| json!({"options": [{"id": "a", "details": {"drop": value}}]});
    let before = with(json!({"least": "254000000", "most": "508000000"}));
    let after = with(json!({"sides": ["254000000", "508000000"]}));
    assert_eq!(told(&before, &after), ["drop from 10\" (254 mm) to 20\" (508 mm) to 10\" (254 mm) × 20\" (508 mm)"]);
    assert_eq!(told(&with(Value::Null), &with(json!({"length": "254000000"}))), ["drop new: 10\" (254 mm)"]);
}

/// The sheet of a joiner with one table of these rows.
fn joiner(rows: &Value) -> Value {
    json!({"shown": "3", "sheet": "joiner", "tables": [{"id": "parts wet side", "name": "parts", "of": "wet side", "rows": rows}]})
}

fn told_of_sheet(before: &Value, after: &Value) -> Vec<String> {
    crate::shown::built_changes(before, after).iter().map(|change| change.words().to_string()).collect()
}

#[test]
fn of_a_table_only_the_cells_and_rows_that_changed_are_told() {
    let row = |part: &str, width: &str| json!({"part": part, "width": {"length": width}, "doors": "2"});
    let (base, bins, filler) = (row("sink base", "914400000"), row("bins", "457200000"), row("filler", "76200000"));
    let before = joiner(&json!([base, bins, filler]));
    let wider = joiner(&json!([row("sink base", "990600000"), bins, filler]));
    assert_eq!(
        told_of_sheet(&before, &wider),
        ["parts, wet side: sink base: width from 36\" (914 mm) to 39\" (991 mm)"]
    );
    let shorter = joiner(&json!([base, bins]));
    assert_eq!(
        told_of_sheet(&before, &shorter),
        ["parts, wet side: row gone, which was filler, doors 2, width 3\" (76 mm)"]
    );
    let two = joiner(&json!([base, bins, filler, filler]));
    assert_eq!(told_of_sheet(&before, &two).len(), 1, "one more of the same is told");
    let other_order = joiner(&json!([bins, base, filler]));
    assert_eq!(told_of_sheet(&before, &other_order), ["parts, wet side: order of its rows"]);
}

/// Both sides of one cabinet are called alike: each is told with what of it is another.
#[test]
fn of_rows_that_are_called_alike_each_is_held_to_its_own() {
    let row = |side: &str, yes: bool| json!({"seen side of": "bins", "row": "wet side", "side": side, "finished": yes});
    let before = joiner(&json!([row("left", false), row("right", false)]));
    let after = joiner(&json!([row("left", true), row("right", true)]));
    let told = ["left", "right"].map(|side| format!("parts, wet side: bins, {side}: finished from no to yes"));
    assert_eq!(told_of_sheet(&before, &after), told);
}

/// The record has the fields of a group by their names, the book as it stands in its own order.
#[test]
fn of_the_way_in_only_the_point_that_changed_is_told() {
    let point =
        |name: &str, width: &str| json!({"name": name, "width": {"length": width}, "height": {"length": "2438400000"}});
    let of = |points: &[Value]| json!({"shown": "3", "around": {"way in": points}});
    let door = json!({"height": {"length": "2438400000"}, "name": "door", "width": {"length": "838200000"}});
    let before =
        of(&[door, json!({"height": {"length": "2438400000"}, "name": "turn", "width": {"length": "889000000"}})]);
    assert_eq!(told_of_sheet(&before, &of(&[point("door", "838200000"), point("turn", "889000000")])), [""; 0]);
    assert_eq!(
        told_of_sheet(&before, &of(&[point("door", "838200000"), point("turn", "863600000")])),
        ["around way in: turn: width from 35\" (889 mm) to 34\" (864 mm)"]
    );
    assert_eq!(
        told_of_sheet(&before, &of(&[point("door", "838200000")])),
        ["around way in: turn gone, which was turn, height 96\" (2438 mm), width 35\" (889 mm)"]
    );
}

/// Of equal readings each counts: which went and which came, as often as it did.
#[test]
fn of_readings_each_that_went_and_came_is_told() {
    let of = |readings: [&str; 3]| json!({"shown": "3", "width": readings.map(|one| json!({"length": one}))});
    let before = of(["611187500", "609600000", "609600000"]);
    let after = of(["612775000", "611187500", "611187500"]);
    let told = "width from 24\" (610 mm); 24\" (610 mm) to 24 1/8\" (613 mm); 24 1/16\" (611 mm)";
    assert_eq!(told_of_sheet(&before, &after), [told]);
    let permuted = of(["609600000", "611187500", "609600000"]);
    assert_eq!(told_of_sheet(&before, &permuted).len(), 1, "another order of them is told whole");
}

/// What is attached to a thing of a sheet is no option of it.
#[test]
fn a_makers_sheet_that_came_is_told_as_that() {
    let of = |sheets: Value| json!({"shown": "3", "sheet": "joiner", "cut sheets": sheets});
    let hood = json!([{"id": "hood/a", "name": "Hood (C-36)", "cut sheet": {"link": "https://f.example/c36.pdf"}}]);
    assert_eq!(told_of_sheet(&of(json!([])), &of(hood)), ["maker's sheet new: Hood (C-36)"]);
}

/// Who reads them sees things, and no ids.
#[test]
fn an_option_is_held_beside_the_one_that_shows_the_same() {
    let globes = |seven: &str, nine: &str, chosen: Option<&str>| {
        let of = |id: &str, name: &str| json!({"id": id, "name": name, "model": name});
        json!({"chosen": chosen, "options": [of(seven, "Seven-inch"), of(nine, "Nine-inch")]})
    };
    let before = globes("seven", "nine", Some("seven"));
    assert_eq!(
        told(&before, &globes("sevenin", "nine", Some("sevenin"))),
        ["Seven-inch: id in the book from seven to sevenin"]
    );
    assert_eq!(
        told(&before, &globes("nine", "seven", Some("seven"))),
        [
            "chosen from Seven-inch to Nine-inch",
            "Seven-inch: id in the book from seven to nine",
            "Nine-inch: id in the book from nine to seven"
        ],
        "the ids changed places, so that another is chosen; where the options stand is as it was"
    );
    assert_eq!(told(&before, &globes("seven", "nine", Some("nine"))), ["chosen from Seven-inch to Nine-inch"]);
    assert_eq!(told(&before, &globes("seven", "nine", None)), ["chosen gone, which was Seven-inch"]);
}

/// What moved on the page is told, whatever its id, and what stands where it stood is not.
#[test]
fn the_order_of_options_is_that_of_the_things() {
    let of = |options: &[(&str, &str)]| {
        let option = |(id, name): &(&str, &str)| json!({"id": id, "name": name});
        json!({"options": options.iter().map(option).collect::<Vec<_>>()})
    };
    let before = of(&[("a", "Ash"), ("b", "Birch")]);
    let order = "order of the options from Ash, Birch to Birch, Ash";
    assert_eq!(told(&before, &of(&[("b", "Birch"), ("a", "Ash")])), [order]);
    let renamed = "Birch: id in the book from b to birch";
    assert_eq!(told(&before, &of(&[("birch", "Birch"), ("a", "Ash")])), [renamed, order]);
    assert_eq!(told(&before, &of(&[("a", "Ash"), ("birch", "Birch")])), [renamed]);
    assert_eq!(told(&before, &of(&[("c", "Cherry"), ("a", "Ash"), ("b", "Birch")])), ["option new: Cherry"]);
}

/// A stamp says what was signed: two that read alike by their ids too, labour by the item's name.
#[test]
fn an_option_is_called_as_who_signed_read_it() {
    let named = |name: &str| json!({"id": "a", "name": name});
    let item = |options: Value| json!({"name": "Fitting", "options": options});
    let called = |item: &Value| crate::shown::option_called(item, "a");
    assert_eq!(called(&item(json!([named("Larderwen 60")]))).as_deref(), Some("Larderwen 60"));
    let alike = json!([named("Larderwen 60"), {"id": "b", "name": "Larderwen 60"}]);
    assert_eq!(called(&item(alike)).as_deref(), Some("Larderwen 60 (a)"));
    assert_eq!(called(&item(json!([named("")]))).as_deref(), Some("Fitting"));
    assert_eq!(called(&item(json!([{"id": "a"}, {"id": "b"}]))).as_deref(), Some("Fitting (a)"));
    assert_eq!(called(&item(json!([{"id": "b", "name": "Oak"}]))), None);
}

#[test]
fn the_words_on_a_picture_are_told_as_words() {
    let of = |alt: &str| json!({"options": [{"id": "a", "pictures": [{"sha256": "a", "alt": alt}]}]});
    assert_eq!(told(&of("A globe"), &of("A globe on a rod")), ["words on picture 1 from A globe to A globe on a rod"]);
}
