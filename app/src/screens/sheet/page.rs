//! One page of the sheet.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::sheet::{Page, TitleBlock};

/// A page with its head. On paper it starts a leaf of its own.
#[component]
pub fn SheetPage(page: Page, title: TitleBlock, children: Children) -> impl IntoView {
    let id = format!("sheet-{}", page.code());
    let label = id.clone();
    view! {
        <section class="sheet-page" aria-labelledby=label>
            <header class="sheet-head">
                <h2 id=id>{page.words()}</h2>
                <p>{title.running_head()}</p>
            </header>
            {children()}
        </section>
    }
}

/// A part of a page under its heading. A short one stays on one leaf.
#[component]
pub fn Part(
    heading: &'static str,
    #[prop(optional)] class: &'static str,
    children: Children,
) -> impl IntoView {
    view! {
        <section class=format!("sheet-part {class}")>
            <h3 class="part-name">{heading}</h3>
            {children()}
        </section>
    }
}

/// Several parts under one heading.
#[component]
pub fn Group(heading: &'static str, children: Children) -> impl IntoView {
    view! {
        <section class="sheet-group">
            <h3>{heading}</h3>
            {children()}
        </section>
    }
}

/// Balloons before or within a line.
#[component]
pub fn Balloons(numbers: Vec<usize>) -> impl IntoView {
    numbers
        .into_iter()
        .map(|number| view! { <span class="sheet-balloon">{number}</span> " " })
        .collect_view()
}

/// Boxes to tick with a pen.
#[component]
pub fn Boxes(#[prop(default = 1)] count: u8) -> impl IntoView {
    (0..count)
        .map(|_| view! { <span class="sheet-box" aria-hidden="true"></span> })
        .collect_view()
}

/// A line to write on with a pen.
#[component]
pub fn Fill(#[prop(optional)] long: bool) -> impl IntoView {
    view! { <span class="sheet-fill" class:long=long role="img" aria-label="to fill in"></span> }
}

/// What is known, or a line to write it on.
pub fn known_or_fill(value: Option<String>) -> AnyView {
    match value {
        Some(value) => value.into_any(),
        None => view! { <Fill/> }.into_any(),
    }
}
