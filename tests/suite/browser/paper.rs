//! What paper says of scale holds on paper, and an opening takes few sheets.

use super::drive;
use crate::project::Project;
use crate::project::example::published;

/// An inch is 72 points (ISO 32000-1, 8.3.2.3) and 25.4 mm; the bars are measured by Poppler's `pdftotext`.
#[test]
fn the_scale_that_is_printed_is_the_scale_that_is_measured_on_a4_and_letter() {
    let installer = published().join("installer");
    let pages = ["refrigerator", "range", "microwave", "sink"].map(|name| format!("openings/kitchen/{name}.html"));
    let mut arguments = vec![installer.to_str().expect("UTF-8"), "index.html"];
    arguments.extend(pages.iter().map(String::as_str));
    let said = drive("scale.mjs", &arguments);
    assert!(said.trim().split(' ').next().unwrap().parse::<usize>().unwrap() > 20, "{said}");
}

#[test]
fn a_metric_book_s_scales_hold_too() {
    let project = Project::new()
        .file("book.yaml", "title: Trial\nclient: Nobody\nunits: metric\ncurrency: EUR\n")
        .file(
            "rooms/pantry/room.yaml",
            "name: Pantry\nopenings:\n  it: {takes: refrigerator, width: 600 mm, height: 1790 mm, depth: 560 mm, in front: 1100 mm, measured: {on: 2027-01-11, by: Teo Varrick}}\n",
        )
        .file(
            "rooms/pantry/it.yaml",
            "selection: It\nkind: refrigerator\nplace: it\nsize: {width: 590 mm, height: 1770 mm, depth: 545 mm}\n",
        );
    let site = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", site.to_str().unwrap()]).exits(0);
    let installer = site.join("installer");
    let said = drive("scale.mjs", &[installer.to_str().unwrap(), "openings/pantry/it.html"]);
    assert_eq!(said.trim(), "6 bars");
}

/// A sheet at the opening is carried in a pocket: three leaves at most, two where little is drawn.
#[test]
fn an_opening_takes_few_sheets_of_paper_and_none_ends_in_a_heading() {
    let installer = published().join("installer");
    let of_kitchen = ["hood", "refrigerator", "range", "microwave", "sink", "dishwasher"].map(|name| ("kitchen", name));
    let others = [("bath", "vanity"), ("bath", "toilet"), ("bath", "tub"), ("laundry", "washer")];
    let pages = of_kitchen.iter().chain(&others).map(|(room, name)| format!("openings/{room}/{name}.html"));
    let pages: Vec<String> = pages.collect();
    let mut arguments = vec![installer.to_str().expect("UTF-8")];
    arguments.extend(pages.iter().map(String::as_str));
    let said = drive("opening_sheets.mjs", &arguments);
    assert_eq!(said.lines().count(), 2 * pages.len(), "{said}");
    for line in said.lines() {
        let sheets: usize = line.rsplit(' ').next().and_then(|count| count.parse().ok()).expect("a count");
        let most = if line.starts_with("openings/bath/tub") { 2 } else { 3 };
        assert!(sheets <= most, "{line}: {most} at most");
    }
}
