//! Approvals that rest on something that changed.

mod dates;

use std::collections::HashMap;

use crate::assess::approval::ApproverDecision;
use crate::assess::change_order::looked_at;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, Prerequisite};
use crate::book::{Room, Selection};
use crate::finding::{Phrase, Remark, Severity, phrase};
use crate::ledger::{Decision, Fact, IssuedItem, Moment, OptionContent, Vouched};
use crate::shown;

declare! {
    /// Something that an approved item rests on has changed since
    ///
    /// ## What it checks
    /// Each approved item, and what it rests on (cabinets on the appliances that they house, the counter
    /// on sink and taps, heights and panels on the floor, trim on its valve, and what `depends on`
    /// names): whether any of these is another one now than in the issue that was approved, and whether
    /// another option of it is chosen now than was when the item was approved. A stop once the item is
    /// ordered. While nothing was issued for approval it goes by dates: what an item rests on was chosen
    /// (`chosen on`) later than the item was ordered, or chosen itself.
    ///
    /// ## Why it matters
    /// The item changed and its neighbours did not. A cabinet that was approved for one refrigerator is
    /// the wrong cabinet for the next.
    ///
    /// ## Remedy
    /// Look whether it still suits what it rests on; change it, have it approved again with the change in view, or
    /// write the day of that look: `chosen on`. A change of price, words or pictures opens nothing again.
    ///
    /// ## Example
    /// ```text
    /// `Cabinets` was approved in issue 1, and `Range`, which it is built around, has changed since
    /// ```
    ///
    /// ## Source
    /// Trade practice: appliances before cabinets, sink and taps before the counter.
    "approve/depends", Query,
    due: WithThing, tells: [],
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    if !context.approvals.is_asked() {
        return findings.extend(dates::reopened(context));
    }
    let (chosen, mut issued) = (Chosen::of(context), HashMap::new());
    for (room, selection) in context.book.selections() {
        let Some(item) = context.approvals.item(room, selection) else { continue };
        let approving = item.words.iter().filter(|word| word.holds && word.given.is_known() && word.approves());
        let Some(word) = approving.max_by_key(|word| (word.issue, word.made)) else { continue };
        let Some(issue) = context.book.record.issues.get(&word.issue) else { continue };
        let items = issued.entry(word.issue).or_insert_with(|| issue.by_item());
        for ground in context.depends.grounds(selection) {
            let Some(issued) = items.get(&(ground.room.folder.as_str(), ground.selection.id.as_str())) else {
                continue;
            };
            findings.extend(changed((context, &chosen), (word, issued), (room, selection), ground));
        }
    }
}

fn changed(
    (context, chosen): (&Context<'_>, &Chosen<'_>),
    (word, issued): (&ApproverDecision, &IssuedItem),
    (room, selection): (&Room, &Selection),
    ground: &Prerequisite<'_>,
) -> Option<Remark> {
    let issue = word.issue;
    let issued_on = context.book.record.issues.get(&issue).map(|issue| issue.on);
    if issued_on.is_some_and(|on| looked_at(selection, ground.selection, on).is_some()) {
        return None;
    }
    let now = context.approvals.marked(ground.room, ground.selection)?;
    let told = match another_choice(context, chosen.up_to(word, ground), issued, ground) {
        Some((from, to)) => phrase!(": the choice from `{from}` to `{to}`", from, to),
        // That a choice was written down is no change of the thing that was on show.
        None if shown::holds(issued.mark, ground.selection.chosen.get().map(String::as_str), now) => return None,
        None => {
            let by_record = || context.approvals.item(ground.room, ground.selection).and_then(|item| item.chosen());
            let chosen = ground.selection.chosen.get().map(String::as_str).or_else(by_record);
            let kind = ground.selection.kind.get().copied();
            let touching = ground.because.touched_by(kind, (&issued.content, &now.content), chosen)?;
            touching.first().map_or(Phrase::default(), |change| phrase!(": {}", change.words()))
        }
    };
    let (name, other) = (&selection.name.value, &ground.selection.name.value);
    let message = phrase!(
        "`{name}` was approved in issue {issue}, and `{other}`, which it {}, has changed since{told}{by}",
        name,
        issue,
        other,
        ground.because.words(),
        told,
        to_be_ordered_by(context, selection)
    );
    let severity = if selection.is_ordered() { Severity::Stop } else { Severity::Query };
    let finding = Remark::new(severity, selection.span, message).room(&room.folder).selection(&selection.name);
    let remedy = phrase!(
        "look whether `{name}` still suits it; change it, have it approved again, or write the day of that look: `chosen on`",
        name
    );
    Some(finding.also(ground.selection.span, "has changed").remedy(remedy))
}

/// The day of the earliest order that rests on it, while it is still to come.
fn to_be_ordered_by(context: &Context<'_>, selection: &Selection) -> Phrase {
    let order = context.dates.last_order(selection).filter(|_| !selection.is_ordered());
    order.map_or_else(Phrase::default, |last| phrase!("; it is to be ordered by {last}", last))
}

/// The option that was chosen when the word was given and the one that is chosen now, by name, where they
/// are two. A first choice is none: all options were on show.
fn another_choice(
    context: &Context<'_>,
    by_record: Option<&str>,
    issued: &IssuedItem,
    ground: &Prerequisite<'_>,
) -> Option<(String, String)> {
    let before = by_record.or_else(|| issued.shown().chosen())?;
    let item = context.approvals.item(ground.room, ground.selection)?;
    let now = ground.selection.chosen.get().map(String::as_str).or_else(|| item.chosen())?;
    let name = |id: &str| {
        let options = ground.selection.options.iter();
        let here = options.filter(|option| option.id.value == id).map(|option| option.title()).next();
        let there = issued.shown().option(id).and_then(OptionContent::name);
        here.or_else(|| there.map(str::to_string)).unwrap_or_else(|| id.to_string())
    };
    (before != now).then(|| (name(before), name(now)))
}

/// The options that were approved of each item, by room and selection, with when that was said.
struct Chosen<'a>(HashMap<(&'a str, &'a str), Vec<(Moment, &'a str)>>);

impl<'a> Chosen<'a> {
    fn of(context: &Context<'a>) -> Self {
        let record = &context.book.record;
        let vouched = Vouched::of(&record.lines);
        let given = record.facts().filter_map(|fact| match fact {
            Fact::Decided(given) if vouched.is_known(given) => Some(given),
            _ => None,
        });
        let mut chosen: HashMap<(&str, &str), Vec<(Moment, &str)>> = HashMap::new();
        for (made, asked) in given.flat_map(|given| given.items.iter().map(move |asked| (given.made, asked))) {
            let approves = matches!(asked.decision, Decision::Approved | Decision::ApprovedAsNoted);
            if let Some(option) = asked.option.as_deref().filter(|_| approves) {
                chosen.entry((&asked.room, &asked.item)).or_default().push((made, option));
            }
        }
        Self(chosen)
    }

    /// The option of a ground that was last approved up to when a word was given.
    fn up_to(&self, word: &ApproverDecision, ground: &Prerequisite<'_>) -> Option<&'a str> {
        let options = self.0.get(&(ground.room.folder.as_str(), ground.selection.id.as_str()))?;
        let before = options.iter().filter(|(made, _)| *made <= word.made);
        before.max_by_key(|(made, _)| *made).map(|(_, option)| *option)
    }
}
