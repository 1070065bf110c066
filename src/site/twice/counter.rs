//! A counter: as it is chosen, and as the runs and islands below it are planned.

use crate::book::{DetailName, Island, IslandSide, ProductOption, Room, Run, Selection, Slot, TopMaterial};
use crate::site::counters::covers;
use crate::site::told::{Provenance, SourcedFigure, Spot};
use crate::units::Length;
use crate::vocabulary::supply::one_length;
use crate::vocabulary::{Kind, Words};

use super::{ComparedValue, Differ, Joined, TOLERANCE, Twice};

/// What a slab may be laid on: 3/4 in (common practice).
const SUB_TOP: Length = Length::from_sixty_fourths(48);

/// No counter is thicker: what is longer in the name of a model is another size of it (common practice).
const THICKEST: Length = Length::from_inches(4);

/// A counter in its room.
struct Counter<'a> {
    room: &'a Room,
    selection: &'a Selection,
    option: &'a ProductOption,
}

/// Counters of a room that two places tell differently.
pub(super) fn of_room(room: &Room) -> Vec<Twice<'_>> {
    let counters = room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let counters = counters.filter_map(|selection| Some(Counter { room, selection, option: selection.settled()? }));
    counters.flat_map(|counter| counter.differs()).collect()
}

impl<'a> Counter<'a> {
    fn differs(&self) -> Vec<Twice<'a>> {
        let mut all: Vec<Twice<'a>> =
            self.overhang().into_iter().chain(self.depth()).chain(self.material()).chain(self.by_its_model()).collect();
        all.extend(self.runs().filter_map(|run| self.height(run)));
        all
    }

    fn runs(&self) -> impl Iterator<Item = &'a Run> {
        let on_the_floor = self.room.runs.iter().filter(|run| run.above_floor.is_absent());
        on_the_floor.filter(|run| covers(self.room, self.option, &run.name))
    }

    fn islands(&self) -> impl Iterator<Item = &'a Island> {
        self.room.islands.iter().filter(|island| covers(self.room, self.option, &island.name))
    }

    fn of_the_top(&self, slot: impl Fn(&'a crate::book::Top) -> &'a Slot<Length>) -> Option<SourcedFigure<'a>> {
        Some(SourcedFigure::written(slot(self.option.top.get()?).spanned()?, Spot::Selection(&self.selection.name)))
    }

    fn apart(&self, what: &'static str, own: SourcedFigure<'a>, there: SourcedFigure<'a>) -> Twice<'a> {
        Twice::of(&self.selection.name, what, (own, there), Differ::Apart)
    }

    /// How far it stands out: past the islands that it covers no less, and no more where it covers nothing else.
    fn overhang(&self) -> Option<Twice<'a>> {
        let own = self.of_the_top(|top| &top.overhang)?;
        let sides = self.islands().flat_map(|island| IslandSide::ALL.map(|side| (island, island.side(side))));
        let said = sides.filter_map(|(island, side)| {
            Some(SourcedFigure::planned(side.overhang.spanned()?, Spot::Island(&island.name)))
        });
        let farthest = said.max_by_key(|told| told.value)?;
        let lies = self.option.top.get().map_or(0, |top| top.lies_on.len());
        let alone = self.runs().next().is_none() && self.islands().count() == lies.max(1);
        let more = own.value > farthest.value + TOLERANCE && alone;
        let less = own.value + TOLERANCE < farthest.value;
        (more || less).then(|| self.apart("the overhang", own, farthest))
    }

    /// What it is made of, in the two places that may say so.
    fn material(&self) -> Option<Twice<'a>> {
        let own = self.option.material.spanned()?;
        let of_top = self.option.top.get()?.material.spanned()?;
        let said = own.value.of_top().filter(|said| *said != of_top.value)?;
        let told = |material: TopMaterial, at| SourcedFigure {
            value: ComparedValue::Word(material.word()),
            at,
            provenance: Provenance::Written,
            spot: Spot::Selection(&self.selection.name),
        };
        Some(Twice {
            about: &self.selection.name,
            what: "the material",
            joined: Joined::Of,
            counts: told(of_top.value, of_top.span),
            differs: told(said, own.span),
            how: Differ::Apart,
            decides_a_fit: false,
        })
    }

    /// How thick it is, and how thick the one is that its model names: `Mist, 2 cm`.
    fn by_its_model(&self) -> Option<Twice<'a>> {
        let (value, at) = self.option.length(DetailName::Thickness)?;
        let spot = Spot::Selection(&self.selection.name);
        let own = SourcedFigure { value, at, provenance: Provenance::Written, spot };
        let model = self.option.model.spanned()?;
        let named = one_length(&model.value).filter(|named| *named <= THICKEST)?;
        let named = SourcedFigure { value: named, at: model.span, ..own };
        ((named.value - value).abs() > TOLERANCE).then(|| self.apart("the thickness", own, named).asked())
    }

    /// From its back to its front, where it lies on one run or island.
    fn depth(&self) -> Option<Twice<'a>> {
        let own = self.of_the_top(|top| &top.depth)?;
        let (runs, islands): (Vec<_>, Vec<_>) = (self.runs().collect(), self.islands().collect());
        let there = match (runs.as_slice(), islands.as_slice()) {
            // Of several it is that of one of them at least.
            ([_, ..], []) => {
                let told =
                    runs.iter().map(|run| Some((run, run.counter.depth.spanned()?))).collect::<Option<Vec<_>>>()?;
                let (run, near) = told.into_iter().min_by_key(|(_, told)| (told.value - own.value).abs())?;
                SourcedFigure::planned(near, Spot::Run(&run.name))
            }
            ([], [island]) => {
                let size = island.size.spanned()?;
                // Which of its sides is its depth is for whoever names it.
                let (one, other) = size.value;
                let near = if (one - own.value).abs() < (other - own.value).abs() { one } else { other };
                SourcedFigure {
                    value: near,
                    at: size.span,
                    provenance: Provenance::Plan,
                    spot: Spot::Island(&island.name),
                }
            }
            _ => return None,
        };
        ((own.value - there.value).abs() > TOLERANCE).then(|| self.apart("the depth", own, there))
    }

    /// A counter's top that is lower than the cabinets and the slab on them, or higher than both with a sub-top.
    fn height(&self, run: &'a Run) -> Option<Twice<'a>> {
        let top = SourcedFigure::planned(run.counter.height.spanned()?, Spot::Run(&run.name));
        let (thickness, at) = self.option.length(DetailName::Thickness)?;
        // Cabinets may stand on the floor below the one that is to be laid.
        let below = self.room.floor_build_up.get().copied().unwrap_or_default();
        let value = *run.height.get()? + thickness;
        let spot = Spot::Selection(&self.selection.name);
        let stack = SourcedFigure { value, at, provenance: Provenance::Derived, spot };
        let lower = top.value + TOLERANCE < value - below;
        // A box may be told without the feet that it stands on.
        let foot = run.toe_kick.get().copied().unwrap_or_default();
        let reaches = |stack: Length| top.value <= stack + SUB_TOP + TOLERANCE;
        let on_feet = reaches(value + foot) && top.value + TOLERANCE >= value + foot;
        let higher = !reaches(value) && !on_feet;
        let together = "cabinets and counter together";
        let how = if lower { Differ::LessThan(together) } else { Differ::MoreThan(together) };
        (lower || higher).then(|| Twice::of(&run.name, "the counter height", (top, stack), how))
    }
}
