//! The office's pages of the made-up book.

use super::*;
use crate::views::office::index::{HoldPointCard, Obstacle, OfficeIndex};
use crate::views::office::review::{Caution, FindingGroup, FindingLine, ReviewPage, WaiverLine};
use crate::views::office::rules::{RuleFamily, RuleText, RulesPage};
use crate::views::office::tables::{Bar, Cell, Column, SchedulePage, Table};

pub(super) fn index() -> OfficeIndex {
    let obstacle = |shape, word: &str, what: &str| Obstacle {
        state: state(shape, word),
        what: what.into(),
        href: Some("review.html".into()),
    };
    OfficeIndex {
        sheet: sheet("index.html", "Q-00", "Office"),
        lead: "Two orders are due this month; neither may be placed until Sven decides.".into(),
        facts: vec![fact("Next order", "25 January, refrigerator"), fact("Over allowance", "$2,050.00")],
        counts: vec![state(Shape::Query, "2 queries"), state(Shape::Note, "1 note")],
        hold_points: vec![
            HoldPointCard {
                name: "rough-in closed".into(),
                day: "12".into(),
                month: "Mar 2027".into(),
                in_the_way: vec![
                    obstacle(Shape::Waiting, "Waiting", "Hood, K-05: its duct size is unknown"),
                    obstacle(
                        Shape::ChangedSinceSigned,
                        "Changed",
                        "Refrigerator, K-07: water line stands on the old choice",
                    ),
                ],
            },
            HoldPointCard {
                name: "counters set".into(),
                day: "19".into(),
                month: "Apr 2027".into(),
                in_the_way: vec![],
            },
        ],
        sheets: vec![
            link("Q-01", "Appliances", "schedules/appliance.html"),
            link("Q-07", "Orders by date", "orders.html"),
            link("Q-09", "Review", "review.html"),
        ],
        papers: vec![link("S-00", "Sign-off sheets (PDF)", "review.html")],
        tables: vec![orders().tables.remove(0)],
    }
}

fn columns(names: &[&str], figures: &[usize]) -> Vec<Column> {
    names.iter().enumerate().map(|(at, name)| Column { name: (*name).into(), figures: figures.contains(&at) }).collect()
}

fn noted(text: &str, note: &str) -> Cell {
    Cell { note: Some(html(note)), ..Cell::from(text) }
}

fn marked(shape: Shape, word: &str) -> Cell {
    Cell { state: Some(state(shape, word)), ..Cell::default() }
}

pub(super) fn orders() -> SchedulePage {
    let row = |name: &str, shape, word: &str, by: &str| {
        vec![
            noted(name, "K-07 · Vessary 30 C"),
            marked(shape, word),
            html(&format!("<b>{by}</b>")).into(),
            "9 to 11 weeks".into(),
            noted("counters set", "19 Apr 2027"),
            "Dunmere Supply, Q 2041, to 29 Jan".into(),
        ]
    };
    SchedulePage {
        sheet: sheet("orders.html", "Q-07", "Orders by date"),
        lead: "Seven to order. The hood and the refrigerator must be placed this month.".into(),
        facts: vec![fact("In hand", "5 working days before needed")],
        drawings: vec![],
        tables: vec![Table {
            name: "To order".into(),
            scope: Some("Sorted by the day to order".into()),
            columns: columns(
                &["Selection", "State", "Order by", "Lead time", "Needed for", "Supplier, quotation"],
                &[],
            ),
            rows: vec![
                row("Refrigerator", Shape::ChangedSinceSigned, "Changed since signed", "25 Jan"),
                row("Hood", Shape::Waiting, "Waiting", "29 Jan"),
            ],
            totals: vec![],
        }],
        notices: vec![notice(
            "Quotation runs out",
            &["Dunmere Supply holds its price to 29 January, four days after the day to order."],
        )],
    }
}

pub(super) fn appliances() -> SchedulePage {
    let row = || {
        vec![noted("Refrigerator", "K-07"), "Kitchen".into(), "Vessary 30 C".into(), "Oiled walnut".into(), html("29&nbsp;<i class=\"fr w\">3/4</i>″ × 5<i class=\"ft\">′</i>-9&nbsp;<i class=\"fr w\">7/8</i>″ × 24&nbsp;<i class=\"fr w\">3/4</i>″").into(), "1".into(), "4,120.00".into(), "5,640.00".into(), "27 %".into(), "Ask about the floor model".into()]
    };
    let names =
        ["Selection", "Room", "Maker, model", "Finish", "Size", "Qty", "Cost", "Price", "Margin", "Private note"];
    SchedulePage {
        sheet: sheet("schedules/appliance.html", "Q-01", "Appliances"),
        lead: "Seven appliances.".into(),
        tables: vec![
            Table {
                name: "Schedule".into(),
                scope: None,
                columns: columns(&names, &[5, 6, 7, 8]),
                rows: vec![row(), row(), row()],
                totals: vec![],
            },
            Table { name: "Nothing here".into(), ..Table::default() },
        ],
        ..SchedulePage::default()
    }
}

pub(super) fn money() -> SchedulePage {
    let row = |name: &str, within, over, allowance| {
        vec![
            name.into(),
            Cell { bar: Some(Bar { within, over, allowance }), ..Cell::default() },
            "5,640.00".into(),
            "3,400.00".into(),
            "2,240.00 over".into(),
        ]
    };
    SchedulePage {
        sheet: sheet("money.html", "Q-08", "Money against allowance"),
        lead: "Appliances are $2,050.00 over.".into(),
        tables: vec![Table {
            name: "Allowances".into(),
            scope: Some("Upright: the allowance. Hatched: what is over it. US dollars, before tax".into()),
            columns: columns(&["Group", "Drawn", "Price", "Allowance", "Difference"], &[2, 3, 4]),
            rows: vec![row("Appliances", 119, 78, 119), row("Tile", 60, 0, 80)],
            totals: vec!["All".into(), "".into(), "16,550.00".into(), "14,500.00".into(), "2,050.00 over".into()],
        }],
        ..SchedulePage::default()
    }
}

fn caution(anchor: &str, words: &str) -> Caution {
    Caution { anchor: anchor.into(), words: words.into() }
}

pub(super) fn review() -> ReviewPage {
    let finding = |shape, word: &str, rule: &str, message: &str| FindingLine {
        severity: state(shape, word),
        rule: rule.into(),
        rule_href: Some(format!("rules.html#{}", rule.replace('/', "-"))),
        item: Some("Range, K-04".into()),
        place: Some("rooms/kitchen/a-very-long-folder-name/range-with-a-long-name.yaml:12:9".into()),
        message: html(message),
        remedy: Some("ask the plumber for the branch’s size, or give the meter’s capacity".into()),
        source: Some("the maker’s sheet, rev. D".into()),
        by: Some("rough-in closed, 12 Mar 2027".into()),
        caution: Some("caution-0-1".into()),
        told: vec!["told to the installer".into()],
    };
    ReviewPage {
        sheet: sheet("review.html", "Q-09", "Review"),
        lead: "One stop, one query, one note.".into(),
        facts: vec![fact("As of", "15 January 2027")],
        counts: vec![
            state(Shape::Stop, "1 stop"),
            state(Shape::Query, "1 query"),
            state(Shape::Note, "1 note"),
            state(Shape::Waived, "1 waived"),
        ],
        groups: vec![FindingGroup {
            name: "Kitchen".into(),
            count: "1 stop, 1 query, 1 note".into(),
            cautions: vec![caution(
                "caution-0-1",
                "Gas is for a licensed trade, to local code and the maker’s instructions.",
            )],
            findings: vec![
                finding(Shape::Stop, "Stop", "fit/width", "<i class=\"fr\">1/16</i>″ wider than its opening"),
                finding(Shape::Query, "Query", "service/gas", "the branch carries less than the range asks for"),
                FindingLine {
                    caution: None,
                    remedy: None,
                    source: None,
                    by: None,
                    item: None,
                    rule_href: None,
                    ..finding(Shape::Note, "Note", "complete/photo", "`tap-side.jpg` is named by nobody")
                },
            ],
        }],
        waivers: vec![WaiverLine {
            rule: "fit/play".into(),
            place: Some("rooms/kitchen/range.yaml:30:3".into()),
            message: "less play than <i>1/8″</i>".into(),
            because: "the cabinetmaker scribes the panel on site".into(),
            by: "Ines Tarrow".into(),
            on: "12 Jan 2027".into(),
            caution: Some("caution-waived-1".into()),
            told: vec!["told to the installer".into()],
        }],
        waiver_cautions: vec![caution("caution-waived-1", "Weight: two people.")],
    }
}

pub(super) fn rules() -> RulesPage {
    RulesPage {
        sheet: sheet("rules.html", "Q-10", "What the review checks"),
        lead: "Each rule, what it stands on, and how to settle it.".into(),
        families: vec![RuleFamily {
            name: "fit".into(),
            scope: Some("The chosen thing against its opening".into()),
            rules: ["fit/width", "service/gas"].map(|code| RuleText {
                code: code.into(),
                anchor: code.replace('/', "-"),
                severity: state(Shape::Stop, "Stop"),
                summary: "A thing is wider than its opening.".into(),
                text: html("<h4>What it checks</h4><p>The least of three widths.</p><pre><code>width: [30 1/16\", 30\"]</code></pre>"),
                source: Some("the maker’s sheet".into()),
                caution: None,
            }).to_vec(),
        }],
    }
}
