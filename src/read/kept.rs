//! Reads what responses keep beside the ledger's facts: signatures as drawn, scans of signed sheets, photographs of
//! what came.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use crate::book::{KeptResponse, Scan};
use crate::digest::Digest;
use crate::finding::{Code, Finding, Phrase, Remark, phrase};
use crate::ledger::photograph::MOST_EACH;
use crate::ledger::{Attestation, Decided, Drawing, Fact, Line};
use crate::source::{Folder, Place, RecordFile};
use crate::units::Fault;

/// The rule that these findings belong to.
const RULE: Code = Code::LEDGER;
/// Largest response, in bytes.
const MAX_RESPONSE: u64 = 1024 * 1024;
/// Largest scan, in bytes.
const MAX_SCAN: u64 = 64 * 1024 * 1024;
/// How to mend a file of the record.
const PUT_BACK: &str = "put it back as it was, from a backup; until then what it shows is left out";

/// What is kept of each decision that was signed with a drawing, or written down by hand.
pub fn read(folder: &Folder, lines: &[Line], findings: &mut Vec<Finding>) -> BTreeMap<Digest, KeptResponse> {
    let mut kept = BTreeMap::new();
    for line in lines {
        let Fact::Decided(decided) = &line.fact else { continue };
        let is_drawn = decided.signed.as_ref().is_some_and(|signed| signed.drawn);
        if (!is_drawn && decided.by != Attestation::Hand) || kept.contains_key(&decided.response) {
            continue;
        }
        match one(folder, decided) {
            Ok(one) => _ = kept.insert(decided.response, one),
            Err(finding) => findings.push(finding),
        }
    }
    kept
}

/// The photographs of what came that are as they were handed over.
pub fn photographs(folder: &Folder, lines: &[Line], findings: &mut Vec<Finding>) -> BTreeSet<Digest> {
    let (mut whole, mut looked) = (BTreeSet::new(), BTreeSet::new());
    for line in lines {
        let Fact::Received(received) = &line.fact else { continue };
        for (digest, bytes) in received.photographs() {
            if !looked.insert(digest) {
                continue;
            }
            let note = &received.delivery.note;
            let whose = phrase!("a photograph of the delivery `{}` of `{}`", note, received.delivery.from);
            match photograph(folder, digest, u64::from(bytes), &whose) {
                Ok(()) => _ = whole.insert(digest),
                Err(finding) => findings.push(finding),
            }
        }
    }
    whole
}

fn photograph(folder: &Folder, digest: Digest, bytes: u64, whose: &Phrase) -> Result<(), Finding> {
    let hex = digest.to_string();
    let file = RecordFile::Photograph(&hex);
    let found = whole(folder, file, MOST_EACH as u64, whose)?;
    if found.len() as u64 == bytes && Digest::of(&found) == digest {
        return Ok(());
    }
    Err(fault(file, phrase!("{whose} is not as it was recorded", whose)))
}

fn one(folder: &Folder, decided: &Decided) -> Result<KeptResponse, Finding> {
    let hex = decided.response.to_string();
    let file = RecordFile::Response(&hex);
    let whose = phrase!("the response of `{}` to issue {}", decided.who, decided.issue);
    let bytes = whole(folder, file, MAX_RESPONSE, &whose)?;
    let value = serde_json::from_slice(&bytes).ok().map(without_proof);
    let value = value.filter(|value| Digest::of_json(value).is_ok_and(|digest| digest == decided.response));
    let value = value.ok_or_else(|| fault(file, phrase!("{whose} is not as it was recorded", whose)))?;
    let drawing = value.pointer("/signed/drawing").and_then(Value::as_str).and_then(Drawing::parse);
    let scan = value.get("scan").and_then(Value::as_str).map(|name| scan(folder, name, &whose)).transpose()?;
    Ok(KeptResponse { drawing, scan })
}

/// The response as its digest is of it.
fn without_proof(mut value: Value) -> Value {
    if let Some(fields) = value.as_object_mut() {
        fields.remove("mac");
    }
    value
}

/// A scan, by its name: its digest, and the ending of the file that it was.
fn scan(folder: &Folder, name: &str, whose: &Phrase) -> Result<Scan, Finding> {
    let file = RecordFile::Scan(name);
    let whose = phrase!("the scan of {whose}", whose);
    let bytes = whole(folder, file, MAX_SCAN, &whose)?;
    let digest = Digest::of(&bytes);
    if name.split_once('.').is_none_or(|(hex, _)| hex != digest.to_string()) {
        return Err(fault(file, phrase!("{whose} is not as it was recorded", whose)));
    }
    Ok(Scan { name: name.into(), digest, bytes: bytes.len() as u64 })
}

fn whole(folder: &Folder, file: RecordFile<'_>, limit: u64, whose: &Phrase) -> Result<Vec<u8>, Finding> {
    let bytes = folder.record(file, limit).map_err(|error| fault(file, error.message()))?;
    // What is gone may be gone for good: it must not stand in the way for ever.
    let gone = || Remark::query(Place::Path(file.path()), phrase!("{whose} is gone", whose)).remedy(PUT_BACK).of(RULE);
    bytes.ok_or_else(gone)
}

fn fault(file: RecordFile<'_>, message: Phrase) -> Finding {
    Remark::stop(Place::Path(file.path()), message).remedy(PUT_BACK).of(RULE)
}
