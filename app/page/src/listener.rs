//! What an element does when something happens to it.

use std::borrow::Cow;

use leptos::prelude::Owner;
use leptos::tachys::renderer::{RemoveEventHandler, Rndr};
use wasm_bindgen::JsValue;
use web_sys::Element;

/// What is done when something happens.
pub struct Listener {
    name: Cow<'static, str>,
    owner: Owner,
    act: Box<dyn FnMut(JsValue)>,
}

impl Listener {
    /// A listener for the event of a name. It runs under the owner of now, so
    /// that it finds the same contexts as the view it stands in.
    pub fn new(name: Cow<'static, str>, act: Box<dyn FnMut(JsValue)>) -> Self {
        let owner = Owner::current().unwrap_or_default();
        Listener { name, owner, act }
    }

    /// Whether both listen for the same.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Starts listening; ends when what is returned is dropped.
    pub fn listen(self, element: &Element) -> RemoveEventHandler<Element> {
        let Listener {
            name,
            owner,
            mut act,
        } = self;
        let act = Box::new(move |event| owner.with(|| act(event)));
        Rndr::add_event_listener(element, &name, act)
    }
}
