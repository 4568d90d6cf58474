//! Broken and hostile files: a clear sentence with the place of the fault and
//! the cure.

use crate::plans::full;
use leverwright_core::document::{self, DocumentError};
use serde_json::{Value, json};

#[track_caller]
fn refused(file: impl AsRef<[u8]>) -> DocumentError {
    match document::read(file) {
        Ok(opened) => panic!("it opens: {:?}", opened.notes),
        Err(error) => error,
    }
}

/// What is said of a full plan after a change to the value at a place.
#[track_caller]
fn said(pointer: &str, change: impl FnOnce(&mut Value)) -> String {
    let mut file: Value = serde_json::from_str(&document::write(&full())).expect("JSON");
    change(file.pointer_mut(pointer).expect("the place is there"));
    refused(file.to_string()).to_string()
}

#[track_caller]
fn said_of(pointer: &str, wrong: Value) -> String {
    said(pointer, |value| *value = wrong)
}

const CURE: &str = ". Correct the file there, or get a fresh copy of it.";

#[test]
fn wrong_values_are_named_with_their_place() {
    for (pointer, wrong, words) in [
        (
            "/bike/controls/3/side",
            json!("up"),
            "bike.controls[3].side: expected left, centre or right, found \"up\"",
        ),
        (
            "/bike/brakes/together/0/hand",
            json!("up"),
            "bike.brakes.together[0].hand: expected left or right, found \"up\"",
        ),
        (
            "/bike/controls/0/zone",
            json!("sky"),
            "bike.controls[0].zone: expected a zone such as hoods, tops, drops, found \"sky\"",
        ),
        (
            "/layouts/1/taps",
            json!({ "near": "lights" }),
            "layouts[1].taps.near: expected a control's id and its button, such as 3.inner-paddle, found \"near\"",
        ),
        (
            "/bike/bar/width",
            json!(99_999),
            "bike.bar.width: expected a number from 350 to 1000 (millimetres), found 99999",
        ),
        (
            "/bike/controls/1/at/y",
            json!(-5001),
            "bike.controls[1].at.y: expected a number from -5000 to 5000 (millimetres), found -5001",
        ),
        (
            "/bike/rings",
            json!(4),
            "bike.rings: expected a whole number from 1 to 3, found 4",
        ),
        (
            "/bike/drivetrain/rings",
            json!([50, 34]),
            "bike.drivetrain.rings: expected each once, from the smallest",
        ),
        (
            "/bike/drivetrain/rings",
            json!([34, 42, 50]),
            "bike.drivetrain.rings: expected 2, as bike.rings says, found 3",
        ),
        (
            "/bike/drivetrain/cogs",
            json!([34, 30, 27, 24, 21, 19, 17, 15, 15, 13, 12, 11]),
            "bike.drivetrain.cogs: expected each once, from the largest",
        ),
        (
            "/bike/drivetrain/cogs",
            json!([0]),
            "bike.drivetrain.cogs[0]: expected a whole number from 9 to 60, found 0",
        ),
        (
            "/bike/drivetrain",
            json!({ "tyre": { "width": 28, "bead_seat": 622 }, "circumference": 2100 }),
            "bike.drivetrain: expected at most one of “tyre” and “circumference”",
        ),
        (
            "/shift_settings/crossovers/0/up_leaves",
            json!(14),
            "shift_settings.crossovers[0].up_leaves: expected a whole number from 0 to 13, found 14",
        ),
        (
            "/revision",
            json!(4_294_967_296_u64),
            "revision: expected a whole number from 0 to 4294967295, found 4294967296",
        ),
        ("/name", json!(["x"]), "name: expected a text, found a list"),
        (
            "/bike/controls",
            json!({}),
            "bike.controls: expected a list of at most 24, found a group in braces",
        ),
        (
            "/rider/right",
            json!(null),
            "rider.right: expected what is known of a hand, found nothing",
        ),
        (
            "/date",
            json!("2031-02-29"),
            "date: expected a date such as 2031-05-09, found \"2031-02-29\"",
        ),
        (
            "/layouts/0/holds/1.inner-paddle",
            json!({ "repeats": 2, "does": "lights" }),
            "layouts[0].holds.1.inner-paddle: expected either “repeats” or “does”",
        ),
        (
            "/bike/controls/0/connected",
            json!(1),
            "bike.controls[0].connected: expected true or false, found 1",
        ),
        (
            "/leverwright",
            json!("page"),
            "leverwright: expected plan, found \"page\"",
        ),
    ] {
        assert_eq!(said_of(pointer, wrong), format!("{words}{CURE}"));
    }
}

#[test]
fn missing_fields_are_named() {
    let remove = |name: &'static str| {
        move |value: &mut Value| {
            value.as_object_mut().expect("a group").remove(name);
        }
    };
    assert_eq!(
        said("/bike/controls/3", remove("side")),
        format!("bike.controls[3]: “side” is missing{CURE}")
    );
    assert_eq!(
        said("", remove("bike")),
        format!("plan: “bike” is missing{CURE}")
    );
    assert_eq!(
        said("", remove("format")),
        format!("format: the format number is missing{CURE}")
    );
}

#[test]
fn what_stands_there_twice_is_named() {
    let twice = |value: &mut Value| {
        let items = value.as_array_mut().expect("a list");
        items.push(items[0].clone());
    };
    for (pointer, words) in [
        ("/bike/controls", "bike.controls: two have the same id (1)"),
        (
            "/bike/controls/0/buttons",
            "bike.controls[0].buttons: two have the same part (hood-button)",
        ),
        ("/layouts", "layouts: two have the same id (1)"),
        (
            "/bike/brakes/runs",
            "bike.brakes.runs: two have the same lever (1)",
        ),
        (
            "/bike/brakes/wheels",
            "bike.brakes.wheels: two have the same wheel (front)",
        ),
        (
            "/bike/thumb_work",
            "bike.thumb_work: two have the same kind (bell)",
        ),
        (
            "/accepted",
            "accepted: two have the same finding (one-lever-for-both|control:1)",
        ),
        (
            "/layouts/0/chords",
            "layouts[0].chords: two have the same first and second (1.inner-paddle and 3.near)",
        ),
    ] {
        assert_eq!(said(pointer, twice), format!("{words}{CURE}"));
    }
    // Names that stand twice in one group; JSON readers usually drop one.
    let file = document::write(&full()).replacen(
        "\"side\": \"left\",",
        "\"side\": \"left\",\n        \"side\": \"right\",",
        1,
    );
    let said = refused(file).to_string();
    assert!(said.contains("in bike.controls[0]"), "{said}");
    assert!(said.contains("“side” stands there twice"), "{said}");
}

#[test]
fn too_many_is_said() {
    let fill = |n: u32| {
        move |value: &mut Value| {
            let items = value.as_array_mut().expect("a list");
            let item = items[0].clone();
            *items = (0..n)
                .map(|id| {
                    let mut item = item.clone();
                    item["id"] = id.into();
                    item
                })
                .collect();
        }
    };
    assert_eq!(
        said("/bike/controls", fill(25)),
        format!("bike.controls: expected at most 24, found 25{CURE}")
    );
    assert_eq!(
        said("/layouts", fill(13)),
        format!("layouts: expected at most 12, found 13{CURE}")
    );
    let chords: Vec<Value> = (0..25)
        .map(|at| json!({ "first": "1.outer-paddle", "second": format!("{at}.near"), "function": "lights" }))
        .collect();
    assert_eq!(
        said_of("/layouts/0/chords", json!(chords)),
        format!("layouts[0].chords: expected at most 24, found 25{CURE}")
    );
    let taps: serde_json::Map<String, Value> = (0..257)
        .map(|at| (format!("{at}.near"), json!("lights")))
        .collect();
    assert_eq!(
        said_of("/layouts/0/taps", json!(taps)),
        format!("layouts[0].taps: expected at most 256, found 257{CURE}")
    );
    let many = |value: &mut Value| {
        for at in 0..1001 {
            value[format!("later_{at}")] = json!(at);
        }
    };
    assert_eq!(
        said("/bike", many),
        format!(
            "plan: expected at most 1000 parts that this version does not know, found 1001{CURE}"
        )
    );
    assert_eq!(
        said_of("/accepted/0/finding", json!("x".repeat(2001))),
        format!("accepted[0].finding: expected at most 2000 characters{CURE}")
    );
}

#[test]
fn references_to_nothing_are_refused_where_they_would_change_the_bike() {
    for (pointer, wrong, words) in [
        (
            "/current",
            json!(9),
            "current: there is no layout with the id 9",
        ),
        (
            "/bike/brakes/runs/0/lever",
            json!(99),
            "bike.brakes.runs[0].lever: there is no control with the id 99",
        ),
        (
            "/bike/brakes/runs/0/lever",
            json!(3),
            "bike.brakes.runs[0].lever: control 3 has no brake blade",
        ),
        (
            "/bike/brakes/together/0/second",
            json!(99),
            "bike.brakes.together[0].second: there is no control with the id 99",
        ),
        (
            "/bike/controls/0/buttons/1/copies",
            json!("1.outer-paddle"),
            "bike.controls[0].buttons[1].copies: a button cannot copy itself",
        ),
        (
            "/layouts",
            json!([]),
            "layouts: a plan has at least one layout",
        ),
        (
            "/layouts/0/chords/0/second",
            json!("1.inner-paddle"),
            "layouts[0].chords[0]: expected two different buttons",
        ),
        (
            "/bike/rings",
            json!(1),
            "bike.drivetrain.rings: expected 1, as bike.rings says, found 2",
        ),
        (
            "/shift_plan",
            json!("single-ring"),
            "shift_plan: the single ring plan does not go with bike.rings, which is 2",
        ),
        (
            "/shift_settings/crossovers/0/ring",
            json!(1),
            "shift_settings.crossovers: expected one entry for each ring but the largest, from ring 0",
        ),
        (
            "/bike/controls/0/buttons/1/fixed_to",
            json!("lights"),
            "bike.controls[0].buttons[1]: expected at most one of “limited_to”, “copies” and “fixed_to”",
        ),
    ] {
        let said = said(&pointer.replace("/fixed_to", ""), |value| {
            match pointer.ends_with("/fixed_to") {
                true => value["fixed_to"] = wrong,
                false => *value = wrong,
            }
        });
        assert_eq!(said, format!("{words}{CURE}"));
    }
}

#[test]
fn files_that_are_no_plans_are_told_apart() {
    assert_eq!(refused(""), DocumentError::Empty);
    assert_eq!(refused(" \n\t"), DocumentError::Empty);
    for file in ["[]", "null", "7", "\"plan\"", "{}", "{\"format\": 1}"] {
        assert_eq!(refused(file), DocumentError::NotAPlan, "{file}");
    }
    assert_eq!(
        refused(b"{\"leverwright\": \"\xff\"}"),
        DocumentError::NotText { byte: 18 }
    );
    assert_eq!(
        refused(vec![b' '; document::MOST_BYTES + 1]).to_string(),
        "The file is too large: 2000001 bytes, and a plan has at most 2000000. Choose a plan file."
    );
    for (file, words) in [
        (
            "<svg></svg>",
            "The file cannot be read at line 1, column 1: expected value. Correct it there, or get a fresh copy of it.",
        ),
        (
            "{\"leverwright\": \"plan\"} extra",
            "The file cannot be read at line 1, column 25: trailing characters. Correct it there, or get a fresh copy of it.",
        ),
        (
            "{\"bike\": {\"bar\": {\"width\": 1e999}}}",
            "The file cannot be read at line 1, column 32, in bike.bar.width: number out of range. Correct it there, or get a fresh copy of it.",
        ),
        (
            "{\"bike\": {\"bar\": {\"width\": NaN}}}",
            "The file cannot be read at line 1, column 28, in bike.bar.width: expected value. Correct it there, or get a fresh copy of it.",
        ),
        (
            "{\"name\": \"\\ud800\"}",
            "The file cannot be read at line 1, column 17, in name: unexpected end of hex escape. Correct it there, or get a fresh copy of it.",
        ),
    ] {
        assert_eq!(refused(file).to_string(), words);
    }
}

#[test]
fn newer_formats_ask_for_an_update() {
    assert_eq!(
        said_of("/format", json!(2)),
        "The file has format 2; this version of the app reads formats up to 1. Keep the file as it is and update the app."
    );
    assert_eq!(
        said_of("/format", json!("1")),
        format!("format: expected a whole number, found \"1\"{CURE}")
    );
}

#[test]
fn a_file_that_breaks_off_anywhere_is_refused() {
    let whole = include_str!("saved/v1_by_hand.json").trim_end();
    for (end, _) in whole.char_indices() {
        match refused(&whole[..end]) {
            DocumentError::Empty if end == 0 => {}
            DocumentError::Truncated { .. } if end > 0 => {}
            other => panic!("cut at {end}: {other}"),
        }
    }
    let whole = document::write(&full());
    let half = &whole[..whole.find("\"zone\"").expect("a zone")];
    assert_eq!(
        refused(half).to_string(),
        "The file breaks off at line 392, column 8, in bike.controls[0]: the rest is missing. Get a fresh copy of it."
    );
}

#[test]
fn deep_files_are_refused_with_their_place() {
    let deep = format!("{{\"bike\": {}1{}}}", "[".repeat(200), "]".repeat(200));
    let said = refused(deep).to_string();
    assert!(
        said.starts_with("The file is nested more than 32 levels deep, in bike[0][0]"),
        "{said}"
    );
    for open in ["[", "{\"a\":"] {
        let endless = open.repeat(document::MOST_BYTES / open.len());
        assert!(matches!(refused(endless), DocumentError::TooDeep { .. }));
    }
}

#[test]
fn messages_repeat_little_of_a_hostile_file() {
    let long = format!("\u{202E}\u{7}<b>{}", "x".repeat(100_000));
    let said = said_of("/bike/controls/0/side", json!(long));
    let mut file: Value = serde_json::from_str(&document::write(&full())).expect("JSON");
    file[&long] = json!(1);
    let opened = document::read(file.to_string()).expect("it opens");
    for words in [&said, &opened.notes[0].words, &opened.notes[0].place] {
        assert!(words.chars().count() < 400, "{}", words.len());
        assert!(!words.contains(['\u{202E}', '\u{7}']), "{words:?}");
    }
}
