//! Names for exported files.

/// Longest name before the ending, in characters: with four bytes each it
/// stays below the 255 bytes that common file systems take.
const LONGEST: usize = 50;

/// Names that one common system keeps for its devices.
const RESERVED: [&str; 6] = ["con", "prn", "aux", "nul", "com", "lpt"];

/// A file name for a plan: the plan's own name as far as every common file
/// system takes it. Letters of any script stay; everything else that could mean
/// something to a system becomes a hyphen.
pub fn for_plan(name: &str) -> String {
    format!("{}.leverwright.json", stem(name))
}

/// A file name for a copy that cannot be read.
pub fn for_unreadable(plan: &str, letter: char) -> String {
    format!("unreadable-{plan}-{letter}.txt")
}

fn stem(name: &str) -> String {
    let mut stem = String::new();
    for c in name.chars() {
        if c.is_alphanumeric() || (is_mark(c) && stem.ends_with(|c: char| c != '-')) {
            stem.push(c);
        } else if !stem.is_empty() && !stem.ends_with('-') {
            stem.push('-');
        }
    }
    let stem: String = stem.chars().take(LONGEST).collect();
    let stem = stem.trim_matches('-');
    let bare = stem.trim_end_matches(|c: char| c.is_ascii_digit());
    if stem.is_empty() || RESERVED.contains(&bare.to_ascii_lowercase().as_str()) {
        format!("plan-{stem}").trim_end_matches('-').to_owned()
    } else {
        stem.to_owned()
    }
}

/// Whether a sign belongs to the letter before it in the scripts of India and
/// its neighbours, Arabic, Hebrew and Thai, or is a combining accent: the blocks
/// of the Unicode Standard that hold such marks, without their letters.
fn is_mark(c: char) -> bool {
    matches!(c,
        '\u{300}'..='\u{36f}'
        | '\u{591}'..='\u{5c7}'
        | '\u{610}'..='\u{61a}'
        | '\u{64b}'..='\u{65f}'
        | '\u{900}'..='\u{963}'
        | '\u{966}'..='\u{df3}'
        | '\u{e31}'..='\u{e4e}'
        | '\u{200c}'..='\u{200d}')
}

#[cfg(test)]
mod tests {
    use super::for_plan;

    #[test]
    fn a_plan_s_name_becomes_a_name_that_any_system_takes() {
        for (name, file) in [
            ("Mira, road bike", "Mira-road-bike"),
            ("Übung №2", "Übung-2"),
            ("後輪 試し", "後輪-試し"),
            ("नमस्ते साइकिल", "नमस्ते-साइकिल"),
            ("e\u{301}toile", "e\u{301}toile"),
            ("จักรยาน ดี", "จักรยาน-ดี"),
            ("दो। तीन", "दो-तीन"),
            ("../../etc/passwd", "etc-passwd"),
            ("<img src=x onerror=alert(1)>", "img-src-x-onerror-alert-1"),
            ("a\u{0}b\nc\\d:e*f?g\"h|i", "a-b-c-d-e-f-g-h-i"),
            ("", "plan"),
            (" . ", "plan"),
            ("NUL", "plan-NUL"),
            ("com1", "plan-com1"),
            ("console", "console"),
        ] {
            assert_eq!(for_plan(name), format!("{file}.leverwright.json"), "{name}");
        }
    }

    #[test]
    fn a_long_name_is_cut_between_letters_and_fits() {
        let file = for_plan(&"𝒳".repeat(400));
        assert!(file.len() <= 255, "{}", file.len());
        assert!(file.starts_with("𝒳𝒳𝒳"));
    }
}
