//! Reads the options of a selection, each with what it takes from the selection and from a product.

use std::collections::{BTreeSet, HashSet};
use std::sync::{Arc, LazyLock};

use crate::book::vocabulary::OPTION;
use crate::book::{Burning, DetailName, Fit, Fuel, ProductOption, Top};
use crate::finding::{Code, Phrase, phrase};
use crate::source::yaml::{Node, Value};
use crate::source::{Span, Spanned};
use crate::units::letter;
use crate::vocabulary::supply::InWords;
use crate::vocabulary::{Faults, FieldType, Fields, Kind, Layers, Mount, NameOf, Pair, Slot, Words, values};

use super::room::Common;

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
    let told_by_kind = kind.and(node.at("kind")).and_then(fuel_named);
    let called = node.at("kind").and_then(word).unwrap_or_default();
    let mount_by_kind = kind.filter(|kind| kind.needs().any(|path| path == DetailName::Mount.word())).and_then(|_| {
        let mount = Option::<Mount>::of_words(called)?;
        Some((mount, node.at("kind")?.span))
    });
    let Some(options) = options else {
        let mut own = Layers::default();
        own.lay_under(shared.into_iter());
        let of = OptionOf { kind, told_by_kind, mount_by_kind, called, number: 0, span: node.span };
        return read(common, own, of, &mut None, faults).into_iter().collect();
    };
    if let Some((key, _)) = Layers::pairs_of(node).iter().find(|(key, _)| key.value == "product") {
        let message = "`product` stands beside `options`, and none of them takes anything from it";
        faults.stop(Code::UNKNOWN_KEY, key.span, message, "write it in each option that is that product");
    }
    let Value::List(items) = &options.value else {
        faults.wrong_type(options, &FieldType::List(&FieldType::Record(&OPTION)));
        return vec![];
    };
    let mut read_options: Vec<ProductOption> = Vec::with_capacity(items.len());
    let (mut ids, mut known_fit) = (BTreeSet::new(), None);
    for (number, item) in items.iter().enumerate() {
        if !matches!(item.value, Value::Map(_)) {
            faults.wrong_type(item, &FieldType::Record(&OPTION));
            continue;
        }
        let mut own = Layers::default();
        own.lay_under(Layers::pairs_of(item).iter());
        own.lay_under(shared.iter().copied());
        let of = OptionOf { kind, told_by_kind, mount_by_kind, called, number, span: item.span };
        let Some(option) = read(common, own, of, &mut known_fit, faults) else { continue };
        if !ids.insert(option.id.value.clone()) {
            let message = phrase!("two options have the id `{}`", option.id.value);
            faults.stop(Code::DUPLICATE, option.id.span, message, "give each option an id of its own");
        }
        read_options.push(option);
    }
    read_options
}

/// Reads a product that no option uses, for its faults.
pub fn check_product(common: &Common<'_>, node: &Node, faults: &mut Faults) {
    if !matches!(node.value, Value::Map(_)) {
        return faults.wrong_type(node, &FieldType::Record(&OPTION));
    }
    let mut own = Layers::default();
    own.lay_under(Layers::pairs_of(node).iter());
    let of = OptionOf { kind: None, told_by_kind: None, mount_by_kind: None, called: "", number: 0, span: node.span };
    read(common, own, of, &mut None, faults);
}

/// The keys of an option.
static OF_OPTIONS: LazyLock<HashSet<&str>> = LazyLock::new(|| OPTION.fields.iter().map(|field| field.key).collect());

/// The fields of an option that stand in the selection itself.
fn shared(node: &Node, several: bool) -> Vec<&Pair> {
    let counts = |key: &str| OF_OPTIONS.contains(key) && key != "id" && !(several && key == "product");
    Layers::pairs_of(node).iter().filter(|(key, _)| counts(&key.value)).collect()
}

/// Which option is read.
struct OptionOf<'k> {
    kind: Option<Kind>,
    /// The fuel that the word for its kind names: `gas range`.
    told_by_kind: Option<(Fuel, Span)>,
    /// How that word says that a bowl is fixed: `undermount sink`.
    mount_by_kind: Option<(Mount, Span)>,
    /// The word that its kind is named by.
    called: &'k str,
    number: usize,
    span: Span,
}

/// What was read of a maker's sheet, and where it is written: options that have it of one place share it.
type KnownFit<'n> = Option<(&'n Node, Slot<Arc<Fit>>)>;

fn read<'n>(
    common: &'n Common<'_>,
    mut written: Layers<'n>,
    of: OptionOf<'_>,
    known_fit: &mut KnownFit<'n>,
    faults: &mut Faults,
) -> Option<ProductOption> {
    if let Some(product) = written.at("product").and_then(|name| product(common, name, faults)) {
        another_model(&written, product, faults);
        let is_its_own = |(key, _): &&Pair| ITS_OWN.contains(&key.value.as_str());
        written.lay_under(Layers::pairs_of(product).iter().filter(|pair| !is_its_own(pair)));
    }
    let fit = written.as_written("fit");
    let known = known_fit.as_ref().filter(|(node, _)| fit.is_some_and(|fit| std::ptr::eq(*node, fit)));
    let fields = Fields::of_layers(&written, &OPTION, of.span);
    let fields = match known {
        Some((_, read)) => fields.with_read("fit", read),
        None => fields,
    };
    let mut option = ProductOption::of_fields(fields, faults)?;
    *known_fit = fit.map(|node| (node, option.fit.clone()));
    if option.id.is_empty() {
        // Options are lettered where the book gives them no id.
        option.id.value = letter(of.number).to_lowercase();
    }
    option.called = of.called.into();
    option.mount_by_kind = of.mount_by_kind;
    settle_material(&mut option, of.kind, faults);
    settle_fuel(&mut option, of.told_by_kind, faults);
    let needs = of.kind.into_iter().flat_map(Kind::needs);
    let by_kind = |path: &&str| *path == DetailName::Mount.word() && of.mount_by_kind.is_some();
    option.unwritten = needs.filter(|path| !by_kind(path) && written.at(path).is_none_or(Node::is_empty)).collect();
    let is_unread = |name: &DetailName| written.at(name.word()).is_some() && option.detail(*name).is_none();
    option.unread = DetailName::WORDS.iter().filter_map(|word| DetailName::of(word)).filter(is_unread).collect();
    Some(option)
}

/// A model of its own beside the figures of a product's sheet: they are of another model.
fn another_model(own: &Layers<'_>, product: &Node, faults: &mut Faults) {
    let mut of_product = Layers::default();
    of_product.lay_under(Layers::pairs_of(product).iter());
    let models = own.at("model").and_then(word_at).zip(of_product.at("model").and_then(word_at));
    let is_sheet_of_product = own.at("fit").is_none() && of_product.at("fit").is_some_and(|fit| !fit.is_empty());
    let Some(((own, at), (other, _))) = models.filter(|_| is_sheet_of_product) else { return };
    if !own.eq_ignore_ascii_case(other) {
        let message = phrase!(
            "the model is `{own}`, and the figures of the sheet are those of its product, `{other}`",
            own,
            other
        );
        let remedy = "leave `model` to the product, or write the figures of its own sheet under `fit`";
        faults.stop(Code::FIELD, at, message, remedy);
    }
}

fn word_at(node: &Node) -> Option<(&str, Span)> {
    Some((word(node)?.trim(), node.span))
}

/// What a counter is made of counts as its top's; of anything else, `material` says whether it burns.
fn settle_material(option: &mut ProductOption, kind: Option<Kind>, faults: &mut Faults) {
    let Some((said, at)) = option.material.spanned().and_then(|said| Some((said.value.of_top()?, said.span))) else {
        return;
    };
    match (kind, &mut option.top) {
        (None, _) | (_, Slot::Invalid) => {}
        (Some(Kind::Counter), Slot::Given(top)) => {
            if top.value.material.is_absent() {
                top.value.material = Slot::Given(Spanned::new(said, at));
            }
        }
        (Some(Kind::Counter), top) => {
            let material = Slot::Given(Spanned::new(said, at));
            *top = Slot::Given(Spanned::new(Top { material, ..Top::default() }, at));
        }
        (Some(_), _) => {
            let (told, remedy) = Burning::OTHERWISE.unwrap_or_default();
            faults.stop(Code::WRONG_TYPE, at, phrase!("this {told}", Phrase::from(told)), remedy);
            option.material = Slot::Invalid;
        }
    }
}

/// The fuel that the word for a kind names.
fn fuel_named(kind: &Node) -> Option<(Fuel, Span)> {
    Some((Fuel::told_by(word(kind)?)?, kind.span))
}

fn word(node: &Node) -> Option<&str> {
    let Value::Scalar { text, .. } = &node.value else { return None };
    Some(text)
}

/// What the word for its kind says of its fuel counts as if it stood under `fuel`.
fn settle_fuel(option: &mut ProductOption, told_by_kind: Option<(Fuel, Span)>, faults: &mut Faults) {
    let Some((told, at)) = told_by_kind else { return };
    match option.fuel.spanned() {
        Some(fuel) if fuel.value != told => {
            let message = phrase!("`fuel` is {}, and the word for the kind says {}", fuel.value, told);
            faults.stop(Code::FIELD, fuel.span, message, "write one of the two, as the maker's sheet has it");
        }
        Some(_) => {}
        None if option.fuel.is_absent() => option.fuel = Slot::Given(Spanned::new(told, at)),
        None => {}
    }
}

fn product<'a>(common: &'a Common<'_>, name: &Node, faults: &mut Faults) -> Option<&'a Node> {
    let text = values::scalar(name, &FieldType::Name(NameOf::Product), faults)?;
    let found = common.loaded.products.get(text);
    if found.is_none() {
        let known = common.loaded.products.keys().map(String::as_str);
        values::unknown_name(name.span, text, NameOf::Product, known, faults);
    }
    found
}
