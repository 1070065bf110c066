//! Access in a room, as measured or planned.

use super::Distances;
use crate::source::Spanned;
use crate::units::{Length, Percent};
use crate::vocabulary::{Called, Named, Readings, Slot, record, words};

words! {
    /// The standards of access that a book can be planned by.
    pub enum AccessProfile {
        Ada2010 = "2010 ADA",
        None = "none",
    }
}

words! {
    /// How one can leave a kitchen.
    pub enum KitchenWays {
        /// At both ends.
        PassThrough = "pass-through",
        /// Where one came in.
        UShaped = "U-shaped",
    }
}

words! {
    /// How one comes into a shower.
    pub enum ShowerType {
        /// One moves over to a seat.
        Transfer = "transfer",
        /// One rolls in.
        RollIn = "roll-in",
    }
}

record! {
    group
    #[derive(Default)]
    pub struct Access = ACCESS("access", "what the room offers to somebody in a wheelchair or on weak legs, as measured or planned") {
        kitchen: Slot<KitchenWays> = "kitchen", "whether one can leave it at both ends", "U-shaped";
        clear_floor: Named<Called<(Length, Length)>> = "clear floor",
            "clear floor at each fixture or appliance, width and depth",
            "{range: 30\" x 48\"}";
        knee_spaces: Named<KneeSpace> = "knee spaces",
            "open space under a basin, a sink or a counter, by name",
            "{basin: {width: 30\", toe depth: 17\", knees: [{at: 9\", deep: 11\"}, {at: 27\", deep: 8\"}]}}";
        controls: Named<Control> = "controls",
            "switches, handles and knobs that one must reach, by name",
            "{hood switch: {height: 44\", reach: forward, over depth: 25\"}}";
        work_surface_adjusts: Slot<bool> = "work surface adjusts", "whether it can be set from 29\" to 36\"", "true";
        shelves_in_reach: Slot<Percent> = "shelves in reach", "how much of the shelves is within reach", "50 %";
        shower_type: Slot<ShowerType> = "shower type",
            "whether one moves over to a seat, or rolls in",
            "roll-in";
    }
    figures distances: Distances<AccessDistance> => unmarked by AccessDistance {
        TurningCircle = "turning circle": Readings, "greatest circle of clear floor", "60\"";
        CounterHeights = "counter heights": Readings, "heights at which one can work", "[34\", 42\"]";
        WorkSurfaceWidth = "work surface width": Readings, "width of the surface to sit at and work", "30\"";
        WorkSurfaceHeight = "work surface height": Readings, "its height", "34\"";
        SinkRim = "sink rim": Readings, "height of the sink's rim, or of the counter around it", "34\"";
        SinkBowlDepth = "sink bowl depth": Readings, "depth of the bowl over a knee space", "6\"";
        ToiletSpaceFromSideWall = "toilet space from side wall": Readings,
            "clear floor around the toilet, from the wall at its side",
            "60\"";
        ToiletSpaceFromRearWall = "toilet space from rear wall": Readings,
            "clear floor around the toilet, from the wall behind it",
            "56\"";
        SideGrabBar = "side grab bar": Readings, "length of the bar at the toilet's side", "42\"";
        SideGrabBarFromRearWall = "side grab bar from rear wall": Readings, "where that bar begins", "12\"";
        RearGrabBar = "rear grab bar": Readings, "length of the bar behind the toilet", "36\"";
        GrabBarHeight = "grab bar height": Readings,
            "top of the gripping surface from the finished floor",
            "34\"";
        ShowerEntry = "shower entry": Readings, "clear width of the shower's entry", "60\"";
        ShowerThreshold = "shower threshold": Readings, "height of the step at the shower's entry", "1/2\"";
        ShowerControls = "shower controls": Readings, "height of the shower's controls", "44\"";
        Mirror = "mirror": Readings, "lower edge of the mirror's glass over a basin", "40\"";
    }
}

words! {
    /// How pipes are that knees may touch.
    pub enum Pipes {
        Covered = "covered" also "insulated" "wrapped" "shielded" "shrouded" "lagged" "boxed in" "protected",
        Bare = "bare" also "exposed" "uncovered",
    }
}

record! {
    named
    pub struct KneeSpace = KNEE_SPACE("knee space", "open space for feet and knees under a basin, a sink or a counter") {
        width: Slot<Length> = "width", "clear width", "36\"";
        height: Slot<Length> = "height", "clear height at the front", "27\"";
        depth: Slot<Length> = "depth", "clear depth at that height", "19\"";
        toe_depth: Slot<Length> = "toe depth", "clear depth for feet, up to 9\" above the floor", "17\"";
        pipes: Slot<Pipes> = "pipes", "whether pipes over it are covered, so that they cannot be touched", "covered";
        knees: Vec<KneesAt> = "knees",
            "how deep it is at some heights between 9\" and 27\"",
            "[{at: 9\", deep: 11\"}, {at: 27\", deep: 8\"}]";
    }
}

record! {
    pub struct KneesAt = KNEES_AT("depth for knees", "how deep a knee space is at a height") {
        at: Length = "at", "the height above the floor", "27\"";
        deep: Spanned<Length> = "deep", "the clear depth there", "8\"";
    }
}

words! {
    /// How one comes up to what one must reach.
    pub enum Reach {
        Forward = "forward",
        Side = "side",
    }
}

record! {
    named
    pub struct Control = CONTROL("control", "a switch, a handle or a knob that one must reach from a chair") {
        height: Spanned<Length> = "height", "its height above the floor", "44\"";
        reach: Slot<Reach> = "reach", "how one comes up to it", "side";
        over_depth: Slot<Length> = "over depth", "depth of what one reaches over", "24\"";
        over_height: Slot<Length> = "over height", "height of what one reaches over", "34\"";
        twists: Slot<bool> = "twists", "whether it must be gripped tightly, pinched or twisted", "true";
    }
}
