//! Photographs made ready for pages: turned upright, in sRGB, without metadata, at the widths asked for.
//!
//! [`inspect`] reads a photo's header for the review; [`prepare`] makes the renditions, each photo
//! decoded once, and keeps them in a [`Cache`] that may be deleted at any moment. Nothing here
//! knows of books, pages or findings: a [`PictureError`] says what is wrong and how to mend it. What is done
//! to the pixels stands in `engine/`, a package of its own.

mod cache;
mod entry;
mod fault;
mod gate;
mod prepare;

pub use crate::digest::{Digest, Hasher, NotADigest, PIECE};
pub use bookmatch_pictures::{Excess, Facts, Format, PictureError, PictureLimits, inspect, inspect_within};
pub use cache::{Cache, CacheError};
pub use entry::{Rendition, Renditions};
pub use prepare::{Source, prepare};

/// The widths of renditions in pixels: a full page, a card on a dense screen, a card, a thumbnail.
pub const DEFAULT_WIDTHS: [u32; 4] = [1600, 960, 480, 240];
