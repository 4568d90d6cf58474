//! Free text and dates, held within limits.

use std::fmt;

/// Free text from a person: trimmed, without control characters, at most
/// [`Text::LIMIT`] characters. Any script is welcome.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Text(String);

impl Text {
    /// Longest text kept, in characters.
    pub const LIMIT: usize = 400;

    /// Text made fit to keep: control characters become blanks, directional
    /// overrides are dropped, ends are trimmed, the length is cut to the limit.
    pub fn new(text: &str) -> Self {
        let tidy: String = text
            .chars()
            .filter(|c| !is_override(*c))
            .map(|c| if c.is_control() { ' ' } else { c })
            .collect();
        let cut: String = tidy.trim().chars().take(Self::LIMIT).collect();
        Text(cut.trim_end().to_owned())
    }

    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether nothing is written.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

/// Characters that reorder what follows them and so could disguise a name.
fn is_override(c: char) -> bool {
    matches!(c, '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}')
}

impl fmt::Display for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<&str> for Text {
    fn from(text: &str) -> Self {
        Text::new(text)
    }
}

/// Items as people read them: "hoods, drops and tops", with `last` before the
/// last one.
pub fn list<T: fmt::Display>(items: &[T], last: &str) -> String {
    let words: Vec<String> = items.iter().map(T::to_string).collect();
    match words.split_last() {
        Some((end, [])) => end.clone(),
        Some((end, rest)) => format!("{} {last} {end}", rest.join(", ")),
        None => String::new(),
    }
}

/// The first letter made a capital, as at the head of a line.
pub(crate) fn capital(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}

/// A calendar date, Gregorian, written year-month-day (ISO 8601).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    year: u16,
    month: u8,
    day: u8,
}

impl Date {
    /// The date, if it exists and lies between 1900 and 2999.
    pub fn new(year: u16, month: u8, day: u8) -> Option<Self> {
        let leap =
            year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
        let days = match month {
            2 if leap => 29,
            2 => 28,
            4 | 6 | 9 | 11 => 30,
            1..=12 => 31,
            _ => return None,
        };
        ((1900..=2999).contains(&year) && (1..=days).contains(&day)).then_some(Date {
            year,
            month,
            day,
        })
    }

    /// Reads `2031-05-09`.
    pub fn parse(text: &str) -> Option<Self> {
        if !text.bytes().all(|b| b.is_ascii_digit() || b == b'-') {
            return None;
        }
        let mut parts = text.split('-');
        let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
        if parts.next().is_some() || (year.len(), month.len(), day.len()) != (4, 2, 2) {
            return None;
        }
        Date::new(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?)
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::{Date, Text, list};

    proptest! {
        #[test]
        fn any_text_is_made_fit_to_keep(raw in any::<String>()) {
            let text = Text::new(&raw);
            prop_assert!(text.as_str().chars().count() <= Text::LIMIT);
            prop_assert!(!text.as_str().chars().any(char::is_control));
            prop_assert_eq!(text.as_str().trim(), text.as_str());
            prop_assert_eq!(Text::new(text.as_str()), text);
        }

        #[test]
        fn any_script_is_kept(raw in "[a-zäéßøñ]{1,20}|[а-я]{1,20}|[א-ת]{1,20}|[一-龥]{1,20}|[😀-😎]{1,20}") {
            let text = Text::new(&raw);
            prop_assert_eq!(text.as_str(), &raw);
        }

        #[test]
        fn a_date_reads_what_it_prints(year in 1800u16..3100, month in 0u8..15, day in 0u8..35) {
            if let Some(date) = Date::new(year, month, day) {
                prop_assert_eq!(Date::parse(&date.to_string()), Some(date));
            }
        }

        #[test]
        fn no_text_panics_as_a_date(raw in any::<String>()) {
            let _ = Date::parse(&raw);
        }
    }

    #[test]
    fn dates_follow_the_gregorian_calendar() {
        for (text, exists) in [
            ("2024-02-29", true),
            ("2023-02-29", false),
            ("2000-02-29", true),
            ("2100-02-29", false),
            ("2031-04-31", false),
            ("2031-12-31", true),
            ("1899-12-31", false),
            ("3000-01-01", false),
            ("2031-5-09", false),
            ("2031-05-09-01", false),
            ("2031-+5-09", false),
        ] {
            assert_eq!(Date::parse(text).is_some(), exists, "{text}");
        }
    }

    #[test]
    fn lists_read_like_speech() {
        assert_eq!(list(&["hoods"], "and"), "hoods");
        assert_eq!(list(&["hoods", "drops"], "or"), "hoods or drops");
        assert_eq!(
            list(&["tops", "hoods", "drops"], "and"),
            "tops, hoods and drops"
        );
        assert_eq!(list::<&str>(&[], "and"), "");
    }

    #[test]
    fn tidying_again_changes_nothing() {
        let blank_at_the_limit = format!("{} {}", "a".repeat(Text::LIMIT - 1), "b");
        for raw in [" a\u{202E}b\tc ", &blank_at_the_limit, "\u{2067} x"] {
            let once = Text::new(raw);
            assert_eq!(Text::new(once.as_str()), once, "{raw:?}");
        }
    }
}
