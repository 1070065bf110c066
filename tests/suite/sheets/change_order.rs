//! The change order of a book that was issued twice, as `compare` writes it.

use std::fs;
use std::path::PathBuf;

use super::readers::Pdf;
use crate::project::Project;

/// A rug, as it is issued first; its finish could be taken for markup.
const RUG: &str = "selection: Rug\nkind: rug\nmaker: Zelmor\nmodel: ZS-1\nsupplier: Ardwin\nlead time: 2 weeks\n\
    needed for: 2027-06-01\nface size: 48\" x 72\"\nquantity: 1\nphotos: [rug.jpg]\nfinish: \"oak $1 *dyed*\"\nprice: 100.00\n";

fn book(approval: &str) -> Project {
    Project::new()
        .file(
            "book.yaml",
            &format!(
                "title: Small\nnumber: 2027-003\nclient: Nobody\nunits: imperial\ncurrency: USD\ntax: 10 %\n{approval}\
                 approvers:\n  - {{id: ada, name: Ada Marrowby}}\n  - {{id: sven, name: Sven Lint}}\n"
            ),
        )
        .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
        .file("rooms/kitchen/rug.yaml", RUG)
        .file("rooms/kitchen/mat.yaml", &RUG.replace("Rug", "Mat"))
        .photo("rooms/kitchen/photos/rug.jpg")
}

/// The book is issued, changed, and issued again.
fn issued_twice(approval: &str) -> Project {
    let project = book(approval);
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let changed = RUG.replace("oak $1", "ash $2").replace("100.00", "120.00").replace("2 weeks", "3 weeks");
    let project = project
        .file("rooms/kitchen/rug.yaml", &changed)
        .file("rooms/kitchen/runner.yaml", &RUG.replace("Rug", "Runner").replace("100.00", "50.00"))
        .without("rooms/kitchen/mat.yaml");
    project.run(["issue", "--for", "approval", "--today", "2027-02-01"]).exits(0);
    project
}

fn sheet(project: &Project, from: &str, to: &str) -> (PathBuf, Pdf) {
    let out = project.beside(&format!("{from}-{to}.pdf"));
    let path = out.to_str().expect("a path in plain letters");
    project.run(["compare", from, to, "--format", "pdf", "--out", path, "--today", "2027-02-02"]).exits(0);
    let pdf = Pdf::of(&fs::read(&out).expect("a sheet"));
    (out, pdf)
}

#[test]
fn it_tells_what_from_to_money_days_and_has_a_line_for_each_who_signs() {
    let project = issued_twice("");
    let (_, pdf) = sheet(&project, "1", "2");
    let pages = pdf.pages();
    let text = pages.concat();
    let row = |words: &[&str]| {
        let found = text.lines().any(|line| {
            let mut rest = line;
            words.iter().all(|word| rest.split_once(word).map(|(_, after)| rest = after).is_some())
        });
        assert!(found, "no row of {words:?} in:\n{text}");
    };
    row(&["Finish", "oak $1 *dyed*", "ash $2 *dyed*"]);
    row(&["Price in all", "$100.00", "$120.00", "$20.00 more"]);
    row(&["Lead time", "2 weeks", "3 weeks"]);
    row(&["Order by", "2027", "2027", "7 days sooner"]);
    row(&["Runner", "New"]);
    row(&["Mat", "Gone"]);
    row(&["Shown as", "–", "Zelmor ZS-1, oak $1"]);
    row(&["Base, before tax", "$200.00"]);
    row(&["Items before tax", "$200.00", "$170.00", "$30.00 less"]);
    row(&["Total with tax", "$220.00", "$187.00", "$33.00 less"]);
    row(&["1, for approval, 15 Jan 2027"]);
    row(&["2, for approval, 1 Feb 2027"]);
    let last = pages.last().expect("a page");
    assert_eq!(last.lines().filter(|line| line.contains("Signature") && line.contains("Date")).count(), 2, "{last}");
    assert!(last.contains("Ada Marrowby") && last.contains("Sven Lint") && last.contains("both must sign"), "{last}");
    assert!(!text.contains("Ardwin"), "the supplier is the office's own");
    assert!(!text.to_lowercase().contains("draft"), "{text}");
}

/// The mark of all that is issued, reckoned anew from the issue's file (`explain mark`; RFC 8785).
#[test]
fn every_page_names_project_issues_date_and_the_mark_of_the_later_issue() {
    let project = issued_twice("");
    let (_, pdf) = sheet(&project, "1", "2");
    let issue = fs::read(project.root().join("record/issues/0002.json")).expect("an issue");
    let issue: serde_json::Value = serde_json::from_slice(&issue).expect("JSON");
    let mut marks: Vec<(&str, &serde_json::Value)> =
        issue["items"].as_array().unwrap().iter().map(|item| (item["item"].as_str().unwrap(), &item["mark"])).collect();
    marks.sort_by_key(|(item, _)| *item);
    let list: serde_json::Value = marks.into_iter().map(|(_, mark)| mark.clone()).collect();
    let hex = {
        use sha2::Digest;
        sha2::Sha256::digest(list.to_string()).iter().map(|byte| format!("{byte:02x}")).collect::<String>()
    };
    let mark = format!("{} {}", &hex[..4], &hex[4..8]);
    let pages = pdf.pages();
    for (n, page) in pages.iter().enumerate() {
        let number = format!("sheet {} of {}", n + 1, pages.len());
        for needed in [&*number, "Small", "2027-003", "1 to 2", "1 Feb 2027", "C-02", &mark] {
            assert!(page.contains(needed), "no `{needed}` on page {}:\n{page}", n + 1);
        }
    }
}

#[test]
fn the_file_is_sound_tagged_and_the_same_again() {
    let project = issued_twice("");
    let (out, pdf) = sheet(&project, "1", "2");
    let report = pdf.ask("qpdf", &["--check"], &[]);
    assert!(report.contains("No syntax or stream encoding errors found"), "{report}");
    assert_eq!(pdf.info("Tagged"), "yes");
    assert_eq!(pdf.info("Title"), "Change order: From issue 1 to issue 2 · Small · Issue 1 to 2");
    // ISO 14289-1 (PDF/UA-1), 5: the file says in its metadata that it conforms.
    assert!(pdf.ask("pdfinfo", &["-meta"], &[]).contains("<pdfuaid:part>1</pdfuaid:part>"));
    let tags = pdf.ask("pdfinfo", &["-struct"], &[]);
    for needed in ["H1 \"Change order\"", "H2 \"Kitchen\"", "H3 \"K-", "Table", "TH"] {
        assert!(tags.contains(needed), "no {needed} in:\n{tags}");
    }
    let before = fs::read(&out).expect("a sheet");
    sheet(&project, "1", "2");
    assert!(fs::read(&out).expect("a sheet") == before, "the second run wrote other bytes");
}

#[test]
fn nobody_signs_what_was_not_issued_or_what_did_not_change() {
    let project = issued_twice("approval: any\n").file("rooms/kitchen/rug.yaml", RUG);
    let text = sheet(&project, "2", "now").1.pages().concat();
    assert!(text.contains("DRAFT. NOT TO BE SIGNED.") && text.contains("the book as it stands"), "{text}");
    assert!(!text.contains("Signature "), "{text}");
    let text = sheet(&project, "2", "2").1.pages().concat();
    assert!(text.contains("No item changed") && text.contains("Nobody needs to sign this sheet"), "{text}");
    let text = sheet(&project, "1", "2").1.pages().concat();
    assert!(text.contains("any one may sign"), "{text}");
}

/// Money that is agreed besides prices, what is withdrawn and who signs are one value: as text, as JSON and as a sheet.
#[test]
fn text_and_sheet_tell_the_same_of_terms_of_what_is_withdrawn_and_of_who_signs() {
    let project = book("allowances: {rugs: 500, tiles: {amount: 300, includes: delivery}}\n");
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let given: String = jiff::Timestamp::now().to_string().chars().take(10).collect();
    let how = ["--decision", "approved", "--how", "said on the telephone", "--given", &given];
    project.run(["receive", "--by-hand", "ada", "--item", "kitchen/mat"].into_iter().chain(how)).exits(0);
    let text = fs::read_to_string(project.root().join("book.yaml")).expect("the book");
    let text = text.replace("tax: 10 %", "tax: 11 %").replace("rugs: 500", "rugs: 450").replace("delivery", "fitting");
    let project = project.file("book.yaml", &text).without("rooms/kitchen/mat.yaml");
    let terms = [
        ("tax from 10 % to 11 %", ["Tax", "10 %", "11 %"]),
        ("allowance `rugs` from 500.00 USD to 450.00 USD", ["Allowance rugs", "$500.00", "$450.00"]),
        ("what the allowance `tiles` includes from delivery to fitting", ["Allowance tiles", "delivery", "fitting"]),
    ];
    let withdrawn = ["WITHDRAWN", "K-01 Mat, $100.00; approved before by"];
    for (to, signs) in [("now", false), ("2", true)] {
        if signs {
            project.run(["issue", "--for", "approval", "--today", "2027-02-01"]).exits(0).says("tax from 10 % to 11 %");
        }
        let mut told = project.run(["compare", "1", to, "--today", "2027-02-02"]).exits(0);
        let json = project.run(["compare", "1", to, "--format", "json", "--today", "2027-02-02"]).stdout_is_json();
        let pages = sheet(&project, "1", to).1.pages().concat();
        let has = |words: &[&str]| pages.lines().any(|line| words.iter().all(|word| line.contains(word)));
        for (number, (phrase, row)) in terms.iter().enumerate() {
            told = told.says(phrase);
            assert_eq!(json["terms"][number], *phrase);
            assert!(has(row), "{row:?}: {pages}");
        }
        told = told.says("Ada Marrowby had approved it; still to agree: Ada Marrowby");
        assert!(withdrawn.iter().all(|word| pages.contains(word)), "{pages}");
        assert_eq!(json["sign"]["now"], signs);
        assert_eq!(pages.contains("both must sign"), signs, "{pages}");
        match signs {
            true => told.says("to sign: Ada Marrowby and Sven Lint"),
            false => told.says("to sign: nobody, since this was not issued"),
        };
    }
}

#[test]
fn a_pdf_goes_to_a_file_that_is_named_and_over_nothing_but_a_pdf() {
    let project = issued_twice("");
    project.run(["compare", "1", "2", "--format", "pdf"]).exits(2).says("--out");
    project.run(["compare", "1", "2", "--out", "x.pdf"]).exits(2).says("only a PDF is written to a file");
    let before = fs::read(project.root().join("book.yaml")).expect("the book");
    let ran = project.run(["compare", "1", "2", "--format", "pdf", "--out", "book.yaml"]);
    ran.exits(2).says("`book.yaml` is there and is no PDF");
    assert_eq!(fs::read(project.root().join("book.yaml")).expect("the book"), before);
    project.run(["compare", "1", "2", "--format", "pdf", "--out", "nowhere/x.pdf"]).exits(2).says("can't write");
}

/// More things than one file holds, all of them changed.
#[test]
fn one_of_very_many_items_is_set_in_parts_and_signed_on_the_last() {
    const ALL: usize = 250;

    let list = |price: &str| -> String {
        let rug = |number| {
            let rug = RUG.replace("Rug", &format!("Rug {number}")).replace("100.00", price);
            format!("- {}\n", rug.trim_end().replace('\n', "\n  "))
        };
        (0..ALL).map(rug).collect()
    };
    let project = book("").without("rooms/kitchen/mat.yaml").file("rooms/kitchen/rug.yaml", &list("100.00"));
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0);
    let project = project.file("rooms/kitchen/rug.yaml", &list("120.00"));
    let out = project.beside("order.pdf");
    let path = out.to_str().expect("a path in plain letters");
    project
        .run(["compare", "1", "now", "--format", "pdf", "--out", path, "--today", "2027-02-02"])
        .exits(0)
        .says("written in 3 parts")
        .says("order-3.pdf");
    assert!(!out.exists());
    let parts = [1, 2, 3].map(|part| {
        let sheet = fs::read(project.beside(&format!("order-{part}.pdf"))).expect("a part");
        Pdf::of(&sheet).pages().concat()
    });
    for (n, text) in parts.iter().enumerate() {
        assert!(text.contains(&format!("Part {} of 3", n + 1)), "{text}");
        assert_eq!(text.contains("Items before tax"), n == 2, "{text}");
        assert_eq!(text.to_lowercase().contains("stand on the last part"), n < 2, "{text}");
    }
    let told = (0..ALL).filter(|number| {
        let name = format!("Rug {number}");
        parts
            .iter()
            .flat_map(|text| text.lines())
            .filter(|line| line.split("  ").any(|words| words.trim() == name))
            .count()
            == 1
    });
    assert_eq!(told.count(), ALL, "{}", parts[0]);
}
