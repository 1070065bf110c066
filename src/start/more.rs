//! A new room, and a new item, in a book that is there.

use std::path::Path;

use crate::book::page_name_of;
use crate::book::vocabulary::OPTION;
use crate::source::portable;
use crate::vocabulary::{FieldType, Kind, near_kinds};

use super::{StartError, laid};

/// The column in which the words beside a field begin.
const BESIDE: usize = 40;
/// Most files of one name that are tried.
const MOST: u32 = 1_000;

/// Lays out a room, with what is still to be said of it, and gives the path that was written.
///
/// # Errors
/// When no book is there, the room is, or the folder can't be written to.
pub fn room(book: &Path, name: &str) -> Result<String, StartError> {
    is_a_book(book)?;
    let folder = folder_of(name)?;
    if book.join("rooms").join(&folder).exists() {
        return Err(StartError::IsThere(format!("rooms/{folder}")));
    }
    laid::write(book, &format!("rooms/{folder}/room.yaml"), room_text(name).as_bytes())
}

/// The text of a room of which nothing is known but its name.
pub fn room_text(name: &str) -> String {
    let lines = [
        format!("name: {}", quoted(name)),
        beside("where: …", "its floor, or where in the house"),
        beside("outline: …", "length x width, between finished faces"),
        beside("ceiling: …", "its height, above the finished floor"),
        beside("floor build-up: …", "still to be laid on the floor that was measured from, if anything is"),
        "# openings, runs, doors, windows: `bookmatch explain room`".to_string(),
    ];
    lines.map(|line| line + "\n").concat()
}

/// Lays out an item with the fields of its kind, each still to be said, and gives the path that was written.
///
/// # Errors
/// When there is no such book, room or kind, or the folder can't be written to.
pub fn item(book: &Path, room: &str, kind: &str, name: Option<&str>) -> Result<String, StartError> {
    is_a_book(book)?;
    let rooms = rooms(book);
    // Its folder before what another room is called.
    let by_folder = rooms.iter().find(|folder| **folder == room || **folder == page_name_of(room));
    let folder = by_folder.or_else(|| rooms.iter().find(|folder| is_called(book, folder, room)));
    let Some(folder) = folder else { return Err(StartError::NoRoom(room.into(), rooms)) };
    let Some(known) = Kind::named(kind) else {
        return Err(StartError::NoKind(kind.into(), near_kinds(kind).text().into()));
    };
    // The designer's own word for it is what the pages say.
    let called = name.map_or_else(|| capital(kind), str::to_string);
    let stem = folder_of(&called)?;
    let text = item_text(known, kind, &called, None);
    for tried in 1..=MOST {
        let file = if tried == 1 { stem.clone() } else { format!("{stem}-{tried}") };
        match laid::write(book, &format!("rooms/{folder}/{file}.yaml"), text.as_bytes()) {
            Err(StartError::IsThere(_)) => {}
            other => return other,
        }
    }
    Err(StartError::IsThere(format!("rooms/{folder}/{stem}.yaml")))
}

/// A record of that kind with all that it needs, and a picture where there is one.
pub fn item_text(kind: Kind, written: &str, name: &str, photo: Option<&str>) -> String {
    let mut paths: Vec<&str> = kind.needs().collect();
    if kind.wants_sheet() {
        paths.extend(["fit.sheet.name", "fit.sheet.revision", "fit.sheet.date", "fit.opening"]);
    }
    let place = if kind.takes_opening() {
        beside("place: …", "the opening of `room.yaml` that it goes into") + "\n"
    } else {
        String::new()
    };
    let more = format!("# what else may stand here: `bookmatch explain {}`\n", kind.name());
    if photo.is_some() {
        paths.retain(|path| *path != "photos");
    }
    let photo = photo.map_or(String::new(), |photo| format!("photos: [{}]\n", quoted(photo)));
    format!("selection: {}\nkind: {written}\n{place}{}{photo}{more}", quoted(name), fields(&paths, &[], 0))
}

/// The fields below a group, each once and in the order in which they are needed.
fn fields(paths: &[&str], group: &[&str], depth: usize) -> String {
    let mut done: Vec<&str> = Vec::new();
    let mut text = String::new();
    for path in paths {
        let steps: Vec<&str> = path.split('.').collect();
        let Some(key) = steps.get(depth).filter(|_| steps.starts_with(group)) else { continue };
        if done.contains(key) {
            continue;
        }
        done.push(key);
        let here = [group, &[*key]].concat();
        let indent = "  ".repeat(depth);
        let has_more = paths.iter().any(|other| {
            let other: Vec<&str> = other.split('.').collect();
            other.len() > here.len() && other.starts_with(&here)
        });
        text += &match has_more {
            true => format!("{indent}{key}:\n{}", fields(paths, &here, depth + 1)),
            false => beside(&format!("{indent}{key}: …"), &about(&here)) + "\n",
        };
    }
    text
}

/// What a field is, and the words that it may hold.
fn about(path: &[&str]) -> String {
    let mut record = &OPTION;
    let mut about = String::new();
    for key in path {
        let Some(field) = record.field(key) else { continue };
        about = format!("{}{}", field.about, field.shape.choice());
        if let FieldType::Record(inner) = field.shape {
            record = inner;
        }
    }
    about
}

fn beside(line: &str, words: &str) -> String {
    format!("{line:<BESIDE$}# {words}")
}

fn is_a_book(book: &Path) -> Result<(), StartError> {
    let is_there = ["book.yaml", "book.yml"].iter().any(|name| book.join(name).is_file());
    if is_there { Ok(()) } else { Err(StartError::NoBook(book.to_path_buf())) }
}

/// Whether a room's own file calls it so.
fn is_called(book: &Path, folder: &str, name: &str) -> bool {
    let files = ["room.yaml", "room.yml"].map(|file| book.join("rooms").join(folder).join(file));
    let text = files.iter().find_map(|path| std::fs::read_to_string(path).ok()).unwrap_or_default();
    let own = text.lines().find_map(|line| line.strip_prefix("name:"));
    own.is_some_and(|own| own.trim().trim_matches(['"', '\'']).to_lowercase() == name.trim().to_lowercase())
}

fn rooms(book: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(book.join("rooms")).into_iter().flatten().flatten();
    let folders = entries.filter(|entry| entry.path().is_dir());
    let mut rooms: Vec<String> = folders.filter_map(|entry| entry.file_name().into_string().ok()).collect();
    rooms.sort();
    rooms
}

/// The name of a folder or a file, in letters that every disk takes.
pub fn folder_of(name: &str) -> Result<String, StartError> {
    if page_name_of(name) == page_name_of("") {
        return Err(StartError::NoName(name.into()));
    }
    let short: String = page_name_of(name).chars().take(portable::LONGEST_NAME / 2).collect();
    Ok(if portable::fault(&short).is_some() { format!("{short}-item") } else { short })
}

/// A name as a file may hold it.
pub fn quoted(name: &str) -> String {
    let plain = name.chars().all(|letter| letter.is_alphanumeric() || matches!(letter, ' ' | '-'))
        && name.chars().next().is_some_and(char::is_alphabetic);
    if plain { name.into() } else { format!("'{}'", name.replace('\'', "''")) }
}

/// The same with a capital.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
