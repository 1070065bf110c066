//! A waiver reaches what it stands at, told apart by identity: never another thing of the same name.

use crate::assess::rules::trial::{Found, Trial};

/// A refrigerator of 32" goes not into 30".
const WAIVER: &str = "waive: [{rule: fit/width, because: cut back on site, by: Ines, on: 2027-01-12}]";

/// Messages of what nobody set aside.
fn standing(found: &Found) -> Vec<&str> {
    let standing = found.findings().iter().filter(|finding| finding.waived.is_none());
    standing.map(|finding| finding.message.text()).collect()
}

fn fridge(name: &str, place: &str) -> (String, String) {
    (format!("selection: {name}\nkind: refrigerator\nplace: {place}"), "size: {width: 32\"}".into())
}

trait With {
    fn with(self, of: &(String, String)) -> Self;
}

impl With for Trial {
    fn with(self, of: &(String, String)) -> Self {
        self.selection(&of.0, &of.1)
    }
}

#[test]
fn a_waiver_at_an_opening_reaches_it_and_what_goes_into_it() {
    let found = Trial::of("fit/width")
        .opening("bay", &format!("{{takes: refrigerator, width: 30\", {WAIVER}}}"))
        .with(&fridge("Refrigerator", "bay"))
        .run();
    assert_eq!((found.findings().len(), standing(&found).len()), (1, 0));
}

#[test]
fn two_selections_of_one_name_in_one_room_are_two() {
    let found = Trial::of("fit/width")
        .opening("left bay", &format!("{{takes: refrigerator, width: 30\", {WAIVER}}}"))
        .opening("right bay", "{takes: refrigerator, width: 31\"}")
        .with(&fridge("Refrigerator", "left bay"))
        .with(&fridge("Refrigerator", "right bay"))
        .run();
    assert_eq!(found.findings().len(), 2);
    assert!(standing(&found).iter().all(|message| message.contains("right bay")), "{:?}", standing(&found));
    assert_eq!(standing(&found).len(), 1);
}

#[test]
fn a_waiver_at_a_selection_leaves_its_namesake_alone() {
    let (lines, option) = fridge("Refrigerator", "left bay");
    let found = Trial::of("fit/width")
        .opening("left bay", "{takes: refrigerator, width: 30\"}")
        .opening("right bay", "{takes: refrigerator, width: 31\"}")
        .selection(&format!("{lines}\n{WAIVER}"), &option)
        .with(&fridge("Refrigerator", "right bay"))
        .run();
    assert_eq!((found.findings().len(), standing(&found).len()), (2, 1));
}

#[test]
fn openings_of_one_name_in_two_rooms_are_two() {
    let other = "name: Pantry\nopenings:\n  bay: {takes: refrigerator, width: 31\"}\n";
    let (lines, option) = fridge("Refrigerator", "bay");
    let found = Trial::of("fit/width")
        .opening("bay", &format!("{{takes: refrigerator, width: 30\", {WAIVER}}}"))
        .with(&fridge("Refrigerator", "bay"))
        .file("rooms/pantry/room.yaml", other)
        .file("rooms/pantry/fridge.yaml", format!("{lines}\n{option}\n"))
        .run();
    assert_eq!((found.findings().len(), standing(&found).len()), (2, 1));
}

#[test]
fn a_selection_that_is_called_like_an_opening_is_not_that_opening() {
    let found = Trial::of("fit/width")
        .opening("cooler", &format!("{{takes: refrigerator, width: 30\", {WAIVER}}}"))
        .opening("niche", "{takes: refrigerator, width: 31\"}")
        .with(&fridge("Refrigerator", "cooler"))
        .with(&fridge("cooler", "niche"))
        .run();
    assert_eq!((found.findings().len(), standing(&found).len()), (2, 1));
    // And a waiver at that selection does not reach the opening.
    let (lines, option) = fridge("cooler", "niche");
    let found = Trial::of("fit/width")
        .opening("cooler", "{takes: refrigerator, width: 30\"}")
        .opening("niche", "{takes: refrigerator, width: 31\"}")
        .with(&fridge("Refrigerator", "cooler"))
        .selection(&format!("{lines}\n{WAIVER}"), &option)
        .run();
    assert!(standing(&found)[0].contains("`cooler`"), "{:?}", standing(&found));
    assert_eq!(standing(&found).len(), 1);
}

#[test]
fn a_run_that_is_called_like_an_opening_is_not_that_opening() {
    let long = "outline: 100\" x 100\"\nruns: {bay: {wall: A, parts: [{cabinet: drawers, width: 120\"}]}}";
    let trial = |waive: &str| {
        Trial::of("run/sum").of_any_yaml().room(long).opening("bay", &format!("{{takes: refrigerator{waive}}}")).run()
    };
    let stops = trial("").findings().len();
    assert!(stops > 0);
    assert_eq!(standing(&trial(", waive: [{rule: run/sum, because: so, by: Ines, on: 2027-01-12}]")).len(), stops);
}

#[test]
fn a_waiver_is_of_all_options_or_of_the_one_that_it_names() {
    let chosen = |option: &str| {
        let waiver = WAIVER.replace("2027-01-12", &format!("2027-01-12{option}"));
        Trial::of("fit/width")
            .opening("bay", "{takes: refrigerator, width: 30\"}")
            .selection(
                &format!("selection: Refrigerator\nkind: refrigerator\nplace: bay\n{waiver}"),
                "options:\n  - {id: steel, size: {width: 31\"}}\n  - {id: enamel, size: {width: 32\"}}",
            )
            .run()
    };
    let all = chosen("");
    assert_eq!((all.findings().len(), standing(&all).len()), (2, 0));
    let one = chosen(", option: steel");
    assert_eq!(standing(&one).len(), 1);
    assert!(standing(&one)[0].starts_with("option `enamel`"), "{:?}", standing(&one));
}

/// An option has a name only within its selection.
#[test]
fn a_waiver_of_a_room_reaches_no_option_by_its_name() {
    let found = Trial::of("fit/width")
        .room(&WAIVER.replace("2027-01-12", "2027-01-12, option: a"))
        .opening("bay", "{takes: refrigerator, width: 30\"}")
        .with(&fridge("Refrigerator", "bay"))
        .run();
    assert_eq!(standing(&found).len(), 1);
}

/// Where one opening's finding is, its namesake's page says nothing of it either.
#[test]
fn a_finding_says_which_of_two_namesakes_it_is_about() {
    let found = Trial::of("fit/width")
        .opening("left bay", "{takes: refrigerator, width: 33\"}")
        .opening("right bay", "{takes: refrigerator, width: 31\"}")
        .with(&fridge("Refrigerator", "left bay"))
        .with(&fridge("Refrigerator", "right bay"))
        .finds_one();
    let finding = &found.findings()[0];
    assert_eq!(finding.subject.name(), Some("Refrigerator"));
    assert!(finding.subject.id().is_some());
}

/// What is looked at is counted: each waiver stands under its own few keys, and no two under one, so that a finding
/// is met by asking for its own keys, however many waivers there are.
#[test]
fn thousands_of_waivers_are_looked_up_and_not_walked_through() {
    const ALL: usize = 3_000;
    let rug =
        |n: usize| format!("- selection: Rug {n}\n  kind: rug\n  {}\n", WAIVER.replace("fit/width", "complete/field"));
    let list: String = (0..ALL).map(rug).collect();
    let book = Trial::of("waive/orphan").file("rooms/kitchen/rugs.yaml", list).read();
    let reaches = super::reaches(&book);
    let keys: Vec<_> = reaches.iter().flat_map(super::Reach::keys).collect();
    assert_eq!((reaches.len(), keys.len()), (ALL, ALL));
    assert_eq!(keys.into_iter().collect::<std::collections::BTreeSet<_>>().len(), ALL);
}

/// Where a width can't be reckoned, what stands beside has no place, and what rests on it is not found meanwhile.
#[test]
fn a_waiver_is_kept_while_a_width_is_not_known() {
    let trial = |between: &str| {
        Trial::of("waive/orphan")
            .room("waive: [{rule: clear/landing, because: asked for, by: Ines, on: 2027-01-02}]")
            .opening("bay", &format!("{{takes: refrigerator, width: 36\"{between}}}"))
    };
    trial(", measured between: studs").stays_silent();
    trial("").finds_one();
}
