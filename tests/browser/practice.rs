//! The Practice screen: by touch with one hand, by keys, by a controller; paused, still, kept.

use std::path::Path;
use std::thread::sleep;
use std::time::Duration;

use leverwright_tests::browser::{Browser, Media, Paper, Point};

use crate::desk::{ROAD, overflow, pick, right_hand_rests, start, wait_until_saved};

/// Where a call asks for what, once all shifting is on the left.
const EASIER: &str = "1.outer-paddle";
const HARDER: &str = "1.inner-paddle";

/// A rider who shifts and brakes with the left hand, on the Layout screen.
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
}

fn begin(browser: &Browser) {
    let begin = browser.role("button", "Start with one button");
    begin.scroll_into_view();
    begin.click();
    wait_for_call(browser, "Easier");
}

fn call(browser: &Browser) -> String {
    browser.css(".wanted-what").text()
}

pub fn wait_for_call(browser: &Browser, words: &str) {
    browser.wait_for(&format!("it calls {words:?}"), || {
        call(browser).contains(words)
    });
}

/// Waits until something is wanted again.
fn wait_for_next(browser: &Browser) {
    browser.wait_for("something is called", || !call(browser).contains("Ride on"));
}

/// The button that a call wants: the lit one, or what the words ask for.
fn wanted(browser: &Browser) -> String {
    let lit: Vec<String> = browser.eval(
        "return [...document.querySelectorAll('.practice-cockpit .button.target')].map(b => b.dataset.button)",
    );
    let call = call(browser);
    match lit.first() {
        Some(lit) => lit.clone(),
        None if call.contains("Easier") => EASIER.into(),
        None if call.contains("Harder") => HARDER.into(),
        None => panic!("nothing is lit for {call:?}"),
    }
}

/// The middle of a touch area: of its outline, for that of its box may lie on its edge.
fn hit(browser: &Browser, button: &str) -> Point {
    let at: (f64, f64) = browser.eval(&format!(
        "const area = document.querySelector('.hit[data-button=\"{button}\"]');
         const length = area.getTotalLength();
         let [x, y] = [0, 0];
         for (let n = 0; n < 60; n++) {{ const p = area.getPointAtLength(length * n / 60); x += p.x / 60; y += p.y / 60; }}
         const p = new DOMPoint(x, y).matrixTransform(area.getScreenCTM());
         return [p.x, p.y]"
    ));
    Point { x: at.0, y: at.1 }
}

fn gear(browser: &Browser) -> String {
    browser.css(".instruments dd").nth(0).text()
}

fn look(browser: &Browser, name: &str) {
    if let Ok(shots) = std::env::var("PRACTICE_SHOTS") {
        browser.screenshot(Path::new(&format!("{shots}/{name}.png")));
    }
}

/// Answers a call by finger, with the brake where it stops.
pub fn answer(browser: &Browser) {
    wait_for_next(browser);
    if call(browser).contains("brake") {
        let pad = browser.css(".pad.brake").centre();
        let finger = browser.finger();
        finger.press(pad);
        wait_for_call(browser, "Let the brake go");
        finger.release();
        return wait_for_next(browser);
    }
    let said = call(browser);
    browser.finger().tap_at(hit(browser, &wanted(browser)));
    browser.wait_for("it goes on", || {
        call(browser) != said || call(browser).contains("Ride on")
    });
}

#[test]
fn a_first_lesson_by_one_thumb_on_a_telephone() {
    let home = Browser::open_phone("home");
    one_handed(&home);
    let try_it = home.role("link", "Try it");
    assert!(try_it.centre().y > 422.0, "Try it is not near the thumb");
    home.finger().tap(&try_it);
    home.role("heading", "Practice").wait_until_shown();
    look(&home, "phone-ready");
    home.finger()
        .tap(&home.role("button", "Start with one button"));
    wait_for_call(&home, "Easier: you are climbing");
    // It waits, and says so by standing still.
    sleep(Duration::from_secs(3));
    look(&home, "phone-riding");
    let stands: String = home
        .css(".practice-road .edges")
        .attribute("d")
        .unwrap_or_default();
    sleep(Duration::from_millis(400));
    assert_eq!(
        home.css(".practice-road .edges").attribute("d"),
        Some(stands)
    );
    // Everything that is pressed lies at the thumb and is large enough.
    for selector in [
        ".hit[data-button='1.outer-paddle']",
        ".hit[data-button='1.inner-paddle']",
        ".pad.brake",
        ".pause",
    ] {
        let box_: [f64; 4] = home.eval(&format!(
            "const b = document.querySelector(\"{selector}\").getBoundingClientRect(); return [b.x, b.y, b.width, b.height]"
        ));
        assert!(
            box_[1] > 338.0 && box_[2] >= 44.0 && box_[3] >= 44.0,
            "{selector}: {box_:?}"
        );
    }
    let before = gear(&home);
    answer(&home);
    assert_ne!(gear(&home), before);
    home.css(".wanted-how").wait_for_text("Found: easier.");
    for _ in 0..9 {
        answer(&home);
    }
    // Another button came in.
    wait_for_next(&home);
    home.finger().tap(&home.role("button", "Pause"));
    home.role("heading", "Paused. The road waits.")
        .wait_until_shown();
    look(&home, "phone-paused");
    home.finger().tap(&home.role("button", "Stop"));
    home.role("heading", "How it went").wait_until_shown();
    look(&home, "phone-done");
    home.css(".facts dd").nth(0).wait_for_text(" of ");
    assert_eq!(home.css(".facts dd").nth(1).text(), "0");
    assert!(home.css(".counts").text().contains("left"));
    home.finger().tap(&home.role("button", "Keep"));
    home.css(".practice-table").wait_for_text("1");
    wait_until_saved(&home);
    let kept = home.css(".practice-table tbody").text();
    home.reload();
    assert_eq!(home.css(".practice-table tbody").text(), kept);
}

#[test]
fn keys_are_placed_like_the_hand_and_can_be_changed() {
    let home = Browser::open("home");
    one_handed(&home);
    home.visit("#/practice");
    home.css(".practice-keys summary").click();
    let keys = home.css(".key-rows .key").texts();
    assert!(
        keys.contains(&"F".to_owned()) && keys.contains(&"Space".to_owned()),
        "{keys:?}"
    );
    home.css(".key-rows li")
        .nth(1)
        .inner_css("button")
        .nth(0)
        .click();
    home.press("g");
    home.css(".key-rows").wait_for_text("G");
    look(&home, "desk-keys");
    begin(&home);
    // The stage has the focus, so keys are heard at once.
    let before = gear(&home);
    home.press("f");
    assert_eq!(gear(&home), before);
    home.press("g");
    home.css(".wanted-how").wait_for_text("Found: easier.");
    assert_ne!(gear(&home), before);
    wait_for_next(&home);
    // A wrong one is told with what it does and which one was wanted; so is it to a screen reader.
    home.press("r");
    home.css(".wanted.wrong").wait_until_shown();
    home.css(".wanted-how")
        .wait_for_text("3 left inner paddle: harder. Wanted: 2 left outer paddle.");
    home.css("p.live[role=status]")
        .wait_for_text("Wanted: 2 left outer paddle");
    look(&home, "desk-wrong");
    home.press("Escape");
    home.role("heading", "Paused. The road waits.")
        .wait_until_shown();
    assert_eq!(home.focused(), ("button".into(), "Go on".into()));
    home.press("Enter");
    wait_for_call(&home, "Easier");
    home.press("g");
    home.press("Escape");
    home.role("button", "Stop").click();
    home.css(".practice-lists")
        .wait_for_text("Wanted 2 left outer paddle, pressed 3 left inner paddle: once.");
    look(&home, "desk-done");
    home.role("button", "Confuses left inner paddle").click();
    home.role("button", "Throw away").click();
    home.role("button", "Start with one button")
        .wait_until_shown();
    home.reload();
    assert_eq!(home.css(".practice-table").count(), 0);
    // The keys stay as they were set, and so does the rider's word.
    home.css(".practice-keys summary").click();
    assert!(home.css(".key-rows .key").texts().contains(&"G".to_owned()));
    home.css("section[aria-labelledby=practice-say] summary")
        .click();
    let said = home.css("button[aria-pressed=true]").texts();
    assert!(
        said.iter().any(|text| text.contains("Confuses")),
        "{said:?}"
    );
}

#[test]
fn the_brake_is_wanted_after_the_shift_and_let_go_again() {
    let home = Browser::open("home");
    one_handed(&home);
    home.visit("#/practice");
    begin(&home);
    // The third call of the first button is the stop.
    for _ in 0..2 {
        home.press("f");
        wait_for_call(&home, "Ride on");
        wait_for_next(&home);
    }
    wait_for_call(&home, "before you stop");
    home.press("f");
    wait_for_call(&home, "Now brake");
    let pad = home.css(".pad.brake");
    let mouse = home.mouse();
    mouse.press(pad.centre());
    wait_for_call(&home, "Let the brake go");
    assert_eq!(home.css(".instruments dd").nth(2).text(), "0 km/h");
    look(&home, "desk-stopped");
    mouse.release();
    wait_for_call(&home, "Ride on");
}

#[test]
fn a_controller_button_is_learnt_by_pressing_it() {
    let home = Browser::open("home");
    home.on_every_page(
        "window.fakePad = { buttons: Array.from({ length: 8 }, () => ({ pressed: false })) };
         navigator.getGamepads = () => [null, window.fakePad];",
    );
    one_handed(&home);
    home.visit("#/practice");
    home.reload();
    let set = |button: usize, down: bool| {
        home.eval::<()>(&format!("fakePad.buttons[{button}].pressed = {down}"));
        sleep(Duration::from_millis(80));
    };
    home.css(".practice-keys summary").click();
    home.css(".key-rows li")
        .nth(1)
        .inner_css("button")
        .nth(1)
        .click();
    home.css(".key-rows")
        .wait_for_text("Press the button you want");
    set(5, true);
    home.css(".key-pad")
        .nth(1)
        .wait_for_text("controller 2, button 6");
    set(5, false);
    begin(&home);
    let before = gear(&home);
    set(3, true);
    set(3, false);
    assert_eq!(gear(&home), before);
    set(5, true);
    home.css(".wanted-how").wait_for_text("Found: easier.");
    assert_ne!(gear(&home), before);
    set(5, false);
}

#[test]
fn pictures_stand_still_where_little_motion_is_asked_for() {
    let moves = |still: bool| -> usize {
        let home = Browser::open("home");
        home.media(Media {
            reduced_motion: still,
            ..Default::default()
        });
        one_handed(&home);
        home.visit("#/practice");
        begin(&home);
        home.eval::<()>(
            "window.views = 0;
             new MutationObserver(() => { views += 1; }).observe(
                 document.querySelector('.practice-road .marks'), { attributes: true });",
        );
        home.press("f");
        sleep(Duration::from_millis(1500));
        home.eval("return views")
    };
    let (moving, still) = (moves(false), moves(true));
    assert!(still > 0 && still <= 4, "{still} pictures");
    assert!(moving > 4 * still, "{moving} pictures against {still}");
}

#[test]
fn results_are_kept_layout_by_layout_and_sent_only_when_said() {
    let home = Browser::open("home");
    one_handed(&home);
    home.role("button", "Layouts").click();
    home.role("menuitem", "Copy this layout").click();
    home.visit("#/practice");
    let layouts = home.css(".practice-how select option").texts();
    assert_eq!(layouts.len(), 2, "{layouts:?}");
    for layout in [0, 1] {
        home.eval::<()>(&format!(
            "const s = document.querySelector('.practice-how select'); s.value = '{layout}'; s.dispatchEvent(new Event('change', {{ bubbles: true }}))"
        ));
        begin(&home);
        for _ in 0..=layout {
            home.press("f");
            wait_for_call(&home, "Ride on");
            wait_for_next(&home);
        }
        home.press("Escape");
        home.role("button", "Stop").click();
        home.role("button", "Keep").click();
        home.css(".practice-table").wait_until_shown();
    }
    wait_until_saved(&home);
    home.reload();
    assert_eq!(home.css(".practice-table tbody tr").count(), 2);
    let rows = home.css(".practice-table tbody tr").texts();
    assert!(
        rows[0].contains("none counted yet") && rows[1].contains("1 of 1"),
        "{rows:?}"
    );
    let printed = home.print(Paper::A4).text();
    assert!(
        printed.contains("Right first time") && printed.contains("1 of 1"),
        "{printed}"
    );
    home.css(".practice-kept .sending button").nth(0).click();
    home.css(".practice-kept")
        .wait_for_text("goes along with links and files.");
    // The other one stays, and Share says so where all else goes along.
    assert_eq!(home.css(".practice-kept .sending button").count(), 1);
    home.visit("#/share");
    assert_eq!(home.css(".practice-stays").count(), 0);
    home.mouse().tap(&home.role("radio", "with rider details"));
    home.css(".practice-stays")
        .wait_for_text("Your practice stays here.");
    home.role("button", "Include it").click();
    home.css(".practice-stays").wait_until_gone();
    home.visit("#/practice");
    assert_eq!(home.css(".practice-kept .sending button").count(), 0);
    home.visit("#/plans");
    pick(&home, ROAD, "Export as a file");
    let file = home.wait_for_download("Road-drop-bar-2x12.leverwright.json");
    let text = std::fs::read_to_string(file).expect("the file is there");
    assert!(text.contains("\"right_first\""));
}

/// Where everything lies that is pressed: left, top, right, bottom, by its words.
fn pressed_boxes(browser: &Browser) -> Vec<(String, [f64; 4])> {
    browser.eval(
        "return [...document.querySelectorAll('.practice-pads button, .stage-acts button')]
           .filter((e) => e.checkVisibility())
           .map((e) => { const r = e.getBoundingClientRect(); return [e.innerText, [r.left, r.top, r.right, r.bottom]]; })",
    )
}

/// All of it in the window, large enough, none over another.
#[track_caller]
fn assert_pressable(browser: &Browser, (width, height): (u32, u32)) {
    let boxes = pressed_boxes(browser);
    assert!(boxes.iter().any(|(words, _)| words.contains("Pause")));
    for (at, (words, [left, top, right, bottom])) in boxes.iter().enumerate() {
        assert!(
            *left >= 0.0
                && *top >= 0.0
                && *right <= f64::from(width)
                && *bottom <= f64::from(height),
            "{words} is out of sight at {width}x{height}: {left} {top} {right} {bottom}"
        );
        assert!(
            right - left >= 44.0 && bottom - top >= 44.0,
            "{words} is small"
        );
        for (other, [l, t, r, b]) in &boxes[at + 1..] {
            let apart = right <= l || r <= left || bottom <= t || b <= top;
            assert!(apart, "{words} lies over {other} at {width}x{height}");
        }
    }
    let speed = browser.css(".instruments dd").nth(2).rect();
    assert!(speed.0 + speed.2 <= f64::from(width) - 8.0, "{speed:?}");
}

#[test]
fn everything_pressed_stays_in_view_on_every_telephone() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    for (hand, both) in [("right", true), ("left", true), ("left", false)] {
        home.viewport(390, 844);
        home.visit("#/settings");
        let thumb = home.role("radio", if hand == "left" { "Left" } else { "Right" });
        thumb.scroll_into_view();
        home.finger().tap(&thumb);
        if !both {
            one_handed(&home);
        }
        home.visit("#/practice");
        begin(&home);
        for (width, height) in [(390, 844), (320, 640), (844, 390), (667, 375)] {
            home.viewport(width, height);
            look(&home, &format!("thumb-{hand}-{both}-{width}"));
            assert_pressable(&home, (width, height));
            assert!(overflow(&home) <= 0.0, "{width}");
            let (cockpit_left, _, cockpit_width, cockpit_height) =
                home.css(".practice-cockpit .cockpit").rect();
            assert!(
                cockpit_left >= 0.0
                    && cockpit_left + cockpit_width <= f64::from(width) + 1.0
                    && cockpit_height > 60.0,
                "{width}: {cockpit_left} {cockpit_width} {cockpit_height}"
            );
            // No key is printed where there is no keyboard.
            let keys: usize = home.eval("return [...document.querySelectorAll('.stage .key')].filter((e) => e.checkVisibility()).length");
            assert_eq!(keys, 0, "{width}");
        }
        home.viewport(844, 390);
        let pause = home.role("button", "Pause");
        assert_eq!(pause.centre().x > 422.0, hand == "right");
        // The road stands beside, not above.
        let road = home.css(".stage-road").rect();
        assert!(road.1 + road.3 > 380.0 && road.2 > 200.0, "{road:?}");
        home.finger().tap(&pause);
        home.role("button", "Stop").wait_until_shown();
        look(&home, &format!("thumb-{hand}-{both}-paused"));
        home.finger().tap(&home.role("button", "Stop"));
    }
}

#[test]
fn a_mark_looks_chosen_moves_nothing_and_is_taken_back() {
    let home = Browser::open_phone("home");
    one_handed(&home);
    home.visit("#/practice");
    begin(&home);
    answer(&home);
    home.finger().tap(&home.role("button", "Pause"));
    home.finger().tap(&home.role("button", "Stop"));
    let mark = home.role("button", "Confuses left inner paddle");
    mark.scroll_into_view();
    let (left, _, width, height) = mark.rect();
    let rest = mark.style("background-color");
    home.finger().tap(&mark);
    home.wait_for("it is marked", || {
        mark.attribute("aria-pressed").as_deref() == Some("true")
    });
    assert_ne!(mark.style("background-color"), rest);
    let now = mark.rect();
    assert_eq!((now.0, now.2, now.3), (left, width, height));
    home.css(".status-line")
        .wait_for_text("Marked. Confuses: left inner paddle.");
    home.finger().tap(&home.role("button", "Take it back"));
    home.wait_for("it is as before", || {
        mark.attribute("aria-pressed").as_deref() == Some("false")
    });
    home.css(".status-line").wait_for_text("Taken back.");
    // Keeping leaves the list where it was read.
    home.finger().tap(&home.role("button", "Keep"));
    home.css(".practice-table").wait_until_shown();
    assert!(home.role("button", "Confuses left inner paddle").is_shown());
}

#[test]
fn a_stop_is_offered_after_three_minutes() {
    let home = Browser::open("home");
    // A clock that runs fast: each frame is a quarter of a second.
    home.on_every_page(
        "const clock = performance.now.bind(performance); performance.now = () => clock() * 20;",
    );
    one_handed(&home);
    home.visit("#/practice");
    home.reload();
    begin(&home);
    // A busy machine draws few frames.
    for _ in 0..900 {
        if home.css(".stage-pause").count() > 0 {
            break;
        }
        sleep(Duration::from_millis(100));
    }
    home.role("heading", "3 minutes. Stop here, or go on.")
        .wait_until_shown();
    home.role("button", "Go on").click();
    wait_for_call(&home, "Easier");
    sleep(Duration::from_secs(1));
    assert_eq!(home.css(".stage-pause").count(), 0);
}

#[test]
fn it_keeps_within_narrow_windows_and_reads_well() {
    let home = Browser::open("home");
    one_handed(&home);
    home.visit("#/practice");
    let check = |part: &str| {
        for (width, height, dark) in [(1280, 800, false), (390, 844, true), (320, 640, false)] {
            home.viewport(width, height);
            home.media(Media {
                dark,
                ..Default::default()
            });
            assert!(overflow(&home) <= 0.0, "{part} is wider than {width} px");
            home.assert_accessible();
            look(&home, &format!("{part}-{width}"));
        }
        home.viewport(1280, 800);
        home.media(Media::default());
    };
    home.css(".practice-keys summary").click();
    home.css("section[aria-labelledby=practice-say] summary")
        .click();
    check("ready");
    begin(&home);
    check("riding");
    home.press("f");
    home.press("Escape");
    check("paused");
    home.role("button", "Stop").click();
    check("done");
    home.role("button", "Keep").click();
    check("kept");
    home.media(Media {
        forced_colors: true,
        ..Default::default()
    });
    begin(&home);
    look(&home, "forced");
    // Twice the text on a telephone: everything is still there to be pressed.
    home.media(Media::default());
    home.text_size(200);
    home.viewport(390, 844);
    home.reload();
    assert!(
        overflow(&home) <= 0.0,
        "wider than the window with large text"
    );
    begin(&home);
    look(&home, "large-text");
    assert!(
        overflow(&home) <= 0.0,
        "wider than the window with large text"
    );
    let pause = home.css(".pause");
    assert!(
        pause.centre().y < 844.0,
        "Pause is out of sight with large text"
    );
    pause.click();
    home.role("button", "Go on").wait_until_shown();
}
