//! The app in a real browser, without the release build.
#![cfg(target_arch = "wasm32")]

use leptos::{mount::mount_to, prelude::*};
use leverwright_app::App;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::HtmlElement;

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
async fn a_plan_starts_from_a_template() {
    let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
    document().body().unwrap().append_child(&place).unwrap();
    let mounted = mount_to(place.clone(), App);

    let template: HtmlElement = place
        .query_selector(".template")
        .unwrap()
        .unwrap()
        .unchecked_into();
    template.click();
    leptos::task::tick().await;

    let name = place
        .query_selector(".masthead .plan-name")
        .unwrap()
        .unwrap();
    assert_eq!(name.text_content().as_deref(), Some("Road drop bar, 2x12"));
    drop(mounted);
}

#[wasm_bindgen_test]
fn a_fault_of_the_program_is_told_on_the_page() {
    leverwright_app::show_crash();
    let alert = document().query_selector("[role=alert]").unwrap().unwrap();
    let text = alert.text_content().unwrap_or_default();
    assert!(text.contains("The program stopped"), "{text}");
    assert!(text.contains("Your plans are kept"), "{text}");
    let shown = document()
        .query_selector_all("body > :not([hidden]):not(script)")
        .unwrap();
    assert_eq!(shown.length(), 1);
    let link = alert.query_selector("a").unwrap().unwrap();
    let address = link.get_attribute("href").unwrap_or_default();
    assert!(address.starts_with("?again="), "{address}");
}

/// What had the focus keeps it while rows before and after it come and go.
#[wasm_bindgen_test]
async fn rows_of_a_list_that_stay_are_not_touched() {
    let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
    document().body().unwrap().append_child(&place).unwrap();
    let rows = RwSignal::new(vec!["a", "b", "c", "d"]);
    let mounted = mount_to(place.clone(), move || {
        view! {
            <ul>
                <For each=move || rows.get() key=|row| *row let:row>
                    <li><button type="button" id=row>{row}</button></li>
                </For>
            </ul>
        }
    });
    let button = |name: &str| -> HtmlElement {
        let found = place.query_selector(&format!("#{name}")).unwrap();
        found.unwrap().unchecked_into()
    };
    let (b, d) = (button("b"), button("d"));
    b.focus().unwrap();
    let orders = [
        ["b", "new", "c", "d"],
        ["d", "c", "b", "a"],
        ["d", "b", "x", "y"],
        ["x", "d", "z", "b"],
    ];
    for order in orders {
        rows.set(order.to_vec());
        leptos::task::tick().await;
        assert_eq!(place.text_content().unwrap_or_default(), order.concat());
        assert!(button("b").is_same_node(Some(&b)), "{order:?}");
        assert!(button("d").is_same_node(Some(&d)), "{order:?}");
        let focused = document().active_element();
        let keeps = focused.is_some_and(|focused| focused.is_same_node(Some(&b)));
        assert!(keeps, "{order:?}");
    }
    rows.set(Vec::new());
    leptos::task::tick().await;
    assert_eq!(place.text_content().unwrap_or_default(), "");
    drop(mounted);
}
