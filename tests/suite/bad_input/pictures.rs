//! Photos that are none, or too much.

use std::process::Command;

use jpeg_encoder::{ColorType, Encoder};

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

/// A small photo that carries these bytes as its colour profile.
fn with_profile(profile: &[u8]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, 90);
    encoder.add_icc_profile(profile).unwrap();
    encoder.encode(&[90; 60 * 40 * 3], 60, 40, ColorType::Rgb).unwrap();
    bytes
}

#[test]
fn a_photo_whose_colour_profile_cannot_be_read_is_published_and_told() {
    let words = "note: the colours of the picture `rooms/kitchen/photos/steel.png` may be wrong";
    let broken = Published::new().with(PHOTO, &with_profile(b"this is no profile"));
    // The second time its renditions come from the cache.
    for _ in 0..2 {
        broken.publish(&[]).exits(0).says(words).says("export it in sRGB").says("published to");
    }
    let sound = moxcms::ColorProfile::new_display_p3().encode().unwrap();
    Published::new().with(PHOTO, &with_profile(&sound)).publish(&[]).exits(0).does_not_say("may be wrong");
}

#[test]
fn a_photo_that_only_its_decoder_finds_damaged() {
    let published = Published::new();
    let mut photo = std::fs::read(published.project.root().join(PHOTO)).unwrap();
    // A byte of the packed pixels: every chunk still stands, and the check sum of one is wrong (PNG, 5.5).
    let middle = photo.len() / 2;
    photo[middle] ^= 0xff;
    let before = published.now();
    let published = published.with(PHOTO, &photo);
    let ran = published.publish(&[]).exits(1);
    ran.says("stop: the picture `rooms/kitchen/photos/steel.png` can't be used").says("not published");
    before.site.same_as(&published.now().site);
    published.publish_to(&published.project.beside("draft"), &["--draft"]).exits(0).says("published to");
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
