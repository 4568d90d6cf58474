//! The Stand check screen: every step by touch, something that differs and is mended, what lapses,
//! the rider's part; and the road card, read back from its print.

use std::path::Path;

use leverwright_core::catalogue::{DemoId, demo};
use leverwright_core::proof::{RoadCard, Run};
use leverwright_core::record::Check;
use leverwright_tests::browser::{Browser, Element, Media, Paper};

use crate::desk::{GRAVEL, ROAD, overflow, start, wait_until_saved};

/// The invented rider whose bike is ready to build.
const WREN: &str = "Wren, road bike";

/// The demo plan that is ready, open.
fn open_demo(browser: &Browser) {
    browser.visit("#/plans");
    let title = demo(DemoId::Wren).title;
    browser
        .css(".demo-plans")
        .inner_role("button", title)
        .click();
    browser.css(".open-plan").wait_for_text(WREN);
    wait_until_saved(browser);
}

fn heading(browser: &Browser) -> String {
    browser.css("#stand-heading").text()
}

pub fn answer<'a>(browser: &'a Browser, words: &str) -> Element<'a> {
    browser.css(".answers").inner_role("button", words)
}

/// Answers OK, by a finger, and waits until the page is another.
fn ok(browser: &Browser) {
    let before = progress(browser);
    browser.finger().tap(&browser.css(".answers button").nth(0));
    browser.wait_for("the next page", || progress(browser) != before);
}

/// What tells one page from another.
fn progress(browser: &Browser) -> String {
    browser.eval(
        "return (document.querySelector('#step-progress')?.textContent ?? '') + (document.querySelector('#stand-heading')?.textContent ?? '')",
    )
}

/// Answers OK until the heading says something; how many steps that took.
pub fn ok_until(browser: &Browser, words: &str) -> usize {
    let mut steps = 0;
    while !heading(browser).contains(words) {
        assert!(steps < 120, "“{words}” does not come: {}", heading(browser));
        ok(browser);
        steps += 1;
    }
    steps
}

/// One of a row of choices.
fn choose(browser: &Browser, words: &str) {
    let labels = browser.css(".segment");
    let at = labels.texts().iter().position(|text| text.trim() == words);
    labels.nth(at.expect("it may be chosen")).click();
}

pub fn sign(browser: &Browser, button: &str) {
    browser
        .css(".stand-word input[type=text]")
        .fill("A. Fitter");
    browser.role("button", button).click();
}

/// The stand check of a demo plan, done with the keyboard.
fn prove_by_keys(browser: &Browser) {
    browser.visit("#/stand/stand");
    browser.css("#stand-heading").focus();
    loop {
        let before = progress(browser);
        if before.contains("Every step is OK") {
            break;
        }
        browser.press("1");
        browser.wait_for("the next step", || progress(browser) != before);
    }
    sign(browser, "Wired and working");
    browser
        .css(".proved")
        .wait_for_text("Wired and working: yes");
}

#[test]
fn a_button_that_differs_is_mended_and_only_that_is_done_again() {
    let bench = Browser::open_phone("bench");
    open_demo(&bench);
    let plan = demo(DemoId::Wren).plan;
    let steps = Run::of(&plan, Check::Stand).steps.len();
    bench.visit("#/stand");
    bench
        .css(".checks")
        .wait_for_text(&format!("{steps} steps, none done."));
    bench.assert_accessible();
    bench.role("link", "Begin the stand check").click();
    bench
        .css("#stand-heading")
        .wait_for_text("Squeeze the left");
    bench.assert_accessible();

    // Brakes hold up all else: what is soft is mended before anything is asked.
    bench
        .finger()
        .tap(&answer(&bench, "Something else happened"));
    bench.css("#stand-heading").wait_for_text("What happened?");
    bench.assert_accessible();
    bench.finger().tap(&answer(&bench, "It feels soft"));
    bench
        .css("#stand-heading")
        .wait_for_text("Mend this brake first");
    bench.css(".causes").wait_for_text("Air in a hose");
    bench.assert_accessible();
    bench.role("button", "Mended: do this step again").click();
    bench.css(".step-before").wait_for_text("It feels soft");

    ok_until(&bench, "press the left outer paddle");
    bench.css(".step-expect").wait_for_text("Three times.");
    bench.finger().tap(&answer(&bench, "Nothing happened"));
    // A blank button is pressed, too, and nothing is what it must do.
    ok_until(&bench, "press the right outer paddle");
    assert_eq!(
        bench.css(".answers button").nth(0).text(),
        "OK: nothing happened"
    );
    assert_eq!(bench.css(".answers button").count(), 2);
    ok_until(&bench, "1 step did not go as expected");
    bench
        .css(".causes")
        .wait_for_text("unplugged or not paired");
    bench.assert_accessible();

    // Plugged in: it is pressed again, and what was done about it before.
    bench.role("button", "Mended: do this step again").click();
    bench
        .css("#stand-heading")
        .wait_for_text("press the left outer paddle");
    let again = ok_until(&bench, "Every step is OK");
    assert!((2..12).contains(&again), "{again} steps are done again");
    bench.assert_accessible();

    // Nobody says so without a name.
    bench.role("button", "Wired and working").click();
    bench
        .css("[role=alert]")
        .wait_for_text("Write who says so.");
    sign(&bench, "Wired and working");
    bench.css(".proved").wait_for_text("says A. Fitter");
    bench.visit("#/sheet");
    bench
        .css(".sheet-proved")
        .wait_for_text("Wired and working: yes, for revision");
    let print = bench.print(Paper::A4).text();
    assert!(print.contains("Wired and working: yes"), "{print}");
}

#[test]
fn a_reload_goes_on_where_it_stood_and_back_changes_an_answer() {
    let bench = Browser::open("bench");
    start(&bench, GRAVEL);
    bench.visit("#/stand/stand");
    for _ in 0..4 {
        ok(&bench);
    }
    let stood = heading(&bench);
    wait_until_saved(&bench);
    bench.reload();
    bench.css("#stand-heading").wait_for_text(&stood);
    assert!(
        progress(&bench).starts_with("Step 5 of"),
        "{}",
        progress(&bench)
    );

    bench.role("button", "Step before").click();
    bench.css(".step-before").wait_for_text("Before: OK.");
    bench.role("button", "Step after").click();
    bench.css("#stand-heading").wait_for_text(&stood);

    // A gap below the limit is not OK, whatever was pressed.
    while !heading(&bench).contains("measure from blade to bar") {
        bench.role("button", "Step before").click();
    }
    let gap = heading(&bench);
    bench.css(".stand-step input[type=number]").fill("12");
    bench.press("Tab");
    bench.css(".answers button").nth(0).click();
    bench
        .css(".status-line")
        .wait_for_text("less than it must be");
    assert_eq!(heading(&bench), gap);
}

#[test]
fn the_count_counts_and_keys_answer() {
    let bench = Browser::open("bench");
    start(&bench, GRAVEL);
    bench.visit("#/stand/stand");
    let first = heading(&bench);
    bench.role("button", "Count 10 seconds").click();
    bench.css(".count-now").wait_for_text("take hold");
    bench.css(".count-now").wait_for_text("keep on");
    bench.css(".count-now").wait_for_text("let go");
    bench.css(".count-now strong").wait_for_text("10");
    // The focus is on the button: keys count within the step.
    bench.press("2");
    bench.css("#stand-heading").wait_for_text("What happened?");
    assert_eq!(bench.focused(), ("heading".into(), "What happened?".into()));
    bench.press("Escape");
    bench.css("#stand-heading").wait_for_text(&first);
    bench.press("1");
    bench.wait_for("the next step", || heading(&bench) != first);
    assert_eq!(bench.focused(), ("heading".into(), heading(&bench)));
    bench.press("ArrowLeft");
    bench.css("#stand-heading").wait_for_text(&first);
    bench.press("ArrowRight");
    bench.wait_for("forward again", || heading(&bench) != first);
    // Figures in a field stay in the field.
    if heading(&bench).contains("measure") {
        let before = heading(&bench);
        bench.css(".stand-step input[type=number]").focus();
        bench.type_text("21");
        assert_eq!(bench.css(".stand-step input[type=number]").value(), "21");
        assert_eq!(heading(&bench), before);
    }
}

#[test]
fn a_changed_layout_ends_the_proof_and_says_why() {
    let bench = Browser::open("bench");
    open_demo(&bench);
    prove_by_keys(&bench);
    bench.visit("#/layout");
    bench.role("button", "Clear all buttons").click();
    bench.visit("#/stand");
    bench
        .css(".proved-now")
        .wait_for_text("Wired and working: no longer; it was for revision");
    bench.css(".since").wait_for_text("outer paddle");
    bench.css(".outdated").wait_for_text("no longer count");
    bench.assert_accessible();
    // The same revision again, and it stands again.
    bench.role("button", "Undo").click();
    bench
        .css(".proved-now")
        .wait_for_text("Wired and working: yes");
}

#[test]
fn the_rider_misses_twice_in_one_place_then_tries_all_of_it() {
    let bench = Browser::open("bench");
    open_demo(&bench);
    bench.visit("#/stand");
    bench
        .css(".comes-first")
        .nth(0)
        .wait_for_text("The stand check of this revision comes first.");
    prove_by_keys(&bench);
    bench.role("link", "Go on to the rider check").click();
    bench
        .css("#stand-heading")
        .wait_for_text("Hold the bike still");
    ok_until(&bench, "“");
    while bench
        .css(".answers")
        .inner_role("button", "Nothing happened")
        .count()
        == 0
        || heading(&bench).contains("Brake")
    {
        ok(&bench);
    }
    let call = heading(&bench);
    answer(&bench, "Nothing happened").click();
    bench.wait_for("the next step", || heading(&bench) != call);
    assert_eq!(bench.css(".missed-twice").count(), 0);
    bench.role("button", "Step before").click();
    bench.css("#stand-heading").wait_for_text(&call);
    answer(&bench, "Something else happened").click();
    answer(&bench, "Another button").click();
    bench
        .css(".missed-twice")
        .wait_for_text("missed twice or more. Change the layout there.");
    bench.assert_accessible();
    if let Ok(shots) = std::env::var("STAND_SHOTS") {
        bench.screenshot(Path::new(&format!("{shots}/missed-twice.png")));
    }
    ok_until(&bench, "did not go as expected");
    bench.css(".missed-twice").inner_css("a").wait_until_shown();

    // Nothing changes: it is begun again, and every step is done.
    bench.role("button", "Begin this check again").click();
    bench
        .css("dialog[open]")
        .inner_role("button", "Begin again")
        .click();
    bench
        .css("#stand-heading")
        .wait_for_text("Hold the bike still");
    ok_until(&bench, "Every step is OK");
    sign(&bench, "Rider check done");
    bench.css("[role=alert]").wait_for_text("shop or the rider");
    choose(&bench, "rider");
    sign(&bench, "Rider check done");
    bench.role("link", "Go on to the first ride").click();

    bench
        .css(".stop-when")
        .wait_for_text("A brake is not there at the first pull.");
    ok_until(&bench, "stop with the");
    if let Ok(shots) = std::env::var("STAND_SHOTS") {
        bench.screenshot(Path::new(&format!("{shots}/first-ride.png")));
    }
    let stop = heading(&bench);
    answer(&bench, "Nothing happened").click();
    bench
        .css("#stand-heading")
        .wait_for_text("Stop the ride here");
    bench.role("button", "Mended: do this step again").click();
    bench.css("#stand-heading").wait_for_text(&stop);
    ok_until(&bench, "The rider says how it was");
    bench
        .css(".stand-step textarea")
        .fill("I found every paddle.");
    ok(&bench);
    choose(&bench, "rider");
    sign(&bench, "Tried by the rider");
    bench
        .css(".proved")
        .wait_for_text("Tried by the rider: yes");
    bench.css(".all-steps summary").click();
    bench
        .css(".all-steps")
        .wait_for_text("I found every paddle.");
    bench.assert_accessible();
}

#[test]
fn both_cards_print_what_the_plan_says() {
    let home = Browser::open("home");
    open_demo(&home);
    home.visit("#/card");
    let card = RoadCard::of(&demo(DemoId::Wren).plan);
    for size in ["wallet size", "large print"] {
        choose(&home, size);
        home.assert_accessible();
        let print = home.print(Paper::A4);
        if let Ok(shots) = std::env::var("STAND_SHOTS") {
            print.draw(Path::new(&shots), &format!("card-{}", &size[..5]));
        }
        assert_eq!(print.pages().len(), 1, "{size}");
        let text = flat(&print.text());
        let said = card.stop.iter().chain(&card.hands).chain(&card.borrowed);
        let fixed = card
            .not_shifting
            .iter()
            .chain(card.two_hands)
            .chain(card.home);
        let all = said.map(String::as_str).chain(fixed.copied());
        for line in all.chain([card.phone, &card.revision.1.to_string()]) {
            // Two sides stand beside each other, whose lines the reader of the file mixes.
            let start: Vec<&str> = line.split_whitespace().take(3).collect();
            assert!(
                text.contains(&start.join(" ")),
                "{size} lacks “{line}”: {text}"
            );
        }
        assert!(!text.contains("Print the card"));
    }
}

#[test]
fn no_card_of_any_template_is_cut_off() {
    let home = Browser::open("home");
    for template in [
        ROAD,
        "Road drop bar, 2x12, with tops pods and sprint buttons",
        "Aero bar, 2x12, two-button extension tips and base-bar levers",
        "Tricycle flat bar, 1x12, with parking latch",
    ] {
        start(&home, template);
        home.visit("#/card");
        home.css(".card-side").nth(1).wait_until_shown();
        let over: Vec<f64> = home.eval("return [...document.querySelectorAll('.card-side')].map(side => side.scrollHeight - side.clientHeight)");
        assert!(over.iter().all(|over| *over <= 1.0), "{template}: {over:?}");
    }
}

#[test]
fn every_page_keeps_within_a_narrow_window_and_large_text() {
    let bench = Browser::open("bench");
    open_demo(&bench);
    let shots = std::env::var("STAND_SHOTS").ok();
    let look = |name: &str| {
        for (width, height, dark) in [
            (1280, 800, false),
            (1024, 768, true),
            (768, 1024, false),
            (390, 844, false),
            (390, 844, true),
            (844, 390, false),
            (320, 640, false),
        ] {
            bench.viewport(width, height);
            bench.media(Media {
                dark,
                // Tones that are still on their way have no contrast to speak of.
                reduced_motion: true,
                ..Default::default()
            });
            assert!(overflow(&bench) <= 0.0, "{name} is wider than {width} px");
            bench.assert_accessible();
            let small: Vec<String> = bench.eval(
                "return [...document.querySelectorAll('.answers button, .walk button, .stand-result .acts > button:not(dialog *), .stand-word .acts > button:not(dialog *), .act')].filter(b => b.getBoundingClientRect().height < 64).map(b => b.textContent)",
            );
            assert_eq!(small, [""; 0], "{name} at {width} px: lower than 64 px");
            if let Some(shots) = &shots {
                bench.screenshot(Path::new(&format!("{shots}/{name}-{width}-{dark}.png")));
            }
        }
        bench.viewport(390, 844);
        bench.text_size(200);
        assert!(
            overflow(&bench) <= 0.0,
            "{name} is wider than the window at 200 %"
        );
        bench.text_size(100);
        bench.media(Media::default());
        bench.viewport(1280, 800);
    };
    bench.visit("#/card");
    look("card");
    bench.visit("#/stand");
    look("overview");
    bench.visit("#/stand/stand");
    look("squeeze");
    ok(&bench);
    look("gap");
    ok_until(&bench, "press the left outer paddle");
    look("button");
    answer(&bench, "Something else happened").click();
    look("instead");
    answer(&bench, "Only sometimes").click();
    ok_until(&bench, "1 step did not go as expected");
    look("result");
    bench.role("button", "Mended: do this step again").click();
    ok_until(&bench, "Every step is OK");
    look("word");
    sign(&bench, "Wired and working");
    bench.css(".proved").wait_until_shown();
    look("proved");
    bench.visit("#/sheet");
    bench.css(".sheet-proved").wait_until_shown();
}

/// Blanks of any width as one: text on paper breaks where it must.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}
