//! The responses on record, for the office: who gave which, how, and what of it still holds.

use std::collections::{BTreeMap, BTreeSet};

use crate::assess::approval::Given;
use crate::ledger::{Attestation, Decided, Fact, Vouched};
use crate::views::office::tables::{Cell, Column, Table};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::{count, day_of};
use crate::views::shared::html::Html;
use crate::views::shared::signature::Strokes;

/// The most responses that a row names by their digits: as many as wait in one name at most.
const NAMED: usize = 20;

/// The responses on record, by whether it is known whose they are.
#[derive(Default)]
struct ResponsesByOwner<'a> {
    /// Those that are known to be of whom they name; one that came with its proof later stands once.
    own: Vec<&'a Decided>,
    /// Those that nobody has asked about, by whom they name.
    waiting: BTreeMap<&'a str, Vec<&'a Decided>>,
    /// Those that are not of whom they name.
    others: BTreeMap<&'a str, Vec<&'a Decided>>,
}

impl<'a> ResponsesByOwner<'a> {
    fn take(&mut self, decided: &'a Decided, vouched: &Vouched) {
        if decided.by == Attestation::Unsigned && vouched.is_proved(&decided.response) {
            // It stands where its proof came.
        } else if vouched.waits(decided) {
            self.waiting.entry(&decided.who).or_default().push(decided);
        } else if vouched.is_known(decided) {
            self.own.push(decided);
        } else if vouched.is_not_theirs(&decided.response) {
            self.others.entry(&decided.who).or_default().push(decided);
        }
    }
}

impl PageBuilder<'_> {
    /// Every response on record, the newest first; nothing while there is none.
    pub fn responses(&self) -> Option<Table> {
        let record = &self.subject.book.record;
        let (mut told, vouched) = (ResponsesByOwner::default(), Vouched::of(&record.lines));
        record.facts().filter_map(decided).for_each(|decided| told.take(decided, &vouched));
        let rows: Vec<Vec<Cell>> = told.own.iter().rev().map(|decided| self.response(decided, &vouched)).collect();
        let waiting = told.waiting.iter().map(|(who, given)| self.folded(who, given, "to be confirmed"));
        let others = told.others.iter().map(|(who, given)| self.folded(who, given, "not theirs"));
        let rows: Vec<Vec<Cell>> = waiting.chain(rows).chain(others).collect();
        if rows.is_empty() {
            return None;
        }
        let heads = ["Response of", "Given", "Of issue", "Items", "Signature"];
        Some(Table {
            name: "Responses".into(),
            scope: Some("as they are on record; a signature is of the marks that were shown".into()),
            columns: heads.into_iter().map(|name| Column { name: name.into(), figures: false }).collect(),
            rows,
            totals: vec![],
        })
    }

    fn approver_name<'n>(&'n self, who: &'n str) -> &'n str {
        let approvers = &self.subject.book.project.approvers;
        let named = approvers.iter().find(|approver| approver.id.value == who);
        named.map_or(who, |approver| approver.name.as_str())
    }

    /// Responses in one name that are not known to be of whom they name: one row, however many came.
    fn folded(&self, who: &str, given: &[&Decided], stand: &str) -> Vec<Cell> {
        let digits: Vec<String> = given.iter().take(NAMED).map(|decided| decided.response.short(8)).collect();
        let more = given.len().saturating_sub(NAMED);
        let more = if more > 0 { format!(", and {more} more in the ledger") } else { String::new() };
        let issues: BTreeSet<u32> = given.iter().map(|decided| decided.issue).collect();
        let issues: Vec<String> = issues.into_iter().map(|issue| issue.to_string()).collect();
        let responses = if given.len() == 1 { "response" } else { "responses" };
        vec![
            self.approver_name(who).into(),
            Cell {
                text: Html::text(&format!("{} unsigned: {stand}", given.len())),
                note: Some(Html::text(&format!("{responses} {}{more}", digits.join(", ")))),
                ..Cell::default()
            },
            issues.join(", ").as_str().into(),
            Html::text("–").into(),
            Html::text("–").into(),
        ]
    }

    fn response(&self, decided: &Decided, vouched: &Vouched) -> Vec<Cell> {
        let name = self.approver_name(&decided.who);
        let given = Given::of(decided, vouched);
        let day = day_of(self.words, decided.made);
        let how = self.how_given(&given, &decided.response, &day);
        let on = if matches!(given, Given::ByHand(_)) { how } else { format!("{day}, {how}") };
        let response = Some(Html::text(&format!("response {}", decided.response.short(8))));
        vec![
            name.into(),
            Cell { text: Html::text(&on), note: response, ..Cell::default() },
            decided.issue.to_string().as_str().into(),
            self.of_response(decided),
            self.signed_as(decided, name),
        ]
    }

    /// How many items it decides, and how many of those decisions still hold.
    fn of_response(&self, decided: &Decided) -> Cell {
        let approvals = &self.subject.assessment.approvals;
        let items = self.subject.book.selections().filter_map(|(room, selection)| approvals.item(room, selection));
        let words = items.flat_map(|item| &item.words).filter(|word| word.response == decided.response);
        let hold = words.filter(|word| word.holds).count();
        let refused = match decided.refused.len() {
            0 => String::new(),
            some => format!("; {some} not taken"),
        };
        let note = Html::text(&format!("{hold} of them stand{refused}"));
        Cell { text: Html::text(&count(decided.items.len(), "item", "items")), note: Some(note), ..Cell::default() }
    }

    /// The drawing and the typed name, or the scan.
    fn signed_as(&self, decided: &Decided, name: &str) -> Cell {
        let kept = self.subject.book.record.kept.get(&decided.response);
        if let Some(scan) = kept.and_then(|kept| kept.scan.as_ref()) {
            return Cell {
                text: "Scan of the signed sheet".into(),
                href: Some(scan_path(&scan.name)),
                ..Cell::default()
            };
        }
        let typed = decided.signed.as_ref().map(|signed| Html::text(&signed.name));
        match kept.and_then(|kept| kept.drawing.as_ref()) {
            Some(drawing) => Cell { text: Strokes::of(drawing).svg(name), note: typed, ..Cell::default() },
            None => typed.unwrap_or_else(|| Html::text("–")).into(),
        }
    }
}

fn decided(fact: &Fact) -> Option<&Decided> {
    if let Fact::Decided(decided) = fact { Some(decided) } else { None }
}

/// Where a scan stands in the office's folder.
pub fn scan_path(name: &str) -> String {
    format!("scans/{name}")
}
