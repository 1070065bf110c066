//! What came, for `status`: what waits to be confirmed, and how it stands with each thing that is ordered.

use serde::Serialize;

use crate::assess::receiving::{self, ClaimBy, Receipt, Said};
use crate::book::{Book, Room, Selection, photograph_path};
use crate::ledger::{PhotoTaken, Received};
use crate::pipeline::Review;

use super::shown::add_line;

/// What of deliveries is told.
#[derive(Serialize)]
pub struct DeliveriesReport<'a> {
    /// What was handed over and counts for nothing yet.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    waiting: Vec<WaitingDelivery<'a>>,
    /// Every thing that is ordered or came.
    items: Vec<ItemReport<'a>>,
}

#[derive(Serialize)]
struct WaitingDelivery<'a> {
    /// The first digits of its digest.
    digits: String,
    from: &'a str,
    note: &'a str,
    by: &'a str,
    on: String,
    items: usize,
}

#[derive(Serialize)]
struct ItemReport<'a> {
    room: &'a str,
    item: &'a str,
    tag: &'a str,
    /// Whether it was received as approved.
    received_as_approved: bool,
    /// In a few words.
    stands: String,
    /// The number of the delivery note.
    #[serde(skip_serializing_if = "Option::is_none")]
    note: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    by: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    on: Option<String>,
    /// The names of the photographs that were taken.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    photos: Vec<&'a str>,
    /// Where those lie that were handed over with it, in the book's folder.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    photographs: Vec<String>,
    /// The last day to claim what came otherwise; `not known` where the supplier gave no term.
    #[serde(skip_serializing_if = "Option::is_none")]
    claim_by: Option<String>,
}

/// What is told; nothing where nothing is ordered or came, or nothing was issued for approval.
pub fn of(review: &Review) -> Option<DeliveriesReport<'_>> {
    let deliveries = &review.assessment.approvals.deliveries;
    let waiting: Vec<WaitingDelivery<'_>> = deliveries.waiting.iter().map(|one| waiting(one)).collect();
    let items: Vec<ItemReport<'_>> =
        review.book.selections().filter_map(|(room, selection)| item(review, room, selection)).collect();
    let asked = review.assessment.approvals.is_asked();
    (asked && !(waiting.is_empty() && items.is_empty())).then_some(DeliveriesReport { waiting, items })
}

impl DeliveriesReport<'_> {
    /// As text, a line each.
    pub fn text(&self) -> String {
        let mut text = String::new();
        if !self.waiting.is_empty() {
            text += "\ndeliveries to be confirmed\n";
        }
        for WaitingDelivery { digits, from, note, by, on, items } in &self.waiting {
            add_line!(text, "  {digits}     {items} of {from} ({note}) by {by}, {on}");
        }
        if !self.items.is_empty() {
            text += "\nreceived\n";
        }
        for ItemReport { room, item, tag, stands, note, by, on, claim_by, photos, .. } in &self.items {
            let told = [*note, *by, on.as_deref()].into_iter().flatten().collect::<Vec<_>>().join(", ");
            let told = if told.is_empty() { told } else { format!("; {told}") };
            let claim = claim_by.as_ref().map_or(String::new(), |by| format!("; claim by: {by}"));
            let photos = match photos.len() {
                0 => String::new(),
                1 => "; 1 photograph".into(),
                many => format!("; {many} photographs"),
            };
            add_line!(text, "  {tag} {item} ({room}): {stands}{told}{photos}{claim}");
        }
        text
    }
}

fn waiting(received: &Received) -> WaitingDelivery<'_> {
    WaitingDelivery {
        digits: received.response.short(8),
        from: &received.delivery.from,
        note: &received.delivery.note,
        by: &received.by,
        on: received.on.iso(),
        items: received.items.len(),
    }
}

fn item<'a>(review: &'a Review, room: &'a Room, selection: &'a Selection) -> Option<ItemReport<'a>> {
    let (book, approvals) = (&review.book, &review.assessment.approvals);
    let receipt = approvals.deliveries.receipt(book, approvals, (room, selection));
    let said = match receipt {
        Receipt::Nothing => None,
        Receipt::AsApproved(said)
        | Receipt::LookedAtInPart(said)
        | Receipt::InPart(said, _)
        | Receipt::Revised(said)
        | Receipt::Changed(said)
        | Receipt::Taken(said)
        | Receipt::Otherwise(said)
        | Receipt::Disputed(_, said) => Some(said),
    };
    let claim = approvals.deliveries.to_claim(book, approvals, (room, selection));
    if said.is_none() && claim.is_none() && !selection.is_ordered() {
        return None;
    }
    Some(ItemReport {
        room: room.title(),
        item: &selection.name.value,
        tag: &selection.tag,
        received_as_approved: receipt.is_good(),
        stands: stands(receipt, book),
        note: said.map(|said| said.received.delivery.note.as_str()),
        by: said.map(|said| said.received.by.as_str()),
        on: said.map(|said| said.received.on.iso()),
        photos: said.map_or_else(Vec::new, |said| said.item.photos.iter().map(|photo| photo.name.as_str()).collect()),
        photographs: said.map_or_else(Vec::new, |said| photographs(review, said)),
        claim_by: claim.map(|said| match said.claim_by(book, selection) {
            ClaimBy::Unknown => "not known".into(),
            ClaimBy::Until(day) => day.iso(),
        }),
    })
}

/// Where the photographs of what was said lie that are as they came.
fn photographs(review: &Review, said: &Said) -> Vec<String> {
    let carried = said.item.photos.iter().filter_map(PhotoTaken::carried).map(|(digest, _)| digest);
    let whole = carried.filter(|digest| review.book.record.photographs.contains(digest));
    whole.map(|digest| photograph_path(&digest)).collect()
}

fn stands(receipt: Receipt<'_>, book: &Book) -> String {
    let how = |said: &Said| {
        let kept = said.item.kept.map_or(String::new(), |kept| format!(", {}", kept.words()));
        format!("{}{kept}", said.how().text())
    };
    match receipt {
        Receipt::Nothing => "ordered, not received".into(),
        Receipt::AsApproved(_) => "as approved".into(),
        Receipt::LookedAtInPart(said) => {
            format!("received, and nobody looked at its {}", receiving::named(&said.unlooked(book)))
        }
        Receipt::InPart(_, counted) => format!("{} came, the rest is still to come", counted.told()),
        Receipt::Revised(said) => format!("{}; approved since", how(said)),
        Receipt::Changed(_) => "as approved then, and it is another now".into(),
        Receipt::Taken(said) => format!("{}: to be approved anew", how(said)),
        Receipt::Otherwise(said) => how(said),
        Receipt::Disputed(one, other) => {
            format!("{} says {}, {} says {}", one.received.by, how(one), other.received.by, how(other))
        }
    }
}
