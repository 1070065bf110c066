//! Names with capitals where the book's own words stand: `Rooms/`, `Room.yaml`, `range.YML`.

/// A name with capitals, and how it is to be written.
pub struct Capitals {
    /// The path as it is, as far as the name that has them.
    pub written: String,
    /// The same as a book has it.
    pub meant: String,
}

/// The folders of a book that hold its files, and how deep these lie.
const FOLDERS: [(&str, usize); 2] = [("rooms", 3), ("products", 2)];
/// Files that a room's folder knows by their whole name.
const ROOM_FILES: [&str; 2] = ["room.yaml", "room.yml"];
/// Endings of records.
const ENDINGS: [&str; 2] = ["yaml", "yml"];

/// Whether a file is left out of the book for the capitals in its name alone, and the first such name.
pub fn capitals(path: &str) -> Option<Capitals> {
    let segments: Vec<&str> = path.split('/').collect();
    let [first, .., last] = segments.as_slice() else { return None };
    let lower = first.to_lowercase();
    let (ours, deep) = FOLDERS.into_iter().find(|(folder, _)| *folder == lower)?;
    if ours != *first {
        return Some(Capitals { written: (*first).into(), meant: lower });
    }
    // Deeper files are no part of a book, however they are written.
    let meant = name(last).filter(|_| segments.len() == deep)?;
    let above = path.strip_suffix(last)?;
    Some(Capitals { written: path.into(), meant: format!("{above}{meant}") })
}

/// The name of a file as a book has it, where it is written otherwise.
fn name(written: &str) -> Option<String> {
    let lower = written.to_lowercase();
    let (stem, ending) = written.rsplit_once('.')?;
    let ending = ending.to_lowercase();
    if !ENDINGS.contains(&ending.as_str()) {
        return None;
    }
    let meant = if ROOM_FILES.contains(&lower.as_str()) { lower } else { format!("{stem}.{ending}") };
    (meant != written).then_some(meant)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_name_with_capitals_is_told_as_far_as_the_book_has_a_word_for_it() {
        let told = |path: &str| capitals(path).map(|told| (told.written, told.meant));
        let pair = |written: &str, meant: &str| Some((written.into(), meant.into()));
        assert_eq!(told("Rooms/kitchen/range.yaml"), pair("Rooms", "rooms"));
        assert_eq!(told("rooms/kitchen/Room.yaml"), pair("rooms/kitchen/Room.yaml", "rooms/kitchen/room.yaml"));
        assert_eq!(told("rooms/kitchen/Range.YML"), pair("rooms/kitchen/Range.YML", "rooms/kitchen/Range.yml"));
        for fine in ["rooms/Kitchen/Range.yaml", "products/A.yaml", "rooms/kitchen/photos/A.PNG", "Notes.md"] {
            assert_eq!(told(fine), None, "{fine}");
        }
    }
}
