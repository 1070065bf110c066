//! What an issue holds of an item: all that the client was shown, told by its fields.

use serde_json::Value;

use super::IssuedItem;

/// All that the client was shown of an item.
#[derive(Clone, Copy, Debug)]
pub struct ItemContent<'a>(pub &'a Value);

/// All that the client was shown of one option.
#[derive(Clone, Copy, Debug)]
pub struct OptionContent<'a>(pub &'a Value);

impl IssuedItem {
    /// What was shown of it.
    pub fn shown(&self) -> ItemContent<'_> {
        ItemContent(&self.content)
    }
}

impl<'a> ItemContent<'a> {
    /// Its kind, by name.
    pub fn kind(self) -> Option<&'a str> {
        self.0.get("kind")?.as_str()
    }

    /// The option that is chosen, by its id.
    pub fn chosen(self) -> Option<&'a str> {
        self.0.get("chosen")?.as_str()
    }

    /// Its options, in their order.
    pub fn options(self) -> impl Iterator<Item = OptionContent<'a>> {
        self.0.get("options").and_then(Value::as_array).into_iter().flatten().map(OptionContent)
    }

    /// The option of that id.
    pub fn option(self, id: &str) -> Option<OptionContent<'a>> {
        self.options().find(|option| option.id() == Some(id))
    }

    /// Whether several options stand open.
    pub fn is_open(self) -> bool {
        self.chosen().is_none() && self.options().nth(1).is_some()
    }
}

impl<'a> OptionContent<'a> {
    fn text(self, key: &str) -> Option<&'a str> {
        self.0.get(key)?.as_str()
    }

    /// Its id.
    pub fn id(self) -> Option<&'a str> {
        self.text("id")
    }

    /// What it is called.
    pub fn name(self) -> Option<&'a str> {
        self.text("name")
    }

    /// Its maker's caution.
    pub fn caution(self) -> Option<&'a str> {
        self.text("caution")
    }

    /// What says which product it is, of what is written: name, maker, model and finish.
    pub fn product(self) -> impl Iterator<Item = &'a str> {
        ["name", "maker", "model", "finish"].into_iter().filter_map(move |key| self.text(key))
    }
}
