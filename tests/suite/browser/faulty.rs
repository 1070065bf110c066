//! Each page of `tests/browser/faulty` says what must be found in it; nothing else may be.

use super::{BrowserReport, Fault, driver, home, look_at};
use std::fs;

/// `must find: CHECK @WIDTH: WORDS`; width and words may be left out.
#[derive(Debug)]
struct Expected {
    page: String,
    check: String,
    width: Option<u32>,
    words: String,
}

impl Expected {
    fn is(&self, fault: &Fault) -> bool {
        self.page == fault.page
            && self.check == fault.check
            && (self.width.is_none() || self.width == fault.width)
            && fault.fault.contains(&self.words)
    }
}

fn expected_in(page: &str, text: &str) -> Vec<Expected> {
    let notes = text.lines().filter_map(|line| line.strip_prefix("<!-- must find: "));
    let read = |note: &str| {
        let note = note.trim_end_matches(" -->");
        let (place, words) = note.split_once(": ").unwrap_or((note, ""));
        let (check, width) = place
            .split_once(" @")
            .map_or((place, None), |(check, width)| (check, Some(width.parse().expect("a width in pixels"))));
        Expected { page: page.to_owned(), check: check.to_owned(), width, words: words.to_owned() }
    };
    notes.map(read).collect()
}

fn expected(looked: &BrowserReport) -> Vec<Expected> {
    let read = |page: &String| {
        let text = fs::read_to_string(home().join("faulty").join(page)).expect("a faulty page");
        expected_in(page, &text)
    };
    looked.pages.iter().flat_map(read).collect()
}

#[test]
fn every_planted_fault_is_found_and_nothing_else() {
    let looked = look_at(&home().join("faulty"));
    let expected = expected(&looked);
    let missed = expected.iter().filter(|one| !looked.faults.iter().any(|fault| one.is(fault)));
    let missed: Vec<String> = missed.map(|one| format!("missed: {one:?}")).collect();
    let extra = looked.faults.iter().filter(|fault| !expected.iter().any(|one| one.is(fault)));
    let extra: Vec<String> = extra.map(|fault| format!("not planted: {fault}")).collect();
    assert!(missed.is_empty() && extra.is_empty(), "\n{}\n{}\n", missed.join("\n"), extra.join("\n"));

    let checks: Vec<String> = serde_json::from_str(&driver(&["--checks"])).expect("names of checks");
    for check in checks {
        let proved = expected.iter().any(|one| one.check == check);
        assert!(proved, "no page of tests/browser/faulty proves the check `{check}`");
    }
}

#[test]
fn a_part_that_leans_on_another_part_is_found() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let page = |links: &str| {
        let head = "<meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>A part</title><link rel=\"icon\" href=\"data:,\">";
        format!(
            "<!doctype html>\n<html lang=\"en\"><head>{head}</head><body><main><h1>A part</h1><p>{links}</p></main></body></html>\n"
        )
    };
    for (part, links) in [("client", "<a href=\"../office/index.html\">The office</a>"), ("office", "Words")] {
        fs::create_dir(folder.path().join(part)).expect("a part");
        fs::write(folder.path().join(part).join("index.html"), page(links)).expect("a page");
    }
    let looked = look_at(folder.path());
    let found: Vec<String> = looked.faults.iter().map(Fault::to_string).collect();
    let fault = "client/index.html [link] a ../office/index.html leads into another part, which may not be there";
    assert_eq!(found, [fault]);
}

#[test]
fn a_sound_folder_passes_and_a_fault_is_told_with_page_and_width() {
    let fault = || Fault {
        page: "client/index.html".to_owned(),
        width: Some(390),
        check: "image".to_owned(),
        fault: "does not load".to_owned(),
    };
    assert_eq!(fault().to_string(), "client/index.html at 390 px [image] does not load");
    let looked =
        |pages: &[&str], faults| BrowserReport { pages: pages.iter().map(|page| (*page).to_owned()).collect(), faults };
    looked(&["a.html"], vec![]).is_sound();
    for unsound in [looked(&[], vec![]), looked(&["a.html"], vec![fault()])] {
        assert!(std::panic::catch_unwind(move || unsound.is_sound()).is_err());
    }
}
