//! A large book takes memory by what is on a sheet, not by what is in the book.

#[path = "../bench/many.rs"]
mod many;

#[test]
fn sheets_of_many_selections_take_little_memory() {
    /// With what the engine keeps of all sheets, all pages at a time, or each item set twice, it would be far more.
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

/// A long text with an anchor that aliases repeat, within the most that they may and past it: what is read, checked
/// and told of it is held once, or little more. The file weighs a megabyte; written out it would weigh up to forty.
#[test]
fn a_long_text_that_aliases_repeat_takes_little_memory() {
    const MOST: u64 = 128 * 1024;

    for (aliases, says) in [(12, "source/unknown-name"), (40, "source/too-large")] {
        let folder = tempfile::tempdir().unwrap();
        let book = folder.path().join("book");
        many::lay_out(&book, 1);
        let (long, repeated) = ("oak ".repeat(250_000), vec!["*long"; aliases].join(", "));
        let record = format!("selection: Rug\nkind: rug\nwhy: &long \"{long}\"\ndepends on: [{repeated}]\n");
        std::fs::write(book.join("rooms/r0/rug.yaml"), record).unwrap();
        let review = || {
            let mut review = std::process::Command::new(env!("CARGO_BIN_EXE_bookmatch"));
            review.args(["review", "--today", "2027-01-15"]).arg(&book);
            review
        };
        let took = many::measured(&mut review());
        assert!(took.peak > 0 && took.peak < MOST, "{aliases} aliases: {} KiB at most", took.peak);
        let told = review().output().unwrap();
        assert!(String::from_utf8_lossy(&told.stdout).contains(says), "{aliases} aliases");
    }
}
