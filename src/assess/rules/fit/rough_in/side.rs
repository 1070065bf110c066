//! The side at which a tub or a tray drains.

use crate::book::Opening;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::vocabulary::Kind;
use crate::vocabulary::supply::{Side, Worded};

/// The side at which a tub or a tray drains against the side of the drain in the floor.
pub(super) fn judge(fitted: &Placement<'_>) -> Option<Remark> {
    fitted.selection.kind.get().filter(|kind| [Kind::Bathtub, Kind::ShowerTray].contains(kind))?;
    let of_sheet = fitted.option.fit.get().and_then(|fit| fit.needs.drain.spanned());
    let of_sheet = of_sheet.and_then(|drain| Some((drain.is.side?, drain.span)));
    let own = fitted.option.fact::<Worded<Option<Side>>>();
    let name = &fitted.selection.name.value;
    if let (Some((drain, at)), Some((sheet, on_it))) = (&own, of_sheet)
        && let Some(said) = drain.is.filter(|said| !said.is_served_by(sheet))
    {
        let message = phrase!("`{name}` drains at the {}, and by its sheet at the {}", name, said.word(), sheet.word());
        let finding = fitted.finding(Severity::Query, *at, message).also(on_it, "its sheet");
        return Some(finding.remedy("ask its maker which of the two is made, and correct the other"));
    }
    let there = fitted.opening.service.drain.spanned()?;
    let wants = match (&own, of_sheet) {
        (Some((drain, _)), None) if drain.is.is_none() => {
            let message = phrase!("the words `{drain}` do not say at which side `{name}` drains", drain.words, name);
            let finding = fitted.finding(Severity::Query, there.span, message);
            return Some(finding.remedy("say `left`, `right`, `middle` or `both sides` in its `drain`"));
        }
        (own, of_sheet) => own.as_ref().and_then(|(drain, _)| drain.is).or_else(|| of_sheet.map(|(side, _)| side))?,
    };
    match there.is.side.or_else(|| side_of_point(fitted.opening)) {
        Some(has) => other_side(fitted, wants, has),
        None if wants == Side::Both => None,
        None => {
            let message =
                phrase!("`{name}` drains at the {}, and nobody says at which side the drain is", name, wants.word());
            let finding = fitted.finding(Severity::Query, there.span, message);
            Some(finding.remedy(
                "find out, and say `left`, `right`, `middle` or `both sides` in the words of the opening's `service: {drain: …}`",
            ))
        }
    }
}

fn other_side(fitted: &Placement<'_>, wants: Side, has: Side) -> Option<Remark> {
    let there = fitted.opening.service.drain.spanned()?;
    let name = &fitted.selection.name.value;
    let message = phrase!("`{name}` drains at the {}, and the drain is at the {}", name, wants.word(), has.word());
    (!wants.is_served_by(has)).then(|| {
        fitted
            .finding(Severity::Stop, there.span, message)
            .remedy("order it of the other hand, or have the drain moved while the floor is open")
    })
}

/// The third of the opening's width in which its drain comes up, where that was measured.
fn side_of_point(opening: &Opening) -> Option<Side> {
    let from_left = *opening.points.get()?.drain.get()?.from_left.get()?;
    let width = opening.governing_width()?;
    Some(match from_left.times(3) {
        at if at <= width => Side::Left,
        at if at >= width.times(2) => Side::Right,
        _ => Side::Middle,
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    /// Source: trade reports section 6 (a tub's drain has a hand).
    #[test]
    fn a_tub_of_the_other_hand_stops() {
        let tub = |drain: &str| {
            Trial::of("fit/rough-in")
                .opening("alcove", "{takes: bathtub, service: {drain: at the left}}")
                .selection("selection: Tub\nkind: bathtub\nplace: alcove", &format!("drain: {drain}"))
        };
        tub("right end").finds("`Tub` drains at the right, and the drain is at the left");
        tub("left end").stays_silent();
        tub("centre").finds("`Tub` drains at the middle, and the drain is at the left").weighs("stop");
        tub("either end").stays_silent();
        tub("at the overflow").finds_one().weighs("query");
        let tray = |drain: &str| {
            Trial::of("fit/rough-in")
                .opening("recess", "{takes: shower tray, service: {drain: '50 mm, at the right end'}}")
                .selection("selection: Tray\nkind: shower tray\nplace: recess", &format!("drain: {drain}"))
        };
        tray("left").finds("`Tray` drains at the left, and the drain is at the right").weighs("stop");
        tray("right").stays_silent();
    }

    /// Source: trade reports section 6: a drain that is there at both sides serves either hand.
    #[test]
    fn a_drain_at_both_sides_serves_a_tub_of_either_hand() {
        let tub = |drain: &str, there: &str| {
            Trial::of("fit/rough-in")
                .opening("alcove", &format!("{{takes: bathtub, width: 60\", {there}}}"))
                .selection("selection: Tub\nkind: bathtub\nplace: alcove", &format!("drain: {drain}"))
        };
        for both in ["1 1/2\" at both sides", "stubs left and right", "1 1/2\" at the left; a second at the right"] {
            let service = format!("service: {{drain: '{both}'}}");
            tub("right end", &service).stays_silent();
            tub("left end", &service).stays_silent();
        }
        tub("right", "service: {drain: 'left, not right'}").finds_one().weighs("stop");
        tub("right", "service: {drain: '1 1/2\"'}").finds_one().weighs("query");
        tub("right", "service: {drain: '1 1/2\"'}, service points: {drain: {from left: 52\"}}").stays_silent();
        tub("right", "service: {drain: '1 1/2\"'}, service points: {drain: {from left: 8\"}}")
            .finds_one()
            .weighs("stop");
    }

    /// Source: arithmetic; both tell of one drain.
    #[test]
    fn a_tub_s_own_words_and_its_sheet_name_one_side() {
        let tub = |own: &str, sheet: &str| {
            Trial::of("fit/rough-in")
                .opening("alcove", "{takes: bathtub, service: {drain: '1 1/2\" at the left'}}")
                .selection(
                    "selection: Tub\nkind: bathtub\nplace: alcove",
                    &format!("{own}fit: {{needs: {{drain: '1 1/2\" {sheet}'}}}}"),
                )
        };
        tub("drain: centre\n", "left end")
            .finds("`Tub` drains at the middle, and by its sheet at the left")
            .weighs("query");
        tub("drain: left\n", "left end").stays_silent();
        tub("drain: left\n", "either end").stays_silent();
        tub("", "right end").finds("`Tub` drains at the right, and the drain is at the left").weighs("stop");
        tub("", "left end").stays_silent();
        tub("", "with overflow").stays_silent();
        let unsaid = |own: &str| {
            Trial::of("fit/rough-in").opening("alcove", "{takes: bathtub, service: {drain: '1 1/2\"'}}").selection(
                "selection: Tub\nkind: bathtub\nplace: alcove",
                &format!("{own}fit: {{needs: {{drain: '1 1/2\" right end'}}}}"),
            )
        };
        for own in ["", "drain: right\n", "drain: at the overflow\n"] {
            unsaid(own).finds("`Tub` drains at the right, and nobody says at which side the drain is").weighs("query");
        }
    }

    /// Where a joist lies is no side of the drain.
    #[test]
    fn a_joist_is_on_no_side_of_the_drain() {
        let tub = |there: &str| {
            Trial::of("fit/rough-in")
                .opening("alcove", &format!("{{takes: bathtub, service: {{drain: '1 1/2\" at the left, {there}'}}}}"))
                .selection("selection: Tub\nkind: bathtub\nplace: alcove", "drain: left")
        };
        for there in ["joist right under it", "joist to the right", "16\" between joists, right of the beam"] {
            tub(there).stays_silent();
        }
    }
}
