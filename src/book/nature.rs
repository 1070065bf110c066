//! What varies by nature: the sample shows the kind, and no piece is the sample.

use crate::vocabulary::words;

words! {
    /// What of a thing is never twice the same. Its page says so in standing words.
    pub enum Nature {
        /// Cut from a quarry.
        NaturalStone = "natural stone" also "stone" "marble" "granite" "quartzite" "slate" "limestone" "travertine" "soapstone" "schist" "onyx",
        /// Grown.
        SolidWood = "solid wood" also "wood" "timber" "oak" "ash" "walnut" "maple" "beech" "cherry" "pine" "bamboo" "cork" "veneer",
        /// Once a hide.
        Leather = "leather" also "hide",
        /// Made by hand, piece by piece.
        Handmade = "handmade" also "made by hand" "hand made" "hand-made" "handmade tile" "terracotta" "hand-painted",
        /// A metal without lacquer, which darkens where it is touched.
        BareMetal = "bare metal" also "unlacquered brass" "living finish" "copper" "bronze" "zinc" "unlacquered",
        /// Limewash, plaster, concrete: laid on or cast by hand.
        LaidByHand = "lime or plaster" also "limewash" "lime" "plaster" "concrete" "terrazzo" "microcement",
    }
}
