//! A delivery is received on a telephone without a signal, handed over as a file, and taken in.

use std::path::Path;

use super::drive;
use super::photographed::taken;
use crate::project::{Project, Ran};

const BOOK: &str = "\
title: Elm Row
client: The Okonedo-Lindqvist household
firm: {name: Pennick & Rowe, trade: kitchens and halls}
units: imperial
currency: USD
approvers: [{id: ada, name: Ada Okonedo}]
suppliers: {Ardwin: {claim within: 5 days, claims: claims@ardwin.example}}
";

const KITCHEN: &str = "\
- selection: Rug
  kind: rug
  maker: Zelmor
  model: ZS-1
  supplier: Ardwin
  lead time: 2 weeks
  quantity: 1
  photos: [rug.jpg]
  face size: 48\" x 72\"
  needed for: 2027-02-01
  finish: sand
  price: 100.00
  order: {placed on: 2027-01-16}
- selection: Pulls
  kind: pull
  maker: Brellan
  model: B-7
  supplier: Ardwin
  lead time: 2 weeks
  quantity: 14
  photos: [pulls.jpg]
  needed for: 2027-02-01
  finish: brushed steel
  centre to centre: 5 1/16\"
  projection: 1 1/4\"
  price: 12.00
  order: {placed on: 2027-01-16}
";

/// The book, approved, and what else `book.yaml` says.
pub(super) fn approved(more: &str) -> Project {
    let project = Project::new()
        .file("book.yaml", &format!("{BOOK}{more}"))
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/kitchen/all.yaml", KITCHEN)
        .photo("rooms/kitchen/photos/rug.jpg")
        .photo("rooms/kitchen/photos/pulls.jpg");
    project.run(["issue", "--for", "approval"]).exits(0);
    let root = project.root();
    let receive = ["receive", root.to_str().unwrap(), "--by-hand", "ada", "--decision", "approved"];
    let of = ["--item", "kitchen/rug", "--item", "kitchen/pulls", "--how", "signed on paper"];
    let now = jiff::Timestamp::now().to_string();
    let arguments = [&receive[..], &of[..], &["--given", &now[..10]]].concat();
    Ran::of(project.command(arguments).env("TZ", "UTC")).exits(0);
    project
}

#[test]
fn a_delivery_is_received_without_a_signal_and_taken_in_and_what_was_taken_otherwise_is_asked_anew() {
    let project = approved("");
    let (site, file) = (project.beside("site"), project.beside("delivery.json"));
    project.run(["publish", "--draft", "--out", site.to_str().unwrap()]).exits(0);
    let installer = site.join("installer");
    let [yard, gravel] = taken(&project);
    let [installer, file, yard, gravel] = [&installer, &file, &yard, &gravel].map(|path| path.to_str().unwrap());
    drive("receiving.mjs", &[installer, "deliveries/from-ardwin.html", file, yard, gravel]);
    project.run(["receive", project.root().to_str().unwrap(), file]).says("recorded to be confirmed");
    project.run(["receive", project.root().to_str().unwrap(), file]).says("already recorded");
    let told = project.run(["status", "--format", "json"]).stdout_is_json();
    let waiting = &told["deliveries"]["waiting"][0];
    assert_eq!((waiting["from"].as_str(), waiting["items"].as_u64()), (Some("Ardwin"), Some(2)));
    let digits = waiting["digits"].as_str().unwrap();
    project.run(["receive", project.root().to_str().unwrap(), "--confirm", digits, "--by", "Ines Rowe"]).exits(0);
    project
        .run(["status"])
        .says("came otherwise than approved")
        .says("K-02 Pulls (Kitchen): as approved; 4711, Noor Tembley, ")
        .says("different (finish: <b>grey</b> oak), taken: to be approved anew; 4711, Noor Tembley, ")
        .says("; 3 photographs")
        .says("[approve/came]");
    let told = project.run(["status", "--format", "json"]).stdout_is_json();
    let items = told["deliveries"]["items"].as_array().unwrap();
    let photographs = items.iter().find_map(|item| item["photographs"].as_array()).unwrap();
    assert_eq!(photographs.len(), 2, "{told}");
    assert!(photographs.iter().all(|path| project.root().join(path.as_str().unwrap()).is_file()), "{photographs:?}");
    // The paper of the page: boxes to cross, and what was handed over before.
    project.run(["publish", "--draft", "--out", site.to_str().unwrap()]).exits(0);
    let page = std::fs::read_to_string(site.join("installer/deliveries/from-ardwin.html")).unwrap();
    assert!(page.contains("class=\"box\"") && page.contains("Noor Tembley") && !page.contains("100.00"));
    let orders = std::fs::read_to_string(site.join("office/orders.html")).unwrap();
    assert!(orders.contains("Taken otherwise: ask anew") && orders.contains("&lt;b&gt;grey&lt;/b&gt; oak"));
    stand_small(&site, &orders);
    for page in walkdir::WalkDir::new(site.join("client")).into_iter().map(Result::unwrap) {
        if page.path().extension().is_some_and(|ending| ending == "html") {
            assert!(!std::fs::read_to_string(page.path()).unwrap().contains("4711"), "{}", page.path().display());
        }
    }
}

/// The photographs stand small on the orders page, each leads to the large one, and they stand nowhere else.
fn stand_small(site: &Path, orders: &str) {
    assert_eq!(orders.matches("class=\"shots\"").count(), 1);
    assert!(orders.contains("photograph box.jpg: its name alone came") && orders.contains("alt=\"IMG 4.jpg\""));
    let large: Vec<&str> =
        orders.split("<a href=\"pictures/").skip(1).map(|rest| &rest[..rest.find('"').unwrap()]).collect();
    assert_eq!(large.len(), 2, "{large:?}");
    for picture in large {
        assert!(site.join("office/pictures").join(picture).is_file(), "{picture}");
        for folder in ["client", "installer"] {
            assert!(!site.join(folder).join("pictures").join(picture).exists(), "{picture} in {folder}");
        }
    }
}

#[test]
fn a_trade_says_that_its_issue_came_to_hand_without_a_signal_and_it_is_taken_in() {
    let project = approved("").file(
        "rooms/kitchen/room.yaml",
        "name: Kitchen\nopenings:\n  hole: {takes: item, width: 24\", height: 36\", depth: 20\"}\n",
    );
    let (site, file) = (project.beside("site"), project.beside("came.json"));
    project.run(["issue", "--sent", "1", "--to", "Teo Varrick, site lead"]).exits(0);
    project.run(["publish", "--draft", "--out", site.to_str().unwrap()]).exits(0);
    let installer = site.join("installer");
    let pages = ["index.html", "openings/kitchen/hole.html"];
    drive("acknowledge.mjs", &[&[installer.to_str().unwrap(), file.to_str().unwrap()], &pages[..]].concat());
    project
        .run(["receive", project.root().to_str().unwrap(), file.to_str().unwrap()])
        .exits(0)
        .says("recorded to be confirmed");
    project
        .run(["status"])
        .says("Teo Varrick, site lead: sent issue 1")
        .says("says that issue 1 came, to be confirmed");
}
