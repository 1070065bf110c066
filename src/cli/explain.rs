//! `explain`: the handbook page of a rule, a kind, a record or a field.

use crate::explain::explain;

use super::report::print;
use super::{CLEAN, Failure};

/// Explains a rule, a kind of selection, a record or a field
///
/// Without a name it lists what can be explained.
#[derive(clap::Args)]
pub struct Explain {
    /// Such as `fit/width`, `refrigerator`, `opening` or `lead time`
    #[arg(value_name = "RULE|KIND|FIELD")]
    name: Vec<String>,
}

impl Explain {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        print(&explain(&self.name.join(" "))?)?;
        Ok(CLEAN)
    }
}
