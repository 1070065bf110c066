//! What is shown and signed of a record, as typed values, and from which version of the content on.

use std::borrow::Cow;
use std::sync::Arc;

use crate::source::Spanned;
use crate::units::{Area, Date, Length, LengthRange, Money, Percent, Quantity, Sides, Weight};

use super::supply::Worded;
use super::{Clearance, Kind, Named, Readings, Slot, Words};

/// How what is shown is written where a mark is taken of it. An issue keeps the version that it was made under.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Version {
    /// The first: each field stands there, `null` where it is empty.
    First,
    /// What is empty is left out, and each value tells what it is.
    Second,
    /// As the second; the layout of a counter and what varies by nature stand in it as well.
    #[default]
    Third,
}

impl Version {
    /// The key under which a content states its version, from the second on.
    pub const STATED_AS: &str = "shown";

    /// The version that a content states under that key; none for one that this program does not know.
    pub fn stated(stated: Option<&str>) -> Option<Self> {
        Self::ALL.into_iter().find(|version| version.states() == stated)
    }

    /// All of them, the oldest first.
    pub const ALL: [Self; 3] = [Self::First, Self::Second, Self::Third];

    /// What a content of it states under that key; nothing in the first.
    pub fn states(self) -> Option<&'static str> {
        match self {
            Self::First => None,
            Self::Second => Some("2"),
            Self::Third => Some("3"),
        }
    }
}

/// The version of the content of a sheet that is built from. A release that shows more on a sheet writes another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SheetVersion {
    /// The first: its content states none.
    First,
    /// It holds more of what is ordered and chosen, and the plans of rooms have sheets.
    Second,
}

impl SheetVersion {
    /// The key under which a content states its version.
    pub const STATED_AS: &str = "sheet version";

    /// The one that is written now.
    pub const NEWEST: Self = Self::Second;

    /// The version that a content states under that key; none for one that this program does not know.
    pub fn stated(stated: Option<&str>) -> Option<Self> {
        [Self::First, Self::Second].into_iter().find(|version| version.states() == stated)
    }

    /// What a content of it states under that key; nothing in the first.
    pub fn states(self) -> Option<&'static str> {
        match self {
            Self::First => None,
            Self::Second => Some("2"),
        }
    }
}

/// From when on a field stands in the content.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Since {
    /// From the first version on; there also where it is empty.
    First,
    /// From the second version on.
    Second,
    /// From the third version on.
    Third,
}

impl Since {
    /// The first version that it stands in.
    pub fn version(self) -> Version {
        match self {
            Self::First => Version::First,
            Self::Second => Version::Second,
            Self::Third => Version::Third,
        }
    }

    /// Whether it stands in that version.
    pub fn stands_in(self, version: Version) -> bool {
        self.version() <= version
    }
}

/// Whether a field is in the mark of an item: the digest of all that the client is shown of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// It is no field of what a client is shown and signs.
    OfNoItem,
    /// It may change and leave an approval standing; why.
    Out(&'static str),
    /// Its value is in the mark, under that key.
    In(&'static str, Since),
    /// Its value is in the mark, in the object under that key.
    Within(&'static str),
    /// It, or what follows from it, is in the mark under that key; and what that is.
    Told(&'static str, &'static str),
}

/// A value that is shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ShownValue {
    /// Nothing is written.
    Nothing,
    /// What somebody wrote.
    Text(String),
    /// A word of a closed set; read again it is a text.
    Word(&'static str),
    /// Yes or no.
    Yes(bool),
    /// A length.
    Length(Length),
    /// A range of lengths.
    Range(LengthRange),
    /// Two or three lengths.
    Sides(Vec<Length>),
    /// A weight.
    Weight(Weight),
    /// An area.
    Area(Area),
    /// An amount of money.
    Amount(Money),
    /// Several values in their order.
    List(Vec<ShownValue>),
    /// Several by their names.
    Group(ShownGroup),
}

/// Fields with their values, in the order of their record.
pub type ShownGroup = Vec<ShownField>;

/// One field with its value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShownField {
    /// Its key in the content.
    pub key: Cow<'static, str>,
    /// From when on it stands there.
    pub since: Since,
    /// Its value.
    pub value: ShownValue,
}

impl ShownField {
    /// A field of that key.
    pub fn new(key: impl Into<Cow<'static, str>>, since: Since, value: ShownValue) -> Self {
        Self { key: key.into(), since, value }
    }
}

impl ShownValue {
    /// Whether nothing is written in it.
    pub fn is_empty(&self) -> bool {
        match self {
            Self::Nothing => true,
            Self::List(values) => values.iter().all(Self::is_empty),
            Self::Group(fields) => fields.iter().all(|field| field.value.is_empty()),
            Self::Range(range) => *range == LengthRange::default(),
            Self::Text(_)
            | Self::Word(_)
            | Self::Yes(_)
            | Self::Length(_)
            | Self::Sides(_)
            | Self::Weight(_)
            | Self::Area(_)
            | Self::Amount(_) => false,
        }
    }

    /// The fields of a group.
    pub fn fields(&self) -> &[ShownField] {
        if let Self::Group(fields) = self { fields } else { &[] }
    }

    /// The value of that key in a group.
    pub fn get(&self, key: &str) -> Option<&Self> {
        self.fields().iter().find(|field| field.key == key).map(|field| &field.value)
    }

    /// The values of a list.
    pub fn values(&self) -> &[Self] {
        if let Self::List(values) = self { values } else { &[] }
    }

    /// A text, or a word.
    pub fn text(&self) -> Option<&str> {
        match self {
            Self::Text(text) => Some(text),
            Self::Word(word) => Some(word),
            _ => None,
        }
    }
}

/// A record of which fields are shown.
pub trait Marked {
    /// The fields that are shown with their own values.
    fn marked(&self) -> ShownGroup;
}

/// What can be shown.
pub trait Shown {
    /// The value.
    fn shown(&self) -> ShownValue;
}

impl<T: Shown> Shown for Slot<T> {
    fn shown(&self) -> ShownValue {
        self.get().map_or(ShownValue::Nothing, T::shown)
    }
}

impl<T: Shown> Shown for Option<T> {
    fn shown(&self) -> ShownValue {
        self.as_ref().map_or(ShownValue::Nothing, T::shown)
    }
}

impl<T: Shown> Shown for Spanned<T> {
    fn shown(&self) -> ShownValue {
        self.value.shown()
    }
}

impl<T: Shown> Shown for Arc<T> {
    fn shown(&self) -> ShownValue {
        self.as_ref().shown()
    }
}

impl<T: Shown> Shown for Vec<T> {
    fn shown(&self) -> ShownValue {
        ShownValue::List(self.iter().map(T::shown).collect())
    }
}

impl<T: Shown> Shown for Named<T> {
    fn shown(&self) -> ShownValue {
        self.0.shown()
    }
}

impl<T: Words> Shown for T {
    fn shown(&self) -> ShownValue {
        ShownValue::Word(self.word())
    }
}

impl Shown for String {
    fn shown(&self) -> ShownValue {
        ShownValue::Text(self.clone())
    }
}

impl Shown for bool {
    fn shown(&self) -> ShownValue {
        ShownValue::Yes(*self)
    }
}

impl Shown for Kind {
    fn shown(&self) -> ShownValue {
        ShownValue::Text(self.name().into())
    }
}

impl Shown for Length {
    fn shown(&self) -> ShownValue {
        ShownValue::Length(*self)
    }
}

impl Shown for LengthRange {
    fn shown(&self) -> ShownValue {
        ShownValue::Range(*self)
    }
}

impl Shown for (Length, Length) {
    fn shown(&self) -> ShownValue {
        ShownValue::Sides(vec![self.0, self.1])
    }
}

impl Shown for Area {
    fn shown(&self) -> ShownValue {
        ShownValue::Area(*self)
    }
}

impl Shown for Weight {
    fn shown(&self) -> ShownValue {
        ShownValue::Weight(*self)
    }
}

impl Shown for Money {
    fn shown(&self) -> ShownValue {
        ShownValue::Amount(*self)
    }
}

impl Shown for Date {
    fn shown(&self) -> ShownValue {
        ShownValue::Text(self.iso())
    }
}

impl Shown for Sides {
    fn shown(&self) -> ShownValue {
        ShownValue::Sides(self.sides().to_vec())
    }
}

impl Shown for Readings {
    fn shown(&self) -> ShownValue {
        self.0.shown()
    }
}

/// As written: what is understood of it follows.
impl<T> Shown for Worded<T> {
    fn shown(&self) -> ShownValue {
        ShownValue::Text(self.words.clone())
    }
}

impl Shown for Clearance {
    fn shown(&self) -> ShownValue {
        let field = |key, value| ShownField::new(key, Since::Second, value);
        let holds = Some(&self.holds).filter(|words| !words.is_empty());
        let clear = if self.vent.is_some() { ShownValue::Nothing } else { self.length.shown() };
        let fields = [field("clear", clear), field("vent", self.vent.shown()), field("holds", holds.cloned().shown())];
        ShownValue::Group(fields.to_vec())
    }
}

/// Quantities other than lengths stand as text, as the book says them.
macro_rules! as_text {
    ($($of:ty),*) => {
        $(impl Shown for $of {
            fn shown(&self) -> ShownValue {
                ShownValue::Text(self.to_string())
            }
        })*
    };
}
as_text!(Quantity, Percent, u32);
