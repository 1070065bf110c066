//! One item on a sheet to sign: what it is, what it costs, whether it fits, and what was decided.

use crate::assess::Amounts;
use crate::book::{ProductOption, Room as BookRoom, Selection};
use crate::language::say;
use crate::shown;
use crate::site::corners::JoinedCounter;
use crate::site::layout::CounterLayout;
use crate::units::{Length, Money};
use crate::views::pages::PageBuilder;
use crate::views::paper::cautions::SheetCaution;
use crate::views::paper::sign_off::{LabelledLine, plain};
use crate::views::shared::called::called;
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines::fact;
use crate::views::shared::sheet::Fact;
use crate::views::shared::state::StateShape as Mark;
use crate::views::shared::{figures, prose};
use serde::Serialize;

/// One item to be decided.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignOffItem {
    /// The item's number on every sheet: `K-07`.
    pub tag: String,
    /// What it is: `Refrigerator`.
    pub name: String,
    /// The option chosen, if there were several.
    pub option: String,
    /// Maker, model and finish; empty where the description has them line by line.
    pub product: String,
    /// What the client is told of it, in a sentence or two.
    pub told: String,
    /// The full description.
    pub description: Vec<LabelledLine>,
    /// Whether it fits; nothing where nothing is known, or options are still open.
    pub fit: Option<SignOffFit>,
    /// How many or how much, with its unit.
    pub quantity: String,
    /// The price of one.
    pub unit_price: String,
    /// What goes with it costs, which is in the price of all; empty where nothing with a price does.
    pub with_it: String,
    /// The price of all of them; empty while nothing is chosen.
    pub price: String,
    /// The item's mark: eight hex digits in two fours.
    pub mark: String,
    /// How far its approval has come.
    pub state: SignOffState,
    /// Its photograph; none while options are open, each of which has its own.
    pub picture: Option<PictureRef>,
    /// Why it is so, in the designer's words.
    pub why: String,
    /// What may hurt, in a line: by its names, each with the number of its full words at the end of the sheet.
    pub cautions: Vec<String>,
    /// The same with its full words, from which sheets number it.
    #[serde(skip)]
    pub hurts: Vec<SheetCaution>,
    /// The options still open; empty once one is chosen.
    pub choices: Vec<OpenOption>,
    /// The options that were shown beside the one that is chosen.
    pub others: Vec<OpenOption>,
    /// How the pieces of a counter lie.
    pub layouts: Vec<SheetDrawing>,
    /// What each approver decided, as it stands, in the order of the approvers.
    pub decided: Vec<Decided>,
}

/// What an approver decided of an item; empty while nothing stands.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct Decided {
    /// The box that is crossed.
    pub stamp: Option<DecisionBox>,
    /// The decision in words, when and how it was given.
    pub by: String,
    /// In the approver's words.
    pub note: String,
}

/// One of the four boxes; each is known to the template by the key of its words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum DecisionBox {
    /// Approved.
    Approved,
    /// Approved as noted.
    #[serde(rename = "approved_as_noted")]
    Noted,
    /// Revise and resubmit.
    #[serde(rename = "revise_and_resubmit")]
    Revise,
    /// Rejected.
    Rejected,
}

/// How far an item's approval has come, as a shape and in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignOffState {
    /// The shape drawn before the words.
    pub shape: SignOffShape,
    /// The state in words, with who and when where that is known.
    pub words: String,
}

/// The shape of a state. The four decisions are the trade's review stamps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum SignOffShape {
    /// Nobody has decided, or not everybody.
    Waiting,
    /// Approved by all who must.
    Approved,
    /// Approved, with a note that stands.
    ApprovedAsNoted,
    /// Sent back, to be shown again.
    ReviseAndResubmit,
    /// Turned down.
    Rejected,
    /// Approved once, and changed since.
    Changed,
}

/// Whether a thing fits, in plain words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SignOffFit {
    /// It does not go in: said louder.
    pub misfit: bool,
    /// `Fits`, `Does not fit`, and so on.
    pub verdict: String,
    /// By how much, in a sentence.
    pub sentence: String,
}

/// An option that may still be chosen, or that was shown beside the one that is.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OpenOption {
    /// The option's name.
    pub name: String,
    /// Maker, model and finish in a line.
    pub product: String,
    /// What the client is told of it, in a sentence or two.
    pub told: String,
    /// Its sizes in a line.
    pub sizes: String,
    /// What else there is to it, in a line.
    pub more: String,
    /// Whether it fits; nothing where nothing is known.
    pub fit: Option<SignOffFit>,
    /// Its photograph.
    pub picture: Option<PictureRef>,
    /// What the item costs with it.
    pub price: String,
    /// It is what those who decided chose.
    pub crossed: bool,
}

/// A drawing to scale.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct SheetDrawing {
    /// What it is of.
    pub name: String,
    /// As SVG, lines and letters by the classes of the theme's drawings.
    pub svg: String,
    /// What it shows, for those who hear it.
    pub alt: String,
}

/// A photograph that is fetched by its key when the sheet is set.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PictureRef {
    /// The key that the picture is asked for by.
    pub key: String,
    /// What is to be seen on it, for those who do not see it.
    pub alt: String,
    /// Its width in pixels.
    pub width: u32,
    /// Its height in pixels.
    pub height: u32,
}

impl PageBuilder<'_> {
    pub fn paper_item(&self, room: &BookRoom, selection: &Selection) -> SignOffItem {
        let settled = selection.settled();
        let several = selection.options.len() > 1;
        let chosen = self.subject.assessment.approvals.item(room, selection).and_then(|item| item.chosen());
        let mut description = settled.map(|option| self.description(option)).unwrap_or_default();
        let is_described = !description.is_empty();
        description.extend(self.said_of(room, selection));
        let options = |but: Option<&ProductOption>| -> Vec<OpenOption> {
            let all = selection.options.iter().filter(|option| but.is_none_or(|but| but.id != option.id));
            all.map(|option| self.paper_choice(room, selection, option, chosen)).collect()
        };
        let text = |slot: Option<&Money>| slot.map_or_else(String::new, |amount| self.words.amount(*amount));
        SignOffItem {
            tag: selection.tag.clone(),
            name: selection.name.value.clone(),
            option: settled.filter(|_| several).map_or_else(String::new, ProductOption::title),
            product: settled.filter(|_| !is_described).map_or_else(String::new, |option| self.in_a_line(option)),
            told: settled.map_or_else(String::new, |option| option.description.text().into()),
            description: description.iter().map(plain).collect(),
            fit: settled.and_then(|option| self.paper_fit(room, selection, option)),
            quantity: settled.and_then(|option| self.quantity(option)).unwrap_or_default(),
            unit_price: text(settled.and_then(|option| option.price.get())),
            with_it: text(settled.and_then(ProductOption::price_of_accessories).as_ref()),
            price: settled.and_then(Amounts::price).map_or_else(String::new, |price| self.words.amount(price)),
            mark: self
                .marks
                .get(&(room.folder.as_str(), selection.id.as_str()))
                .map_or_else(String::new, shown::in_short),
            state: on_paper(self.decision(room, selection)),
            picture: settled.and_then(|option| self.paper_picture(selection, option)),
            why: selection
                .why
                .get()
                .map_or_else(String::new, |why| prose::blocks(why).plain().trim().replace('\n', " ")),
            cautions: vec![],
            hurts: self.paper_cautions(room, selection),
            choices: if settled.is_some() { vec![] } else { options(None) },
            others: settled.map_or_else(Vec::new, |option| options(Some(option))),
            layouts: self.paper_layouts(room, selection),
            decided: self.decided(room, selection),
        }
    }

    /// What is said of a selection whichever option is taken.
    fn said_of(&self, room: &BookRoom, selection: &Selection) -> Vec<Fact> {
        let mut facts = Vec::new();
        if let Some(place) = selection.place.get() {
            let sides: Vec<_> = room.opening(place).map_or_else(Vec::new, |opening| {
                let size = [opening.governing_width(), self.height_of(room, opening)];
                size.into_iter().flatten().collect()
            });
            let size =
                if sides.is_empty() { Html::default() } else { Html::text(", ").then(self.wording.sides(&sides)) };
            facts.push(self.worded("item_says.opening", Html::text(place).then(size)));
        }
        let said = [
            ("item_says.allowance", &selection.allowance),
            ("item_says.bought_by", &selection.furnished_by),
            ("item_says.fitted_by", &selection.installed_by),
        ];
        facts.extend(self.layout_lines(room, selection));
        let joints = self.joints_of(room, selection);
        facts.extend((!joints.is_empty()).then(|| self.worded("item_says.joints", joints.join(" "))));
        facts.extend(self.in_price(selection));
        facts.extend(said.into_iter().filter_map(|(key, slot)| Some(self.worded(key, slot.get()?.as_str()))));
        facts
    }

    /// How the pieces of a counter lie, a line for each run and island, beside the drawing.
    fn layout_lines(&self, room: &BookRoom, selection: &Selection) -> Vec<Fact> {
        let shown = self.layouts_as_shown(room, selection);
        let line = |laid: &CounterLayout| {
            let name = match &laid.on {
                Some(on) => say!(self.words, "item_says.layout_on", row = on.as_str()),
                None => say!(self.words, "item_says.layout"),
            };
            let length = |from: Length, to: Length| figures::length(self.wording, to - from);
            let pieces = laid.pieces.iter().map(|piece| {
                let size = self.wording.sides(&[piece.to - piece.from, piece.depth]);
                piece.name.as_ref().map_or_else(|| size.clone(), |name| Html::text(name).then(" ").then(size.clone()))
            });
            let let_in = laid.let_in.iter().map(|one| {
                let start = laid.pieces.iter().map(|piece| piece.from).min().unwrap_or_default();
                let name = one.name.as_str();
                show!(self.words, "item_says.let_in", name = name, from = length(start, one.middle()))
            });
            fact(&name, Html::series(self.words, pieces.chain(let_in).collect()))
        };
        let told = |(joined, by): &(JoinedCounter, Length)| {
            let mut told: Vec<Fact> = joined.parts.iter().map(|part| line(&part.laid)).collect();
            if let (Some(last), Some(said)) = (told.last_mut(), self.measured_since(*by)) {
                last.value = std::mem::take(&mut last.value).then(". ").then(said.as_str());
            }
            told
        };
        shown.iter().flat_map(told).collect()
    }

    fn paper_fit(&self, room: &BookRoom, selection: &Selection, option: &ProductOption) -> Option<SignOffFit> {
        let fit = self.fit(room, selection, option, 0)?;
        let misfit = fit.verdict.shape == Mark::DoesNotFit;
        Some(SignOffFit { misfit, verdict: fit.verdict.word, sentence: fit.sentence.on_paper() })
    }

    fn paper_choice(
        &self,
        room: &BookRoom,
        selection: &Selection,
        option: &ProductOption,
        chosen: Option<&str>,
    ) -> OpenOption {
        let in_a_line = |facts: Vec<Fact>| {
            let told = facts.iter().map(|fact| format!("{} {}", fact.name.to_lowercase(), fact.value.on_paper()));
            crate::views::shared::lines::capital(&told.collect::<Vec<_>>().join(" · "))
        };
        let how_many = self.quantity(option).map(|quantity| self.worded("item_says.quantity", quantity));
        OpenOption {
            name: called(selection, option),
            product: self.in_a_line(option),
            told: option.description.text().into(),
            sizes: in_a_line(self.sizes(option)),
            more: in_a_line(self.more(option).into_iter().chain(how_many).collect()),
            fit: self.paper_fit(room, selection, option),
            picture: self.paper_picture(selection, option),
            price: Amounts::price(option).map_or_else(String::new, |price| self.words.amount(price)),
            crossed: chosen == Some(option.id.value.as_str()),
        }
    }

    /// A picture on paper: its key is its path in the book.
    fn paper_picture(&self, selection: &Selection, option: &ProductOption) -> Option<PictureRef> {
        let named = option.photos.first()?;
        let made = self.album.made(named)?;
        let alt = named.alt.clone().unwrap_or_else(|| format!("{}, {}", selection.name.value, self.in_a_line(option)));
        Some(PictureRef { key: named.path.clone(), alt, width: made.width, height: made.height })
    }
}

/// A state with the shape that paper draws.
fn on_paper(state: crate::views::shared::state::State) -> SignOffState {
    let shape = match state.shape {
        Mark::Approved => SignOffShape::Approved,
        Mark::ApprovedAsNoted => SignOffShape::ApprovedAsNoted,
        Mark::ReviseAndResubmit => SignOffShape::ReviseAndResubmit,
        Mark::Rejected => SignOffShape::Rejected,
        Mark::ChangedSinceSigned => SignOffShape::Changed,
        _ => SignOffShape::Waiting,
    };
    SignOffState { shape, words: state.word }
}
