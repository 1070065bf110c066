//! Lays out a small book: it reviews clean, publishes at once, and teaches the format.

mod swatch;

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use crate::units::Date;

/// The texts, with the path of each in the book.
const TEXTS: [(&str, &str); 8] = [
    ("book.yaml", include_str!("book/book.yaml")),
    ("rooms/kitchen/room.yaml", include_str!("book/kitchen-room.yaml")),
    ("rooms/kitchen/range.yaml", include_str!("book/kitchen-range.yaml")),
    ("rooms/kitchen/surfaces.yaml", include_str!("book/kitchen-surfaces.yaml")),
    ("rooms/kitchen/notes.md", include_str!("book/notes.md")),
    ("rooms/bath/room.yaml", include_str!("book/bath-room.yaml")),
    ("rooms/bath/choices.yaml", include_str!("book/bath-choices.yaml")),
    (".gitignore", "# what bookmatch makes, and can make again\n.bookmatch/\nsite/\n"),
];

/// The pictures: plain swatches, made here.
const SWATCHES: [(&str, swatch::Swatch); 6] = [
    ("rooms/kitchen/photos/steel.png", swatch::Swatch { colour: [168, 170, 172], grain: swatch::Grain::Brushed }),
    ("rooms/kitchen/photos/moss.png", swatch::Swatch { colour: [104, 118, 92], grain: swatch::Grain::Even }),
    ("rooms/kitchen/photos/bone.png", swatch::Swatch { colour: [226, 219, 203], grain: swatch::Grain::Squares }),
    ("rooms/kitchen/photos/chalk.png", swatch::Swatch { colour: [236, 234, 228], grain: swatch::Grain::Even }),
    ("rooms/bath/photos/rust.png", swatch::Swatch { colour: [156, 84, 58], grain: swatch::Grain::Even }),
    ("rooms/bath/photos/opal.png", swatch::Swatch { colour: [240, 238, 230], grain: swatch::Grain::Brushed }),
];

/// How long after today the book's first milestone is, in days: nothing in it is late.
const AHEAD: i64 = 180;

/// Why a book was not laid out.
#[derive(Debug)]
pub enum StartError {
    /// Something is there already.
    NotEmpty(PathBuf),
    /// The system refuses: what, and its own words.
    Disk(PathBuf, io::Error),
    /// A swatch could not be made.
    Swatch(image::ImageError),
}

impl fmt::Display for StartError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotEmpty(path) => {
                write!(f, "`{}` is not empty; name a new folder, nothing was changed", path.display())
            }
            Self::Disk(path, error) => write!(f, "`{}` can't be written: {error}", path.display()),
            Self::Swatch(error) => write!(f, "a picture could not be made: {error}"),
        }
    }
}

impl std::error::Error for StartError {}

/// Lays out the book in a new or empty folder, and gives the paths that were written.
///
/// # Errors
/// When the folder holds something, or can't be written to.
#[expect(clippy::disallowed_methods, reason = "a new book in an empty folder: there is nothing to keep whole")]
pub fn start(folder: &Path, today: Date) -> Result<Vec<&'static str>, StartError> {
    let disk = |path: &Path| {
        let path = path.to_path_buf();
        move |error| StartError::Disk(path, error)
    };
    match std::fs::read_dir(folder).map(Iterator::count) {
        Ok(count) if count > 0 => return Err(StartError::NotEmpty(folder.to_path_buf())),
        Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(disk(folder)(error)),
        _ => {}
    }
    let mut written = Vec::new();
    for (path, bytes) in files(today)? {
        let whole = folder.join(path);
        if let Some(above) = whole.parent() {
            std::fs::create_dir_all(above).map_err(disk(above))?;
        }
        std::fs::write(&whole, bytes).map_err(disk(&whole))?;
        written.push(path);
    }
    Ok(written)
}

/// Every file of the book, by path.
pub fn files(today: Date) -> Result<Vec<(&'static str, Vec<u8>)>, StartError> {
    let dated = |text: &str| {
        text.replace("{DEMOLITION}", &today.plus_days(AHEAD).iso()).replace("{TODAY}", &today.iso()).into_bytes()
    };
    let mut files: Vec<(&str, Vec<u8>)> = TEXTS.iter().map(|(path, text)| (*path, dated(text))).collect();
    for (path, swatch) in &SWATCHES {
        files.push((path, swatch.png().map_err(StartError::Swatch)?));
    }
    Ok(files)
}
