//! Buttons, dates and hold runs as files have them.

use serde_json::Value;

use super::list::Key;
use super::part::{Part, Place, Refused};
use super::reader::Reader;
use crate::cockpit::{ButtonId, HoldRun};
use crate::limits::MOST_COGS;
use crate::record::{self, PartKey};
use crate::text::Date;

/// A button, written as `3.inner-paddle`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct ButtonKey(pub(super) ButtonId);

impl Key for ButtonKey {
    fn parse(text: &str) -> Option<Self> {
        // Written in one way only, so that one button has one key.
        ButtonId::parse(text)
            .filter(|id| id.to_string() == text)
            .map(ButtonKey)
    }

    fn spell(&self) -> String {
        self.0.to_string()
    }

    fn expected() -> String {
        "a control's id and its button, such as 3.inner-paddle".into()
    }
}

impl Part for ButtonKey {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        (at.value.as_str())
            .and_then(Self::parse)
            .ok_or_else(|| reader.expected(at, &Self::expected()))
    }

    fn write(&self) -> Value {
        self.spell().into()
    }
}

/// A date, written as `2031-05-09`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Day(pub(super) Date);

impl Part for Day {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let text = at.value.as_str();
        text.and_then(Date::parse)
            .filter(|date| text == Some(&date.to_string()))
            .map(Day)
            .ok_or_else(|| reader.expected(at, "a date such as 2031-05-09"))
    }

    fn write(&self) -> Value {
        self.0.to_string().into()
    }
}

/// A digest, written as `K7PF-3QXM`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Digest(pub(super) record::Code);

impl Part for Digest {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let text = at.value.as_str();
        text.and_then(record::Code::parse)
            .filter(|code| text == Some(&code.to_string()))
            .map(Digest)
            .ok_or_else(|| reader.expected(at, "a code such as K7PF-3QXM"))
    }

    fn write(&self) -> Value {
        self.0.to_string().into()
    }
}

/// A part of the plan by its name, such as `layout:1`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct PartName(pub(super) PartKey);

impl Part for PartName {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        (at.value.as_str())
            .and_then(PartKey::parse)
            .map(PartName)
            .ok_or_else(|| reader.expected(at, "a part such as bike or layout:1"))
    }

    fn write(&self) -> Value {
        self.0.key().into()
    }
}

/// A hold run: a number of cogs, or `"to-end"`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Run(pub(super) HoldRun);

const TO_END: &str = "to-end";

impl Part for Run {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        if at.value == TO_END {
            return Ok(Run(HoldRun::ToEnd));
        }
        (at.value.as_u64())
            .and_then(|n| u8::try_from(n).ok())
            .filter(|n| (1..=MOST_COGS).contains(n))
            .map(|n| Run(HoldRun::Cogs(n)))
            .ok_or_else(|| {
                let what = format!("a number of cogs from 1 to {MOST_COGS}, or \"{TO_END}\"");
                reader.expected(at, &what)
            })
    }

    fn write(&self) -> Value {
        match self.0 {
            HoldRun::Cogs(n) => n.into(),
            HoldRun::ToEnd => TO_END.into(),
        }
    }
}

#[cfg(feature = "schema")]
mod schema {
    use super::{ButtonKey, Day, Digest, MOST_COGS, PartName, Run, TO_END};
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

    impl JsonSchema for Digest {
        fn schema_name() -> Cow<'static, str> {
            "Digest".into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            json_schema!({
                "description": "A short digest: K7PF-3QXM.",
                "type": "string",
                "pattern": "^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$",
            })
        }
    }

    impl JsonSchema for PartName {
        fn schema_name() -> Cow<'static, str> {
            "PartName".into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            json_schema!({
                "description": "A part of the plan that is merged as a whole.",
                "type": "string",
                "pattern": "^(title|rider|reach|bike|road|layouts|hand:(left|right)|layout:(0|[1-9][0-9]{0,4})|accepted:.*)$",
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
    use crate::document::reader::reads;
    use serde_json::json;

    #[test]
    fn one_button_has_one_key() {
        assert!(reads::<ButtonKey>(&json!("3.near")).is_some());
        for text in ["03.near", "+3.near", "3.", "3.nearest", "70000.near", ""] {
            assert_eq!(reads::<ButtonKey>(&json!(text)), None, "{text}");
        }
    }

    #[test]
    fn days_exist() {
        assert!(reads::<Day>(&json!("2032-02-29")).is_some());
        for text in ["2031-02-29", "2031-2-09", "+031-05-09", "31-05-2009"] {
            assert_eq!(reads::<Day>(&json!(text)), None, "{text}");
        }
    }

    #[test]
    fn holds_move_some_cogs_or_all() {
        assert!(reads::<Run>(&json!(3)).is_some());
        assert!(reads::<Run>(&json!("to-end")).is_some());
        for value in [
            json!(0),
            json!(15),
            json!(-1),
            json!(1.5),
            json!("all"),
            json!(null),
        ] {
            assert_eq!(reads::<Run>(&value), None, "{value}");
        }
    }
}
