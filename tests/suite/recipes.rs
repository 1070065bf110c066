//! The recipes that `explain how` tells, tried as they stand: their files laid over the book that `start`
//! makes, their commands typed in it.

use std::path::Path;

use bookmatch::vocabulary::Kind;

use crate::project::Project;

/// A fenced block of a recipe: its language, the path that it names, and its lines.
struct Block<'a> {
    language: &'a str,
    path: &'a str,
    text: String,
}

fn blocks(recipe: &str) -> Vec<Block<'_>> {
    let mut blocks = Vec::new();
    let mut open: Option<Block<'_>> = None;
    for line in recipe.lines() {
        match (line.strip_prefix("```"), open.take()) {
            (Some(head), None) => {
                let (language, path) = head.split_once(' ').unwrap_or((head, ""));
                open = Some(Block { language, path, text: String::new() });
            }
            (Some(_), Some(block)) => blocks.push(block),
            (None, Some(block)) => open = Some(Block { text: block.text + line + "\n", ..block }),
            (None, None) => {}
        }
    }
    blocks
}

/// The file of that path as a page prints it, with the page's own margin taken off.
fn printed<'a>(page: &'a str, path: &str) -> String {
    let (_, rest) = page.split_once(&format!("`{path}`:\n\n")).unwrap_or_else(|| panic!("{path} in {page}"));
    let is_code = |line: &&'a str| line.starts_with("    ") || line.is_empty();
    rest.lines().take_while(is_code).map(|line| format!("{}\n", line.strip_prefix("    ").unwrap_or(line))).collect()
}

/// A PDF of no page.
const SHEET: &str = "%PDF-1.4\n1 0 obj\n<</Type /Catalog>>\nendobj\ntrailer\n<</Root 1 0 R>>\nstartxref\n9\n%%EOF\n";

/// Lays a file down, with a picture and a maker's sheet for each that it names.
fn lay(book: &Path, block: &Block<'_>) {
    let file = book.join(block.path);
    let photos = file.parent().expect("a folder").join("photos");
    std::fs::create_dir_all(&photos).expect("a folder");
    std::fs::write(&file, &block.text).expect("a file");
    for line in block.text.lines().filter_map(|line| line.trim().strip_prefix("photos: [")) {
        for name in line.trim_end_matches(']').split(", ").filter(|name| !photos.join(name).exists()) {
            std::fs::copy(book.join("rooms/bath/photos/rust.png"), photos.join(name)).expect("a picture");
        }
    }
    for line in block.text.lines().filter_map(|line| line.trim().strip_prefix("cut sheet: {file: ")) {
        let sheets = file.parent().expect("a folder").join("sheets");
        std::fs::create_dir_all(&sheets).expect("a folder");
        let name = line.split([',', '}']).next().expect("a name");
        std::fs::write(sheets.join(name), SHEET).expect("a sheet");
    }
}

#[test]
fn every_recipe_holds_as_it_stands() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/explain/how");
    let mut tried = 0;
    for entry in std::fs::read_dir(folder).expect("the recipes") {
        let path = entry.expect("an entry").path();
        let recipe = std::fs::read_to_string(&path).expect("a recipe");
        let project = Project::new();
        let book = project.beside("book");
        let at = book.to_str().expect("UTF-8");
        project.run(["start", at, "--today", "2027-01-15"]).exits(0);
        let title = recipe.lines().next().expect("a title").trim_start_matches("# ");
        let page = project.run(["explain", "how", title]).exits(0).stdout;
        // What is copied is what is printed.
        let blocks = blocks(&recipe).into_iter().map(|block| match block.path {
            "" => block,
            path => Block { text: printed(&page, path), ..block },
        });
        let blocks: Vec<_> = blocks.collect();
        assert!(!blocks.is_empty(), "{}", path.display());
        for block in &blocks {
            if block.language == "yaml" {
                lay(&book, block);
                continue;
            }
            for line in block.text.lines().filter_map(|line| line.strip_prefix("$ bookmatch ")) {
                let words: Vec<&str> = line.split(' ').collect();
                let ran = crate::project::Ran::of(
                    std::process::Command::new(env!("CARGO_BIN_EXE_bookmatch")).args(&words).current_dir(&book),
                );
                ran.exits(0);
            }
        }
        // What the client has still to decide is a note; nothing else is left to say.
        project.run(["review", at, "--today", "2027-01-15"]).exits(0).says("0 stops, 0 queries");
        tried += 1;
    }
    assert!(tried >= 13, "{tried} recipes");
}

#[test]
fn how_lists_its_recipes_and_shows_each_with_its_files() {
    let project = Project::new();
    project.run(["explain", "how"]).exits(0).says("a cooktop over an oven");
    let shown = project.run(["explain", "how", "island"]).exits(0);
    shown.says("rooms/eating/room.yaml").says("room side: {overhang: 15\", seats: 3}").does_not_say("```");
}

/// The files of the example on a kind's page: each line `# in NAME` begins one.
fn example_of(page: &str) -> Vec<(String, String)> {
    let (_, kind) = page.split_once(" (kind, ").expect("the page of a kind");
    let (_, example) = kind.split_once("\nExample\n").expect("an example");
    let lines = example.lines().skip(1).take_while(|line| line.starts_with("    ") || line.is_empty());
    let mut files: Vec<(String, String)> = Vec::new();
    for line in lines.map(|line| line.strip_prefix("    ").unwrap_or(line)) {
        match (line.strip_prefix("# in "), files.last_mut()) {
            (Some(name), _) => files.push((name.to_string(), String::new())),
            (None, Some((_, text))) => *text += &format!("{line}\n"),
            (None, None) => {}
        }
    }
    files
}

/// Each kind's page shows a whole example, which reviews clean as it stands in a room of its own.
#[test]
fn the_example_of_every_kind_reviews_clean() {
    let project = Project::new();
    let book = project.beside("book");
    let at = book.to_str().expect("UTF-8");
    project.run(["start", at, "--today", "2027-01-15"]).exits(0);
    for (number, kind) in Kind::ALL.iter().enumerate() {
        let files = example_of(&project.run(["explain", kind.name()]).exits(0).stdout);
        assert!(!files.is_empty(), "{kind}");
        let room = format!("rooms/kind-{number}");
        let of_room = ("room.yaml".to_string(), format!("name: Of a {kind}\n"));
        let has_room = files.iter().any(|(name, _)| name == "room.yaml");
        for (name, text) in files.iter().chain((!has_room).then_some(&of_room)) {
            lay(&book, &Block { language: "yaml", path: &format!("{room}/{name}"), text: text.clone() });
        }
    }
    // A picture that two items share is no fault; what is open to the client is a note.
    project.run(["review", at, "--today", "2027-01-15"]).exits(0).says("0 stops, 0 queries");
}
