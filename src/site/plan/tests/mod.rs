//! Plans as people write them, and what is known of each.

mod kitchen;
mod slope;
mod way;

use crate::book::Book;
use crate::read::read;
use crate::source::Folder;
use crate::units::Length;

use super::{Plan, Plans, Thing};

/// The book with that `room.yaml` in it.
fn book(room: &str, selections: &str) -> Book {
    let files = [
        ("book.yaml", "title: Trial\nclient: Nobody\nunits: imperial\ncurrency: USD\n".to_string()),
        ("rooms/kitchen/room.yaml", format!("name: Kitchen\n{room}")),
        ("rooms/kitchen/chosen.yaml", selections.to_string()),
    ];
    let files = files.into_iter().filter(|(_, text)| !text.is_empty());
    let reading = read(&Folder::in_memory(files.map(|(path, text)| (path.to_string(), text.into_bytes())))).unwrap();
    let faults: Vec<_> = reading.findings.iter().filter(|finding| finding.rule.text().starts_with("source/")).collect();
    assert!(faults.is_empty(), "the trial's own YAML is faulty: {faults:#?}");
    reading.book
}

/// Asks something of the one plan of a book.
fn ask<T>(book: &Book, question: impl FnOnce(&Plan<'_>) -> T) -> T {
    let plans = Plans::of(book);
    let plan = plans.room(&book.rooms[0]).expect("a plan");
    assert_eq!(plan.faults, [], "the plan is faulty");
    question(plan)
}

/// The thing of that name.
fn thing<'p, 'a>(plan: &'p Plan<'a>, name: &str) -> &'p Thing<'a> {
    plan.things.iter().find(|thing| thing.name == name).unwrap_or_else(|| panic!("nothing is called `{name}`"))
}

fn inches(text: &str) -> Length {
    Length::parse(&format!("{text}\"")).unwrap()
}
