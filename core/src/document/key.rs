//! Buttons, dates and hold runs as files have them.

use std::fmt;

use serde::de::{self, Deserialize, Deserializer, Unexpected, Visitor};
use serde::ser::{Serialize, Serializer};

use crate::cockpit::{ButtonId, HoldRun};
use crate::limits::MOST_COGS;
use crate::text::Date;

/// A button, written as `3.inner-paddle`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct ButtonKey(pub(super) ButtonId);

impl Serialize for ButtonKey {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for ButtonKey {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Written;

        impl Visitor<'_> for Written {
            type Value = ButtonKey;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a control's id and its button, such as 3.inner-paddle")
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<ButtonKey, E> {
                // Written in one way only, so that one button has one key.
                ButtonId::parse(text)
                    .filter(|id| id.to_string() == text)
                    .map(ButtonKey)
                    .ok_or_else(|| E::invalid_value(Unexpected::Str(text), &self))
            }
        }

        deserializer.deserialize_str(Written)
    }
}

/// A date, written as `2031-05-09`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Day(pub(super) Date);

impl Serialize for Day {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for Day {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Written;

        impl Visitor<'_> for Written {
            type Value = Day;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a date such as 2031-05-09")
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Day, E> {
                Date::parse(text)
                    .filter(|date| date.to_string() == text)
                    .map(Day)
                    .ok_or_else(|| E::invalid_value(Unexpected::Str(text), &self))
            }
        }

        deserializer.deserialize_str(Written)
    }
}

/// A hold run: a number of cogs, or `"to-end"`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Run(pub(super) HoldRun);

const TO_END: &str = "to-end";

impl Serialize for Run {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            HoldRun::Cogs(n) => serializer.serialize_u8(n),
            HoldRun::ToEnd => serializer.serialize_str(TO_END),
        }
    }
}

impl<'de> Deserialize<'de> for Run {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Written;

        impl Visitor<'_> for Written {
            type Value = Run;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "a number of cogs from 1 to {MOST_COGS}, or \"{TO_END}\"")
            }

            fn visit_u64<E: de::Error>(self, value: u64) -> Result<Run, E> {
                u8::try_from(value)
                    .ok()
                    .filter(|n| (1..=MOST_COGS).contains(n))
                    .map(|n| Run(HoldRun::Cogs(n)))
                    .ok_or_else(|| E::invalid_value(Unexpected::Unsigned(value), &self))
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Run, E> {
                if text == TO_END {
                    Ok(Run(HoldRun::ToEnd))
                } else {
                    Err(E::invalid_value(Unexpected::Str(text), &self))
                }
            }
        }

        deserializer.deserialize_any(Written)
    }
}

#[cfg(feature = "schema")]
mod schema {
    use super::{ButtonKey, Day, MOST_COGS, Run, TO_END};
    use crate::cockpit::ButtonPart;
    use crate::vocabulary::Vocabulary;
    use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
    use std::borrow::Cow;

    impl JsonSchema for ButtonKey {
        fn schema_name() -> Cow<'static, str> {
            "ButtonKey".into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            let parts: Vec<&str> = ButtonPart::ALL.iter().map(|part| part.code()).collect();
            json_schema!({
                "description": "A control's id and its button: 3.inner-paddle.",
                "type": "string",
                "pattern": format!("^(0|[1-9][0-9]{{0,4}})\\.({})$", parts.join("|")),
            })
        }
    }

    impl JsonSchema for Day {
        fn schema_name() -> Cow<'static, str> {
            "Day".into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            json_schema!({
                "description": "A date: 2031-05-09 (ISO 8601), from 1900 to 2999.",
                "type": "string",
                "pattern": "^(19|2[0-9])[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$",
            })
        }
    }

    impl JsonSchema for Run {
        fn schema_name() -> Cow<'static, str> {
            "Run".into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            json_schema!({
                "description": "How many cogs one hold may move.",
                "oneOf": [
                    { "type": "integer", "minimum": 1, "maximum": MOST_COGS },
                    { "const": TO_END },
                ],
            })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{ButtonKey, Day, Run};

    #[test]
    fn one_button_has_one_key() {
        assert!(serde_json::from_str::<ButtonKey>("\"3.near\"").is_ok());
        for text in ["03.near", "+3.near", "3.", "3.nearest", "70000.near", ""] {
            let json = format!("\"{text}\"");
            assert!(serde_json::from_str::<ButtonKey>(&json).is_err(), "{text}");
        }
    }

    #[test]
    fn days_exist() {
        assert!(serde_json::from_str::<Day>("\"2032-02-29\"").is_ok());
        for text in ["2031-02-29", "2031-2-09", "+031-05-09", "31-05-2009"] {
            let json = format!("\"{text}\"");
            assert!(serde_json::from_str::<Day>(&json).is_err(), "{text}");
        }
    }

    #[test]
    fn holds_move_some_cogs_or_all() {
        assert!(serde_json::from_str::<Run>("3").is_ok());
        assert!(serde_json::from_str::<Run>("\"to-end\"").is_ok());
        for text in ["0", "15", "-1", "1.5", "\"all\"", "null"] {
            assert!(serde_json::from_str::<Run>(text).is_err(), "{text}");
        }
    }
}
