//! A finding as the page and the terminal show it during a preview.

/// How much a finding weighs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Must be fixed or waived.
    Stop,
    /// Wants an answer.
    Query,
    /// Is advice.
    Note,
}

/// One finding, already in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FindingLine {
    /// How much it weighs.
    pub severity: Severity,
    /// File, line and column.
    pub place: String,
    /// What is wrong, in runs, each with whether it is quoted.
    pub message: Vec<Run>,
    /// How to mend it, likewise.
    pub remedy: Vec<Run>,
    /// Who reads of it besides the office, and what would tell the client, likewise.
    pub told: Vec<Run>,
}

/// A run of text, and whether it is a name, a key or what somebody wrote.
pub type Run = (bool, String);

/// The runs as a terminal shows them: what is quoted between backticks.
pub fn plain(runs: &[Run]) -> String {
    runs.iter().map(|(quoted, text)| if *quoted { format!("`{text}`") } else { text.clone() }).collect()
}

impl Severity {
    /// The word beside its shape.
    pub(super) fn word(self) -> &'static str {
        match self {
            Self::Stop => "stop",
            Self::Query => "query",
            Self::Note => "note",
        }
    }

    /// Its shape, in a square of 20 units: a crossed box, a triangle, a ring.
    pub(super) fn shape(self) -> &'static str {
        match self {
            Self::Stop => "M2 2H18V18H2ZM2 2L18 18M18 2L2 18",
            Self::Query => "M10 2L19 18H1Z",
            Self::Note => "M10 3A7 7 0 1 1 10 17A7 7 0 1 1 10 3Z",
        }
    }
}

/// How many of each there are, as in "1 stop, 2 queries".
pub(super) fn count(findings: &[FindingLine]) -> String {
    let mut parts = Vec::new();
    for (severity, many) in [(Severity::Stop, "stops"), (Severity::Query, "queries"), (Severity::Note, "notes")] {
        let number = findings.iter().filter(|line| line.severity == severity).count();
        match number {
            0 => {}
            1 => parts.push(format!("1 {}", severity.word())),
            _ => parts.push(format!("{number} {many}")),
        }
    }
    if parts.is_empty() { "nothing found".into() } else { parts.join(", ") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn findings_are_counted_in_words() {
        let line =
            |severity| FindingLine { severity, place: String::new(), message: vec![], remedy: vec![], told: vec![] };
        assert_eq!(count(&[]), "nothing found");
        assert_eq!(count(&[line(Severity::Stop)]), "1 stop");
        let some = [line(Severity::Note), line(Severity::Query), line(Severity::Note)];
        assert_eq!(count(&some), "1 query, 2 notes");
    }
}
