//! Which scripts go together into one file, of which pages, and the words that they say.

/// Scripts that belong together: one file of the pages of some folders.
pub(super) struct Bundle {
    pub(super) folders: &'static [&'static str],
    pub(super) path: &'static str,
    /// The scripts in the order in which they run, without their ending.
    pub(super) scripts: &'static [&'static str],
    /// What templates call the words that it says on their pages, and the groups that those are.
    pub(super) words: &'static [(&'static str, &'static [&'static str])],
}

/// All of them.
pub(super) const BUNDLES: [Bundle; 8] = [
    Bundle {
        folders: &["client"],
        path: "assets/deciding.js",
        scripts: &["seal", "paper", "answer", "sums", "decision", "person", "hand", "pen", "item", "sign"],
        words: &[("deciding", &["act", "state", "item"]), ("signing", &["act", "signs", "hand", "state", "item"])],
    },
    Bundle {
        folders: &["installer"],
        path: "assets/readings.js",
        scripts: &["seal", "paper", "hand", "tape", "measure", "readings", "acknowledge"],
        words: &[("readings", &["tape", "hand", "holding"])],
    },
    Bundle {
        folders: &["installer"],
        path: "assets/holding.js",
        scripts: &["seal", "paper", "hand", "acknowledge"],
        words: &[("holding", &["holding", "hand"])],
    },
    Bundle {
        folders: &["installer"],
        path: "assets/receiving.js",
        scripts: &["seal", "paper", "hand", "photographs", "delivery"],
        words: &[("receiving", &["delivery", "hand"])],
    },
    Bundle { folders: &["client", "installer"], path: "assets/newest.js", scripts: &["newest"], words: &[] },
    Bundle { folders: &["installer"], path: "assets/stands.js", scripts: &["stands"], words: &[] },
    Bundle { folders: &["client", "installer"], path: "assets/keep.js", scripts: &["keep"], words: &[] },
    // It reaches what lies beside it and below, so that it stands at the folder's top.
    Bundle { folders: &["client", "installer"], path: "kept.js", scripts: &["kept"], words: &[] },
];
