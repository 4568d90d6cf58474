//! How soon the pictures follow a change of the gears.

use leverwright_tests::browser::Browser;
use leverwright_tests::number::{Number, quantile};
use std::time::Duration;

const EDITS: usize = 100;

/// How much slower than this machine's processor.
const SLOWER: f64 = 4.0;

/// From an edit until it is looked at.
const REST: Duration = Duration::from_millis(300);

fn main() {
    let browser = Browser::open("numbers");
    browser.visit("#/plans");
    browser.role("button", "Road drop bar, 2x12").click();
    browser.visit("#/layout");
    browser.role("combobox", "Shift plan").wait_until_shown();
    browser.eval::<()>(
        "const plan = [...document.querySelectorAll('.field')].find((f) => f.textContent.startsWith('Shift plan')).querySelector('select');
         plan.value = [...plan.options].findIndex((o) => o.textContent === 'ladder');
         plan.dispatchEvent(new Event('change', { bubbles: true }))",
    );
    browser.visit("#/gears");
    browser.css(".crossover .handle").nth(1).wait_until_shown();
    let full = edit_times(&browser, EDITS / 5);
    browser.slow_down(SLOWER);
    let slow = edit_times(&browser, EDITS);
    let at_full_speed = format!("{:.1} ms at full speed", quantile(&full, 0.5));
    for (name, share, limit) in [
        (
            "gear edit to pictures painted, 4x slower, median",
            0.5,
            None,
        ),
        (
            "gear edit to pictures painted, 4x slower, p95",
            0.95,
            Some(50.0),
        ),
    ] {
        Number {
            name,
            value: quantile(&slow, share),
            unit: "ms",
            limit,
            against: &at_full_speed,
        }
        .report();
    }
}

/// From a key until the moved crossover, its words and the findings are
/// painted, in ms.
fn edit_times(browser: &Browser, edits: usize) -> Vec<f64> {
    browser.reload();
    browser.css(".crossover .handle").nth(0).wait_until_shown();
    browser.css(".crossover .handle").nth(0).focus();
    browser.time_paints_after("keydown");
    let mut words = browser.css(".crossover-words").nth(0).text();
    for edit in 1..=edits {
        browser.press(if edit % 2 == 1 {
            "ArrowRight"
        } else {
            "ArrowLeft"
        });
        // Looking sooner would take time from what is measured.
        std::thread::sleep(REST);
        browser.paint_times(edit);
        let now = browser.css(".crossover-words").nth(0).text();
        assert!(now != words, "edit {edit} moved no crossover");
        words = now;
    }
    browser.paint_times(edits)
}
