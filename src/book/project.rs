//! The project: people, dates, money, calendar, the way into the house.

use super::{AccessProfile, Codes, Country, House, Languages, NeededFor, Photo, Responses, SiteAddress};
use crate::language::{Language, Tongues};
use crate::source::yaml::{Node, Value as Yaml};
use crate::source::{Span, Spanned};
use crate::units::{Calendar, Currency, Date, LeadTime, Length, Money, Percent, System};
use crate::vocabulary::{
    Code, Faults, FieldType, Fields, Held, HeldAs, Markdown, NameOf, Named, NamedValue, Slot, Usual, Value, name,
    record, values, words,
};

record! {
    #[derive(Default)]
    pub struct Project = BOOK("book", "the project: people, dates, money, calendar, the way into the house") {
        title: Slot<String> = required "title", "what the book is called", "Alder Court";
        number: Slot<String> = "number", "the firm's number for the project", "2026-014";
        client: Slot<String> = required "client",
            "the household, as it is addressed",
            "The Okonedo-Lindqvist household";
        address: Slot<String> = "address", "where the work is", "12 Alder Court";
        firm: Firm = "firm", "the firm whose name stands in the title block", "{name: Pennick & Tarrow}";
        designer: Slot<String> = "designer", "who answers for the book", "Ines Tarrow";
        intro: Slot<String> = "intro",
            "the first lines that the client reads",
            "Three rooms, thirty-three choices." as Markdown;
        cover: Option<Photo> = "cover", "the picture on the cover", "photos/house.jpg";
        units: System = required "units",
            "the units that figures are shown in; after `imperial` and `metric` the other ones stand beside them, smaller",
            "imperial" as Usual;
        country: Slot<Country> = "country",
            "where the work is, by its two letters in ISO 3166: planning advice and codes of another country are not \
             offered unless `codes` adopts them; left out, a book in feet and inches counts as of the US",
            "GB";
        currency: Option<Currency> = required "currency", "the currency of every amount, by its three letters", "USD";
        tax: Slot<Percent> = "tax", "tax on what is bought", "8.25 %";
        prices: Prices = "prices", "whether tax is in every price, or is added to the sum of them", "with tax" as Usual;
        languages: Slot<Languages> = "languages",
            "in which languages pages are worded, for all readers or for each; of two, each page has a way to the other",
            "{client: es, installer: [es, en], office: en}";
        theme: Slot<String> = "theme",
            "the folder of the book that holds its own templates, styles, words and sheets, as `start --theme` lays them \
             out; left out, the standard ones",
            "our-theme";
        approvers: Vec<Approver> = "approvers",
            "the people who decide and pay",
            "[{id: ada, name: Ada Okonedo}]";
        approval: Approval = "approval", "whether all approvers must sign, or any one of them", "all" as Usual;
        responses: Responses = "responses",
            "where decisions and readings are handed over, besides as a file",
            "{post: \"https://book.example/responses\", email: office@pennick.example}";
        published_at: Slot<String> = "published at",
            "the address at which the published folder is found, where it is: sheets on paper bear a code to scan that \
             leads to their own page there",
            "https://book.example/alder-court" as SiteAddress;
        allowances: Named<Allowed> = "allowances",
            "what the contract allows for each group, in prices as the book has them",
            "{appliances: 14500, tile: {amount: 3800, includes: delivery}}";
        suppliers: Named<Supplier> = "suppliers",
            "what is known of those from whom things are bought, by the names that orders give them",
            "{Oren & Daughters: {claim within: 5 working days}}";
        milestones: Named<Milestone> = "milestones",
            "the dates that the work hangs on",
            "{demolition: 2027-03-01}";
        hold_points: Named<OwnHoldPoint> = "hold points",
            "moments after which a mistake is dear; the usual ones hang on the milestones unless they are dated here",
            "{cabinets ordered: 2027-02-08, rough-in closed: rough-in}";
        codes: Codes = "codes",
            "the codes that count here, local amendments, and figures of the firm's own",
            "{adopts: [IRC 2021, NEC 2020]}";
        house: House = "house",
            "what the rules must know of the house around the rooms",
            "{open flue: false}";
        calendar: Calendar = "calendar",
            "days on which nobody works, besides weekends",
            "{closed: [2027-05-31]}";
        receiving: Slot<LeadTime> = "receiving",
            "how long before it is needed a thing must be in hand",
            "5 working days";
        way_in: Vec<NarrowPoint> = "way in",
            "the narrowest points between truck and room, in order",
            "[{name: porch door, width: 35 1/2\", height: 79\"}]";
        access_profile: Slot<AccessProfile> = "access profile",
            "the standard of access that every room is planned by, unless the room says otherwise",
            "2010 ADA";
        rooms: Vec<Spanned<String>> = "rooms",
            "the order of the rooms; those not named follow by name",
            "[kitchen, bath]" as name::Room;
        private: Slot<String> = "private", "a note for the office alone", "Second invoice in May." as Markdown;
        waivers: Vec<Waiver> = "waive",
            "findings set aside for the whole book",
            "[{rule: complete/measured, because: …, by: Ines, on: 2027-01-12}]";
    }
    besides {
        /// The languages that its theme has.
        tongues: Tongues;
        /// Where it says what its prices are.
        prices_at: Option<Span> = |fields| fields.place_of("prices");
    }
}

impl Project {
    /// The country that the work is in: as written, or the United States where a book in feet and inches says
    /// none. None for a book in metric units that says none.
    pub fn where_it_is(&self) -> Option<Country> {
        let unsaid = (!self.units.is_metric()).then_some(Country::UnitedStates);
        self.country.get().copied().or(unsaid)
    }

    /// The languages of the client's pages, the one that is shown first before the others.
    pub fn languages_of_client(&self) -> Vec<Language> {
        self.languages.get().map_or_else(|| vec![self.tongues.usual()], |all| all.of_client(&self.tongues))
    }

    /// The languages of the sheets on site.
    pub fn languages_of_installer(&self) -> Vec<Language> {
        self.languages.get().map_or_else(|| vec![self.tongues.usual()], |all| all.of_installer(&self.tongues))
    }

    /// The language of the office's pages.
    pub fn language_of_office(&self) -> Language {
        self.languages.get().map_or_else(|| self.tongues.usual(), |all| all.of_office(&self.tongues))
    }
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

words! {
    for System {
        Imperial = "imperial",
        Metric = "metric",
        ImperialOnly = "imperial only",
        MetricOnly = "metric only",
    }
}

words! {
    /// Whether tax is in every price.
    #[derive(Default)]
    pub enum Prices {
        #[default]
        BeforeTax = "before tax",
        WithTax = "with tax",
    }
}

words! {
    /// Whether all approvers must sign.
    #[derive(Default)]
    pub enum Approval {
        #[default]
        All = "all",
        Any = "any",
    }
}

record! {
    pub struct Approver = APPROVER("approver", "a person who decides and signs") {
        id: Spanned<String> = "id", "a short name for files", "ada";
        name: String = "name", "the name as signed", "Ada Okonedo";
        email: Option<String> = "email", "where to write", "ada@okonedo.example";
    }
}

record! {
    named short "amount" as Money;
    pub struct Allowed = ALLOWANCE("allowance", "what the contract allows for a group of selections, and what that is to pay for") {
        amount: Money = "amount", "the amount", "3800";
        includes: Slot<String> = "includes", "what it is to pay for besides the things", "delivery and tax";
    }
}

record! {
    named
    pub struct Supplier = SUPPLIER("supplier", "what is known of somebody from whom things are bought") {
        claim_within: Slot<LeadTime> = "claim within",
            "how long after it came a claim is taken for what is damaged or different; left out, it is not known",
            "5 working days";
        claims: Slot<String> = "claims", "where and how a claim is made", "claims@oren.example, with photographs";
    }
}

/// A date that the work hangs on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Milestone {
    /// Its name.
    pub name: Spanned<String>,
    /// When it is.
    pub when: When,
}

impl NamedValue for Milestone {
    const TYPE: FieldType = When::TYPE;

    fn name(&self) -> &str {
        &self.name
    }

    fn read_named(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<Self> {
        // What rests on it still finds its name, so that one fault is told once.
        let when = When::read(node, faults).unwrap_or(When::Faulty(node.span));
        Some(Self { name: name.clone(), when })
    }
}

/// When a milestone is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum When {
    /// On that day.
    On(Date),
    /// That long after others.
    After(Later),
    /// Something is written here that could not be read, as reading has said.
    Faulty(Span),
}

impl Value for When {
    const TYPE: FieldType = FieldType::Either(&FieldType::Date, &Later::TYPE);

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        match node.value {
            Yaml::Scalar { .. } => Date::read(node, faults).map(Self::On),
            _ => Later::read(node, faults).map(Self::After),
        }
    }
}

record! {
    pub struct Later = AFTER("later milestone", "a milestone that comes some working days after another") {
        milestones: Vec<Spanned<String>> = "after",
            "the milestone that comes before, or all that do",
            "demolition" as OneOrMore;
        lasts: LeadTime = "lasts", "how long after it", "10 working days";
    }
}

/// One milestone, or several.
pub enum OneOrMore {}

impl HeldAs<OneOrMore> for Vec<Spanned<String>> {
    const TYPE: FieldType =
        FieldType::Either(&FieldType::Name(NameOf::Milestone), &FieldType::List(&FieldType::Name(NameOf::Milestone)));
    const REQUIRED: bool = true;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        let milestones = match &fields.node(key)?.value {
            Yaml::List(names) => {
                if names.is_empty() {
                    let message = "no milestone stands after `after`";
                    faults.stop(Code::WRONG_TYPE, fields.span, message, "name at least one milestone");
                }
                fields.list(key, faults, values::spanned_text)
            }
            _ => fields.read(key, faults, values::text).spanned().cloned().into_iter().collect(),
        };
        Some(milestones).filter(|milestones| !milestones.is_empty())
    }
}

record! {
    named short "on" as NeededFor;
    pub struct OwnHoldPoint = HOLD_POINT("hold point", "a moment after which a mistake is dear, and what must be settled by then") {
        on: Spanned<NeededFor> = "on", "the milestone, or the day", "rough-in";
        settles: Vec<Spanned<String>> = "settles",
            "rules, or families of rules, whose findings must be settled by then",
            "[service, clear/glazing]";
    }
}

record! {
    group
    #[derive(Default)]
    pub struct DaysOff = CALENDAR("calendar", "days on which nobody works; Saturdays and Sundays are left out anyway") {
        closed: Vec<Date> = "closed", "days off", "[2027-05-31, 2027-07-05]";
    }
}

impl Held for Calendar {
    const TYPE: FieldType = <DaysOff as Held>::TYPE;

    fn take(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        DaysOff::take(fields, key, faults).map(|days| Self::new(days.closed))
    }
}

record! {
    pub struct NarrowPoint = NARROW("narrow point", "a door, hall, stair or turn that everything is carried through") {
        name: String = "name", "what it is", "hall turn";
        width: Length = "width", "clear width, with the door leaf out of the way", "35 1/2\"";
        height: Length = "height", "clear height", "79\"";
        depth: Slot<Length> = "depth", "inside, from its door to its back wall, of a lift: what goes up stands in it", "55\"";
        turns: bool = "turns", "whether one has to turn a corner there", "true" as Usual;
    }
    besides {
        /// Where it is written.
        span: Span = |fields| fields.span;
    }
}

record! {
    pub struct Waiver = WAIVER("waiver", "a finding set aside, by whom and why; a caution stays") {
        rule: Spanned<String> = "rule", "the rule's code", "fit/play";
        because: String = "because", "the reason", "shimmed and scribed on site";
        by: String = "by", "who answers for it", "Ines Tarrow";
        on: Date = "on", "when", "2027-01-12";
        until: Slot<NeededFor> = "until",
            "the milestone, or the day, after which it no longer holds",
            "cabinets set";
        option: Slot<String> = "option",
            "the one option that it is for, at a selection or the opening that it goes into; left out, all of them",
            "steel" as name::Option;
    }
    besides {
        /// Where it is written.
        span: Span = |fields| fields.span;
    }
}
