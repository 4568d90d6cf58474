//! Numbers as files have them: within bounds.

use std::fmt;

use serde::de::{self, Deserialize, Deserializer, Unexpected, Visitor};
use serde::ser::{Serialize, Serializer};

use crate::limits::Span;
use crate::units::Mm;

/// A length in millimetres from `FROM` to `TO`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Length<const FROM: i32, const TO: i32>(f64);

impl<const FROM: i32, const TO: i32> Length<FROM, TO> {
    const SPAN: Span = Span { from: FROM, to: TO };
}

impl<const FROM: i32, const TO: i32> From<Mm> for Length<FROM, TO> {
    fn from(mm: Mm) -> Self {
        Length(mm.0)
    }
}

impl<const FROM: i32, const TO: i32> From<Length<FROM, TO>> for Mm {
    fn from(length: Length<FROM, TO>) -> Self {
        Mm(length.0)
    }
}

impl<const FROM: i32, const TO: i32> Serialize for Length<FROM, TO> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.0)
    }
}

impl<'de, const FROM: i32, const TO: i32> Deserialize<'de> for Length<FROM, TO> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Within<const FROM: i32, const TO: i32>;

        impl<const FROM: i32, const TO: i32> Visitor<'_> for Within<FROM, TO> {
            type Value = Length<FROM, TO>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "a number from {FROM} to {TO} (millimetres)")
            }

            fn visit_f64<E: de::Error>(self, value: f64) -> Result<Self::Value, E> {
                if Self::Value::SPAN.holds(Mm(value)) {
                    Ok(Length(value))
                } else {
                    Err(E::invalid_value(Unexpected::Float(value), &self))
                }
            }

            // Whole numbers beyond a span are far from where `f64` is coarse.
            #[expect(clippy::cast_precision_loss, reason = "the span is small")]
            fn visit_i64<E: de::Error>(self, value: i64) -> Result<Self::Value, E> {
                self.visit_f64(value as f64)
            }

            #[expect(clippy::cast_precision_loss, reason = "the span is small")]
            fn visit_u64<E: de::Error>(self, value: u64) -> Result<Self::Value, E> {
                self.visit_f64(value as f64)
            }
        }

        deserializer.deserialize_f64(Within::<FROM, TO>)
    }
}

/// A whole number from `FROM` to `TO`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Whole<const FROM: u32, const TO: u32>(pub(super) u32);

impl<const FROM: u32, const TO: u32> Serialize for Whole<FROM, TO> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_u32(self.0)
    }
}

impl<'de, const FROM: u32, const TO: u32> Deserialize<'de> for Whole<FROM, TO> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Within<const FROM: u32, const TO: u32>;

        impl<const FROM: u32, const TO: u32> Visitor<'_> for Within<FROM, TO> {
            type Value = Whole<FROM, TO>;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "a whole number from {FROM} to {TO}")
            }

            fn visit_u64<E: de::Error>(self, value: u64) -> Result<Self::Value, E> {
                u32::try_from(value)
                    .ok()
                    .filter(|n| (FROM..=TO).contains(n))
                    .map(Whole)
                    .ok_or_else(|| E::invalid_value(Unexpected::Unsigned(value), &self))
            }
        }

        deserializer.deserialize_u32(Within::<FROM, TO>)
    }
}

/// A whole number that fits a byte, for counts of parts.
impl<const FROM: u32, const TO: u32> From<u8> for Whole<FROM, TO> {
    fn from(value: u8) -> Self {
        Whole(value.into())
    }
}

impl<const FROM: u32, const TO: u32> From<u16> for Whole<FROM, TO> {
    fn from(value: u16) -> Self {
        Whole(value.into())
    }
}

impl<const FROM: u32, const TO: u32> From<Whole<FROM, TO>> for u8 {
    fn from(whole: Whole<FROM, TO>) -> Self {
        const { assert!(TO <= u8::MAX as u32) };
        whole.0 as u8
    }
}

impl<const FROM: u32, const TO: u32> From<Whole<FROM, TO>> for u16 {
    fn from(whole: Whole<FROM, TO>) -> Self {
        const { assert!(TO <= u16::MAX as u32) };
        whole.0 as u16
    }
}

#[cfg(feature = "schema")]
mod schema {
    use super::{Length, Whole};
    use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
    use std::borrow::Cow;

    impl<const FROM: i32, const TO: i32> JsonSchema for Length<FROM, TO> {
        fn inline_schema() -> bool {
            true
        }

        fn schema_name() -> Cow<'static, str> {
            format!("Millimetres{FROM}To{TO}").into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            json_schema!({ "type": "number", "minimum": FROM, "maximum": TO })
        }
    }

    impl<const FROM: u32, const TO: u32> JsonSchema for Whole<FROM, TO> {
        fn inline_schema() -> bool {
            true
        }

        fn schema_name() -> Cow<'static, str> {
            format!("Whole{FROM}To{TO}").into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            json_schema!({ "type": "integer", "minimum": FROM, "maximum": TO })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Length, Whole};

    #[test]
    fn absurd_numbers_are_refused() {
        for text in ["-1", "81", "1e300", "\"5\"", "null", "[]"] {
            assert!(
                serde_json::from_str::<Length<0, 80>>(text).is_err(),
                "{text}"
            );
        }
        for text in ["0", "15", "2.5", "-3", "99999999999999999999"] {
            assert!(
                serde_json::from_str::<Whole<1, 14>>(text).is_err(),
                "{text}"
            );
        }
    }

    #[test]
    fn whole_millimetres_need_no_point() {
        let length: Length<0, 80> = serde_json::from_str("12").expect("a length");
        assert_eq!(length, Length(12.0));
    }
}
