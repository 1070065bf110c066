//! The record of a book: the only code that writes into the book's own folder, and only below `record/`.
//!
//! ```text
//! record/ledger.jsonl          what happened, one line a fact, only ever added to
//! record/head.json             the number and digest of the last line, kept after each line
//! record/issues/0001.json      what was shown of every item, frozen under a number
//! record/responses/<sha>.json  responses as they came; `-sealed` where the proof came later
//! record/photographs/<sha>.jpg photographs of what came in deliveries
//! record/scans/<sha>.pdf       scans of sheets that were signed on paper
//! record/keys/<who>.key        the approvers' keys, for the owner alone
//! record/.lock                 held while something is recorded
//! ```
//!
//! A fact is recorded once its line is on the disk: [`Open::append`] returns no earlier. Whatever is
//! killed or refused before leaves the ledger as it was, or with a torn last line that the next writer
//! cuts off. A line may be whole on the disk though nobody was told so: whoever records a fact again
//! looks for it first, under the same lock.
//!
//! Nothing is begun anew over a record, and nothing is written over: a ledger that does not reach as far
//! as what lies beside it is a fault, see [`crate::ledger::Beside`].

mod append;
mod by_hand;
mod delivered;
mod disk;
mod error;
mod files;
mod flood;
mod head;
mod keys;
mod lock;
mod mac;
mod once;
mod photographs;
mod readings;
mod receive;
mod refusal;
mod response;
mod store;
#[cfg(test)]
mod tests;

pub use append::new_id;
pub use by_hand::{ByHand, Closed, ItemName};
pub use error::RecordError;
pub use flood::{Full, MOST_BYTES, MOST_IN_A_NAME, MOST_IN_ALL, MOST_PHOTOGRAPHED, Waits};
pub use keys::{Key, current, is_plain};
pub use mac::hmac_sha256;
pub use photographs::MAX_HANDED;
pub use receive::{Outcome, Receiver, Refusal, plain, said};
pub use response::{MAX_BYTES, Malformed, Submission};
pub use store::{Open, Store};
