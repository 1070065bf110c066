//! The pages of a book, folder by folder: all of them, or some.

use super::cover::Cover;
use super::installer::InstallerIndex;
use super::item::ItemPage;
use super::office::OfficeIndex;
use super::opening::OpeningPage;
use super::review::ReviewPage;
use super::room::RoomPage;
use super::rules::RulesPage;
use super::schedule::SchedulePage;
use super::sign::SignPage;

/// Makes some pages of a site, when they are asked for: told one after another, a large book is never held whole.
pub type Portion<'a> = Box<dyn Fn() -> Site + Send + Sync + 'a>;

/// What pages of a site say: the whole, or a portion of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Site {
    /// Of the interface's words, as a language tag: `en`.
    pub language: String,
    pub client: ClientPages,
    pub installer: InstallerPages,
    pub office: OfficePages,
}

/// For the people who choose and pay: no cost, no margin, no private note.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ClientPages {
    pub cover: Option<Cover>,
    pub rooms: Vec<RoomPage>,
    pub items: Vec<ItemPage>,
    pub sign: Option<SignPage>,
}

/// For those who build it in: sizes, services and cautions, no price.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct InstallerPages {
    pub index: Option<InstallerIndex>,
    pub openings: Vec<OpeningPage>,
}

/// For the firm alone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OfficePages {
    pub index: Option<OfficeIndex>,
    /// Finish, appliance, plumbing, lighting, hardware and tile.
    pub schedules: Vec<SchedulePage>,
    pub orders: Option<SchedulePage>,
    pub money: Option<SchedulePage>,
    pub review: Option<ReviewPage>,
    pub rules: Option<RulesPage>,
}
