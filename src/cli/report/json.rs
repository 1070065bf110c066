//! Findings for programs.

use serde::Serialize;

use crate::finding::{Finding, Fix, Hazard};
use crate::pipeline::Review;
use crate::source::{Files, Place};

use super::open::{self, OpenReport};

#[derive(Serialize)]
struct Report<'a> {
    findings: Vec<FindingReport<'a>>,
    /// What stands as `…` and is still to be said.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    open: Vec<OpenReport<'a>>,
    counts: CountsReport,
}

#[derive(Serialize)]
struct CountsReport {
    stop: usize,
    query: usize,
    note: usize,
    waived: usize,
}

#[derive(Serialize)]
struct FindingReport<'a> {
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
    /// The values that the message is made of, exactly, in the order in which they stand.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    values: Vec<Figure>,
    #[serde(skip_serializing_if = "Option::is_none")]
    fix: Option<Mend<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    by: Option<SettleByReport<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    caution: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    waived: Option<Waived<'a>>,
}

/// A value of a message.
#[derive(Serialize)]
struct Figure {
    kind: &'static str,
    is: String,
}

/// What to write instead, where that is certain: from the first column up to the one past the last.
#[derive(Serialize)]
struct Mend<'a> {
    file: &'a str,
    line: u32,
    column: u32,
    end_line: u32,
    end_column: u32,
    with: &'a str,
}

/// By when it must be settled.
#[derive(Serialize)]
pub struct SettleByReport<'a> {
    hold_point: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    date: Option<String>,
}

#[derive(Serialize)]
struct Waived<'a> {
    because: &'a str,
    by: &'a str,
    on: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    until: Option<String>,
}

/// The whole review as JSON.
pub fn report(review: &Review) -> String {
    let counts = review.assessment.counts;
    let report = Report {
        findings: review.assessment.findings.iter().map(|finding| told(finding, &review.files)).collect(),
        open: open::told(review),
        counts: CountsReport { stop: counts.stops, query: counts.queries, note: counts.notes, waived: counts.waived },
    };
    // Strings and numbers alone: there is nothing in it that JSON can't hold.
    serde_json::to_string_pretty(&report).map(|text| text + "\n").unwrap_or_default()
}

fn mend<'a>(fix: &'a Fix, files: &'a Files) -> Mend<'a> {
    let place = Place::Text(fix.span);
    let (start, end) = (files.start(&place), files.end(&place));
    Mend {
        file: files.get(fix.span.file).map_or("", |file| file.path.as_str()),
        line: start.line,
        column: start.column,
        end_line: end.line,
        end_column: end.column,
        with: &fix.with,
    }
}

fn told<'a>(finding: &'a Finding, files: &'a Files) -> FindingReport<'a> {
    let start = files.start(&finding.place);
    FindingReport {
        rule: finding.rule.text(),
        severity: finding.severity.word(),
        file: files.path(&finding.place),
        line: start.line,
        column: start.column,
        room: finding.room.as_deref(),
        item: finding.subject.name(),
        message: finding.message.text(),
        remedy: finding.remedy.text(),
        source: &finding.source,
        values: finding.message.values().map(|value| Figure { kind: value.kind(), is: value.exact() }).collect(),
        fix: finding.fix.as_ref().map(|fix| mend(fix, files)),
        by: finding.by.as_ref().map(|by| SettleByReport { hold_point: &by.hold_point, date: by.on.map(|on| on.iso()) }),
        caution: finding.caution.map(Hazard::caution),
        waived: finding.waived.as_ref().map(|waived| Waived {
            because: &waived.because,
            by: &waived.by,
            on: waived.on.iso(),
            until: waived.until.as_ref().map(ToString::to_string),
        }),
    }
}
