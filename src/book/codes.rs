//! The codes that count for a book, and the house around its rooms.

use crate::source::Spanned;
use crate::vocabulary::{Slot, record};

record! {
    group
    #[derive(Default)]
    pub struct Codes = CODES("codes", "the editions that the place of work has adopted, local amendments, and the firm's own figures") {
        adopts: Vec<Spanned<String>> = "adopts",
            "editions by name and year: their figures stop the work, where a general default only asks",
            "[IRC 2021, NEC 2020, IFGC 2021]";
        figures: Vec<OwnFigure> = "figures",
            "figures that differ here: a local amendment, or the firm's own",
            "[{figure: work aisle for one cook, is: 44\", because: two of them bake, by: the firm}]";
    }
}

record! {
    pub struct OwnFigure = FIGURE("figure", "a figure of a code or guideline that differs in this book, and who says so") {
        figure: Spanned<String> = "figure",
            "its name, as `bookmatch explain figures` lists it",
            "work aisle for one cook";
        is: Spanned<String> = "is", "its value here, with its unit", "44\"";
        because: String = "because", "the amendment's number, or the reason", "town amendment 12-4";
        by: String = "by", "who says so", "town of Wexmarrow";
    }
}

record! {
    group
    #[derive(Default)]
    pub struct House = HOUSE("house", "what the rules must know of the house around the rooms") {
        open_flue: Slot<bool> = "open flue",
            "whether an appliance in the house draws its air from the rooms and vents by its own draft",
            "true";
        heating_value: Slot<u32> = "heating value", "of the gas, in Btu for a cubic foot, from the utility", "1030";
    }
}
