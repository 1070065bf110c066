//! What stands on the pages.

use super::sample::{kitchen, picture};
use bookmatch::publish::sheets::sign_off;

#[test]
fn first() {
    let bytes = sign_off(&kitchen(), &picture).unwrap();
    std::fs::write("/tmp/sheets-k.pdf", bytes).unwrap();
    let mut d = kitchen();
    d.draft = true;
    d.paper = bookmatch::views::sign_off::Paper::UsLetter;
    d.language = "es".to_owned();
    std::fs::write("/tmp/sheets-d.pdf", sign_off(&d, &picture).unwrap()).unwrap();
    let long = |n: usize| "Wolfeschlegelsteinhausen".repeat(n);
    d.language = "en".to_owned();
    d.paper = bookmatch::views::sign_off::Paper::A4;
    d.approvers[0].name = long(9);
    d.approvers[1].name = "Name with very many short words in it, ".repeat(6);
    d.project.title = "The house at the very far end of the long lane by the water, second floor, rear".to_owned();
    d.project.client = long(12);
    d.sheet.title = long(4);
    d.sheet.scope = "#text(red)[x] $ x^2 $ *b* _i_ \\ \n \u{0} @ref <lab> `raw` // c /* */ ~".to_owned();
    d.statement = "مرحبا بالعالم 小林家の台所 Привет Ελλάδα 🏠 e\u{301} zero\u{0}nul\u{7f}\u{e000}\u{ffff} tab\ttab\nnew\r\nline 1/2 5/8/2027 120/240 24/7".to_owned();
    d.rooms[0].items[0].name = long(5);
    d.rooms[0].items[0].tag = long(3);
    d.rooms[0].items[0].price = long(3);
    d.rooms[0].items[1].choices[0].price = long(8);
    d.rooms[0].items[1].description.extend((0..300).map(|i| super::sample::line(&long(2), &format!("{i} {}", long(6)))));
    std::fs::write("/tmp/sheets-x.pdf", sign_off(&d, &picture).unwrap()).unwrap();
    let bytes = sign_off(&super::sample::house(60), &picture).unwrap();
    std::fs::write("/tmp/sheets-h.pdf", bytes).unwrap();
}
