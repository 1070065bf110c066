//! The hole of a bowl or a tray, which the words of a drain name beside its pipe.

use crate::units::Length;

use super::phrase;
use super::pipe::with_nominal_sizes;
use super::sizes::with_units;
use super::{InWords, Pipe};

/// What is cut for a waste, or closes it: the size beside it is no pipe's.
const HOLES: [&str; 9] = ["basket", "strainer", "opening", "hole", "loch", "válvula", "valvula", "cesta", "waste"];
/// What a pipe of a basin, a sink or a tray is called.
const PIPES: [&str; 12] =
    ["tailpiece", "trap", "pipe", "outlet", "waste", "bsp", "sifón", "sifon", "siphon", "salida", "drain", "tubo"];
/// No pipe of a basin, a sink or a tray is as wide (common practice: up to 2").
const LEAST_SOIL: Length = Length::from_millimetres(60);

/// The phrases that tell of the pipe: where they name that one, the wider hole that it hangs in is left out.
pub(super) fn without_hole(words: &str) -> String {
    let lower = phrase::with_points(&with_nominal_sizes(&words.to_lowercase(), |size| Some(format!("{size} mm"))));
    let lower = with_units(&lower);
    let apart = lower.replace(" con ", ", ");
    let parts: Vec<&str> = apart.split([',', ';']).collect();
    let has = |part: &str, known: &[&str]| known.iter().any(|word| part.contains(word));
    let size = |part: &str| Pipe::of_words(part).size;
    let pipes = parts.iter().filter(|part| has(part, &PIPES) && !has(part, &HOLES[..8]));
    let Some(pipe) = pipes.filter_map(|part| size(part)).find(|size| *size < LEAST_SOIL) else {
        return lower;
    };
    let is_hole = |part: &str| {
        let names_a_pipe = has(part, &["trap", "pipe", "sifón", "sifon", "siphon"]);
        let is_wide =
            size(part).is_some_and(|hole| if has(part, &HOLES[..8]) { hole > pipe } else { hole >= LEAST_SOIL });
        has(part, &HOLES) && !names_a_pipe && is_wide
    };
    parts.into_iter().filter(|part| !is_hole(part)).collect::<Vec<_>>().join(",")
}

#[cfg(test)]
mod tests {
    use super::super::Drain;
    use super::*;

    #[test]
    fn the_hole_that_a_waste_hangs_in_is_no_pipe() {
        let size = |words: &str| Drain::of_words(words).pipe.size;
        let is = |text: &str| Some(text.parse::<Length>().unwrap());
        for (words, pipe) in [
            ("3 1/2\" basket strainer, 1 1/2\" tailpiece", "1 1/2\""),
            ("standard 3 1/2\" opening, 1 1/2\" trap", "1 1/2\""),
            ("1 3/4\" drain hole, 1 1/4\" tailpiece", "1 1/4\""),
            ("90 mm waste, 40 mm or larger pipe", "40 mm"),
            ("90 mm fast-flow waste, 40 mm outlet", "40 mm"),
            ("90 mm basket strainer waste, 1 1/2\" BSP", "1 1/2\""),
            ("43 mm waste hole, 32 mm waste", "32 mm"),
            ("válvula de 3 1/2\" con sifón de 40 mm", "40 mm"),
            ("cesta 3 1/2\", sifón 40 mm", "40 mm"),
            ("90 mm basket waste, 50 mm trap", "50 mm"),
            ("Ablaufloch 46 mm, G 1 1/4", "1 1/4\""),
            ("G 1¼, Ablaufloch 46 mm", "1 1/4\""),
            ("válvula de 90 mm, salida 40 o 50 mm", "40 mm"),
            ("válvula de 90 mm, sifón 40/50 mm", "40 mm"),
            ("1 1/4 or 1 1/2\" trap", "1 1/4\""),
            // What names a pipe alone, or a soil pipe, is read as before.
            ("50 mm waste, 40 mm trap", "50 mm"),
            ("2\" trap, 1 1/2\" tailpiece", "2\""),
            ("90 mm fast-flow trap, 40 mm pipe", "90 mm"),
            ("90 mm waste, 110 mm pipe", "90 mm"),
            ("3 1/2\" opening", "3 1/2\""),
        ] {
            assert_eq!(size(words), is(pipe), "{words}");
        }
        let told = Drain::of_words("1 1/2\" ABS P-trap, 16\" AFF, vented").pipe;
        assert_eq!((told.size, told.height), (is("1 1/2\""), is("16\"")));
        let sized = Drain::of_words("3 1/2\" basket strainer, 1 1/2\" tailpiece, 16\" AFF").pipe;
        assert_eq!(sized.height, is("16\""));
    }
}
