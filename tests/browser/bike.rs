//! The Bike screen: controls, brakes, other thumb work, the shift system.

use crate::desk::start;
use leverwright_tests::browser::{Browser, Media};

const PODS: &str = "Road drop bar, 2x12, with tops pods and sprint buttons";

fn open(browser: &Browser) {
    start(browser, PODS);
    browser.visit("#/bike");
    browser.role("heading", "Controls").wait_until_shown();
}

/// The place of every control on the screen.
fn places(browser: &Browser) -> Vec<String> {
    browser.css(".control-place").texts()
}

fn unfold(browser: &Browser, place: &str) {
    browser.eval::<bool>(&format!(
        "for (const card of document.querySelectorAll('.control-card')) {{
             if (card.querySelector('.control-place').textContent === '{place}') card.open = true;
         }}
         return true"
    ));
}

#[test]
fn a_control_is_added_mirrored_and_removed_in_steps_that_undo() {
    let shop = Browser::open("shop");
    open(&shop);
    let before = places(&shop);
    shop.role("button", "Add on the left").click();
    shop.wait_for("one control more", || {
        places(&shop).len() == before.len() + 1
    });
    shop.role("button", "Undo").click();
    shop.wait_for("it is gone again", || places(&shop) == before);

    unfold(&shop, "right sprint button");
    shop.role("button", "Remove the right sprint button")
        .click();
    shop.wait_for("the sprint button is gone", || {
        !places(&shop).iter().any(|p| p == "right sprint button")
    });
    unfold(&shop, "left sprint button");
    shop.role("button", "Put the left sprint button on the other side")
        .click();
    shop.wait_for("it sits on the right", || {
        places(&shop).iter().any(|p| p == "right sprint button")
    });
}

#[test]
fn all_brakes_go_on_one_lever_and_a_tested_throw_is_noted() {
    let shop = Browser::open("shop");
    open(&shop);
    shop.role("button", "All brakes on the left brake-shift lever")
        .click();
    let pulls = |wheel: &str| -> Vec<bool> {
        shop.eval(&format!(
            "return [...document.querySelectorAll('.lever-run label.tick')]
                 .filter((label) => label.textContent === 'pulls the {wheel}')
                 .map((label) => label.querySelector('input').checked)"
        ))
    };
    shop.wait_for("the left lever pulls both wheels", || {
        pulls("front wheel") == [true, false] && pulls("rear wheel") == [true, false]
    });
    shop.visit("#/layout");
    shop.css("main").wait_for_text("throw");
    shop.visit("#/bike");
    shop.css(".lever-run .segment").nth(0).click();
    shop.wait_for("the throw is tested", || {
        shop.eval(
            "return document.querySelector('.lever-run input[type=radio]:checked')
            .nextElementSibling.textContent === 'tested: they do'",
        )
    });
    // Pressed once more it changes nothing, and what was tested stays.
    shop.role("button", "All brakes on the left brake-shift lever")
        .click();
    shop.visit("#/layout");
    shop.css(".finding .says").nth(0).wait_until_shown();
    let says = shop.css(".finding .says").texts();
    assert!(!says.iter().any(|text| text.contains("throw")), "{says:?}");
}

/// The name of the choice, or the id of the place, that has the focus.
fn focused_field(browser: &Browser) -> String {
    browser.eval("return document.activeElement.name || document.activeElement.id")
}

#[test]
fn a_finding_leads_to_the_field_where_it_is_noted() {
    let shop = Browser::open("shop");
    open(&shop);
    shop.role("button", "All brakes on the left brake-shift lever")
        .click();
    shop.visit("#/layout");
    let link = "Bike: throw test of the left brake-shift lever";
    let way = shop.role("link", link).nth(0);
    way.scroll_into_view();
    way.click();
    shop.role("heading", "Bike").wait_until_shown();
    shop.wait_for("the throw test has the focus", || {
        focused_field(&shop).starts_with("throw-")
    });
    // On the rider's screen a link leads to the hand's own answers.
    shop.visit("#/layout");
    let way = shop.role("link", "Rider: pain, right hand").nth(0);
    way.scroll_into_view();
    way.click();
    shop.wait_for("the answers about pain have the focus", || {
        focused_field(&shop) == "right-comfort"
    });
}

#[test]
fn open_points_are_named_marked_and_lead_to_their_fields() {
    let shop = Browser::open("shop");
    open(&shop);
    let links = || shop.css("main > .spots a").texts();
    shop.wait_for("the open points are named", || {
        links().contains(&"chain catcher".to_owned())
            && links().contains(&"what the shift system can program".to_owned())
    });
    let marks = || shop.css(".open-mark").count();
    let (named, marked) = (links().len(), marks());
    shop.role("link", "chain catcher").click();
    shop.wait_for("the field has the focus", || {
        focused_field(&shop) == "chain-catcher"
    });
    shop.press("ArrowLeft");
    shop.wait_for("it is noted and no longer named nor marked", || {
        links().len() == named - 1 && marks() == marked - 1
    });
    // A folded control unfolds for its blade.
    shop.role("link", "blade of the left brake-shift lever")
        .click();
    shop.wait_for("the blade has the focus", || {
        focused_field(&shop).starts_with("blade-")
    });
}

#[test]
fn a_number_out_of_range_is_refused_in_words_and_the_field_shows_what_holds() {
    let shop = Browser::open("shop");
    open(&shop);
    let width = shop.role("spinbutton", "Bar width (mm)");
    width.fill("5000");
    shop.press("Tab");
    shop.css(".status-line").wait_for_text("350 mm to 1000 mm");
    assert_eq!(width.value(), "420");
}

#[test]
fn what_buttons_do_is_noted_as_found() {
    let shop = Browser::open("shop");
    open(&shop);
    shop.visit("#/layout");
    shop.role("button", "Clear all buttons").click();
    shop.visit("#/bike");
    shop.role("button", "Write down what the buttons do now as “was”")
        .click();
    shop.visit("#/sheet");
    shop.css("td.col-was").nth(0).wait_until_shown();
    let was = shop.css("td.col-was").texts();
    // Fixed buttons did and do what they are fixed to; all others were blank.
    let fixed = ["rear easier", "rear harder"];
    assert!(
        was.iter()
            .all(|words| words.contains("blank") || fixed.contains(&words.as_str())),
        "{was:?}"
    );
    let blank = was.iter().filter(|words| words.contains("blank"));
    assert_eq!(blank.count(), was.len() - 2, "{was:?}");
}

#[test]
fn axe_core_objects_to_nothing_on_the_bike() {
    let shop = Browser::open("shop");
    open(&shop);
    shop.eval::<bool>(
        "for (const fold of document.querySelectorAll('main details')) fold.open = true; return true",
    );
    for dark in [false, true] {
        shop.media(Media {
            dark,
            ..Media::default()
        });
        shop.assert_accessible();
    }
}

#[test]
fn it_reflows_at_320_pixels() {
    let shop = Browser::open("shop");
    open(&shop);
    shop.viewport(320, 640);
    let overflow: i64 = shop
        .eval("return document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assert!(overflow <= 0, "{overflow} px too wide");
}

#[test]
fn what_the_system_can_program_lies_in_rows_that_can_be_read() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    shop.visit("#/bike");
    let over: Vec<String> = shop.eval(
        "const boxes = [...document.querySelectorAll('fieldset.ticks label')]
             .map((e) => [e.textContent, e.getBoundingClientRect()]).filter(([, r]) => r.width > 0);
         const meet = (a, b) => a.left < b.right - 1 && b.left < a.right - 1
             && a.top < b.bottom - 1 && b.top < a.bottom - 1;
         const over = [];
         boxes.forEach(([name, a], i) => boxes.slice(i + 1).forEach(([other, b]) => {
             if (meet(a, b)) over.push(name + ' / ' + other);
         }));
         if (boxes.length < 10) over.push('only ' + boxes.length);
         return over",
    );
    assert!(over.is_empty(), "{over:?}");
}
