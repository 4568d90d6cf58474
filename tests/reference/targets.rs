//! Sizes of targets against WCAG 2.2.
//!
//! Source: W3C, *WCAG 2.2*: SC 2.5.8 Target Size (Minimum) 24 by 24 CSS pixels (AA); SC 2.5.5
//! Target Size (Enhanced) 44 by 44 (AAA).

const STYLES: &str = include_str!("../../app/site/styles/base.css");

fn pixels(name: &str) -> f64 {
    let line = STYLES
        .lines()
        .find_map(|line| line.trim().strip_prefix(&format!("--{name}:")))
        .unwrap_or_else(|| panic!("no --{name}"));
    let digits = line.trim().trim_end_matches(';').trim_end_matches("px");
    digits.parse().expect("a size in pixels")
}

#[test]
fn the_least_target_meets_both_criteria_and_main_ones_are_larger() {
    assert!(pixels("target-least") >= 24.0, "SC 2.5.8");
    assert!(pixels("target-least") >= 44.0, "SC 2.5.5");
    assert!(pixels("target") > pixels("target-least"));
}
