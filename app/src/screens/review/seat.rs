//! Who sits here: asked once, and kept until the page is closed.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::finding::Role;

use super::desk::Desk;
use super::fields::Line;
use crate::widgets::{Choice, DateField};

/// Role, name and day.
#[component]
pub fn Seat() -> impl IntoView {
    let workspace = Desk::here().workspace;
    let roles = Role::ALL.iter();
    let roles = roles.map(|role| (Some(*role), role.words().to_owned()));
    let choose = Callback::new(move |role| workspace.role.set(role));
    view! {
        <section class="review-seat" aria-labelledby="review-seat">
            <h2 id="review-seat">"Who sits here"</h2>
            <div class="review-seat-fields">
                <Choice legend="You are the" name="review-role" choices=roles.collect()
                    chosen=workspace.role choose/>
                <Line label="Name" id="review-signer".to_owned() value=workspace.signer
                    set=move |name| workspace.signer.set(name)/>
                <DateField label="Date" value=workspace.dated
                    set=move |date| workspace.dated.set(date)/>
            </div>
            <p class="quiet">
                "Asked once, kept until this page is closed, and written beside what you record. \
                A typed name is not a signature. Comments for rider and clinician only are shown to \
                these two."
            </p>
        </section>
    }
}
