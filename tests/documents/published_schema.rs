//! The published JSON Schema against a general-purpose validator (the
//! `jsonschema` crate, JSON Schema draft 2020-12).

use crate::plans::{any_plan, full};
use crate::recorded::recorded;
use jsonschema::Validator;
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{DemoId, TemplateId, demo, template};
use leverwright_core::document;
use leverwright_core::plan::Plan;
use proptest::prelude::*;
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

/// Set this to write the schema anew after the format grew.
const WRITE: &str = "LEVERWRIGHT_WRITE_SCHEMA";

fn published() -> String {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../public/plan.schema.json");
    if std::env::var_os(WRITE).is_some() {
        fs::write(&file, document::schema()).expect("the schema can be written");
    }
    fs::read_to_string(file).expect("the schema is published")
}

static VALIDATOR: LazyLock<Validator> = LazyLock::new(|| {
    let schema: Value = serde_json::from_str(&published()).expect("the schema is JSON");
    jsonschema::draft202012::meta::validate(&schema).expect("the schema is a schema");
    jsonschema::draft202012::new(&schema).expect("the schema can be used")
});

fn file(plan: &Plan) -> Value {
    serde_json::from_str(&document::write(plan)).expect("a file is JSON")
}

#[test]
fn is_the_one_made_from_the_types() {
    assert_eq!(
        published(),
        document::schema(),
        "the format changed: run this test with {WRITE}=1 set and look at the difference"
    );
}

#[test]
fn templates_demos_and_a_full_plan_keep_to_it() {
    for id in TemplateId::ALL {
        let file = file(&template(*id).plan("Test"));
        assert!(VALIDATOR.is_valid(&file), "{id}");
    }
    for id in DemoId::ALL {
        let file = file(&demo(*id).plan);
        assert!(VALIDATOR.is_valid(&file), "{id}");
    }
    for plan in [full(), recorded()] {
        let problems: Vec<String> = (VALIDATOR.iter_errors(&file(&plan)))
            .map(|error| error.to_string())
            .collect();
        assert_eq!(problems, [""; 0]);
    }
}

/// Places of a full plan, and what does not belong there.
fn broken() -> Vec<(&'static str, Value)> {
    vec![
        ("/leverwright", json!("page")),
        ("/format", json!(2)),
        ("/name", json!(7)),
        ("/date", json!("9.5.2031")),
        ("/rider/left", json!(null)),
        ("/rider/left/abilities/steady/is", json!(null)),
        ("/rider/left/abilities/flies", json!({ "is": "mild" })),
        ("/rider/left/place/is", json!("here")),
        ("/rider/fine_ride_presses/is", json!(70_000)),
        ("/bike/bar/width", json!(10)),
        ("/bike/controls/0/side", json!("up")),
        ("/bike/controls/0/at/x", json!(1e9)),
        ("/bike/controls/0/connected", json!("yes")),
        ("/bike/controls/0/buttons/0/part", json!("pedal")),
        ("/bike/controls/0/buttons/0/copies", json!("5.near")),
        ("/bike/brakes/runs/0/lever", json!(-1)),
        ("/bike/rings", json!(0)),
        ("/bike/cogs", json!(15)),
        ("/bike/drivetrain/rings", json!([34, 500])),
        ("/bike/drivetrain/circumference", json!(21)),
        ("/bike/drivetrain/wrap", json!(0)),
        ("/shift_settings/ladder_goal", json!("fast")),
        ("/shift_settings/forbidden", json!([{ "ring": 0 }])),
        ("/shift_settings/pace/rear", json!(0)),
        ("/bike/system/longest_hold", json!("for ever")),
        ("/layouts", json!([])),
        ("/layouts/0/taps/near", json!("lights")),
        ("/layouts/0/holds/9.near", json!({})),
        (
            "/layouts/0/holds/9.near",
            json!({ "repeats": 2, "does": "lights" }),
        ),
        ("/accepted/0/role", json!("friend")),
    ]
}

#[test]
fn broken_files_do_not_keep_to_it_and_do_not_open() {
    for (place, wrong) in broken() {
        let mut file = file(&full());
        let (owner, name) = place.rsplit_once('/').expect("a place");
        let owner = file.pointer_mut(owner).expect("the owner is there");
        match owner {
            Value::Object(owner) => owner.insert(name.into(), wrong.clone()),
            other => panic!("{place}: {other} owns nothing"),
        };
        assert!(!VALIDATOR.is_valid(&file), "{place}: {wrong}");
        assert!(
            document::read(file.to_string()).is_err(),
            "{place}: {wrong}"
        );
    }
}

#[test]
fn what_is_required_is_missed() {
    for place in [
        "/format",
        "/rider/right",
        "/bike/controls/0/id",
        "/layouts/0/taps",
    ] {
        let mut file = file(&full());
        let (owner, name) = place.rsplit_once('/').expect("a place");
        let owner = file.pointer_mut(owner).and_then(Value::as_object_mut);
        owner.expect("the owner is there").remove(name);
        assert!(!VALIDATOR.is_valid(&file), "{place}");
        let refused = document::read(file.to_string()).expect_err("it is missing");
        assert!(refused.to_string().contains("missing"), "{refused}");
    }
}

proptest! {
    #[test]
    fn any_plan_keeps_to_it(plan in any_plan()) {
        prop_assert!(VALIDATOR.is_valid(&file(&plan)));
    }
}
