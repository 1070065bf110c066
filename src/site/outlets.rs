//! Where a toilet's outlet goes, and where the drain for it is.

use crate::book::{DetailName, Opening, ProductOption, Selection, Slot};
use crate::source::{Span, Spanned};
use crate::units::Length;
use crate::vocabulary::Mention;
use crate::vocabulary::supply::{Drain, Side, Worded};

pub use crate::vocabulary::supply::OutletGoes;

/// Where a toilet's outlet goes: by the figure that is written for one way alone, else by what its name, its mount and
/// its drain are called. None where nothing tells.
pub fn outlet_of(selection: &Selection, option: &ProductOption) -> Option<OutletGoes> {
    let words = called(selection, option);
    let has_rough_in = option.detail(DetailName::RoughIn).is_some();
    let said_in_the_floor = Mention::OutletInTheFloor.is_in_any(words);
    // `back to wall, S-trap` with its rough-in: what stands against the wall drains into the floor all the same.
    let by_its_figure = has_rough_in && said_in_the_floor && !hangs_on_the_wall(selection, option);
    let said_in_the_wall = Mention::OutletInTheWall.is_in_any(words) && !by_its_figure;
    if option.detail(DetailName::OutletHeight).is_some() || said_in_the_wall {
        return Some(OutletGoes::ThroughTheWall);
    }
    (has_rough_in || said_in_the_floor).then_some(OutletGoes::IntoTheFloor)
}

/// Whether a toilet that does not hang on a wall is made for either way, by its words, or by its figures where those do
/// not tell.
pub fn goes_either_way(selection: &Selection, option: &ProductOption) -> bool {
    let words = called(selection, option);
    let of_both = match (Mention::OutletInTheWall.is_in_any(words), Mention::OutletInTheFloor.is_in_any(words)) {
        (true, true) => true,
        (false, false) => {
            option.detail(DetailName::OutletHeight).is_some() && option.detail(DetailName::RoughIn).is_some()
        }
        _ => false,
    };
    of_both && !hangs_on_the_wall(selection, option)
}

/// Whether a toilet hangs on a wall, by what it is called.
pub fn hangs_on_the_wall(selection: &Selection, option: &ProductOption) -> bool {
    Mention::HangsOnTheWall.is_in_any(called(selection, option))
}

/// Whatever tells in words where a toilet's outlet goes.
fn called<'a>(selection: &'a Selection, option: &'a ProductOption) -> [&'a str; 8] {
    let drain = option.fact::<Worded<Option<Side>>>().map_or("", |(drain, _)| drain.words.as_str());
    let needs = option.fit.get().and_then(|fit| fit.needs.drain.get());
    [
        option.called.as_str(),
        selection.name.value.as_str(),
        option.name.text(),
        option.model.text(),
        option.description.text(),
        option.mount_words(),
        drain,
        needs.map_or("", |needs| needs.words.as_str()),
    ]
}

/// What is still to come on the studs of the wall behind an opening: as the probed wall has it, else as the opening's
/// build-up does.
pub fn to_come_on_the_studs(opening: &Opening) -> Option<Length> {
    let probed = opening.hollow.get().and_then(|hollow| hollow.build_up.get().copied());
    let behind = || opening.wall_build_up.get().map(|build_up| build_up.back);
    probed.or_else(|| behind().filter(|back| *back > Length::ZERO))
}

/// How high the drain in the wall is, where it is told: as a point, or in the words of the drain.
pub fn height_of_the_drain(opening: &Opening) -> Option<(Length, Span)> {
    let point = || opening.points.get()?.drain.get()?.height.spanned().map(|high| (high.value, high.span));
    point().or_else(|| in_words(&opening.service.drain))
}

/// How high a toilet wants the drain, by its own field or in the words of its sheet.
pub fn height_of_the_outlet(option: &ProductOption) -> Option<(Length, Span)> {
    let words = || in_words(&option.fit.get()?.needs.drain);
    option.length(DetailName::OutletHeight).or_else(words)
}

fn in_words(drain: &Slot<Worded<Drain>>) -> Option<(Length, Span)> {
    let Spanned { value, span } = drain.spanned()?;
    Some((value.is.pipe.height?, *span))
}
