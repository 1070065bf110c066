//! What is written of one option: its own keys, and those that it leaves out and takes from its selection
//! and its product, groups within groups likewise.

use std::borrow::Cow;

use super::key_filter::KeyFilter;
use crate::source::Spanned;
use crate::source::yaml::{Node, Value};

/// One key with its value.
pub type Pair = (Spanned<String>, Node);

/// Keys and values, those of the first layer before the rest; nothing is copied but groups that two layers
/// have in common.
#[derive(Clone, Default)]
pub struct Layers<'n> {
    pairs: Vec<(&'n Spanned<String>, Cow<'n, Node>)>,
    keys: KeyFilter,
}

impl<'n> Layers<'n> {
    /// The pairs of a group; none of anything else.
    pub fn pairs_of(node: &'n Node) -> &'n [Pair] {
        match &node.value {
            Value::Map(pairs) => pairs,
            _ => &[],
        }
    }

    /// Lays more under what is there.
    pub fn lay_under(&mut self, pairs: impl Iterator<Item = &'n Pair>) {
        let (above, keys) = (self.pairs.len(), self.keys);
        for (key, below) in pairs {
            let mut own = self.pairs.iter_mut().take(above).filter(|_| keys.may_hold(&key.value));
            match own.find(|(own, _)| own.value == key.value) {
                Some((_, own)) if matches!((&own.value, &below.value), (Value::Map(_), Value::Map(_))) => {
                    fill_in(own.to_mut(), below);
                }
                Some(_) => { /* its own counts, also where it says that there is nothing */ }
                None => {
                    self.keys.add(&key.value);
                    self.pairs.push((key, Cow::Borrowed(below)));
                }
            }
        }
    }

    /// The value of a key as it is written in one place, which others may take it from too: none where two layers
    /// have it in common.
    pub fn as_written(&self, key: &str) -> Option<&'n Node> {
        match self.pairs.iter().find(|(own, _)| own.value == key) {
            Some((_, Cow::Borrowed(node))) => Some(node),
            _ => None,
        }
    }

    /// Every key with its value.
    pub fn iter(&self) -> impl Iterator<Item = (&Spanned<String>, &Node)> {
        self.pairs.iter().map(|(key, node)| (*key, node.as_ref()))
    }

    /// The value at a path such as `size.width`, where something is written there.
    pub fn at(&self, path: &str) -> Option<&Node> {
        let mut keys = path.split('.');
        let first = keys.next().filter(|key| self.keys.may_hold(key))?;
        let (_, node) = self.iter().find(|(key, _)| key.value == first)?;
        keys.try_fold(node, |node, key| node.at(key)).filter(|node| !node.is_nothing())
    }
}

/// Adds to a group what it leaves out and another has.
fn fill_in(node: &mut Node, from: &Node) {
    let (Value::Map(pairs), Value::Map(others)) = (&mut node.value, &from.value) else { return };
    for (key, other) in others {
        match pairs.iter_mut().find(|(own, _)| own.value == key.value) {
            Some((_, own)) => fill_in(own, other),
            None => pairs.push((key.clone(), other.clone())),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{Files, yaml};

    fn group(text: &str) -> Node {
        let file = Files::default().add("a.yaml".into(), text.into());
        yaml::parse(file, text).unwrap().root.unwrap()
    }

    fn text(layers: &Layers<'_>, path: &str) -> Option<String> {
        match &layers.at(path)?.value {
            Value::Scalar { text, .. } => Some(text.clone()),
            _ => None,
        }
    }

    #[test]
    fn what_stands_above_counts_and_groups_are_filled_in_key_by_key() {
        let own = group("finish: brass\nsize: {width: 30}\nmaker:\n");
        let selection = group("finish: steel\nsize: {width: 36, depth: 25}\nsupplier: Oren\n");
        let product = group("maker: Velmora\nsize: {height: 37}\nsupplier: Dunsel\n");
        let mut layers = Layers::default();
        for node in [&own, &selection, &product] {
            layers.lay_under(Layers::pairs_of(node).iter());
        }
        assert_eq!(text(&layers, "finish").as_deref(), Some("brass"));
        assert_eq!(text(&layers, "size.width").as_deref(), Some("30"));
        assert_eq!(text(&layers, "size.depth").as_deref(), Some("25"));
        assert_eq!(text(&layers, "size.height").as_deref(), Some("37"));
        assert_eq!(text(&layers, "supplier").as_deref(), Some("Oren"));
        assert_eq!(text(&layers, "maker"), None, "left empty on purpose");
    }
}
