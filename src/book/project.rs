//! The project: people, dates, money, calendar, the way into the house.

use std::collections::BTreeMap;

use super::{Codes, Country, House, NeededFor, Photo, Responses};
use crate::source::{Span, Spanned};
use crate::units::{Calendar, Currency, Date, LeadTime, Length, Money, Percent};
use crate::vocabulary::{Slot, record};

/// `book.yaml`.
#[derive(Debug, Default)]
pub struct Project {
    /// What the book is called.
    pub title: Slot<String>,
    /// The firm's number.
    pub number: Slot<String>,
    /// The household.
    pub client: Slot<String>,
    /// Where the work is.
    pub address: Slot<String>,
    /// The firm.
    pub firm: Firm,
    /// Who answers for the book.
    pub designer: Slot<String>,
    /// The first lines that the client reads, in Markdown.
    pub intro: Slot<String>,
    /// The picture on the cover.
    pub cover: Option<Photo>,
    /// The units shown first.
    pub units: System,
    /// Where the work is.
    pub country: Slot<Country>,
    /// The currency of every amount; none while the project's file can't be read.
    pub currency: Option<Currency>,
    /// Tax on what is bought.
    pub tax: Slot<Percent>,
    /// Languages of the pages, the first one first.
    pub languages: Vec<String>,
    /// Who decides.
    pub approvers: Vec<Approver>,
    /// Whether all must sign.
    pub approval: Approval,
    /// Where responses go.
    pub responses: Responses,
    /// What the contract allows, by group.
    pub allowances: BTreeMap<String, Allowed>,
    /// The dates that the work hangs on, in the order written.
    pub milestones: Vec<Milestone>,
    /// Moments after which a mistake is dear, as far as the book names them.
    pub hold_points: Vec<OwnHoldPoint>,
    /// The codes that count here.
    pub codes: Codes,
    /// The house around the rooms.
    pub house: House,
    /// Days on which nobody works.
    pub calendar: Calendar,
    /// How long before it is needed a thing must be in hand.
    pub receiving: Slot<LeadTime>,
    /// The standard of access that every room is planned by.
    pub access_profile: Slot<&'static str>,
    /// Narrow points between truck and rooms.
    pub way_in: Vec<NarrowPoint>,
    /// For the office alone, in Markdown.
    pub private: Slot<String>,
    /// Findings set aside for the whole book.
    pub waivers: Vec<Waiver>,
}

record! {
    group
    #[derive(Default)]
    pub struct Firm = FIRM("firm", "the firm whose name stands in the title block") {
        name: Slot<String> = "name", "the firm's name", "Pennick & Tarrow";
        trade: Slot<String> = "trade", "what it does, in two or three words", "design and build";
        phone: Slot<String> = "phone", "where to call", "555 0142";
        email: Slot<String> = "email", "where to write", "office@pennick.example";
    }
}

/// The system of units shown first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum System {
    /// Feet, inches and fractions.
    #[default]
    Imperial,
    /// Millimetres.
    Metric,
}

impl Project {
    /// The country that the work is in: as written, or the United States where a book in feet and inches says
    /// none. None for a book in metric units that says none.
    pub fn where_it_is(&self) -> Option<Country> {
        let unsaid = (self.units == System::Imperial).then_some(Country::UnitedStates);
        self.country.get().copied().or(unsaid)
    }
}

/// Whether all approvers must sign.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Approval {
    /// All of them.
    #[default]
    All,
    /// Any one of them.
    Any,
}

/// Who decides and signs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Approver {
    /// A short name.
    pub id: Spanned<String>,
    /// The name as signed.
    pub name: String,
    /// Where to write.
    pub email: Option<String>,
}

/// What the contract allows for a group.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Allowed {
    /// The amount.
    pub amount: Money,
    /// What it is to pay for besides the things.
    pub includes: Slot<String>,
    /// Where it is written.
    pub span: Span,
}

/// A date that the work hangs on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Milestone {
    /// Its name.
    pub name: Spanned<String>,
    /// When it is.
    pub when: When,
}

/// When a milestone is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum When {
    /// On that day.
    On(Date),
    /// That long after another one, or after the last of several.
    After {
        /// Those before.
        milestones: Vec<Spanned<String>>,
        /// How long after the last of them.
        lasts: LeadTime,
    },
}

/// A moment after which a mistake is dear.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnHoldPoint {
    /// Its name.
    pub name: Spanned<String>,
    /// The milestone or the day.
    pub on: Spanned<NeededFor>,
    /// Rules and families of rules whose findings must be settled by then.
    pub settles: Vec<Spanned<String>>,
}

/// A narrow point on the way in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NarrowPoint {
    /// What it is.
    pub name: String,
    /// Clear width.
    pub width: Length,
    /// Clear height.
    pub height: Length,
    /// Whether one turns a corner there.
    pub turns: bool,
    /// Where it is written.
    pub span: Span,
}

/// A finding set aside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waiver {
    /// The rule's code.
    pub rule: Spanned<String>,
    /// The reason.
    pub because: String,
    /// Who answers for it.
    pub by: String,
    /// When.
    pub on: Date,
    /// After what it no longer holds.
    pub until: Slot<NeededFor>,
    /// The one option that it is for; absent: all of them.
    pub option: Slot<String>,
    /// Where it is written.
    pub span: Span,
}
