//! A decision holds as long as what was shown stays what it was, by whichever version its mark was taken.

use super::*;
use crate::vocabulary::{ShownField, ShownValue, Since};

const FIRST: Versions = Versions { asked: Version::First, oldest: Version::First };
const SECOND: Versions = Versions { asked: Version::Second, oldest: Version::First };
const THIRD: Versions = Versions { asked: Version::Third, oldest: Version::First };

fn text(key: &'static str, text: &str) -> ShownField {
    ShownField::new(key, Since::First, ShownValue::Text(text.into()))
}

fn range(name: &str, chosen: Option<&str>, later: &[ShownField]) -> ShownItem {
    let option = |id: &str| ShownValue::Group([&[text("id", id)], later].concat());
    let options = ShownValue::List(vec![option("steel"), option("brass")]);
    let item = ShownItem(ShownValue::Group(vec![
        text("name", name),
        ShownField::new("chosen", Since::First, ShownValue::Nothing),
        ShownField::new("options", Since::First, options),
    ]));
    item.with_chosen(chosen)
}

fn marked(chosen: Option<&str>) -> Marked {
    Marked::of(range("Range", chosen, &[]), SECOND)
}

#[test]
fn a_decision_holds_when_the_book_writes_down_what_was_chosen() {
    let open = marked(None).mark;
    assert!(holds(open, Some("steel"), &marked(None)));
    assert!(holds(open, Some("steel"), &marked(Some("steel"))));
    assert!(!holds(open, Some("steel"), &marked(Some("brass"))));
    assert!(!holds(open, None, &marked(Some("steel"))), "nobody chose steel");
    let proposed = marked(Some("brass")).mark;
    assert!(holds(proposed, Some("steel"), &marked(Some("steel"))), "another option than proposed was chosen");
    assert!(!holds(proposed, Some("steel"), &marked(Some("brass"))), "the book still says brass");
    assert!(holds(proposed, None, &marked(Some("brass"))));
}

#[test]
fn a_decision_holds_no_longer_when_anything_else_changes() {
    let now = Marked::of(range("Range, wide", Some("steel"), &[]), SECOND);
    assert!(!holds(marked(None).mark, Some("steel"), &now));
    assert!(!holds(marked(Some("steel")).mark, None, &now));
}

/// What was approved in an issue of the first version stands while that is the newest issue for approval, and for
/// ever where nothing is shown that it had no place for; a choice that is written down since changes nothing.
#[test]
fn what_was_approved_under_an_older_version_stands_until_more_is_shown() {
    let overhang = [ShownField::new("overhang", Since::Second, ShownValue::Text("15\"".into()))];
    for (later, stands) in [(&[][..], true), (&overhang[..], false)] {
        let item = |chosen| range("Counter", chosen, later);
        let approved = of(&item(None).content(Version::First));
        for chosen in [None, Some("steel")] {
            let asked_then = Marked::of(item(chosen), FIRST);
            assert!(holds(approved, Some("steel"), &asked_then), "{later:?}");
            let asked_now = Marked::of(item(chosen), SECOND);
            assert_eq!(holds(approved, Some("steel"), &asked_now), stands, "{later:?} {chosen:?}");
            assert_eq!(
                holds(approved, Some("steel"), &Marked::of(item(chosen), THIRD)),
                stands,
                "{later:?} {chosen:?}"
            );
        }
        let changed = Marked::of(range("Another", Some("steel"), later), FIRST);
        assert!(!holds(approved, Some("steel"), &changed));
    }
}

/// The same of the second and the third: what the third alone shows is asked anew by the next issue, and nothing else.
#[test]
fn what_the_third_version_alone_shows_is_asked_anew_by_the_next_issue() {
    let layout = [ShownField::new("layout", Since::Third, ShownValue::Text("two pieces".into()))];
    for (later, stands) in [(&[][..], true), (&layout[..], false)] {
        let item = range("Counter", None, later);
        let approved = of(&item.content(Version::Second));
        assert!(holds(approved, Some("steel"), &Marked::of(item.clone(), SECOND)), "while its issue is the newest");
        assert_eq!(holds(approved, Some("steel"), &Marked::of(item.clone(), THIRD)), stands, "{later:?}");
        let asked_then = Marked::of(item.clone(), SECOND);
        assert!(
            asked_then.is(&of(&item.content(Version::Third))),
            "a page of the newer release answers an older issue"
        );
        let none_of_second = Versions { asked: Version::Third, oldest: Version::Third };
        assert!(Marked::of(item, none_of_second).also.is_empty());
    }
}

/// A field that nobody writes is in no mark, so that one that a later release brings changes none.
#[test]
fn what_is_empty_changes_no_mark() {
    let empty = [
        ShownField::new("later", Since::Second, ShownValue::Nothing),
        ShownField::new("parts", Since::Second, ShownValue::List(vec![])),
        ShownField::new(
            "part",
            Since::Second,
            ShownValue::Group(vec![ShownField::new("wide", Since::Second, ShownValue::Nothing)]),
        ),
    ];
    let marks = |later: &[ShownField]| Marked::of(range("Range", None, later), SECOND);
    assert_eq!(marks(&empty).mark, marks(&[]).mark);
    assert_eq!(marks(&empty).also, marks(&[]).also);
}

#[test]
fn a_mark_is_shown_by_its_first_eight_digits() {
    assert_eq!(in_short(&Digest::of(b"abc")), "ba78 16bf");
}
