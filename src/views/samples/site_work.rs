//! The installer's pages of the made-up book.

use super::*;
use crate::views::shared::drawing::Drawing;
use crate::views::trades::cut_sheets::CutSheetLine;
use crate::views::trades::delivery::{DeliveryPage, Expected, ExpectedLine};
use crate::views::trades::index::{DeliveryLine, InstallerIndex, OpeningGroup, OpeningLine};
use crate::views::trades::opening::OpeningPage;
use crate::views::trades::opening_sizes::{SizeCell, SizeRow};
use crate::views::trades::opening_tape::{TapeDatum, TapeFace, TapeLine};
use crate::views::trades::opening_way_in::WayRow;
use crate::views::trades::sheets::{ItemBlock, ReadyLine, RowBlock, TableBlock, TradePage};

pub(super) fn index() -> InstallerIndex {
    let line = |number: &str, name: &str, shape, word: &str, gap: Option<&str>| OpeningLine {
        link: link(number, name, "openings/kitchen-refrigerator.html"),
        verdict: state(shape, word),
        thing: "Vessary 30 C, hinge left".into(),
        size: html(
            "30&nbsp;<i class=\"fr w\">1/16</i>″ × 5′-10&nbsp;<i class=\"fr w\">1/2</i>″ <span class=\"mm\">764 × 1791</span>",
        ),
        gap: gap.map(html),
    };
    InstallerIndex {
        sheet: Sheet { onward: None, mark: None, ..sheet("index.html", "F-00", "Openings") },
        lead: "Four openings. Two fit, one does not, one is still to be measured.".into(),
        facts: vec![fact("Datum", "finished floor, UON"), fact("Measured", "11 Jan 2027, site lead")],
        rooms: vec![
            OpeningGroup {
                drawings: vec![],
                sheets: vec![link("K-TL", "Tile and floor: Kitchen", "trades/kitchen/setter.html")],
                room: "Kitchen".into(),
                line: Some(html("Ceiling 8′-1″. <i class=\"fr\">3/4</i>″ of floor still to be laid.")),
                openings: vec![
                    line("K-07F", "Refrigerator", Shape::Fits, "Fits", Some("<i class=\"fr\">5/32</i>″ each side")),
                    line(
                        "K-08F",
                        "Dishwasher beside the sink, under the long window",
                        Shape::DoesNotFit,
                        "Does not fit",
                        Some("<i class=\"fr\">5/16</i>″ too high"),
                    ),
                ],
                found: vec!["The run along the range wall is left with no filler at its right end.".into()],
            },
            OpeningGroup {
                drawings: vec![],
                sheets: vec![],
                room: "Bath".into(),
                line: None,
                openings: vec![
                    line("B-02F", "Tub", Shape::FitUnknown, "A figure is missing", None),
                    line("B-03F", "Niche", Shape::NotMeasured, "Not measured yet", None),
                ],
                found: vec![],
            },
        ],
        deliveries: vec![expected()],
        cut_sheets: vec![makers()],
        notices: vec![connected()],
    }
}

fn cell(figure: &str, note: &str) -> SizeCell {
    SizeCell { figure: html(figure), note: (!note.is_empty()).then(|| html(note)) }
}

pub(super) fn refrigerator() -> OpeningPage {
    let view = |id: &str, name: &str| Drawing {
        name: name.into(),
        svg: drawing(id),
        caption: Some(html(&format!("<b>{name}.</b> The least width governs."))),
        ..Drawing::default()
    };
    OpeningPage {
        sheet: sheet("openings/kitchen-refrigerator.html", "K-07F", "Refrigerator, at the opening"),
        label: "Installer’s sheet · kitchen · K-07".into(),
        tape_scope: "Write each reading as the tape says it".into(),
        verdict: state(Shape::Fits, "Fits"),
        sentence: html(
            "<i class=\"fr\">5/32</i>″ (4 mm) on each side and <i class=\"fr\">5/8</i>″ (15.9 mm) above. The floor reading governs. Goes through the kitchen door only out of its carton, doors off.",
        ),
        facts: vec![
            fact("Unit", "Vessary 30 C, hinge left"),
            fact("Maker’s sheet", "rev. D, 4 Sep 2026"),
            fact("Datum", "finished floor; <i class=\"fr\">3/4</i>″ still to be laid"),
        ],
        heat: vec![],
        drawings: vec![view("front", "Front"), view("side", "Side"), view("plan", "Plan")],
        sizes: sizes(),
        sizes_from: Some("The maker’s sheet, rev. D, 4 Sep 2026. The opening: site lead, 11 Jan 2027".into()),
        services: services(),
        services_from: None,
        door: vec![fact("Hinge", "left"), fact("Opens", "115°; 29&nbsp;<i class=\"fr w\">3/4</i>″ into the room")],
        carton: vec![
            fact("Carton", "32″ × 34″ × 73″"),
            fact("Weight", "348 lb <span class=\"mm\">157.9 kg</span>; two people and a dolly"),
        ],
        way_in: way_in(),
        cautions: vec![
            notice(
                "Tipping",
                &[
                    "Fix the anti-tip bracket to blocking. The column can fall forward when both doors are open and loaded.",
                ],
            ),
            notice("Lifting", &["Lift over the oak, do not roll.", "Set the hinge side first."]),
        ],
        tape: tape(),
        tape_from: tape_from(),
        asks: super::asked::tape(),
        tape_needs: Some(html(NEEDS)),
        cut_sheets: vec![makers()],
    }
}

fn services() -> Vec<Fact> {
    vec![
        fact("Power", "120 V, 15 A, receptacle 5-15R, own circuit"),
        fact("Water", "<i class=\"fr\">1/4</i>″ line with a shut-off"),
    ]
}

/// What is needed at least, under the lines of the form.
const NEEDS: &str = "The width needs at least 30″ (762 mm), the height 70″ (1778 mm), the depth 24″ (610 mm).";

/// A trade's sheet with something of everything.
pub(super) fn counters() -> TradePage {
    let table = TableBlock {
        id: "pieces".into(),
        name: "Pieces".into(),
        columns: vec!["Piece".into(), "Size".into()],
        rows: vec![RowBlock {
            name: html("left of the range"),
            cells: vec![html("66″ × 25&nbsp;<i class=\"fr w\">1/2</i>″")],
        }],
    };
    TradePage {
        cut_sheets: vec![makers()],
        sheet: sheet("trades/kitchen/setter.html", "K-TL", "Tile and floor: Kitchen"),
        label: "Setter’s sheet · Kitchen · K-TL".into(),
        lead: html("What is laid here, and how."),
        facts: vec![fact("Heights", "from the finished floor")],
        notices: vec![notice("What can hurt", &["Here stone can hurt."])],
        to_settle: vec![notice("To settle first", &["The overhang has no support."])],
        cautions: vec![notice("What can hurt", &["Stone is heavy and brittle."])],
        ready: vec![ReadyLine { name: html("Cabinets"), known: html("set by 3 May 2027") }],
        drawings: vec![Drawing { name: "Layout".into(), svg: drawing("layout"), ..Drawing::default() }],
        tables: vec![table.clone()],
        items: vec![ItemBlock {
            id: "item-counter".into(),
            number: "K-03".into(),
            name: "Counter".into(),
            state: state(Shape::Waiting, "Waiting for a choice"),
            choice: html("Not chosen yet: Schist and Quartz. That leaves open: finish."),
            facts: vec![fact("Edge", "eased"), fact("Splash", "<b>not known yet</b>")],
            tables: vec![table],
            with_it: vec![fact("Ordered with it", "clips")],
        }],
    }
}

fn connected() -> Notice {
    notice("Power, gas and water", &["Licensed trades connect them, to local code and the maker’s instructions."])
}

fn makers() -> CutSheetLine {
    CutSheetLine {
        of: "Refrigerator".into(),
        name: "30 C installation guide, rev. D, 4 Sep 2026".into(),
        link: Some(
            "https://vessary.example/guides/refrigeration/30-c/installation-guide-for-the-trade-revision-d.pdf".into(),
        ),
        warns: Some("Its revision is not that of the figures on this sheet.".into()),
        ..CutSheetLine::default()
    }
}

fn expected() -> DeliveryLine {
    DeliveryLine {
        link: link("R-01", "Oren & Daughters: delivery", "deliveries/from-oren-daughters.html"),
        brings: "2 items".into(),
    }
}

pub(super) fn delivery() -> DeliveryPage {
    let line = |of: &str, name: &str, approved: Fact| ExpectedLine {
        of: of.into(),
        name: name.into(),
        approved: vec![approved],
    };
    let asked = Expected {
        at: Some(0),
        number: "K-07".into(),
        name: "Refrigerator".into(),
        room: "Kitchen".into(),
        standing: Some(state(Shape::Approved, "Approved")),
        mark: Some("9c41 0e7b".into()),
        lines: vec![
            line("model", "Model", fact("Maker", "Vessary")),
            line("finish", "Finish", fact("Finish", "brushed steel")),
        ],
        said: vec![html("12 Jan 2027, 4711, Teo Varrick: Damaged, Set aside; to be confirmed")],
    };
    let unasked = Expected {
        number: "K-08".into(),
        name: "Dishwasher".into(),
        room: "Kitchen".into(),
        standing: Some(state(Shape::Waiting, "Not approved: take nothing, call the office")),
        ..Expected::default()
    };
    DeliveryPage {
        sheet: sheet("deliveries/from-oren-daughters.html", "R-01", "Oren & Daughters: delivery"),
        label: "For receiving".into(),
        facts: vec![fact("Expected", "3 Apr 2027"), fact("Claims within", "5 working days")],
        cautions: vec![notice("Before you unload it", &["Heavy enough to injure."])],
        items: vec![asked, unasked],
        asks: asked::delivery(),
    }
}

fn tape_from() -> Vec<TapeDatum> {
    let face = |value: &str, name: &str, is_usual| TapeFace { value: value.into(), name: name.into(), is_usual };
    vec![TapeDatum {
        of: "floor".into(),
        name: "Heights are read from".into(),
        faces: vec![
            face("present-floor", "today’s floor", true),
            face("finished-floor", "the finished floor, which is laid", false),
        ],
    }]
}

fn tape() -> Vec<TapeLine> {
    let line = |name: &str, what: &str, at: Option<&str>| TapeLine {
        name: name.into(),
        what: what.into(),
        at: at.map(Into::into),
        on_screen_alone: false,
    };
    vec![
        line("Width at the floor", "width", Some("floor")),
        line("Height from FF", "height", Some("left")),
        line("Depth", "depth", None),
    ]
}

fn sizes() -> Vec<SizeRow> {
    let row = |name: &str, each: &str, shape, word: &str| SizeRow {
        name: name.into(),
        note: Some("least of three".into()),
        needs: cell("30″ to 30&nbsp;<i class=\"fr w\">1/2</i>″", "762 to 774.7 mm"),
        measured: cell("30&nbsp;<i class=\"fr w\">1/16</i>″", "≈&nbsp;763.6 mm, at the floor"),
        left: cell("<i class=\"fr\">1/16</i>″", "≈&nbsp;1.6 mm"),
        each_side: cell(each, ""),
        verdict: state(shape, word),
    };
    vec![
        row("Width", "<i class=\"fr\">5/32</i>″ left, <i class=\"fr\">5/32</i>″ right", Shape::Fits, "Fits"),
        row("Height", "<i class=\"fr\">5/8</i>″ above", Shape::Fits, "Fits"),
        row("Depth", "", Shape::NotMeasured, "Not measured"),
    ]
}

fn way_in() -> Vec<WayRow> {
    vec![
        WayRow {
            name: "Porch door".into(),
            clear: html("35&nbsp;<i class=\"fr w\">1/2</i>″ <span class=\"mm\">901.7 mm</span>"),
            carton: state(Shape::Fits, "passes"),
            bare: Some(state(Shape::Fits, "passes")),
        },
        WayRow {
            name: "Kitchen door".into(),
            clear: html("31&nbsp;<i class=\"fr w\">3/4</i>″"),
            carton: state(Shape::DoesNotFit, "stops, short by 1/4 in"),
            bare: None,
        },
    ]
}

/// An opening with nothing known but its name.
pub(super) fn hood() -> OpeningPage {
    let whole = refrigerator();
    OpeningPage {
        cut_sheets: vec![],
        sheet: sheet("openings/kitchen-hood.html", "K-05F", "Hood, at the opening"),
        verdict: state(Shape::NotMeasured, "Not measured yet"),
        sentence: "Measure width, height and depth before it is ordered.".into(),
        facts: vec![],
        drawings: vec![],
        sizes: vec![],
        sizes_from: None,
        services: vec![],
        door: vec![],
        carton: vec![],
        way_in: vec![],
        cautions: vec![],
        tape_needs: None,
        ..whole
    }
}
