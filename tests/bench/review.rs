//! `review` of 2,000 selection files, against walking, reading and parsing the same files.

use std::path::Path;
use std::time::{Duration, Instant};

use bookmatch::pipeline;
use bookmatch::source::{Files, Folder, yaml};
use bookmatch::units::Date;
use rayon::prelude::*;

/// How many selection files.
const FILES: usize = 2_000;
/// How often each is run, in turns so that what else the machine does meets both alike; the best counts.
const RUNS: usize = 15;

fn main() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    lay_out(folder.path());
    let today = Date::parse("2027-01-15").expect("a day");
    let (mut least, mut review, mut findings) = (Duration::MAX, Duration::MAX, 0);
    for _ in 0..RUNS {
        least = least.min(timed(|| floor(folder.path())));
        review = review.min(timed(|| {
            let folder = Folder::open(folder.path()).expect("the book");
            findings = pipeline::review(&folder, today).expect("a book").assessment.findings.len();
        }));
    }
    println!("walk, read and parse {FILES} files: {least:?}");
    println!("review them ({findings} findings): {review:?}");
    println!("ratio {:.2} (goal: at most 2)", review.as_secs_f64() / least.as_secs_f64());
}

#[allow(clippy::disallowed_methods)]
fn timed(work: impl FnOnce()) -> Duration {
    let start = Instant::now();
    work();
    start.elapsed()
}

/// Walking, reading and parsing, on as many threads as the review has.
fn floor(root: &Path) {
    let folder = Folder::open(root).expect("the book");
    let texts: Vec<String> = folder
        .entries()
        .par_iter()
        .map(|entry| String::from_utf8(folder.read(&entry.path, 1 << 22).expect("a file")).expect("text"))
        .collect();
    let mut files = Files::default();
    let ids: Vec<_> = texts.iter().map(|text| files.add(String::new(), text.clone())).collect();
    let trees: Vec<_> = ids.par_iter().zip(&texts).map(|(id, text)| yaml::parse(*id, text).expect("YAML")).collect();
    assert_eq!(trees.len(), FILES + 21);
}

#[allow(clippy::disallowed_methods)]
fn lay_out(root: &Path) {
    let write = |path: String, text: String| {
        let path = root.join(path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        std::fs::write(path, text).expect("a file");
    };
    write(
        "book.yaml".into(),
        "title: A\nclient: B\nunits: imperial\ncurrency: USD\nmilestones: {cabinets set: 2027-09-01}\n".into(),
    );
    for room in 0..20 {
        let openings: String = (0..FILES / 20)
            .map(|at| format!("  o{at}: {{takes: range, width: [30 1/16\", 30 1/4\", 30 1/8\"], height: 37\", depth: 25 1/2\", measured: {{on: 2027-01-11, by: Teo}}}}\n"))
            .collect();
        write(format!("rooms/r{room}/room.yaml"), format!("name: Room {room}\nopenings:\n{openings}"));
        for at in 0..FILES / 20 {
            write(format!("rooms/r{room}/s{at}.yaml"), selection(at));
        }
    }
}

fn selection(at: usize) -> String {
    format!(
        "selection: Range {at}\nkind: range\nplace: o{at}\nneeded for: cabinets set\nwhy: Sealed burners, and an oven wide enough for a full sheet pan.\nsupplier: Oren\nlead time: 6-8 weeks\nquantity: 1\nfit:\n  sheet: {{name: C-30, revision: D, date: 2026-09-04}}\n  opening: {{width: 30\" to 30 1/4\", height: 36\", depth: at least 24\"}}\n  air: {{left: 0\", right: 2\" above counter, back: 0\"}}\n  door: {{drops: 20 1/2\"}}\n  needs: {{power: 120 V 15 A 5-15, gas: natural gas}}\n  carton: 32\" x 41\" x 30\"\n  weight: 205 lb\noptions:\n  - {{id: steel, maker: Velmora, model: V30-{at}, finish: steel, size: {{width: 29 7/8\", height: 35 3/4\" to 36 3/4\", depth: 25\", depth with handle: 26 1/2\"}}, price: 3180.00, cost: 2540.00}}\n  - {{id: enamel, maker: Velmora, model: E30-{at}, finish: enamel, size: {{width: 29 7/8\", height: 35 3/4\" to 36 3/4\", depth: 25\", depth with handle: 26 1/2\"}}, price: 3590.00, cost: 2870.00}}\nchosen: steel\n"
    )
}
