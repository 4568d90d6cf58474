//! Hands a text to the person as a file.

use leptos::prelude::document;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

/// Downloads a text as a file of this name. It is made in the browser: nothing
/// leaves the device.
///
/// # Errors
/// When the browser does not make the file.
pub fn download(name: &str, kind: &str, text: &str) -> Result<(), JsValue> {
    let parts = js_sys::Array::of1(&text.into());
    let properties = BlobPropertyBag::new();
    properties.set_type(kind);
    let blob = Blob::new_with_str_sequence_and_options(&parts, &properties)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    // The browser has taken the address by now or keeps the data until it has.
    Url::revoke_object_url(&address)
}
