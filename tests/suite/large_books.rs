//! A large book takes memory by what is on a sheet, not by what is in the book.

#[path = "../bench/many.rs"]
mod many;

#[test]
fn sheets_of_many_selections_take_little_memory() {
    use std::process::{Command, Stdio};
    /// With what the engine keeps of all sheets it would be three times as much.
    const MOST: u64 = 450 * 1024;

    let folder = tempfile::tempdir().unwrap();
    let (book, out) = (folder.path().join("book"), folder.path().join("site"));
    many::lay_out(&book, 260);
    let mut child = Command::new(env!("CARGO_BIN_EXE_bookmatch"))
        .args(["publish", "--draft", "--today", "2027-01-15", "--out"])
        .args([&out, &book])
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut peak = 0;
    let status = loop {
        // The most that was held so far, in KiB; at the end there is no process to ask.
        let told = std::fs::read_to_string(format!("/proc/{}/status", child.id())).unwrap_or_default();
        let line = told.lines().find_map(|line| line.strip_prefix("VmHWM:"));
        peak = line.and_then(|line| line.trim().trim_end_matches(" kB").parse().ok()).unwrap_or(peak);
        if let Some(status) = child.try_wait().unwrap() {
            break status;
        }
        std::thread::sleep(std::time::Duration::from_millis(5));
    };
    assert!(status.success());
    assert!(peak > 0 && peak < MOST, "{peak} KiB at most");
    // What is past the most items of a file is in parts; the sums and the signatures stand on the last.
    let sheets = out.join("client/sheets");
    let text = |name: &str| {
        let ran = Command::new("pdftotext").arg(sheets.join(name)).arg("-").output().unwrap();
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
