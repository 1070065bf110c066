//! Everything to be signed, with marks, prices and totals.

use crate::assess::rules::Reader;
use crate::assess::{Allowance, Amounts, DecideBy, Due, WithTax};
use crate::book::{Approval, Book, Prices, Room, Selection};
use crate::language::{Words, say};
use crate::shown;
use crate::units::{Money, letter};
use crate::views::pages::PageBuilder;
use crate::views::shared::called::called;
use crate::views::shared::data::Data;
use crate::views::shared::found::{self, Hurts};
use crate::views::shared::html::{Html, show};
use crate::views::shared::lines::{capital, fact, withdrawn};
use crate::views::shared::photo::Photo;
use crate::views::shared::revisions::RevisionScope;
use crate::views::shared::sheet::{Fact, Link, Sheet, SheetPlace, on_sheet};
use crate::views::shared::signature::Signature;
use crate::views::shared::state::{State, StateShape};
use serde::Serialize;

/// `sign.html`.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SignPage {
    pub sheet: Sheet,
    pub statement: Html,
    pub facts: Vec<Fact>,
    /// Currency and what prices include, in a line.
    pub terms: String,
    /// Who signs, in the order of the columns and of the signature lines.
    pub signers: Vec<String>,
    /// Signatures that stand, and a place for each that is still wanted.
    pub lines: Vec<SignLine>,
    /// A room each.
    pub groups: Vec<SignGroup>,
    /// Subtotal, tax, total, allowances, over or under; the total is marked.
    pub totals: Vec<Total>,
    pub conditions: Vec<Condition>,
    /// The sheets as PDF: the whole book first, then a room each.
    pub papers: Vec<Link>,
    /// What is asked, for the page's scripts; absent while no issue was made.
    pub asked: Option<Data>,
}

/// A room's items.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SignGroup {
    pub room: Link,
    /// What of them and of the room can hurt, by name.
    pub heed: Option<Html>,
    pub items: Vec<SignItem>,
    /// The same in full words, each once.
    pub cautions: Vec<Html>,
}

/// One item to sign for.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SignItem {
    pub link: Link,
    pub photo: Option<Photo>,
    /// Maker, model, finish, size.
    pub description: Html,
    pub quantity: Option<String>,
    /// Whether each option that can be chosen fits.
    pub fits: Vec<FitLine>,
    /// By when it must be decided and why, while it waits.
    pub due: Option<String>,
    pub mark: Option<String>,
    /// One a signer, in their order.
    pub states: Vec<State>,
    pub price: Option<String>,
}

/// Whether an option fits, in plain words.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FitLine {
    /// The option; absent where there is only one.
    pub option: Option<String>,
    /// `Fits`, `Does not fit`, and so on.
    pub verdict: State,
    /// By how much, in a sentence.
    pub sentence: Html,
}

/// A place for a signature, and what stands there.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct SignLine {
    /// Who signs there.
    pub name: String,
    /// The drawing, or the name as typed; empty while nothing is signed.
    pub shown: Html,
    /// How it was given and of what.
    pub how: Option<String>,
    /// The day.
    pub date: String,
}

/// A line under the table.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Total {
    pub name: String,
    pub figure: String,
    /// The figure that is signed for.
    pub main: bool,
}

/// A condition that must be met before the item is ordered.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Condition {
    pub link: Link,
    pub state: State,
    pub sentence: Html,
}

on_sheet!(SignPage);

/// A sum with its name; the last of a list is what is signed for.
pub struct Sum {
    /// What it is.
    pub name: String,
    /// The amount.
    pub amount: Money,
}

impl PageBuilder<'_> {
    /// Every room of the book.
    pub fn all_rooms(&self) -> Vec<&Room> {
        self.subject.book.rooms.iter().collect()
    }

    /// `sign.html`.
    pub fn sign(&self) -> SignPage {
        let project = &self.subject.book.project;
        let place = SheetPlace {
            path: "sign.html".into(),
            number: "S-01".into(),
            name: say!(self.words, "pages.sign"),
            above: vec![self.chrome.first()],
        };
        let from = self.subject.book.rooms.last().map(|room| self.chrome.room_link(room));
        let cover = self.cover_link();
        let selections = self.subject.book.selections().count();
        let open = self.subject.book.selections().filter(|(_, selection)| selection.settled().is_none()).count();
        let mut facts =
            vec![self.worded("sign.items", selections.to_string()), self.worded("sign_says.who", self.who_signs())];
        let sums = self.sums(self.subject.assessment.amounts.book.settled, &self.all_rooms());
        facts.extend(sums.last().map(|sum| fact(&sum.name, self.words.amount(sum.amount))));
        facts.extend(self.withdrawn_to_agree(None).into_iter().map(|told| self.worded("changes.withdrawn", told)));
        let mark = shown::in_short(&shown::of_all(self.marks.values()));
        SignPage {
            sheet: self.revised(self.chrome.sheet(place, Some(mark), from, Some(cover)), RevisionScope::All),
            statement: Html::text(&self.statement(open)),
            facts,
            terms: self.terms(),
            signers: project.approvers.iter().map(|approver| approver.name.clone()).collect(),
            lines: self.sign_lines(),
            groups: self.subject.book.rooms.iter().map(|room| self.group(room)).collect(),
            totals: self.totals(),
            conditions: self.conditions(),
            papers: self.paper_links(),
            asked: self.asked(),
        }
    }

    /// What was approved and is withdrawn, of the book or of a room, until those who approved it agree: by what they sign
    /// now.
    pub fn withdrawn_to_agree(&self, room: Option<&Room>) -> Vec<String> {
        let gone = self.subject.assessment.approvals.withdrawn_unasked();
        let gone = gone.filter(|gone| room.is_none_or(|room| room.folder == gone.room));
        gone.map(|gone| withdrawn(self.words, gone)).collect()
    }

    /// What each approver signed of the whole book, and a place for what is still to be signed.
    fn sign_lines(&self) -> Vec<SignLine> {
        let rooms: Vec<&Room> = self.subject.book.rooms.iter().collect();
        let lines = self.who_signed(&rooms).into_iter().flat_map(|approver| {
            let name = approver.name;
            let shown = |signature: &Signature| match &signature.drawing {
                Some(drawing) => drawing.svg(&signature.name),
                None => Html::text(&signature.text),
            };
            let line = |signature: Signature| SignLine {
                name: name.clone(),
                shown: shown(&signature),
                how: Some(signature.how),
                date: signature.date,
            };
            let open = approver.open.then(|| SignLine { name: name.clone(), ..SignLine::default() });
            approver.signatures.into_iter().map(line).chain(open).collect::<Vec<_>>()
        });
        lines.collect()
    }

    /// What a signature means, on a sheet with so many items still open.
    pub fn statement(&self, open: usize) -> String {
        let statement = say!(self.words, "sign_says.statement");
        match open {
            0 => statement,
            open => format!("{statement} {}", say!(self.words, "sign_says.still_to_choose", n = open)),
        }
    }

    /// Who must sign, in words.
    pub fn who_signs(&self) -> String {
        who_signs(self.words, self.subject.book)
    }

    /// Currency and what prices include.
    pub fn terms(&self) -> String {
        let currency = self.subject.assessment.amounts.book.settled.map(|money| money.currency.code());
        let project = &self.subject.book.project;
        let key = match (project.prices, project.tax.is_absent()) {
            (Prices::WithTax, _) => "sign_says.with_tax",
            (Prices::BeforeTax, false) => "sign_says.before_tax",
            (Prices::BeforeTax, true) => "sign_says.as_quoted",
        };
        let tax = say!(self.words, key);
        currency.map_or_else(|| tax.clone(), |currency| format!("{currency}; {tax}"))
    }

    /// How much of a sum is approved, in words: what stands in it may be proposed and signed by nobody.
    fn how_approved(&self, rooms: &[&Room]) -> &'static str {
        let approvals = &self.subject.assessment.approvals;
        let settled = rooms.iter().flat_map(|room| room.selections.iter().map(move |one| (*room, one)));
        let settled: Vec<_> = settled.filter(|(_, one)| one.settled().is_some()).collect();
        let approved = settled.iter().filter(|(room, one)| approvals.is_orderable(room, one)).count();
        match approved {
            0 => "sign_says.total.proposed",
            all if all == settled.len() => "sign_says.total.approved",
            _ => "sign_says.total.partly",
        }
    }

    /// Subtotal, tax and total of what is proposed or chosen in these rooms.
    pub fn sums(&self, settled: Option<Money>, rooms: &[&Room]) -> Vec<Sum> {
        let Some(settled) = settled else { return vec![] };
        let mut sums = Vec::new();
        let WithTax { tax, total } = WithTax::of(self.subject.book, settled);
        let is_in = self.subject.book.project.prices == Prices::WithTax;
        if let (Some((tax, amount)), true) = (tax, is_in) {
            sums.push(Sum { name: say!(self.words, "sign_says.tax_in", rate = tax), amount });
        } else if let Some((tax, amount)) = tax {
            sums.push(Sum { name: say!(self.words, "sign_says.items_before_tax"), amount: settled });
            sums.push(Sum { name: say!(self.words, "sign_says.tax", rate = tax), amount });
        }
        sums.extend(total.map(|amount| Sum { name: say!(self.words, self.how_approved(rooms)), amount }));
        sums
    }

    fn totals(&self) -> Vec<Total> {
        let due = self.subject.assessment.amounts.book;
        let sums = self.sums(due.settled, &self.all_rooms());
        let last = sums.len().saturating_sub(1);
        let mut totals: Vec<Total> = sums
            .into_iter()
            .enumerate()
            .map(|(at, sum)| Total { name: sum.name, figure: self.words.amount(sum.amount), main: at == last })
            .collect();
        totals.extend(self.still_open(due));
        for (name, allowance) in &self.subject.assessment.amounts.allowances {
            totals.push(Total {
                name: say!(self.words, "sign_says.of_allowance", name = capital(name), amount = allowance.allowed),
                figure: rest(self.words, allowance),
                main: false,
            });
        }
        totals
    }

    /// What is still open, and what it can come to besides.
    pub fn still_open(&self, due: Due) -> Option<Total> {
        let (least, most) = due.open_least.zip(due.open_most)?;
        let name = match self.subject.book.project.prices {
            Prices::BeforeTax => say!(self.words, "sign_says.still_open", n = due.open),
            Prices::WithTax => say!(self.words, "sign_says.still_open_with_tax", n = due.open),
        };
        Some(Total { name, figure: say!(self.words, "units.range", least = least, most = most), main: false })
    }

    /// Approvals as noted, and what they ask for.
    fn conditions(&self) -> Vec<Condition> {
        let items = self.subject.book.selections().flat_map(|(room, selection)| {
            let open = self.known_words(room, selection).filter(|word| word.holds && word.is_conditional());
            open.map(move |word| Condition {
                link: self.chrome.item_link(room, selection),
                state: State::new(StateShape::ApprovedAsNoted, say!(self.words, "sign_says.noted_by", who = word.name)),
                sentence: word.note.as_deref().map_or_else(|| show!(self.words, "sign_says.no_condition"), Html::text),
            })
        });
        items.collect()
    }

    fn group(&self, room: &Room) -> SignGroup {
        let items = room.selections.iter().map(|selection| self.sign_item(room, selection)).collect();
        let of_room = self.told_of_room(room, Reader::Client).hazards.into_iter().map(Hurts::By);
        let of_items = room.selections.iter().flat_map(|selection| self.hurts(room, selection));
        let (names, cautions) = found::in_short_and_in_full(self.words, of_room.chain(of_items));
        let heed = (!names.is_empty()).then(|| show!(self.words, "sign.heed", what = self.words.series(&names)));
        SignGroup { room: self.chrome.room_link(room), heed, cautions, items }
    }

    /// Whether each option that still counts fits; nothing of those of which nothing is known.
    fn fits(&self, room: &Room, selection: &Selection) -> Vec<FitLine> {
        let several = selection.standing().len() > 1;
        let lines = selection.standing().iter().enumerate().filter_map(|(at, option)| {
            let fit = self.fit(room, selection, option, at)?;
            let option = several.then(|| format!("{}, {}", letter(at), called(selection, option)));
            Some(FitLine { option, verdict: fit.verdict, sentence: fit.sentence })
        });
        lines.collect()
    }

    /// By when a selection must be decided; nothing where nothing of it is left to decide.
    pub fn due_of(&self, room: &Room, selection: &Selection) -> Option<&DecideBy> {
        let assessment = self.subject.assessment;
        assessment.dates.decision(selection).filter(|_| !assessment.is_done(room, selection))
    }

    /// The option that those who approved an open selection took, and what it costs; that one is to be chosen, else.
    fn taken(&self, room: &Room, selection: &Selection) -> String {
        let taken = self.subject.assessment.approvals.item(room, selection).and_then(|item| item.chosen());
        let taken = selection.options.iter().find(|option| taken == Some(option.id.value.as_str()));
        match taken.map(|option| (called(selection, option), Amounts::price(option))) {
            Some((title, Some(price))) => say!(self.words, "sign_says.taken", option = title, price = price),
            Some((title, None)) => title,
            None => say!(self.words, "sign_says.to_be_chosen"),
        }
    }

    fn sign_item(&self, room: &Room, selection: &Selection) -> SignItem {
        let approvers = self.subject.book.project.approvers.iter();
        let settled = selection.settled();
        let first = selection.standing().iter().next();
        let price = match settled {
            Some(option) => Amounts::price(option).map(|price| self.words.amount(price)),
            None => Some(self.taken(room, selection)),
        };
        let photo = first.and_then(|option| self.album.photo(option.photos.first()?, "", 240));
        // What came and was taken is past every day on which it could be ordered.
        let due = self.due_of(room, selection).filter(|_| !self.came_otherwise(room, selection));
        SignItem {
            link: self.chrome.item_link(room, selection),
            photo: photo.map(|photo| crate::views::shared::photo::Photo { alt: String::new(), caption: None, ..photo }),
            description: Html::text(&self.selection_line(selection)),
            quantity: settled.and_then(|option| self.quantity(option)),
            fits: self.fits(room, selection),
            due: due.map(|due| self.day_and_reason(due)),
            mark: self.marks.get(&(room.folder.as_str(), selection.id.as_str())).map(shown::in_short),
            states: approvers.map(|approver| self.said_by(approver, room, selection)).collect(),
            price,
        }
    }
}

/// Who must sign a book, in words.
pub fn who_signs(words: Words, book: &Book) -> String {
    let project = &book.project;
    match (project.approval, project.approvers.len()) {
        (_, 0) => say!(words, "sign_says.who_is.nobody"),
        (_, 1) => project.approvers.first().map_or(String::new(), |approver| approver.name.clone()),
        (Approval::Any, _) => say!(words, "sign_says.who_is.any"),
        (Approval::All, 2) => say!(words, "sign_says.who_is.both"),
        (Approval::All, many) => say!(words, "sign_says.who_is.all", n = many),
    }
}

/// What is left of an allowance, in words, with and without what is still open.
pub fn rest(words: Words, allowance: &Allowance) -> String {
    let told = |left: Money| match left.is_negative() {
        true => Money::zero(left.currency)
            .checked_sub(left)
            .map_or_else(|_| words.amount(left), |over| say!(words, "sign_says.over", amount = over)),
        false => say!(words, "sign_says.left", amount = left),
    };
    let rest = told(allowance.left);
    match allowance.left_with_open {
        Some((dearest, cheapest)) if dearest != cheapest => {
            say!(words, "sign_says.with_open_range", rest = rest, dearest = told(dearest), cheapest = told(cheapest))
        }
        Some((left, _)) => say!(words, "sign_says.with_open", rest = rest, left = told(left)),
        None => rest,
    }
}
