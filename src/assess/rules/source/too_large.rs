//! Past a limit.

use crate::assess::rules::{Check, declare};

declare! {
    /// A file, its nesting or a picture is past what can be read
    ///
    /// ## What it checks
    /// Text files over 4 MB, values nested more than 64 deep, more than 400,000 values in a file
    /// (aliases counted as often as they are used), pictures past the limits of size.
    ///
    /// ## Why it matters
    /// A book is written by hand. What is past these limits is a slip or an attack, and would cost
    /// the memory of whoever opens it.
    ///
    /// ## Remedy
    /// Split the file; write values out instead of repeating them by alias; save a smaller copy of
    /// the picture.
    ///
    /// ## Example
    /// ```yaml
    /// a: &a [x, x]
    /// b: &b [*a, *a]
    /// c: [*b, *b]     # and so on
    /// ```
    ///
    /// ## Source
    /// Limits of our own (common practice).
    "source/too-large", Stop,
    due: AtOnce, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    #[test]
    fn an_alias_bomb_is_refused() {
        let mut bomb = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for level in 1..9 {
            bomb += &format!("a{level}: &a{level} [{}]\n", format!("*a{}, ", level - 1).repeat(10));
        }
        Trial::of("source/too-large").file("rooms/kitchen/a.yaml", bomb).finds_one();
        Trial::of("source/too-large").file("rooms/kitchen/a.yaml", "selection: Tap\nkind: tap\n").stays_silent();
    }

    #[test]
    fn a_file_over_the_limit_is_refused() {
        let long = format!("selection: Tap\nwhy: {}\n", "x".repeat(4 * 1024 * 1024));
        Trial::of("source/too-large")
            .file("rooms/kitchen/a.yaml", long)
            .finds("`rooms/kitchen/a.yaml` is larger than 4 MB");
    }

    /// Source: the PNG specification (W3C), section 11.2.1: the size stands in the first chunk.
    #[test]
    fn a_picture_of_thirty_thousand_pixels_square_is_refused_by_its_header() {
        let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR".to_vec();
        png.extend(30_000_u32.to_be_bytes());
        png.extend(30_000_u32.to_be_bytes());
        png.extend(b"\x08\x02\0\0\0\0\0\0\0\0\0\0\0IEND\xaeB`\x82");
        let trial = Trial::of("source/too-large").selection("selection: Tap\nkind: tap", "photos: [a.png]");
        trial.file("rooms/kitchen/photos/a.png", png).finds_one();
    }
}
