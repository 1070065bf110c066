//! Photos that are none, or too much.

use std::process::Command;

use super::{Published, TODAY};
use crate::project::{Ran, tree};

const PHOTO: &str = "rooms/kitchen/photos/steel.png";

#[test]
fn a_photo_that_is_a_text_file() {
    let words = ["complete/photo", "`rooms/kitchen/photos/steel.png` can't be used: not a picture, but text"];
    Published::new().with(PHOTO, b"this is no picture at all\n").is_refused(1, &words);
}

#[test]
fn a_photo_whose_end_is_missing() {
    let published = Published::new();
    let whole = std::fs::read(published.project.root().join(PHOTO)).unwrap();
    let words = ["`rooms/kitchen/photos/steel.png` can't be used", "whose end is missing", "copy the photo again"];
    published.with(PHOTO, &whole[..whole.len() / 2]).is_refused(1, &words);
}

/// A whole one, with all its pixels, made by Python's zlib: 2.7 GB once decoded, 2.6 MB on disk.
const HUGE: &str = "
import struct, sys, zlib
def part(name, data):
    return struct.pack('>I', len(data)) + name + data + struct.pack('>I', zlib.crc32(name + data))
packer = zlib.compressobj(1)
rows = b''.join(packer.compress(bytes(1 + 3 * 30000)) for _ in range(30000)) + packer.flush()
head = struct.pack('>IIBBBBB', 30000, 30000, 8, 2, 0, 0, 0)
png = b'\\x89PNG\\r\\n\\x1a\\n' + part(b'IHDR', head) + part(b'IDAT', rows) + part(b'IEND', b'')
open(sys.argv[1], 'wb').write(png)
";

#[test]
fn a_png_of_thirty_thousand_pixels_square() {
    let published = Published::new();
    let photo = published.project.root().join(PHOTO);
    let made = Command::new("/usr/bin/python3").args(["-c", HUGE]).arg(&photo).status();
    assert!(made.expect("python3, which tests/run installs").success());
    let words = ["source/too-large", "steel.png", "30000 × 30000 pixels, past the limit", "export a smaller copy"];
    published.is_refused(1, &words);
    // With less memory than the pixels take, a draft is published all the same.
    let before = published.now();
    let draft = published.project.beside("frugal");
    let program = env!("CARGO_BIN_EXE_bookmatch");
    let script = r#"ulimit -v 2000000; "$@""#;
    let mut command = Command::new("bash");
    command.args(["-c", script, "bash", program, "publish", "--draft", "--out"]).arg(&draft).args(TODAY);
    Ran::of(command.current_dir(published.project.root())).exits(0).says("30000 × 30000 pixels");
    assert!(tree(&draft).files().any(|path| path == "client/index.html"));
    before.stands(&published);
}
