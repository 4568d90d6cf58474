//! The drawn hand: shows at a glance what presses and how hard, and leads to
//! the answer about the part that is tapped.

use crate::erase::{When, act, flag, memo};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::drawing::hands::{HandPart, HandPicture};
use leverwright_core::rider::{Contact, Difficulty, Side};

use super::Desk;
use crate::focus::focus_field;

/// One drawn hand, palm down, as the rider sees it.
///
/// It is a picture with a pointer's short cut: everything it shows and does is
/// in the rows of answers beside it, so it is hidden from screen readers.
#[component]
pub fn HandMap(side: Side) -> impl IntoView {
    let picture = HandPicture::of(side);
    let marks = picture
        .regions
        .iter()
        .filter_map(|region| match region.part {
            HandPart::Contact(contact) => Some((contact, region.middle)),
            HandPart::Back => None,
        })
        .map(|(contact, at)| view! { <NotAsked side contact x=at.x y=at.y/> })
        .collect_view();
    let regions = picture
        .regions
        .iter()
        .map(|region| view! { <Region side part=region.part d=region.d.clone()/> })
        .collect_view();
    view! {
        <svg class="hand-map" viewBox=HandPicture::VIEW_BOX aria-hidden="true">
            <StepPatterns side/>
            {regions}
            <path class="outline" d=picture.outline/>
            <path class="fine" d=picture.creases/>
            <path class="fine" d=picture.nails/>
            {marks}
        </svg>
    }
}

#[component]
fn Region(side: Side, part: HandPart, d: String) -> impl IntoView {
    let HandPart::Contact(contact) = part else {
        return view! { <path class="region plain" d=d/> }.into_any();
    };
    let desk = Desk::here();
    let step = memo(move || {
        desk.rider
            .with(|rider| rider.hands.get(side).contacts.value(contact))
    });
    view! {
        <path class="region chosen" d=d
            class:plain=move || pattern(side, step.get()).is_none()
            fill=move || pattern(side, step.get())
            on:click={act(move || { focus_field(&format!("{}-{}", side.code(), contact.code())); })}/>
    }
    .into_any()
}

/// A question mark on a part about which nobody asked: no pattern, which could
/// be taken for "presses easily".
#[component]
fn NotAsked(side: Side, contact: Contact, x: f64, y: f64) -> impl IntoView {
    let desk = Desk::here();
    let unknown = flag(move || {
        let step = desk
            .rider
            .with(|rider| rider.hands.get(side).contacts.value(contact));
        step.is_none()
    });
    view! {
        <When holds=unknown>
            <text class="not-asked" x=x.to_string() y=y.to_string()>"?"</text>
        </When>
    }
}

/// The pattern of a step; a shape each, so that none needs colour.
fn pattern(side: Side, step: Option<Difficulty>) -> Option<String> {
    match step {
        None | Some(Difficulty::None) => None,
        Some(step) => Some(format!("url(#{})", pattern_id(side, step))),
    }
}

fn pattern_id(side: Side, step: Difficulty) -> String {
    format!("step-{}-{}", step.code(), side.code())
}

/// Dots, hatch, cross hatch, solid: steps 1 to 4.
#[component]
fn StepPatterns(side: Side) -> impl IntoView {
    let id = move |step| pattern_id(side, step);
    view! {
        <defs>
            <pattern id=id(Difficulty::Mild) width="8" height="8" patternUnits="userSpaceOnUse">
                <circle class="dot" cx="2" cy="2" r="1.1"/>
                <circle class="dot" cx="6" cy="6" r="1.1"/>
            </pattern>
            <pattern id=id(Difficulty::Moderate) width="7" height="7" patternUnits="userSpaceOnUse"
                patternTransform="rotate(45)">
                <path class="stroke" d="M0 3.5H7"/>
            </pattern>
            <pattern id=id(Difficulty::Severe) width="6" height="6" patternUnits="userSpaceOnUse"
                patternTransform="rotate(45)">
                <path class="stroke" d="M0 3H6M3 0V6"/>
            </pattern>
            <pattern id=id(Difficulty::Complete) width="8" height="8" patternUnits="userSpaceOnUse">
                <rect class="dot" width="8" height="8"/>
            </pattern>
        </defs>
    }
}

/// What the patterns mean, beside the drawn hands.
#[component]
pub fn StepKey() -> impl IntoView {
    view! {
        <p class="quiet step-key">
            "On the drawn hands: plain – presses easily; dots – a little effort; hatched – effort; crossed – great effort; solid – does not press; “?” – not asked. Tap a part to answer for it."
        </p>
    }
}
