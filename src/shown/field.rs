//! What of an item changed, as a type: a field of what the client is shown, with its name for people.

use std::fmt;

use crate::vocabulary::{Words, words};

words! {
    /// A field whose change is told in a way of its own.
    pub enum MarkedField {
        /// The option that is chosen, by its id.
        Chosen = "chosen",
        /// All options.
        Options = "options",
        /// What it is called.
        Name = "name",
        /// Who makes it.
        Maker = "maker",
        /// Which one of the maker's.
        Model = "model",
        /// What one comes to.
        Price = "price",
        /// How many.
        Quantity = "quantity",
        /// What all comes to.
        Total = "total",
        /// Its sizes.
        Size = "size",
        /// The kind's own facts.
        Details = "details",
        /// Its pictures.
        Pictures = "pictures",
        /// How the pieces of a counter lie.
        CounterLayout = "counter layout",
    }
}

words! {
    /// What nothing else rests on: money, words and pictures for the client, and who buys and fits it.
    pub enum ForItselfAlone {
        /// What one comes to.
        Price = "price",
        /// By what it is priced.
        PricePer = "price per",
        /// What all comes to.
        Total = "total",
        /// Whether tax is in it.
        Prices = "prices",
        /// What it draws on.
        Allowance = "allowance",
        /// What that is to pay for.
        AllowanceIncludes = "allowance includes",
        /// What its price pays for.
        Includes = "includes",
        /// What its price does not pay for.
        LeavesOut = "leaves out",
        /// Why it is so.
        Why = "why",
        /// What the room is called.
        RoomName = "room name",
        /// Who buys it.
        FurnishedBy = "furnished by",
        /// Who fits it.
        InstalledBy = "installed by",
        /// Its pictures.
        Pictures = "pictures",
    }
}

words! {
    /// What of a floor moves the heights that are taken from it.
    pub enum OfAHeight {
        /// How thick it is.
        Thickness = "thickness",
        /// What it lies on.
        Bed = "bed",
        /// Its sizes.
        Size = "size",
        /// Who makes it.
        Maker = "maker",
        /// Which it is.
        Model = "model",
    }
}

words! {
    /// How a thing looks: what is built around it, cut for it or measured on it goes by its figures.
    pub enum OfTheLook {
        /// Its finish.
        Finish = "finish",
        /// Its colour.
        Colour = "colour",
        /// The sheen of a paint.
        Sheen = "sheen",
        /// The grout between tiles.
        Grout = "grout",
        /// Words on how the material varies.
        Nature = "nature",
    }
}

/// What is no longer as it was.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ChangedField {
    /// A field of the item or of an option.
    Marked(MarkedField),
    /// Any other field, by the name that it has in the content.
    Other(String),
    /// A size, or one of the kind's own facts, by its name.
    Fact(String),
    /// A fact of a part of an option, such as its counter: the part's name and its own.
    Within(String, String),
    /// An option as a whole.
    Option,
    /// By which id the book has an option.
    OptionId,
    /// The order in which the options stand.
    OptionOrder,
    /// What is said of a picture, by its place in the row.
    Caption(usize),
    /// A picture, by its place in the row, which is another one.
    Picture(usize),
    /// What a picture is said to show to those who can't see it, by its place in the row.
    PictureWords(usize),
}

impl ChangedField {
    /// The field of that key of an item or an option.
    pub fn of(key: &str) -> Self {
        MarkedField::of(key).map_or_else(|| Self::Other(key.to_string()), Self::Marked)
    }

    /// Whether it says which product it is.
    pub fn is_product(&self) -> bool {
        matches!(self, Self::Marked(MarkedField::Maker | MarkedField::Model))
    }

    /// Whether something else may rest on it: all but what is known to be of the item alone.
    pub fn may_be_rested_on(&self) -> bool {
        match self {
            Self::Marked(field) => ForItselfAlone::of(field.word()).is_none(),
            Self::Other(name) => ForItselfAlone::of(name).is_none(),
            Self::Caption(_) | Self::Picture(_) | Self::PictureWords(_) => false,
            Self::OptionOrder | Self::OptionId => false,
            Self::Fact(_) | Self::Within(..) | Self::Option => true,
        }
    }

    /// Whether it is the finish, which may be a front that somebody else makes: `panel ready`.
    pub fn is_finish(&self) -> bool {
        let look = match self {
            Self::Marked(field) => OfTheLook::of(field.word()),
            Self::Other(name) | Self::Fact(name) => OfTheLook::of(name),
            _ => None,
        };
        look == Some(OfTheLook::Finish)
    }

    /// Whether a figure may move with it that something is built, cut or measured to: how it looks alone moves none.
    pub fn may_move_a_figure(&self) -> bool {
        let is_look = match self {
            Self::Marked(field) => OfTheLook::of(field.word()).is_some(),
            Self::Other(name) | Self::Fact(name) => OfTheLook::of(name).is_some(),
            _ => false,
        };
        !is_look && self.may_be_rested_on()
    }

    /// Whether heights may move with it: another floor, or one that is thicker or lies on more.
    pub fn may_move_a_height(&self) -> bool {
        match self {
            Self::Marked(field) => OfAHeight::of(field.word()).is_some(),
            Self::Other(name) | Self::Fact(name) | Self::Within(_, name) => OfAHeight::of(name).is_some(),
            Self::Option => true,
            Self::Caption(_) | Self::Picture(_) | Self::PictureWords(_) => false,
            Self::OptionOrder | Self::OptionId => false,
        }
    }

    /// Whether it is what the option is called.
    pub fn is_name(&self) -> bool {
        *self == Self::Marked(MarkedField::Name)
    }
}

/// Its name for people.
impl fmt::Display for ChangedField {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Marked(field) => f.write_str(field.word()),
            Self::Other(name) | Self::Fact(name) => f.write_str(name),
            Self::Within(part, name) => write!(f, "{part} {name}"),
            Self::Option => f.write_str("option"),
            Self::OptionId => f.write_str("id in the book"),
            Self::OptionOrder => f.write_str("order of the options"),
            Self::Caption(number) => write!(f, "picture {number}"),
            Self::Picture(number) => write!(f, "picture {number} is another"),
            Self::PictureWords(number) => write!(f, "words on picture {number}"),
        }
    }
}
