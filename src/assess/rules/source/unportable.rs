//! A name that some disks refuse.

use crate::assess::rules::{Check, declare};

declare! {
    /// The name of a file or folder is refused by some disks
    ///
    /// ## What it checks
    /// Names that stand for devices on some systems, with any ending (`aux`, `con`, `nul`, `com1`); names with
    /// `<`, `>`, `:`, `"`, `|`, `?`, `*`, a backslash or a control character; a full stop or a space at the
    /// end; more than 200 bytes; two names in one folder that differ by capital letters alone, or by how
    /// an accent is stored (`é` as one sign or as two). Ids of selections and approvers, which are names of files too.
    /// A stop for rooms, selections and ids, whose names stand in published paths; a query for pictures and all else.
    ///
    /// ## Why it matters
    /// A book is sent, copied to a memory stick and published. Where a disk refuses one name, the copy ends
    /// there, or one file takes another's place.
    ///
    /// ## Remedy
    /// Rename it with plain letters, figures and hyphens, and change the places that name it.
    ///
    /// ## Example
    /// ```text
    /// rooms/aux/room.yaml      # rename the folder: rooms/auxiliary/room.yaml
    /// ```
    ///
    /// ## Source
    /// Rules of the file systems FAT, exFAT and NTFS, from memory.
    "source/unportable", Stop,
    due: AtOnce, tells: [],
    sources: ["rules of FAT, exFAT and NTFS (from memory)"],
    caution: None,
    Check::Reading
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn with(path: &str) -> Trial {
        Trial::of("source/unportable").file(path, "selection: Tap\nkind: tap\n").of_any_yaml()
    }

    #[test]
    fn a_room_or_selection_whose_name_some_disk_refuses_stops() {
        with("rooms/aux/room.yaml").finds("the name `aux` is the name of a device on some systems").weighs("stop");
        with("rooms/kitchen/con.yaml").finds_one().weighs("stop");
        with("rooms/kitchen/tap: tall.yaml").finds("the name `tap: tall.yaml` has `:`, which some disks refuse");
        with(&format!("rooms/kitchen/{}.yaml", "a".repeat(300))).finds_one().weighs("stop");
        with("rooms/kitchen/ends./tap.yaml").finds_one();
        with("rooms/kitchen/tap.yaml").stays_silent();
    }

    #[test]
    fn a_picture_with_such_a_name_is_asked_about() {
        with("rooms/kitchen/what?.jpg").finds_one().weighs("query");
        with("rooms/kitchen/what.jpg").stays_silent();
    }

    #[test]
    fn two_names_that_differ_by_capital_letters_alone_take_each_other_s_place() {
        let two = |other: &str| with("rooms/kitchen/tap.yaml").file(other, "selection: Tap\nkind: tap\n");
        two("rooms/kitchen/Tap.yaml")
            .finds("`tap.yaml` and `Tap.yaml` are one name on some disks: they differ by capital letters alone")
            .weighs("stop");
        two("rooms/Kitchen/sink.yaml")
            .finds("`kitchen` and `Kitchen` are one name on some disks: they differ by capital letters alone");
        two("rooms/kitchen/basin.yaml").stays_silent();
    }

    /// Published source: Unicode Standard Annex #15: `é` is U+00E9, or U+0065 U+0301.
    #[test]
    fn two_names_that_differ_by_how_an_accent_is_stored_take_each_other_s_place() {
        let two = |one: &str, other: &str| with(one).file(other, "selection: Tap\nkind: tap\n");
        let (composed, apart) = ("rooms/kitchen/caf\u{e9}.yaml", "rooms/kitchen/cafe\u{301}.yaml");
        two(composed, apart)
            .finds("`caf\u{e9}.yaml` and `cafe\u{301}.yaml` are one name on some disks: they differ in how an accent is stored: U+00E9 here, U+0065 U+0301 there")
            .weighs("stop");
        two("rooms/kitchen/photos/\u{c9}t\u{e9}.jpg", "rooms/kitchen/photos/e\u{301}te\u{301}.jpg")
            .finds_one()
            .weighs("query");
        two("rooms/k\u{fc}che/room.yaml", "rooms/ku\u{308}che/sink.yaml").finds_one().weighs("stop");
        two(composed, "rooms/kitchen/cafe.yaml").stays_silent();
    }

    #[test]
    fn an_id_that_no_file_can_be_named_by_is_told_where_it_is_written() {
        let id = |id: &str| {
            let tap = format!("selection: Tap\nid: {id}\nkind: tap\n");
            Trial::of("source/unportable").file("rooms/kitchen/tap.yaml", tap).of_any_yaml()
        };
        id("con").finds("the id `con` is the name of a device on some systems").weighs("stop");
        id("com1").finds_one();
        id(&"a".repeat(201)).finds_one();
        for good in ["console", "con-1", "tap"] {
            id(good).stays_silent();
        }
    }

    #[test]
    fn ids_of_approvers_name_their_keys() {
        let two = |one: &str, other: &str| {
            let approvers =
                format!("approvers:\n  - {{id: {one}, name: Ada Oko}}\n  - {{id: {other}, name: Ilse Oko}}\n");
            Trial::of("source/unportable").book(&approvers)
        };
        two("aux", "ilse").finds("the id `aux` is the name of a device on some systems").weighs("stop");
        two("ada", "Ada")
            .finds("the ids `Ada` and `ada` are one name on some disks: they differ by capital letters alone");
        two("ada", "ilse").stays_silent();
    }
}
