//! Marks and the ledger computed anew by another program, and pictures' digests by the system's own.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

use crate::project::{Project, Ran};

fn issued(project: Project) -> Project {
    project.run(["issue", "--for", "approval", "--today", "2027-01-15"]).exits(0).says("issue 1 for approval");
    project
}

fn recomputed(project: &Project) -> String {
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/suite/marks/recompute.py");
    Ran::of(Command::new("python3").arg(script).arg(project.root().join("record"))).exits(0).stdout
}

/// The digests of all files of a folder, pictures among them, by coreutils' `sha256sum`.
fn sums(folder: &Path) -> BTreeSet<String> {
    let files = walkdir::WalkDir::new(folder).into_iter().map(|entry| entry.unwrap().into_path());
    let files: Vec<_> = files.filter(|path| path.is_file()).collect();
    let ran = Ran::of(Command::new("sha256sum").args(files)).exits(0);
    ran.stdout.lines().map(|line| line[..64].to_string()).collect()
}

/// Source: Python's `json` and `hashlib`, and coreutils' `sha256sum`.
#[test]
fn every_mark_of_the_example_is_what_another_program_makes_of_what_is_printed() {
    let project = issued(Project::copy_of("example-project"));
    let told = recomputed(&project);
    let marks: Vec<&str> = told.lines().filter(|line| line.starts_with("mark ")).collect();
    assert!(marks.len() > 40 && marks.iter().all(|line| line.ends_with(" holds")), "{told}");
    assert!(told.ends_with("issues 1\n"), "{told}");
    let pictures: BTreeSet<String> =
        told.lines().filter_map(|line| line.strip_prefix("picture ")).map(str::to_string).collect();
    assert!(pictures.len() > 20 && pictures.is_subset(&sums(&project.root())), "{pictures:?}");
}

#[test]
fn texts_that_are_hard_to_write_are_marked_as_another_program_does() {
    let name = "Rug \u{1F600} \u{FB33} é \u{2028} \\\"";
    let quoted = name.replace('\\', "\\\\").replace('"', "\\\"");
    let project = issued(
        Project::new()
            .file("book.yaml", "title: Small\nclient: Nobody\nunits: metric\ncurrency: JPY\n")
            .file("rooms/kitchen/room.yaml", "name: Kitchen\n")
            .photo("rooms/kitchen/photos/rug.jpg")
            .file(
                "rooms/kitchen/rug.yaml",
                &format!(
                    "selection: \"{quoted}\"\nkind: rug\nphotos: [rug.jpg]\nface size: 1 m x 2 m\nmaker: Zelmor\nmodel: \"7e10\"\nfinish: brass\n\
                     price: 12000\nquantity: 2\nsize: {{width: 12 3/16\", height: 300 to 310 mm}}\nwhy: \"a\\tb\\nc\"\n\
                     supplier: Ardwin\nlead time: 2 weeks\n"
                ),
            ),
    );
    let told = recomputed(&project);
    assert_eq!(told.lines().filter(|line| line.ends_with(" holds")).count(), 1, "{told}");
    let issue = std::fs::read_to_string(project.root().join("record/issues/0001.json")).unwrap();
    for part in ["\"309562500\"", "\"12000 JPY\"", "\"24000 JPY\"", "😀"] {
        assert!(issue.contains(part), "{part} is not in {issue}");
    }
}

#[test]
fn the_page_of_the_mark_tells_every_field_that_is_in_it() {
    let project = issued(Project::copy_of("example-project"));
    let issue: serde_json::Value =
        serde_json::from_slice(&std::fs::read(project.root().join("record/issues/0001.json")).unwrap()).unwrap();
    let mut keys = BTreeSet::new();
    for item in issue["items"].as_array().unwrap() {
        keys_of(&item["content"], &mut keys);
    }
    let page = project.run(["explain", "mark"]).exits(0).stdout;
    // A name may break at the end of a line.
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for key in keys {
        // Lengths, amounts and weights are told by an example of their own.
        let is_told = page.contains(&format!("`{key}`")) || page.contains(&format!("\"{key}\": "));
        assert!(is_told, "`{key}` is not on the page:\n{page}");
    }
}

/// The keys of all that stands in a content; those of lengths and amounts with them.
fn keys_of(value: &serde_json::Value, keys: &mut BTreeSet<String>) {
    match value {
        serde_json::Value::Object(fields) => fields.iter().for_each(|(key, value)| {
            keys.insert(key.clone());
            keys_of(value, keys);
        }),
        serde_json::Value::Array(values) => values.iter().for_each(|value| keys_of(value, keys)),
        _ => {}
    }
}
