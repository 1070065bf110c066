//! An issue: what was shown of every item, frozen under a number.

use std::collections::HashMap;

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::digest::Digest;
use crate::units::{Date, plain_name};

use super::{Head, Purpose};

/// What `record/issues/0001.json` holds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Issue {
    /// The book's id.
    pub book: String,
    /// Its number, from 1.
    pub number: u32,
    /// What it is for.
    #[serde(rename = "for")]
    pub purpose: Purpose,
    /// Its day.
    pub on: Date,
    /// What the book was called.
    pub title: String,
    /// The currency of its amounts, by its code.
    pub currency: String,
    /// What all settled items come to.
    pub total: Total,
    /// Who decides, and how many of them must; older issues do not say it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub terms: Option<Terms>,
    /// The ledger's last line before the issue; older issues do not say it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub after: Option<Head>,
    /// Every item, in the book's order.
    pub items: Vec<IssuedItem>,
    /// What each opening and each trade in a room is built from, in the book's order; older issues do not say it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub built: Option<Vec<IssuedSheet>>,
    /// Who asked for what changed since the issue before, and why, as far as anybody said.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub asked: Vec<AskedChange>,
    /// What is issued for construction although not all have approved it who must, and why.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unapproved: Option<TakenUnapproved>,
    /// What of money is agreed besides prices; older issues do not say it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub money: Option<MoneyTerms>,
    /// What stands at the head of every sheet; older issues do not say it.
    #[serde(rename = "title block", default, skip_serializing_if = "Option::is_none")]
    pub title_block: Option<TitleBlock>,
}

/// What stands at the head of every sheet besides the title: whose work it is, where, and whom to call.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TitleBlock {
    /// The household.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub client: Option<String>,
    /// Where the work is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub address: Option<String>,
    /// The firm's name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub firm: Option<String>,
    /// Where to call.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub phone: Option<String>,
    /// Where to write.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub email: Option<String>,
    /// The firm's number for the project, empty where it has none; older issues do not say it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
}

/// What of money is agreed besides prices.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MoneyTerms {
    /// The rate of tax, such as `8.25 %`; none where the book names none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tax: Option<String>,
    /// The allowances, in the book's order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub allowances: Vec<AllowedTerms>,
}

/// An allowance as agreed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AllowedTerms {
    /// Its name.
    pub name: String,
    /// Its amount, plain.
    pub amount: String,
    /// What it is to pay for besides the things.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub includes: Option<String>,
}

/// What is issued for construction although not all have approved it who must.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TakenUnapproved {
    /// Why.
    pub because: String,
    /// The items, in the book's order.
    pub items: Vec<ItemName>,
}

/// An item by its names.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ItemName {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
}

/// Who asked for a change of an item, and why.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AskedChange {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
    /// Who asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by: Option<String>,
    /// Why.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub because: Option<String>,
}

/// A sheet that is built from, as issued: of an opening, or of a trade in a room.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IssuedSheet {
    /// The room, by its folder.
    pub room: String,
    /// The opening, by its name there; empty of a trade's sheet.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub opening: String,
    /// The trade, by its word; none of an opening's sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trade: Option<String>,
    /// The digest of `content`.
    pub mark: Digest,
    /// What it is built from.
    pub content: Value,
}

impl IssuedSheet {
    /// Which sheet it is: its room, and its opening or its trade.
    pub fn of(&self) -> (&str, &str, &str) {
        (&self.room, &self.opening, self.trade.as_deref().unwrap_or_default())
    }
}

/// Who decides, and how many of them must.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Terms {
    /// Whether all must approve, or any one.
    pub approval: WhoMust,
    /// Those who decide, in the book's order.
    pub approvers: Vec<Named>,
    /// Whether tax is in every price; not written where it is added.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub tax_in_prices: bool,
}

/// How many of those who decide must approve.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum WhoMust {
    /// All of them.
    All,
    /// Any one.
    Any,
}

/// Someone who decides.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Named {
    /// The approver's id.
    pub id: String,
    /// The name.
    pub name: String,
}

/// What all settled items come to, as plain amounts such as `3180.00`.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Total {
    /// Before tax.
    pub settled: String,
    /// With the book's tax, where it has one.
    #[serde(rename = "with tax", default, skip_serializing_if = "Option::is_none")]
    pub with_tax: Option<String>,
}

/// An item as issued.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct IssuedItem {
    /// The room, by its folder.
    pub room: String,
    /// The selection, by its id.
    pub item: String,
    /// Its number on drawings.
    pub tag: String,
    /// What it is called.
    pub name: String,
    /// The digest of `content`.
    pub mark: Digest,
    /// The digests of the same as older versions of the content write it, where the record has issues of them and
    /// they say no less of it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also: Vec<Digest>,
    /// All that the client is shown of it.
    pub content: Value,
    /// What the settled option comes to, before tax.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub price: Option<String>,
    /// From order to delivery, as the book says it; not part of the mark.
    #[serde(rename = "lead time", default, skip_serializing_if = "Option::is_none")]
    pub lead_time: Option<String>,
    /// The last day to order it; not part of the mark.
    #[serde(rename = "order by", default, skip_serializing_if = "Option::is_none")]
    pub order_by: Option<Date>,
    /// The digest of its supplier's name, by which another one is noticed; the name is the office's own. Older issues do
    /// not say it, and it is no part of the mark.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub supplier: Option<Digest>,
}

impl IssuedItem {
    /// How an issue knows a supplier again; nothing where none is named.
    pub fn supplied_by(name: &str) -> Option<Digest> {
        let name = plain_name(name);
        (!name.is_empty()).then(|| Digest::of(name.as_bytes()))
    }

    /// Whether a mark is of what it was shown as, by whichever version of the content.
    pub fn is(&self, mark: &Digest) -> bool {
        self.mark == *mark || self.also.contains(mark)
    }

    /// Whether it is shown as in another issue.
    pub fn is_shown_as(&self, other: &Self) -> bool {
        self.is(&other.mark) || other.is(&self.mark)
    }
}

impl Issue {
    /// The item of that room and selection.
    pub fn item(&self, room: &str, item: &str) -> Option<&IssuedItem> {
        self.items.iter().find(|issued| issued.room == room && issued.item == item)
    }

    /// Why an item was issued for construction unapproved; none where it was not.
    pub fn taken_unapproved(&self, room: &str, item: &str) -> Option<&str> {
        let taken = self.unapproved.as_ref()?;
        taken.items.iter().any(|one| one.room == room && one.item == item).then_some(taken.because.as_str())
    }

    /// Every item by room and selection, for whoever asks for many.
    pub fn by_item(&self) -> HashMap<(&str, &str), &IssuedItem> {
        // Of two that are called alike the first counts.
        self.items.iter().rev().map(|item| ((item.room.as_str(), item.item.as_str()), item)).collect()
    }
}
