//! Renditions look like the photo: upright, the right size, as sharp as an independent program makes them.

use super::{Desk, numbers, text};
use bookmatch::pictures::{Format, inspect};

/// The likeness in decibels of a rendition to the photo as Pillow turns, lays on white and reduces it.
const LIKENESS: &str = "
photo_, rendition = sys.argv[1:3]
upright = ImageOps.exif_transpose(Image.open(photo_))
if upright.mode in ('RGBA', 'LA', 'P'):
    upright = upright.convert('RGBA')
    upright = Image.alpha_composite(Image.new('RGBA', upright.size, 'white'), upright)
ours = Image.open(rendition)
print(psnr(ours, upright.convert('RGB').resize(ours.size, Image.LANCZOS)), *upright.size)
";

fn likeness(desk: &Desk, photo: &str, width: u32) -> f64 {
    numbers(&desk.python(LIKENESS, &[photo, &desk.rendition(photo, width)]))[0]
}

#[test]
fn all_eight_ways_to_hold_a_camera_come_out_upright_in_every_format() {
    let desk = Desk::new();
    desk.python(
        "
for way in range(1, 9):
    for ending in ('jpg', 'png', 'webp'):
        exif = Image.Exif()
        exif[274] = way
        photo(603, 400).save(f'{way}.{ending}', exif=exif, quality=95)
    photo(603, 400).save(f'{way}.tiff', tiffinfo={274: way})
",
        &[],
    );
    for way in 1..=8 {
        for ending in ["jpg", "png", "webp", "tiff"] {
            let name = format!("{way}.{ending}");
            let made = desk.prepare(&name, &[200]);
            let found = numbers(&desk.python(LIKENESS, &[&name, &text(&made.files[0].path)]));
            assert!(found[0] > 28.0, "{name}: {} dB", found[0]);
            let seen = inspect(&std::fs::read(desk.path(&name)).expect("the photo")).expect("a photo");
            assert_eq!([f64::from(seen.width), f64::from(seen.height)], found[1..], "{name}");
            assert_eq!((made.width, made.height), (seen.width, seen.height), "{name}");
        }
    }
    // The measure tells a photo held one way from the same held another.
    let other = desk.prepare("2.jpg", &[200]);
    let turned = numbers(&desk.python(LIKENESS, &["1.jpg", &text(&other.files[0].path)]));
    assert!(turned[0] < 20.0, "{} dB", turned[0]);
}

#[test]
fn each_width_is_within_half_a_decibel_of_one_made_by_pillow_from_the_full_photo() {
    let desk = Desk::new();
    desk.python("photo(2400, 1800).save('photo.jpg', quality=95)", &[]);
    let made = desk.prepare("photo.jpg", &[1600, 960, 480]);
    let sizes: Vec<(u32, u32)> = made.files.iter().map(|file| (file.width, file.height)).collect();
    assert_eq!(sizes, [(1600, 1200), (960, 720), (480, 360)]);
    for file in &made.files {
        let found = numbers(&desk.python(
            "
ours = Image.open(sys.argv[1])
reference = Image.open('photo.jpg').resize(ours.size, Image.LANCZOS)
reference.save('theirs.jpg', quality=80)
print(psnr(ours, reference), psnr(Image.open('theirs.jpg'), reference))
print(os.path.getsize(sys.argv[1]), os.path.getsize('theirs.jpg'))
",
            &[&text(&file.path)],
        ));
        let [ours, theirs, bytes, their_bytes] = found[..] else { panic!("{found:?}") };
        assert!(ours > theirs - 0.5, "{} wide: {ours} dB against {theirs}", file.width);
        assert!(bytes < their_bytes * 1.15, "{} wide: {bytes} bytes against {their_bytes}", file.width);
    }
}

#[test]
fn a_photo_narrower_than_asked_keeps_its_width_and_is_not_blown_up() {
    let desk = Desk::new();
    desk.python("photo(700, 500).save('small.png')", &[]);
    let made = desk.prepare("small.png", &[1600, 960, 480]);
    let sizes: Vec<(u32, u32)> = made.files.iter().map(|file| (file.width, file.height)).collect();
    assert_eq!(sizes, [(700, 500), (480, 343)]);
}

#[test]
fn every_kind_of_pixel_that_is_read_looks_as_pillow_shows_it() {
    let desk = Desk::new();
    desk.python(
        "
base = photo(500, 400)
grey = base.convert('L')
clear = base.copy()
clear.putalpha(Image.radial_gradient('L').resize(base.size))
base.save('rgb.png'); base.save('rgb.webp', lossless=True); base.save('rgb.tiff', compression='tiff_lzw')
base.save('progressive.jpg', quality=95, progressive=True)
base.save('full-chroma.jpg', quality=95, subsampling=0)
grey.save('grey.jpg', quality=95); grey.save('grey.png'); grey.save('grey.tiff'); grey.convert('1').save('ink.png')
clear.save('clear.png'); clear.save('clear.webp', lossless=True); clear.save('clear.tiff')
clear.convert('LA').save('clear-grey.png')
base.quantize(64).save('palette.png')
base.quantize(64).save('palette-clear.png', transparency=3)
base.convert('CMYK').save('inks.jpg', quality=95)
",
        &[],
    );
    for name in [
        "rgb.png",
        "rgb.webp",
        "rgb.tiff",
        "progressive.jpg",
        "full-chroma.jpg",
        "grey.jpg",
        "grey.png",
        "grey.tiff",
        "ink.png",
        "clear.png",
        "clear.webp",
        "clear.tiff",
        "clear-grey.png",
        "palette.png",
        "palette-clear.png",
        "inks.jpg",
    ] {
        let found = likeness(&desk, name, 250);
        assert!(found > 28.0, "{name}: {found} dB");
    }
}

#[test]
fn sixteen_bits_a_channel_come_down_to_eight() {
    let desk = Desk::new();
    desk.python(
        "
base = photo(300, 200)
open('deep.png', 'wb').write(deep_png(base, between=100))
base.save('plain.png')
",
        &[],
    );
    assert_eq!(desk.prepare("deep.png", &[150]).files[0].digest, desk.prepare("plain.png", &[150]).files[0].digest);
}

#[test]
fn what_an_ending_says_does_not_matter() {
    let desk = Desk::new();
    desk.python("for name in ('photo.jpg', 'photo.png'): photo(100, 80).save(name, 'PNG')", &[]);
    let bytes = std::fs::read(desk.path("photo.jpg")).expect("the photo");
    assert_eq!(inspect(&bytes).expect("a photo").format, Format::Png);
    assert_eq!(desk.prepare("photo.jpg", &[50]), desk.prepare("photo.png", &[50]));
}

#[test]
fn the_average_colour_is_that_of_the_photo() {
    let desk = Desk::new();
    let found = numbers(&desk.python(
        "
photo(800, 600).save('photo.png')
print(*[sum(i * n for i, n in enumerate(band.histogram())) / 480000 for band in Image.open('photo.png').split()])
",
        &[],
    ));
    let average = desk.prepare("photo.png", &[400, 100]).average;
    for (ours, theirs) in average.into_iter().zip(found) {
        assert!((f64::from(ours) - theirs).abs() < 1.5, "{ours} against {theirs}");
    }
}
