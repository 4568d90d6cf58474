//! The Ride screen: roads in and out, riding, stopping, results on page and paper.

use std::fmt::Write;
use std::path::Path;
use std::sync::Arc;

use leverwright_core::document;
use leverwright_core::plan::Plan;
use leverwright_core::ride::compare::differences;
use leverwright_core::ride::in_short::in_short;
use leverwright_core::ride::page::{road_words, tables};
use leverwright_core::ride::study::{Outcome, Study, Subject};
use leverwright_core::shift_plan::ShiftPlanKind;
use leverwright_tests::browser::{Browser, Media, Paper};

use crate::desk::{
    ROAD, file, file_field, overflow, pick, right_hand_rests, start, wait_for_message,
};

/// A recorded ride, fetched by `cargo xtask setup`: example data of PyPI's sweat 0.25.0.
const RECORDED: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../.tools/rides/activity_4078723797.gpx"
);

/// A track over invented hills: a point each 20 m or so.
fn track(points: usize) -> String {
    let mut gpx = String::from("<?xml version=\"1.0\"?><gpx version=\"1.1\"><trk><trkseg>\n");
    for n in 0..points {
        let along = n as f64 * 0.0002;
        let height = 120.0 + 60.0 * (n as f64 / 90.0).sin();
        let _ = writeln!(
            gpx,
            "<trkpt lat=\"{:.6}\" lon=\"{:.6}\"><ele>{height:.1}</ele><time>2019-03-04T05:06:07Z</time></trkpt>",
            10.0 + along,
            20.0 + 0.001 * (n as f64 / 40.0).sin(),
        );
    }
    gpx + "</trkseg></trk></gpx>"
}

/// A rider who shifts with the left hand, on the Ride screen.
fn one_handed(browser: &Browser) {
    start(browser, ROAD);
    right_hand_rests(browser);
    browser.visit("#/layout");
    browser.role("button", "All shifting left").click();
    browser.visit("#/ride");
}

fn import(browser: &Browser, name: &str, content: impl AsRef<[u8]>) {
    let path = file(browser, name, content);
    file_field(browser).choose_file(&path);
}

/// The open plan as a file has it.
fn plan(browser: &Browser) -> Plan {
    browser.visit("#/plans");
    pick(browser, ROAD, "Export as a file");
    let path = browser.wait_for_download(&format!("{}.leverwright.json", "Road-drop-bar-2x12"));
    read(&path)
}

fn read(path: &Path) -> Plan {
    let bytes = std::fs::read(path).expect("the file is there");
    document::read(&bytes).expect("it opens").plan
}

fn ridden(plan: &Plan) -> Vec<Outcome> {
    let subjects = [ShiftPlanKind::Separate, ShiftPlanKind::Ladder]
        .map(|kind| Subject::under(plan, kind).expect("it goes with the bike"));
    let road = plan.rides.road();
    let mut study =
        Study::new(Arc::clone(&road), plan.rides.habits, subjects.to_vec()).expect("it rides");
    assert!(study.advance(usize::MAX));
    study.outcomes()
}

#[test]
fn one_hand_on_an_imported_road_is_compared_under_separate_and_ladder() {
    let clinic = Browser::open("clinic");
    one_handed(&clinic);
    let recorded = Path::new(RECORDED).canonicalize();
    file_field(&clinic).choose_file(&recorded.expect("`cargo xtask setup` fetches it"));
    clinic.css(".road-words").wait_for_text("Imported road");
    clinic.role("checkbox", "separate").click();
    clinic.role("checkbox", "ladder").click();
    clinic.role("button", "Ride").click();
    clinic.css(".ride-table.load").nth(0).wait_until_shown();
    let road = clinic.css(".road-words").text();
    let rows = clinic.css(".table-scroll .ride-table.load").count();
    let cells: Vec<String> = clinic.eval(
        "return [...document.querySelectorAll('.table-scroll .ride-table.load :is(td, tbody th)')].map(c => c.textContent)",
    );
    let said = clinic.css(".ride-part .differences li").texts();
    let short = clinic.css(".ride-short li").texts();
    clinic.assert_accessible();

    let plan = plan(&clinic);
    let outcomes = ridden(&plan);
    assert_eq!(road, road_words(&plan.rides.road()));
    assert_eq!(rows, tables(&outcomes).len());
    let own: Vec<String> = tables(&outcomes)
        .iter()
        .flat_map(|table| table.rows.concat())
        .collect();
    assert_eq!(cells, own);
    assert_eq!(said, differences(&outcomes[0], &outcomes[2]));
    assert_eq!(short, in_short(&outcomes));
}

/// Where hands brake more than they shift, that is what is seen first.
#[test]
fn a_long_climb_says_why_layouts_differ_little_and_counts_the_brake_pulls_first() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    home.visit("#/ride");
    let count = |words: &str| {
        let list = home.role("combobox", "Count");
        list.wait_until_shown();
        assert_eq!(
            list.script("return arguments[0].selectedOptions[0].textContent"),
            words
        );
    };
    home.role("button", "Ride").click();
    count("presses an hour");
    assert_eq!(home.css(".ride-short li").count(), 1);
    home.role("combobox", "Road to ride").focus();
    home.type_text("long climb");
    home.css(".road-words").wait_for_text("Long climb");
    home.role("button", "Ride").click();
    home.css(".ride-short")
        .wait_for_text("This road needs few presses");
    home.css(".ride-short")
        .wait_for_text("Most of what the hands do here is braking");
    count("brake pulls");
    let first = home.css(".used-list li").nth(0).text();
    assert!(first.ends_with("pulls"), "{first}");
    home.assert_accessible();
    assert!(overflow(&home) <= 0.0);
}

#[test]
fn a_stopped_ride_keeps_what_was_ridden_and_the_load_page_prints() {
    let clinic = Browser::open("clinic");
    one_handed(&clinic);
    clinic.slow_down(6.0);
    import(&clinic, "long.gpx", track(20_000));
    clinic.css(".road-words").wait_for_text("Imported road");
    clinic.role("button", "Ride").click();
    clinic.css(".ride-progress").wait_until_shown();
    clinic.role("button", "Stop").click();
    clinic
        .css(".ride-partial")
        .wait_for_text("Stopped before the end");
    clinic.slow_down(1.0);
    assert!(clinic.css(".ride-table.load").count() > 0);
    let text = clinic.print(Paper::A4).text();
    for words in [
        "Load page",
        "Stopped before the end",
        "What this is",
        "Cautions",
    ] {
        assert!(text.contains(words), "the print lacks {words:?}: {text}");
    }
    assert!(!text.contains("Print the load page"));
}

#[test]
fn broken_files_are_refused_with_the_cure() {
    let home = Browser::open("home");
    start(&home, ROAD);
    home.visit("#/ride");
    let road = home.css(".road-words").text();
    import(&home, "note.gpx", "Not a ride at all");
    wait_for_message(&home, "not a GPX file");
    import(&home, "empty.gpx", "<gpx version=\"1.1\"></gpx>");
    wait_for_message(&home, "no track and no route");
    assert_eq!(home.css(".road-words").text(), road);
    // What breaks off after its track began is ridden as far as it goes.
    let whole = track(400);
    import(&home, "torn.gpx", &whole[..whole.len() / 2]);
    home.css(".import-note").wait_for_text("breaks off");
}

#[test]
fn the_screen_keeps_within_a_narrow_window_and_looks_right() {
    let home = Browser::open("home");
    one_handed(&home);
    home.role("button", "Ride").click();
    home.role("button", "Keep with the plan").click();
    home.css(".kept-rides").wait_for_text("presses in");
    home.role("button", "This ride was fine").click();
    home.css(".ride-part > .differences")
        .wait_for_text("of the ride that was fine");
    let shots = std::env::var("RIDE_SHOTS").ok();
    for (width, dark) in [
        (1280, false),
        (1280, true),
        (390, false),
        (390, true),
        (320, false),
    ] {
        home.viewport(width, 844);
        home.media(Media {
            dark,
            ..Default::default()
        });
        assert!(overflow(&home) <= 0.0, "wider than {width} px");
        home.assert_accessible();
        if let Some(shots) = &shots {
            home.screenshot_of_page(Path::new(&format!("{shots}/ride-{width}-{dark}.png")));
        }
    }
    // Another weight, and what was kept no longer fits.
    home.viewport(1280, 844);
    home.css(".habit input").nth(0).fill("90");
    home.press("Tab");
    home.css(".kept-rides").wait_for_text("Out of date");
}

#[test]
fn on_a_telephone_the_way_to_the_ride_is_short() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    home.visit("#/ride");
    let ride = home.role("button", "Ride");
    ride.wait_until_shown();
    assert!(!home.role("spinbutton", "Rider, kg").is_shown());
    let down = ride.rect().1;
    assert!(down < 2.0 * 844.0, "Ride begins {down} px down");
    // What was answered is seen at once.
    home.css(".ride-habits > summary").click();
    home.role("spinbutton", "Rider, kg").fill("70");
    home.press("Tab");
    home.css(".status-line").wait_for_text("Done: ");
    home.visit("#/layout");
    home.visit("#/ride");
    assert!(home.role("spinbutton", "Rider, kg").is_shown());
}
