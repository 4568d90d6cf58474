//! What goes against the bike is kept as it was written: rules speak of it.

use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::cockpit::{ButtonId, ButtonPart, Freedom};
use leverwright_core::document::{self, NoteKind};
use leverwright_core::edit::{BikeEdit, Edit, LayoutEdit};
use leverwright_core::function::Function;
use leverwright_core::plan::Plan;
use leverwright_core::rules;
use serde_json::{Value, json};

fn written(plan: &Plan) -> Value {
    serde_json::from_str(&document::write(plan)).expect("a file is JSON")
}

/// The plan from a file in which a button was given a function by hand.
fn reassigned(plan: &Plan, button: ButtonId, function: &str) -> Plan {
    let mut file = written(plan);
    file["layouts"][0]["taps"][button.to_string()] = json!(function);
    let opened = document::read(file.to_string()).expect("it opens");
    assert_eq!(opened.notes, []);
    assert_eq!(written(&opened.plan), file, "it is written as it was read");
    opened.plan
}

fn refuses(plan: &Plan, button: ButtonId) {
    let edit = Edit::Layout(LayoutEdit::Tap(button, Some(Function::FrontToggle)));
    assert!(plan.apply(&edit).is_err(), "an edit is refused");
}

fn speaks(rule: &str, plan: &Plan) {
    let found = rules::findings(plan);
    assert!(found.iter().any(|f| f.rule == rule), "{rule}");
}

#[test]
fn a_fixed_button() {
    let plan = template(TemplateId::RoadPods).plan("Test");
    let fixed = |(.., b): &(ButtonId, _, &leverwright_core::cockpit::Button)| {
        matches!(b.freedom, Freedom::Fixed(_))
    };
    let buttons = plan.bike.buttons();
    let (id, ..) = buttons.iter().find(|b| fixed(b)).expect("a sprint button");
    let was = plan.layout().tap(&plan.bike, *id);
    let opened = reassigned(&plan, *id, "front-toggle");
    assert_eq!(opened.layout().taps.get(id), Some(&Function::FrontToggle));
    assert_eq!(
        opened.layout().tap(&opened.bike, *id),
        was,
        "it still does what it does"
    );
    refuses(&plan, *id);
    speaks("fixed-button-reassigned", &opened);
}

#[test]
fn copying_and_limited_buttons() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let buttons: Vec<ButtonId> = plan.bike.buttons().iter().map(|b| b.0).collect();
    for (freedom, rule) in [
        (Freedom::Copies(buttons[1]), "copying-button-reassigned"),
        (
            Freedom::Limited(vec![Function::Lights]),
            "limited-button-outside-its-set",
        ),
    ] {
        let edit = Edit::Bike(BikeEdit::Freedom(buttons[0], freedom));
        let plan = plan.apply(&edit).expect("the edit is possible");
        let opened = reassigned(&plan, buttons[0], "front-toggle");
        assert_eq!(
            opened.layout().taps.get(&buttons[0]),
            Some(&Function::FrontToggle)
        );
        refuses(&plan, buttons[0]);
        speaks(rule, &opened);
    }
}

#[test]
fn a_tap_hold_or_chord_on_a_missing_button_with_a_note() {
    let plan = template(TemplateId::Gravel).plan("Test");
    let mut file = written(&plan);
    let layout = &mut file["layouts"][0];
    layout["taps"]["9.near"] = json!("lights");
    layout["holds"]["9.far"] = json!({ "does": "lights" });
    layout["chords"] =
        json!([{ "first": "9.near", "second": "1.outer-paddle", "function": "lights" }]);
    file["as_found"]["8.single"] = json!(null);
    let opened = document::read(file.to_string()).expect("it opens");
    let notes: Vec<(NoteKind, &str, &str)> = (opened.notes.iter())
        .map(|note| (note.kind, note.place.as_str(), note.words.as_str()))
        .collect();
    assert_eq!(
        notes,
        [
            (
                NoteKind::Loose,
                "layouts[0]",
                "It names buttons that are not on the bike: 9.near, 9.far. They are kept and do nothing."
            ),
            (
                NoteKind::Loose,
                "as_found",
                "It names buttons that are not on the bike: 8.single. They are kept and do nothing."
            ),
        ]
    );
    assert_eq!(written(&opened.plan), file);
    crate::plans::look_at(&opened.plan);
}

#[test]
fn a_copy_of_a_missing_button_with_a_note() {
    let plan = template(TemplateId::Gravel).plan("Test");
    let mut file = written(&plan);
    file["bike"]["controls"][0]["buttons"][0]["copies"] = json!("9.near");
    file["layouts"][0]["taps"]["9.near"] = json!("lights");
    let opened = document::read(file.to_string()).expect("it opens");
    let places: Vec<&str> = opened
        .notes
        .iter()
        .map(|note| note.place.as_str())
        .collect();
    assert_eq!(places, ["layouts[0]", "bike.controls[0].buttons[0].copies"]);
    assert_eq!(written(&opened.plan), file);
    let copying = opened.plan.bike.controls[0].button_id(ButtonPart::HoodButton);
    assert_eq!(opened.plan.layout().tap(&opened.plan.bike, copying), None);
    let found = rules::findings(&opened.plan);
    assert_eq!(
        found
            .iter()
            .filter(|f| f.rule == "button-not-on-bike")
            .count(),
        2
    );
}
