//! What is measured anew when an element changes its size.

use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::ResizeObserver;

/// Measures once the element is there, and whenever its size changes.
pub fn observe(element: NodeRef<html::Div>, measure: impl Fn() + Clone + 'static) {
    element.on_load(move |element| {
        measure();
        let measured = Closure::<dyn Fn()>::new(measure);
        let Ok(observer) = ResizeObserver::new(measured.as_ref().unchecked_ref()) else {
            return;
        };
        observer.observe(&element);
        // Both last as long as the view: they are no threads' business.
        let kept = StoredValue::new_local((observer, measured));
        on_cleanup(move || {
            kept.with_value(|(observer, _)| observer.disconnect());
        });
    });
}
