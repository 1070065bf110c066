//! Ctrl-C and `kill -9` at many moments: what is published is the old or the new, whole.

use std::fs;
use std::path::Path;
use std::process::{Child, Command, Stdio};

use super::{Published, RANGE, TODAY};
use crate::project::{Project, Ran, Tree, tree};

/// What publishing keeps in the folder while it is under way.
const OWN: [&str; 3] = [".bookmatch-staging", ".bookmatch-stand-in", ".bookmatch-stood-in"];

/// A moment of a run, by what can be seen of it on the disk.
#[derive(Clone, Copy, Debug)]
enum Moment {
    /// So many pictures and sheets are kept.
    Kept(usize),
    /// So many files of the new output are laid out.
    Laid(usize),
}

/// A book that is one of two editions, with the site of each.
struct Editions {
    published: Published,
    sites: [Tree; 2],
    /// How many files are kept of a whole run.
    kept: usize,
}

/// How many files stand below a folder at this moment.
fn files_in(folder: &Path) -> usize {
    walkdir::WalkDir::new(folder).into_iter().flatten().filter(|entry| entry.file_type().is_file()).count()
}

/// Waits until something has come about, or the process has ended; tells whether it still runs.
fn wait(child: &mut Child, until: impl Fn() -> bool) -> bool {
    loop {
        if child.try_wait().unwrap().is_some() {
            return false;
        }
        if until() {
            return true;
        }
        std::thread::yield_now();
    }
}

fn send(signal: &str, child: &Child) {
    let sent = Command::new("kill").args([&format!("-{signal}"), &child.id().to_string()]).status();
    assert!(sent.unwrap().success(), "the child is there until it is waited for");
}

impl Editions {
    /// The second has another price, one file more, and lacks one of the first.
    fn new() -> Self {
        let editions = Self { published: Published::new(), sites: [tree(Path::new("")), tree(Path::new(""))], kept: 0 };
        let mut sites = Vec::new();
        for edition in 0..2 {
            editions.turn_to(edition);
            let out = editions.published.project.beside(&format!("whole-{edition}"));
            editions.published.publish_to(&out, &[]).exits(0);
            editions.published.publish_to(&out, &[]).exits(0).says("0 new, 0 changed");
            sites.push(tree(&out));
        }
        let sites: [Tree; 2] = sites.try_into().expect("two editions");
        let between = sites[0].differences(&sites[1]);
        for kind in ["new ", "changed ", "gone "] {
            assert!(between.iter().any(|line| line.starts_with(kind)), "{kind}: {between:?}");
        }
        editions.turn_to(0);
        let kept = files_in(&editions.cache());
        assert!(kept > 10, "only {kept} files are kept");
        Self { sites, kept, ..editions }
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

    fn cache(&self) -> std::path::PathBuf {
        self.published.project.root().join(".bookmatch")
    }

    /// Files of a new output that is being laid out, in the published folder and beside it.
    fn laid(&self) -> usize {
        let (out, name) = (&self.published.out, self.published.out.file_name().unwrap().to_str().unwrap());
        let beside = out.with_file_name(format!(".{name}.bookmatch-stand-in"));
        OWN.iter().map(|own| out.join(own)).chain([beside]).map(|folder| files_in(&folder)).sum()
    }

    /// Pictures and sheets are made anew, so that there is more to stop. A run that was stopped early left none.
    fn forget_pictures(&self) {
        let cache = self.cache();
        if cache.exists() {
            fs::remove_dir_all(cache).unwrap();
        }
    }

    /// Starts a run and ends it with a signal at that moment, where it comes to it; tells how it ended.
    fn publish_and_signal(&self, signal: &str, moment: Moment) -> Ran {
        let out = self.published.out.to_str().unwrap();
        let mut command = self.published.project.command(["publish", "--out", out].iter().chain(&TODAY));
        let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        let is_there = || match moment {
            Moment::Kept(count) => files_in(&self.cache()) >= count,
            Moment::Laid(count) => self.laid() >= count,
        };
        if wait(&mut child, is_there) {
            send(signal, &child);
        }
        Ran::from_output(format!("publish, {signal} at {moment:?}"), child.wait_with_output().unwrap())
    }
}

#[test]
fn ctrl_c_at_any_moment_leaves_the_old_or_the_new_whole() {
    let editions = Editions::new();
    let [mut stopped, mut stands] = [0, 0];
    let laid = [0, 1, 2, 4, 8, 16, 32, 64, 128, 256].map(Moment::Laid).into_iter();
    let moments = laid.chain((0..10).map(|tenth| Moment::Kept(editions.kept * tenth / 10)));
    for moment in moments {
        editions.turn_to(1 - stands);
        if matches!(moment, Moment::Kept(_)) {
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
    for moment in [0, 0, 1, 1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 256].map(Moment::Laid) {
        editions.turn_to(1 - stands);
        let book = editions.published.now().book;
        let ran = editions.publish_and_signal("KILL", moment);
        killed += usize::from(!ran.stderr.contains("published to"));
        book.same_as(&editions.published.now().book);
        let site = tree(&editions.published.out);
        // What is being laid out, and the marks of a stand-in, are no part of what is read.
        let now = OWN.iter().fold(site, |site, own| site.without(own));
        let off = [0, 1].map(|edition| editions.sites[edition].differences(&now));
        assert!(off.iter().any(Vec::is_empty), "a mixture at {moment:?}: {off:?}");
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
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    assert!(wait(&mut child, || kept() > 0), "it ended before a picture was kept");
    send("INT", &child);
    let ran = Ran::from_output("publish, stopped at its first pictures".into(), child.wait_with_output().unwrap());
    ran.exits(2).says("stopped before the new output was complete").does_not_say("can't be used");
    assert!(!out.exists(), "nothing was begun in the published folder");
    let when_stopped = kept();
    project.run(["publish", "--draft", "--out", out.to_str().unwrap()].iter().chain(&TODAY)).exits(0);
    assert!(when_stopped < kept(), "all {when_stopped} pictures were prepared before it stopped");
}
