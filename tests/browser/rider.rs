//! The Rider screen: an interview without typing, by mouse, touch and keyboard.

use crate::desk::start;
use leverwright_tests::browser::{Browser, Element, Media};

const PODS: &str = "Road drop bar, 2x12, with tops pods and sprint buttons";

/// The row of choices about one thing for one hand.
fn chosen(browser: &Browser, name: &str) -> String {
    browser.eval(&format!(
        "const input = document.querySelector(\"input[name='{name}']:checked\");
         return input ? input.nextElementSibling.textContent : 'none'"
    ))
}

#[test]
fn a_hand_is_described_in_one_tap_and_taken_back_in_one_step() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    assert_eq!(chosen(&shop, "right-lets-go"), "not asked");
    shop.role(
        "button",
        "Right hand rests on the bar and does nothing else",
    )
    .click();
    shop.css(".one-tap p")
        .nth(1)
        .wait_for_text("rests on the bar");
    assert_eq!(
        chosen(&shop, "right-place"),
        "rests on the bar and does not press"
    );
    assert_eq!(chosen(&shop, "right-brakes-hard"), "does not");
    // What the tap does not say stays not asked.
    for unsaid in ["right-lets-go", "right-stays-on", "right-comfort"] {
        assert_eq!(chosen(&shop, unsaid), "not asked", "{unsaid}");
    }
    assert_eq!(chosen(&shop, "left-lets-go"), "not asked");
    shop.finger()
        .tap(&shop.role("button", "Left hand rides, presses and brakes easily"));
    shop.wait_for("the left hand does all", || {
        chosen(&shop, "left-lets-go") == "easily"
    });
    shop.role("button", "Undo").click();
    shop.wait_for("the left hand is not asked again", || {
        chosen(&shop, "left-lets-go") == "not asked"
    });
    assert_eq!(chosen(&shop, "right-brakes-hard"), "does not");
}

#[test]
fn an_answer_is_given_by_keyboard_alone_and_counted() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    for side in ["Left", "Right"] {
        shop.role(
            "button",
            &format!("{side} hand rides, presses and brakes easily"),
        )
        .click();
        // It is said, too, not only shown.
        shop.css("[role=status]").wait_for_text("Done: ");
    }
    // Pain, what the arms do by themselves, and positions are asked singly.
    shop.css(".lead")
        .wait_for_text("3 questions are still open");
    shop.eval::<bool>(
        "document.querySelector(\"input[name='left-lets-go']:checked\").focus(); return true",
    );
    shop.press("ArrowRight");
    shop.wait_for("the arrow key chose the next step", || {
        chosen(&shop, "left-lets-go") == "a little effort"
    });
    shop.role("button", "Undo").click();
    shop.wait_for("it was one step of undo", || {
        chosen(&shop, "left-lets-go") == "easily"
    });
}

#[test]
fn the_interview_takes_few_taps_and_no_typing() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    let taps = [
        "Left hand rides, presses and brakes easily",
        "Right hand rests on the bar and does nothing else",
    ];
    for tap in taps {
        shop.role("button", tap).click();
    }
    let mut count = taps.len();
    for name in [
        "position-tops",
        "position-hoods",
        "position-drops",
        "mounts",
        "left-comfort",
        "left-moves",
        "left-later",
        // Of a hand that rests, what decides whether it stays and what it brushes.
        "right-stays-on",
        "right-steady",
        "right-lets-go",
        "right-moves",
        "right-later",
    ] {
        let answer = shop.css(&format!("label:has(input[name='{name}'])")).nth(0);
        // The driver's own scrolling knows nothing of the strip that stays in view.
        answer.scroll_into_view();
        answer.click();
        count += 1;
    }
    shop.css(".lead")
        .wait_for_text("Every question is answered");
    assert!(count <= 40, "{count} taps");
}

#[test]
fn a_tap_on_the_drawn_hand_leads_to_its_answers() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    // Regions stand back to front; each leads to the answers about its own part.
    let parts: Vec<String> = shop.eval(
        "const names = [];
         for (const region of document.querySelectorAll('.one-tap:first-child .region.chosen')) {
             region.dispatchEvent(new MouseEvent('click', { bubbles: true }));
             names.push(document.activeElement.name);
         }
         return names",
    );
    for part in ["left-thumb", "left-index", "left-little", "left-heel"] {
        assert!(parts.iter().any(|name| name == part), "{part}: {parts:?}");
    }
}

#[test]
fn a_therapist_sees_numbers_and_codes_with_their_note() {
    let clinic = Browser::open("clinic");
    start(&clinic, PODS);
    assert!(!clinic.css("main").text().contains("closest ICF code d"));
    clinic.css("label.tick").nth(0).click();
    clinic.css("main").wait_for_text("not clinical ratings");
    let text = clinic.css("main").text();
    assert!(text.contains("closest ICF code d4403 releasing"), "{text}");
    assert!(text.contains("4 · does not"));
}

/// The label of a choice, by its name and words.
fn label<'a>(browser: &'a Browser, name: &str, words: &str) -> Element<'a> {
    let at: usize = browser.eval(&format!(
        "return [...document.querySelectorAll(\"label:has(input[name='{name}'])\")]
            .findIndex((label) => label.textContent.trim() === '{words}')"
    ));
    let found = browser.css(&format!("label:has(input[name='{name}'])"));
    let label = found.nth(at);
    label.scroll_into_view();
    label
}

fn note(browser: &Browser, name: &str) -> String {
    browser.css(&format!("[id='{name}-note']")).text()
}

/// Who said what, when and wearing what is there to read; a correction hides
/// nobody's word, pressing the chosen answer again takes it as said anew, and
/// one tap turns nothing that was seen into something nobody said.
#[test]
fn each_answer_shows_who_said_it_and_keeps_what_it_replaced() {
    let clinic = Browser::open("clinic");
    start(&clinic, PODS);
    let says = |words: &str| {
        clinic.wait_for(&format!("the note says {words}"), || {
            note(&clinic, "right-brakes-hard").starts_with(words)
        });
    };
    label(&clinic, "source", "seen by the fitter").click();
    label(&clinic, "right-brakes-hard", "effort").click();
    says("seen by the fitter, 2");

    label(&clinic, "source", "seen by a clinician").click();
    label(&clinic, "worn", "splint").click();
    // Going to another screen and back forgets neither.
    clinic.visit("#/layout");
    clinic.css(".face").nth(0).wait_until_shown();
    clinic.visit("#/rider");
    clinic
        .css(".evidence-now")
        .wait_for_text("seen by a clinician");
    assert!(clinic.css(".evidence-now").text().contains("splint"));
    label(&clinic, "right-brakes-hard", "effort").click();
    says("seen by a clinician, 2");
    let kept = note(&clinic, "right-brakes-hard");
    assert!(
        kept.contains("splint; before: effort (seen by the fitter"),
        "{kept}"
    );

    label(&clinic, "source", "told").click();
    let tap = clinic.role("button", "Right hand rides, presses and brakes easily");
    tap.scroll_into_view();
    tap.click();
    clinic.wait_for("the tap fills in the rest", || {
        chosen(&clinic, "right-lets-go") == "easily"
    });
    assert_eq!(chosen(&clinic, "right-brakes-hard"), "effort");
    says("seen by a clinician, 2");
    assert!(note(&clinic, "right-lets-go").contains("not asked singly"));
}

/// What nobody asked is told from what is easy, and what is noted in a folded
/// part is not overlooked.
#[test]
fn what_was_not_asked_and_what_is_folded_away_show_themselves() {
    let clinic = Browser::open("clinic");
    start(&clinic, PODS);
    let marks = || {
        clinic
            .css(".one-tap:first-child .hand-map .not-asked")
            .count()
    };
    let before = marks();
    assert!(before > 5, "{before}");
    let summary = || clinic.css("details.question > summary").nth(0).text();
    assert!(summary().contains("nothing noted"), "{}", summary());
    clinic
        .role("button", "Left hand rides, presses and brakes easily")
        .click();
    clinic.wait_for("thumb, index and middle finger are known", || {
        marks() == before - 3
    });
    label(&clinic, "left-ring", "effort")
        .script("arguments[0].closest('details').open = true; arguments[0].click()");
    clinic.wait_for("the folded part tells of it", || {
        summary().contains("noted: 1 answer")
    });
    assert_eq!(marks(), before - 4);
}

/// What answers are kept as stays in view, and what has the focus is not under it.
#[test]
fn how_answers_are_kept_stays_in_view() {
    let clinic = Browser::open("clinic");
    start(&clinic, PODS);
    clinic.viewport(1366, 768);
    clinic.css("input[name='mounts']").nth(0).focus();
    clinic.press("Space");
    let (_, top, _, height) = clinic.css(".evidence-now").rect();
    assert!(top >= 0.0 && top + height < 200.0, "{top} {height}");
    for _ in 0..12 {
        clinic.press("Shift+Tab");
        let hidden: bool = clinic.eval(
            "const strip = document.querySelector('.evidence-now').getBoundingClientRect();
             const at = document.activeElement.getBoundingClientRect();
             const inStrip = document.activeElement.closest('.evidence-now');
             return !inStrip && at.top < strip.bottom - 1 && at.bottom > strip.top + 1",
        );
        assert!(!hidden, "{:?}", clinic.focused());
    }
    clinic.role("button", "Change").click();
    assert_eq!(
        clinic.eval::<String>("return document.activeElement.name"),
        "source"
    );
    clinic.assert_accessible();
}

#[test]
fn one_hand_is_shown_at_a_time_on_a_telephone() {
    let home = Browser::open_phone("home");
    start(&home, PODS);
    let shown = |name: &str| -> bool {
        home.eval(&format!(
            "return document.querySelector(\"input[name='{name}']\").closest('.hand').offsetParent !== null"
        ))
    };
    assert!(shown("left-lets-go") && !shown("right-lets-go"));
    let right = home.css(".hand-switch label").nth(1);
    right.script("arguments[0].scrollIntoView({ block: 'center' })");
    home.finger().tap(&right);
    home.wait_for("the right hand is shown", || shown("right-lets-go"));
    assert!(!shown("left-lets-go"));
}

#[test]
fn axe_core_objects_to_nothing_on_the_rider() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    shop.css("details.question summary").click();
    for dark in [false, true] {
        shop.media(Media {
            dark,
            ..Media::default()
        });
        shop.assert_accessible();
    }
}

#[test]
fn pain_has_answers_and_parts_of_its_own_and_a_finding() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    let answers: Vec<String> = shop.eval(
        "return [...document.querySelectorAll(\"input[name='left-comfort']\")]
             .map((input) => input.nextElementSibling.textContent)",
    );
    assert_eq!(
        answers,
        [
            "never",
            "a little",
            "clearly",
            "badly",
            "too much to ride",
            "not asked"
        ]
    );
    shop.css("label:has(input[name='left-comfort'])")
        .nth(3)
        .click();
    shop.css(".where-it-hurts summary").nth(0).click();
    shop.css(".where-it-hurts label").nth(0).click();
    shop.visit("#/layout");
    shop.wait_for("a finding tells of it", || {
        let says = shop.css(".finding .says").texts();
        says.iter().any(|text| {
            text.contains("The left hand hurts badly") && text.contains("Its thumb hurts")
        })
    });
}

#[test]
fn what_is_open_is_listed_and_leads_to_the_hand() {
    let home = Browser::open_phone("home");
    start(&home, PODS);
    home.css(".still-open summary").click();
    let pain = home.role("link", "pain, right hand");
    pain.scroll_into_view();
    pain.click();
    home.wait_for("the right hand is shown and has the focus", || {
        home.eval(
            "return document.activeElement.name === 'right-comfort'
                 && document.activeElement.closest('.hand').offsetParent !== null",
        )
    });
}

#[test]
fn choosing_an_answer_moves_nothing() {
    let home = Browser::open_phone("home");
    home.viewport(320, 640);
    start(&home, PODS);
    // In the page, not in the window: choosing scrolls nothing, but a message may.
    let places = || -> Vec<[f64; 4]> {
        home.eval(
            "return [...document.querySelectorAll('.interview .segment, .interview h3')]
               .filter((e) => e.offsetParent && !e.closest('.hand-switch'))
               .map((e) => e.getBoundingClientRect())
               .map((r) => [r.left, Math.round(r.top + scrollY), r.width, r.height])",
        )
    };
    let before = places();
    for answer in ["easily", "a little effort", "effort", "great effort"] {
        home.eval_with::<()>(
            "const row = [...document.querySelectorAll('.interview label.segment')]
               .filter((e) => e.offsetParent && e.textContent.trim() === arguments[0]);
             row[0].click()",
            vec![answer.into()],
        );
        home.css(".status-line").wait_for_text("left hand");
        assert_eq!(places(), before, "{answer}");
    }
}

#[test]
fn a_one_tap_answer_is_marked_as_taken_and_the_others_are_offers() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    let rests = "Right hand rests on the bar and does nothing else";
    let pressed = |name: &str| shop.role("button", name).attribute("aria-pressed");
    assert_eq!(pressed(rests).as_deref(), Some("false"));
    assert_eq!(
        pressed("Right hand: not asked").as_deref(),
        Some("true"),
        "nothing was said of it yet"
    );
    let offer = shop.role("button", rests).style("background-color");
    shop.role("button", rests).click();
    shop.wait_for("it is taken", || pressed(rests).as_deref() == Some("true"));
    assert_ne!(shop.role("button", rests).style("background-color"), offer);
    assert_eq!(pressed("Right hand: not asked").as_deref(), Some("false"));
    shop.css(".status-line")
        .wait_for_text("Done: right hand rests on the bar");
    shop.role("button", "Undo this").click();
    shop.wait_for("it is an offer again", || {
        pressed(rests).as_deref() == Some("false")
    });
}
