//! What the fit check found, in words that whoever reads them understands.

use crate::assess::rules;
use crate::book::{Hinge, Opening, ProductOption, Room, Selection, System};
use crate::drawings;
use crate::drawings::sizes::{Deep, Door, Hand, Hinged, Laps, Misfit as Drawn, Misfits, OptionPlan};
use crate::finding::{Family, Finding, Id, Severity};
use crate::language::{Words, say};
use crate::site::counter_depth;
use crate::site::fitting::{Direction, Fitting, Misfit, fitting, panel_before};
use crate::units::{Length, letter};
use crate::views::pages::PageBuilder;
use crate::views::shared::figures::in_prose;
use crate::views::shared::found;
use crate::views::shared::html::{Html, show};
use crate::views::shared::state::{State, StateShape};
use serde::Serialize;

/// What the fit check found of one option.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fit {
    /// `Fits`, `Does not fit`, and so on.
    pub verdict: State,
    /// The gaps and what sticks out, in a sentence.
    pub sentence: Html,
    /// A small plan or front, if there is one.
    pub drawing: Option<Html>,
}

impl PageBuilder<'_> {
    /// What was found of an option at its opening: a verdict and a sentence.
    pub fn fit(&self, room: &Room, selection: &Selection, option: &ProductOption, number: usize) -> Option<Fit> {
        let opening = selection.place.get().and_then(|place| room.opening(place));
        let (verdict, sentence) = match opening {
            Some(opening) => self.verdict(room, opening, selection, option),
            None => self.verdict_without_opening(room, selection, option)?,
        };
        // What the rules ask of a thing is asked of what stands: of another option the sizes alone are compared.
        let is_set_aside = selection.settled().is_some_and(|settled| !std::ptr::eq(settled, option));
        let verdict = match verdict.shape {
            StateShape::Fits if is_set_aside => State::new(StateShape::Fits, say!(self.words, "fit.yes_by_sizes")),
            _ => verdict,
        };
        let plan = opening.and_then(|opening| self.option_plan((room, opening), selection, option, number));
        Some(Fit { verdict, sentence, drawing: plan.map(|plan| Html::trusted(drawings::option_plan(&plan))) })
    }

    /// What was found of an option that goes into no opening of its own: only what speaks against it.
    fn verdict_without_opening(
        &self,
        room: &Room,
        selection: &Selection,
        option: &ProductOption,
    ) -> Option<(State, Html)> {
        let found = self.fit_findings(room, selection, option);
        let stops = found.iter().filter(|finding| misfit(finding) && finding.waived.is_none());
        let stops: Vec<Html> = stops.map(|stop| sentence_of(self.words, stop)).collect();
        if !stops.is_empty() {
            return Some((State::new(StateShape::DoesNotFit, say!(self.words, "fit.no")), in_a_row(stops)));
        }
        let accepted = self.accepted(&found);
        if !accepted.is_empty() {
            let fits = State::new(StateShape::Fits, say!(self.words, "fit.yes_except"));
            return Some((fits, in_a_row(accepted)));
        }
        let query = found.iter().find(|finding| asks(finding))?;
        Some((State::new(StateShape::FitUnknown, say!(self.words, "fit.asks")), sentence_of(self.words, query)))
    }

    /// Whether an option fits, and by how much.
    pub fn verdict(
        &self,
        room: &Room,
        opening: &Opening,
        selection: &Selection,
        option: &ProductOption,
    ) -> (State, Html) {
        let fit = fitting(self.plans.room(room), room, opening, option);
        let found = self.fit_findings(room, selection, option);
        let against = self.against_it(&fit, &found);
        if !against.is_empty() {
            return (State::new(StateShape::DoesNotFit, say!(self.words, "fit.no")), in_a_row(against));
        }
        let accepted = self.accepted(&found);
        let excepted = !accepted.is_empty();
        let sentence = in_a_row(std::iter::once(self.gaps(&fit, (room, opening))).chain(accepted).collect());
        if opening.is_as_planned() {
            let sentence = show!(self.words, "fit.planned", rest = sentence);
            return (State::new(StateShape::NotMeasured, say!(self.words, "fit.verify")), sentence);
        }
        let known = fit.width.left_over().or(fit.height.left_over()).or(fit.depth.left_over());
        if known.is_none() {
            return (
                State::new(StateShape::FitUnknown, say!(self.words, "fit.unknown")),
                show!(self.words, "fit.missing"),
            );
        }
        if let Some(state) = self.not_known_yet(&fit) {
            return (state, sentence);
        }
        let in_the_way = self.in_the_way(room, opening, selection, option);
        if !in_the_way.is_empty() {
            let state = State::new(StateShape::FitUnknown, say!(self.words, "fit.yes_first"));
            return (state, in_a_row(std::iter::once(sentence).chain(in_the_way).collect()));
        }
        if let Some(query) = found.iter().find(|finding| asks(finding)) {
            let sentence = sentence.then(" ").then(sentence_of(self.words, query));
            return (State::new(StateShape::Fits, say!(self.words, "fit.yes_but")), sentence);
        }
        let fits = if excepted { "fit.yes_except" } else { "fit.yes" };
        (State::new(StateShape::Fits, say!(self.words, fits)), sentence)
    }

    /// That one of the directions is not known yet, whatever is known of the others.
    fn not_known_yet(&self, fit: &Fitting) -> Option<State> {
        let named = |direction: &Direction| match direction {
            Direction::Width => say!(self.words, "fit.direction.width"),
            Direction::Height => say!(self.words, "fit.direction.height"),
            Direction::Depth => say!(self.words, "fit.direction.depth"),
        };
        let directions: Vec<String> = fit.unknown.iter().map(named).collect();
        if directions.is_empty() {
            return None;
        }
        let what = self.words.series(&directions);
        Some(State::new(StateShape::FitUnknown, say!(self.words, "fit.unknown_in", what = what)))
    }

    /// What stands in the way of using it where it is to go, though it goes in: its services, what is clear around it,
    /// the row and the ceiling, and figures of it that contradict each other.
    fn in_the_way(&self, room: &Room, opening: &Opening, selection: &Selection, option: &ProductOption) -> Vec<Html> {
        let of = [Family::Service, Family::Clear, Family::Run, Family::Source];
        let found = self.found_at(room, (selection, Some(opening)), option, &of);
        let stops = found.into_iter().filter(|finding| misfit(finding) && finding.waived.is_none());
        stops.map(|stop| sentence_of(self.words, stop)).collect()
    }

    /// What does not fit and is let stand: it is part of the answer whether a thing fits, for whoever reads it.
    fn accepted(&self, found: &[&Finding]) -> Vec<Html> {
        let accepted = found.iter().filter(|finding| misfit(finding) && finding.waived.is_some());
        accepted.map(|finding| sentence_of(self.words, finding)).collect()
    }

    /// Why an option does not fit, a sentence each: what it is too large or too small for first, in the
    /// figures that drawings show too.
    fn against_it(&self, fit: &Fitting, found: &[&Finding]) -> Vec<Html> {
        let misfits = fit.misfits();
        let ways = [
            (misfits.width, "fit.too.width", "fit.larger.width", rules::WIDTH),
            (misfits.height, "fit.too.height", "fit.larger.height", rules::HEIGHT),
            (misfits.depth, "fit.too.depth", "fit.larger.depth", rules::DEPTH),
        ];
        let (mut small, mut large, mut told) = (Vec::new(), Vec::new(), Vec::new());
        for (misfit, too, larger, rule) in ways {
            let Some(misfit) = misfit else { continue };
            told.push(rule);
            match misfit {
                Misfit::TooSmall(by) => small.push(show!(self.words, too, by = in_prose(self.wording, by))),
                Misfit::TooLarge(by) => large.push(show!(self.words, larger, by = in_prose(self.wording, by))),
            }
        }
        let stops =
            found.iter().filter(|finding| misfit(finding) && finding.waived.is_none() && !told.contains(&finding.rule));
        let small =
            (!small.is_empty()).then(|| show!(self.words, "fit.too.sentence", parts = Html::series(self.words, small)));
        let large = (!large.is_empty())
            .then(|| show!(self.words, "fit.larger.sentence", parts = Html::series(self.words, large)));
        small.into_iter().chain(large).chain(stops.map(|stop| sentence_of(self.words, stop))).collect()
    }

    /// The small plan of an option, where its sizes are known.
    fn option_plan(
        &self,
        (room, opening): (&Room, &Opening),
        selection: &Selection,
        option: &ProductOption,
        number: usize,
    ) -> Option<OptionPlan> {
        let fit = fitting(self.plans.room(room), room, opening, option);
        let (width, there) = (fit.front.width?, fit.width.there?);
        Some(OptionPlan {
            id: format!("plan-{}", option.id.value),
            letter: letter(number),
            name: format!("{}, {}", selection.name.value, option.title()),
            opening: there,
            width,
            gap_left: gap_left(&fit)?,
            thing: deep((option, selection), &fit, counter_depth(room, opening).value())?,
            counter_edge: counter_depth(room, opening).value(),
            misfits: misfits(&fit),
            laps: laps(&fit),
            units: self.units(),
            words: self.words,
        })
    }

    /// The system that drawings letter first.
    pub fn units(&self) -> System {
        self.subject.book.project.units
    }

    /// The findings of the fit rules on this option, and on the opening that it goes into.
    fn fit_findings(&self, room: &Room, selection: &Selection, option: &ProductOption) -> Vec<&Finding> {
        let opening = selection.place.get().and_then(|place| room.opening(place));
        self.found_at(room, (selection, opening), option, &[Family::Fit])
    }

    /// The findings of some families on an option and on the opening that it goes into.
    fn found_at(
        &self,
        room: &Room,
        (selection, opening): (&Selection, Option<&Opening>),
        option: &ProductOption,
        families: &[Family],
    ) -> Vec<&Finding> {
        let of_it = |finding: &&Finding| {
            families.contains(&finding.rule.family()) && finding.subject.option().is_none_or(|id| id == option.id.value)
        };
        let things = opening.map(|opening| Id::of(&opening.name)).into_iter().chain([Id::of(&selection.name)]);
        self.found.about(&room.folder, &things.collect::<Vec<_>>()).into_iter().filter(of_it).collect()
    }

    /// The gaps at the sides and above, and what stands out, in a sentence or two.
    fn gaps(&self, fit: &Fitting, (room, opening): (&Room, &Opening)) -> Html {
        let mut parts: Vec<Html> = Vec::new();
        match (fit.gaps.each_side(), fit.gaps.left.zip(fit.gaps.right)) {
            (Some(each), _) => parts.push(show!(self.words, "fit.gaps.each", gap = in_prose(self.wording, each))),
            (None, Some((left, right))) => {
                parts.push(show!(self.words, "fit.gaps.left", gap = in_prose(self.wording, left)));
                parts.push(show!(self.words, "fit.gaps.right", gap = in_prose(self.wording, right)));
            }
            (None, None) => {}
        }
        if let (Some(play), true) = (fit.height.play(), opening.above.get().is_some() || fit.height.asked.is_some()) {
            parts.push(show!(self.words, "fit.gaps.above", gap = in_prose(self.wording, play)));
        }
        let mut sentences = Vec::new();
        if !parts.is_empty() {
            sentences.push(show!(self.words, "fit.gaps.sentence", parts = Html::series(self.words, parts)));
        }
        let counter = counter_depth(room, opening).best().is_some();
        if let Some(out) = fit.projection.filter(|out| *out > Length::ZERO) {
            let key = if counter { "fit.proud.counter" } else { "fit.proud.edge" };
            sentences.push(show!(self.words, key, by = in_prose(self.wording, out)));
        }
        // Where a thing's own edges are not those of the hole, its sheet says how large that must be.
        let held = [&fit.width, &fit.height, &fit.depth].iter().any(|one| one.asked.is_some() && one.there.is_some());
        match (sentences.is_empty(), held) {
            (false, _) => in_a_row(sentences),
            (true, true) => show!(self.words, "fit.as_asked"),
            (true, false) => show!(self.words, "fit.none"),
        }
    }
}

/// Sentences one after the other.
fn in_a_row(sentences: Vec<Html>) -> Html {
    sentences.into_iter().reduce(|text, next| text.then(" ").then(next)).unwrap_or_default()
}

/// Whether a finding says that something does not fit; of an option that can still be chosen, that it
/// would not. A question whose day is past is still a question.
fn misfit(finding: &Finding) -> bool {
    finding.severity == Severity::Stop && !finding.past || finding.bars
}

/// Whether a finding asks something of the fit.
fn asks(finding: &Finding) -> bool {
    finding.waived.is_none() && (finding.severity == Severity::Query || finding.past)
}

/// A finding's message as a sentence.
pub fn sentence_of(words: Words, finding: &Finding) -> Html {
    found::sentence(words, &finding.message)
}

/// What the verdict says does not fit, for a drawing.
pub fn misfits(fit: &Fitting) -> Misfits {
    let drawn = |misfit: Misfit| match misfit {
        Misfit::TooSmall(by) => Drawn::TooSmall(by),
        Misfit::TooLarge(by) => Drawn::TooLarge(by),
    };
    let told = fit.misfits();
    Misfits { width: told.width.map(drawn), height: told.height.map(drawn), depth: told.depth.map(drawn) }
}

/// How far its front lies over the hole, for a drawing.
pub fn laps(fit: &Fitting) -> Laps {
    let over = fit.laps();
    Laps { width: over.width, height: over.height }
}

/// From the opening's left edge to the thing as it is drawn: in the middle, or with the air that its
/// sheet asks for; what is too wide stands against the left edge, so that all of it is seen at the right.
pub fn gap_left(fit: &Fitting) -> Option<Length> {
    let middle = (fit.width.there? - fit.front.width?).half();
    let gap = fit.gaps.left.unwrap_or(middle);
    Some(match fit.width.too_small_by() {
        Some(_) => gap.max(Length::ZERO).min(middle.max(Length::ZERO)),
        None => gap,
    })
}

/// A thing from its back to its front, with a panel that is hung on it. It stands as far out past the counter's edge as
/// the verdict says; what is let into the counter is in the middle of it, as far as anybody knows.
pub fn deep(
    (option, selection): (&ProductOption, &Selection),
    fitting: &Fitting,
    counter_edge: Option<Length>,
) -> Option<Deep> {
    let body = *option.size.depth.get()?;
    // Air that holds somewhere only, to what burns, is no place where the thing stands.
    let air = option.fit.get().and_then(|fit| fit.air.back.get()).filter(|air| air.holds.is_empty());
    let air = air.map_or(Length::ZERO, |air| air.length);
    let panel = Some(panel_before(option)).filter(|panel| *panel > Length::ZERO).map(|panel| body + panel);
    let mut thing = Deep {
        name: selection.name.value.to_lowercase(),
        behind: air,
        is_set: fitting.projection.is_some() || counter_edge.is_none(),
        body,
        with_door: option.size.depth_with_door.get().copied().or(panel),
        with_handle: option.size.depth_with_handle.get().copied(),
        door: door(option),
    };
    if let Some(edge) = counter_edge {
        let reach = thing.farthest() - thing.behind;
        let behind = fitting.projection.map_or((edge - body).half(), |past| edge + past - reach);
        thing.behind = behind.max(Length::ZERO);
    }
    Some(thing)
}

/// How a thing opens.
pub fn door(option: &ProductOption) -> Door {
    let door = option.fit.get().and_then(|fit| fit.door.get());
    let hinge = match option.hinge.get() {
        Some(Hinge::Left) => Hinged::At(Hand::Left),
        Some(Hinge::Right) => Hinged::At(Hand::Right),
        Some(Hinge::Both) => Hinged::BothSides,
        Some(Hinge::Either | Hinge::None) | None => Hinged::Unknown,
    };
    match door {
        Some(door) => match (door.drops.get(), door.swings.get()) {
            (Some(reach), _) => Door::Drops { reach: *reach },
            (None, Some(leaf)) => Door::Swings { leaf: *leaf, hinge },
            _ => Door::None,
        },
        None => Door::None,
    }
}
