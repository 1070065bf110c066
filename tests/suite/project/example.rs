//! The example project, published once for all tests that look at what came out.

use super::Project;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

/// The day on which the example's story stands.
pub const TODAY: &str = "2027-01-15";

/// The folder with `client`, `installer` and `office`, made from the example by the program itself.
pub fn published() -> &'static Path {
    static PUBLISHED: OnceLock<PathBuf> = OnceLock::new();
    PUBLISHED.get_or_init(|| {
        let site = Path::new(env!("CARGO_TARGET_TMPDIR")).join("example");
        if site.exists() {
            std::fs::remove_dir_all(&site).expect("the last run's pages can be removed");
        }
        let out = site.to_str().expect("a path in UTF-8");
        let project = Project::copy_of("example-project");
        project.run(["publish", "--today", TODAY, "--out", out]).exits(0);
        keep_of(&project);
        site
    })
}

impl Project {
    /// A copy of the example that keeps what publishing it once has kept, so that a test waits only for what it
    /// changes. What is kept goes by content: `remaking` proves that it is what would be made anew.
    pub fn of_the_example() -> Self {
        published();
        let project = Self::copy_of("example-project");
        lay(&kept(), &project.root().join(CACHE));
        project
    }
}

const CACHE: &str = ".bookmatch";

fn kept() -> PathBuf {
    Path::new(env!("CARGO_TARGET_TMPDIR")).join("example-kept")
}

fn keep_of(project: &Project) {
    let kept = kept();
    if kept.exists() {
        std::fs::remove_dir_all(&kept).expect("what the last run kept can be removed");
    }
    lay(&project.root().join(CACHE), &kept);
}

/// Copies a folder's files.
fn lay(from: &Path, to: &Path) {
    for entry in walkdir::WalkDir::new(from) {
        let entry = entry.expect("the folder can be read");
        let to = to.join(entry.path().strip_prefix(from).expect("inside"));
        if entry.file_type().is_dir() {
            std::fs::create_dir_all(to).expect("a folder");
        } else {
            std::fs::copy(entry.path(), to).expect("a copy");
        }
    }
}
