//! `start`: lays out a small book to begin with, or a new room or item in one.

use std::path::{Component, Path, PathBuf};

use clap::Subcommand;

use crate::book::Country;
use crate::read::can_hold_a_theme;
use crate::start::{Terms, from_photographs, item, room, start, theme};
use crate::units::System;
use crate::vocabulary::{Words, word_meant};

use super::clock::Today;
use super::report::{print_line, say};
use super::{CLEAN, Failure};

/// Lays out a small book that teaches the format, or a new room or item
///
/// Nothing that is there is written over.
#[derive(clap::Args)]
#[command(args_conflicts_with_subcommands = true, subcommand_negates_reqs = true)]
pub struct Start {
    /// A new or empty folder
    #[arg(value_name = "DIR", required_unless_present = "theme")]
    folder: Option<PathBuf>,
    /// In which units: `imperial`, `metric`, or one of them `only`; left out, those of the country
    #[arg(long, value_parser = units)]
    units: Option<System>,
    /// Where the work is, by its two letters in ISO 3166, such as GB
    #[arg(long, value_parser = country)]
    country: Option<Country>,
    /// Make the book of these photographs: a room for each folder, a selection for each picture
    #[arg(long, value_name = "DIR")]
    photographs: Option<PathBuf>,
    /// Lay out the standard theme here, to be changed: templates, styles, words, sheets of paper
    #[arg(long, value_name = "DIR", conflicts_with_all = ["folder", "units", "country", "photographs"])]
    theme: Option<PathBuf>,
    #[command(flatten)]
    today: Today,
    #[command(subcommand)]
    more: Option<More>,
}

#[derive(Subcommand)]
enum More {
    /// Lays out a new room in a book
    Room {
        /// What it is called
        name: String,
        /// The book's folder
        #[arg(long, value_name = "DIR", default_value = ".")]
        book: PathBuf,
    },
    /// Lays out a new item in a room, with the fields of its kind
    Item {
        /// The room, by its folder
        room: String,
        /// The kind, in any of the trade's words
        kind: String,
        /// What it is called; left out, as its kind is
        #[arg(long)]
        name: Option<String>,
        /// The book's folder
        #[arg(long, value_name = "DIR", default_value = ".")]
        book: PathBuf,
    },
}

fn units(text: &str) -> Result<System, String> {
    let meant = word_meant(&text.to_lowercase(), System::WORDS, System::ALSO).and_then(System::of);
    meant.ok_or_else(|| format!("write one of {}", System::WORDS.join(", ")))
}

fn country(text: &str) -> Result<Country, String> {
    let known = || format!("write one of {}", Country::WORDS.join(", "));
    let also = || Country::ALSO.iter().find(|(also, _)| also.to_lowercase() == text.to_lowercase());
    let named = || also().and_then(|(_, word)| Country::of(word));
    Country::of(&text.to_uppercase()).or_else(named).ok_or_else(known)
}

/// The file that makes a folder a book.
const BOOK_FILE: &str = "book.yaml";

/// The folder of a theme as `book.yaml` names it, and whether it lies in a book already.
fn named_by_its_book(folder: &Path) -> (String, bool) {
    // What is not there yet lies in what is.
    let whole = std::path::absolute(folder).unwrap_or_else(|_| folder.to_owned());
    let steps: Vec<Component<'_>> = whole.components().filter(|step| *step != Component::CurDir).collect();
    let is_a_book = |length: &usize| {
        let above: PathBuf = steps.iter().take(*length).collect();
        above.join(BOOK_FILE).is_file()
    };
    let book = (1..steps.len()).rev().find(is_a_book);
    let named = steps.iter().skip(book.unwrap_or(steps.len().saturating_sub(1)));
    let named: Vec<_> = named.map(|step| step.as_os_str().to_string_lossy()).collect();
    (named.join("/"), book.is_some())
}

fn new_theme(folder: &Path) -> Result<u8, Failure> {
    let (name, is_in_a_book) = named_by_its_book(folder);
    if !can_hold_a_theme(&name) {
        let folder = folder.display();
        return Err(
            format!("the folder `{folder}` can't hold a theme; name one of its own, such as `our-theme`").into()
        );
    }
    for path in theme(folder)? {
        print_line(&folder.join(path).display().to_string())?;
    }
    let moved = if is_in_a_book { "" } else { "move it into the book's folder, and " };
    say(&format!("next: {moved}write `theme: {name}` in `book.yaml`"));
    say("then keep the files that you change, and delete the others: for those the standard ones stand");
    Ok(CLEAN)
}

impl Start {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        match &self.more {
            Some(More::Room { name, book }) => print_line(&book.join(room(book, name)?).display().to_string())?,
            Some(More::Item { room, kind, name, book }) => {
                let path = item(book, room, kind, name.as_deref())?;
                print_line(&book.join(path).display().to_string())?;
            }
            None => return self.theme.as_ref().map_or_else(|| self.new_book(), |folder| new_theme(folder)),
        }
        say("what is not known yet stands as `…`: write it there; `bookmatch review` asks for what is missing");
        Ok(CLEAN)
    }

    fn new_book(&self) -> Result<u8, Failure> {
        let folder = self.folder.as_ref().ok_or("name a new folder")?;
        let terms = Terms::of(self.units, self.country);
        let written = match &self.photographs {
            Some(photographs) => from_photographs(folder, photographs, terms)?,
            None => start(folder, terms, self.today.date()?)?,
        };
        for path in written {
            print_line(&folder.join(path).display().to_string())?;
        }
        let folder = folder.display();
        say(&format!("next: bookmatch review {folder}"));
        let draft = if self.photographs.is_some() { " --draft" } else { "" };
        say(&format!("then: bookmatch publish {folder}{draft} --out {folder}/site"));
        Ok(CLEAN)
    }
}
