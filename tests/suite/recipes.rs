//! The recipes that `explain how` tells, tried as they stand: their files laid over the book that `start`
//! makes, their commands typed in it.

use std::path::Path;

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

/// Lays a file down, with a picture for each that it names.
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
        let blocks = blocks(&recipe);
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
    assert!(tried >= 12, "{tried} recipes");
}

#[test]
fn how_lists_its_recipes_and_shows_each_with_its_files() {
    let project = Project::new();
    project.run(["explain", "how"]).exits(0).says("a cooktop over an oven");
    let shown = project.run(["explain", "how", "island"]).exits(0);
    shown.says("rooms/eating/room.yaml").says("room side: {overhang: 15\", seats: 3}").does_not_say("```");
}
