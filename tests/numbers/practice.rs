//! How long a frame takes while the road comes.

use leverwright_tests::browser::Browser;
use leverwright_tests::number::{Number, quantile};
use std::time::Duration;

const ROAD: &str = "Road drop bar, 2x12";

/// How much slower than this machine's processor.
const SLOWER: f64 = 4.0;

/// How many frames are looked at.
const FRAMES: usize = 600;

/// Times each frame from the start of its callback until it is painted: a message posted in the
/// callback arrives after that.
const WATCH: &str = "
    window.frameTimes = [];
    window.frameStarts = [];
    const frame = window.requestAnimationFrame.bind(window);
    window.requestAnimationFrame = (act) => frame((time) => {
        const start = performance.now();
        act(time);
        const painted = new MessageChannel();
        painted.port1.onmessage = () => {
            frameTimes.push(performance.now() - start);
            frameStarts.push(start);
        };
        painted.port2.postMessage(null);
    });";

fn main() {
    let browser = Browser::open("numbers");
    browser.on_every_page(WATCH);
    browser.visit("#/plans");
    browser.role("button", ROAD).click();
    browser.role("heading", "Rider").wait_until_shown();
    browser.visit("#/practice");
    browser.reload();
    let full = frames(&browser);
    browser.slow_down(SLOWER);
    let slow = frames(&browser);
    let gaps = gaps(&browser);
    Number {
        name: "practice frame, 4x slower, p95",
        value: quantile(&slow, 0.95),
        unit: "ms",
        limit: Some(16.7),
        against: &format!(
            "{:.1} ms at full speed; {:.1} ms from frame to frame, median",
            quantile(&full, 0.95),
            quantile(&gaps, 0.5)
        ),
    }
    .report();
}

/// Rides as on the road, pressing as it goes, and gives the frame times in ms.
fn frames(browser: &Browser) -> Vec<f64> {
    browser.reload();
    browser.css(".segment input").nth(3).click();
    browser.role("button", "Start with one button").click();
    browser.css(".wanted-what").wait_until_shown();
    browser.eval::<()>("frameTimes.length = 0; frameStarts.length = 0");
    while browser.eval::<usize>("return frameTimes.length") < FRAMES {
        // The right outer paddle, or the brake where it stops.
        let call = browser.css(".wanted-what").text();
        if call.contains("brake") {
            let mouse = browser.mouse();
            mouse.press(browser.css(".pad.brake").centre());
            std::thread::sleep(Duration::from_millis(400));
            mouse.release();
        } else {
            browser.press("j");
        }
        std::thread::sleep(Duration::from_millis(300));
    }
    let times = browser.eval("return frameTimes");
    let moved: bool = browser.eval(
        "return document.querySelector('.practice-road .marks').getAttribute('d').length > 100",
    );
    assert!(moved, "no road is drawn");
    times
}

/// From one frame to the next, in ms.
fn gaps(browser: &Browser) -> Vec<f64> {
    let starts: Vec<f64> = browser.eval("return frameStarts");
    starts.windows(2).map(|two| two[1] - two[0]).collect()
}
