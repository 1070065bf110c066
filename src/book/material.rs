//! `material` of a product: whether it burns, and what a counter is made of.

use crate::source::yaml::Node;
use crate::vocabulary::{Faults, FieldType, Shown, ShownValue, Value, values};

use super::{Burning, TopMaterial};

/// What `material` of a product tells.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Material {
    /// Whether it burns.
    Burning(Burning),
    /// What a counter is made of: nothing else has a rule that asks.
    Top(TopMaterial),
}

impl Material {
    /// Whether it burns, where it tells that.
    pub fn burning(self) -> Option<Burning> {
        match self {
            Self::Burning(burning) => Some(burning),
            Self::Top(_) => None,
        }
    }

    /// What a counter is made of, where it tells that.
    pub fn of_top(self) -> Option<TopMaterial> {
        match self {
            Self::Burning(_) => None,
            Self::Top(material) => Some(material),
        }
    }
}

/// What it is made of; that it burns is for the checks.
impl Shown for Material {
    fn shown(&self) -> ShownValue {
        self.of_top().shown()
    }
}

impl Value for Material {
    const TYPE: FieldType = FieldType::Either(&Burning::TYPE, &TopMaterial::TYPE);

    fn read(node: &Node, faults: &mut Faults) -> Option<Self> {
        match values::known_word(node) {
            Some(top) => Some(Self::Top(top)),
            None => Burning::read(node, faults).map(Self::Burning),
        }
    }
}
