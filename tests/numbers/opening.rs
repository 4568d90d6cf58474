//! How long a shared link takes from being followed to taking input, beside the app opened empty.

use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{DemoId, demo};
use leverwright_core::share::{Along, content, link};
use leverwright_tests::browser::Browser;
use leverwright_tests::number::{Number, quantile};

const LOADS: usize = 12;

/// Notes when the first frame is due in which the screen has a button.
const WATCH: &str = "window.interactive = 0;
    const look = () => {
        const ready = document.documentElement?.dataset.ready === '1';
        if (ready && document.querySelector('main button')) interactive = performance.now();
        else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);";

fn main() {
    let browser = Browser::open("numbers");
    browser.on_every_page(WATCH);
    let links = DemoId::ALL.iter().map(|id| {
        let sent = content(&demo(*id).plan, Along::WithRider);
        link("", &sent).expect("a demo fits into a link")
    });
    let largest = links.max_by_key(String::len).expect("there are demos");
    // The first load fetches everything.
    load(&browser, "", 0);
    let (mut empty, mut shared) = (Vec::new(), Vec::new());
    for n in 0..LOADS {
        empty.push(load(&browser, "", 2 * n + 1));
        shared.push(load(&browser, &largest, 2 * n + 2));
    }
    let [empty, shared] = [empty, shared].map(|times| quantile(&times, 0.5));
    Number {
        name: "link of the largest demo plan opened to interactive, against the app opened empty",
        value: shared / empty,
        unit: "times",
        limit: Some(1.5),
        against: &format!(
            "medians of {shared:.0} and {empty:.0} ms; a link of {} characters",
            largest.len()
        ),
    }
    .report();
}

/// From the navigation's start to the first button, in ms. The number makes each load one of the
/// whole page.
fn load(browser: &Browser, fragment: &str, number: usize) -> f64 {
    browser.visit(&format!("?{number}{fragment}"));
    browser.wait_for("the screen takes input", || {
        browser.eval::<f64>("return window.interactive") > 0.0
    });
    browser.eval("return window.interactive")
}
