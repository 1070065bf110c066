//! The sheets of those who build by rooms: what each says of a small book, and what it says that nobody knows yet.

pub mod code;
mod fabricator;
mod issued;
mod joiner;
mod opening;
mod plan;
mod rough_in;
mod setter;
mod workshop;
