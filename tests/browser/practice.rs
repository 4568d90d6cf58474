//! The Practice screen: by touch with one hand, by keys, by a controller; paused, still, kept.

use std::path::Path;

use leverwright_tests::browser::{Browser, Media};

use crate::desk::{ROAD, overflow, right_hand_rests, start};

/// A rider who shifts and brakes with the left hand, on the Practice screen.
fn one_handed(browser: &Browser) {
    start(browser, ROAD);
    right_hand_rests(browser);
    browser.visit("#/layout");
    let unfold = browser.css(".unfold");
    if unfold.is_shown() {
        unfold.click();
    }
    browser.role("button", "All shifting left").click();
    browser.role("button", "All brakes on left lever").click();
    browser.visit("#/practice");
}

fn begin(browser: &Browser) {
    browser.role("button", "Start with one button").click();
    browser.css(".wanted-what").wait_until_shown();
}

fn look(browser: &Browser, name: &str) {
    if let Ok(shots) = std::env::var("PRACTICE_SHOTS") {
        browser.screenshot(Path::new(&format!("{shots}/{name}.png")));
    }
}

#[test]
fn looks() {
    let home = Browser::open_phone("home");
    one_handed(&home);
    look(&home, "phone-ready");
    begin(&home);
    std::thread::sleep(std::time::Duration::from_secs(3));
    look(&home, "phone-riding");
    home.media(Media {
        dark: true,
        ..Default::default()
    });
    look(&home, "phone-riding-dark");
    let desk = Browser::open("desk");
    one_handed(&desk);
    look(&desk, "desk-ready");
    begin(&desk);
    std::thread::sleep(std::time::Duration::from_secs(3));
    look(&desk, "desk-riding");
    desk.press("f");
    desk.press("Escape");
    look(&desk, "desk-paused");
    assert!(overflow(&desk) <= 0.0);
    desk.role("button", "Stop").click();
    look(&desk, "desk-done");
    let both = Browser::open_phone("both");
    start(&both, ROAD);
    both.visit("#/practice");
    begin(&both);
    std::thread::sleep(std::time::Duration::from_secs(3));
    look(&both, "phone-both");
}
