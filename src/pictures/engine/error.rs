//! Why a photo can't be used.

use std::fmt;

use super::format::Format;

/// A photo that can't be shown. `Display` says what is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PictureError {
    /// The bytes are no picture at all; `seems` says what they look like.
    NotAPicture {
        /// What the bytes look like, as in "text".
        seems: &'static str,
    },
    /// A picture whose end is missing.
    Truncated(Format),
    /// A picture whose bytes contradict its format.
    Damaged {
        /// The format it claims.
        format: Format,
        /// What the decoder met.
        detail: String,
    },
    /// A picture past a limit.
    TooLarge(Excess),
    /// A picture of a kind that isn't read.
    Unsupported {
        /// What it is, as in "a GIF".
        kind: String,
    },
    /// A HEIC photo that can't be decoded here.
    Heic {
        /// What stood in the way.
        detail: String,
    },
    /// The file could not be read.
    Io {
        /// What the system said.
        detail: String,
    },
    /// The renditions could not be kept.
    Cache {
        /// What the system said.
        detail: String,
    },
}

/// Which limit a picture passes, what was found, and the limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "each field is named for its unit")]
pub enum Excess {
    /// Bytes of the file.
    File { bytes: u64, limit: u64 },
    /// Pixels of the longer side.
    Side { width: u32, height: u32, limit: u32 },
    /// Pixels in all.
    Pixels { width: u32, height: u32, limit: u64 },
    /// Bytes once decoded.
    Memory { bytes: u64, limit: u64 },
}

impl PictureError {
    /// A fault met by the decoder of `format`: a missing end, or else damage.
    pub(super) fn damaged(format: Format, fault: &(dyn std::error::Error + 'static)) -> PictureError {
        if ends_early(fault) {
            return PictureError::Truncated(format);
        }
        PictureError::Damaged { format, detail: fault.to_string() }
    }
}

/// Whether the fault, or any fault behind it, is a file that ends too soon.
fn ends_early(fault: &(dyn std::error::Error + 'static)) -> bool {
    std::iter::successors(Some(fault), |fault| fault.source())
        .filter_map(|fault| fault.downcast_ref::<std::io::Error>())
        .any(|fault| fault.kind() == std::io::ErrorKind::UnexpectedEof)
}

impl fmt::Display for PictureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PictureError::NotAPicture { seems } => write!(f, "not a picture, but {seems}"),
            PictureError::Truncated(format) => {
                write!(f, "a {format} picture whose end is missing")
            }
            PictureError::Damaged { format, detail } => {
                write!(f, "a damaged {format} picture ({detail})")
            }
            PictureError::TooLarge(excess) => excess.fmt(f),
            PictureError::Unsupported { kind } => write!(f, "{kind}, which is not read here"),
            PictureError::Heic { detail } => {
                write!(f, "a HEIC photo that can't be decoded ({detail})")
            }
            PictureError::Io { detail } => write!(f, "the picture can't be read ({detail})"),
            PictureError::Cache { detail } => {
                write!(f, "its renditions can't be kept: {detail}")
            }
        }
    }
}

impl fmt::Display for Excess {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Excess::File { bytes, limit } => {
                write!(f, "a file of {bytes} bytes, past the limit of {limit}")
            }
            Excess::Side { width, height, limit } => {
                write!(f, "{width} × {height} pixels, past the limit of {limit} a side")
            }
            Excess::Pixels { width, height, limit } => {
                write!(f, "{width} × {height} pixels, past the limit of {limit} in all")
            }
            Excess::Memory { bytes, limit } => {
                write!(f, "{bytes} bytes once decoded, past the limit of {limit}")
            }
        }
    }
}

impl std::error::Error for PictureError {}
