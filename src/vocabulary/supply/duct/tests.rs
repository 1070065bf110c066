//! Words of ducts, as the trade writes them.

use super::*;

#[test]
fn what_it_is_made_of_is_read_and_what_is_denied_is_not() {
    for words in [
        "4\" flexible foil, 8 ft",
        "4\" flex",
        "4 in. semi-rigid",
        "white vinyl hose",
        "corrugated aluminium",
        "Alu flex",
    ] {
        let duct = Duct::of_words(words);
        assert!(duct.flexible == Some(true) && !duct.rigid, "{words}: {duct:?}");
    }
    for words in
        ["4\" rigid metal, at most 25 ft", "galvanised steel, 125 mm", "4\" smooth, no foil", "spiral duct, 6\""]
    {
        let duct = Duct::of_words(words);
        assert!(duct.rigid && duct.flexible != Some(true), "{words}: {duct:?}");
    }
    assert_eq!(Duct::of_words("8\" round, no flexible duct").flexible, Some(false));
    assert_eq!(Duct::of_words("4\" metal, not plastic").plastic, Some(false));
    assert_eq!(Duct::of_words("PVC, 125 mm").plastic, Some(true));
    assert_eq!(Duct::of_words("8\" round").flexible, None);
    for denied in ["150 mm, kein Flexschlauch", "150 mm, nicht flexibel", "150 mm, ohne Schlauch"] {
        assert_eq!(Duct::of_words(denied).flexible, Some(false), "{denied}");
    }
    assert_eq!(Duct::of_words("150 mm Flexschlauch, 3 m").flexible, Some(true));
    for pipe in ["4\" metal pipe, 12 ft", "4\" snap-lock, 12 ft", "150 mm Wickelfalzrohr", "tubo rígido 150 mm"] {
        assert!(Duct::of_words(pipe).rigid, "{pipe}");
    }
    assert!(!Duct::of_words("4\" flexible metal, 12 ft").rigid);
}

#[test]
fn a_dryer_s_transition_piece_may_bend() {
    for piece in [
        "4\" steel, 12 ft, 2 bends, foil transition duct behind the dryer",
        "4\" rigid metal, 12 ft, two elbows, the flexible piece at the machine alone, in sight, 3 ft",
        "4\" rigid metal, 12 ft, UL 2158A transition hose at the dryer",
        "4\" rigid metal, 12 ft, flexible piece at the machine only",
        "4\" rigid metal, 12 ft, flexible at the dryer, 3 ft, in sight",
        "4\" smooth metal with the flexible piece at the machine alone, in sight and as short as the sheet allows",
        "4\" rigid metal, 12 ft, and the flexible piece at the machine alone",
    ] {
        assert_eq!(Duct::of_words(piece).flexible, None, "{piece}");
    }
    for piece in ["4\" steel, 12 ft, semi-rigid transition 3 ft", "4\" steel, 12 ft with a flexible transition"] {
        let duct = Duct::of_words(piece);
        assert!(duct.transition && duct.flexible == Some(true), "{piece}");
    }
    for long in [
        "4\" steel, 12 ft, 10 ft semi-rigid transition",
        "4\" steel, 12 ft, semi-rigid transition in the wall",
        "4\" steel, 12 ft, flex in the attic, semi-rigid transition 3 ft",
        "semi-rigid transition 3 ft",
        "4\" steel, 12 ft",
    ] {
        assert!(!Duct::of_words(long).transition, "{long}");
    }
    for flexible in [
        "4\" foil, 12 ft, from the dryer",
        "4\" steel, 12 ft, foil transition duct in the wall behind the dryer",
        "4\" steel, 12 ft, 10 ft foil transition behind the dryer",
        "4\" foil transition duct behind the dryer, 12 ft",
        "8\" steel, 9 ft, flexible at the hood",
    ] {
        assert_eq!(Duct::of_words(flexible).flexible, Some(true), "{flexible}");
    }
}

#[test]
fn a_duct_that_was_or_another_one_has_no_size_here() {
    let narrowest = |words: &str| Duct::of_words(words).pipe.narrowest;
    for words in [
        "8\" steel, 9 ft, replaces the old 6\" duct",
        "8\" steel 9 ft, old 6\" hole enlarged",
        "8\" rigid 9 ft, roof; make-up air 6\" not required",
        "8\" steel 9 ft, no reduction to 6\"",
        "8\" steel, wall cap, 6\" above the sill",
    ] {
        assert_eq!(narrowest(words), narrowest("8\""), "{words}");
    }
    for words in ["8\" steel, into the old 6\" duct", "8\" steel 9 ft, reduced to 6\"", "8\", old 6\" hole"] {
        assert_eq!(narrowest(words), narrowest("6\""), "{words}");
    }
    assert_eq!(narrowest("tubo rígido 150 mm, 3 m, sin reducción a 125 mm"), narrowest("150 mm"));
}

#[test]
fn what_else_blows_into_it_and_a_flue_are_read() {
    for shared in [
        "8\" round, shared with the dryer, through the roof",
        "shared with the bath fan, 4\" rigid",
        "4\", joins the fan's duct",
        "120 mm, compartido con el baño",
        "150 mm, gemeinsam mit dem Trockner",
    ] {
        assert!(Duct::of_words(shared).shared, "{shared}");
    }
    for own in ["8\" round, not shared", "8\" round, joints taped", "4\" rigid, through the roof"] {
        assert!(!Duct::of_words(own).shared, "{own}");
    }
    for flue in [
        "through the existing 8\" flue of the boiler",
        "8\" up the chimney",
        "150 mm into the old furnace flue",
        "150 mm, por la chimenea",
        "durch den Schornstein",
    ] {
        assert!(Duct::of_words(flue).in_a_flue, "{flue}");
    }
    for other in [
        "8\" round, through the wall past the flue",
        "6\" round, in the hood's chimney",
        "8\" round, through the wall beside the chimney",
        "8\" not through the flue",
    ] {
        assert!(!Duct::of_words(other).in_a_flue, "{other}");
    }
    assert!(Duct::of_words("4\" rigid with screws, 14 ft").screws && !Duct::of_words("4\" rigid, no screws").screws);
}

#[test]
fn what_a_bend_costs_and_where_it_ends_is_read() {
    let off = |words: &str| Duct::of_words(words).off_for_bend;
    assert_eq!(off("4\", at most 25 ft, less 5 ft for each 90 degree elbow"), Some("5'".parse().unwrap()));
    assert_eq!(off("100 mm, at most 12 m, minus 1.5 m per bend"), Some("1.5 m".parse().unwrap()));
    assert_eq!(off("4\", at most 25 ft"), None);
    let ends = |words: &str| Duct::of_words(words).ends;
    for words in
        ["120 mm, 3 m, al falso techo", "6\" round, ends in the attic", "150 mm into the loft", "4\" to the roof space"]
    {
        assert_eq!(ends(words), Some(Ends::Inside), "{words}");
    }
    for words in ["6\" round, up through the attic to a roof cap", "4\" rigid, 9 ft to the yard", "through the wall"] {
        assert_eq!(ends(words), Some(Ends::Outside), "{words}");
    }
    assert_eq!(ends("8\" round, 20 ft"), None);
}
