//! Pipes and ducts as the trade writes them.

use super::*;

fn length(text: &str) -> Option<Length> {
    Some(text.parse().unwrap())
}

fn range(text: &str) -> Option<LengthRange> {
    Some(LengthRange::parse(text).unwrap())
}

#[test]
fn what_is_called_by_a_number_alone_has_its_size() {
    for words in ["DN 50, 450 mm über OKFF", "DN50, 450 mm über OKFF", "HT 50, 450 mm über OKFF", "Ø 50, 450 mm AFF"]
    {
        let pipe = Pipe::of_words(words);
        assert_eq!((pipe.size, pipe.height), (length("50 mm"), length("450 mm")), "{words}");
    }
    assert_eq!(Pipe::of_words("DN 150, 3 m").narrowest, Pipe::of_words("150 mm, 3 m").narrowest);
    assert_eq!(Pipe::of_words("ht 36\"").size, None);
    assert_eq!(Pipe::of_words("Ø 6 in").size, length("6\""));
}

#[test]
fn the_side_of_a_flat_duct_is_no_bend() {
    for flat in [
        "220 x 90 mm rigid flat duct, 1.2 m, through the wall",
        "conducto rectangular 220 x 90 mm, 3 m",
        "220x90 mm, 3 m",
        "220 mm x 90 mm, 3 m",
        "220 × 90, 3 m",
        "flat 90 mm duct, 3 m",
        "190 mm, 3 m",
        "rectangular 150 by 45 mm, 3 m",
    ] {
        let duct = Pipe::of_words(flat);
        assert_eq!((duct.bends, duct.half_bends), (0, 0), "{flat}");
    }
    for bent in [
        "220 x 90 mm, 3 m, 2 x 90° bends",
        "150 mm, 3 m, two 90s",
        "150 mm, 3 m, 2 x 90",
        "150 mm, 3 m, 2 90-degree elbows",
        "150 mm, 3 m, two bends of 90°",
    ] {
        assert_eq!(Pipe::of_words(bent).bends, 2, "{bent}");
    }
}

#[test]
fn sizes_heights_runs_and_bends_are_read() {
    let duct = Pipe::of_words("4\" rigid, 9 ft to the yard, two bends");
    assert_eq!((duct.size, duct.run, duct.bends), (length("4\""), length("9'"), 2));
    let drain = Pipe::of_words("1 1/2\", at most 18\" AFF");
    assert_eq!((drain.size, drain.height, drain.limits), (length("1 1/2\""), None, range("at most 18\"")));
    for high in ["22\" AFF", "22\" above the floor", "22 inches high", "22\" a.f.f.", "centre 22\" off the floor"] {
        let drain = Pipe::of_words(&format!("1 1/2\", {high}"));
        assert_eq!((drain.size, drain.height, drain.limits), (length("1 1/2\""), length("22\""), None), "{high}");
    }
    for most in ["at most 18\" above the floor", "no higher than 18\" AFF", "max. 18\" AFF"] {
        assert_eq!(Pipe::of_words(&format!("1 1/2\", {most}")).limits, range("at most 18\""), "{most}");
    }
    for within in ["30\" to 42\" AFF", "between 30\" and 42\" above the floor"] {
        let pipe = Pipe::of_words(&format!("2\" standpipe, {within}"));
        assert_eq!((pipe.size, pipe.limits), (length("2\""), range("30\" to 42\"")), "{within}");
    }
    let metric = Pipe::of_words("standpipe, 600 mm to 1000 mm AFF");
    assert_eq!((metric.size, metric.limits), (None, range("600 mm to 1000 mm")));
    assert_eq!(Pipe::of_words("2\", at least 30\" AFF").limits, range("at least 30\""));
    let dryer = Pipe::of_words("4\" rigid, 20 ft, 2 elbows, 1 bend of 45");
    assert_eq!((dryer.bends, dryer.half_bends), (2, 1));
    let soft = Pipe::of_words("1/4\" soft copper, 8 ft");
    assert_eq!((soft.size, soft.run), (length("1/4\""), length("8'")));
    // A comma between digits is a decimal one, as it is written on the Continent.
    let comma = Pipe::of_words("2,5 mm, 500,5 mm AFF,12 m");
    assert_eq!((comma.size, comma.height, comma.run), (length("2.5 mm"), length("500.5 mm"), length("12 m")));
    let metric = Pipe::of_words("38 mm, at most 457 mm AFF, 12 m, two bends");
    assert_eq!((metric.size, metric.limits, metric.run), (length("38 mm"), range("at most 457 mm"), length("12 m")));
    let words = Pipe::of_words("4\" rigid, 38 feet with two elbows");
    assert_eq!((words.size, words.run, words.bends), (length("4\""), length("38'"), 2));
    for run in ["35'-0\"", "35 lineal feet", "35 linear ft"] {
        assert_eq!(Pipe::of_words(&format!("4\" rigid, {run}")).run, length("35'"), "{run}");
    }
    for run in ["12 metres", "12 m.", "12m"] {
        assert_eq!(Pipe::of_words(&format!("100 mm, {run} and a bend")).run, length("12 m"), "{run}");
    }
    let prime = Pipe::of_words("4\" rigid 9' with 2 tight bends");
    assert_eq!((prime.run, prime.bends), (length("9'"), 2));
    assert_eq!(Pipe::of_words("100 mm, 12 m and a bend").bends, 1);
    assert_eq!(Pipe::of_words("3\" flange, 12\" from the finished wall").size, length("3\""));
    assert_eq!(Pipe::of_words("12\" rough-in").size, None);
    assert_eq!(Pipe::of_words("to the disposer, air gap at the sink"), Pipe::default());
}

#[test]
fn how_high_water_is_lifted_is_no_size() {
    for lift in ["standpipe 600 mm to 900 mm", "standpipe, 600-900 mm", "pump hose, head 600 mm to 900 mm"] {
        let pipe = Pipe::of_words(lift);
        assert_eq!((pipe.size, pipe.limits), (None, range("600 mm to 900 mm")), "{lift}");
    }
    assert_eq!(Pipe::of_words("standpipe, 30\"-36\"").limits, range("30\" to 36\""));
    let standpipe = Pipe::of_words("40 mm standpipe, 650 mm");
    assert_eq!((standpipe.size, standpipe.height), (length("40 mm"), length("650 mm")));
}

#[test]
fn the_narrowest_of_all_sizes_governs() {
    let narrowest = |text: &str| Pipe::of_words(text).narrowest;
    let round = |text: &str| length(text).map(Section::Round);
    for text in [
        "8\" round, reduced to 6\" at the wall",
        "8\" round, 10 ft, 6\" at the roof cap",
        "8 in. reduced to 6 in. through the joists",
        "6\"",
        "6\" round, 20 ft",
        "6\" round in 1\" of insulation",
        "6\" round in 2 1/2\" of insulation",
    ] {
        assert_eq!(narrowest(text), round("6\""), "{text}");
    }
    for text in ["8\" round, 8x6 reducer at the roof cap", "8\", 8-to-6 reducer", "8\" round reduced to six inch"] {
        assert_eq!(narrowest(text), round("6\""), "{text}");
    }
    assert_eq!(narrowest("150 mm, 150/125 reducer at the wall"), round("125 mm"));
    assert_eq!(narrowest("75 mm rigid, 3 m"), round("75 mm"));
    let flat = Section::Rectangle(length("3 1/4\"").unwrap(), length("10\"").unwrap());
    assert_eq!(narrowest("3 1/4\" x 10\", 12 ft"), Some(flat));
    assert!(!flat.is_narrower_than(round("6\"").unwrap()) && flat.is_narrower_than(round("7\"").unwrap()));
    assert_eq!(narrowest("8\", then 3 1/4\" x 10\""), Some(flat));
    for channel in ["222 x 89 mm", "222 mm x 89 mm flat channel", "flat 222×89 mm", "222 by 89 mm, 3 m"] {
        let sides = Section::Rectangle(length("222 mm").unwrap(), length("89 mm").unwrap());
        assert_eq!(narrowest(channel), Some(sides), "{channel}");
    }
}
