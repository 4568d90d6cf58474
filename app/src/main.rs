//! Puts the app on the page.

fn main() {
    console_error_panic_hook::set_once();
    leptos::mount::mount_to_body(leverwright_app::App);
}
