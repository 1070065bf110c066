//! Tells the sheets to sign on paper: one a room, and one for the whole book.

use crate::assess::Amounts;
use crate::book::{Book, ProductOption, Room as BookRoom, Selection, System};
use crate::ledger::Purpose;
use crate::marks;
use crate::units::Money;
use crate::views::html::Html;
use crate::views::sheet::Fact;
use crate::views::sign_off::{
    Allowance, Approver, Fit, Item, Line, Paper, PictureRef, ProductOption as OpenChoice, Project, Room, Shape, Sheet,
    SignOff, State,
};
use crate::views::state::Shape as Mark;

use super::figures::count;
use super::history::Of;
use super::lines::fact;
use super::{PageBuilder, parts, prose};

/// The path of the sheet of all rooms.
pub const WHOLE_BOOK: &str = "sheets/whole-book.pdf";

impl PageBuilder<'_> {
    /// Every sheet to sign, with its path.
    pub fn papers(&self) -> Vec<(String, SignOff)> {
        let book = self.subject.book;
        let amounts = &self.subject.assessment.amounts;
        let whole = Sheet {
            code: "S-00".into(),
            title: "What is being signed".into(),
            scope: "Whole book".into(),
            mark: marks::shown(&marks::of_all(self.marks.values())),
        };
        let all: Vec<&BookRoom> = book.rooms.iter().collect();
        let whole = self.paper(whole, &all, amounts.book.settled, true);
        let mut papers = parts::of(WHOLE_BOOK.to_owned(), whole);
        for room in &book.rooms {
            let sheet = Sheet {
                code: format!("S-{}", room.letter),
                title: "What is being signed".into(),
                scope: room.title().into(),
                mark: self.room_mark(room),
            };
            let settled = amounts.rooms.get(&room.folder).and_then(|due| due.settled);
            papers.extend(parts::of(self.chrome.paper_path(room), self.paper(sheet, &[room], settled, false)));
        }
        papers
    }

    fn paper(&self, sheet: Sheet, rooms: &[&BookRoom], settled: Option<Money>, whole: bool) -> SignOff {
        let project = &self.subject.book.project;
        let chrome = self.chrome.project();
        let items: usize = rooms.iter().map(|room| room.selections.len()).sum();
        let open =
            rooms.iter().flat_map(|room| &room.selections).filter(|selection| selection.settled().is_none()).count();
        let mut facts = vec![line("Items", count(items, "item", "items"))];
        if open > 0 {
            facts.push(line("Still to choose", count(open, "item", "items")));
        }
        facts.push(line("Who signs", self.who_signs()));
        facts.extend(self.in_ledger().map(|stated| line("On record as", stated)));
        SignOff {
            language: project.languages.first().cloned().unwrap_or_else(|| "en".into()),
            paper: paper_of(self.subject.book),
            draft: self.subject.draft,
            project: project_of(self.subject.book),
            sheet,
            issue: chrome.issue.clone(),
            date: chrome.date.clone(),
            statement: self.statement(open),
            facts,
            rooms: rooms.iter().map(|room| self.paper_room(room)).collect(),
            totals: self.sums(settled, rooms).into_iter().map(|sum| line(&sum.name, sum.amount.to_string())).collect(),
            allowances: if whole { self.paper_allowances() } else { vec![] },
            approvers: self.who_signed(rooms),
            rule: self.who_signs(),
            revisions: self.revisions(Of::Rooms(&rooms.iter().map(|room| room.folder.as_str()).collect())),
            part: None,
        }
    }

    /// The line of the ledger that names the issue, by its number and the first digits of its digest: by a
    /// sheet that states it a cut or exchanged ledger shows.
    fn in_ledger(&self) -> Option<String> {
        let record = &self.subject.book.record;
        let head = record.heads.get(&record.latest_for(Purpose::Approval)?.number)?;
        let digits: String = head.sha256.to_string().chars().take(16).collect();
        Some(format!("line {} of the ledger, {digits}", head.line))
    }

    fn paper_allowances(&self) -> Vec<Allowance> {
        let allowances = self.subject.assessment.amounts.allowances.iter();
        allowances
            .map(|(name, allowance)| Allowance {
                name: super::lines::capital(name),
                allowed: allowance.allowed.to_string(),
                chosen: allowance.due.settled.map_or_else(|| "–".into(), |settled| settled.to_string()),
                rest: super::sign::rest(allowance),
            })
            .collect()
    }

    fn paper_room(&self, room: &BookRoom) -> Room {
        let settled = self.subject.assessment.amounts.rooms.get(&room.folder).and_then(|due| due.settled);
        Room {
            name: room.title().into(),
            note: self.terms(),
            items: room.selections.iter().map(|selection| self.paper_item(room, selection)).collect(),
            subtotal: settled.map(|settled| line(&format!("{}, before tax", room.title()), settled.to_string())),
        }
    }

    fn paper_item(&self, room: &BookRoom, selection: &Selection) -> Item {
        let settled = selection.settled();
        let several = selection.options.len() > 1;
        let chosen = self.subject.assessment.approvals.item(room, selection).and_then(|item| item.chosen());
        let mut description = settled.map(|option| self.description(option)).unwrap_or_default();
        description.extend(self.said_of(room, selection));
        let text = |slot: Option<&Money>| slot.map_or_else(String::new, ToString::to_string);
        Item {
            tag: selection.tag.clone(),
            name: selection.name.value.clone(),
            option: settled.filter(|_| several).map_or_else(String::new, ProductOption::title),
            product: settled.map_or_else(String::new, |option| self.in_a_line(option)),
            told: settled.map_or_else(String::new, |option| option.description.text().into()),
            description: description.iter().map(plain).collect(),
            fit: settled.and_then(|option| self.paper_fit(room, selection, option)),
            quantity: settled.and_then(|option| self.quantity(option)).unwrap_or_default(),
            unit_price: text(settled.and_then(|option| option.price.get())),
            price: settled.and_then(Amounts::price).map_or_else(String::new, |price| price.to_string()),
            mark: self.marks.get(&(room.folder.as_str(), selection.id.as_str())).map_or_else(String::new, marks::shown),
            state: on_paper(self.decision(room, selection)),
            picture: settled.and_then(|option| self.paper_picture(selection, option)),
            why: selection
                .why
                .get()
                .map_or_else(String::new, |why| prose::blocks(why).plain().trim().replace('\n', " ")),
            cautions: self.cautions(room, selection).iter().map(Html::plain).collect(),
            choices: if settled.is_some() {
                vec![]
            } else {
                selection.options.iter().map(|option| self.paper_choice(room, selection, option, chosen)).collect()
            },
            decided: self.decided(room, selection),
        }
    }

    /// What is said of a selection whichever option is taken.
    fn said_of(&self, room: &BookRoom, selection: &Selection) -> Vec<Fact> {
        let mut facts = Vec::new();
        if let Some(place) = selection.place.get() {
            let sides: Vec<_> = room.opening(place).map_or_else(Vec::new, |opening| {
                let size = [opening.governing_width(), crate::site::fitting::height(room, opening)];
                size.into_iter().flatten().collect()
            });
            let size =
                if sides.is_empty() { Html::default() } else { Html::text(", ").then(self.wording.sides(&sides)) };
            facts.push(fact("Opening", Html::text(place).then(size)));
        }
        let said = [
            ("Allowance", &selection.allowance),
            ("Bought by", &selection.furnished_by),
            ("Fitted by", &selection.installed_by),
        ];
        facts.extend(said.into_iter().filter_map(|(name, slot)| Some(fact(name, slot.get()?.as_str()))));
        facts
    }

    fn paper_fit(&self, room: &BookRoom, selection: &Selection, option: &ProductOption) -> Option<Fit> {
        let fit = self.fit(room, selection, option, 0)?;
        let misfit = fit.verdict.shape == Mark::DoesNotFit;
        Some(Fit { misfit, verdict: fit.verdict.word, sentence: fit.sentence.plain() })
    }

    fn paper_choice(
        &self,
        room: &BookRoom,
        selection: &Selection,
        option: &ProductOption,
        chosen: Option<&str>,
    ) -> OpenChoice {
        let in_a_line = |facts: Vec<Fact>| {
            let told = facts.iter().map(|fact| format!("{} {}", fact.name.to_lowercase(), fact.value.plain()));
            super::lines::capital(&told.collect::<Vec<_>>().join(" · "))
        };
        OpenChoice {
            name: option.title(),
            product: self.in_a_line(option),
            told: option.description.text().into(),
            sizes: in_a_line(self.sizes(option)),
            more: in_a_line(
                option
                    .hinge
                    .get()
                    .map(|hinge| fact("Hinge", hinge.as_str()))
                    .into_iter()
                    .chain(self.more(option))
                    .collect(),
            ),
            fit: self.paper_fit(room, selection, option),
            picture: self.paper_picture(selection, option),
            price: Amounts::price(option).map_or_else(String::new, |price| price.to_string()),
            crossed: chosen == Some(option.id.value.as_str()),
        }
    }

    /// A picture on paper: its key is its path in the book.
    fn paper_picture(&self, selection: &Selection, option: &ProductOption) -> Option<PictureRef> {
        let named = option.photos.first()?;
        let made = self.album.made(named)?;
        let alt = named.alt.clone().unwrap_or_else(|| format!("{}, {}", selection.name.value, self.in_a_line(option)));
        Some(PictureRef { key: named.path.clone(), alt, width: made.width, height: made.height })
    }
}

/// The paper that a book is printed on, by its units.
pub fn paper_of(book: &Book) -> Paper {
    if book.project.units == System::Imperial { Paper::UsLetter } else { Paper::A4 }
}

/// The project as a title block on paper names it.
pub fn project_of(book: &Book) -> Project {
    let project = &book.project;
    Project {
        title: project.title.text().into(),
        number: project.number.text().into(),
        client: project.client.text().into(),
        firm: project.firm.name.text().into(),
        designer: project.designer.text().into(),
        address: project.address.text().into(),
    }
}

/// Those who sign, with nothing signed yet.
pub fn approvers(book: &Book) -> Vec<Approver> {
    let nothing = |name: &String| Approver { name: name.clone(), signatures: vec![], open: true };
    book.project.approvers.iter().map(|approver| nothing(&approver.name)).collect()
}

/// A state with the shape that paper draws.
fn on_paper(state: crate::views::state::State) -> State {
    let shape = match state.shape {
        Mark::Approved => Shape::Approved,
        Mark::ApprovedAsNoted => Shape::ApprovedAsNoted,
        Mark::ReviseAndResubmit => Shape::ReviseAndResubmit,
        Mark::Rejected => Shape::Rejected,
        Mark::ChangedSinceSigned => Shape::Changed,
        _ => Shape::Waiting,
    };
    State { shape, words: state.word }
}

fn line(label: &str, value: impl Into<String>) -> Line {
    Line { label: label.into(), value: value.into() }
}

/// A fact without its markup; paper sets its own fractions.
fn plain(fact: &Fact) -> Line {
    line(&fact.name, fact.value.plain())
}
