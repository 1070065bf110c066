//! The words of windows.

use super::shape::{Field, Record, Shape};

/// A window.
pub const WINDOW: Record = Record {
    name: "window",
    about: "a window, or other glass in a wall",
    fields: &[
        Field::optional("width", Shape::Length, "its width", "36\""),
        Field::optional("height", Shape::Length, "its height", "48\""),
        Field::optional("sill", Shape::Length, "its lower edge from the finished floor", "42\""),
        Field::optional("opens", Shape::YesNo, "whether it can be opened", "true"),
        Field::optional("glass", Shape::Text, "its glass", "tempered"),
        Field::optional("from water", Shape::Length, "level distance to the edge of the nearest tub or shower", "40\""),
        Field::optional("above", Shape::Text, "what stands under it", "cooktop"),
    ],
};
