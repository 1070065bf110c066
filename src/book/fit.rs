//! What the maker's own sheet asks of the opening.

use super::{RequiredPanel, ServiceZones, Size};
use crate::source::Spanned;
use crate::source::yaml::{self, Node};
use crate::units::{Area, Date, Length, LengthRange, Sides, Weight};
use crate::vocabulary::supply::{Drain, Duct, Gas, Power, Water, Worded};
use crate::vocabulary::{
    AboveTheSurface, Clearance, Faults, FieldType, Shown, ShownValue, Slot, ThreeSides, Value, record, words,
};

words! {
    /// Where a thing breathes.
    pub enum Vents {
        Front = "front",
        Rear = "rear" also "back" "behind",
        Top = "top" also "above",
        Sides = "sides" also "side",
        Bottom = "bottom" also "plinth" "base" "toe kick" "toekick" "kick" "below",
    }
}

words! {
    /// How a cabinet's back panel is, or must be.
    pub enum BackPanel {
        Whole = "whole",
        CutAway = "cut away",
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Fit = FIT("fit", "figures from the maker's own sheet, never from a shop's page") {
        sheet: Slot<MakersSheet> = "sheet",
            "which sheet, so that a newer one is noticed",
            "{name: 30 C installation, revision: D, date: 2026-09-04}";
        opening: RequiredOpening = "opening",
            "the opening that it asks for",
            "{width: 30\" to 30 1/4\", height: 36\", depth: at least 24\"}";
        air: Air = "air", "clear space that it asks for around it", "{left: 0\", right: 2\" above counter, back: 0\"}";
        heat: Heat = "heat",
            "how far what burns must stay from a cooking surface",
            "{above: 30\", left: 6\", right: 6\", up to: 18\"}";
        play: Slot<Length> = "play", "the least play in all that it asks for, over its own width", "1/8\"";
        square: Slot<Length> = "square", "how far the diagonals may differ", "1/8\"";
        face: Slot<Face> = "face",
            "the flange or front that covers the edge of the cutout",
            "{width: 29 7/8\", overlap: 3/4\"}";
        cabinet: Slot<RequiredCabinet> = "cabinet",
            "what it asks of the cabinet that it is cut into",
            "{inside width: at least 28 1/2\"}";
        panel: Slot<RequiredPanel> = "panel",
            "the front panel that it takes",
            "{width: 23 3/4\", height: 29 13/16\" to 30 1/4\", weight: 20 lb}";
        below: Slot<Length> = "below", "how far it reaches below the top of the counter", "6 1/4\"";
        not_over: Vec<Spanned<String>> = "not over", "what it may not stand over", "[oven, dishwasher, drawer]";
        clips: Slot<Length> = "clips", "room for its clips on each side, inside the cabinet", "3/4\"";
        pairs_with: Vec<Spanned<String>> = "pairs with",
            "models that it may stand beside or on, by the sheet",
            "[FZ-18, FZ-24]";
        joining_kit: Slot<Length> = "joining kit", "width that the joining kit adds between two", "1/4\"";
        valve_depth: Slot<LengthRange> = "valve depth",
            "from the finished wall to the valve's mark",
            "2 3/8\" to 3 1/2\"";
        door: Slot<Door> = "door", "how its door moves", "{drops: 20 1/2\"}";
        needs: Needs = "needs", "what it must be connected to", "{power: 120 V 15 A 5-15, gas: 51000 Btu/h}";
        zones: Slot<ServiceZones> = "zones",
            "where the sheet wants each service to come out",
            "{power: {from left: 2\" to 28\", height: at most 6\"}}";
        carton: Slot<Sides> = "carton",
            "the carton that it comes in",
            "32\" x 41\" x 30\"" as ThreeSides;
        doors_off: Slot<Sides> = "doors off",
            "the body out of its carton, doors taken off",
            "30\" x 36\" x 25\"" as ThreeSides;
        weight: Slot<Weight> = "weight", "weight as delivered", "205 lb";
        note: Slot<String> = "note", "a line for whoever fits it, of what stands on the sheet beside the figures", "From the top of the counter.";
        caution: Slot<String> = "caution",
            "a caution of the maker's, as printed on the sheet",
            "Fix the anti-tip bracket before use";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct MakersSheet = SHEET("maker's sheet", "the maker's sheet that the figures come from") {
        name: Slot<String> = "name", "its title or number", "30 C installation guide";
        revision: Slot<String> = "revision", "its revision", "D";
        date: Slot<Date> = "date", "its date", "2026-09-04";
    }
}

record! {
    shown
    group
    #[derive(Default)]
    pub struct RequiredOpening = FIT_OPENING("asked opening", "the opening or cutout that the maker's sheet asks for") {
        width: Slot<LengthRange> = "width", "clear width", "30\" to 30 1/4\"";
        height: Slot<LengthRange> = "height", "clear height, from the finished floor for what stands on it", "36\"";
        depth: Slot<LengthRange> = "depth", "clear depth", "at least 24\"";
    }
}

/// Every side at which a thing breathes.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct VentsAt(pub Vec<Spanned<Vents>>);

impl Shown for VentsAt {
    fn shown(&self) -> ShownValue {
        self.0.shown()
    }
}

impl Value for VentsAt {
    const TYPE: FieldType = FieldType::Either(&Vents::TYPE, &FieldType::List(&Vents::TYPE));

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        let each: &[Node] = match &node.value {
            yaml::Value::List(items) => items,
            _ => std::slice::from_ref(node),
        };
        let read: Vec<_> = each.iter().map(|one| Spanned::<Vents>::read(one, faults)).collect();
        read.into_iter().collect::<Option<Vec<_>>>().map(Self)
    }
}

record! {
    shown
    group
    #[derive(Default)]
    pub struct Air = AIR("air", "clear space that the maker's sheet asks for around the thing") {
        left: Slot<Clearance> = "left", "to the left", "0\"";
        right: Slot<Clearance> = "right", "to the right", "2\" above counter";
        top: Slot<Clearance> = "top", "above; a length, or the free cross-section of a vent", "1\"";
        back: Slot<Clearance> = "back", "behind; likewise", "1\"";
        bottom: Slot<Clearance> = "bottom", "below, in the plinth, likewise", "200 cm2";
        vents_at: Slot<VentsAt> = "vents at", "where it breathes: one place, or a list of them", "[rear, top]";
    }
}

record! {
    shown
    group
    #[derive(Default)]
    pub struct FreeVents = FREE_VENTS("vents", "free cross-sections through which a thing in an opening breathes, as they are built or planned") {
        bottom: Slot<Area> = "bottom", "in the plinth, below it", "200 cm2";
        top: Slot<Area> = "top", "above it", "200 cm2";
        back: Slot<Area> = "back", "behind it", "250 cm2";
    }
}

record! {
    shown
    group
    #[derive(Default)]
    pub struct Heat = HEAT("heat", "how far what burns must stay from a cooking surface, by the maker's sheet") {
        above: Slot<Length> = "above", "from the cooking surface up to what burns", "30\"";
        above_shielded: Slot<Length> = "above shielded",
            "from the cooking surface up to what is shielded, or does not burn",
            "24\"";
        left: Slot<Length> = "left",
            "from its left side to what burns and stands higher than the cooking surface; `above counter` may stand behind it, and says the same",
            "6\"" as AboveTheSurface;
        right: Slot<Length> = "right", "from its right side likewise", "6\" above counter" as AboveTheSurface;
        up_to: Slot<Length> = "up to",
            "how far up from the cooking surface the distances to the sides hold; left out, all the way",
            "18\"";
        over_cooking: Slot<Length> = "over cooking",
            "from a cooking surface up to this thing, for a hood or what else is made to hang over one",
            "27\"";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Face = FACE("face", "the flange, trim or front that covers the edge of a cutout") {
        width: Slot<Length> = "width", "its width", "29 7/8\"";
        height: Slot<Length> = "height", "its height", "28 1/2\"";
        overlap: Slot<Length> = "overlap", "how far it must cover the edge on each side", "3/4\"";
        gap: Slot<Length> = "gap", "the gap that it must have to the fronts around it", "1/8\"";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct RequiredCabinet = CABINET("asked cabinet", "what the maker's sheet asks of the cabinet that it is cut into") {
        inside_width: Slot<LengthRange> = "inside width", "clear between the cabinet's sides", "at least 28 1/2\"";
        inside_depth: Slot<LengthRange> = "inside depth",
            "from the front edge to back panel or outlet",
            "at least 23 1/2\"";
        inside_height: Slot<LengthRange> = "inside height", "clear height", "at least 27 5/8\"";
        outside_width: Slot<LengthRange> = "outside width", "over the cabinet's sides", "at least 30\"";
        stiles: Slot<Length> = "stiles", "the least that must be left of a stile on each side of the cutout", "1 1/2\"";
        back_panel: Slot<BackPanel> = "back panel", "how the back panel must be", "cut away";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Door = DOOR("door", "how a door moves, and what it needs to move") {
        drops: Slot<Length> = "drops", "how far a drop-down door reaches in front of the case when open", "20 1/2\"";
        swings: Slot<Length> = "swings", "how far a hung door reaches in front of the case when open", "29 3/4\"";
        pulls: Slot<Length> = "pulls", "how far a drawer comes out of the case", "18\"";
        wall_clearance: Slot<Length> = "wall clearance",
            "to a wall on the hinge side, so that the drawers inside come out",
            "2 1/2\"";
        angle: Slot<String> = "angle", "the angle at which drawers and shelves come out", "115 degrees";
        in_front: Slot<Length> = "in front", "clear floor that the sheet asks for in front", "36\"";
    }
}

record! {
    shown
    group
    #[derive(Default)]
    pub struct Needs = NEEDS("needs", "what the thing must be connected to") {
        power: Slot<Worded<Power>> = "power", "volts, amperes and receptacle", "120 V 15 A 5-15";
        gas: Slot<Worded<Gas>> = "gas", "kind and input", "natural gas, 51000 Btu/h";
        water: Slot<Worded<Water>> = "water", "line and valve", "1/4\" with shut-off";
        drain: Slot<Worded<Drain>> = "drain", "size and height", "1 1/2\", at most 20\" AFF";
        duct: Slot<Worded<Duct>> = "duct", "size, length and way out; `none` where the air stays in the room: a hood that recirculates, a dryer that condenses", "8\" round, at most 30 ft";
        blocking: Slot<String> = "blocking", "what brackets and bars are fixed to", "solid blocking 66\" to 70\" AFF";
    }
}

/// A front may be told so much larger or smaller at one place than at another: 1/4 in (common practice: rounded figures).
const ONE_FRONT: Length = Length::from_sixty_fourths(16);

impl Fit {
    /// Whether a size is less than its front in width and in height, and so the body's.
    pub fn is_behind_its_face(&self, size: &Size) -> bool {
        let is_less = |own: Option<Length>, front: &Slot<Length>| {
            own.zip(front.get().copied()).is_some_and(|(own, front)| own + ONE_FRONT < front)
        };
        let high = size.height.get().and_then(|height| height.least.or(height.most));
        self.face
            .get()
            .is_some_and(|face| is_less(size.along().get().copied(), &face.width) && is_less(high, &face.height))
    }
}
