//! A large book takes memory by what is on a sheet, not by what is in the book.

#[path = "../bench/many.rs"]
mod many;

#[test]
fn sheets_of_many_selections_take_little_memory() {
    /// With what the engine keeps of all sheets, or all pages at a time, it would be far more.
    const MOST: u64 = 330 * 1024;

    let folder = tempfile::tempdir().unwrap();
    let (book, out) = (folder.path().join("book"), folder.path().join("site"));
    many::lay_out(&book, 260);
    let took = many::publish(&book, &out);
    assert!(took.success);
    assert!(took.peak > 0 && took.peak < MOST, "{} KiB at most", took.peak);
    // What is past the most items of a file is in parts; the sums and the signatures stand on the last.
    let sheets = out.join("client/sheets");
    let text = |name: &str| {
        let ran = std::process::Command::new("pdftotext").arg(sheets.join(name)).arg("-").output().unwrap();
        String::from_utf8_lossy(&ran.stdout).into_owned()
    };
    assert!(!sheets.join("whole-book.pdf").exists());
    let parts = ["whole-book-1.pdf", "whole-book-2.pdf", "whole-book-3.pdf"].map(text);
    for (n, part) in parts.iter().enumerate() {
        assert!(part.contains(&format!("Part {} of 3", n + 1)), "{part}");
        assert_eq!(part.to_lowercase().contains("total and signatures"), n == 2, "{part}");
    }
    let cover = std::fs::read_to_string(out.join("client/index.html")).unwrap();
    assert!(cover.contains("sheets/whole-book-3.pdf") && cover.contains("part 3 of 3"));
}

/// A long text with an anchor that aliases repeat: what is read, checked and told of it is held once, or little
/// more. The file weighs a megabyte; written out it would weigh forty.
#[test]
fn a_long_text_that_aliases_repeat_takes_little_memory() {
    const MOST: u64 = 200 * 1024;

    let folder = tempfile::tempdir().unwrap();
    let book = folder.path().join("book");
    many::lay_out(&book, 20);
    let aliases = ", *long".repeat(40);
    let record =
        format!("selection: Rug\nkind: rug\nwhy: &long \"{}\"\nphotos: [*long{aliases}]\n", "oak ".repeat(250_000));
    std::fs::write(book.join("rooms/r0/rug.yaml"), record).unwrap();
    let mut review = std::process::Command::new(env!("CARGO_BIN_EXE_bookmatch"));
    let took = many::measured(review.args(["review", "--today", "2027-01-15"]).arg(&book));
    assert!(!took.success, "the text is past the most that aliases may repeat");
    assert!(took.peak > 0 && took.peak < MOST, "{} KiB at most", took.peak);
}
