//! Tells the responses on record, for the office: who gave which, how, and what of it still holds.

use crate::assess::approval::Given;
use crate::ledger::{Decided, Fact};
use crate::views::html::Html;
use crate::views::schedule::{Cell, Column, Table};
use crate::views::signature::Strokes;

use super::Teller;
use super::figures::count;

fn decided(fact: &Fact) -> Option<&Decided> {
    if let Fact::Decided(decided) = fact { Some(decided) } else { None }
}

/// Where a scan stands in the office's folder.
pub fn scan_path(name: &str) -> String {
    format!("scans/{name}")
}

impl Teller<'_> {
    /// Every response on record, the newest first; nothing while there is none.
    pub fn responses(&self) -> Option<Table> {
        let facts = self.subject.book.record.facts();
        let given: Vec<&Decided> = facts.filter_map(decided).collect();
        if given.is_empty() {
            return None;
        }
        let heads = ["Response of", "Given", "Of issue", "Items", "Signature"];
        Some(Table {
            name: "Responses".into(),
            scope: Some("as they are on record; a signature is of the marks that were shown".into()),
            columns: heads.into_iter().map(|name| Column { name: name.into(), figures: false }).collect(),
            rows: given.into_iter().rev().map(|decided| self.response(decided)).collect(),
            totals: vec![],
        })
    }

    fn response(&self, decided: &Decided) -> Vec<Cell> {
        let approvers = &self.subject.book.project.approvers;
        let named = approvers.iter().find(|approver| approver.id.value == decided.who);
        let name = named.map_or(decided.who.as_str(), |approver| approver.name.as_str());
        let given = self.given(decided);
        let day = decided.made.day().map_or_else(String::new, |day| day.to_string());
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

    /// How it is known whose response it is.
    fn given(&self, decided: &Decided) -> Given {
        let is_it = |fact: &Fact| matches!(fact, Fact::Confirmed(confirmed) if confirmed.response == decided.response);
        Given::of(decided, self.subject.book.record.facts().any(is_it))
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
