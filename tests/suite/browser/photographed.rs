//! Photographs as a telephone takes them: large, turned by a tag, with the place, and one that packs badly.

use std::path::PathBuf;
use std::process::Command;

use jpeg_encoder::{ColorType, Encoder};

use crate::project::{Project, picture};

/// One of 2400 by 1800 pixels that stands on its side, with the place where it was taken; and one of noise.
pub(super) fn taken(project: &Project) -> [PathBuf; 2] {
    let (yard, gravel) = (project.beside("IMG 4.jpg"), project.beside("gravel.jpg"));
    std::fs::write(&yard, picture::jpeg("yard", 2400, 1800)).unwrap();
    let told = ["-EXIF:Orientation#=6", "-EXIF:GPSLatitude=51.5", "-EXIF:Model=QuarrelCam", "-Comment=loading bay"];
    let ran = Command::new("exiftool").args(["-q", "-overwrite_original"]).args(told).arg(&yard).status();
    assert!(ran.expect("exiftool").success());
    let mut chance: u32 = 20_270_116;
    let noise = std::iter::repeat_with(|| {
        chance = chance.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (chance >> 24) as u8
    });
    let pixels: Vec<u8> = noise.take(1700 * 1300 * 3).collect();
    Encoder::new_file(&gravel, 90).unwrap().encode(&pixels, 1700, 1300, ColorType::Rgb).unwrap();
    [yard, gravel]
}
