//! Ctrl-C and `kill -9` at many moments: what is published is the old or the new, whole.

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use super::{Published, RANGE, TODAY};
use crate::project::{Project, Ran, Tree, tree};

/// What publishing keeps in the folder while it is under way.
const OWN: [&str; 3] = [".bookmatch-staging", ".bookmatch-stand-in", ".bookmatch-stood-in"];

/// A book that is one of two editions, with the site of each, and how long it takes to publish.
struct Editions {
    published: Published,
    sites: [Tree; 2],
    takes: Duration,
}

impl Editions {
    /// The second has another price, one file more, and lacks one of the first.
    fn new() -> Self {
        let editions = Self {
            published: Published::new(),
            sites: [tree(Path::new("")), tree(Path::new(""))],
            takes: Duration::ZERO,
        };
        let mut sites = Vec::new();
        let mut takes = Duration::ZERO;
        for edition in 0..2 {
            editions.turn_to(edition);
            let out = editions.published.project.beside(&format!("whole-{edition}"));
            editions.published.publish_to(&out, &[]).exits(0);
            let begun = Instant::now();
            editions.published.publish_to(&out, &[]).exits(0).says("0 new, 0 changed");
            takes = takes.max(begun.elapsed());
            sites.push(tree(&out));
        }
        let sites: [Tree; 2] = sites.try_into().expect("two editions");
        let between = sites[0].differences(&sites[1]);
        for kind in ["new ", "changed ", "gone "] {
            assert!(between.iter().any(|line| line.starts_with(kind)), "{kind}: {between:?}");
        }
        editions.turn_to(0);
        Self { sites, takes, ..editions }
    }

    fn turn_to(&self, edition: usize) {
        let root = self.published.project.root();
        for (path, words) in [
            (RANGE, ["price: 2380.00", "price: 2381.00"]),
            // A page's address is its selection's name, so that each edition has a page that the other lacks.
            ("rooms/bath/choices.yaml", ["selection: Ceiling light", "selection: Ceiling lamp"]),
        ] {
            let text = fs::read_to_string(root.join(path)).unwrap();
            fs::write(root.join(path), text.replace(words[1 - edition], words[edition])).unwrap();
        }
    }

    /// Pictures and sheets are made anew, so that there is more to stop. A run that was stopped early left none.
    fn forget_pictures(&self) {
        let cache = self.published.project.root().join(".bookmatch");
        if cache.exists() {
            fs::remove_dir_all(cache).unwrap();
        }
    }

    /// Starts a run and ends it with a signal after a while; tells how it ended.
    fn publish_and_signal(&self, signal: &str, after: Duration) -> Ran {
        let out = self.published.out.to_str().unwrap();
        let mut command = self.published.project.command(["publish", "--out", out].iter().chain(&TODAY));
        let child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        std::thread::sleep(after);
        let sent = Command::new("kill").args([&format!("-{signal}"), &child.id().to_string()]).status();
        assert!(sent.unwrap().success(), "the child is there until it is waited for");
        Ran::from_output(format!("publish, {signal} after {after:?}"), child.wait_with_output().unwrap())
    }

    fn moments(&self, count: u32) -> impl Iterator<Item = Duration> {
        let takes = self.takes;
        (0..count).map(move |moment| takes * 5 / 4 * moment / count)
    }
}

#[test]
fn ctrl_c_at_any_moment_leaves_the_old_or_the_new_whole() {
    let editions = Editions::new();
    let [mut stopped, mut stands] = [0, 0];
    for (round, moment) in editions.moments(30).enumerate() {
        editions.turn_to(1 - stands);
        if round % 3 == 0 {
            editions.forget_pictures();
        }
        let book = editions.published.now().book;
        let ran = editions.publish_and_signal("INT", moment).does_not_say("panicked");
        book.same_as(&editions.published.now().book);
        let now = tree(&editions.published.out);
        if ran.stderr.contains("published to") {
            stands = 1 - stands;
            ran.exits(0);
        } else if ran.stderr.contains("stopped before") {
            stopped += 1;
            ran.exits(2).says("publish again; what was published before is untouched");
        }
        editions.sites[stands].same_as(&now);
    }
    assert!(stopped > 3, "only {stopped} runs were stopped half way");
}

#[test]
fn kill_9_at_any_moment_leaves_one_edition_whole_and_the_next_run_goes_on_from_there() {
    let editions = Editions::new();
    let [mut killed, mut stands] = [0, 0];
    for moment in editions.moments(24) {
        editions.turn_to(1 - stands);
        let book = editions.published.now().book;
        let ran = editions.publish_and_signal("KILL", moment);
        killed += usize::from(!ran.stderr.contains("published to"));
        book.same_as(&editions.published.now().book);
        let site = tree(&editions.published.out);
        // What is being laid out, and the marks of a stand-in, are no part of what is read.
        let now = OWN.iter().fold(site, |site, own| site.without(own));
        let off = [0, 1].map(|edition| editions.sites[edition].differences(&now));
        assert!(off.iter().any(Vec::is_empty), "a mixture after {moment:?}: {off:?}");
        editions.published.publish(&[]).exits(0);
        stands = 1 - stands;
        editions.sites[stands].same_as(&tree(&editions.published.out));
    }
    assert!(killed > 3, "only {killed} runs were killed half way");
}

/// Preparing all photographs takes many times longer than the one that is under way.
#[test]
fn ctrl_c_while_pictures_are_prepared_does_not_wait_for_the_rest() {
    let project = Project::copy_of("example-project");
    let kept = || tree(&project.root().join(".bookmatch/cache/renditions")).files().count();
    let out = project.beside("site");
    let mut command = project.command(["publish", "--draft", "--out", out.to_str().unwrap()].iter().chain(&TODAY));
    let child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let patience = Instant::now() + Duration::from_secs(300);
    while kept() == 0 {
        assert!(Instant::now() < patience, "no picture was ever kept");
        std::thread::sleep(Duration::from_millis(5));
    }
    assert!(Command::new("kill").args(["-INT", &child.id().to_string()]).status().unwrap().success());
    let ran = Ran::from_output("publish, stopped at its first pictures".into(), child.wait_with_output().unwrap());
    ran.exits(2).says("stopped before the new output was complete").does_not_say("can't be used");
    assert!(!out.exists(), "nothing was begun in the published folder");
    let when_stopped = kept();
    project.run(["publish", "--draft", "--out", out.to_str().unwrap()].iter().chain(&TODAY)).exits(0);
    assert!(when_stopped < kept(), "all {when_stopped} pictures were prepared before it stopped");
}
