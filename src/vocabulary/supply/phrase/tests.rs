//! Lengths in phrases, and what the words beside them say.

use super::*;

fn told(text: &str) -> Vec<(String, Meaning)> {
    lengths(text)
        .into_iter()
        .map(|told| (told.length.imperial(crate::units::length::Grain::Sixteenth).to_string(), told.is))
        .collect()
}

#[test]
fn a_size_and_a_distance_in_one_phrase_are_two_facts() {
    let finished = Meaning::FromWall(Face::Finished);
    for text in [
        "3\" flange, 12\" from the finished wall",
        "3\" flange 12\" from the finished wall",
        "3\" outlet, 12\" rough-in",
        "3\"; rough-in 12\"",
        "3 in. closet flange, centre 12 in. off the wall",
        "3\", 12\" from face of tile",
        "3\", 12\" out from tile",
    ] {
        assert_eq!(told(text), [("3\"".into(), Meaning::Size), ("12\"".into(), finished)], "{text}");
    }
    assert_eq!(told("12\" rough-in"), [("12\"".into(), finished)]);
    for set_out in [
        "305 mm set-out",
        "set-out 305 mm",
        "305 mm setout",
        "a 305 mm de la pared acabada",
        "305 mm a eje desde la pared terminada",
        "eje a 305 mm del alicatado",
        "305 mm ab Fertigwand",
        "305 mm von der Wand",
    ] {
        assert_eq!(lengths(set_out).iter().map(|told| told.is).collect::<Vec<_>>(), [finished], "{set_out}");
    }
    for beside in ["a 400 mm de la pared derecha", "400 mm von der linken Wand", "400 mm de la pared lateral"] {
        assert_eq!(lengths(beside)[0].is, Meaning::Distance, "{beside}");
    }
    for another in ["110 mm, salida de pared", "110 mm a la pared", "110 mm tubo de la pared al suelo"] {
        assert!(lengths(another).iter().all(|told| told.is != finished), "{another}");
    }
    assert_eq!(told("12 1/2\" from the studs"), [("12 1/2\"".into(), Meaning::FromWall(Face::Studs))]);
    assert_eq!(told("305 mm from the wall").len(), 1);
    for to in ["12\" to the wall", "centre to wall 12\""] {
        assert_eq!(told(to), [("12\"".into(), finished)], "{to}");
    }
}

#[test]
fn the_seal_of_a_trap_is_no_size() {
    let (size, seal) = (("1 1/2\"".to_string(), Meaning::Size), ("1\"".to_string(), Meaning::Seal));
    for text in [
        "1 1/2\", trap seal 1\"",
        "1 1/2\" trap with a 1\" seal",
        "1 1/2\", 1\" water seal",
        "1 1/2\" trap with a seal of 1\"",
        "1 1/2\"; seal: 1\"",
    ] {
        assert_eq!(told(text), [size.clone(), seal.clone()], "{text}");
    }
}

#[test]
fn two_ends_of_a_range_are_one_fact() {
    for text in [
        "standpipe, 30\" to 42\" AFF",
        "standpipe 30 to 42 in. above the floor",
        "standpipe, between 30\" and 42\" AFF",
        "30–42\" high",
        "30\"-42\" from the floor",
        "30-42\" AFF",
    ] {
        let found = lengths(text);
        assert_eq!(found.len(), 1, "{text}: {found:?}");
        let ends = (found[0].length, found[0].to);
        assert_eq!(ends, (Length::from_inches(30), Some(Length::from_inches(42))), "{text}");
        assert_eq!(found[0].is, Meaning::Height, "{text}");
    }
    assert_eq!(lengths("3-1/2\" bowl")[0].length, Length::parse("3 1/2\"").unwrap());
    assert_eq!(told("8\" to 6\""), [("8\"".into(), Meaning::Size), ("6\"".into(), Meaning::Size)]);
    assert_eq!(told("40 mm standpipe, 12\" above its trap")[1], ("12\"".into(), Meaning::AboveTrap));
}

#[test]
fn a_hyphen_before_a_unit_and_the_sign_of_a_diameter_part_words() {
    for text in ["6-inch", "6-in. round", "Ø6 in", "⌀ 6\""] {
        assert_eq!(told(text), [("6\"".into(), Meaning::Size)], "{text}");
    }
}

#[test]
fn a_height_is_read_in_several_countries_words() {
    for text in [
        "650 mm AFFL",
        "650 mm FFL",
        "a 650 mm del suelo",
        "650 mm over gulv",
        "650 mm above FFL",
        "DN 50, 650 mm über OKFF",
        "650 mm ü. OKFF",
        "650 mm über Fertigfußboden",
        "650 mm ab OKFFB",
        "650 mm über fertigem Fußboden",
        "650 mm sobre el pavimento",
        "DN 50 at 650 mm",
        "40 mm a 650 mm",
    ] {
        assert_eq!(height(text), Some(Length::from_millimetres(650)), "{text}");
    }
}

#[test]
fn a_height_from_a_floor_without_its_covering_is_none_from_the_finished_one() {
    for text in [
        "DN 50, 450 mm über OKRFB",
        "DN 50, 450 mm über Rohfußboden",
        "450 mm über Rohboden",
        "450 mm ab Rohdecke",
        "a 450 mm del forjado",
        "110 mm, centro a 450 mm sobre el forjado",
        "a 450 mm del suelo en bruto",
        "a 450 mm del suelo sin acabar",
        "450 mm above the subfloor",
        "450 mm above sub-floor",
        "450 mm off the rough floor",
        "450 mm above unfinished floor",
        "450 mm from the slab",
    ] {
        assert_eq!(height(text), None, "{text}");
        assert_eq!(above_the_rough_floor(text), Some(Length::from_millimetres(450)), "{text}");
    }
    for text in [
        "DN 50, 450 mm über OKFF",
        "a 450 mm del suelo acabado",
        "450 mm AFF",
        "rough-in 450 mm above finished floor",
        "450 mm above finished floor",
        "110 mm through the slab",
        "2\" up from the slab",
        "1/2\" PEX from the slab",
        "110 mm colgado del forjado",
        "a 450 mm por debajo del forjado",
        "75 mm, en el forjado",
    ] {
        assert_eq!(above_the_rough_floor(text), None, "{text}");
    }
}

#[test]
fn a_height_and_a_distance_to_something_else_are_no_size() {
    assert_eq!(told("1 1/2\", 18\" AFF"), [("1 1/2\"".into(), Meaning::Size), ("18\"".into(), Meaning::Height)]);
    let example = "1 1/2\" under the tub's middle, joist clear by 5\"";
    assert_eq!(told(example), [("1 1/2\"".into(), Meaning::Size), ("5\"".into(), Meaning::Distance)]);
    for none in ["DN 50, 650 mm über OKRF", "50 mm unter der Fußbodenheizung"] {
        assert_eq!(height(none), None, "{none}");
    }
    assert_eq!(told("standpipe"), []);
    for size in [
        "1/2\" hot and cold through the floor",
        "1/2\" from the main",
        "1/2\" rigid to the yard",
        "1/2\" round to the wall",
    ] {
        assert_eq!(told(size), [("1/2\"".into(), Meaning::Size)], "{size}");
    }
    assert_eq!(told("6\" from the left, 2\""), [("6\"".into(), Meaning::Distance), ("2\"".into(), Meaning::Size)]);
}
