//! Photographs that are handed over with what was said of a delivery: taken out of what came, and held to what is
//! said of them. Each is named by its digest in what is said, so that the digest of that is of them too.

use std::collections::BTreeMap;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::Value;

use crate::digest::Digest;
use crate::ledger::photograph::{MOST_PHOTOGRAPHS, MOST_TOGETHER, PhotographFault, check};
use crate::ledger::{Fact, Moment, Received};

use super::delivered::HandedDelivery;
use super::error::RecordError;
use super::response::{MAX_BYTES, Malformed};
use super::store::Open;

/// The most bytes of what is handed over: those of photographs in base64, of their digests, and of all else.
pub const MAX_HANDED: usize = MAX_BYTES + MOST_TOGETHER.div_ceil(3) * 4 + MOST_PHOTOGRAPHS * 128;
/// Where they stand in what is handed over.
const FIELD: &str = "photographs";

/// Photographs, by the digests of their bytes.
pub(super) type Photographs = BTreeMap<Digest, Vec<u8>>;

/// Takes the photographs out of what was handed over; none where it has none.
pub(super) fn take_out(value: &mut Value) -> Result<Photographs, Malformed> {
    let form = Malformed::Photograph(PhotographFault::Form);
    let field = value.as_object_mut().and_then(|fields| fields.remove(FIELD));
    let named = match field {
        None => return Ok(BTreeMap::new()),
        Some(Value::Object(named)) => named,
        Some(_) => return Err(form),
    };
    if named.len() > MOST_PHOTOGRAPHS {
        return Err(Malformed::Photograph(PhotographFault::Many));
    }
    let one = |(digest, text): (String, Value)| {
        let digest: Digest = digest.parse().map_err(|_| form.clone())?;
        let bytes = text.as_str().and_then(|text| STANDARD.decode(text).ok()).ok_or_else(|| form.clone())?;
        check(&bytes).map_err(Malformed::Photograph)?;
        Ok((digest, bytes))
    };
    let all: Photographs = named.into_iter().map(one).collect::<Result<_, Malformed>>()?;
    if all.values().map(Vec::len).sum::<usize>() > MOST_TOGETHER {
        return Err(Malformed::Photograph(PhotographFault::Together));
    }
    Ok(all)
}

impl HandedDelivery {
    /// Holds the photographs that came to those that are said to be there: each once, with its digest and size.
    pub(super) fn holds(&self, photographs: &Photographs) -> Result<(), Malformed> {
        let mut said = BTreeMap::new();
        for photo in self.items.iter().flat_map(|item| &item.photos) {
            match (photo.sha256, photo.bytes) {
                (Some(digest), Some(bytes)) if *said.entry(digest).or_insert(bytes) == bytes => {}
                (_, None) => {}
                _ => return Err(Malformed::Photograph(PhotographFault::Another)),
            }
        }
        for (digest, bytes) in &said {
            let found = photographs.get(digest).ok_or(Malformed::Photograph(PhotographFault::Missing))?;
            if found.len() != *bytes as usize || Digest::of(found) != *digest {
                return Err(Malformed::Photograph(PhotographFault::Another));
            }
        }
        if said.len() == photographs.len() { Ok(()) } else { Err(Malformed::Photograph(PhotographFault::Another)) }
    }
}

impl Open<'_> {
    /// Records what came with the response that it came in and its photographs. They take their places once the line
    /// that names them is on the disk; a photograph that stands there already is the same.
    pub(super) fn record_received(
        &mut self,
        at: Moment,
        received: Received,
        response: &Value,
        photographs: &Photographs,
    ) -> Result<(), RecordError> {
        let digest = received.response;
        let fact = Fact::Received(received);
        let mut each = photographs.iter();
        let laid = each.try_for_each(|(digest, bytes)| self.lay_beside(FIELD, &format!("{digest}.jpg"), bytes));
        if let Err(error) = laid.and_then(|()| self.keep_response(response, &digest)) {
            self.store.take_away(&fact);
            return Err(error);
        }
        self.append(at, fact).map(|_| ())
    }
}
