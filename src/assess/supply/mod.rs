//! What a service is, read from the trade's words: `120 V 15 A 5-15`, `natural gas, 51000 Btu/h`.
//!
//! The book keeps the words, which are printed as they stand; what can be read of them is compared.

mod gas;
mod phrase;
mod pipe;
mod power;
mod side;

pub use gas::{Gas, GasKind};
pub use phrase::{Face, Meaning, Told, lengths};
pub use pipe::Pipe;
pub use power::Power;
pub use side::Side;

/// Airflow in cubic feet a minute: `390 cfm`.
pub fn airflow(words: &str) -> Option<u32> {
    number_before(words, &["cfm"])
}

/// The whole number that stands right before a unit: `51,000` of `51,000 Btu/h`.
fn number_before(text: &str, units: &[&str]) -> Option<u32> {
    let lower = text.to_lowercase();
    units.iter().find_map(|unit| {
        lower.match_indices(unit).find_map(|(at, _)| {
            let after = lower[at + unit.len()..].chars().next();
            if after.is_some_and(char::is_alphanumeric) {
                return None;
            }
            let before = lower[..at].trim_end();
            let from = before.rfind(|c: char| !c.is_ascii_digit() && c != ',' && c != '.').map_or(0, |at| at + 1);
            let figures: String = before[from..].chars().filter(|c| *c != ',').collect();
            // Tenths of an ampere or a kilowatt are for whoever asks for them.
            figures.split('.').next()?.parse().ok()
        })
    })
}
