//! Findings as SARIF 2.1.0 (OASIS Standard, 27 March 2020), for editors and code hosts.

use serde_json::{Value, json};

use crate::assess::rules::{RULES, Rule};
use crate::finding::{Finding, Fix, Hazard, Severity};
use crate::pipeline::Review;
use crate::source::{Files, Place};
use crate::units::System;

/// The whole review as a SARIF log.
pub fn report(review: &Review) -> String {
    let results: Vec<Value> = review.assessment.findings.iter().map(|finding| result(finding, &review.files)).collect();
    let rules: Vec<Value> = RULES.iter().map(descriptor).collect();
    let log = json!({
        "$schema": "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
        "version": "2.1.0",
        "runs": [{
            "tool": {"driver": {"name": "bookmatch", "version": env!("CARGO_PKG_VERSION"), "rules": rules}},
            "columnKind": "unicodeCodePoints",
            "results": results,
        }],
    });
    serde_json::to_string_pretty(&log).map(|text| text + "\n").unwrap_or_default()
}

fn level(severity: Severity) -> &'static str {
    match severity {
        Severity::Stop => "error",
        Severity::Query => "warning",
        Severity::Note => "note",
    }
}

fn descriptor(rule: &Rule) -> Value {
    let page = rule.page(System::Imperial);
    json!({
        "id": rule.code.text(),
        "shortDescription": {"text": rule.summary()},
        "fullDescription": {"text": page.trim()},
        "help": {"text": page.trim(), "markdown": page.trim()},
        "defaultConfiguration": {"level": level(rule.severity)},
    })
}

fn result(finding: &Finding, files: &Files) -> Value {
    let mut text = finding.message.text().to_string();
    for part in [finding.remedy.text(), finding.caution.map_or("", Hazard::caution)] {
        if !part.is_empty() {
            text = format!("{text}. {part}");
        }
    }
    let mut result = json!({
        "ruleId": finding.rule.text(),
        "level": level(finding.severity),
        "message": {"text": text},
        "locations": [{"physicalLocation": location(files, &finding.place)}],
        "properties": {"room": finding.room, "item": finding.subject.name(), "source": finding.source},
    });
    let mut put = |key: &str, value: Value| {
        if let Some(fields) = result.as_object_mut() {
            fields.insert(key.into(), value);
        }
    };
    if let Some(index) = RULES.iter().position(|rule| rule.code == finding.rule) {
        put("ruleIndex", json!(index));
    }
    let also = finding.also.iter().enumerate().map(|(id, also)| {
        let place = location(files, &Place::Text(also.span));
        json!({"id": id, "physicalLocation": place, "message": {"text": also.label.text()}})
    });
    let also: Vec<Value> = also.collect();
    if !also.is_empty() {
        put("relatedLocations", Value::Array(also));
    }
    if let Some(fix) = &finding.fix {
        put("fixes", json!([mend(finding, fix, files)]));
    }
    if let Some(waived) = &finding.waived {
        let why = format!("{} ({})", waived.because, waived.words());
        put("suppressions", json!([{"kind": "inSource", "status": "accepted", "justification": why}]));
    }
    result
}

/// A mend that is certain, as an editor can make it (SARIF 2.1.0, 3.55).
fn mend(finding: &Finding, fix: &Fix, files: &Files) -> Value {
    let place = location(files, &Place::Text(fix.span));
    json!({
        "description": {"text": finding.remedy.text()},
        "artifactChanges": [{
            "artifactLocation": place.get("artifactLocation"),
            "replacements": [{"deletedRegion": place.get("region"), "insertedContent": {"text": fix.with}}],
        }],
    })
}

fn location(files: &Files, place: &Place) -> Value {
    let (start, end) = (files.start(place), files.end(place));
    let uri = encoded(files.path(place));
    match place {
        Place::Path(_) => json!({"artifactLocation": {"uri": uri}}),
        Place::Text(_) => json!({
            "artifactLocation": {"uri": uri},
            "region": {
                "startLine": start.line, "startColumn": start.column, "endLine": end.line, "endColumn": end.column,
            },
        }),
    }
}

/// A path as a relative reference of RFC 3986.
fn encoded(path: &str) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-._~/".contains(&byte);
    path.bytes().map(|byte| if plain(byte) { char::from(byte).to_string() } else { format!("%{byte:02X}") }).collect()
}
