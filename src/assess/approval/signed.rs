//! Options that all who must have chosen, and that the book does not say: they stand as if it did.

use crate::book::Book;
use crate::ledger::Purpose;
use crate::source::Spanned;
use crate::vocabulary::Slot;

use super::{ApprovalState, Approvals};

/// Takes the option that all who must approved for the chosen one where nothing is written of it, so that every page,
/// sheet and sum has the one that was signed. Who sends it back opens it again.
pub fn take(book: &mut Book) {
    let is_open = |selection: &crate::book::Selection| selection.settled().is_none() && selection.chosen.is_absent();
    let asked = book.record.latest_for(Purpose::Approval).is_some();
    if !asked || !book.selections().any(|(_, selection)| is_open(selection)) {
        return;
    }
    let approvals = Approvals::of(book);
    for (at, room) in book.rooms.iter().enumerate().map(|(at, room)| (at, room.folder.clone())).collect::<Vec<_>>() {
        let Some(selections) = book.rooms.get_mut(at).map(|room| &mut room.selections) else { continue };
        for selection in selections.iter_mut().filter(|selection| is_open(selection)) {
            let item = approvals.items.get(&(room.clone(), selection.id.clone()));
            let signed =
                item.filter(|item| matches!(item.standing, ApprovalState::Approved | ApprovalState::Condition(_)));
            let option = signed.and_then(|item| item.chosen()).map(str::to_owned);
            if let Some(option) = option.filter(|id| selection.options.iter().any(|one| one.id.value == *id)) {
                selection.chosen = Slot::Given(Spanned::new(option, selection.span));
                selection.chosen_by_record = true;
            }
        }
    }
}
