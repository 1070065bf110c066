//! How large a photo may be, checked before any pixel is decoded.

use super::error::{Excess, PictureError};

/// Limits on one photo. The default suits photos from telephones and cameras.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PictureLimits {
    /// Bytes of the file.
    pub file_bytes: u64,
    /// Width times height.
    pub pixels: u64,
    /// The longer side, in pixels.
    pub side: u32,
    /// Bytes of the decoded pixels (a photo of 16 bits a channel takes twice those of 8).
    pub decoded_bytes: u64,
}

impl Default for PictureLimits {
    fn default() -> PictureLimits {
        PictureLimits {
            file_bytes: 64 * 1024 * 1024,
            pixels: 100_000_000,
            side: 20_000,
            decoded_bytes: 512 * 1024 * 1024,
        }
    }
}

impl PictureLimits {
    /// Refuses a file of too many bytes.
    pub fn check_file(&self, bytes: u64) -> Result<(), PictureError> {
        let limit = self.file_bytes;
        refuse(bytes > limit, Excess::File { bytes, limit })
    }

    /// Refuses a picture of too many pixels, or with too long a side.
    pub fn check_size(&self, width: u32, height: u32) -> Result<(), PictureError> {
        let (side, pixels) = (self.side, self.pixels);
        refuse(width.max(height) > side, Excess::Side { width, height, limit: side })?;
        let area = u64::from(width) * u64::from(height);
        refuse(area > pixels, Excess::Pixels { width, height, limit: pixels })
    }

    /// Refuses a picture that takes too much memory once decoded.
    pub fn check_decoded(&self, bytes: u64) -> Result<(), PictureError> {
        let limit = self.decoded_bytes;
        refuse(bytes > limit, Excess::Memory { bytes, limit })
    }
}

fn refuse(too_large: bool, excess: Excess) -> Result<(), PictureError> {
    if too_large { Err(PictureError::TooLarge(excess)) } else { Ok(()) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_photo_of_12_million_pixels_passes_and_one_of_900_million_does_not() {
        let limits = PictureLimits::default();
        assert_eq!(limits.check_size(4032, 3024), Ok(()));
        let fault = limits.check_size(30_000, 30_000).unwrap_err();
        assert_eq!(fault.to_string(), "30000 × 30000 pixels, past the limit of 20000 a side");
    }

    #[test]
    fn each_limit_is_the_last_size_allowed() {
        let limits = PictureLimits::default();
        assert_eq!(limits.check_size(20_000, 5_000), Ok(()));
        assert!(limits.check_size(20_000, 5_001).is_err());
        assert!(limits.check_size(20_001, 1).is_err());
        assert_eq!(limits.check_file(64 << 20), Ok(()));
        assert!(limits.check_file((64 << 20) + 1).is_err());
        assert!(limits.check_decoded((512 << 20) + 1).is_err());
    }
}
