//! What the tree keeps, and what it refuses.

use super::*;
use crate::source::Files;

fn tree(text: &str) -> Result<Tree, YamlError> {
    let mut files = Files::default();
    parse(files.add("a.yaml".into(), text.into()), text)
}

fn fails(text: &str) -> (YamlErrorKind, String) {
    let error = tree(text).unwrap_err();
    (error.kind, text[error.span.start as usize..error.span.end as usize].to_string())
}

#[test]
fn every_value_knows_its_text() {
    let text = "size: {width: 29 7/8\", height: 36\"}   # steel\nnotes: |\n  a\n  b\nlist:\n  - 34½\"\n";
    let root = tree(text).unwrap().root.unwrap();
    let Value::Map(pairs) = &root.value else { panic!() };
    let slice = |span: Span| &text[span.start as usize..span.end as usize];
    assert_eq!(slice(pairs[0].1.span), "{width: 29 7/8\", height: 36\"}");
    let Value::Map(size) = &pairs[0].1.value else { panic!() };
    assert_eq!(slice(size[0].0.span), "width");
    assert_eq!(slice(size[0].1.span), "29 7/8\"");
    let Value::List(items) = &pairs[2].1.value else { panic!() };
    assert_eq!(slice(items[0].span), "34½\"");
}

#[test]
fn a_price_stays_the_text_that_was_written() {
    let root = tree("price: 3180.00").unwrap().root.unwrap();
    let Value::Map(pairs) = root.value else { panic!() };
    assert!(matches!(&pairs[0].1.value, Value::Scalar { text, plain: true } if text == "3180.00"));
}

#[test]
fn a_key_that_stands_twice_is_told_and_the_first_counts() {
    let tree = tree("a: 1\nb: 2\na: 3\n").unwrap();
    assert_eq!(tree.repeated.len(), 1);
    assert_eq!(tree.repeated[0].0.value, "a");
    assert_eq!(tree.repeated[0].1.start, 0);
}

#[test]
fn a_tab_is_named_as_a_tab() {
    assert_eq!(fails("rooms:\n\tkitchen: 1\n"), (YamlErrorKind::Tab, "\t".into()));
}

#[test]
fn nesting_past_the_limit_is_refused() {
    let deep = format!("{}{}", "[".repeat(MAX_DEPTH + 1), "]".repeat(MAX_DEPTH + 1));
    assert_eq!(fails(&deep).0, YamlErrorKind::TooDeep);
}

#[test]
fn an_alias_bomb_is_refused_before_it_grows() {
    let mut text = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
    for level in 1..12 {
        let inner = format!("*a{}, ", level - 1).repeat(10);
        text.push_str(&format!("a{level}: &a{level} [{inner}]\n"));
    }
    assert_eq!(fails(&text).0, YamlErrorKind::TooManyNodes);
}

#[test]
fn a_long_text_that_aliases_repeat_is_counted_as_often_as_it_stands() {
    let long = "x".repeat(500_000);
    let aliases = |count: usize| format!("a: &a {long}\nb: [{}]\n", "*a, ".repeat(count));
    assert_eq!(fails(&aliases(100_000)).0, YamlErrorKind::TooMuchText);
    assert!(tree(&aliases(20)).is_ok());
    // A copy is kept for each anchor that stands within another.
    let nested: String = (0..60).map(|n| format!("&n{n} [")).collect();
    assert_eq!(fails(&format!("a: {nested}{long}{}", "]".repeat(60))).0, YamlErrorKind::TooMuchText);
    // A key may be an alias too.
    let keys: String = (0..40).map(|n| format!("k{n}: {{*a : 1}}\n")).collect();
    assert_eq!(fails(&format!("a: &a {long}\n{keys}")).0, YamlErrorKind::TooMuchText);
}

#[test]
fn an_alias_inside_what_it_repeats_is_refused() {
    assert_eq!(fails("a: &a [*a]").0, YamlErrorKind::AliasOfItself);
}

#[test]
fn a_map_of_sixty_thousand_keys_is_read_at_once() {
    let text: String = (0..60_000).map(|n| format!("key{n}: {n}\n")).collect();
    let Value::Map(pairs) = tree(&text).unwrap().root.unwrap().value else { panic!() };
    assert_eq!(pairs.len(), 60_000);
}

#[test]
fn an_empty_file_has_no_root() {
    for text in ["", "# only a comment\n", "---\n", "~"] {
        assert!(tree(text).unwrap().root.is_none(), "{text:?}");
    }
}

#[test]
fn a_second_document_is_refused() {
    assert_eq!(fails("a: 1\n---\nb: 2\n").0, YamlErrorKind::SecondDocument);
}

proptest::proptest! {
    #[test]
    fn any_text_gives_a_tree_or_an_error_inside_the_text(text in "[ -~\t\n:{}\\[\\],&*\"'é½-]{0,200}") {
        if let Err(error) = tree(&text) {
            proptest::prop_assert!(error.span.end as usize <= text.len());
            proptest::prop_assert!(error.span.start <= error.span.end);
        }
    }
}
