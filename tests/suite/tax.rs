//! Prices that hold their tax: sums, sheets and change orders say so, and count to the cent.

use std::fs;

use crate::project::Project;

fn book(prices: &str, price: &str) -> Project {
    Project::new()
        .file(
            "book.yaml",
            &format!(
                "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\ntax: 20 %\n{prices}\
                 approvers: [{{id: ada, name: Ada Marrowby}}]\nallowances: {{rugs: 500}}\n"
            ),
        )
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/kitchen/rug.yaml", &rug(price))
        .photo("rooms/kitchen/photos/rug.jpg")
}

fn rug(price: &str) -> String {
    format!(
        "selection: Rug\nkind: rug\nmaker: Zelmor\nmodel: ZS-1\nsupplier: Ardwin\nlead time: 2 weeks\n\
         needed for: 2027-06-01\nface size: 48\" x 72\"\nquantity: 1\nphotos: [rug.jpg]\nfinish: oak\n\
         allowance: rugs\nprice: {price}\n"
    )
}

fn issue(project: &Project) -> crate::project::Ran {
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0)
}

/// The text of the page that is signed, and of the office's money.
fn pages(project: &Project) -> String {
    let out = project.beside("site");
    let to = out.to_str().expect("UTF-8");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", to]).exits(0);
    let page = |path: &str| fs::read_to_string(out.join(path)).expect(path);
    page("client/sign.html") + &page("office/money.html")
}

#[test]
fn prices_with_tax_in_are_told_so_and_the_tax_in_them_to_the_cent() {
    let with = pages(&book("prices: with tax\n", "100.01"));
    // 100.01 × 20 / 120 = 16.668…
    for says in ["prices with tax", "Tax in the total, 20 %", "$16.67", "$100.01", "With tax; settled is"] {
        assert!(with.contains(says), "{says}");
    }
    assert!(!with.to_lowercase().contains("before tax") && !with.contains("$120.01"), "nothing is added to it");
    let before = pages(&book("", "100.01"));
    for says in ["prices before tax; tax is added below", "Items before tax", "$20.00", "$120.01"] {
        assert!(before.contains(says), "{says}");
    }
}

#[test]
fn a_change_order_tells_the_sum_once() {
    let project = book("prices: with tax\n", "120.00");
    issue(&project).says("$120.00 settled").does_not_say("$144.00");
    let project = project.file("rooms/kitchen/rug.yaml", &rug("132.00"));
    let order = project.run(["compare", ".", "1", "now", "--today", "2027-01-15"]);
    order.says("with tax: ").says("$132.00").does_not_say("before tax").does_not_say("158.40");
}

/// The same figure means something else: what was approved is held until it is asked anew.
#[test]
fn approvals_are_held_when_prices_begin_to_hold_their_tax() {
    let project = book("", "120.00");
    issue(&project);
    let how = "by telephone, 2027-01-16";
    project.run(["receive", "--by-hand", "ada", "--item", "K-01", "--decision", "approved", "--how", how]).exits(0);
    let changed = fs::read_to_string(project.root().join("book.yaml")).expect("a book") + "prices: with tax\n";
    let project = project.file("book.yaml", &changed);
    project.run(["review", "--today", "2027-01-17"]).says("`prices` from `before tax` to `with tax`");
}
