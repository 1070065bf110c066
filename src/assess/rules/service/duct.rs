//! The duct at an opening against what the thing needs.

mod elsewhere;
mod made;

use super::{ServiceNeed, asked};
use crate::assess::codes::{DRYER_DUCT, metric};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::book::Service;
use crate::finding::{Remark, Severity, Value, phrase};
use crate::site::Placement;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::supply::{Airflow, Duct, Section, is_no_duct};
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// The duct is narrower or longer than the thing allows
    ///
    /// ## What it checks
    /// The duct's size against the maker's sheet: of all sizes that its words name the narrowest counts, since
    /// a reduction anywhere chokes the fan; a rectangle by its area. Where a hood's sheet names none, against
    /// the usual duct for its airflow: {6"} up to {400 cfm}, {7"} to {600 cfm}, {8"} to {1000 cfm}, {10"} beyond. And its length
    /// against the most that the sheet allows, less what it takes off for each bend; where a dryer's sheet does not say
    /// that and bends would count, it is asked. What it is made of: flexible or of plastic, where the sheet asks for a
    /// rigid one or one of metal, or at a dryer; of a hood a flexible one, and where the code counts one of plastic. Air
    /// that ends in an attic or another hollow of the house, that is led into a flue, or into a duct of something else. Where a
    /// dryer's sheet names no length, the code's {35'}
    /// count, less {5'} for each tight bend of 90° and {2.5'} for each of 45°.
    ///
    /// ## Why it matters
    /// A choked hood is loud and leaves the smoke; a long dryer duct fills with lint and burns.
    ///
    /// ## Remedy
    /// Plan a larger or shorter duct while the framing is open, or choose a fan for this one.
    ///
    /// ## Example
    /// ```yaml
    /// service: {duct: "6\" round, 20 ft"}     # the sheet asks 8"
    /// ```
    ///
    /// ## Source
    /// The maker's sheet; IRC M1502.4.6 (35 ft; 25 ft before 2009); M1502.3, M1502.4.1, M1503.3 and M1504.3 (smooth metal,
    /// air led outdoors) from memory; by airflow, common practice.
    "service/duct", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: [Hood, Dryer, Fan],
    sources: ["the maker's sheet", "IRC M1502.4.6", "IRC M1502.3, M1502.4.1, M1503.3, M1504.3 (from memory)", "common practice"],
    caution: Some(Hazard::Air),
    remedy: "plan a larger or shorter duct while the framing is open, or choose a fan for this one",
    Check::Book(check)
}

/// What a tight bend of 90° takes off a dryer's duct (IRC M1502.4.6).
const BEND: Length = Length::from_inches(60);
/// What a bend of 45° takes off it.
const HALF_BEND: Length = Length::from_inches(30);

/// The usual round duct for a hood's airflow: cubic feet a minute up to which each size serves (trade
/// reports, table of typical figures; common practice).
const USUAL: [(u32, Length); 4] = [
    (400, Length::from_inches(6)),
    (600, Length::from_inches(7)),
    (1000, Length::from_inches(8)),
    (u32::MAX, Length::from_inches(10)),
];

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    findings.extend(context.site.fitted().filter_map(|fitted| against_airflow(context, &fitted)));
    for asked in asked(context, |needs| &needs.duct, |service| &service.duct) {
        if is_no_duct(&asked.needs.words) {
            continue;
        }
        findings.extend(judge(context, &asked));
    }
    findings.extend(context.site.connected().filter_map(|fitted| elsewhere::judge(&fitted)));
    findings.extend(context.site.connected().filter_map(|fitted| made::of_a_hood(context, &fitted)));
}

/// The duct against the air that a hood moves, where its sheet names no size.
fn against_airflow(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let of_sheet = fitted.option.fit.get().and_then(|fit| fit.needs.duct.get());
    let is_told = of_sheet.is_some_and(|duct| duct.is.pipe.narrowest.is_some());
    if is_told || !fitted.selection.is(Kind::Hood) {
        return None;
    }
    let there = fitted.opening.service.duct.spanned()?;
    let (airflow, at) = fitted.option.understood::<Option<Airflow>>()?;
    let (Airflow(moves), is) = ((*airflow)?, there.is.pipe.narrowest?);
    let (_, usual) = USUAL.iter().find(|(most, _)| moves <= *most)?;
    let Section::Round(across) = is else { return narrow(context, fitted, (moves, at), (is, there.span), *usual) };
    let usual = metric::advised(*usual, across, context.book.project.units);
    narrow(context, fitted, (moves, at), (is, there.span), usual)
}

fn narrow(
    context: &Context<'_>,
    fitted: &Placement<'_>,
    (moves, at): (u32, Span),
    (is, there): (Section, Span),
    usual: Length,
) -> Option<Remark> {
    let say = |length| say(length, context.book.project.units);
    let message = phrase!(
        "`{}` moves {moves} cfm, for which a duct of {} is usual, and there is one of {}",
        fitted.selection.name.value,
        moves,
        say(usual),
        is.say(say)
    );
    is.is_narrower_than(Section::Round(usual)).then(|| {
        let finding = fitted.finding(Severity::Query, there, message).also(at, "moves so much");
        finding.source("common practice")
    })
}

fn judge(context: &Context<'_>, asked: &ServiceNeed<'_, Duct>) -> Option<Remark> {
    if let Some(absent) = asked.absent(Service::Duct) {
        return Some(absent);
    }
    let there = asked.there?;
    let say = |length| say(length, context.book.project.units);
    let name = &asked.fitted.selection.name.value;
    let (needs, has) = (asked.needs.is, there.is);
    match (needs.pipe.narrowest, has.pipe.narrowest) {
        (Some(wants), Some(is)) if is.is_narrower_than(wants) => {
            let message =
                phrase!("`{name}` needs a {} duct, and there is one of {}", name, wants.say(say), is.say(say));
            return Some(asked.finding(Severity::Stop, message));
        }
        // Words of which nothing at all is understood are asked for by `complete/site`.
        (Some(wants), None) if there.is_understood() => {
            let message = phrase!("`{name}` needs a {} duct, and nobody says how wide it is", name, wants.say(say));
            return Some(
                asked.finding(Severity::Query, message).remedy("measure it, and write its size with its unit"),
            );
        }
        _ => {}
    }
    made::otherwise(context, asked, needs, has).or_else(|| too_long(context, asked, needs, has))
}

/// A duct that is longer than the sheet or the code allows, with its bends.
fn too_long(context: &Context<'_>, asked: &ServiceNeed<'_, Duct>, needs: Duct, has: Duct) -> Option<Remark> {
    let say = |length| say_room(length, context.book.project.units);
    let name = &asked.fitted.selection.name.value;
    let is_dryer = asked.fitted.selection.is(Kind::Dryer);
    let Some(run) = has.pipe.run else {
        let most = needs.pipe.run.filter(|_| has.pipe.narrowest.is_some())?;
        let message = phrase!(
            "the sheet of `{name}` allows a duct of {} at most, and nobody says how long it is",
            name,
            say(most)
        );
        return Some(
            asked
                .finding(Severity::Query, message)
                .remedy("measure it along its way, and write its length and its bends"),
        );
    };
    if let Some(most) = needs.pipe.run {
        return over_the_sheet(asked, (needs, most), (has, run), say);
    }
    if !is_dryer {
        return None;
    }
    let whole = context.rulings().length(&DRYER_DUCT)?;
    let off = BEND.times(i64::from(has.pipe.bends)) + HALF_BEND.times(i64::from(has.pipe.half_bends));
    let most = whole.value - off;
    let message = || {
        let with = if off > Length::ZERO { " with its bends" } else { "" };
        phrase!(
            "the duct of `{name}` is {} long, {} more than the {} that the code allows{with}",
            name,
            say(run),
            say(run - most),
            say(most),
            with
        )
    };
    (run > most).then(|| asked.finding(whole.severity, message()).source(whole.source.clone()))
}

/// A duct against the length that its sheet allows, less what its bends take off.
fn over_the_sheet(
    asked: &ServiceNeed<'_, Duct>,
    (needs, most): (Duct, Length),
    (has, run): (Duct, Length),
    say: impl Fn(Length) -> Value,
) -> Option<Remark> {
    let name = &asked.fitted.selection.name.value;
    let is_dryer = asked.fitted.selection.is(Kind::Dryer);
    let bends = has.pipe.bends.saturating_sub(needs.pipe.bends);
    let halves = has.pipe.half_bends.saturating_sub(needs.pipe.half_bends);
    let off = |bend: Length| bend.times(i64::from(bends)) + bend.times(i64::from(halves)).half();
    let by_sheet = needs.off_for_bend.map(off).unwrap_or_default();
    if run > most - by_sheet {
        let with = if by_sheet > Length::ZERO && run <= most { " with its bends" } else { "" };
        let message = phrase!(
            "the duct of `{name}` is {} long, {} more than its sheet allows{with}",
            name,
            say(run),
            say(run - (most - by_sheet)),
            with
        );
        return Some(asked.finding(Severity::Stop, message));
    }
    if is_dryer && needs.off_for_bend.is_none() && needs.pipe.bends > 0 && bends > 0 {
        let message = phrase!(
            "the duct of `{name}` has {} bends, and the length that its sheet allows is one with {}",
            name,
            has.pipe.bends,
            needs.pipe.bends
        );
        let remedy = "read the sheet's table of lengths and bends, and write it: `at most …, less … for each bend`";
        return Some(asked.finding(Severity::Query, message).remedy(remedy));
    }
    // A maker's length is that of a straight duct, unless the sheet counts its bends.
    let usual = off(BEND);
    let counts = needs.off_for_bend.is_some() || needs.pipe.bends > 0;
    let is_reckoned = is_dryer || asked.fitted.selection.is(Kind::Hood);
    (!counts && is_reckoned && run > most - usual).then(|| {
        let message = phrase!(
            "the duct of `{name}` is {} long with {} bends, and nobody says what its sheet takes off the {} for them",
            name,
            say(run),
            has.pipe.bends + has.pipe.half_bends,
            say(most)
        );
        let remedy = "read the sheet's table of lengths and bends, and write it: `at most …, less … for each bend`";
        asked.finding(Severity::Query, message).remedy(remedy).source("IRC M1502.4.6 for the usual bend")
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn thing(kind: &str, there: &str, needs: &str) -> Trial {
        Trial::of("service/duct")
            .opening("hole", &format!("{{takes: {kind}, service: {{duct: '{there}'}}}}"))
            .selection(
                &format!("selection: It\nkind: {kind}\nplace: hole"),
                &format!("fit: {{needs: {{duct: '{needs}'}}}}"),
            )
    }

    /// Source: trade reports section 7 (duct: 6" up to 400 cfm, 8" beyond; at most 30 ft).
    #[test]
    fn a_duct_that_is_narrower_or_longer_than_the_sheet_allows_stops() {
        thing("hood", "6\" round, 10 ft", "8\" round, at most 30 ft")
            .finds("`It` needs a 8\" (203 mm) duct, and there is one of 6\" (152 mm)")
            .weighs("stop")
            .cautions();
        thing("hood", "8\" round, 31 ft", "8\" round, at most 30 ft").finds_one();
        thing("hood", "8\" round, 30 ft", "8\" round, at most 30 ft").stays_silent();
        thing("hood", "8\" round, 26 ft, four elbows", "8\" round, at most 30 ft").finds_one().weighs("query");
        thing("hood", "8\" round, 9 ft, four elbows", "8\" round, at most 30 ft").stays_silent();
        for reducer in ["8x6 reducer at the roof cap", "8-to-6 reducer", "reduced to six inch at the cap"] {
            thing("hood", &format!("8\" round, 10 ft, {reducer}"), "8\" round, at most 30 ft")
                .finds_one()
                .weighs("stop");
        }
    }

    /// Source: nominal sizes of round duct, 8" beside DN 200 and 6" beside DN 150 (from memory).
    #[test]
    fn a_duct_named_in_rounded_millimetres_is_the_one_named_in_inches() {
        thing("hood", "200 mm round, 3 m", "8\" round").stays_silent();
        thing("hood", "150 mm round, 3 m", "6\" round").stays_silent();
        thing("hood", "150 mm round, 3 m", "8\" round").finds_one();
        thing("dryer", "100 mm rigid, 3 m", "4\" rigid").stays_silent();
    }

    /// Source: check values IR-48: two bends of 90° and one of 45° leave 22 1/2 ft; three of 90° leave 20 ft.
    #[test]
    fn bends_take_off_what_a_dryer_s_duct_may_be_long() {
        thing("dryer", "4\" rigid, 23 ft, two elbows, one bend of 45", "4\" rigid").finds_one().weighs("query");
        thing("dryer", "4\" rigid, 22 ft, two elbows, one bend of 45", "4\" rigid").stays_silent();
        thing("dryer", "4\" rigid, 20 ft, three elbows", "4\" rigid").stays_silent();
        thing("dryer", "4\" rigid, 21 ft, three elbows", "4\" rigid").finds_one();
        thing("dryer", "4\" rigid, 36 ft", "4\" rigid").book("codes: {adopts: [IRC 2018]}").finds_one().weighs("stop");
        thing("dryer", "4\" rigid, 35 ft", "4\" rigid").stays_silent();
    }

    /// Source: the maker's sheet; IRC M1502.4.1 (from memory): smooth metal for what leaves lint.
    #[test]
    fn a_flexible_duct_where_a_rigid_one_is_asked_for_stops() {
        for flexible in
            ["4\" flexible foil, 8 ft", "4\" flex, 8 ft", "4-inch semi-rigid, 8 ft", "4\" corrugated aluminium, 8 ft"]
        {
            thing("dryer", flexible, "4\" rigid metal, at most 25 ft")
                .finds("`It` needs a rigid duct, and there is a flexible one")
                .weighs("stop")
                .cautions();
            thing("dryer", flexible, "4\"").finds_one().weighs("query");
        }
        thing("dryer", "4\" vinyl, 8 ft", "4\" metal").finds("`It` needs a duct of metal, and there is one of plastic");
        thing("hood", "8\" flexible, 10 ft", "8\" rigid, no flexible duct").finds_one().weighs("stop");
        thing("hood", "8\" flexible, 10 ft", "8\" round").finds_one().weighs("query");
        thing("hood", "PVC, 125 mm", "125 mm galvanised steel").finds_one();
        thing("dryer", "4\", 8 ft", "4\" rigid").finds_one().weighs("query");
        thing("dryer", "4\" rigid, 8 ft, 2 ft of flex at the machine", "4\" rigid metal").finds_one().weighs("query");
        thing("dryer", "4\" galvanised, 8 ft", "4\" rigid metal").stays_silent();
        thing("dryer", "4\" flex, 8 ft", "4\"").book("codes: {adopts: [IRC 2021]}").finds_one().weighs("stop");
    }

    #[test]
    fn bends_take_off_what_the_sheet_says() {
        let sheet = "4\" rigid, at most 25 ft, less 5 ft for each 90 degree elbow";
        thing("dryer", "4\" rigid, 24 ft, three elbows", sheet)
            .finds("the duct of `It` is 24'-0\" (7315 mm) long, 14'-0\" (4267 mm) more than its sheet allows with its bends")
            .weighs("stop");
        thing("dryer", "4\" rigid, 9 ft, three elbows", sheet).stays_silent();
        thing("dryer", "4\" rigid, 24 ft, three elbows", "4\" rigid, at most 25 ft").finds_one().weighs("query");
        thing("dryer", "4\" rigid, 24 ft, two elbows", "4\" rigid, at most 25 ft with two elbows").stays_silent();
        thing("dryer", "4\" rigid, 14 ft, five 90s", "4\" rigid, at most 45 ft with two elbows")
            .finds("the duct of `It` has 5 bends, and the length that its sheet allows is one with 2")
            .weighs("query");
        thing("dryer", "4\" rigid, 14 ft, two 90s", "4\" rigid, at most 45 ft with two elbows").stays_silent();
        thing("dryer", "4\" rigid, 24 ft", "4\" rigid, at most 25 ft").stays_silent();
        thing("dryer", "4\" rigid", "4\" rigid, at most 25 ft").finds_one().weighs("query");
    }

    #[test]
    fn air_is_led_out_of_the_house() {
        thing("hood", "8\" round, ends in the attic", "8\" round").finds_one().weighs("query").cautions();
        thing("fan", "100 mm into the loft", "100 mm").finds_one();
        thing("fan", "100 mm through the loft to the roof", "100 mm").stays_silent();
        thing("hood", "8\" round, through the roof", "8\" round").stays_silent();
    }

    #[test]
    fn a_size_that_can_t_be_understood_is_asked_for() {
        thing("hood", "rigid, 20 ft", "8\" round").finds_one().weighs("query");
        thing("hood", "8-inch round, 20 ft", "8\" round").stays_silent();
        thing("hood", "6-inch round, 20 ft", "8\" round").finds_one().weighs("stop");
        thing("hood", "Ø150 mm, 3 m", "200 mm round").finds_one();
        thing("hood", "222 x 89 mm flat channel", "150 mm round").stays_silent();
        thing("hood", "204 x 60 mm flat channel", "150 mm round").finds_one().weighs("stop");
    }

    #[test]
    fn every_size_that_the_words_name_counts() {
        for there in ["8\" round, reduced to 6\" at the wall", "8\" round, 10 ft, 6\" roof cap", "6\" then 8\""] {
            thing("hood", there, "8\" round").finds("`It` needs a 8\" (203 mm) duct, and there is one of 6\" (152 mm)");
        }
        thing("hood", "8\" round, 10\" at the roof", "8\" round").stays_silent();
        thing("hood", "3 1/4\" x 10\"", "6\" round").stays_silent();
        thing("hood", "3 1/4\" x 10\"", "8\" round").finds_one();
    }

    /// Source: trade reports, typical figures (up to 350–400 cfm a duct of 6", up to 900–1000 one of 8").
    #[test]
    fn where_the_sheet_is_silent_the_usual_duct_for_the_airflow_is_asked_about() {
        let hood = |there: &str, moves: &str, sheet: &str| {
            Trial::of("service/duct")
                .opening("hole", &format!("{{takes: hood, service: {{duct: '{there}'}}}}"))
                .selection("selection: Hood\nkind: hood\nplace: hole", &format!("airflow: {moves}\n{sheet}"))
        };
        hood("6\" round", "401 cfm", "")
            .finds("`Hood` moves 401 cfm, for which a duct of 7\" (178 mm) is usual, and there is one of 6\" (152 mm)")
            .weighs("query")
            .cautions();
        hood("6\" round", "400 cfm", "").stays_silent();
        hood("8\", reduced to 6\"", "900 cfm", "").finds_one();
        hood("8\" round", "900 cfm", "").stays_silent();
        hood("6\" round", "600 cfm", "fit: {needs: {duct: '6\" round'}}").stays_silent();
        hood("150 mm round", "400 cfm", "").metric().stays_silent();
    }
}
