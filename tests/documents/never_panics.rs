//! No bytes make reading panic, and what opens can be looked at and written.

use crate::plans::{any_plan, full, look_at};
use crate::recorded::recorded;
use leverwright_core::document;
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::{Value, json};

/// Opens bytes; what opens is looked at, written and opened again.
fn open(bytes: &[u8]) {
    match document::read(bytes) {
        Ok(opened) => {
            look_at(&opened.plan);
            let again = document::read(document::write(&opened.plan)).expect("it opens again");
            assert_eq!(again.plan, opened.plan);
        }
        Err(error) => {
            let said = error.to_string();
            assert!(said.ends_with('.') && said.chars().count() < 700, "{said}");
        }
    }
}

/// Every value of a file by its JSON pointer.
pub fn places(here: &Value, pointer: &str, found: &mut Vec<String>) {
    found.push(pointer.to_owned());
    let escape = |name: &str| name.replace('~', "~0").replace('/', "~1");
    match here {
        Value::Object(map) => map
            .iter()
            .for_each(|(name, value)| places(value, &format!("{pointer}/{}", escape(name)), found)),
        Value::Array(items) => (items.iter().enumerate())
            .for_each(|(at, value)| places(value, &format!("{pointer}/{at}"), found)),
        _ => {}
    }
}

fn odd_value() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(json!(null)),
        Just(json!([])),
        Just(json!({})),
        Just(json!(true)),
        any::<i64>().prop_map(Value::from),
        any::<u16>().prop_map(Value::from),
        any::<f64>().prop_map(|n| json!(n)),
        ".{0,8}".prop_map(Value::from),
    ]
}

proptest! {
    #[test]
    fn on_random_bytes(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        open(&bytes);
    }

    #[test]
    fn on_random_text(text in "[\\[\\]{}:,\"0-9a-z.\\\\ -]{0,200}") {
        open(text.as_bytes());
    }

    #[test]
    fn on_files_with_bytes_changed(
        plan in any_plan(),
        changes in prop::collection::vec((any::<Index>(), any::<u8>()), 1..6),
    ) {
        let mut bytes = document::write(&plan).into_bytes();
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        open(&bytes);
    }

    #[test]
    fn on_files_with_values_exchanged(
        plan in prop_oneof![any_plan(), Just(full()), Just(recorded())],
        swaps in prop::collection::vec((any::<Index>(), any::<Index>()), 0..3),
        odd in prop::collection::vec((any::<Index>(), odd_value()), 0..3),
    ) {
        let mut file: Value = serde_json::from_str(&document::write(&plan)).expect("JSON");
        for (from, to) in swaps {
            let mut all = Vec::new();
            places(&file, "", &mut all);
            let value = file.pointer(&all[from.index(all.len())]).cloned().unwrap_or_default();
            if let Some(place) = file.pointer_mut(&all[to.index(all.len())]) {
                *place = value;
            }
        }
        for (at, value) in odd {
            let mut all = Vec::new();
            places(&file, "", &mut all);
            if let Some(place) = file.pointer_mut(&all[at.index(all.len())]) {
                *place = value;
            }
        }
        open(file.to_string().as_bytes());
    }
}
