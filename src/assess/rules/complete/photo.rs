//! A picture that is missing, or that nobody names.

use crate::assess::Context;
use crate::assess::rules::{Check, Findings, declare};
use crate::book::room_of;
use crate::finding::{Remark, phrase};
use crate::source::Place;

declare! {
    /// A picture is missing or unreadable, or nobody names it
    ///
    /// ## What it checks
    /// Every picture that the book names is in the book, is a picture, and is whole. A picture in
    /// the folder that nothing names is a note; so is one whose colour profile can't be read, which
    /// `publish` and `preview` find when they make the pictures.
    ///
    /// ## Why it matters
    /// People approve what they see. A page with a hole where the tile should be is approved by
    /// nobody, or by mistake. So is a picture whose colours are not those of the thing.
    ///
    /// ## Remedy
    /// Put the picture beside the record or into the `photos` folder there; export it again if it
    /// is damaged, or in sRGB if its profile can't be read; name it, or take it out of the book.
    ///
    /// ## Example
    /// ```yaml
    /// photos: [range-front.jpg]     # rooms/kitchen/photos/range-front.jpg
    /// ```
    ///
    /// ## Source
    /// The book's own format.
    "complete/photo", Stop,
    due: WithThing, tells: [],
    judges: goods,
    sources: ["the book's own format"],
    caution: None,
    Check::Book(check)
}

/// Missing and unreadable pictures are told while reading; here those that nobody names.
fn check(context: &Context<'_>, findings: &mut Findings<'_>) {
    for path in &context.book.unnamed_photos {
        let room = room_of(path);
        if room.as_ref().is_some_and(|room| context.book.unread.contains(room)) {
            continue;
        }
        let finding = Remark::note(Place::Path(path.clone()), phrase!("nobody names the picture `{path}`", path));
        let finding = finding.remedy("name it under `photos`, or take it out of the book");
        findings.push(Remark { room, ..finding });
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::rules::trial::Trial;

    fn trial(photo: &str) -> Trial {
        Trial::of("complete/photo").selection("selection: Tap\nkind: tap", &format!("photos: [{photo}]"))
    }

    #[test]
    fn a_picture_that_is_not_there_names_the_nearest_that_is() {
        let found =
            trial("tap-frnt.png").file("rooms/kitchen/photos/tap-front.png", crate::assess::rules::trial::png()).run();
        found.counts(2);
        trial("tap-front.png")
            .file("rooms/kitchen/photos/tap-front.png", crate::assess::rules::trial::png())
            .stays_silent();
    }

    #[test]
    fn a_text_that_is_called_a_picture_is_told() {
        trial("a.jpg").file("rooms/kitchen/photos/a.jpg", "this is no picture").finds_one().weighs("stop");
    }

    #[test]
    fn a_picture_that_nobody_names_is_a_note() {
        let unnamed =
            Trial::of("complete/photo").file("rooms/kitchen/photos/a.png", crate::assess::rules::trial::png());
        unnamed.finds("nobody names the picture `rooms/kitchen/photos/a.png`").weighs("note");
    }
}
