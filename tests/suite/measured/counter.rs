//! A counter that was signed, and an opening beside it that is measured again.

use std::fs;

use crate::project::{Project, Ran};

const DAY: [&str; 2] = ["--today", "2027-01-15"];

const BOOK: &str =
    "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\napprovers: [{id: ada, name: Ada Marrowby}]\n";

const COUNTER: &str = "\
selection: Counter
kind: counter
name: Green schist
maker: Zelmor
supplier: Ardwin
lead time: 2 weeks
quantity: 1
finish: honed
thickness: 1 1/4\"
edge: eased
price: 900.00
photos: [schist.jpg]
top: {material: stone, lies on: [range wall], overhang: 1 1/2\"}
";

const CART: &str = "\
selection: Cart
kind: item
place: niche
maker: Zelmor
supplier: Ardwin
lead time: 2 weeks
quantity: 1
price: 90.00
photos: [schist.jpg]
size: {width: 20\", height: 30\", depth: 20\"}
";

/// A wall with a niche between cabinets, so wide; all that is right of it moves with that.
fn room(width: &str, of_end: &str) -> String {
    format!(
        "name: Kitchen\noutline: 14' x 9'\nruns:\n  range wall:\n    wall: A\n    depth: 24\"\n    \
         counter: {{depth: 25 1/2\", height: 36\"}}\n    parts: [{{cabinet: pots, width: 30\", drawers: 3}}, \
         {{opening: niche}}, {{cabinet: last, width: {of_end}, doors: 2}}]\nopenings:\n  niche: {{takes: item, \
         width: {width}, height: 37\", depth: 25 1/2\"}}\n"
    )
}

/// The book with the counter signed as it was laid out at first.
fn signed() -> Project {
    let project = Project::new()
        .file("book.yaml", BOOK)
        .file("rooms/kitchen/room.yaml", &room("30\"", "46\""))
        .file("rooms/kitchen/counter.yaml", COUNTER)
        .file("rooms/kitchen/cart.yaml", CART)
        .photo("rooms/kitchen/photos/schist.jpg");
    run(&project, &["issue", "--for", "approval"]).exits(0);
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let how = ["--decision", "approved", "--how", "said on the telephone", "--given", &given];
    let items = ["--item", "kitchen/counter", "--item", "kitchen/cart"];
    project.run([&["receive", "--by-hand", "ada"], &items[..], &how].concat()).exits(0);
    project
}

fn run(project: &Project, arguments: &[&str]) -> Ran {
    project.run([arguments, &DAY].concat())
}

fn pages(project: &Project) -> [String; 2] {
    let site = project.beside("site");
    run(project, &["publish", "--draft", "--out", site.to_str().unwrap()]);
    ["client/items/kitchen/counter.html", "installer/trades/kitchen/fabricator.html"]
        .map(|page| fs::read_to_string(site.join(page)).unwrap())
}

/// What is cut follows the tape; what was signed stands, is drawn as it was signed, and says by how much it moved.
#[test]
fn a_reading_that_moves_its_end_by_little_undoes_no_signature() {
    let project = signed();
    run(&project, &["status"]).says("2 approved");
    let [client, _] = pages(&project);
    assert!(!client.contains("Measured since"));
    for (width, of_end) in [("29 7/8\"", "46\""), ("30 1/2\"", "46\""), ("30\"", "45 5/8\"")] {
        let project = signed().file("rooms/kitchen/room.yaml", &room(width, of_end));
        run(&project, &["status"]).says("2 approved");
        run(&project, &["compare", "1", "now"]).does_not_say("Counter, kitchen").does_not_say("to sign");
        run(&project, &["issue", "--for", "approval"]).exits(0);
        run(&project, &["status"]).says("2 approved");
        let [client, fabricator] = pages(&project);
        assert!(client.contains("Measured since, ends and seams move by up to"), "{width}, {of_end}");
        assert!(!fabricator.contains("Measured since"), "it is cut as measured");
        run(&project, &["issue", "--for", "construction"]).exits(0);
    }
}

/// Little by little is not little: each reading is held against what was signed.
#[test]
fn what_moves_further_or_is_another_is_to_be_signed_anew() {
    for (width, of_end) in [("30 5/8\"", "46\""), ("29\"", "46\""), ("30\"", "40\"")] {
        let project = signed().file("rooms/kitchen/room.yaml", &room(width, of_end));
        run(&project, &["status"]).says("changed since signed");
        run(&project, &["compare", "1", "now"]).says("Counter, kitchen").says("to sign");
    }
    let project = signed();
    for width in ["30 3/8\"", "30 3/4\""] {
        fs::write(project.root().join("rooms/kitchen/room.yaml"), room(width, "46\"")).unwrap();
        run(&project, &["issue", "--for", "approval"]).exits(0);
    }
    run(&project, &["status"]).says("changed since signed");
}
