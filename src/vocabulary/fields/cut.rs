//! Values that a comma in braces cuts in two: what follows it reads as keys without values.

use crate::finding::{Code, phrase};
use crate::source::Span;
use crate::source::yaml::{Node, Value};

use super::{CURLY, Faults, Fields, Pair};

impl Fields<'_> {
    /// Whether the value of that key goes on after a comma.
    pub(super) fn is_cut(&self, key: &str) -> bool {
        self.position(key).is_some_and(|at| !self.rest_of(at).is_empty())
    }

    /// Tells each value that is cut, once, and gives the pairs that are rests of one.
    pub(super) fn tell_cuts(&self, faults: &mut Faults) -> Vec<usize> {
        let mut rests = Vec::new();
        for (at, pair) in self.pairs.iter().enumerate() {
            let rest = self.rest_of(at);
            let (Some(last), Value::Scalar { text, .. }) = (rest.last(), &pair.node.value) else { continue };
            let mut whole = text.clone();
            let mut end = pair.node.span.end;
            for (_, next) in &rest {
                // As it is written: `65,000` keeps its comma close.
                whole += if next.key.span.start <= end + 1 { "," } else { ", " };
                whole += next.key.value;
                end = next.key.span.end;
            }
            let bare = whole.trim_start_matches(CURLY).trim_end_matches(CURLY);
            let quote = if bare.contains('"') { '\'' } else { '"' };
            let span = Span { end: last.1.key.span.end, ..pair.node.span };
            let message = phrase!("a comma ends the value of `{}` before `{}`", pair.key.value, rest_of_text(&rest));
            let straight = if bare == whole { "" } else { " with straight ones" };
            let line = format!("{}: {quote}{bare}{quote}", pair.key.value);
            faults.stop(Code::SYNTAX, span, message, phrase!("put it in quotes{straight}: `{line}`", straight, line));
            rests.extend(rest.iter().map(|(at, _)| *at));
        }
        rests
    }

    /// The pairs after that one which are the rest of its value: words that nobody knows as keys, without a colon.
    fn rest_of(&self, at: usize) -> Vec<(usize, &Pair<'_>)> {
        let is_plain = |node: &Node| matches!(&node.value, Value::Scalar { plain: true, .. }) && !node.is_nothing();
        let Some(pair) = self.pairs.get(at).filter(|pair| is_plain(pair.node)) else { return vec![] };
        let file = pair.node.span.file;
        let after = self.pairs.iter().enumerate().skip(at + 1);
        let is_rest = |pair: &Pair<'_>| {
            let no_colon = pair.node.is_nothing() && pair.node.span.start <= pair.key.span.end;
            no_colon && pair.key.span.file == file && !self.knows(pair.key.value)
        };
        after.take_while(|(_, pair)| is_rest(pair)).collect()
    }
}

/// The first words after the comma.
fn rest_of_text<'a>(rest: &[(usize, &Pair<'a>)]) -> &'a str {
    rest.first().map_or("", |(_, pair)| pair.key.value)
}
