//! Whether a toilet's outlet and its drain are both in the floor, or both in the wall, and whether it is known where.

use crate::book::{DetailName, Opening};
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::site::outlets::{
    OutletGoes, goes_either_way, hangs_on_the_wall, height_of_the_drain, height_of_the_outlet, outlet_of,
};
use crate::source::Spanned;
use crate::vocabulary::supply::{Drain, Worded, is_none};
use crate::vocabulary::{Kind, Mention};

use super::RoughIn;

/// What the words of the drain at a toilet's opening tell otherwise than it wants, or do not tell.
pub(super) fn judge(fitted: &Placement<'_>) -> Option<Remark> {
    fitted.selection.kind.get().filter(|kind| **kind == Kind::Toilet)?;
    let there = fitted.opening.service.drain.spanned().filter(|there| !is_none(&there.words))?;
    let wants = outlet_of(fitted.selection, fitted.option)?;
    match there.is.goes {
        Some(goes) if goes != wants => goes_elsewhere(fitted, wants, there),
        _ => unsaid(fitted, wants, there),
    }
}

fn goes_elsewhere(fitted: &Placement<'_>, wants: OutletGoes, there: &Spanned<Worded<Drain>>) -> Option<Remark> {
    let (selection, option) = (fitted.selection, fitted.option);
    if goes_either_way(selection, option) {
        return None;
    }
    let is_bent = || option.accessories.iter().any(|with| Mention::PipeBend.is_in(&with.name.value));
    // Of one that stands on the floor a bend leads the outlet down.
    let severity = match wants {
        OutletGoes::ThroughTheWall if hangs_on_the_wall(selection, option) => Severity::Stop,
        OutletGoes::ThroughTheWall if is_bent() => return None,
        OutletGoes::ThroughTheWall => Severity::Query,
        OutletGoes::IntoTheFloor => Severity::Stop,
    };
    let (goes, is) = match wants {
        OutletGoes::ThroughTheWall => ("through the wall", "in the floor"),
        OutletGoes::IntoTheFloor => ("into the floor", "in the wall"),
    };
    let message = phrase!(
        "the outlet of `{}` goes {goes}, and its drain is {is} (`{}`)",
        selection.name.value,
        goes,
        is,
        there.words
    );
    let finding = fitted.finding(severity, there.span, message);
    let finding = if severity == Severity::Query { finding.source("common practice") } else { finding };
    Some(finding.remedy("have the pipe moved before floor and wall are closed, or order the model for what is there"))
}

/// It wants its drain somewhere, and nobody says where that is.
fn unsaid(fitted: &Placement<'_>, wants: OutletGoes, there: &Spanned<Worded<Drain>>) -> Option<Remark> {
    let name = &fitted.selection.name.value;
    let is_known = is_known(fitted.opening, wants);
    let (message, remedy) = match wants {
        OutletGoes::IntoTheFloor => {
            let hangs = hangs_on_the_wall(fitted.selection, fitted.option);
            RoughIn::wanted(fitted.option).filter(|_| !is_known && !hangs)?;
            (
                phrase!(
                    "nobody says how far from the finished wall the drain for `{name}` is (`{}`)",
                    name,
                    there.words
                ),
                "measure it to the centre of the flange and add it at the opening: `hollow: {rough-in: …}`",
            )
        }
        OutletGoes::ThroughTheWall => {
            height_of_the_outlet(fitted.option).filter(|_| !is_known)?;
            (
                phrase!("nobody says how high in the wall the drain for `{name}` is (`{}`)", name, there.words),
                "measure its centre from the finished floor and add it to the opening's `drain`: `… AFF`",
            )
        }
    };
    let wanted = match wants {
        OutletGoes::IntoTheFloor => fitted.option.length(DetailName::RoughIn).map(|(_, at)| at),
        OutletGoes::ThroughTheWall => height_of_the_outlet(fitted.option).map(|(_, at)| at),
    };
    let finding = fitted.finding(Severity::Query, there.span, message).remedy(remedy);
    Some(match wanted {
        Some(at) => finding.also(at, "needs this"),
        None => finding,
    })
}

fn is_known(opening: &Opening, wants: OutletGoes) -> bool {
    let is_unread = opening.hollow.is_faulty() || opening.points.is_faulty();
    is_unread
        || match wants {
            OutletGoes::IntoTheFloor => RoughIn::there(opening).is_some() || has_unread_rough_in(opening),
            OutletGoes::ThroughTheWall => height_of_the_drain(opening).is_some(),
        }
}

fn has_unread_rough_in(opening: &Opening) -> bool {
    opening.hollow.get().is_some_and(|hollow| hollow.rough_in.is_faulty())
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn toilet(there: &str, own: &str) -> Trial {
        Trial::of("fit/rough-in")
            .opening("place", &format!("{{takes: toilet, service: {{drain: '{there}'}}}}"))
            .selection("selection: WC\nkind: toilet\nplace: place", own)
    }

    const HUNG: &str = "mount: wall-hung\noutlet height: 220 mm";
    const FLOOR: &str = "rough-in: 12\"";

    /// Source: arithmetic of what meets what; trade reports F-77.
    #[test]
    fn an_outlet_in_the_wall_meets_no_drain_in_the_floor() {
        toilet("110 mm soil through the floor", HUNG)
            .finds("the outlet of `WC` goes through the wall, and its drain is in the floor (`110 mm soil through the floor`)")
            .weighs("stop")
            .cautions();
        for floor in ["floor outlet", "S-trap to floor, 110 mm", "110 mm, salida a suelo", "DN 100, senkrecht"] {
            toilet(floor, HUNG).finds_one().weighs("stop");
            // A bend leads the outlet of one that stands down to the floor.
            toilet(floor, "description: back-to-wall, P-trap\noutlet height: 180 mm").finds_one().weighs("query");
            toilet(floor, "outlet height: 180 mm\naccessories: [{name: turned pan connector}]").stays_silent();
            toilet(floor, "outlet height: 180 mm\naccessories: [{name: 90° bent connector}]").stays_silent();
            // A straight one leads on through the wall.
            toilet(floor, "outlet height: 180 mm\naccessories: [{name: pan connector}]").finds_one().weighs("query");
        }
        for wall in
            ["rear outlet, 4\" AFF", "3\" closet flange in the wall", "110 mm, salida a pared", "DN 90 waagerecht"]
        {
            toilet(wall, FLOOR).finds_one().weighs("stop");
        }
        toilet("110 mm soil in the wall, 220 mm AFF", HUNG).stays_silent();
        toilet("3\" closet flange, 12\" from the finished wall", FLOOR).stays_silent();
        toilet(
            "110 mm, salida a suelo",
            "rough-in: 180 mm\noutlet height: 180 mm\nfit: {needs: {drain: salida a pared}}",
        )
        .finds_one()
        .weighs("query");
        toilet("110 mm, through the floor", "rough-in: 180 mm\noutlet height: 180 mm").stays_silent();
        toilet("110 mm through the floor, 12\" rough-in", "description: P-trap or S-trap\nrough-in: 12\"")
            .stays_silent();
    }

    /// Source: trade reports F-77: what nobody measured is found when the tank does not go in.
    #[test]
    fn where_the_drain_is_is_asked_where_its_words_do_not_tell() {
        toilet("3\" closet flange", FLOOR)
            .finds("nobody says how far from the finished wall the drain for `WC` is (`3\" closet flange`)")
            .weighs("query")
            .cautions();
        toilet("3\" flange, rough-in to be checked", FLOOR).finds_one();
        toilet("110 mm soil", HUNG)
            .finds("nobody says how high in the wall the drain for `WC` is (`110 mm soil`)")
            .weighs("query");
        toilet("110 mm soil at 220 mm", HUNG).stays_silent();
        Trial::of("fit/rough-in")
            .opening("place", "{takes: toilet, service: {drain: '3\" closet flange'}, hollow: {rough-in: 12\"}}")
            .selection("selection: WC\nkind: toilet\nplace: place", FLOOR)
            .stays_silent();
    }
}
