//! Folder to book, all faults at once.
