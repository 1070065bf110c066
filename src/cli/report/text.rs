//! Findings for people: the line each stands in, the place underlined, and what to do.

use std::collections::BTreeMap;

use annotate_snippets::{AnnotationKind, Element, Group, Level, Origin, Renderer, Snippet};

use crate::finding::{Counts, Finding, Hazard, SettleBy, Severity};
use crate::pipeline::Review;
use crate::source::{Files, Place, SourceFile, Span};

use super::next::next;
use super::open::{OpenShown, open_values};
use super::shown::{line, plain};

/// Most findings shown for one file; JSON and SARIF always give all.
const SHOWN_PER_FILE: usize = 20;
/// Lines of a file shown around a place.
const LINES_AROUND: usize = 1;

/// The whole review as text.
pub fn report(review: &Review, colour: bool) -> String {
    let mut text = told(&review.assessment.findings, &review.files, colour);
    text += &plain(&open_values(review, OpenShown::Few));
    text += &plain(&next(review));
    text += &summary(review.assessment.counts);
    text
}

/// Each finding as text, at most so many for a file.
fn told(findings: &[Finding], files: &Files, colour: bool) -> String {
    let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
    let mut shown: BTreeMap<&str, usize> = BTreeMap::new();
    let mut text = String::new();
    for finding in findings.iter().filter(|finding| finding.waived.is_none()) {
        let count = shown.entry(files.path(&finding.place)).or_default();
        *count += 1;
        if *count <= SHOWN_PER_FILE {
            text += &renderer.render(&groups(finding, files));
            text += "\n\n";
        }
    }
    for (path, count) in shown.into_iter().filter(|(_, count)| *count > SHOWN_PER_FILE) {
        let path = line(path);
        text += &format!("{path}: {} more findings; `--format json` gives all\n", count - SHOWN_PER_FILE);
    }
    for finding in findings {
        if let Some(waived) = &finding.waived {
            let (message, words) = (line(finding.message.text()), line(&waived.words()));
            text += &format!("waived: {message} [{}]: {} ({words})\n", finding.rule, line(&waived.because));
            text += &finding.caution.map_or(String::new(), |hazard| format!("  caution: {}\n", hazard.caution()));
        }
    }
    text
}

fn level(severity: Severity) -> Level<'static> {
    match severity {
        Severity::Stop => Level::ERROR.with_name("stop"),
        Severity::Query => Level::WARNING.with_name("query"),
        Severity::Note => Level::NOTE.with_name("note"),
    }
}

fn groups<'a>(finding: &'a Finding, files: &'a Files) -> Vec<Group<'a>> {
    let title = level(finding.severity).primary_title(line(finding.message.text())).id(finding.rule.text());
    let mut group = Group::with_title(title);
    match &finding.place {
        Place::Path(path) => group = group.element(Origin::path(line(path))),
        Place::Text(span) => {
            for element in snippets(finding, *span, files) {
                group = group.element(element);
            }
        }
    }
    let about = [finding.room.as_deref(), finding.subject.name()].into_iter().flatten().collect::<Vec<_>>().join(", ");
    let about = line(&about);
    if !about.is_empty() {
        group = group.element(Level::NOTE.with_name("where").message(about));
    }
    let by = finding.by.as_ref().map(SettleBy::words).unwrap_or_default();
    let more = [
        ("remedy", finding.remedy.text()),
        ("settle by", by.as_str()),
        ("source", finding.source.as_str()),
        ("caution", finding.caution.map_or("", Hazard::caution)),
    ];
    for (name, words) in more.into_iter().filter(|(_, words)| !words.is_empty()) {
        group = group.element(Level::HELP.with_name(name).message(line(words)));
    }
    vec![group]
}

/// The lines of the place itself, and of the other places that the finding speaks of.
fn snippets<'a>(finding: &'a Finding, span: Span, files: &'a Files) -> Vec<Element<'a>> {
    let mut all: Vec<(Span, AnnotationKind, &str)> = vec![(span, AnnotationKind::Primary, "")];
    all.extend(finding.also.iter().map(|also| (also.span, AnnotationKind::Context, also.label.text())));
    let elements = all.into_iter().filter_map(|(span, kind, label)| {
        let file = files.get(span.file)?;
        let (first, text, from) = lines(file, span);
        let start = (span.start as usize).saturating_sub(from).min(text.len());
        let end = (span.end as usize).saturating_sub(from).clamp(start, text.len());
        let annotation = kind.span(start..end);
        let annotation = if label.is_empty() { annotation } else { annotation.label(line(label)) };
        Some(Element::from(Snippet::source(text).line_start(first).path(line(&file.path)).annotation(annotation)))
    });
    elements.collect()
}

/// The lines around the start of a span, the number of the first, and its offset in the file. A
/// value of many lines is shown by its first ones.
fn lines(file: &SourceFile, span: Span) -> (usize, &str, usize) {
    let line = file.position(span.start).line as usize;
    let first = line.saturating_sub(LINES_AROUND).max(1);
    let mut starts = std::iter::once(0).chain(file.text.match_indices('\n').map(|(at, _)| at + 1));
    let from = starts.nth(first - 1).unwrap_or(0);
    let rest = file.text.get(from..).unwrap_or_default();
    let end = rest.match_indices('\n').nth(line - first + LINES_AROUND).map_or(rest.len(), |(at, _)| at);
    (first, rest.get(..end).unwrap_or(rest), from)
}

fn summary(counts: Counts) -> String {
    let worded = |count: usize, one: &str, many: &str| format!("{count} {}", if count == 1 { one } else { many });
    let mut parts = vec![
        worded(counts.stops, "stop", "stops"),
        worded(counts.queries, "query", "queries"),
        worded(counts.notes, "note", "notes"),
    ];
    if counts.waived > 0 {
        parts.push(format!("{} waived", counts.waived));
    }
    format!("{}\n", parts.join(", "))
}
