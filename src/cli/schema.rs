//! `schema`: JSON Schemas, for completion and checking in an editor.

use std::path::PathBuf;

use crate::schema::schemas;

use super::report::{print, say};
use super::{CLEAN, Failure};

/// Prints JSON Schemas of the book's files, for an editor
#[derive(clap::Args)]
pub struct Schema {
    /// Write each schema into this folder instead of printing all of them
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
}

impl Schema {
    /// Runs the command.
    pub fn run(&self) -> Result<u8, Failure> {
        let Some(folder) = &self.out else {
            let all: serde_json::Map<_, _> =
                schemas().into_iter().map(|schema| (schema.file.to_string(), schema.json)).collect();
            print(&(serde_json::to_string_pretty(&all)? + "\n"))?;
            return Ok(CLEAN);
        };
        self.write(folder)?;
        Ok(CLEAN)
    }

    #[expect(
        clippy::disallowed_methods,
        reason = "schemas are single files that the user asked for, not a published folder"
    )]
    fn write(&self, folder: &PathBuf) -> Result<(), Failure> {
        std::fs::create_dir_all(folder).map_err(|error| format!("`{}` can't be made: {error}", folder.display()))?;
        for schema in schemas() {
            let path = folder.join(schema.file);
            let text = serde_json::to_string_pretty(&schema.json)? + "\n";
            std::fs::write(&path, text).map_err(|error| format!("`{}` can't be written: {error}", path.display()))?;
            say(&format!("{} for {}", path.display(), schema.about));
        }
        Ok(())
    }
}
