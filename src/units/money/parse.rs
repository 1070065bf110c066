//! Reads an amount of money, refusing commas that could be read two ways.

use super::super::typography::is_space;
use super::{Currency, Money, MoneyError};

pub(super) fn parse(text: &str, currency: Currency) -> Result<Money, MoneyError> {
    let written = text.trim_matches(is_space);
    let unreadable = || MoneyError::Unreadable(written.into());
    let (negative, rest) = after_minus(written);
    let rest = without_mark(rest, currency)?;
    let (negative, rest) = if negative { (true, rest) } else { after_minus(rest) };
    let digits = without_thousands(rest, currency).ok_or_else(|| MoneyError::Comma(written.into()))?;
    let (whole, part) = digits.split_once('.').unwrap_or((&digits, "0"));
    let all_digits = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    if !all_digits(whole) || !all_digits(part) {
        return Err(unreadable());
    }
    let decimals = currency.decimals() as usize;
    let stated = if digits.contains('.') { part.len() } else { 0 };
    if stated > decimals {
        return Err(MoneyError::Decimals(written.into(), currency));
    }
    let part: String = part.chars().chain(std::iter::repeat('0')).take(decimals).collect();
    let minor: i64 = format!("{whole}{part}").parse().map_err(|_| MoneyError::TooLarge)?;
    Ok(Money::new(if negative { -minor } else { minor }, currency))
}

fn after_minus(text: &str) -> (bool, &str) {
    match text.strip_prefix(['-', '−']) {
        Some(rest) => (true, rest),
        None => (false, text),
    }
}

/// Takes the currency's own symbol or code away, before or after the number; any other is refused.
fn without_mark(text: &str, currency: Currency) -> Result<&str, MoneyError> {
    let number = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '−');
    let figures = text.trim_matches(|letter| !number(letter));
    let around = text.split_once(figures).filter(|_| !figures.is_empty());
    let (before, after) = around.ok_or_else(|| MoneyError::Unreadable(text.into()))?;
    for mark in
        [before.trim_matches(is_space), after.trim_matches(is_space)].into_iter().filter(|mark| !mark.is_empty())
    {
        if mark == currency.code() || Some(mark) == currency.symbol() {
            continue;
        }
        let other = Currency::parse(mark).is_ok() || !mark.contains(char::is_alphanumeric);
        return Err(match other {
            true => MoneyError::OtherCurrency { wanted: currency, found: mark.into() },
            false => MoneyError::Unreadable(text.into()),
        });
    }
    Ok(figures)
}

/// Takes marks of thousands away; `None` when a comma may mean something else.
fn without_thousands(text: &str, currency: Currency) -> Option<String> {
    if !text.contains(',') {
        return Some(text.into());
    }
    let (whole, part) = text.split_once('.').map_or((text, None), |(whole, part)| (whole, Some(part)));
    let mut groups = whole.split(',');
    let first = groups.next().unwrap_or_default();
    let rest: Vec<&str> = groups.collect();
    let in_threes = (1..=3).contains(&first.len()) && rest.iter().all(|group| group.len() == 3);
    // One comma before three digits is a decimal comma only where the currency has three decimals or more.
    let plain = part.is_some() || rest.len() > 1 || currency.decimals() < 3;
    let grouped = in_threes
        && plain
        && !first.starts_with('0')
        && !rest.is_empty()
        && !part.is_some_and(|part| part.contains(','));
    grouped.then(|| text.replace(',', ""))
}
