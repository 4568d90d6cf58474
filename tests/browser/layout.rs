//! The Layout screen: functions are put on buttons by mouse, finger, clicks, menu and keyboard
//! alone; findings follow; the screen stays usable small, enlarged, in dark and in forced colours.

use crate::desk::{start, wait_for_a_frame};
use leverwright_tests::browser::{Browser, Element, Media, Point};

const PODS: &str = "Road drop bar, 2x12, with tops pods and sprint buttons";
const GRAVEL: &str = "Gravel drop bar, 1x12";

/// Buttons of [`PODS`]: left lever 1, right lever 2, left tops pod 3, right sprint button 6.
const LEFT_HOOD: &str = "1.hood-button";
const LEFT_OUTER: &str = "1.outer-paddle";
const LEFT_INNER: &str = "1.inner-paddle";
const LEFT_POD: &str = "3.near";
const RIGHT_OUTER: &str = "2.outer-paddle";
const RIGHT_SPRINT: &str = "6.single";

const SPRINT_IS_FIXED: &str = "The right sprint button is fixed to “rear harder”";

/// Starts a plan from a template and goes to its layout.
fn open_layout(browser: &Browser, template: &str) {
    start(browser, template);
    browser.visit("#/layout");
    browser.css(".face").nth(0).wait_until_shown();
}

fn face<'a>(browser: &'a Browser, button: &str) -> Element<'a> {
    browser.css(&format!("[id='slot-{button}']"))
}

/// A button as it is drawn.
fn drawn<'a>(browser: &'a Browser, button: &str) -> Element<'a> {
    browser.css(&format!(".drawn .hit[data-button='{button}']"))
}

fn item<'a>(browser: &'a Browser, function: &str) -> Element<'a> {
    browser.css(&format!("[id='tray-function:{function}']"))
}

fn does(browser: &Browser, button: &str, words: &str) {
    face(browser, button).inner_css(".now").wait_for_text(words);
}

fn menu_of<'a>(browser: &'a Browser, button: &str) -> Element<'a> {
    browser.css(&format!(".slot[data-button='{button}'] .to-menu"))
}

fn heard(browser: &Browser, words: &str) {
    browser.css("[role=status]").wait_for_text(words);
}

fn undo_is_possible(browser: &Browser) -> bool {
    let undo = browser.role("button", "Undo");
    undo.attribute("aria-disabled").as_deref() == Some("false")
}

/// What undo would take back.
fn last_act_of(browser: &Browser) -> String {
    browser.eval("return document.getElementById('undo-label').textContent")
}

fn rest_right_hand(browser: &Browser) {
    browser.visit("#/rider");
    browser
        .role(
            "button",
            "Right hand rests on the bar and does nothing else",
        )
        .click();
    browser.visit("#/layout");
    browser.css(".face").nth(0).wait_until_shown();
}

/// Text of every finding of a severity.
fn findings(browser: &Browser, severity: &str) -> Vec<String> {
    let all = browser.css(".finding .says").texts();
    let mut of_it = all;
    of_it.retain(|text| text.to_lowercase().starts_with(severity));
    of_it
}

#[test]
fn a_mouse_drags_puts_swaps_and_clears() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    let mouse = shop.mouse();

    mouse.drag(&item(&shop, "rear-easier"), &face(&shop, LEFT_HOOD));
    does(&shop, LEFT_HOOD, "rear easier");
    heard(&shop, "Rear easier on the left hood button. Findings:");

    // One drop is one step back.
    shop.role("button", "Undo").click();
    does(&shop, LEFT_HOOD, "left blank");
    assert!(!undo_is_possible(&shop));
    shop.role("button", "Redo").click();
    does(&shop, LEFT_HOOD, "rear easier");

    // The drawn button takes it as well as its slot.
    mouse.drag(&item(&shop, "lights"), &drawn(&shop, LEFT_POD));
    does(&shop, LEFT_POD, "lights");

    mouse.drag(&face(&shop, LEFT_OUTER), &face(&shop, LEFT_INNER));
    does(&shop, LEFT_OUTER, "front smaller");
    does(&shop, LEFT_INNER, "front larger");

    mouse.drag(&drawn(&shop, RIGHT_OUTER), &drawn(&shop, LEFT_OUTER));
    does(&shop, LEFT_OUTER, "rear easier");
    does(&shop, RIGHT_OUTER, "front smaller");

    // Nothing that moves slowly holds up what a drop brings.
    let slot = shop.css(&format!(".slot[data-button='{LEFT_OUTER}']"));
    assert_eq!(slot.style("transition-duration"), "0s");

    mouse.drag(&face(&shop, LEFT_OUTER), &shop.css(".tray h2"));
    does(&shop, LEFT_OUTER, "left blank");
    mouse.drag(&face(&shop, LEFT_INNER), &shop.css("#findings"));
    does(&shop, LEFT_INNER, "left blank");
    heard(&shop, "Leave the left inner paddle blank.");
}

/// What the findings are called, and all that they say.
fn all_findings(browser: &Browser) -> (String, Vec<String>) {
    (
        browser.css("#findings").text(),
        browser.css(".finding .says").texts(),
    )
}

#[test]
fn what_a_drop_would_come_to_is_seen_before_it() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    rest_right_hand(&shop);
    let as_it_stands = all_findings(&shop);
    assert!(as_it_stands.0.starts_with("Findings:"), "{as_it_stands:?}");
    let last_act = last_act_of(&shop);
    let mouse = shop.mouse();
    let heading = shop.css("#findings");

    // The right hand rests: on the left a button does more.
    mouse.press(face(&shop, RIGHT_OUTER).centre());
    mouse.move_to(face(&shop, LEFT_HOOD).centre());
    heading.wait_for_text("If let go here:");
    let foreseen = all_findings(&shop);
    assert_ne!(foreseen.1, as_it_stands.1);
    let tally = foreseen.0.trim_start_matches("If let go here:").trim();
    shop.css(".ghost")
        .wait_for_text(&format!("to the left hood button: {tally}"));
    // So do both buttons, marked so; nothing is changed by that.
    does(&shop, LEFT_HOOD, "rear easier");
    does(&shop, RIGHT_OUTER, "left blank");
    let marked = shop.css(".slot.foreseen .now").texts();
    assert_eq!(marked, ["rear easier", "left blank"]);
    assert_eq!(last_act_of(&shop), last_act);

    // Elsewhere all is as it was.
    let (left, top, ..) = shop.css(".drawn").rect();
    mouse.move_to(Point {
        x: left + 2.0,
        y: top + 2.0,
    });
    heading.wait_for_text("Findings:");
    assert_eq!(all_findings(&shop), as_it_stands);
    does(&shop, LEFT_HOOD, "left blank");
    does(&shop, RIGHT_OUTER, "rear easier");

    // The drop brings what was foreseen, and Escape nothing.
    mouse.move_to(face(&shop, LEFT_HOOD).centre());
    heading.wait_for_text("If let go here:");
    mouse.release();
    does(&shop, LEFT_HOOD, "rear easier");
    heading.wait_for_text(&format!("Findings:\n{tally}"));
    assert_eq!(all_findings(&shop).1, foreseen.1);
    wait_for_a_frame(&shop);
    assert_eq!(shop.css(".slot.foreseen").count(), 0);
    // What is offered can be acted on again.
    shop.role("button", "Put all shifting on the left")
        .nth(0)
        .click();
    heard(&shop, "Done: ");
    shop.role("button", "Undo").click();
    assert_eq!(all_findings(&shop).1, foreseen.1);

    shop.role("button", "Undo").click();
    heading.wait_for_text(&as_it_stands.0);
    mouse.press(face(&shop, RIGHT_OUTER).centre());
    mouse.move_to(face(&shop, LEFT_HOOD).centre());
    heading.wait_for_text("If let go here:");
    shop.press("Escape");
    heading.wait_for_text("Findings:");
    mouse.release();
    assert_eq!(all_findings(&shop), as_it_stands);
}

#[test]
fn the_keyboard_foresees_too() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    rest_right_hand(&shop);
    let as_it_stands = all_findings(&shop);
    let heading = shop.css("#findings");

    focus_by_arrows(&shop, "right outer paddle");
    shop.press("Space");
    focus_by_arrows(&shop, "left hood button");
    heading.wait_for_text("If let go here:");
    let tally = heading.text();
    let tally = tally.trim_start_matches("If let go here:").trim();
    // The button is read out as the focus comes to it, so it says what it does, not what it would.
    does(&shop, LEFT_HOOD, "left blank");
    heard(
        &shop,
        &format!("Enter puts it down. Findings then: {tally}."),
    );

    // Away from the buttons nothing is foreseen, so what is offered there is about what stands.
    shop.role("button", "Undo").focus();
    heading.wait_for_text("Findings:");
    assert_eq!(all_findings(&shop), as_it_stands);

    focus_by_arrows(&shop, "left hood button");
    heading.wait_for_text("If let go here:");
    shop.press("Space");
    heading.wait_for_text(&format!("Findings:\n{tally}"));
}

#[test]
fn a_drag_that_ends_between_places_or_by_escape_changes_nothing() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    let mouse = shop.mouse();
    let beside = || {
        let (left, top, width, _) = shop.css(".drawn").rect();
        Point {
            x: left + width / 2.0,
            y: top + 12.0,
        }
    };

    for from in [item(&shop, "rear-easier"), face(&shop, LEFT_OUTER)] {
        mouse.press(from.centre());
        mouse.move_to(beside());
        shop.css(".ghost").wait_for_text("changes nothing");
        mouse.release();
        shop.css(".ghost").wait_until_gone();
        heard(&shop, "let go. Nothing changed.");
    }

    mouse.press(face(&shop, LEFT_OUTER).centre());
    mouse.move_to(face(&shop, LEFT_INNER).centre());
    shop.css(".ghost").wait_for_text("to the left inner paddle");
    shop.press("Escape");
    shop.css(".ghost").wait_until_gone();
    mouse.release();

    does(&shop, LEFT_OUTER, "front larger");
    does(&shop, LEFT_INNER, "front smaller");
    assert!(!undo_is_possible(&shop));
}

#[test]
fn a_fixed_button_says_why_at_the_spot() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    let mouse = shop.mouse();
    let why = shop.css(&format!(".slot[data-button='{RIGHT_SPRINT}'] .why"));

    mouse.press(item(&shop, "lights").centre());
    mouse.move_to(face(&shop, RIGHT_SPRINT).centre());
    why.wait_for_text(SPRINT_IS_FIXED);
    shop.css(".ghost")
        .wait_for_text("not on the right sprint button");
    mouse.release();
    why.wait_for_text("Refit it on the other side, or unplug it.");
    heard(&shop, SPRINT_IS_FIXED);
    does(&shop, RIGHT_SPRINT, "rear harder");
    assert!(!undo_is_possible(&shop));

    // It stays until it is dismissed.
    why.inner_role("button", "OK").click();
    why.wait_until_gone();

    // The same by a plain click.
    face(&shop, RIGHT_SPRINT).click();
    why.wait_for_text(SPRINT_IS_FIXED);
    shop.press("Escape");
    why.wait_until_gone();
}

/// Holds something, carries it to a point and lets it go there.
fn hold_and_drag(browser: &Browser, from: &Element, to: Point) {
    let finger = browser.finger();
    finger.press(from.centre());
    browser.css(".ghost").wait_until_shown();
    finger.move_to(to);
    finger.release();
}

/// Waits until the page runs on no more after a swipe: a tap would only stop it.
fn wait_until_still(browser: &Browser) {
    let scrolled = || browser.eval::<f64>("return window.scrollY");
    browser.wait_for("the page has come to rest", || {
        let here = scrolled();
        std::thread::sleep(std::time::Duration::from_millis(200));
        here == scrolled()
    });
}

#[test]
fn a_finger_holds_and_drags() {
    let home = Browser::open_phone("home");
    open_layout(&home, PODS);
    let finger = home.finger();
    let balloon = |button: &str| home.css(&format!(".drawn .slot[data-button='{button}']"));

    // From the tray to the drawing.
    home.css(".drawn").scroll_into_view();
    hold_and_drag(
        &home,
        &item(&home, "rear-easier"),
        balloon(LEFT_HOOD).centre(),
    );
    does(&home, LEFT_HOOD, "rear easier");

    // From slot to slot.
    face(&home, LEFT_OUTER).scroll_into_view();
    hold_and_drag(
        &home,
        &face(&home, LEFT_OUTER),
        face(&home, LEFT_INNER).centre(),
    );
    does(&home, LEFT_INNER, "front larger");
    does(&home, LEFT_OUTER, "front smaller");

    // Back to the tray.
    hold_and_drag(
        &home,
        &face(&home, LEFT_INNER),
        item(&home, "rear-harder").centre(),
    );
    does(&home, LEFT_INNER, "left blank");

    // A touch that the system takes away changes nothing.
    finger.press(face(&home, LEFT_OUTER).centre());
    home.css(".ghost").wait_until_shown();
    finger.move_to(face(&home, LEFT_INNER).centre());
    // What would come of it is not cut at the edge of the window.
    let outcome = home.css(".ghost .outcome");
    outcome.wait_for_text("to the left inner paddle: ");
    let (left, _, width, _) = outcome.rect();
    let room: f64 = home.eval("return document.documentElement.clientWidth");
    assert!(
        left >= 0.0 && left + width <= room,
        "{left} + {width} in {room}"
    );
    finger.interrupt();
    home.css(".ghost").wait_until_gone();
    does(&home, LEFT_OUTER, "front smaller");

    // A tap picks up; a second one puts down.
    finger.tap(&face(&home, LEFT_OUTER));
    heard(&home, "Left outer paddle picked up. Choose a function");
    finger.tap(&item(&home, "rear-harder"));
    does(&home, LEFT_OUTER, "rear harder");
}

#[test]
fn a_swipe_moves_no_function() {
    let home = Browser::open_phone("home");
    home.become_phone((390, 664));
    open_layout(&home, PODS);
    let finger = home.finger();
    let functions = || home.css(".slot .now").texts();
    let before = functions();
    face(&home, LEFT_OUTER).scroll_into_view();
    wait_until_still(&home);
    let scrolled = || home.eval::<f64>("return window.scrollY");

    // Up from the icon of a button: the page scrolls.
    let from = scrolled();
    let place = face(&home, LEFT_OUTER).inner_css(".grip").centre();
    finger.drag_between(place, place.offset(0.0, -150.0));
    home.wait_for("the page has scrolled", || scrolled() > from + 50.0);
    wait_until_still(&home);

    // From a tile of the tray over the buttons, and along the tray: the tray slides.
    let tile = item(&home, "front-smaller").inner_css(".grip").centre();
    finger.drag_between(tile, tile.offset(0.0, -200.0));
    wait_until_still(&home);
    // The swipe may have gone past the buttons, and the tray with them.
    face(&home, LEFT_OUTER).scroll_into_view();
    wait_until_still(&home);
    let tile = item(&home, "front-smaller").centre();
    finger.drag_between(tile, tile.offset(-150.0, 0.0));
    home.wait_for("the tray slid", || {
        home.eval::<f64>("return document.querySelector('.tray .items').scrollLeft") > 20.0
    });
    assert_eq!(functions(), before);
    assert!(!undo_is_possible(&home));
}

#[test]
fn what_is_carried_and_done_stands_at_the_thumb_with_a_way_back() {
    let home = Browser::open_phone("home");
    open_layout(&home, PODS);
    let line = home.css(".status-line");
    let (_, top, _, height) = line.rect();
    let (_, dock, ..) = home.css(".dock").rect();
    assert!((top + height - dock).abs() < 1.0, "{top} {height} {dock}");

    home.finger().tap(&item(&home, "rear-easier"));
    line.wait_for_text("Carrying rear easier: tap a button.");
    home.finger().tap(&home.role("button", "Cancel"));
    heard(&home, "Rear easier let go. Nothing changed.");
    assert!(!line.text().contains("Carrying"));

    // What a button does is said before it goes anywhere.
    face(&home, LEFT_OUTER).scroll_into_view();
    home.finger().tap(&face(&home, LEFT_OUTER));
    line.wait_for_text("4 left outer paddle: to the larger ring");
    home.finger().tap(&item(&home, "rear-easier"));
    line.wait_for_text("Done: rear easier on the left outer paddle.");
    home.finger().tap(&home.role("button", "Undo this"));
    does(&home, LEFT_OUTER, "front larger");
    line.wait_for_text("Undone: ");
    home.finger().tap(&home.role("button", "Redo this"));
    does(&home, LEFT_OUTER, "rear easier");
}

#[test]
fn rows_are_seen_between_what_stays_on_a_telephone() {
    let home = Browser::open_phone("home");
    for (width, height, least) in [(390, 844, 5), (390, 664, 3), (320, 568, 2)] {
        home.become_phone((width, height));
        open_layout(&home, PODS);
        home.eval::<()>("document.querySelector('.slot-group').scrollIntoView()");
        home.css(".small-drawing").wait_until_shown();
        let seen: usize = home.eval(
            "const rect = (s) => document.querySelector(s).getBoundingClientRect();
             const top = rect('.small-drawing').bottom, bottom = rect('.tray').top;
             return [...document.querySelectorAll('.slot')]
               .map((slot) => slot.getBoundingClientRect())
               .filter((r) => r.top >= top && r.bottom <= bottom).length",
        );
        assert!(seen >= least, "{seen} rows at {width} by {height}");
    }
}

#[test]
fn on_a_telephone_on_its_side_the_drawing_stands_beside_the_list() {
    let home = Browser::open_phone("home");
    home.become_phone((844, 390));
    open_layout(&home, PODS);
    home.css(".list-beside").wait_until_shown();
    face(&home, LEFT_OUTER).script("arguments[0].scrollIntoView({ block: 'center' })");
    let (left, top, width, height) = home.css(".drawn .cockpit").rect();
    let (.., tray, _, _) = home.css(".tray").rect();
    assert!(
        top >= -1.0 && top + height <= tray + 1.0,
        "{top} {height} {tray}"
    );
    assert!(left + width <= face(&home, LEFT_OUTER).rect().0 + 1.0);
    home.finger().tap(&item(&home, "rear-easier"));
    home.css(".status-line")
        .wait_for_text("Carrying rear easier");
}

#[test]
fn no_menu_leaves_the_window() {
    let home = Browser::open_phone("home");
    for (width, height) in [(390, 844), (320, 640), (844, 390), (1280, 657)] {
        home.become_phone((width, height));
        open_layout(&home, PODS);
        let inside = |menu: &str| {
            let (left, top, wide, high) = home.css(menu).rect();
            assert!(
                left >= 0.0
                    && top >= 0.0
                    && left + wide <= f64::from(width)
                    && top + high <= f64::from(height),
                "{menu} at {width} by {height}: {left} {top} {wide} {high}"
            );
        };
        let unfold = home.css(".layout-head .unfold");
        if unfold.is_shown() {
            unfold.click();
        }
        home.role("button", "Layouts").click();
        inside(".menu");
        home.press("Escape");
        home.visit("#/plans");
        home.css(".menu-button").nth(0).click();
        inside(".menu");
        home.press("Escape");
        crate::desk::pick(&home, PODS, "Delete");
        home.visit("#/plans");
    }
}

#[test]
fn the_drawing_stays_in_view_beside_the_findings() {
    let shop = Browser::open("shop");
    shop.viewport(1280, 657);
    open_layout(&shop, PODS);
    rest_right_hand(&shop);
    let last = shop.css(".finding .about-rule a");
    last.nth(last.count() - 1).scroll_into_view();
    let (_, head, _, high) = shop.css(".top").rect();
    assert!(head.abs() < 1.0);
    let line = shop.css(".status-line").rect().1;
    for button in [LEFT_HOOD, LEFT_OUTER, RIGHT_SPRINT] {
        let (_, top, _, height) = shop.css(&format!(".slot[data-button='{button}']")).rect();
        assert!(
            top >= head + high && top + height <= line,
            "{button}: {top} {height}"
        );
    }
    // The reason is read and left again: the place is not lost.
    let why = last.nth(last.count() - 1);
    let id = why.attribute("id");
    why.click();
    shop.role("heading", "What it looks at").wait_until_shown();
    shop.back();
    shop.wait_for("the focus is back at the finding", || {
        let focused: Option<String> = shop.eval("return document.activeElement.id || null");
        focused == id
    });
}

#[test]
fn a_drag_kept_at_the_lower_edge_scrolls() {
    let shop = Browser::open("shop");
    shop.viewport(820, 720);
    open_layout(&shop, PODS);
    let mouse = shop.mouse();
    let scrolled = || shop.eval::<f64>("return window.scrollY");
    mouse.press(item(&shop, "lights").centre());
    let line = shop.css(".status-line").rect().1;
    let at = |y| Point { x: 400.0, y };
    mouse.move_to(at(line / 2.0));
    shop.css(".ghost").wait_until_shown();
    wait_for_a_frame(&shop);
    mouse.move_to(at(line - 12.0));
    shop.wait_for("the page scrolls", || scrolled() > 60.0);
    shop.press("Escape");
    mouse.release();
    assert!(!undo_is_possible(&shop));
}

#[test]
fn what_is_picked_up_at_the_lower_edge_does_not_run_away() {
    let home = Browser::open_phone("home");
    open_layout(&home, PODS);
    let from = face(&home, LEFT_OUTER);
    from.script(
        "const lower = [...document.querySelectorAll('.stays')]
           .map((e) => e.getBoundingClientRect().top).filter((top) => top > innerHeight / 2);
         const own = arguments[0].getBoundingClientRect();
         window.scrollBy({ top: own.bottom - Math.min(...lower) + 4, behavior: 'instant' })",
    );
    let scrolled = || home.eval::<f64>("return window.scrollY");
    let before = scrolled();
    let finger = home.finger();
    finger.press(from.centre());
    home.css(".ghost").wait_until_shown();
    // Much longer than it takes to run at an edge that is come to.
    std::thread::sleep(std::time::Duration::from_millis(1000));
    assert_eq!(scrolled(), before);
    finger.release();
    home.css(".ghost").wait_until_gone();
    does(&home, LEFT_OUTER, "front larger");
    assert!(!undo_is_possible(&home));
}

#[test]
fn clicks_without_dragging_put_swap_and_clear() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);

    item(&shop, "rear-easier").click();
    heard(&shop, "Rear easier picked up. Choose a button.");
    assert_eq!(
        item(&shop, "rear-easier")
            .attribute("aria-pressed")
            .unwrap(),
        "true"
    );
    face(&shop, LEFT_HOOD).click();
    does(&shop, LEFT_HOOD, "rear easier");

    face(&shop, LEFT_POD).click();
    heard(&shop, "Left tops pod, near button picked up.");
    item(&shop, "lights").click();
    does(&shop, LEFT_POD, "lights");

    face(&shop, LEFT_OUTER).click();
    drawn(&shop, LEFT_INNER).click();
    does(&shop, LEFT_OUTER, "front smaller");
    does(&shop, LEFT_INNER, "front larger");

    face(&shop, LEFT_OUTER).click();
    shop.role("button", "blank").click();
    does(&shop, LEFT_OUTER, "left blank");

    // The same thing twice lets go.
    item(&shop, "lights").click();
    item(&shop, "lights").click();
    heard(&shop, "Lights let go. Nothing changed.");
    face(&shop, LEFT_INNER).click();
    heard(&shop, "Left inner paddle picked up.");
    shop.press("Escape");
    does(&shop, LEFT_INNER, "front larger");
}

#[test]
fn the_menu_does_everything() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    let dialog = shop.css("dialog.button-menu");
    let pick = |section: &str, words: &str| {
        let section = dialog.inner_css(&format!("[aria-labelledby={section}]"));
        let button = section.inner_role("button", words);
        // Clear of Close, which stays in view.
        button.scroll_into_view();
        button.click();
    };

    menu_of(&shop, LEFT_OUTER).click();
    dialog.inner_css("h2").wait_for_text("Left outer paddle");
    pick("menu-tap", "rear easier");
    dialog.wait_for_text("Tap: rear easier; it was front larger.");
    pick("menu-hold", "repeats, 3 cogs");
    dialog.wait_for_text("hold: repeats, 3 cogs");
    dialog.wait_for_text("index finger, at hand, not asked yet");

    let other = dialog.inner_css(".new-chord select").nth(0);
    other.script(
        "const inner = [...arguments[0].options].find(o => o.text.endsWith('left inner paddle'));
         arguments[0].value = inner.value;
         arguments[0].dispatchEvent(new Event('change', { bubbles: true }))",
    );
    pick("menu-chord", "Add this pair");
    dialog
        .inner_css(".chords")
        .wait_for_text("left inner paddle");
    shop.role("button", "Close").click();
    dialog.wait_until_gone();

    does(&shop, LEFT_OUTER, "rear easier");
    let notes = face(&shop, LEFT_OUTER).inner_css(".notes");
    notes.wait_for_text("was front larger, hold: repeats, 3 cogs, with another: rear easier");
    assert!(shop.focused().1.contains("left outer paddle"));

    menu_of(&shop, LEFT_OUTER).click();
    pick("menu-tap", "leave it blank");
    shop.press("Escape");
    dialog.wait_until_gone();
    does(&shop, LEFT_OUTER, "left blank");

    // A fixed button offers nothing but its reason and its plug.
    menu_of(&shop, RIGHT_SPRINT).click();
    dialog.wait_for_text(SPRINT_IS_FIXED);
    assert_eq!(dialog.inner_css("[aria-labelledby=menu-tap]").count(), 0);
    dialog
        .inner_role("button", "Unplug the right sprint button")
        .click();
    dialog
        .inner_role("button", "Plug in the right sprint button")
        .wait_until_shown();
    shop.role("button", "Close").click();
    does(&shop, RIGHT_SPRINT, "unplugged");
}

#[test]
fn the_keyboard_alone_puts_swaps_and_clears() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);

    // From the tray: the focus goes to the buttons at once.
    shop.tab_to("button", "rear easier");
    shop.press("Enter");
    heard(
        &shop,
        "Rear easier picked up. Left hood button: takes it. Enter puts it down. Findings then: 5 to check.",
    );
    shop.press("ArrowRight");
    heard(
        &shop,
        "Right hood button: takes it. Enter puts it down. Findings then: 5 to check.",
    );
    shop.press_all(&["ArrowUp", "ArrowUp"]);
    shop.press("End");
    heard(&shop, SPRINT_IS_FIXED);
    shop.press("Home");
    shop.press("Enter");
    does(&shop, LEFT_HOOD, "rear easier");

    // Down the column, pick up, to another, put down: they swap.
    focus_by_arrows(&shop, "left outer paddle");
    shop.press("Space");
    heard(&shop, "Left outer paddle picked up.");
    focus_by_arrows(&shop, "left inner paddle");
    heard(
        &shop,
        "Left inner paddle: takes it. Enter puts it down. Findings then: 5 to check.",
    );
    shop.press("Space");
    does(&shop, LEFT_OUTER, "front smaller");
    does(&shop, LEFT_INNER, "front larger");

    shop.press("Delete");
    does(&shop, LEFT_INNER, "left blank");
    shop.press("Control+z");
    does(&shop, LEFT_INNER, "front larger");
    shop.press("Control+y");
    does(&shop, LEFT_INNER, "left blank");
    shop.press("Control+z");

    // Escape lets go, and leads back to the tray where it came from there.
    shop.press("Enter");
    heard(&shop, "Left inner paddle picked up.");
    shop.press("Escape");
    heard(&shop, "Left inner paddle let go. Nothing changed.");
    shop.tab_to("button", "rear easier");
    shop.press("ArrowRight");
    assert_eq!(shop.focused().1, "rear harder");
    shop.press("Enter");
    shop.press("Escape");
    heard(&shop, "Rear harder let go. Nothing changed.");
    assert_eq!(shop.focused().1, "rear harder");

    // The menu opens and closes, and gives the focus back.
    focus_by_arrows(&shop, "left inner paddle");
    shop.press("m");
    shop.css("dialog.button-menu").wait_until_shown();
    shop.press("Escape");
    shop.css("dialog.button-menu").wait_until_gone();
    assert!(shop.focused().1.contains("inner paddle"));
}

/// Goes to the slots by Tab if the focus is elsewhere, then walks down to one.
fn focus_by_arrows(browser: &Browser, place: &str) {
    if !browser.eval::<bool>("return document.activeElement.matches('.face')") {
        for _ in 0..100 {
            browser.press("Tab");
            if browser.eval::<bool>("return document.activeElement.matches('.face')") {
                break;
            }
        }
    }
    for _ in 0..40 {
        let (_, name) = browser.focused();
        if name.contains(place) {
            return;
        }
        browser.press("ArrowDown");
    }
    panic!("the arrow keys never reached the {place}");
}

#[test]
fn all_shifting_left_is_one_act_and_one_step_back() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    shop.role("button", "All shifting left").click();
    does(&shop, RIGHT_OUTER, "left blank");
    heard(&shop, "All shifting on the left. Findings:");
    let left = shop.css(".slot-group.left .now").texts();
    for function in ["rear easier", "rear harder", "front toggle"] {
        assert!(left.iter().any(|words| words == function), "{left:?}");
    }
    shop.css(".in-words").wait_for_text("Right hand: ");
    shop.role("button", "Undo").click();
    does(&shop, RIGHT_OUTER, "rear easier");
    assert!(!undo_is_possible(&shop));
    shop.role("button", "Redo").click();
    does(&shop, RIGHT_OUTER, "left blank");
}

#[test]
fn all_brakes_on_one_lever_bring_their_findings() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    rest_right_hand(&shop);
    shop.role("button", "All brakes on left lever").click();
    shop.css(".findings")
        .wait_for_text("left brake-shift lever");
    shop.wait_for("a check says that one lever pulls both brakes", || {
        findings(&shop, "check")
            .iter()
            .any(|text| text.contains("both") || text.contains("one lever"))
    });
    let brakes = shop.css(".coverage tbody tr").texts();
    let front = brakes
        .iter()
        .find(|row| row.to_lowercase().contains("front wheel brake"));
    let rear = brakes
        .iter()
        .find(|row| row.to_lowercase().contains("rear wheel brake"));
    for row in [front, rear] {
        let row = row.expect("the coverage table has a row for each wheel brake");
        assert!(row.to_lowercase().contains("left index finger"), "{row}");
    }
}

#[test]
fn one_change_for_several_findings_stands_once_and_says_what_is_open_then() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    rest_right_hand(&shop);
    let all_left = shop.role("button", "Put all shifting on the left");
    assert_eq!(all_left.count(), 1);
    let then = shop.css("ul.for-several li").nth(0).text();
    let then = then
        .trim_start_matches("Put all shifting on the left")
        .trim();
    let then = then.trim_start_matches("then ").to_owned();
    assert!(then.contains("must fix"), "{then}");
    let told_of = shop.css(".finding .fixes + .quiet").texts();
    assert!(told_of.len() > 1, "{told_of:?}");
    assert_eq!(told_of[0], "A change for several, above, answers it.");

    all_left.click();
    heard(&shop, "Done: Put all shifting on the left.");
    shop.css("#findings")
        .wait_for_text(&format!("Findings:\n{then}"));
    assert_eq!(
        shop.role("button", "Put all shifting on the left").count(),
        0
    );
}

#[test]
fn a_fix_is_applied_and_its_finding_goes() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    rest_right_hand(&shop);
    let fix = shop.role("button", "Leave the right outer paddle blank");
    let count = || findings(&shop, "must fix").len();
    shop.wait_for("findings must be fixed", || count() > 0);
    let before = count();
    fix.nth(0).click();
    does(&shop, RIGHT_OUTER, "left blank");
    shop.wait_for("the finding is gone", || count() < before);
    shop.role("button", "Undo").click();
    does(&shop, RIGHT_OUTER, "rear easier");
    shop.wait_for("the finding is back", || count() == before);

    shop.role("button", "Blank what lies under a resting hand")
        .click();
    does(&shop, RIGHT_OUTER, "left blank");
    let right = shop.css(".slot-group.right .now").texts();
    let idle = ["left blank", "unplugged"];
    assert!(
        right.iter().all(|words| idle.contains(&words.as_str())),
        "{right:?}"
    );
}

#[test]
fn a_finding_lights_its_places() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    rest_right_hand(&shop);
    let lit = || shop.css(".slot.lit").count();
    shop.mouse().hover(&shop.css("h1"));
    shop.wait_for("nothing is lit", || lit() == 0);
    let fix = shop
        .role("button", "Leave the right outer paddle blank")
        .nth(0);
    shop.mouse().hover(&fix);
    let slot = shop.css(&format!(".slot.lit[data-button='{RIGHT_OUTER}']"));
    slot.wait_until_shown();
    shop.css(&format!(".drawn .button.lit[data-button='{RIGHT_OUTER}']"))
        .wait_until_shown();
    shop.mouse().hover(&shop.css("h1"));
    shop.wait_for("the light is out", || lit() == 0);
    fix.focus();
    slot.wait_until_shown();
}

#[test]
fn shift_plans_and_layouts_are_chosen_copied_renamed_and_removed() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    assert_eq!(item(&shop, "rung-up").count(), 0);
    choose(&shop, "Shift plan", "ladder");
    does(&shop, RIGHT_OUTER, "rung down");
    item(&shop, "rung-up").wait_until_shown();

    shop.role("button", "Layouts").click();
    shop.role("menuitem", "Copy this layout").click();
    shop.role("button", "Clear all buttons").click();
    does(&shop, RIGHT_OUTER, "left blank");
    shop.role("button", "Layouts").click();
    shop.role("menuitem", "Rename this layout").click();
    shop.role("textbox", "Name of this layout").focus();
    shop.press("Control+a");
    shop.type_text("All blank");
    shop.press("Enter");
    shop.wait_for("the layout has its name", || {
        options(&shop, "Layout") == ["Layout 1", "All blank"]
    });
    choose(&shop, "Layout", "Layout 1");
    does(&shop, RIGHT_OUTER, "rung down");
    shop.role("button", "Layouts").click();
    shop.role("menuitem", "Remove this layout").click();
    shop.wait_for("one layout is left", || {
        options(&shop, "Layout") == ["All blank"]
    });
    does(&shop, RIGHT_OUTER, "left blank");
}

fn options(browser: &Browser, label: &str) -> Vec<String> {
    let list = browser.role("combobox", label);
    let words = list.script("return [...arguments[0].options].map(o => o.textContent)");
    serde_json::from_value(words).expect("a list of words")
}

/// Chooses from a list by keyboard, as the browser's own list is operated.
fn choose(browser: &Browser, label: &str, words: &str) {
    let list = browser.role("combobox", label);
    list.focus();
    // The browser takes keys that follow at once for one word.
    std::thread::sleep(std::time::Duration::from_millis(1200));
    browser.type_text(words);
    browser.wait_for(&format!("{words} is chosen"), || {
        list.script("return arguments[0].selectedOptions[0]?.textContent") == words
    });
}

#[test]
fn reach_is_shown_by_hatch_and_in_words() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    choose(&shop, "Show reach", "left hand, from the hoods");
    let words = |button: &str| face(&shop, button).inner_css(".reach");
    words(LEFT_HOOD).wait_for_text("thumb, at hand");
    words(RIGHT_OUTER).wait_for_text("index, cross over");
    shop.css(".reach-key")
        .wait_for_text("Left brake-shift lever: index finger, at hand");
    let fill = |button: &str| {
        shop.css(&format!(".drawn .button[data-button='{button}'] .reach"))
            .attribute("fill")
            .unwrap_or_default()
    };
    assert_eq!(fill(LEFT_HOOD), "currentColor");
    assert!(fill(LEFT_POD).ends_with("-move)"), "{}", fill(LEFT_POD));
    assert!(fill(RIGHT_OUTER).ends_with("-cross-over)"));
    choose(&shop, "Show reach", "off");
    shop.wait_for("no reach is shown", || {
        shop.css(".face .reach").count() == 0
    });
    assert_eq!(fill(LEFT_HOOD), "none");
}

/// Nobody accepts a finding without saying who they are, in what role and why;
/// what is missing is said and takes the focus. Findings and their acts have
/// names of their own.
#[test]
fn accepting_asks_role_name_and_reason() {
    let clinic = Browser::open("clinic");
    open_layout(&clinic, GRAVEL);
    let names: Vec<String> = clinic
        .eval("return [...document.querySelectorAll('.finding')].map((card) => card.ariaLabel)");
    let unique: std::collections::BTreeSet<&String> = names.iter().collect();
    assert!(names.len() > 1 && unique.len() == names.len(), "{names:?}");
    let about = "Not asked yet: left hand";
    assert!(names.iter().any(|name| name == about), "{names:?}");
    let card = format!(".finding[aria-label='{about}']");
    let part = |inner: &str| clinic.css(&format!("{card} {inner}"));
    let focused = || {
        clinic.eval::<String>("return document.activeElement.nextElementSibling?.textContent ?? document.activeElement.tagName")
    };
    part("summary").nth(0).click();
    let problem = |words: &str| {
        clinic.wait_for(words, || {
            part("[role=alert]")
                .texts()
                .iter()
                .any(|text| text == words)
        });
    };
    let accept = part("form button[type=submit]");
    accept.click();
    problem("Say in what role you accept it.");
    assert_eq!(focused(), "shop");
    let role = |words: &str| {
        part("form .segment").nth(match words {
            "shop" => 0,
            "rider" => 1,
            _ => 2,
        })
    };
    role("rider").click();
    accept.click();
    clinic.wait_for("a rider does not sign as somebody else", || {
        part("[role=alert]")
            .texts()
            .iter()
            .any(|text| text.starts_with("Not in this role"))
    });
    role("clinician").click();
    accept.click();
    problem("Write who says so.");
    clinic.type_text("L. Hand");
    accept.click();
    problem("Write why it may stand.");
    assert_eq!(
        clinic.eval::<String>("return document.activeElement.tagName"),
        "TEXTAREA"
    );
    clinic.type_text("Asked at the next visit.");
    accept.click();
    clinic
        .css(".accepted")
        .wait_for_text("L. Hand, clinician, 2");
    // Who signed last stays filled in, the role never.
    let other = clinic.css(".finding details.accept summary").nth(0);
    other.click();
    clinic
        .css("details.accept[open] input[type=text]")
        .wait_until_shown();
    let open = "document.querySelector('details.accept[open]')";
    assert_eq!(
        clinic.eval::<String>(&format!(
            "return {open}.querySelector('input[type=text]').value"
        )),
        "L. Hand"
    );
    assert!(clinic.eval::<bool>(&format!("return !{open}.querySelector('input:checked')")));
}

#[test]
fn coverage_tells_usual_and_bad_day() {
    let shop = Browser::open("shop");
    open_layout(&shop, GRAVEL);
    rest_right_hand(&shop);
    let row = |words: &str| {
        let rows = shop.css(".coverage tbody tr").texts();
        let row = rows
            .into_iter()
            .find(|row| row.to_lowercase().contains(words));
        row.expect("the table has the row").to_lowercase()
    };
    shop.wait_for("the left hand would have to cross over", || {
        row("rear easier").contains("other hand must cross over")
    });
    assert_eq!(
        shop.css(".coverage thead th").texts().len(),
        3,
        "hoods and drops"
    );
    shop.role("button", "All shifting left").click();
    shop.wait_for("the left hand has it", || {
        row("rear easier").contains("left index finger")
    });
    // What is far out of view is laid out once it comes near.
    shop.css(".coverage").scroll_into_view();
    shop.role("radio", "bad day").focus();
    shop.press("Space");
    shop.wait_for("the bad day is shown", || {
        shop.role("radio", "bad day").is_selected()
    });
    assert!(row("rear easier").contains("left index finger"));
    // The day stays while other screens are looked at.
    shop.visit("#/sheet");
    shop.css(".sheet").wait_until_shown();
    shop.visit("#/layout");
    shop.css(".face").nth(0).wait_until_shown();
    shop.css(".coverage").scroll_into_view();
    assert!(shop.role("radio", "bad day").is_selected());
    // No hand crosses over to brake, on any day: that is no brake.
    let rear = row("rear wheel brake");
    assert!(
        rear.contains("out of reach: its lever is on the right"),
        "{rear}"
    );
    assert!(!rear.contains("cross over"), "{rear}");
}

#[test]
fn axe_core_objects_to_nothing_on_the_layout() {
    for (name, dark) in [("day", false), ("night", true)] {
        let shop = Browser::open(name);
        shop.media(Media {
            dark,
            ..Media::default()
        });
        open_layout(&shop, PODS);
        rest_right_hand(&shop);
        shop.assert_accessible();
        choose(&shop, "Show reach", "left hand, from the hoods");
        face(&shop, RIGHT_SPRINT).click();
        shop.css(".slot .why").wait_until_shown();
        item(&shop, "rear-easier").click();
        shop.assert_accessible();
        shop.press("Escape");
        menu_of(&shop, LEFT_OUTER).click();
        shop.css("dialog.button-menu").wait_until_shown();
        shop.assert_accessible();
    }
    let home = Browser::open_phone("home");
    open_layout(&home, PODS);
    home.assert_accessible();
}

/// Nothing sticks out sideways, and nothing that takes presses is smaller than 44 px.
fn fits_and_can_be_hit(browser: &Browser, when: &str) {
    let over: f64 = browser
        .eval("return document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assert!(over <= 0.0, "{when}: {over} px stick out");
    let small: Vec<String> = browser.eval(
        "return [...document.querySelectorAll('main button, main select, main summary, main .hit')]
            .filter(e => e.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true }) && !e.closest('.drawn'))
            .map(e => [e.textContent.trim().slice(0, 40), e.getBoundingClientRect()])
            .filter(([, r]) => r.width < 43.9 || r.height < 43.9)
            .map(([t, r]) => `${t}: ${r.width} by ${r.height}`)",
    );
    assert!(small.is_empty(), "{when}: {small:#?}");
}

/// On a laptop's screen nothing that something could be dropped on lies under the tray or the
/// line of the last act, or out of the window.
#[test]
fn every_slot_is_seen_beside_the_tray() {
    let shop = Browser::open("shop");
    shop.visit("#/plans");
    let templates: Vec<String> = shop.css(".new-plan .template").texts();
    assert!(templates.len() >= 9, "{templates:?}");
    for template in templates {
        open_layout(&shop, &template);
        for (width, height) in [(1280, 800), (1366, 768)] {
            shop.viewport(width, height);
            shop.visit("#/layout");
            shop.css(".face").nth(0).wait_until_shown();
            let covered: Vec<String> = shop.eval(
                "const place = (e) => e.getBoundingClientRect();
                 const tray = place(document.querySelector('.tray'));
                 const line = place(document.querySelector('.status-line'));
                 const under = (a) => a.top < tray.bottom && a.bottom > tray.top
                     && a.left < tray.right && a.right > tray.left;
                 const bottom = line.height > 0 ? line.top : innerHeight;
                 return [...document.querySelectorAll('.slot .face')]
                     .filter((e) => !e.textContent.endsWith('fixed'))
                     .filter((e) => under(place(e)) || place(e).bottom > bottom || place(e).top < 0)
                     .map((e) => e.textContent)",
            );
            assert!(
                covered.is_empty(),
                "{template}, {width} by {height}: {covered:#?}"
            );
        }
    }
}

#[test]
fn it_fits_small_screens_and_large_text() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    fits_and_can_be_hit(&shop, "a desk");
    for width in [1920, 1100, 820, 699, 390, 320] {
        shop.viewport(width, 800);
        shop.visit("#/layout");
        shop.css(".face").nth(0).wait_until_shown();
        fits_and_can_be_hit(&shop, &format!("{width} px"));
        // Slots stand in the margins only where there is room.
        let margins = shop.css(".cockpit-frame.margins").count() == 1;
        assert_eq!(margins, width > 760, "{width} px");
    }
    shop.viewport(1280, 800);
    shop.text_size(200);
    shop.reload();
    shop.css(".face").nth(0).wait_until_shown();
    fits_and_can_be_hit(&shop, "200 % text");
    let cut: Vec<String> = shop.eval(
        "return [...document.querySelectorAll('.face, .item, .to-menu')]
            .filter(e => e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1)
            .map(e => e.textContent)",
    );
    assert!(cut.is_empty(), "{cut:#?}");
    item(&shop, "lights").click();
    face(&shop, LEFT_HOOD).click();
    does(&shop, LEFT_HOOD, "lights");
}

#[test]
fn forced_colours_and_reduced_motion_keep_it_usable() {
    let shop = Browser::open("shop");
    shop.media(Media {
        forced_colors: true,
        reduced_motion: true,
        ..Media::default()
    });
    open_layout(&shop, PODS);
    // Only the current tab has a line, only what is pointed at has the bar, and what cannot be
    // done looks so.
    let colour = |of: &str, side: &str| shop.css(of).nth(0).style(&format!("border-{side}-color"));
    let tab = colour(".screens li:not(.here)", "bottom");
    assert_ne!(colour(".screens li.here", "bottom"), tab);
    assert_eq!(tab, shop.css("body").style("background-color"));
    assert_eq!(colour(".finding", "left"), tab);
    let redo = shop.role("button", "Redo");
    let usual = shop.role("button", "All shifting left").style("color");
    assert_ne!(redo.style("color"), usual);
    let mouse = shop.mouse();
    mouse.press(item(&shop, "rear-easier").centre());
    mouse.move_to(face(&shop, LEFT_HOOD).centre());
    shop.css(".ghost").wait_for_text("to the left hood button");
    let slot = shop.css(&format!(".slot[data-button='{LEFT_HOOD}']"));
    assert_ne!(slot.style("outline-style"), "none");
    mouse.release();
    does(&shop, LEFT_HOOD, "rear easier");
    shop.assert_accessible();
}

#[test]
fn a_finger_that_is_down_while_the_screen_goes_does_no_harm() {
    let home = Browser::open_phone("home");
    open_layout(&home, PODS);
    face(&home, LEFT_OUTER).scroll_into_view();
    wait_until_still(&home);
    let finger = home.finger();
    finger.press(face(&home, LEFT_OUTER).inner_css(".grip").centre());
    home.eval::<()>("location.hash = '#/sheet'");
    home.role("heading", "Sheet").wait_until_shown();
    // Longer than a finger is held before it carries.
    std::thread::sleep(std::time::Duration::from_millis(900));
    finger.release();
    home.visit("#/layout");
    does(&home, LEFT_OUTER, "front larger");
}

#[test]
fn nothing_lies_over_the_table_of_coverage() {
    let shop = Browser::open("shop");
    open_layout(&shop, PODS);
    for (width, height) in [(1280, 800), (1024, 768), (2400, 1200)] {
        shop.viewport(width, height);
        shop.css(".coverage h2").scroll_into_view();
        shop.eval::<()>("window.scrollTo(0, document.body.scrollHeight)");
        wait_until_still(&shop);
        let covered: Vec<String> = shop.eval(
            "return [...document.querySelectorAll('.coverage :is(h2, th, td) > *, .coverage h2')]
                 .map((e) => [e, e.getBoundingClientRect()])
                 .filter(([, r]) => r.width > 0 && r.top > 70 && r.bottom < innerHeight - 70)
                 .filter(([e, r]) => !document.elementFromPoint(r.left + 4, r.top + r.height / 2)?.closest('.coverage'))
                 .map(([e]) => e.textContent)",
        );
        assert!(covered.is_empty(), "{width}: {covered:?}");
    }
}
