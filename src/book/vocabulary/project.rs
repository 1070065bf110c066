//! The words of `book.yaml`.

use super::{CODES, FIRM, HOUSE, PHOTO, RESPONSES};
use crate::book::Country;
use crate::vocabulary::{Field, NameOf, Record, Shape, Value};

/// `book.yaml`.
pub const BOOK: Record = Record {
    name: "book",
    about: "the project: people, dates, money, calendar, the way into the house",
    fields: &[
        Field::required("title", Shape::Text, "what the book is called", "Alder Court"),
        Field::optional("number", Shape::Text, "the firm's number for the project", "2026-014"),
        Field::required("client", Shape::Text, "the household, as it is addressed", "The Okonedo-Lindqvist household"),
        Field::optional("address", Shape::Text, "where the work is", "12 Alder Court"),
        Field::optional(
            "firm",
            Shape::Record(&FIRM),
            "the firm whose name stands in the title block",
            "{name: Pennick & Tarrow}",
        ),
        Field::optional("designer", Shape::Text, "who answers for the book", "Ines Tarrow"),
        Field::optional(
            "intro",
            Shape::Markdown,
            "the first lines that the client reads",
            "Three rooms, thirty-three choices.",
        ),
        Field::optional(
            "cover",
            Shape::Either(&Shape::Text, &Shape::Record(&PHOTO)),
            "the picture on the cover",
            "photos/house.jpg",
        ),
        Field::required(
            "units",
            Shape::OneOf(&["imperial", "metric"]),
            "the units shown first; the others stand beside them",
            "imperial",
        ),
        Field::optional(
            "country",
            <Country as Value>::SHAPE,
            "where the work is, by its two letters in ISO 3166: planning advice and codes of another country are not \
             offered unless `codes` adopts them; left out, a book in feet and inches counts as of the US",
            "GB",
        ),
        Field::required("currency", Shape::Currency, "the currency of every amount, by its three letters", "USD"),
        Field::optional("tax", Shape::Percent, "tax on what is bought", "8.25 %"),
        Field::optional(
            "languages",
            Shape::List(&Shape::OneOf(&["en", "es"])),
            "the language of the pages' own words: the first one counts; of `es`, headings, labels, buttons and the \
             words of signing are there, and verdicts, findings, cautions and the lines under drawings are English",
            "[en, es]",
        ),
        Field::optional(
            "approvers",
            Shape::List(&Shape::Record(&APPROVER)),
            "the people who decide and pay",
            "[{id: ada, name: Ada Okonedo}]",
        ),
        Field::optional(
            "approval",
            Shape::OneOf(&["all", "any"]),
            "whether all approvers must sign, or any one of them",
            "all",
        ),
        Field::optional(
            "responses",
            Shape::Record(&RESPONSES),
            "where decisions and readings are handed over, besides as a file",
            "{post: \"https://book.example/responses\", email: office@pennick.example}",
        ),
        Field::optional(
            "allowances",
            Shape::Named(&Shape::Either(&Shape::Money, &Shape::Record(&ALLOWANCE))),
            "what the contract allows for each group",
            "{appliances: 14500, tile: {amount: 3800, includes: delivery}}",
        ),
        Field::optional(
            "milestones",
            Shape::Named(&Shape::Either(&Shape::Date, &Shape::Record(&AFTER))),
            "the dates that the work hangs on",
            "{demolition: 2027-03-01}",
        ),
        Field::optional(
            "hold points",
            Shape::Named(&Shape::Either(
                &Shape::Either(&Shape::Name(NameOf::Milestone), &Shape::Date),
                &Shape::Record(&HOLD_POINT),
            )),
            "moments after which a mistake is dear; the usual ones hang on the milestones unless they are dated here",
            "{cabinets ordered: 2027-02-08, rough-in closed: rough-in}",
        ),
        Field::optional(
            "codes",
            Shape::Record(&CODES),
            "the codes that count here, local amendments, and figures of the firm's own",
            "{adopts: [IRC 2021, NEC 2020]}",
        ),
        Field::optional(
            "house",
            Shape::Record(&HOUSE),
            "what the rules must know of the house around the rooms",
            "{open flue: false}",
        ),
        Field::optional(
            "calendar",
            Shape::Record(&CALENDAR),
            "days on which nobody works, besides weekends",
            "{closed: [2027-05-31]}",
        ),
        Field::optional(
            "receiving",
            Shape::LeadTime,
            "how long before it is needed a thing must be in hand",
            "5 working days",
        ),
        Field::optional(
            "way in",
            Shape::List(&Shape::Record(&NARROW)),
            "the narrowest points between truck and room, in order",
            "[{name: porch door, width: 35 1/2\", height: 79\"}]",
        ),
        Field::optional(
            "access profile",
            super::access::PROFILES,
            "the standard of access that every room is planned by, unless the room says otherwise",
            "2010 ADA",
        ),
        Field::optional(
            "rooms",
            Shape::List(&Shape::Name(NameOf::Room)),
            "the order of the rooms; those not named follow by name",
            "[kitchen, bath]",
        ),
        Field::optional("private", Shape::Markdown, "a note for the office alone", "Second invoice in May."),
        Field::optional(
            "waive",
            Shape::List(&Shape::Record(&WAIVER)),
            "findings set aside for the whole book",
            "[{rule: complete/measured, because: …, by: Ines, on: 2027-01-12}]",
        ),
    ],
};

/// A person who decides.
pub const APPROVER: Record = Record {
    name: "approver",
    about: "a person who decides and signs",
    fields: &[
        Field::required("id", Shape::Text, "a short name for files", "ada"),
        Field::required("name", Shape::Text, "the name as signed", "Ada Okonedo"),
        Field::optional("email", Shape::Text, "where to write", "ada@okonedo.example"),
    ],
};

/// A date that hangs on another.
pub const AFTER: Record = Record {
    name: "later milestone",
    about: "a milestone that comes some working days after another",
    fields: &[
        Field::required(
            "after",
            Shape::Either(&Shape::Name(NameOf::Milestone), &Shape::List(&Shape::Name(NameOf::Milestone))),
            "the milestone that comes before, or all that do",
            "demolition",
        ),
        Field::required("lasts", Shape::LeadTime, "how long after it", "10 working days"),
    ],
};

/// A hold point with more to say.
pub const HOLD_POINT: Record = Record {
    name: "hold point",
    about: "a moment after which a mistake is dear, and what must be settled by then",
    fields: &[
        Field::required(
            "on",
            Shape::Either(&Shape::Name(NameOf::Milestone), &Shape::Date),
            "the milestone, or the day",
            "rough-in",
        ),
        Field::optional(
            "settles",
            Shape::List(&Shape::Text),
            "rules, or families of rules, whose findings must be settled by then",
            "[service, clear/glazing]",
        ),
    ],
};

/// An allowance.
pub const ALLOWANCE: Record = Record {
    name: "allowance",
    about: "what the contract allows for a group of selections, and what that is to pay for",
    fields: &[
        Field::required("amount", Shape::Money, "the amount", "3800"),
        Field::optional("includes", Shape::Text, "what it is to pay for besides the things", "delivery and tax"),
    ],
};

/// Days off.
pub const CALENDAR: Record = Record {
    name: "calendar",
    about: "days on which nobody works; Saturdays and Sundays are left out anyway",
    fields: &[Field::optional("closed", Shape::List(&Shape::Date), "days off", "[2027-05-31, 2027-07-05]")],
};

/// A narrow point on the way in.
pub const NARROW: Record = Record {
    name: "narrow point",
    about: "a door, hall, stair or turn that everything is carried through",
    fields: &[
        Field::required("name", Shape::Text, "what it is", "hall turn"),
        Field::required("width", Shape::Length, "clear width, with the door leaf out of the way", "35 1/2\""),
        Field::required("height", Shape::Length, "clear height", "79\""),
        Field::optional("turns", Shape::YesNo, "whether one has to turn a corner there", "true"),
    ],
};

/// A finding set aside.
pub const WAIVER: Record = Record {
    name: "waiver",
    about: "a finding set aside, by whom and why; a caution stays",
    fields: &[
        Field::required("rule", Shape::Text, "the rule's code", "fit/play"),
        Field::required("because", Shape::Text, "the reason", "shimmed and scribed on site"),
        Field::required("by", Shape::Text, "who answers for it", "Ines Tarrow"),
        Field::required("on", Shape::Date, "when", "2027-01-12"),
        Field::optional(
            "until",
            Shape::Either(&Shape::Name(NameOf::Milestone), &Shape::Date),
            "the milestone, or the day, after which it no longer holds",
            "cabinets set",
        ),
        Field::optional(
            "option",
            Shape::Name(NameOf::Option),
            "the one option that it is for, at a selection or the opening that it goes into; left out, all of them",
            "steel",
        ),
    ],
};
