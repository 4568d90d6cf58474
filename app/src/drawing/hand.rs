//! A drawn hand whose parts can be chosen.

use std::collections::BTreeMap;

use leptos::prelude::*;
use leverwright_core::drawing::hands::{HandPart, HandPicture, HandRegion};
use leverwright_core::rider::Side;

/// What the drawing shows of a part of the hand.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PartView {
    /// Its step from 0 to 4; none while not asked.
    pub step: Option<u8>,
    /// Whether it is chosen.
    pub chosen: bool,
    /// A mark in its middle, such as the step's number.
    pub mark: String,
    /// What a screen reader says.
    pub label: String,
}

impl PartView {
    fn class(&self) -> String {
        let step = match self.step {
            Some(step) => format!("step-{step}"),
            None => "not-asked".into(),
        };
        let chosen = if self.chosen { " chosen" } else { "" };
        format!("{step}{chosen}")
    }
}

/// A hand, palm down, as the rider sees it. `choose` is called when a part is clicked or pressed
/// with Enter or Space; without it the drawing only shows.
#[component]
pub fn Hand(
    /// Whose.
    side: Side,
    /// What each part shows; parts left out are drawn plain and cannot be chosen.
    #[prop(into)]
    parts: Signal<BTreeMap<HandPart, PartView>>,
    /// What the drawing is of, for a screen reader.
    #[prop(into)]
    label: Signal<String>,
    /// Called with a part that is chosen.
    #[prop(optional, into)]
    choose: Option<Callback<HandPart>>,
) -> impl IntoView {
    let picture = HandPicture::of(side);
    let prefix = format!("hand-{side}");
    let regions = picture
        .regions
        .into_iter()
        .map(|r| region(r, &prefix, parts, choose))
        .collect_view();
    view! {
        <svg
            class="hand"
            viewBox=HandPicture::VIEW_BOX
            role=if choose.is_some() { "group" } else { "img" }
            aria-label=move || label.get()
        >
            <StepPatterns prefix=prefix.clone()/>
            {regions}
            <g class="hand-lines" aria-hidden="true">
                <path class="hand-crease" d=picture.creases></path>
                <path class="hand-nail" d=picture.nails></path>
                <path class="hand-outline" d=picture.outline></path>
            </g>
        </svg>
    }
}

fn region(
    region: HandRegion,
    prefix: &str,
    parts: Signal<BTreeMap<HandPart, PartView>>,
    choose: Option<Callback<HandPart>>,
) -> impl IntoView + use<> {
    let part = region.part;
    let shows = Memo::new(move |_| parts.with(|all| all.get(&part).cloned()));
    let open = move || choose.is_some() && shows.with(Option::is_some);
    let class = move || shows.with(|s| format!("hand-part {}", s.as_ref().map(PartView::class).unwrap_or_default()));
    let prefix = prefix.to_owned();
    let fill = move || {
        let step = shows.with(|s| s.as_ref().and_then(|s| s.step));
        match step {
            Some(step @ 1..=4) => format!("url(#{prefix}-step-{step})"),
            _ => "none".into(),
        }
    };
    let act = move || {
        if let (Some(choose), true) = (choose, open()) {
            choose.run(part);
        }
    };
    let on_key = move |event: leptos::ev::KeyboardEvent| {
        if matches!(event.key().as_str(), "Enter" | " ") {
            event.prevent_default();
            act();
        }
    };
    let middle = region.middle;
    view! {
        <g
            class=class
            role=move || open().then_some("button")
            tabindex=move || open().then_some("0")
            aria-label=move || shows.with(|s| s.as_ref().map(|s| s.label.clone()))
            aria-pressed=move || open().then(|| shows.with(|s| s.as_ref().is_some_and(|s| s.chosen)).to_string())
            on:click=move |_| act()
            on:keydown=on_key
        >
            <path class="hand-tone" d=region.d.clone()></path>
            <path class="hand-step" d=region.d fill=fill></path>
            <text class="hand-mark" x=format!("{:.1}", middle.x) y=format!("{:.1}", middle.y)>
                {move || shows.with(|s| s.as_ref().map(|s| s.mark.clone()))}
            </text>
        </g>
    }
}

/// Patterns for steps 1 to 4: the harder, the denser.
#[component]
fn StepPatterns(
    /// Makes the names of this hand's patterns its own.
    prefix: String,
) -> impl IntoView {
    let named = |step: u8| format!("{prefix}-step-{step}");
    view! {
        <defs>
            <pattern id=named(1) width="7" height="7" attr:patternUnits="userSpaceOnUse">
                <circle class="hatch-dot" cx="3.5" cy="3.5" r="0.7"></circle>
            </pattern>
            <pattern id=named(2) width="6" height="6" attr:patternUnits="userSpaceOnUse" attr:patternTransform="rotate(45)">
                <path class="hatch" d="M0 3H6"></path>
            </pattern>
            <pattern id=named(3) width="3.4" height="3.4" attr:patternUnits="userSpaceOnUse" attr:patternTransform="rotate(45)">
                <path class="hatch" d="M0 1.7H3.4"></path>
            </pattern>
            <pattern id=named(4) width="3.4" height="3.4" attr:patternUnits="userSpaceOnUse" attr:patternTransform="rotate(45)">
                <path class="hatch" d="M0 1.7H3.4M1.7 0V3.4"></path>
            </pattern>
        </defs>
    }
}
