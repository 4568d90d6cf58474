//! A link whose whole content sits after the `#`.

use leptos::html;
use leptos::prelude::*;
use leverwright_core::plan::Plan;
use leverwright_core::share::{self, LASTING, LONGEST_LINK};
use std::sync::Arc;
use wasm_bindgen_futures::JsFuture;
use web_sys::ShareData;

use super::kilobytes;
use crate::erase::{memo, view_of};
use crate::route::address_of_app;
use crate::workspace::Workspace;

/// The link, to copy or to hand to another program; or why there is none.
#[component]
pub fn Link(content: Memo<Option<Arc<Plan>>>) -> impl IntoView {
    let link = memo(move || {
        let content = content.get()?;
        Some(share::link(&address_of_app(), &content).map_err(|error| error.to_string()))
    });
    view! {
        <section aria-labelledby="share-link">
            <h2 id="share-link">"As a link"</h2>
            <p>{LASTING}</p>
            {view_of(move || link.get().map(|link| match link {
                Ok(link) => view! { <Made link/> }.into_any(),
                Err(reason) => view! { <p class="check">{reason}</p> }.into_any(),
            }))}
        </section>
    }
}

#[component]
fn Made(link: String) -> impl IntoView {
    let workspace = Workspace::here();
    let field = NodeRef::<html::Textarea>::new();
    let size = format!(
        "The link has {} characters ({}). Most mail and chat programs take up to {LONGEST_LINK}.",
        link.len(),
        kilobytes(link.len()),
    );
    let select = move || {
        if let Some(field) = field.get_untracked() {
            // A field on the page takes the focus.
            let _ = field.focus();
            field.select();
        }
    };
    let copy = {
        let link = link.clone();
        move |_| {
            let link = link.clone();
            leptos::task::spawn_local(async move {
                match copied(&link).await {
                    true => workspace.report("The link is copied. Paste it where you write."),
                    false => {
                        select();
                        workspace.tell(
                            "This browser does not let the page copy. The link is marked: copy it \
                             with the browser’s own Copy.",
                        );
                    }
                }
            });
        }
    };
    let hand_over = can_hand_over().then(|| {
        let link = link.clone();
        view! {
            <button type="button" on:click=move |_| hand_over(&link)>"Send with another app"</button>
        }
    });
    view! {
        <div class="acts">
            <button type="button" class="main" on:click=copy>"Copy the link"</button>
            {hand_over}
        </div>
        <p class="quiet size">{size}</p>
        <label class="field link-text">
            <span>"The link itself"</span>
            <textarea readonly rows="3" node_ref=field prop:value=link
                on:focus=move |_| {
                    if let Some(field) = field.get_untracked() {
                        field.select();
                    }
                }></textarea>
        </label>
    }
}

/// Whether the link lies where the browser pastes from.
async fn copied(link: &str) -> bool {
    let navigator = window().navigator();
    if !window().is_secure_context() {
        return false;
    }
    JsFuture::from(navigator.clipboard().write_text(link))
        .await
        .is_ok()
}

/// Whether the browser can hand a link to another program.
fn can_hand_over() -> bool {
    js_sys::Reflect::has(&window().navigator(), &"share".into()) == Ok(true)
}

fn hand_over(link: &str) {
    let data = ShareData::new();
    data.set_url(link);
    // Ends when the person has chosen, or not; either is theirs.
    let ended = window().navigator().share_with_data(&data);
    leptos::task::spawn_local(async move {
        let _ = JsFuture::from(ended).await;
    });
}
