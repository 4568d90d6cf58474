//! The Gears screen: drivetrains in, shift plans, crossovers moved, plots on page and paper.

use std::path::Path;

use leverwright_tests::browser::{Browser, Media, Paper};

use crate::desk::{GRAVEL, ROAD, overflow, right_hand_rests, start};

/// A plan from a template, on the Gears screen.
fn gears(browser: &Browser, template: &str) {
    start(browser, template);
    browser.visit("#/gears");
    browser
        .css(".gear-plot .gear-mark")
        .nth(0)
        .wait_until_shown();
}

/// The open plan becomes a ladder, with its buttons.
fn ladder(browser: &Browser) {
    choose(browser, "Ladder");
    browser.css(".plan-change").wait_for_text("on no button");
    browser.role("button", "Change plan and buttons").click();
    browser.css(".crossover .handle").nth(1).wait_until_shown();
}

/// Chooses a segment by its words, by pointer.
fn choose(browser: &Browser, words: &str) {
    let radio = browser.role("radio", words);
    radio.scroll_into_view();
    browser.mouse().tap(&radio);
    browser.wait_for(&format!("{words} is chosen"), || radio.is_selected());
}

/// Types into a field as people do, and leaves it.
fn enter(browser: &Browser, id: &str, text: &str) {
    browser.css(&format!("input#{id}")).fill(text);
    browser.press("Tab");
}

fn note(browser: &Browser, id: &str) -> String {
    browser.css(&format!("#{id}-note")).text()
}

fn looks(browser: &Browser, name: &str) {
    let shots = std::env::var("GEARS_SHOTS").ok();
    for (width, dark) in [
        (1280, false),
        (1280, true),
        (390, false),
        (390, true),
        (320, false),
    ] {
        browser.viewport(width, 844);
        browser.media(Media {
            dark,
            ..Default::default()
        });
        if let Some(shots) = &shots {
            browser.eval::<()>("scrollTo(0, 0)");
            browser.screenshot_of_page(Path::new(&format!("{shots}/{name}-{width}-{dark}.png")));
        }
        assert!(overflow(browser) <= 0.0, "{name} is wider than {width} px");
        browser.assert_accessible();
    }
    browser.viewport(640, 800);
    browser.text_size(200);
    assert!(overflow(browser) <= 0.0, "{name} is wider with large text");
    if let Some(shots) = &shots {
        browser.screenshot_of_page(Path::new(&format!("{shots}/{name}-large.png")));
    }
}

#[test]
fn a_double_becomes_a_ladder_and_one_crossover_is_moved_by_keyboard() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    right_hand_rests(&shop);
    shop.visit("#/layout");
    shop.role("button", "All shifting left").click();
    assert!(!shop.css(".tray").text().contains("rung up"));
    shop.visit("#/gears");
    shop.css(".gear-plot .gear-mark").nth(0).wait_until_shown();
    ladder(&shop);
    let words = shop
        .css(".crossover-row")
        .nth(0)
        .inner_css(".crossover-words");
    let before = words.text();

    // One cog at a time up the cassette, until a rule speaks of the jump.
    shop.tab_to("slider", "Crossover up, 34 to 50");
    shop.press("ArrowRight");
    shop.wait_for("it moved", || words.text() != before);
    let moved = words.text();
    assert!(moved.starts_with("34×14 to 50×17"), "{moved}");
    assert_eq!(shop.focused().1, "Crossover up, 34 to 50");
    for _ in 0..2 {
        shop.press("Shift+ArrowRight");
    }
    shop.css(".gears-findings").wait_for_text("is a step of");
    let finding = shop.css(".gears-findings .finding");
    finding
        .nth(0)
        .inner_role("button", "Take the crossovers worked out")
        .click();
    words.wait_for_text(&before);

    // The tray of the layout follows the plan.
    shop.visit("#/layout");
    shop.css(".tray").wait_for_text("rung up");

    shop.visit("#/sheet");
    shop.role("checkbox", "Add the gear card").click();
    shop.css(".sheet .gear-plot").wait_until_shown();
    let paper = shop.print(Paper::A4);
    let text = paper.text();
    for said in [
        "Gear card",
        "50/34 with 11-34, 12 cogs",
        "Crossover up: 34×15 to 50×19",
        "rung up",
    ] {
        assert!(text.contains(said), "the print lacks {said:?}: {text}");
    }
    let card = paper.pages();
    let card: Vec<&String> = card.iter().filter(|page| page.contains("50×12")).collect();
    assert_eq!(card.len(), 1, "the gear card is one page");
    assert!(card[0].contains("50×11") && card[0].contains("34×34"));
    if let Ok(shots) = std::env::var("GEARS_SHOTS") {
        paper.draw(Path::new(&shots), "sheet");
    }
}

#[test]
fn the_ladder_looks_right_at_every_width() {
    let shop = Browser::open("shop");
    gears(&shop, ROAD);
    looks(&shop, "separate");
    shop.text_size(100);
    shop.viewport(1280, 844);
    ladder(&shop);
    looks(&shop, "ladder");
}

#[test]
fn a_single_ring_has_its_plot_table_and_no_crossovers() {
    let shop = Browser::open("shop");
    gears(&shop, GRAVEL);
    assert_eq!(shop.css(".gear-mark[role=option]").count(), 12);
    assert_eq!(shop.css(".crossover").count(), 0);
    assert_eq!(shop.css(".step-bar").count(), 11);
    shop.css(".gears-table summary").click();
    shop.css(".gears-table tbody tr").nth(11).wait_until_shown();
    // A 1x bike follows no plan that needs a front derailleur.
    let rows = shop.css(".compare tbody tr").texts();
    assert!(
        rows.iter()
            .any(|row| row.starts_with("Ladder") && row.contains("needs a front derailleur")),
        "{rows:?}"
    );
    looks(&shop, "single");
}

#[test]
fn a_drivetrain_that_no_list_has_is_entered_by_hand() {
    let home = Browser::open("home");
    gears(&home, ROAD);
    enter(&home, "rings", "46 38 24");
    home.css(".drivetrain-words")
        .wait_for_text("46/38/24 with 11-34, 12 cogs");
    enter(&home, "cogs", "36, 30, 25, 21, 18, 15, 13");
    home.css(".drivetrain-words")
        .wait_for_text("46/38/24 with 13-36, 7 cogs");
    enter(&home, "wheel", "1520 mm");
    assert_eq!(home.css("input#wheel").value(), "1520");
    assert_eq!(home.css("input#cogs").value(), "13 15 18 21 25 30 36");
    assert_eq!(home.css(".gear-mark[role=option]").count(), 21);
    choose(&home, "Development");
    home.css(".axis-label").wait_for_text("metres for one turn");
    // 24×36 of 1.52 m.
    home.css(".gear-mark").nth(0).focus();
    home.css(".gear-readout")
        .wait_for_text("development 1.01 m");
    for key in ["ArrowUp", "ArrowUp", "End"] {
        home.press(key);
    }
    assert!(
        home.focused().1.starts_with("46×13"),
        "{:?}",
        home.focused()
    );
    home.role("combobox", "Usual set").wait_until_shown();
    looks(&home, "triple");
}

#[test]
fn what_cannot_be_is_refused_at_its_field_and_stays_as_typed() {
    let shop = Browser::open("shop");
    gears(&shop, ROAD);
    let words = shop.css(".drivetrain-words").text();
    for (field, typed, sentence) in [
        ("rings", "0 50", "A chainring does not have 0 teeth"),
        ("rings", "20 30 40 50", "1 to 3 chainrings, not 4"),
        ("cogs", "11 13 12", "out of order"),
        ("cogs", "11 11 12", "stand there twice"),
        ("cogs", "many", "no number of teeth"),
        ("wheel", "28-600", "No tyre has a bead seat of 600 mm"),
        ("crank", "long", "is no length"),
        ("crank", "9", "60"),
    ] {
        enter(&shop, field, typed);
        shop.css(&format!("#{field}-note")).wait_for_text(sentence);
        assert_eq!(shop.css(&format!("input#{field}")).value(), typed);
        assert_eq!(
            shop.css(&format!("input#{field}"))
                .attribute("aria-invalid")
                .as_deref(),
            Some("true")
        );
        assert_eq!(
            shop.css(".drivetrain-words").text(),
            words,
            "{field} {typed}"
        );
    }
    shop.assert_accessible();
    enter(&shop, "rings", "34 50");
    shop.wait_for("the field is right again", || {
        note(&shop, "rings") == "such as 34 50"
    });
    // A ladder made impossible says so, and nothing is lost.
    ladder(&shop);
    for cog in 1..11 {
        for ring in 0..2 {
            shop.css(&format!("#gear-{ring}-{cog}")).focus();
            shop.css(".gear-readout .forbid").click();
        }
    }
    shop.css(".gears-trouble")
        .wait_for_text("No ladder leads through");
    shop.css(".gears-findings")
        .inner_role("button", "Allow all gears again")
        .click();
    shop.css(".crossover .handle").nth(1).wait_until_shown();
}

#[test]
fn a_crossover_follows_the_mouse() {
    let shop = Browser::open("shop");
    gears(&shop, ROAD);
    ladder(&shop);
    let row = shop
        .css(".crossover-row")
        .nth(0)
        .inner_css(".crossover-words");
    let before = row.text();
    let handle = shop.css(".crossover .handle").nth(0);
    handle.scroll_into_view();
    let (from, mut to) = (handle.centre(), handle.centre());
    to.x += 30.0;
    let mouse = shop.mouse();
    mouse.press(from);
    mouse.move_to(to);
    shop.wait_for("it follows", || row.text() != before);
    mouse.release();
    shop.css(".status-line")
        .wait_for_text("Done: move the crossover up");
    shop.role("button", "Undo").click();
    row.wait_for_text(&before);
}

#[test]
fn teeth_that_are_not_counted_yet_lead_to_their_field() {
    let shop = Browser::open("shop");
    gears(&shop, ROAD);
    ladder(&shop);
    shop.visit("#/bike");
    let cogs = shop.role("spinbutton", "Cogs");
    cogs.wait_until_shown();
    cogs.focus();
    shop.press("Control+a");
    shop.type_text("11");
    shop.press("Tab");
    shop.css(".status-line").wait_for_text("Undo this");
    shop.visit("#/layout");
    shop.role("link", "Gears: teeth of the cogs").click();
    shop.wait_for("the field has the focus", || {
        shop.focused().1 == "Teeth of the cogs"
    });
    shop.css(".gears-trouble")
        .wait_for_text("The teeth of the cogs are not entered yet");
    assert_eq!(shop.css(".gear-plot").count(), 0);
    shop.assert_accessible();
    shop.css("input#cogs")
        .fill("11 12 13 14 16 18 20 22 25 28 32");
    shop.press("Tab");
    shop.css(".crossover .handle").nth(1).wait_until_shown();
}

#[test]
fn on_a_telephone_a_paired_plan_is_read_and_a_tap_moves_a_crossover() {
    let home = Browser::open_phone("home");
    gears(&home, ROAD);
    choose(&home, "Paired");
    home.css(".net-steps summary").click();
    home.css(".net-steps .chosen").nth(0).wait_until_shown();
    // Two rear shifts from 34×17: 50×21.
    home.css(".net-steps tbody").nth(0).wait_for_text("+19");
    choose(&home, "Speed");
    home.css(".axis-label")
        .wait_for_text("km/h at 60 to 90 rpm");
    looks(&home, "paired");
    home.text_size(100);
    home.viewport(390, 844);
    ladder(&home);
    let row = home
        .css(".crossover-row")
        .nth(1)
        .inner_css(".crossover-words");
    let before = row.text();
    let harder = home
        .css(".crossover-row:nth-child(2) .stepper button")
        .nth(1);
    // Clear of the bar at the lower edge.
    harder.script("arguments[0].scrollIntoView({ block: 'center' })");
    home.finger().tap(&harder);
    home.wait_for("it moved", || row.text() != before);
    assert!(row.text().starts_with("50×24 to"), "{}", row.text());

    // The same by a finger on the handle.
    let before = row.text();
    let handle = home.css(".crossover .handle").nth(1);
    handle.script("arguments[0].scrollIntoView({ block: 'center' })");
    let from = handle.centre();
    let finger = home.finger();
    finger.press(from);
    finger.move_to(from.offset(-14.0, 0.0));
    finger.move_to(from.offset(-28.0, 0.0));
    home.wait_for("it follows", || row.text() != before);
    let there = row.text();
    finger.release();
    home.css(".status-line")
        .wait_for_text("Done: move the crossover down");
    assert_eq!(row.text(), there);
    // A swipe that the browser takes for itself changes nothing.
    finger.press(handle.centre());
    finger.interrupt();
    assert_eq!(row.text(), there);
}
