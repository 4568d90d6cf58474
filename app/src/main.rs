//! Puts the app on the page.

fn main() {
    leverwright_app::tell_on_panic();
    leptos::mount::mount_to_body(leverwright_app::App);
}
