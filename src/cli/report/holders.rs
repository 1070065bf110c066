//! Who holds which issue, for `status` and the change order.

use serde::Serialize;

use crate::assess::transmittals::{Holder, holders, holding_older};
use crate::book::Record;
use crate::ledger::Purpose;

use super::shown::add_line;

/// Somebody who was sent an issue.
#[derive(Serialize)]
pub struct HolderReport {
    name: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    role: Option<String>,
    /// What the issues are for.
    #[serde(rename = "for")]
    purpose: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    sent: Option<IssueOn>,
    #[serde(skip_serializing_if = "Option::is_none")]
    acknowledged: Option<IssueOn>,
    /// What they said and nobody has confirmed: the first digits of its digest.
    #[serde(skip_serializing_if = "Option::is_none")]
    to_confirm: Option<String>,
    /// Whether they are not known to hold the newest.
    holds_older: bool,
    #[serde(skip)]
    stands: String,
}

#[derive(Serialize)]
struct IssueOn {
    issue: u32,
    on: String,
}

/// Everybody who was sent an issue.
pub fn told(record: &Record) -> Vec<HolderReport> {
    holders(record).into_iter().map(|holder| report(record, holder)).collect()
}

/// Those who hold an older issue than that one, for the same.
pub fn older_than(record: &Record, issue: u32, purpose: Purpose) -> Vec<HolderReport> {
    holding_older(record, issue, purpose).into_iter().map(|holder| report(record, holder)).collect()
}

/// As text, a line each.
pub fn text(all: &[HolderReport]) -> String {
    let mut text = String::new();
    if !all.is_empty() {
        text += "\nwho holds which issue\n";
    }
    for HolderReport { stands, .. } in all {
        add_line!(text, "  {stands}");
    }
    text
}

/// `Teo Varrick, site lead: issue 1`.
pub fn older(holder: &Holder) -> String {
    let held = match (holder.acknowledged, holder.sent) {
        (Some((held, _)), _) => format!("holds issue {held}"),
        (None, Some((sent, on))) => format!("was sent issue {sent} on {on}, and has not acknowledged it"),
        (None, None) => "holds none".into(),
    };
    format!("{}: {held}", holder.named())
}

fn report(record: &Record, holder: Holder) -> HolderReport {
    let newest = record.latest_for(holder.purpose).map_or(0, |issue| issue.number);
    let on = |(issue, on): (u32, crate::units::Date)| IssueOn { issue, on: on.iso() };
    let holds_older = holder.holds_older(newest);
    HolderReport {
        stands: stands(&holder, newest),
        name: holder.name,
        role: holder.role,
        purpose: holder.purpose.word(),
        sent: holder.sent.map(on),
        acknowledged: holder.acknowledged.map(on),
        to_confirm: holder.waiting.map(|(_, response)| response.short(8)),
        holds_older,
    }
}

fn stands(holder: &Holder, newest: u32) -> String {
    let mut parts = Vec::new();
    if let Some((issue, on)) = holder.sent {
        parts.push(format!("sent issue {issue} for {}, {}", holder.purpose.word(), on.iso()));
    }
    match holder.acknowledged {
        Some((issue, on)) => parts.push(format!("acknowledged issue {issue}, {}", on.iso())),
        None => parts.push("nothing acknowledged".into()),
    }
    if let Some((issue, response)) = &holder.waiting {
        parts.push(format!("says that issue {issue} came, to be confirmed: {}", response.short(8)));
    }
    let sent = holder.sent.map_or(0, |(issue, _)| issue);
    if holder.holds_older(newest) {
        parts.push(match sent < newest {
            true => format!("still holds an older one: issue {newest} was not sent"),
            false => format!("may still hold an older one than issue {newest}"),
        });
    }
    format!("{}: {}", holder.named(), parts.join("; "))
}

/// The lines of those who hold an older one than an issue, for its change order; nothing where nobody does.
pub fn still_held(record: &Record, issue: u32, purpose: Purpose) -> String {
    let all = holding_older(record, issue, purpose);
    let mut text = String::new();
    if !all.is_empty() {
        text += &format!("\nissue {issue} is still to reach\n");
    }
    for holder in &all {
        add_line!(text, "{}", older(holder));
    }
    text
}
