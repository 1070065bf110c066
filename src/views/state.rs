//! States of decision, of fit and of a finding: a word and a shape, never a colour alone.

use serde::Serialize;

/// A word and the shape that stands beside it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct State {
    pub shape: Shape,
    /// What it is, and of whom, in the reader's words: `Waiting for Sven`.
    pub word: String,
}

impl State {
    /// A state in the given words.
    pub fn new(shape: Shape, word: impl Into<String>) -> State {
        State { shape, word: word.into() }
    }
}

/// The shapes that the theme can draw, each for one meaning.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shape {
    /// Solid disc with the tick cut out.
    Approved,
    /// Half a disc, and written lines.
    ApprovedAsNoted,
    /// Broken ring: nobody has decided yet.
    Waiting,
    /// Triangle with an exclamation mark: an earlier approval is void.
    ChangedSinceSigned,
    /// Ring that turns back.
    ReviseAndResubmit,
    /// Ring, crossed.
    Rejected,
    /// An opening with a thing inside it.
    Fits,
    /// An opening with a hatched thing that goes past it.
    DoesNotFit,
    /// An opening with a question in it: a figure is missing, or only a general default speaks.
    FitUnknown,
    /// A broken opening: not measured yet.
    NotMeasured,
    /// Solid octagon with a bar: a finding that stops the work.
    Stop,
    /// Ring with a question mark: a finding that wants an answer.
    Query,
    /// Written lines: advice.
    Note,
    /// A line drawn through: a finding that was waived.
    Waived,
}

impl Shape {
    /// The decisions, in the order in which a page counts them.
    pub const DECISIONS: [Shape; 6] = [
        Shape::Approved,
        Shape::ApprovedAsNoted,
        Shape::Waiting,
        Shape::ChangedSinceSigned,
        Shape::ReviseAndResubmit,
        Shape::Rejected,
    ];
}
