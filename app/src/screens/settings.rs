//! The Settings screen.

use leptos::prelude::*;

use crate::settings::{Chosen, Lists, Settings, TapPause, Theme, ThumbSide};
use crate::storage::is_page_from_file;
use crate::widgets::Choice;

/// How the app behaves for this person on this device.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    view! {
        <h1>"Settings"</h1>
        <p>"They are kept in this browser, apart from plans."</p>
        <section aria-labelledby="reach-settings">
            <h2 id="reach-settings">"Within reach"</h2>
            <Setting name="thumb" legend="The thumb that holds the phone" choices=THUMBS
                read=|c| c.thumb write=|c, value| c.thumb = value
                means="On a telephone the menus, Undo, messages and the list beside the drawing stand on its side."/>
            <Setting name="lists" legend="Buttons of the cockpit" choices=LISTS
                read=|c| c.lists write=|c, value| c.lists = value
                means="One list on one side, for who may miss the other margin of the screen. On an upright telephone the list is always one, below the drawing."/>
            <Setting name="tap-pause" legend="A second tap counts" choices=PAUSES
                read=|c| c.tap_pause write=|c, value| c.tap_pause = value
                means="For hands that tap twice where once was meant."/>
        </section>
        <section aria-labelledby="look-settings">
            <h2 id="look-settings">"Look"</h2>
            <Setting name="theme" legend="Tones" choices=THEMES
                read=|c| c.theme write=|c, value| c.theme = value
                means="The sheet always prints black on white."/>
            <p>
                "The size of the text follows the browser: set it there, and everything here \
                grows with it. Less motion, more contrast and forced colours follow the device."
            </p>
        </section>
        <WithoutNetwork/>
    }
}

/// The two ways to work without a network.
#[component]
fn WithoutNetwork() -> impl IntoView {
    let whole = (!is_page_from_file()).then(|| {
        view! {
            <p>
                "Once it has been opened, this page opens in this browser without a network, too. \
                The browser's own menu can install it as an app."
            </p>
            <p>
                <a class="one-file" href="leverwright.html" download>"Leverwright in one file"</a>
                " opens with a double click on a computer that is not connected or where nothing \
                may be installed. Put it where you keep your plans."
            </p>
        }
    });
    let in_file = is_page_from_file().then(|| {
        view! { <p>"This is Leverwright in one file. It needs no network."</p> }
    });
    view! {
        <section aria-labelledby="network-settings">
            <h2 id="network-settings">"Without a network"</h2>
            {whole}
            {in_file}
        </section>
    }
}

const THUMBS: &[(ThumbSide, &str)] = &[(ThumbSide::Left, "Left"), (ThumbSide::Right, "Right")];

const LISTS: &[(Lists, &str)] = &[
    (Lists::BothSides, "On both sides"),
    (Lists::Left, "All on the left"),
    (Lists::Right, "All on the right"),
];

const PAUSES: &[(TapPause, &str)] = &[
    (TapPause::None, "At once"),
    (TapPause::Short, "After 0.3 seconds"),
    (TapPause::Medium, "After 0.6 seconds"),
    (TapPause::Long, "After 1 second"),
];

const THEMES: &[(Theme, &str)] = &[
    (Theme::AsDevice, "As the device"),
    (Theme::Light, "Light"),
    (Theme::Dark, "Dark"),
    (Theme::HighContrast, "High contrast"),
];

/// One setting: its choices, and what they are for.
#[component]
fn Setting<T>(
    name: &'static str,
    legend: &'static str,
    choices: &'static [(T, &'static str)],
    read: fn(&Chosen) -> T,
    write: fn(&mut Chosen, T),
    means: &'static str,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let settings = Settings::here();
    let chosen = Signal::derive(move || Some(read(&settings.get())));
    let choose = Callback::new(move |value: Option<T>| {
        if let Some(value) = value {
            settings.change(|chosen| write(chosen, value));
        }
    });
    let choices = choices
        .iter()
        .map(|(value, words)| (Some(*value), (*words).to_owned()))
        .collect();
    view! {
        <Choice legend name choices chosen choose/>
        <p class="quiet means">{means}</p>
    }
}
