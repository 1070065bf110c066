//! `review` of 2,000 selection files, without and with the rooms' full geometry, against walking, reading and
//! parsing the same files.

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

/// A book in the making.
struct BookShape {
    name: &'static str,
    rooms: usize,
    /// Outline, walls, doors, windows, runs, islands, fixtures; or nothing but openings.
    planned: bool,
    /// How many times the floor a review may take.
    goal: u32,
}

const SHAPES: [BookShape; 2] = [
    BookShape { name: "openings alone", rooms: 20, planned: false, goal: 2 },
    BookShape { name: "rooms with full geometry", rooms: 100, planned: true, goal: 2 },
];

fn main() {
    for shape in SHAPES {
        measure(&shape);
    }
}

fn measure(shape: &BookShape) {
    let folder = tempfile::tempdir().expect("a temporary folder");
    shape.lay_out(folder.path());
    let today = Date::parse("2027-01-15").expect("a day");
    let (mut least, mut review, mut found) = (Taken::MOST, Taken::MOST, vec![]);
    for _ in 0..RUNS {
        least = least.or_less(timed(|| floor(folder.path(), FILES + shape.rooms + 1)));
        review = review.or_less(timed(|| {
            let folder = Folder::open(folder.path()).expect("the book");
            found = pipeline::review(&folder, today).expect("a book").assessment.findings;
        }));
    }
    let faulty = found.iter().find(|finding| finding.rule.text().starts_with("source/"));
    assert!(faulty.is_none(), "the book itself is faulty: {faulty:?}");
    println!("{FILES} selections, {}", shape.name);
    println!("  walk, read and parse: {:?}", least.clock);
    println!("  review ({} findings): {:?}", found.len(), review.clock);
    let ratio = |time: fn(&Taken) -> Duration| time(&review).as_secs_f64() / time(&least).as_secs_f64();
    println!("  ratio {:.2} (goal: at most {})", ratio(|taken| taken.clock), shape.goal);
    println!("  ratio of processors' time {:.2}", ratio(|taken| taken.processors));
}

/// How long something took.
#[derive(Clone, Copy, Debug)]
struct Taken {
    clock: Duration,
    /// Of all threads together, to a hundredth of a second, where the system tells it as Linux does: it hangs less
    /// than the clock's on what else the machine does.
    processors: Duration,
}

impl Taken {
    const MOST: Self = Self { clock: Duration::MAX, processors: Duration::MAX };

    /// The lesser of each.
    fn or_less(self, other: Self) -> Self {
        Self { clock: self.clock.min(other.clock), processors: self.processors.min(other.processors) }
    }
}

#[allow(clippy::disallowed_methods)]
fn timed(work: impl FnOnce()) -> Taken {
    let (start, before) = (Instant::now(), processors());
    work();
    Taken { clock: start.elapsed(), processors: processors().saturating_sub(before) }
}

/// The time of processors that this process took so far: user and system, in the hundredths of `/proc`.
#[allow(clippy::disallowed_methods)]
fn processors() -> Duration {
    let stat = std::fs::read_to_string("/proc/self/stat").unwrap_or_default();
    let after_name = stat.rsplit_once(')').map_or("", |(_, fields)| fields);
    let ticks = after_name.split_whitespace().skip(11).take(2).filter_map(|ticks| ticks.parse::<u64>().ok());
    Duration::from_millis(10 * ticks.sum::<u64>())
}

/// Walking, reading and parsing, on as many threads as the review has.
fn floor(root: &Path, count: usize) {
    let folder = Folder::open(root).expect("the book");
    let texts: Vec<String> = folder
        .entries()
        .par_iter()
        .map(|entry| String::from_utf8(folder.read(&entry.path, 1 << 22).expect("a file")).expect("text"))
        .collect();
    let mut files = Files::default();
    let ids: Vec<_> = texts.iter().map(|text| files.add(String::new(), text.clone())).collect();
    let trees: Vec<_> = ids.par_iter().zip(&texts).map(|(id, text)| yaml::parse(*id, text).expect("YAML")).collect();
    assert_eq!(trees.len(), count);
}

impl BookShape {
    #[allow(clippy::disallowed_methods)]
    fn lay_out(&self, root: &Path) {
        let write = |path: String, text: String| {
            let path = root.join(path);
            std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            std::fs::write(path, text).expect("a file");
        };
        write(
            "book.yaml".into(),
            "title: A\nclient: B\nunits: imperial\ncurrency: USD\nmilestones: {cabinets set: 2027-09-01}\n".into(),
        );
        let in_each = FILES / self.rooms;
        for room in 0..self.rooms {
            let openings: String = (0..in_each).map(|at| self.opening(at)).collect();
            let plan = if self.planned { plan() } else { String::new() };
            write(format!("rooms/r{room}/room.yaml"), format!("name: Room {room}\n{plan}openings:\n{openings}"));
            for at in 0..in_each {
                write(format!("rooms/r{room}/s{at}.yaml"), selection(at));
            }
        }
    }

    /// An opening; on a plan the last four of twenty stand free at wall B, the others in runs.
    fn opening(&self, at: usize) -> String {
        let place = match at.checked_sub(16).filter(|_| self.planned) {
            Some(free) => format!("wall: B, at: {}\", ", 60 + free * 32),
            None => String::new(),
        };
        format!(
            "  o{at}: {{takes: range, {place}width: [30 1/16\", 30 1/4\", 30 1/8\"], height: 37\", depth: 25 1/2\", measured: {{on: 2027-01-11, by: Teo}}}}\n"
        )
    }
}

/// A room of 30 by 20 feet with everything that a room can have on its plan.
fn plan() -> String {
    let run = |name: &str, wall: &str, openings: std::ops::Range<usize>| {
        let parts = openings.map(|at| format!("{{opening: o{at}}}, ")).collect::<String>();
        format!(
            "  {name}: {{wall: {wall}, starts: 6\", depth: 24\", counter: {{depth: 25 1/2\", height: 36\"}}, handles: 1 3/8\", parts: [{{filler: 3\"}}, {{cabinet: {name} pots, width: 30\", drawers: 3}}, {parts}{{cabinet: {name} plates, width: 36\", doors: 2}}]}}\n"
        )
    };
    let above = "  above: {wall: A, starts: 6\", above floor: 54\", depth: 12\", height: 36\", parts: [{cabinet: glasses, width: 36\", doors: 2}, {cabinet: cups, width: 36\", doors: 2}]}\n";
    format!(
        "outline: 30' x 20'\nceiling: 8'\ncooks: 2\nwalls: {{A: {{name: long wall}}, B: {{name: end wall}}}}\n\
         doors:\n  in: {{wall: D, at: 40\", width: 34\", height: 80\", hinge: left, swings: in}}\n  out: {{wall: D, at: 150\", width: 34\", height: 80\", hinge: right, swings: out}}\n\
         windows:\n  one: {{wall: C, at: 100\", width: 34\", sill: 42\", height: 40\", opens: sideways}}\n  two: {{wall: C, at: 160\", width: 34\", sill: 42\", height: 40\", opens: fixed}}\n\
         runs:\n{}{}{above}\
         islands:\n  island: {{wall: A, at: 120\", away: 90\", size: 96\" x 42\", height: 36\", room side: {{overhang: 15\", seats: 4}}}}\n\
         fixtures:\n  bar sink: {{wall: B, centre: 24\", width: 20\", depth: 18\", takes: sink}}\n",
        run("far", "A", 0..8),
        run("near", "C", 8..16),
    )
}

fn selection(at: usize) -> String {
    format!(
        "selection: Range {at}\nkind: range\nplace: o{at}\nneeded for: cabinets set\nwhy: Sealed burners, and an oven wide enough for a full sheet pan.\nsupplier: Oren\nlead time: 6-8 weeks\nquantity: 1\nfit:\n  sheet: {{name: C-30, revision: D, date: 2026-09-04}}\n  opening: {{width: 30\" to 30 1/4\", height: 36\", depth: at least 24\"}}\n  air: {{left: 0\", right: 2\" above counter, back: 0\"}}\n  door: {{drops: 20 1/2\"}}\n  needs: {{power: 120 V 15 A 5-15, gas: natural gas}}\n  carton: 32\" x 41\" x 30\"\n  weight: 205 lb\noptions:\n  - {{id: steel, maker: Velmora, model: V30-{at}, finish: steel, size: {{width: 29 7/8\", height: 35 3/4\" to 36 3/4\", depth: 25\", depth with handle: 26 1/2\"}}, price: 3180.00, cost: 2540.00}}\n  - {{id: enamel, maker: Velmora, model: E30-{at}, finish: enamel, size: {{width: 29 7/8\", height: 35 3/4\" to 36 3/4\", depth: 25\", depth with handle: 26 1/2\"}}, price: 3590.00, cost: 2870.00}}\nchosen: steel\n"
    )
}
