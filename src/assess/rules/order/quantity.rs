//! Too little of a surface, or part of a box.

mod floors;
mod lights;
mod places;
mod set_out;
mod skirting;
mod stone;
mod taps;
pub(in crate::assess::rules) mod trim;

use std::collections::BTreeMap;

use super::to_order;
use crate::assess::context::about;
use crate::assess::rules::{Check, Findings, declare};
use crate::assess::{Context, say, say_area, say_weight};
use crate::book::{DetailName, DetailValue, ProductOption, Room, Selection, System};
use crate::finding::{Phrase, Remark, Severity, Value, phrase};
use crate::site::fitting::cover::{grout, pieces, rolls, strip, with_waste};
use crate::site::fitting::waste::waste;
use crate::source::Spanned;
use crate::units::{Area, Counted, Length, Percent, Quantity, Weight, Wrote};
use crate::vocabulary::supply::Worded;
use crate::vocabulary::{Kind, Mention, Pattern, Trade};

declare! {
    /// Too little is ordered for the area and its pattern, or part of a box, or two lots
    ///
    /// ## What it checks
    /// Tile, floors and boards: what is ordered against the area (`laid: area`, or `covers`) and the
    /// waste that the pattern costs; less than the area itself stops, less than area and waste is a
    /// query. Where the book says what a box holds, whole boxes are counted; where it does not, that is asked. Wallpaper: whole strips
    /// to the next repeat, whole strips in a roll. Grout among the accessories, by weight. One product
    /// whose boxes are of two lots. Edge pieces and trim, ordered with a tile or counter or by themselves for it,
    /// against the edges that need them: a tile's `open edges`, the front of the runs that a counter lies on and its
    /// ends where they are in the open. A counter that is ordered by its area, against its pieces, else the runs and
    /// islands that it lies on, with the splash that is written at the counter itself. Words of a pattern that can't be
    /// understood are asked about, where what is ordered is too little for some pattern. A floor that is
    /// larger than all rooms of the plan, and so is what heats it; an area for the material board that is another than what is
    /// laid. What stands in the plan as several fixtures, against how many are ordered, and what
    /// is chosen with a quantity of none. No more of what goes into an opening than there are places for it. As many taps
    /// as basins and sinks. Lights: as many as the plan sets out, or `hangs` lists, are ordered,
    /// and what the plan hangs is a light.
    ///
    /// | pattern | waste |
    /// | --- | --- |
    /// | straight, stacked, running bond, mosaic | 10 % |
    /// | diagonal | 15 % |
    /// | herringbone, chevron | 20 % |
    /// | planks and boards straight, otherwise | 7 %, 15 % |
    ///
    /// `laid: {waste: …}` says otherwise.
    ///
    /// ## Why it matters
    /// The box that is fetched later is of another lot: another shade, another size. Rounding to
    /// boxes may hide that the waste was forgotten.
    ///
    /// ## Remedy
    /// Order so many whole boxes at once, of one lot, and keep one.
    ///
    /// ## Example
    /// ```yaml
    /// pattern: herringbone
    /// laid: {area: 84 sq ft}
    /// sold: {box holds: 9.7 sq ft}
    /// quantity: 10 boxes     # 84 and a fifth more are 100.8: eleven boxes
    /// ```
    ///
    /// ## Source
    /// Trade practice for waste, which varies from 5 to 25 %; grout at 1.6 kg a litre by a makers'
    /// rule, its layout from memory; the rest is arithmetic.
    "order/quantity", Query,
    due: GoodsOrdered, tells: [],
    judges: [Tile, Counter, Splashback, Floor, Paint, Wallpaper, Boarding, Trim, Pull, Knob, Pendant, Cabinet],
    sources: ["common practice", "arithmetic", "from memory: layout of the makers' grout rule"],
    caution: None,
    Check::Book(check)
}

/// What a pattern wastes at most, of a hundred parts (trade practice).
const MOST_WASTE: u8 = 20;

/// Cut off a strip of paper, top and bottom together, where the book does not say (trade practice).
const TRIM: Length = Length::from_inches(4);

fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for (room, selection, option) in context.site.options() {
        let here = At { room, selection, option, units: context.book.project.units };
        findings.extend(here.paper(context.book.project.units).or_else(|| here.surface()));
        findings.extend(here.grout());
        findings.extend(here.papered_unsaid());
        let ordered = option.quantity.get().and_then(|ordered| here.area_of(ordered));
        findings.extend(floors::less(context, (room, selection, option), ordered));
    }
    findings.extend(context.site.options().filter_map(|one| floors::ask(context, one)));
    findings.extend(context.site.options().filter_map(|one| floors::apart(one, context.book.project.units)));
    findings.extend(context.site.options().filter_map(|one| skirting::ask(context, one)));
    findings.extend(context.site.options().filter_map(set_out::judge));
    findings.extend(context.site.options().filter_map(places::judge));
    findings.extend(taps::check(context));
    lots(context, findings);
    lights::check(context, findings);
    trim::check(context, findings);
    findings.extend(stone::check(context));
}

struct At<'a> {
    room: &'a Room,
    selection: &'a Selection,
    option: &'a ProductOption,
    units: System,
}

impl At<'_> {
    fn say(&self, area: Area) -> Value {
        say_area(area, self.units)
    }

    fn finding(&self, severity: Severity, ordered: &Spanned<Quantity>, message: Phrase) -> Remark {
        about(self.room, self.selection, self.option, severity, ordered.span, message)
    }

    fn net(&self) -> Option<Area> {
        self.option.laid.area.get().or(self.selection.covers.get()).copied()
    }

    fn surface(&self) -> Option<Remark> {
        let (kind, net) = (self.selection.kind.get()?, self.net()?);
        let waste = waste(*kind, self.option)?;
        let wanted = with_waste(net, waste)?;
        let ordered = self.option.quantity.spanned()?;
        let Some(there) = self.area_of(&ordered.value) else { return self.box_unsaid(ordered, net) };
        let how_much = match waste.value().is_zero() {
            true => phrase!("{} to cover", self.say(net)),
            false => phrase!("{} and {} % more for its pattern", self.say(net), waste.value()),
        };
        let enough = self.enough(wanted);
        let remedy = phrase!("order {enough} at once, of one lot, and keep what is over", enough);
        if there < wanted {
            let severity = if there < net { Severity::Stop } else { Severity::Query };
            let message = phrase!(
                "{} of `{}` are ordered, and {how_much} come to {}",
                ordered.value,
                self.selection.name.value,
                how_much,
                self.say(wanted)
            );
            return Some(self.finding(severity, ordered, message).source("common practice").remedy(remedy));
        }
        if let Some(asked) = self.pattern_not_known(net, there, ordered) {
            return Some(asked);
        }
        let each = self.box_area().filter(|_| ordered.value.area().is_some())?;
        if there.square_nanometres() % each.square_nanometres() == 0 {
            return None;
        }
        let message = phrase!(
            "{} of `{}` are ordered, and boxes hold {} each",
            ordered.value,
            self.selection.name.value,
            self.say(each)
        );
        Some(self.finding(Severity::Query, ordered, message).remedy(remedy))
    }

    /// A pattern whose words are not understood, where what is ordered would be too little for some.
    fn pattern_not_known(&self, net: Area, there: Area, ordered: &Spanned<Quantity>) -> Option<Remark> {
        let (pattern, at) = self.option.fact::<Worded<Pattern>>()?;
        let is_unknown = !pattern.is.known && self.option.laid.waste.is_absent();
        let most = with_waste(net, Percent::new(MOST_WASTE.into())?)?;
        if !is_unknown || there >= most {
            return None;
        }
        let message = phrase!(
            "the pattern of `{}` can't be understood (`{}`), so that nobody can tell whether {} are enough for {}",
            self.selection.name.value,
            pattern.words,
            ordered.value,
            self.say(net)
        );
        let finding = about(self.room, self.selection, self.option, Severity::Query, at, message);
        let remedy = "say it as straight, offset, diagonal or herringbone, or write what it wastes: `laid: {waste: …}`";
        Some(finding.also(ordered.span, "ordered").remedy(remedy))
    }

    /// Boxes of which nobody says what they hold.
    fn box_unsaid(&self, ordered: &Spanned<Quantity>, net: Area) -> Option<Remark> {
        if ordered.value.counted() != Counted::Boxes || !self.option.sold.box_holds.is_absent() {
            return None;
        }
        let message = phrase!(
            "{} of `{}` are ordered for {}, and nobody says what a box holds",
            ordered.value,
            self.selection.name.value,
            self.say(net)
        );
        let remedy = "write it from the supplier's sheet: `sold: {box holds: …}`";
        Some(self.finding(Severity::Query, ordered, message).remedy(remedy))
    }

    /// Whole boxes, or the area, that are enough.
    fn enough(&self, wanted: Area) -> Phrase {
        match self.box_area().and_then(|each| pieces(wanted, each)) {
            Some(1) => "1 box".into(),
            Some(boxes) => phrase!("{boxes} boxes", boxes),
            None => self.say(wanted.up_to_a_tenth(self.units.is_metric())).into(),
        }
    }

    /// What one box covers.
    fn box_area(&self) -> Option<Area> {
        let holds = self.option.sold.box_holds.get()?;
        let covers = holds.area().or_else(|| Some(self.face()?.2.times(i64::try_from(holds.whole()?).ok()?)))?;
        (covers > Area::ZERO).then_some(covers)
    }

    /// A tile's face.
    fn face(&self) -> Option<(Length, Length, Area)> {
        let detail = self.option.detail(DetailName::FaceSize)?;
        match &detail.value {
            DetailValue::Sides(sides) => match sides.sides() {
                [one, other] => Some((*one, *other, sides.area())),
                _ => None,
            },
            _ => None,
        }
    }

    /// What is ordered, as an area: an area, boxes, or pieces.
    fn area_of(&self, ordered: &Quantity) -> Option<Area> {
        if let Some(area) = ordered.area() {
            return Some(area);
        }
        let count = i64::try_from(ordered.whole()?).ok()?;
        match ordered.counted() {
            Counted::Boxes => Some(self.box_area()?.times(count)),
            Counted::Unsaid | Counted::Pieces | Counted::Tiles => Some(self.face()?.2.times(count)),
            Counted::Lengths | Counted::Rolls | Counted::Lights | Counted::Other => None,
        }
    }

    fn paper(&self, units: System) -> Option<Remark> {
        let walls = self.selection.papered.get()?;
        let sold = &self.option.sold;
        let (roll, ordered) = (sold.roll.get()?, self.option.quantity.spanned()?);
        let trim = walls.trim.get().copied().unwrap_or(TRIM);
        let strip = strip(walls.height, trim, sold.repeat.get().copied())?;
        let wanted = rolls(walls.along, strip, *roll)?;
        let rolls_ordered = matches!(ordered.value.counted(), Counted::Unsaid | Counted::Rolls);
        if !rolls_ordered || i128::from(ordered.value.whole()?) >= wanted {
            return None;
        }
        let message = phrase!(
            "{} of `{}` are ordered, and the walls take {wanted} rolls, each strip cut at {}",
            ordered.value,
            self.selection.name.value,
            wanted,
            say(strip, units)
        );
        let remedy =
            phrase!("order {wanted} rolls at once, of one batch, and one more if it is to be kept in repair", wanted);
        Some(self.finding(Severity::Query, ordered, message).source("common practice").remedy(remedy))
    }

    /// Wallpaper that is ordered by the roll for walls of which nobody says how large they are.
    fn papered_unsaid(&self) -> Option<Remark> {
        let is_unsaid = self.selection.papered.is_absent() && self.net().is_none();
        let ordered = self.option.quantity.spanned().filter(|_| is_unsaid && self.selection.is(Kind::Wallpaper))?;
        let message = phrase!(
            "{} of `{}` are ordered, and nobody says which walls it covers",
            ordered.value,
            self.selection.name.value
        );
        let remedy = "add the walls: `papered: {along: …, height: …}`";
        Some(self.finding(Severity::Query, ordered, message).source("common practice").remedy(remedy))
    }

    /// Grout that is ordered with a tile, by weight.
    fn grout(&self) -> Option<Remark> {
        let with = self.option.accessories.iter().find(|with| Mention::Grout.is_in(&with.name.value))?;
        let ordered = with.quantity.spanned()?;
        let there =
            Weight::parse(&ordered.value.to_string()).ok().or_else(|| in_bags(&with.name.value, &ordered.value))?;
        let (long, short, _) = self.face()?;
        let (thickness, joint) =
            (self.option.length(DetailName::Thickness)?.0, self.option.length(DetailName::Joint)?.0);
        let wanted = grout(self.net()?, (long, short), thickness, joint)?;
        if there >= wanted {
            return None;
        }
        let message = phrase!(
            "{} of grout are ordered for `{}`, and its joints take some {}",
            ordered.value,
            self.selection.name.value,
            say_weight(wanted, self.units)
        );
        let finding =
            self.finding(Severity::Query, ordered, message).source("from memory: layout of the makers' grout rule");
        Some(finding.remedy("ask the maker's own table for this grout, and order whole bags of one batch"))
    }
}

/// So many bags of the one weight that their name gives: `grout, 5 lb bag`.
fn in_bags(name: &str, ordered: &Quantity) -> Option<Weight> {
    let words: Vec<&str> = name.split_whitespace().collect();
    let pairs = words.windows(2).filter_map(|pair| match pair {
        [figure, unit] => Weight::parse(&format!("{figure} {unit}")).ok(),
        _ => None,
    });
    let alone = words.iter().filter_map(|word| Weight::parse(word.trim_end_matches([',', ';'])).ok());
    let mut told = pairs.chain(alone);
    let each = told.next().filter(|_| told.next().is_none())?;
    Some(each.times(i64::try_from(ordered.whole()?).ok()?))
}

/// One product, two lots.
fn lots(context: &Context<'_>, findings: &mut Findings<'_>) {
    let mut first: BTreeMap<(String, String, String), (&Spanned<String>, &Selection)> = BTreeMap::new();
    let surfaces =
        to_order(context).chain(context.site.options().filter(|(_, _, option)| !option.order.placed_on.is_absent()));
    for (room, selection, option) in surfaces {
        let trade = selection.kind.get().map(|kind| kind.trade());
        let surface = matches!(trade, Some(Trade::Tile | Trade::Finish));
        let Some(lot) = option.sold.lot.spanned().filter(|_| surface) else { continue };
        let product = (option.maker.text().into(), option.model.text().into(), option.colour.text().into());
        let (other, with) = *first.entry(product).or_insert((lot, selection));
        if other.value != lot.value {
            let message = phrase!(
                "`{}` is of lot {}, and `{}`, the same product, of lot {}",
                selection.name.value,
                Wrote(&lot.value),
                with.name.value,
                Wrote(&other.value)
            );
            let finding = about(room, selection, option, Severity::Query, lot.span, message);
            let remedy = "have one lot sent for both, or lay both out in daylight before either is set";
            findings.push(finding.also(other.span, "the other lot").remedy(remedy));
        }
    }
}

#[cfg(test)]
mod tests;
