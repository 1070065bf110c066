//! A thing that no sheet of the maker's speaks for.

mod model;

use crate::assess::Context;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::{CutSheet, MakersSheet, OfFigures, ProductOption, Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::units::Date;

declare! {
    /// No sheet of the maker's speaks for the thing, or nobody can tell which
    ///
    /// ## What it checks
    /// Every kind that goes into an opening has the maker's own figures under `fit`, and says by
    /// name, revision and date which sheet they come from. A sheet that is attached as `cut sheet` is of the same
    /// revision, or of the same day where no revision is written; another one, or one of which that is not known, is
    /// told. A name of the sheet that has one number of the model's own family, and another one (`TG-48` for `TG-36`), is asked
    /// about. Its file is in the book, is no larger than 20 MB, begins and ends as a PDF, is not encrypted, and holds
    /// no script as far as that shows without opening it: names in the clear and in deflated streams of objects are
    /// looked at. A file that fails is not passed on. A link is shown and never fetched.
    ///
    /// ## Why it matters
    /// Shops' pages and articles disagree with makers, by {1"} and more. A sheet without revision or date
    /// can't be compared with the one that comes in the carton. Whoever builds opens the attached one: it must be the
    /// one that the figures on their own sheet are of.
    ///
    /// ## Remedy
    /// Fetch the maker's installation sheet, write its figures under `fit`, and its name, revision
    /// and date under `sheet`. Attach the same one, or take the figures from the newer.
    ///
    /// ## Example
    /// ```yaml
    /// fit:
    ///   sheet: {name: 30 C installation, revision: D, date: 2026-09-04}
    /// cut sheet: {file: range-30c.pdf, revision: D}     # rooms/kitchen/sheets/range-30c.pdf
    /// ```
    ///
    /// ## Source
    /// Common practice: numbers on a shop's page are not a cut sheet (a {27"} cutout, told for
    /// what the sheet gives as {28 1/4"}).
    "complete/cut-sheet", Stop,
    due: WithThing, tells: [],
    judges: goods,
    sources: ["trade practice: the maker's own sheet, with its revision"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    context.site.options().filter_map(attached).for_each(|remark| findings.push(remark));
    context.site.options().filter_map(model::another).for_each(|remark| findings.push(remark));
    for (room, selection, option) in context.site.options() {
        let Some(kind) = selection.kind.get().filter(|kind| kind.wants_sheet()) else { continue };
        if super::hangs_before_the_wall(selection, option) {
            continue;
        }
        let (message, remedy) = match option.fit.get() {
            None if option.fit.is_absent() => (
                phrase!("no sheet of the maker's speaks for the {}", kind.name()),
                "write the figures of the maker's installation sheet under `fit`",
            ),
            Some(fit) if fit.sheet.is_absent() => (
                phrase!("the figures of the {} do not say which sheet they come from", kind.name()),
                "add `fit: {sheet: {name: …, revision: …, date: …}}`",
            ),
            Some(fit) => match fit.sheet.get() {
                Some(sheet) if sheet.revision.is_absent() && sheet.date.is_absent() => (
                    phrase!("the maker's sheet of the {} has neither revision nor date", kind.name()),
                    "add its revision, its date, or both: `fit: {sheet: {revision: …, date: …}}`",
                ),
                _ => continue,
            },
            None => continue,
        };
        let at = if selection.options.len() > 1 { option.id.span } else { selection.span };
        findings.push(about(room, selection, option, Severity::Stop, at, message).remedy(remedy));
    }
}

/// The attached sheet against the one that the figures come from.
fn attached((room, selection, option): (&Room, &Selection, &ProductOption)) -> Option<Remark> {
    let sheet = option.cut_sheet.get()?;
    let fit = option.fit.get().map(AsRef::as_ref);
    let of = fit.and_then(|fit| fit.sheet.get());
    let faulty = sheet.revision.is_faulty() || sheet.date.is_faulty() || fit.is_some_and(|fit| fit.sheet.is_faulty());
    if faulty || of.is_some_and(|of| of.revision.is_faulty() || of.date.is_faulty()) {
        return None;
    }
    let says =
        |sheet: Option<&MakersSheet>| sheet.is_some_and(|of| of.revision.get().is_some() || of.date.get().is_some());
    let (severity, message, remedy) = match sheet.of_figures(fit) {
        OfFigures::Same | OfFigures::NoFigures => return None,
        OfFigures::Another => (
            Severity::Stop,
            phrase!("the cut sheet is {}, and the figures are of {}", told(sheet), of.map(told_of).unwrap_or_default()),
            "take the figures under `fit` from the attached sheet and name it under `fit: sheet`, or attach the one that they are of",
        ),
        OfFigures::Unknown if sheet.revision.is_absent() && sheet.date.is_absent() => (
            Severity::Query,
            phrase!(
                "the cut sheet says neither revision nor date, so that nobody can tell whether the figures are of it"
            ),
            "add its revision, its date, or both: `cut sheet: {revision: …, date: …}`",
        ),
        // That the figures say neither is told of what needs a sheet.
        OfFigures::Unknown if !says(of) && selection.kind.get().is_some_and(|kind| kind.wants_sheet()) => return None,
        OfFigures::Unknown if !says(of) => (
            Severity::Query,
            phrase!("the figures under `fit` do not say whether they are of the cut sheet"),
            "name their sheet: `fit: {sheet: {name: …, revision: …, date: …}}`",
        ),
        OfFigures::Unknown => (
            Severity::Query,
            phrase!(
                "the cut sheet is {}, and the figures are of {}: nobody can tell whether that is one",
                told(sheet),
                of.map(told_of).unwrap_or_default()
            ),
            "write the revision of both",
        ),
    };
    let at = sheet.revision.span().or(sheet.date.span()).unwrap_or(sheet.span);
    let remark = about(room, selection, option, severity, at, message).remedy(remedy);
    let other = fit.and_then(|fit| fit.sheet.span());
    Some(match other {
        Some(other) => remark.also(other, "the sheet that the figures come from"),
        None => remark,
    })
}

/// A sheet by its revision, or else by its date.
fn told(sheet: &CutSheet) -> Phrase {
    named(sheet.revision.get(), sheet.date.get())
}

fn told_of(sheet: &MakersSheet) -> Phrase {
    named(sheet.revision.get(), sheet.date.get())
}

fn named(revision: Option<&String>, date: Option<&Date>) -> Phrase {
    match (revision, date) {
        (Some(revision), Some(date)) => phrase!("revision `{revision}` of {date}", revision, *date),
        (Some(revision), None) => phrase!("revision `{revision}`", revision),
        (None, Some(date)) => phrase!("the one of {date}", *date),
        (None, None) => Phrase::default(),
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(option: &str) -> Trial {
        let trial = Trial::of("complete/cut-sheet").opening("hole", "{takes: warming drawer}");
        trial.selection("selection: It\nkind: warming drawer\nplace: hole", option)
    }

    /// Source: trade reports section 2c: an encyclopedia's 27" cutout for a warming drawer whose sheet says 28 1/4".
    #[test]
    fn a_warming_drawer_without_its_makers_figures_is_told() {
        trial("size: {width: 27\"}").finds("no sheet of the maker's speaks for the warming drawer");
        trial("fit: {sheet: {name: WD, revision: B}, opening: {width: 28 1/4\"}}").stays_silent();
    }

    #[test]
    fn a_sheet_with_neither_revision_nor_date_is_told() {
        trial("fit: {opening: {width: 28 1/4\"}}")
            .finds("the figures of the warming drawer do not say which sheet they come from");
        trial("fit: {sheet: {name: WD}}")
            .finds("the maker's sheet of the warming drawer has neither revision nor date");
        trial("fit: {sheet: {name: WD, date: 2026-09-04}}").stays_silent();
    }

    const PDF: &str = "%PDF-1.4\n1 0 obj\n<</Type /Catalog>>\nendobj\ntrailer\n<</Root 1 0 R>>\nstartxref\n9\n%%EOF\n";

    /// A drawer whose figures are of revision B, with a sheet attached to it.
    fn with(sheet: &str) -> Trial {
        let figures = "fit: {sheet: {name: WD, revision: B, date: 2026-09-04}, opening: {width: 28 1/4\"}}";
        trial(&format!("{figures}\n{sheet}")).file("rooms/kitchen/sheets/wd.pdf", PDF).of_any_yaml()
    }

    #[test]
    fn a_sheet_of_another_revision_than_the_figures_is_told_and_one_of_the_same_is_not() {
        for sheet in [
            "wd.pdf, revision: C",
            "wd.pdf, revision: rev. C",
            "wd.pdf, date: 2026-10-01",
            "wd.pdf, revision: B, date: 2026-10-01",
        ] {
            let found = with(&format!("cut sheet: {{file: {sheet}}}"));
            found.finds_one().weighs("stop");
        }
        with("cut sheet: {link: 'https://vessary.example/wd.pdf', revision: C}")
            .finds("the cut sheet is revision `C`, and the figures are of revision `B` of 4 Sep 2026");
        for sheet in [
            "{file: wd.pdf, revision: B}",
            "{file: wd.pdf, revision: Rev. b}",
            "{file: wd.pdf, date: 2026-09-04}",
            "{file: sheets/wd.pdf, revision: B}",
            "{link: 'https://vessary.example/wd.pdf', revision: B}",
        ] {
            with(&format!("cut sheet: {sheet}")).stays_silent();
        }
    }

    #[test]
    fn a_sheet_of_an_unknown_revision_asks_for_it() {
        for sheet in ["wd.pdf", "{file: wd.pdf, name: WD}", "https://vessary.example/wd.pdf"] {
            with(&format!("cut sheet: {sheet}")).finds_one().weighs("query");
        }
        let by_day = trial(
            "fit: {sheet: {name: WD, date: 2026-09-04}, opening: {width: 28 1/4\"}}\ncut sheet: {link: 'https://vessary.example/wd.pdf', revision: C}",
        );
        by_day.finds("the cut sheet is revision `C`, and the figures are of the one of 4 Sep 2026: nobody can tell whether that is one").weighs("query");
        let none = "cut sheet: {link: 'https://zelmor.example/t1.pdf', revision: C}";
        Trial::of("complete/cut-sheet").selection("selection: Tap\nkind: tap", none).stays_silent();
        let figures = format!("fit: {{caution: Shut the water off}}\n{none}");
        Trial::of("complete/cut-sheet")
            .selection("selection: Tap\nkind: tap", &figures)
            .finds("the figures under `fit` do not say whether they are of the cut sheet");
    }

    #[test]
    fn a_file_that_is_missing_or_no_pdf_is_told_where_it_is_named() {
        with("cut sheet: {file: wd.PDF, revision: B}")
            .finds("the cut sheet `wd.PDF` is not in the book")
            .weighs("stop");
        let other = |bytes: &str| {
            with("cut sheet: {file: other.pdf, revision: B}").file("rooms/kitchen/sheets/other.pdf", bytes)
        };
        other("<!doctype html>").finds_one().weighs("stop");
        other("%PDF-1.4\n1 0 obj").finds_one();
        other(&PDF.replace("1 0 R", "1 0 R /Encrypt 4 0 R")).finds_one();
        other(&PDF.replace("/Catalog", "/Catalog /OpenAction <</S /JavaScript /JS (a)>>")).finds_one();
    }

    #[test]
    fn a_file_out_of_the_book_and_one_that_is_too_large_are_told() {
        let with = |rule: &'static str, file: &str| {
            let option = format!("cut sheet: {{file: '{file}'}}");
            Trial::of(rule).selection("selection: Tap\nkind: tap", &option).of_any_yaml()
        };
        for file in ["../wd.pdf", "/etc/wd.pdf", "C:\\wd.pdf", ".hidden/wd.pdf"] {
            with("source/outside-book", file).finds_one().weighs("stop");
        }
        let large = [PDF.as_bytes(), &vec![b' '; 20 * 1024 * 1024]].concat();
        with("source/too-large", "wd.pdf").file("rooms/kitchen/sheets/wd.pdf", large).finds_one();
    }

    /// The file of a product stands beside the product.
    #[test]
    fn a_product_brings_its_own_sheet_and_is_told_once() {
        let product = |file: &str| {
            let things =
                "selection: Taps\nkind: tap\noptions: [{id: a, product: t}, {id: b, product: t, finish: brass}]";
            Trial::of("complete/cut-sheet")
                .selection(things, "")
                .file("products/t.yaml", format!("maker: Zelmor\nmodel: T\ncut sheet: {file}\n"))
                .file("products/sheets/t.pdf", PDF)
        };
        product("t.pdf").stays_silent();
        product("u.pdf").finds("the cut sheet `u.pdf` is not in the book");
    }
}
