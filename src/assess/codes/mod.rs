//! Figures of codes and guidelines as data: value, edition, source; what the book adopts; what it sets itself.
//!
//! A figure that the book adopted, or set itself, stops the work; a general default only asks. Nothing
//! here approves anything: the code that is in force, the maker's instructions and licensed trades do.

mod editions;
mod figures;
pub mod gas;
pub mod metric;

pub use editions::{Editions, Family};
pub use figures::*;

use crate::book::{Codes, Country, OwnFigure, Project};
use crate::finding::{Code, Finding, Phrase, Remark, Severity, phrase};
use crate::site::heat::{HeatFigure, HeatFigures};
use crate::units::{Length, Wrote};

/// A value of a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Value {
    /// A length.
    Length(Length),
    /// A whole number of that unit.
    Number(u32, &'static str),
}

/// Where a figure comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// A code, in its editions from one year to another.
    Code(Family, u16, u16),
    /// A guideline: advice, never a code.
    Guideline,
    /// What the trade usually does.
    Practice,
}

/// A figure of a code, a guideline or the trade.
#[derive(Debug)]
pub struct Figure {
    /// Its name in a book's `codes`.
    pub name: &'static str,
    /// Its value.
    pub value: Value,
    /// Where it comes from.
    pub basis: Basis,
    /// Title, edition and section; `from memory` where it was not read.
    pub source: &'static str,
}

impl Figure {
    /// Whether it guards against fire, gas, glass, shock, or stone that breaks, wherever the work is.
    pub fn guards(&self) -> bool {
        figures::GUARDS.iter().any(|guard| std::ptr::eq(*guard, self))
    }

    /// The length that it asks for; nothing where it is a number.
    pub const fn length(&self) -> Length {
        match self.value {
            Value::Length(length) => length,
            Value::Number(..) => Length::ZERO,
        }
    }
}

/// Who says a figure where what guards is asked about by another country's code.
const NO_CODE_AT_HAND: &str = "common practice; no code of this country is at hand";

/// What counts for a book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ruling<T> {
    /// The value.
    pub value: T,
    /// Who says so.
    pub source: String,
    /// What missing it weighs: a stop where the book adopts or sets the figure, else a query.
    pub severity: Severity,
    /// Whether the book sets it itself.
    pub own: bool,
}

/// The figures as they count for one book.
#[derive(Clone, Copy, Debug)]
pub struct Rulings<'a> {
    codes: &'a Codes,
    country: Option<Country>,
}

impl<'a> Rulings<'a> {
    /// The figures for a book: those that it sets, those of the codes that it adopts, and what is published
    /// in its own country.
    pub fn of(project: &'a Project) -> Self {
        Self { codes: &project.codes, country: project.where_it_is() }
    }

    /// Whether what a code or guideline says is offered: in the country that it is published for, or where
    /// the book adopts it.
    pub fn offers(&self, family: Family) -> bool {
        self.country == Some(family.country()) || self.editions().year(family).is_some()
    }

    /// The figures of what stands near heat.
    pub fn heat(&self) -> HeatFigures {
        let of = |figure: &'static Figure| {
            let Ruling { value, source, severity, .. } = self.length(figure)?;
            Some(HeatFigure { length: value, stops: severity == Severity::Stop, source })
        };
        HeatFigures {
            above: of(&ABOVE_COOKTOP_BARE),
            above_shielded: of(&ABOVE_COOKTOP_SHIELDED),
            beside: of(&BESIDE_COOKTOP),
            beside_up_to: self.length(&BESIDE_COOKTOP_UP_TO).map(|ruling| ruling.value),
        }
    }

    /// The editions that the book adopts.
    pub fn editions(&self) -> Editions {
        Editions::of(self.codes)
    }

    /// A length that counts; none when the book adopts an edition that does not have it.
    pub fn length(&self, figure: &'static Figure) -> Option<Ruling<Length>> {
        let parse = |own: &OwnFigure| Length::parse(&own.is.value).ok();
        let Value::Length(usual) = figure.value else { return None };
        self.ruling(figure, usual, parse)
    }

    /// A number that counts; none when the book adopts an edition that does not have it.
    pub fn number(&self, figure: &'static Figure) -> Option<Ruling<u32>> {
        let Value::Number(usual, unit) = figure.value else { return None };
        self.ruling(figure, usual, |own| number(&own.is.value, unit))
    }

    fn ruling<T>(
        &self,
        figure: &'static Figure,
        usual: T,
        parse: impl Fn(&OwnFigure) -> Option<T>,
    ) -> Option<Ruling<T>> {
        let own = self.codes.figures.iter().find(|own| own.figure.value == figure.name);
        if let Some((own, value)) = own.and_then(|own| Some((own, parse(own)?))) {
            let source = format!("{}: {}", own.by, own.because);
            return Some(Ruling { value, source, severity: Severity::Stop, own: true });
        }
        let severity = match figure.basis {
            // What can burn, cut, shock or fall is asked about everywhere, by the figure that is at hand.
            Basis::Guideline if !self.offers(Family::KitchenAndBath) && !figure.guards() => return None,
            Basis::Guideline | Basis::Practice => Severity::Query,
            Basis::Code(family, first, last) => match self.editions().year(family) {
                None if !self.offers(family) && !figure.guards() => return None,
                None => Severity::Query,
                Some(year) if (first..=last).contains(&year) => Severity::Stop,
                Some(_) => return None,
            },
        };
        // Another country's code is no law here: its figure is the one at hand.
        let of_elsewhere = match figure.basis {
            Basis::Guideline => !self.offers(Family::KitchenAndBath),
            Basis::Code(family, ..) => !self.offers(family),
            Basis::Practice => false,
        };
        let source = if of_elsewhere { NO_CODE_AT_HAND } else { figure.source }.into();
        Some(Ruling { value: usual, source, severity, own: false })
    }
}

/// `600 cfm` as a number of `cfm`.
fn number(text: &str, unit: &str) -> Option<u32> {
    let (figures, rest) =
        text.trim().split_at(text.trim().find(|c: char| !c.is_ascii_digit()).unwrap_or(text.trim().len()));
    let rest = rest.trim();
    (rest == unit || unit.is_empty() && rest.is_empty()).then(|| figures.parse().ok())?
}

/// Tells of editions and figures that nobody knows, and of values that can't be read.
pub fn faults(codes: &Codes, findings: &mut Vec<Finding>) {
    for adopted in codes.adopts.iter().filter(|adopted| editions::read(&adopted.value).is_none()) {
        let message = phrase!("there is no code called `{}`", adopted.value);
        let remark = Remark::stop(adopted.span, message);
        findings.push(
            remark
                .remedy(phrase!("write a name and a year, such as `IRC 2021`; known: {}", editions::names()))
                .of(Code::UNKNOWN_NAME),
        );
    }
    for adopted in codes.adopts.iter().filter(|_| codes.figures.is_empty()) {
        let Some((family, years)) = editions::unknown_edition(&adopted.value) else { continue };
        let name = family.name();
        let message = phrase!("there is no edition of the {name} called `{}`", name, adopted.value);
        let remark = Remark::stop(adopted.span, message);
        // A year is no count: it is written without marks of thousands.
        let years = Phrase::joined(years.iter().map(|year| phrase!("{}", Wrote(&year.to_string()))), ", ");
        let remark = remark.remedy(phrase!(
            "write the one that is in force: {}; of another one, set the figures that count yourself: `codes: {{figures: […]}}`",
            years
        ));
        findings.push(remark.of(Code::UNKNOWN_NAME));
    }
    for own in &codes.figures {
        let Some(figure) = figures::all().find(|figure| figure.name == own.figure.value) else {
            let message = phrase!("there is no figure called `{}`", own.figure.value);
            let remark = Remark::stop(own.figure.span, message);
            let names: Vec<&str> = figures::all().map(|figure| figure.name).collect();
            findings
                .push(remark.remedy(phrase!("name one of: {}", Phrase::joined(names, "; "))).of(Code::UNKNOWN_NAME));
            continue;
        };
        let (reads, wanted) = match figure.value {
            Value::Length(_) => (Length::parse(&own.is.value).is_ok(), Phrase::from("a length with its unit")),
            Value::Number(_, unit) => {
                (number(&own.is.value, unit).is_some(), phrase!("a whole number and `{unit}`", unit))
            }
        };
        if !reads {
            let message = phrase!("`{}` is no value of the figure `{}`", own.is.value, figure.name);
            let remark = Remark::stop(own.is.span, message);
            findings.push(remark.remedy(phrase!("write {wanted}", wanted)).of(Code::WRONG_TYPE));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::trial::Trial;

    #[test]
    fn figures_have_names_of_their_own_and_a_source() {
        let mut names: Vec<_> = figures::all().map(|figure| figure.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), figures::all().count());
        assert!(figures::all().all(|figure| figure.source.len() > 7));
    }

    #[test]
    fn unknown_editions_and_figures_and_unreadable_values_are_told() {
        Trial::of("source/unknown-name").book("codes: {adopts: [IRC 2021, XRC 2021, IRC]}").run().counts(2);
        Trial::of("source/unknown-name")
            .book("codes: {adopts: [IRC 2091]}")
            .finds("there is no edition of the IRC called `IRC 2091`")
            .remedies("write the one that is in force: 2000, 2003, 2006, 2009, 2012, 2015, 2018, 2021, 2024; of another one, set the figures that count yourself: `codes: {figures: […]}`");
        Trial::of("source/unknown-name").book("codes: {adopts: [IRC 2022, NEC 2023, UPC 2024, OBC 2012]}").finds_one();
        Trial::of("source/unknown-name")
            .book("codes: {adopts: [IRC 2091], figures: [{figure: work aisle for one cook, is: 44\", because: so, by: the city}]}")
            .stays_silent();
        let own = |figure: &str, is: &str| {
            format!("codes: {{figures: [{{figure: {figure}, is: {is}, because: so, by: the firm}}]}}")
        };
        Trial::of("source/unknown-name").book(&own("work isle", "44\"")).finds_one();
        Trial::of("source/wrong-type").book(&own("work aisle for one cook", "44 cfm")).finds_one();
        Trial::of("source/wrong-type").book(&own("exhaust without make-up air", "44\"")).finds_one();
        Trial::of("source/wrong-type").book(&own("exhaust without make-up air", "600 cfm")).stays_silent();
    }

    /// A galley of 1100 mm, as it is usual where kitchens are set out in millimetres.
    #[test]
    fn advice_of_one_country_is_offered_to_its_own_books_and_to_those_that_adopt_it() {
        let aisle = |book: &str| {
            let book = format!("title: Trial\nclient: Nobody\ncurrency: EUR\n{book}\n");
            Trial::of("clear/work-aisle").file("book.yaml", book).room("cooks: 1\nclearances: {work aisle: 1000 mm}")
        };
        aisle("units: imperial").finds_one();
        aisle("units: metric\ncountry: US").finds_one();
        aisle("units: metric").stays_silent();
        aisle("units: imperial\ncountry: GB").stays_silent();
        for country in ["CA", "MX", "GB", "IE", "DE", "FR", "ES", "IT", "NL", "AU", "NZ"] {
            aisle(&format!("units: metric\ncountry: {country}")).stays_silent();
        }
        aisle("units: metric\ncountry: DE\ncodes: {adopts: [Kitchen and Bath Planning Guidelines]}").finds_one();
        let own =
            "codes: {figures: [{figure: work aisle for one cook, is: 1200 mm, because: two chairs, by: the firm}]}";
        aisle(&format!("units: metric\ncountry: DE\n{own}")).finds_one().weighs("stop");
    }

    #[test]
    fn what_can_burn_or_cut_is_asked_about_everywhere() {
        let window = |book: &str| {
            let book = format!("title: Trial\nclient: Nobody\ncurrency: EUR\nunits: metric\n{book}\n");
            Trial::of("clear/glazing")
                .file("book.yaml", book)
                .room("windows: {bath window: {sill: 1000 mm, height: 600 mm, from water: 500 mm, glass: float}}")
        };
        window("country: US").finds_one();
        window("country: DE").finds_one();
        let span = |book: &str| {
            let book = format!("title: Trial\nclient: Nobody\ncurrency: EUR\nunits: metric\n{book}\n");
            Trial::of("top/span").file("book.yaml", book).selection(
                "selection: Counter\nkind: counter",
                "thickness: 20 mm\ntop: {material: stone, free span: 1100 mm}",
            )
        };
        span("country: US").finds_one();
        span("country: AU").finds_one();
    }
}
