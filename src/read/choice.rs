//! Reads the options of a selection, each with what it takes from the selection and from a product.

use std::collections::BTreeSet;

use crate::book::vocabulary::{ACCESSORY, OPTION};
use crate::book::{
    Accessory, Burning, Detail, DetailValue, Fit, Fronts, Fuel, Hole, Laid, Order, Panel, Photo, ProductOption, Size,
    Slot, Sold, Stores, Top,
};
use crate::finding::Code;
use crate::source::yaml::{Node, Value};
use crate::source::{Span, Spanned};
use crate::units::{Money, letter};
use crate::vocabulary::values::{
    date, lead_time, length_range, positive_length, quantity, sides, spanned_text, text, whole,
};
use crate::vocabulary::{Faults, Field, Fields, Kind, Layers, NameOf, Pair, Shape, Value as _, values};

use super::room::Common;
use super::selection;

/// Keys that name one record, and so are never taken over from another.
const ITS_OWN: [&str; 2] = ["id", "product"];

/// Reads the options of a selection; one without a list of options is its own only option.
pub fn read_all(
    common: &Common<'_>,
    node: &Node,
    kind: Option<Kind>,
    options: Option<&Node>,
    faults: &mut Faults,
) -> Vec<ProductOption> {
    let shared = shared(node, options.is_some());
    let Some(options) = options else {
        let mut own = Layers::default();
        own.lay_under(shared.into_iter());
        return vec![read(common, own, Of { kind, number: 0, span: node.span }, faults)];
    };
    let Value::List(items) = &options.value else {
        faults.wrong_type(options, &Shape::List(&Shape::Record(&OPTION)));
        return vec![];
    };
    let mut read_options: Vec<ProductOption> = Vec::with_capacity(items.len());
    let mut ids = BTreeSet::new();
    for (number, item) in items.iter().enumerate() {
        if !matches!(item.value, Value::Map(_)) {
            faults.wrong_type(item, &Shape::Record(&OPTION));
            continue;
        }
        let mut own = Layers::default();
        own.lay_under(Layers::pairs_of(item).iter());
        own.lay_under(shared.iter().copied());
        let option = read(common, own, Of { kind, number, span: item.span }, faults);
        if !ids.insert(option.id.value.clone()) {
            let message = format!("two options have the id `{}`", option.id.value);
            faults.stop(Code::DUPLICATE, option.id.span, message, "give each option an id of its own");
        }
        read_options.push(option);
    }
    read_options
}

/// Reads a product that no option uses, for its faults.
pub fn check_product(common: &Common<'_>, node: &Node, faults: &mut Faults) {
    if !matches!(node.value, Value::Map(_)) {
        return faults.wrong_type(node, &Shape::Record(&OPTION));
    }
    let mut own = Layers::default();
    own.lay_under(Layers::pairs_of(node).iter());
    read(common, own, Of { kind: None, number: 0, span: node.span }, faults);
}

/// The fields of an option that stand in the selection itself.
fn shared(node: &Node, several: bool) -> Vec<&Pair> {
    let counts = |key: &str| OPTION.field(key).is_some() && key != "id" && !(several && key == "product");
    Layers::pairs_of(node).iter().filter(|(key, _)| counts(&key.value)).collect()
}

/// Which option is read.
struct Of {
    kind: Option<Kind>,
    number: usize,
    span: Span,
}

fn read<'n>(common: &'n Common<'_>, mut written: Layers<'n>, of: Of, faults: &mut Faults) -> ProductOption {
    if let Some(product) = written.at("product").and_then(|name| product(common, name, faults)) {
        let is_its_own = |(key, _): &&Pair| ITS_OWN.contains(&key.value.as_str());
        written.lay_under(Layers::pairs_of(product).iter().filter(|pair| !is_its_own(pair)));
    }
    let mut fields = Fields::of_layers(&written, &OPTION, of.span);
    let span = fields.span;
    fields.node("product");
    let id = fields.read("id", faults, selection::short_name);
    // Options are lettered where the book gives them no id.
    let id = id.spanned().cloned().unwrap_or_else(|| Spanned::new(letter(of.number).to_lowercase(), span));
    let mut choice = empty(id, span);
    words(&mut choice, &mut fields, faults);
    order(&mut choice, &mut fields, faults);
    choice.size = fields.node("size").and_then(|node| Size::read(node, faults)).unwrap_or_default();
    choice.fit = fields.read("fit", faults, Fit::read);
    choice.panel = fields.read("panel", faults, Panel::read);
    choice.sold = fields.node("sold").and_then(|node| Sold::read(node, faults)).unwrap_or_default();
    choice.laid = fields.node("laid").and_then(|node| Laid::read(node, faults)).unwrap_or_default();
    choice.fronts = fields.node("fronts").and_then(|node| Fronts::read(node, faults)).unwrap_or_default();
    choice.stores = fields.read("stores", faults, Stores::read);
    choice.top = fields.read("top", faults, Top::read);
    choice.sample_seen = fields.read("sample seen", faults, date);
    choice.photos = fields.list("photos", faults, Photo::read);
    choice.requires = fields.list("requires", faults, spanned_text);
    choice.drilled = fields.list("drilled", faults, Hole::read);
    choice.details = details(&mut fields, faults);
    fields.finish(faults);
    let needs = of.kind.into_iter().flat_map(Kind::needs);
    choice.unwritten = needs.filter(|path| written.at(path).is_none()).collect();
    choice
}

fn product<'a>(common: &'a Common<'_>, name: &Node, faults: &mut Faults) -> Option<&'a Node> {
    let text = values::scalar(name, &Shape::Name(NameOf::Product), faults)?;
    let found = common.loaded.products.get(text);
    if found.is_none() {
        let known = common.loaded.products.keys().map(String::as_str);
        values::unknown_name(name, text, NameOf::Product, known, faults);
    }
    found
}

fn empty(id: Spanned<String>, span: crate::source::Span) -> ProductOption {
    ProductOption {
        id,
        name: Slot::Absent,
        maker: Slot::Absent,
        model: Slot::Absent,
        finish: Slot::Absent,
        colour: Slot::Absent,
        description: Slot::Absent,
        size: Size::default(),
        hinge: Slot::Absent,
        burning: Slot::Absent,
        fuel: Slot::Absent,
        supplier: Slot::Absent,
        lead_time: Slot::Absent,
        price: Slot::Absent,
        cost: Slot::Absent,
        quantity: Slot::Absent,
        price_per: Slot::Absent,
        total: Slot::Absent,
        order: Order::default(),
        sold: Sold::default(),
        laid: Laid::default(),
        fronts: Fronts::default(),
        stores: Slot::Absent,
        top: Slot::Absent,
        sample_seen: Slot::Absent,
        photos: vec![],
        requires: vec![],
        accessories: vec![],
        drilled: vec![],
        fit: Slot::Absent,
        panel: Slot::Absent,
        details: vec![],
        unwritten: vec![],
        span,
    }
}

fn words(choice: &mut ProductOption, fields: &mut Fields<'_>, faults: &mut Faults) {
    choice.name = fields.read("name", faults, text);
    choice.maker = fields.read("maker", faults, text);
    choice.model = fields.read("model", faults, text);
    choice.finish = fields.read("finish", faults, text);
    choice.colour = fields.read("colour", faults, text);
    choice.description = fields.read("description", faults, text);
    choice.hinge = values::word_slot(fields, &OPTION, "hinge", faults);
    choice.burning = fields.read("material", faults, Burning::read);
    choice.fuel = fields.read("fuel", faults, Fuel::read);
}

fn order(choice: &mut ProductOption, fields: &mut Fields<'_>, faults: &mut Faults) {
    choice.supplier = fields.read("supplier", faults, text);
    choice.lead_time = fields.read("lead time", faults, lead_time);
    choice.price = fields.read("price", faults, Money::read);
    choice.cost = fields.read("cost", faults, Money::read);
    choice.quantity = fields.read("quantity", faults, quantity);
    choice.price_per = fields.read("price per", faults, text);
    choice.total = fields.read("total", faults, Money::read);
    choice.order = fields.node("order").and_then(|node| Order::read(node, faults)).unwrap_or_default();
    let Some(node) = fields.node("accessories") else { return };
    match &node.value {
        Value::List(items) => {
            choice.accessories = items.iter().filter_map(|item| accessory(item, faults)).collect();
        }
        _ => faults.wrong_type(node, &Shape::List(&Shape::Record(&ACCESSORY))),
    }
}

fn accessory(node: &Node, faults: &mut Faults) -> Option<Accessory> {
    let mut fields = Fields::of(node, &ACCESSORY, faults)?;
    let name = fields.read("name", faults, text);
    let model = fields.read("model", faults, text);
    let price = fields.read("price", faults, Money::read);
    let cost = fields.read("cost", faults, Money::read);
    let quantity = fields.read("quantity", faults, quantity);
    fields.finish(faults);
    Some(Accessory { name: name.spanned()?.clone(), model, price, cost, quantity })
}

/// The facts that only some kinds have: every field of an option that has no place of its own.
fn details(fields: &mut Fields<'_>, faults: &mut Faults) -> Vec<Detail> {
    let of_kinds = OPTION.fields.iter().skip_while(|field| field.key != "capacity");
    of_kinds.filter_map(|field| detail(fields, field, faults)).collect()
}

fn detail(fields: &mut Fields<'_>, field: &'static Field, faults: &mut Faults) -> Option<Detail> {
    let node = fields.node(field.key)?;
    let value = match field.shape {
        Shape::Length => DetailValue::Length(positive_length(node, faults)?),
        Shape::LengthRange => DetailValue::Range(length_range(node, faults)?),
        Shape::Sides => DetailValue::Sides(sides(node, faults)?),
        Shape::Whole => DetailValue::Words(whole(node, faults)?.to_string()),
        Shape::OneOf(words) => DetailValue::Words(values::one_of(node, words, faults)?.to_string()),
        _ => DetailValue::Words(text(node, faults)?),
    };
    Some(Detail { key: field.key, value, span: node.span })
}
