//! The book as typed values: plain data, no I/O, no judgement.
//!
//! Each value knows its file, line and column. [`vocabulary`] holds the words of the files.

pub mod vocabulary;

pub use crate::units::System;
pub use crate::vocabulary::{Clearance, Readings, Slot};

mod project;
pub use project::{
    Allowed, Approval, Approver, DaysOff, Firm, Later, Milestone, NarrowPoint, OwnHoldPoint, Prices, Project, Supplier,
    Waiver, When,
};

mod languages;
pub use languages::{ByReader, Languages, Spoken, Tag};

mod responses;
pub use responses::{Responses, SiteAddress};

mod burning;
pub use burning::Burning;

mod access;
pub use access::{
    Access, AccessDistance, AccessProfile, Control, KitchenWays, KneeSpace, KneesAt, Pipes, Reach, ShowerType,
};

mod clearances;
pub use clearances::{
    Beside, ClearDistance, Clearances, Distances, Frontage, Landing, Seating, Stretch, Traffic, Triangle,
};

mod outline;
pub use outline::Outline;

mod wall;
pub use wall::{DoorHinge, DoorSwing, Doorway, WallIs, WallNote, Window, WindowIn, WindowOpens};

mod run;
pub use run::{CabinetEnds, CounterOfRun, End, FinishedSides, Part, PartIs, Run, RunEnd};

mod island;
pub use island::{Island, IslandEdge, IslandSide};

mod fixture;
pub use fixture::{Fixture, HungLights};

mod wall_box;
pub use wall_box::WallBox;

mod ceiling;
pub use ceiling::{Ceiling, MeasuredCeiling, Rises};

mod measurements;
mod nature;
pub use measurements::{MeasuredFigures, MeasuredHow, Measurement, TakenFigure};

mod opening;
pub use nature::Nature;
pub use opening::{AsWritten, Measured, MeasuredAgain, MeasuredBetween, MeasuredFrom, Opening, Plumb, WallBuildUp};

mod around;
pub use around::{BesideWord, HousingCabinet, Neighbour, Plainly, Services};

mod room;
pub use room::{Note, Room, room_of};

mod selection;
pub use selection::{Asked, NeededFor, Selection};

mod product_option;
pub use product_option::{Accessory, DetailName, FitsFronts, Grain, Hinge, Panel, ProductOption, Reveal, Size};

mod cut_sheet;
pub use cut_sheet::{CutSheet, HeldSheet, OfFigures};

mod detail;
pub use detail::{Detail, DetailValue, Fact};

mod built_in;
pub use built_in::{Below, Hole, Hollow, HollowFrom, RequiredPanel};

mod country;
pub use country::Country;

mod codes;
pub use codes::{Codes, House, OwnFigure};

mod supply;
pub use supply::{CounterRun, Service, ServicePoint, ServicePoints, ServiceZone, ServiceZones};

mod joinery;
pub use joinery::{BinPlace, Fronts, ShelfKind, Stores};

mod light;
pub use light::{Hanging, HangsOver};
pub use material::Material;

mod order;
pub use order::Order;

mod surface;
pub use surface::{Laid, PaperedWalls, Sold, TileEdges};

mod top;
pub use top::{Direction, LastWord, Piece, Seam, SeamOver, Slab, Splash, Support, Supports, Top, TopMaterial};

mod fuel;
pub use fuel::Fuel;
mod setting;
pub use setting::{CutOut, Setting};

mod fit;
pub use fit::{
    Air, BackPanel, Door, Face, Fit, FreeVents, Heat, MakersSheet, Needs, RequiredCabinet, RequiredOpening, Vents,
    VentsAt,
};

mod look_up;
mod material;
pub use look_up::{InRow, LookUp};

mod names;
pub use names::Names;

mod circles;
pub use circles::circles;

mod short_name;
pub use short_name::{OwnName, PageName, file_name, page_name_of, short_name_of};

mod photo;
pub use photo::{Photo, PhotoFile};

mod record;
pub use record::{KeptResponse, Record, Scan, Uncounted, WaitingReadings, photograph_path};

use std::collections::{BTreeMap, BTreeSet};

use crate::source::{Span, Spanned};
use crate::theme::ThemeFiles;

/// Everything that the folder says.
#[derive(Debug, Default)]
pub struct Book {
    /// `book.yaml`.
    pub project: Project,
    /// The rooms, in the book's order.
    pub rooms: Vec<Room>,
    /// Every picture that the book names and has, by its path.
    pub photos: BTreeMap<String, PhotoFile>,
    /// Pictures in the folder that nothing names.
    pub unnamed_photos: Vec<String>,
    /// Rooms (by folder) of which a file could not be read: what is absent there proves nothing.
    pub unread: BTreeSet<String>,
    /// Files (by path) that could not be read: what they tell is missing from the book.
    pub unread_files: BTreeSet<String>,
    /// Whether `book.yaml` itself could not be read: what stands in it is not known then, and not absent.
    pub project_unread: bool,
    /// Whether a word of the book's own file could not be read.
    pub project_partly_unread: bool,
    /// Selections of which a word could not be read, by where their names are written.
    pub partly_unread: BTreeSet<Span>,
    /// What is still to be said, written as `…`: its key, and where it stands.
    pub open: Vec<Spanned<String>>,
    /// What was issued, decided and measured.
    pub record: Record,
    /// What the pages are made with.
    pub theme: ThemeFiles,
    /// Whether the theme can't be read as a whole: nothing is published with it then, not even a draft.
    pub theme_faulty: bool,
}

impl Book {
    /// What could not be read, by path: files, and folders of rooms where something else stands in the way.
    pub fn not_read(&self) -> Vec<String> {
        let folder = |room: &String| format!("rooms/{room}/");
        let is_told = |room: &&String| self.unread_files.iter().any(|path| path.starts_with(&folder(room)));
        let rooms = self.unread.iter().filter(|room| !is_told(room)).map(folder);
        self.unread_files.iter().cloned().chain(rooms).collect()
    }

    /// Whether what is absent from a room, or another there, proves nothing: a file that tells of it could not be read.
    pub fn is_unsure_of(&self, room: &str) -> bool {
        let of_all = |path: &String| room_of(path).is_none();
        self.project_unread || self.unread.contains(room) || self.unread_files.iter().any(of_all)
    }

    /// Whether what is absent of a selection, or another there, proves nothing: a file or a word that tells of it could not
    /// be read.
    pub fn is_unsure_of_item(&self, room: &Room, selection: &Selection) -> bool {
        let of_words = self.project_partly_unread || room.partly_unread;
        of_words || self.is_unsure_of(&room.folder) || self.partly_unread.contains(&selection.name.span)
    }

    /// Every selection with its room.
    pub fn selections(&self) -> impl Iterator<Item = (&Room, &Selection)> {
        self.rooms.iter().flat_map(|room| room.selections.iter().map(move |selection| (room, selection)))
    }

    /// The room with that folder name.
    pub fn room(&self, folder: &str) -> Option<&Room> {
        self.rooms.iter().find(|room| room.folder == folder)
    }
}
