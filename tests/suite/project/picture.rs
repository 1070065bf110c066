//! Small photographs for tests, different for each name and the same on every run.

use jpeg_encoder::{ColorType, Encoder};

/// A JPEG with a slope of colour that depends on the name.
pub fn jpeg(name: &str, width: u16, height: u16) -> Vec<u8> {
    let seed = name.bytes().fold(17_u8, |seed, byte| seed.wrapping_mul(31).wrapping_add(byte));
    let slope = |at: u16, of: u16| u8::try_from(u32::from(at) * 255 / u32::from(of)).expect("a byte");
    let rows = (0..height).flat_map(|y| (0..width).map(move |x| (x, y)));
    let pixels: Vec<u8> = rows.flat_map(|(x, y)| [slope(x, width), slope(y, height), seed]).collect();
    let mut bytes = Vec::new();
    let encoder = Encoder::new(&mut bytes, 85);
    encoder.encode(&pixels, width, height, ColorType::Rgb).expect("a JPEG");
    bytes
}

#[test]
fn the_picture_is_one_that_an_independent_decoder_reads() {
    // The decoder of the `image` library, which shares no code with the encoder.
    let bytes = jpeg("a.jpg", 96, 64);
    let read = image::load_from_memory_with_format(&bytes, image::ImageFormat::Jpeg).unwrap();
    assert_eq!((read.width(), read.height()), (96, 64));
    assert_eq!(bytes, jpeg("a.jpg", 96, 64));
    assert_ne!(bytes, jpeg("b.jpg", 96, 64));
}
