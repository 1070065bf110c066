//! What came, on the orders page: how each order stands, and everything that was said of it.

use crate::assess::receiving::{ClaimBy, Receipt, Said};
use crate::book::{Room, Selection, photograph_path};
use crate::ledger::PhotoTaken;
use crate::views::office::tables::{Cell, Column, SmallPhoto, Table};
use crate::views::pages::PageBuilder;
use crate::views::shared::html::Html;
use crate::views::shared::state::{State, StateShape};

/// The width of a photograph that a small one leads to, in pixels.
const LARGE: u32 = 1600;

impl PageBuilder<'_> {
    /// How it stands with what came of an order; nothing while nobody received it.
    pub fn received(&self, room: &Room, selection: &Selection) -> Option<State> {
        let approvals = &self.subject.assessment.approvals;
        let receipt = approvals.deliveries.receipt(self.subject.book, approvals, (room, selection));
        let (shape, word) = match receipt {
            Receipt::Nothing => return None,
            Receipt::AsApproved(_) => (StateShape::Approved, "Received as approved"),
            Receipt::LookedAtInPart(_) => (StateShape::Waiting, "Looked at in part"),
            Receipt::InPart(_, counted) => {
                return Some(State::new(StateShape::Waiting, format!("{} received", counted.told())));
            }
            Receipt::Revised(_) => (StateShape::Approved, "Received, approved since"),
            Receipt::Changed(_) => (StateShape::ChangedSinceSigned, "Received, changed since"),
            Receipt::Taken(_) => (StateShape::ChangedSinceSigned, "Taken otherwise: ask anew"),
            Receipt::Otherwise(_) => (StateShape::Rejected, "Came otherwise"),
            Receipt::Disputed(..) => (StateShape::ReviseAndResubmit, "Two say different things"),
        };
        Some(State::new(shape, word))
    }

    /// Everything that was said of what came, the newest of each item last; nothing where nothing came.
    pub fn came(&self) -> Option<Table> {
        let deliveries = &self.subject.assessment.approvals.deliveries;
        let said = self.subject.book.selections().flat_map(|(room, selection)| {
            deliveries.said(room, selection).iter().map(move |said| self.came_row(room, selection, said))
        });
        let rows: Vec<Vec<Cell>> = said.collect();
        let heads = ["Item", "Came", "Delivery", "Received by", "Stands"];
        (!rows.is_empty()).then(|| Table {
            name: "What came".into(),
            scope: Some("as it was handed over from the site; what was said later takes nothing away".into()),
            columns: heads.map(|name| Column { name: name.into(), figures: false }).to_vec(),
            rows,
            totals: vec![],
        })
    }

    fn came_row(&self, room: &Room, selection: &Selection, said: &Said) -> Vec<Cell> {
        let received = &said.received;
        let kept = said.item.kept.map_or(String::new(), |kept| format!(", {}", kept.words()));
        let came = if said.item.is_as_approved() { "as approved".to_string() } else { said.how().text().to_owned() };
        let notes: Vec<String> = said.item.note.clone().into_iter().chain(self.not_shown(said)).collect();
        let digits = received.response.short(8);
        let state = match said.counts {
            true => State::new(StateShape::Approved, format!("Confirmed: {digits}")),
            false => State::new(StateShape::Waiting, format!("To be confirmed: {digits}")),
        };
        let claim = (!said.item.is_as_approved()).then(|| match said.claim_by(self.subject.book, selection) {
            ClaimBy::Unknown => "last day to claim not known: ask the supplier".to_string(),
            ClaimBy::Until(day) => format!("last day to claim {day}"),
        });
        let noted = |text: &str, note: Option<String>| Cell {
            text: Html::text(text),
            note: note.filter(|note| !note.is_empty()).map(|note| Html::text(&note)),
            ..Cell::default()
        };
        vec![
            noted(&format!("{} {}", selection.tag, selection.name.value), Some(room.title().to_string())),
            Cell { photos: self.photographs(said), ..noted(&format!("{came}{kept}"), Some(notes.join("; "))) },
            noted(&received.delivery.note, Some(received.delivery.from.clone())),
            noted(&received.by, Some(received.on.to_string())),
            Cell { state: Some(state), note: claim.map(|claim| Html::text(&claim)), ..Cell::default() },
        ]
    }
    /// The photographs that came with what is said, as far as they are there whole.
    fn photographs(&self, said: &Said) -> Vec<SmallPhoto> {
        let shown = |photo: &PhotoTaken| {
            let (digest, _) = photo.carried()?;
            let picture = self.album.picture(&photograph_path(&digest), &photo.name, LARGE)?;
            let large = picture.sizes.last()?.path.clone();
            Some(SmallPhoto { picture, large })
        };
        said.item.photos.iter().filter_map(shown).collect()
    }

    /// Photographs of which the name alone came, and those that are not there to be shown.
    fn not_shown(&self, said: &Said) -> Vec<String> {
        let whole = &self.subject.book.record.photographs;
        let told = |photo: &PhotoTaken| {
            let why = match photo.carried() {
                None => "its name alone came",
                Some((digest, _)) if !whole.contains(&digest) => "it is not in the record as it came",
                Some((digest, _)) if !self.album.has(&photograph_path(&digest)) => "it is no picture that can be shown",
                Some(_) => return None,
            };
            Some(format!("photograph {}: {why}", photo.name))
        };
        said.item.photos.iter().filter_map(told).collect()
    }
}
