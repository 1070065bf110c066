//! A term of money, or of the title block, that is another one: its line in a change order.

use crate::assess::{Term, TermMoved, TitleField};
use crate::book::Prices;
use crate::language::{Words, say};
use crate::shown::ChangedValue;
use crate::views::paper::changed_item::{ChangeLine, change};

/// A term that is another one, as a line of a change order.
pub(super) fn term(words: Words, term: &TermMoved) -> ChangeLine {
    let what = match &term.what {
        Term::TitleBlock(field) => say!(words, title_key(*field)),
        Term::Tax => say!(words, "changes.term.tax"),
        Term::Prices(was, is) => {
            let told = |prices: Prices| match prices {
                Prices::WithTax => say!(words, "sign_says.with_tax"),
                Prices::BeforeTax => say!(words, "sign_says.before_tax"),
            };
            return change(say!(words, "changes.term.prices"), told(*was), told(*is));
        }
        Term::Allowance(name) => say!(words, "changes.term.allowance", name = name),
        Term::AllowanceIncludes(name) => say!(words, "changes.term.includes", name = name),
    };
    let told = |value: &Option<ChangedValue>| match value {
        Some(ChangedValue::Amount(money)) => words.amount(*money),
        Some(ChangedValue::Other(said)) => said.to_string(),
        None => String::new(),
    };
    change(what, told(&term.from), told(&term.to))
}

fn title_key(field: TitleField) -> &'static str {
    match field {
        TitleField::Title => "changes.term.title",
        TitleField::Client => "changes.term.client",
        TitleField::Address => "changes.term.address",
        TitleField::Firm => "changes.term.firm",
        TitleField::Phone => "changes.term.phone",
        TitleField::Email => "changes.term.email",
        TitleField::Number => "changes.term.number",
    }
}
