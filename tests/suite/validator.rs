//! An independent validator of JSON Schema: Python's `jsonschema`, from Debian's packages.

use std::io::Write;
use std::process::{Command, Stdio};

use serde_json::{Value, json};

/// Reads pairs of a schema and a value, and answers each with its faults.
const ASK: &str = r#"
import json, sys
from jsonschema import validators
def faults(schema, value):
    kind = validators.validator_for(schema)
    kind.check_schema(schema)
    return [f"/{'/'.join(map(str, e.absolute_path))}: {e.message}" for e in kind(schema).iter_errors(value)]
json.dump([faults(*pair) for pair in json.load(sys.stdin)], sys.stdout)
"#;

/// The faults of each value by its schema; a schema that is none fails the test.
pub fn faults_of_each(pairs: &[(&Value, &Value)]) -> Vec<Vec<String>> {
    let asked = json!(pairs.iter().map(|(schema, value)| json!([schema, value])).collect::<Vec<_>>());
    let mut python = Command::new("/usr/bin/python3")
        .args(["-c", ASK])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("python3; `tests/run` installs it");
    let mut input = python.stdin.take().expect("its input");
    input.write_all(asked.to_string().as_bytes()).expect("python3 reads");
    drop(input);
    let output = python.wait_with_output().expect("python3 ends");
    assert!(output.status.success(), "python3-jsonschema; `tests/run` installs it");
    serde_json::from_slice(&output.stdout).expect("lists of faults")
}

/// The faults of one value by its schema.
pub fn faults(schema: &Value, value: &Value) -> Vec<String> {
    faults_of_each(&[(schema, value)]).swap_remove(0)
}
