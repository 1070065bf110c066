//! Files, and where in them a value stands.
//!
//! [`Folder`] is the only door to the user's files: nothing outside it is ever read. [`yaml`] turns
//! the text of one file into a tree whose every node knows its [`Span`].

mod span;
pub use span::{FileId, Place, Position, Span, Spanned};

mod file;
pub use file::{Files, SourceFile};

mod aside;
pub use aside::is_aside;

mod folder;
pub use folder::{Entry, Folder, FolderError, FolderState, RecordFile, Recorded, STATED, StatedIn, Stray, StrayKind};

mod regular;

pub mod portable;

pub mod yaml;
