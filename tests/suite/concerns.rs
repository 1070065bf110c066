//! Whom a finding concerns: what the review says of planning is the office's, the client reads what living with a
//! choice means only where the book lets it be told, and cautions are everybody's.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::project::Project;

/// In plain words, what living with each fault of the book means; never the fault itself.
const LIVING: [&str; 3] = [
    "The way through this room is narrower than is usual",
    "What stands at the back of a shelf here is hard to reach",
    "A light hangs near the tub or shower",
];

/// What the review says of the same, and of what is let stand.
const FOUND: [&str; 4] = ["do not come out", "advised", "asked for", "they are used to it"];

/// A way too narrow, deep shelves that somebody let stand, and a light in reach of a tub, with what `room` and
/// `item` say besides.
fn book(room: &str, item: &str) -> Project {
    let waived = |rule: &str| format!("{{rule: {rule}, because: they are used to it, by: Ines, on: 2027-01-12}}");
    Project::new()
        .file("book.yaml", "title: A\nclient: B\nunits: imperial\ncurrency: USD\nlanguages: [en, es]\n")
        .file("rooms/bath/room.yaml", &format!("name: Bath\nclearances: {{walkway: 30\"}}\n{room}"))
        .file(
            "rooms/bath/shelves.yaml",
            &format!(
                "selection: Shelves\nkind: cabinet\n{item}waive: [{}]\nstores: {{depth: 24\", shelves: fixed}}\n",
                waived("store/deep-shelf")
            ),
        )
        .file(
            "rooms/bath/light.yaml",
            &format!(
                "selection: Lamp\nkind: pendant\nwaive: [{}]\nhangs: {{bottom: 90\", from tub: 24\", rim: 20\"}}\n",
                waived("light/bath-zone")
            ),
        )
}

struct Site {
    _project: Project,
    out: PathBuf,
}

impl Site {
    fn of(project: Project) -> Self {
        let out = project.beside("site");
        let arguments = ["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()];
        project.run(arguments).exits(0);
        Self { _project: project, out }
    }

    /// All that a folder's pages, data, scripts and sheets say.
    fn says(&self, folder: &str) -> String {
        let mut text = String::new();
        let mut folders = vec![self.out.join(folder)];
        while let Some(folder) = folders.pop() {
            for path in std::fs::read_dir(&folder).unwrap().map(|entry| entry.unwrap().path()) {
                match path.extension().and_then(|ending| ending.to_str()) {
                    _ if path.is_dir() => folders.push(path),
                    Some("html" | "json" | "js") => text += &std::fs::read_to_string(&path).unwrap(),
                    Some("pdf") => text += &sheet(&path),
                    _ => {}
                }
            }
        }
        text
    }

    fn page(&self, path: &str) -> String {
        std::fs::read_to_string(self.out.join(path)).unwrap()
    }
}

/// The words of a sheet, by Poppler.
fn sheet(path: &Path) -> String {
    let text = Command::new("pdftotext").args(["-raw"]).arg(path).arg("-").output().expect("poppler-utils").stdout;
    String::from_utf8_lossy(&text).replace('\n', " ")
}

fn told(text: &str, of: &[&'static str]) -> Vec<&'static str> {
    of.iter().copied().filter(|words| text.contains(words)).collect()
}

#[test]
fn nothing_of_planning_is_shown_to_the_client_unless_the_book_says_so() {
    let site = Site::of(book("", ""));
    let (client, installer, office) = (site.says("client"), site.says("installer"), site.says("office"));
    assert_eq!((told(&client, &LIVING), told(&client, &FOUND)), (vec![], vec![]));
    // Planning is not the trade's either; a light over a tub is, with who let it stand and why.
    assert_eq!(told(&installer, &["do not come out", "advised"]), Vec::<&str>::new());
    assert_eq!(told(&installer, &["hangs 24", "they are used to it"]), ["hangs 24", "they are used to it"]);
    assert_eq!(told(&office, &FOUND), FOUND);
    assert_eq!(told(&office, &LIVING), Vec::<&str>::new());
}

#[test]
fn what_living_with_it_means_is_told_where_the_room_or_the_item_says_so() {
    let site = Site::of(book("tell client: yes\n", ""));
    let client = site.says("client");
    assert_eq!((told(&client, &LIVING), told(&client, &FOUND)), (LIVING.to_vec(), vec![]));
    assert_eq!(told(&site.page("client/rooms/bath.html"), &LIVING), [LIVING[0]]);
    assert_eq!(told(&site.page("client/items/bath/shelves.html"), &LIVING), [LIVING[1]]);

    let spanish = site.page("client/es/rooms/bath.html");
    assert!(spanish.contains("El paso por esta estancia es más estrecho") && !spanish.contains(LIVING[0]));

    let of_item = Site::of(book("", "tell client: yes\n"));
    assert_eq!(told(&of_item.says("client"), &LIVING), [LIVING[1]]);
    let but_for_it = Site::of(book("tell client: yes\n", "tell client: no\n"));
    assert_eq!(told(&but_for_it.says("client"), &LIVING), [LIVING[0], LIVING[2]]);
}

#[test]
fn a_caution_is_told_to_everybody_on_pages_and_sheets_whatever_is_waived_or_kept_back() {
    const POWER: &str = "Electricity can kill";
    for switch in ["", "tell client: no\n", "tell client: yes\n"] {
        let site = Site::of(book(switch, ""));
        for page in ["client/items/bath/lamp.html", "client/sign.html", "installer/index.html", "office/review.html"] {
            assert!(site.page(page).contains(POWER), "{page} with `{switch}`");
        }
        assert!(sheet(&site.out.join("client/sheets/rooms/bath.pdf")).contains(POWER), "{switch}");
    }
}

#[test]
fn what_living_with_it_means_is_no_part_of_the_mark() {
    let marks = |project: Project| {
        let page = Site::of(project).page("client/sign.html");
        let marks = page.split("<span class=\"mark\">").skip(1).map(|rest| rest[..9].to_string());
        marks.collect::<Vec<_>>()
    };
    let before = marks(book("", ""));
    assert!(before.len() >= 2, "{before:?}");
    assert_eq!(before, marks(book("tell client: yes\n", "tell client: yes\n")));
}
