//! Bad photos: each is refused with its reason, the others are made, and nothing panics or swells.

use std::fs;
use std::io::Write;

use super::Desk;
use bookmatch::pictures::{Excess, Format, PictureError, Source, inspect, prepare};
use bookmatch::units::Fault;
use proptest::prelude::*;

impl Desk {
    fn put(&self, name: &str, bytes: &[u8]) {
        let made = fs::File::create_new(self.path(name)).and_then(|mut file| file.write_all(bytes));
        made.unwrap_or_else(|fault| panic!("{name}: {fault}"));
    }

    fn read(&self, name: &str) -> Vec<u8> {
        fs::read(self.path(name)).unwrap_or_else(|fault| panic!("{name}: {fault}"))
    }
}

#[test]
fn each_bad_photo_is_refused_with_its_reason_and_the_good_ones_are_made() {
    let desk = Desk::new();
    desk.python("photo(640, 480).save('good.jpg')", &[]);
    desk.put("list.jpg", b"Tap: brushed, two\nSink: undermount\n");
    desk.put("empty.jpg", b"");
    let good = desk.read("good.jpg");
    desk.put("cut.jpg", &good[..good.len() / 2]);
    let names = ["good.jpg", "list.jpg", "empty.jpg", "missing.jpg", "cut.jpg", "good.jpg"];
    let sources: Vec<Source<'_>> = names.iter().map(|name| Source::file(*name, desk.path(name))).collect();
    let counts = std::sync::Mutex::new(Vec::new());
    let made = prepare(&desk.cache, &sources, &[320], &|done| counts.lock().expect("a lock").push(done));
    let told: Vec<String> =
        made.iter().map(|made| made.as_ref().map_or_else(ToString::to_string, |_| "made".into())).collect();
    assert_eq!(told[..3], ["made", "not a picture, but text", "not a picture, but an empty file"]);
    assert!(told[3].starts_with("the picture can't be read (No such file"), "{}", told[3]);
    assert_eq!(told[4..], ["a JPEG picture whose end is missing", "made"]);
    assert_eq!(counts.into_inner().expect("a lock"), [1, 2, 3, 4, 5, 6]);
    for fault in made.iter().filter_map(|made| made.as_ref().err()) {
        assert!(!fault.remedy().text().is_empty());
    }
}

#[test]
fn a_photo_cut_short_anywhere_is_refused() {
    let desk = Desk::new();
    desk.python(
        "
for ending in ('jpg', 'png', 'webp', 'tiff'):
    photo(160, 120).save(f'photo.{ending}')
photo(160, 120).save('progressive.jpg', progressive=True)
",
        &[],
    );
    for name in ["photo.jpg", "progressive.jpg", "photo.png", "photo.webp", "photo.tiff"] {
        let whole = desk.read(name);
        let mut sources = Vec::new();
        for part in 0..40 {
            let cut = whole[..whole.len() * part / 40].to_vec();
            sources.push(Source::new(format!("{name} {part}/40"), move || Ok(cut.clone())));
        }
        for (source, made) in sources.iter().zip(prepare(&desk.cache, &sources, &[80], &|_| ())) {
            assert!(made.is_err(), "{}", source.name);
        }
        let last = &whole[..whole.len() - 1];
        let whole_but_one = inspect(last);
        if name != "photo.tiff" {
            assert!(matches!(whole_but_one, Err(PictureError::Truncated(_))), "{name}: {whole_but_one:?}");
        }
    }
}

#[test]
fn a_png_of_30000_by_30000_is_refused_from_its_header() {
    let desk = Desk::new();
    desk.python("open('vast.png', 'wb').write(png(30000, 30000))", &[]);
    let vast = PictureError::TooLarge(Excess::Side { width: 30_000, height: 30_000, limit: 20_000 });
    assert_eq!(inspect(&desk.read("vast.png")), Err(vast.clone()));
    assert_eq!(desk.try_prepare("vast.png", &[480]), Err(vast));
}

#[test]
fn a_file_that_unpacks_to_far_more_than_a_photo_is_refused_or_made_within_bounds() {
    let desk = Desk::new();
    // A profile of 200 MB in a photo of one pixel; pixels past those that the header names.
    desk.python(
        r"
pixel = chunk(b'IDAT', zlib.compress(b'\0' * 4)) + chunk(b'IEND', b'')
packed = zlib.compressobj(9)
body = b''.join(packed.compress(b'\0' * 10_000_000) for _ in range(20)) + packed.flush()
open('profile.png', 'wb').write(png(1, 1, chunk(b'iCCP', b'p\0\0' + body), pixel))
open('text.png', 'wb').write(png(1, 1, chunk(b'zTXt', b'p\0\0' + body), pixel))
open('pixels.png', 'wb').write(png(1, 1, chunk(b'IDAT', body), chunk(b'IEND', b'')))
open('broad.png', 'wb').write(png(20000, 5001, chunk(b'IDAT', body), chunk(b'IEND', b'')))
",
        &[],
    );
    let before = peak_kilobytes();
    for name in ["profile.png", "text.png", "pixels.png"] {
        if let Ok(made) = desk.try_prepare(name, &[480]) {
            assert_eq!((made.width, made.height), (1, 1), "{name}");
        }
    }
    let broad = desk.try_prepare("broad.png", &[480]);
    assert!(matches!(broad, Err(PictureError::TooLarge(Excess::Pixels { .. }))), "{broad:?}");
    let grown = peak_kilobytes().saturating_sub(before);
    assert!(grown < 100_000, "{grown} kB more for pictures of one pixel");
}

/// The most memory that this program has held, in kilobytes; 0 where the system doesn't tell.
fn peak_kilobytes() -> u64 {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|line| line.split_whitespace().next()?.parse().ok()).unwrap_or(0)
}

#[test]
fn inks_in_a_tiff_are_refused_and_the_remedy_says_how_to_export() {
    let desk = Desk::new();
    desk.python("photo(60, 40).convert('CMYK').save('inks.tiff')", &[]);
    let fault = desk.try_prepare("inks.tiff", &[30]).expect_err("inks without their meaning");
    assert_eq!(fault.to_string(), "a TIFF in the inks of a press (CMYK), which is not read here");
    assert_eq!(fault.remedy().text(), "export it as JPEG or PNG, in sRGB, 8 bits a channel");
}

/// A small photo of each format, and the bytes that each format begins with.
fn small_photos() -> Vec<Vec<u8>> {
    let desk = Desk::new();
    desk.python(
        "
for ending in ('jpg', 'png', 'webp', 'tiff'):
    photo(48, 40).save(f'photo.{ending}')
photo(48, 40).save('progressive.jpg', progressive=True)
",
        &[],
    );
    ["photo.jpg", "progressive.jpg", "photo.png", "photo.webp", "photo.tiff"].map(|name| desk.read(name)).to_vec()
}

#[test]
fn random_bytes_and_photos_with_random_damage_never_panic() {
    let (desk, photos) = (Desk::new(), small_photos());
    let heads: [&[u8]; 6] =
        [b"", b"\xff\xd8\xff\xe0", b"\x89PNG\r\n\x1a\n", b"RIFF\0\0\0\x01WEBPVP8 ", b"II*\0", b"\0\0\0\x18ftypheic"];
    let noise = (0..heads.len(), proptest::collection::vec(any::<u8>(), 0..400))
        .prop_map(|(head, tail)| [heads[head], &tail].concat());
    let damage = proptest::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..12);
    let damaged = (0..photos.len(), damage).prop_map(move |(photo, damage)| {
        let mut bytes = photos[photo].clone();
        damage.into_iter().for_each(|(at, byte)| *at.get_mut(&mut bytes) = byte);
        bytes
    });
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig::with_cases(600));
    let outcome = runner.run(&prop_oneof![noise, damaged], |bytes| {
        let seen = inspect(&bytes);
        let source = [Source::new("any", || Ok(bytes.clone()))];
        let made = prepare(&desk.cache, &source, &[20], &|_| ()).remove(0);
        if let Ok(made) = &made {
            let seen = seen.expect("what is made was seen");
            prop_assert_eq!((made.width, made.height), (seen.width, seen.height));
        }
        let gave_up = matches!(&made, Err(PictureError::Damaged { detail, .. }) if detail == "its decoder gave up");
        prop_assert!(!gave_up, "a decoder panicked");
        Ok(())
    });
    outcome.unwrap_or_else(|fault| panic!("{fault}"));
}

#[test]
fn a_name_says_nothing_but_the_bytes_do() {
    assert_eq!(inspect(b"GIF89a....").map_err(|fault| fault.to_string()), Err("a GIF, which is not read here".into()));
    assert_eq!(inspect(b"\xff\xd8\xff"), Err(PictureError::Truncated(Format::Jpeg)));
}
