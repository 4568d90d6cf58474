//! One line near the thumb: what is carried, what was done, what was refused.

use leptos::prelude::*;

use crate::after_paint::a_frame_behind;
use crate::focus::focus_screen_if_lost;
use crate::workspace::{Offer, Workspace};

/// The line. It is read out by the live region of the shell as it changes.
#[component]
pub fn StatusLine() -> impl IntoView {
    let workspace = Workspace::here();
    let now = a_frame_behind(move || {
        let in_hand = workspace.in_hand.get();
        let carries = in_hand.is_some();
        (in_hand.or_else(|| workspace.status.get()), carries)
    });
    let shown = move || now.get().0;
    let carries = move || now.get().1;
    // The page keeps room for it.
    let is_there = Memo::new(move |_| shown().is_some() || workspace.hint.with(Option::is_some));
    Effect::new(move |_| {
        if let Some(root) = document().document_element() {
            // Fails only for names that are no attributes.
            let _ = root.toggle_attribute_with_force("data-line", is_there.get());
        }
    });
    let line = move || match (shown(), workspace.hint.get()) {
        (Some(status), _) => {
            let offers = status.offers.into_iter().map(act).collect_view();
            view! {
                <section class="status-line stays" aria-label="Now"
                    class:carries=carries class:trouble=status.trouble>
                    <p>{status.text}</p>
                    {offers}
                </section>
            }
            .into_any()
        }
        (None, Some(hint)) => view! {
            <section class="status-line stays quiet" aria-label="Now"><p>{hint}</p></section>
        }
        .into_any(),
        (None, None) => ().into_any(),
    };
    view! { {line} }
}

fn act(offer: Offer) -> impl IntoView {
    let act = move |_| {
        (offer.act)();
        focus_screen_if_lost();
    };
    view! { <button type="button" on:click=act>{offer.label}</button> }
}
