//! Two people approve one book, through the server and by a file, from the first issue to the last signature.

use super::drive;
use crate::project::Project;
use std::net::TcpListener;

/// The book; `{port}` is where responses are posted to.
const BOOK: &str = "\
title: Elm Row
client: The Okonedo-Lindqvist household
firm: {name: Pennick & Rowe, trade: kitchens and halls, email: office@pennick.example}
units: imperial
currency: USD
tax: 10 %
approvers:
  - {id: ada, name: Ada Okonedo}
  - {id: sven, name: Sven Lindqvist}
approval: all
allowances: {rugs: 300}
rooms: [kitchen, hall]
responses: {post: \"http://127.0.0.1:{port}/responses\"}
";

const KITCHEN: &str = "\
- selection: Rug
  kind: rug
  maker: Zelmor
  supplier: Ardwin
  lead time: 2 weeks
  quantity: 1
  photos: [rug.jpg]
  face size: 48\" x 72\"
  needed for: 2027-06-01
  allowance: rugs
  options:
    - {id: oak, name: Oak, finish: oak brown, price: 240.00}
    - {id: ash, name: Ash, finish: ash grey, price: 310.00}
- selection: Runner
  kind: rug
  maker: Zelmor
  supplier: Ardwin
  lead time: 2 weeks
  quantity: 1
  photos: [runner.jpg]
  face size: 24\" x 90\"
  needed for: 2027-06-01
  finish: sand
  price: 100.00
- selection: Pulls
  kind: pull
  maker: Brellan
  model: B-7
  supplier: Ardwin
  lead time: 3 weeks
  quantity: 14
  photos: [pulls.jpg]
  needed for: 2027-05-01
  finish: brushed steel
  centre to centre: 5 1/16\"
  projection: 1 1/4\"
  price: 12.00
";

const HALL: &str = "\
- selection: Mirror
  kind: mirror
  place: niche
  maker: Ostrel
  supplier: Ardwin
  lead time: 5 weeks
  quantity: 1
  photos: [mirror.jpg]
  size: {width: 24\", height: 36\"}
  needed for: 2027-06-01
  finish: black frame
  price: 640.00
- selection: Bench rug
  kind: rug
  maker: Zelmor
  supplier: Ardwin
  lead time: 2 weeks
  quantity: 1
  photos: [bench.jpg]
  face size: 24\" x 36\"
  needed for: 2027-06-01
  finish: ash
  price: 90.00
";

const NICHE: &str = "\
name: Hall
openings:
  niche: {takes: mirror, width: 25\", height: 37\", measured: {on: 2027-01-11, by: Teo Varrick}}
";

/// A port that nothing listens on just now; another may take it before it is used.
pub(super) fn free_port() -> u16 {
    TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port()
}

pub(super) fn book(port: u16) -> Project {
    Project::new()
        .file("book.yaml", &BOOK.replace("{port}", &port.to_string()))
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/kitchen/choices.yaml", KITCHEN)
        .file("rooms/hall/room.yaml", NICHE)
        .file("rooms/hall/choices.yaml", HALL)
        .photo("rooms/kitchen/photos/rug.jpg")
        .photo("rooms/kitchen/photos/runner.jpg")
        .photo("rooms/kitchen/photos/pulls.jpg")
        .photo("rooms/hall/photos/mirror.jpg")
        .photo("rooms/hall/photos/bench.jpg")
}

#[test]
fn two_people_approve_one_book_by_private_link_one_of_them_offline_and_a_change_asks_again() {
    let port = free_port();
    let project = book(port);
    let (root, site) = (project.root(), project.beside("site"));
    let program = env!("CARGO_BIN_EXE_bookmatch");
    drive("agreed.mjs", &[program, root.to_str().unwrap(), site.to_str().unwrap(), &port.to_string()]);
}
