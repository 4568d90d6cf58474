//! What every printed leaf says at its foot.

use leptos::ev;
use leptos::prelude::*;
use leverwright_core::sheet::TitleBlock;

/// The custom properties that the page's margin boxes print (see print.css).
const WHAT: &str = "--sheet-what";
const WHICH: &str = "--sheet-which";
/// How many leaves there are: not said where some are to be kept apart, or the
/// others would seem to lack them.
const OF: &str = "--sheet-of";

/// What a printed paper is about, and whether all its leaves stay together.
#[derive(Debug, Clone, PartialEq)]
pub struct Foot {
    /// What each leaf repeats.
    pub title: TitleBlock,
    /// Whether some leaves are to be kept apart.
    pub parts: bool,
}

/// Keeps the foot of the printed leaves until the screen is left. While
/// printing, the title of the document says the same: browsers without margin
/// boxes print that, and a PDF is named after it.
pub fn follow(foot: Memo<Option<Foot>>) {
    Effect::new(move |_| {
        if let Some(foot) = foot.get() {
            set(WHAT, &foot.title.running_head());
            set(WHICH, &which(&foot.title));
            match foot.parts {
                true => set(OF, ""),
                false => forget(OF),
            }
        }
    });
    let title = StoredValue::new(None::<String>);
    let before = window_event_listener(ev::beforeprint, move |_| {
        if let Some(foot) = foot.get_untracked() {
            title.set_value(Some(document().title()));
            document().set_title(&foot.title.running_head());
        }
    });
    let after = window_event_listener(ev::afterprint, move |_| {
        if let Some(title) = title.get_value() {
            document().set_title(&title);
        }
    });
    on_cleanup(move || {
        before.remove();
        after.remove();
        for name in [WHAT, WHICH, OF] {
            forget(name);
        }
    });
}

/// What is known of bike, job, date and rider, to follow the running head.
fn which(title: &TitleBlock) -> String {
    title
        .running_fields()
        .map(|field| format!(" · {field}"))
        .collect()
}

fn set(name: &str, text: &str) {
    // A browser that keeps no custom properties prints the title instead.
    let _ = style().map(|style| style.set_property(name, &css_string(text)));
}

fn forget(name: &str) {
    let _ = style().map(|style| style.remove_property(name));
}

fn style() -> Option<web_sys::CssStyleDeclaration> {
    use wasm_bindgen::JsCast;
    let root = document().document_element()?;
    Some(root.dyn_into::<web_sys::HtmlElement>().ok()?.style())
}

/// Text as a CSS string.
fn css_string(text: &str) -> String {
    let escaped = text.replace('\\', "\\\\").replace('"', "\\\"");
    format!("\"{}\"", escaped.replace(['\n', '\r'], " "))
}
