//! To whom an issue is sent: recorded when it is made, or later.

use std::path::Path;

use crate::ledger::{Fact, Sent};
use crate::record::{Store, plain};

use super::{CLEAN, Failure, STOPPED, clock, report};

/// The longest name or role, in letters.
const LONGEST: usize = 200;

/// Somebody to whom an issue is sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Addressee {
    name: String,
    role: Option<String>,
}

/// `Teo Varrick` or `Teo Varrick, site lead`.
pub fn addressee(text: &str) -> Result<Addressee, String> {
    let (name, role) = text.split_once(',').map_or((text, None), |(name, role)| (name, Some(role)));
    let (name, role) = (name.trim(), role.map(str::trim).filter(|role| !role.is_empty()));
    let is_line = |text: &str| text.chars().count() <= LONGEST && !text.chars().any(char::is_control);
    if name.is_empty() || !is_line(name) || !role.is_none_or(is_line) {
        return Err("write a name, or a name and what they do: `Teo Varrick, site lead`".into());
    }
    Ok(Addressee { name: name.into(), role: role.map(str::to_owned) })
}

/// Records to whom an issue was sent; to whom it was sent before is no new fact.
pub fn record(root: &Path, issue: u32, to: &[Addressee]) -> Result<u8, Failure> {
    let store = Store::of_book(root);
    let mut open = store.open().map_err(|error| format!("{error}; {}", error.remedy()))?;
    let is_issue = |fact: &Fact| matches!(fact, Fact::Issued(issued) if issued.number == issue);
    if !open.chain().lines.iter().any(|line| is_issue(&line.fact)) {
        report::say(&format!("there is no issue {issue}"));
        return Ok(STOPPED);
    }
    for Addressee { name, role } in to {
        let is_sent = |fact: &Fact| matches!(fact, Fact::Sent(sent) if (sent.issue, &sent.to) == (issue, name));
        let named = role.as_ref().map_or_else(|| name.clone(), |role| format!("{name}, {role}"));
        if open.chain().lines.iter().any(|line| is_sent(&line.fact)) {
            report::print_line(&format!("issue {issue} was sent to {} before", plain(&named)))?;
            continue;
        }
        let at = clock::now()?;
        let on = at.day().ok_or("the clock says no day")?;
        let fact = Fact::Sent(Sent { issue, to: name.clone(), role: role.clone(), on });
        open.append(at, fact).map_err(|error| format!("{error}; {}", error.remedy()))?;
        report::print_line(&format!("issue {issue}: sent to {}", plain(&named)))?;
    }
    Ok(CLEAN)
}
