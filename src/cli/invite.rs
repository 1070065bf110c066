//! `invite`: makes a key for each approver, and prints private links.

use std::collections::BTreeSet;
use std::fs::OpenOptions;
use std::io::Write;
use std::path::{Path, PathBuf};

use super::book_folder::BookFolder;
use super::clock::{self, Today};
use super::report::{self, say};
use super::scan::Code;
use super::{CLEAN, Failure};
use crate::book::{Approver, Book, Project};
use crate::ledger::Moment;
use crate::publish::output::is_published;
use crate::read::read;
use crate::record::{Key, Open, Store, current};
use crate::source::Folder;
use crate::views::client::reminder::WayThere;

/// Makes a key for each approver, and prints the private link to send
///
/// Whoever has the link can decide in that person's name: send it to that person alone. The keys stay in
/// `record/keys`, for you alone, and are never published. A link that went astray is replaced with
/// `--renew` or taken back with `--withdraw`.
#[derive(clap::Args)]
pub struct Invite {
    #[command(flatten)]
    book: BookFolder,
    /// Where the client's pages are, such as https://book.example/client; if left out, where the book is published
    /// by `published at`, or else beside the address that responses go to, as `host` serves them
    #[arg(long, value_name = "URL")]
    address: Option<String>,
    /// The approver, by id; all of them if left out
    #[arg(long = "for", value_name = "WHO")]
    who: Option<String>,
    /// Make a new key for this approver; the link before is no longer valid
    #[arg(long, value_name = "WHO")]
    renew: Option<String>,
    /// Take this approver's key away
    #[arg(long, value_name = "WHO", conflicts_with_all = ["renew", "who", "svg"])]
    withdraw: Option<String>,
    /// Write the code to scan of the one approver into this file
    #[arg(long, value_name = "FILE")]
    svg: Option<PathBuf>,
    #[command(flatten)]
    today: Today,
}

impl Invite {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let folder = self.book.open()?;
        let root = folder.root().ok_or("the book is not on a disk")?.to_path_buf();
        let reading = read(&folder)?;
        // A new ledger must not be begun over what was published from another.
        let faults = || reading.findings.iter().filter(|one| one.rule == crate::finding::Code::LEDGER && one.stops());
        if let Some(last) = faults().next_back() {
            let told: Vec<&str> = faults().map(|fault| fault.message.text()).collect();
            return Err(format!("{}; {}", told.join("; "), last.remedy).into());
        }
        let book = reading.book;
        let store = Store::of_book(&root);
        let now = clock::now()?;
        if let Some(who) = &self.withdraw {
            return self.withdraw(&store, who, now);
        }
        let invited = self.invited(&book)?;
        let address = match self.address.as_deref() {
            Some(given) => address(given)?,
            None => pages(&book.project)?,
        };
        let mut links = Vec::new();
        {
            let mut open = store.open()?;
            open.book(book.project.title.get().map_or("", String::as_str), now)?;
            for approver in &invited {
                let key = self.key(&store, &mut open, &approver.id.value, now)?;
                links.push((*approver, link(&address, &approver.id.value, &key)));
            }
        }
        if let Some(file) = &self.svg {
            let [(_, link)] = links.as_slice() else {
                return Err("one file holds the code of one approver; name that one with `--for`".into());
            };
            write_svg(file, &Code::of(link)?.svg())?;
        }
        for (approver, link) in &links {
            report::print_line(&format!("{}: {link}", approver.name))?;
            if report::to_a_terminal() {
                report::print(&format!("\n{}\n", Code::of(link)?.letters()))?;
            }
        }
        tell_open_keys(&folder);
        say("each link decides in that person's name: send it to that person alone");
        Ok(CLEAN)
    }

    /// The approvers that links are asked for.
    fn invited<'b>(&self, book: &'b Book) -> Result<Vec<&'b Approver>, Failure> {
        let only = self.renew.as_ref().or(self.who.as_ref());
        let approvers = &book.project.approvers;
        let found: Vec<&Approver> =
            approvers.iter().filter(|one| only.is_none_or(|who| *who == one.id.value)).collect();
        match (found.is_empty(), only) {
            (true, Some(who)) => {
                let ids: BTreeSet<&str> = approvers.iter().map(|one| one.id.value.as_str()).collect();
                let ids: Vec<&str> = ids.into_iter().collect();
                Err(format!("`{who}` is no approver; `book.yaml` names: {}", ids.join(", ")).into())
            }
            (true, None) => Err("the book names no approvers; write them under `approvers` in `book.yaml`".into()),
            _ => Ok(found),
        }
    }

    /// The approver's key: the one that there is, or a new one.
    fn key(&self, store: &Store, open: &mut Open<'_>, who: &str, now: Moment) -> Result<Key, Failure> {
        let counts = current(&open.chain().lines).remove(who);
        let kept = store.key(who).filter(|key| Some(key.id()) == counts);
        match (kept, counts) {
            (Some(key), _) if self.renew.is_none() => Ok(key),
            (None, Some(_)) if self.renew.is_none() => {
                Err(format!("the key of `{who}` is not on this disk; make a new one with `--renew {who}`").into())
            }
            _ => Ok(open.invite(who, now, self.today.date()?)?),
        }
    }

    fn withdraw(&self, store: &Store, who: &str, now: Moment) -> Result<u8, Failure> {
        let mut open = store.open()?;
        if !open.withdraw(who, now, self.today.date()?)? {
            return Err(format!("`{who}` has no key").into());
        }
        say(&format!("the key of `{who}` is no longer valid; what was decided with it before stands"));
        Ok(CLEAN)
    }
}

/// Tells keys that others on this computer can read.
pub fn tell_open_keys(folder: &Folder) {
    for path in folder.open_keys() {
        say(&format!(
            "others on this computer can read `{path}`; take the right from them: `chmod -R go= record/keys`"
        ));
    }
}

/// How an approver gets to the page to decide on: by the private link where the key of it is on this disk.
pub fn way_there(store: &Store, book: &Book, who: &str) -> WayThere {
    let Ok(address) = pages(&book.project) else { return WayThere::AsTold };
    match store.counting_key(&book.record.lines, who) {
        Some(key) => WayThere::PrivateLink(link(&address, who, &key)),
        None => WayThere::Page(format!("{address}sign.html")),
    }
}

/// The address of the client's pages, with a slash at its end: where the book says that it is published.
fn pages(project: &Project) -> Result<String, Failure> {
    let published = project.published_at.get().map(|root| format!("{}/client", root.trim_end_matches('/')));
    let posted = project.responses.post.get().map(String::as_str);
    address(&published.map_or_else(|| beside(posted), Ok)?)
}

/// Where the client's pages are when `host` serves them at the address that responses are posted to.
fn beside(posted: Option<&str>) -> Result<String, Failure> {
    let root = posted.and_then(|posted| posted.strip_suffix("/responses"));
    let unknown = "where the client's pages are is not known; give it with `--address https://…/client`, or write \
                   `published at: https://…` or, when `host` serves them, `responses: {post: \"https://…/responses\"}` \
                   in `book.yaml`";
    Ok(format!("{}/client", root.ok_or(unknown)?))
}

/// The address of the client's pages, with a slash at its end.
fn address(given: &str) -> Result<String, Failure> {
    let sound = given.split_once("://").is_some_and(|(scheme, rest)| {
        matches!(scheme, "https" | "http" | "file") && !rest.is_empty() && !rest.contains(['#', '?'])
    });
    if !sound || given.chars().any(|letter| letter.is_control() || letter.is_whitespace()) {
        return Err(format!("`{given}` is no address of pages; write one such as `https://book.example/client`").into());
    }
    Ok(format!("{}/", given.trim_end_matches("/index.html").trim_end_matches('/')))
}

/// The private link; what is after `#` is never sent to a server.
fn link(address: &str, who: &str, key: &Key) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'_');
    let who: String = who
        .bytes()
        .map(|byte| if plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") })
        .collect();
    format!("{address}sign.html#for={who}&key={}", key.in_link())
}

/// Writes the code, which holds the key, for the owner alone, and never where it would be published.
fn write_svg(file: &Path, svg: &str) -> Result<(), Failure> {
    let above = std::path::absolute(file)?;
    if above.ancestors().skip(1).any(is_published) {
        return Err(
            format!("`{}` would be published, and the code holds the key; choose another", file.display()).into()
        );
    }
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let written = options.open(file).and_then(|mut open| open.write_all(svg.as_bytes()));
    written.map_err(|error| format!("can't write `{}`: {error}", file.display()).into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_link_leads_to_the_page_to_sign_with_the_key_where_no_server_sees_it() {
        let link = link(&address("https://book.example/client").unwrap(), "the quillarns", &Key::of([0; 32]));
        let (sent, kept) = link.split_once('#').unwrap();
        assert_eq!(sent, "https://book.example/client/sign.html");
        assert_eq!(kept, format!("for=the%20quillarns&key={}", "A".repeat(43)));
    }

    #[test]
    fn without_an_address_pages_are_taken_to_be_where_the_server_takes_responses() {
        assert_eq!(beside(Some("https://b.example:8443/x/responses")).unwrap(), "https://b.example:8443/x/client");
        for elsewhere in [None, Some("https://forms.example/in?book=3"), Some("https://b.example")] {
            assert!(beside(elsewhere).unwrap_err().to_string().contains("`--address"), "{elsewhere:?}");
        }
    }

    #[test]
    fn what_is_no_address_is_refused() {
        for odd in ["book.example", "javascript:alert(1)", "https://", "https://a.example/#x", "https://a b.example"] {
            assert!(address(odd).is_err(), "{odd}");
        }
    }
}
