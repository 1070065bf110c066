//! What is told beside the price of an option: what of it is for what goes with it, and what it draws on.

use crate::assess::Amounts;
use crate::book::{ProductOption, Selection};
use crate::views::pages::PageBuilder;
use crate::views::shared::html::{Html, show};

impl PageBuilder<'_> {
    /// What stands beside the price of an option; nothing where there is nothing to tell.
    pub(super) fn beside_its_price(&self, selection: &Selection, option: &ProductOption) -> Option<Html> {
        let told = [self.of_its_price(option), self.against(selection, option)];
        told.into_iter().flatten().reduce(|one, other| one.then(" · ").then(other))
    }

    /// What of its price is for what goes with it.
    fn of_its_price(&self, option: &ProductOption) -> Option<Html> {
        let with = option.price_of_accessories()?;
        Some(show!(self.words, "item_says.price_with", amount = with))
    }

    /// A price that alone is over the whole allowance is told; else the allowance is shared.
    fn against(&self, selection: &Selection, option: &ProductOption) -> Option<Html> {
        let name = selection.allowance.get()?;
        let allowance = self.subject.assessment.amounts.allowances.get(name)?;
        let price = Amounts::price(option)?;
        let over = price.checked_sub(allowance.allowed).ok().filter(|over| over.minor > 0);
        Some(match over {
            Some(over) => show!(self.words, "item_says.over", over = over, name = name, amount = allowance.allowed),
            None => show!(self.words, "item_says.draws", name = name, amount = allowance.allowed),
        })
    }
}
