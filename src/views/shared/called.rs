//! What an option is called: as the book has it now, and as somebody signed it.

use crate::assess::approval::ApproverDecision;
use crate::book::{ProductOption, Room, Selection};
use crate::shown;
use crate::views::pages::PageBuilder;

/// What an option is called; what has no name of its own, as labour, by that of its selection. With its id where two of a
/// selection read the same.
pub fn called(selection: &Selection, option: &ProductOption) -> String {
    let own = |option: &ProductOption| match option.title() {
        title if title.is_empty() => selection.name.value.clone(),
        title => title,
    };
    let name = own(option);
    let alike = selection.options.iter().filter(|other| own(other) == name).count();
    if alike > 1 { format!("{name} ({})", option.id.value) } else { name }
}

impl PageBuilder<'_> {
    /// The option that somebody took, as it was called in what they signed; its id where no issue shows that.
    pub fn option_signed(&self, word: &ApproverDecision, room: &Room, selection: &Selection) -> Option<String> {
        let id = word.option.as_deref()?;
        let key = (room.folder.as_str(), selection.id.as_str());
        let mut issued = self.issued.values().rev().filter_map(|all| all.get(&key));
        let signed = issued.find(|issued| issued.mark == word.mark);
        let name = signed.and_then(|issued| shown::option_called(&issued.content, id));
        Some(name.unwrap_or_else(|| id.to_string()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::rules::trial::Trial;

    fn names(lines: &str) -> Vec<String> {
        let book = Trial::of("fit/width").selection(&format!("selection: Fitting\n{lines}"), "").read();
        let selection = &book.rooms[0].selections[0];
        selection.options.iter().map(|option| called(selection, option)).collect()
    }

    #[test]
    fn options_that_read_the_same_bear_their_ids_and_what_has_no_name_that_of_its_selection() {
        let of = |white: &str, black: &str| {
            names(&format!("kind: dishwasher\noptions:\n  - {{id: white, {white}}}\n  - {{id: black, {black}}}"))
        };
        let larderwen = "maker: Larderwen, model: D 60";
        assert_eq!(of(larderwen, larderwen), ["Larderwen D 60 (white)", "Larderwen D 60 (black)"]);
        assert_eq!(of(larderwen, "maker: Larderwen, model: D 80"), ["Larderwen D 60", "Larderwen D 80"]);
        assert_eq!(names("kind: labour\nprice: 500"), ["Fitting"]);
        assert_eq!(of("price: 500", "price: 600"), ["Fitting (white)", "Fitting (black)"]);
    }
}
