//! A side in a phrase: `left end`, `stubs at both sides`, `rear centre`.

use super::InWords;

/// The side that a phrase names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
    /// In the middle.
    Middle,
    /// Both sides, or whichever suits.
    Both,
}

/// Words of what a floor or a wall is framed with.
const FRAMING: [&str; 11] =
    ["joist", "stud", "beam", "truss", "rafter", "nogging", "viga", "vigueta", "balken", "bjelke", "solive"];

impl Side {
    /// Its word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Middle => "middle",
            Self::Both => "both sides",
        }
    }

    /// Whether what wants this side is served by what is there.
    pub fn is_served_by(self, there: Self) -> bool {
        self == there || [self, there].contains(&Self::Both)
    }

    /// The one side that a phrase names; none where it names none.
    pub(super) fn read(phrase: &str) -> Option<Self> {
        let lower = phrase.to_lowercase();
        let parts = lower.split([',', ';', '(', ')']).map(|part| -> Vec<&str> {
            part.split(|letter: char| !letter.is_alphabetic()).filter(|word| !word.is_empty()).collect()
        });
        let words: Vec<(&str, bool)> = parts
            .flat_map(|part| {
                let of_framing: Vec<bool> = (0..part.len()).map(|at| is_of_framing(&part, at)).collect();
                part.into_iter().zip(of_framing).collect::<Vec<_>>()
            })
            .collect();
        let mut found: Vec<Self> = Vec::new();
        let mut denied = false;
        for (word, of_framing) in words {
            let side = match word {
                "left" | "lh" | "lefthand" | "izquierda" | "izquierdo" | "izq" | "links" | "gauche" | "venstre" => {
                    Some(Self::Left)
                }
                "right" | "rh" | "righthand" | "derecha" | "derecho" | "dcha" | "rechts" | "droite" | "høyre" => {
                    Some(Self::Right)
                }
                "middle" | "centre" | "center" | "central" | "centred" | "centered" | "centro" | "mitte" | "mittig"
                | "milieu" | "midt" => Some(Self::Middle),
                "both" | "either" | "reversible" | "each" | "ambos" | "beidseitig" => Some(Self::Both),
                _ => None,
            };
            // `left, not right` names one side.
            found.extend(side.filter(|_| !denied && !of_framing));
            denied = word == "not" || word == "never" || (denied && side.is_none());
        }
        let (left, right) = (found.contains(&Self::Left), found.contains(&Self::Right));
        match (found.contains(&Self::Both) || (left && right), left, right) {
            (true, ..) => Some(Self::Both),
            (_, true, _) => Some(Self::Left),
            (_, _, true) => Some(Self::Right),
            _ => found.contains(&Self::Middle).then_some(Self::Middle),
        }
    }
}

/// Whether a word of a phrase tells where a joist or a stud lies, or where something lies beside one: `left of the
/// joist`, `joist to the right`, and not `left end between two joists`.
fn is_of_framing(part: &[&str], at: usize) -> bool {
    let is_framing = |word: &&str| FRAMING.iter().any(|framing| word.contains(framing));
    let behind = part.get(at + 1..).unwrap_or_default();
    let before = part.get(..at).unwrap_or_default();
    let of_one = behind.first().is_some_and(|word| OF.contains(word)) && behind.iter().take(4).any(is_framing);
    let is_an_end = behind.first().is_some_and(|word| ENDS.contains(word));
    of_one || before.iter().any(is_framing) && !is_an_end
}

/// Words that join a side and what it is of.
const OF: [&str; 5] = ["of", "from", "von", "vom", "de"];
/// Words of the end of a tub or a tray, behind its side.
const ENDS: [&str; 5] = ["end", "side", "hand", "seite", "ende"];

impl InWords for Option<Side> {
    fn of_words(words: &str) -> Self {
        Side::read(words)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_side_both_the_middle_or_none_is_named() {
        for (phrase, side) in [
            ("left end", Some(Side::Left)),
            ("LH", Some(Side::Left)),
            ("right-hand, not left", Some(Side::Right)),
            ("stubs at the left and the right", Some(Side::Both)),
            ("both sides", Some(Side::Both)),
            ("1 1/2\" at either end", Some(Side::Both)),
            ("rear centre", Some(Side::Middle)),
            ("rear centre, left of the joist", Some(Side::Middle)),
            ("1 1/2\" left end, joist right under it", Some(Side::Left)),
            ("joist to the right", None),
            ("1 1/2\" at the left end between two joists", Some(Side::Left)),
            ("left side of the stud bay", Some(Side::Left)),
            ("left end beside the beam", Some(Side::Left)),
            ("between two joists at the right end", Some(Side::Right)),
            ("viga a la derecha", None),
            ("1 1/2\" trap", None),
            ("copyright", None),
        ] {
            assert_eq!(Side::read(phrase), side, "{phrase}");
        }
    }
}
