//! How soon findings follow a drop, and whether memory stays level over many edits.

use leverwright_tests::browser::{Browser, Element, Point};
use leverwright_tests::number::{Number, quantile};
use std::time::Duration;

const PODS: &str = "Road drop bar, 2x12, with tops pods and sprint buttons";
const DRAGS: usize = 200;

/// How much slower than this machine's processor.
const SLOWER: f64 = 4.0;

/// From a drop until it is looked at.
const REST: Duration = Duration::from_millis(200);

/// How long a pointer is over a button before it lets go there. A hand that aims takes longer than
/// that (our judgement, on the slow side for the page: a press of a button alone is reckoned at 0.1 s
/// and a decision at 1.35 s in the keystroke-level model of Card, Moran and Newell, 1980, from memory).
const AIM: Duration = Duration::from_millis(300);

/// Edits, each taken back, before memory is weighed for the first and for the last time.
const FEW: usize = 200;
const MANY: usize = 2_000;

fn main() {
    let browser = Browser::open("numbers");
    open_layout(&browser);
    drops(&browser);
    browser.slow_down(1.0);
    memory(&browser);
}

/// A cockpit with many buttons, and a hand that rests, so that each drop changes findings.
fn open_layout(browser: &Browser) {
    browser.visit("#/plans");
    browser.role("button", PODS).click();
    browser
        .role(
            "button",
            "Right hand rests on the bar and does nothing else",
        )
        .click();
    browser.visit("#/layout");
    browser.css(".face").nth(0).wait_until_shown();
}

fn face<'a>(browser: &'a Browser, button: &str) -> Element<'a> {
    browser.css(&format!("[id='slot-{button}']"))
}

/// Swaps a function between a hand that rests and one that does not, over and over.
fn drops(browser: &Browser) {
    let full = drop_times(browser, DRAGS / 10, AIM);
    let pace = browser.time_of_work();
    browser.slow_down(SLOWER);
    let slower = browser.time_of_work() / pace;
    let slow = drop_times(browser, DRAGS, AIM);
    // No hand does that: everything is worked out after the drop then.
    let hasty = drop_times(browser, DRAGS / 5, Duration::ZERO);
    let bare = bare_times(browser, DRAGS / 5);
    for (name, share, limit) in [
        ("drop to findings painted, 4x slower, median", 0.5, None),
        ("drop to findings painted, 4x slower, p95", 0.95, Some(50.0)),
    ] {
        Number {
            name,
            value: quantile(&slow, share),
            unit: "ms",
            limit,
            against: &format!(
                "{:.1} ms for one letter on a bare page and {:.1} ms without a moment over the \
                 button, likewise slowed; {:.1} ms at full speed; work that is always the same took \
                 {slower:.1} times as long",
                quantile(&bare, share),
                quantile(&hasty, share),
                quantile(&full, share),
            ),
        }
        .report();
    }
}

/// The least that this machine and browser take: a letter more on a page that has nothing else.
fn bare_times(browser: &Browser, presses: usize) -> Vec<f64> {
    browser.eval::<()>(
        "document.open();
         document.write('<p>.</p>');
         document.close();
         addEventListener('pointerup', () => {
             document.querySelector('p').textContent += '.';
         });",
    );
    browser.time_paints_after("pointerup");
    let mouse = browser.mouse();
    for press in 1..=presses {
        mouse.press(Point { x: 50.0, y: 50.0 });
        mouse.release();
        std::thread::sleep(REST);
        browser.paint_times(press);
    }
    let times = browser.paint_times(presses);
    browser.reload();
    browser.css(".face").nth(0).wait_until_shown();
    times
}

/// From the release of the mouse button until the new findings are painted, in ms.
fn drop_times(browser: &Browser, drags: usize, over: Duration) -> Vec<f64> {
    browser.reload();
    browser.css(".face").nth(0).wait_until_shown();
    let (from, to) = (
        face(browser, "2.outer-paddle"),
        face(browser, "1.hood-button"),
    );
    let (mut from, mut to) = (from.centre(), to.centre());
    browser.time_paints_after("pointerup");
    let mouse = browser.mouse();
    let mut findings = all_findings(browser);
    for drag in 1..=drags {
        mouse.press(from);
        mouse.move_to(to);
        std::thread::sleep(over);
        mouse.release();
        // Looking sooner would take time from what is measured.
        std::thread::sleep(REST);
        browser.paint_times(drag);
        let now = all_findings(browser);
        assert!(now != findings, "drop {drag} changed no finding");
        findings = now;
        std::mem::swap(&mut from, &mut to);
    }
    browser.paint_times(drags)
}

fn all_findings(browser: &Browser) -> String {
    browser.eval("return document.querySelector('.findings').textContent")
}

/// Clears a button and takes that back, over and over.
fn memory(browser: &Browser) {
    clear_and_undo(browser, FEW);
    let few = browser.heap_bytes();
    clear_and_undo(browser, MANY - FEW);
    let many = browser.heap_bytes();
    Number {
        name: "memory after 2,000 edits and undos",
        value: many / few * 100.0,
        unit: "%",
        limit: Some(120.0),
        against: &format!("{:.1} MB after 200", few / 1e6),
    }
    .report();
}

fn clear_and_undo(browser: &Browser, times: usize) {
    // In rounds, for the driver waits only so long for a script.
    const ROUND: usize = 100;
    for _ in 0..times / ROUND {
        browser.eval_later::<()>(&format!(
            "const done = arguments[arguments.length - 1];
             const settled = () => new Promise(resolve => setTimeout(resolve));
             (async () => {{
                 for (let i = 0; i < {ROUND}; i += 1) {{
                     const face = document.getElementById('slot-1.outer-paddle');
                     face.dispatchEvent(new KeyboardEvent('keydown', {{ key: 'Delete', bubbles: true }}));
                     await settled();
                     if (!face.textContent.includes('blank')) throw new Error('nothing was cleared');
                     [...document.querySelectorAll('button')].find(b => b.textContent === 'Undo').click();
                     await settled();
                     if (face.textContent.includes('blank')) throw new Error('nothing was undone');
                 }}
                 done(null);
             }})();"
        ));
    }
}
