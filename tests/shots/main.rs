//! `cargo xtask shots [DIR] [ROUTE…]`: pictures of the build's screens, on a desk and on a
//! telephone, light and dark.

use leverwright_tests::browser::{Browser, DESK, Media, PHONE};
use std::path::PathBuf;

fn main() {
    let mut arguments = std::env::args().skip(1);
    let folder = PathBuf::from(
        arguments
            .next()
            .unwrap_or_else(|| "target/shots".to_owned()),
    );
    let mut routes: Vec<String> = arguments.collect();
    if routes.is_empty() {
        routes.push(String::new());
    }

    let browser = Browser::open("shots");
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
