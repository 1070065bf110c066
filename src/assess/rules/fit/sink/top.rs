//! A bowl that is hung from below under a top that has a core of board.

use crate::assess::{Context, say};
use crate::book::{DetailName, ProductOption, Selection, TopMaterial};
use crate::finding::{Remark, Severity, phrase};
use crate::site::counters::{covers, is_alone};
use crate::site::{Placement, row_name};
use crate::units::Length;
use crate::vocabulary::{Kind, Mention, Mount};

/// No thicker is a top that is laminate all the way through (common practice: 10 to 20 mm).
const SOLID: Length = Length::from_millimetres(20);

/// Asks of a bowl below a laminate top, where nobody says that it takes one.
pub fn ask(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let (_, at) = fitted.option.mount_and_place().filter(|(mount, _)| *mount == Mount::Under)?;
    let row = row_name(fitted.room, fitted.opening);
    let lies_there = |option: &ProductOption| row.map_or(is_alone(fitted.room), |row| covers(fitted.room, option, row));
    let counters = fitted.room.selections.iter().filter(|selection| selection.is(Kind::Counter));
    let mut tops =
        counters.flat_map(|counter| Selection::standing(counter).iter().map(move |option| (counter, option)));
    let (counter, thick, top) = tops.find_map(|(counter, option)| {
        let material = option.top.get()?.material.spanned().filter(|is| is.value == TopMaterial::Laminate)?;
        let (thick, _) = option.length(DetailName::Thickness).filter(|(thick, _)| *thick > SOLID)?;
        (lies_there(option) && !takes_bowls_from_below(counter, option)).then_some((counter, thick, material.span))
    })?;
    let message = phrase!(
        "`{}` is hung under `{}`, which is laminate {} thick, and nobody says that it takes a bowl from below",
        fitted.selection.name.value,
        counter.name.value,
        say(thick, context.book.project.units)
    );
    let finding = fitted.finding(Severity::Query, at, message).also(top, "the top");
    let remedy = "ask the top's maker: water swells a core of board at the cutout; let the bowl in from above, or write in the counter's `edge` that its cutout is made for an undermount bowl";
    Some(finding.source("common practice").remedy(remedy))
}

/// Whether its words say that its cutout is made for it, or that it is no board.
fn takes_bowls_from_below(counter: &Selection, option: &ProductOption) -> bool {
    let words = |name| option.detail(name).and_then(|detail| detail.value.words()).unwrap_or_default();
    let edge = words(DetailName::Edge);
    let own = [counter.name.value.as_str(), option.name.text(), option.model.text(), option.description.text(), &edge];
    let with = option.accessories.iter().map(|with| with.name.value.as_str());
    let required = option.requires.iter().map(|required| required.value.as_str());
    Mention::FromBelow.is_in_any(own.into_iter().chain(with).chain(required))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn sink(counter: &str, mount: &str) -> Trial {
        Trial::of("fit/sink")
            .room("runs: {wet: {parts: [{cabinet: base, width: 36\", holds: [sink]}]}, dry: {parts: [{cabinet: b, width: 36\"}]}}")
            .opening("sink", "{takes: sink}")
            .selection("selection: Counter\nkind: counter", counter)
            .selection("selection: Sink\nkind: sink\nplace: sink", &format!("mount: {mount}\nsize: {{width: 22\"}}"))
    }

    /// Source: common practice: the cutout of a laminate top has an edge of raw board, which an undermount bowl leaves open.
    #[test]
    fn a_bowl_under_a_laminate_top_is_asked_about() {
        let under = "undermount\nreveal: flush";
        let laminate = "thickness: 1 1/2\"\ntop: {material: laminate}";
        sink(laminate, under)
            .finds("`Sink` is hung under `Counter`, which is laminate 1 1/2\" (38.1 mm) thick, and nobody says that it takes a bowl from below")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-1.yaml:4:8"]);
        sink("thickness: 38 mm\ntop: {material: laminate, lies on: [wet]}", under).finds_one();
        sink("thickness: 38 mm\ntop: {material: laminate, lies on: [dry]}", under).stays_silent();
        sink(laminate, "drop-in").stays_silent();
        // What is laminate all the way through, and what is made for it.
        sink("thickness: 12 mm\ntop: {material: laminate}", under).stays_silent();
        sink("thickness: 1 1/2\"\ntop: {material: quartz}", under).stays_silent();
        sink(&format!("{laminate}\nedge: square, sealed for an undermount bowl"), under).stays_silent();
        sink(&format!("{laminate}\ndescription: a compact top with a black core"), under).stays_silent();
    }
}
