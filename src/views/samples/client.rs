//! The client's pages of the made-up book.

use super::*;
use crate::language::Words;
use crate::views::client::board::{Board, Finish};
use crate::views::client::cover::{Cover, DueCard, ReviewStamp, RoomCard, Tally};
use crate::views::client::item::{Change, ItemPage, OptionCard, Signer};
use crate::views::client::room::{ItemLine, RoomPage, Why};
use crate::views::client::sign::{Condition, FitLine, SignGroup, SignItem, SignLine, SignPage, Total};
use crate::views::shared::drawing::Drawing;
use crate::views::shared::fit::Fit;

pub(super) fn cover() -> Cover {
    let words = [
        (Shape::Approved, "Approved"),
        (Shape::ApprovedAsNoted, "Approved as noted"),
        (Shape::Waiting, "Waiting"),
        (Shape::ChangedSinceSigned, "Changed since signed"),
        (Shape::ReviseAndResubmit, "Revise and resubmit"),
        (Shape::Rejected, "Rejected"),
    ];
    let words = words.map(|(shape, word)| (shape, word.to_owned())).into_iter().collect();
    let marks = [[Shape::Approved; 3].to_vec(), Shape::DECISIONS.to_vec()].concat();
    let rooms = ["Kitchen", "Bath", "Stair hall"].map(|room| (room.to_owned(), marks.clone()));
    let due = |day: &str, name: &str, shape, word: &str, why: &str| DueCard {
        day: day.into(),
        month: "Jan 2027".into(),
        link: link("K-07", name, "items/kitchen-refrigerator-3.html"),
        state: state(shape, word),
        holds_up: html(why),
    };
    let card = |name: &str, picture: Option<&str>, href: &str| RoomCard {
        link: Link { href: href.into(), name: name.into(), number: None },
        photo: picture.map(|picture| photo(picture, "")),
        line: "The galley behind the stair, looking to the yard door. 9 selections.".into(),
        marks: marks.clone(),
        marks_in_words: "4 approved, 1 approved as noted, 1 waiting".into(),
    };
    Cover {
        sheet: sheet("index.html", "G-00", "Alder Court"),
        picture: Some(photo("kitchen", "A narrow galley with a brick wall and green cabinets.")),
        lead: "A brick rowhouse, three rooms, thirty-three choices. Twenty-three are settled. Two are wanted from you by the end of the month.".into(),
        stamp: Some(ReviewStamp { word: "Issued for approval".into(), lines: vec!["Issue 3 · 11 Jan 2027".into()], void: false }),
        due: vec![
            due("25", "Refrigerator", Shape::ChangedSinceSigned, "Waiting for Sven", "It takes 9 to 11 weeks; later than this and the kitchen stands without one when the counters are set on 19 April."),
            due("29", "Hood, made by hand, with its duct and cap", Shape::Waiting, "Waiting for both of you", "Its duct must be known before rough-in closes on 12 March."),
        ],
        due_more: Some("9 more are to be decided, the next by 12 Feb 2027.".into()),
        tally: Tally::new(&rooms, &words, "All"),
        rooms: vec![
            card("Kitchen", Some("sink"), "rooms/kitchen.html"),
            card("Bath under the roof, with its dressing room", Some("bath"), "rooms/bath.html"),
            card("Stair hall", None, "rooms/kitchen.html"),
        ],
        sheets: (1..12).map(|n| link(&format!("K-{n:02}"), "Refrigerator, beside the yard door", "items/kitchen-refrigerator-1.html")).collect(),
        papers: vec![link("S-00", "Sign-off sheets, whole book (PDF)", "sign.html")],
    }
}

fn items() -> Vec<ItemLine> {
    let line = |number: &str, name: &str, shape, word: &str| ItemLine {
        link: link(number, name, "items/kitchen-refrigerator-3.html"),
        photo: (number != "K-04").then(|| photo("t-fridge", "")),
        line: html("Soapstone, undermount, 28 × 17 × 8″; reveal flush with the cutout."),
        state: state(shape, word),
    };
    vec![
        line("K-01", "Cabinets", Shape::Approved, "Approved"),
        line("K-02", "Sink", Shape::ApprovedAsNoted, "Approved as noted, by both. One condition open"),
        line("K-03", "Tap", Shape::Waiting, "Waiting for Sven"),
        line(
            "K-04",
            "Light over the ledge, the long one that was in the old dining room",
            Shape::ReviseAndResubmit,
            "Revise and resubmit",
        ),
        line("K-05", "Hood", Shape::Rejected, "Rejected"),
    ]
}

pub(super) fn kitchen() -> RoomPage {
    let finish = |name: &str, permille, picture: &str, place: &str| Finish {
        name: name.into(),
        place: Some(html(place)),
        permille,
        photo: Some(photo(picture, "")),
        href: None,
    };
    let drawing = Drawing {
        name: "Elevation, east wall".into(),
        scope: Some("Inches, millimetres beside; to finished faces UON".into()),
        svg: drawing("east"),
        narrow: Some(drawing("east-narrow")),
        caption: Some(html("Broken lines meet at the hinge. Tags are the selections listed below.")),
    };
    RoomPage {
        sheet: sheet("rooms/kitchen.html", "K-00", "Kitchen"),
        place: Some("Ground floor, rear ell".into()),
        lead: Some(html(
            "A galley 7′-10″ wide between the old party wall and the side yard: one working wall, one ledge to lean on.",
        )),
        facts: vec![
            fact("Room", "7′-10″ × 15′-2″ <span class=\"mm\">2388 × 4623</span>"),
            fact("Ceiling", "8′-1″ <span class=\"mm\">2464</span>"),
            fact("Still to be laid", "<i class=\"fr\">3/4</i>″ <span class=\"mm\">19</span> oak"),
        ],
        board: Some(Board::new(
            Words::default(),
            vec![
                finish("Limewash, bone", 340, "limewash", "walls and ceiling, two coats over primer"),
                finish("White oak, oiled", 210, "oak", "floor, 4&nbsp;<i class=\"fr w\">5/8</i>″ boards"),
                finish("Bay-leaf green, eggshell", 170, "bayleaf", "base cabinets and the long ledge"),
                finish("Party wall brick, as found", 110, "brick", "brushed and sealed, no paint"),
                finish("Celadon glazed tile", 80, "celadon", "4 × 8″, stack bond, <i class=\"fr\">1/8</i>″ joint"),
                finish("Black walnut, oiled", 50, "walnut", "refrigerator fronts, shelves"),
                finish("Soapstone, honed", 30, "soapstone", "counter and sill"),
                finish("Oiled bronze", 10, "bronze", "hood, pulls, tap"),
            ],
        )),
        drawings: vec![drawing],
        why: Some(Why {
            notes: html(
                "<p>You said the kitchen should feel like the back of a shop: <em>one bench</em>, everything in reach, nothing to walk around.</p><ul><li>take out, wash, cut, cook</li><li>the green stays low</li></ul><p>Nothing hangs over the sink.</p>",
            ),
            by: Some("Ines Tarrow, 9 January 2027".into()),
        }),
        photos: vec![Photo {
            caption: Some("Range and hood from the ledge.".into()),
            ..photo("range", "A range under a bronze hood.")
        }],
        items: items(),
        notices: vec![notice(
            "Good to know",
            &["The party wall is shared. Its owner has agreed to the beam pocket in writing."],
        )],
        paper: Some(link("S-K", "Sign-off sheet, kitchen (PDF)", "sign.html")),
    }
}

/// A room without a picture.
pub(super) fn bath() -> RoomPage {
    let finish = |name: &str, permille| Finish { name: name.into(), permille, ..Finish::default() };
    RoomPage {
        sheet: sheet("rooms/bath.html", "B-00", "Bath under the roof, with its dressing room"),
        board: Some(Board::new(Words::default(), vec![finish("Terrazzo", 600), finish("Chalk paint", 400)])),
        items: items().into_iter().map(|item| ItemLine { photo: None, ..item }).collect(),
        ..RoomPage::default()
    }
}

/// A selection with so many options.
pub(super) fn item(options: usize) -> ItemPage {
    let signer = |name: &str, shape, word: &str, stamp: Option<ReviewStamp>, says: &str| Signer {
        name: name.into(),
        state: state(shape, word),
        stamp,
        says: Some(html(says)),
    };
    let lines = vec!["option A · 9 Jan 2027 · 71d2 0b3e".into()];
    let stamp = ReviewStamp { word: "Approved as noted".into(), lines, void: true };
    ItemPage {
        sheet: sheet(&format!("items/kitchen-refrigerator-{options}.html"), "K-07", "Refrigerator"),
        label: "Kitchen · K-07".into(),
        lead: Some(html(
            "It goes into the tall opening at the yard end, 30&nbsp;<i class=\"fr w\">1/16</i>″ wide at its narrowest.",
        )),
        state: Some(state(Shape::ChangedSinceSigned, "Changed since signed. Waiting for Sven")),
        facts: vec![
            fact("Order by", "<b>25 January 2027</b> for option A"),
            fact("Holds up", "counters set, 19 April"),
            fact("Allowance", "$3,400.00"),
        ],
        changes: vec![Change {
            issue: "3".into(),
            what: "Option A, price".into(),
            bare: false,
            was: "$5,480.00".into(),
            now: "$5,640.00".into(),
            because: Some("The cabinetmaker’s fronts went up.".into()),
        }],
        options: (0..options).map(|at| option(at, options)).collect(),
        layouts: vec![],
        why: Some(html("<p>The tall opening wants one quiet front.</p>")),
        cautions: vec![notice(
            "Good to know",
            &["A chosen refrigerator moves its neighbours: the drawer cabinet K-01 and the water line in the wall."],
        )],
        signers: vec![
            signer(
                "Ada Okonedo",
                Shape::ChangedSinceSigned,
                "Changed since signed: void. Asked again",
                Some(stamp),
                "“Yes to walnut, if the freezer drawer closes softly.”",
            ),
            signer("Sven Lindqvist", Shape::Waiting, "Waiting for you", None, "Wanted by 25 January."),
        ],
        paper: (options != 2).then(|| link("S-K", "Sign-off sheet, kitchen (PDF)", "sign.html")),
        asked: (options != 1).then(super::asked::asked),
    }
}

fn option(at: usize, of: usize) -> OptionCard {
    let rows = [
        ("Finish", "Oiled walnut fronts by the cabinetmaker, bronze pulls"),
        ("Width", "29&nbsp;<i class=\"fr w\">3/4</i>″ <span class=\"mm\">755.7 mm</span>"),
        ("Height", "5<i class=\"ft\">′</i>-9&nbsp;<i class=\"fr w\">7/8</i>″ <span class=\"mm\">1774.8 mm</span>"),
        ("Depth with handle", "26&nbsp;<i class=\"fr w\">7/8</i>″ <span class=\"mm\">≈&nbsp;682.6 mm</span>"),
        ("Lead time", "9 to 11 weeks; order by <b>25 January</b>"),
    ];
    let names = [
        "Vessary 30 C, behind walnut",
        "Halloway Larder 68",
        "Ormund SR-31",
        "Tarnbrook Column with the long name, left hinge",
        "Quill",
    ];
    let (shape, word, sentence) = match at {
        2 => (
            Shape::DoesNotFit,
            "Does not fit",
            "<i class=\"fr\">5/16</i>″ (7.9 mm) too wide for the opening before any play.",
        ),
        3 => (Shape::FitUnknown, "Not known", "The maker’s sheet gives no air gap at the back."),
        _ => (
            Shape::Fits,
            "Fits",
            "<i class=\"fr\">5/32</i>″ (4 mm) on each side. Only the pull stands 1&nbsp;<i class=\"fr w\">3/8</i>″ (34.9 mm) proud of the counter.",
        ),
    };
    OptionCard {
        id: names[at].to_lowercase().replace(' ', "-"),
        letter: (of > 1).then(|| ["A", "B", "C", "D", "E"][at].to_owned()),
        name: names[at].into(),
        line: Some("Panel-ready column, hinge left".into()),
        chosen: at == 0,
        photo: (at != 4).then(|| photo(["fridge-a", "fridge-b", "fridge-c"][at % 3], "A refrigerator in its opening.")),
        price: Some("$5,640.00".into()),
        against: Some("$2,240.00 over the allowance of $3,400.00".into()),
        rows: rows.map(|(name, value)| fact(name, value)).to_vec(),
        fit: (at != 4).then(|| Fit {
            verdict: state(shape, word),
            sentence: html(sentence),
            drawing: (at < 3).then(|| drawing(&format!("fit-{at}"))),
        }),
    }
}

fn fits() -> Vec<FitLine> {
    vec![
        FitLine {
            option: Some("A, bridge".into()),
            verdict: state(Shape::Fits, "Fits"),
            sentence: "1″ to spare behind its levers.".into(),
        },
        FitLine {
            option: Some("B, tall".into()),
            verdict: state(Shape::DoesNotFit, "Does not fit"),
            sentence: "Too high under the shelf.".into(),
        },
    ]
}

pub(super) fn sign() -> SignPage {
    let item = |name: &str, shape, word: &str| SignItem {
        link: link("K-07", name, "items/kitchen-refrigerator-3.html"),
        photo: (name != "Tap").then(|| photo("t-tap", "")),
        description: html("Penmoor bridge, oiled bronze, two holes at 8″, reach 7&nbsp;<i class=\"fr w\">1/4</i>″"),
        quantity: Some("2".into()),
        fits: fits(),
        due: Some("25 Jan 2027, when Counter, cut for it, must be ordered".into()),
        mark: Some("50b8 e611".into()),
        states: vec![state(shape, word), state(Shape::Waiting, "Waiting")],
        price: Some("865.00".into()),
    };
    let room = |name: &str| SignGroup {
        room: Link { href: "rooms/kitchen.html".into(), name: name.into(), number: None },
        heed: Some("Here electricity can hurt. The full words stand below these items.".into()),
        cautions: vec!["Electricity can kill.".into()],
        items: vec![
            item("Tap", Shape::ApprovedAsNoted, "Approved as noted"),
            item("Wall tile", Shape::Approved, "Approved"),
        ],
    };
    let total = |name: &str, figure: &str, main| Total { name: name.into(), figure: figure.into(), main };
    SignPage {
        sheet: sheet("sign.html", "S-01", "What is being signed"),
        statement: "Each of you signs for the marks below, and for nothing else. If one of these items changes, its mark changes, and you are asked again.".into(),
        facts: vec![fact("Items", "four, of two rooms"), fact("Total", "<b>$3,745.48</b> with tax"), fact("To sign", "Ada Okonedo and Sven Lindqvist")],
        terms: "Prices in US dollars, freight included".into(),
        signers: vec!["Ada Okonedo".into(), "Sven Lindqvist".into()],
        lines: vec![
            SignLine { name: "Ada Okonedo".into(), shown: "Ada Okonedo".into(), how: Some("by private link; of issue 3, all 4 items".into()), date: "16 Jan 2027".into() },
            SignLine { name: "Sven Lindqvist".into(), ..SignLine::default() },
        ],
        groups: vec![room("Kitchen"), room("Bath")],
        totals: vec![
            total("Four items", "3,460.00", false),
            total("Tax, 8.25 %", "285.48", false),
            total("Total to sign for", "$3,745.48", true),
            total("Allowances for the four", "3,000.00", false),
            total("Over the allowances, before tax", "460.00", false),
        ],
        conditions: vec![Condition { link: link("K-03", "Tap", "items/kitchen-refrigerator-3.html"), state: state(Shape::ApprovedAsNoted, "Approved as noted"), sentence: "Ada: “if the handles clear the sill.”".into() }],
        papers: vec![link("S-00", "The whole book (PDF)", "sign.html"), link("S-K", "Kitchen (PDF)", "sign.html"), link("S-B", "Bath (PDF)", "sign.html")],
        asked: Some(super::asked::asked()),
    }
}
