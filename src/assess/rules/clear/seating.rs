//! Room to pass behind those who sit at a counter or table.

use super::{Figure, Measure};
use crate::assess::Context;
use crate::assess::codes::{SEATED_EDGE, SEATED_NO_TRAFFIC, SEATED_WALK};
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{Room, Traffic};
use crate::finding::phrase;
use crate::site::distances::{Seats, seats};
use crate::units::Length;

declare! {
    /// There is too little floor behind seats
    ///
    /// ## What it checks
    /// Each place under `seating`, and each island's side with seats. Behind the seats, from the edge to
    /// whatever is there: {32"} where nobody passes, {36"} where one edges past, {44"}
    /// where one walks past, {60"} for a wheelchair. How many sit there and what
    /// their knees need is `top/seats`.
    ///
    /// ## Why it matters
    /// A chair that is pulled out stands in somebody's way at every meal.
    ///
    /// ## Remedy
    /// Move the island, or make the overhang shallower where knees allow it.
    ///
    /// ## Example
    /// ```yaml
    /// seating:
    ///   island: {behind: 43", traffic: walk past}     # 44" are advised
    /// ```
    ///
    /// ## Source
    /// Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 8.
    "clear/seating", Query,
    due: CabinetsOrdered, tells: [Client],
    living: "living.clear.seating",
    sources: ["Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 8"],
    caution: None,
    Check::Book(check)
}

const FOR_A_WHEELCHAIR: Figure =
    Figure::advised(Length::from_inches(60), "Kitchen and Bath Planning Guidelines, 2nd edition, kitchen guideline 8")
        .told("advised where somebody passes in a wheelchair");

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in &context.book.rooms {
        let measures = seats(context.site, room).into_iter().filter_map(|seats| behind(room, &seats)?.judge(context));
        findings.extend(measures);
    }
}

fn behind<'a>(room: &'a Room, seats: &Seats<'a>) -> Option<Measure<'a>> {
    let figure = match seats.traffic {
        _ if seats.wheelchair => FOR_A_WHEELCHAIR,
        Some(Traffic::WalkPast) => Figure::of(&SEATED_WALK).told("advised where one walks past"),
        Some(Traffic::EdgePast) => Figure::of(&SEATED_EDGE).told("advised where one edges past"),
        _ => Figure::of(&SEATED_NO_TRAFFIC).told("advised where nobody passes"),
    };
    Some(Measure {
        room,
        item: None,
        is: (phrase!("the floor behind the seats at `{}`", seats.name), "deep"),
        there: seats.behind?,
        advised: Some(figure),
        code: None,
        remedy: "move the island, or make the overhang shallower",
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn island(fields: &str) -> Trial {
        Trial::of("clear/seating").room(&format!("seating: {{island: {{{fields}}}}}"))
    }

    /// Source: check values KP-12, KP-13, KP-14: 32 with no traffic passes, 35 to edge past and 43 to walk past fail; 60 in a wheelchair.
    #[test]
    fn the_floor_behind_depends_on_who_passes() {
        island("behind: 32\", traffic: none").stays_silent();
        island("behind: 31\"").finds_one();
        island("behind: 36\", traffic: edge past").stays_silent();
        island("behind: 35\", traffic: edge past").finds_one();
        island("behind: 44\", traffic: walk past").stays_silent();
        island("behind: 43\", traffic: walk past")
            .finds("the floor behind the seats at `island` is 43\" (1092 mm) deep, 1\" (25.4 mm) less than the 44\" (1118 mm) advised where one walks past")
            .weighs("query");
        island("behind: 60\", wheelchair: true").stays_silent();
        island("behind: 59\", traffic: walk past, wheelchair: true").finds_one();
    }

    /// Source: check values KP-12, as the plan has it: behind an island 42 deep, 46 from one wall of a room of 10 feet, 32 are left.
    #[test]
    fn the_plan_answers_where_nobody_measured() {
        let room = |away: &str| {
            Trial::of("clear/seating").room(&format!(
                "outline: 16' x 10'\nislands: {{island: {{wall: A, at: 40\", away: {away}, size: 96\" x 42\", height: 36\", room side: {{overhang: 15\", seats: 3}}}}}}"
            ))
        };
        room("46\"").stays_silent();
        room("47\"").finds_one();
    }
}
