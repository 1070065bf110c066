//! Several record at once: processes, and threads of one process.

use super::kills::start;
use super::*;

fn each_once(ground: &Ground, who: &[&str], count: u32) {
    let mut facts = ground.facts();
    for name in who {
        let own = facts.iter().filter(|(who, _)| who == name).map(|(_, number)| *number);
        assert!(own.eq(1..=count), "{name} in its own order");
    }
    facts.sort_unstable();
    facts.dedup();
    assert_eq!(facts.len(), who.len() * count as usize);
}

#[test]
fn three_processes_record_at_once_and_each_fact_stands_once() {
    let ground = Ground::new();
    let who = ["a", "b", "c"];
    let children = who.map(|name| start(&ground, name, 1..101, usize::MAX));
    for child in children {
        let ended = child.wait_with_output().unwrap();
        assert!(ended.status.success(), "{}", String::from_utf8_lossy(&ended.stderr));
    }
    each_once(&ground, &who, 100);
    let openings = ground.chain().lines.iter().filter(|line| matches!(line.fact, Fact::Opened(_))).count();
    assert_eq!(openings, 1);
}

#[test]
fn threads_of_one_store_and_of_another_record_at_once_and_each_fact_stands_once() {
    let ground = Ground::new();
    let (one, other) = (ground.store(), ground.store());
    let who = ["a", "b", "c", "d"];
    std::thread::scope(|scope| {
        for (name, store) in who.iter().zip([&one, &other, &one, &other]) {
            scope.spawn(move || (1..=50).for_each(|number| record(store, name, number).unwrap()));
        }
    });
    each_once(&ground, &who, 50);
}
