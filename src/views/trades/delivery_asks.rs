//! What a delivery's page asks of its scripts: what was approved by its mark, and the last days to claim.

use std::collections::BTreeMap;

use crate::assess::receiving::claim_within;
use crate::ledger::photograph::{LONGEST_SIDE, MOST_EACH, MOST_PHOTOGRAPHS, MOST_TOGETHER};
use crate::ledger::{Head, Looked};
use crate::shown;
use crate::units::{Date, LeadTime};
use crate::views::pages::PageBuilder;
use crate::views::shared::data::Data;
use crate::views::trades::delivery::{Approved, Load};
use serde::Serialize;

/// For so many days before and after its own a page knows the last day to claim.
const DAYS: std::ops::Range<i64> = -21..150;

/// What a delivery's page asks.
#[derive(Clone, Debug, PartialEq, Serialize)]
struct DeliveryRequest {
    /// The book's id; absent while nothing was issued for approval.
    book: Option<String>,
    issue: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ledger: Option<Head>,
    title: String,
    post: Option<String>,
    email: Option<String>,
    /// The supplier, as the book names it.
    from: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    load: Option<String>,
    items: Vec<RequestedItem>,
    photographs: PhotographLimits,
    /// The last day to claim by the day on which it came, for each term.
    claims: BTreeMap<String, BTreeMap<String, String>>,
}

/// How many photographs go with a delivery, and how large they may be: pixels and bytes.
#[derive(Clone, Debug, PartialEq, Serialize)]
struct PhotographLimits {
    most: usize,
    side: u16,
    each: usize,
    together: usize,
}

/// What of an item is asked.
#[derive(Clone, Debug, PartialEq, Serialize)]
struct RequestedItem {
    room: String,
    item: String,
    name: String,
    option: Option<String>,
    mark: String,
    looks: Vec<&'static str>,
    /// The term of a claim, a key of `claims`; absent where it is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    claim: Option<String>,
}

impl PageBuilder<'_> {
    /// What is asked of a load, for the page's scripts.
    pub(super) fn delivery_asks(&self, load: &Load<'_>, approved: &[Option<Approved>]) -> Data {
        let issued = self.issued();
        let (post, email) = self.responses_go();
        let mut claims = BTreeMap::new();
        let items = load.items.iter().zip(approved).filter_map(|((room, selection, option), approved)| {
            let approved = approved.as_ref()?;
            let term = claim_within(self.subject.book, option);
            let claim = term.map(|term| self.within(term));
            if let Some((claim, term)) = claim.clone().zip(term) {
                claims.entry(claim).or_insert_with(|| self.last_days(term));
            }
            Some(RequestedItem {
                room: room.folder.clone(),
                item: selection.id.clone(),
                name: format!("{} {}", selection.tag, selection.name.value),
                option: approved.option.clone(),
                mark: approved.mark.to_string(),
                looks: shown::looks(&approved.shown).into_iter().map(Looked::word).collect(),
                claim,
            })
        });
        let items = items.collect();
        Data::of(&DeliveryRequest {
            book: issued.as_ref().map(|issued| issued.book.clone()),
            issue: issued.as_ref().map(|issued| issued.number),
            ledger: issued.as_ref().and_then(|issued| issued.line),
            title: self.subject.book.project.title.text().into(),
            post,
            email,
            from: load.from.into(),
            load: load.load.map(str::to_string),
            items,
            photographs: PhotographLimits {
                most: MOST_PHOTOGRAPHS,
                side: LONGEST_SIDE,
                each: MOST_EACH,
                together: MOST_TOGETHER,
            },
            claims,
        })
    }

    /// The last day to claim, by the day on which it came.
    fn last_days(&self, term: LeadTime) -> BTreeMap<String, String> {
        let day = |by: i64| -> (Date, Date) {
            let on = self.subject.today.plus_days(by);
            (on, term.earliest().after(on, &self.subject.book.project.calendar))
        };
        DAYS.map(day).map(|(on, last)| (on.iso(), last.iso())).collect()
    }
}
