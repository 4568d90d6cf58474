//! Attributes, classes, styles and properties of an element.

use leptos::reactive::effect::RenderEffect;
use leptos::tachys::renderer::Rndr;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

use crate::value::{Plain, Value};

/// What is written on an element.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Slot {
    /// An attribute.
    Attribute(&'static str),
    /// One class, beside those that the attribute `class` lists.
    Class(&'static str),
    /// One property of the style.
    Style(&'static str),
    /// A property as scripts see it.
    Property(&'static str),
    /// Everything inside.
    Inside,
}

impl Slot {
    /// Writes a value where another one stood.
    fn write(self, element: &Element, old: &Plain, new: &Plain) {
        match self {
            // The person may have changed it meanwhile: write it even if it is the same.
            Slot::Property(name) => Rndr::set_property_or_value(element, name, &new.to_js()),
            _ if old == new => {}
            Slot::Attribute(name) => match new.words() {
                Some(words) => Rndr::set_attribute(element, name, words),
                None => Rndr::remove_attribute(element, name),
            },
            Slot::Class(name) => {
                let _ = element.class_list().toggle_with_force(name, new.is_on());
            }
            Slot::Style(name) => {
                let style = element.unchecked_ref::<HtmlElement>().style();
                let _ = match new.words() {
                    Some(words) => style.set_property(name, words),
                    None => style.remove_property(name).map(|_| ()),
                };
            }
            Slot::Inside => element.set_inner_html(new.words().unwrap_or_default()),
        }
    }
}

/// A value on the page.
pub enum Written {
    Still(Plain),
    Live(RenderEffect<Plain>),
}

/// Writes a value and, if it is live, keeps it up to date.
pub fn write(element: &Element, slot: Slot, value: Value, old: Plain) -> Written {
    match value {
        Value::Still(new) => {
            slot.write(element, &old, &new);
            Written::Still(new)
        }
        Value::Live(mut read) => {
            let element = element.clone();
            let effect = move |old: Option<Plain>| {
                let new = read();
                slot.write(&element, &old.unwrap_or(Plain::Absent), &new);
                new
            };
            Written::Live(RenderEffect::new_with_value(effect, Some(old)))
        }
    }
}

impl Written {
    /// Writes another value in its place.
    pub fn rewrite(&mut self, element: &Element, slot: Slot, value: Value) {
        let old = match self {
            Written::Still(plain) => std::mem::replace(plain, Plain::Absent),
            Written::Live(effect) => effect.take_value().unwrap_or(Plain::Absent),
        };
        *self = write(element, slot, value, old);
    }
}
