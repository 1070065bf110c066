//! Bad input gets a clear error, and nothing is lost: neither the user's files nor what was published.

mod disk;
mod drafts;
mod folder;
mod links;
mod pictures;
mod pipes;
mod stopped;
mod terminal;
mod yaml;

use std::fs;
use std::path::{Path, PathBuf};

use crate::project::{Project, Ran, Tree, tree};

const TODAY: [&str; 2] = ["--today", "2027-01-15"];
const RANGE: &str = "rooms/kitchen/range.yaml";

/// A small book that was published once.
struct Published {
    project: Project,
    out: PathBuf,
}

/// The book of the user and the published site, byte for byte.
struct Both {
    book: Tree,
    site: Tree,
}

impl Published {
    fn new() -> Self {
        let maker = Project::new();
        let laid = maker.beside("laid");
        maker.run(["start".as_ref(), laid.as_os_str()]).exits(0);
        let project = Project::copy_of(laid.to_str().expect("a path that is text"));
        let published = Self { out: project.beside("site"), project };
        published.publish(&[]).exits(0).does_not_say("panicked");
        assert!(tree(&published.out).files().count() > 50, "there is an earlier output to lose");
        published
    }

    /// Puts a file of the book wrong.
    fn with(mut self, path: &str, bytes: &[u8]) -> Self {
        self.project = self.project.bytes(path, bytes);
        self
    }

    /// Replaces words in a file of the book; they must stand there.
    fn replacing(self, path: &str, words: &str, by: &str) -> Self {
        let text = fs::read_to_string(self.project.root().join(path)).expect("a file of the book");
        assert!(text.contains(words), "{path} does not say {words}");
        self.with(path, text.replacen(words, by, 1).as_bytes())
    }

    fn publish(&self, more: &[&str]) -> Ran {
        self.publish_to(&self.out, more)
    }

    fn publish_to(&self, out: &Path, more: &[&str]) -> Ran {
        let out = out.to_str().expect("a path that is text");
        self.project.run(["publish", "--out", out].iter().chain(&TODAY).chain(more))
    }

    fn review(&self) -> Ran {
        self.project.run(["review"].iter().chain(&TODAY))
    }

    fn now(&self) -> Both {
        Both { book: self.project.tree().without(".bookmatch"), site: tree(&self.out) }
    }

    /// Review and publish end with this code and say these words, and touch neither the book nor the site;
    /// nor does a draft that is published elsewhere.
    #[track_caller]
    fn is_refused(&self, code: i32, words: &[&str]) {
        let before = self.now();
        for ran in [self.review(), self.publish(&[])] {
            let ran = words.iter().fold(ran.exits(code), |ran, words| ran.says(words));
            ran.does_not_say("panicked").does_not_say("published to");
            before.stands(self);
        }
        let ran = self.publish_to(&self.project.beside("draft"), &["--draft"]);
        // A draft takes what is whole; a folder that is no book gives none.
        words.iter().fold(ran.exits(if code == 1 { 0 } else { code }), |ran, words| ran.says(words));
        before.stands(self);
    }
}

impl Both {
    /// The book and the site are what they were, to the byte.
    #[track_caller]
    fn stands(&self, published: &Published) {
        let now = published.now();
        self.book.same_as(&now.book);
        self.site.same_as(&now.site);
    }
}

#[test]
fn a_site_or_a_book_that_did_change_is_noticed() {
    let changes: [fn(&Published); 2] = [
        |published| fs::write(published.out.join("client/index.html"), "").unwrap(),
        |published| fs::write(published.project.root().join(RANGE), "").unwrap(),
    ];
    let published = Published::new();
    for change in changes {
        let before = published.now();
        change(&published);
        let noticed = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| before.stands(&published)));
        assert!(noticed.is_err());
    }
}
