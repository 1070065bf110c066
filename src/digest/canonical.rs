//! Canonical JSON (RFC 8785): the one way to write a value, so that its digest says what it holds.

use std::fmt;

use serde_json::Value;

/// Whole numbers of this size and above lose digits in canonical JSON (RFC 7493, section 2.2).
const PAST_EXACT: u64 = 1 << 53;

/// A value that canonical JSON can't hold without loss.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotCanonical;

impl fmt::Display for NotCanonical {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a number is past what JSON holds exactly")
    }
}

impl std::error::Error for NotCanonical {}

/// A value as canonical JSON: no space, keys ordered by their UTF-16 code units, UTF-8.
///
/// # Errors
/// When a whole number is past 2^53 and would lose digits.
pub fn canonical(value: &Value) -> Result<Vec<u8>, NotCanonical> {
    if !is_exact(value) {
        return Err(NotCanonical);
    }
    serde_json_canonicalizer::to_vec(value).map_err(|_| NotCanonical)
}

fn is_exact(value: &Value) -> bool {
    match value {
        Value::Number(number) => {
            let whole = number.as_u64().or_else(|| number.as_i64().map(i64::unsigned_abs));
            whole.is_none_or(|whole| whole < PAST_EXACT)
        }
        Value::Array(values) => values.iter().all(is_exact),
        Value::Object(fields) => fields.values().all(is_exact),
        _ => true,
    }
}

#[cfg(test)]
mod tests {
    use super::super::Digest;
    use super::*;

    fn written(json: &str) -> String {
        String::from_utf8(canonical(&serde_json::from_str(json).unwrap()).unwrap()).unwrap()
    }

    /// Source: check values SD-13 (RFC 8785, section 3.2.2 and 3.2.3); top check value 25.
    #[test]
    fn the_sample_of_the_rfc_is_written_as_there() {
        let sample = r#"{
            "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
            "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
            "literals": [null, true, false]
        }"#;
        let expected = concat!(
            r#"{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"#,
            r#""string":"€$\u000f\nA'B\"\\\\\"/"}"#
        );
        assert_eq!(written(sample), expected);
        assert_eq!(written("[-0.0]"), "[0]");
    }

    /// RFC 8785, section 3.2.3: keys in the order of their UTF-16 code units.
    #[test]
    fn keys_stand_in_the_order_of_the_rfc() {
        let sample = r#"{
            "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh",
            "1": "One", "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control",
            "\u00f6": "Latin Small Letter O With Diaeresis"
        }"#;
        let expected = [
            "Carriage Return",
            "One",
            "Control",
            "Latin Small Letter O With Diaeresis",
            "Euro Sign",
            "Emoji: Grinning Face",
            "Hebrew Letter Dalet With Dagesh",
        ];
        let text = written(sample);
        let places: Vec<_> = expected.iter().map(|value| text.find(value)).collect();
        assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{text}");
    }

    /// RFC 8785, appendix B: IEEE 754 bits and how they are written.
    #[test]
    fn numbers_are_written_as_in_the_rfc() {
        let rows: [(u64, &str); 24] = [
            (0x0000_0000_0000_0000, "0"),
            (0x8000_0000_0000_0000, "0"),
            (0x0000_0000_0000_0001, "5e-324"),
            (0x8000_0000_0000_0001, "-5e-324"),
            (0x7fef_ffff_ffff_ffff, "1.7976931348623157e+308"),
            (0xffef_ffff_ffff_ffff, "-1.7976931348623157e+308"),
            (0x4340_0000_0000_0000, "9007199254740992"),
            (0xc340_0000_0000_0000, "-9007199254740992"),
            (0x4430_0000_0000_0000, "295147905179352830000"),
            (0x44b5_2d02_c7e1_4af5, "9.999999999999997e+22"),
            (0x44b5_2d02_c7e1_4af6, "1e+23"),
            (0x44b5_2d02_c7e1_4af7, "1.0000000000000001e+23"),
            (0x444b_1ae4_d6e2_ef4e, "999999999999999700000"),
            (0x444b_1ae4_d6e2_ef4f, "999999999999999900000"),
            (0x444b_1ae4_d6e2_ef50, "1e+21"),
            (0x3eb0_c6f7_a0b5_ed8c, "9.999999999999997e-7"),
            (0x3eb0_c6f7_a0b5_ed8d, "0.000001"),
            (0x41b3_de43_5555_5553, "333333333.3333332"),
            (0x41b3_de43_5555_5554, "333333333.33333325"),
            (0x41b3_de43_5555_5555, "333333333.3333333"),
            (0x41b3_de43_5555_5556, "333333333.3333334"),
            (0x41b3_de43_5555_5557, "333333333.33333343"),
            (0xbecb_f647_612f_3696, "-0.0000033333333333333333"),
            (0x4314_3ff3_c1cb_0959, "1424953923781206.2"),
        ];
        for (bits, expected) in rows {
            let value = serde_json::json!(f64::from_bits(bits));
            assert_eq!(canonical(&value).unwrap(), expected.as_bytes(), "{bits:016x}");
        }
    }

    /// The digest of the canonical bytes `{"a":1,"b":[]}` by coreutils' `sha256sum`.
    #[test]
    fn a_digest_of_json_is_of_the_canonical_bytes_whatever_the_order() {
        let digest = |json: &str| Digest::of_json(&serde_json::from_str(json).unwrap()).unwrap();
        let known = "f87e4099e9be5e75094e0a4f46d3dc18a9c37429314a5a2490fb78d31e7e170c";
        assert_eq!(digest(r#"{"b": [], "a": 1}"#).to_string(), known);
        assert_eq!(digest(r#"{"a":1,"b":[]}"#), digest(r#"{"b": [], "a": 1.0}"#));
        assert_ne!(digest(r#"{"a":1,"b":[]}"#), digest(r#"{"a":1,"b":[0]}"#));
    }

    /// RFC 7493, section 2.2: whole numbers beyond 2^53 − 1 are not exact everywhere.
    #[test]
    fn a_whole_number_that_would_lose_digits_is_refused() {
        assert_eq!(written("[9007199254740991,-9007199254740991]"), "[9007199254740991,-9007199254740991]");
        for json in ["[9007199254740993]", "{\"a\":-9007199254740993}"] {
            assert_eq!(canonical(&serde_json::from_str(json).unwrap()), Err(NotCanonical), "{json}");
        }
    }
}
