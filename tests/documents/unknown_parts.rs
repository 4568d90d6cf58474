//! Parts of a file that this version does not know stay with their owner.

use crate::plans::{act, after, after_possible, any_plan, full};
use leverwright_core::cockpit::{ControlId, ControlKind, Zone};
use leverwright_core::document::{self, NoteKind, Opened};
use leverwright_core::edit::{BikeEdit, Edit, LayoutEdit, PlanEdit, RiderEdit};
use leverwright_core::plan::Plan;
use leverwright_core::rider::Side;
use proptest::prelude::*;
use serde_json::{Map, Value, json};

fn file(plan: &Plan) -> Value {
    serde_json::from_str(&document::write(plan)).expect("a file is JSON")
}

fn open(file: &Value) -> Opened {
    match document::read(file.to_string()) {
        Ok(opened) => opened,
        Err(error) => panic!("{error}"),
    }
}

/// Every group of a file that has named fields, as JSON pointers; tables, whose
/// names are keys, are left out.
fn groups(file: &Value) -> Vec<String> {
    const TABLES: &[&str] = &[
        "abilities",
        "contacts",
        "hurts",
        "blade_reach",
        "positions",
        "taps",
        "holds",
        "as_found",
    ];
    fn walk(here: &Value, pointer: &str, found: &mut Vec<String>) {
        match here {
            Value::Object(map) => {
                if !TABLES.iter().any(|table| pointer.ends_with(table)) {
                    found.push(pointer.to_owned());
                }
                for (name, value) in map {
                    walk(value, &format!("{pointer}/{name}"), found);
                }
            }
            Value::Array(items) => {
                for (at, value) in items.iter().enumerate() {
                    walk(value, &format!("{pointer}/{at}"), found);
                }
            }
            _ => {}
        }
    }
    let mut found = Vec::new();
    walk(file, "", &mut found);
    found
}

fn group<'a>(file: &'a mut Value, pointer: &str) -> &'a mut Map<String, Value> {
    let group = file.pointer_mut(pointer).and_then(Value::as_object_mut);
    group.expect("the group is there")
}

#[test]
fn are_kept_in_every_group_of_a_file() {
    let known = file(&full());
    let everywhere = groups(&known);
    assert!(everywhere.len() > 150, "{}", everywhere.len());
    for pointer in &everywhere {
        let mut file = known.clone();
        let part = json!({ "deep": [1, 2.5, "三", null], "at": pointer });
        group(&mut file, pointer).insert("from_later".into(), part);
        let opened = open(&file);
        assert_eq!(opened.plan.unknown.len(), 1, "{pointer}");
        assert_eq!(opened.notes.len(), 1, "{pointer}");
        assert_eq!(opened.notes[0].kind, NoteKind::Unknown);
        let again: Value = serde_json::from_str(&document::write(&opened.plan)).expect("JSON");
        assert_eq!(again, file, "{pointer}");
    }
}

/// A full plan with marks on two controls, a button, a layout, both hands and
/// the plan itself.
fn marked() -> Plan {
    let mut file = file(&full());
    for pointer in [
        "",
        "/rider",
        "/rider/left",
        "/rider/right",
        "/bike/controls/2",
        "/bike/controls/6",
        "/bike/controls/6/buttons/0",
        "/layouts/1",
    ] {
        group(&mut file, pointer).insert("mark".into(), json!(pointer));
    }
    open(&file).plan
}

/// The marks in a file, each with the id or name of what it stands on.
fn marks(plan: &Plan) -> Vec<String> {
    let file = file(plan);
    let mut marks: Vec<String> = groups(&file)
        .iter()
        .filter_map(|pointer| {
            let owner = file.pointer(pointer)?;
            let mark = owner.get("mark")?.as_str()?;
            let id = owner.get("id").map(|id| format!(" on {id}"));
            Some(format!("{mark}{}", id.unwrap_or_default()))
        })
        .collect();
    marks.sort();
    marks
}

#[test]
fn stay_with_their_owner_when_lists_are_reordered() {
    let mut plan = marked();
    let before = marks(&plan);
    assert_eq!(before.len(), 8);
    plan.bike.controls.reverse();
    plan.layouts.reverse();
    assert_eq!(marks(&plan), before);
    // And through edits that leave the owner where it is.
    let plan = after(
        plan,
        &[
            Edit::Bike(BikeEdit::MirrorAll),
            Edit::Bike(BikeEdit::Remove(ControlId(1))),
            Edit::Layout(LayoutEdit::Clear),
            Edit::Plan(PlanEdit::Name("Another name".into())),
        ],
    );
    assert_eq!(marks(&plan), before);
    assert_eq!(
        document::read(document::write(&plan)).map(|o| o.plan),
        Ok(plan)
    );
}

#[test]
fn go_with_their_owner_and_are_not_inherited() {
    let plan = marked();
    let last = ControlId(7);
    let again = [
        Edit::Bike(BikeEdit::Remove(last)),
        Edit::Bike(BikeEdit::Add(
            ControlKind::SinglePod,
            Side::Left,
            Zone::Stem,
        )),
    ];
    let as_one_act = Edit::Several {
        label: "replace the pod".into(),
        edits: again.to_vec(),
    };
    for edits in [&again[..], &[as_one_act]] {
        let plan = after(plan.clone(), edits);
        assert!(plan.bike.control(last).is_some(), "the id is used again");
        let left = marks(&plan);
        assert_eq!(left.len(), 6, "{left:?}");
        assert!(
            !left.iter().any(|mark| mark.contains("controls/6")),
            "{left:?}"
        );
    }
}

#[test]
fn go_with_the_hand_details() {
    let plan = marked();
    assert!(plan.has_hand_details());
    let removed = after(
        plan.clone(),
        &[Edit::Plan(PlanEdit::RemoveHandDetails(None))],
    );
    assert_eq!(marks(&removed), [""; 0]);
    assert!(!removed.has_hand_details());
    let forgotten = after(plan, &[Edit::Rider(RiderEdit::ForgetHand(Side::Left))]);
    let left = marks(&forgotten);
    assert_eq!(left.len(), 7);
    assert!(!left.contains(&"/rider/left".to_owned()), "{left:?}");
}

#[test]
fn are_named_in_one_note() {
    let mut file = file(&full());
    group(&mut file, "/bike/controls/3").insert("paint".into(), json!("green"));
    let note = open(&file).notes.remove(0);
    assert_eq!(note.place, "bike.controls[3].paint");
    assert_eq!(
        note.words,
        "This version does not know bike.controls[3].paint. It is kept as it came."
    );
    for at in 0..9 {
        group(&mut file, "").insert(format!("later_{at}"), json!(at));
    }
    let opened = open(&file);
    assert_eq!(opened.notes.len(), 1);
    assert!(
        opened.notes[0].words.contains("and 5 more"),
        "{:?}",
        opened.notes
    );
}

#[test]
fn that_would_not_fit_with_line_breaks_are_written_without() {
    let mut file = file(&full());
    group(&mut file, "").insert("dots".into(), json!(vec![0; 400_000]));
    let opened = open(&file);
    let text = document::write(&opened.plan);
    assert!(text.len() <= document::MOST_BYTES);
    assert_eq!(document::read(text).map(|o| o.plan), Ok(opened.plan));
}

proptest! {
    #[test]
    fn are_kept_through_any_edits_that_leave_their_owner(
        plan in any_plan(),
        at in any::<prop::sample::Index>(),
        acts in prop::collection::vec(act(), 0..12),
    ) {
        let mut file = file(&plan);
        let pointer = at.get(&groups(&file)).clone();
        group(&mut file, &pointer).insert("from_later".into(), json!(1));
        let opened = open(&file);
        let again: Value = serde_json::from_str(&document::write(&opened.plan)).expect("JSON");
        prop_assert_eq!(again, file);
        // What is still there after edits is what is written and read.
        let edited = after_possible(opened.plan, &acts);
        let reopened = document::read(document::write(&edited)).expect("it opens");
        prop_assert_eq!(reopened.plan, edited);
    }
}
