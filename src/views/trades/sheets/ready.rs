//! What must be on site and set before a counter is measured, each as far as the book knows it.

use crate::book::{Room, Selection};
use crate::language::say;
use crate::shown::trades::{Built, agreed};
use crate::site::layout::lies_on;
use crate::site::taps;
use crate::views::pages::PageBuilder;
use crate::views::shared::html::{Html, show};
use crate::vocabulary::{Kind, Shown, Trait};

use super::worded::ReadyLine;

impl PageBuilder<'_> {
    /// The lines, in the order in which they are looked at on site.
    pub(super) fn ready_for_counters(&self, room: &Room, built: &Built<'_>) -> Vec<ReadyLine> {
        let line = |key: &str, known: Html| ReadyLine { name: Html::text(&say!(self.words, key)), known };
        let mut lines = vec![
            line("trades.ready_says.cabinets", self.cabinets_set(room)),
            line("trades.ready_says.level", show!(self.words, "trades.ready_says.on_site")),
            line("trades.ready_says.old_off", show!(self.words, "trades.ready_says.on_site")),
        ];
        let let_in = |selection: &&Selection| {
            let tap =
                selection.is(Kind::Tap) && !selection.standing().iter().any(|one| taps::stands_free(selection, one));
            selection.has(Trait::CutIntoCounter) || tap
        };
        lines.extend(room.selections.iter().filter(let_in).map(|selection| ReadyLine {
            name: Html::text(&format!("{} {}", selection.tag, selection.name.value)),
            known: self.on_site(selection),
        }));
        for item in built.items.iter().filter(|item| item.selection.is(Kind::Counter)) {
            let top = |of: fn(&crate::book::Top) -> crate::vocabulary::ShownValue| {
                agreed(item.selection, |option| option.top.get().map_or(crate::vocabulary::ShownValue::Nothing, of))
            };
            let told = [
                ("trades.ready_says.supports", top(|top| top.supports.shown())),
                ("trades.ready_says.seams", top(|top| top.layout.shown())),
            ];
            if lies_on(room, item.selection).is_empty() {
                continue;
            }
            for (key, value) in told {
                let name = say!(self.words, key, name = item.selection.name.value.as_str());
                lines.push(ReadyLine { name: Html::text(&name), known: self.known(&value) });
            }
        }
        lines
    }

    fn cabinets_set(&self, room: &Room) -> Html {
        let cabinets = room.selections.iter().filter(|one| one.is(Kind::Cabinet) && one.place.is_absent());
        let last = cabinets.filter_map(|one| self.subject.assessment.dates.needed(one)).max();
        last.map_or_else(|| self.not_known(), |day| show!(self.words, "trades.ready_says.set_by", day = day))
    }

    /// Whether what is let in is chosen, and when it is there.
    fn on_site(&self, selection: &Selection) -> Html {
        let Some(option) = selection.settled() else {
            return show!(self.words, "trades.ready_says.not_chosen").bold();
        };
        let dates = &self.subject.assessment.dates;
        let title = option.title();
        if let Some(day) = option.order.promised_for.get().copied().or_else(|| dates.comes(option)) {
            return show!(self.words, "trades.ready_says.comes", what = title, day = day);
        }
        match dates.needed(selection) {
            Some(day) => show!(self.words, "trades.ready_says.planned", what = title, day = day),
            None => show!(self.words, "trades.ready_says.chosen", what = title).then(" ").then(self.not_known()),
        }
    }
}
