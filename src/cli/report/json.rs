//! Findings for programs.

use serde::Serialize;

use crate::finding::Finding;
use crate::pipeline::Review;
use crate::source::Files;

#[derive(Serialize)]
struct Report<'a> {
    findings: Vec<Told<'a>>,
    counts: Counts,
}

#[derive(Serialize)]
struct Counts {
    stop: usize,
    query: usize,
    note: usize,
    waived: usize,
}

#[derive(Serialize)]
struct Told<'a> {
    rule: &'a str,
    severity: &'a str,
    file: &'a str,
    line: u32,
    column: u32,
    room: Option<&'a str>,
    item: Option<&'a str>,
    message: &'a str,
    remedy: &'a str,
    source: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    by: Option<By<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    caution: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    waived: Option<Waived<'a>>,
}

/// By when it must be settled.
#[derive(Serialize)]
pub struct By<'a> {
    hold_point: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    date: Option<String>,
}

#[derive(Serialize)]
struct Waived<'a> {
    because: &'a str,
    by: &'a str,
    on: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    until: Option<&'a str>,
}

/// The whole review as JSON.
pub fn report(review: &Review) -> String {
    let counts = review.assessment.counts;
    let report = Report {
        findings: review.assessment.findings.iter().map(|finding| told(finding, &review.files)).collect(),
        counts: Counts { stop: counts.stops, query: counts.queries, note: counts.notes, waived: counts.waived },
    };
    // Strings and numbers alone: there is nothing in it that JSON can't hold.
    serde_json::to_string_pretty(&report).map(|text| text + "\n").unwrap_or_default()
}

fn told<'a>(finding: &'a Finding, files: &'a Files) -> Told<'a> {
    let start = files.start(&finding.place);
    Told {
        rule: finding.rule.text(),
        severity: finding.severity.word(),
        file: files.path(&finding.place),
        line: start.line,
        column: start.column,
        room: finding.room.as_deref(),
        item: finding.item.as_deref(),
        message: finding.message.text(),
        remedy: finding.remedy.text(),
        source: &finding.source,
        by: finding.by.as_ref().map(|by| By { hold_point: &by.hold_point, date: by.on.map(|on| on.iso()) }),
        caution: finding.caution,
        waived: finding.waived.as_ref().map(|waived| Waived {
            because: &waived.because,
            by: &waived.by,
            on: &waived.on,
            until: waived.until.as_deref(),
        }),
    }
}
