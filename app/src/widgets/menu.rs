//! A button that opens a list of acts.

use leptos::ev::{FocusEvent, KeyboardEvent};
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, Node};

use crate::widgets::id::fresh_id;

/// One act of a menu.
#[derive(Clone)]
pub struct MenuItem {
    label: String,
    act: Callback<()>,
}

impl MenuItem {
    /// An act under a label.
    pub fn new(label: impl Into<String>, act: impl Fn() + Send + Sync + 'static) -> Self {
        MenuItem {
            label: label.into(),
            act: Callback::new(move |()| act()),
        }
    }
}

/// A button that opens a menu: arrow keys, Home and End walk it, Escape closes
/// it and gives the focus back, leaving it closes it.
#[component]
pub fn MenuButton(
    /// What the button says.
    #[prop(into)]
    label: String,
    /// What it is about, read after the label where several buttons say the
    /// same.
    #[prop(into, optional)]
    about: Signal<String>,
    /// The button's own name on the page, for the focus to come back to.
    #[prop(into, optional)]
    button_id: Option<String>,
    /// The acts in order.
    items: Vec<MenuItem>,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let anchor = NodeRef::<html::Div>::new();
    let button = NodeRef::<html::Button>::new();
    let id = fresh_id("menu");
    let close = move || {
        open.set(false);
        if let Some(button) = button.get_untracked() {
            let _ = button.focus();
        }
    };
    let left = move |event: FocusEvent| {
        let to = event
            .related_target()
            .and_then(|to| to.dyn_into::<Node>().ok());
        // The focus also goes when the whole menu is taken off the page.
        let Some(anchor) = anchor.try_get_untracked().flatten() else {
            return;
        };
        if !anchor.contains(to.as_ref()) {
            open.set(false);
        }
    };
    let items = StoredValue::new(items);
    let unseen = move || {
        let about = about.get();
        (!about.is_empty()).then(|| view! { <span class="unseen">" "{about}</span> })
    };
    view! {
        <div class="menu-anchor" node_ref=anchor on:focusout=left>
            <button type="button" class="menu-button" id=button_id node_ref=button aria-haspopup="menu"
                aria-expanded=move || open.get().to_string() aria-controls=id.clone()
                on:click=move |_| open.update(|open| *open = !*open)>{label}{unseen}</button>
            <Show when=move || open.get()>
                <Menu id=id.clone() items=items.get_value() close/>
            </Show>
        </div>
    }
}

#[component]
fn Menu(
    id: String,
    items: Vec<MenuItem>,
    close: impl Fn() + Copy + Send + Sync + 'static,
) -> impl IntoView {
    let menu = NodeRef::<html::Div>::new();
    Effect::new(move |_| {
        if let Some(menu) = menu.get() {
            keep_in_window(&menu);
            focus_item(&menu, |_, _| 0);
        }
    });
    let walk = move |event: KeyboardEvent| {
        let Some(menu) = menu.get_untracked() else {
            return;
        };
        match event.key().as_str() {
            "ArrowDown" => focus_item(&menu, |at, count| (at + 1) % count),
            "ArrowUp" => focus_item(&menu, |at, count| (at + count - 1) % count),
            "Home" => focus_item(&menu, |_, _| 0),
            "End" => focus_item(&menu, |_, count| count - 1),
            "Escape" => close(),
            _ => return,
        }
        event.prevent_default();
    };
    let buttons = items
        .into_iter()
        .map(|item| {
            let act = move |_| {
                close();
                item.act.run(());
            };
            view! {
                <button type="button" role="menuitem" tabindex="-1" on:click=act>
                    {item.label}
                </button>
            }
        })
        .collect_view();
    view! { <div class="menu" role="menu" id=id node_ref=menu on:keydown=walk>{buttons}</div> }
}

/// Moves the focus to the item that `pick` chooses, given the place of the
/// focused one and how many there are.
fn focus_item(menu: &HtmlElement, pick: impl Fn(usize, usize) -> usize) {
    let items = menu.children();
    let count = items.length() as usize;
    let focused = document().active_element();
    let at = (0..count).find(|at| items.item(*at as u32) == focused);
    let chosen = items.item(pick(at.unwrap_or(0), count) as u32);
    if let Some(chosen) = chosen.and_then(|item| item.dyn_into::<HtmlElement>().ok()) {
        let _ = chosen.focus();
    }
}

/// Opens a menu to the side and the way where it has room. On a telephone the
/// style sheet puts it at the thumb.
fn keep_in_window(menu: &HtmlElement) {
    let area = menu.get_bounding_client_rect();
    let height = window().inner_height().ok().and_then(|h| h.as_f64());
    let classes = menu.class_list();
    // Adding a class does not fail for a name without spaces.
    if area.left() < 0.0 {
        let _ = classes.add_1("to-the-end");
    }
    if height.is_some_and(|height| area.bottom() > height) {
        let _ = classes.add_1("upward");
    }
}
