//! Publishes small books in memory, and reads their sheets as a trade would.

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;

use bookmatch::pictures::Cache;
use bookmatch::pipeline::{self, BuildCaches, BuildOptions};
use bookmatch::publish::output::Content;
use bookmatch::source::Folder;
use bookmatch::units::Date;

use crate::project::Project;

/// A book whose amounts nobody can mistake for anything else.
const BOOK: &str = "title: Small\nclient: Nobody\nfirm: {name: Marrowby, phone: 555 0188}\nunits: imperial\n\
                    currency: USD\napprovers: [{id: ada, name: Ada Marrowby}]\n";

/// The same in millimetres and Spanish.
const SPANISH: &str = "title: Chico\nclient: Nadie\nfirm: {name: Marrowby}\nunits: metric only\ncurrency: EUR\n\
                       country: ES\nlanguages: [es]\n";

/// A sheet as it was published.
pub struct Sheet {
    /// All of the page.
    pub html: String,
}

/// The installer's pages of a room, by their path in their folder.
pub struct Site(BTreeMap<String, String>);

/// A kitchen as its files have it: what the room says, and what is chosen there.
pub fn kitchen(room: &str, selections: &str) -> Site {
    made(BOOK, room, selections)
}

/// The same kitchen of a Spanish household.
pub fn cocina(room: &str, selections: &str) -> Site {
    made(SPANISH, room, selections)
}

/// A kitchen in a book that says more.
pub fn made(book: &str, room: &str, selections: &str) -> Site {
    let project = Project::new()
        .file("book.yaml", book)
        .file("rooms/kitchen/room.yaml", &format!("name: Kitchen\n{room}"))
        .file("rooms/kitchen/chosen.yaml", selections);
    drafted(&project)
}

/// A book's pages for those who build.
pub fn published(project: &Project) -> Site {
    pages(project, false)
}

/// The same as a draft.
pub fn drafted(project: &Project) -> Site {
    pages(project, true)
}

fn pages(project: &Project, draft: bool) -> Site {
    let folder = Folder::open(&project.root()).expect("the book");
    let review = pipeline::review_to_issue(&folder, Date::parse("2027-01-15").expect("a day")).expect("a book");
    let (mut workshop, cache) = (BuildCaches::new().expect("a theme"), Cache::temporary().expect("a cache"));
    let making = BuildOptions { draft, later: true, progress: &|_, _| {}, interrupt: &AtomicBool::new(false) };
    let made = pipeline::make(&folder, &review, &cache, &making, &mut workshop).expect("a draft");
    let pages = made.output.files().filter(|(path, _)| path.starts_with("installer/") && path.ends_with(".html"));
    let text = |content: &Content| match content {
        Content::Bytes(bytes) => bytes.to_vec(),
        Content::Laid(laid) => laid.whole().expect("its text"),
        Content::File { path, .. } => panic!("a page is no picture: {}", path.display()),
    };
    let page = |(path, content): (&str, &Content)| {
        let path = path.trim_start_matches("installer/").to_string();
        (path, String::from_utf8(text(content)).expect("a page"))
    };
    Site(pages.map(page).collect())
}

impl Site {
    /// The sheet of a trade.
    #[track_caller]
    pub fn sheet(&self, trade: &str) -> Sheet {
        self.page(&format!("trades/kitchen/{trade}.html"))
    }

    /// Any page by its path.
    #[track_caller]
    pub fn page(&self, path: &str) -> Sheet {
        Sheet { html: self.0.get(path).unwrap_or_else(|| panic!("no {path} among {:?}", self.0.keys())).clone() }
    }

    /// Whether a trade has one.
    pub fn has(&self, trade: &str) -> bool {
        self.0.contains_key(&format!("trades/kitchen/{trade}.html"))
    }

    /// The first page of those who build.
    pub fn index(&self) -> String {
        self.0["index.html"].clone()
    }
}

impl Sheet {
    /// Its words, as they are read.
    pub fn text(&self) -> String {
        plain(&self.html)
    }

    /// What stands beside a name; nothing where the name does not stand there.
    pub fn fact(&self, name: &str) -> String {
        let (_, after) = self.html.split_once(&format!("<dt>{name}</dt><dd>")).unwrap_or_default();
        plain(after.split("</dd>").next().unwrap_or_default())
    }

    /// The row of a table that begins so, cell by cell.
    pub fn row(&self, name: &str) -> Vec<String> {
        let mut rows = self.html.split("<tr><th scope=\"row\">").skip(1);
        let cells = |row: &str| -> Vec<String> {
            let row = row.split("</tr>").next().unwrap_or_default();
            row.split("</td>").flat_map(|cell| cell.split("</th>")).map(plain).filter(|cell| !cell.is_empty()).collect()
        };
        rows.find_map(|row| Some(cells(row)).filter(|cells| cells.first().is_some_and(|first| first == name)))
            .unwrap_or_default()
    }

    /// The mark in its title block.
    pub fn mark(&self) -> String {
        let (_, after) = self.html.split_once("<dd class=\"mark\">").unwrap_or_default();
        after.split("</dd>").next().unwrap_or_default().into()
    }

    /// Says all of these somewhere.
    #[track_caller]
    pub fn says(&self, all: &[&str]) {
        let text = self.text();
        for words in all {
            assert!(text.contains(words), "`{words}` is not on the sheet:\n{text}");
        }
    }

    /// Says none of these.
    #[track_caller]
    pub fn is_silent_of(&self, all: &[&str]) {
        let text = self.text();
        for words in all {
            assert!(!text.contains(words), "`{words}` is on the sheet:\n{text}");
        }
    }
}

/// The words of some markup: tags left out, space made one.
fn plain(html: &str) -> String {
    let (mut text, mut in_tag) = (String::new(), false);
    for letter in html.chars() {
        match letter {
            '<' => in_tag = true,
            '>' => {
                in_tag = false;
                text.push(' ');
            }
            letter if !in_tag => text.push(letter),
            _ => {}
        }
    }
    let text = text.replace('\u{a0}', " ").replace("&#39;", "'").replace("&quot;", "\"").replace("&amp;", "&");
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    [(" ″", "″"), (" \"", "\""), (" .", "."), (" ,", ",")].iter().fold(text, |text, (from, to)| text.replace(from, to))
}
