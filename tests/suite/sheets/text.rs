//! What stands on the pages.

use super::sample::{kitchen, picture};
use bookmatch::publish::sheets::sign_off;

#[test]
fn first() {
    let bytes = sign_off(&kitchen(), &picture).unwrap();
    std::fs::write("/tmp/sheets-k.pdf", bytes).unwrap();
    let bytes = sign_off(&super::sample::house(60), &picture).unwrap();
    std::fs::write("/tmp/sheets-h.pdf", bytes).unwrap();
}
