//! How long the page takes from being asked for to taking input.

use leverwright_tests::browser::Browser;
use leverwright_tests::number::{Number, quantile};

const LOADS: usize = 10;

/// How much slower than this machine's processor.
const SLOWER: f64 = 4.0;

fn main() {
    let browser = Browser::open("numbers");
    browser.visit("");
    let full_start = quantile(&start_times(&browser), 0.5);
    let full_work = work_time(&browser);
    browser.slow_down(SLOWER);
    let slow_start = quantile(&start_times(&browser), 0.5);
    let slow_work = work_time(&browser);

    Number {
        name: "start, 4x slower processor, median",
        value: slow_start,
        unit: "ms",
        limit: None,
        against: &format!("{full_start:.0} ms at full speed"),
    }
    .report();
    // Tells how far to trust the numbers that are taken on a slowed processor.
    Number {
        name: "how much slower the slowed processor was",
        value: slow_work / full_work,
        unit: "times",
        limit: None,
        against: &format!("{SLOWER:.0} times asked for"),
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

/// The least time of several for the same work, in ms: other programs can only add to it.
fn work_time(browser: &Browser) -> f64 {
    let work = "const start = performance.now();
        let sum = 0;
        for (let i = 0; i < 1e7; i += 1) sum += Math.sqrt(i);
        return sum > 0 ? performance.now() - start : 0";
    let times = (0..5).map(|_| browser.eval::<f64>(work));
    times.fold(f64::INFINITY, f64::min)
}
