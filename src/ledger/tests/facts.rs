//! Facts as they are written.

use serde_json::{Value, json};

use super::*;

#[test]
fn facts_are_read_as_they_were_written() {
    let chain = Chain::read(&lines().concat());
    assert!(chain.is_sound() && chain.tail == LedgerEnd::Whole, "{:?}", chain.faults);
    assert_eq!(chain.lines.iter().map(|line| line.fact.clone()).collect::<Vec<_>>(), facts());
    assert_eq!(chain.opening().unwrap().title, "Alder Court");
}

/// The digest is computed here from the words of the format: the canonical JSON without `sha256`.
#[test]
fn a_line_bears_the_digest_of_itself_without_it_and_of_the_line_before() {
    let mut before = "0".repeat(64);
    for (number, line) in (1..).zip(lines()) {
        let text = String::from_utf8(line).unwrap();
        let value: Value = serde_json::from_str(&text).unwrap();
        let own = format!(",\"sha256\":{}}}\n", value["sha256"]);
        let undigested = format!("{}}}", text.strip_suffix(&own).expect("`sha256` is the last key"));
        assert_eq!(value["sha256"], json!(Digest::of(undigested.as_bytes()).to_string()));
        assert_eq!((&value["before"], &value["line"]), (&json!(before), &json!(number)));
        before = value["sha256"].as_str().unwrap().to_owned();
    }
}

#[test]
fn facts_use_the_words_of_the_format() {
    let fact = |at: usize| serde_json::to_value(&facts()[at]).unwrap();
    assert_eq!(fact(1)["for"], "approval");
    assert_eq!((&fact(3)["is"], &fact(3)["by"]), (&json!("decided"), &json!("private link")));
    assert_eq!(fact(3)["items"][0]["decision"], "approved as noted");
    assert_eq!(fact(3).get("how"), None, "what is not said is not written");
    assert_eq!(fact(5)["is"], "condition met");
    assert_eq!(fact(8)["is"], "not theirs");
    let came = json!({"of": "finish", "came": "different", "words": "“black”"});
    assert_eq!((&fact(10)["is"], &fact(10)["items"][0]["lines"][1]), (&json!("received"), &came));
    assert_eq!((&fact(10)["items"][0]["kept"], &fact(10)["delivery"]["note"]), (&json!("set aside"), &json!("4711")));
    assert_eq!((&fact(11)["is"], &fact(12)["is"]), (&json!("sent"), &json!("acknowledged")));
    let reading = json!({"room": "kitchen", "opening": "range", "what": "width", "at": "floor", "length": "762000000"});
    assert_eq!(fact(6)["readings"][0], reading);
}

#[test]
fn a_fact_with_a_field_or_a_length_that_nobody_knows_is_not_read() {
    let mut opened = serde_json::to_value(&facts()[0]).unwrap();
    opened["more"] = json!("x");
    assert!(serde_json::from_value::<Fact>(opened).is_err());
    for length in ["1.5", "0762", "+1", "", "99999999999999999999"] {
        let mut measured = serde_json::to_value(&facts()[6]).unwrap();
        measured["readings"][0]["length"] = json!(length);
        assert!(serde_json::from_value::<Fact>(measured).is_err(), "{length}");
    }
}
