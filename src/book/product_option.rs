//! One thing that can be chosen, and what is ordered with it.

use std::sync::Arc;

use rust_decimal::Decimal;

use super::{
    Burning, CabinetEnds, CutOut, CutSheet, Detail, Fact, Fit, Fronts, Fuel, Hole, Laid, Material, Nature, Order,
    OwnName, Photo, Setting, Sold, Stores, Top,
};
use crate::source::{Span, Spanned};
use crate::units::money::MoneyError;
use crate::units::{Counted, Date, LeadTime, Length, LengthRange, Money, Quantity, Sides, Weight};
use crate::vocabulary::supply::{Airflow, Side, Worded};
use crate::vocabulary::{EdgeTrim, Mount, Pattern, Pitch, Rating, ReadOnce, Slot, name, record, words};

words! {
    /// The side that a thing's door hangs on, seen from the front.
    pub enum Hinge {
        Left = "left" also "left hand" "left side" "left hand side" "on the left" "hinged left" "left-hinged" "L" "LH" "lh" "links" "izquierda" "a la izquierda",
        Right = "right" also "right hand" "right side" "right hand side" "on the right" "hinged right" "right-hinged" "R" "RH" "rh" "rechts" "derecha" "a la derecha",
        Either = "either" also "reversible" "either side" "either hand",
        Both = "both" also "both sides" "french doors" "pair" "left and right" "right and left" "left/right" "left & right" "two doors" "double doors" "one each side" "beide" "links und rechts" "izquierda y derecha",
        None = "none" also "fixed" "no hinge" "no door" "feststehend" "fija" "fijo",
    }
}

words! {
    /// How the rim of an undermount bowl stands to the counter's edge.
    pub enum Reveal {
        Positive = "positive" also "positive reveal",
        Flush = "flush" also "flush reveal" "zero" "zero reveal" "even",
        Negative = "negative" also "negative reveal",
    }
}

words! {
    /// The fronts that a pull or knob goes on.
    pub enum FitsFronts {
        Doors = "doors",
        Drawers = "drawers",
        DoorsAndDrawers = "doors and drawers",
    }
}

words! {
    /// The direction of a wood's grain on fronts.
    pub enum Grain {
        Upright = "upright" also "vertical" "stehend" "senkrecht",
        Level = "level" also "horizontal" "liegend" "waagerecht" "waagrecht",
        Matched = "matched",
        None = "none" also "no grain" "n/a" "sin veta" "ohne",
        Along = "along" also "lengthwise" "lengthways" "along the room" "along the length" "along the run" "with the length" "längs" "a lo largo",
        Across = "across" also "crosswise" "crossways" "across the room" "across the width" "quer" "a lo ancho",
    }
}

record! {
    marked
    pub struct ProductOption = OPTION("option", "one thing that can be chosen; a file in `products/` holds the same fields") {
        id: Spanned<String> = "id", "a short name, unique in the selection", "steel" as OwnName
            => marked "id" "its id in the selection";
        name: Slot<String> = "name",
            "what the client reads; maker and model if left out",
            "Brushed steel" => told "name" "what the client reads: its name, or maker and model, or its finish";
        product: Slot<String> = "product",
            "a product whose fields count where this option leaves them out",
            "vessary-30" as name::Product => unmarked "its fields are the option's own, and stand there";
        maker: Slot<String> = "maker", "who makes it", "Vessary" => marked;
        model: Slot<String> = "model", "the maker's model, to the last letter", "30 C-SS" => marked;
        finish: Slot<String> = "finish", "finish, in the maker's words", "brushed steel" => marked;
        colour: Slot<String> = "colour", "colour, with the maker's code", "sea lichen 14" => marked;
        description: Slot<String> = "description", "one line for the client", "Six sealed burners, one oven" => marked;
        size: Size = "size",
            "the thing itself, as it stands",
            "{width: 29 7/8\", height: 36\", depth: 26 1/4\"}" => marked;
        hinge: Slot<Hinge> = "hinge",
            "the side that its door hangs on, seen from the front",
            "left" => marked;
        material: Slot<Material> = "material",
            "whether it burns, for what stands near a cooking surface; left out, it counts as burning; of a counter, what it is made of",
            "does not burn" => unmarked "whether it burns is for the checks; what a counter is made of stands in its `top`";
        fuel: Slot<Fuel> = "fuel",
            "what a range, cooktop, oven or dryer heats with; left out, gas is reckoned with",
            "induction" => marked_since_2;
        supplier: Slot<String> = "supplier", "where it is bought", "Oren & Daughters" => unmarked "the same thing may come from somebody else";
        lead_time: Slot<LeadTime> = "lead time", "from order to delivery", "6-8 weeks" => unmarked "it moves with the days of the order";
        price: Slot<Money> = "price", "what the client pays for one, before tax unless the book says that tax is in its prices", "3180.00" => marked;
        cost: Slot<Money> = "cost", "what the firm pays for one; for the office alone", "2540.00" => unmarked "it is for the office alone";
        quantity: Slot<Quantity> = "quantity", "how many, or how much", "1" => marked;
        price_per: Slot<String> = "price per",
            "what the price is for, if not for one of the quantity",
            "sq ft" => marked_since_2;
        total: Slot<Money> = "total", "what the supplier says it comes to, before tax", "640.00" => unmarked "it is held against price and quantity, which are signed";
        order: Order = "order",
            "quotation, availability and order",
            "{good until: 2027-02-28, available on: 2027-01-12}" => unmarked "it is the supplier's word";
        sold: Sold = "sold", "the boxes or rolls that it comes in", "{box holds: 9.7 sq ft}" => unmarked "the quantity is signed";
        laid: Laid = "laid", "how a tile, floor or board is laid", "{runs: long side level, offset: 33 %}" => marked_since_2;
        fronts: Fronts = "fronts",
            "doors and drawer fronts of cabinets",
            "{doors: 6, drawers: 14, thickness: 3/4\"}" => unmarked "pulls are counted by it, whose quantity is signed";
        stores: Slot<Stores> = "stores", "what is inside cabinets", "{depth: 24\", shelves: roll-out}" => marked_since_2;
        top: Slot<Top> = "top",
            "a counter: its material, what carries it, how it is cut",
            "{material: stone, lies on: [island], overhang: 15\", supports: {by: steel bars, out: 12\", in: 24\"}}" => marked_since_2;
        nature: Slot<Nature> = "nature",
            "what of it is never twice the same, told to the client in standing words",
            "natural stone" => marked_since_3;
        sample_seen: Slot<Date> = "sample seen",
            "the day on which its sample was laid beside the others",
            "2027-01-08" => unmarked "it is a day of the office's";
        photos: Vec<Photo> = "photos",
            "pictures, the telling one first",
            "[range-front.jpg]" => told "pictures" "the pictures in their order, each as below";
        requires: Vec<Spanned<String>> = "requires",
            "kits, trims or fillers that the maker's sheet calls for",
            "[joining kit]" => unmarked "what of it is ordered stands in `accessories`";
        accessories: Vec<Accessory> = "accessories",
            "what is ordered with it",
            "[{name: joining kit, price: 140.00}]" => marked;
        drilled: Vec<Hole> = "drilled",
            "the holes to be drilled in a counter or a sink, each by its purpose",
            "[{for: kitchen tap, diameter: 1 3/8\", behind: 2 1/2\"}]" => marked_since_2;
        note: Slot<String> = "note", "a line for those who build, and for the office; the client does not read it", "With the seat down." => unmarked "it is for those who build";
        fit: Slot<Arc<Fit>> = "fit",
            "what the maker's own sheet asks of the opening",
            "{opening: {width: 30\" to 30 1/4\"}}" as ReadOnce => told "caution" "the caution on the maker's sheet, or null";
        cut_sheet: Slot<CutSheet> = "cut sheet",
            "the maker's own sheet: a PDF of the book's folder, a link, or both",
            "{file: range-30c.pdf, revision: D, date: 2026-09-04}" => unmarked "it is for those who build, in the marks of whose sheets it is";
        panel: Slot<Panel> = "panel",
            "the front panel that the joiner makes for it",
            "{width: 23 3/4\", height: 30\", thickness: 3/4\", weight: 16 lb}" => marked_since_2;
    }
    figures details: Vec<Detail> => marked by DetailName {
        Capacity = "capacity": String, "what it holds", "16 cu ft";
        Set = "set": Setting,
            "where its front is meant to be: in one plane with the fronts beside it, or before them",
            "flush";
        FinishedEnds = "finished ends": CabinetEnds, "which sides of cabinets are finished, where they are seen", "all";
        VariesBy = "varies by": Length,
            "how much one may be larger than another, for what is made by hand",
            "1/4\"";
        MadeAs = "made as": CutOut, "how the unit is made to be set in", "slide-in";
        Airflow = "airflow": Worded<Option<Airflow>>, "rated airflow, the most it moves", "390 cfm";
        Holes = "holes": u32, "how many holes it takes", "2";
        Spread = "spread": Worded<Option<LengthRange>>, "distance between holes, centre to centre", "8\"";
        RearTravel = "rear travel": Length, "how far handle or lever moves behind its hole's centre", "1 3/4\"";
        SpoutReach = "spout reach": Length, "from the hole's centre to the stream", "8 1/4\"";
        Valve = "valve": String, "the valve body that is built in, by model", "VB-2";
        Mount = "mount": Worded<Option<Mount>>, "how it is fixed: a bowl under, in or on the counter; a tap on the wall, the floor or a rim", "undermount";
        BowlDepth = "bowl depth": Length, "inside depth of the bowl", "9\"";
        Reveal = "reveal": Reveal,
            "whether the rim of an undermount bowl shows, is flush, or is covered",
            "flush";
        CornerRadius = "corner radius": Length, "radius of a bowl's inside corners, seen from above", "3/8\"";
        Drain = "drain": Worded<Option<Side>>, "where the outlet is", "rear centre";
        TrapSeal = "trap seal": Length, "how deep the water is that its trap holds", "2\"";
        OutletBelowBowl = "outlet below bowl": Length, "from the bottom of the bowl down to the middle of a disposer's outlet, by its sheet", "6 1/2\"";
        RoughIn = "rough-in": Length, "from the finished wall to the centre of a toilet's outlet in the floor; of one that goes out through the wall, `outlet height` counts instead", "12\"";
        OutletHeight = "outlet height": Length,
            "from the finished floor to the centre of a toilet's outlet in the wall: of one that hangs on the wall, stands against it or has a horizontal outlet", "8 5/8\"";
        SeatHeight = "seat height": Length, "top of the seat from the finished floor", "16 1/2\"";
        Drop = "drop": LengthRange, "from ceiling to the lowest part, as it can be set", "18\" to 72\"";
        Canopy = "canopy": Length, "width of the plate at the ceiling or wall", "5\"";
        SlopeRating = "slope rating": Worded<Option<Pitch>>,
            "the slope of ceiling that the canopy is made for",
            "up to 30 degrees";
        Lamp = "lamp": String, "lamp and base", "LED, E26, 9 W";
        Kelvin = "kelvin": u32, "colour temperature in kelvin", "2700";
        Lumens = "lumens": u32, "light that one of it gives, in lumens", "800";
        Dimming = "dimming": String, "how it dims", "to 10 %, trailing edge";
        DampRating = "damp rating": Worded<Option<Rating>>, "where it may hang", "damp";
        FaceSize = "face size": Sides, "a tile's face", "4\" x 4\"";
        Thickness = "thickness": Length, "thickness", "3/8\"";
        Joint = "joint": Length, "width of the joint", "1/8\"";
        Grout = "grout": String, "grout, by maker and colour", "Hollin 09 warm grey";
        EdgeTrim = "edge trim": Worded<EdgeTrim>, "how its edges end", "glazed edge pieces, 14 ft";
        Pattern = "pattern": Worded<Pattern>, "how it is laid, and in which direction", "stacked, long side level";
        CentreToCentre = "centre to centre": Length, "between the screws of a pull", "5 1/16\"";
        Projection = "projection": Length, "how far it stands out", "1 1/4\"";
        Fits = "fits": FitsFronts,
            "the fronts that a pull or knob goes on",
            "drawers";
        Screws = "screws": Length, "length of the screws that come with it", "1\"";
        Grain = "grain": Grain,
            "the direction of a wood's grain on the fronts",
            "upright";
        Edge = "edge": Worded<EdgeTrim>, "the profile of the front edge", "eased 1/8\"";
        DoorStyle = "door style": String, "style and overlay of doors and drawers", "shaker, full overlay";
        Sheen = "sheen": String, "sheen of a paint", "eggshell";
        ApronHeight = "apron height": Length, "height of a sink's front apron", "9 1/2\"";
        HoleDiameter = "hole diameter": LengthRange, "the holes that a tap goes through", "1 3/8\" to 1 1/2\"";
        Recess = "recess": Length, "how far it goes into a wall, from the finished face", "3 1/2\"";
        Glass = "glass": String, "glass and its thickness", "3/8\" tempered";
    }
    besides {
        /// What its kind needs and is written nowhere, in it, in the selection or in the product: paths such as
        /// `size.width`.
        unwritten: Vec<&'static str>;
        /// Facts of its kind's own that are written, and could not be read: that has been told.
        unread: Vec<DetailName>;
        /// The word that its kind is named by, which may say more than the kind: `wall-hung toilet`.
        called: String;
        /// How that word says that it is fixed, of a bowl: `undermount sink`; and where it stands.
        mount_by_kind: Option<(Mount, Span)>;
        /// Where it is written.
        span: Span = |fields| fields.span;
    }
}

impl Size {
    /// How far it goes along its wall: what has a length, and no width, as far as that.
    pub fn along(&self) -> &Slot<Length> {
        if self.width.is_absent() { &self.length } else { &self.width }
    }
}

impl ProductOption {
    /// Whether a fact of the kind's own is nowhere written, not even in words that could not be read.
    pub fn lacks(&self, name: DetailName) -> bool {
        self.detail(name).is_none() && !self.unread.contains(&name)
    }

    /// Whether it burns, where it says so.
    pub fn burning(&self) -> Option<Burning> {
        self.material.get().and_then(|material| material.burning())
    }

    /// What the client reads: its name, or maker and model, or its finish.
    pub fn title(&self) -> String {
        if let Some(name) = self.name.get() {
            return name.clone();
        }
        let words = [self.maker.text(), self.model.text()].into_iter().filter(|word| !word.is_empty());
        let title = words.collect::<Vec<_>>().join(" ");
        if title.is_empty() { self.finish.text().to_string() } else { title }
    }

    /// What the client pays for it: price times quantity, and what is ordered with it.
    pub fn price_in_all(&self) -> Option<Money> {
        let accessories = self.accessories.iter().map(|with| (with.price.get(), with.quantity.get()));
        in_all(self.price.get(), self.times(), accessories)
    }

    /// What of its price is for what goes with it; none where nothing with a price does.
    pub fn price_of_accessories(&self) -> Option<Money> {
        let alone = in_all(self.price.get(), self.times(), std::iter::empty())?;
        self.price_in_all()?.checked_sub(alone).ok().filter(|with| with.minor > 0)
    }

    /// What the firm pays for it; for the office alone.
    pub fn cost_in_all(&self) -> Option<Money> {
        let accessories = self.accessories.iter().map(|with| (with.cost.get(), with.quantity.get()));
        in_all(self.cost.get(), self.times(), accessories)
    }

    /// How many of what its price is for: its quantity, or what its boxes hold; none where the price is for another
    /// unit than either.
    pub fn priced(&self) -> Option<Quantity> {
        let quantity = self.quantity.get().cloned().unwrap_or_else(|| Quantity::count(1));
        match self.price_per.get() {
            Some(per) if !quantity.is_in(per) && self.quantity.get().is_some() => {
                let holds = self
                    .sold
                    .box_holds
                    .get()
                    .filter(|holds| quantity.counted() == Counted::Boxes && holds.is_in(per))?;
                Some(Quantity {
                    amount: quantity.amount.checked_mul(holds.amount)?.normalize(),
                    unit: holds.unit.clone(),
                })
            }
            _ => Some(quantity),
        }
    }

    /// As [`Self::priced`], and the quantity as it stands where the units are unlike, which is a finding.
    fn times(&self) -> Option<Decimal> {
        self.priced().or_else(|| self.quantity.get().cloned()).map(|quantity| quantity.amount)
    }

    /// A fact of the kind's own that is a length.
    pub fn length(&self, name: DetailName) -> Option<(Length, Span)> {
        self.detail(name).and_then(|detail| Some((*Length::of(&detail.value)?, detail.span)))
    }

    /// A fact of the kind's own that is a range of lengths.
    pub fn range(&self, name: DetailName) -> Option<LengthRange> {
        self.detail(name).and_then(|detail| LengthRange::of(&detail.value)).copied()
    }

    /// A fact of the kind's own that is a number.
    pub fn count(&self, name: DetailName) -> Option<(u32, Span)> {
        self.detail(name).and_then(|detail| Some((*u32::of(&detail.value)?, detail.span)))
    }

    /// A fact of the kind's own in words.
    pub fn words(&self, name: DetailName) -> Option<(&str, Span)> {
        self.detail(name).and_then(|detail| Some((String::of(&detail.value)?.as_str(), detail.span)))
    }

    /// The fact of a type that only one has: a word, or what was written with what is understood of it.
    pub fn fact<T: Fact>(&self) -> Option<(&T, Span)> {
        self.details.iter().find_map(|detail| Some((T::of(&detail.value)?, detail.span)))
    }

    /// What is understood of the one fact that is written in such words.
    pub fn understood<T>(&self) -> Option<(&T, Span)>
    where
        Worded<T>: Fact,
    {
        self.fact::<Worded<T>>().map(|(worded, at)| (&worded.is, at))
    }

    /// How it is fixed, as far as its words are understood.
    pub fn mount(&self) -> Option<Mount> {
        self.mount_and_place().map(|(mount, _)| mount)
    }

    /// The same, and where it is written: under `mount`, else in the word for its kind.
    pub fn mount_and_place(&self) -> Option<(Mount, Span)> {
        match self.understood::<Option<Mount>>() {
            Some((mount, at)) => Some(((*mount)?, at)),
            None => self.mount_by_kind,
        }
    }

    /// The words of its `mount`, and where they are written.
    pub fn mount_written(&self) -> Option<(&str, Span)> {
        self.fact::<Worded<Option<Mount>>>().map(|(mount, at)| (mount.words.as_str(), at))
    }

    /// The words of its `mount`, or an empty text.
    pub fn mount_words(&self) -> &str {
        self.mount_written().map_or("", |(words, _)| words)
    }

    /// A fact of the kind's own.
    pub fn detail(&self, name: DetailName) -> Option<&Detail> {
        self.details.iter().find(|detail| detail.name == name)
    }
}

/// One amount so many times (once, if nothing is said), and the accessories that have a price.
fn in_all<'a>(
    each: Option<&Money>,
    times: Option<Decimal>,
    accessories: impl Iterator<Item = (Option<&'a Money>, Option<&'a Quantity>)>,
) -> Option<Money> {
    let so_many = |money: &Money, times: Option<Decimal>| times.map_or(Ok(*money), |times| money.times(times));
    let own = so_many(each?, times).ok()?;
    let mut more = accessories
        .filter_map(|(price, quantity)| price.map(|price| so_many(price, quantity.map(|quantity| quantity.amount))));
    let sum: Result<Money, MoneyError> = more.try_fold(own, |sum, more| sum.checked_add(more?));
    sum.ok()
}

record! {
    marked group
    #[derive(Default)]
    pub struct Size = SIZE("size", "sizes of the thing as it stands") {
        width: Slot<Length> = "width", "overall width", "29 7/8\"" => marked;
        height: Slot<LengthRange> = "height", "overall height, as its legs can be set", "35 3/4\" to 36 3/4\"" => marked;
        depth: Slot<Length> = "depth", "depth of the case or body", "26 1/4\"" => marked;
        depth_with_door: Slot<Length> = "depth with door", "depth with the door, without its handle", "27 1/2\"" => marked;
        depth_with_handle: Slot<Length> = "depth with handle", "depth with door and handle", "28 1/2\"" => marked;
        height_to_hinge: Slot<Length> = "height to hinge", "height to the top of the hinge cap", "69 7/8\"" => marked;
        length: Slot<Length> = "length", "length, for what has one", "8\"" => marked;
        diameter: Slot<Length> = "diameter", "diameter, for what is round", "12\"" => marked;
        thickness: Slot<Length> = "thickness", "thickness", "1 1/4\"" => marked;
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Panel = PANEL("panel", "a front panel that the joiner makes, by the maker's sheet") {
        width: Slot<Length> = "width", "width", "23 3/4\"";
        height: Slot<LengthRange> = "height", "height", "29 13/16\" to 30 1/4\"";
        thickness: Slot<Length> = "thickness", "thickness", "3/4\"";
        weight: Slot<Weight> = "weight", "weight", "16 lb";
        drawn_by: Slot<String> = "drawn by", "who draws it", "designer";
        made_by: Slot<String> = "made by", "who makes it", "joiner";
    }
}

record! {
    marked
    pub struct Accessory = ACCESSORY("accessory", "something ordered with a thing: a kit, a trim, a filler") {
        name: Spanned<String> = required "name",
            "what it is, in the words of the maker's sheet",
            "joining kit" => marked;
        model: Slot<String> = "model", "the maker's model", "JK-2" => marked;
        price: Slot<Money> = "price", "what the client pays for one, before tax unless the book says that tax is in its prices", "140.00" => marked;
        cost: Slot<Money> = "cost", "what the firm pays for one; for the office alone", "96.00" => unmarked "it is for the office alone";
        quantity: Slot<Quantity> = "quantity", "how many", "1" => marked;
    }
}
