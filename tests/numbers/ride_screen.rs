//! How long a road and a ride of it take in the browser, and whether the page answers meanwhile.

use std::fmt::Write;

use leverwright_core::Vocabulary;
use leverwright_core::ride::habits::Conditions;
use leverwright_core::rider::Day;
use leverwright_tests::browser::Browser;
use leverwright_tests::number::Number;

/// Rides of one study of one layout.
const RIDES: usize = Day::ALL.len() * Conditions::SPREAD.len();

/// Points of the largest track.
const MANY: usize = 200_000;

/// Points 20 m apart that make 100 km.
const HUNDRED_KM: usize = 5_001;

fn main() {
    let browser = Browser::open("numbers");
    browser.visit("#/plans");
    browser.role("button", "Road drop bar, 2x12").click();
    browser.visit("#/ride");
    watch(&browser);
    let read = import(&browser, MANY, 2.0);
    Number {
        name: "GPX of 200,000 points read and cleaned in the browser",
        value: read,
        unit: "ms",
        limit: Some(2_000.0),
        against: &longest(&browser),
    }
    .report();
    import(&browser, HUNDRED_KM, 20.0);
    longest(&browser);
    let ridden = time(
        &browser,
        "[...document.querySelectorAll('button.main')].find((b) => b.textContent === 'Ride').click()",
        "!document.querySelector('.ride-progress') && document.querySelector('.ride-table')",
    );
    Number {
        name: "100 km ride in the browser",
        value: ridden / RIDES as f64,
        unit: "ms",
        limit: Some(300.0),
        against: &format!(
            "{ridden:.0} ms for a study of {RIDES} rides with its pictures; {}",
            longest(&browser)
        ),
    }
    .report();
}

/// Notes whatever keeps the page from answering for more than 50 ms.
fn watch(browser: &Browser) {
    browser.eval::<()>(
        "window.longest = 0;
         new PerformanceObserver((list) => {
             for (const task of list.getEntries()) window.longest = Math.max(window.longest, task.duration);
         }).observe({ type: 'longtask' });",
    );
}

/// The longest time without an answer since the last look.
fn longest(browser: &Browser) -> String {
    let longest: f64 = browser.eval("const l = window.longest; window.longest = 0; return l");
    match longest {
        0.0 => "never blocked for 50 ms".to_owned(),
        longest => format!("blocked for {longest:.0} ms at most"),
    }
}

/// Chooses a track of points so far apart, in m; how long it takes to read, in ms.
fn import(browser: &Browser, points: usize, apart: f64) -> f64 {
    let file = tempfile::NamedTempFile::with_suffix(".gpx").expect("a place for a file");
    std::fs::write(file.path(), track(points, apart)).expect("room for a file");
    browser.eval::<()>(
        "const field = document.querySelector('.import-road input');
         window.came = new Promise((done) => field.addEventListener('change', () => {
             const begun = performance.now();
             const look = () => document.querySelector('.road-words').textContent.startsWith('Imported')
                     && !document.querySelector('.import-progress').textContent
                 ? done(performance.now() - begun) : setTimeout(look, 5);
             setTimeout(look, 20);
         }, { once: true }))",
    );
    browser.css(".import-road input").choose_file(file.path());
    browser.eval_later("window.came.then(arguments[arguments.length - 1])")
}

/// From an act until something holds, in ms.
fn time(browser: &Browser, act: &str, holds: &str) -> f64 {
    browser.eval_later(&format!(
        "const done = arguments[arguments.length - 1];
         const begun = performance.now();
         {act};
         const look = () => {holds} ? done(performance.now() - begun) : setTimeout(look, 5);
         setTimeout(look, 20);"
    ))
}

/// A track over invented hills.
fn track(points: usize, apart: f64) -> String {
    // A degree of latitude is about 111 km.
    let step = apart / 111_195.0;
    let mut gpx = String::from("<?xml version=\"1.0\"?><gpx version=\"1.1\"><trk><trkseg>\n");
    for n in 0..points {
        let along = n as f64;
        let height = 120.0 + 60.0 * (along * apart / 1_800.0).sin();
        let (north, east) = (
            10.0 + along * step,
            20.0 + 0.001 * (along * apart / 800.0).sin(),
        );
        let _ = writeln!(
            gpx,
            "<trkpt lat=\"{north:.6}\" lon=\"{east:.6}\"><ele>{height:.1}</ele></trkpt>"
        );
    }
    gpx + "</trkseg></trk></gpx>"
}
