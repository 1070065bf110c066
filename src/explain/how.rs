//! How things are done: short recipes, each with the files that it takes, and each tried as a book.

use super::page::{heading, item, paragraph, prose};

/// The recipes, in the order of the work. Files stand in fenced blocks that name their path, and are laid
/// over the book that `start` makes; commands stand in blocks of `sh`.
const RECIPES: [&str; 15] = [
    include_str!("how/wall-of-cabinets.md"),
    include_str!("how/island-with-seats.md"),
    include_str!("how/appliance-in-its-opening.md"),
    include_str!("how/the-makers-own-sheet.md"),
    include_str!("how/integrated-appliance.md"),
    include_str!("how/stacked-machines.md"),
    include_str!("how/cooktop-over-an-oven.md"),
    include_str!("how/slope-with-a-roof-window.md"),
    include_str!("how/tile-with-its-edges.md"),
    include_str!("how/prices-with-tax-in.md"),
    include_str!("how/setting-a-finding-aside.md"),
    include_str!("how/sending-it-to-the-client.md"),
    include_str!("how/a-change-after-signing.md"),
    include_str!("how/receiving-goods.md"),
    include_str!("how/theme-of-your-own.md"),
];

/// The title of a recipe.
fn title(recipe: &str) -> &str {
    recipe.lines().next().unwrap_or("").trim_start_matches('#').trim()
}

/// Every recipe by its title.
pub fn list() -> String {
    let mut text = heading("How");
    text += &paragraph("`bookmatch explain how TITLE`, or a part of it:");
    text += &titles().map(item).collect::<String>();
    text + "\n"
}

/// The titles of all recipes.
pub fn titles() -> impl Iterator<Item = &'static str> {
    RECIPES.iter().map(|recipe| title(recipe))
}

/// The recipes whose titles hold that; none where no title does.
pub fn page(asked: &str) -> Option<String> {
    let pages = RECIPES.iter().filter(|recipe| title(recipe).contains(asked)).map(|recipe| shown(recipe));
    Some(pages.collect::<Vec<_>>().join("\n")).filter(|text| !text.is_empty())
}

/// A recipe as it is read: each file with its path above it.
fn shown(recipe: &str) -> String {
    let (_, rest) = recipe.split_once('\n').unwrap_or((recipe, ""));
    let named = rest.lines().map(|line| match line.strip_prefix("```yaml ") {
        Some(path) => format!("`{path}`:\n\n```\n"),
        None if line == "```sh" => "In a terminal:\n\n```\n".into(),
        None => format!("{line}\n"),
    });
    heading(title(recipe)) + &prose(&named.collect::<String>())
}
