//! Text that could be taken for markup, or that no line could hold.

use super::readers::Pdf;
use super::sample::{kitchen, line, picture};
use bookmatch::publish::SheetLook;
use bookmatch::publish::sheets::{missing_letters, sign_off};
use bookmatch::views::paper::sign_off::SignOff;
use bookmatch::views::paper::sign_off_item::{Decided, DecisionBox, SignOffItem};
use bookmatch::views::shared::revisions::Revision;
use bookmatch::views::shared::signature::{Signature, Strokes};

/// Every place of a sheet that takes words of the book, given the same words.
fn everywhere(words: &str) -> SignOff {
    let mut view = kitchen();
    let text = words.to_owned();
    for field in [
        &mut view.project.title,
        &mut view.project.number,
        &mut view.project.client,
        &mut view.project.firm,
        &mut view.project.designer,
        &mut view.project.address,
        &mut view.sheet.code,
        &mut view.sheet.title,
        &mut view.sheet.scope,
        &mut view.sheet.mark,
        &mut view.issue,
        &mut view.date,
        &mut view.statement,
        &mut view.rule,
    ] {
        field.clone_from(&text);
    }
    view.facts = vec![line(words, words)];
    view.revisions = vec![Revision { number: text.clone(), date: text.clone(), what: text.clone() }; 3];
    view.totals = vec![line(words, words), line(words, words)];
    let drawing = Some(Strokes { width: 1, height: 1, strokes: vec![vec![(0, 0)]] });
    let name = text.clone();
    let signature = Signature { name, text: text.clone(), date: text.clone(), how: text.clone(), drawing };
    for approver in &mut view.approvers {
        approver.name.clone_from(&text);
        approver.signatures = vec![signature.clone(), Signature { drawing: None, ..signature.clone() }];
        approver.open = true;
    }
    let room = &mut view.rooms[0];
    room.name.clone_from(&text);
    room.note.clone_from(&text);
    room.subtotal = Some(line(words, words));
    for item in &mut room.items {
        throughout(item, words);
    }
    view
}

fn throughout(item: &mut SignOffItem, words: &str) {
    for field in [
        &mut item.tag,
        &mut item.name,
        &mut item.option,
        &mut item.product,
        &mut item.quantity,
        &mut item.unit_price,
        &mut item.with_it,
        &mut item.price,
        &mut item.mark,
        &mut item.state.words,
    ] {
        *field = words.to_owned();
    }
    item.description = vec![line(words, words)];
    item.cautions = vec![words.to_owned()];
    item.decided = vec![Decided { stamp: Some(DecisionBox::Noted), by: words.to_owned(), note: words.to_owned() }; 2];
    if let Some(shown) = &mut item.picture {
        shown.alt = words.to_owned();
    }
    for choice in &mut item.choices {
        for field in [&mut choice.name, &mut choice.product, &mut choice.price] {
            *field = words.to_owned();
        }
    }
}

fn text_of(view: &SignOff) -> String {
    Pdf::of(&sign_off(view, &SheetLook::default(), &picture).expect("a sheet")).pages().concat()
}

#[test]
fn what_looks_like_markup_is_printed_as_it_was_written() {
    for written in [
        "#panic()", "$x^2$", "*bold*", "_low_", "\\u{41}", "`raw`", "@label", "<label>", "// left", "= Head", "#[",
        "]", "\"", "{{",
    ] {
        let text = text_of(&everywhere(written));
        let found = text.matches(written).count();
        assert!(found > 20, "`{written}` is printed {found} times:\n{text}");
    }
}

#[test]
fn words_that_no_line_could_hold_are_broken_and_stay_in_the_frame() {
    let name = "Ossenbruggenhavel".repeat(12);
    let pdf = Pdf::of(&sign_off(&everywhere(&name), &SheetLook::default(), &picture).expect("a sheet"));
    let edge = 9.0 * 72.0 / 25.4;
    // The title block cuts off what is far too long, which the reader of the file cannot see.
    let block = 841.89 - (9.0 + 15.0) * 72.0 / 25.4;
    for word in pdf.words().iter().filter(|word| word.bottom < block) {
        assert!(word.left > edge && word.right < 595.276 - edge, "{word:?}");
    }
}

#[test]
fn two_hundred_letters_of_a_name_are_all_there() {
    let mut view = kitchen();
    view.approvers[0].name = "abcdefghij ".repeat(20).trim_end().to_owned();
    let text = text_of(&view);
    // Once for each of three items, once at the signature.
    assert_eq!(text.matches("abcdefghij").count(), 20 * 4, "{text}");
}

#[test]
fn an_item_too_long_for_any_page_is_broken_rather_than_lost() {
    let mut view = kitchen();
    view.rooms[0].items[0].description = (1..=200).map(|n| line("Fact", &format!("number {n} of it"))).collect();
    let text = text_of(&view);
    for n in 1..=200 {
        assert!(text.contains(&format!("number {n} of it")), "{n}");
    }
}

/// Writes a text at one place of an item.
type Lengthen = fn(&mut SignOffItem, &str);

/// The same text in one place of an item after another, as long as half a page, a page and two: whether an item is
/// broken is decided by how much it has to say, which must never let one run out of its page.
#[test]
fn an_item_of_any_length_stays_within_its_pages_wherever_it_is_long() {
    let block = 841.89 - (9.0 + 15.0) * 72.0 / 25.4;
    let places: [(&str, Lengthen); 7] = [
        ("told", |item, words| item.told = words.to_owned()),
        ("why", |item, words| item.why = words.to_owned()),
        ("product", |item, words| item.product = words.to_owned()),
        ("description", |item, words| item.description = words.split(' ').map(|word| line("Fact", word)).collect()),
        ("note", |item, words| {
            let note = words.to_owned();
            item.decided = vec![Decided { stamp: Some(DecisionBox::Noted), by: "Ada".to_owned(), note }];
        }),
        ("option", |item, words| item.choices.iter_mut().for_each(|choice| choice.more = words.to_owned())),
        ("product of an option", |item, words| {
            item.choices.iter_mut().take(1).for_each(|choice| choice.product = words.to_owned());
        }),
    ];
    for (place, lengthen) in places {
        for count in [90, 180, 270, 360] {
            let mut view = kitchen();
            // Capitals are the widest: nothing takes more lines for as many letters.
            let words = vec!["WAMMWO"; count].join(" ");
            let items = &mut view.rooms[0].items;
            items.iter_mut().for_each(|item| lengthen(item, &words));
            items.retain(|item| serde_json::to_string(item).expect("an item").contains("WAMMWO"));
            items.truncate(1);
            let expected = serde_json::to_string(&view).expect("a view").matches("WAMMWO").count();
            let words = Pdf::of(&sign_off(&view, &SheetLook::default(), &picture).expect("a sheet")).words();
            let there = words.iter().filter(|word| word.text.contains("WAMMWO") && word.bottom < block).count();
            assert_eq!(there, expected, "{place}, {count} words");
        }
    }
}

#[test]
fn letters_that_the_fonts_lack_are_told_and_do_no_harm() {
    let view = everywhere("小林 مرحبا \u{0}\u{e000}\u{ffff}\u{202e}🏠 é ñ ź ½ ⅞ ″");
    assert!(sign_off(&view, &SheetLook::default(), &picture).is_ok());
    let missing = missing_letters(&view);
    assert!(missing.contains(&'小') && missing.contains(&'م'), "{missing:?}");
    for set in "éñź½⅞″".chars() {
        assert!(!missing.contains(&set), "{set}");
    }
}

#[test]
fn every_letter_that_a_book_in_english_or_spanish_needs_is_in_the_fonts() {
    let mut view = kitchen();
    view.statement = "áéíóúüñÁÉÍÓÚÜÑ¿¡ çßøåæœ źłőž ¼½¾⅛⅜⅝⅞⁄ ′″ ×±–— “”‘’ €£¥¢ °²³ · … Ø".to_owned();
    assert_eq!(missing_letters(&view).into_iter().collect::<String>(), "");
}

#[test]
fn a_book_that_names_nobody_and_a_room_with_nothing_in_it_are_set() {
    let mut view = kitchen();
    view.approvers.clear();
    view.rooms[0].items.clear();
    view.allowances.clear();
    let text = text_of(&view);
    assert!(text.contains("names nobody who signs"), "{text}");
    assert!(text.contains("Nothing to sign in this room"), "{text}");
}
