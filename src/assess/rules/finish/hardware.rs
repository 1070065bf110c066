//! Pulls and knobs against doors and drawers.

use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say};
use crate::book::{DetailName, FitsFronts, Part, ProductOption, Room, Selection};
use crate::finding::{Remark, Severity, phrase};
use crate::source::{Span, Spanned};
use crate::units::{Length, Quantity};
use crate::vocabulary::{Kind, Slot};

declare! {
    /// Too few pulls or knobs for the fronts, or screws that do not suit them
    ///
    /// ## What it checks
    /// In a room whose cabinets say what their `fronts` take: pulls and knobs, by what each `fits`,
    /// against doors and drawers. Short of the count stops; less than one in twenty to spare is a
    /// query. The panel of a dishwasher or a refrigerator is opened by one too. Where no cabinet says so, the doors and drawers of runs and islands, one each: a query. Their `screws` against the thickness that these go through: too short to come out
    /// behind stops; less than {1/8"} or more than {3/8"} in the metal is a query.
    ///
    /// ## Why it matters
    /// One pull short is found by the last man on the last day; the next one comes from another batch
    /// of finish, in weeks.
    ///
    /// ## Remedy
    /// Order by the fronts, one in twenty more; have screws cut or ordered to length.
    ///
    /// ## Example
    /// ```yaml
    /// fronts: {doors: 6, drawers: 14, thickness: 3/4"}     # at the cabinets
    /// ---
    /// quantity: 14                                         # at the pulls: none to spare
    /// ```
    ///
    /// ## Source
    /// Trade practice: 5 to 10 % to spare, {1"} screws for a {3/4"} front, about {3/8"} in the metal.
    "finish/hardware", Stop,
    due: WithThing, tells: [],
    judges: [Cabinet, Pull, Knob],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// The least and the most that a screw reaches into a pull (common practice).
const IN_THE_METAL: (Length, Length) = (Length::from_sixty_fourths(8), Length::from_sixty_fourths(24));

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let fronts: Vec<&ProductOption> = cabinets(room).collect();
        findings.extend(counts(room, &fronts).into_iter().chain(by_the_plan(room, &fronts)));
        findings.extend(fewer_than_planned(room, &fronts));
        findings.extend(panels(room, &fronts));
        let thickness = fronts.iter().filter_map(|option| option.fronts.thickness.get()).max();
        let Some(thickness) = thickness else { continue };
        for (selection, option) in hardware(room) {
            findings.extend(screws(context, room, selection, option, *thickness));
        }
    }
}

fn cabinets(room: &Room) -> impl Iterator<Item = &ProductOption> {
    let is_cabinet = |selection: &&Selection| selection.is(Kind::Cabinet);
    room.selections.iter().filter(is_cabinet).filter_map(|selection| selection.standing().first())
}

fn hardware(room: &Room) -> impl Iterator<Item = (&Selection, &ProductOption)> {
    let is_pull = |selection: &&Selection| selection.is_any(&[Kind::Pull, Kind::Knob]);
    let pulls = room.selections.iter().filter(is_pull);
    pulls.filter_map(|selection| Some((selection, selection.standing().first()?)))
}

/// Doors, drawers, or all fronts together where a pull does not say what it fits.
fn counts(room: &Room, fronts: &[&ProductOption]) -> Vec<Remark> {
    let pulls: Vec<(&Spanned<Quantity>, FitsFronts, &Selection)> = hardware(room)
        .filter_map(|(selection, option)| {
            let fits = option.fact::<FitsFronts>().map_or(FitsFronts::DoorsAndDrawers, |(fits, _)| *fits);
            Some((option.quantity.spanned()?, fits, selection))
        })
        .collect();
    let all = |count: fn(&ProductOption) -> Option<u32>| {
        fronts.iter().filter_map(|option| count(option)).map(u64::from).sum::<u64>()
    };
    let (doors, drawers) =
        (all(|option| option.fronts.doors.get().copied()), all(|option| option.fronts.drawers.get().copied()));
    let together = pulls.iter().any(|(_, fits, _)| *fits == FitsFronts::DoorsAndDrawers);
    let groups: Vec<(FitsFronts, u64)> = match together {
        true => vec![(FitsFronts::DoorsAndDrawers, doors + drawers)],
        false => vec![(FitsFronts::Doors, doors), (FitsFronts::Drawers, drawers)],
    };
    let count = |(what, wanted): (FitsFronts, u64)| {
        let of = pulls.iter().filter(|(_, fits, _)| together || *fits == what);
        let (first, _, selection) = of.clone().next()?;
        let there = of.filter_map(|(quantity, ..)| quantity.value.whole()).fold(0, u64::saturating_add);
        short(room, selection, first, what, (wanted, doors + drawers), there)
    };
    let none_fits = |(what, wanted): (FitsFronts, u64)| {
        // Where nothing that is ordered fits any front, that has been told.
        let both = doors > 0 && drawers > 0;
        let (first, _, selection) = pulls.first().filter(|_| wanted > 0 && both && !together)?;
        let has_one = pulls.iter().any(|(_, fits, _)| *fits == what);
        (!has_one).then(|| unfitted(room, selection, first.span, what, wanted))
    };
    let bare = groups.clone().into_iter().filter_map(none_fits);
    groups.into_iter().filter_map(count).chain(bare).collect()
}

/// Doors or drawers that nothing which is ordered fits.
fn unfitted(room: &Room, selection: &Selection, at: Span, what: FitsFronts, wanted: u64) -> Remark {
    let message = phrase!("there are {wanted} {what}, and no pull or knob that is ordered fits them", wanted, what);
    let finding = Remark::query(at, message).room(&room.folder).selection(&selection.name).source("common practice");
    finding.remedy("order what they are opened by, or write what this one `fits`; where they open without, write so in the `fronts` of the cabinets: none")
}

/// What the fronts are told to take, and the plan has more of: none at all is a word that they are opened without.
fn fewer_than_planned(room: &Room, fronts: &[&ProductOption]) -> Vec<Remark> {
    let all = |slot: fn(&ProductOption) -> &Slot<u32>| {
        let told = fronts.iter().map(|option| slot(option).get().copied().map(u64::from));
        let all: u64 = told.collect::<Option<Vec<u64>>>()?.into_iter().sum();
        let at = fronts.iter().find_map(|option| slot(option).span())?;
        Some((all, at)).filter(|(all, _)| *all > 0)
    };
    let each = [
        (FitsFronts::Doors, all(|option| &option.fronts.doors), planned(room, |part| &part.doors)),
        (FitsFronts::Drawers, all(|option| &option.fronts.drawers), planned(room, |part| &part.drawers)),
    ];
    let cabinets = room.selections.iter().find(|selection| selection.is(Kind::Cabinet));
    let found = each.into_iter().filter_map(|(what, told, planned)| {
        let (told, at) = told.filter(|(told, _)| planned > *told)?;
        let message =
            phrase!("the fronts are told to be {told} {what}, and the plan has {planned}", told, what, planned);
        let finding = Remark::query(at, message).room(&room.folder).source("common practice");
        let finding = cabinets.into_iter().fold(finding, |finding, one| finding.selection(&one.name));
        Some(finding.remedy("count them again, and correct `fronts` or the plan"))
    });
    found.collect()
}

/// How many of one sort the plan has.
fn planned(room: &Room, count: fn(&Part) -> &Slot<u32>) -> u64 {
    let islands = room.islands.iter().flat_map(|island| island.sides().flat_map(|side| &side.parts));
    let parts = room.runs.iter().flat_map(|run| &run.parts).chain(islands);
    parts.map(|part| count(part).get().copied().map_or(0, u64::from)).sum()
}

/// Where no cabinet says what its fronts take: the doors and drawers of the plan, one pull or knob each.
fn by_the_plan(room: &Room, fronts: &[&ProductOption]) -> Option<Remark> {
    let said = |option: &&ProductOption| option.fronts.doors.get().is_some() || option.fronts.drawers.get().is_some();
    let pulls: Vec<_> = hardware(room).collect();
    let is_open = pulls.iter().all(|(selection, _)| selection.settled().is_some());
    if fronts.iter().any(said) || !is_open {
        return None;
    }
    let wanted = planned(room, |part| &part.doors) + planned(room, |part| &part.drawers);
    let (first, _) = pulls.first()?;
    let counted: Option<Vec<_>> = pulls.iter().map(|(_, option)| option.quantity.spanned()).collect();
    let counted = counted?;
    let there: u64 = counted.iter().filter_map(|quantity| quantity.value.whole()).fold(0, u64::saturating_add);
    let at = counted.first()?.span;
    let message =
        phrase!("{there} pulls or knobs are ordered, and the plan has {wanted} doors and drawers", there, wanted);
    (there < wanted).then(|| {
        let finding = Remark::query(at, message).room(&room.folder).selection(&first.name).source("common practice");
        finding.remedy("say what the fronts take (`fronts` at the cabinets), or order one for each and some to spare")
    })
}

/// Panels of appliances that no pull is left for: each is a front besides the doors and drawers of cabinets, unless more
/// of those are told than the plan has.
fn panels(room: &Room, fronts: &[&ProductOption]) -> Option<Remark> {
    let is_one = |selection: &&Selection| selection.is_any(&[Kind::PanelDishwasher, Kind::PanelRefrigerator]);
    let mut with_panels = room.selections.iter().filter(is_one);
    let panelled = with_panels.next()?;
    let panels = 1 + with_panels.map(|_| 1_u64).sum::<u64>();
    let told = |count: &Slot<u32>| count.get().copied().map_or(0, u64::from);
    let told: u64 = fronts.iter().map(|option| told(&option.fronts.doors) + told(&option.fronts.drawers)).sum();
    let planned = planned(room, |part| &part.doors) + planned(room, |part| &part.drawers);
    let counts_them = planned > 0 && told > planned;
    let cabinets = told.max(planned);
    let pulls: Vec<_> = hardware(room).collect();
    let (first, _) = pulls.first().filter(|_| cabinets > 0 && !counts_them)?;
    let counted: Vec<_> = pulls.iter().map(|(_, option)| option.quantity.spanned()).collect::<Option<_>>()?;
    let there: u64 = counted.iter().filter_map(|quantity| quantity.value.whole()).fold(0, u64::saturating_add);
    if there < cabinets || there >= cabinets + panels {
        return None;
    }
    let message = phrase!(
        "{there} pulls or knobs are ordered, the cabinets have {cabinets} doors and drawers, and none is left for the panel of `{}`",
        there,
        cabinets,
        panelled.name.value
    );
    let finding = Remark::query(counted.first()?.span, message).room(&room.folder).selection(&first.name);
    Some(finding.source("common practice").remedy(
        "order one for each panel too; where it opens without, or is among the `fronts` that the cabinets tell, count it there",
    ))
}

/// So few pulls are ordered without one to spare (common practice).
const FEW: u64 = 10;

fn short(
    room: &Room,
    selection: &Selection,
    quantity: &Spanned<Quantity>,
    what: FitsFronts,
    (wanted, fronts): (u64, u64),
    there: u64,
) -> Option<Remark> {
    // Of a few, none is kept: one in twenty of them is less than half of one.
    let with_spares = wanted + if wanted < FEW { 0 } else { wanted.div_ceil(20) };
    if wanted == 0 && there > 0 && fronts > 0 {
        let message = phrase!("{there} pulls or knobs are ordered for {what}, and no front takes any", there, what);
        let finding = Remark::query(quantity.span, message).room(&room.folder).selection(&selection.name);
        let remedy = "say which fronts take them (`fits` at the pull, `fronts` at the cabinets), or leave them out";
        return Some(finding.source("common practice").remedy(remedy));
    }
    if wanted == 0 || there >= with_spares {
        return None;
    }
    let (severity, message) = if there < wanted {
        (
            Severity::Stop,
            phrase!("{there} pulls or knobs are ordered for {what} that take {wanted}", there, what, wanted),
        )
    } else {
        (
            Severity::Query,
            phrase!("{there} pulls or knobs for {what} that take {wanted} leave too few to spare", there, what, wanted),
        )
    };
    let finding = Remark::new(severity, quantity.span, message).room(&room.folder);
    let remedy = phrase!("order {with_spares}: by the fronts, and one in twenty to spare", with_spares);
    Some(finding.selection(&selection.name).source("common practice").remedy(remedy))
}

fn screws(
    context: &Context<'_>,
    room: &Room,
    selection: &Selection,
    option: &ProductOption,
    thickness: Length,
) -> Option<Remark> {
    let (screws, at) = option.length(DetailName::Screws)?;
    let units = context.book.project.units;
    let reach = screws.checked_add(thickness.times(-1))?;
    let (least, most) = IN_THE_METAL;
    let (severity, what) = if reach <= Length::ZERO {
        (Severity::Stop, "do not come through")
    } else if reach < least {
        (Severity::Query, "hardly come through")
    } else if reach > most {
        (Severity::Query, "may bottom out behind")
    } else {
        return None;
    };
    let message = phrase!(
        "the screws of `{}` are {} long and {what} a front of {}",
        selection.name.value,
        say(screws, units),
        what,
        say(thickness, units)
    );
    let finding = Remark::new(severity, at, message).room(&room.folder).selection(&selection.name);
    Some(finding.source("common practice").remedy("order screws to the thickness of the fronts, and try one"))
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn kitchen(fronts: &str, pulls: &str) -> Trial {
        Trial::of("finish/hardware")
            .selection("selection: Cabinets\nkind: cabinet", &format!("fronts: {{{fronts}}}"))
            .selection("selection: Pulls\nkind: pull", pulls)
    }

    #[test]
    fn fronts_are_no_fewer_than_the_plan_has() {
        let planned = |fronts: &str| {
            kitchen(fronts, "quantity: 20").room(
                "runs: {a: {parts: [{cabinet: a, width: 30\", drawers: 7}, {cabinet: b, width: 30\", doors: 2}]}}",
            )
        };
        planned("doors: 2, drawers: 2")
            .finds("the fronts are told to be 2 drawers, and the plan has 7")
            .weighs("query")
            .points_at(&["rooms/kitchen/selection-0.yaml:3:29"]);
        planned("doors: 2, drawers: 7").stays_silent();
        // Opened without any.
        planned("doors: 0, drawers: 0").stays_silent();
        planned("doors: 4, drawers: 7").stays_silent();
    }

    /// Source: common practice: what hangs behind a panel is opened by the same pull as the doors beside it.
    #[test]
    fn the_panel_of_an_appliance_takes_a_pull_too() {
        let with = |fronts: &str, count: u32| {
            kitchen(fronts, &format!("quantity: {count}"))
                .room("runs: {row: {parts: [{cabinet: a, width: 600 mm, doors: 2}, {cabinet: b, width: 600 mm, drawers: 3}]}}")
                .selection("selection: Dishwasher\nkind: panel dishwasher", "")
        };
        let found = with("doors: 2, drawers: 3", 5).run();
        let told = found.findings().iter().map(|finding| finding.message.text());
        assert!(told.into_iter().any(|text| text.contains("none is left for the panel of `Dishwasher`")));
        with("doors: 2, drawers: 3", 6).stays_silent();
        // One more than the plan has is told of the cabinets: the panel is among them.
        with("doors: 3, drawers: 3", 7).stays_silent();
        kitchen("doors: 3, drawers: 3", "quantity: 7")
            .selection("selection: Dishwasher\nkind: dishwasher", "")
            .stays_silent();
    }

    #[test]
    fn doors_that_nothing_fits_are_asked_about() {
        kitchen("doors: 9, drawers: 13", "fits: drawers\nquantity: 20")
            .finds("there are 9 doors, and no pull or knob that is ordered fits them")
            .weighs("query");
        kitchen("doors: 9, drawers: 13", "fits: drawers\nquantity: 20")
            .selection("selection: Knobs\nkind: knob", "fits: doors\nquantity: 12")
            .stays_silent();
    }

    /// Source: trade reports F-73: not enough pulls; count all fronts, and 5 to 10 % to spare.
    #[test]
    fn pulls_are_counted_by_the_fronts_with_one_in_twenty_to_spare() {
        let pulls = |count: u32| kitchen("doors: 6, drawers: 14", &format!("quantity: {count}"));
        pulls(19).finds("19 pulls or knobs are ordered for doors and drawers that take 20").weighs("stop");
        pulls(20).finds_one().weighs("query");
        pulls(21).stays_silent();
        // Five in a small room are five.
        kitchen("drawers: 5", "quantity: 5").stays_silent();
        kitchen("drawers: 5", "quantity: 4").finds_one().weighs("stop");
    }

    #[test]
    fn knobs_for_doors_and_pulls_for_drawers_are_counted_apart() {
        let trial = |knobs: u32| {
            kitchen("doors: 6, drawers: 14", "quantity: 15\nfits: drawers")
                .selection("selection: Knobs\nkind: knob", &format!("quantity: {knobs}\nfits: doors"))
        };
        trial(7).stays_silent();
        trial(5).finds("5 pulls or knobs are ordered for doors that take 6");
        kitchen("doors: 6", "quantity: 15\nfits: drawers")
            .finds("15 pulls or knobs are ordered for drawers, and no front takes any")
            .weighs("query");
        kitchen("doors: 6, drawers: 14", "quantity: 15\nfits: drawers")
            .finds("there are 6 doors, and no pull or knob that is ordered fits them")
            .weighs("query");
    }

    /// Source: trade reports section 7: 1" for a 3/4" front, about 3/8" in the metal.
    #[test]
    fn screws_suit_the_front() {
        let screws = |length: &str| kitchen("thickness: 3/4\"", &format!("screws: {length}"));
        screws("1\"").stays_silent();
        screws("1 1/8\"").stays_silent();
        screws("3/4\"").finds_one().weighs("stop");
        screws("1 1/4\"").finds_one().weighs("query");
        screws("13/16\"").finds_one().weighs("query");
    }
}
