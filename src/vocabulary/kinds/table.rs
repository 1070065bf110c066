//! The table of kinds: a line of names, then what it needs, what of it can hurt, and what holds for it.
//!
//! The first name is the one that messages use; the others are the trade's other words, understood wherever
//! a kind is written.

use super::{Hazard, HoldPoint, Row, Trade, Trait, into, onto};
use Hazard::{Air, Cords, Dust, Fall, Gas, Glass, Heat, Power, Stone, Tipping, Water, Weight};
use Trade::{Appliance, Finish, Hardware, Lighting, Other, Plumbing, Tile};
use Trait::{
    Bathes, BreaksCounter, Cooks, Cools, CutIntoCounter, DropsIn, Furnishes, Hangs, HasHandles, Heats, InNoCabinet,
    LapsOver, StandsTall, WashesDishes,
};

kinds! {
    Range: "range" | "cooker" | "range cooker" | "stove", "a cooker with an oven, standing on the floor" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "size.depth with handle",
                "fit.needs.power",
            ])
            .hurts(&[Gas, Power, Heat, Weight, Tipping])
            .is(&[Cooks, Heats, BreaksCounter, HasHandles])
            .may(&["fuel", "hinge"]);
    Cooktop: "cooktop" | "hob" | "rangetop" | "induction hob" | "gas hob", "burners or zones set into a counter" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.depth", "size.height", "fit.needs.power"])
            .hurts(&[Gas, Power, Heat])
            .is(&[Cooks, Heats, DropsIn, CutIntoCounter])
            .may(&["fuel"]);
    Grill: "grill" | "built-in grill" | "gas grill" | "outdoor grill" | "barbecue" | "bbq" | "barbecue grill", "a grill that is let into a counter, mostly outdoors" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.depth", "size.height"])
            .hurts(&[Gas, Heat, Weight]).is(&[Cooks, Heats, DropsIn, CutIntoCounter]).may(&["fuel"]);
    WallOven: "wall oven" | "oven" | "built-in oven" | "steam oven" | "single oven" | "double oven" | "double wall oven", "an oven built into a cabinet" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power", "fit.cabinet"])
            .hurts(&[Power, Heat, Weight])
            .is(&[Heats, LapsOver, StandsTall, HasHandles])
            .may(&["fuel", "hinge"]);
    Microwave: "microwave" | "microwave oven" | "microwave drawer" | "built-in microwave" | "over-the-range microwave" | "microwave hood", "a microwave, built in or in a drawer" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"])
            .hurts(&[Power, Weight])
            .is(&[LapsOver])
            .may(&["hinge", "airflow", "capacity"]);
    WarmingDrawer: "warming drawer", "a heated drawer under an oven" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"])
            .hurts(&[Power, Heat])
            .is(&[LapsOver])
            .may(&["panel", "capacity"]);
    Refrigerator: "refrigerator" | "fridge" | "freezer" | "fridge freezer" | "fridge-freezer" | "wine refrigerator" | "wine cooler" | "wine fridge" | "beverage center" | "beverage cooler" | "beverage fridge" | "drinks fridge" | "ice maker" | "ice machine", "a refrigerator or freezer" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "size.depth with door",
                "size.depth with handle", "size.height to hinge", "hinge", "fit.needs.power",
            ])
            .hurts(&[Power, Weight, Tipping])
            .is(&[StandsTall, HasHandles, Cools])
            .may(&["panel", "capacity"]);
    PanelRefrigerator: "panel refrigerator" | "integrated refrigerator" | "integrated fridge" | "panel-ready refrigerator" | "panel-ready fridge" | "integrated column refrigerator" | "panel-ready column refrigerator" | "integrated fridge-freezer", "a refrigerator or freezer behind the joiner's panel" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "hinge", "panel.width", "panel.height",
                "panel.thickness", "panel.weight", "fit.needs.power",
            ])
            .hurts(&[Power, Weight, Tipping])
            .is(&[StandsTall, Cools])
            .may(&["capacity"]);
    Dishwasher: "dishwasher", "a dishwasher under a counter" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power", "fit.needs.water",
                "fit.needs.drain",
            ])
            .hurts(&[Power, Water, Weight])
            .is(&[HasHandles, WashesDishes, InNoCabinet])
            .may(&["panel", "capacity", "drain"]);
    PanelDishwasher: "panel dishwasher" | "integrated dishwasher" | "panel-ready dishwasher", "a dishwasher behind the joiner's panel" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "panel.width", "panel.height",
                "panel.thickness", "panel.weight", "fit.needs.power", "fit.needs.water", "fit.needs.drain",
            ])
            .hurts(&[Power, Water, Weight])
            .is(&[WashesDishes, InNoCabinet])
            .may(&["capacity", "drain"]);
    Hood: "hood" | "range hood" | "cooker hood" | "vent hood" | "extractor hood" | "extractor" | "rangehood" | "hood insert" | "hood liner" | "power pack", "a hood over a cooktop" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "airflow", "fit.needs.power",
                "fit.needs.duct",
            ])
            .hurts(&[Air, Heat, Power])
            .is(&[Hangs])
            .may(&["panel", "lamp", "kelvin", "lumens"]);
    Washer: "washer" | "washing machine" | "clothes washer" | "washer dryer" | "washer-dryer", "a clothes washer" =>
        into(Appliance)
            .needs(&[
                "maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power", "fit.needs.water",
                "fit.needs.drain",
            ])
            .hurts(&[Power, Water, Weight, Tipping])
            .is(&[InNoCabinet])
            .may(&["hinge", "capacity", "trap seal"]);
    Dryer: "dryer" | "tumble dryer" | "tumble drier" | "clothes dryer", "a clothes dryer" =>
        into(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth", "fit.needs.power"])
            .hurts(&[Gas, Power, Heat, Air, Weight, Tipping])
            .is(&[Heats, InNoCabinet])
            .may(&["fuel", "hinge", "capacity"]);
    Disposer: "disposer" | "garbage disposal" | "waste disposer" | "food waste disposer", "a waste disposer under a sink" =>
        onto(Appliance)
            .needs(&["maker", "model", "size.height"])
            .hurts(&[Power, Water])
            .may(&["mount", "outlet below bowl"]);
    Fan: "fan" | "exhaust fan" | "extractor fan" | "bath fan" | "bathroom fan", "an exhaust fan" =>
        onto(Appliance)
            .needs(&["maker", "model", "airflow"])
            .hurts(&[Power, Air])
            .is(&[Hangs])
            .due(HoldPoint::RoughInClosed)
            .may(&["damp rating", "recess", "mount"]);
    CountertopAppliance: "counter-top appliance" | "countertop appliance" | "small appliance" | "toaster" | "kettle" | "coffee machine", "an appliance that stands on the counter" =>
        onto(Appliance)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth"])
            .hurts(&[Power])
            .may(&["capacity"]);
    Sink: "sink" | "kitchen sink" | "utility sink" | "laundry sink" | "prep sink" | "butler sink" | "belfast sink", "a kitchen or utility sink" =>
        into(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "bowl depth", "mount", "drain"])
            .hurts(&[Water, Weight])
            .is(&[DropsIn, CutIntoCounter])
            .due(HoldPoint::CabinetsOrdered)
            .may(&["holes", "spread", "hole diameter", "drilled", "reveal", "corner radius", "trap seal", "apron height"]);
    Basin: "basin" | "washbasin" | "wash basin" | "lavatory" | "bathroom sink" | "vanity sink" | "vessel sink", "a washbasin" =>
        onto(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "mount", "drain"])
            .hurts(&[Water])
            .is(&[CutIntoCounter])
            .may(&["bowl depth", "holes", "spread", "hole diameter", "drilled", "reveal", "corner radius", "trap seal", "apron height"]);
    Tap: "tap" | "faucet" | "mixer" | "mixer tap" | "kitchen tap" | "kitchen faucet" | "basin tap" | "basin mixer" | "sink mixer" | "pot filler" | "boiling water tap" | "instant hot tap", "a tap with its handles" =>
        onto(Plumbing)
            .needs(&["maker", "model", "holes", "spread", "rear travel", "spout reach"])
            .hurts(&[Water])
            .may(&["hole diameter", "valve", "mount", "projection"]);
    TubFiller: "bath filler" | "tub filler" | "bath tap" | "bath mixer" | "tub faucet", "a tap that fills a tub, from its rim, the wall or the floor" =>
        onto(Plumbing)
            .needs(&["maker", "model"])
            .hurts(&[Water])
            .may(&["holes", "spread", "hole diameter", "spout reach", "valve", "mount", "projection"]);
    ShowerSet: "shower set" | "shower" | "shower mixer" | "shower valve" | "shower system", "shower head, valve and trim" =>
        onto(Plumbing)
            .needs(&["maker", "model", "valve"])
            .hurts(&[Water])
            .is(&[Bathes])
            .may(&["spout reach", "mount", "projection", "recess", "drain", "trap seal"]);
    Toilet: "toilet" | "wc" | "water closet", "a toilet" =>
        into(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "rough-in", "seat height"])
            .hurts(&[Water, Weight])
            .may(&["mount", "drain", "trap seal", "outlet height"]);
    Bidet: "bidet", "a bidet" =>
        onto(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "mount", "drain"])
            .hurts(&[Water, Weight])
            .due(HoldPoint::RoughInClosed)
            .may(&["holes", "spread", "hole diameter", "trap seal", "outlet height"]);
    Bathtub: "bathtub" | "bath" | "tub", "a bathtub" =>
        into(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "size.height", "drain"])
            .hurts(&[Water, Weight])
            .is(&[Bathes])
            .may(&["mount", "trap seal", "holes", "spread"]);
    ShowerGlass: "shower glass" | "shower screen" | "shower door" | "sliding shower door" | "bath screen" | "shower enclosure", "a shower screen or door" =>
        onto(Plumbing)
            .needs(&["maker", "model", "glass", "size.width", "size.height"])
            .hurts(&[Glass, Weight])
            .is(&[Bathes])
            .due(HoldPoint::GlassMeasured)
            .may(&["hinge", "thickness", "mount"]);
    ShowerTray: "shower tray" | "shower pan" | "shower base" | "shower receptor", "the tray that a shower stands in" =>
        onto(Plumbing)
            .needs(&["maker", "model", "size.width", "size.depth", "drain"])
            .hurts(&[Water, Weight])
            .is(&[Bathes])
            .due(HoldPoint::RoughInClosed)
            .may(&["trap seal", "mount", "thickness"]);
    Drain: "drain" | "floor drain" | "shower drain" | "linear drain" | "channel drain" | "floor waste", "a drain in the floor" =>
        onto(Plumbing)
            .needs(&["maker", "model"])
            .hurts(&[Water])
            .due(HoldPoint::RoughInClosed)
            .may(&["drain", "trap seal"]);
    Cistern: "cistern" | "in-wall tank" | "concealed cistern" | "toilet frame" | "flush plate", "a tank, its frame in the wall, or its plate" =>
        onto(Plumbing)
            .needs(&["maker", "model"])
            .hurts(&[Water])
            .due(HoldPoint::RoughInClosed)
            .may(&["mount", "recess", "drain"]);
    WaterHeater: "water heater" | "boiler" | "combi boiler" | "tankless water heater" | "tankless heater" | "instantaneous water heater" | "storage water heater" | "hot water cylinder" | "hot water tank" | "hot water heater" | "geyser", "what heats water for taps, or for radiators too" =>
        into(Plumbing)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth"])
            .hurts(&[Gas, Power, Water, Heat, Air, Weight]).is(&[Heats]).may(&["fuel", "capacity", "mount", "drain"]);
    FloorHeating: "floor heating" | "underfloor heating" | "heated floor" | "heating mat", "heat under a floor" =>
        onto(Plumbing)
            .needs(&["maker", "model"])
            .hurts(&[Power, Water, Heat])
            .due(HoldPoint::RoughInClosed)
            .may(&["thickness"]);
    Pendant: "pendant" | "pendant light" | "hanging light" | "chandelier", "a light hung from the ceiling" =>
        onto(Lighting)
            .needs(&[
                "maker", "model", "size.diameter", "drop", "canopy", "slope rating", "lamp", "kelvin", "dimming",
            ])
            .hurts(&[Power])
            .is(&[Hangs])
            .may(&["lumens", "damp rating", "glass"]);
    WallLight: "wall light" | "sconce" | "wall sconce" | "wall lamp" | "vanity light" | "picture light", "a light on a wall" =>
        onto(Lighting)
            .needs(&["maker", "model", "size.height", "canopy", "lamp", "kelvin", "dimming"])
            .hurts(&[Power])
            .is(&[Hangs])
            .may(&["lumens", "damp rating", "projection", "mount", "glass"]);
    CeilingLight: "ceiling light" | "downlight" | "recessed light" | "recessed downlight" | "can light" | "flush mount" | "spotlight", "a light on or in a ceiling" =>
        onto(Lighting)
            .needs(&["maker", "model", "lamp", "kelvin", "dimming"])
            .hurts(&[Power])
            .is(&[Hangs])
            .may(&["lumens", "damp rating", "canopy", "drop", "slope rating", "recess", "mount", "glass"]);
    StripLight: "strip light" | "light strip" | "under-cabinet light" | "under-cabinet lighting" | "cabinet light" | "cabinet lighting" | "led strip" | "led tape" | "tape light", "a strip of light under or in a cabinet" =>
        onto(Lighting)
            .needs(&["maker", "model", "size.length", "kelvin", "dimming"])
            .hurts(&[Power])
            .is(&[Hangs])
            .may(&["lamp", "lumens", "damp rating", "recess", "mount"]);
    StandingLamp: "standing lamp" | "lamp" | "table lamp" | "floor lamp" | "desk lamp", "a lamp that stands and is plugged in" =>
        onto(Lighting)
            .needs(&["maker", "model", "lamp", "kelvin"])
            .hurts(&[Power])
            .may(&["lumens", "dimming", "glass"]);
    Outlet: "outlet" | "socket" | "receptacle" | "switch" | "light switch" | "dimmer" | "cover plate" | "power point" | "wall plate", "an outlet or a switch with its plate" =>
        onto(Lighting)
            .needs(&["maker", "model"])
            .hurts(&[Power])
            .is(&[Hangs])
            .may(&["damp rating", "dimming", "recess"]);
    Pull: "pull" | "handle" | "cabinet pull" | "cabinet handle" | "cup pull" | "drawer pull", "a pull on doors and drawers" =>
        onto(Hardware)
            .needs(&["maker", "model", "centre to centre", "projection"])
            .may(&["fits", "screws"]);
    Knob: "knob" | "cabinet knob", "a knob on doors and drawers" =>
        onto(Hardware)
            .needs(&["maker", "model", "size.diameter", "projection"])
            .may(&["fits", "screws"]);
    Bar: "bar" | "towel bar" | "towel rail" | "rail" | "closet rod" | "hanging rail" | "wardrobe rail", "a bar or rail for towels or clothes" =>
        onto(Hardware)
            .needs(&["maker", "model", "size.length"])
            .is(&[Hangs])
            .may(&["capacity", "centre to centre", "projection", "screws", "mount"]);
    Hook: "hook" | "robe hook" | "towel ring" | "paper holder" | "toilet roll holder" | "toilet paper holder", "a hook, a ring or a paper holder" =>
        onto(Hardware)
            .needs(&["maker", "model"])
            .is(&[Hangs])
            .may(&["capacity", "projection", "screws", "mount"]);
    TowelWarmer: "towel warmer" | "heated towel rail" | "towel radiator" | "radiator", "a warmed rail, or a radiator" =>
        onto(Plumbing)
            .needs(&["maker", "model", "size.width", "size.height"])
            .hurts(&[Power, Water, Heat])
            .due(HoldPoint::RoughInClosed)
            .may(&["projection", "mount", "centre to centre"]);
    ShowerSeat: "shower seat" | "shower bench" | "folding seat", "a seat in a shower or at a tub" =>
        onto(Hardware)
            .needs(&["maker", "model", "size.width", "size.depth"])
            .hurts(&[Fall])
            .due(HoldPoint::RoughInClosed)
            .may(&["capacity", "seat height", "mount", "projection"]);
    WasteBin: "waste bin" | "trash pull-out" | "pull-out bin" | "bin" | "recycling bin", "a bin in a cabinet or beside it" =>
        onto(Hardware)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth"])
            .may(&["capacity", "mount"]);
    GrabBar: "grab bar" | "grab rail", "a bar to hold on to" =>
        onto(Hardware)
            .needs(&["maker", "model", "size.length"])
            .hurts(&[Fall])
            .is(&[Hangs])
            .due(HoldPoint::RoughInClosed)
            .may(&["capacity", "centre to centre", "projection", "screws", "mount"]);
    DoorHandle: "door handle" | "door lever" | "door knob" | "door hardware" | "lockset", "handles and locks of a room's door" =>
        onto(Hardware)
            .needs(&["maker", "model"])
            .may(&["centre to centre", "projection", "fits", "screws"]);
    Tile: "tile" | "tiles" | "wall tile" | "floor tile" | "tiling", "tile on wall or floor" =>
        onto(Tile)
            .needs(&["maker", "model", "face size", "thickness", "joint", "grout", "edge trim", "pattern"])
            .hurts(&[Dust])
            .may(&["laid", "sold", "sheen"]);
    Cabinet: "cabinet" | "cabinets" | "cabinetry" | "cupboard" | "cupboards" | "joinery" | "built-ins" | "vanity" | "vanity unit" | "vanity cabinet" | "locker" | "lockers" | "built-in bench" | "window seat" | "banquette" | "end panel" | "side panel" | "cover panel", "cabinets and their fronts" =>
        onto(Finish)
            .needs(&["maker", "door style"])
            .hurts(&[Weight, Tipping])
            .due(HoldPoint::CabinetsOrdered)
            .may(&["fronts", "stores", "finished ends", "grain", "hinge", "thickness", "edge", "glass", "panel", "recess", "set", "mount"]);
    Counter: "counter" | "countertop" | "counter top" | "worktop" | "work surface" | "benchtop" | "vanity top" | "sill", "a counter or sill" =>
        onto(Finish)
            .needs(&["maker", "thickness", "edge"])
            .hurts(&[Stone, Weight])
            .due(HoldPoint::CounterTemplated)
            .may(&["top", "drilled", "corner radius", "grain", "pattern", "edge trim", "laid"]);
    Splashback: "splashback" | "backsplash" | "upstand", "what covers the wall behind a counter, other than tile" =>
        onto(Finish)
            .needs(&["maker", "thickness"])
            .hurts(&[Stone, Weight])
            .due(HoldPoint::CounterTemplated)
            .may(&["top", "drilled", "edge", "edge trim", "grain", "pattern", "laid"]);
    Floor: "floor" | "flooring" | "wood floor" | "hardwood floor" | "parquet", "a floor other than tile" =>
        onto(Finish)
            .needs(&["maker", "model", "thickness", "pattern"])
            .may(&["laid", "sold", "face size", "joint", "edge", "edge trim", "grain", "sheen"]);
    Paint: "paint" | "limewash", "paint or limewash" =>
        onto(Finish)
            .needs(&["maker", "colour", "sheen"])
            .may(&["sold"]);
    Wallpaper: "wallpaper" | "wall covering" | "wallcovering", "paper or cloth on walls" =>
        onto(Finish)
            .needs(&["maker", "model", "pattern"])
            .may(&["sold", "laid", "face size"]);
    Boarding: "boarding" | "panelling" | "paneling" | "wainscot" | "wainscoting" | "beadboard" | "shiplap" | "cladding", "boards on walls or ceiling" =>
        onto(Finish)
            .needs(&["maker", "thickness", "pattern"])
            .may(&["laid", "sold", "face size", "joint", "edge", "edge trim", "grain", "sheen"]);
    Shelf: "shelf" | "shelves" | "shelving" | "open shelf" | "open shelves", "open shelves" =>
        onto(Finish)
            .needs(&["maker", "size.depth", "thickness"])
            .hurts(&[Weight])
            .may(&["capacity", "stores", "edge", "grain", "finished ends", "mount", "glass"]);
    Rug: "rug" | "runner", "a rug or runner" =>
        onto(Finish)
            .needs(&["maker", "face size"])
            .may(&["pattern", "thickness"]);
    MirrorCabinet: "mirror cabinet" | "medicine cabinet" | "bathroom cabinet", "a mirror cabinet, recessed or on the wall" =>
        into(Finish)
            .needs(&["maker", "model", "size.width", "size.height", "size.depth"])
            .hurts(&[Glass])
            .is(&[Hangs])
            .due(HoldPoint::RoughInClosed)
            .may(&["hinge", "recess", "stores", "glass", "thickness", "lamp", "kelvin", "lumens", "damp rating", "mount"]);
    Mirror: "mirror", "a mirror" =>
        onto(Finish)
            .needs(&["maker", "size.width", "size.height"])
            .hurts(&[Glass])
            .is(&[Hangs])
            .may(&["glass", "thickness", "edge", "mount", "recess"]);
    LitMirror: "lit mirror" | "mirror with light" | "mirror with lights" | "illuminated mirror" | "backlit mirror", "a mirror with a light of its own" =>
        onto(Finish)
            .needs(&["maker", "model", "size.width", "size.height", "lamp", "kelvin", "dimming"])
            .hurts(&[Glass, Power])
            .is(&[Hangs])
            .due(HoldPoint::RoughInClosed)
            .may(&["lumens", "damp rating", "glass", "thickness", "edge", "mount", "recess"]);
    Trim: "trim" | "skirting" | "skirting board" | "baseboard" | "moulding" | "molding" | "crown" | "architrave" | "casing", "skirting, casings and mouldings" =>
        onto(Finish)
            .needs(&["maker", "thickness"])
            .may(&["sold", "grain", "edge", "projection", "sheen"]);
    Door: "door" | "interior door" | "pocket door" | "sliding door" | "barn door" | "bifold door" | "folding door" | "swing door" | "double door" | "cased opening", "a room's door" =>
        onto(Finish)
            .needs(&["maker", "size.width", "size.height", "thickness"])
            .hurts(&[Weight])
            .may(&["hinge", "glass", "grain", "edge", "door style", "mount"]);
    WindowCovering: "window covering" | "blind" | "blinds" | "shade" | "roller shade" | "curtain" | "curtains" | "drapes" | "shutter" | "shutters", "blinds, shades, curtains, shutters" =>
        onto(Finish)
            .needs(&["maker", "size.width", "size.height"])
            .hurts(&[Cords])
            .may(&["mount", "pattern"]);
    Furniture: "furniture" | "stool" | "stools" | "bar stool" | "chair" | "chairs" | "table" | "bench" | "seat" | "sofa" | "couch" | "armchair" | "bed" | "desk", "a piece of furniture: a stool, a table, a bench" =>
        onto(Finish)
            .needs(&["maker", "size.width", "size.height", "size.depth"])
            .is(&[Furnishes])
            .may(&["seat height", "grain", "edge", "thickness", "glass", "fronts", "stores"]);
    StorageFurniture: "storage furniture" | "wardrobe" | "sideboard" | "bookcase" | "bookshelf" | "dresser" | "chest of drawers" | "shoe cabinet", "furniture that holds things, and tips when it is tall" =>
        onto(Finish)
            .needs(&["maker", "size.width", "size.height", "size.depth"])
            .hurts(&[Weight, Tipping])
            .is(&[Furnishes])
            .may(&["grain", "edge", "thickness", "glass", "fronts", "stores"]);
    StairPart: "stair part" | "stair" | "stairs" | "handrail" | "baluster" | "balustrade", "treads, rails and balusters" =>
        onto(Finish)
            .needs(&["maker", "thickness"])
            .may(&["grain", "edge", "face size", "sheen"]);
    Labour: "labour" | "labor" | "service" | "installation" | "delivery" | "fee" | "skip hire", "work or a service that is paid for" =>
        onto(Other).instead(&["supplier", "price", "quantity"]).no_goods()
            .may(&["photos", "lead time"]);
    Item: "item" | "other" | "sundry" | "accessory", "anything else that is ordered" =>
        onto(Other).instead(&["supplier", "lead time", "price", "photos"])
            .may(&["thickness", "mount", "pattern", "edge"]);
}
