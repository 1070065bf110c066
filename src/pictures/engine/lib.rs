//! Photographs from bytes to bytes: what a file holds, and its renditions.
//!
//! A package of its own, so that it alone is optimised while the rest is worked on: the decoders' loops
//! are compiled where they are used. It knows of no folder, no cache and no book.

// What cameras write is input: nothing that panics on it.
#![cfg_attr(
    not(test),
    deny(
        clippy::expect_used,
        clippy::indexing_slicing,
        clippy::panic,
        clippy::print_stderr,
        clippy::print_stdout,
        clippy::string_slice,
        clippy::todo,
        clippy::unimplemented,
        clippy::unreachable,
        clippy::unwrap_used
    )
)]

mod error;
mod limits;

mod format;
mod inspect;
mod scan;
mod wholeness;

mod decode;
#[cfg(feature = "heic")]
mod heic;
mod jpeg;
mod raster;

mod colour;
mod render;
mod resize;

pub use decode::working_bytes;
pub use error::{Excess, PictureError};
pub use format::Format;
pub use inspect::{Facts, inspect, inspect_within};
pub use limits::PictureLimits;
pub use render::{Encoded, Rendered, SETTINGS, render};
