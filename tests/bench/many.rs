//! A made-up book of as many selections as are wanted, each with two options, in rooms of twenty.

use std::path::Path;

/// The selections of one room.
const IN_A_ROOM: usize = 20;

/// Lays a book of `count` selections out in a folder.
#[allow(clippy::disallowed_methods)]
pub fn lay_out(root: &Path, count: usize) {
    let write = |path: String, text: String| {
        let path = root.join(path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        std::fs::write(path, text).expect("a file");
    };
    let approvers = "approvers:\n  - {id: ada, name: Ada Oko}\n  - {id: ilse, name: Ilse Oko}\n";
    write(
        "book.yaml".into(),
        format!(
            "title: A\nclient: B\nunits: imperial\ncurrency: USD\nmilestones: {{cabinets set: 2027-09-01}}\n{approvers}"
        ),
    );
    for number in 0..count {
        let (room, at) = (number / IN_A_ROOM, number % IN_A_ROOM);
        if at == 0 {
            let openings: String = (0..IN_A_ROOM.min(count - number)).map(opening).collect();
            write(format!("rooms/r{room}/room.yaml"), format!("name: Room {room}\nopenings:\n{openings}"));
        }
        write(format!("rooms/r{room}/s{at}.yaml"), selection(number, at));
    }
}

fn opening(at: usize) -> String {
    format!(
        "  o{at}: {{takes: range, width: [30 1/16\", 30 1/4\", 30 1/8\"], height: 37\", depth: 25 1/2\", measured: {{on: 2027-01-11, by: Teo}}}}\n"
    )
}

fn selection(number: usize, at: usize) -> String {
    let option = |id: &str, price: &str| {
        format!(
            "  - {{id: {id}, maker: Velmora, model: {id}-{number}, finish: {id}, size: {{width: 29 7/8\", height: 35 3/4\" to 36 3/4\", depth: 25\", depth with handle: 26 1/2\"}}, price: {price}}}\n"
        )
    };
    let [steel, enamel] = [option("steel", "3180.00"), option("enamel", "3590.00")];
    format!(
        "selection: Range {at}\nkind: range\nplace: o{at}\nneeded for: cabinets set\nwhy: Sealed burners, and an oven wide enough for a full sheet pan.\nsupplier: Oren\nlead time: 6-8 weeks\nquantity: 1\nfit:\n  sheet: {{name: C-30, revision: D, date: 2026-09-04}}\n  opening: {{width: 30\" to 30 1/4\", height: 36\", depth: at least 24\"}}\n  needs: {{power: 120 V 15 A 5-15, gas: natural gas}}\n  weight: 205 lb\noptions:\n{steel}{enamel}chosen: steel\n"
    )
}
