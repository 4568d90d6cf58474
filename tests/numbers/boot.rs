//! How long the page takes from being asked for to taking input.

use leverwright_tests::browser::Browser;
use leverwright_tests::number::{Number, quantile};

const LOADS: usize = 10;

fn main() {
    let browser = Browser::open("numbers");
    browser.visit("");
    let full = start_times(&browser);
    browser.slow_down(4.0);
    let slow = start_times(&browser);
    Number {
        name: "start, 4x slower processor, median",
        value: quantile(&slow, 0.5),
        unit: "ms",
        limit: None,
        against: &format!("{:.0} ms at full speed", quantile(&full, 0.5)),
    }
    .report();
}

/// From the navigation's start to the program running, in ms.
fn start_times(browser: &Browser) -> Vec<f64> {
    let load = |_: usize| -> f64 {
        browser.reload();
        browser.eval("return performance.getEntriesByName('running')[0].startTime")
    };
    (0..LOADS).map(load).collect()
}
