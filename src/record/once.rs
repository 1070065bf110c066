//! JSON in which no key stands twice in one object: what two readers could read as two things is refused.

use std::fmt;

use serde::de::{self, DeserializeSeed, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Number, Value};

/// Reads a value.
///
/// # Errors
/// When it is no JSON, or a key stands twice in one object.
pub(super) fn value(bytes: &[u8]) -> Result<Value, serde_json::Error> {
    let mut reader = serde_json::Deserializer::from_slice(bytes);
    let value = Once.deserialize(&mut reader)?;
    reader.end()?;
    Ok(value)
}

struct Once;

impl<'de> DeserializeSeed<'de> for Once {
    type Value = Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Once {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value")
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_u64<E>(self, value: u64) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_i64<E>(self, value: i64) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_f64<E: de::Error>(self, value: f64) -> Result<Value, E> {
        Number::from_f64(value).map(Value::Number).ok_or_else(|| de::Error::custom("a number is past what JSON holds"))
    }

    fn visit_str<E>(self, value: &str) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_string<E>(self, value: String) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Value, A::Error> {
        let mut values = Vec::new();
        while let Some(value) = list.next_element_seed(Once)? {
            values.push(value);
        }
        Ok(Value::Array(values))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Value, A::Error> {
        let mut fields = Map::new();
        while let Some(key) = object.next_key::<String>()? {
            let value = object.next_value_seed(Once)?;
            if fields.insert(key.clone(), value).is_some() {
                return Err(de::Error::custom(format_args!("`{}` appears twice", key.escape_debug())));
            }
        }
        Ok(Value::Object(fields))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 8259, section 4: names within an object should be unique; receivers differ in what they do.
    #[test]
    fn a_key_that_stands_twice_is_refused_wherever_it_is() {
        for text in [r#"{"a":1,"a":1}"#, r#"{"x":[{"b":1,"c":2,"b":3}]}"#, r#"{"a":1,"\u0061":2}"#] {
            assert!(value(text.as_bytes()).unwrap_err().to_string().contains("appears twice"), "{text}");
        }
        let text = r#"{"a":[1,-2,1.5,"x",null,true,{"a":"é"}],"b":{"a":1}}"#;
        assert_eq!(value(text.as_bytes()).unwrap(), serde_json::from_str::<Value>(text).unwrap());
        assert!(value(b"{} x").is_err() && value(b"[1,]").is_err());
    }
}
