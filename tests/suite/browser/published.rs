//! What the program publishes from the example, in the browser.

use super::look_at;
use crate::project::example::published;

#[test]
fn every_page_of_the_published_example_is_sound_at_every_width_on_paper_and_without_scripts() {
    let looked = look_at(published());
    for page in ["client/index.html", "installer/index.html", "office/index.html"] {
        assert!(looked.pages.iter().any(|looked| looked == page), "{page} was not looked at");
    }
    looked.is_sound();
}
