//! HEIC photos as telephones store them; what can't be decoded is refused with the way to convert it.

use heifer::heifer_isobmff::HeifFile;
use heifer::heifer_isobmff::boxes::Property;
use image::metadata::Orientation;

use super::error::PictureError;
use super::format::Format;
use super::inspect::Facts;
use super::limits::PictureLimits;
use super::raster::{Decoded, Raster, Samples, flatten};

/// What the header says, with the crop and rotation that the file asks for.
///
/// The EXIF orientation is not looked at: the file's own transformations stand for it
/// (ISO/IEC 23008-12, 6.5.10 and Annex A.2).
pub(super) fn facts(bytes: &[u8]) -> Result<Facts, PictureError> {
    let file = HeifFile::parse(bytes).map_err(|fault| refused(&fault))?;
    let id = file.primary_id;
    let stored = file.image_size(id).map_err(|fault| refused(&fault))?;
    let Some((mut width, mut height)) = stored else {
        return Err(PictureError::Heic { detail: "its size is missing".into() });
    };
    for property in file.item_properties(id).map_err(|fault| refused(&fault))? {
        match *property {
            Property::CleanAperture { width: w, height: h, .. } if w.1 > 0 && h.1 > 0 => {
                (width, height) = (w.0 / w.1, h.0 / h.1);
            }
            Property::Rotation(quarters) if quarters % 2 == 1 => {
                (width, height) = (height, width);
            }
            _ => {}
        }
    }
    Ok(Facts { format: Format::Heic, width, height })
}

/// All pixels, already upright. The size must have been checked before.
pub(super) fn decode(bytes: &[u8], limits: &PictureLimits) -> Result<Decoded, PictureError> {
    let file = HeifFile::parse(bytes).map_err(|fault| refused(&fault))?;
    let profile = file.icc_profile(file.primary_id).map_err(|fault| refused(&fault))?;
    let profile = profile.map(<[u8]>::to_vec);
    // One thread: several photos are decoded at once already.
    let options = heifer::Options { max_threads: 1, max_pixels: limits.pixels };
    let decoded = match profile {
        Some(_) => heifer::decode_rgba8(bytes, &options),
        None => heifer::decode_srgb_rgba8(bytes, &options),
    };
    let decoded = decoded.map_err(|fault| refused(&fault))?;
    let (width, height) = (decoded.width, decoded.height);
    let pixels = if decoded.has_alpha {
        let mut pixels = decoded.data;
        flatten(&mut pixels, 3);
        pixels
    } else {
        decoded.into_rgb8()
    };
    let raster = Raster { width, height, samples: Samples::Rgb, pixels };
    Ok(Decoded { raster, profile, orientation: Orientation::NoTransforms })
}

fn refused(fault: &dyn std::error::Error) -> PictureError {
    PictureError::Heic { detail: fault.to_string() }
}
