//! The browser front end: draws, listens, stores.

use leptos::prelude::*;

/// The whole page.
#[component]
pub fn App() -> impl IntoView {
    let presses = RwSignal::new(0_u32);
    view! {
        <main>
            <h1>"Leverwright"</h1>
            <p>"Plans which hand control of an electronically shifted bike does what."</p>
            <button on:click=move |_| *presses.write() += 1>"Press"</button>
            <p role="status">{move || format!("Pressed {} times", presses.get())}</p>
        </main>
    }
}
