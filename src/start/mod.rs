//! New things for a book: a small one to begin with, which reviews clean and teaches the format; one made of
//! photographs; a room; an item with the fields of its kind. Nothing that is there is ever written over.

mod laid;
mod more;
mod photographs;
mod swatch;

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use crate::book::Country;
use crate::theme::ThemeFiles;
use crate::units::{Currency, Date, System};
use crate::vocabulary::Words as _;

pub use more::{item, room};
pub use photographs::from_photographs;

/// What the texts are in.
#[derive(Clone, Copy, Debug)]
pub struct Terms {
    /// The units shown first.
    pub units: System,
    /// Where the work is, where that is said.
    pub country: Option<Country>,
}

impl Terms {
    /// The units that are asked for, or those of the country; feet and inches where nothing is said.
    pub fn of(units: Option<System>, country: Option<Country>) -> Self {
        let usual = match country {
            None | Some(Country::UnitedStates) => System::Imperial,
            Some(_) => System::Metric,
        };
        Self { units: units.unwrap_or(usual), country }
    }

    /// The line that names the country; none where nothing is said.
    fn country_line(self) -> String {
        self.country.map_or(String::new(), |country| format!("country: {country}\n"))
    }

    /// The line that names the units, with the others that a book may have.
    fn units_line(self) -> String {
        let (own, other) = if self.units.is_metric() { ("metric", "imperial") } else { ("imperial", "metric") };
        let line = format!("units: {}", self.units.word());
        match self.units.is_alone() {
            false => format!("{line:<39}# or {other}; the other stands beside it, or not at all: `{own} only`"),
            true => format!("{line:<39}# after `{own}` the other system stands beside it"),
        }
    }

    /// The currency of the country (ISO 4217); without one, what goes with the units.
    fn currency(self) -> &'static str {
        let Some(country) = self.country else {
            return if self.units.is_metric() { "EUR" } else { "USD" };
        };
        match country {
            Country::UnitedStates => "USD",
            Country::Canada => "CAD",
            Country::Mexico => "MXN",
            Country::UnitedKingdom => "GBP",
            Country::Switzerland => "CHF",
            Country::Denmark => "DKK",
            Country::Norway => "NOK",
            Country::Sweden => "SEK",
            Country::Iceland => "ISK",
            Country::Poland => "PLN",
            Country::Czechia => "CZK",
            Country::Australia => "AUD",
            Country::NewZealand => "NZD",
            Country::Japan => "JPY",
            Country::Korea => "KRW",
            Country::China => "CNY",
            Country::Singapore => "SGD",
            Country::India => "INR",
            Country::SouthAfrica => "ZAR",
            Country::Brazil => "BRL",
            Country::Argentina => "ARS",
            Country::Chile => "CLP",
            Country::Colombia => "COP",
            Country::Israel => "ILS",
            Country::Emirates => "AED",
            _ => "EUR",
        }
    }
}

/// A text of the book: where it goes, in feet and inches, and in metric units.
type Text = (&'static str, &'static str, &'static str);

/// The texts.
const TEXTS: [Text; 8] = [
    ("book.yaml", include_str!("book/book.yaml"), include_str!("book/metric/book.yaml")),
    ("rooms/kitchen/room.yaml", include_str!("book/kitchen-room.yaml"), include_str!("book/metric/kitchen-room.yaml")),
    (
        "rooms/kitchen/range.yaml",
        include_str!("book/kitchen-range.yaml"),
        include_str!("book/metric/kitchen-range.yaml"),
    ),
    (
        "rooms/kitchen/surfaces.yaml",
        include_str!("book/kitchen-surfaces.yaml"),
        include_str!("book/metric/kitchen-surfaces.yaml"),
    ),
    ("rooms/kitchen/notes.md", include_str!("book/notes.md"), include_str!("book/notes.md")),
    ("rooms/bath/room.yaml", include_str!("book/bath-room.yaml"), include_str!("book/metric/bath-room.yaml")),
    ("rooms/bath/choices.yaml", include_str!("book/bath-choices.yaml"), include_str!("book/metric/bath-choices.yaml")),
    (".gitignore", IGNORED, IGNORED),
];

/// What version control leaves out.
const IGNORED: &str = "# what bookmatch makes, and can make again\n.bookmatch/\nsite/\n";

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

/// Why nothing was laid out.
#[derive(Debug)]
pub enum StartError {
    /// Something is there already.
    NotEmpty(PathBuf),
    /// The folder lies in a book.
    InABook(PathBuf, PathBuf),
    /// No book is there.
    NoBook(PathBuf),
    /// The book has no such room; these it has.
    NoRoom(String, Vec<String>),
    /// A room of that name is there.
    IsThere(String),
    /// There is no such kind, and what may be meant.
    NoKind(String, String),
    /// A name without a letter or figure that every disk takes.
    NoName(String),
    /// No picture is in the folder.
    NoPictures(PathBuf),
    /// The system refuses: what, and its own words.
    Disk(PathBuf, io::Error),
    /// The folder of photographs can't be read: why.
    Unreadable(String),
    /// A swatch could not be made.
    Swatch(image::ImageError),
}

impl fmt::Display for StartError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotEmpty(path) => {
                write!(f, "`{}` is not empty; name a new folder, nothing was changed", path.display())
            }
            Self::InABook(folder, book) => write!(
                f,
                "`{}` lies in the book `{}`; for a new room in it: `bookmatch start room NAME --book {}`; nothing was changed",
                folder.display(),
                book.display(),
                book.display()
            ),
            Self::NoBook(path) => write!(f, "`{}` holds no `book.yaml`; name the book with `--book`", path.display()),
            Self::NoRoom(room, rooms) if rooms.is_empty() => {
                write!(f, "the book has no room `{room}`, and none at all; `bookmatch start room` lays one out")
            }
            Self::NoRoom(room, rooms) => write!(f, "the book has no room `{room}`; it has {}", rooms.join(", ")),
            Self::IsThere(path) => write!(f, "`{path}` is there already; nothing was changed"),
            Self::NoKind(kind, meant) => write!(f, "there is no kind of selection called `{kind}`; {meant}"),
            Self::NoName(name) => write!(f, "`{name}` names no folder; write it with letters or figures"),
            Self::NoPictures(path) => {
                write!(f, "`{}` holds no pictures; put those of each room into a folder of its own", path.display())
            }
            Self::Disk(path, error) => write!(f, "`{}` can't be written: {error}", path.display()),
            Self::Unreadable(why) => f.write_str(why),
            Self::Swatch(error) => write!(f, "a picture could not be made: {error}"),
        }
    }
}

impl std::error::Error for StartError {}

/// Lays out the book in a new or empty folder, and gives the paths that were written.
///
/// # Errors
/// When the folder holds something, or can't be written to.
pub fn start(folder: &Path, terms: Terms, today: Date) -> Result<Vec<String>, StartError> {
    laid::new_book(folder)?;
    files(terms, today)?.into_iter().map(|(path, bytes)| laid::write(folder, path, &bytes)).collect()
}

/// Lays the standard theme out in a new or empty folder, to be changed, and gives the paths that were written.
///
/// # Errors
/// When the folder holds something, or can't be written to.
pub fn theme(folder: &Path) -> Result<Vec<String>, StartError> {
    laid::new_folder(folder)?;
    ThemeFiles::to_change().into_iter().map(|(path, bytes)| laid::write(folder, &path, bytes)).collect()
}

/// The same text with amounts in whole units: some currencies have no smaller ones.
fn without_cents(text: &str) -> String {
    let is_amount = |line: &str| ["price:", "cost:"].iter().any(|key| line.trim_start().starts_with(key));
    let line = |line: &str| if is_amount(line) { line.replacen(".00", "", 1) } else { line.to_string() };
    text.split_inclusive('\n').map(line).collect()
}

/// Every file of the book, by path.
fn files(terms: Terms, today: Date) -> Result<Vec<(&'static str, Vec<u8>)>, StartError> {
    let filled = |text: &str| {
        let dated = text.replace("{DEMOLITION}", &today.plus_days(AHEAD).iso()).replace("{TODAY}", &today.iso());
        let placed = dated.replace("{COUNTRY}", &terms.country_line()).replace("{CURRENCY}", terms.currency());
        let placed = placed.replace("{UNITS}", &terms.units_line());
        let has_cents = Currency::parse(terms.currency()).is_ok_and(|currency| currency.decimals() > 0);
        if has_cents { placed.into_bytes() } else { without_cents(&placed).into_bytes() }
    };
    let text =
        |(path, imperial, metric): &Text| (*path, filled(if terms.units.is_metric() { metric } else { imperial }));
    let mut files: Vec<(&str, Vec<u8>)> = TEXTS.iter().map(text).collect();
    for (path, swatch) in &SWATCHES {
        files.push((path, swatch.png().map_err(StartError::Swatch)?));
    }
    Ok(files)
}
