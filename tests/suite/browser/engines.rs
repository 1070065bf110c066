//! A client's evening and an installer's readings in the two other engines of telephones' browsers.

use super::agreed::{book, free_port};
use super::drive;

#[test]
fn the_whole_evening_and_the_readings_go_well_in_webkit_and_in_gecko() {
    let port = free_port();
    let project = book(port);
    let (root, site) = (project.root(), project.beside("site"));
    let program = env!("CARGO_BIN_EXE_bookmatch");
    drive("evening.mjs", &[program, root.to_str().unwrap(), site.to_str().unwrap(), &port.to_string()]);
}
