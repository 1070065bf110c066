//! The layout drawings of a room's counters: pieces to scale with what is let in and where they meet, as far as the
//! book knows it.

use crate::book::{Room, Selection};
use crate::drawings::counter::{CounterLayout, LayoutPiece, LetIn};
use crate::drawings::{Paper, counter_layout, counter_layout_in_words};
use crate::language::say;
use crate::site::layout;
use crate::views::pages::PageBuilder;
use crate::views::paper::sign_off_item::SheetDrawing;
use crate::views::shared::drawing::Drawing;
use crate::views::shared::html::Html;

impl PageBuilder<'_> {
    /// The layout of a counter: a drawing for each run and island that it lies on, and one of the pieces whose place
    /// is not known; none where the book knows no piece.
    pub fn counter_layouts(&self, room: &Room, selection: &Selection) -> Vec<Drawing> {
        let laid = layout::counter_layouts(self.plans.room(room), room, selection);
        laid.iter().map(|laid| self.layout_drawing(laid, room, selection)).collect()
    }

    /// The same for paper that is signed.
    pub fn paper_layouts(&self, room: &Room, selection: &Selection) -> Vec<SheetDrawing> {
        let laid = layout::counter_layouts(self.plans.room(room), room, selection);
        let drawn = laid.iter().map(|laid| self.drawn(laid, room, selection));
        drawn
            .map(|drawn| SheetDrawing {
                svg: counter_layout(&drawn, Paper::Desk),
                alt: counter_layout_in_words(&drawn),
                name: drawn.name,
            })
            .collect()
    }

    fn layout_drawing(&self, laid: &layout::CounterLayout, room: &Room, selection: &Selection) -> Drawing {
        let drawn = self.drawn(laid, room, selection);
        let narrow = CounterLayout { id: format!("{}-narrow", drawn.id), ..drawn.clone() };
        Drawing {
            name: drawn.name.clone(),
            scope: None,
            svg: Html::trusted(counter_layout(&drawn, Paper::Desk)),
            narrow: Some(Html::trusted(counter_layout(&narrow, Paper::Phone))),
            caption: Some(Html::text(&drawn.name)),
        }
    }

    fn drawn(&self, laid: &layout::CounterLayout, room: &Room, selection: &Selection) -> CounterLayout {
        let (counter, id) = (selection.name.value.as_str(), format!("layout-{}-{}", room.folder, selection.id));
        let (id, name) = match &laid.on {
            Some(row) => {
                (format!("{id}-{row}"), say!(self.words, "trades.layout_of", counter = counter, row = row.as_str()))
            }
            None => (id, say!(self.words, "trades.layout_loose", counter = counter)),
        };
        CounterLayout {
            id,
            name,
            has_wall: laid.has_wall,
            is_loose: laid.on.is_none(),
            pieces: laid.pieces.iter().map(piece).collect(),
            let_in: laid.let_in.iter().map(let_in).collect(),
            seams: laid.seams.clone(),
            units: self.wording.system,
            words: self.words,
        }
    }
}

fn piece(piece: &layout::LayoutPiece) -> LayoutPiece {
    let layout::LayoutPiece { name, from, to, depth } = piece.clone();
    LayoutPiece { name, from, to, depth }
}

fn let_in(let_in: &layout::LetIn) -> LetIn {
    let layout::LetIn { name, from, to, back, front, parts_it } = let_in.clone();
    LetIn { name, from, to, back, front, parts_it }
}
