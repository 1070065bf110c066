//! What was, or is to be, chosen for one place.

use super::{Burning, Fit, Fronts, Fuel, Hanging, Hole, Laid, Order, Papered, Photo, Sold, Stores, Top, Waiver};
use crate::source::yaml::Node;
use crate::source::{Span, Spanned};
use crate::units::money::MoneyError;
use crate::units::{Area, Date, LeadTime, Length, LengthRange, Money, Quantity, Sides, Weight};
use crate::vocabulary::{Code, Faults, Kind, NameOf, Shape, Slot, Trait, Value, record, values};

/// A choice to be made for one place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Selection {
    /// A short name, unique in the room, made of letters, figures and hyphens.
    pub id: String,
    /// Its number on drawings, such as `K-07`.
    pub tag: String,
    /// Where the book writes that number itself; none where it is given in order.
    pub tag_at: Option<Span>,
    /// What is chosen, in the household's words.
    pub name: Spanned<String>,
    /// Its kind.
    pub kind: Slot<Kind>,
    /// The opening that it goes into.
    pub place: Slot<String>,
    /// What waits for it.
    pub needed_for: Slot<NeededFor>,
    /// Why it is so, in Markdown.
    pub why: Slot<String>,
    /// The option that was chosen, by its id.
    pub chosen: Slot<String>,
    /// The day on which it was chosen.
    pub chosen_on: Slot<Date>,
    /// Selections that must stand before it is ordered, as named in the book.
    pub depends_on: Vec<Spanned<String>>,
    /// Surfaces that it lies edge to edge with, as named in the book.
    pub meets: Vec<Spanned<String>>,
    /// Where lights hang.
    pub hangs: Slot<Hanging>,
    /// The walls that a wallpaper covers.
    pub papered: Slot<Papered>,
    /// The allowance that it draws on.
    pub allowance: Slot<String>,
    /// Who buys it.
    pub furnished_by: Slot<String>,
    /// Who fits it.
    pub installed_by: Slot<String>,
    /// How much of the room it covers.
    pub covers: Slot<Area>,
    /// For the office alone, in Markdown.
    pub private: Slot<String>,
    /// Findings set aside for this selection.
    pub waivers: Vec<Waiver>,
    /// What can be chosen; one when there is nothing to choose.
    pub options: Vec<ProductOption>,
    /// Where it is written.
    pub span: Span,
}

impl Selection {
    /// Whether it is of that kind.
    pub fn is(&self, kind: Kind) -> bool {
        self.kind.get() == Some(&kind)
    }

    /// Whether it is of one of those kinds.
    pub fn is_any(&self, kinds: &[Kind]) -> bool {
        self.kind.get().is_some_and(|kind| kinds.contains(kind))
    }

    /// Whether its kind has that trait.
    pub fn has(&self, what: Trait) -> bool {
        self.kind.get().is_some_and(|kind| kind.is(what))
    }

    /// The option that stands: the chosen one, or the only one.
    pub fn settled(&self) -> Option<&ProductOption> {
        match (self.chosen.get(), self.options.as_slice()) {
            (Some(id), options) => options.iter().find(|option| option.id.value == *id),
            (None, [only]) => Some(only),
            _ => None,
        }
    }

    /// Whether the option that stands is ordered.
    pub fn is_ordered(&self) -> bool {
        self.settled().is_some_and(|option| option.order.placed_on.get().is_some())
    }

    /// The options that still count: the settled one, or all while it is open.
    pub fn standing(&self) -> &[ProductOption] {
        self.settled().map_or(&self.options, std::slice::from_ref)
    }
}

/// What waits for a selection.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NeededFor {
    /// A milestone of the book.
    Milestone(String),
    /// A day.
    Day(Date),
}

impl Value for NeededFor {
    const SHAPE: Shape = Shape::Either(&Shape::Name(NameOf::Milestone), &Shape::Date);

    /// Whether there is such a milestone is seen when all is read.
    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let text = values::scalar(node, &Shape::Name(NameOf::Milestone), faults)?;
        let dated = text.starts_with(|first: char| first.is_ascii_digit());
        match Date::parse(text) {
            Ok(day) => Some(Self::Day(day)),
            Err(_) if !dated => Some(Self::Milestone(text.to_string())),
            Err(error) => {
                faults.stop(Code::WRONG_TYPE, node.span, error.to_string(), error.remedy());
                None
            }
        }
    }
}

/// One thing that can be chosen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ProductOption {
    /// A short name, unique in the selection.
    pub id: Spanned<String>,
    /// What the client reads.
    pub name: Slot<String>,
    /// Who makes it.
    pub maker: Slot<String>,
    /// The maker's model.
    pub model: Slot<String>,
    /// Finish.
    pub finish: Slot<String>,
    /// Colour.
    pub colour: Slot<String>,
    /// One line for the client.
    pub description: Slot<String>,
    /// Sizes.
    pub size: Size,
    /// The side its door hangs on.
    pub hinge: Slot<String>,
    /// Whether it burns.
    pub burning: Slot<Burning>,
    /// What its heat is fed with.
    pub fuel: Slot<Fuel>,
    /// Where it is bought.
    pub supplier: Slot<String>,
    /// From order to delivery.
    pub lead_time: Slot<LeadTime>,
    /// What the client pays for one, before tax.
    pub price: Slot<Money>,
    /// What the firm pays for one; for the office alone.
    pub cost: Slot<Money>,
    /// How many, or how much.
    pub quantity: Slot<Quantity>,
    /// What the price is for, if not for one of the quantity.
    pub price_per: Slot<String>,
    /// What the supplier says it comes to.
    pub total: Slot<Money>,
    /// Quotation, availability and order.
    pub order: Order,
    /// The boxes or rolls that it comes in.
    pub sold: Sold,
    /// How it is laid.
    pub laid: Laid,
    /// Doors and drawer fronts.
    pub fronts: Fronts,
    /// What is inside.
    pub stores: Slot<Stores>,
    /// A counter: its material, what carries it, how it is cut.
    pub top: Slot<Top>,
    /// The day on which its sample was laid beside the others.
    pub sample_seen: Slot<Date>,
    /// Pictures.
    pub photos: Vec<Photo>,
    /// What the maker's sheet says must be ordered with it.
    pub requires: Vec<Spanned<String>>,
    /// What is ordered with it.
    pub accessories: Vec<Accessory>,
    /// Holes to be drilled in it.
    pub drilled: Vec<Hole>,
    /// What the maker's sheet asks.
    pub fit: Slot<Fit>,
    /// The joiner's front panel.
    pub panel: Slot<Panel>,
    /// The kind's own facts, as written, in the vocabulary's order.
    pub details: Vec<Detail>,
    /// What its kind needs and is written nowhere, in it, in the selection or in the product: paths such as
    /// `size.width`.
    pub unwritten: Vec<&'static str>,
    /// Where it is written.
    pub span: Span,
}

impl ProductOption {
    /// What the client reads: its name, or maker and model, or its finish.
    pub fn title(&self) -> String {
        if let Some(name) = self.name.get() {
            return name.clone();
        }
        let words = [self.maker.text(), self.model.text()].into_iter().filter(|word| !word.is_empty());
        let title = words.collect::<Vec<_>>().join(" ");
        if title.is_empty() { self.finish.text().to_string() } else { title }
    }

    /// What the client pays for it: price times quantity, and what is ordered with it.
    pub fn price_in_all(&self) -> Option<Money> {
        let accessories = self.accessories.iter().map(|with| (with.price.get(), with.quantity.get()));
        in_all(self.price.get(), self.quantity.get(), accessories)
    }

    /// What the firm pays for it; for the office alone.
    pub fn cost_in_all(&self) -> Option<Money> {
        let accessories = self.accessories.iter().map(|with| (with.cost.get(), with.quantity.get()));
        in_all(self.cost.get(), self.quantity.get(), accessories)
    }

    /// A fact of the kind's own that is a length.
    pub fn length(&self, key: &str) -> Option<(Length, Span)> {
        self.detail(key).and_then(|detail| match detail.value {
            DetailValue::Length(length) => Some((length, detail.span)),
            _ => None,
        })
    }

    /// A fact of the kind's own that is a range of lengths.
    pub fn range(&self, key: &str) -> Option<LengthRange> {
        self.detail(key).and_then(|detail| match detail.value {
            DetailValue::Range(range) => Some(range),
            _ => None,
        })
    }

    /// A fact of the kind's own in words or figures.
    pub fn words(&self, key: &str) -> Option<(&str, Span)> {
        self.detail(key).and_then(|detail| match &detail.value {
            DetailValue::Words(words) => Some((words.as_str(), detail.span)),
            _ => None,
        })
    }

    /// A fact of the kind's own.
    pub fn detail(&self, key: &str) -> Option<&Detail> {
        self.details.iter().find(|detail| detail.key == key)
    }
}

/// One amount times its quantity (one, if none is given), and the accessories that have a price.
fn in_all<'a>(
    each: Option<&Money>,
    quantity: Option<&Quantity>,
    accessories: impl Iterator<Item = (Option<&'a Money>, Option<&'a Quantity>)>,
) -> Option<Money> {
    let times = |money: &Money, quantity: Option<&Quantity>| {
        quantity.map_or(Ok(*money), |quantity| money.times(quantity.amount))
    };
    let own = times(each?, quantity).ok()?;
    let mut more = accessories.filter_map(|(price, quantity)| price.map(|price| times(price, quantity)));
    let sum: Result<Money, MoneyError> = more.try_fold(own, |sum, more| sum.checked_add(more?));
    sum.ok()
}

/// A fact of the kind's own, as the book words it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Detail {
    /// Its key in the vocabulary.
    pub key: &'static str,
    /// What is written.
    pub value: DetailValue,
    /// Where.
    pub span: Span,
}

/// What a fact holds: words, or lengths that pages word in the book's own units.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DetailValue {
    /// Words or a number.
    Words(String),
    /// A length.
    Length(Length),
    /// A range of lengths.
    Range(LengthRange),
    /// Two or three lengths.
    Sides(Sides),
}

record! {
    group
    #[derive(Default)]
    pub struct Size = SIZE("size", "sizes of the thing as it stands") {
        width: Slot<Length> = "width", "overall width", "29 7/8\"";
        height: Slot<LengthRange> = "height", "overall height, as its legs can be set", "35 3/4\" to 36 3/4\"";
        depth: Slot<Length> = "depth", "depth of the case or body", "26 1/4\"";
        depth_with_door: Slot<Length> = "depth with door", "depth with the door, without its handle", "27 1/2\"";
        depth_with_handle: Slot<Length> = "depth with handle", "depth with door and handle", "28 1/2\"";
        height_to_hinge: Slot<Length> = "height to hinge", "height to the top of the hinge cap", "69 7/8\"";
        length: Slot<Length> = "length", "length, for what has one", "8\"";
        diameter: Slot<Length> = "diameter", "diameter, for what is round", "12\"";
        thickness: Slot<Length> = "thickness", "thickness", "1 1/4\"";
    }
}

record! {
    #[derive(Default)]
    pub struct Panel = PANEL("panel", "a front panel that the joiner makes, by the maker's sheet") {
        width: Slot<Length> = "width", "width", "23 3/4\"";
        height: Slot<LengthRange> = "height", "height", "29 13/16\" to 30 1/4\"";
        thickness: Slot<Length> = "thickness", "thickness", "3/4\"";
        weight: Slot<Weight> = "weight", "weight", "16 lb";
    }
}

/// What is ordered with a thing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Accessory {
    /// What it is.
    pub name: Spanned<String>,
    /// The maker's model.
    pub model: Slot<String>,
    /// What the client pays for one.
    pub price: Slot<Money>,
    /// What the firm pays for one; for the office alone.
    pub cost: Slot<Money>,
    /// How many.
    pub quantity: Slot<Quantity>,
}
