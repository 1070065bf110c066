//! The schemas against an independent validator (the `jsonschema` crate).

use serde_json::{Value, json};

use crate::project::Project;

fn schemas() -> Value {
    Project::new().run(["schema"]).exits(0).stdout_is_json()
}

fn yaml(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap_or_else(|error| panic!("{error}:\n{text}"))
}

fn faults(schema: &str, value: &Value) -> Vec<String> {
    let schemas = schemas();
    let validator = jsonschema::validator_for(&schemas[schema]).expect("a schema of draft 2020-12");
    validator.iter_errors(value).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

fn schema_of(path: &str) -> &'static str {
    match path {
        "book.yaml" => "book.schema.json",
        path if path.ends_with("/room.yaml") => "room.schema.json",
        path if path.starts_with("products/") => "product.schema.json",
        _ => "selection.schema.json",
    }
}

#[test]
fn every_file_of_the_example_project_is_accepted() {
    let project = Project::copy_of("example-project");
    let mut seen = 0;
    for path in project.tree().files().filter(|path| path.ends_with(".yaml")) {
        let text = std::fs::read_to_string(project.root().join(path)).unwrap();
        let found = faults(schema_of(path), &yaml(&text));
        assert!(found.is_empty(), "{path}: {found:#?}");
        seen += 1;
    }
    assert!(seen > 10);
}

#[test]
fn every_file_that_start_lays_out_is_accepted() {
    let project = Project::new();
    let folder = project.beside("new");
    project.run(["start", folder.to_str().unwrap()]).exits(0);
    for path in ["book.yaml", "rooms/kitchen/room.yaml", "rooms/kitchen/range.yaml", "rooms/bath/choices.yaml"] {
        let text = std::fs::read_to_string(folder.join(path)).unwrap();
        assert_eq!(faults(schema_of(path), &yaml(&text)), Vec::<String>::new(), "{path}");
    }
}

#[test]
fn faulty_files_are_rejected() {
    let book = |line: &str| format!("title: A\nclient: B\nunits: imperial\ncurrency: USD\n{line}\n");
    let selection = |line: &str| format!("selection: A\nkind: range\n{line}\n");
    let faulty = [
        ("book.schema.json", "client: B\nunits: imperial\ncurrency: USD\n".to_string()),
        ("book.schema.json", book("untis: metric")),
        ("book.schema.json", book("approval: most")),
        ("book.schema.json", book("tax: 8")),
        ("book.schema.json", book("milestones: {demolition: next spring}")),
        ("book.schema.json", book("way in: [{name: door, width: 36, height: 79\"}]")),
        ("book.schema.json", book("approvers: [{name: Ada}]")),
        ("book.schema.json", "title: A\nclient: B\nunits: imperial\ncurrency: dollars\n".to_string()),
        ("room.schema.json", "ceiling: 8' 1\"\n".to_string()),
        ("room.schema.json", "name: A\nfloor build-up: 36\n".to_string()),
        ("room.schema.json", "name: A\nopenings: {range: {width: [30, 31]}}\n".to_string()),
        ("room.schema.json", "name: A\nopenings: {range: {takes: rnage}}\n".to_string()),
        ("selection.schema.json", selection("hinge: lefft")),
        ("selection.schema.json", selection("size: {widht: 30\"}")),
        ("selection.schema.json", selection("size: {width: 30}")),
        ("selection.schema.json", selection("price: free")),
        ("selection.schema.json", selection("photos: a.jpg")),
        ("selection.schema.json", "kind: range\n".to_string()),
        ("selection.schema.json", "selection: A\nkind: rangge\n".to_string()),
        ("product.schema.json", "maker: [A, B]\n".to_string()),
    ];
    for (schema, text) in &faulty {
        assert!(!faults(schema, &yaml(text)).is_empty(), "{schema} accepts\n{text}");
    }
}

#[test]
fn every_length_that_the_reader_reads_is_accepted_and_a_bare_number_is_not() {
    let room = |length: Value| json!({"name": "A", "floor build-up": length});
    let written = ["34 1/2\"", "34-1/2 in", "2' 10 1/2\"", "2'-10 1/2\"", "3'-4½\"", "34½\"", "876 mm", "87.6 cm", "0.876 m", "40.5\"", "8'", "8 ft", "8 ft 1 in", "1/2\""];
    for written in written {
        assert_eq!(faults("room.schema.json", &room(json!(written))), Vec::<String>::new(), "{written}");
    }
    for written in [json!(36), json!("36"), json!(36.5), json!("wide")] {
        assert!(!faults("room.schema.json", &room(written.clone())).is_empty(), "{written}");
    }
}
