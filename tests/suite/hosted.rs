//! `host` as it is run: one book and several, what its log tells, and whom it counts.

mod at_work;
mod proxies;
mod several;

use std::process::Command;

use crate::issued::{IssuedBook, seal};
use at_work::{Host, PROJECT, ask, ask_from, published, without_date};

#[test]
fn the_same_response_to_the_server_and_as_a_file_is_one_fact() {
    let book = IssuedBook::new();
    let folder = published(&book, PROJECT);
    let host = Host::start(&[book.path().to_str().unwrap(), "--site", folder.path().to_str().unwrap()]);
    assert!(ask(&host.address, "GET /client/", b"").ends_with("<title>Elm Row</title>"));
    assert!(ask(&host.address, "GET /office/", b"").starts_with("HTTP/1.1 404"));
    let sealed = book.sealed(1);
    assert!(ask(&host.address, "POST /responses", &sealed).ends_with(r#"{"outcome":"recorded","newest issue":1}"#));
    follows_the_book(&book, &host.address);
    host.ends();
    let file = folder.path().join("response.json");
    std::fs::write(&file, &sealed).unwrap();
    let ran = Command::new(env!("CARGO_BIN_EXE_bookmatch"))
        .args(["receive", book.path().to_str().unwrap(), file.to_str().unwrap()])
        .output()
        .unwrap();
    assert!(String::from_utf8_lossy(&ran.stdout).contains("already recorded"), "{ran:?}");
    assert_eq!(book.facts().len(), 2);
}

/// Somebody is named after the server was started, and answers on the page of the issue that it serves.
fn follows_the_book(book: &IssuedBook, address: &str) {
    let mut late = book.response(9);
    late["who"] = "samir".into();
    let late = seal(late, &book.keys[1]);
    assert!(ask(address, "POST /responses", &late).contains("400"));
    let file = book.path().join("book.yaml");
    std::fs::write(&file, format!("{PROJECT}  - {{id: samir, name: Samir Ostrevy}}\n")).unwrap();
    assert!(ask(address, "POST /responses", &late).ends_with(r#"{"outcome":"recorded","newest issue":1}"#));
    // While the book can't be read it is taken as it was.
    std::fs::write(&file, "title: [").unwrap();
    assert!(ask(address, "POST /responses", &late).ends_with(r#"{"outcome":"already recorded","newest issue":1}"#));
    std::fs::write(&file, PROJECT).unwrap();
}

/// What is refused, by the body that is sent, and how the log words it. Whoever sends it hears one answer.
fn refused(book: &IssuedBook) -> Vec<(Vec<u8>, &'static str)> {
    let of = |change: &dyn Fn(&mut serde_json::Value)| {
        let mut response = book.response(77);
        change(&mut response);
        response
    };
    let unknown = of(&|response| response["who"] = "the-neighbour".into());
    let other = of(&|response| response["book"] = "0".repeat(32).into());
    let twice = of(&|response| response["items"][1] = response["items"][0].clone());
    let odd = of(&|response| response["made"] = "secret-words".into());
    let ahead = of(&|response| response["ledger"] = serde_json::json!({"line": 9, "sha256": "ab".repeat(32)}));
    let mut all = vec![
        (seal(book.response(2), &book.keys[1]), "it was not made with the key of `odile`"),
        (b"{\"format\":\"secret-words\"}".to_vec(), "it is not of the form of a response"),
        (b"secret-words".to_vec(), "it is not of the form of a response"),
    ];
    for (response, why) in [
        (unknown, "it names nobody who approves in this book"),
        (other, "it is of another book, or nothing of this one was issued"),
        (twice, "it speaks of one item twice"),
        (odd, "it is not of the form of a response"),
        (ahead, "the page that it was made on states line 9 of the ledger"),
    ] {
        all.push((response.to_string().into_bytes(), why));
    }
    all
}

#[test]
fn the_log_tells_why_a_response_was_not_recorded_and_keeps_every_secret() {
    let book = IssuedBook::new();
    let folder = published(&book, PROJECT);
    let host = Host::start(&[book.path().to_str().unwrap(), "--site", folder.path().to_str().unwrap()]);
    let mut noted = book.response(1);
    noted["items"][0]["note"] = "the blue door sticks".into();
    noted["signed"]["drawing"] = "M17 23L4711 4712".into();
    let sealed = seal(noted, &book.keys[0]);
    assert!(ask(&host.address, "POST /responses", &sealed).starts_with("HTTP/1.1 200"));
    let refused = refused(&book);
    // Ten of one address are told one by one: each comes from an address of its own.
    let mut answers = Vec::new();
    for (at, (body, _)) in refused.iter().enumerate() {
        let from = [127, 0, 1, u8::try_from(at).unwrap() + 1];
        answers.push(without_date(&ask_from(from, &host.address, "POST /responses", body)));
    }
    assert!(answers[0].contains("400") && answers.iter().all(|answer| *answer == answers[0]), "{answers:?}");
    book.issue(2, &[("range", "red"), ("sink", "grey")]);
    assert!(ask(&host.address, "POST /responses", &book.sealed(3)).contains(" 409 "));
    let log = host.ends();
    for (_, why) in &refused {
        assert!(log.contains(&format!("response 400, not recorded: {why}")), "{why}: {log}");
    }
    assert!(
        log.contains("127.0.0.1 response 409, not recorded: nothing that it decides is what is issued now"),
        "{log}"
    );
    let mac = String::from_utf8_lossy(&sealed).split("\"mac\":\"").nth(1).unwrap()[..64].to_owned();
    let hex = std::fs::read_to_string(book.path().join("record/keys/odile.key")).unwrap();
    let keys = book.keys.each_ref().map(|key| key.in_link());
    let nonce = format!("{:032x}", 77);
    let secrets = [hex.trim(), &keys[0], &keys[1], &mac, &nonce, "M17 23", "M1 2L3 4", "blue door", "secret-words"];
    for secret in secrets.into_iter().chain(["the-neighbour", "I have seen", &"ab".repeat(32)]) {
        assert!(!log.to_lowercase().contains(&secret.to_lowercase()), "{secret} is in the log:\n{log}");
    }
}

#[test]
fn a_link_that_was_withdrawn_answers_no_more_and_what_it_answered_stays() {
    let book = IssuedBook::new();
    let folder = published(&book, PROJECT);
    let host = Host::start(&[book.path().to_str().unwrap(), "--site", folder.path().to_str().unwrap()]);
    assert!(ask(&host.address, "POST /responses", &book.sealed(1)).starts_with("HTTP/1.1 200"));
    let invite = |arguments: &[&str]| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_bookmatch"));
        let ran = command.arg("invite").arg(book.path()).args(arguments).output().unwrap();
        assert!(ran.status.success(), "{ran:?}");
        String::from_utf8(ran.stdout).unwrap()
    };
    let address = ["--address", "https://book.example/client"];
    let again = invite(&[&address[..], &["--for", "odile"]].concat());
    assert!(again.contains(&book.keys[0].in_link()), "sent again, the link is the same");
    invite(&["--withdraw", "odile"]);
    let stranger = without_date(&ask(&host.address, "POST /responses", b"{}"));
    let mut by_nobody = book.response(5);
    by_nobody["mac"] = "0".repeat(64).into();
    for body in [book.sealed(2), book.sealed(1), by_nobody.to_string().into_bytes()] {
        assert_eq!(without_date(&ask(&host.address, "POST /responses", &body)), stranger);
    }
    let renewed = invite(&[&address[..], &["--for", "odile"]].concat());
    assert!(!renewed.contains(&book.keys[0].in_link()));
    assert_eq!(without_date(&ask(&host.address, "POST /responses", &book.sealed(3))), stranger, "the old key");
    assert_eq!(book.facts().len(), 1, "what was answered stays");
    assert!(host.ends().contains("it was not made with the key of `odile`"));
}

/// Only what our own proxy says counts, and only from its address.
#[cfg(target_os = "linux")]
#[test]
fn a_sender_is_counted_by_what_our_own_proxy_says_and_by_nothing_that_a_stranger_wrote() {
    let book = IssuedBook::new();
    let folder = published(&book, PROJECT);
    let site = ["--site", folder.path().to_str().unwrap(), "--behind-proxy", "127.0.0.9,127.0.2.0/24"];
    let host = Host::start(&[&[book.path().to_str().unwrap()], &site[..]].concat());
    let send = |from: [u8; 4], says: &str| {
        let answer = ask_from(from, &host.address, &format!("POST /responses HTTP/1.1\r\n{says}\r\nx-a:"), b"{}");
        answer.split(' ').nth(1).unwrap().to_owned()
    };
    // Twenty at once are let through of one sender; a stranger who writes another sender into each is one.
    let forged: Vec<String> =
        (0..24).map(|n| send([127, 0, 0, 3], &format!("x-forwarded-for: 198.51.100.{n}"))).collect();
    assert!(forged.iter().filter(|status| *status == "429").count() >= 3, "{forged:?}");
    let by_proxy = |n: u32| send([127, 0, 0, 9], &format!("x-forwarded-for: 198.51.100.{n}, 203.0.113.7, 127.0.2.44"));
    let one: Vec<String> = (0..24).map(by_proxy).collect();
    assert!(one.iter().filter(|status| *status == "429").count() >= 3, "{one:?}");
    assert_eq!(send([127, 0, 0, 9], "x-forwarded-for: 203.0.113.8"), "400", "another sender has its own");
    let log = host.ends();
    assert!(log.contains(" 127.0.0.3 response 400") && log.contains(" 203.0.113.7 response 400"), "{log}");
    assert!(!log.contains("198.51.100."), "{log}");
}
