//! Who holds which issue: to whom each was sent, and who says that it came to hand.

use std::collections::BTreeMap;

use crate::book::Record;
use crate::digest::Digest;
use crate::ledger::{Fact, Purpose, Vouched};
use crate::units::{Date, plain_name};

/// Somebody who was sent an issue for something, or says that one came to hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Holder {
    /// The name, as it was written first.
    pub name: String,
    /// What they do on the job, as it was said last.
    pub role: Option<String>,
    /// What the issues are for.
    pub purpose: Purpose,
    /// The newest that was sent, and when.
    pub sent: Option<(u32, Date)>,
    /// The newest that they are known to hold, and since when.
    pub acknowledged: Option<(u32, Date)>,
    /// What they said and nobody has confirmed: the issue, and the digest of the response.
    pub waiting: Option<(u32, Digest)>,
    /// The oldest that was sent or is known to have reached them; none where nothing is known.
    pub oldest: Option<u32>,
}

impl Holder {
    /// The name, and what they do.
    pub fn named(&self) -> String {
        self.role.as_ref().map_or_else(|| self.name.clone(), |role| format!("{}, {role}", self.name))
    }

    /// Whether they have an older issue, and are not known to hold this one.
    pub fn holds_older(&self, issue: u32) -> bool {
        self.oldest.is_some_and(|oldest| oldest < issue) && self.lacks(issue)
    }

    /// Whether they are not known to hold an issue: it was not sent, or they have not said that it came.
    pub fn lacks(&self, issue: u32) -> bool {
        self.acknowledged.is_none_or(|(held, _)| held < issue)
    }

    fn reached(&mut self, issue: u32) {
        self.oldest = Some(self.oldest.map_or(issue, |oldest| oldest.min(issue)));
    }
}

/// Everybody who was sent something or says that something came, by name and what it is for.
pub fn holders(record: &Record) -> Vec<Holder> {
    let vouched = Vouched::of(&record.lines);
    let purposes: BTreeMap<u32, Purpose> = record.facts().filter_map(issued).collect();
    let mut all: BTreeMap<(String, Purpose), Holder> = BTreeMap::new();
    for fact in record.facts() {
        match fact {
            Fact::Sent(sent) => {
                let Some(purpose) = purposes.get(&sent.issue) else { continue };
                let holder = of(&mut all, &sent.to, *purpose);
                holder.role = sent.role.clone().or(holder.role.take());
                holder.sent = holder.sent.max(Some((sent.issue, sent.on)));
                holder.reached(sent.issue);
            }
            Fact::Acknowledged(one) if !vouched.is_back(&one.response) => {
                let Some(purpose) = purposes.get(&one.issue) else { continue };
                let holder = of(&mut all, &one.by, *purpose);
                if vouched.is_confirmed(&one.response) {
                    holder.acknowledged = holder.acknowledged.max(Some((one.issue, one.on)));
                    holder.reached(one.issue);
                } else {
                    holder.waiting = holder.waiting.max(Some((one.issue, one.response)));
                }
            }
            _ => {}
        }
    }
    all.into_values().collect()
}

/// Those of them who are not known to hold that issue, and held or were sent an older one for the same.
pub fn holding_older(record: &Record, issue: u32, purpose: Purpose) -> Vec<Holder> {
    let mut all = holders(record);
    all.retain(|one| one.purpose == purpose && one.holds_older(issue));
    all
}

fn issued(fact: &Fact) -> Option<(u32, Purpose)> {
    if let Fact::Issued(issued) = fact { Some((issued.number, issued.purpose)) } else { None }
}

/// What is known of somebody of that name, however it is spaced and capitalized.
fn of<'a>(all: &'a mut BTreeMap<(String, Purpose), Holder>, name: &str, purpose: Purpose) -> &'a mut Holder {
    let plain = plain_name(name).to_lowercase();
    let (sent, acknowledged, waiting, oldest) = (None, None, None, None);
    let new = || Holder { name: name.into(), role: None, purpose, sent, acknowledged, waiting, oldest };
    all.entry((plain, purpose)).or_insert_with(new)
}
