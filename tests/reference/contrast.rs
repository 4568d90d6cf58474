//! The tones of the pages against WCAG 2.2.
//!
//! Source: W3C, *Web Content Accessibility Guidelines (WCAG) 2.2*: SC 1.4.3 Contrast (Minimum),
//! text 4.5:1; SC 1.4.11 Non-text Contrast, parts of the interface 3:1; the formula as in the
//! definition of contrast ratio, worked out by the `palette` crate.

use palette::Srgb;
use palette::color_difference::Wcag21RelativeContrast;

const STYLES: &str = include_str!("../../app/site/styles/base.css");

/// Tones that carry words or marks.
const WORDS: &[&str] = &["ink", "quiet", "line", "must-fix", "check", "good-to-know"];

/// One set of tones: name and value, as one block of the style sheet gives them.
type Palette = Vec<(String, Srgb<f32>)>;

/// Every block of the style sheet that sets the paper's tone.
fn palettes() -> Vec<Palette> {
    STYLES
        .split('{')
        .filter(|block| block.contains("--paper:"))
        .map(|block| block.lines().filter_map(tone).collect())
        .collect()
}

/// Reads `--ink: #1b1f24;`.
fn tone(line: &str) -> Option<(String, Srgb<f32>)> {
    let (name, value) = line.trim().strip_prefix("--")?.split_once(':')?;
    let digits = value.trim().trim_end_matches(';');
    let colour: Srgb<u8> = digits.parse().ok()?;
    Some((name.to_owned(), colour.into_format()))
}

fn find(palette: &Palette, name: &str) -> Srgb<f32> {
    let found = palette.iter().find(|(tone, _)| tone == name);
    found.unwrap_or_else(|| panic!("no tone --{name}")).1
}

#[test]
fn there_is_a_palette_for_light_dark_and_more_contrast() {
    assert!(palettes().len() >= 3, "{}", palettes().len());
}

#[test]
fn words_and_marks_stand_out_on_either_paper() {
    for palette in palettes() {
        for paper in ["paper", "raised"].map(|name| find(&palette, name)) {
            for word in WORDS {
                let ratio = paper.relative_contrast(find(&palette, word));
                assert!(ratio >= 4.5, "--{word}: {ratio:.2} on {paper:?}");
            }
        }
    }
}

#[test]
fn words_on_filled_buttons_stand_out() {
    for palette in palettes() {
        let ratio = find(&palette, "line").relative_contrast(find(&palette, "on-line"));
        assert!(ratio >= 4.5, "{ratio:.2}");
    }
}

/// Edges of buttons and fields: SC 1.4.11 asks 3:1.
#[test]
fn edges_of_what_can_be_worked_stand_out() {
    for palette in palettes() {
        for edge in ["line", "quiet"] {
            let ratio = find(&palette, "paper").relative_contrast(find(&palette, edge));
            assert!(ratio >= 3.0, "--{edge}: {ratio:.2}");
        }
    }
}

/// The formula itself: black on white is 21:1 and equal tones 1:1, as the definition says.
#[test]
fn the_formula_has_its_ends() {
    let (black, white) = (Srgb::new(0.0_f32, 0.0, 0.0), Srgb::new(1.0, 1.0, 1.0));
    assert!((white.relative_contrast(black) - 21.0).abs() < 1e-3);
    assert!((white.relative_contrast(white) - 1.0).abs() < 1e-6);
}
