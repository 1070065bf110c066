//! The layout drawings of a room's counters: pieces to scale with what is let in and where they meet, as far as the
//! book knows it. Counters that meet at a corner are one drawing.

use crate::book::{Room, Selection};
use crate::drawings::counter::{CornerDrawing, CounterDrawing};
use crate::drawings::{
    Paper, corner_layout, corner_layout_in_words, counter_layout, counter_layout_in_words, joints_in_words,
};
use crate::language::say;
use crate::site::corners::{JoinedCounter, joined_counters};
use crate::views::pages::PageBuilder;
use crate::views::paper::sign_off_item::SheetDrawing;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::html::Html;

/// What is drawn at once.
enum Drawn {
    Alone(CounterDrawing),
    Joined(CornerDrawing),
}

impl Drawn {
    fn name(&self) -> &str {
        match self {
            Self::Alone(one) => &one.name,
            Self::Joined(one) => &one.name,
        }
    }

    fn svg(&self, paper: Paper) -> String {
        match self {
            Self::Alone(one) => counter_layout(one, paper),
            Self::Joined(one) => corner_layout(one, paper),
        }
    }

    /// The same for a small page, where no other drawing has its name.
    fn narrow(self) -> String {
        let id = |id: &str| format!("{id}-narrow");
        match self {
            Self::Alone(one) => counter_layout(&CounterDrawing { id: id(&one.id), ..one }, Paper::Phone),
            Self::Joined(one) => corner_layout(&CornerDrawing { id: id(&one.id), ..one }, Paper::Phone),
        }
    }

    fn in_words(&self) -> String {
        match self {
            Self::Alone(one) => counter_layout_in_words(one),
            Self::Joined(one) => corner_layout_in_words(one),
        }
    }

    fn joints(&self) -> Vec<String> {
        match self {
            Self::Alone(_) => vec![],
            Self::Joined(one) => joints_in_words(one),
        }
    }
}

impl PageBuilder<'_> {
    /// The layout of a counter: a drawing for each run and island that it lies on, those that meet as one, and one of
    /// the pieces whose place is not known; none where the book knows no piece.
    pub fn counter_layouts(&self, room: &Room, selection: &Selection) -> Vec<Drawing> {
        let drawing = |drawn: Drawn| {
            let name = drawn.name().to_string();
            let joints = drawn.joints();
            let caption = if joints.is_empty() { name.clone() } else { format!("{name}. {}", joints.join(" ")) };
            Drawing {
                name,
                scope: None,
                svg: Html::trusted(drawn.svg(Paper::Desk)),
                caption: Some(Html::text(&caption)),
                narrow: Some(Html::trusted(drawn.narrow())),
            }
        };
        self.drawn(room, selection).map(drawing).collect()
    }

    /// The same for paper that is signed.
    pub fn paper_layouts(&self, room: &Room, selection: &Selection) -> Vec<SheetDrawing> {
        let drawing = |drawn: Drawn| SheetDrawing {
            svg: drawn.svg(Paper::Desk),
            alt: drawn.in_words(),
            name: drawn.name().to_string(),
        };
        self.drawn(room, selection).map(drawing).collect()
    }

    /// Where counters that are drawn as one meet, a sentence each.
    pub fn joints_of(&self, room: &Room, selection: &Selection) -> Vec<String> {
        self.drawn(room, selection).flat_map(|drawn| drawn.joints()).collect()
    }

    fn drawn(&self, room: &Room, selection: &Selection) -> impl Iterator<Item = Drawn> {
        let (counter, id) = (selection.name.value.clone(), format!("layout-{}-{}", room.folder, selection.id));
        let (units, words) = (self.wording.system, self.words);
        joined_counters(self.plans.room(room), room, selection).into_iter().filter_map(move |mut joined| {
            let counter = counter.as_str();
            let rows = names(&joined);
            let (id, name) = match rows.as_slice() {
                [] => (id.clone(), say!(words, "trades.layout_loose", counter = counter)),
                rows => {
                    let row = words.series(rows);
                    (format!("{id}-{}", rows.join("-")), say!(words, "trades.layout_of", counter = counter, row = row))
                }
            };
            if joined.parts.len() > 1 {
                return Some(Drawn::Joined(CornerDrawing { id, name, joined, units, words }));
            }
            let laid = joined.parts.pop()?.laid;
            Some(Drawn::Alone(CounterDrawing { id, name, laid, units, words }))
        })
    }
}

/// The runs and islands that are drawn.
fn names(joined: &JoinedCounter) -> Vec<String> {
    joined.parts.iter().filter_map(|part| part.laid.on.clone()).collect()
}
