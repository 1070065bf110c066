//! `invite` as it is run: links, and the keys in them.

use std::path::Path;

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
    let project = Project::of_the_example();
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
