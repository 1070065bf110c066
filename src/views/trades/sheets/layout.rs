//! The layout drawings of a room's counters: pieces to scale with what is let in and where they meet, as far as the
//! book knows it. Counters that meet at a corner are one drawing.

use crate::book::{Room, Selection};
use crate::drawings::counter::{CornerDrawing, CounterDrawing};
use crate::drawings::{
    Paper, corner_layout, corner_layout_in_words, counter_layout, counter_layout_in_words, joints_in_words,
};
use crate::language::say;
use crate::shown;
use crate::site::corners::{JoinedCounter, joined_counters};
use crate::units::Length;
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

/// Counters that are drawn as one, and by how much measuring moved them since they were shown for approval.
type LaidAs = (JoinedCounter, Length);

impl PageBuilder<'_> {
    /// The layout of a counter as it is cut: a drawing for each run and island that it lies on, those that meet as one,
    /// and one of the pieces whose place is not known; none where the book knows no piece.
    pub fn counter_layouts(&self, room: &Room, selection: &Selection) -> Vec<Drawing> {
        let joined = joined_counters(self.plans.room(room), room, selection).into_iter();
        joined.filter_map(|joined| self.on_a_page(room, selection, (joined, Length::ZERO))).collect()
    }

    /// The same as it was shown for approval.
    pub fn signed_layouts(&self, room: &Room, selection: &Selection) -> Vec<Drawing> {
        let shown = self.layouts_as_shown(room, selection).into_iter();
        shown.filter_map(|laid| self.on_a_page(room, selection, laid)).collect()
    }

    /// The same for paper that is signed.
    pub fn paper_layouts(&self, room: &Room, selection: &Selection) -> Vec<SheetDrawing> {
        let drawing = |drawn: Drawn| SheetDrawing {
            svg: drawn.svg(Paper::Desk),
            alt: drawn.in_words(),
            name: drawn.name().to_string(),
        };
        let shown = self.layouts_as_shown(room, selection).into_iter();
        shown.filter_map(|(joined, _)| self.drawn(room, selection, joined).map(drawing)).collect()
    }

    /// The counters that are drawn as one, as they were shown for approval, and by how much measuring moved them since.
    pub fn layouts_as_shown(&self, room: &Room, selection: &Selection) -> Vec<LaidAs> {
        let mut all: Vec<LaidAs> = vec![];
        for mut joined in joined_counters(self.plans.room(room), room, selection) {
            let mut most = Length::ZERO;
            for part in &mut joined.parts {
                let (laid, by) = shown::as_shown(self.subject.book, room, selection, std::mem::take(&mut part.laid));
                (part.laid, most) = (laid, most.max(by));
            }
            all.push((joined, most));
        }
        all
    }

    /// Where counters that are drawn as one meet, a sentence each.
    pub fn joints_of(&self, room: &Room, selection: &Selection) -> Vec<String> {
        let joined = joined_counters(self.plans.room(room), room, selection).into_iter();
        joined.filter_map(|joined| self.drawn(room, selection, joined)).flat_map(|drawn| drawn.joints()).collect()
    }

    /// That measuring moved a counter since it was shown for approval.
    pub fn measured_since(&self, by: Length) -> Option<String> {
        (by > Length::ZERO).then(|| say!(self.words, "trades.measured_since", by = self.wording.said(by)))
    }

    fn on_a_page(&self, room: &Room, selection: &Selection, (joined, by): LaidAs) -> Option<Drawing> {
        let drawn = self.drawn(room, selection, joined)?;
        let name = drawn.name().to_string();
        let said: Vec<String> = drawn.joints().into_iter().chain(self.measured_since(by)).collect();
        let caption = if said.is_empty() { name.clone() } else { format!("{name}. {}", said.join(" ")) };
        Some(Drawing {
            name,
            scope: None,
            svg: Html::trusted(drawn.svg(Paper::Desk)),
            caption: Some(Html::text(&caption)),
            narrow: Some(Html::trusted(drawn.narrow())),
        })
    }

    fn drawn(&self, room: &Room, selection: &Selection, mut joined: JoinedCounter) -> Option<Drawn> {
        let (counter, id) = (selection.name.value.as_str(), format!("layout-{}-{}", room.folder, selection.id));
        let (units, words) = (self.wording.system, self.words);
        let rows = names(&joined);
        let (id, name) = match rows.as_slice() {
            [] => (id, say!(words, "trades.layout_loose", counter = counter)),
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
    }
}

/// The runs and islands that are drawn.
fn names(joined: &JoinedCounter) -> Vec<String> {
    joined.parts.iter().filter_map(|part| part.laid.on.clone()).collect()
}
