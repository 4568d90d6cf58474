//! Elements of the page: a tag, what is written on it, children.

pub mod html;
mod part;
pub mod svg;

use std::marker::PhantomData;

use leptos::ev::{EventDescriptor, Targeted};
use leptos::html::ElementType;
use leptos::tachys::html::node_ref::NodeRefContainer;
use wasm_bindgen::JsValue;

use crate::attribute::Slot;
use crate::listener::Listener;
use crate::value::{IntoValue, Value};
use crate::view::IntoView;
use part::{Mark, Part};

/// An element with the tag of `E`. The tag is a type only for those who handle
/// events and references; what is drawn is a `Part`, the same for all.
pub struct Element<E> {
    part: Box<Part>,
    tag: PhantomData<fn() -> E>,
}

impl<E: ElementType> Element<E> {
    /// An empty element.
    pub fn new() -> Self {
        Element {
            part: Box::new(Part::new(E::TAG, E::NAMESPACE)),
            tag: PhantomData,
        }
    }
}

impl<E: ElementType> Default for Element<E> {
    fn default() -> Self {
        Element::new()
    }
}

impl<E> Element<E> {
    fn mark(mut self, mark: Mark) -> Self {
        self.part.marks.push(mark);
        self
    }

    fn write(self, slot: Slot, value: Value) -> Self {
        self.mark(Mark::Value(slot, value))
    }

    /// Puts a child after those that are there.
    pub fn child(mut self, child: impl IntoView) -> Self {
        self.part.children.push(child.into_any());
        self
    }

    pub(crate) fn into_part(self) -> Part {
        *self.part
    }

    /// An attribute by its name.
    pub fn attr(self, name: &'static str, value: impl IntoValue) -> Self {
        self.write(Slot::Attribute(name), value.into_value())
    }

    /// All classes, or one class and whether it is on.
    pub fn class(self, class: impl IntoClass) -> Self {
        let (slot, value) = class.into_class();
        self.write(slot, value)
    }

    /// One property of the style.
    pub fn style<V: IntoValue>(self, (name, value): (&'static str, V)) -> Self {
        self.write(Slot::Style(name), value.into_value())
    }

    /// A property as scripts see it.
    pub fn prop(self, name: &'static str, value: impl IntoValue) -> Self {
        self.write(Slot::Property(name), value.into_value())
    }

    /// Everything inside, as HTML.
    pub fn inner_html(self, value: impl IntoValue) -> Self {
        self.write(Slot::Inside, value.into_value())
    }

    /// Fills a reference with the element when it is drawn.
    pub fn node_ref<C>(self, reference: C) -> Self
    where
        E: ElementType,
        C: NodeRefContainer<E>,
    {
        self.mark(Mark::Reference(Box::new(|element| reference.load(element))))
    }

    /// What is done when something happens to the element.
    pub fn on<D>(self, event: D, mut act: impl FnMut(D::EventType) + 'static) -> Self
    where
        D: EventDescriptor,
        D::EventType: From<JsValue>,
    {
        let act = Box::new(move |event: JsValue| act(event.into()));
        self.mark(Mark::Listener(Listener::new(event.name(), act)))
    }

    /// The same, with the element at hand as the target of the event.
    pub fn on_target<D>(
        self,
        event: D,
        mut act: impl FnMut(Targeted<D::EventType, E::Output>) + 'static,
    ) -> Self
    where
        E: ElementType,
        D: EventDescriptor,
        D::EventType: From<JsValue>,
    {
        self.on(event, move |event| act(event.into()))
    }
}

/// What stands after `class=` and `class:name=`.
pub trait IntoClass {
    /// Where it is written, and what.
    fn into_class(self) -> (Slot, Value);
}

impl<V: IntoValue> IntoClass for V {
    fn into_class(self) -> (Slot, Value) {
        (Slot::Attribute("class"), self.into_value())
    }
}

impl<V: IntoValue> IntoClass for (&'static str, V) {
    fn into_class(self) -> (Slot, Value) {
        (Slot::Class(self.0), self.1.into_value())
    }
}

/// Methods named like attributes, which `view!` calls.
macro_rules! attributes {
    ($($method:ident $name:literal)*) => {
        impl<E> Element<E> {
            $(
                #[doc = concat!("The attribute `", $name, "`.")]
                pub fn $method(self, value: impl IntoValue) -> Self {
                    self.attr($name, value)
                }
            )*
        }
    };
}

attributes! {
    accept "accept"
    alt "alt"
    aria_atomic "aria-atomic"
    aria_busy "aria-busy"
    aria_checked "aria-checked"
    aria_controls "aria-controls"
    aria_current "aria-current"
    aria_describedby "aria-describedby"
    aria_disabled "aria-disabled"
    aria_expanded "aria-expanded"
    aria_haspopup "aria-haspopup"
    aria_hidden "aria-hidden"
    aria_invalid "aria-invalid"
    aria_label "aria-label"
    aria_labelledby "aria-labelledby"
    aria_live "aria-live"
    aria_pressed "aria-pressed"
    aria_selected "aria-selected"
    aria_valuemax "aria-valuemax"
    aria_valuemin "aria-valuemin"
    aria_valuenow "aria-valuenow"
    aria_valuetext "aria-valuetext"
    autocomplete "autocomplete"
    autofocus "autofocus"
    checked "checked"
    cols "cols"
    colspan "colspan"
    disabled "disabled"
    download "download"
    height "height"
    hidden "hidden"
    href "href"
    id "id"
    inputmode "inputmode"
    lang "lang"
    list "list"
    max "max"
    maxlength "maxlength"
    min "min"
    multiple "multiple"
    name "name"
    novalidate "novalidate"
    open "open"
    placeholder "placeholder"
    r#for "for"
    r#type "type"
    readonly "readonly"
    rel "rel"
    required "required"
    role "role"
    rows "rows"
    rowspan "rowspan"
    scope "scope"
    spellcheck "spellcheck"
    src "src"
    start "start"
    step "step"
    tabindex "tabindex"
    target "target"
    title "title"
    value "value"
    width "width"
}
