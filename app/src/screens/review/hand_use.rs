//! Findings: a hand off the bar and brakes out of reach, hand use that may be
//! accepted with a reason, and what cannot be.

use leptos::prelude::*;
use leverwright_core::finding::Finding;
use leverwright_core::record::Pin;

use super::desk::Desk;
use crate::erase::view_of;
use crate::focus::focus_soon_or;
use crate::widgets::{FindingCard, SeverityMark};

/// A hand off the bar, a brake out of reach. What may be accepted among them
/// stands among the findings about hand use.
#[component]
pub fn OffTheBar() -> impl IntoView {
    let desk = Desk::here();
    let found = desk.read(|page| page.off_the_bar.clone());
    view! {
        <section aria-labelledby="review-off">
            <h2 id="review-off">"Hand off the bar, brake out of reach"</h2>
            {view_of(move || list(desk, &found.get(), "Nothing: no hand has to leave the bar, and each brake is reached."))}
        </section>
    }
}

fn list(desk: Desk, all: &[Finding], nothing: &'static str) -> AnyView {
    if all.is_empty() {
        return view! { <p>{nothing}</p> }.into_any();
    }
    let items = all.iter().map(|finding| line(desk, finding));
    view! { <ul class="review-findings">{items.collect_view()}</ul> }.into_any()
}

/// A finding in a line.
fn line(desk: Desk, finding: &Finding) -> impl IntoView + use<> {
    let places = finding.places.clone();
    view! {
        <li on:pointerenter=move |_| desk.light(&places) on:pointerleave=move |_| desk.light(&[])>
            <SeverityMark severity=finding.severity/>" "{finding.message.clone()}
        </li>
    }
}

/// Findings about hand use, open and accepted, then what cannot be accepted
/// here.
#[component]
pub fn HandUse() -> impl IntoView {
    let desk = Desk::here();
    let open = desk.read(|page| page.open.clone());
    let accepted = desk.read(|page| page.accepted.clone());
    let never = desk.read(|page| page.never.clone());
    let shop = desk.read(|page| page.for_shop.clone());
    let nothing = view_of(move || {
        open.with(Vec::is_empty)
            .then(|| view! { <p>"Nothing about hand use stands open."</p> })
    });
    let never = view_of(move || {
        let all = never.get();
        // The reason stands once below all that it is about.
        let items = all.chunk_by(|(_, a), (_, b)| a == b).map(|alike| {
            let why = alike[0].1;
            let lines = alike.iter().map(|(finding, _)| line(desk, finding));
            view! { {lines.collect_view()}<li class="review-never">"Why: "{why}</li> }
        });
        let items = items.collect_view();
        (!all.is_empty()).then(|| {
            view! {
                <h3>"These can never be accepted"</h3>
                <p class="quiet">"By nobody, whatever the reason: they must be changed."</p>
                <ul class="review-findings">{items}</ul>
            }
        })
    });
    let shop =
        view_of(move || {
            let all = shop.get();
            let items = all.iter().map(|finding| line(desk, finding)).collect_view();
            (!all.is_empty()).then(|| view! {
            <details class="review-more">
                <summary>{format!("For the shop to settle ({})", all.len())}</summary>
                <p class="quiet">
                    "They are about the bike and its brakes. A clinician does not accept them."
                </p>
                <ul class="review-findings">{items}</ul>
            </details>
        })
        });
    view! {
        <section aria-labelledby="review-use">
            <h2 id="review-use" tabindex="-1">"Findings about hand use"</h2>
            <p class="quiet">
                "The shop or a clinician may accept these with a reason; it is printed on the setup sheet. It \
                lapses when hands, controls or positions change."
            </p>
            {nothing}
            <Cards all=open/>
            {view_of(move || (!accepted.with(Vec::is_empty)).then(|| view! {
                <h3>"Accepted with a reason"</h3>
            }))}
            <Cards all=accepted/>
            {never}
            {shop}
        </section>
    }
}

#[component]
fn Cards(all: Memo<Vec<Finding>>) -> impl IntoView {
    let desk = Desk::here();
    let card = move |finding: Finding| {
        // Accepted or open again, its card stands elsewhere; fixed, it is gone.
        let place = format!("review-finding-{}", finding.key());
        let card = place.clone();
        let acted = Callback::new(move |()| focus_soon_or(card.clone(), "review-use"));
        let pin = Pin::Finding(finding.key());
        let about = format!(" on: {}", finding.message);
        view! {
            <li id=place tabindex="-1">
                <FindingCard finding acted/>
                <button type="button" on:click=move |_| desk.comment_on(pin.clone())>
                    "Comment"<span class="unseen">{about}</span>
                </button>
            </li>
        }
    };
    view! {
        <ul class="finding-list review-cards">
            <For each=move || all.get() key=row_key let:finding>{card(finding)}</For>
        </ul>
    }
}

/// A card is drawn anew only when what it says changes, so that a reason half
/// written stays.
fn row_key(finding: &Finding) -> String {
    format!("{}|{}", finding.key(), finding.message)
}
