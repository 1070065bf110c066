//! What a thing that heats is fed with.

use crate::vocabulary::{Words, words};

words! {
    /// What burners or heating elements take.
    pub enum Fuel {
        /// Gas, alone or beside electricity.
        Gas = "gas" also "dual fuel" "natural gas" "propane" "LPG",
        /// Electricity, by elements.
        Electric = "electric",
        /// Electricity, by induction.
        Induction = "induction",
    }
}

impl Fuel {
    /// What a name says that a thing is fed with: `gas cooktop`, `dual fuel range`, `induction hob`.
    pub fn told_by(name: &str) -> Option<Self> {
        let told: Vec<&str> = name.split([' ', '-', '_']).filter(|word| !word.is_empty()).collect();
        let says = |words: &str| {
            let asked = words.split(' ').count();
            let are =
                |told: &[&str]| told.iter().zip(words.split(' ')).all(|(one, asked)| one.eq_ignore_ascii_case(asked));
            told.windows(asked).any(are)
        };
        let also = Self::ALSO.iter().filter(|(also, _)| says(also)).find_map(|(_, word)| Self::of(word));
        also.or_else(|| Self::WORDS.iter().filter(|word| says(word)).find_map(|word| Self::of(word)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_tells_what_a_thing_is_fed_with() {
        let told = ["gas cooktop", "Dual-fuel range cooker", "induction hob", "electric dryer", "cooktop", "gasket"];
        let fuels = told.map(Fuel::told_by);
        let (gas, induction) = (Some(Fuel::Gas), Some(Fuel::Induction));
        assert_eq!(fuels, [gas, gas, induction, Some(Fuel::Electric), None, None]);
    }
}
