//! Single values: text to lengths, money, dates, with the fault said where one is written wrongly.

use crate::finding::{Code, Phrase, Remark, phrase};
use crate::source::yaml::{Node, Value};
use crate::source::{Span, Spanned};
use crate::units::length::LengthError;
use crate::units::money::MoneyError;
use crate::units::{
    Area, Currency, Date, Fault, LeadTime, Length, LengthRange, Money, Percent, Quantity, Sides, Weight, Wrote,
    in_words,
};

use super::{Clearance, Faults, FieldType, Kind, NameOf, Readings, Words, near_kinds};
use super::{is_plain, nearest, of_the_same_words, same_but_for_case, word_meant, words_of};

/// The words of a single value; says so if it is none.
pub fn scalar<'n>(node: &'n Node, shape: &FieldType, faults: &mut Faults) -> Option<&'n str> {
    match &node.value {
        Value::Scalar { text, .. } if !text.trim().is_empty() => Some(text.trim()),
        _ => {
            faults.wrong_type(node, shape);
            None
        }
    }
}

/// What a text is read as; where it can't be, the error is told under the rule that is its.
fn parsed<T, E: Fault>(
    node: &Node,
    shape: &FieldType,
    faults: &mut Faults,
    parse: impl FnOnce(&str) -> Result<T, E>,
    rule: impl FnOnce(&E) -> Code,
) -> Option<T> {
    let text = scalar(node, shape, faults)?;
    parse(text).map_err(|error| faults.stop(rule(&error), node.span, error.message(), error.remedy())).ok()
}

/// The rule of what is written wrongly.
fn wrong<E>(_: &E) -> Code {
    Code::WRONG_TYPE
}

/// The same, but that a length without a unit has a rule of its own.
fn bare_or_wrong(is_bare: bool) -> Code {
    if is_bare { Code::BARE_LENGTH } else { Code::WRONG_TYPE }
}

/// Words.
pub fn text(node: &Node, faults: &mut Faults) -> Option<String> {
    scalar(node, &FieldType::Text, faults).map(str::to_string)
}

/// Words with their place.
pub fn spanned_text(node: &Node, faults: &mut Faults) -> Option<Spanned<String>> {
    text(node, faults).map(|text| Spanned::new(text, node.span))
}

/// A length with its unit; a bare number has a rule of its own.
pub fn length(node: &Node, faults: &mut Faults) -> Option<Length> {
    let rule = |error: &LengthError| bare_or_wrong(matches!(error, LengthError::Bare(..)));
    parsed(node, &FieldType::Length, faults, Length::parse, rule)
}

/// A length of nothing or more.
pub fn positive_length(node: &Node, faults: &mut Faults) -> Option<Length> {
    let length = length(node, faults)?;
    if length.is_negative() {
        let message = phrase!("{length} is less than nothing", length);
        faults.stop(Code::WRONG_TYPE, node.span, message, "write the length without a minus sign");
        return None;
    }
    Some(length)
}

/// A length or a range.
pub fn length_range(node: &Node, faults: &mut Faults) -> Option<LengthRange> {
    parsed(node, &FieldType::LengthRange, faults, LengthRange::parse, |error| bare_or_wrong(error.is_bare()))
}

/// Lengths read at one or several points.
pub fn readings(node: &Node, faults: &mut Faults) -> Option<Readings> {
    match &node.value {
        Value::List(items) if !items.is_empty() => {
            let read = items.iter().map(|item| Some(Spanned::new(positive_length(item, faults)?, item.span)));
            // Every item is read before judging, so that each faulty one is told.
            let read: Vec<Option<Spanned<Length>>> = read.collect();
            read.into_iter().collect::<Option<Vec<_>>>().map(Readings)
        }
        Value::Scalar { .. } => Some(Readings(vec![Spanned::new(positive_length(node, faults)?, node.span)])),
        _ => {
            faults.wrong_type(node, &FieldType::Readings);
            None
        }
    }
}

/// Exactly two lengths.
pub fn two_lengths(node: &Node, faults: &mut Faults) -> Option<(Length, Length)> {
    let Readings(lengths) = readings(node, faults)?;
    match lengths.as_slice() {
        [one, other] => Some((one.value, other.value)),
        _ => {
            let message = phrase!("two lengths are wanted here, and {} stand here", lengths.len());
            faults.stop(Code::WRONG_TYPE, node.span, message, "write both in one list: `[…, …]`");
            None
        }
    }
}

/// A list of lengths.
pub fn lengths(node: &Node, faults: &mut Faults) -> Option<Vec<Length>> {
    readings(node, faults).map(|readings| readings.0.into_iter().map(|reading| reading.value).collect())
}

/// Two or three lengths with `x` between them.
pub fn sides(node: &Node, faults: &mut Faults) -> Option<Sides> {
    sides_as(&FieldType::Sides, node, faults)
}

fn sides_as(shape: &FieldType, node: &Node, faults: &mut Faults) -> Option<Sides> {
    parsed(node, shape, faults, Sides::parse, |error| bare_or_wrong(error.is_bare()))
}

/// Three lengths with `x` between them: a box.
pub fn three_sides(node: &Node, faults: &mut Faults) -> Option<Sides> {
    count_sides(node, 3, faults)
}

/// Two lengths with `x` between them: a rectangle.
pub fn two_sides(node: &Node, faults: &mut Faults) -> Option<(Length, Length)> {
    match count_sides(node, 2, faults)?.sides() {
        [one, other] => Some((*one, *other)),
        _ => None,
    }
}

fn count_sides(node: &Node, count: usize, faults: &mut Faults) -> Option<Sides> {
    let shape = if count == 3 { FieldType::ThreeSides } else { FieldType::TwoSides };
    let read = sides_as(&shape, node, faults)?;
    if read.sides().len() == count {
        return Some(read);
    }
    let message = phrase!("{count} lengths are wanted here, and {} stand here", count, read.sides().len());
    let remedy = if count == 3 {
        "write it as `… x … x …`, each with its unit"
    } else {
        "write it as `… x …`, each with its unit"
    };
    faults.stop(Code::WRONG_TYPE, node.span, message, remedy);
    None
}

/// A length, and where it holds; or a free cross-section.
pub fn clearance(node: &Node, faults: &mut Faults) -> Option<Clearance> {
    clear_as(&FieldType::Clearance, node, faults)
}

fn clear_as(shape: &FieldType, node: &Node, faults: &mut Faults) -> Option<Clearance> {
    let written = scalar(node, shape, faults)?;
    if let Ok(vent) = Area::parse(written) {
        return Some(Clearance::of_vent(vent));
    }
    // The unit ends the length; what follows says where it holds.
    let splits = written.char_indices().filter(|(_, c)| c.is_whitespace()).map(|(at, _)| at);
    let whole = std::iter::once(written.len()).chain(splits.collect::<Vec<_>>().into_iter().rev());
    for at in whole {
        let (head, tail) = written.split_at(at);
        if let Ok(length) = Length::parse(head) {
            return Some(Clearance::of(length, tail.trim()));
        }
    }
    length(node, faults).map(|length| Clearance::of(length, ""))
}

/// A length that holds above a counter or a cooking surface, whether its words say so or not.
pub fn length_above(node: &Node, faults: &mut Faults) -> Option<Length> {
    let clear = clear_as(&FieldType::LengthAbove, node, faults)?;
    if clear.vent.is_none() && (clear.above || clear.holds.is_empty()) {
        return Some(clear.length);
    }
    let message =
        phrase!("is no distance above a cooking surface: `{}`", scalar(node, &FieldType::LengthAbove, faults)?);
    faults.stop(Code::WRONG_TYPE, node.span, message, "write the length, with `above counter` behind it or nothing");
    None
}

/// The most of a length: `1"`, or `at most 1"`.
pub fn most(node: &Node, faults: &mut Faults) -> Option<Length> {
    let text = scalar(node, &FieldType::Length, faults)?;
    match LengthRange::parse(text) {
        Ok(LengthRange { least: None, most: Some(most) }) => Some(most),
        _ => length(node, faults),
    }
}

/// An area with its unit.
pub fn area(node: &Node, faults: &mut Faults) -> Option<Area> {
    parsed(node, &FieldType::Area, faults, Area::parse, wrong)
}

/// A currency by its letters.
pub fn currency(node: &Node, faults: &mut Faults) -> Option<Currency> {
    parsed(node, &FieldType::Currency, faults, Currency::parse, wrong)
}

/// An amount in the book's currency.
pub fn money(node: &Node, faults: &mut Faults) -> Option<Money> {
    let currency = faults.currency;
    let rule = |error: &MoneyError| match error {
        MoneyError::OtherCurrency { .. } => Code::CURRENCY,
        _ => Code::WRONG_TYPE,
    };
    parsed(node, &FieldType::Money, faults, |text| Money::parse(text, currency), rule)
}

/// A percentage with its sign.
pub fn percent(node: &Node, faults: &mut Faults) -> Option<Percent> {
    parsed(node, &FieldType::Percent, faults, Percent::parse, wrong)
}

/// A day.
pub fn date(node: &Node, faults: &mut Faults) -> Option<Date> {
    parsed(node, &FieldType::Date, faults, Date::parse, wrong)
}

/// A span of time.
pub fn lead_time(node: &Node, faults: &mut Faults) -> Option<LeadTime> {
    parsed(node, &FieldType::LeadTime, faults, LeadTime::parse, wrong)
}

/// A weight with its unit.
pub fn weight(node: &Node, faults: &mut Faults) -> Option<Weight> {
    parsed(node, &FieldType::Weight, faults, Weight::parse, wrong)
}

/// A count, or an amount with its unit.
pub fn quantity(node: &Node, faults: &mut Faults) -> Option<Quantity> {
    parsed(node, &FieldType::Quantity, faults, Quantity::parse, wrong)
}

/// A whole number, as a count.
pub fn whole(node: &Node, faults: &mut Faults) -> Option<u32> {
    let text = scalar(node, &FieldType::Whole, faults)?;
    let value = text.parse().ok().or_else(|| counted(text, faults.key));
    if value.is_none() {
        let figure = in_words::number(text);
        let remedy = match figure {
            Some(figure) => phrase!("write the figure: `{}`", Wrote(&figure.to_string())),
            None => "write figures only, such as `2`".into(),
        };
        let remark = Remark::stop(node.span, phrase!("`{text}` is not a whole number", text)).remedy(remedy);
        faults.add(remark.mended_by(figure.map(|figure| figure.to_string()).as_deref()).of(Code::WRONG_TYPE));
    }
    value
}

/// A number with what its own key counts behind it: `2700 K` of `kelvin`, `3 seats` of `seats`.
fn counted(text: &str, key: &str) -> Option<u32> {
    let end = text.find(|c: char| !c.is_ascii_digit()).filter(|end| *end > 0)?;
    let (figures, unit) = text.split_at_checked(end)?;
    let unit = unit.trim().trim_end_matches('.').to_lowercase();
    let own = [key.trim_end_matches('s'), key];
    let abbreviated: &[&str] = match key {
        "kelvin" => &["k"],
        "lumens" => &["lm"],
        _ => &[],
    };
    (own.contains(&unit.as_str()) || abbreviated.contains(&unit.as_str())).then(|| figures.parse().ok())?
}

/// `true` or `false`.
pub fn yes_no(node: &Node, faults: &mut Faults) -> Option<bool> {
    match scalar(node, &FieldType::YesNo, faults)? {
        "true" | "yes" => Some(true),
        "false" | "no" => Some(false),
        other => {
            let meant = same_but_for_case(other, ["true", "false", "yes", "no"].into_iter());
            let remark = Remark::stop(node.span, phrase!("`{other}` is neither `true` nor `false`", other));
            faults.add(remark.remedy("write `true` or `false`").mended_by(meant).of(Code::WRONG_TYPE));
            None
        }
    }
}

/// What a node's word says, where it is one of a closed set; nothing is said where it is not.
pub fn known_word<T: Words>(node: &Node) -> Option<T> {
    let Value::Scalar { text, .. } = &node.value else { return None };
    word_meant(text.trim(), T::WORDS, T::ALSO).and_then(T::of)
}

/// One of a closed set of words, however its parts are joined.
pub fn one_of_words<T: Words>(node: &Node, faults: &mut Faults) -> Option<T> {
    let shape = FieldType::OneOf(T::WORDS, T::ALSO);
    let text = scalar(node, &shape, faults)?;
    if let Some(word) = word_meant(text, T::WORDS, T::ALSO) {
        return T::of(word);
    }
    const NONE_OF_THEM: &str = "is not among the words for this";
    let known = || T::WORDS.iter().chain(T::ALSO.iter().map(|(also, _)| also)).copied();
    let near = nearest(text, known());
    // A name of one's own may hold the word: `bar island`. Of two that it holds neither is what was meant.
    let held = || {
        let mut inside = words_of(text).into_iter().filter_map(|part| known().find(|word| **word == *part));
        inside.next().filter(|first| inside.all(|other| other == *first))
    };
    let near = near.or_else(|| of_the_same_words(text, known()));
    let near = near.or_else(|| T::OTHERWISE.is_none().then(held).flatten());
    let (message, remedy) = match (near, T::OTHERWISE) {
        (Some(near), _) => (NONE_OF_THEM, phrase!("did you mean `{near}`?", near)),
        (None, Some((told, remedy))) => (told, remedy.into()),
        (None, None) => (NONE_OF_THEM, phrase!("write {}", shape.wanted())),
    };
    let message = phrase!("`{text}` {message}", text, Phrase::from(message));
    let remark = Remark::stop(node.span, message).remedy(remedy);
    faults.add(remark.mended_by(same_but_for_case(text, known())).of(Code::WRONG_TYPE));
    None
}

/// The name of a kind.
pub fn kind_name(node: &Node, faults: &mut Faults) -> Option<Kind> {
    let text = scalar(node, &FieldType::Name(NameOf::Kind), faults)?;
    let found = Kind::named(text);
    if found.is_none() {
        unknown_name(node.span, text, NameOf::Kind, Kind::ALL.iter().flat_map(|kind| kind.words()), faults);
    }
    found
}

/// Says that a name is nobody's, with the nearest one that is somebody's.
pub fn unknown_name<'k>(
    at: Span,
    name: &str,
    of: NameOf,
    known: impl Iterator<Item = &'k str> + Clone,
    faults: &mut Faults,
) {
    let meant = same_but_for_case(name, known.clone()).filter(|name| is_plain(name));
    let remark = Remark::stop(at, unknown_message(name, of)).remedy(unknown_remedy(name, of, known));
    faults.add(remark.mended_by(meant).of(Code::UNKNOWN_NAME));
}

/// The message for a name that is nobody's.
fn unknown_message(name: &str, of: NameOf) -> Phrase {
    let what = match of {
        NameOf::Kind => "kind of selection",
        NameOf::Opening => "opening in this room",
        NameOf::Milestone => "milestone",
        NameOf::Product => "product",
        NameOf::Option => "option of this selection",
        NameOf::Allowance => "allowance",
        NameOf::Room => "room",
        NameOf::Selection => "selection",
        NameOf::Wall => "wall",
        NameOf::Language => "language of pages",
    };
    phrase!("there is no {what} called `{name}`", what, name)
}

/// What to do about a name that is nobody's.
fn unknown_remedy<'k>(name: &str, of: NameOf, known: impl Iterator<Item = &'k str> + Clone) -> Phrase {
    if let Some(near) = nearest(name, known.clone()) {
        return phrase!("did you mean `{near}`?", near);
    }
    if of == NameOf::Kind {
        return near_kinds(name);
    }
    let known: Vec<_> = known.take(12).collect();
    match known.is_empty() {
        true => phrase!("write {}; there is none yet", of.wanted()),
        false => phrase!("write {}: {known}", of.wanted(), Phrase::joined(known.into_iter().map(Phrase::name), ", ")),
    }
}
