//! An element as it is drawn.

use leptos::prelude::{AnyView, Mountable, Render};
use leptos::tachys::renderer::{RemoveEventHandler, Rndr};
use leptos::tachys::view::any_view::AnyViewState;
use send_wrapper::SendWrapper;

use crate::attribute::{Slot, Written, write};
use crate::in_a_browser::drawn_in_a_browser;
use crate::listener::Listener;
use crate::value::{Plain, Value};

/// A tag with everything on it and inside it.
pub struct Part {
    tag: &'static str,
    namespace: Option<&'static str>,
    // Views must be able to change threads; in a browser they never do.
    pub marks: SendWrapper<Vec<Mark>>,
    pub children: Vec<AnyView>,
}

/// One thing on an element.
pub enum Mark {
    Value(Slot, Value),
    Listener(Listener),
    Reference(Box<dyn FnOnce(&web_sys::Element)>),
}

/// A [`Part`] on the page.
pub struct PartState {
    tag: &'static str,
    element: web_sys::Element,
    marks: Vec<MarkState>,
    children: Vec<AnyViewState>,
}

enum MarkState {
    Value(Slot, Written),
    /// The name of the event, and what ends the listening when dropped.
    Listener(
        String,
        #[expect(dead_code)] RemoveEventHandler<web_sys::Element>,
    ),
    Reference,
}

impl Part {
    pub fn new(tag: &'static str, namespace: Option<&'static str>) -> Self {
        Part {
            tag,
            namespace,
            marks: SendWrapper::new(Vec::new()),
            children: Vec::new(),
        }
    }

    /// Whether what stands on the page differs in values only.
    fn fits(&self, state: &PartState) -> bool {
        self.tag == state.tag
            && self.children.len() == state.children.len()
            && self.marks.len() == state.marks.len()
            && (self.marks.iter().zip(&state.marks)).all(|(new, old)| new.fits(old))
    }
}

impl Render for Part {
    type State = PartState;

    fn build(self) -> PartState {
        let element = Rndr::create_element(self.tag, self.namespace);
        let marks = self.marks.take().into_iter();
        let marks = marks.map(|mark| mark.build(&element)).collect();
        let children = self.children.into_iter().map(|child| {
            let mut child = child.build();
            child.mount(&element, None);
            child
        });
        PartState {
            tag: self.tag,
            children: children.collect(),
            marks,
            element,
        }
    }

    fn rebuild(self, state: &mut PartState) {
        if !self.fits(state) {
            let mut new = self.build();
            state.insert_before_this(&mut new);
            state.unmount();
            *state = new;
            return;
        }
        for (mark, old) in self.marks.take().into_iter().zip(&mut state.marks) {
            mark.rebuild(&state.element, old);
        }
        for (child, old) in self.children.into_iter().zip(&mut state.children) {
            child.rebuild(old);
        }
    }
}

impl Mark {
    fn fits(&self, state: &MarkState) -> bool {
        match (self, state) {
            (Mark::Value(new, _), MarkState::Value(old, _)) => new == old,
            (Mark::Listener(new), MarkState::Listener(old, _)) => new.name() == old,
            (Mark::Reference(_), MarkState::Reference) => true,
            _ => false,
        }
    }

    fn build(self, element: &web_sys::Element) -> MarkState {
        match self {
            Mark::Value(slot, value) => {
                MarkState::Value(slot, write(element, slot, value, Plain::Absent))
            }
            Mark::Listener(listener) => {
                MarkState::Listener(listener.name().to_owned(), listener.listen(element))
            }
            Mark::Reference(fill) => {
                fill(element);
                MarkState::Reference
            }
        }
    }

    fn rebuild(self, element: &web_sys::Element, state: &mut MarkState) {
        match (self, state) {
            (Mark::Value(slot, value), MarkState::Value(_, written)) => {
                written.rewrite(element, slot, value);
            }
            (mark, state) => *state = mark.build(element),
        }
    }
}

impl Mountable for PartState {
    fn unmount(&mut self) {
        self.element.remove();
    }

    fn mount(&mut self, parent: &web_sys::Element, marker: Option<&web_sys::Node>) {
        Rndr::insert_node(parent, &self.element, marker);
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        let parent = self.element.parent_element();
        if let Some(parent) = &parent {
            child.mount(parent, Some(&self.element));
        }
        parent.is_some()
    }

    fn elements(&self) -> Vec<web_sys::Element> {
        vec![self.element.clone()]
    }
}

drawn_in_a_browser!(Part, PartState);
