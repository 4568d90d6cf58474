//! The Review screen: reading, commenting, accepting, deciding, looking back, printing.

use std::path::Path;

use leverwright_tests::browser::{Browser, Element, Media, Paper};

use crate::desk::{ROAD, overflow, right_hand_rests, start, wait_until_saved};

/// A plan whose right hand rests, all shifting on the left, on a clinic's computer.
fn clinic() -> Browser {
    let clinic = Browser::open("clinic");
    clinic.viewport(1366, 768);
    start(&clinic, ROAD);
    right_hand_rests(&clinic);
    clinic.visit("#/layout");
    clinic.role("button", "All shifting left").click();
    clinic.visit("#/review");
    clinic
}

pub fn sit_down(browser: &Browser, role: &str, name: &str) {
    choose(browser, "review-role", role);
    browser.css(".review-seat input[type=text]").fill(name);
}

/// Chooses one of a row of answers by its words, as a pointer does.
pub fn choose(browser: &Browser, name: &str, words: &str) {
    let row = format!(".segment:has(input[name='{name}'])");
    let all = browser.css(&row).texts();
    let at = all.iter().position(|text| text == words);
    let one = browser
        .css(&row)
        .nth(at.unwrap_or_else(|| panic!("{words:?} is not among {all:?}")));
    one.scroll_into_view();
    one.click();
}

/// Ticks a box by its words.
pub fn tick(part: &Element<'_>, words: &str) {
    let all = part.inner_css(".tick").texts();
    let at = all.iter().position(|text| text == words);
    let one = part
        .inner_css(".tick")
        .nth(at.unwrap_or_else(|| panic!("{words:?} is not among {all:?}")));
    one.scroll_into_view();
    one.click();
}

/// Chooses from the browser's own menu by typing the first letters, as a keyboard does.
fn choose_from(menu: &Element<'_>, browser: &Browser, letters: &str) {
    menu.focus();
    browser.type_text(letters);
}

/// Presses a button that may stand below the edge of the window.
pub fn press(button: &Element<'_>) {
    button.scroll_into_view();
    button.click();
}

/// Goes to a screen as people do, so that the page stays loaded.
fn go_to(browser: &Browser, screen: &str) {
    if screen == "review" {
        browser.css(".more-button").click();
    }
    browser
        .css(&format!(".screens a[href='#/{screen}']"))
        .click();
    browser.wait_for("the screen is there", || {
        browser.css("main h1:not(article h1)").text().to_lowercase() == screen
    });
}

fn clear(browser: &Browser) {
    browser.role("button", "Clear all buttons").click();
    browser
        .css("[role=status]")
        .wait_for_text("Clear the layout");
}

pub fn record_comment(browser: &Browser, words: &str) {
    browser.css("#review-comment-text").fill(words);
    press(&browser.role("button", "Record the comment"));
}

/// Fills in “go on after these changes” for the left hood button.
pub fn decide_on_changes(browser: &Browser) {
    choose(browser, "review-decision", "Go on after these changes");
    press(&browser.role("button", "Add a change"));
    browser
        .css(".review-change textarea")
        .fill("Leave it blank: the thumb reaches it only by letting go");
    choose(browser, "review-basis", "in person");
    tick(
        &browser.css(".review-actions .review-ticks").nth(0),
        "Brakes hard",
    );
}

#[test]
fn a_comment_on_a_button_reaches_who_it_is_for() {
    let clinic = clinic();
    record_comment(&clinic, "Looks far for the thumb.");
    clinic
        .css("#review-comment-problem")
        .wait_for_text("Say first who sits here");
    sit_down(&clinic, "clinician", "K. Example");
    choose_from(&clinic.css(".review-form select").nth(0), &clinic, "1 left");
    choose(&clinic, "review-audience", "rider and clinician only");
    press(&clinic.role("button", "Record the comment"));
    let first = clinic.css(".review-comments > li").nth(0);
    first.wait_for_text("Looks far for the thumb.");
    assert!(
        first.text().contains("1 left hood button"),
        "{}",
        first.text()
    );
    assert!(first.text().contains("K. Example, clinician"));
    assert_eq!(clinic.css("#review-comment-text").value(), "");

    // A finding is commented from where it stands, for everyone.
    let card = clinic.css(".review-cards > li").nth(0);
    press(&card.inner_css(":scope > button"));
    record_comment(&clinic, "Seen: it is a short way.");
    clinic
        .css(".review-comments > li")
        .nth(1)
        .wait_for_text("Finding: ");

    // The shop reads only what is for everyone.
    choose(&clinic, "review-role", "shop");
    clinic.wait_for("one comment is left", || {
        clinic.css(".review-comments > li").count() == 1
    });
    choose(&clinic, "review-role", "clinician");
    wait_until_saved(&clinic);
    go_to(&clinic, "layout");
    press(&clinic.css(".slot .to-menu").nth(0));
    clinic
        .css("dialog.button-menu")
        .wait_for_text("Looks far for the thumb. (K. Example, clinician");
    clinic.reload();
    clinic.visit("#/review");
    sit_down(&clinic, "rider", "");
    assert_eq!(clinic.css(".review-comments > li").count(), 2);
}

#[test]
fn hand_use_is_accepted_with_a_reason_and_a_brake_never_is() {
    let clinic = clinic();
    sit_down(&clinic, "clinician", "K. Example");
    let cards = clinic.css(".review-cards .finding .says").texts();
    let at = cards
        .iter()
        .position(|text| text.contains("only one that steers"));
    let at = at.unwrap_or_else(|| panic!("not among {cards:?}"));
    assert!(
        !cards
            .iter()
            .any(|text| text.contains("brake is out of reach"))
    );
    let never: Vec<String> = clinic.css(".review-findings li").texts();
    assert!(
        never
            .iter()
            .any(|text| text.contains("brake is out of reach"))
    );
    assert!(
        never.iter().any(|text| text.starts_with("Why: ")),
        "{never:?}"
    );

    let card = clinic.css(".review-cards .finding").nth(at);
    press(&card.inner_css("summary"));
    // Who sits here was asked already.
    assert_eq!(card.inner_css("input[type=text]").value(), "K. Example");
    assert_eq!(card.inner_css("input[type=radio]:checked").count(), 1);
    press(&card.inner_css("button[type=submit]"));
    card.inner_css("[role=alert]:not(:empty)")
        .wait_for_text("Write why it may stand.");
    card.inner_css("textarea").fill("Seen on the closed lane.");
    go_to(&clinic, "rider");
    go_to(&clinic, "review");
    let card = clinic.css(".review-cards .finding").nth(at);
    assert_eq!(
        card.inner_css("textarea").value(),
        "Seen on the closed lane."
    );
    press(&card.inner_css("button[type=submit]"));
    clinic
        .css(".review-cards .accepted")
        .wait_for_text("K. Example, clinician");
    // The focus is at the card where it stands now.
    clinic.wait_for("the focus stays at the finding", || {
        clinic.eval::<bool>(
            "const card = document.activeElement.closest('.review-cards > li'); return !!card && !!card.querySelector('.accepted')",
        )
    });

    // On the Layout screen, a brake and what the shop settles are refused with the reason.
    go_to(&clinic, "layout");
    let said = |words: &str| {
        let says = clinic.css(".finding .says").texts();
        let at = says.iter().position(|text| text.contains(words));
        clinic
            .css(".finding")
            .nth(at.unwrap_or_else(|| panic!("{words:?} not among {says:?}")))
    };
    let brake = said("brake is out of reach");
    assert!(
        brake
            .text()
            .contains("This can never be accepted: it must be fixed.")
    );
    assert_eq!(brake.inner_css("form, details.accept").count(), 0);
    let shops = said("still the generic guess");
    press(&shops.inner_css("summary"));
    shops.inner_css("textarea").fill("It will do.");
    press(&shops.inner_css("button[type=submit]"));
    shops
        .inner_css("[role=alert]:not(:empty)")
        .wait_for_text("This one is for the shop: leave a comment on it.");
    // What was written stays at hand.
    assert_eq!(
        clinic.eval::<String>("return document.activeElement.value"),
        "It will do."
    );
}

#[test]
fn a_decision_stands_for_its_revision_only() {
    let clinic = clinic();
    sit_down(&clinic, "clinician", "K. Example");
    let record = clinic.role("button", "Record the decision");
    let problem = clinic.css("#review-decide-problem");
    press(&record);
    problem.wait_for_text("Choose one of the five decisions first.");
    let focus_at = |field: &str| {
        let at = format!("return document.activeElement.matches({field:?})");
        clinic.wait_for("the focus is where something is missing", || {
            clinic.eval::<bool>(&at)
        });
    };
    focus_at("[name=review-decision]");
    choose(&clinic, "review-decision", "Go on after these changes");
    choose(&clinic, "review-basis", "in person");
    press(&record);
    problem.wait_for_text("needs at least one change. Tie one to a button.");
    focus_at("#review-add-change");
    decide_on_changes(&clinic);

    // What is typed stays on the way over another screen.
    go_to(&clinic, "layout");
    go_to(&clinic, "review");
    assert!(
        clinic
            .css(".review-change textarea")
            .value()
            .starts_with("Leave it blank")
    );
    press(&record);
    let first = clinic.css(".review-record").nth(0);
    first.wait_for_text("Given for what the plan says now.");
    for words in [
        "K. Example, clinician",
        "1 left hood button: Leave it blank: the thumb reaches it only by letting go",
        "left hand: brakes hard",
        "in person",
    ] {
        assert!(first.text().contains(words), "{words:?}: {}", first.text());
    }
    assert_eq!(clinic.css(".review-change").count(), 0);
    clinic.assert_accessible();

    // The layout changes: the record says that it is for an older one, and how it differs.
    go_to(&clinic, "layout");
    clear(&clinic);
    go_to(&clinic, "review");
    let older = clinic.css(".review-record.older");
    older.wait_for_text("Given for an older revision");
    let text = older.text();
    assert!(
        text.contains("Left outer paddle: blank, was “rear easier”"),
        "{text}"
    );
    clinic
        .css("[aria-labelledby=review-about]")
        .wait_for_text("Changed since the review of revision");

    // Another stands beside it; the first is added to.
    choose(
        &clinic,
        "review-decision",
        "Not enough information, or outside my scope",
    );
    choose(&clinic, "review-basis", "plan only");
    press(&record);
    clinic.wait_for("two stand side by side", || {
        clinic.css(".review-record").count() == 2
    });
    let acts = clinic.css(".review-record.older .review-note");
    press(&acts.nth(0).inner_css("summary"));
    acts.nth(0)
        .inner_css("textarea")
        .fill("Gloves on that day.");
    press(&acts.nth(0).inner_css("button"));
    clinic
        .css(".review-record.older .review-added")
        .wait_for_text("Gloves on that day. (K. Example");

    // Only who wrote it withdraws it.
    clinic.css(".review-seat input[type=text]").fill("L. Other");
    clinic
        .css(".review-record.older")
        .wait_for_text("To be withdrawn only by who wrote it: K. Example, clinician");
    assert_eq!(clinic.css(".review-record.older .review-note").count(), 1);
    clinic
        .css(".review-seat input[type=text]")
        .fill("K. Example");
    let withdraw = clinic.css(".review-record.older .review-note").nth(1);
    press(&withdraw.inner_css("summary"));
    press(&withdraw.inner_css("button"));
    withdraw
        .inner_css("[role=alert]")
        .wait_for_text("Withdrawing a review needs words.");
    withdraw
        .inner_css("textarea")
        .fill("The layout was changed.");
    press(&withdraw.inner_css("button"));
    clinic
        .css(".review-record.withdrawn")
        .wait_for_text("Given for an older revision");
    let withdrawn = clinic.css(".review-record.withdrawn").text();
    assert!(
        withdrawn.contains("Withdrawn by K. Example, clinician, 20")
            && withdrawn.contains(": The layout was changed."),
        "{withdrawn}"
    );
    // It is added to still, and withdrawn once.
    let acts = clinic.css(".review-record.withdrawn .review-note summary");
    assert_eq!(acts.count(), 1);
    // Undo takes back the layout, not the record.
    go_to(&clinic, "layout");
    clinic.role("button", "Undo").click();
    go_to(&clinic, "review");
    assert_eq!(clinic.css(".review-record.withdrawn").count(), 1);
}

#[test]
fn nobody_but_the_rider_changes_the_riders_own_words() {
    let clinic = clinic();
    go_to(&clinic, "rider");
    let words = clinic.css("textarea.own-words");
    words.fill("My thumb tires after an hour.");
    clinic.press("Tab");
    go_to(&clinic, "review");
    clinic
        .css(".review-voices blockquote")
        .wait_for_text("My thumb tires after an hour.");
    sit_down(&clinic, "clinician", "K. Example");
    press(&clinic.css(".review-voices a"));
    clinic.wait_for("the words cannot be typed over", || {
        words.attribute("readonly").is_some()
    });
    words.focus();
    clinic.type_text("No.");
    assert_eq!(words.value(), "My thumb tires after an hour.");
    go_to(&clinic, "review");
    choose(&clinic, "review-role", "rider");
    go_to(&clinic, "rider");
    words.fill("It is better with the new gloves.");
    clinic.press("Tab");
    go_to(&clinic, "review");
    clinic
        .css(".review-voices blockquote")
        .wait_for_text("It is better with the new gloves.");
}

#[test]
fn any_two_revisions_differ_in_words_and_on_the_drawing() {
    let clinic = clinic();
    sit_down(&clinic, "clinician", "K. Example");
    go_to(&clinic, "layout");
    clear(&clinic);
    go_to(&clinic, "review");
    let rows = clinic.css(".review-history li").texts();
    assert!(rows[0].contains("Clear the layout"), "{rows:?}");
    assert!(rows[0].contains("K. Example, clinician, 20"), "{rows:?}");
    assert!(rows[1].contains("All shifting on the left"), "{rows:?}");

    // The last step, without asking.
    let found = clinic.css(".review-found");
    found.wait_for_text("Left outer paddle: blank, was “rear easier”");
    // Another one by its button.
    press(&clinic.css(".review-history button").nth(1));
    clinic.wait_for("the step to the left is told", || {
        found
            .text()
            .contains("Left hood button: “front toggle”, was blank")
    });
    assert_eq!(
        clinic.focused(),
        (
            "heading".into(),
            "What differs between two revisions".into()
        )
    );
    let marked = clinic.css(".review-balloon.differs").count();
    assert_eq!(marked, 5);
    assert_eq!(clinic.css(".review-balloon").count(), 6);
    // Shape tells it, not tone alone: a square has no arc.
    let outline = clinic
        .css(".review-balloon.differs path")
        .nth(0)
        .attribute("d");
    assert!(!outline.unwrap_or_default().contains('a'));
    // And any two by the menus.
    choose_from(
        &clinic.css(".review-compare select").nth(0),
        &clinic,
        "0: as",
    );
    clinic.wait_for("what was said of the hand differs, too", || {
        found.text().contains("Right hand")
    });
}

#[test]
fn the_review_prints_on_both_papers_and_large() {
    let clinic = clinic();
    sit_down(&clinic, "clinician", "K. Example");
    decide_on_changes(&clinic);
    press(&clinic.role("button", "Record the decision"));
    clinic.css(".review-record").wait_until_shown();
    choose(&clinic, "review-paper-size", "A4");
    let paper = clinic.print(Paper::A4);
    let text = paper
        .text()
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    for words in [
        "Review: Road drop bar, 2x12, revision 3",
        "Revision and answers",
        "Not asked yet, which is not “no difficulty”:",
        "Nobody: on the right, where the hand does not work",
        "1 left hood button: front toggle",
        "What is asked of each hand",
        "brake is out of reach",
        "Go on after these changes",
        "Change: 1 left hood button: Leave it blank",
        "A typed name is not a signature.",
        "Signature",
        "Page 1 of",
    ] {
        assert!(text.contains(words), "the print lacks {words:?}: {text}");
    }
    assert!(!text.contains("Record the decision") && !text.contains("Who sits here"));
    clinic.media(Media {
        print: true,
        ..Default::default()
    });
    clinic.assert_accessible();
    clinic.media(Media::default());
    // In the order of reading.
    let order = [
        "Stopping",
        "What is asked",
        "Hand off the bar",
        "own words",
        "Findings about",
        "Decisions",
        "Signature",
    ];
    let places: Vec<_> = order.iter().map(|words| text.find(words)).collect();
    assert!(
        places.is_sorted() && places.iter().all(Option::is_some),
        "{places:?}"
    );
    choose(&clinic, "review-paper-size", "Letter");
    let letter = clinic.print(Paper::Letter);
    assert_ne!(letter.page_size(), paper.page_size());
    let few = letter.pages().len();
    tick(&clinic.css(".review-print"), "Large print");
    assert!(clinic.print(Paper::Letter).pages().len() > few);
    press(&clinic.role("button", "Print the review"));
    assert_eq!(clinic.print_calls(), 1);
    press(&clinic.css(".review-print .as-text summary"));
    let plain = clinic.css(".review-print textarea").value();
    assert!(
        plain.contains("-- Decisions --") && plain.contains("Change: 1 left hood button"),
        "{plain}"
    );
}

#[test]
fn the_whole_page_works_by_keyboard_alone() {
    let clinic = clinic();
    clinic.tab_to("radio", "shop");
    clinic.press_all(&["ArrowRight", "ArrowRight"]);
    assert_eq!(clinic.focused(), ("radio".into(), "clinician".into()));
    clinic.tab_to("textbox", "Name");
    clinic.type_text("K. Example");
    clinic.tab_to("link", "The decision");
    clinic.press("Enter");
    clinic.wait_for("the decision has the focus", || {
        clinic.focused() == ("heading".into(), "The decision".into())
    });
    clinic.press_all(&["Tab", "ArrowUp"]);
    let (role, name) = clinic.focused();
    assert_eq!(
        (role.as_str(), name.as_str()),
        ("radio", "Not enough information, or outside my scope")
    );
    clinic.tab_to("radio", "in person");
    clinic.press("ArrowUp");
    clinic.tab_to("button", "Record the decision");
    clinic.press("Enter");
    clinic.css(".review-record").wait_for_text("plan only");
    clinic.wait_for("the records have the focus", || {
        clinic.focused() == ("heading".into(), "Decisions on record".into())
    });
    // No trap: the way goes on to the foot of the page.
    clinic.tab_to("button", "Print the review");
    clinic.tab_to("link", "Rules");
    // Headings stand in order.
    let levels: Vec<u8> = clinic.eval(
        "return [...document.querySelectorAll('main :is(h1, h2, h3, h4)')].filter(h => h.checkVisibility()).map(h => Number(h.tagName[1]))",
    );
    assert!(
        levels.windows(2).all(|two| two[1] <= two[0] + 1),
        "{levels:?}"
    );
}

#[test]
fn it_keeps_within_narrow_windows_and_large_text() {
    let clinic = clinic();
    sit_down(&clinic, "clinician", "K. Example");
    record_comment(
        &clinic,
        "A_word_without_any_place_to_break_it_in_two_because_somebody_typed_it_so",
    );
    decide_on_changes(&clinic);
    press(&clinic.role("button", "Record the decision"));
    clinic.css(".review-record").wait_until_shown();
    choose(&clinic, "review-decision", "Supervised trial first");
    let shots = std::env::var("REVIEW_SHOTS").ok();
    for (width, dark) in [
        (1366, false),
        (1366, true),
        (390, false),
        (390, true),
        (320, false),
    ] {
        clinic.viewport(width, 768);
        clinic.media(Media {
            dark,
            ..Default::default()
        });
        if let Some(shots) = &shots {
            clinic.screenshot_of_page(Path::new(&format!("{shots}/review-{width}-{dark}.png")));
        }
        clinic.assert_accessible();
        let small: Vec<String> = clinic.eval(SMALL);
        assert!(small.is_empty(), "under 44 px at {width}: {small:?}");
        assert!(overflow(&clinic) <= 0.0, "wider than {width} px");
    }
    clinic.viewport(640, 768);
    clinic.text_size(200);
    assert!(overflow(&clinic) <= 0.0, "wider than the window at 200 %");
    if let Some(shots) = &shots {
        let paper = clinic.print(Paper::A4);
        paper.draw(Path::new(shots), "paper");
    }
}

/// What can be pressed on the page and is lower than 44 px; links within sentences are not meant.
const SMALL: &str = "return [...document.querySelectorAll('main :is(button, summary, select, input, textarea, nav a)')]
    .filter(e => e.checkVisibility() && !e.closest('.tick, .segment'))
    .filter(e => e.getBoundingClientRect().height < 43.5).map(e => e.outerHTML.slice(0, 120))";
