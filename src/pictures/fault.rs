//! What is said of a photo that can't be used, and how it is mended.

use crate::units::{Fault, Phrase};

use super::PictureError;

impl Fault for PictureError {
    fn message(&self) -> Phrase {
        Phrase::plain(&self.to_string())
    }

    fn remedy(&self) -> Phrase {
        let remedy = match self {
            Self::NotAPicture { .. } => "put a JPEG, PNG, WebP, TIFF or HEIC photo in its place, or take its name out",
            Self::Truncated(_) => "copy the photo again from where it was taken",
            Self::Damaged { .. } => "copy the photo again, or open it in a photo editor and export it as JPEG",
            Self::TooLarge(_) => "export a smaller copy; 2400 pixels on the longer side is plenty",
            Self::Unsupported { .. } => "export it as JPEG or PNG, in sRGB, 8 bits a channel",
            Self::Heic { .. } => {
                "convert it to JPEG: export it from the photo application, or run \
                 `heif-convert photo.heic photo.jpg`; most telephones can be set to take JPEG"
            }
            Self::Io { .. } => "check that the file is there and may be read",
            Self::Cache { .. } => {
                "free some space there, or name a folder that can be written to in the variable `TMPDIR`"
            }
        };
        remedy.into()
    }
}
