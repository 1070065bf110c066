//! The metadata that a general packager makes a Debian package of: its tree is put together as it says, packed and
//! unpacked by Debian's own tool, and tried.

use std::fs;
use std::path::Path;
use std::process::Command;

use super::{bookmatch, root};

/// The group of `Cargo.toml` for Debian's packagers.
fn metadata() -> String {
    let manifest = fs::read_to_string(root().join("Cargo.toml")).expect("the manifest");
    let (_, group) = manifest.split_once("[package.metadata.deb]\n").expect("metadata for Debian");
    group.split("\n[").next().expect("a group").to_owned()
}

/// A field of a group in TOML that stands on one line.
fn field(group: &str, name: &str) -> Option<String> {
    let line = group.lines().find_map(|line| line.strip_prefix(&format!("{name} = ")))?;
    Some(line.trim_matches('"').to_owned())
}

/// Each asset: where it is taken from, where it goes, with which rights.
fn assets(group: &str) -> Vec<[String; 3]> {
    let (_, list) = group.split_once("assets = [\n").expect("assets");
    let lines = list.lines().take_while(|line| *line != "]");
    let parts = |line: &str| line.split('"').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>();
    lines.map(|line| parts(line).try_into().expect("from, to, rights")).collect()
}

/// What the README says is printed into `target/about/`, and what else a package takes.
fn bytes(from: &str) -> Vec<u8> {
    let about = |what: &[&str]| bookmatch(&[&["about"], what].concat()).exits(0).stdout.into_bytes();
    match from {
        "target/release/bookmatch" => fs::read(env!("CARGO_BIN_EXE_bookmatch")).expect("the program"),
        "target/about/bookmatch.1" => about(&["manual"]),
        "target/about/bookmatch.bash" => about(&["completions", "bash"]),
        "target/about/_bookmatch" => about(&["completions", "zsh"]),
        "target/about/bookmatch.fish" => about(&["completions", "fish"]),
        "target/about/licences.txt" => about(&["licences"]),
        file => fs::read(root().join(file)).unwrap_or_else(|_| panic!("`{file}` is not there and nothing prints it")),
    }
}

fn dpkg_deb(arguments: &[&str]) -> String {
    let ran = Command::new("dpkg-deb").args(arguments).output().expect("dpkg-deb, which every Debian has");
    assert!(ran.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&ran.stderr));
    String::from_utf8(ran.stdout).expect("text")
}

/// A packager writes the copyright file of Debian Policy 12.5 from `copyright`; without authors there is no other.
#[test]
fn a_debian_package_is_made_of_the_metadata_alone() {
    let group = metadata();
    let manifest = fs::read_to_string(root().join("Cargo.toml")).expect("the manifest");
    let given = |name: &str| field(&group, name).unwrap_or_else(|| panic!("no `{name}` for Debian"));
    assert!(given("copyright").contains("the bookmatch authors"), "as LICENSE-MIT has it");
    let aside = tempfile::tempdir().expect("a folder");
    let tree = aside.path().join("tree");
    for [from, to, rights] in assets(&group) {
        let name = from.rsplit('/').next().expect("a name");
        let place = if to.ends_with('/') { tree.join(&to).join(name) } else { tree.join(&to) };
        fs::create_dir_all(place.parent().expect("a folder")).expect("a folder");
        fs::write(&place, bytes(&from)).expect("a file");
        let rights = u32::from_str_radix(&rights, 8).expect("rights");
        fs::set_permissions(&place, std::os::unix::fs::PermissionsExt::from_mode(rights)).expect("rights");
    }
    let [maintainer, section, priority] = ["maintainer", "section", "priority"].map(given);
    let [version, summary] =
        ["version", "description"].map(|name| field(&manifest, name).expect("a field of the package"));
    let control = format!(
        "Package: bookmatch\nVersion: {version}\nArchitecture: all\nSection: {section}\nPriority: {priority}\n\
         Maintainer: {maintainer}\nDescription: {summary}\n"
    );
    fs::create_dir(tree.join("DEBIAN")).expect("a folder");
    fs::write(tree.join("DEBIAN/control"), control).expect("a file");
    let package = aside.path().join("bookmatch.deb");
    let text = |path: &Path| path.to_str().expect("UTF-8").to_owned();
    dpkg_deb(&["-Znone", "--root-owner-group", "--build", &text(&tree), &text(&package)]);
    let held = dpkg_deb(&["--contents", &text(&package)]);
    for path in [
        "./usr/bin/bookmatch",
        "./usr/share/man/man1/bookmatch.1",
        "./usr/share/bash-completion/completions/bookmatch",
        "./usr/share/zsh/vendor-completions/_bookmatch",
        "./usr/share/fish/vendor_completions.d/bookmatch.fish",
        "./usr/share/doc/bookmatch/licences.txt",
    ] {
        assert!(held.lines().any(|line| line.ends_with(path)), "{path} is not in\n{held}");
    }
    let unpacked = aside.path().join("unpacked");
    dpkg_deb(&["--extract", &text(&package), &text(&unpacked)]);
    let ran = Command::new(unpacked.join("usr/bin/bookmatch")).arg("--version").output().expect("it runs");
    assert_eq!(String::from_utf8_lossy(&ran.stdout).trim(), format!("bookmatch {version}"));
}
