//! What a rule, a kind, a record, a field or a figure is: the handbook behind `explain`.
//!
//! All of it comes from the rules and the vocabulary; there is no second list.

mod figures;
mod how;
mod kinds;
mod page;
mod records;
mod rules;
mod whole;

use crate::assess::codes;
use crate::assess::rules::examples::in_metric;
use crate::assess::rules::{RULES, rule};
use crate::book::vocabulary::RECORDS;
use crate::ledger;
use crate::shown;
use crate::units::System;
use crate::vocabulary::Kind;

/// Why something can't be explained, with the names that are near.
#[derive(Debug, PartialEq, Eq)]
pub struct Unknown {
    /// What was asked for.
    pub asked: String,
    /// Names that are near, the nearest first.
    pub near: Vec<String>,
}

impl std::fmt::Display for Unknown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "nothing is called `{}`", self.asked)?;
        match self.near.as_slice() {
            [] => f.write_str("; `bookmatch explain` lists what can be explained"),
            near => write!(
                f,
                "; did you mean {}?",
                near.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(" or ")
            ),
        }
    }
}

impl std::error::Error for Unknown {}

/// The page of something by its name: a rule, a kind, a record, or a field; in the units of a book.
///
/// # Errors
/// When nothing has that name.
pub fn explain(name: &str, units: System) -> Result<String, Unknown> {
    let name = name.trim();
    if name.is_empty() {
        return Ok(contents());
    }
    let told = |page: String| if units.is_metric() { in_metric(&page) } else { page };
    // Messages name a field in a group as it is written there: `fit: needs: power`.
    let asked = name.to_lowercase().replace(": ", ".");
    if asked == "kinds" {
        return Ok(kinds::all());
    }
    if asked == "rules" {
        return Ok(rules::all());
    }
    if asked == "figures" {
        return Ok(figures::list(units));
    }
    if asked == "how" {
        return Ok(how::list());
    }
    if let Some(page) = asked.strip_prefix("how ").and_then(|recipe| how::page(recipe.trim())) {
        return Ok(told(page));
    }
    if asked == "mark" {
        return Ok(headed(&shown::page()));
    }
    if asked == "ledger" {
        return Ok(headed(ledger::FORMATS));
    }
    let mut pages: Vec<String> = Vec::new();
    pages.extend(rule(&asked).map(|rule| rules::page(rule, units)));
    pages.extend(Kind::named(&asked).map(kinds::page).map(told));
    pages.extend(RECORDS.iter().filter(|record| record.name == asked).map(|record| told(records::page(record))));
    pages.extend(records::field(&asked).into_iter().map(told));
    pages.extend(figures::named(&asked).map(|figure| figures::page(figure, units)));
    if pages.is_empty() {
        return Err(Unknown { near: near(&asked), asked: name.to_string() });
    }
    Ok(pages.join("\n"))
}

/// A page whose first line is its heading.
fn headed(page: &str) -> String {
    let (title, text) = page.split_once('\n').unwrap_or((page, ""));
    page::heading(title) + &page::prose(text)
}

/// Everything that can be explained.
fn contents() -> String {
    let records: Vec<&str> = RECORDS.iter().map(|record| record.name).collect();
    let mut text = page::heading("What can be explained");
    text += &page::paragraph(
        "`bookmatch explain NAME`, where NAME is a rule, a kind, a record, a field such as `lead time` or `size.width`, or a figure; `bookmatch explain figures` lists the figures of codes and guidelines.",
    );
    text += &page::paragraph("`bookmatch explain how` lists recipes: whole pieces of a book, and what to type when.");
    text += &page::paragraph(
        "`bookmatch explain mark` tells what a mark is of, `bookmatch explain ledger` every format of the record and what counts by it, so that another program can verify it.",
    );
    text += &page::heading("Records");
    text += &page::paragraph(&records.join(", "));
    text += &kinds::all();
    text += &rules::all();
    text
}

/// Every name that can be asked for.
pub fn names() -> Vec<String> {
    let mut names: Vec<String> = RULES.iter().map(|rule| rule.code.to_string()).collect();
    names.extend(Kind::ALL.iter().flat_map(|kind| kind.words()).map(str::to_string));
    names.extend(RECORDS.iter().map(|record| record.name.to_string()));
    names.extend(codes::all().map(|figure| figure.name.to_string()));
    names.extend(RECORDS.iter().flat_map(|record| record.fields).map(|field| field.key.to_string()));
    names.extend(how::titles().map(|title| format!("how {title}")));
    names.extend(["mark", "ledger"].map(str::to_string));
    names.sort();
    names.dedup();
    names
}

fn near(asked: &str) -> Vec<String> {
    let mut near: Vec<(usize, String)> = names()
        .into_iter()
        .map(|name| {
            (
                strsim::damerau_levenshtein(asked, name.rsplit('/').next().unwrap_or(&name))
                    .min(strsim::damerau_levenshtein(asked, &name)),
                name,
            )
        })
        .filter(|(distance, name)| *distance <= 2.max(name.len() / 4))
        .collect();
    near.sort();
    near.into_iter().take(3).map(|(_, name)| name).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_kind_record_and_field_has_a_page() {
        for name in names() {
            let page = explain(&name, System::Imperial).unwrap_or_else(|error| panic!("{error}"));
            assert!(page.len() > name.len() + 20, "{name}: {page}");
        }
    }

    #[test]
    fn no_line_is_wider_than_a_page() {
        for name in names() {
            for line in explain(&name, System::Imperial).unwrap().lines() {
                assert!(line.chars().count() <= page::WIDTH, "{name}: {line}");
            }
        }
    }

    #[test]
    fn a_kind_tells_what_it_needs_and_what_can_hurt() {
        let page = explain("refrigerator", System::Imperial).unwrap();
        for part in ["depth with handle", "hinge", "Electricity can kill", "kind: refrigerator"] {
            assert!(page.contains(part), "{part} is not on the page:\n{page}");
        }
    }

    #[test]
    fn a_rule_tells_its_source_its_caution_and_how_to_waive_it() {
        let page = explain("fit/way-in", System::Imperial).unwrap();
        for part in ["Remedy", "Source", "Caution", "waive: [{rule: fit/way-in"] {
            assert!(page.contains(part), "{part} is not on the page:\n{page}");
        }
        assert!(
            !explain("source/syntax", System::Imperial).unwrap().contains("waive: ["),
            "what can't be read can't be waived"
        );
    }

    #[test]
    fn a_field_within_a_group_is_found_as_kinds_and_messages_name_it() {
        for (written, path) in
            [("size: height", "size.height"), ("fit: needs: power", "fit.needs.power"), ("fit: door", "fit.door")]
        {
            assert_eq!(
                explain(written, System::Imperial).unwrap(),
                explain(path, System::Imperial).unwrap(),
                "{written}"
            );
        }
        for kind in Kind::ALL {
            for needs in kind.needs() {
                explain(&needs.replace('.', ": "), System::Metric).unwrap_or_else(|_| panic!("{needs} of {kind}"));
            }
        }
    }

    #[test]
    fn a_field_within_a_group_is_found_by_its_path() {
        assert!(explain("size.depth with handle", System::Imperial).unwrap().contains("Depth with door and handle"));
    }

    #[test]
    fn a_figure_tells_its_value_its_source_and_how_to_set_another() {
        let page = explain("work aisle for one cook", System::Imperial).unwrap();
        for part in ["42\"", "1067 mm", "guideline 6", "codes: {figures: [{figure: work aisle for one cook"] {
            assert!(page.contains(part), "{part} is not on the page:\n{page}");
        }
        let list = explain("figures", System::Imperial).unwrap();
        assert!(codes::all().all(|figure| list.contains(figure.name)));
    }

    #[test]
    fn a_name_that_is_nobodys_names_those_that_are_near() {
        assert_eq!(explain("fit/widht", System::Imperial).unwrap_err().near, ["fit/width"]);
        assert_eq!(explain("refridgerator", System::Imperial).unwrap_err().near, ["refrigerator"]);
    }

    #[test]
    fn a_metric_book_is_explained_in_its_own_units() {
        for name in names() {
            let page = explain(&name, System::MetricOnly).unwrap_or_else(|error| panic!("{error}"));
            let marks =
                page.match_indices('"').filter(|(at, _)| page[..*at].ends_with(|before: char| before.is_ascii_digit()));
            let inches: Vec<_> = marks.map(|(at, _)| page[..at].lines().last().unwrap_or("").to_string()).collect();
            assert!(inches.is_empty() || name == "mark", "{name}: {inches:?}");
        }
    }
}
