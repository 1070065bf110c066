//! Days, networks and quantities against an independent reckoning: Python's `datetime` and `fractions`.

use std::io::Write;
use std::process::{Command, Stdio};

use bookmatch::assess::Dates;
use bookmatch::read::read;
use bookmatch::site::fitting::cover;
use bookmatch::source::Folder;
use bookmatch::units::{Area, Calendar, Date, Length, Percent};

/// Numbers that look random and are the same on every run (Knuth's constants for a 64 bit sequence).
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % end
    }
}

/// Runs a script that reads one question a line and answers each with one line.
fn python(script: &str, questions: &[String]) -> Vec<String> {
    let mut child = Command::new("python3")
        .args(["-c", script])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap_or_else(|error| panic!("this test needs Python 3 (apt-get install python3): {error}"));
    let mut input = child.stdin.take().expect("its input is piped");
    let text = questions.join("\n") + "\n";
    let writer = std::thread::spawn(move || input.write_all(text.as_bytes()));
    let output = child.wait_with_output().expect("it runs to its end");
    writer.join().expect("the writer ends").expect("it reads every question");
    let answers = String::from_utf8(output.stdout).expect("plain text");
    let answers: Vec<String> = answers.lines().map(str::to_owned).collect();
    assert_eq!(answers.len(), questions.len(), "one answer to each question");
    answers
}

/// Counts weekdays outside the closed days, the first day left out.
const DAYS: &str = "
import sys, datetime
for line in sys.stdin:
    first, count, *closed = line.split()
    closed = {datetime.date.fromisoformat(day) for day in closed}
    day, count = datetime.date.fromisoformat(first), int(count)
    week = day.isocalendar()
    step = datetime.timedelta(days=1 if count > 0 else -1)
    left = abs(count)
    while left:
        day += step
        left -= day.weekday() < 5 and day not in closed
    print(day, week[0], week[1], week[2])
";

/// Source: check values SD-05, SD-06, and a thousand more by Python's `datetime`.
#[test]
fn working_days_and_weeks_agree_with_python() {
    let mut numbers = Numbers(5);
    let mut rows = vec![
        ("2026-07-10".to_owned(), -10, vec![]),
        ("2026-07-10".to_owned(), -10, vec!["2026-07-03".to_owned()]),
        ("2026-12-24".to_owned(), 5, vec!["2026-12-25".to_owned(), "2027-01-01".to_owned()]),
        ("2021-01-03".to_owned(), 0, vec![]),
        ("2024-12-30".to_owned(), 0, vec![]),
    ];
    for _ in 0..1_000 {
        let mut day = || Date::parse("2019-01-01").unwrap().plus_days(numbers.below(6_000) as i64);
        let first = day();
        let closed = (0..8).map(|at| first.plus_days(i64::from(at * 5 - 20)).iso()).collect();
        rows.push((first.iso(), numbers.below(121) as i64 - 60, closed));
    }
    let questions: Vec<String> =
        rows.iter().map(|(first, count, closed)| format!("{first} {count} {}", closed.join(" "))).collect();
    for ((first, count, closed), theirs) in rows.iter().zip(python(DAYS, &questions)) {
        let date = |text: &str| Date::parse(text).unwrap();
        let (first, calendar) = (date(first), Calendar::new(closed.iter().map(|day| date(day))));
        let ours = match *count {
            count if count < 0 => calendar.minus_working_days(first, -count),
            count => calendar.plus_working_days(first, count),
        };
        let (year, week) = first.iso_week();
        assert_eq!(format!("{} {year} {week} {}", ours.iso(), first.weekday()), theirs, "{first} {count} {closed:?}");
    }
}

/// The longest way to each activity and on from it: what is left over is its slack.
const NETWORK: &str = "
import sys
from functools import cache
for line in sys.stdin:
    lasts, before = {}, {}
    for part in line.split():
        name, days, *rest = part.split(':')
        lasts[name], before[name] = int(days), [b for b in rest[0].split(',') if b]
    @cache
    def ends(name):
        return lasts[name] + max((ends(b) for b in before[name]), default=0)
    after = {n: [a for a in lasts if n in before[a]] for n in lasts}
    @cache
    def onward(name):
        return max((lasts[a] + onward(a) for a in after[name]), default=0)
    whole = max(ends(n) for n in lasts)
    print(' '.join(f'{n}:{ends(n)}:{whole - ends(n) - onward(n)}' for n in sorted(lasts)))
";

/// The networks of the trade's textbooks and fifty of our own, as name, days and what goes before.
fn networks() -> Vec<Vec<(String, u64, Vec<String>)>> {
    let published = [
        "12:4: 23:8:12 24:7:12 25:6:12 34:0:23 35:9:23 46:15:24,34 56:12:25,35 67:20:46,56",
        "A:2: B:10:A C:13:A D:12:A E:12:B F:7:B G:10:D H:16:D I:6:F J:12:C,G K:5:I L:8:E,K M:5:H N:3:J,L,M",
    ];
    let read = |line: &&str| {
        let parts = line.split(' ').map(|part| part.splitn(3, ':').collect::<Vec<_>>());
        parts
            .map(|at| {
                let before = at[2].split(',').filter(|name| !name.is_empty());
                (format!("a{}", at[0]), at[1].parse().unwrap(), before.map(|name| format!("a{name}")).collect())
            })
            .collect()
    };
    let mut all: Vec<Vec<(String, u64, Vec<String>)>> = published.iter().map(read).collect();
    let mut numbers = Numbers(7);
    for _ in 0..50 {
        let activities = (0..12_u64).map(|at| {
            let before = (0..at).filter(|_| numbers.below(3) == 0).map(|before| format!("n{before:02}")).collect();
            (format!("n{at:02}"), numbers.below(30), before)
        });
        all.push(activities.collect());
    }
    all
}

/// Source: check values SD-01, SD-02, SD-03, and fifty more networks by a longest way in Python.
#[test]
fn the_critical_path_agrees_with_a_longest_way_in_python() {
    let networks = networks();
    let question = |network: &Vec<(String, u64, Vec<String>)>| {
        let parts = network.iter().map(|(name, days, before)| format!("{name}:{days}:{}", before.join(",")));
        parts.collect::<Vec<_>>().join(" ")
    };
    let answers = python(NETWORK, &networks.iter().map(question).collect::<Vec<_>>());
    for (network, theirs) in networks.iter().zip(answers) {
        let milestones = network.iter().map(|(name, days, before)| {
            let after = if before.is_empty() { "start".into() } else { format!("[{}]", before.join(", ")) };
            format!("  {name}: {{after: {after}, lasts: {days} days}}\n")
        });
        let milestones: String = milestones.collect();
        let text = format!(
            "title: A\nclient: B\nunits: imperial\ncurrency: USD\nmilestones:\n  start: 2027-01-01\n{milestones}"
        );
        let reading = read(&Folder::in_memory([("book.yaml", text.clone())])).expect("a book");
        let start = Date::parse("2027-01-01").unwrap();
        let dates = Dates::of(&reading.book, start);
        let mut names: Vec<&String> = network.iter().map(|(name, ..)| name).collect();
        names.sort();
        let ours = names
            .iter()
            .map(|name| format!("{name}:{}:{}", start.days_until(dates.milestones[*name]), dates.slack[*name]));
        assert_eq!(ours.collect::<Vec<_>>().join(" "), theirs, "{text}");
    }
}

/// Boxes for an area with waste, rolls for walls, grams of grout for a square metre, in exact fractions.
const QUANTITIES: &str = "
import sys, math
from fractions import Fraction as F
for line in sys.stdin:
    area, waste, box, along, height, repeat, width, roll, long, short, deep, joint = map(F, line.split())
    boxes = math.ceil(area * (1 + waste / 100) / box)
    strip = math.ceil(height / repeat) * repeat
    rolls = math.ceil(F(math.ceil(along / width), int(roll // strip)))
    grams = (long + short) / (long * short) * deep * joint * F(16, 10) * 1000
    print(boxes, strip, rolls, math.floor(grams))
";

/// Source: check values FL-02, TL-13, TL-15, WP-01, WP-02, and five hundred more by Python's `fractions`.
#[test]
fn boxes_rolls_and_grout_agree_with_python() {
    let mut numbers = Numbers(11);
    let mut rows =
        vec![["100", "15", "22.45", "480", "100", "21", "20.5", "396", "300", "300", "8", "3"].map(String::from)];
    for _ in 0..500 {
        let mut number = |from: u64, to: u64| (from + numbers.below(to - from)).to_string();
        let waste = number(0, 30);
        let (area, hold) = (number(10, 900), format!("{}.{}", number(2, 40), number(10, 99)));
        let (along, height, repeat) = (number(40, 900), number(40, 120), number(3, 30));
        let (width, roll) = (format!("{}.5", number(18, 40)), number(200, 500));
        let tile = [number(50, 900), number(50, 900), number(4, 20), number(1, 10)];
        let [long, short, deep, joint] = tile;
        rows.push([area, waste, hold, along, height, repeat, width, roll, long, short, deep, joint]);
    }
    let answers = python(QUANTITIES, &rows.iter().map(|row| row.join(" ")).collect::<Vec<_>>());
    for (row, theirs) in rows.iter().zip(answers) {
        assert_eq!(quantities(row), theirs, "{row:?}");
    }
}

fn quantities(row: &[String; 12]) -> String {
    let area = |at: usize| Area::parse(&format!("{} sq ft", row[at])).unwrap();
    let inches = |at: usize| Length::parse(&format!("{}\"", row[at])).unwrap();
    let millimetres = |at: usize| Length::parse(&format!("{} mm", row[at])).unwrap();
    let waste = Percent::parse(&format!("{} %", row[1])).unwrap();
    let boxes = cover::pieces(cover::with_waste(area(0), waste).unwrap(), area(2)).unwrap();
    let strip = cover::strip(inches(4), Length::ZERO, Some(inches(5))).unwrap();
    let rolls = cover::rolls(inches(3), strip, (inches(6), inches(7))).unwrap();
    let face = (millimetres(8), millimetres(9));
    let grout = cover::grout(Area::parse("1 m2").unwrap(), face, millimetres(10), millimetres(11)).unwrap();
    let strip = strip.nanometres() / Length::from_inches(1).nanometres();
    format!("{boxes} {strip} {rolls} {}", grout.femtograms() / 1_000_000_000_000_000)
}
