//! What is built to publish is not built again to test: a package has the same features for both.

use std::collections::BTreeSet;
use std::process::Command;

use super::{none, repository};

/// Each package with its features, as built for these edges.
fn built(edges: &str) -> BTreeSet<String> {
    let output = Command::new(env!("CARGO"))
        .args(["tree", "--locked", "--offline", "--all-features", "--prefix", "none"])
        .args(["--format", "{p} {f}", "--edges", edges])
        .current_dir(repository())
        .output()
        .expect("cargo runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let lines = String::from_utf8(output.stdout).expect("UTF-8");
    lines.lines().map(|line| line.trim_end_matches(" (*)").trim_end().to_string()).collect()
}

#[test]
fn tests_ask_no_library_of_the_program_for_other_features() {
    let program = built("normal,build");
    assert!(program.len() > 100, "{} packages", program.len());
    let package = |line: &str| line.split(' ').take(2).collect::<Vec<_>>().join(" ");
    let names: BTreeSet<String> = program.iter().map(|line| package(line)).collect();
    let again = built("normal,build,dev").into_iter().filter(|line| !program.contains(line));
    none(again.filter(|line| names.contains(&package(line))).collect());
}
