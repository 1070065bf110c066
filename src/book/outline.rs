//! The finished faces of a room.

use crate::source::Spanned;
use crate::source::yaml::{Node, Value as Yaml};
use crate::units::{Length, phrase};
use crate::vocabulary::{Code, Faults, FieldType, Value, values};

/// The finished faces of a room.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outline {
    /// Length and width.
    Rectangle(Length, Length),
    /// Corners, going round: to the right of a point, and up from it, as on a sheet of paper.
    Corners(Vec<Spanned<(Length, Length)>>),
}

impl Outline {
    /// Length and width, of a rectangle or of the least one around the corners.
    pub fn extent(&self) -> (Length, Length) {
        match self {
            Self::Rectangle(length, width) => (*length, *width),
            Self::Corners(corners) => {
                let spread = |side: fn(&(Length, Length)) -> Length| {
                    let sides = corners.iter().map(|corner| side(&corner.value));
                    let most = sides.clone().max().unwrap_or_default();
                    most - sides.min().unwrap_or_default()
                };
                (spread(|corner| corner.0), spread(|corner| corner.1))
            }
        }
    }
}

impl Value for Outline {
    const TYPE: FieldType =
        FieldType::Either(&FieldType::TwoSides, &FieldType::List(&FieldType::List(&FieldType::Length)));

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        match &node.value {
            Yaml::Scalar { .. } => {
                values::two_sides(node, faults).map(|(length, width)| Self::Rectangle(length, width))
            }
            Yaml::List(items) if !items.is_empty() => {
                // Every corner is read before judging, so that each faulty one is told.
                let corners: Vec<_> = items.iter().map(|item| corner(item, faults)).collect();
                corners.into_iter().collect::<Option<Vec<_>>>().map(Self::Corners)
            }
            _ => {
                faults.wrong_type(node, &Self::TYPE);
                None
            }
        }
    }
}

fn corner(node: &Node, faults: &mut Faults) -> Option<Spanned<(Length, Length)>> {
    if let Yaml::List(items) = &node.value
        && let [across, up] = items.as_slice()
    {
        let (across, up) = (values::length(across, faults), values::length(up, faults));
        return Some(Spanned::new((across?, up?), node.span));
    }
    let message = phrase!("a corner should be two lengths, and is {}", node.what());
    faults.stop(
        Code::WRONG_TYPE,
        node.span,
        message,
        "write how far right and how far up: `[…, …]`, each with its unit",
    );
    None
}
