//! Amounts as written, reckoned and printed.

use super::*;
use proptest::prelude::*;

fn currency(code: &str) -> Currency {
    Currency::parse(code).unwrap()
}

/// Source: check values SD-23 (ISO 4217, list one): decimals of the minor unit.
#[test]
fn currencies_have_the_decimals_iso_4217_gives_them() {
    let rows = [
        ("JPY KRW CLP ISK VND UGX PYG", 0),
        ("BHD IQD JOD KWD LYD OMR TND", 3),
        ("CLF UYW", 4),
        ("USD EUR CAD GBP", 2),
    ];
    for (codes, decimals) in rows {
        for code in codes.split(' ') {
            assert_eq!(currency(code).decimals(), decimals, "{code}");
        }
    }
    for code in ["XAU", "XTS", "XXX", "usd", "dollar", ""] {
        assert_eq!(Currency::parse(code), Err(CurrencyError(code.into())));
    }
}

/// Source: check values SD-23: 1234 minor units of each.
#[test]
fn minor_units_print_with_the_decimals_of_their_currency() {
    let rows = [
        ("JPY", "1234", "¥1,234"),
        ("KWD", "1.234", "KWD 1.234"),
        ("USD", "12.34", "$12.34"),
        ("CAD", "12.34", "CAD 12.34"),
    ];
    for (code, plain, printed) in rows {
        let money = Money::new(1234, currency(code));
        assert_eq!((money.plain().as_str(), money.to_string().as_str()), (plain, printed));
    }
    assert_eq!(Money::new(31_800_000, Currency::USD).to_string(), "$318,000.00");
    assert_eq!(Money::new(-12_050, currency("EUR")).to_string(), "−€120.50");
    assert_eq!(Money::new(-5, Currency::USD).plain(), "-0.05");
    assert_eq!(Money::new(i64::MIN, Currency::USD).plain(), "-92233720368547758.08");
}

#[test]
fn an_amount_is_read_with_or_without_its_own_mark() {
    for written in ["3180", "3180.0", "3180.00", "3,180.00", "3,180", "$3,180.00", "$ 3180", "USD 3180", "3180 USD"] {
        assert_eq!(Money::parse(written, Currency::USD), Ok(Money::new(318_000, Currency::USD)), "{written}");
    }
    for written in ["-120.50", "−120.50", "-$120.50", "$-120.50", "−$120.50"] {
        assert_eq!(Money::parse(written, Currency::USD), Ok(Money::new(-12_050, Currency::USD)), "{written}");
    }
    assert_eq!(Money::parse("¥1,234", currency("JPY")).unwrap().minor, 1234);
    assert_eq!(Money::parse("1,234.5", currency("KWD")).unwrap().minor, 1_234_500);
}

#[test]
fn what_is_no_amount_says_so() {
    let comma = "write it without commas, with a point before decimals: `3180.00`";
    let plain = "write it as a plain number without commas, with a point before its decimals";
    let rows = [
        ("3180,00", "`3180,00` has a decimal comma, where the files have a point", comma),
        (
            "890,50",
            "`890,50` has a decimal comma, where the files have a point",
            "write it without commas, with a point before decimals: `890.50`",
        ),
        ("31,80.00", "the comma in `31,80.00` may be a decimal point or a mark of thousands", plain),
        (",180", "the comma in `,180` may be a decimal point or a mark of thousands", plain),
        ("3.180,00", "`3.180,00` has a decimal comma, where the files have a point", comma),
        ("3 180,00", "`3 180,00` has a decimal comma, where the files have a point", comma),
        (
            "3.180",
            "`3.180` has more decimals than USD has (2)",
            "write at most 2 decimals; if the point parts thousands, write `3180`",
        ),
        ("31.8055", "`31.8055` has more decimals than USD has (2)", "write at most 2 decimals"),
        ("€120", "an amount in `€` stands where USD is wanted", "give the amount in USD, the currency of the book"),
        (
            "120 CAD",
            "an amount in `CAD` stands where USD is wanted",
            "give the amount in USD, the currency of the book",
        ),
        ("120 each", "`120 each` is not an amount of money", plain),
        ("free", "`free` is not an amount of money", plain),
        ("--5", "`--5` is not an amount of money", plain),
        ("5.", "`5.` is not an amount of money", plain),
        ("99999999999999999999", "the amount is too large", "check the amount"),
    ];
    for (written, message, remedy) in rows {
        let error = Money::parse(written, Currency::USD).unwrap_err();
        assert_eq!((error.to_string().as_str(), error.remedy().text()), (message, remedy), "{written}");
    }
    // With three decimals in the currency, one comma before three digits may be either.
    let ambiguous = Money::parse("1,234", currency("KWD"));
    assert_eq!(ambiguous, Err(MoneyError::Comma("1,234".into())));
    assert!(matches!(Money::parse("12.5", currency("JPY")), Err(MoneyError::Decimals(..))));
}

#[test]
fn currencies_are_neither_added_nor_compared() {
    let (dollars, euros) = (Money::new(100, Currency::USD), Money::new(100, currency("EUR")));
    let other = MoneyError::OtherCurrency { wanted: Currency::USD, found: "EUR".into() };
    assert_eq!(dollars.checked_add(euros), Err(other.clone()));
    assert_eq!(dollars.checked_sub(euros), Err(other.clone()));
    assert_eq!(dollars.compare(euros), Err(other.clone()));
    assert_eq!(Money::sum(Currency::USD, [dollars, euros]), Err(other));
    assert_eq!(Money::sum(Currency::USD, [dollars, dollars]), Ok(Money::new(200, Currency::USD)));
    assert_eq!(Money::new(i64::MAX, Currency::USD).checked_add(dollars), Err(MoneyError::TooLarge));
}

#[test]
fn a_price_times_a_quantity_is_rounded_once_with_ties_to_even() {
    let times =
        |minor, quantity: &str| Money::new(minor, Currency::USD).times(quantity.parse().unwrap()).unwrap().minor;
    assert_eq!(times(1299, "42.5"), 55_208);
    assert_eq!(times(1, "0.5"), 0);
    assert_eq!(times(3, "0.5"), 2);
    assert_eq!(times(5, "0.5"), 2);
    assert_eq!(times(-3, "0.5"), -2);
    assert_eq!(times(1, "2.5000000000000000000000000001"), 3);
    let huge = Money::new(i64::MAX, Currency::USD).times(Decimal::MAX);
    assert_eq!(huge, Err(MoneyError::TooLarge));
}

proptest! {
    #[test]
    fn an_amount_is_read_as_printed(minor in -1_000_000_000_000..1_000_000_000_000_i64, at in 0..5_usize) {
        let money = Money::new(minor, currency(["USD", "JPY", "KWD", "CAD", "CLF"][at]));
        prop_assert_eq!(Money::parse(&money.plain(), money.currency), Ok(money));
        prop_assert_eq!(Money::parse(&money.to_string(), money.currency), Ok(money));
    }
}
