//! Which paths a published file may have: inside the folder, and good on every kind of disk.

use std::fmt;

use crate::source::portable::{self, NameFault};

/// The names that the writer keeps for itself begin with this.
pub(super) const RESERVED: &str = ".bookmatch";

/// Why a path is no place for a published file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PathError {
    /// Nothing, an absolute path, an empty step, `.` or `..`.
    Outside(String),
    /// A backslash, a control character, or another that some disk refuses.
    Unportable(String),
    /// A name that the writer needs for itself.
    Reserved(String),
    /// Another file has the path, or the same one in other letters' case.
    Taken {
        /// The path refused.
        path: String,
        /// The path that stood there first.
        by: String,
    },
}

impl fmt::Display for PathError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outside(path) => write!(f, "`{path}` is no path inside the published folder"),
            Self::Unportable(path) => {
                write!(
                    f,
                    "`{path}` cannot be stored on every kind of disk; rename the folder or file of the book after which it is named (`review` names it)"
                )
            }
            Self::Reserved(path) => write!(f, "`{path}` uses a name kept for publishing itself"),
            Self::Taken { path, by } => write!(f, "`{path}` would take the place of `{by}`"),
        }
    }
}

impl std::error::Error for PathError {}

/// Checks one path, without regard to others.
pub(super) fn check(path: &str) -> Result<(), PathError> {
    for step in path.split('/') {
        if matches!(step, "" | "." | "..") {
            return Err(PathError::Outside(path.into()));
        }
        if step.to_lowercase().starts_with(RESERVED) {
            return Err(PathError::Reserved(path.into()));
        }
        if !portable(step) {
            return Err(PathError::Unportable(path.into()));
        }
    }
    Ok(())
}

/// Memory sticks are FAT, web hosts are not: only what both can store. Names of pages are longer than those of the
/// book that they are made of.
fn portable(step: &str) -> bool {
    match portable::fault(step) {
        None => true,
        Some(NameFault::Long) => step.len() <= 255,
        Some(_) => false,
    }
}

/// The form under which two paths are the same on a disk that ignores case, or how an accent is stored.
pub(super) fn folded(path: &str) -> String {
    portable::folded(path)
}

/// The folders above a path, the outermost first: `a/b/c` has `a` and `a/b`.
pub(super) fn folders(path: &str) -> impl Iterator<Item = &str> {
    path.match_indices('/').filter_map(|(at, _)| path.get(..at))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_relative_paths_are_taken() {
        for path in ["index.html", "client/rooms/kitchen.html", "a/ñandú-30½.svg", "comb/lpt.css"] {
            assert_eq!(check(path), Ok(()), "{path}");
        }
    }

    #[test]
    fn a_path_that_leaves_the_folder_is_refused() {
        for path in ["", "/etc/x", "../x", "a/../../x", "a//b", "a/", "./a", "a/."] {
            assert_eq!(check(path), Err(PathError::Outside(path.into())));
        }
    }

    #[test]
    fn a_path_that_some_disk_cannot_store_is_refused() {
        for path in [r"a\b", "c:x", "a/nul.html", "COM1", "a.", "a ", "a\0b", "a\nb", "wh?t"] {
            assert_eq!(check(path), Err(PathError::Unportable(path.into())));
        }
    }

    #[test]
    fn the_writer_keeps_its_own_names() {
        for path in [".bookmatch-manifest.json", "client/.Bookmatch-x", ".bookmatch"] {
            assert_eq!(check(path), Err(PathError::Reserved(path.into())));
        }
    }

    #[test]
    fn folders_are_listed_from_the_outermost() {
        assert_eq!(folders("a/b/c").collect::<Vec<_>>(), ["a", "a/b"]);
        assert_eq!(folders("a").count(), 0);
    }
}
