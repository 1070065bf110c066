//! Sign-off sheets with the decisions and signatures on record, as `publish` sets them.

use std::fs;
use std::path::{Path, PathBuf};

use bookmatch::record::{Key, Store};
use serde_json::{Value, json};

use super::readers::Pdf;
use crate::issued::{now, seal};
use crate::project::Project;

const RUG: &str = "selection: Rug\nkind: rug\nmaker: Zelmor\nmodel: ZS-1\nsupplier: Ardwin\nlead time: 2 weeks\n\
    needed for: 2027-06-01\nface size: 48\" x 72\"\nquantity: 1\nphotos: [rug.jpg]\nfinish: oak\nprice: 100.00\n";
/// A stroke down to the right and one dot, as the pad draws them.
const DRAWING: &str = "M100 20L500 140M520 60";

/// A rug and a mat, issued for approval, and the key of one of the two who decide.
struct Signed {
    project: Project,
    key: Key,
}

impl Signed {
    fn new() -> Self {
        let project = Project::new()
            .file(
                "book.yaml",
                "title: Small\nclient: Nobody\nunits: imperial\ncurrency: USD\napprovers:\n\
                 \x20 - {id: ada, name: Ada Marrowby}\n  - {id: sven, name: Sven Lint}\n",
            )
            .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
            .file("rooms/kitchen/mat.yaml", &RUG.replace("Rug", "Mat"))
            .file("rooms/kitchen/rug.yaml", RUG)
            .photo("rooms/kitchen/photos/rug.jpg");
        project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
        let store = Store::of_book(&project.root());
        let key = store.open().unwrap().invite("ada", now(), "2027-01-15".parse().unwrap()).unwrap();
        Self { project, key }
    }

    fn issue(&self) -> Value {
        serde_json::from_slice(&fs::read(self.project.root().join("record/issues/0001.json")).unwrap()).unwrap()
    }

    /// What `ada` decides of some items, as her page hands it over.
    fn hand_over(&self, decisions: &[(&str, &str)], name: &str, drawing: &str) {
        let issue = self.issue();
        let mark = |item: &str| {
            issue["items"].as_array().unwrap().iter().find(|one| one["item"] == item).unwrap()["mark"].clone()
        };
        let asked = |(item, decision): &(&str, &str)| {
            let asked = json!({"room": "kitchen", "item": item, "mark": mark(item), "decision": decision});
            let mut asked = asked;
            if *decision == "approved as noted" {
                asked["note"] = "if the edge is #bound, *twice*".into();
            }
            asked
        };
        let response = json!({
            "format": "bookmatch response 1", "book": issue["book"], "issue": 1, "who": "ada",
            "nonce": "0123456789abcdef0123456789abcdef", "made": "2027-01-16T19:20:00Z",
            "items": decisions.iter().map(asked).collect::<Vec<_>>(),
            "signed": {"name": name, "statement": "I have seen what is shown.", "drawing": drawing},
        });
        let file = self.project.beside("response.json");
        fs::write(&file, seal(response, &self.key)).unwrap();
        self.project.run(["receive", file.to_str().unwrap()]).exits(0).says("recorded");
    }

    fn published(&self) -> PathBuf {
        let out = self.project.beside("site");
        self.project.run(["publish", "--today", "2027-01-17", "--out", out.to_str().unwrap()]).exits(0);
        out
    }

    fn sheet(&self) -> Pdf {
        Pdf::of(&fs::read(self.published().join("client/sheets/whole-book.pdf")).unwrap())
    }
}

/// A page as grey pixels, by poppler, 72 to an inch.
struct Grey {
    width: usize,
    pixels: Vec<u8>,
}

impl Grey {
    fn of(pdf: &Pdf, page: usize) -> Grey {
        let folder = tempfile::tempdir().unwrap();
        let stem = folder.path().join("page");
        let (page, stem) = (page.to_string(), stem.to_str().unwrap().to_owned());
        pdf.ask("pdftoppm", &["-r", "72", "-gray", "-singlefile", "-f", &page], &[&stem]);
        let bytes = fs::read(format!("{stem}.pgm")).unwrap();
        // Netpbm P5: a line of its kind, one of width and height, one of the most, then the pixels.
        let mut lines = bytes.splitn(4, |byte| *byte == b'\n');
        assert_eq!(lines.next().unwrap(), b"P5");
        let size = String::from_utf8(lines.next().unwrap().to_vec()).unwrap();
        let width = size.split(' ').next().unwrap().parse().unwrap();
        Grey { width, pixels: lines.nth(1).unwrap().to_vec() }
    }

    /// Whether there is ink within two pixels of a place; a dot of one point may lie on four of them.
    fn has_ink(&self, x: f64, y: f64) -> bool {
        let near = |at: f64| (at - 2.0).max(0.0) as usize..=(at + 2.0) as usize;
        near(y).any(|y| near(x).any(|x| self.pixels[y * self.width + x] < 230))
    }
}

/// The page that has the signatures, and the left and upper edge of the word below the first one.
fn place(pdf: &Pdf) -> (usize, f64, f64) {
    let page = pdf.pages().iter().position(|page| page.contains("TOTAL AND SIGNATURES")).unwrap() + 1;
    let number = page.to_string();
    let words = pdf.ask("pdftotext", &["-bbox", "-f", &number, "-l", &number], &["-"]);
    let line = words.lines().find(|line| line.contains(">Signature<")).unwrap();
    let of = |name: &str| -> f64 {
        let rest = line.split_once(&format!("{name}=\"")).unwrap().1;
        rest.split_once('"').unwrap().0.parse().unwrap()
    };
    (page, of("xMin"), of("yMin"))
}

#[test]
fn a_drawn_signature_stands_on_its_line_with_name_and_date() {
    let book = Signed::new();
    book.hand_over(&[("rug", "approved"), ("mat", "approved as noted")], "A. Marrowby #panic()", DRAWING);
    let pdf = book.sheet();
    let text = pdf.pages().concat();
    for needed in [
        "A. Marrowby #panic()",
        "16 Jan 2027",
        "by private link; of issue 1, all 2 items",
        "approved, 16 Jan 2027, by private link",
        "approved as noted, 16 Jan 2027, by private link",
        "if the edge is #bound, *twice*",
    ] {
        assert!(text.contains(needed), "no `{needed}` in:\n{text}");
    }
    // Sven's boxes are still to be crossed, and his line is still to be signed; hers are not.
    assert_eq!(text.matches("Initials").count(), 2, "{text}");
    let inside = pdf.ask("qpdf", &["--json"], &[]);
    assert!(inside.contains("\"/Alt\": \"u:Drawn signature of A. Marrowby #panic()\""));
    assert!(pdf.ask("qpdf", &["--check"], &[]).contains("No syntax or stream encoding errors found"));
    assert!(pdf.ask("pdfinfo", &["-meta"], &[]).contains("<pdfuaid:part>1</pdfuaid:part>"));
    // 420 by 120 units, at 12 mm for the height: 42 mm by 12 mm, 1 mm above the line, which is 1.2 mm above the word.
    let (page, left, top) = place(&pdf);
    let (grey, mm) = (Grey::of(&pdf, page), 72.0 / 25.4);
    let at = |x: f64, y: f64| grey.has_ink(left + x * mm, top - 2.2 * mm - (12.0 - y) * mm);
    for (x, y) in [(0.5, 0.2), (10.0, 3.0), (20.0, 6.0), (39.5, 11.8), (42.0, 4.0)] {
        assert!(at(x, y), "no ink at {x} mm, {y} mm");
    }
    for (x, y) in [(10.0, 9.0), (30.0, 2.0), (36.0, 3.0)] {
        assert!(!at(x, y), "ink at {x} mm, {y} mm");
    }
}

#[test]
fn a_typed_name_is_enough_and_no_signature_is_shown_of_what_changed() {
    let book = Signed::new();
    book.hand_over(&[("rug", "approved"), ("mat", "approved")], "Ada Marrowby", "");
    let pdf = book.sheet();
    let text = pdf.pages().concat();
    let line = text.lines().find(|line| line.matches("Ada Marrowby").count() == 2).unwrap_or_else(|| panic!("{text}"));
    assert!(line.contains("16 Jan 2027"), "{line}");
    assert!(!pdf.ask("qpdf", &["--json"], &[]).contains("Drawn signature"));

    let book = Signed { project: book.project.file("rooms/kitchen/rug.yaml", &RUG.replace("oak", "ash")), ..book };
    let text = book.sheet().pages().concat();
    assert!(text.contains("by private link; of issue 1, K-01"), "{text}");
    assert!(text.contains("For what is still to be signed of this sheet"), "{text}");
    assert!(text.contains("Changed since"), "{text}");

    let both = book.project.file("rooms/kitchen/mat.yaml", &RUG.replace("Rug", "Mat").replace("oak", "ash"));
    let text = Signed { project: both, ..book }.sheet().pages().concat();
    assert!(!text.contains("by private link") && !text.contains("16 Jan 2027"), "{text}");
    assert_eq!(text.matches("Initials").count(), 4, "{text}");
}

#[test]
fn a_response_that_was_edited_is_told_and_its_drawing_is_not_shown() {
    let book = Signed::new();
    book.hand_over(&[("rug", "approved")], "Ada Marrowby", DRAWING);
    let folder = book.project.root().join("record/responses");
    let path = fs::read_dir(folder).unwrap().next().unwrap().unwrap().path();
    let edited = fs::read_to_string(&path).unwrap().replace("M100 20", "M100 21");
    fs::write(&path, &edited).unwrap();
    let review = ["review", "--today", "2027-01-17"];
    book.project.run(review).exits(1).says("the response of `ada` to issue 1 is not as it was recorded");
    let out = book.project.beside("site");
    let out = out.to_str().unwrap();
    book.project.run(["publish", "--draft", "--today", "2027-01-17", "--out", out]).exits(0);
    let pdf = Pdf::of(&fs::read(Path::new(out).join("client/sheets/whole-book.pdf")).unwrap());
    assert!(!pdf.ask("qpdf", &["--json"], &[]).contains("Drawn signature"));
    fs::remove_file(&path).unwrap();
    book.project.run(review).exits(0).says("the response of `ada` to issue 1 is gone");
}

#[test]
fn a_sheet_signed_on_paper_says_so_and_its_scan_is_the_offices_alone() {
    let book = Signed::new();
    let scan = b"%PDF-1.7 a scan of the sheet, signed in ink";
    fs::write(book.project.beside("scan.pdf"), scan).unwrap();
    let scan_path = book.project.beside("scan.pdf");
    let given = [
        "receive",
        "--by-hand",
        "sven",
        "--item",
        "kitchen/rug",
        "--decision",
        "approved",
        "--how",
        "handed over on site, 2027-01-16",
        "--scan",
        scan_path.to_str().unwrap(),
    ];
    book.project.run(given).exits(0);
    let out = book.published();
    let pdf = Pdf::of(&fs::read(out.join("client/sheets/whole-book.pdf")).unwrap());
    let text = pdf.pages().concat();
    assert!(text.contains("signed on paper; recorded"), "{text}");
    assert!(!text.contains("handed over on site"), "the designer's own words: {text}");
    let scans: Vec<PathBuf> = fs::read_dir(out.join("office/scans")).unwrap().map(|one| one.unwrap().path()).collect();
    let [copy] = scans.as_slice() else { panic!("{scans:?}") };
    assert_eq!(fs::read(copy).unwrap(), scan);
    let page = fs::read_to_string(out.join("office/index.html")).unwrap();
    let name = copy.file_name().unwrap().to_str().unwrap();
    assert!(page.contains(&format!("href=\"scans/{name}\"")), "{page}");
    assert!(page.contains("signed on paper: handed over on site, 2027-01-16; recorded"), "{page}");
    for folder in ["client", "installer"] {
        for entry in walkdir::WalkDir::new(out.join(folder)).into_iter().map(Result::unwrap) {
            let bytes = if entry.file_type().is_file() { fs::read(entry.path()).unwrap() } else { vec![] };
            let has = |text: &[u8]| bytes.windows(text.len()).any(|window| window == text);
            assert!(!has(scan) && !has(&name.as_bytes()[..16]), "{}", entry.path().display());
            assert!(!has(b"handed over on site"), "{}", entry.path().display());
        }
    }
}

/// What a stranger says in an approver's name, and what the designer wrote of how a decision was given.
#[test]
fn what_is_not_confirmed_and_the_designers_own_words_stand_on_no_page_but_the_offices() {
    let book = Signed::new();
    let mark = |item: &str| {
        let issue = book.issue();
        issue["items"].as_array().unwrap().iter().find(|one| one["item"] == item).unwrap()["mark"].clone()
    };
    let asked = json!({"room": "kitchen", "item": "mat", "mark": mark("mat"), "decision": "approved as noted", "note": "free of charge of course"});
    let response = json!({
        "format": "bookmatch response 1", "book": book.issue()["book"], "issue": 1, "who": "ada",
        "nonce": "0123456789abcdef0123456789abcdef", "made": "2027-01-16T19:20:00Z", "items": [asked],
        "signed": {"name": "A. Stranger", "statement": "I have seen what is shown.", "drawing": ""},
    });
    let file = book.project.beside("response.json");
    fs::write(&file, response.to_string()).unwrap();
    book.project.run(["receive", file.to_str().unwrap()]).exits(0).says("recorded as unsigned");
    let how = "after much grumbling, on the telephone";
    let given = ["receive", "--by-hand", "sven", "--item", "kitchen/rug", "--decision", "approved", "--how", how];
    book.project.run(given).exits(2).says("it is not said when it was given");
    book.project.run([&given[..], &["--given", "2027-01-16"]].concat()).exits(0);
    let out = book.published();
    let office = fs::read_to_string(out.join("office/index.html")).unwrap();
    assert!(office.contains(how) && office.contains("unsigned"), "{office}");
    let words = ["free of charge of course", "A. Stranger", "grumbling", "nsigned: to be confirmed"];
    for folder in ["client", "installer"] {
        for entry in walkdir::WalkDir::new(out.join(folder)).into_iter().map(Result::unwrap) {
            let is = |ending: &str| entry.path().extension().is_some_and(|end| end == ending);
            let text = match () {
                () if is("pdf") => Pdf::of(&fs::read(entry.path()).unwrap()).pages().concat(),
                () if is("html") => fs::read_to_string(entry.path()).unwrap(),
                () => continue,
            };
            for words in words {
                assert!(!text.contains(words), "{}: {words}", entry.path().display());
            }
        }
    }
    let page = fs::read_to_string(out.join("client/items/kitchen/rug.html")).unwrap();
    assert!(page.contains("by hand, written down by the designer"), "{page}");
    let mat = fs::read_to_string(out.join("client/items/kitchen/mat.html")).unwrap();
    assert!(mat.contains("Waiting for signatures"), "{mat}");
}

#[test]
fn the_page_to_sign_and_the_office_show_the_drawing_from_its_numbers() {
    let book = Signed::new();
    book.hand_over(&[("rug", "approved"), ("mat", "rejected")], "<b>Ada</b> Marrowby", DRAWING);
    let out = book.published();
    for page in ["client/sign.html", "office/index.html"] {
        let page = fs::read_to_string(out.join(page)).unwrap();
        assert!(page.contains("<path d=\"M0 0L400 120M420 40L420 40\"/>"), "{page}");
        assert!(!page.contains("<b>Ada</b>"), "{page}");
    }
}
