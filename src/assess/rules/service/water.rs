//! Water at an opening against what the thing needs.

mod mixer;
mod valve;

use super::{ServiceNeed, asked};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::Service;
use crate::finding::{Remark, Severity, phrase};
use crate::site::Placement;
use crate::source::Spanned;
use crate::units::{Length, Wrote};
use crate::vocabulary::supply::{Valve, Water, Worded, is_smaller};
use crate::vocabulary::{Hazard, Kind};

declare! {
    /// The water line is smaller, of the wrong kind, or without its shut-off
    ///
    /// ## What it checks
    /// The line at the opening against the maker's sheet: its size (at least the sheet's), hot and cold
    /// where the sheet asks for them, and a shut-off where it asks for one. Where nobody tells of it, it asks;
    /// where it is told not to be there (`none`, `shut-off missing`), it stops, and where its words can't be read, it asks.
    /// A pipe goes by its nominal size, in inches or by its outside; the size that a hose has is its thread. A shut-off
    /// that is told to be missing is asked about though no sheet asks for it, at whatever is no tub or shower; and so is
    /// a bowl whose tap mixes, with only hot or only cold at its opening, or no water beside its drain.
    ///
    /// ## Why it matters
    /// A dishwasher on cold water washes badly and a refrigerator without a valve can't be taken out.
    ///
    /// ## Remedy
    /// Have a plumber run or change the line before the wall is closed.
    ///
    /// ## Example
    /// ```yaml
    /// service: {water: "3/8\" cold"}     # the sheet asks hot
    /// ```
    ///
    /// ## Source
    /// The maker's sheet and the field measurement; names of pipes and hoses from memory (EN 1057, IEC 61770).
    "service/water", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: piped,
    sources: ["the maker's sheet", "the field measurement"],
    caution: Some(Hazard::Water),
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for asked in asked(context, |needs| &needs.water, |service| &service.water) {
        if let Some(absent) = asked.absent(Service::Water) {
            findings.push(absent);
            continue;
        }
        findings.extend(judge(context, &asked));
    }
    findings.extend(context.site.connected().filter_map(|fitted| valve::missing(&fitted)));
    findings.extend(context.site.connected().filter_map(|fitted| mixer::judge(&fitted)));
    findings.extend(context.site.options().filter_map(mixer::behind_a_vanity));
}

fn judge(context: &Context<'_>, asked: &ServiceNeed<'_, Water>) -> Option<Remark> {
    let there = asked.there?;
    let name = &asked.fitted.selection.name.value;
    let (needs, has) = (asked.needs.is, there.is);
    let told = has.hot || has.cold;
    // A dishwasher has one hose: a sheet that names both lets it be either.
    let has_one_hose = asked.fitted.selection.is_any(&[Kind::Dishwasher, Kind::PanelDishwasher]);
    let either = needs.hot && needs.cold && (needs.either || has_one_hose);
    let wants_valve = needs.valve == Some(Valve::There);
    let size = needs.size.filter(|size| !(takes_a_hose(&asked.fitted) && is_usual_hose(*size, has.size)));
    let fault = match (size, has.size) {
        (Some(needs), Some(has)) if is_smaller(has, needs) => {
            let say = |length| say(length, context.book.project.units);
            phrase!("`{name}` needs a {} water line, and there is one of {}", name, say(needs), say(has))
        }
        _ if told && needs.hot && !has.hot && !either => {
            phrase!("`{name}` needs hot water, and the line is cold", name)
        }
        _ if told && needs.cold && !has.cold && !either => {
            phrase!("`{name}` needs cold water, and the line is hot", name)
        }
        _ if wants_valve && has.valve == Some(Valve::NotThere) => {
            phrase!("`{name}` needs a shut-off, and there is none at the opening", name)
        }
        // Words that nobody here reads may name it: they are no word that it is missing.
        _ if wants_valve && has.valve.is_none() && (has.unread || !there.is_understood()) => {
            return Some(unread(asked, there));
        }
        _ if has.unread && (needs.hot || needs.cold) && !told => return Some(unread(asked, there)),
        _ if wants_valve && has.valve.is_none() => {
            phrase!("`{name}` needs a shut-off, and none is told at the opening", name)
        }
        _ => return None,
    };
    let finding = asked.finding(Severity::Stop, fault);
    Some(finding.remedy("have a plumber run or change the line before the wall is closed"))
}

/// What is written may name the valve, or hot and cold, in words that are not read.
fn unread(asked: &ServiceNeed<'_, Water>, there: &Spanned<Worded<Water>>) -> Remark {
    let message = phrase!(
        "`{}` needs water ({}), and what is written of it at the opening `{}` can't be understood: `{}`",
        asked.fitted.selection.name.value,
        Wrote(&asked.needs.words),
        asked.fitted.opening.name.value,
        there.words
    );
    asked.finding(Severity::Query, message).remedy(
        "write at the opening what is there, `service: {water: …}`: its size, `hot` or `cold`, and `with shut-off` or \
         `no shut-off`",
    )
}

/// Whether it is connected by a hose, whose thread its sheet names.
fn takes_a_hose(fitted: &Placement<'_>) -> bool {
    fitted.selection.is_any(&[Kind::Washer, Kind::Dishwasher, Kind::PanelDishwasher])
}

/// The thread of such a hose, and the least line that its valve stands on (IEC 61770 and common practice, from memory).
const HOSE: Length = Length::from_sixty_fourths(48);
const LINE_OF_A_HOSE: Length = Length::from_sixty_fourths(32);

fn is_usual_hose(asked: Length, there: Option<Length>) -> bool {
    asked == HOSE && there.is_some_and(|there| !is_smaller(there, LINE_OF_A_HOSE))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn dishwasher(there: &str, needs: &str) -> Trial {
        Trial::of("service/water")
            .opening("hole", &format!("{{takes: dishwasher, service: {{water: '{there}'}}}}"))
            .selection("selection: It\nkind: dishwasher\nplace: hole", &format!("fit: {{needs: {{water: '{needs}'}}}}"))
    }

    /// Source: the maker's sheet, in the trade's words (3/8" hot with a shut-off).
    #[test]
    fn a_smaller_line_cold_for_hot_and_a_missing_valve_stop() {
        dishwasher("1/4\" hot", "3/8\" hot").finds_one().weighs("stop").cautions();
        dishwasher("3/8\" cold", "3/8\" hot").finds("`It` needs hot water, and the line is cold");
        dishwasher("3/8\" hot", "3/8\" hot with shut-off").finds_one();
        dishwasher("1/2\" hot and cold with shut-off", "3/8\" hot with shut-off").stays_silent();
        for either in ["hot or cold, 3/4\" BSP hose", "hot/cold", "cold; may be connected to hot up to 60 °C"] {
            dishwasher("1/2\" cold", either).stays_silent();
            dishwasher("1/2\" hot", either).stays_silent();
        }
        let washer = |needs: &str| {
            Trial::of("service/water")
                .opening("hole", "{takes: washer, service: {water: '1/2\" cold'}}")
                .selection("selection: It\nkind: washer\nplace: hole", &format!("fit: {{needs: {{water: '{needs}'}}}}"))
        };
        washer("hot and cold").finds("`It` needs hot water, and the line is cold");
        for either in ["hot or cold", "cold (hot optional)"] {
            washer(either).stays_silent();
        }
        dishwasher("3/8\"", "3/8\" hot").stays_silent();
        for valve in ["shutoff valve", "Shut-off", "stopcock", "isolating valve", "angle stop"] {
            dishwasher(&format!("3/8\" hot, {valve}"), "3/8\" hot with shut-off").stays_silent();
        }
        dishwasher("3/8\" hot, no shut-off", "3/8\" hot with shut-off").finds_one();
        dishwasher("3/8\" Cold", "3/8\" Hot").finds_one();
    }

    /// A word that can't be read is no word that something is missing.
    #[test]
    fn words_of_other_languages_are_read_or_asked_again() {
        let needs = "cold with shut-off";
        dishwasher("toma de agua fría 3/4\" con llave de corte", needs).stays_silent();
        dishwasher("toma de agua caliente 3/4\", sin llave", needs).finds_one().weighs("stop");
        dishwasher("vannuttak 3/4\"", needs)
            .finds("`It` needs water (cold with shut-off), and what is written of it at the opening `hole` can't be understood: `vannuttak 3/4\"`")
            .weighs("query")
            .cautions()
            .points_at(&["rooms/kitchen/room.yaml:3:46"]);
        for missing in ["shut-off missing", "shut-off still to come", "stopcock seized", "no isolator yet"] {
            dishwasher(&format!("3/8\" cold, {missing}"), needs).finds_one().weighs("stop");
        }
        dishwasher("3/8\" cold, stopcock in the sink base", needs).stays_silent();
    }

    /// Source: EN 1057 and IEC 61770, from memory: 15 mm is 1/2", and a hose has a thread of 3/4".
    #[test]
    fn a_line_goes_by_its_nominal_size_and_a_hose_by_its_thread() {
        dishwasher("15 mm cold", "3/4\" BSP hose, cold").stays_silent();
        dishwasher("15 mm cold", "3/4\" cold").stays_silent();
        dishwasher("1/2\" cold", "15 mm cold").stays_silent();
        dishwasher("10 mm cold", "15 mm cold").finds_one().weighs("stop");
        dishwasher("10 mm cold", "3/4\" cold").finds_one().weighs("stop");
    }

    #[test]
    fn what_nobody_wrote_is_asked_and_what_is_not_there_stops() {
        Trial::of("service/water")
            .opening("hole", "{takes: dishwasher}")
            .selection("selection: It\nkind: dishwasher\nplace: hole", "fit: {needs: {water: '3/8\" hot'}}")
            .finds("`It` needs water (3/8\" hot), and nothing is told of it at the opening `hole`")
            .weighs("query")
            .points_at(&["rooms/kitchen/room.yaml:3:3"]);
        dishwasher("none", "3/8\" hot")
            .finds("`It` needs water (3/8\" hot), and there is none at the opening `hole`")
            .weighs("stop");
        Trial::of("service/water")
            .opening("hole", "{takes: dishwasher, service points: {water: {height: 8\"}}}")
            .selection("selection: It\nkind: dishwasher\nplace: hole", "fit: {needs: {water: '3/8\" hot'}}")
            .stays_silent();
    }
}
