//! The notice that `about licences` prints names every package that the program is made from, and bears
//! its licences' texts.
//!
//! Where packages change, the first test fails and leaves the notice as it should be in `target/`.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use serde_json::Value;

const NOTICE: &str = "src/cli/about/licences.txt";

#[test]
fn the_notice_is_that_of_the_packages_as_they_are_locked() {
    let made = notice(&packages());
    let kept = std::fs::read_to_string(repository().join(NOTICE)).expect("the notice");
    if made != kept {
        let aside = repository().join("target/licences.txt");
        std::fs::write(&aside, &made).expect("the notice is laid aside");
        panic!("{NOTICE} is not that of the packages: copy target/licences.txt there");
    }
}

#[test]
fn the_notice_has_every_package_with_its_licence_and_the_usual_texts() {
    let printed = super::bookmatch(&["about", "licences"]).exits(0).stdout;
    let packages = packages();
    assert!(packages.len() > 100, "only {} packages", packages.len());
    for package in &packages {
        let line = format!("{} {}: {}\n", package.name, package.version, package.licence);
        assert!(printed.contains(&line), "{line}");
    }
    for words in ["Permission is hereby granted, free of charge", "Apache License", "UNICODE LICENSE V3"] {
        assert!(printed.contains(words), "{words}");
    }
}

/// The folder that holds `Cargo.toml`.
fn repository() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// A package that goes into the program.
struct Package {
    name: String,
    version: String,
    licence: String,
    folder: std::path::PathBuf,
}

/// What goes into the program on this system, by the lock file; neither what only builds it nor what only
/// tests it.
fn packages() -> Vec<Package> {
    let host = format!("{}-unknown-linux-gnu", std::env::consts::ARCH);
    let output = std::process::Command::new(env!("CARGO"))
        .args([
            "metadata",
            "--locked",
            "--offline",
            "--all-features",
            "--format-version",
            "1",
            "--filter-platform",
            &host,
        ])
        .current_dir(repository())
        .output()
        .expect("cargo runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let told: Value = serde_json::from_slice(&output.stdout).expect("JSON");
    let text = |value: &Value| value.as_str().unwrap_or_default().to_string();
    let list = |value: &Value| value.as_array().cloned().unwrap_or_default();
    let nodes: BTreeMap<String, Value> =
        list(&told["resolve"]["nodes"]).into_iter().map(|node| (text(&node["id"]), node)).collect();
    let root = text(&told["resolve"]["root"]);
    let (mut seen, mut open) = (BTreeSet::new(), vec![root.clone()]);
    while let Some(id) = open.pop() {
        if seen.insert(id.clone()) {
            let needed = list(&nodes[&id]["deps"]).into_iter();
            let built_in = needed.filter(|dep| list(&dep["dep_kinds"]).iter().any(|kind| kind["kind"].is_null()));
            open.extend(built_in.map(|dep| text(&dep["pkg"])));
        }
    }
    let made_from = list(&told["packages"]).into_iter().filter(|one| {
        let id = text(&one["id"]);
        id != root && seen.contains(&id)
    });
    let mut packages: Vec<Package> = made_from
        .map(|one| Package {
            name: text(&one["name"]),
            version: text(&one["version"]),
            licence: text(&one["license"]),
            folder: Path::new(&text(&one["manifest_path"])).parent().expect("a folder").to_path_buf(),
        })
        .collect();
    packages.sort_by(|one, two| (&one.name, &one.version).cmp(&(&two.name, &two.version)));
    packages
}

/// The whole notice: each package with its licence, then each text once, with those that bear it.
fn notice(packages: &[Package]) -> String {
    let mut texts: BTreeMap<String, (String, BTreeSet<&str>)> = BTreeMap::new();
    for package in packages {
        for text in texts_of(&package.folder) {
            let same = words_of(&text);
            texts.entry(same).or_insert_with(|| (text, BTreeSet::new())).1.insert(&package.name);
        }
    }
    let mut notice = "bookmatch is made from these packages, each under its own licence.\n\n".to_string();
    for package in packages {
        notice += &format!("{} {}: {}\n", package.name, package.version, package.licence);
    }
    for (text, names) in texts.values() {
        let names: Vec<&str> = names.iter().copied().collect();
        notice += &format!("\n{}\n{}\n\n{}\n", "-".repeat(72), names.join(", "), text.trim());
    }
    notice
}

/// What makes two texts the same: their words, whatever their lines; and of the Apache licence one text is as
/// good as another, since its terms are fixed.
fn words_of(text: &str) -> String {
    let words = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let apache = words.starts_with("Apache License Version 2.0, January 2004") && words.len() < 11_200;
    if apache { "Apache License Version 2.0".to_string() } else { words }
}

/// The texts of the licences that a package brings.
fn texts_of(folder: &Path) -> Vec<String> {
    let mut names: Vec<_> = std::fs::read_dir(folder).expect("a package").map(|one| one.expect("an entry")).collect();
    names.sort_by_key(std::fs::DirEntry::file_name);
    let of_licences = names.into_iter().filter(|one| {
        let name = one.file_name().to_string_lossy().to_lowercase();
        let is = ["license", "licence", "copying", "notice", "unlicense", "copyright"];
        is.iter().any(|start| name.starts_with(start)) && one.path().is_file()
    });
    of_licences.map(|one| String::from_utf8_lossy(&std::fs::read(one.path()).expect("a text")).into_owned()).collect()
}
