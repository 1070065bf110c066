//! What is above a cooking surface.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, near_heat, say, where_to_say_it_burns};
use crate::book::{Neighbour, Room, Window, WindowOpens};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::site::heat::{Body, DistanceSource, Hearth, Near, is_said_above_cooking, nearest, windows_over};
use crate::source::Spanned;
use crate::units::Wrote;
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// What burns is nearer above a cooking surface than it may be
    ///
    /// ## What it checks
    /// From the cooking surface (the top of a range, or the counter of a cooktop) to the nearest of all
    /// that is above it, wherever that is written: `above` at the opening, wall cabinets, shelves and
    /// hoods of the plan, the room's one hood, a window, the ceiling. Whether it burns is its `material`:
    /// `burns`, `shielded` or `does not burn`. Where nobody says, it counts as burning, whatever it is
    /// called. The distance is that of the maker's sheet where it gives one (`fit: {heat: {above: …}}`, or
    /// {12"} and more of `air: {top: …}`), else {30"} to what burns and {24"} to what is shielded or does not
    /// burn. A hood that does not burn shields what is above it when it is at least as wide as the cooking
    /// surface. A window that opens above it is told too.
    ///
    /// ## Why it matters
    /// Cabinets above burners char for years before they catch fire.
    ///
    /// ## Remedy
    /// Raise what is above, shield it as the code says, or fit a hood that is wide enough. Where it does
    /// not burn, say so in its `material`.
    ///
    /// ## Example
    /// ```yaml
    /// above: {what: oak hood, height: 62"}     # over a range 36" high: 26", and counted as burning
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; IRC M1901.1 ({30"}); IFGC 623.7 and IRC G2447.5 from memory, UMC 906.1 (1998) for
    /// {24"} under a shield; kitchen planning guidelines 18 and 20. Free summaries cite another section for
    /// the {30"}: check locally.
    "clear/above-cooktop", Query,
    due: CabinetsOrdered, tells: [Installer],
    judges: cooking,
    sources: ["the maker's sheet", "IRC M1901.1", "IFGC 623.7 (from memory)", "kitchen planning guidelines 18 and 20"],
    caution: Some(Hazard::Heat),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for fitted in context.site.fitted() {
        let Some(hearth) = context.hearth(fitted) else { continue };
        let near = hearth.above();
        let short = nearest(&near).and_then(|near| told(context, &hearth, near));
        findings.extend(short.or_else(|| ask(context, &hearth)));
    }
    for room in &context.book.rooms {
        let over = context.site.fitted_in(room).filter_map(|fitted| context.hearth(fitted));
        let mut windows: Vec<(&Window, Phrase)> = Vec::new();
        for hearth in over {
            let name = phrase!("cooking surface of `{}`", hearth.fitted.selection.name.value);
            windows.extend(windows_over(&hearth).into_iter().map(|window| (window, name.clone())));
        }
        let said = room.windows.iter().filter(|window| is_said_above_cooking(window, context.site.plan(room)));
        windows.extend(said.map(|window| (window, Phrase::plain(window.above.text()))));
        windows.sort_by_key(|(window, _)| window.name.span);
        windows.dedup_by_key(|(window, _)| window.name.span);
        findings.extend(windows.into_iter().filter_map(|(window, under)| opens(room, window, under)));
    }
}

/// What is nearer than it may be.
fn told(context: &Context<'_>, hearth: &Hearth<'_>, near: &Near<'_>) -> Option<Remark> {
    let short = near.short()?;
    let say = |length| say(length, context.book.project.units);
    let whose = match near.asked.whose {
        DistanceSource::Sheet => "its sheet's",
        DistanceSource::SheetAbove => "its own sheet's",
        DistanceSource::Figure => "the",
    };
    let unsaid =
        if near.hangs_on_its_material() { "; nobody says whether it burns, and so it counts as burning" } else { "" };
    let message = phrase!(
        "{} is {} above the cooking surface of `{}`, {} less than {whose} {}{unsaid}",
        near_heat(&near.body),
        say(near.distance),
        hearth.fitted.selection.name.value,
        say(short),
        whose,
        say(near.asked.length),
        unsaid
    );
    let at = near.body.span().unwrap_or(hearth.fitted.opening.span);
    let mut remedy = Phrase::from("raise what is above, shield it as the code says, or fit a hood that is wide enough");
    // What is made to hang there has a clearance of its own, and nobody wrote it.
    let made_for_it = near.body.chosen().filter(|thing| thing.is_any(&[Kind::Microwave, Kind::Hood]));
    if let Some(thing) = made_for_it.filter(|_| near.asked.whose == DistanceSource::Figure) {
        remedy = phrase!(
            "write what the sheet of `{}` asks over a cooking surface, which counts then: `fit: {{heat: {{over cooking: …}}}}`; or {remedy}",
            thing.name.value,
            remedy
        );
    }
    if near.hangs_on_its_material() {
        remedy =
            phrase!("say whether it burns: {}; where it does, {remedy}", where_to_say_it_burns(&near.body), remedy);
    }
    let finding = hearth.fitted.finding(super::weight(&near.asked), at, message);
    Some(finding.remedy(remedy).source(near.asked.source.clone()))
}

/// What must be known before anything can be said.
fn ask(context: &Context<'_>, hearth: &Hearth<'_>) -> Option<Remark> {
    let name = &hearth.fitted.selection.name.value;
    let said: Option<&Spanned<Neighbour>> = hearth.fitted.opening.above.spanned();
    if let Some(said) = hearth.of_unknown_height() {
        let message = phrase!(
            "how high the {} is above the cooking surface of `{name}` is not said",
            Wrote(&said.value.what),
            name
        );
        let height = Phrase::from("add the height of its lower edge from the finished floor to the opening's `above`");
        let finding = hearth.fitted.finding(Severity::Query, said.span, message);
        return Some(finding.remedy(phrase!(
            "{height}, and {}",
            height,
            where_to_say_it_burns(&Body::Said(said, None))
        )));
    }
    let (above, surface) = (said?, hearth.surface());
    let height = *above.value.height.get().filter(|_| surface.is_none())?;
    let message = phrase!(
        "how high the cooking surface of `{name}` is under the {} is not said, which is {} above the floor",
        name,
        Wrote(&above.value.what),
        say(height, context.book.project.units)
    );
    let finding = hearth.fitted.finding(Severity::Query, above.span, message);
    Some(finding.remedy("add `counter height` to the opening: the counter's top from the finished floor"))
}

/// A window that opens above what is cooked on.
fn opens(room: &Room, window: &Window, under: Phrase) -> Option<Remark> {
    let message = phrase!("the window `{}` opens above the {under}", window.name.value, under);
    window.opens.get().is_some_and(|opens| *opens != WindowOpens::Fixed).then(|| {
        Remark::query(window.name.span, message)
            .room(&room.folder)
            .thing(&window.name)
            .remedy("move one of them, or fix the sash; nothing that burns hangs there")
            .source("kitchen planning guideline 20")
    })
}

#[cfg(test)]
mod tests;
