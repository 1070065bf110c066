//! A name that some disks refuse.

use crate::assess::rules::{Check, declare};

declare! {
    /// The name of a file or folder is refused by some disks
    ///
    /// ## What it checks
    /// Names that stand for devices on some systems, with any ending (`aux`, `con`, `nul`, `com1`); names with
    /// `<`, `>`, `:`, `"`, `|`, `?`, `*`, a backslash or a control character; a full stop or a space at the
    /// end; more than 200 bytes; two names in one folder that differ by capital letters alone. A stop for rooms and
    /// selections, whose names stand in published paths; a query for pictures and all else.
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
        two("rooms/kitchen/Tap.yaml").finds("`tap.yaml` and `Tap.yaml` are one name on some disks").weighs("stop");
        two("rooms/Kitchen/sink.yaml").finds("`kitchen` and `Kitchen` are one name on some disks");
        two("rooms/kitchen/basin.yaml").stays_silent();
    }
}
