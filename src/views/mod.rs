//! What each page says, worded and formatted: its plain struct, and how it is made from book and assessment.
//!
//! Nothing here knows a template; a template knows nothing but these structs. Every field is in the
//! reader's words: templates loop over lists and leave out what is absent, and do nothing else. A page is
//! one file, in the folder of those who read it.

pub mod client;
pub mod office;
pub mod pages;
pub mod paper;
pub mod shared;
pub mod trades;

#[cfg(test)]
pub(crate) mod samples;
