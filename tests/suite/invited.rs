//! `invite`, `receive` and `host` as they are run.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};

use crate::issued::IssuedBook;
use crate::project::Project;

/// Every file under a folder that holds a text, in whatever letters' case.
fn holding(folder: &Path, text: &str) -> Vec<String> {
    let text = text.to_lowercase().into_bytes();
    let files =
        walkdir::WalkDir::new(folder).into_iter().map(Result::unwrap).filter(|entry| entry.file_type().is_file());
    let holds = |path: &Path| {
        let bytes = std::fs::read(path).unwrap().to_ascii_lowercase();
        bytes.windows(text.len()).any(|window| window == text)
    };
    files.filter(|entry| holds(entry.path())).map(|entry| entry.path().display().to_string()).collect()
}

#[test]
fn a_key_is_printed_as_a_link_and_stands_in_no_published_file() {
    let project = Project::copy_of("example-project");
    let ran = project.run(["invite", "--address", "https://book.example/client"]).exits(0);
    ran.says("Odile Quillarn: https://book.example/client/sign.html#for=odile&key=");
    let key = std::fs::read_to_string(project.root().join("record/keys/odile.key")).unwrap();
    let out = project.beside("site");
    project.run(["publish", "--today", "2027-01-15", "--out", out.to_str().unwrap()]).exits(0);
    let again =
        project.command(["invite", "--address", "https://book.example/client", "--for", "odile"]).output().unwrap();
    let link = String::from_utf8(again.stdout).unwrap();
    let in_link = link.trim().rsplit_once("&key=").unwrap().1;
    assert_eq!((in_link.len(), link.lines().count()), (43, 1));
    for secret in [key.trim(), in_link] {
        assert_eq!(holding(&out, secret), [""; 0]);
    }
    assert_eq!(holding(&project.root(), key.trim()).len(), 1, "in its own file alone");
    project.run(["invite", "--withdraw", "odile"]).exits(0);
    assert!(!project.root().join("record/keys/odile.key").exists());
}

#[test]
fn a_code_that_holds_a_key_is_not_written_where_it_would_be_published() {
    let project = Project::copy_of("example-project");
    let out = project.beside("site");
    std::fs::create_dir_all(out.join("client")).unwrap();
    std::fs::write(out.join(".bookmatch-manifest.json"), "{}").unwrap();
    let svg = out.join("client/code.svg");
    let arguments = ["invite", "--address", "https://book.example", "--for", "odile", "--svg", svg.to_str().unwrap()];
    project.run(arguments).exits(2).says("would be published");
    assert!(!svg.exists());
}

#[test]
fn pages_are_where_the_server_takes_responses_and_a_link_is_renewed_on_a_day_of_choice() {
    let project = Project::copy_of("example-project");
    let text = std::fs::read_to_string(project.root().join("book.yaml")).unwrap();
    project.run(["invite"]).exits(2).says("`--address https://…/client`");
    let project = project.file("book.yaml", &(text + "responses: {post: \"https://book.example/tallow/responses\"}\n"));
    let link = |arguments: &[&str]| {
        let ran = project.run(arguments).exits(0).says("https://book.example/tallow/client/sign.html#for=odile&key=");
        ran.stdout.trim().rsplit_once("&key=").unwrap().1.to_owned()
    };
    let first = link(&["invite", "--for", "odile", "--today", "2027-01-15"]);
    assert_eq!(link(&["invite", "--for", "odile"]), first, "asked again, the link is the same");
    let renewed = link(&["invite", "--renew", "odile", "--today", "2027-01-16"]);
    assert_ne!(renewed, first);
    project.run(["invite", "--withdraw", "odile", "--today", "2027-01-17"]).exits(0).says("is no longer valid");
    project.run(["invite", "--withdraw", "odile"]).exits(2).says("`odile` has no key");
    let ledger = std::fs::read_to_string(project.root().join("record/ledger.jsonl")).unwrap();
    let days: Vec<String> = ledger
        .lines()
        .filter_map(|line| {
            let fact = serde_json::from_str::<serde_json::Value>(line).unwrap()["fact"].take();
            (fact["who"] == "odile")
                .then(|| format!("{} {}", fact["is"].as_str().unwrap(), fact["on"].as_str().unwrap()))
        })
        .collect();
    let expected = ["invited 2027-01-15", "invited 2027-01-16", "withdrawn 2027-01-17"];
    assert_eq!(days, expected);
}

#[cfg(unix)]
#[test]
fn keys_that_others_can_read_are_told() {
    use std::os::unix::fs::PermissionsExt;
    let project = Project::copy_of("example-project");
    let invite = ["invite", "--address", "https://book.example/client"];
    project.run(invite).exits(0).does_not_say("others on this computer");
    let told = "others on this computer can read `record/keys/odile.key`";
    project.run(["review", "--today", "2027-01-15"]).does_not_say("others on this computer");
    let key = project.root().join("record/keys/odile.key");
    std::fs::set_permissions(key, std::fs::Permissions::from_mode(0o644)).unwrap();
    project.run(["review", "--today", "2027-01-15"]).says(told).says("approve/keys");
    project.run(invite).exits(0).says(told);
    project.run(["host", "--address", "127.0.0.1:0", "--site", "nowhere"]).exits(2).says(told);
}

/// A published folder with a page for the client and one for the office.
fn site(folder: &Path) {
    for (path, text) in [("client/index.html", "<title>Elm Row</title>"), ("office/index.html", "costs")] {
        let place = folder.join(path);
        std::fs::create_dir_all(place.parent().unwrap()).unwrap();
        std::fs::write(place, text).unwrap();
    }
}

fn ask(address: &str, head: &str, body: &[u8]) -> String {
    let mut stream = TcpStream::connect(address).unwrap();
    write!(stream, "{head} HTTP/1.1\r\nhost: {address}\r\nconnection: close\r\ncontent-length: {}\r\n\r\n", body.len())
        .unwrap();
    stream.write_all(body).unwrap();
    let mut told = String::new();
    stream.read_to_string(&mut told).unwrap();
    told
}

#[test]
fn the_same_response_to_the_server_and_as_a_file_is_one_fact_and_the_log_keeps_its_secrets() {
    let book = IssuedBook::new();
    let project = "title: Elm Row\ncurrency: USD\napprovers:\n  - {id: odile, name: Odile Quillarn}\n";
    std::fs::write(book.path().join("book.yaml"), project).unwrap();
    let folder = tempfile::tempdir().unwrap();
    site(folder.path());
    let mut command = Command::new(env!("CARGO_BIN_EXE_bookmatch"));
    command.arg("host").arg(book.path()).args(["--address", "127.0.0.1:0", "--site"]).arg(folder.path());
    let mut server = Served(command.stderr(Stdio::piped()).spawn().unwrap());
    let mut log = BufReader::new(server.0.stderr.take().unwrap());
    let mut said = String::new();
    log.read_line(&mut said).unwrap();
    let address = said.split("http://").nth(1).unwrap().split('/').next().unwrap().to_owned();
    assert!(ask(&address, "GET /client/", b"").ends_with("<title>Elm Row</title>"));
    assert!(ask(&address, "GET /office/", b"").starts_with("HTTP/1.1 404"));
    let mut noted = book.response(1);
    noted["items"][0]["note"] = "the blue door sticks".into();
    let noted = crate::issued::seal(noted, &book.keys[0]);
    assert!(ask(&address, "POST /responses", &noted).ends_with(r#"{"outcome":"recorded","newest issue":1}"#));
    follows_the_book(&book, project, &address);
    let wrong = crate::issued::seal(book.response(2), &book.keys[1]);
    let mut unknown = book.response(3);
    unknown["who"] = "ivo".into();
    let mut other = book.response(4);
    other["book"] = "0".repeat(32).into();
    let answers = [wrong, unknown.to_string().into_bytes(), other.to_string().into_bytes(), b"{}".to_vec()];
    let answers = answers.map(|body| without_date(&ask(&address, "POST /responses", &body)));
    assert!(answers[0].contains("400") && answers.iter().all(|answer| *answer == answers[0]), "{answers:?}");
    Command::new("kill").args(["-INT", &server.0.id().to_string()]).status().unwrap();
    log.read_to_string(&mut said).unwrap();
    assert!(server.0.wait().unwrap().success());
    assert!(said.contains("response 200") && said.contains("response 400") && !said.contains("blue door"), "{said}");
    assert!(!said.contains(&book.keys[0].in_link()));
    let file = folder.path().join("response.json");
    std::fs::write(&file, &noted).unwrap();
    let ran = Command::new(env!("CARGO_BIN_EXE_bookmatch"))
        .args(["receive", book.path().to_str().unwrap(), file.to_str().unwrap()])
        .output()
        .unwrap();
    assert!(String::from_utf8_lossy(&ran.stdout).contains("already recorded"), "{ran:?}");
    assert_eq!(book.facts().len(), 2);
}

/// Somebody is named after the server was started, and answers on the page of the issue that it serves.
fn follows_the_book(book: &IssuedBook, project: &str, address: &str) {
    let mut late = book.response(9);
    late["who"] = "samir".into();
    let late = crate::issued::seal(late, &book.keys[1]);
    assert!(ask(address, "POST /responses", &late).contains("400"));
    std::fs::write(book.path().join("book.yaml"), format!("{project}  - {{id: samir, name: Samir Ostrevy}}\n"))
        .unwrap();
    assert!(ask(address, "POST /responses", &late).ends_with(r#"{"outcome":"recorded","newest issue":1}"#));
    // While the book can't be read it is taken as it was.
    std::fs::write(book.path().join("book.yaml"), "title: [").unwrap();
    assert!(ask(address, "POST /responses", &late).ends_with(r#"{"outcome":"already recorded","newest issue":1}"#));
    std::fs::write(book.path().join("book.yaml"), project).unwrap();
}

/// A server at work; it ends with the test.
struct Served(Child);

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

fn without_date(answer: &str) -> String {
    answer.lines().filter(|line| !line.to_lowercase().starts_with("date:")).collect::<Vec<_>>().join("\n")
}
