//! Puts the app on the page.

fn main() {
    leverwright_app::tell_on_panic();
    leverwright_app::start();
}
