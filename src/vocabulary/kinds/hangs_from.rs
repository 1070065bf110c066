//! What hangs from another thing, stands in it or is set beside it, and has no hole of its own.

use super::Kind;

impl Kind {
    /// Whether it hangs from a thing of that kind, or stands in it: both may be at one opening.
    pub fn hangs_from(self, other: Self) -> bool {
        let own: &[Self] = match other {
            Self::Sink => &[Self::Disposer, Self::Tap, Self::Drain],
            Self::Basin => &[Self::Tap, Self::Drain],
            Self::Bathtub => &[
                Self::TubFiller,
                Self::Tap,
                Self::ShowerSet,
                Self::ShowerGlass,
                Self::ShowerSeat,
                Self::Drain,
                Self::GrabBar,
            ],
            // A set, a tray or a pane may each stand for the shower; what is left hangs from it.
            Self::ShowerTray => &[Self::ShowerSet, Self::ShowerGlass, Self::ShowerSeat, Self::Drain, Self::GrabBar],
            Self::ShowerSet => &[Self::ShowerGlass, Self::ShowerSeat, Self::Drain, Self::GrabBar],
            Self::Toilet => &[Self::Cistern, Self::GrabBar],
            _ => &[],
        };
        own.contains(&self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_hangs_from_what_hangs_from_it() {
        for one in Kind::ALL {
            assert!(!one.hangs_from(*one));
            let circle = Kind::ALL.iter().find(|other| one.hangs_from(**other) && other.hangs_from(*one));
            assert_eq!(circle, None, "{one:?}");
        }
    }
}
