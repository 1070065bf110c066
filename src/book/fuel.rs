//! What a thing that heats is fed with.

/// What burners or heating elements take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fuel {
    /// Gas, alone or beside electricity.
    Gas,
    /// Electricity, by elements.
    Electric,
    /// Electricity, by induction.
    Induction,
}

impl Fuel {
    /// Its words in the book.
    pub const WORDS: &'static [&'static str] = &["gas", "electric", "induction"];

    /// The fuel of that word.
    pub fn of(word: &str) -> Option<Self> {
        match word {
            "gas" => Some(Self::Gas),
            "electric" => Some(Self::Electric),
            "induction" => Some(Self::Induction),
            _ => None,
        }
    }
}
