//! A made-up book, worded by hand, in which every kind of page has something of everything.

mod asked;
mod client;
mod office;
mod site_work;

use crate::language::Language;
use crate::views::client::cover::Cover;
use crate::views::client::sign::SignPage;
use crate::views::office::index::OfficeIndex;
use crate::views::office::review::ReviewPage;
use crate::views::office::tables::SchedulePage;
use crate::views::pages::{ClientPages, EditionOf, InstallerPages, OfficePages, Pages};
use crate::views::shared::html::Html;
use crate::views::shared::photo::{Photo, PhotoSize};
use crate::views::shared::revisions::Revision;
use crate::views::shared::sheet::{Call, CodeToScan, Crumb, Fact, IssuedAs, Link, Notice, Project, Sheet};
use crate::views::shared::state::{State, StateShape as Shape};
use crate::views::trades::index::InstallerIndex;

/// A full book.
pub(crate) fn full() -> Pages {
    Pages {
        edition: EditionOf::default(),
        client: ClientPages {
            cover: Some(client::cover()),
            rooms: vec![client::kitchen(), client::bath()],
            items: (1..=5).map(client::item).collect(),
            sign: Some(client::sign()),
        },
        installer: InstallerPages {
            index: Some(site_work::index()),
            openings: vec![site_work::refrigerator(), site_work::hood()],
            trades: vec![site_work::counters()],
            deliveries: vec![site_work::delivery()],
        },
        office: OfficePages {
            index: Some(office::index()),
            schedules: vec![office::appliances()],
            orders: Some(office::orders()),
            money: Some(office::money()),
            review: Some(office::review()),
            rules: Some(office::rules()),
        },
    }
}

/// A book with next to nothing in it: no photograph, no opening, no selection, no name of a firm.
pub(crate) fn bare() -> Pages {
    let project = Project {
        title: "Patio Hondo".into(),
        issue: "borrador".into(),
        date: "15 ene 2027".into(),
        draft: true,
        ..Project::default()
    };
    let mut rows = client::cover().tally;
    rows.columns = vec!["Todas".into()];
    rows.totals = vec!["0".into()];
    rows.rows.iter_mut().for_each(|row| row.counts = vec!["–".into()]);
    let [mut orders, mut money] = [SchedulePage::default(), SchedulePage::default()];
    let (mut cover, mut sign) = (Cover { tally: rows, ..Cover::default() }, SignPage::default());
    let (mut index, mut office, mut review) =
        (InstallerIndex::default(), OfficeIndex::default(), ReviewPage::default());
    let sheets = [
        (&mut cover.sheet, "index.html", "G-00", "Portada"),
        (&mut sign.sheet, "sign.html", "S-01", "Qué se firma"),
        (&mut index.sheet, "index.html", "F-00", "Obra"),
        (&mut office.sheet, "index.html", "Q-00", "Oficina"),
        (&mut orders.sheet, "orders.html", "Q-07", "Pedidos"),
        (&mut money.sheet, "money.html", "Q-08", "Dinero"),
        (&mut review.sheet, "review.html", "Q-09", "Revisión"),
    ];
    for (sheet, path, number, name) in sheets {
        *sheet = Sheet {
            path: path.into(),
            number: number.into(),
            name: name.into(),
            trail: vec![crumb(name, None)],
            project: project.clone(),
            ..Sheet::default()
        };
    }
    Pages {
        edition: EditionOf { language: Language::named("es").unwrap_or_default(), ..EditionOf::default() },
        client: ClientPages { cover: Some(cover), sign: Some(sign), ..ClientPages::default() },
        installer: InstallerPages { index: Some(index), ..InstallerPages::default() },
        office: OfficePages {
            index: Some(office),
            orders: Some(orders),
            money: Some(money),
            review: Some(review),
            ..OfficePages::default()
        },
    }
}

fn sheet(path: &str, number: &str, name: &str) -> Sheet {
    let above = match path.split_once('/') {
        Some(("items", _)) => vec![crumb("Kitchen", Some("rooms/kitchen.html"))],
        _ => vec![],
    };
    let home = if path == "index.html" { vec![] } else { vec![crumb("Alder Court", Some("index.html"))] };
    Sheet {
        path: path.into(),
        number: number.into(),
        name: name.into(),
        trail: [home, above, vec![crumb(name, None)]].concat(),
        project: Project {
            title: "Alder Court".into(),
            number: Some("2026-014".into()),
            client: Some("The Okonedo-Lindqvist household".into()),
            firm: Some("Pennick & Tarrow".into()),
            firm_line: Some("design and build".into()),
            issue: "draft, not issued".into(),
            date: "15 Jan 2027".into(),
            draft: true,
            issued: Some(IssuedAs { book: "5f0c".repeat(8), issue: 3, on: "2027-01-11".into() }),
            holds: Some(asked::holding()),
            call: Call::of("555 0142"),
        },
        scale: Some("by the bar".into()),
        mark: Some("9c41 0e7b".into()),
        marks_before: vec![],
        revisions: vec![
            Revision { number: "3".into(), date: "11 Jan 2027".into(), what: "Price of A; opening as measured".into() },
            Revision { number: "2".into(), date: "18 Dec 2026".into(), what: "Option C added".into() },
        ],
        from: Some(link("G-00", "Cover", "index.html")),
        onward: Some(link("S-01", "What is being signed", "index.html")),
        code: Some(CodeToScan { address: "https://book.example/x#paper-9c410e7b-3".into(), svg: drawing("code") }),
    }
}

fn crumb(name: &str, href: Option<&str>) -> Crumb {
    Crumb { name: name.into(), href: href.map(Into::into) }
}

fn link(number: &str, name: &str, href: &str) -> Link {
    Link { href: href.into(), name: name.into(), number: Some(number.into()) }
}

fn fact(name: &str, value: &str) -> Fact {
    Fact { name: name.into(), value: Html::trusted(value) }
}

fn notice(title: &str, lines: &[&str]) -> Notice {
    Notice { title: title.into(), lines: lines.iter().map(|line| Html::trusted(*line)).collect() }
}

fn state(shape: Shape, word: &str) -> State {
    State::new(shape, word)
}

fn html(markup: &str) -> Html {
    Html::trusted(markup)
}

fn photo(name: &str, alt: &str) -> Photo {
    let src = format!("pictures/{name}.jpg");
    Photo {
        sizes: vec![PhotoSize { path: src.clone(), width: 1040 }],
        src,
        width: 1040,
        height: 780,
        alt: alt.into(),
        caption: None,
    }
}

/// A drawing of an opening and what stands in it, small enough to be read here.
fn drawing(id: &str) -> Html {
    Html::trusted(format!(
        r##"<svg viewBox="0 0 350 300" role="img" aria-labelledby="{id}-t"><title id="{id}-t">Front of the opening, with the gap on each side</title><path class="cut" d="M70 260V30H280V260"/><path class="cut" d="M20 260H330"/><rect class="obj" x="72" y="36" width="206" height="218"/><path class="dl" d="M66 284H284"/><path class="tick" d="M66 288L74 280M276 288L284 280"/><text class="halo b" x="175" y="278" font-size="14" text-anchor="middle">30<tspan class="fr" dx="1.5">1/16</tspan>″</text><text class="m" x="20" y="254" font-size="15">FF</text></svg>"##
    ))
}
