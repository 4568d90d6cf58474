//! The drawing as elements of a page, in a real browser.

use leptos::{mount::mount_to, prelude::*};
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::cockpit::{ButtonId, Ease};
use leverwright_core::drawing::{Look, Owner, Picture, Sheet};
use leverwright_core::finding::Severity;
use leverwright_core::ordered::SmallMap;
use leverwright_core::plan::Plan;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::{Element, HtmlElement};

use super::{ButtonView, Cockpit, Touch};

wasm_bindgen_test_configure!(run_in_browser);

type Views = SmallMap<ButtonId, ButtonView>;

fn views(plan: &Plan) -> Views {
    let buttons = plan.bike.buttons();
    let views = buttons.iter().map(|(id, control, _)| {
        let look = Look::of(&plan.bike, plan.layout(), *id).expect("it is on the bike");
        let view = ButtonView {
            label: format!("{}: {}", control.place_of(id.part), look.words()),
            look,
            reach: None,
            lit: None,
            touch: Touch::Rest,
        };
        (*id, view)
    });
    views.collect()
}

/// A place on the page that is cleared away with the test.
struct Stage(HtmlElement);

impl Stage {
    fn new() -> Stage {
        let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
        document().body().unwrap().append_child(&place).unwrap();
        Stage(place)
    }

    fn all(&self, selector: &str) -> Vec<Element> {
        let list = self.0.query_selector_all(selector).unwrap();
        (0..list.length())
            .map(|i| list.item(i).unwrap().unchecked_into())
            .collect()
    }

    fn class_of(&self, part: &str, id: ButtonId) -> String {
        let found = self.all(&format!(".{part}[data-button='{id}']"));
        assert_eq!(found.len(), 1, "{part} {id}");
        found[0].get_attribute("class").unwrap_or_default()
    }
}

impl Drop for Stage {
    fn drop(&mut self) {
        self.0.remove();
    }
}

fn stage(plan: &Plan, width: f64, active: bool, buttons: RwSignal<Views>) -> Stage {
    let stage = Stage::new();
    let picture = Picture::of(&plan.bike, Sheet::for_width(width));
    let first = plan.bike.buttons().first().map(|(id, ..)| *id);
    mount_to(stage.0.clone(), move || {
        view! {
            <Cockpit
                picture=Signal::stored(picture.clone())
                label=Signal::stored("A cockpit".to_owned())
                buttons
                active
                tab_stop=Signal::stored(first)
            />
        }
    })
    .forget();
    stage
}

#[wasm_bindgen_test]
fn every_button_of_the_catalogue_can_be_touched_and_is_named() {
    for template_id in TemplateId::ALL {
        let plan = template(*template_id).plan("Test");
        for width in [390.0, 1280.0] {
            let stage = stage(&plan, width, true, RwSignal::new(views(&plan)));
            for (id, control, _) in plan.bike.buttons() {
                for part in ["button", "hit", "slot"] {
                    stage.class_of(part, id);
                }
                let slot = &stage.all(&format!(".slot[data-button='{id}']"))[0];
                let label = slot.get_attribute("aria-label").unwrap_or_default();
                assert!(label.starts_with(&control.place_of(id.part)), "{label}");
                assert_eq!(slot.get_attribute("role").as_deref(), Some("button"));
            }
            // One stop for the Tab key; arrow keys do the rest.
            assert_eq!(stage.all("[tabindex='0']").len(), 1, "{template_id}");
        }
    }
}

#[wasm_bindgen_test]
fn a_drawing_on_paper_is_one_image() {
    let plan = template(TemplateId::RoadPods).plan("Test");
    let stage = stage(&plan, 1280.0, false, RwSignal::new(views(&plan)));
    let svg = &stage.all("svg")[0];
    assert_eq!(svg.get_attribute("role").as_deref(), Some("img"));
    assert_eq!(
        svg.get_attribute("aria-label").as_deref(),
        Some("A cockpit")
    );
    assert!(stage.all("[tabindex], [role='button'], .hit").is_empty());
}

#[wasm_bindgen_test]
async fn states_are_followed_without_drawing_anew() {
    let plan = template(TemplateId::RoadPods).plan("Test");
    let buttons = RwSignal::new(views(&plan));
    let stage = stage(&plan, 1280.0, true, buttons);
    let id = plan.bike.buttons()[1].0;
    let svg = stage.all("svg")[0].clone();
    assert!(!stage.class_of("button", id).contains("lit"));

    buttons.update(|all| {
        let view = all.get_mut(&id).expect("it is shown");
        view.lit = Some(Severity::MustFix);
        view.reach = Some(Ease::Stretch);
        view.touch = Touch::Target;
    });
    leptos::task::tick().await;

    for part in ["button", "slot"] {
        let class = stage.class_of(part, id);
        assert!(class.contains("lit-must-fix"), "{class}");
        assert!(class.contains("target"), "{class}");
    }
    let reach = stage.all(&format!(".button[data-button='{id}'] .reach"));
    let fill = reach[0].get_attribute("fill").unwrap_or_default();
    let pattern = fill.trim_start_matches("url(#").trim_end_matches(')');
    assert_eq!(stage.all(&format!("pattern#{pattern}")).len(), 1, "{fill}");
    assert!(stage.all("svg")[0].is_same_node(Some(&svg)));
}

#[wasm_bindgen_test]
async fn a_lit_blade_is_marked() {
    let plan = template(TemplateId::FlatSingle).plan("Test");
    let lever = plan.bike.controls.iter().find(|c| c.has_blade());
    let owner = Owner::Blade(lever.expect("it brakes").id);
    let lit = RwSignal::new(Vec::new());
    let stage = Stage::new();
    let picture = Picture::of(&plan.bike, Sheet::for_width(1280.0));
    let buttons = Signal::stored(views(&plan));
    mount_to(stage.0.clone(), move || {
        view! {
            <Cockpit picture=Signal::stored(picture.clone())
                label=Signal::stored(String::new()) buttons lit/>
        }
    })
    .forget();
    assert!(stage.all(".part.lit").is_empty());
    lit.set(vec![(owner, Severity::Check)]);
    leptos::task::tick().await;
    assert!(!stage.all(".part.lit-check").is_empty());
}
