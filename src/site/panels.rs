//! The front panel of a thing: among its own fields, or as a line of its own.

use crate::book::{DetailName, Panel, ProductOption, Room, Selection, Slot};
use crate::vocabulary::{Kind, Mention, words_of};

/// The panel that the joiner makes for an option: its own `panel`, else a cabinet selection of the room that is
/// called a panel and rests on the thing or shares a word of its name.
pub fn panel_of(room: &Room, selection: &Selection, option: &ProductOption) -> Option<Panel> {
    if let Some(own) = option.panel.get() {
        return Some(own.clone());
    }
    let panels: Vec<&Selection> = room.selections.iter().filter(|other| is_panel(other)).collect();
    let its_own = |panel: &&&Selection| {
        let named = panel.depends_on.iter().any(|name| name.value == selection.name.value);
        named
            || words_of(&panel.name).into_iter().any(|word| {
                !PANEL.contains(&word.as_str()) && words_of(&selection.name).into_iter().any(|own| own == word)
            })
    };
    let chosen = panels.iter().find(its_own).and_then(|panel| panel.settled())?;
    let thickness =
        chosen.length(DetailName::Thickness).map(|(value, at)| Slot::Given(crate::source::Spanned::new(value, at)));
    Some(Panel {
        width: chosen.size.width.clone(),
        height: chosen.size.height.clone(),
        thickness: thickness.unwrap_or_else(|| chosen.size.thickness.clone()),
        weight: chosen.fit.get().map(|fit| fit.weight.clone()).unwrap_or_default(),
        ..Panel::default()
    })
}

/// Whether any panel is told for a thing, as its own field or as a line of its own.
pub fn is_told(room: &Room, selection: &Selection, option: &ProductOption) -> bool {
    !option.panel.is_absent() || panel_of(room, selection, option).is_some()
}

/// Words for a front panel.
const PANEL: [&str; 4] = ["panel", "panels", "front", "fronts"];

fn is_panel(selection: &Selection) -> bool {
    selection.is(Kind::Cabinet) && Mention::Panel.is_in(&selection.name)
}
