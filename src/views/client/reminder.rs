//! A reminder for somebody who approves, ready to be mailed: what still waits for that person, by when, and why by then.

use crate::assess::Assessment;
use crate::assess::approval::{ApprovalState, ItemApproval};
use crate::book::{Approver, Book, Room, Selection};
use crate::language::{Words, say};
use crate::units::Date;
use crate::views::client::due;

/// What waits for somebody.
struct Asked<'a> {
    room: &'a Room,
    selection: &'a Selection,
    on: Option<Date>,
    what: Wanted,
}

/// What is wanted of somebody.
enum Wanted {
    /// An answer.
    Answer,
    /// One answer with these, who said something else.
    AgreeWith(Vec<String>),
    /// To sign what came in the place of what they approved, once it is issued.
    SignWhatCame,
}

impl Wanted {
    fn of(item: &ItemApproval, approver: &Approver) -> Option<Self> {
        if item.still_to_answer().contains(&approver.name) {
            return Some(Self::Answer);
        }
        if item.standing == ApprovalState::CameOtherwise {
            return Some(Self::SignWhatCame);
        }
        let is_theirs = |who: &str| who == approver.id.value;
        // What somebody sent back goes to the designer first.
        let said = item.words.iter().any(|word| is_theirs(&word.who) && word.approves());
        let others = item.words.iter().filter(|word| !is_theirs(&word.who)).map(|word| word.name.clone());
        (item.standing == ApprovalState::Conflict && said).then(|| Self::AgreeWith(others.collect()))
    }
}

/// How somebody gets to the page to decide on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WayThere {
    /// By the private link of that person alone.
    PrivateLink(String),
    /// The page's address, without a key.
    Page(String),
    /// As they were told before: nobody wrote where the pages are.
    AsTold,
}

/// The reminder as plain text; none where nothing waits for that person. What is ordered is not asked for.
pub fn reminder(
    words: Words,
    (book, assessment): (&Book, &Assessment),
    approver: &Approver,
    way: &WayThere,
) -> Option<String> {
    let asked = book.selections().filter_map(|(room, selection)| {
        assessment.unapproved(book, room, selection)?;
        let what = Wanted::of(assessment.approvals.item(room, selection)?, approver)?;
        let due = assessment.dates.decision(selection).filter(|_| !matches!(what, Wanted::SignWhatCame));
        let on = due.map(|due| due.on);
        Some(Asked { room, selection, on, what })
    });
    let mut asked: Vec<Asked<'_>> = asked.collect();
    if asked.is_empty() {
        return None;
    }
    asked.sort_by_key(|one| (one.on.is_none(), one.on));
    let (issue, day) = assessment.approvals.issue?;
    let mut lines = vec![
        say!(words, "reminder.to", name = approver.name),
        String::new(),
        say!(
            words,
            "reminder.lead",
            n = asked.len(),
            title = book.project.title.text(),
            issue = issue.to_string(),
            day = day
        ),
        String::new(),
    ];
    lines.extend(asked.iter().map(|one| line(words, assessment, one)));
    lines.push(String::new());
    match way {
        WayThere::PrivateLink(link) => lines.extend([say!(words, "reminder.private"), link.clone(), String::new()]),
        WayThere::Page(page) => lines.extend([say!(words, "reminder.page"), page.clone(), String::new()]),
        WayThere::AsTold => {}
    }
    lines.extend([say!(words, "reminder.how"), String::new()]);
    lines.extend(book.project.firm.name.get().cloned());
    Some(lines.join("\n") + "\n")
}

/// `26 Jan 2027, when Cabinets, built around it, must be ordered: K-04 Range, Kitchen`.
fn line(words: Words, assessment: &Assessment, asked: &Asked<'_>) -> String {
    let Asked { room, selection, what, .. } = asked;
    let by = match assessment.dates.decision(selection) {
        Some(decision) => due::day_and_reason(words, decision),
        None => say!(words, "reminder.no_day"),
    };
    if matches!(what, Wanted::SignWhatCame) {
        let (tag, name, room) = (&selection.tag, &selection.name.value, room.title());
        return say!(words, "reminder.came", tag = tag, name = name, room = room);
    }
    let others = match what {
        Wanted::Answer | Wanted::SignWhatCame => None,
        Wanted::AgreeWith(others) => Some(words.series(others)).filter(|others| !others.is_empty()),
    };
    if let Some(others) = others {
        let (tag, name, room) = (&selection.tag, &selection.name.value, room.title());
        return say!(words, "reminder.agree", by = by, tag = tag, name = name, room = room, others = others);
    }
    let open = selection.settled().is_none();
    let key = if open { "reminder.choose" } else { "reminder.approve" };
    say!(words, key, by = by, tag = selection.tag, name = selection.name.value, room = room.title())
}
