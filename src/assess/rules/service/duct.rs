//! The duct at an opening against what the thing needs.

use super::{ServiceNeed, asked};
use crate::assess::codes::{DRYER_DUCT, metric};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_room};
use crate::book::Service;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::supply::{Airflow, Pipe, Section, is_no_duct};
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// The duct is narrower or longer than the thing allows
    ///
    /// ## What it checks
    /// The duct's size against the maker's sheet: of all sizes that its words name the narrowest counts, since
    /// a reduction anywhere chokes the fan; a rectangle by its area. Where a hood's sheet names none, against
    /// the usual duct for its airflow: {6"} up to {400 cfm}, {7"} to {600 cfm}, {8"} to {1000 cfm}, {10"} beyond. And its length
    /// against the most that the sheet allows. Where a dryer's sheet names no length, the code's {35'}
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
    /// The maker's sheet; IRC M1502.4.6 (35 ft; 25 ft before 2009); by airflow, common practice.
    "service/duct", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: [Hood, Dryer, Fan],
    sources: ["the maker's sheet", "IRC M1502.4.6", "common practice"],
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
}

/// The duct against the air that a hood moves, where its sheet names no size.
fn against_airflow(context: &Context<'_>, fitted: &Placement<'_>) -> Option<Remark> {
    let of_sheet = fitted.option.fit.get().and_then(|fit| fit.needs.duct.get());
    let is_told = of_sheet.is_some_and(|duct| duct.is.narrowest.is_some());
    if is_told || !fitted.selection.is(Kind::Hood) {
        return None;
    }
    let there = fitted.opening.service.duct.spanned()?;
    let (airflow, at) = fitted.option.understood::<Option<Airflow>>()?;
    let (Airflow(moves), is) = ((*airflow)?, there.is.narrowest?);
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

fn judge(context: &Context<'_>, asked: &ServiceNeed<'_, Pipe>) -> Option<Remark> {
    if let Some(absent) = asked.absent(Service::Duct) {
        return Some(absent);
    }
    let there = asked.there?;
    let say = |length| say(length, context.book.project.units);
    let name = &asked.fitted.selection.name.value;
    let (needs, has) = (asked.needs.is, there.is);
    let both = needs.narrowest.zip(has.narrowest);
    if let Some((wants, is)) = both.filter(|(wants, is)| is.is_narrower_than(*wants)) {
        let message = phrase!("`{name}` needs a {} duct, and there is one of {}", name, wants.say(say), is.say(say));
        return Some(asked.finding(Severity::Stop, message));
    }
    let run = has.run?;
    let say = |length| say_room(length, context.book.project.units);
    if let Some(most) = needs.run {
        let message = || {
            phrase!("the duct of `{name}` is {} long, {} more than its sheet allows", name, say(run), say(run - most))
        };
        return (run > most).then(|| asked.finding(Severity::Stop, message()));
    }
    if !asked.fitted.selection.is(Kind::Dryer) {
        return None;
    }
    let whole = context.rulings().length(&DRYER_DUCT)?;
    let off = BEND.times(i64::from(has.bends)) + HALF_BEND.times(i64::from(has.half_bends));
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
