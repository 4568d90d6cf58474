//! Layouts beside each other: told apart, put in order, one chosen for the sheet, printed.

use std::path::Path;

use leverwright_core::document;
use leverwright_core::plan::Plan;
use leverwright_core::variants::{Comparison, Topic};
use leverwright_tests::browser::{Browser, Media, Paper};

use crate::desk::{overflow, wait_until_saved};

/// The demo with two ideas, on the Compare screen.
fn two_ideas(browser: &Browser) {
    browser.visit("#/plans");
    browser.css(".demo-plans .template").nth(1).click();
    browser.css(".slot").nth(0).wait_until_shown();
    wait_until_saved(browser);
    browser.visit("#/compare");
    browser.css(".compare-card").nth(1).wait_until_shown();
}

/// The open plan, as its file with everything has it.
fn plan(browser: &Browser) -> Plan {
    browser.visit("#/share");
    browser
        .mouse()
        .tap(&browser.role("radio", "with rider details"));
    browser
        .css(".what-goes-along")
        .wait_for_text("Everything in the plan");
    let name: String = browser.css(".masthead .plan-name").text();
    browser.role("button", "Save a file").click();
    let stem: Vec<&str> = name
        .split(|c: char| !c.is_alphanumeric())
        .filter(|w| !w.is_empty())
        .collect();
    let file = browser.wait_for_download(&format!("{}.leverwright.json", stem.join("-")));
    let plan = document::read(std::fs::read(&file).expect("a file"))
        .expect("a plan")
        .plan;
    std::fs::remove_file(file).expect("the file goes");
    browser.visit("#/compare");
    browser.css(".compare-card").nth(0).wait_until_shown();
    plan
}

fn names(browser: &Browser) -> Vec<String> {
    browser.css(".compare-card h2").texts()
}

#[test]
fn what_differs_is_marked_on_the_drawings_and_told_in_words_and_lines() {
    let home = Browser::open("home");
    two_ideas(&home);
    let compared = Comparison::of(&plan(&home));
    assert!(!compared.differing.is_empty());
    assert_eq!(home.css(".compare-said li").texts(), compared.sentences);
    let marked = home
        .css(".cockpit.marked .marked-mark path.balloon")
        .count();
    assert_eq!(marked, compared.differing.len() * compared.columns.len());
    let differing = compared.lines.iter().filter(|line| line.differs());
    let cells = |browser: &Browser| browser.css(".compared td[data-head]").texts();
    let wanted: Vec<String> = differing.flat_map(|line| line.cells.clone()).collect();
    let shown = cells(&home);
    assert_eq!(shown.len(), wanted.len());
    for (shown, wanted) in shown.iter().zip(&wanted) {
        assert!(
            shown == wanted || wanted.is_empty() && shown == "–",
            "{shown}: {wanted}"
        );
    }
    home.css(".compare-table input").click();
    home.wait_for("all lines are shown", || {
        cells(&home).len() == compared.lines.len() * compared.columns.len()
    });
    assert!(
        compared
            .lines
            .iter()
            .any(|line| line.topic == Topic::Coverage)
    );
}

#[test]
fn one_is_chosen_with_a_reason_by_keyboard_and_the_sheet_says_so() {
    let home = Browser::open("home");
    two_ideas(&home);
    let second = names(&home)[1].clone();
    home.tab_to("button", &format!("Choose for the sheet {second}"));
    home.press("Enter");
    home.css(".choose-form").wait_until_shown();
    assert_eq!(
        home.focused(),
        ("textbox".into(), format!("Why “{second}”"))
    );
    home.tab_to("button", "Choose this layout");
    home.press("Enter");
    home.css(".choose-form").wait_for_text("Write why this one");
    home.type_text("fewer mix-ups");
    home.tab_to("button", "Choose this layout");
    home.press("Enter");
    home.css(".compare-card.chosen").wait_for_text(&second);
    home.css(".compare-said")
        .wait_for_text("is chosen for the sheet: fewer mix-ups");
    assert_eq!(home.css(".compare-card.chosen").count(), 1);

    // The sheet is of the chosen one; of another it says so.
    home.visit("#/sheet");
    home.css(".sheet-title").wait_for_text(&second);
    home.visit("#/compare");
    home.css(".compare-card")
        .nth(0)
        .inner_css(".acts button")
        .nth(1)
        .click();
    home.role("heading", "Layout").wait_until_shown();
    home.visit("#/sheet");
    home.css(".sheet-title")
        .wait_for_text(&format!("chosen is “{second}”"));
    home.role("button", "Show the chosen one").click();
    home.css(".sheet-other").wait_until_gone();

    home.visit("#/compare");
    home.role("button", "Take the choice back").click();
    home.css(".chosen-mark").wait_until_gone();
    home.role("button", "Undo").click();
    home.css(".chosen-mark").wait_until_shown();
}

#[test]
fn layouts_are_added_renamed_moved_and_removed_by_finger_and_come_back() {
    let home = Browser::open_phone("home");
    two_ideas(&home);
    let before = names(&home);
    let act = |layout: &str, item: &str| {
        let more = home.role("button", &format!("More {layout}"));
        more.scroll_into_view();
        home.finger().tap(&more);
        home.finger().tap(&home.role("menuitem", item));
    };
    let wait = |wanted: &[&str]| home.wait_for(&format!("{wanted:?}"), || names(&home) == wanted);
    act(&before[0], "Move later");
    wait(&[&before[1], &before[0]]);
    act(&before[0], "Rename this layout");
    home.css(".rename input").fill("Evening");
    home.press("Enter");
    wait(&[&before[1], "Evening"]);
    act("Evening", "Copy this layout");
    wait(&[&before[1], "Evening", "Evening copy"]);
    act("Evening", "Remove this layout");
    wait(&[&before[1], "Evening copy"]);
    home.finger().tap(&home.role("button", "Undo this"));
    wait(&[&before[1], "Evening", "Evening copy"]);
    let add = home.role("button", "Add a blank layout");
    add.scroll_into_view();
    home.finger().tap(&add);
    home.wait_for("there are four", || names(&home).len() == 4);
    assert!(overflow(&home) <= 0.0);
    home.assert_accessible();
}

#[test]
fn the_comparison_prints_without_its_buttons() {
    let home = Browser::open("home");
    two_ideas(&home);
    let (columns, said) = (names(&home), home.css(".compare-said li").texts());
    let print = home.print(Paper::A4);
    if let Ok(shots) = std::env::var("TRAVEL_SHOTS") {
        print.draw(Path::new(&shots), "compare-paper");
    }
    let text: Vec<String> = print.text().split_whitespace().map(str::to_owned).collect();
    let text = text.join(" ");
    assert!(text.contains("Comparison of layouts: "), "{text}");
    for words in columns.iter().chain(&said) {
        let start: Vec<&str> = words.split_whitespace().take(4).collect();
        assert!(text.contains(&start.join(" ")), "{words}: {text}");
    }
    for act in [
        "Choose for the sheet",
        "Work on it",
        "Add a blank layout",
        "Print the comparison",
        "A planning aid. The",
    ] {
        assert!(!text.contains(act), "{act}");
    }
    assert!(print.pages().len() <= 3, "{}", print.pages().len());
}

#[test]
fn the_comparison_keeps_within_narrow_windows_and_can_be_used_by_everybody() {
    let home = Browser::open("home");
    two_ideas(&home);
    home.role("button", "Add a blank layout").click();
    home.wait_for("there are three", || names(&home).len() == 3);
    let shots = std::env::var("TRAVEL_SHOTS").ok();
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
            ..Media::default()
        });
        assert!(overflow(&home) <= 0.0, "wider than {width} px");
        home.assert_accessible();
        if let Some(shots) = &shots {
            home.screenshot_of_page(Path::new(&format!("{shots}/compare-{width}-{dark}.png")));
        }
    }
    home.viewport(1280, 844);
    home.text_size(200);
    assert!(overflow(&home) <= 0.0, "too wide at 200 % text");
}
