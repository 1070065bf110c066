//! What every server of pages needs: the path that is asked for, what a file is, and how a server is ended.

pub mod media;
pub mod path;

mod stop;
pub use stop::Stop;
