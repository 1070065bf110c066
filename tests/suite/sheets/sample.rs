//! Invented sheets to set: a house, its rooms, its items.

use bookmatch::views::paper::sign_off::*;
use bookmatch::views::paper::sign_off_item::*;
use image::{ImageFormat, Rgb, RgbImage};

pub fn line(label: &str, value: &str) -> LabelledLine {
    LabelledLine { label: label.to_owned(), value: value.to_owned() }
}

/// A kitchen of three items, none with anything unusual.
pub fn kitchen() -> SignOff {
    SignOff {
        language: "en".to_owned(),
        paper: PaperSize::A4,
        draft: false,
        project: project(),
        sheet: SheetTitle {
            code: "S-K".to_owned(),
            title: "What is being signed".to_owned(),
            scope: "Kitchen".to_owned(),
            mark: "f20a 91c7".to_owned(),
        },
        issue: "3, for approval".to_owned(),
        date: "11 January 2027".to_owned(),
        statement: "Each of you signs for the marks below, and for nothing else. If an item changes, \
                    its mark changes, and you are asked again."
            .to_owned(),
        facts: vec![
            line("Items", "two, of the kitchen; one still to be chosen"),
            line("Total", "$5,683.13 with tax"),
            line("To sign", "Ife Okwuosa and Jon Halvard"),
            line("Days", "no change to the dates"),
        ],
        rooms: vec![SignOffRoom {
            name: "Kitchen".to_owned(),
            note: "Prices in US dollars, before tax".to_owned(),
            items: vec![range(), refrigerator(), pendants()],
            subtotal: Some(line("Two items; the refrigerator is not in it", "$5,250.00")),
        }],
        totals: vec![
            line("Two items", "$5,250.00"),
            line("Tax, 8.25 %", "$433.13"),
            line("Total to sign for", "$5,683.13"),
        ],
        allowances: vec![SignOffAllowance {
            name: "Appliances".to_owned(),
            allowed: "$9,500.00".to_owned(),
            chosen: "$4,310.00".to_owned(),
            rest: "$5,190.00 left".to_owned(),
        }],
        cautions: vec!["Gas is connected by a licensed fitter; local code governs.".to_owned()],
        approvers: vec![
            SheetSigner { name: "Ife Okwuosa".to_owned(), ..SheetSigner::default() },
            SheetSigner { name: "Jon Halvard".to_owned(), ..SheetSigner::default() },
        ],
        rule: "Both must sign; each signs alone".to_owned(),
        revisions: Vec::new(),
        part: None,
    }
}

fn project() -> ProjectTitle {
    ProjectTitle {
        title: "Tansy Row 9".to_owned(),
        number: "2026-031".to_owned(),
        client: "The Okwuosa-Halvard household".to_owned(),
        firm: "Brannock & Ilse".to_owned(),
        designer: "Mirel Sandoe".to_owned(),
        address: "9 Tansy Row, Port Ellery".to_owned(),
    }
}

/// A whole house of `count` items in four rooms; some items are long, some are short.
pub fn house(count: usize) -> SignOff {
    let mut view = kitchen();
    view.sheet.code = "S-00".to_owned();
    view.sheet.scope = "Whole book".to_owned();
    let rooms = ["Kitchen", "Bath under the roof", "Laundry", "Hall and stair"];
    view.rooms = rooms.iter().map(|name| SignOffRoom { name: (*name).to_owned(), ..view.rooms[0].clone() }).collect();
    for (r, room) in view.rooms.iter_mut().enumerate() {
        room.items = (r..count).step_by(rooms.len()).map(|n| numbered(r, n)).collect();
    }
    view
}

fn numbered(room: usize, n: usize) -> SignOffItem {
    let mut item = [range(), refrigerator(), pendants()][n % 3].clone();
    item.tag = format!("{}-{n:02}", ["K", "B", "L", "H"][room]);
    item.description.extend((0..n % 7).map(|i| line("Remark", &format!("the {i}th thing worth knowing of it"))));
    item
}

pub fn range() -> SignOffItem {
    SignOffItem {
        tag: "K-04".to_owned(),
        name: "Range".to_owned(),
        option: "Brushed steel".to_owned(),
        product: "Quarrow, Six 30".to_owned(),
        told: String::new(),
        description: vec![
            line("Size", "29 7/8\" × 35 3/4\" to 36 3/4\" × 26 1/4\" (759 × 908 to 933 × 667 mm)"),
            line("Finish", "brushed steel, bronze knobs"),
            line("Power", "120 V 15 A, 5-15 receptacle"),
            line("Gas", "51,000 Btu/h, natural gas"),
            line("Lead time", "6 to 8 weeks"),
        ],
        quantity: "1".to_owned(),
        unit_price: String::new(),
        with_it: String::new(),
        price: "$4,310.00".to_owned(),
        mark: "c307 5fa2".to_owned(),
        state: SignOffState { shape: SignOffShape::Approved, words: "Approved by both, 9 January 2027".to_owned() },
        picture: Some(PictureRef {
            key: "range".to_owned(),
            alt: "A steel range with six burners".to_owned(),
            width: 400,
            height: 300,
        }),
        why: "Six burners, and an oven for the bread.".to_owned(),
        fit: Some(SignOffFit {
            misfit: false,
            verdict: "Fits".to_owned(),
            sentence: "With 1/16″ (1.6 mm) on each side.".to_owned(),
        }),
        cautions: vec!["gas (1)".to_owned()],
        hurts: Vec::new(),
        choices: Vec::new(),
        others: Vec::new(),
        layouts: Vec::new(),
        decided: Vec::new(),
    }
}

pub fn refrigerator() -> SignOffItem {
    SignOffItem {
        tag: "K-07".to_owned(),
        name: "Refrigerator".to_owned(),
        option: String::new(),
        product: String::new(),
        told: String::new(),
        description: vec![line("Opening", "30 1/16\" × 84\" (764 × 2134 mm)"), line("Hinge", "left")],
        quantity: "1".to_owned(),
        unit_price: String::new(),
        with_it: String::new(),
        price: String::new(),
        mark: "9c41 0e7b".to_owned(),
        state: SignOffState { shape: SignOffShape::Waiting, words: "Waiting".to_owned() },
        picture: None,
        why: String::new(),
        fit: None,
        cautions: Vec::new(),
        hurts: Vec::new(),
        choices: refrigerators(),
        others: Vec::new(),
        layouts: Vec::new(),
        decided: Vec::new(),
    }
}

fn refrigerators() -> Vec<OpenOption> {
    vec![
        OpenOption {
            name: "A, panel-ready".to_owned(),
            product: "Vessary 30 C, oiled walnut fronts".to_owned(),
            told: "One quiet front from floor to soffit.".to_owned(),
            sizes: "Width 29 3/4″ 756 mm · depth 24″ 610 mm".to_owned(),
            more: "Hinge left".to_owned(),
            fit: Some(SignOffFit {
                misfit: false,
                verdict: "Fits".to_owned(),
                sentence: "With 5/32″ (4 mm) on each side.".to_owned(),
            }),
            picture: Some(PictureRef {
                key: "walnut".to_owned(),
                alt: "A walnut front".to_owned(),
                width: 240,
                height: 400,
            }),
            price: "$5,640.00".to_owned(),
            crossed: false,
        },
        OpenOption {
            name: "B, steel".to_owned(),
            product: "Vessary 30 S, brushed steel".to_owned(),
            told: String::new(),
            sizes: "Width 30 3/8″ 772 mm · depth 24″ 610 mm".to_owned(),
            more: String::new(),
            fit: Some(SignOffFit {
                misfit: true,
                verdict: "Does not fit".to_owned(),
                sentence: "5/16″ (7.9 mm) too wide for the opening.".to_owned(),
            }),
            picture: Some(PictureRef {
                key: "steel".to_owned(),
                alt: "A steel front".to_owned(),
                width: 240,
                height: 400,
            }),
            price: "$4,980.00".to_owned(),
            crossed: false,
        },
    ]
}

pub fn pendants() -> SignOffItem {
    SignOffItem {
        tag: "K-12".to_owned(),
        name: "Pendants over the island".to_owned(),
        option: "Spun bronze".to_owned(),
        product: "Lowbell, Dome 9".to_owned(),
        told: String::new(),
        description: vec![line("Size", "Ø 9 1/2\" (241 mm)"), line("Rod", "24\" (610 mm)"), line("Lamp", "2700 K")],
        quantity: "2".to_owned(),
        unit_price: "$470.00".to_owned(),
        with_it: String::new(),
        price: "$940.00".to_owned(),
        mark: "b6d9 0e3f".to_owned(),
        state: SignOffState {
            shape: SignOffShape::ReviseAndResubmit,
            words: "Revise and resubmit, Ife Okwuosa".to_owned(),
        },
        picture: None,
        why: String::new(),
        fit: None,
        cautions: Vec::new(),
        hurts: Vec::new(),
        choices: Vec::new(),
        others: Vec::new(),
        layouts: Vec::new(),
        decided: Vec::new(),
    }
}

/// A picture for a key: every key but `lost` has one.
pub fn picture(key: &str) -> Option<Vec<u8>> {
    let (width, height) = match key {
        "lost" => return None,
        "broken" => return Some(b"this is a text file".to_vec()),
        "cut short" => return picture("range").map(|bytes| bytes[..bytes.len() / 2].to_vec()),
        "tall" => (240, 400),
        _ => (400, 300),
    };
    let shade = |x: u32, y: u32| Rgb([(110 + x % 60) as u8, (90 + (x + y) % 50) as u8, (70 + y % 40) as u8]);
    let mut bytes = std::io::Cursor::new(Vec::new());
    RgbImage::from_fn(width, height, shade).write_to(&mut bytes, ImageFormat::Jpeg).expect("a picture");
    Some(bytes.into_inner())
}
