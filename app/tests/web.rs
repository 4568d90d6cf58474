//! The app in a real browser, without the release build.
#![cfg(target_arch = "wasm32")]

use leptos::{mount::mount_to, prelude::*};
use leverwright_app::App;
use wasm_bindgen::JsCast;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::HtmlElement;

wasm_bindgen_test_configure!(run_in_browser);

#[wasm_bindgen_test]
async fn a_press_is_counted() {
    let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
    document().body().unwrap().append_child(&place).unwrap();
    let mounted = mount_to(place.clone(), App);

    let button: HtmlElement = place
        .query_selector("button")
        .unwrap()
        .unwrap()
        .unchecked_into();
    button.click();
    leptos::task::tick().await;

    let status = place.query_selector("[role=status]").unwrap().unwrap();
    assert_eq!(status.text_content().as_deref(), Some("Pressed 1 times"));
    drop(mounted);
}
