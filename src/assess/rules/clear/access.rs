//! Access for somebody in a wheelchair, where the book is planned for it.

mod figures;
mod floor;
mod reach;
#[cfg(test)]
mod tests;

use super::{Figure, Measure};
use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::Room;
use crate::finding::{Phrase, Remark, Severity};
use crate::site::distances::{Distance, planned_for_access};

declare! {
    /// A room that is planned for access misses the standard's figure
    ///
    /// ## What it checks
    /// Only where the book, or the room, is planned by a profile (`access profile: 2010 ADA`). Then what
    /// `access` and `clearances` say is held against the standard: floor to turn and to stand beside
    /// things, space for knees and feet, the reach to controls, heights of sink, counter, table, mirror
    /// and seat, and the room at toilet, bars and shower. What only a planning guideline asks for is a
    /// query. Where nobody wrote them, the floor to turn on and the one around the toilet are those of the room's plan. Doorways, seats and aisles have rules of their own, which then use the wider figures.
    ///
    /// ## Why it matters
    /// {1"} decides whether a chair turns, and whoever sits in it cannot step over the mistake.
    ///
    /// ## Remedy
    /// Change the plan before rough-in. In a private house the standard is not law; where the household
    /// wants another figure, waive the finding with their reason.
    ///
    /// ## Example
    /// ```yaml
    /// access profile: 2010 ADA       # in book.yaml, or in room.yaml for one room
    /// access: {turning circle: 59"}
    /// ```
    ///
    /// ## Source
    /// 2010 ADA Standards for Accessible Design, sections 304 to 309, 603, 604, 606, 608, 609, 610, 804 and 902 (604.3.2, 608.5, 608.7, 609.4 and 610.3 from memory);
    /// ICC A117.1 for the depth of a bowl; access standards of the Kitchen and Bath Planning Guidelines,
    /// 2nd edition.
    "clear/access", Stop,
    due: RoughInClosed, tells: [Installer],
    judges: [Toilet, Basin, Sink, Tap, Bathtub, ShowerSet, ShowerSeat],
    sources: [
        "2010 ADA Standards",
        "ICC A117.1",
        "Kitchen and Bath Planning Guidelines, 2nd edition, access standards",
    ],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for room in context.book.rooms.iter().filter(|room| planned_for_access(context.book, room)) {
        figures::check(context, room, findings);
        floor::check(context, room, findings);
        reach::check(context, room, findings);
    }
}

/// Whether the aisle between the counters is told here already, as too narrow for a chair.
pub fn tells_the_aisle(context: &Context<'_>, room: &Room) -> bool {
    planned_for_access(context.book, room) && figures::passage(context, room).is_some()
}

/// A distance against a figure that the book has taken for its own: a stop.
fn stop(
    context: &Context<'_>,
    room: &Room,
    is: (Phrase, &'static str),
    there: Distance,
    figure: Figure,
) -> Option<Remark> {
    judged(context, room, is, there, figure).map(|finding| Remark { severity: Severity::Stop, ..finding })
}

/// A distance against a figure of a guideline: a query.
fn judged(
    context: &Context<'_>,
    room: &Room,
    is: (Phrase, &'static str),
    there: Distance,
    figure: Figure,
) -> Option<Remark> {
    let remedy = "change the plan before rough-in, or waive it with the household's reason";
    Measure { room, item: None, is, there, advised: Some(figure), code: None, remedy }.judge(context)
}
