//! HEIC photos, made by `heif-enc` (x265) and compared with what `heif-convert` (libde265) decodes.

use std::fs;
use std::io::Write;

use super::{Desk, numbers, text};
use bookmatch::pictures::{Format, PictureError, Source, inspect, prepare};
use bookmatch::units::Fault;
use moxcms::ColorProfile;
use proptest::prelude::*;

/// How like our rendition's lightness is to that of the other program's picture, then how like the
/// latter is to itself once stored as JPEG 80: what a rendition may lose; then how far colours are
/// apart in the mean, of 255, where both are reduced to an eighth; then the picture's size.
const COMPARED: &str = "
reference = Image.open(sys.argv[2])
if reference.mode != 'RGB':
    clear = reference.convert('RGBA')
    reference = Image.alpha_composite(Image.new('RGBA', clear.size, 'white'), clear).convert('RGB')
ours = Image.open(sys.argv[1])
reference.save('reference.jpg', quality=80)
print(psnr(ours.convert('L'), reference.convert('L')), psnr(Image.open('reference.jpg').convert('L'), reference.convert('L')))
eighth = [max(1, side // 8) for side in ours.size]
apart = ImageChops.difference(ours.resize(eighth, Image.BOX), reference.resize(eighth, Image.BOX))
print(max(ImageStat.Stat(apart).mean), *reference.size)
";

/// Holds the HEIC `name` against the other program's decoding of it. Colours are compared in
/// the mean of a reduction: of four pixels that share a colour, the one program has it stand at the
/// first and spreads it from there, the other gives it to all four; at edges they differ by half a pixel.
fn agrees(desk: &Desk, name: &str) {
    let png = format!("{name}.png");
    desk.ask("heif-convert", &[name, &png]);
    let made = desk.prepare(name, &[20_000]);
    let found = numbers(&desk.python(COMPARED, &[&text(&made.files[0].path), &png]));
    let [ours, theirs, colour, width, height] = found[..] else { panic!("{found:?}") };
    assert!(ours > theirs - 0.5, "{name}: {ours} dB; {theirs} dB are JPEG's own");
    assert!(colour <= 3.0, "{name}: colours {colour} apart");
    assert_eq!([f64::from(made.width), f64::from(made.height)], [width, height], "{name}");
    let seen = inspect(&fs::read(desk.path(name)).expect("the photo")).expect("a photo");
    assert_eq!((seen.format, seen.width, seen.height), (Format::Heic, made.width, made.height), "{name}");
}

fn write(desk: &Desk, name: &str, bytes: &[u8]) {
    let made = fs::File::create_new(desk.path(name)).and_then(|mut file| file.write_all(bytes));
    made.unwrap_or_else(|fault| panic!("{name}: {fault}"));
}

#[test]
fn every_size_depth_and_kind_is_decoded_as_libheif_does() {
    let desk = Desk::new();
    desk.python(
        "
for width, height in ((1200, 900), (641, 479), (255, 241)):
    photo(width, height).save(f'{width}x{height}.png')
photo(320, 240).convert('L').save('grey.png')
clear = photo(320, 240)
clear.putalpha(Image.radial_gradient('L').resize(clear.size))
clear.save('clear.png')
open('deep.png', 'wb').write(deep_png(photo(320, 240)))
",
        &[],
    );
    let coded: [(&str, &[&str]); 4] = [
        ("usual", &["-q", "75"]),
        ("full-chroma", &["-q", "75", "-p", "chroma=444"]),
        ("lossless", &["-L"]),
        ("thumbnail", &["-q", "50", "-t", "32"]),
    ];
    for photo in ["1200x900", "641x479", "255x241", "grey", "clear"] {
        let ways = if photo == "641x479" { &coded[..] } else { &coded[..1] };
        for (way, options) in ways {
            let (png, name) = (format!("{photo}.png"), format!("{photo}-{way}.heic"));
            desk.ask("heif-enc", &[*options, &["-o", &name, &png]].concat());
            agrees(&desk, &name);
        }
    }
    for depth in ["10", "12"] {
        let name = format!("{depth}-bit.heic");
        desk.ask("heif-enc", &["-q", "80", "-b", depth, "-o", &name, "deep.png"]);
        agrees(&desk, &name);
    }
}

#[test]
fn a_photo_held_any_way_comes_out_as_libheif_turns_it() {
    let desk = Desk::new();
    desk.python("photo(320, 200).save('photo.png')", &[]);
    desk.ask("heif-enc", &["-q", "75", "-o", "photo.heic", "photo.png"]);
    let photo = fs::read(desk.path("photo.heic")).expect("the photo");
    // `heif-enc` writes no turn: the property that tells the bits a channel becomes one
    // (ISO/IEC 23008-12, 6.5.10 and 6.5.12: one byte counts, what follows is left unread).
    let at = photo.windows(4).position(|name| name == b"pixi").expect("a property to change");
    for (kind, values) in [(b"irot", 0..4), (b"imir", 0..2)] {
        for value in values {
            let mut turned = photo.clone();
            turned[at..at + 4].copy_from_slice(kind);
            turned[at + 4] = value;
            let name = format!("{}-{value}.heic", String::from_utf8_lossy(kind));
            write(&desk, &name, &turned);
            agrees(&desk, &name);
        }
    }
    let upright = desk.prepare("irot-0.heic", &[320]);
    assert_eq!((upright.width, upright.height), (320, 200));
    let turned = desk.prepare("irot-1.heic", &[320]);
    assert_eq!((turned.width, turned.height), (200, 320));
}

#[test]
fn a_grid_of_tiles_as_telephones_write_it_is_put_together() {
    let desk = Desk::new();
    desk.python("open('photo.rgb', 'wb').write(photo(1300, 1100).tobytes())", &[]);
    let pixels = fs::read(desk.path("photo.rgb")).expect("the pixels");
    let grid = heifer::encode_rgb8(1300, 1100, &pixels, &heifer::EncodeOptions::default()).expect("a grid");
    assert!(grid.windows(4).filter(|name| name == b"hvc1").count() > 4, "tiles");
    assert!(grid.windows(4).any(|name| name == b"grid"));
    write(&desk, "grid.heic", &grid);
    agrees(&desk, "grid.heic");
}

#[test]
fn display_p3_comes_out_as_littlecms_brings_it_to_srgb() {
    let desk = Desk::new();
    write(&desk, "profile.icc", &ColorProfile::new_display_p3().encode().expect("a profile"));
    desk.python(
        "
board = Image.new('RGB', (256, 128))
for at, colour in enumerate([(250, 10, 10), (20, 240, 30), (10, 20, 240), (200, 120, 40), (60, 160, 170), (240, 240, 240), (30, 90, 40), (120, 120, 120)]):
    board.paste(colour, ((at % 4) * 64, (at // 4) * 64, (at % 4) * 64 + 64, (at // 4) * 64 + 64))
board.save('board.png', icc_profile=open('profile.icc', 'rb').read())
",
        &[],
    );
    desk.ask("heif-enc", &["-L", "-p", "chroma=444", "-o", "board.heic", "board.png"]);
    let made = desk.prepare("board.heic", &[256]);
    assert!(!made.unread_profile);
    let found = numbers(&desk.python(
        "
stored = Image.open('board.png')
srgb = ImageCms.createProfile('sRGB')
reference = ImageCms.profileToProfile(stored, ImageCms.ImageCmsProfile('profile.icc'), srgb)
ours = Image.open(sys.argv[1])
for other in (ours, stored):
    print(max(abs(a - b) for y in (32, 96) for x in (32, 96, 160, 224)
              for a, b in zip(other.getpixel((x, y)), reference.getpixel((x, y)))))
",
        &[&text(&made.files[0].path)],
    ));
    assert!(found[0] <= 6.0, "{} of 255 from LittleCMS", found[0]);
    assert!(found[1] > 15.0, "the profile would hardly matter ({})", found[1]);
}

#[test]
fn what_can_not_be_decoded_is_refused_with_the_way_to_convert_it() {
    let desk = Desk::new();
    desk.python("open('photo.rgb', 'wb').write(photo(160, 120).tobytes())", &[]);
    let pixels = fs::read(desk.path("photo.rgb")).expect("the pixels");
    let photo = heifer::encode_rgb8(160, 120, &pixels, &heifer::EncodeOptions::default()).expect("a photo");
    // Light without an upper end (ITU-T H.273: primaries 9, transfer 16) has no place in sRGB; nor
    // is every picture in such a file coded in HEVC.
    let bright = replaced(&photo, b"nclx\0\x01\0\x0d", b"nclx\0\x09\0\x10");
    let otherwise = replaced(&photo, b"hvc1", b"j2k1");
    for (name, bytes) in [("bright.heic", bright), ("otherwise.heic", otherwise)] {
        write(&desk, name, &bytes);
        let fault = desk.try_prepare(name, &[100]).expect_err(name);
        assert!(matches!(fault, PictureError::Heic { .. }), "{fault:?}");
        assert!(fault.to_string().starts_with("a HEIC photo that can't be decoded ("), "{fault}");
        assert!(fault.remedy().text().contains("heif-convert photo.heic photo.jpg"), "{}", fault.remedy());
    }
    write(&desk, "photo.heic", &photo);
    assert!(desk.try_prepare("photo.heic", &[100]).is_ok());
}

/// `bytes` with every `from` in them made `to`; there must be one.
fn replaced(bytes: &[u8], from: &[u8], to: &[u8]) -> Vec<u8> {
    let mut bytes = bytes.to_vec();
    let places: Vec<usize> = (0..bytes.len() - from.len()).filter(|&at| bytes[at..].starts_with(from)).collect();
    assert!(!places.is_empty(), "nothing to replace");
    places.into_iter().for_each(|at| bytes[at..at + to.len()].copy_from_slice(to));
    bytes
}

#[test]
fn a_heic_cut_short_or_damaged_anywhere_never_panics() {
    let desk = Desk::new();
    desk.python("photo(96, 80).save('photo.png')", &[]);
    desk.ask("heif-enc", &["-q", "60", "-o", "photo.heic", "photo.png"]);
    let photo = fs::read(desk.path("photo.heic")).expect("the photo");
    for part in 1..40 {
        let cut = &photo[..photo.len() * part / 40];
        assert!(inspect(cut).is_err(), "{part}/40");
    }
    assert_eq!(inspect(&photo[..photo.len() - 1]), Err(PictureError::Truncated(Format::Heic)));
    let damage = proptest::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..10);
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig::with_cases(300));
    let outcome = runner.run(&damage, |damage| {
        let mut bytes = photo.clone();
        damage.into_iter().for_each(|(at, byte)| *at.get_mut(&mut bytes) = byte);
        let source = [Source::new("any", || Ok(bytes.clone()))];
        let made = prepare(&desk.cache, &source, &[20], &|_| ()).remove(0);
        let gave_up = matches!(&made, Err(PictureError::Damaged { detail, .. }) if detail == "its decoder gave up");
        prop_assert!(!gave_up, "the decoder panicked");
        Ok(())
    });
    outcome.unwrap_or_else(|fault| panic!("{fault}"));
}
