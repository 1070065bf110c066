//! What came of a thing that was approved, and what that does to its approval, its claim and its setting.

use super::*;
use crate::ledger::{Came, Delivery, ItemReceived, Kept, LineReceived, Looked, Received, TakenBack};

const RANGE: &str = "finish: brushed steel\nsupplier: Oren\nneeded for: 2027-01-25\norder: {placed on: 2027-01-11}";

/// What somebody says of the range that a delivery brought.
#[derive(Clone, Copy)]
struct Word {
    by: &'static str,
    note: &'static str,
    made: &'static str,
    came: Came,
    kept: Option<Kept>,
    /// The how-manieth it is of the one device.
    turn: Option<u32>,
}

const FIRST: Word = Word {
    by: "Teo Varrick",
    note: "4711",
    made: "2027-01-12T09:00:00Z",
    came: Came::Approved,
    kept: None,
    turn: None,
};

/// The same, otherwise than approved.
fn otherwise(came: Came, kept: Kept) -> Word {
    Word { came, kept: Some(kept), ..FIRST }
}

fn digest(word: Word) -> Digest {
    Digest::of(format!("{} {} {} {}", word.by, word.note, word.made, word.came.word()).as_bytes())
}

impl Record {
    fn range_came(self, word: Word) -> Self {
        let mark = self.mark("range");
        let words = (word.came != Came::Approved).then(|| "black".to_string());
        let line = LineReceived { of: Looked::Finish, came: word.came, words };
        let item = ItemReceived {
            room: "kitchen".into(),
            item: "range".into(),
            option: None,
            mark,
            lines: vec![line],
            kept: word.kept,
            note: None,
            photos: vec![],
        };
        let made: crate::ledger::Moment = word.made.parse().unwrap();
        self.fact(Fact::Received(Received {
            response: digest(word),
            delivery: Delivery { from: "Oren".into(), load: None, note: word.note.into() },
            by: word.by.into(),
            on: made.day().unwrap(),
            made,
            device: word.turn.map(|turn| crate::ledger::Device { id: "0".repeat(32), turn }),
            items: vec![item],
        }))
    }

    fn confirmed(self, word: Word) -> Self {
        let on = "2027-01-12".parse().unwrap();
        self.fact(Fact::Confirmed(Confirmed { response: digest(word), by: "Ines Tarrow".into(), on }))
    }

    fn range_came_and_counts(self, word: Word) -> Self {
        self.range_came(word).confirmed(word)
    }
}

/// The range, approved by both.
fn approved() -> Record {
    issued(BOTH, RANGE).by_link("ada", "range", Approved).by_link("sven", "range", Approved)
}

fn stands(record: Record, range: &str) -> String {
    let book = record.now("approve/came", range).read();
    let approvals = crate::assess::approval::Approvals::of(&book);
    let (room, range) = book.selections().find(|(_, one)| one.id == "range").unwrap();
    approvals.item(room, range).unwrap().standing.word().into()
}

/// The clock of the device was set back between its two words: its own count tells which was the last.
#[test]
fn the_later_word_of_one_device_counts_whatever_its_clock_says() {
    let first = Word { turn: Some(1), made: "2027-01-12T11:00:00Z", ..otherwise(Came::Different, Kept::Taken) };
    let second = Word { turn: Some(2), note: "4712", made: "2027-01-12T08:00:00Z", ..FIRST };
    let of = |words: [Word; 2]| stands(words.into_iter().fold(approved(), Record::range_came_and_counts), RANGE);
    for words in [[first, second], [second, first]] {
        assert_eq!(of(words), "approved");
        assert_eq!(of(words.map(|word| Word { turn: None, ..word })), "came otherwise than approved", "by the clock");
    }
}

/// It was answered, and has to be revised by what came: all who must approve sign that, once it is issued.
#[test]
fn nobody_is_still_to_answer_on_what_was_taken_otherwise() {
    let taken = approved().range_came_and_counts(otherwise(Came::Different, Kept::Taken));
    let both: Vec<String> = ["Ada Marrowby", "Sven Lint"].map(String::from).into();
    assert_eq!(waits_for(taken, RANGE), (vec![], both));
}

#[test]
fn what_is_set_within_two_weeks_must_have_been_received_as_it_was_approved() {
    let told = "`Range` is set on 25 Jan 2027, and nobody has received it as approved";
    let found = approved().now("order/received", RANGE).finds(told).weighs("query");
    assert_eq!(found.findings()[0].by.as_ref().unwrap().words(), "things set, 25 Jan 2027");
    approved().range_came(FIRST).now("order/received", RANGE).finds(told);
    approved().range_came_and_counts(FIRST).now("order/received", RANGE).stays_silent();
    let later = RANGE.replace("2027-01-25", "2027-01-30");
    approved().now("order/received", &later).stays_silent();
    let past = RANGE.replace("2027-01-25", "2027-01-14");
    approved()
        .now("order/received", &past)
        .finds("`Range` was to be set on 14 Jan 2027, and nobody has received it as approved")
        .weighs("stop");
    let to_be_ordered = RANGE.replace("order: {placed on: 2027-01-11}", "lead time: 6 weeks");
    approved().now("order/received", &to_be_ordered).finds(told);
    let in_stock = RANGE.replace("order: {placed on: 2027-01-11}", "lead time: in stock");
    approved().now("order/received", &in_stock).stays_silent();
}

#[test]
fn what_was_promised_for_a_day_that_is_past_and_was_not_received_is_told() {
    let promised = |day: &str| {
        let order = format!("order: {{placed on: 2027-01-11, promised for: {day}}}");
        RANGE.replace("2027-01-25", "2027-03-30").replace("order: {placed on: 2027-01-11}", &order)
    };
    approved()
        .now("order/received", &promised("2027-01-12"))
        .finds("`Range` was promised for 12 Jan 2027, and nobody has received it")
        .weighs("query");
    // Beside the day on which it is set, as well.
    approved()
        .now("order/received", &promised("2027-01-12").replace("2027-03-30", "2027-01-25"))
        .finds("`Range` is set on 25 Jan 2027, was promised for 12 Jan 2027, and nobody has received it as approved");
    approved().now("order/received", &promised("2027-02-12")).stays_silent();
    approved().range_came_and_counts(FIRST).now("order/received", &promised("2027-01-12")).stays_silent();
}

#[test]
fn the_milestone_at_which_a_thing_is_set_is_its_hold_point() {
    let range = RANGE.replace("2027-01-25", "counters set");
    let found = approved().now("order/received", &range).book("milestones: {counters set: 2027-01-20}").finds_one();
    assert_eq!(found.findings()[0].by.as_ref().unwrap().words(), "counters set, 20 Jan 2027");
}

/// Source: trade practice: a substitution is a revision, and is approved by whoever approved the first.
#[test]
fn what_was_taken_although_different_is_to_be_approved_anew() {
    let taken = otherwise(Came::Different, Kept::Taken);
    let record = || approved().range_came_and_counts(taken);
    record()
        .now("approve/came", RANGE)
        .finds("`Range` came different (finish: black) on 12 Jan 2027 and was taken by Teo Varrick")
        .weighs("query");
    assert_eq!(stands(record(), RANGE), "came otherwise than approved");
    assert_eq!(stands(approved().range_came(taken), RANGE), "approved", "until it is confirmed");
    // The same asked again is no new revision; what the book holds of what came is asked as any change is.
    assert_eq!(stands(record().by_link("ada", "range", Approved), RANGE), "came otherwise than approved");
    assert_eq!(stands(record(), &RANGE.replace("brushed steel", "black")), "changed since signed");
    let replaced = Word { note: "4790", made: "2027-01-12T15:00:00Z", ..FIRST };
    let replaced = || record().range_came_and_counts(replaced);
    assert_eq!(stands(replaced(), RANGE), "approved");
    replaced().now("approve/came", RANGE).stays_silent();
    replaced().now("order/received", RANGE).stays_silent();
    replaced().now("order/claim", RANGE).stays_silent();
}

#[test]
fn what_is_said_later_of_one_delivery_takes_nothing_away() {
    let damaged = otherwise(Came::Damaged, Kept::SetAside);
    let later = Word { by: "Lorn Tazewick", made: "2027-01-12T16:00:00Z", ..FIRST };
    let both = || approved().range_came_and_counts(damaged).range_came_and_counts(later);
    both()
        .now("order/received", RANGE)
        .finds(
            "of delivery `4711` Teo Varrick says that `Range` came damaged (finish: black), and Lorn Tazewick says \
             as approved",
        )
        .weighs("query");
    both().now("order/claim", RANGE).finds_one();
    let on = "2027-01-12".parse().unwrap();
    let back = TakenBack { response: digest(damaged), by: "Ines Tarrow".into(), note: None, on };
    let settled = || both().fact(Fact::TakenBack(back.clone()));
    settled().now("order/received", RANGE).stays_silent();
    settled().now("order/claim", RANGE).stays_silent();
}

#[test]
fn what_came_before_it_changed_was_not_received_as_it_is_approved_now() {
    approved()
        .range_came_and_counts(FIRST)
        .now("order/received", &RANGE.replace("brushed steel", "black"))
        .finds("`Range` was received on 12 Jan 2027 as it was approved then, and it is another now");
    // What it costs and why it was chosen come in no carton.
    approved()
        .range_came_and_counts(FIRST)
        .now("order/received", &format!("{RANGE}\nwhy: It fits the wall"))
        .stays_silent();
}

/// No term is known that a supplier did not give: the day is asked for, never made up.
#[test]
fn a_claim_has_the_last_day_that_the_supplier_gives_and_no_other() {
    let damaged = otherwise(Came::Damaged, Kept::SetAside);
    let record = || approved().range_came(damaged);
    let came = "`Range` came damaged (finish: black) on 12 Jan 2027";
    let unknown = format!("{came}, and until when that can be claimed is not known");
    record().now("order/claim", RANGE).finds(&unknown).weighs("query");
    let terms = |words: &str| format!("suppliers: {{Oren: {{claim within: {words}}}}}");
    let by = |last: &str| format!("{came}, and must be claimed by {last}");
    // 12 January 2027 is a Tuesday.
    for (within, last) in [("5 working days", "19 Jan 2027"), ("1 week", "19 Jan 2027"), ("3-5 days", "15 Jan 2027")] {
        record().now("order/claim", RANGE).book(&terms(within)).finds(&by(last));
    }
    let passed = format!("{came}, and the last day to claim it, 14 Jan 2027, has passed");
    record().now("order/claim", RANGE).book(&terms("2 days")).finds(&passed);
    let own = RANGE.replace("2027-01-11}", "2027-01-11, claim within: 10 days}");
    record().now("order/claim", &own).book(&terms("2 days")).finds(&by("22 Jan 2027"));
    let claimed = RANGE.replace("2027-01-11}", "2027-01-11, claimed on: 2027-01-13}");
    record().now("order/claim", &claimed).stays_silent();
    approved().range_came_and_counts(FIRST).now("order/claim", RANGE).stays_silent();
}

#[test]
fn a_delivery_that_nobody_confirmed_is_told() {
    approved()
        .range_came(FIRST)
        .now("approve/delivery", RANGE)
        .finds("1 item of Oren (4711), received by Teo Varrick on 12 Jan 2027, waits to be confirmed");
    approved().range_came_and_counts(FIRST).now("approve/delivery", RANGE).stays_silent();
}

/// The range as a thing of which two are wanted.
fn two() -> String {
    format!("{RANGE}\nquantity: 2")
}

impl Record {
    /// A delivery of which only the number is another, taken and confirmed.
    fn so_many_came(self, note: &'static str, words: &str) -> Self {
        let word = Word { note, ..otherwise(Came::Different, Kept::Taken) };
        let mut record = self.range_came(word);
        let Some(Fact::Received(received)) = record.facts.last_mut() else { panic!() };
        let finish = LineReceived { of: Looked::Finish, came: Came::Approved, words: None };
        let number = LineReceived { of: Looked::Number, came: Came::Different, words: Some(words.into()) };
        received.items[0].lines = vec![finish, number];
        record.confirmed(word)
    }
}

fn two_approved() -> Record {
    issued(BOTH, &two()).by_link("ada", "range", Approved).by_link("sven", "range", Approved)
}

/// Source: trade practice: a consignment may come in parts, and a delivery note short of the order is no substitution.
#[test]
fn a_part_is_waited_for_and_the_rest_makes_it_whole() {
    let pairs = [
        ("1 of 2", "1 of 2"),
        ("one of two came", "the second of two"),
        ("one is missing", "1"),
        ("1, the rest to follow", "the rest"),
        ("only one, the other to follow", "the other one"),
        ("uno de dos", "1 de 2"),
    ];
    for (first, second) in pairs {
        let part = || two_approved().so_many_came("4711", first);
        assert_eq!(stands(part(), &two()), "approved", "{first}");
        part().now("approve/came", &two()).stays_silent();
        part().now("order/received", &two()).finds("`Range` is set on 25 Jan 2027, and 1 of 2 came").weighs("query");
        let whole = || part().so_many_came("4712", second);
        assert_eq!(stands(whole(), &two()), "approved", "{second}");
        whole().now("order/received", &two()).stays_silent();
        whole().now("order/claim", &two()).stays_silent();
    }
}

/// What the words do not surely tell makes nothing whole, and no other thing a part.
#[test]
fn a_number_that_is_not_understood_is_no_part() {
    for words in ["x", "3", "one black", "two of another make", "one of two, scratched", "1 of 3", "not one"] {
        let record = || two_approved().so_many_came("4711", words);
        assert_eq!(stands(record(), &two()), "came otherwise than approved", "{words}");
    }
    let three = two_approved().so_many_came("4711", "1 of 2").so_many_came("4712", "1").so_many_came("4713", "1");
    assert_eq!(stands(three, &two()), "came otherwise than approved", "more came than is wanted");
    // Missing of this delivery, or of all that is wanted: nobody knows.
    let later = two_approved().so_many_came("4711", "1 of 2").so_many_came("4712", "one is missing");
    assert_eq!(stands(later, &two()), "came otherwise than approved", "what is missing of a later delivery");
}
