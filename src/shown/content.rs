//! All that the client is shown of an item, as a typed value: the fields that are in the mark by their tables, and
//! what is worked out of them.

use serde_json::Value;

use crate::book::{Book, Photo, Prices, ProductOption, Room, Selection};
use crate::site::layout::{CounterLayout, LayoutPiece, LetIn, counter_layouts};
use crate::site::plan::Plan;
use crate::vocabulary::{Kind, Marked, Shown, ShownField, ShownGroup, ShownValue, Since, Version, Words};

use super::changes::KNOWN_BY;
use super::field::MarkedField;
use super::{Pictures, as_written, written};

/// What stands in an item besides the fields of its selection.
pub const OF_ITEM: [(&str, &str); 6] = [
    ("room", "the room's folder"),
    ("room name", "what the room is called"),
    ("prices", "`with tax` where the book says that tax is in every price; since 2"),
    ("allowance includes", "what the allowance is to pay for besides the things; since 2"),
    (
        "counter layout",
        "of a counter: for each run and island that it lies on its pieces, what is let in and the seams; since 3",
    ),
    ("shown", "the version of this content, `3`; contents of the first do not say it"),
];

/// What stands in an option besides its fields.
pub const OF_OPTION: [(&str, &str); 1] = [("total", "price times quantity with the accessories, or null")];

/// What is shown of an item.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShownItem(pub(super) ShownValue);

impl ShownItem {
    /// What an issue holds of an item, by the version that it was made under.
    pub(super) fn as_issued(content: &Value) -> Self {
        Self(as_written::read(content))
    }

    /// As a version writes it.
    pub fn content(&self, version: Version) -> Value {
        written::content(&self.0, version)
    }

    /// Whether it says anything that a version has no place for.
    pub fn says_more_than(&self, version: Version) -> bool {
        says_more(&self.0, version)
    }

    /// Its option of that id.
    pub fn option(&self, id: &str) -> Option<&ShownValue> {
        let options = self.0.get(MarkedField::Options.word()).map_or(&[][..], ShownValue::values);
        options.iter().find(|option| option.get("id").and_then(ShownValue::text) == Some(id))
    }

    /// The same with another option chosen, or none.
    #[must_use]
    pub fn with_chosen(&self, id: Option<&str>) -> Self {
        let mut fields = self.0.fields().to_vec();
        for field in fields.iter_mut().filter(|field| field.key == MarkedField::Chosen.word()) {
            field.value = id.map(str::to_string).shown();
        }
        Self(ShownValue::Group(fields))
    }
}

fn says_more(value: &ShownValue, than: Version) -> bool {
    let in_field = |field: &ShownField| match field.since.stands_in(than) {
        true => says_more(&field.value, than),
        false => !field.value.is_empty(),
    };
    value.fields().iter().any(in_field) || value.values().iter().any(|value| says_more(value, than))
}

/// All that the client is shown of an item.
pub fn shown_of(book: &Book, room: &Room, selection: &Selection, pictures: Pictures<'_>) -> ShownItem {
    let options = selection.options.iter().map(|option| ShownValue::Group(option_of(option, pictures))).collect();
    let allowance = selection.allowance.get().and_then(|name| book.project.allowances.called(name));
    let with_tax = book.project.prices == Prices::WithTax;
    let mut fields = selection.marked();
    put(&mut fields, "room", Since::First, room.folder.shown());
    put(&mut fields, "room name", Since::First, room.title().to_string().shown());
    put(&mut fields, "prices", Since::Second, with_tax.then(|| "with tax".to_string()).shown());
    let includes = allowance.map_or(ShownValue::Nothing, |allowance| allowance.includes.shown());
    put(&mut fields, "allowance includes", Since::Second, includes);
    put(&mut fields, MarkedField::Options.word(), Since::First, ShownValue::List(options));
    let as_shown = |laid: CounterLayout| super::as_shown(book, room, selection, laid).0;
    let laid = layouts(room, selection).into_iter().map(as_shown).collect();
    put(&mut fields, MarkedField::CounterLayout.word(), Since::Third, laid_out(laid));
    ShownItem(ShownValue::Group(fields))
}

/// The layouts of a counter, as it is to be cut; none of anything else.
pub(super) fn layouts(room: &Room, selection: &Selection) -> Vec<CounterLayout> {
    if !selection.is(Kind::Counter) {
        return vec![];
    }
    counter_layouts(Plan::of(room).as_ref(), room, selection)
}

/// The layouts of a counter, as they are drawn.
pub(super) fn laid_out(laid: Vec<CounterLayout>) -> ShownValue {
    let field = |key, value| ShownField::new(key, Since::Third, value);
    let piece = |(number, piece): (usize, &LayoutPiece)| {
        let name = piece.name.clone().unwrap_or_else(|| format!("piece {}", number + 1));
        ShownValue::Group(vec![
            field(KNOWN_BY, number.to_string().shown()),
            field("name", name.shown()),
            field("left end", piece.from.shown()),
            field("right end", piece.to.shown()),
            field("depth", piece.depth.shown()),
        ])
    };
    let let_in = |(number, one): (usize, &LetIn)| {
        ShownValue::Group(vec![
            field(KNOWN_BY, number.to_string().shown()),
            field("name", one.name.shown()),
            field("left end", one.from.shown()),
            field("right end", one.to.shown()),
            field("back", one.back.shown()),
            field("front", one.front.shown()),
            field("parts it", one.parts_it.then_some(true).shown()),
        ])
    };
    let layout = |laid: CounterLayout| {
        let on = laid.on.clone().unwrap_or_else(|| "pieces".into());
        ShownValue::Group(vec![
            field(KNOWN_BY, on.shown()),
            field("name", on.shown()),
            field("pieces", ShownValue::List(laid.pieces.iter().enumerate().map(piece).collect())),
            field("let in", ShownValue::List(laid.let_in.iter().enumerate().map(let_in).collect())),
            field("seams", laid.seams.shown()),
        ])
    };
    ShownValue::List(laid.into_iter().map(layout).collect())
}

/// What is shown of an option, its pictures left out.
pub fn option_alone(option: &ProductOption) -> ShownValue {
    ShownValue::Group(option_of(option, &|_| None))
}

fn option_of(option: &ProductOption, pictures: Pictures<'_>) -> ShownGroup {
    let caution = option.fit.get().map_or(ShownValue::Nothing, |fit| fit.caution.shown());
    let shown = option.photos.iter().map(|photo| ShownValue::Group(picture(photo, pictures))).collect();
    let mut fields = option.marked();
    put(&mut fields, MarkedField::Name.word(), Since::First, option.title().shown());
    put(&mut fields, "caution", Since::First, caution);
    put(&mut fields, MarkedField::Total.word(), Since::First, option.price_in_all().shown());
    put(&mut fields, MarkedField::Pictures.word(), Since::First, ShownValue::List(shown));
    fields
}

fn picture(photo: &Photo, pictures: Pictures<'_>) -> ShownGroup {
    let digest = pictures(&photo.path).map(|digest| digest.to_string());
    let mut fields = photo.marked();
    put(&mut fields, "sha256", Since::First, digest.shown());
    fields
}

fn put(fields: &mut ShownGroup, key: &'static str, since: Since, value: ShownValue) {
    fields.retain(|field| field.key != key);
    fields.push(ShownField::new(key, since, value));
}
