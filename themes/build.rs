//! Builds the program anew when a file of a theme changes: themes are embedded in it.

fn main() {
    println!("cargo::rerun-if-changed=themes/standard");
}
