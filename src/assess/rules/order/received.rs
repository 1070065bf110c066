//! What is about to be set, and was not received as it was approved.

use crate::assess::receiving::{self, Receipt, Said};
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, RunsOut};
use crate::book::{ProductOption, Selection};
use crate::finding::{Phrase, Remark, phrase};
use crate::units::{Date, Wrote};

declare! {
    /// A thing is about to be set, and was not received as it was approved
    ///
    /// ## What it checks
    /// What is ordered, or should have been by now, and is needed within two weeks, or was needed already: whether
    /// somebody received it, and found it as it was approved (`bookmatch receive`, from the page of its delivery).
    /// What was promised for a day that is past, and nobody has received, is told from the next day on.
    /// What came in part is told until the rest has come, and so is what nobody looked at of what is approved. What
    /// came otherwise and is not replaced, what changed since it came, and what two people say differently of
    /// one delivery is told as well. Past the day on which it is set, it stops the work. Before anything was issued
    /// for approval the rule is silent: there is nothing to hold it beside.
    ///
    /// ## Why it matters
    /// What is set is hard to send back: a handed door on the wrong side, a finish of another lot, five pulls of six.
    ///
    /// ## Remedy
    /// Receive it on its delivery's page or paper, hand that over, and confirm it. What is wrong is replaced, or
    /// revised and approved.
    ///
    /// ## Example
    /// ```text
    /// `Hood` is set on 5 Apr 2027, and nobody has received it as approved
    /// ```
    ///
    /// ## Source
    /// Trade practice: goods are checked against the signed schedule when they arrive, and before they are set. Two
    /// weeks ahead: common practice.
    "order/received", Query,
    due: WhenSet, tells: [],
    judges: goods,
    sources: ["common practice"],
    caution: None,
    Check::Book(check)
}

/// How many days before a thing is set it is told.
const AHEAD: i64 = 14;

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    if !context.approvals.is_asked() {
        return;
    }
    for (room, selection, option) in context.site.options() {
        if selection.settled().is_none() {
            continue;
        }
        let deliveries = &context.approvals.deliveries;
        let receipt = deliveries.receipt(context.book, context.approvals, (room, selection));
        let Some(told) = told(context, (selection, option), receipt) else { continue };
        let (message, remedy) = told;
        let at = option.order.placed_on.span().unwrap_or(selection.span);
        let finding = Remark::query(at, message).room(&room.folder).selection(&selection.name);
        findings.push(finding.remedy(remedy));
    }
}

/// The message, and what to do.
fn told(
    context: &Context<'_>,
    (selection, option): (&Selection, &ProductOption),
    receipt: Receipt<'_>,
) -> Option<(Phrase, &'static str)> {
    let name = &selection.name.value;
    match receipt {
        Receipt::AsApproved(_) | Receipt::Revised(_) | Receipt::Taken(_) => None,
        Receipt::LookedAtInPart(said) => Some(looked_at_in_part(context, name, said)),
        Receipt::InPart(_, counted) => {
            let set = set(context, (selection, option))?;
            let message = phrase!("`{name}` {set}, and {} came", name, set, Wrote(&counted.told()));
            Some((message, "ask the supplier when the rest comes, and receive it on its delivery's page"))
        }
        Receipt::Disputed(one, other) => Some((
            phrase!(
                "of delivery `{}` {} says that `{name}` came {}, and {} says {}",
                one.received.delivery.note,
                Wrote(&one.received.by),
                name,
                one.how(),
                Wrote(&other.received.by),
                other.how()
            ),
            "ask them both, and take back what is wrong: `bookmatch receive --withdraw DIGITS --by NAME`",
        )),
        Receipt::Changed(said) => Some((
            phrase!(
                "`{name}` was received on {} as it was approved then, and it is another now",
                name,
                said.received.on
            ),
            "hold what came beside what is approved now, and receive it anew; or put back what was approved",
        )),
        Receipt::Otherwise(said) => {
            let set = set(context, (selection, option))?;
            let kept = said.item.kept.map_or("", |kept| kept.words());
            Some((
                phrase!("`{name}` {set}, and came {}, {kept}: nothing came in its place", name, set, said.how(), kept),
                "have it replaced and receive that; or issue what came, and have it approved",
            ))
        }
        Receipt::Nothing => nothing_came(context, (selection, option)),
    }
}

/// That what came is not known to be all that was approved.
fn looked_at_in_part(context: &Context<'_>, name: &str, said: &Said) -> (Phrase, &'static str) {
    let unlooked = receiving::named(&said.unlooked(context.book));
    (
        phrase!("`{name}` was received on {}, and nobody looked at its {}", name, said.received.on, unlooked),
        "look at it, and receive it anew with all that its delivery's page asks",
    )
}

/// That nothing came of what is about to be set, or was promised for a day that is past.
fn nothing_came(
    context: &Context<'_>,
    (selection, option): (&Selection, &ProductOption),
) -> Option<(Phrase, &'static str)> {
    let name = &selection.name.value;
    let promised = option.order.promised_for.get().filter(|promised| **promised < context.today);
    let promised = promised.filter(|_| option.order.placed_on.get().is_some());
    if let Some(set) = set(context, (selection, option)) {
        let late = promised.map_or(Phrase::default(), |promised| phrase!(", was promised for {promised}", promised));
        return Some((
            phrase!("`{name}` {set}{late}, and nobody has received it as approved", name, set, late),
            "receive it on its delivery's page, and hand that over; set nothing before",
        ));
    }
    let promised = promised?;
    Some((
        phrase!("`{name}` was promised for {promised}, and nobody has received it", name, promised),
        "ask the supplier, and write the new day at `promised for`; if it came, receive it on its delivery's page",
    ))
}

/// "is set on 5 Apr 2027", where that is near or past and it is ordered or should be.
fn set(context: &Context<'_>, (selection, option): (&Selection, &ProductOption)) -> Option<Phrase> {
    let placed = !option.order.placed_on.is_absent();
    if !placed && context.dates.order_runs_out(selection) != RunsOut::Past {
        return None;
    }
    let on = context.dates.needed(selection)?;
    let days = context.today.days_until(on);
    (days <= AHEAD).then(|| said_of(on, days))
}

fn said_of(on: Date, days: i64) -> Phrase {
    if days < 0 { phrase!("was to be set on {on}", on) } else { phrase!("is set on {on}", on) }
}
