//! Where services come out of walls, where makers' sheets want them, and what is plugged in along counters.

use crate::source::Spanned;
use crate::units::{Length, LengthRange};
use crate::vocabulary::{AtMost, Slot, record, words};

record! {
    shown
    #[derive(Default)]
    pub struct ServicePoint = POINT("service point", "where a service comes out, seen from the front") {
        from_left: Slot<Length> = "from left", "from the opening's left edge to its centre", "6\"";
        height: Slot<Length> = "height", "its centre from the finished floor", "12\"";
        proud: Slot<Length> = "proud", "how far it stands out from the finished wall", "1 1/2\"";
        beside: Slot<bool> = "beside", "whether it is in the cabinet beside, not behind the thing", "true";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct ServiceZone = ZONE("service zone", "where the maker's sheet wants a service to come out, seen from the front") {
        from_left: Slot<LengthRange> = "from left", "from the opening's left edge to its centre", "2\" to 28\"";
        height: Slot<LengthRange> = "height", "its centre from the finished floor", "at most 6\"";
        proud: Slot<Length> = "proud", "the most that it may stand out from the finished wall; `at most` may stand before it, and says the same", "1\"" as AtMost;
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

words! {
    /// A service of the house.
    pub enum Service {
        Power = "power",
        Gas = "gas",
        Water = "water",
        Drain = "drain",
        Duct = "duct",
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct ServicePoints = POINTS("service points", "where each service comes out at the opening") {
        power: Slot<ServicePoint> = "power", "the receptacle or box", "{from left: 6\", height: 12\"}";
        gas: Slot<ServicePoint> = "gas", "the stub or valve", "{from left: 15\", height: 4\", proud: 1\"}";
        water: Slot<ServicePoint> = "water", "the stop valve", "{from left: 3\", height: 8\"}";
        drain: Slot<ServicePoint> = "drain", "the centre of the drain", "{from left: 12\", height: 16\"}";
        duct: Slot<ServicePoint> = "duct", "the centre of the duct", "{from left: 18\", height: 84\"}";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct ServiceZones = ZONES("service zones", "where the maker's sheet wants each service to come out") {
        power: Slot<ServiceZone> = "power", "the receptacle or box", "{from left: 2\" to 28\", height: at most 6\"}";
        gas: Slot<ServiceZone> = "gas", "the stub or valve", "{height: 2\" to 5\", proud: 1\"}";
        water: Slot<ServiceZone> = "water", "the stop valve", "{beside: true}";
        drain: Slot<ServiceZone> = "drain", "the centre of the drain", "{height: at most 20\"}";
        duct: Slot<ServiceZone> = "duct", "the centre of the duct", "{from left: 17 3/4\" to 18 1/4\"}";
    }
}

/// What is told of each service.
macro_rules! of_each_service {
    ($($all:ident: $each:ident),+) => {
        $(impl $all {
            /// Each with what it is.
            pub fn named(&self) -> [(Service, &Slot<$each>); 5] {
                let Self { power, gas, water, drain, duct } = self;
                [
                    (Service::Power, power),
                    (Service::Gas, gas),
                    (Service::Water, water),
                    (Service::Drain, drain),
                    (Service::Duct, duct),
                ]
            }
        })+
    };
}

of_each_service!(ServicePoints: ServicePoint, ServiceZones: ServiceZone);
