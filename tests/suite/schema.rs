//! The schemas against an independent validator.

use serde_json::{Value, json};

use crate::project::Project;
use crate::validator::faults_of_each;

fn schemas() -> Value {
    Project::new().run(["schema"]).exits(0).stdout_is_json()
}

fn yaml(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap_or_else(|error| panic!("{error}:\n{text}"))
}

/// The faults of each value by the schema of that name.
fn faults(named: &[(&str, Value)]) -> Vec<Vec<String>> {
    let schemas = schemas();
    let pairs: Vec<_> = named.iter().map(|(name, value)| (&schemas[*name], value)).collect();
    faults_of_each(&pairs)
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
    let tree = project.tree();
    let paths: Vec<&str> = tree.files().filter(|path| path.ends_with(".yaml")).collect();
    let read = |path: &&str| yaml(&std::fs::read_to_string(project.root().join(path)).unwrap());
    let named: Vec<_> = paths.iter().map(|path| (schema_of(path), read(path))).collect();
    for (path, found) in paths.iter().zip(faults(&named)) {
        assert!(found.is_empty(), "{path}: {found:#?}");
    }
    assert!(paths.len() > 10);
}

#[test]
fn every_file_that_start_lays_out_is_accepted() {
    let project = Project::new();
    let folder = project.beside("new");
    project.run(["start", folder.to_str().unwrap()]).exits(0);
    let paths = ["book.yaml", "rooms/kitchen/room.yaml", "rooms/kitchen/range.yaml", "rooms/bath/choices.yaml"];
    let named = paths.map(|path| (schema_of(path), yaml(&std::fs::read_to_string(folder.join(path)).unwrap())));
    assert_eq!(faults(&named), [const { Vec::<String>::new() }; 4]);
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
    let named = faulty.clone().map(|(schema, text)| (schema, yaml(&text)));
    for ((schema, text), found) in faulty.iter().zip(faults(&named)) {
        assert!(!found.is_empty(), "{schema} accepts\n{text}");
    }
}

#[test]
fn every_length_that_the_reader_reads_is_accepted_and_a_bare_number_is_not() {
    let room = |length: Value| json!({"name": "A", "floor build-up": length});
    let written = [
        "34 1/2\"",
        "34-1/2 in",
        "2' 10 1/2\"",
        "2'-10 1/2\"",
        "3'-4½\"",
        "34½\"",
        "876 mm",
        "87.6 cm",
        "0.876 m",
        "40.5\"",
        "8'",
        "8 ft",
        "8 ft 1 in",
        "1/2\"",
    ];
    let with = |length: Value| ("room.schema.json", room(length));
    for (written, found) in written.iter().zip(faults(&written.map(|written| with(json!(written))))) {
        assert_eq!(found, Vec::<String>::new(), "{written}");
    }
    let bare = [json!(36), json!("36"), json!(36.5), json!("wide")];
    for (written, found) in bare.iter().zip(faults(&bare.clone().map(with))) {
        assert!(!found.is_empty(), "{written}");
    }
}
