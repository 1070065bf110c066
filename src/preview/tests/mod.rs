//! The preview as a browser meets it: without a socket, and on one.

mod following;
mod serving;

use super::*;
use crate::publish::output::Content;

/// A build of pages and other files: path, text.
fn built(files: &[(&str, &str)]) -> Built {
    let mut output = Output::default();
    for (path, text) in files {
        output.insert(*path, Content::Bytes(text.as_bytes().into())).unwrap();
    }
    Built { output, findings: Vec::new(), broken: false, waiting: None }
}

/// A build that failed on one finding.
fn broken() -> Built {
    let finding = FindingLine {
        severity: Severity::Stop,
        place: "book.yaml:2:1".into(),
        message: vec![(false, "a tab stands where spaces belong".into())],
        remedy: vec![(false, "use spaces to indent".into())],
        told: vec![],
    };
    Built { output: Output::default(), findings: vec![finding], broken: true, waiting: None }
}
