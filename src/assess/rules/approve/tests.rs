//! Small books with a record: what was issued, what was decided, and what the book says now.

use crate::assess::rules::trial::Trial;
use crate::digest::Digest;
use crate::ledger::{
    Attestation, Chain, Confirmed, Decided, Decision, Fact, Issue, Issued, IssuedItem, ItemDecision, Line, Met, Opened,
    Purpose, Total,
};
use crate::shown;
mod built;
mod came;
mod counts;
mod mark;
mod resting;
mod unsigned;

use Decision::{Approved, ApprovedAsNoted, Rejected, ReviseAndResubmit};

const BOOK: &str = "0123456789abcdef0123456789abcdef";
pub(in crate::assess::rules) const BOTH: &str =
    "approvers: [{id: ada, name: Ada Marrowby}, {id: sven, name: Sven Lint}]";
const CHOICE: &str = "options: [{id: steel, finish: brushed steel}, {id: black, finish: black}]";

/// A record in the making, on a book of a range and the cabinets around it.
pub(in crate::assess::rules) struct Record {
    issue: Issue,
    facts: Vec<Fact>,
    approvers: String,
    /// When what follows the issue came in.
    at: &'static str,
    /// When the issue was made.
    made: &'static str,
}

fn book(rule: &'static str, approvers: &str, range: &str) -> Trial {
    Trial::of(rule)
        .book(approvers)
        .selection(&format!("selection: Range\nkind: range\n{range}"), "")
        .selection("selection: Cabinets\nkind: cabinet\ndepends on: [Range]", "finish: ash")
}

/// Issue 1 of that book.
pub(in crate::assess::rules) fn issued(approvers: &str, range: &str) -> Record {
    let book = book("approve/ledger", approvers, range).read();
    let items = shown::items(&book, &|_| None).into_iter().map(|((room, item), marked)| IssuedItem {
        room: room.into(),
        item: item.into(),
        tag: if item == "range" { "K-01".into() } else { "K-02".into() },
        name: item.into(),
        mark: marked.mark,
        also: vec![],
        content: marked.content,
        price: None,
        lead_time: None,
        order_by: None,
        supplier: None,
    });
    let issue = Issue {
        book: BOOK.into(),
        number: 1,
        purpose: Purpose::Approval,
        on: "2027-01-10".parse().unwrap(),
        title: "Trial".into(),
        currency: "USD".into(),
        total: Total { settled: "0.00".into(), with_tax: None },
        terms: None,
        after: None,
        items: items.collect(),
        built: None,
        asked: vec![],
        unapproved: None,
        money: None,
        title_block: None,
    };
    let approvers = approvers.into();
    Record { issue, facts: vec![], approvers, at: "2027-01-12T19:05:00Z", made: "2027-01-10T09:00:00Z" }
}

impl Record {
    fn mark(&self, item: &str) -> Digest {
        self.issue.item("kitchen", item).unwrap().mark
    }

    /// One approver's word on items.
    fn says(mut self, who: &str, by: Attestation, words: &[(&str, Decision, Option<&str>, Option<&str>)]) -> Self {
        let items = words.iter().map(|(item, decision, option, note)| ItemDecision {
            room: "kitchen".into(),
            item: (*item).into(),
            mark: self.mark(item),
            decision: *decision,
            option: option.map(str::to_owned),
            note: note.map(str::to_owned),
        });
        let decided = Decided {
            response: Digest::of(format!("{who} {}", self.facts.len()).as_bytes()),
            issue: 1,
            who: who.into(),
            by,
            key: None,
            how: None,
            given: None,
            device: None,
            made: "2027-01-12T19:00:00Z".parse().unwrap(),
            signed: None,
            items: items.collect(),
            refused: vec![],
        };
        self.facts.push(Fact::Decided(decided));
        self
    }

    fn by_link(self, who: &str, item: &str, decision: Decision) -> Self {
        self.says(who, Attestation::PrivateLink, &[(item, decision, None, None)])
    }

    fn fact(mut self, fact: Fact) -> Self {
        self.facts.push(fact);
        self
    }

    /// The review of the book as it is now, with this record.
    pub(in crate::assess::rules) fn now(self, rule: &'static str, range: &str) -> Trial {
        let issue = serde_json::to_vec(&self.issue).unwrap();
        let issued = Issued {
            number: 1,
            purpose: Purpose::Approval,
            on: self.issue.on,
            sha256: Digest::of(&issue),
            items: u32::try_from(self.issue.items.len()).unwrap(),
        };
        let opened = Fact::Opened(Opened { book: BOOK.into(), title: "Trial".into() });
        let mut chain = Chain::default();
        let mut ledger = Vec::new();
        for fact in [opened, Fact::Issued(issued)].into_iter().chain(self.facts) {
            let at = if chain.lines.len() < 2 { self.made } else { self.at };
            let line = Line::next(&chain, at.parse().unwrap(), fact).unwrap();
            ledger.extend(line.bytes().unwrap());
            chain.lines.push(line);
        }
        let trial = book(rule, &self.approvers, range);
        trial.file("record/ledger.jsonl", ledger).file("record/issues/0001.json", issue)
    }
}

#[test]
fn what_nobody_decided_waits_and_what_was_ordered_without_a_word_stops() {
    let range = "finish: brushed steel";
    issued(BOTH, range)
        .now("approve/waiting", range)
        .finds("2 items of issue 1 wait for Ada Marrowby and Sven Lint: `Range` and `Cabinets`")
        .weighs("note");
    let ordered = format!("{range}\norder: {{placed on: 2027-01-14}}");
    let found = issued(BOTH, range).now("approve/waiting", &ordered).run().counts(2);
    assert!(found.findings().iter().any(|finding| finding.severity.word() == "stop"));
    let before_anybody_was_asked = format!("{range}\norder: {{placed on: 2027-01-08}}");
    let found = issued(BOTH, range).now("approve/waiting", &before_anybody_was_asked).run().counts(2);
    assert!(found.findings().iter().all(|finding| finding.severity.word() != "stop"));
    let all = issued(BOTH, range).by_link("ada", "range", Approved).by_link("sven", "range", Approved);
    all.by_link("ada", "cabinets", Approved)
        .by_link("sven", "cabinets", Approved)
        .now("approve/waiting", range)
        .stays_silent();
}

/// Who is still to answer on the range, and who stands in the way of its order.
pub(super) fn waits_for(record: Record, range: &str) -> (Vec<String>, Vec<String>) {
    let book = record.now("approve/waiting", range).read();
    let assessment = crate::assess::assess(&book, vec![], "2027-01-15".parse().unwrap());
    let (room, range) = book.selections().find(|(_, one)| one.id == "range").unwrap();
    let item = assessment.approvals.item(room, range).unwrap();
    let unapproved = assessment.unapproved(&book, room, range).map_or_else(Vec::new, |thing| thing.of);
    (item.still_to_answer().to_vec(), unapproved)
}

#[test]
fn where_any_one_may_decide_nobody_else_is_still_to_answer() {
    let range = "finish: brushed steel";
    let any = &format!("{BOTH}\napproval: any");
    let both: Vec<String> = ["Ada Marrowby", "Sven Lint"].map(String::from).into();
    assert_eq!(waits_for(issued(any, range), range).0, both);
    for decision in [Approved, Rejected, ReviseAndResubmit, ApprovedAsNoted] {
        let waits = waits_for(issued(any, range).by_link("ada", "range", decision), range);
        assert_eq!(waits, (vec![], vec![]), "{decision:?}");
        assert_eq!(waits_for(issued(BOTH, range).by_link("ada", "range", decision), range).0, ["Sven Lint"]);
    }
    let unsigned = issued(any, range).says("ada", Attestation::Unsigned, &[("range", Approved, None, None)]);
    assert_eq!(waits_for(unsigned, range).0, both, "what bears no key is nobody's word");
}

#[test]
fn nobody_can_answer_on_what_was_not_issued_as_it_is_now() {
    let waits = waits_for(issued(BOTH, "finish: brushed steel"), "finish: black");
    assert_eq!((waits.0.len(), waits.1.len()), (0, 2), "both must sign, once they are asked");
}

#[test]
fn what_was_issued_and_is_in_the_book_no_longer_is_withdrawn_with_who_had_approved_it() {
    let range = "finish: brushed steel";
    let without = |id: &str| {
        let record = issued(BOTH, range).by_link("ada", "range", Approved).by_link("sven", "range", Rejected);
        let mut book = record.now("approve/stale", range).read();
        book.rooms[0].selections.retain(|selection| selection.id != id);
        crate::assess::approval::Approvals::of(&book).withdrawn
    };
    assert_eq!(without("nothing"), []);
    let [gone] = without("range").try_into().unwrap();
    assert_eq!((gone.name.as_str(), gone.approved_by), ("range", vec!["Ada Marrowby".to_string()]));
}

#[test]
fn what_is_new_or_changed_since_the_issue_is_told_apart() {
    issued(BOTH, "finish: brushed steel").now("approve/waiting", "finish: black").run().counts(2);
}

/// Source: trade reports F-105; trade practice: one signature doesn't bind the other.
#[test]
fn one_of_two_is_not_enough_unless_any_may_sign() {
    let range = "finish: brushed steel";
    let one = |approvers: &str| issued(approvers, range).by_link("ada", "range", Approved);
    one(BOTH)
        .now("approve/one-of-two", range)
        .finds("1 item is approved by Ada Marrowby and waits for Sven Lint: `Range`");
    one(&format!("{BOTH}\napproval: any")).now("approve/one-of-two", range).stays_silent();
    one(BOTH).by_link("sven", "range", Approved).now("approve/one-of-two", range).stays_silent();
}

#[test]
fn approvers_who_disagree_are_shown_each_other_s_word() {
    let range = "finish: brushed steel";
    let both = issued(BOTH, range).by_link("ada", "range", Approved);
    both.says("sven", Attestation::PrivateLink, &[("range", Rejected, None, Some("too  wide"))])
        .now("approve/conflict", range)
        .finds("`Range`: Ada Marrowby said approved, Sven Lint said rejected (\"too wide\")");
    let chose =
        |option: &'static str| {
            issued(BOTH, CHOICE)
                .says("ada", Attestation::PrivateLink, &[("range", Approved, Some("steel"), None)])
                .says("sven", Attestation::PrivateLink, &[("range", Approved, Some(option), None)])
        };
    chose("black").now("approve/conflict", CHOICE).finds_one();
    chose("steel").now("approve/conflict", CHOICE).stays_silent();
    chose("steel").now("approve/unwritten", CHOICE).finds_one().weighs("note");
    chose("steel").now("approve/unwritten", &format!("{CHOICE}\nchosen: steel")).stays_silent();
    chose("steel").now("approve/stale", &format!("{CHOICE}\nchosen: steel")).stays_silent();
}

#[test]
fn the_newest_word_of_each_counts() {
    let range = "finish: brushed steel";
    let back = || issued(BOTH, range).by_link("sven", "range", ReviseAndResubmit);
    back().now("approve/sent-back", range).finds("`Range` is to be revised for Sven Lint");
    back().by_link("sven", "range", Approved).now("approve/sent-back", range).stays_silent();
    back().now("approve/sent-back", "finish: black").stays_silent();
}

/// Source: trade reports F-53: swapped after the template.
#[test]
fn a_change_after_signing_tells_what_from_and_to() {
    let both = || {
        let range = "finish: brushed steel\nprice: 3180.00";
        issued(BOTH, range).by_link("ada", "range", Approved).by_link("sven", "range", Approved)
    };
    both()
        .now("approve/stale", "finish: black\nprice: 3180.00")
        .finds("`Range` changed since Ada Marrowby and Sven Lint approved it in issue 1: finish from brushed steel to black; name from brushed steel to black")
        .weighs("query");
    both()
        .now("approve/stale", "finish: black\nprice: 3180.00\norder: {placed on: 2027-01-14}")
        .finds_one()
        .weighs("stop");
    let unshown = "finish: brushed steel\nprice: 3180.00\nsupplier: Tolvane\nlead time: 3 weeks\ncost: 2200.00";
    both().now("approve/stale", unshown).stays_silent();
}

#[test]
fn an_approval_rests_on_what_the_thing_is_built_around() {
    let range = "finish: brushed steel";
    let cabinets = || issued(BOTH, range).by_link("ada", "cabinets", Approved);
    cabinets().now("approve/depends", &range.replace("brushed steel", "black")).run().counts(1);
    cabinets().now("approve/depends", range).stays_silent();
}

#[test]
fn another_choice_re_opens_what_was_approved_around_the_first() {
    let chosen = |id: &str| format!("{CHOICE}\nchosen: {id}");
    let cabinets = |range: &str| issued(BOTH, range).by_link("ada", "cabinets", Approved);
    let told = "`Cabinets` was approved in issue 1, and `Range`, which it is built around, has changed since: \
                the choice from `brushed steel` to `black`";
    cabinets(&chosen("steel")).now("approve/depends", &chosen("black")).finds(told).weighs("query");
    cabinets(&chosen("steel")).now("approve/depends", &chosen("steel")).stays_silent();
    // A first choice is no other choice.
    cabinets(CHOICE).now("approve/depends", &chosen("black")).stays_silent();
    // What the client chose counts, whether the book wrote it down or not.
    let both = |option: &'static str| {
        issued(BOTH, CHOICE).says(
            "ada",
            Attestation::PrivateLink,
            &[("range", Approved, Some(option), None), ("cabinets", Approved, None, None)],
        )
    };
    both("steel").now("approve/depends", &chosen("black")).finds(told);
    both("black").now("approve/depends", &chosen("black")).stays_silent();
}

#[test]
fn a_condition_is_open_until_it_is_met() {
    let range = "finish: brushed steel";
    let noted = || {
        let ada = issued(BOTH, range).by_link("ada", "range", Approved);
        ada.says("sven", Attestation::PrivateLink, &[("range", ApprovedAsNoted, None, Some("if it is quiet"))])
    };
    noted().now("approve/condition", range).finds("`Range` is approved by Sven Lint as noted: \"if it is quiet\"");
    let met = |record: Record| {
        let mark = record.mark("range");
        record.fact(Fact::Met(Met {
            room: "kitchen".into(),
            item: "range".into(),
            mark,
            response: None,
            by: "Ines Tarrow".into(),
            note: "heard in the showroom".into(),
            on: "2027-01-13".parse().unwrap(),
        }))
    };
    met(noted()).now("approve/condition", range).stays_silent();
}

#[test]
fn a_response_without_a_key_counts_once_it_is_confirmed() {
    let range = "finish: brushed steel";
    let ada = || issued(BOTH, range).says("ada", Attestation::Unsigned, &[("range", Approved, None, None)]);
    ada().now("approve/unsigned", range).finds("a response for Ada Marrowby to issue 1 (1 item) bears no key");
    ada().now("approve/one-of-two", range).stays_silent();
    let confirmed = |record: Record| {
        let Some(Fact::Decided(decided)) = record.facts.first().cloned() else { panic!() };
        record.fact(Fact::Confirmed(Confirmed {
            response: decided.response,
            by: "Ines Tarrow".into(),
            on: "2027-01-13".parse().unwrap(),
        }))
    };
    confirmed(ada()).now("approve/unsigned", range).stays_silent();
    confirmed(ada()).now("approve/one-of-two", range).finds_one();
    // A stranger's word takes nobody's place.
    let known = issued(BOTH, range).by_link("ada", "range", Approved);
    known
        .says("ada", Attestation::Unsigned, &[("range", Rejected, None, None)])
        .now("approve/sent-back", range)
        .stays_silent();
}
