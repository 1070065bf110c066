//! The readings that an opening's sheet asks of the tape, and by what figures they are judged.

use crate::book::{MeasuredBetween, MeasuredFrom};
use crate::language::{Words, say};
use crate::ledger::{Head, ReadFrom};
use crate::site::fitting::{DimensionCheck, Fitting, Stack, above, least_play, loses_to_the_floor, square_within};
use crate::site::plan::Plan;
use crate::units::{Length, System};
use crate::views::pages::PageBuilder;
use crate::views::shared::data::Data;
use crate::views::shared::figures::in_prose;
use crate::views::shared::html::{Html, show};
use crate::views::trades::opening::SheetOpening;
use crate::views::trades::opening_tape_more::{More, more, of_floor};
use crate::vocabulary::Kind;
use serde::Serialize;

/// The readings that are asked for: what, where, and how the line is called.
const LINES: [(&str, &str, Option<&str>); 14] = [
    ("readings.width_floor", "width", Some("floor")),
    ("readings.width_middle", "width", Some("middle")),
    ("readings.width_top", "width", Some("top")),
    ("readings.height_left", "height", Some("left")),
    ("readings.height_right", "height", Some("right")),
    ("readings.depth", "depth", None),
    ("readings.diagonal_left", "diagonal", Some("left")),
    ("readings.diagonal_right", "diagonal", Some("right")),
    ("readings.left_floor", "plumb-left", Some("floor")),
    ("readings.left_middle", "plumb-left", Some("middle")),
    ("readings.left_top", "plumb-left", Some("top")),
    ("readings.right_floor", "plumb-right", Some("floor")),
    ("readings.right_middle", "plumb-right", Some("middle")),
    ("readings.right_top", "plumb-right", Some("top")),
];

/// What an opening's sheet asks of a tape.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TapeRequest {
    /// The book's id; absent while no issue was made.
    pub book: Option<String>,
    pub issue: Option<u32>,
    /// The line of the ledger that names the issue, as pages for signature state it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ledger: Option<Head>,
    pub title: String,
    pub post: Option<String>,
    pub email: Option<String>,
    /// In which a number without a unit counts at first: `imperial` or `metric`.
    pub units: String,
    /// Whether the other system is left out.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub alone: bool,
    /// What stands before decimals in the page's language.
    #[serde(skip_serializing_if = "is_a_point")]
    pub decimal: String,
    /// The room's folder.
    pub room: String,
    /// The opening, as the book names it.
    pub opening: String,
    pub asks: Vec<TapeRange>,
    /// The floor that heights are read from, and the faces that widths are, as the book has them.
    pub from: TapeFrom,
    /// How far diagonals may differ and sides may lean, in whole nanometres.
    pub square: String,
}

fn is_a_point(mark: &str) -> bool {
    mark == "."
}

/// The faces that a tape is held to; each may be chosen on the form.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TapeFrom {
    /// `present-floor` or `finished-floor`.
    pub floor: String,
    /// `studs` or `finished-walls`; absent where nothing is to come on the walls.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub walls: Option<String>,
    /// Whether something is to be laid, and nobody says how deep.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub floor_unknown: bool,
}

/// A question of the form: which face was read from.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TapeDatum {
    /// `floor` or `walls`.
    pub of: String,
    /// How it is asked.
    pub name: String,
    pub faces: Vec<TapeFace>,
}

/// An answer to it.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TapeFace {
    /// As it is handed over.
    pub value: String,
    /// As it is read, with what is still to come on it.
    pub name: Html,
    /// Whether the book counts from it.
    pub is_usual: bool,
}

/// What one size must be, in whole nanometres as text, and what the tape reads too much.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TapeRange {
    /// `width`, `height` or `depth`, or what else is read.
    pub what: String,
    /// Which distance of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<String>,
    pub least: Option<String>,
    pub most: Option<String>,
    /// The thing itself, where what is left beside it tells something.
    pub body: Option<String>,
    /// The play in all that it wants beside itself.
    pub play: Option<String>,
    /// How much more air its sheet wants at its left than at its right, where it wants more at one of them;
    /// below zero where it is the right.
    pub off: Option<String>,
    /// What is still to come where the tape is held to today's floor, or to studs.
    pub less: Vec<StillToCome>,
    /// Why one reading decides nothing here: `studs`, what comes on them is not known, where it was read between them;
    /// `stack`, it is shared with another thing.
    pub unsure: Option<String>,
    /// Whether it is read from the floor.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub on_floor: bool,
    /// What hangs above leaves no more than this.
    pub above: Option<String>,
}

/// Something that is still to come where the tape is held.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StillToCome {
    /// `floor`, `left`, `right` or `back`.
    pub of: String,
    /// In whole nanometres.
    pub length: String,
}

/// One reading of the tape.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TapeLine {
    /// `Width at the floor`.
    pub name: String,
    /// `width`, `height` or `depth`.
    pub what: String,
    /// `floor`, `middle`, `top`, `left`, `right`; absent where one reading is enough.
    pub at: Option<String>,
    /// Whether it is asked on the screen alone: paper has room for the sizes, and for what a maker's sheet asks.
    pub on_screen_alone: bool,
}

impl<'a> PageBuilder<'a> {
    pub fn tape_needs(&self, fit: Option<&Fitting>) -> Option<Html> {
        let fit = fit?;
        let parts: Vec<Html> = [
            ("readings.needs.width", &fit.width),
            ("readings.needs.height", &fit.height),
            ("readings.needs.depth", &fit.depth),
        ]
        .into_iter()
        .filter_map(|(key, gauge)| Some(show!(self.words, key, length = in_prose(self.wording, gauge.least()?))))
        .collect();
        let asked = Html::series(self.words, parts);
        (!asked.is_empty()).then(|| show!(self.words, "readings.needs.sentence", parts = asked))
    }
}

impl PageBuilder<'_> {
    /// What an opening's sheet asks of the tape.
    pub fn tape_asked(&self, at: SheetOpening<'_>, fit: Option<&Fitting>) -> Data {
        let issued = self.issued();
        let (post, email) = self.responses_go();
        let project = &self.subject.book.project;
        Data::of(&TapeRequest {
            book: issued.as_ref().map(|issued| issued.book.clone()),
            issue: issued.as_ref().map(|issued| issued.number),
            ledger: issued.as_ref().and_then(|issued| issued.line),
            title: project.title.text().into(),
            post,
            email,
            units: if project.units.is_metric() { "metric".into() } else { "imperial".into() },
            alone: project.units.is_alone(),
            decimal: say!(self.words, "language.decimal"),
            room: at.room.folder.clone(),
            opening: at.opening.name.value.clone(),
            asks: fit
                .map_or_else(Vec::new, |fit| asks(self.plans.room(at.room), at, fit, project.units))
                .into_iter()
                .chain(more(self.words, at).iter().map(|more| more.range(at.room)))
                .collect(),
            from: from(at),
            square: text(square_within(at.room, at.opening).0),
        })
    }
}

/// Every line of the form.
pub fn lines(words: Words, at: SheetOpening<'_>) -> Vec<TapeLine> {
    let line = |(key, what, at): (&str, &str, Option<&str>)| TapeLine {
        name: say!(words, key),
        what: what.into(),
        at: at.map(Into::into),
        on_screen_alone: false,
    };
    LINES.map(line).into_iter().chain(more(words, at).iter().map(More::line)).collect()
}

/// A face as it is handed over.
fn handed(face: ReadFrom) -> String {
    face.word().replace(' ', "-")
}

/// The faces that the book counts from.
fn from(at: SheetOpening<'_>) -> TapeFrom {
    let to_lay = at.room.still_to_lay();
    let said = at.opening.measured_from.get();
    let is_finished = said.map_or(to_lay == Some(Length::ZERO), |from| *from == MeasuredFrom::FinishedFloor);
    let floor = if is_finished { ReadFrom::FinishedFloor } else { ReadFrom::PresentFloor };
    let studs = at.opening.measured_between.get() == Some(&MeasuredBetween::Studs);
    let asks_walls = studs
        || !at.opening.wall_build_up.is_absent()
        || at.opening.takes_a(Kind::Toilet)
        || at.opening.takes_a(Kind::ShowerSet);
    let walls = if studs { ReadFrom::Studs } else { ReadFrom::FinishedWalls };
    TapeFrom { floor: handed(floor), walls: asks_walls.then(|| handed(walls)), floor_unknown: to_lay.is_none() }
}

impl PageBuilder<'_> {
    /// From which faces was read: what the form asks besides.
    pub fn tape_datums(&self, at: SheetOpening<'_>) -> Vec<TapeDatum> {
        let usual = from(at);
        let face =
            |of: ReadFrom, usual: &str, name: Html| TapeFace { value: handed(of), name, is_usual: handed(of) == usual };
        let present = match at.room.still_to_lay().filter(|to_lay| *to_lay > Length::ZERO) {
            Some(to_lay) => {
                show!(self.words, "readings.from.present_floor_less", depth = in_prose(self.wording, to_lay))
            }
            None => show!(self.words, "readings.from.present_floor"),
        };
        let mut datums = vec![TapeDatum {
            of: "floor".into(),
            name: say!(self.words, "readings.from.floor"),
            faces: vec![
                face(ReadFrom::PresentFloor, &usual.floor, present),
                face(ReadFrom::FinishedFloor, &usual.floor, show!(self.words, "readings.from.finished_floor")),
            ],
        }];
        datums.extend(usual.walls.map(|usual| TapeDatum {
            of: "walls".into(),
            name: say!(self.words, "readings.from.walls"),
            faces: vec![
                face(ReadFrom::Studs, &usual, show!(self.words, "readings.from.studs")),
                face(ReadFrom::FinishedWalls, &usual, show!(self.words, "readings.from.finished_walls")),
            ],
        }));
        datums
    }
}

/// The three sizes, each with what is still to come where the tape is held.
fn asks(plan: Option<&Plan<'_>>, at: SheetOpening<'_>, fit: &Fitting, units: System) -> Vec<TapeRange> {
    let build_up = at.opening.wall_build_up.get().copied();
    let unsure = build_up.is_none().then(|| "studs".to_string());
    let stack = Stack::of(at.room, at.opening).and_then(|stack| stack.left_for(at.room, at.opening));
    let walls = build_up.unwrap_or_default();
    let option = at.thing.and_then(|(_, option)| option.fit.get()).map(AsRef::as_ref);
    let goes_in = fit.width.goes_in().filter(|_| !fit.width.sheet_alone);
    let play = goes_in.and_then(|_| least_play(at.opening, &fit.width, option, units));
    let on_floor = loses_to_the_floor(at.room, at.opening);
    vec![
        TapeRange {
            play: play.map(|(play, _)| text(play)),
            off: off(fit).map(text),
            less: less(&[("left", walls.left), ("right", walls.right)]),
            unsure: unsure.clone(),
            ..range("width", &fit.width)
        },
        TapeRange {
            less: if on_floor { of_floor(at.room) } else { vec![] },
            on_floor,
            unsure: stack.map(|_| "stack".to_string()),
            above: above(plan, at.room, at.opening).and_then(|above| above.left(at.room, at.opening)).map(text),
            ..range("height", &fit.height)
        },
        TapeRange { less: less(&[("back", walls.back)]), unsure, ..range("depth", &fit.depth) },
    ]
}

/// How much more is left at the left than at the right, where the sheet's air differs.
fn off(fit: &Fitting) -> Option<Length> {
    let (left, right) = fit.gaps.left.zip(fit.gaps.right)?;
    Some(left - right).filter(|_| fit.gaps.each_side().is_none())
}

fn less(parts: &[(&str, Length)]) -> Vec<StillToCome> {
    let to_come = parts.iter().filter(|(_, length)| *length > Length::ZERO);
    to_come.map(|(of, length)| StillToCome { of: (*of).into(), length: text(*length) }).collect()
}

fn range(what: &str, gauge: &DimensionCheck) -> TapeRange {
    TapeRange {
        what: what.into(),
        least: gauge.least().map(text),
        most: gauge.most().map(text),
        body: gauge.body.filter(|_| !gauge.sheet_alone).map(text),
        ..TapeRange::default()
    }
}

pub(super) fn text(length: Length) -> String {
    length.nanometres().to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::LengthRange;

    fn inches(inches: i64) -> Length {
        Length::from_inches(inches)
    }

    #[test]
    fn what_is_still_to_come_is_told_and_not_hidden_in_what_is_needed() {
        let asked = Some(LengthRange { least: Some(inches(70)), most: Some(inches(71)) });
        let gauge = DimensionCheck { asked, body: Some(inches(69)), ..DimensionCheck::default() };
        let range = range("height", &gauge);
        assert_eq!(range.least.unwrap(), (70_i64 * 25_400_000).to_string());
        assert_eq!(range.most.unwrap(), (71_i64 * 25_400_000).to_string());
        let told = less(&[("floor", inches(1)), ("left", Length::ZERO)]);
        assert_eq!(told, [StillToCome { of: "floor".into(), length: "25400000".into() }]);
    }

    /// Equal air tells nothing of the sides; unequal air says by how much they differ.
    #[test]
    fn air_that_differs_at_the_sides_says_by_how_much() {
        let of = |left: i64, right: i64| {
            let gaps = crate::site::fitting::Gaps { left: Some(inches(left)), right: Some(inches(right)), top: None };
            off(&Fitting { gaps, ..Fitting::default() })
        };
        assert_eq!([of(1, 1), of(1, 3), of(3, 1)], [None, Some(-inches(2)), Some(inches(2))]);
    }

    #[test]
    fn a_body_that_needs_more_than_the_sheet_says_governs() {
        let gauge = DimensionCheck { body: Some(inches(30)), air: inches(1), ..DimensionCheck::default() };
        let range = range("width", &gauge);
        assert_eq!((range.least.unwrap(), range.most), ((31_i64 * 25_400_000).to_string(), None));
        assert_eq!(range.body.unwrap(), (30_i64 * 25_400_000).to_string());
    }
}
