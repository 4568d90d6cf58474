//! The slot of a button: balloon, place, function.

use leptos::prelude::*;
use leverwright_core::cockpit::BarSide;
use leverwright_core::drawing::{BALLOON, ButtonMark};

use super::cockpit::ButtonView;
use super::icon::IconShape;

/// From the edge of a slot to its words, picture units.
const INSET: f64 = 10.0;
/// Baselines of the two lines of words, from the middle of the slot, picture units.
const LINES: (f64, f64) = (-6.0, 14.0);
/// Slots narrower than this have smaller letters, picture units.
const SNUG: f64 = 165.0;
/// Side of an icon, picture units.
const ICON: f64 = 18.0;

/// A balloon and, where there is room for words, the slot around it.
#[component]
pub fn Slot(
    /// Where everything goes.
    mark: ButtonMark,
    /// Whether there is room for words.
    words: bool,
    /// What the button shows.
    #[prop(into)]
    shows: Signal<Option<ButtonView>>,
) -> impl IntoView {
    let slot = mark.slot;
    let balloon = mark.balloon;
    let x = match mark.side {
        BarSide::Left => slot.x0 + INSET,
        BarSide::Centre => balloon.x + BALLOON + 5.0,
        BarSide::Right => slot.x0 + BALLOON + 6.0,
    };
    let snug = slot.width() < SNUG;
    let y = slot.center().y;
    view! {
        <rect class="slot-box" x=tenth(slot.x0) y=tenth(slot.y0) width=tenth(slot.width()) height=tenth(slot.height()) rx="6"></rect>
        {words.then(|| view! {
            <text class="slot-place" class:snug=snug x=tenth(x) y=tenth(y + LINES.0)>{move || place_line(shows)}</text>
            {move || function_line(shows, x, y + LINES.1, snug)}
        })}
        <circle class="balloon" cx=tenth(balloon.x) cy=tenth(balloon.y) r=BALLOON.to_string()></circle>
        <text class="balloon-number" x=tenth(balloon.x) y=tenth(balloon.y)>{mark.number}</text>
    }
}

fn place_line(shows: Signal<Option<ButtonView>>) -> Option<String> {
    shows.with(|shows| {
        let look = &shows.as_ref()?.look;
        Some(match look.standing.words() {
            Some(standing) => format!("{} · {standing}", look.place),
            None => look.place.clone(),
        })
    })
}

fn function_line(shows: Signal<Option<ButtonView>>, x: f64, y: f64, snug: bool) -> impl IntoView {
    let look = shows.with(|shows| shows.as_ref().map(|s| s.look.clone()))?;
    let icons = look.icons();
    let words_at = x + icons.len() as f64 * (ICON + 1.0) + 4.0;
    let icons: Vec<_> = icons
        .into_iter()
        .enumerate()
        .map(|(i, icon)| {
            let at = x + i as f64 * (ICON + 1.0);
            let place = format!("translate({at:.1} {:.1}) scale({})", y - 14.0, ICON / 24.0);
            view! { <g transform=place><IconShape icon/></g> }
        })
        .collect();
    Some(view! {
        {icons}
        <text class="slot-function" class:snug=snug x=tenth(words_at) y=tenth(y)>{look.words()}</text>
    })
}

fn tenth(value: f64) -> String {
    format!("{value:.1}")
}
