//! What every printed leaf says at its foot.

use leptos::prelude::*;
use leverwright_core::plan::Plan;
use leverwright_core::sheet::{Sheet, TitleBlock};
use std::sync::Arc;

/// The custom properties that the page's margin boxes print (see print.css).
const WHAT: &str = "--sheet-what";
const WHICH: &str = "--sheet-which";

/// Keeps the foot of the printed leaves, and the title that browsers print
/// where they have no margin boxes, as the sheet has them; takes them back when
/// the screen is left.
pub fn follow(sheet: Memo<Option<(Arc<Plan>, Arc<Sheet>)>>) {
    let before = document().title();
    Effect::new(move |_| {
        if let Some((_, sheet)) = sheet.get() {
            let title = &sheet.title;
            document().set_title(&title.running_head());
            set(WHAT, &title.running_head());
            set(WHICH, &which(title));
        }
    });
    on_cleanup(move || {
        document().set_title(&before);
        for name in [WHAT, WHICH] {
            let _ = style().map(|style| style.remove_property(name));
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
