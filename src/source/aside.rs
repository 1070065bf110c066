//! What lies in a book's folder and is never part of the book: the record, the cache, hidden files, and what was published.

use std::path::Path;

/// Folders that bookmatch keeps for itself.
const OURS: [&str; 2] = ["record", ".bookmatch"];
/// A folder with this file in it is a published site.
const SITE_MARK: &str = ".bookmatch-manifest.json";

/// Whether a path of the book, with `/` between its parts, is by its names no part of it. Case does not
/// count: many disks take `Record` for `record`.
pub fn is_aside(path: &str) -> bool {
    let first = path.split('/').next().unwrap_or_default().to_lowercase();
    OURS.contains(&first.as_str()) || path.split('/').any(is_hidden)
}

/// Whether a name is a hidden one. Signs that nobody sees do not count: some disks leave them out.
pub(super) fn is_hidden(name: &str) -> bool {
    name.chars().find(|letter| !is_unseen(*letter)) == Some('.')
}

/// Whether a folder is a published site.
pub(super) fn is_site(folder: &Path) -> bool {
    folder.join(SITE_MARK).exists()
}

/// Whether a file whose every link was followed, inside the real `root`, is no part of the book.
///
/// Besides the names this asks the disk which folder is which: a name may be written in many ways.
pub(super) fn is_aside_on_disk(root: &Path, end: &Path) -> bool {
    let inside = end.strip_prefix(root).unwrap_or(end);
    let names: Vec<_> = inside.components().map(|name| name.as_os_str().to_string_lossy()).collect();
    let ours = |folder: &Path| OURS.iter().any(|name| is_same(folder, &root.join(name)));
    let folders = || end.ancestors().skip(1).take_while(|folder| *folder != root);
    is_aside(&names.join("/")) || folders().any(|folder| is_site(folder) || ours(folder))
}

/// Characters that take no room in a line: controls, joiners, marks of direction.
fn is_unseen(letter: char) -> bool {
    letter.is_control()
        || matches!(letter,
            '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}'
            | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}')
}

#[cfg(unix)]
fn is_same(one: &Path, other: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    let which = |path: &Path| std::fs::metadata(path).ok().map(|facts| (facts.dev(), facts.ino()));
    which(one).is_some_and(|one| which(other) == Some(one))
}

#[cfg(not(unix))]
fn is_same(one: &Path, other: &Path) -> bool {
    let which = |path: &Path| path.canonicalize().ok();
    which(one).is_some_and(|one| which(other) == Some(one))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_record_the_cache_and_hidden_names_are_aside_however_they_are_written() {
        for path in [
            "record/keys/ada.key",
            "Record/x.yaml",
            "RECORD",
            ".env",
            ".git/config",
            "rooms/kitchen/.env.jpg",
            "rooms/.old/a.yaml",
            ".BookMatch/cache/x",
            "\u{200b}.env",
        ] {
            assert!(is_aside(path), "{path}");
        }
        for path in ["book.yaml", "rooms/kitchen/record/a.jpg", "rooms/record.yaml", "records/a.jpg", "a..b/c.jpg"] {
            assert!(!is_aside(path), "{path}");
        }
    }
}
