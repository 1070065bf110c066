//! A size that is not known is never part of a "fits": not on the client's page, nor on the sheet of the opening.

use crate::project::Project;

/// A scullery with one machine under test; what its opening says, and what the machine says.
fn verdicts(opening: &str, machine: &str, room: &str) -> [String; 2] {
    let book = "title: Scullery\nclient: B\nunits: imperial\n";
    let room = format!(
        "name: Scullery\n{room}openings:\n  bay: {{takes: refrigerator, {opening}, measured: {{on: 2027-01-11, by: Teo}}}}\n"
    );
    let machine = format!("selection: Cold\nkind: refrigerator\nplace: bay\n{machine}\n");
    let project = Project::new()
        .file("book.yaml", book)
        .file("rooms/scullery/room.yaml", &room)
        .file("rooms/scullery/cold.yaml", &machine);
    let out = project.beside("site");
    project.run(["publish", "--draft", "--today", "2027-01-15", "--out", out.to_str().unwrap()]);
    let text = |path: &str| std::fs::read_to_string(out.join(path)).unwrap();
    let sheet = text("installer/openings/scullery/bay.html");
    let client = text("client/items/scullery/cold.html");
    let after = |page: &str, mark: &str| page.split_once(mark).map(|(_, rest)| rest.to_string()).unwrap_or_default();
    let word = |page: &str| after(&after(page, "</svg>"), "<span>").split("</span>").next().unwrap().to_string();
    // What its sheet does not say of doors and air is asked, and is no size.
    let word = |page: &str| word(page).replace(", with a question", "");
    [word(&after(&sheet, "class=\"verdict ")), word(&after(&client, "class=\"fit"))]
}

const WHOLE: &str = "width: 36\", height: 72\", depth: 25\"";
const COLD: &str = "size: {width: 35 1/2\", height: 70\", depth: 24\"}\nfit: {opening: {width: 36\", height: at least 71\", depth: at least 24\"}}";

/// Source: law 4 of how facts are known: what nobody measured is not passed.
#[test]
fn a_thing_fits_only_where_every_size_that_counts_is_known() {
    for (says, opening, machine, room) in [
        ("Fits", WHOLE, COLD, ""),
        ("Fits", WHOLE, COLD, "floor build-up: 1/2\"\n"),
        // Its depth is that of the row that it stands in.
        ("Fits", "width: 36\", height: 72\"", COLD, "runs:\n  row: {wall: A, depth: 25\", parts: [{opening: bay}]}\n"),
        ("Not known yet: width", "height: 72\", depth: 25\"", COLD, ""),
        ("Not known yet: height", "width: 36\", depth: 25\"", COLD, ""),
        ("Not known yet: depth", "width: 36\", height: 72\"", COLD, ""),
        ("Not known yet: height and depth", "width: 36\"", COLD, ""),
        (
            "Not known yet: width",
            WHOLE,
            "size: {width: …, height: 70\", depth: 24\"}\nfit: {opening: {height: at least 71\"}}",
            "",
        ),
        ("Not known yet: width and depth", &format!("{WHOLE}, measured between: studs"), COLD, ""),
    ] {
        let told = verdicts(opening, machine, room);
        assert_eq!(told, [says, says], "{opening} / {machine} / {room}");
    }
}

/// Source: trade report F-33: it goes in, and its circuit does not carry it.
#[test]
fn what_stops_a_thing_that_goes_in_is_told_with_its_verdict() {
    let needs = |there: &str| {
        let opening = format!("{WHOLE}, service: {{power: {there}}}");
        verdicts(&opening, &COLD.replace("fit: {", "fit: {needs: {power: 120 V 15 A 5-15}, "), "")
    };
    assert_eq!(needs("120 V 15 A 5-15"), ["Fits", "Fits"]);
    assert_eq!(
        needs("240 V 15 A 6-15"),
        ["Fits, but first read what is told here", "Fits, but first read what is told here"]
    );
}
