//! Numbers as files have them: within bounds.

use serde_json::Value;

use super::part::{Part, Place, Refused};
use super::reader::Reader;
use crate::limits::Span;
use crate::units::Mm;

/// A length in millimetres from `FROM` to `TO`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Length<const FROM: i32, const TO: i32>(f64);

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

impl<const FROM: i32, const TO: i32> Part for Length<FROM, TO> {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        length(at, Span { from: FROM, to: TO }, reader).map(Length)
    }

    fn write(&self) -> Value {
        self.0.into()
    }
}

fn length(at: &Place<'_>, span: Span, reader: &mut Reader) -> Result<f64, Refused> {
    (at.value.as_f64())
        .filter(|number| span.holds(Mm(*number)))
        .ok_or_else(|| {
            let Span { from, to } = span;
            reader.expected(at, &format!("a number from {from} to {to} (millimetres)"))
        })
}

/// A whole number from `FROM` to `TO`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Whole<const FROM: u32, const TO: u32>(pub(super) u32);

impl<const FROM: u32, const TO: u32> Part for Whole<FROM, TO> {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        whole(at, FROM, TO, reader).map(Whole)
    }

    fn write(&self) -> Value {
        self.0.into()
    }
}

fn whole(at: &Place<'_>, from: u32, to: u32, reader: &mut Reader) -> Result<u32, Refused> {
    (at.value.as_u64())
        .and_then(|number| u32::try_from(number).ok())
        .filter(|number| (from..=to).contains(number))
        .ok_or_else(|| reader.expected(at, &format!("a whole number from {from} to {to}")))
}

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
    use crate::document::reader::reads;
    use serde_json::json;

    #[test]
    fn absurd_numbers_are_refused() {
        for value in [json!(-1), json!(81), json!(1e300), json!("5"), json!(null)] {
            assert_eq!(reads::<Length<0, 80>>(&value), None, "{value}");
        }
        for value in [json!(0), json!(15), json!(2.5), json!(-3), json!(1e20)] {
            assert_eq!(reads::<Whole<1, 14>>(&value), None, "{value}");
        }
    }

    #[test]
    fn whole_millimetres_need_no_point() {
        assert_eq!(reads(&json!(12)), Some(Length::<0, 80>(12.0)));
    }
}
