//! `publish` of 200 and of 2,000 selections with every sheet to set: time, and the most memory that it took.

#[path = "many.rs"]
mod many;

fn main() {
    let [few, very_many] = [200, 2_000].map(measure);
    println!("ratio of time {:.1} for ten times the selections (goal: about 10)", very_many / few);
}

fn measure(count: usize) -> f64 {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let (book, out) = (folder.path().join("book"), folder.path().join("site"));
    many::lay_out(&book, count);
    let took = many::publish(&book, &out);
    println!("{count} selections: {:.1} s, at most {} MB", took.seconds, took.peak / 1024);
    took.seconds
}
