//! What was, or is to be, chosen for one place.

use super::{Hanging, PageName, PaperedWalls, ProductOption, Waiver};
use crate::source::yaml::Node;
use crate::source::{Span, Spanned};
use crate::units::{Area, Date, Fault};
use crate::vocabulary::{
    Code, Faults, FieldType, Fields, HeldAs, Kind, Markdown, Mention, NameOf, Slot, Trait, Usual, Value, name, record,
    values,
};

record! {
    marked
    pub struct Selection = SELECTION("selection", "a choice to be made for one place; fields of an option that stand here count for all of its options") {
        name: Spanned<String> = required "selection",
            "what is chosen, in the household's words",
            "Range" as OrUnnamed => marked "name" "what it is called";
        id: String = "id",
            "a short name for its page; made from the name if left out",
            "range" as PageName => marked "item" "the selection's id in its room";
        tag: String = "tag", "its number on drawings; given in order if left out", "K-07" as Usual => unmarked "it is a number on drawings, not the thing";
        kind: Slot<Kind> = required "kind",
            "decides which fields and checks apply",
            "range" => marked "kind" "its kind, or null";
        place: Slot<String> = "place", "the opening that it goes into; of a door its doorway, of a blind its window", "range" as name::Opening => marked;
        needed_for: Slot<NeededFor> = "needed for",
            "the milestone, or the day, that waits for it",
            "cabinets set" => unmarked "it moves with the work";
        why: Slot<String> = "why",
            "why it is so, for the client",
            "An oven wide enough for a full sheet pan." as Markdown => marked;
        options: Vec<ProductOption> = "options",
            "two or more to choose from; with one, its fields stand in the selection itself",
            "[{id: steel, …}, {id: enamel, …}]" as WithItsSelection => told "options" "the options in their order, each as below";
        chosen: Slot<String> = "chosen",
            "the option that was chosen; left out while it is open",
            "steel" as name::Option => marked "chosen" "the id of the option that is chosen, or null";
        chosen_on: Slot<Date> = "chosen on", "the day on which it was chosen", "2027-01-09" => unmarked "the record says who chose, and when";
        asked: Slot<Asked> = "asked",
            "who asked for its last change since it was issued, and why: the change order tells it",
            "{by: Ada Okonedo, because: the enamel chips}" => unmarked "the change order tells it, beside what changed";
        depends_on: Vec<Spanned<String>> = "depends on",
            "selections that must stand before this one is ordered, besides those that follow from its kind",
            "[Wall tile, bath/Floor]" as name::Selection => unmarked "what rests on a change is named of its own";
        meets: Vec<Spanned<String>> = "meets",
            "surfaces that it lies edge to edge with",
            "[Accent tile]" as name::Selection => unmarked "it is for the checks of edges";
        hangs: Slot<Hanging> = "hangs",
            "where lights hang, as measured or as planned",
            "{over: island, length: 10', top: 36\", bottom: 68\"}" => unmarked "it is measured on site, and told to the electrician";
        papered: Slot<PaperedWalls> = "papered", "the walls that a wallpaper covers", "{along: 40', height: 8'}" => unmarked "rolls are counted by it, whose quantity is signed";
        allowance: Slot<String> = "allowance",
            "the allowance that it draws on",
            "appliances" as name::Allowance => marked;
        includes: Vec<String> = "includes", "what its price pays for besides the thing", "[delivery, fitting]" => marked_since_2;
        leaves_out: Vec<String> = "leaves out",
            "what its price does not pay for, as somebody might think",
            "[gas line]" => marked_since_2;
        furnished_by: Slot<String> = "furnished by", "who buys it", "client" => marked;
        installed_by: Slot<String> = "installed by", "who fits it", "plumber" => marked;
        covers: Slot<Area> = "covers", "how much of the room it covers, for the material board", "86 sq ft" => unmarked "it is for the material board";
        private: Slot<String> = "private",
            "a note for the office alone",
            "Trade account, 12 % off list." as Markdown => unmarked "it is for the office alone";
        tell_client: Slot<bool> = "tell client",
            "whether the client reads what living with what the review finds of it means; as for its room if left out",
            "yes" => unmarked "what is found is no part of the thing";
        waivers: Vec<Waiver> = "waive",
            "findings set aside for this selection",
            "[{rule: fit/play, because: …, by: …, on: …}]" => unmarked "what is found is no part of the thing";
    }
    besides {
        /// Where the book writes its number on drawings itself; none where it is given in order.
        tag_at: Option<Span> = |fields| fields.place_of("tag");
        /// Where it is written.
        span: Span = |fields| fields.span;
        /// Whether the option is chosen by what was signed alone, and written nowhere.
        chosen_by_record: bool;
    }
    then Selection::when_read
}

record! {
    pub struct Asked = ASKED("change that was asked for", "who asked for a change of what was issued, and why") {
        by: Slot<String> = "by", "who asked for it", "Ada Okonedo";
        because: Slot<String> = "because", "why", "the enamel chips";
    }
}

/// What is chosen, or that nobody says.
pub enum OrUnnamed {}

impl HeldAs<OrUnnamed> for Spanned<String> {
    const TYPE: FieldType = FieldType::Text;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        let unnamed = Self::new("a selection with no name".into(), fields.span);
        Some(fields.read(key, faults, values::text).spanned().cloned().unwrap_or(unnamed))
    }
}

/// Read with the fields of their selection, which count for all of them.
pub enum WithItsSelection {}

impl HeldAs<WithItsSelection> for Vec<ProductOption> {
    const TYPE: FieldType = FieldType::List(&<ProductOption as Value>::TYPE);

    fn take_as(fields: &mut Fields<'_>, key: &'static str, _: &mut Faults) -> Option<Self> {
        fields.node(key);
        Some(vec![])
    }
}

impl Selection {
    /// A number that can't be read is none.
    fn when_read(mut self, _at: Span, _faults: &mut Faults) -> Option<Self> {
        self.tag_at = self.tag_at.filter(|_| !self.tag.is_empty());
        Some(self)
    }

    /// Whether it is of that kind.
    pub fn is(&self, kind: Kind) -> bool {
        self.kind.get() == Some(&kind)
    }

    /// Whether it is of one of those kinds.
    pub fn is_any(&self, kinds: &[Kind]) -> bool {
        self.kind.get().is_some_and(|kind| kinds.contains(kind))
    }

    /// Whether it is laid on the floor.
    pub fn is_a_floor(&self) -> bool {
        self.is(Kind::Floor) || self.is(Kind::Tile) && Mention::Floor.is_in(&self.name)
    }

    /// Whether its kind has that trait.
    pub fn has(&self, what: Trait) -> bool {
        self.kind.get().is_some_and(|kind| kind.is(what))
    }

    /// The option that stands: the chosen one, or the only one.
    pub fn settled(&self) -> Option<&ProductOption> {
        match (self.chosen.get(), self.options.as_slice()) {
            (Some(id), options) => options.iter().find(|option| option.id.value == *id),
            (None, [only]) => Some(only),
            _ => None,
        }
    }

    /// Whether the option that stands is ordered.
    pub fn is_ordered(&self) -> bool {
        self.settled().is_some_and(|option| option.order.placed_on.get().is_some())
    }

    /// The options that still count: the settled one, or all while it is open.
    pub fn standing(&self) -> &[ProductOption] {
        self.settled().map_or(&self.options, std::slice::from_ref)
    }
}

/// What waits for a selection.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NeededFor {
    /// A milestone of the book.
    Milestone(String),
    /// A day.
    Day(Date),
}

impl Value for NeededFor {
    const TYPE: FieldType = FieldType::Either(&FieldType::Name(NameOf::Milestone), &FieldType::Date);

    /// Whether there is such a milestone is seen when all is read.
    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let text = values::scalar(node, &FieldType::Name(NameOf::Milestone), faults)?;
        let dated = text.starts_with(|first: char| first.is_ascii_digit());
        match Date::parse(text) {
            Ok(day) => Some(Self::Day(day)),
            Err(_) if !dated => Some(Self::Milestone(text.to_string())),
            Err(error) => {
                faults.stop(Code::WRONG_TYPE, node.span, error.message(), error.remedy());
                None
            }
        }
    }
}
