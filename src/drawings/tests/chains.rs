//! A figure of a chain of sizes never stands over another's span.

use super::gallery::len;
use super::read_back::texts;
use super::{PAPERS, fault_of_lettering};
use crate::drawings::counter::CounterDrawing;
use crate::drawings::counter_layout;
use crate::language::Words;
use crate::site::layout::{CounterLayout, LayoutPiece, LetIn};
use crate::units::System;
use roxmltree::Document;

/// A counter of two pieces, with a sink whose middle is 300 mm from the left end and a hob 1200 mm further.
fn counter() -> CounterDrawing {
    let piece = |from: &str, to: &str| LayoutPiece { name: None, from: len(from), to: len(to), depth: len("630 mm") };
    let let_in = |name: &str, from: &str, to: &str| LetIn {
        name: name.into(),
        from: len(from),
        to: len(to),
        back: len("60 mm"),
        front: len("570 mm"),
        parts_it: false,
        drawn: (len("60 mm"), len("570 mm")),
        cuts_the_edge: false,
    };
    CounterDrawing {
        id: "counter".into(),
        name: "Worktop".into(),
        laid: CounterLayout {
            on: Some("run".into()),
            has_wall: true,
            pieces: vec![piece("0 mm", "40 mm"), piece("40 mm", "2180 mm")],
            let_in: vec![let_in("Sink", "50 mm", "550 mm"), let_in("Induction hob", "1220 mm", "1780 mm")],
            seams: vec![len("40 mm")],
        },
        units: System::Metric,
        words: Words::default(),
    }
}

#[test]
fn a_figure_that_its_span_does_not_hold_stands_off_the_line() {
    for (paper, name) in PAPERS {
        let svg = counter_layout(&counter(), paper);
        assert_eq!(fault_of_lettering(&svg), None, "{name}");
        let document = Document::parse(&svg).expect("XML");
        let all = texts(&document);
        let of = |words: &str| all.iter().find(|(text, _)| text.starts_with(words)).expect(words).1;
        // The next figure of its chain lies in its own span: one that does not is nowhere beside it.
        for (narrow, next) in [("300", "1200"), ("40", "2140")] {
            let (narrow, next) = (of(narrow), of(next));
            let beside = narrow.top < next.bottom && next.top < narrow.bottom;
            assert!(!beside || narrow.right < next.left, "{name}: {narrow:?} {next:?}");
        }
        for thing in ["Sink", "Induction"] {
            assert!(all.iter().any(|(text, _)| text.starts_with(thing)), "{name}: {thing}");
        }
    }
}
