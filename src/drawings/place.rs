//! Points, boxes and the spots where a label may stand.

use super::lettering::Label;
use super::scale::Mil;

/// A point of the drawing; `y` grows downwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DrawingPoint {
    pub x: Mil,
    pub y: Mil,
}

/// An upright box on the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Frame {
    pub left: Mil,
    pub top: Mil,
    pub right: Mil,
    pub bottom: Mil,
}

/// Where a label may stand, and by which part of itself it is held there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot {
    pub at: DrawingPoint,
    pub grip: Grip,
    /// Reads from the foot of the drawing upwards.
    pub turned: bool,
    /// A fine line to what the label speaks of.
    pub leader: Option<DrawingPoint>,
}

/// The part of a label's box that is put on the spot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grip {
    Middle,
    LeftEdge,
    RightEdge,
    Foot,
    Head,
}

impl Frame {
    pub fn new(left: Mil, top: Mil, width: Mil, height: Mil) -> Frame {
        Frame { left, top, right: left + width, bottom: top + height }
    }

    pub fn middle(&self) -> DrawingPoint {
        DrawingPoint { x: (self.left + self.right) / 2, y: (self.top + self.bottom) / 2 }
    }

    pub fn meets(&self, other: &Frame) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    pub fn grown(&self, by: Mil) -> Frame {
        Frame { left: self.left - by, top: self.top - by, right: self.right + by, bottom: self.bottom + by }
    }

    pub fn with(&self, other: &Frame) -> Frame {
        Frame {
            left: self.left.min(other.left),
            top: self.top.min(other.top),
            right: self.right.max(other.right),
            bottom: self.bottom.max(other.bottom),
        }
    }
}

/// Shorthand for a point.
pub const fn at(x: Mil, y: Mil) -> DrawingPoint {
    DrawingPoint { x, y }
}

impl Spot {
    pub const fn new(x: Mil, y: Mil, grip: Grip) -> Spot {
        Spot { at: DrawingPoint { x, y }, grip, turned: false, leader: None }
    }

    pub const fn turned(self) -> Spot {
        Spot { turned: true, ..self }
    }

    pub const fn led(self, x: Mil, y: Mil) -> Spot {
        Spot { leader: Some(DrawingPoint { x, y }), ..self }
    }

    /// The room that a label takes here.
    pub fn frame(&self, label: &Label) -> Frame {
        let (w, h) = match self.turned {
            false => (label.width(), label.height()),
            true => (label.height(), label.width()),
        };
        let DrawingPoint { x, y } = self.at;
        match self.grip {
            Grip::Middle => Frame::new(x - w / 2, y - h / 2, w, h),
            Grip::LeftEdge => Frame::new(x, y - h / 2, w, h),
            Grip::RightEdge => Frame::new(x - w, y - h / 2, w, h),
            Grip::Foot => Frame::new(x - w / 2, y - h, w, h),
            Grip::Head => Frame::new(x - w / 2, y, w, h),
        }
    }
}
