//! Closed lists of words as files have them: by their codes.

use std::fmt;
use std::marker::PhantomData;

use serde::de::{self, Deserialize, Deserializer, Unexpected, Visitor};
use serde::ser::{Serialize, Serializer};

use crate::vocabulary::Vocabulary;

/// A choice of a closed list, written as its code.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Code<T>(pub(super) T);

/// Up to this many codes are told to somebody who wrote another one.
const MOST_TOLD: usize = 7;

/// What would have been right: "left or right".
struct Expected<T>(PhantomData<T>);

impl<T: Vocabulary> fmt::Display for Expected<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let codes: Vec<&str> = T::ALL.iter().map(|item| item.code()).collect();
        match codes.split_last() {
            Some((last, [])) => f.write_str(last),
            Some((last, others)) if codes.len() <= MOST_TOLD => {
                write!(f, "{} or {last}", others.join(", "))
            }
            _ => {
                let name = T::NAME;
                let article = if name.starts_with(['a', 'e', 'i', 'o', 'u']) {
                    "an"
                } else {
                    "a"
                };
                write!(f, "{article} {name} such as {}", codes[..3].join(", "))
            }
        }
    }
}

impl<T: Vocabulary> Serialize for Code<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.0.code())
    }
}

impl<'de, T: Vocabulary> Deserialize<'de> for Code<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct ByCode<T>(PhantomData<T>);

        impl<T: Vocabulary> Visitor<'_> for ByCode<T> {
            type Value = Code<T>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{}", Expected::<T>(PhantomData))
            }

            fn visit_str<E: de::Error>(self, code: &str) -> Result<Code<T>, E> {
                T::from_code(code)
                    .map(Code)
                    .ok_or_else(|| E::invalid_value(Unexpected::Str(code), &self))
            }
        }

        deserializer.deserialize_str(ByCode(PhantomData))
    }
}

#[cfg(feature = "schema")]
impl<T: Vocabulary> schemars::JsonSchema for Code<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        T::NAME.replace(' ', "_").into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let codes: Vec<&str> = T::ALL.iter().map(|item| item.code()).collect();
        schemars::json_schema!({ "type": "string", "enum": codes })
    }
}

#[cfg(test)]
mod tests {
    use super::Code;
    use crate::cockpit::{ControlKind, Joint};
    use crate::function::Function;
    use crate::rider::Side;
    use crate::vocabulary::Vocabulary;

    fn refusal<T: Vocabulary>() -> String {
        match serde_json::from_str::<Code<T>>("\"up\"") {
            Ok(_) => panic!("\"up\" is a {}", T::NAME),
            Err(error) => super::super::error::plain(&error.to_string()),
        }
    }

    #[test]
    fn tells_what_would_have_been_right() {
        assert_eq!(refusal::<Side>(), "expected left or right, found \"up\"");
        assert_eq!(
            refusal::<Joint>(),
            "expected direct, dual-pull, cable-doubler or hose-splitter, found \"up\""
        );
        assert_eq!(
            refusal::<Function>(),
            "expected a function such as rear-harder, rear-easier, front-larger, found \"up\""
        );
        assert!(refusal::<ControlKind>().contains("sprint-button"));
    }
}
