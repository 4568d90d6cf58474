//! `cargo xtask shots [DIR] [ROUTE…]`: pictures of the build's screens, on a desk and on a
//! telephone, light and dark, with a plan open whose rider rests the right hand on the bar; and
//! the setup sheet as printed.

use leverwright_tests::browser::{Browser, DESK, Media, PHONE, Paper};
use std::path::{Path, PathBuf};

/// Every screen.
const ROUTES: &[&str] = &[
    "#/plans",
    "#/rider",
    "#/bike",
    "#/layout",
    "#/sheet",
    "#/rules",
    "#/settings",
];

fn main() {
    let mut arguments = std::env::args().skip(1);
    let folder = PathBuf::from(
        arguments
            .next()
            .unwrap_or_else(|| "target/shots".to_owned()),
    );
    let mut routes: Vec<String> = arguments.collect();
    if routes.is_empty() {
        routes = ROUTES.iter().map(|&route| route.to_owned()).collect();
    }

    let browser = Browser::open("shots");
    open_a_plan(&browser);
    for (size, width, height) in [("wide", DESK.0, DESK.1), ("narrow", PHONE.0, PHONE.1)] {
        browser.viewport(width, height);
        for (tone, dark) in [("light", false), ("dark", true)] {
            browser.media(Media {
                dark,
                ..Media::default()
            });
            for route in &routes {
                browser.visit(route);
                let file = folder.join(format!("{}-{size}-{tone}.png", name(route)));
                browser.screenshot_of_page(&file);
                println!("{}", file.display());
            }
        }
    }
    print_the_sheet(&browser, &folder);
}

fn open_a_plan(browser: &Browser) {
    browser.visit("#/plans");
    browser
        .role(
            "button",
            "Road drop bar, 2x12, with tops pods and sprint buttons",
        )
        .click();
    browser.role("heading", "Rider").wait_until_shown();
    browser
        .role("button", "Left hand rides, presses and brakes easily")
        .click();
    browser
        .role(
            "button",
            "Right hand rests on the bar and does nothing else",
        )
        .click();
}

fn print_the_sheet(browser: &Browser, folder: &Path) {
    browser.viewport(DESK.0, DESK.1);
    browser.visit("#/sheet");
    browser.media(Media::default());
    let file = folder.join("sheet.pdf");
    browser.print(Paper::A4).save(&file);
    println!("{}", file.display());
}

/// `#/plans/3` becomes `plans-3`.
fn name(route: &str) -> String {
    let words = route
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty());
    match words.collect::<Vec<_>>().join("-") {
        name if name.is_empty() => "start".to_owned(),
        name => name,
    }
}
