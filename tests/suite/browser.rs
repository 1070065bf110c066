//! Published pages in a real browser; to come.
