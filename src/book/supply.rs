//! Where services come out of walls, where makers' sheets want them, and what is plugged in along counters.

use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::units::{Length, LengthRange};
use crate::vocabulary::{Faults, Field, Fields, Record, Shape, Slot, Value, record};

/// One thing of each service.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Each<T> {
    /// Of the receptacle or box.
    pub power: Slot<T>,
    /// Of the stub or valve.
    pub gas: Slot<T>,
    /// Of the stop valve.
    pub water: Slot<T>,
    /// Of the drain.
    pub drain: Slot<T>,
    /// Of the duct.
    pub duct: Slot<T>,
}

impl<T> Default for Each<T> {
    fn default() -> Self {
        let none = || Slot::Absent;
        Self { power: none(), gas: none(), water: none(), drain: none(), duct: none() }
    }
}

impl<T> Each<T> {
    /// Each with its name.
    pub fn named(&self) -> [(&'static str, &Slot<T>); 5] {
        [
            ("power", &self.power),
            ("gas", &self.gas),
            ("water", &self.water),
            ("drain", &self.drain),
            ("duct", &self.duct),
        ]
    }
}

record! {
    #[derive(Default)]
    pub struct ServicePoint = POINT("service point", "where a service comes out, seen from the front") {
        from_left: Slot<Length> = "from left", "from the opening's left edge to its centre", "6\"";
        height: Slot<Length> = "height", "its centre from the finished floor", "12\"";
        proud: Slot<Length> = "proud", "how far it stands out from the finished wall", "1 1/2\"";
        beside: Slot<bool> = "beside", "whether it is in the cabinet beside, not behind the thing", "true";
    }
}

record! {
    #[derive(Default)]
    pub struct ServiceZone = ZONE("service zone", "where the maker's sheet wants a service to come out, seen from the front") {
        from_left: Slot<LengthRange> = "from left", "from the opening's left edge to its centre", "2\" to 28\"";
        height: Slot<LengthRange> = "height", "its centre from the finished floor", "at most 6\"";
        proud: Slot<Length> = "proud", "the most that it may stand out from the finished wall", "1\"";
        beside: Slot<bool> = "beside", "whether it must be in the cabinet beside, not behind the thing", "true";
    }
}

record! {
    named
    pub struct CounterRun = COUNTER_RUN("counter", "a stretch of counter, unbroken by sink, cooktop or refrigerator, and what is plugged in along it") {
        length: Spanned<Length> = "length", "its length", "8'";
        depth: Slot<Length> = "depth", "its depth", "25 1/2\"";
        island: Slot<bool> = "island", "whether it is an island or a peninsula", "true";
        receptacles: Slot<u32> = "receptacles", "receptacles that serve it", "2";
        provision: Slot<bool> = "provision", "whether a box is provided for a later receptacle", "true";
    }
}

/// Where services come out at an opening.
pub const POINTS: Record = Record {
    name: "service points",
    about: "where each service comes out at the opening",
    fields: &[
        Field::optional("power", Shape::Record(&POINT), "the receptacle or box", "{from left: 6\", height: 12\"}"),
        Field::optional(
            "gas",
            Shape::Record(&POINT),
            "the stub or valve",
            "{from left: 15\", height: 4\", proud: 1\"}",
        ),
        Field::optional("water", Shape::Record(&POINT), "the stop valve", "{from left: 3\", height: 8\"}"),
        Field::optional("drain", Shape::Record(&POINT), "the centre of the drain", "{from left: 12\", height: 16\"}"),
        Field::optional("duct", Shape::Record(&POINT), "the centre of the duct", "{from left: 18\", height: 84\"}"),
    ],
};

/// Where a maker's sheet wants services.
pub const ZONES: Record = Record {
    name: "service zones",
    about: "where the maker's sheet wants each service to come out",
    fields: &[
        Field::optional(
            "power",
            Shape::Record(&ZONE),
            "the receptacle or box",
            "{from left: 2\" to 28\", height: at most 6\"}",
        ),
        Field::optional("gas", Shape::Record(&ZONE), "the stub or valve", "{height: 2\" to 5\", proud: 1\"}"),
        Field::optional("water", Shape::Record(&ZONE), "the stop valve", "{beside: true}"),
        Field::optional("drain", Shape::Record(&ZONE), "the centre of the drain", "{height: at most 20\"}"),
        Field::optional("duct", Shape::Record(&ZONE), "the centre of the duct", "{from left: 17 3/4\" to 18 1/4\"}"),
    ],
};

impl<T: Value> Each<T> {
    fn of(node: &Node, record: &'static Record, faults: &mut Faults) -> Option<Self> {
        let mut fields = Fields::of(node, record, faults)?;
        let mut of = |key| fields.read(key, faults, T::read);
        let each =
            Self { power: of("power"), gas: of("gas"), water: of("water"), drain: of("drain"), duct: of("duct") };
        fields.finish(faults);
        Some(each)
    }
}

impl Value for Each<ServicePoint> {
    const SHAPE: Shape = Shape::Record(&POINTS);

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        Self::of(node, &POINTS, faults)
    }
}

impl Value for Each<ServiceZone> {
    const SHAPE: Shape = Shape::Record(&ZONES);

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        Self::of(node, &ZONES, faults)
    }
}
