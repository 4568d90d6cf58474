//! The setup sheet: chosen, previewed, printed, and read back from the print.

use crate::desk::{GRAVEL, ROAD, pick, right_hand_rests, start, wait_for_names, wait_until_saved};
use leverwright_core::document;
use leverwright_core::plan::Plan;
use leverwright_core::sheet::{CAUTIONS, SIGNATURE_NOTE, Sheet, SheetOptions};
use leverwright_tests::browser::{Browser, Media, Paper, Pdf};

const PODS: &str = "Road drop bar, 2x12, with tops pods and sprint buttons";
const TRICYCLE: &str = "Tricycle flat bar, 1x12, with parking latch";

/// A plan from a template, its sheet on the screen.
fn sheet_of(template: &str) -> Browser {
    let shop = Browser::open("shop");
    start(&shop, template);
    shop.visit("#/sheet");
    shop.css(".sheet").wait_until_shown();
    shop
}

/// The one open plan, as its file has it.
fn exported(shop: &Browser, name: &str) -> Plan {
    wait_until_saved(shop);
    shop.visit("#/plans");
    pick(shop, name, "Export as a file");
    let words: Vec<&str> = name.split([' ', ',']).filter(|w| !w.is_empty()).collect();
    // Long names are cut.
    let stem: String = words.join("-").chars().take(50).collect();
    let stem = stem.trim_end_matches('-');
    let file = shop.wait_for_download(&format!("{stem}.leverwright.json"));
    let bytes = std::fs::read(file).expect("the export can be read");
    document::read(bytes).expect("the export is a plan").plan
}

/// Blanks of any width as one: text on paper breaks where it must.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Each leaf has the plan's name, its revision and its number.
#[track_caller]
fn assert_leaves_are_headed(print: &Pdf, head: &str, least: usize) {
    let leaves = print.pages();
    let count = leaves.len();
    for (at, leaf) in leaves.iter().enumerate() {
        let leaf = flat(leaf);
        let foot = format!("Page {} of {count}", at + 1);
        assert!(leaf.contains(&foot), "“{foot}” is not on: {leaf}");
        assert!(leaf.contains(head), "“{head}” is not on: {leaf}");
        assert!(
            leaf.len() > least,
            "leaf {} is nearly blank: {leaf}",
            at + 1
        );
    }
}

#[track_caller]
fn assert_size(print: &Pdf, paper: Paper) {
    let (width, height) = print.page_size();
    let (wanted_width, wanted_height) = paper.points();
    // Chromium rounds to whole CSS pixels, 0.75 pt.
    let near = |a: f64, b: f64| (a - b).abs() < 1.0;
    assert!(
        near(width, wanted_width) && near(height, wanted_height),
        "{width} x {height}, not {paper:?}"
    );
}

/// The paper is the one chosen on the screen, whatever lies in the printer.
#[test]
fn the_chosen_paper_is_printed_with_name_revision_and_number_on_each_leaf() {
    let shop = sheet_of(PODS);
    for (choice, paper, printer) in [
        ("A4", Paper::A4, Paper::Letter),
        ("Letter", Paper::Letter, Paper::A4),
    ] {
        shop.role("radio", choice).click();
        let print = shop.print(printer);
        assert_size(&print, paper);
        assert_leaves_are_headed(&print, &format!("{PODS}, revision 1"), 250);
    }
}

#[test]
fn the_print_says_what_the_plan_says() {
    let shop = sheet_of(PODS);
    shop.role("radio", "A4").click();
    let print = shop.print(Paper::A4);
    let sheet = Sheet::of(&exported(&shop, PODS), SheetOptions::default());

    let stand = flat(&print.pages()[0]);
    assert!(
        stand.contains(&sheet.verdict.readiness.to_string()),
        "{stand}"
    );
    let lines: Vec<String> = print.text().lines().map(flat).collect();
    for row in &sheet.buttons {
        // What is long goes on in the next line.
        let place = row.place.split(',').next().unwrap_or_default();
        let now = row.now.to_string();
        let now = now.split(" (").next().unwrap_or_default();
        let found = lines.iter().any(|line| {
            line.starts_with(&format!("{} {place}", row.number))
                && line.contains(&format!("{} {now}", row.was))
        });
        assert!(found, "{} {}: {lines:#?}", row.number, row.place);
    }
    let all = flat(&print.text());
    for caution in CAUTIONS.iter().chain([&SIGNATURE_NOTE]) {
        // They stand in two columns, whose lines the reader of the file mixes.
        let start: Vec<&str> = caution.split_whitespace().take(4).collect();
        assert!(all.contains(&start.join(" ")), "{caution}");
    }
    for tick in &sheet.work.ticks {
        assert!(all.contains(&tick.act), "{}", tick.act);
    }
}

#[test]
fn every_row_that_is_on_the_screen_is_on_paper() {
    let shop = sheet_of(TRICYCLE);
    let acts = shop.css(".sheet tbody th").texts();
    let all = flat(&shop.print(Paper::A4).text());
    assert!(acts.len() > 40, "{}", acts.len());
    for act in acts {
        // Columns beside it break into a long cell, so the first words must do.
        let start: Vec<&str> = act.split_whitespace().take(3).collect();
        assert!(all.contains(&start.join(" ")), "{act}");
    }
}

#[test]
fn only_the_sheet_is_printed() {
    let shop = sheet_of(ROAD);
    let print = shop.print(Paper::A4).text();
    for act in ["Undo", "As plain text", "Today", "Add the page"] {
        assert!(!print.contains(act), "{act}");
    }
    let first = print.trim_start().lines().next().unwrap_or_default();
    assert!(
        first.contains("On the stand") && first.contains("Setup sheet"),
        "{first}"
    );
}

#[test]
fn large_print_is_a_layout_of_its_own() {
    let shop = sheet_of(ROAD);
    let usual = shop.print(Paper::A4).pages().len();
    shop.role("checkbox", "Large print").click();
    shop.css(".sheet.large").wait_until_shown();
    let print = shop.print(Paper::A4);
    assert!(print.pages().len() > usual);
    // A leaf in large print holds about half as many letters.
    assert_leaves_are_headed(&print, &format!("{ROAD}, revision 1"), 125);
    // 18 pt text and 22 pt headings at 96 CSS pixels an inch.
    // A4 less its margins is 703 CSS pixels wide.
    shop.viewport(703, 900);
    shop.media(Media {
        print: true,
        ..Media::default()
    });
    let size = |selector: &str| shop.css(selector).nth(0).style("font-size");
    assert_eq!(size(".sheet.large td"), "24px");
    assert_eq!(size(".sheet.large h3"), "29.3333px");
    assert_eq!(size(".sheet.large tr"), "24px");
    assert_eq!(
        shop.css(".sheet.large tbody tr").nth(0).style("display"),
        "flex"
    );
}

/// Few enough to hang on the stand, with the page for the hands apart.
#[test]
fn the_sheet_takes_few_leaves() {
    let shop = sheet_of(PODS);
    right_hand_rests(&shop);
    assert_leaves(&shop, "a usual plan", 3, 9);
    shop.visit("#/plans");
    let demos = shop.css(".demo-plans .template").count();
    assert!(demos >= 3, "{demos}");
    for demo in 0..demos {
        shop.visit("#/plans");
        shop.css(".demo-plans .template").nth(demo).click();
        shop.css(".slot").nth(0).wait_until_shown();
        assert_leaves(&shop, &format!("demo {demo}"), 4, 9);
    }
}

/// The answers about the hands run over a leaf's end; no row is printed over another there.
#[test]
fn nothing_is_printed_over_hand_details() {
    let shop = Browser::open("shop");
    shop.visit("#/plans");
    let demos = shop.css(".demo-plans .template").count();
    for demo in 0..demos {
        shop.visit("#/plans");
        shop.css(".demo-plans .template").nth(demo).click();
        shop.css(".slot").nth(0).wait_until_shown();
        shop.visit("#/sheet");
        shop.role("checkbox", "Add the page with hand details")
            .click();
        shop.css("#sheet-hands").wait_until_shown();
        assert_leaves(&shop, &format!("demo {demo} with hand details"), 7, 20);
    }
}

/// No more leaves than these on either paper, in usual and in large print.
#[track_caller]
fn assert_leaves(shop: &Browser, plan: &str, usual: usize, large: usize) {
    shop.visit("#/sheet");
    for (choice, paper) in [("A4", Paper::A4), ("Letter", Paper::Letter)] {
        shop.role("radio", choice).click();
        for (most, selector) in [(usual, ".sheet:not(.large)"), (large, ".sheet.large")] {
            shop.css(selector).wait_until_shown();
            let print = shop.print(paper);
            assert_eq!(print.words_over_each_other(), [""; 0], "{plan}, {choice}");
            let leaves = print.pages().len();
            assert!(leaves <= most, "{plan}, {choice}: {leaves} of {selector}");
            shop.role("checkbox", "Large print").click();
        }
    }
}

#[test]
fn hand_details_are_printed_only_when_asked_for_and_for_that_plan_only() {
    let shop = sheet_of(ROAD);
    // The heading stands in the margin, in two lines.
    let told = "Not assessed";
    assert!(!shop.print(Paper::A4).text().contains(told));
    shop.role("checkbox", "Add the page with hand details")
        .click();
    shop.wait_for("the page is there", || {
        shop.print(Paper::A4).text().contains(told)
    });
    wait_until_saved(&shop);

    start(&shop, GRAVEL);
    shop.visit("#/sheet");
    shop.css(".sheet").wait_until_shown();
    assert!(!shop.print(Paper::A4).text().contains(told));
}

#[test]
fn the_print_button_prints_by_mouse_touch_and_keyboard() {
    let shop = sheet_of(ROAD);
    let button = shop.role("button", "Print");
    shop.mouse().tap(&button);
    shop.finger().tap(&button);
    shop.tab_to("button", "Print");
    shop.press("Enter");
    shop.wait_for("three prints are asked for", || shop.print_calls() == 3);
}

#[test]
fn job_and_date_go_into_the_title_block_and_can_be_undone() {
    let shop = sheet_of(ROAD);
    shop.role("textbox", "Job number").fill("31-07");
    shop.press("Tab");
    shop.role("button", "Today").click();
    let block = || shop.css(".sheet-title").text();
    shop.wait_for("the job is in the title block", || {
        block().contains("31-07") && block().contains("-")
    });
    let print = flat(&shop.print(Paper::A4).text());
    assert!(print.contains("Job 31-07"), "{print}");
    assert!(print.contains("revision 3"), "{print}");
    shop.press("Control+z");
    shop.press("Control+z");
    shop.wait_for("the job is gone", || !block().contains("31-07"));
}

/// While a year is typed browsers tell of years such as 0002, which are no answers yet.
#[test]
fn a_date_can_be_typed() {
    let shop = sheet_of(ROAD);
    let revision = || shop.css(".field-revision dd").text();
    assert_eq!(revision(), "1");
    shop.css("input[type=date]").focus();
    shop.press_all(&["1", "2", "2", "0", "2", "0", "2", "6"]);
    shop.wait_for("the date is in the title block", || {
        shop.css(".sheet-title").text().contains("2026-12-20")
    });
    assert_eq!(revision(), "2");
}

/// A date stays as it was set, and is told apart from today's; leaves kept apart
/// are not counted as missing.
#[test]
fn an_old_date_is_told_and_leaves_kept_apart_do_not_seem_to_be_missing() {
    let shop = sheet_of(ROAD);
    shop.role("button", "Today").click();
    let said = || shop.css(".date-note").text();
    shop.wait_for("the date is set", || {
        shop.css(".sheet-title").text().contains("20")
    });
    assert_eq!(said(), "");
    shop.css("input[type=date]").script(
        "arguments[0].value = '2020-02-03'; arguments[0].dispatchEvent(new Event('change', { bubbles: true }))",
    );
    shop.wait_for("the other day is told", || {
        said().contains("The sheet says 2020-02-03. Today is 20")
    });

    assert!(flat(&shop.print(Paper::A4).text()).contains("Page 1 of "));
    shop.role("checkbox", "Add the page with hand details")
        .click();
    shop.role("checkbox", "With step numbers and the closest ICF codes")
        .click();
    shop.wait_for("the hand page has codes", || {
        flat(&shop.print(Paper::A4).text()).contains("d4450")
    });
    let print = flat(&shop.print(Paper::A4).text());
    assert!(
        print.contains("Page 1") && !print.contains("Page 1 of"),
        "{print}"
    );
    assert!(print.contains("Clinician who saw the hands"), "{print}");
}

#[test]
fn names_print_as_they_are_written() {
    let shop = sheet_of(ROAD);
    shop.visit("#/plans");
    pick(&shop, ROAD, "Rename");
    let name = "Ágnes “tour” \"2\" \\ <b>";
    shop.type_text(name);
    shop.press("Enter");
    wait_for_names(&shop, &[name]);
    shop.visit("#/sheet");
    shop.css(".sheet").wait_until_shown();
    let print = shop.print(Paper::A4);
    assert_leaves_are_headed(&print, &format!("{name}, revision 2"), 250);
}

#[test]
fn the_sheet_is_accessible_on_the_screen_on_paper_and_in_the_dark() {
    let shop = sheet_of(TRICYCLE);
    shop.role("checkbox", "Add the page with hand details")
        .click();
    shop.assert_accessible();
    shop.media(Media {
        dark: true,
        ..Media::default()
    });
    shop.assert_accessible();
    shop.media(Media {
        print: true,
        ..Media::default()
    });
    shop.assert_accessible();
    shop.media(Media::default());
    shop.role("checkbox", "Large print").click();
    shop.assert_accessible();
}

#[test]
fn the_sheet_reflows_at_320_pixels() {
    let shop = sheet_of(PODS);
    shop.viewport(320, 640);
    let overhang: f64 = shop
        .eval("return document.documentElement.scrollWidth - document.documentElement.clientWidth");
    assert_eq!(overhang, 0.0);
    shop.assert_accessible();
}

#[test]
fn the_plain_text_is_the_whole_sheet() {
    let shop = sheet_of(ROAD);
    shop.css(".as-text summary").click();
    let text: String = shop.eval("return document.querySelector('.as-text textarea').value");
    let sheet = Sheet::of(&exported(&shop, ROAD), SheetOptions::default());
    assert_eq!(text, sheet.to_text());
}
