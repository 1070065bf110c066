//! A record that is not as it was written.

use crate::assess::rules::{Check, declare};

declare! {
    /// The record is not as it was written
    ///
    /// ## What it checks
    /// Each line of `record/ledger.jsonl` bears a digest of itself and of the line before it, and names
    /// the digest of each issue's file. A line that was edited, dropped, moved or copied is told by its
    /// number, and so is an issue whose file is gone or changed. A last line that was not written to its
    /// end, as after a power cut, is a note: nobody was told that it was recorded. A response that bears a
    /// drawn signature or the scan of a signed sheet is held to its digest too, and so is each photograph that
    /// came with a delivery; one that is gone is a query, since what it said stands in the ledger all the same.
    ///
    /// The ledger is also held to what lies beside it. After each line its number and digest are kept in
    /// `record/head.json`; an issue, a response or a key takes its place only once a line names it. A
    /// ledger that is gone or emptied, that ends before that head, or that does not name what lies there
    /// is a stop, and lines that are lost are told by their numbers. Nothing is begun anew over a record,
    /// and nothing in it is written over.
    ///
    /// Each issue states the line before it, and pages and sheets that ask for signatures or readings state
    /// the line that names their issue, by number and digest. A response or reading that was made on a page
    /// whose line is not in the ledger is refused, with the line; those that were taken in are held to the
    /// ledger at each review. What is published states in `office/stated.json` over which line: a published
    /// folder that lies in the book's own is held to the ledger at each review, and any other before it is
    /// published over or served. Nothing is published over a record that is not as it was written, not even
    /// a draft. What nobody outside the folder has seen, and what is cut
    /// off or rewritten in the ledger, its head and all that lies beside together, can't be told from
    /// within; a backup shows it.
    ///
    /// ## Why it matters
    /// What was approved, by whom and when must be beyond argument. A record that can be changed
    /// unseen proves nothing, and a bad disk or a careless edit is better known at once than in a dispute.
    ///
    /// ## Remedy
    /// Never edit what is in `record`. Put the file back as it was, from a backup or from version
    /// control. Nothing can be recorded until then.
    ///
    /// ## Example
    /// ```text
    /// line 7 of the ledger is not as it was written
    /// ```
    ///
    /// ## Source
    /// Digests are SHA-256 (FIPS 180-4) of canonical JSON (RFC 8785); the chain is the record's own format.
    "approve/ledger", Stop,
    due: AtOnce, tells: [],
    sources: ["FIPS 180-4", "RFC 8785", "the record's own format"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use super::super::super::trial::Trial;
    use crate::digest::Digest;
    use crate::ledger::{Chain, Fact, Issue, Issued, Line, Opened, Purpose, Total};

    const BOOK: &str = "0123456789abcdef0123456789abcdef";

    fn issue() -> Vec<u8> {
        let issue = Issue {
            book: BOOK.into(),
            number: 1,
            purpose: Purpose::Approval,
            on: "2027-01-15".parse().unwrap(),
            title: "Trial".into(),
            currency: "USD".into(),
            total: Total { settled: "0.00".into(), with_tax: None },
            terms: None,
            built: None,
            asked: vec![],
            unapproved: None,
            money: None,
            title_block: None,
            after: None,
            items: vec![],
        };
        serde_json::to_vec(&issue).unwrap()
    }

    /// A ledger of an opening and an issue.
    fn ledger() -> String {
        let facts = [
            Fact::Opened(Opened { book: BOOK.into(), title: "Trial".into() }),
            Fact::Issued(Issued {
                number: 1,
                purpose: Purpose::Approval,
                on: "2027-01-15".parse().unwrap(),
                sha256: Digest::of(&issue()),
                items: 0,
            }),
        ];
        let mut chain = Chain::default();
        let mut bytes = Vec::new();
        for fact in facts {
            let line = Line::next(&chain, "2027-01-15T09:00:00Z".parse().unwrap(), fact).unwrap();
            bytes.extend(line.bytes().unwrap());
            chain.lines.push(line);
        }
        String::from_utf8(bytes).unwrap()
    }

    fn trial(ledger: String) -> Trial {
        Trial::of("approve/ledger").file("record/ledger.jsonl", ledger).file("record/issues/0001.json", issue())
    }

    #[test]
    fn a_record_as_it_was_written_is_silent() {
        trial(ledger()).stays_silent();
        Trial::of("approve/ledger").stays_silent();
    }

    #[test]
    fn an_edited_line_is_told_by_its_number_and_stops() {
        let edited = ledger().replace("\"number\":1", "\"number\":2");
        trial(edited).finds("line 2 of the ledger is not as it was written").weighs("stop");
    }

    #[test]
    fn a_dropped_line_is_told_by_its_number() {
        let second = ledger().lines().nth(1).unwrap().to_string() + "\n";
        let found = trial(second).run().weighs("stop");
        assert_eq!(found.findings()[0].message.text(), "line 1 of the ledger is gone");
    }

    #[test]
    fn a_torn_last_line_is_a_note() {
        let ledger = ledger();
        trial(ledger.clone() + &ledger[..50])
            .finds("the ledger's last line was not written to its end, and nobody was told that it was recorded")
            .weighs("note");
        trial(ledger.trim_end().to_string()).finds("the ledger's last line has no line break").weighs("note");
    }

    #[test]
    fn a_cut_inside_a_line_that_was_recorded_is_told_as_lost_with_its_number_and_stops() {
        let ledger = ledger();
        let found = trial(ledger[..ledger.len() - 30].to_string()).run().weighs("stop");
        let told: Vec<&str> = found.findings().iter().map(|finding| finding.message.text()).collect();
        assert!(told.contains(&"line 2 of the ledger is lost: it was recorded, and is cut off"), "{told:?}");
        assert!(told.contains(&"issue 1 is in the record, and no line of the ledger names it"), "{told:?}");
    }

    #[test]
    fn a_ledger_that_is_gone_emptied_or_older_than_what_lies_beside_it_stops() {
        let beside = || Trial::of("approve/ledger").file("record/issues/0001.json", issue());
        beside().finds("the ledger is gone or empty, beside 1 issue").weighs("stop");
        beside().file("record/ledger.jsonl", "").finds("the ledger is gone or empty, beside 1 issue").weighs("stop");
        let key = |ledger: Trial| ledger.file("record/keys/ada.key", "").file("record/keys/.gitignore", "*");
        key(Trial::of("approve/ledger")).finds("the ledger is gone or empty, beside 1 key").weighs("stop");
        key(trial(ledger())).finds("a key of `ada` is in the record, and no line of the ledger names it");
        let digest = Digest::of(b"a response").to_string();
        let told = format!("the response `{}` is in the record, and no line of the ledger names it", &digest[..8]);
        trial(ledger()).file(&format!("record/responses/{digest}.json"), "{}").finds(&told).weighs("stop");
        let opening = ledger().lines().next().unwrap().to_string() + "\n";
        let cut = trial(opening);
        cut.finds("issue 1 is in the record, and no line of the ledger names it").weighs("stop");
    }

    #[test]
    fn a_head_that_was_kept_tells_lines_that_are_cut_off_and_a_ledger_that_was_written_anew() {
        let head = |line: u32, of: &[u8]| format!("{{\"line\":{line},\"sha256\":\"{}\"}}", Digest::of(of));
        let last: serde_json::Value = serde_json::from_str(ledger().lines().nth(1).unwrap()).unwrap();
        let sound = format!("{{\"line\":2,\"sha256\":{}}}", last["sha256"]);
        trial(ledger()).file("record/head.json", sound).stays_silent();
        let lost = "lines 3 to 4 of the ledger are lost: they were recorded, and are cut off";
        trial(ledger()).file("record/head.json", head(4, b"later")).finds(lost).weighs("stop");
        let other = "line 2 of the ledger is not the one that was recorded";
        trial(ledger()).file("record/head.json", head(2, b"another")).finds(other).weighs("stop");
    }

    #[test]
    fn an_issue_whose_file_is_changed_or_gone_is_told() {
        let ledger = || Trial::of("approve/ledger").file("record/ledger.jsonl", ledger());
        ledger().finds("the file of issue 1 is gone").weighs("stop");
        let changed = String::from_utf8(issue()).unwrap().replace("Trial", "Other");
        ledger().file("record/issues/0001.json", changed).finds("the file of issue 1 is not as it was issued");
    }

    #[test]
    fn it_can_not_be_waived() {
        let waiver = "waive: [{rule: approve/ledger, because: never mind, by: Ines Tarrow, on: 2027-01-12}]";
        let edited = ledger().replace("Trial", "Other");
        let found = trial(edited).book(waiver).run();
        assert!(found.findings().iter().all(|finding| finding.waived.is_none()) && !found.findings().is_empty());
    }
}
