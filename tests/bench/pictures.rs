//! Photos made ready against nothing but decoding them, in one run: time, and the most memory held.
//!
//! `cargo bench --bench pictures` (or, without a release build, `--profile dev`: the libraries are
//! optimised there too). The goal: at most 2.2 times the decoding, under 300 MB, on all processors.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use bookmatch::pictures::{Cache, DEFAULT_WIDTHS, Source, prepare};
use fast_image_resize::images::Image;
use fast_image_resize::{PixelType, Resizer};
use jpeg_encoder::{ColorType, Encoder};
use rayon::prelude::*;
use zune_jpeg::JpegDecoder;
use zune_jpeg::zune_core::bytestream::ZCursor;

const PHOTOS: usize = 24;
const SIZE: (u16, u16) = (4032, 3024);
const TIMES: usize = 3;

fn main() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let photos = draw(folder.path());
    let threads = std::thread::available_parallelism().map_or(1, |n| n.get()).min(4);
    let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build().expect("threads");
    forget_peak();
    // Taken in turns, the best of each: what else the machine does meets both alike.
    let (mut decoding, mut making, mut again) = (Duration::MAX, Duration::MAX, Duration::MAX);
    for _ in 0..TIMES {
        let cache = Cache::temporary().expect("a temporary cache");
        making = making.min(timed(|| make(&photos, &cache)));
        again = again.min(timed(|| make(&photos, &cache)));
        decoding = decoding.min(timed(|| pool.install(|| photos.par_iter().with_max_len(1).for_each(decode))));
    }
    let ratio = making.as_secs_f64() / decoding.as_secs_f64();
    println!("{PHOTOS} photos of {} × {}, {threads} at once, best of {TIMES}", SIZE.0, SIZE.1);
    println!("decoded alone   {decoding:>10.2?}");
    println!("made ready      {making:>10.2?}   {ratio:.2} times (goal: at most 2.20)");
    println!("taken from cache{again:>10.2?}   {:.3} of the first", again.as_secs_f64() / making.as_secs_f64());
    println!("most memory     {:>7} MB   (goal: under 300)", peak_kilobytes() / 1024);
}

#[expect(clippy::disallowed_methods, reason = "a benchmark takes the time")]
fn timed(work: impl FnOnce()) -> Duration {
    let start = Instant::now();
    work();
    start.elapsed()
}

fn make(photos: &[PathBuf], cache: &Cache) {
    let sources: Vec<Source<'_>> = photos.iter().map(|path| Source::file("photo", path.clone())).collect();
    for made in prepare(cache, &sources, &DEFAULT_WIDTHS, &|_| ()) {
        made.expect("a photo made ready");
    }
}

fn decode(path: &PathBuf) {
    let bytes = std::fs::read(path).expect("the photo");
    let pixels = JpegDecoder::new(ZCursor::new(&bytes)).decode().expect("a JPEG");
    std::hint::black_box(pixels);
}

/// Draws photos with the grain and size of a telephone's; half lie on their side, half are in Display P3.
fn draw(folder: &Path) -> Vec<PathBuf> {
    let coarse = noise(126, 95, 1);
    let (width, height) = (u32::from(SIZE.0), u32::from(SIZE.1));
    let mut smooth = Image::new(width, height, PixelType::U8x3);
    Resizer::new().resize(&coarse, &mut smooth, None).expect("a larger picture");
    let mut random = Random(7);
    let pixels: Vec<u8> =
        smooth.buffer().iter().map(|&sample| sample.saturating_add((random.next() % 14) as u8)).collect();
    let profile = moxcms::ColorProfile::new_display_p3().encode().expect("a profile");
    let (mut photos, mut files) = (Vec::new(), Vec::new());
    for kind in 0..4 {
        let mut bytes = Vec::new();
        let mut encoder = Encoder::new(&mut bytes, 92);
        if kind % 2 == 1 {
            encoder.add_icc_profile(&profile).expect("room for the profile");
        }
        if kind >= 2 {
            // A TIFF header and one entry: orientation 6, a quarter turn.
            let turned = b"II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0\x06\0\0\0\0\0\0\0";
            encoder.add_exif_metadata(turned).expect("room for the orientation");
        }
        encoder.encode(&pixels, SIZE.0, SIZE.1, ColorType::Rgb).expect("a JPEG");
        files.push(bytes);
    }
    for number in 0..PHOTOS {
        let path = folder.join(format!("{number}.jpg"));
        let mut file = tempfile::NamedTempFile::new_in(folder).expect("a file");
        // What follows the end of the picture makes each file its own.
        file.write_all(&files[number % files.len()]).expect("room");
        file.write_all(&number.to_le_bytes()).expect("room");
        file.persist(&path).expect("room");
        photos.push(path);
    }
    photos
}

fn noise(width: u32, height: u32, seed: u64) -> Image<'static> {
    let mut random = Random(seed);
    let pixels = (0..width * height * 3).map(|_| (random.next() % 240) as u8).collect();
    Image::from_vec_u8(width, height, pixels, PixelType::U8x3).expect("a picture")
}

/// Numbers that look random and are the same in every run (xorshift).
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 >> 11
    }
}

/// Has Linux start the most memory held anew, so that drawing doesn't count.
fn forget_peak() {
    let reset = std::fs::OpenOptions::new().write(true).open("/proc/self/clear_refs");
    if reset.and_then(|mut file| file.write_all(b"5")).is_err() {
        println!("the most memory counts the drawing of the photos too");
    }
}

/// The most memory held, in kilobytes, as Linux tells it; 0 elsewhere.
fn peak_kilobytes() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|line| line.split_whitespace().next()?.parse().ok()).unwrap_or(0)
}
