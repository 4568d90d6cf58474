//! How values are read from a file and written to one.
//!
//! Reading tells the place of every fault and keeps what it does not know. It
//! is written here rather than derived with serde: derived, with places and
//! unknown parts, reading and writing took 137 KB of the compressed page, of
//! which there are 300; this takes 65.

use std::fmt;

use serde_json::{Map, Value};

use super::reader::Reader;

/// A value was refused; the [`Reader`] knows why.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Refused;

/// A place of a file with the value that stands there.
#[derive(Clone, Copy)]
pub(super) struct Place<'a> {
    pub(super) value: &'a Value,
    pub(super) step: Step<'a>,
    /// The place around it; none at the top.
    pub(super) around: Option<&'a Place<'a>>,
}

/// The step to a place from the one around it.
#[derive(Clone, Copy)]
pub(super) enum Step<'a> {
    /// The whole file.
    Top,
    /// Something in a group, by its name.
    Named(&'a str),
    /// Something in a list, counted from 0.
    Item(usize),
}

/// As people read it: `bike.controls[3].side`.
impl fmt::Display for Place<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(around) = self.around {
            around.fmt(f)?;
        }
        match self.step {
            Step::Top => Ok(()),
            Step::Named(name) if self.around.is_some_and(|p| p.around.is_some()) => {
                write!(f, ".{name}")
            }
            Step::Named(name) => f.write_str(name),
            Step::Item(at) => write!(f, "[{at}]"),
        }
    }
}

impl<'a> Place<'a> {
    /// The whole file.
    pub(super) fn top(value: &'a Value) -> Place<'a> {
        Place {
            value,
            step: Step::Top,
            around: None,
        }
    }

    /// The steps from the top to this place.
    pub(super) fn steps(&self) -> Vec<&Place<'a>> {
        let mut steps = vec![self];
        let mut here = self.around;
        while let Some(place) = here {
            steps.push(place);
            here = place.around;
        }
        steps.reverse();
        steps
    }

    /// The place of a value with a name.
    pub(super) fn named(&'a self, name: &'a str, value: &'a Value) -> Place<'a> {
        Place {
            value,
            step: Step::Named(name),
            around: Some(self),
        }
    }

    /// The place of an item.
    pub(super) fn item(&'a self, at: usize, value: &'a Value) -> Place<'a> {
        Place {
            value,
            step: Step::Item(at),
            around: Some(self),
        }
    }

    /// The group of named values here.
    pub(super) fn group(
        &self,
        what: &str,
        reader: &mut Reader,
    ) -> Result<&'a Map<String, Value>, Refused> {
        match self.value {
            Value::Object(map) => Ok(map),
            _ => Err(reader.expected(self, what)),
        }
    }

    /// The items here, at most so many.
    pub(super) fn items(&self, most: usize, reader: &mut Reader) -> Result<&'a [Value], Refused> {
        match self.value {
            Value::Array(items) if items.len() <= most => Ok(items),
            Value::Array(items) => {
                let found = items.len();
                Err(reader.refuse(self, format!("expected at most {most}, found {found}")))
            }
            _ => Err(reader.expected(self, &format!("a list of at most {most}"))),
        }
    }

    /// The text here.
    pub(super) fn text(&self, what: &str, reader: &mut Reader) -> Result<&'a str, Refused> {
        self.value
            .as_str()
            .ok_or_else(|| reader.expected(self, what))
    }

    /// Reads a value of the group here.
    pub(super) fn field<T: Part>(
        &self,
        group: &Map<String, Value>,
        name: &str,
        reader: &mut Reader,
    ) -> Result<T, Refused> {
        match group.get(name) {
            Some(value) => T::read(&self.named(name, value), reader),
            None => Err(reader.missing(self, name)),
        }
    }

    /// The same, where the value may be absent.
    pub(super) fn field_or_default<T: Part + Default>(
        &self,
        group: &Map<String, Value>,
        name: &str,
        reader: &mut Reader,
    ) -> Result<T, Refused> {
        match group.get(name) {
            Some(value) => T::read(&self.named(name, value), reader),
            None => Ok(T::default()),
        }
    }
}

/// Something that stands in a file.
pub(super) trait Part: Sized {
    /// Reads what stands at a place.
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused>;

    /// What is written.
    fn write(&self) -> Value;

    /// Whether it is left out of its group.
    fn is_left_out(&self) -> bool {
        false
    }
}

/// Writes a value into a group.
pub(super) fn put<T: Part>(group: &mut Map<String, Value>, name: &str, part: &T) {
    if !part.is_left_out() {
        group.insert(name.to_owned(), part.write());
    }
}

/// Nothing is written as `null`.
impl<T: Part> Part for Option<T> {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        if at.value.is_null() {
            return Ok(None);
        }
        T::read(at, reader).map(Some)
    }

    fn write(&self) -> Value {
        self.as_ref().map_or(Value::Null, T::write)
    }
}

/// What may be left out: nothing is not written.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(transparent, inline))]
pub(super) struct Given<T>(pub(super) Option<T>);

impl<T> Default for Given<T> {
    fn default() -> Self {
        Given(None)
    }
}

impl<T: Part> Part for Given<T> {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        Part::read(at, reader).map(Given)
    }

    fn write(&self) -> Value {
        self.0.write()
    }

    fn is_left_out(&self) -> bool {
        self.0.is_none()
    }
}

impl Part for bool {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        at.value
            .as_bool()
            .ok_or_else(|| reader.expected(at, "true or false"))
    }

    fn write(&self) -> Value {
        (*self).into()
    }
}

impl Part for String {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        at.text("a text", reader).map(str::to_owned)
    }

    fn write(&self) -> Value {
        self.as_str().into()
    }
}

/// Defines a struct that stands in files as a group of its fields. A field
/// marked `(default)` may be absent.
macro_rules! part {
    (
        $(#[$meta:meta])*
        $vis:vis struct $name:ident $(<$of:ident>)? as $what:literal {
            $( $(#[$field_meta:meta])* $field:ident $(($default:ident))?: $type:ty, )+
        }
    ) => {
        #[derive(Debug, Clone, PartialEq)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        $(#[$meta])*
        $vis struct $name $(<$of>)? {
            $(
                $(#[$field_meta])*
                $( #[cfg_attr(feature = "schema", schemars($default))] )?
                $field: $type,
            )+
        }

        impl $(<$of: $crate::document::part::Part>)? $crate::document::part::Part
            for $name $(<$of>)?
        {
            fn read(
                at: &$crate::document::part::Place<'_>,
                reader: &mut $crate::document::reader::Reader,
            ) -> Result<Self, $crate::document::part::Refused> {
                let group = at.group($what, reader)?;
                reader.keep_unknown(at, group, &[$(stringify!($field)),+]);
                Ok($name { $(
                    $field: part!(@read $($default)?)(at, group, stringify!($field), reader)?,
                )+ })
            }

            fn write(&self) -> serde_json::Value {
                let mut group = serde_json::Map::new();
                $( $crate::document::part::put(&mut group, stringify!($field), &self.$field); )+
                group.into()
            }
        }
    };
    (@read) => { $crate::document::part::Place::field };
    (@read default) => { $crate::document::part::Place::field_or_default };
}
