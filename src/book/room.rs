//! A room as measured: its size, its plan, its openings, and what is chosen in it.

use super::{
    Access, AccessProfile, Ceiling, Clearances, CounterRun, Doorway, Fixture, HungLights, Island, LookUp,
    MeasuredCeiling, NarrowPoint, Opening, Outline, Photo, Run, Seating, Selection, Waiver, WallBox, WallNote, Window,
};
use crate::source::Span;
use crate::units::Length;
use crate::vocabulary::{Faults, FieldType, Fields, HeldAs, Markdown, Named, Slot, record, values};

record! {
    #[derive(Default)]
    pub struct Room = ROOM("room", "the room as measured: size, ceiling, floor, openings") {
        name: Slot<String> = required "name", "what the household calls it", "Kitchen";
        letter: String = "letter",
            "the letter of its sheets; the name's first letter if left out",
            "K" as Capitals;
        whereabouts: Slot<String> = "where", "where in the house it is", "ground floor, rear ell";
        intro: Slot<String> = "intro",
            "a sentence that opens the room's page",
            "A galley between party wall and yard." as Markdown;
        outline: Slot<Outline> = "outline",
            "length and width between finished faces, or its corners going round: to the right, and up, as on paper",
            "15' 6\" x 12' 0\"";
        walls: Named<WallNote> = "walls",
            "what is to be said of its walls, by their letters: A from the first corner to the second, and so on \
             around; of a rectangle A is the far long wall, then clockwise",
            "{A: {name: party wall}, C: {is: half wall, height: 42\"}}";
        doors: Named<Doorway> = "doors",
            "doors and cased openings, by name",
            "{hall door: {wall: D, at: 20\", width: 34\", hinge: left, swings: in}}";
        windows: Named<Window> = "windows",
            "windows, by name",
            "{over sink: {wall: C, at: 62\", width: 34\", sill: 42\", height: 44\"}}";
        runs: Named<Run> = "runs",
            "cabinets, fillers and appliances in a row along a wall, by name",
            "{range wall: {wall: A, depth: 24\", parts: [{filler: 3\"}, {opening: range}]}}";
        islands: Named<Island> = "islands",
            "islands and peninsulas, by name",
            "{island: {wall: A, at: 40\", away: 68\", size: 96\" x 42\"}}";
        fixtures: Named<Fixture> = "fixtures",
            "things set out by their centreline, by name",
            "{toilet: {wall: A, centre: 18\", selection: Toilet}}";
        lights: Named<HungLights> = "lights",
            "lights set out over an island or a run, by name",
            "{pendants: {selection: Pendants, over: island, count: 3}}";
        switches: Named<WallBox> = "switches",
            "switches by the places of their boxes, by name",
            "{at the hall door: {beside: hall door, from: right, centre: 6\", height: 42\", works: [Pendants]}}";
        outlets: Named<WallBox> = "outlets",
            "outlets likewise, besides those behind what goes into openings",
            "{end of island: {island: island, side: right side, centre: 12\", height: 28\"}}";
        measured_ceiling: Slot<MeasuredCeiling> = "ceiling", "ceiling height from the finished floor", "8' 1\"";
        floor_build_up: Slot<Length> = "floor build-up",
            "still to be laid on the floor that the openings were measured from",
            "3/4\"";
        cooks: Slot<u32> = "cooks", "how many people cook at once", "2";
        clearances: Clearances = "clearances",
            "distances in the room as measured or planned",
            "{work aisle: 42\", in front of toilet: 30\"}";
        seating: Named<Seating> = "seating",
            "where people sit at a counter or table, by name",
            "{island: {edge: 72\", seats: 3, height: 36\", knee depth: 15\", behind: 44\", traffic: walk past}}";
        access_profile: Slot<AccessProfile> = "access profile",
            "the standard of access that this room is planned by, where it differs from the book's",
            "2010 ADA";
        access: Access = "access",
            "what the room offers to somebody in a wheelchair or on weak legs",
            "{turning circle: 60\"}";
        photo: Option<Photo> = "photo", "the picture that opens the room", "room.jpg";
        photos: Vec<Photo> = "photos", "more pictures of the room", "[range-wall.jpg]";
        openings: Named<Opening> = "openings",
            "the holes that things go into, by name",
            "{range: {takes: range, width: 30\"}}";
        counters: Named<CounterRun> = "counters",
            "stretches of counter between sink, cooktop and refrigerator, by name",
            "{left of range: {length: 4', receptacles: 1}}";
        way_in: Vec<NarrowPoint> = "way in",
            "narrow points on the way to this room, after those of the book",
            "[{name: stair, width: 32\", height: 76\"}]";
        private: Slot<String> = "private", "a note for the office alone", "Neighbour holds the alley key." as Markdown;
        tell_client: Slot<bool> = "tell client",
            "whether the client reads what living with what the review finds here means; nothing of it is shown if left out",
            "yes";
        waivers: Vec<Waiver> = "waive",
            "findings set aside for this room",
            "[{rule: …, because: …, by: …, on: …}]";
    }
    besides {
        /// The name of its folder.
        folder: String;
        /// Whether something in its `room.yaml` could not be read, which has been told: where things stand is not
        /// known, and what would follow from it is no fault of its own.
        partly_unread: bool;
        /// Its ceiling from the finished floor.
        ceiling: Slot<Ceiling>;
        /// What is chosen in it, in the order of files and records.
        selections: Vec<Selection>;
        /// Why it is so.
        notes: Vec<Note>;
        /// Where `room.yaml` begins; none when the room has no such file.
        span: Option<Span> = |fields| Some(fields.span);
        /// Finds openings and selections by name.
        look_up: LookUp;
    }
    then Room::when_read
}

impl Room {
    /// The ceiling hangs on what is still to be laid on the floor.
    fn when_read(mut self, _at: Span, _faults: &mut Faults) -> Option<Self> {
        let to_lay = self.floor_build_up.get().copied().unwrap_or(Length::ZERO);
        let measured = self.measured_ceiling.clone();
        self.ceiling = measured.and_then(|measured| measured.from_finished_floor(to_lay));
        Some(self)
    }

    /// What the household calls it, or its folder.
    pub fn title(&self) -> &str {
        self.name.get().map_or(&self.folder, |name| name)
    }

    /// What is still to be laid on its floor: nothing where no floor is chosen for it; none where one is, and nobody
    /// says how deep it is.
    pub fn still_to_lay(&self) -> Option<Length> {
        let gets_one = self.selections.iter().any(Selection::is_a_floor) || self.floor_build_up.is_faulty();
        self.floor_build_up.get().copied().or((!gets_one).then_some(Length::ZERO))
    }

    /// Whether the kind of something in it is written, and could not be read: what is absent there proves nothing.
    pub fn holds_an_unknown_kind(&self) -> bool {
        self.selections.iter().any(|selection| selection.kind.is_faulty())
    }

    /// Whether anything is written of where its walls are called and things stand, besides its openings.
    pub fn is_laid_out(&self) -> bool {
        let stands = [self.runs.len(), self.islands.len(), self.fixtures.len(), self.lights.len()];
        let walls = [self.walls.len(), self.doors.len(), self.windows.len()];
        stands.into_iter().chain(walls).any(|count| count > 0)
    }
}

/// Words in capital letters.
pub enum Capitals {}

impl HeldAs<Capitals> for String {
    const TYPE: FieldType = FieldType::Text;

    fn take_as(fields: &mut Fields<'_>, key: &'static str, faults: &mut Faults) -> Option<Self> {
        Some(fields.read(key, faults, values::text).text().to_uppercase())
    }
}

/// Prose in Markdown, from a file in the room's folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// Its path.
    pub path: String,
    /// Its text.
    pub markdown: String,
}

/// The room, by its folder, that a path of the book lies in.
pub fn room_of(path: &str) -> Option<String> {
    path.strip_prefix("rooms/").and_then(|rest| rest.split_once('/')).map(|(room, _)| room.to_string())
}
