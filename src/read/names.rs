//! Names that must be somebody's: openings, milestones, options, allowances, products.

use std::collections::{BTreeSet, HashMap, HashSet};

use rayon::prelude::*;

use crate::book::{Book, Later, Milestone, Names, NeededFor, Opening, Room, Selection, Waiver, When, circles};
use crate::finding::{Code, Finding, phrase};
use crate::source::Span;
use crate::vocabulary::{Faults, Kind, NameOf};

use super::choice;
use super::load::Loaded;
use super::plan_names;
use super::room::Common;
use super::undated;
use crate::vocabulary::values::unknown_name;

/// The names that are somebody's in the whole book.
struct Known<'a> {
    /// Whether the book's own file could be read: of one that could not, nothing is known to be missing.
    project: bool,
    milestones: HashSet<&'a str>,
    selections: Names<'a>,
}

impl Known<'_> {
    /// Whether there is such a milestone, or may be.
    fn has_milestone(&self, name: &str) -> bool {
        !self.project || self.milestones.contains(name)
    }
}

/// Checks every name of the book.
pub fn check(book: &Book, loaded: &Loaded, findings: &mut Vec<Finding>) {
    let mut faults = Faults::default();
    let milestone_names = book.project.milestones.iter().map(|milestone| milestone.name.as_str());
    let known =
        Known { project: !book.project_unread, milestones: milestone_names.collect(), selections: Names::of(book) };
    undated::tell(book, findings);
    milestones(book, &known, &mut faults);
    hold_points(book, &known, &mut faults);
    waivers(book, &known, &book.project.waivers, &mut faults);
    findings.append(&mut faults.findings);
    let of_room = |room: &Room| {
        let mut faults = Faults::of_room(&room.folder);
        waivers(book, &known, &room.waivers, &mut faults);
        plan_names::check(room, &mut faults);
        for opening in &room.openings {
            faults.item = Some(opening.name.clone());
            shared_counter(room, opening, &mut faults);
            waivers(book, &known, &opening.waivers, &mut faults);
        }
        for selection in &room.selections {
            faults.item = Some(selection.name.clone());
            of_selection(book, (&known, loaded), room, selection, &mut faults);
            other_selections(book, &known, room, selection, &mut faults);
            waivers(book, &known, &selection.waivers, &mut faults);
        }
        faults.findings
    };
    let told: Vec<Vec<Finding>> = book.rooms.par_iter().map(of_room).collect();
    findings.extend(told.into_iter().flatten());
}

/// Reads the products that no option names, so that their faults are told too.
pub fn unused_products(common: &Common<'_>, findings: &mut Vec<Finding>) {
    let mut faults = Faults::default().in_currency(common.currency);
    for node in common.loaded.products.values() {
        if let Some(inner) = node.at("product") {
            faults.stop(
                Code::WRONG_TYPE,
                inner.span,
                "a product can't build on another product",
                "write its fields out",
            );
        }
        choice::check_product(common, node, &mut faults);
    }
    findings.append(&mut faults.findings);
}

fn of_selection(
    book: &Book,
    (names, loaded): (&Known<'_>, &Loaded),
    room: &Room,
    selection: &Selection,
    faults: &mut Faults,
) {
    let mut told = |span: Span, name: &str, of: NameOf, known: Vec<&str>| {
        unknown_name(span, name, of, known.into_iter(), faults);
    };
    if let (Some(place), true) =
        (selection.place.spanned(), room.span.is_some() && !loaded.unread.contains(&room.folder))
        && room.opening(place).is_none()
        && !in_walls(room, selection).any(|name| name == place.value)
    {
        let openings = room.openings.iter().map(|opening| opening.name.as_str());
        let known = openings.chain(in_walls(room, selection)).collect();
        told(place.span, place, NameOf::Opening, known);
    }
    if let Some(needed) = selection.needed_for.spanned() {
        match &needed.value {
            NeededFor::Milestone(name) if !names.has_milestone(name) => {
                let known = book.project.milestones.iter().map(|milestone| milestone.name.as_str()).collect();
                told(needed.span, name, NameOf::Milestone, known)
            }
            _ => {}
        }
    }
    if let Some(chosen) = selection.chosen.spanned()
        && !selection.options.iter().any(|option| option.id.value == chosen.value)
    {
        let known = selection.options.iter().map(|option| option.id.as_str()).collect();
        told(chosen.span, chosen, NameOf::Option, known);
    }
    if let Some(allowance) = selection.allowance.spanned()
        && names.project
        && book.project.allowances.called(allowance).is_none()
    {
        let known = book.project.allowances.iter().map(|allowed| allowed.name.as_str()).collect();
        told(allowance.span, allowance, NameOf::Allowance, known);
    }
}

/// The doorways of a room, for a door and what is on it; its windows, for a blind.
fn in_walls<'a>(room: &'a Room, selection: &Selection) -> impl Iterator<Item = &'a str> {
    let of_a_door = selection.is_any(&[Kind::Door, Kind::DoorHandle]);
    let of_a_window = selection.is(Kind::WindowCovering);
    let doors = room.doors.iter().filter(move |_| of_a_door).map(|door| door.name.as_str());
    doors.chain(room.windows.iter().filter(move |_| of_a_window).map(|window| window.name.as_str()))
}

fn milestones(book: &Book, known: &Known<'_>, faults: &mut Faults) {
    let milestones = &book.project.milestones;
    let circular = on_themselves(milestones);
    for (number, milestone) in milestones.iter().enumerate() {
        let When::After(Later { milestones: all_before, .. }) = &milestone.when else { continue };
        for before in all_before.iter().filter(|before| !known.has_milestone(before)) {
            unknown_milestone(book, before.span, before, faults);
        }
        if let (Some(before), true) = (all_before.first(), circular.contains(&number)) {
            let message = phrase!("the milestone `{}` comes after itself", milestone.name.value);
            faults.stop(Code::WRONG_TYPE, before.span, message, "give one milestone of the circle a date");
        }
    }
}

fn unknown_milestone(book: &Book, span: Span, name: &str, faults: &mut Faults) {
    let known = book.project.milestones.iter().map(|milestone| milestone.name.as_str());
    unknown_name(span, name, NameOf::Milestone, known, faults);
}

/// Milestones after which waivers no longer hold.
fn waivers(book: &Book, known: &Known<'_>, waivers: &[Waiver], faults: &mut Faults) {
    for until in waivers.iter().filter_map(|waiver| waiver.until.spanned()) {
        if let NeededFor::Milestone(name) = &until.value
            && !known.has_milestone(name)
        {
            unknown_milestone(book, until.span, name, faults);
        }
    }
}

/// Openings at the other end of a counter.
fn shared_counter(room: &Room, opening: &Opening, faults: &mut Faults) {
    let sides = opening.landing.get().into_iter().flat_map(|landing| [&landing.left, &landing.right]);
    for to in sides.filter_map(|side| side.get()?.to.spanned()) {
        if room.opening(&to.value).is_none() {
            let known = room.openings.iter().map(|opening| opening.name.as_str());
            unknown_name(to.span, to, NameOf::Opening, known, faults);
        }
    }
}

/// Other selections that a selection names.
fn other_selections(book: &Book, known: &Known<'_>, room: &Room, selection: &Selection, faults: &mut Faults) {
    for name in selection.depends_on.iter().chain(&selection.meets) {
        // A room of which a file could not be read may hold the selection.
        if book.unread.is_empty() && known.selections.selection(room, name).is_none() {
            let known = room.selections.iter().map(|other| other.name.as_str());
            unknown_name(name.span, name, NameOf::Selection, known, faults);
        }
    }
}

fn hold_points(book: &Book, known: &Known<'_>, faults: &mut Faults) {
    for hold in &book.project.hold_points {
        if let NeededFor::Milestone(name) = &hold.on.value
            && !known.has_milestone(name)
        {
            unknown_milestone(book, hold.on.span, name, faults);
        }
    }
}

/// The milestones that come after themselves, by number.
fn on_themselves(milestones: &[Milestone]) -> BTreeSet<usize> {
    let mut numbers: HashMap<&str, usize> = HashMap::new();
    for (number, milestone) in milestones.iter().enumerate() {
        numbers.entry(milestone.name.as_str()).or_insert(number);
    }
    let before = |milestone: &Milestone| match &milestone.when {
        When::After(Later { milestones, .. }) => {
            milestones.iter().filter_map(|name| numbers.get(name.as_str()).copied()).collect()
        }
        When::On(_) | When::Faulty(_) => vec![],
    };
    let links: Vec<Vec<usize>> = milestones.iter().map(before).collect();
    circles(&links).into_iter().flatten().collect()
}
