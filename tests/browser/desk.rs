//! What several walk-throughs do: start a plan, wait until it is saved, look into the store.

use leverwright_tests::browser::{Browser, Element};
use serde_json::json;
use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;
use tempfile::TempDir;
use xtask::server::Server;
use xtask::tools;

/// A template by its words.
pub const ROAD: &str = "Road drop bar, 2x12";
/// Another.
pub const GRAVEL: &str = "Gravel drop bar, 1x12";

/// The button of a template.
pub fn template<'a>(browser: &'a Browser, words: &str) -> Element<'a> {
    browser.css(".new-plan").inner_role("button", words)
}

/// Says with one tap that the right hand rests and does nothing else.
#[track_caller]
pub fn right_hand_rests(browser: &Browser) {
    browser.visit("#/rider");
    let rests = browser.role(
        "button",
        "Right hand rests on the bar and does nothing else",
    );
    // The driver's own scrolling knows nothing of the bar at a telephone's lower edge.
    rests.scroll_into_view();
    rests.click();
}

/// Starts a plan from a template by a click, and waits until it is saved.
#[track_caller]
pub fn start(browser: &Browser, words: &str) {
    browser.visit("#/plans");
    template(browser, words).click();
    browser.role("heading", "Rider").wait_until_shown();
    wait_until_saved(browser);
}

/// Waits until the open plan is saved. What the page says of that may be a frame old.
#[track_caller]
pub fn wait_until_saved(browser: &Browser) {
    wait_for_a_frame(browser);
    browser.css(".kept").wait_for_text("Saved in this browser");
}

/// Waits until what was changed is painted, and what follows a frame behind, too.
#[track_caller]
pub fn wait_for_a_frame(browser: &Browser) {
    browser.eval_later::<()>(
        "const done = arguments[arguments.length - 1];
         const soon = (next) => requestAnimationFrame(() => setTimeout(next));
         soon(() => soon(() => done(null)));",
    );
}

/// Presses one item of the menu beside a plan of the list.
#[track_caller]
pub fn pick(browser: &Browser, plan: &str, item: &str) {
    browser.role("button", &format!("More {plan}")).click();
    browser.role("menuitem", item).click();
}

/// The names of the plans in the list.
#[track_caller]
pub fn names(browser: &Browser) -> Vec<String> {
    browser.css(".plan-card .plan-name").texts()
}

/// Waits until the list has exactly these plans, whatever their order.
#[track_caller]
pub fn wait_for_names(browser: &Browser, wanted: &[&str]) {
    let mut wanted: Vec<&str> = wanted.to_vec();
    wanted.sort_unstable();
    browser.wait_for(&format!("the plans are {wanted:?}"), || {
        let mut shown = names(browser);
        shown.sort_unstable();
        shown == wanted
    });
}

/// The message that contains these words.
#[track_caller]
pub fn wait_for_message(browser: &Browser, words: &str) {
    browser.wait_for(&format!("a message says {words:?}"), || {
        browser
            .css(".notices li p")
            .texts()
            .iter()
            .any(|text| text.contains(words))
    });
}

/// Everything in the browser's store.
#[track_caller]
pub fn stored(browser: &Browser) -> BTreeMap<String, String> {
    browser.eval("return Object.fromEntries(Object.entries(localStorage))")
}

/// The keys under which copies of plans lie.
#[track_caller]
pub fn copies(browser: &Browser) -> Vec<String> {
    let ours = |key: &String| key.starts_with("leverwright/plan/");
    stored(browser).into_keys().filter(ours).collect()
}

/// Puts something into the store behind the program's back.
#[track_caller]
pub fn put(browser: &Browser, key: &str, value: &str) {
    browser.eval_with::<()>(
        "localStorage.setItem(arguments[0], arguments[1])",
        vec![json!(key), json!(value)],
    );
}

/// A file with this content, in the browser's own folder.
#[track_caller]
pub fn file(browser: &Browser, name: &str, content: impl AsRef<[u8]>) -> PathBuf {
    let path = browser.downloads().join(name);
    std::fs::write(&path, content).expect("a file can be written");
    path
}

/// The field that files are given to.
pub fn file_field(browser: &Browser) -> Element<'_> {
    browser.css("input[type=file]")
}

/// Opens a file, which leads on to its layout, and goes back to the list of plans.
#[track_caller]
pub fn open_file(browser: &Browser, path: &std::path::Path) {
    file_field(browser).choose_file(path);
    browser.role("heading", "Layout").wait_until_shown();
    browser.visit("#/plans");
}

/// How far the page is wider than the window, in CSS pixels.
#[track_caller]
pub fn overflow(browser: &Browser) -> f64 {
    browser
        .eval("return document.documentElement.scrollWidth - document.documentElement.clientWidth")
}

/// A copy of the build that a test may change.
pub fn copy_of_build() -> TempDir {
    let folder = TempDir::new().expect("a folder for a copy of the build");
    for entry in fs::read_dir(tools::dist()).expect("the build") {
        let file = entry.expect("a file of the build").path();
        let name = file.file_name().expect("files have names");
        fs::copy(&file, folder.path().join(name)).expect("room for a copy");
    }
    folder
}

/// Serves it, for as long as what is returned lives.
pub fn serve(folder: &TempDir) -> Server {
    Server::start(folder.path().to_owned(), 0).expect("a free port")
}
