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
        Project::copy_of("example-project").run(["publish", "--today", TODAY, "--out", out]).exits(0);
        site
    })
}
