//! What a thing that heats is fed with.

use crate::vocabulary::words;

words! {
    /// What burners or heating elements take.
    pub enum Fuel {
        /// Gas, alone or beside electricity.
        Gas = "gas",
        /// Electricity, by elements.
        Electric = "electric",
        /// Electricity, by induction.
        Induction = "induction",
    }
}
