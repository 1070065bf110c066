//! The lines that describe an option, worded once for pages, tables and sheets.

use crate::assess::approval::Withdrawn;
use crate::book::{BesideWord, Hinge, Neighbour, PartIs, ProductOption, RunEnd, Selection};
use crate::language::{Words, say};
use crate::shown;
use crate::site::fitting::{Flank, FlankIs};
use crate::site::plan::Thing;
use crate::views::pages::PageBuilder;
use crate::views::shared::figures;
use crate::views::shared::html::Html;
use crate::views::shared::sheet::Fact;
use crate::vocabulary::{Shown as _, ShownField, ShownValue, Words as _};

/// How many of the first lines also make one line that says what an option is.
const IN_A_LINE: usize = 4;
/// The thing's own sizes.
const SIZES: Line = Line::Fields("size");
/// What of an option stands in lines of its own, in their order; a part's fields each by themselves.
const LINES: [Line; 16] = [
    Line::Field("maker"),
    Line::Field("model"),
    Line::Field("finish"),
    Line::Field("colour"),
    Line::Field("material"),
    Line::Field("nature"),
    Line::Field("hinge"),
    Line::Field("fuel"),
    SIZES,
    Line::Fields("details"),
    Line::Part("laid"),
    Line::Part("stores"),
    Line::Part("top"),
    Line::Field("drilled"),
    Line::Part("panel"),
    Line::Field("price per"),
];

/// How what is shown of an option becomes lines.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Line {
    /// One line.
    Field(&'static str),
    /// A line for each of its fields, by the field's name.
    Fields(&'static str),
    /// A line for each of its fields, by the part's name and the field's.
    Part(&'static str),
}

/// What a thing on the plan is called: by its name, or for what has none by what it is.
pub fn thing_name(words: Words, thing: &Thing<'_>) -> String {
    match thing.part().map(|part| &part.is) {
        Some(PartIs::Filler(_)) => say!(words, "drawn.part.filler"),
        Some(PartIs::Panel(_)) => say!(words, "drawn.part.panel"),
        Some(PartIs::Gap(_)) => say!(words, "drawn.part.gap"),
        Some(PartIs::Cabinet(_) | PartIs::Tall(_) | PartIs::Opening(_)) | None => thing.name.to_owned(),
    }
}

/// What is beside or above an opening, as the opening says it: a word of the trade in the reader's language, else the
/// name that stands there.
pub fn neighbour_name(words: Words, beside: &Neighbour) -> String {
    let key = match beside.word().filter(|_| !words.is_first()) {
        None => return beside.what.clone(),
        Some(BesideWord::Wall) => "drawn.beside.wall",
        Some(BesideWord::Corner) => "drawn.beside.corner",
        Some(BesideWord::Ceiling) => "drawn.beside.ceiling",
        Some(BesideWord::Counter) => "drawn.beside.counter",
        Some(BesideWord::WallCabinet) => "drawn.beside.wall_cabinet",
        Some(BesideWord::BaseCabinet) => "drawn.beside.base_cabinet",
        Some(BesideWord::TallCabinet) => "drawn.beside.tall_cabinet",
        Some(BesideWord::Cabinet) => "drawn.beside.cabinet",
        Some(BesideWord::Panel) => "drawn.part.panel",
        Some(BesideWord::Filler) => "drawn.part.filler",
        Some(BesideWord::Shelf) => "drawn.beside.shelf",
        Some(BesideWord::Window) => "drawn.beside.window",
        Some(BesideWord::Door) => "drawn.beside.door",
        Some(BesideWord::Hood) => "drawn.beside.hood",
    };
    say!(words, key)
}

/// What stands beside an opening by its row or the plan.
pub fn flank_name(words: Words, flank: &Flank) -> String {
    match &flank.is {
        FlankIs::Named => flank.what.clone(),
        FlankIs::Wall(letter) => say!(words, "heat.body.wall", name = letter),
        FlankIs::End(RunEnd::Corner) => say!(words, "drawn.beside.corner"),
        FlankIs::End(RunEnd::Wall | RunEnd::Open) => say!(words, "drawn.beside.wall"),
        FlankIs::Filler => say!(words, "drawn.part.filler"),
        FlankIs::Panel => say!(words, "drawn.part.panel"),
    }
}

/// What is withdrawn, with what it came to and who had approved it.
pub fn withdrawn(words: Words, gone: &Withdrawn) -> String {
    let name = format!("{} {}", gone.tag, gone.name);
    let what = gone.price.map_or_else(|| name.clone(), |price| format!("{name}, {}", words.amount(price)));
    say!(words, "changes.had_approved", what = what, who = words.series(&gone.approved_by))
}

impl PageBuilder<'_> {
    /// What the client is told of an option, from maker to what is ordered with it: of the same value as its mark.
    pub fn description(&self, option: &ProductOption) -> Vec<Fact> {
        self.lines(option, &LINES).into_iter().chain(self.with_it(option)).collect()
    }

    /// All of the description but what stands in its line and its sizes.
    pub fn more(&self, option: &ProductOption) -> Vec<Fact> {
        let more: Vec<Line> = LINES.into_iter().skip(IN_A_LINE).filter(|line| *line != SIZES).collect();
        self.lines(option, &more).into_iter().chain(self.with_it(option)).collect()
    }

    /// The thing's own sizes.
    pub fn sizes(&self, option: &ProductOption) -> Vec<Fact> {
        self.lines(option, &[SIZES])
    }

    fn lines(&self, option: &ProductOption, lines: &[Line]) -> Vec<Fact> {
        self.lines_of(&shown::option_alone(option), lines)
    }

    fn lines_of(&self, shown: &ShownValue, lines: &[Line]) -> Vec<Fact> {
        let line = |line: &Line| -> Vec<Fact> {
            let (Line::Field(key) | Line::Fields(key) | Line::Part(key)) = *line;
            let Some(value) = shown.get(key).filter(|value| !value.is_empty()) else { return vec![] };
            let part = || say!(self.words, &format!("parts.{key}"));
            match line {
                Line::Field(_) => vec![Fact { name: named(self.words, key), value: self.value(value) }],
                Line::Fields(_) => self.fields(value, |field| field),
                Line::Part(_) => self
                    .fields(value, |field| say!(self.words, "parts.of", part = part(), field = field.to_lowercase())),
            }
        };
        lines.iter().flat_map(line).collect()
    }

    /// A part of what is shown of an option, from maker to how many, and the names of what is ordered with it: for
    /// those who are told no price.
    pub fn shown_in_lines(&self, shown: &ShownValue) -> Vec<Fact> {
        let quantity = shown.get("quantity").filter(|value| !value.is_empty());
        let quantity = quantity.map(|value| Fact { name: named(self.words, "quantity"), value: self.value(value) });
        let with = shown.get("accessories").map_or(&[][..], ShownValue::values).iter();
        let names: Vec<&str> = with.filter_map(|one| one.get("name").and_then(ShownValue::text)).collect();
        let with_it = (!names.is_empty()).then(|| self.worded("lines.with_it", self.words.series(&names)));
        self.lines_of(shown, &LINES).into_iter().chain(quantity).chain(with_it).collect()
    }

    /// A line for each field of a group that is written.
    fn fields(&self, group: &ShownValue, name: impl Fn(String) -> String) -> Vec<Fact> {
        let written = group.fields().iter().filter(|field| !field.value.is_empty());
        let line =
            |field: &ShownField| Fact { name: name(named(self.words, &field.key)), value: self.value(&field.value) };
        written.map(line).collect()
    }

    fn with_it(&self, option: &ProductOption) -> Option<Fact> {
        let names: Vec<&str> = option.accessories.iter().map(|with| with.name.value.as_str()).collect();
        let shown = option.accessories.shown();
        let has_more = |one: &ShownValue| one.fields().iter().filter(|field| !field.value.is_empty()).nth(1).is_some();
        let told = match shown.values().iter().any(has_more) {
            true => self.value(&shown),
            false => Html::text(&self.words.series(&names)),
        };
        (!names.is_empty()).then(|| self.worded("lines.with_it", told))
    }

    /// A value of what is shown, in the words and units of the page.
    pub fn value(&self, value: &ShownValue) -> Html {
        match value {
            ShownValue::Nothing => Html::default(),
            ShownValue::Text(text) => Html::text(text),
            ShownValue::Word(word) => Html::text(&self.closed_word(word)),
            ShownValue::Yes(yes) => Html::text(&self.closed_word(if *yes { "yes" } else { "no" })),
            ShownValue::Length(length) => figures::length(self.wording, *length),
            ShownValue::Range(range) => figures::range(self.wording, *range),
            ShownValue::Sides(sides) => self.wording.sides(sides),
            ShownValue::Weight(weight) => self.wording.weight(*weight),
            ShownValue::Area(area) => self.wording.area(*area),
            ShownValue::Amount(money) => self.wording.money(*money),
            ShownValue::List(values) => joined(values.iter().map(|value| self.value(value)), "; "),
            ShownValue::Group(fields) => {
                let written = fields.iter().filter(|field| !field.value.is_empty());
                joined(written.map(|field| self.in_group(field)), ", ")
            }
        }
    }

    /// One field within a line: what says which one it is stands bare, and so does a size.
    fn in_group(&self, field: &ShownField) -> Html {
        let value = self.value(&field.value);
        if BARE.contains(&&*field.key) {
            return value;
        }
        Html::text(&named(self.words, &field.key).to_lowercase()).then(" ").then(value)
    }

    fn closed_word(&self, word: &str) -> String {
        let key = format!("values.{}", word.replace([' ', '-'], "_"));
        if self.words.has(&key) { say!(self.words, &key) } else { word.to_string() }
    }

    /// Maker, model and finish in a line.
    pub fn in_a_line(&self, option: &ProductOption) -> String {
        let maker = [option.maker.text(), option.model.text()].into_iter().filter(|word| !word.is_empty());
        let maker = maker.collect::<Vec<_>>().join(" ");
        let parts = [maker.as_str(), option.finish.text(), option.colour.text()];
        let mut told: Vec<&str> = Vec::new();
        for part in parts.into_iter().filter(|part| !part.is_empty()) {
            if !told.contains(&part) {
                told.push(part);
            }
        }
        told.join(", ")
    }

    /// What a selection is, in a line: the settled option, or how many there are to choose from.
    pub fn selection_line(&self, selection: &Selection) -> String {
        match selection.settled() {
            Some(option) => self.in_a_line(option),
            None => say!(self.words, "lines.to_choose", n = selection.options.len()),
        }
    }

    /// A value by the key of its name.
    pub fn worded(&self, key: &str, value: impl Into<Html>) -> Fact {
        fact(&say!(self.words, key), value)
    }

    /// On which side a door is hinged.
    pub fn hinge(&self, hinge: Hinge) -> String {
        self.closed_word(hinge.word())
    }

    /// What a selection's price pays for besides the thing, and what it does not.
    pub fn in_price(&self, selection: &Selection) -> impl Iterator<Item = Fact> {
        let told = [("fields.includes", &selection.includes), ("fields.leaves_out", &selection.leaves_out)];
        let line =
            |(key, what): (&str, &Vec<String>)| (!what.is_empty()).then(|| self.worded(key, self.words.series(what)));
        told.map(line).into_iter().flatten()
    }

    /// An option's quantity.
    pub fn quantity(&self, option: &ProductOption) -> Option<String> {
        option.quantity.get().map(ToString::to_string)
    }
}

/// The fields that stand in a line without their names.
const BARE: [&str; 5] = ["name", "at", "for", "by", "size"];

fn joined(values: impl Iterator<Item = Html>, between: &'static str) -> Html {
    values.enumerate().fold(Html::default(), |line, (at, value)| {
        let line = if at > 0 { line.then(between) } else { line };
        line.then(value)
    })
}

/// What a line of an option is called.
pub fn named(words: Words, key: &str) -> String {
    let own = format!("lines.{}", key.replace([' ', '-'], "_"));
    if words.has(&own) { say!(words, &own) } else { field(words, key) }
}

/// What a page calls a field of the book, by its key there.
pub fn field(words: Words, key: &str) -> String {
    let named = format!("fields.{}", key.replace([' ', '-'], "_"));
    if words.has(&named) { say!(words, &named) } else { capital(key) }
}

/// A named value.
pub fn fact(name: &str, value: impl Into<Html>) -> Fact {
    Fact { name: name.into(), value: value.into() }
}

/// A key with a capital first letter.
pub fn capital(key: &str) -> String {
    let mut letters = key.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
