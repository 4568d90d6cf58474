//! Messages that stay until dismissed.

use leptos::prelude::*;

use crate::focus::focus_screen_if_lost;
use crate::workspace::{Notice, Workspace};

/// The messages, newest first, at the thumb's side. They are read out as they
/// come by the live region of the shell.
#[component]
pub fn Notices() -> impl IntoView {
    let workspace = Workspace::here();
    let any = Memo::new(move |_| workspace.notices.with(|notices| !notices.is_empty()));
    // For the style sheet: asking it to look for messages would make it look anew
    // at everything whenever anything is added to the page.
    Effect::new(move |_| {
        if let Some(root) = document().document_element() {
            let _ = root.toggle_attribute_with_force("data-messages", any.get());
        }
    });
    view! {
        <Show when=move || any.get()>
            <section class="notices" aria-label="Messages">
                <ul>
                    <For each=move || workspace.notices.get() key=|notice| notice.id let:notice>
                        <NoticeCard notice/>
                    </For>
                </ul>
            </section>
        </Show>
    }
}

#[component]
fn NoticeCard(notice: Notice) -> impl IntoView {
    let workspace = Workspace::here();
    let id = notice.id;
    let offers = notice
        .offers
        .into_iter()
        .map(|offer| {
            let act = move |_| {
                workspace.dismiss(id);
                (offer.act)();
                focus_screen_if_lost();
            };
            view! { <button type="button" on:click=act>{offer.label}</button> }
        })
        .collect_view();
    let dismiss = move |_| {
        workspace.dismiss(id);
        focus_screen_if_lost();
    };
    view! {
        <li class:trouble=notice.trouble>
            <p>{notice.text}</p>
            <div class="acts">
                {offers}
                <button type="button" on:click=dismiss>"Dismiss"</button>
            </div>
        </li>
    }
}
