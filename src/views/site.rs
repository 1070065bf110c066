//! All pages of a book, folder by folder.

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

/// What the whole site says.
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
    pub cover: Cover,
    pub rooms: Vec<RoomPage>,
    pub items: Vec<ItemPage>,
    pub sign: SignPage,
}

/// For those who build it in: sizes, services and cautions, no price.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct InstallerPages {
    pub index: InstallerIndex,
    pub openings: Vec<OpeningPage>,
}

/// For the firm alone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OfficePages {
    pub index: OfficeIndex,
    /// Finish, appliance, plumbing, lighting, hardware and tile.
    pub schedules: Vec<SchedulePage>,
    pub orders: SchedulePage,
    pub money: SchedulePage,
    pub review: ReviewPage,
    pub rules: Option<RulesPage>,
}
