//! The names of files and folders that some disks refuse.

use std::collections::{BTreeMap, BTreeSet};

use crate::finding::{Code, Finding, Phrase, Remark, Severity, phrase};
use crate::source::portable::{difference, fault, folded};
use crate::source::{Folder, Place};

const RULE: Code = Code::UNPORTABLE;

/// What is wrong with the names in the folder, one finding a name, ordered by path.
pub fn faults(folder: &Folder) -> Vec<Finding> {
    let mut steps: BTreeSet<&str> = BTreeSet::new();
    for entry in folder.entries() {
        let ends = entry.path.match_indices('/').map(|(at, _)| at).chain([entry.path.len()]);
        steps.extend(ends.filter_map(|end| entry.path.get(..end)));
    }
    let mut found = Vec::new();
    let mut names: BTreeMap<String, &str> = BTreeMap::new();
    for path in steps {
        let (above, name) = path.rsplit_once('/').unwrap_or(("", path));
        let mut tell = |message: Phrase, remedy: &'static str| {
            let severity = if is_published(folder, path) { Severity::Stop } else { Severity::Query };
            let room = path.strip_prefix("rooms/").and_then(|rest| rest.split('/').next()).map(str::to_owned);
            let remark = Remark::new(severity, Place::Path(path.into()), message).remedy(remedy);
            found.push(remark.in_room(room).of(RULE));
        };
        if let Some(fault) = fault(name) {
            let remedy = "rename it with plain letters, figures and hyphens, and change the places that name it";
            tell(phrase!("the name `{name}` {fault}", name, fault), remedy);
        }
        let key = format!("{above}/{}", folded(name));
        match names.get(&key) {
            Some(first) => {
                let differ = difference(name, first);
                let message = phrase!(
                    "`{name}` and `{first}` are one name on some disks: they differ {differ}",
                    name,
                    first,
                    differ
                );
                tell(message, "rename one of them, so that its letters differ");
            }
            None => _ = names.insert(key, name),
        }
    }
    found
}

/// Rooms and selections give published pages their paths.
fn is_published(folder: &Folder, path: &str) -> bool {
    path.starts_with("rooms/") && (path.ends_with(".yaml") || !folder.contains(path))
}
