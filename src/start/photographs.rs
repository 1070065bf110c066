//! A book from photographs: a room for each folder, a selection for each picture, and all else still to be said.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use crate::source::{Folder, portable};
use crate::vocabulary::{Kind, Words as _};

use super::more::{capital, folder_of, item_text, quoted, room_text};
use super::{StartError, Terms, laid};

/// Endings of pictures.
const PICTURES: [&str; 9] = ["jpg", "jpeg", "png", "webp", "tif", "tiff", "heic", "heif", "avif"];
/// The largest picture that is taken over, in bytes.
const MOST_BYTES: u64 = 256 * 1024 * 1024;
/// Where pictures go that lie in no folder of their own.
const NO_ROOM: &str = "room";

/// A picture: its path among the photographs, and its name.
type Picture = (String, String);

/// Lays out a book in a new or empty folder, and gives the paths that were written. The photographs are copied,
/// and stay where they are.
///
/// # Errors
/// When the folder holds something, no pictures are found, or the system refuses.
pub fn from_photographs(folder: &Path, photographs: &Path, terms: Terms) -> Result<Vec<String>, StartError> {
    laid::new_book(folder)?;
    let from = Folder::open(photographs).map_err(|error| StartError::Unreadable(error.to_string()))?;
    let rooms = rooms(&from);
    if rooms.is_empty() {
        return Err(StartError::NoPictures(photographs.to_path_buf()));
    }
    let mut written = vec![laid::write(folder, "book.yaml", book_text(terms).as_bytes())?];
    let mut taken = BTreeSet::new();
    for (name, pictures) in rooms {
        let room = free(folder_of(&name).unwrap_or_else(|_| NO_ROOM.into()), &mut taken);
        let path = format!("rooms/{room}/room.yaml");
        written.push(laid::write(folder, &path, room_text(&words_of(&name)).as_bytes())?);
        let mut stems = BTreeSet::from([String::from("room")]);
        for (path, file) in pictures {
            let (stem, ending) = file.rsplit_once('.').unwrap_or((&file, ""));
            let short = free(folder_of(stem).unwrap_or_else(|_| "picture".into()), &mut stems);
            let photo = if portable::fault(&file).is_none() { file.clone() } else { format!("{short}.{ending}") };
            let bytes = from.read(&path, MOST_BYTES).map_err(|error| StartError::Unreadable(error.to_string()))?;
            written.push(laid::write(folder, &format!("rooms/{room}/photos/{photo}"), &bytes)?);
            let name = words_of(stem);
            let text = match kind_of(&name) {
                Some(kind) => item_text(kind, kind.name(), &name, Some(&photo)),
                None => selection_text(&name, &photo),
            };
            written.push(laid::write(folder, &format!("rooms/{room}/{short}.yaml"), text.as_bytes())?);
        }
    }
    Ok(written)
}

/// The pictures, by the folder that they lie in.
fn rooms(from: &Folder) -> BTreeMap<String, Vec<Picture>> {
    let mut rooms: BTreeMap<String, Vec<Picture>> = BTreeMap::new();
    for entry in from.entries() {
        let parts: Vec<&str> = entry.path.split('/').collect();
        let (room, file) = match parts.as_slice() {
            [file] => (NO_ROOM, *file),
            [room, .., file] => (*room, *file),
            [] => continue,
        };
        let ending = file.rsplit_once('.').map_or(String::new(), |(_, ending)| ending.to_lowercase());
        if PICTURES.contains(&ending.as_str()) {
            rooms.entry(room.into()).or_default().push((entry.path.clone(), file.into()));
        }
    }
    // Of two folders below a room that hold a picture of one name, the first is taken.
    for pictures in rooms.values_mut() {
        let mut seen = BTreeSet::new();
        pictures.retain(|(_, file)| seen.insert(portable::folded(file)));
    }
    rooms
}

fn book_text(terms: Terms) -> String {
    let units = terms.units.word();
    let (country, currency) = (terms.country_line(), terms.currency());
    format!(
        "# `…` stands for what is not known yet: `bookmatch review` asks for it, and `bookmatch issue` waits for it.\n\
         title: …                                # what the book is called\n\
         client: …                               # the household, as it is addressed\n\
         {country}units: {units}\n\
         currency: {currency}\n\
         approvers:                              # the people who decide, and sign\n  \
           - {{id: …, name: …}}\n\
         # milestones, the way in, allowances: `bookmatch explain book`\n"
    )
}

/// The kind that a picture's name says for certain: it is one of the trade's words, with a number behind it or not.
fn kind_of(name: &str) -> Option<Kind> {
    let words = name.trim_end_matches(|letter: char| letter.is_ascii_digit() || " ()".contains(letter));
    Kind::named(words)
}

fn selection_text(name: &str, photo: &str) -> String {
    let (name, photo) = (quoted(name), quoted(photo));
    format!(
        "selection: {name}\nkind: …                                 # `bookmatch explain kinds`\nmaker: …\nmodel: …\n\
         finish: …\nsupplier: …\nlead time: …\nprice: …\nquantity: …\nphotos: [{photo}]\n"
    )
}

/// A name that is not taken yet.
fn free(name: String, taken: &mut BTreeSet<String>) -> String {
    let mut free = name.clone();
    let mut tried = 1;
    while !taken.insert(free.clone()) {
        tried += 1;
        free = format!("{name}-{tried}");
    }
    free
}

/// The words of a file's name: `wall-tile_2` is `Wall tile 2`.
fn words_of(name: &str) -> String {
    let words = name.replace(['-', '_', '.'], " ").split_whitespace().collect::<Vec<_>>().join(" ");
    if words.is_empty() { name.into() } else { capital(&words) }
}
