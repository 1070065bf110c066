//! Counters: what they are made of, what carries them, and the slabs that they are cut from.

use crate::source::Spanned;
use crate::source::yaml::Node;
use crate::units::Length;
use crate::vocabulary::{
    Faults, FieldType, Named, NamedValue, Shown, ShownField, ShownValue, Since, Slot, Value, record, words,
};

words! {
    /// What counters are made of.
    pub enum TopMaterial {
        Stone = "stone" also "natural stone" "granite" "marble" "quartzite" "slate" "limestone" "soapstone" "travertine",
        Quartz = "quartz" also "engineered stone" "engineered quartz" "quartz composite",
        Porcelain = "porcelain" also "sintered stone" "ceramic",
        Concrete = "concrete" also "terrazzo",
        SolidSurface = "solid surface" also "acrylic",
        Wood = "wood" also "timber" "butcher block" "oak" "beech" "walnut" "maple" "bamboo",
        Laminate = "laminate" also "compact laminate" "linoleum",
        Metal = "metal" also "steel" "stainless steel" "copper" "zinc" "brass",
    }
}

impl TopMaterial {
    /// Whether it breaks rather than bends, and its dust harms lungs.
    pub fn is_stony(self) -> bool {
        matches!(self, Self::Stone | Self::Quartz | Self::Porcelain | Self::Concrete)
    }
}

words! {
    /// Who has the last word on seams and on the run of the veins.
    pub enum LastWord {
        SignedDrawing = "signed drawing",
        FabricatorDecides = "fabricator decides",
    }
}

words! {
    /// What carries an overhang.
    pub enum Support {
        Brackets = "brackets",
        SteelBars = "steel bars",
        Legs = "legs",
        Panels = "panels",
    }
}

words! {
    /// Whether pieces may be turned on their slab.
    pub enum Direction {
        Kept = "kept",
        Free = "free",
    }
}

words! {
    /// What stands below a seam, or the cutout that it runs through.
    pub enum SeamOver {
        Cabinet = "cabinet",
        Dishwasher = "dishwasher",
        Sink = "sink",
        Cooktop = "cooktop",
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Splash = SPLASH("splash", "what stands up behind a counter: an upstand, tile, a raised back") {
        thickness: Slot<Length> = "thickness", "how far its face stands out from the wall, or from the counter's edge", "3/4\"";
        height: Slot<Length> = "height", "its height above the counter", "4\"";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Top = TOP("top", "a counter or an island's top: its material, what carries it, and how it is cut from its slabs") {
        material: Slot<TopMaterial> = "material", "what it is made of", "stone";
        lies_on: Vec<Spanned<String>> = "lies on",
            "the runs, islands and places to sit that it covers, by their names in the room",
            "[range wall, island]";
        depth: Slot<Length> = "depth", "from its back to its front edge, overhangs counted", "42\"";
        overhang: Slot<Length> = "overhang", "the farthest that it stands out past what carries it", "15\"";
        free_span: Slot<Length> = "free span",
            "the widest gap below it with nothing that carries it, such as a dishwasher's",
            "24\"";
        supports: Slot<Supports> = "supports",
            "what carries its overhang",
            "{by: steel bars, out: 12\", in: 24\", apart: 24\"}";
        slab: Slot<Slab> = "slab",
            "the slabs that are held for it",
            "{size: 126\" x 63\", usable: 122\" x 60\", kerf: 1/8\", direction: kept, count: 1}";
        pieces: Named<Piece> = "pieces",
            "what is cut in one piece, along the run and from front to back",
            "{left of range: 66\" x 25 1/2\"}";
        seams: Vec<Seam> = "seams", "where pieces meet", "[{at: left of the sink, over: cabinet}]";
        layout: Slot<LastWord> = "layout", "who has the last word on seams and on the run of the veins", "signed drawing";
        splash: Slot<Splash> = "splash", "what stands up from it along the wall", "{thickness: 3/4\", height: 4\"}";
        inside_corners: Slot<Length> = "inside corners",
            "radius of the inside corners of its cutouts; square is `0\"`",
            "3/8\"";
    }
}

record! {
    shown
    pub struct Supports = SUPPORTS("supports", "what carries an overhang, as the fabricator asks for it") {
        by: Spanned<Support> = "by", "what they are", "legs";
        out: Slot<Length> = "out", "how far they reach out past the cabinets", "12\"";
        inward: Slot<Length> = "in", "how far they reach back over the cabinets", "24\"";
        apart: Slot<Length> = "apart", "the widest distance between two of them", "24\"";
    }
}

record! {
    shown
    #[derive(Default)]
    pub struct Slab = SLAB("slab", "the slabs that a top is cut from, as the yard measured them") {
        number: Slot<String> = "number", "the yard's own number of them, as it stands on their edges", "lot 77, slabs 3 and 4";
        size: Slot<(Length, Length)> = "size", "length and width", "126\" x 63\"";
        usable: Slot<(Length, Length)> = "usable", "what is left of them without rough edges and flaws", "122\" x 60\"";
        kerf: Slot<Length> = "kerf", "what the saw takes", "1/8\"";
        direction: Slot<Direction> = "direction",
            "whether every piece keeps the run of the stone, its first side along the slab's first, or may be turned",
            "kept";
        count: Slot<u32> = "count", "how many are held", "2";
    }
}

/// What is cut in one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Piece {
    /// Its name in the book.
    pub name: Spanned<String>,
    /// Along the run.
    pub length: Length,
    /// From front to back.
    pub depth: Length,
}

impl Shown for Piece {
    fn shown(&self) -> ShownValue {
        let field = |key, value| ShownField::new(key, Since::Second, value);
        ShownValue::Group(vec![field("name", self.name.shown()), field("size", (self.length, self.depth).shown())])
    }
}

impl NamedValue for Piece {
    const TYPE: FieldType = FieldType::TwoSides;

    fn name(&self) -> &str {
        &self.name
    }

    fn read_named(name: &Spanned<String>, node: &Node, faults: &mut Faults) -> Option<Self> {
        let (length, depth) = <(Length, Length)>::read(node, faults)?;
        Some(Self { name: name.clone(), length, depth })
    }
}

record! {
    shown
    pub struct Seam = SEAM("seam", "a place where two pieces of a top meet") {
        at: Spanned<String> = "at", "where it is", "left of the sink";
        over: Slot<SeamOver> = "over", "what stands below it, or the cutout that it runs through", "cabinet";
        on: Slot<String> = "on", "the run that it is on, by its name in the room", "range wall";
        from_left: Slot<Length> = "from left", "from the left end of that run's wall to it", "62\"";
        reinforced: Slot<bool> = "reinforced", "whether it is reinforced from below", "true";
    }
}
