//! Data that a page carries for its scripts: JSON that can stand between the tags of a data block.

use serde::Serialize;

/// JSON in which no letter can end the block that it stands in.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Data {
    json: String,
}

impl Data {
    /// A value as data; one that JSON cannot hold is nothing.
    pub fn of<T: Serialize>(value: &T) -> Data {
        Data::from_json(&serde_json::to_string(value).unwrap_or_else(|_| "null".into()))
    }

    /// JSON as data. `<`, `>` and `&` stand in its texts alone, where an escape says the same.
    pub fn from_json(json: &str) -> Data {
        Data { json: json.replace('<', "\\u003c").replace('>', "\\u003e").replace('&', "\\u0026") }
    }

    /// The JSON.
    pub fn as_str(&self) -> &str {
        &self.json
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_cannot_end_the_block_that_it_stands_in() {
        let hostile = ["</script><script>alert(1)</script>", "<!--", "&lt;"];
        let data = Data::of(&hostile);
        assert!(!data.as_str().contains(['<', '>', '&']), "{}", data.as_str());
        assert_eq!(serde_json::from_str::<Vec<String>>(data.as_str()).unwrap(), hostile);
    }
}
