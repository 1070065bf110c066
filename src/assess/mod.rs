//! Book and today to an assessment: findings, dates, money. Pure: no file, no clock.

pub mod approval;
mod built_in;
pub mod cautions;
pub mod codes;
pub mod concerns;
pub mod rules;

mod context;
pub use context::{Context, about};

mod change_order;
pub use change_order::{
    Asked, BuiltOtherwise, ChangeOrder, Changed, Fate, Look, Moved, Reopened, Signing, Sort, Taken, Term, TermMoved,
    TitleField, asked, changed_items, of_money,
};

mod critical;
mod dates;
mod decide;
pub use dates::{Dates, OrderBy, RunsOut};
pub use decide::{DecideBy, Dependent, OwnMoments, Step};

mod freeze;
pub use freeze::{Heading, built, built_since, freeze, money_terms};

mod hold_points;
pub use hold_points::{DatedHoldPoint, HoldPoints, InTheWay, Unapproved};

mod amounts;
pub use amounts::{Allowance, Amounts, Due, WithTax};

mod depends;
pub use depends::{Depends, Prerequisite, Reason, Unsettled, made_for};

pub mod receiving;
mod things;
pub mod transmittals;
mod waivers;
mod words;
pub use words::{
    behind, casing, near_heat, say, say_area, say_range, say_room, say_vent, say_weight, where_to_say_it_burns,
};

use std::collections::HashMap;

use approval::{ApprovalState, Approvals};
use rayon::prelude::*;
use things::Things;

use crate::book::{Book, Room, Selection};
use crate::finding::{Counts, Finding};
use crate::site::Site;
use crate::units::Date;

/// What can be said of a book on a day.
#[derive(Debug)]
pub struct Assessment {
    /// Every finding, of reading and of the rules, ordered by room and weight.
    pub findings: Vec<Finding>,
    /// How many of each weight.
    pub counts: Counts,
    /// When things are needed and must be ordered.
    pub dates: Dates,
    /// The moments after which a mistake is dear.
    pub hold_points: HoldPoints,
    /// What stands of each item's approval.
    pub approvals: Approvals,
    /// What things cost, and what is left of the allowances.
    pub amounts: Amounts,
}

impl Assessment {
    /// What stands in the way of each hold point, the next one first: findings, and what needs an approval
    /// that it has not.
    pub fn in_the_way<'a>(&'a self, book: &'a Book) -> Vec<InTheWay<'a>> {
        let own = OwnMoments::of(book, &Depends::of(book));
        let waiting = book.selections().filter_map(|(room, selection)| {
            let thing = self.unapproved(book, room, selection)?;
            Some((own.of_thing(selection), self.dates.last_order(selection), thing))
        });
        self.hold_points.in_the_way(&self.findings, waiting.collect())
    }

    /// What is not approved and still asked about; what is ordered is not asked for, unless it opens again. Nothing where
    /// the book names nobody who approves.
    pub fn unapproved<'a>(&self, book: &Book, room: &'a Room, selection: &'a Selection) -> Option<Unapproved<'a>> {
        self.not_approved(book, room, selection).filter(|_| !self.is_done(room, selection))
    }

    /// The same of what is to be built from, ordered or not: an order is nobody's signature.
    pub fn not_approved<'a>(&self, book: &Book, room: &'a Room, selection: &'a Selection) -> Option<Unapproved<'a>> {
        if self.approvals.is_orderable(room, selection) || book.project.approvers.is_empty() {
            return None;
        }
        let item = self.approvals.item(room, selection);
        let is_otherwise = item.is_some_and(|item| item.standing == ApprovalState::CameOtherwise);
        let stands = item.map_or("not issued for approval", |item| item.standing.word());
        let of = match item {
            // All who must are asked anew, once that is issued.
            Some(_) if is_otherwise => book.project.approvers.iter().map(|one| one.name.clone()).collect(),
            Some(item) => item.waits_for.clone(),
            None => vec![],
        };
        Some(Unapproved { room, selection, stands, of })
    }

    /// Whether nothing of a selection is left to decide: all who must approved it, or it is ordered. What came otherwise
    /// and was taken, or was changed after it was signed, is ordered, and yet to be approved.
    pub fn is_done(&self, room: &Room, selection: &Selection) -> bool {
        let opens_again = self.approvals.item(room, selection).is_some_and(|item| item.standing.opens_again());
        self.approvals.is_orderable(room, selection) || selection.is_ordered() && !opens_again
    }
}

/// Assesses a book; `found` is what reading it found.
pub fn assess(book: &Book, found: Vec<Finding>, today: Date) -> Assessment {
    // None of these asks another: the days take longest.
    let ((depends, dates), ((site, things), (amounts, approvals))) = rayon::join(
        || {
            let depends = Depends::of(book);
            let dates = Dates::resting(book, &depends, today);
            (depends, dates)
        },
        || {
            rayon::join(
                || rayon::join(|| Site::of(book), || Things::of(book)),
                || rayon::join(|| Amounts::of(book), || Approvals::of(book)),
            )
        },
    );
    let context = Context { book, dates: &dates, depends: &depends, approvals: &approvals, site: &site, today };
    // Reading goes file by file, and knows no units of the book.
    let units = book.project.units;
    let read = found.into_iter().map(|found| Finding { remark: found.remark.in_units(units), ..found });
    let mut findings: Vec<Finding> = read.collect();
    // Rules know nothing of each other; what each found is joined in the order of the list.
    let found: Vec<Vec<Finding>> = rules::RULES.par_iter().map(|rule| rule.run(&context)).collect();
    findings.extend(found.into_iter().flatten());
    let hold_points = HoldPoints::of(book, &dates);
    hold_points::apply(book, &things, &hold_points, &dates, &mut findings);
    codes::faults(&book.project.codes, &mut findings);
    waivers::apply(book, &dates, &mut findings);
    findings.par_iter_mut().filter(|finding| finding.caution.is_none()).for_each(|finding| {
        let caution = rules::of(finding.rule).and_then(|rule| rule.caution);
        finding.caution = caution.and_then(|hazard| cautions::of_finding(hazard, finding, &things));
    });
    let rooms: HashMap<&str, usize> =
        book.rooms.iter().enumerate().map(|(at, room)| (room.folder.as_str(), at)).collect();
    let order = |finding: &Finding| {
        let room = finding.room.as_ref().and_then(|room| rooms.get(room.as_str()).copied());
        (room.map_or(0, |at| at + 1), finding.severity, finding.place.clone(), finding.rule)
    };
    findings.par_sort_by_cached_key(order);
    Assessment { counts: Counts::of(&findings), findings, dates, hold_points, approvals, amounts }
}
