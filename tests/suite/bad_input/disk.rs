//! Disks that are full or read-only: real ones, mounted in a namespace that goes with the shell.

use std::fs;
use std::path::Path;
use std::process::Command;

use super::{Published, RANGE, TODAY};
use crate::project::{Ran, tree};

/// Runs a script in which `$program`, `$site` (where the disk may be mounted), `$kept` and `$tmp` have meaning.
/// Mounting needs no rights outside the namespace; where the system forbids even that, the test fails.
fn on_a_small_disk(published: &Published, kept: &Path, script: &str) -> Ran {
    let mut command = Command::new("unshare");
    command.args(["--map-root-user", "--mount", "bash", "-ec", script]);
    command.env("program", env!("CARGO_BIN_EXE_bookmatch")).env("today", TODAY.join(" "));
    command.env("site", &published.out).env("kept", kept).env("tmp", published.project.beside("tmp"));
    Ran::of(command.current_dir(published.project.root()))
}

/// Publishes to a small disk, does `spoil`, publishes a changed book, and keeps what then stands on the disk.
fn spoiled(spoil: &str, mend: &str) -> [String; 2] {
    let published = Published::new();
    let [before, after, mended] = ["before", "after", "mended"].map(|name| published.project.beside(name));
    let script = format!(
        r#"mount -t tmpfs -o size=8m none "$site"
        $program publish --out "$site" $today
        {spoil}
        cp -a "$site" "$kept/before"
        sed -i s/2380.00/2381.00/ {RANGE}
        status=0; $program publish --out "$site" $today || status=$?
        cp -a "$site" "$kept/after"
        {mend}
        $program publish --out "$site" $today
        cp -a "$site" "$kept/mended"
        exit $status"#
    );
    let kept = before.parent().unwrap();
    let ran = on_a_small_disk(&published, kept, &script).exits(2).does_not_say("panicked");
    assert!(tree(&before).files().count() > 50);
    tree(&before).same_as(&tree(&after));
    // Once there is room, the same folder takes the new output whole.
    published.publish(&[]).exits(0);
    tree(&published.out).same_as(&tree(&mended).without("filler"));
    [ran.stdout, ran.stderr]
}

#[test]
fn a_full_disk() {
    // The filler is a file of the user's that stands in the published folder.
    let [_, said] = spoiled(r#"cat /dev/zero > "$site/filler" || true"#, r#"rm "$site/filler""#);
    assert!(said.contains("no room is left on the disk; make room on the disk, or publish to another one"), "{said}");
}

#[test]
fn a_disk_that_fills_up_half_way() {
    let spoil = r#"head -c $(( $(df --output=avail -B1 "$site" | tail -1) - 60000 )) /dev/zero > "$site/filler""#;
    let [_, said] = spoiled(spoil, r#"rm "$site/filler""#);
    assert!(said.contains("no room is left on the disk; make room on the disk, or publish to another one"), "{said}");
}

#[test]
fn a_read_only_disk() {
    let [_, said] = spoiled(r#"mount -o remount,ro "$site""#, r#"mount -o remount,rw "$site""#);
    assert!(said.contains("the disk is read-only; publish to a folder that you may write to"), "{said}");
}

/// No room for the book's own kept pictures, nor for temporary ones.
#[test]
fn no_room_for_prepared_pictures() {
    let published = Published::new();
    fs::create_dir(published.project.beside("tmp")).unwrap();
    let before = published.now();
    let script = r#"
        rm -r .bookmatch; mkdir .bookmatch
        for place in .bookmatch "$tmp"; do
            mount -t tmpfs -o size=64k none $place
            cat /dev/zero > $place/filler || true
        done
        TMPDIR=$tmp $program publish --out "$site" $today"#;
    let ran = on_a_small_disk(&published, published.out.as_path(), script);
    assert!(ran.stderr.contains("free some space") || ran.stderr.contains("no room is left"), "{}", ran.stderr);
    ran.exits(1).does_not_say("panicked").does_not_say("published to");
    before.stands(&published);
}

/// The kernel refuses every file past 4 kB (`ulimit -f`), wherever it is: as any user, on any system.
#[test]
fn a_limit_on_the_size_of_files() {
    let published = Published::new().replacing(RANGE, "2380.00", "2381.00");
    let before = published.now();
    let script = r#"trap '' XFSZ; ulimit -f 4; exec "$0" publish --out "$@""#;
    let mut command = Command::new("bash");
    command.args(["-c", script, env!("CARGO_BIN_EXE_bookmatch")]).arg(&published.out).args(TODAY);
    let ran = Ran::of(command.current_dir(published.project.root()));
    ran.exits(2).says("cannot write `").does_not_say("panicked").does_not_say("published to");
    before.stands(&published);
}
