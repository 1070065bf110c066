//! A mend that is certain: what is written, and what to write instead.

use crate::source::Span;

/// One stretch of a file, and what stands there once it is mended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fix {
    /// What is replaced.
    pub span: Span,
    /// What is written instead.
    pub with: String,
}
