//! What an attribute may hold.

use std::sync::{Arc, Mutex};

use wasm_bindgen::JsValue;

use crate::signal::{Memo, RwSignal, Signal};

/// What an attribute holds at one moment.
#[derive(Debug, Clone, PartialEq)]
pub enum Plain {
    /// It is not there.
    Absent,
    /// It is there, or is not.
    Flag(bool),
    /// Words that the program carries.
    Fixed(&'static str),
    /// Words that were made.
    Text(String),
}

impl Plain {
    /// The words to write; `None` takes the attribute away.
    pub fn words(&self) -> Option<&str> {
        match self {
            Plain::Absent | Plain::Flag(false) => None,
            Plain::Flag(true) => Some(""),
            Plain::Fixed(words) => Some(words),
            Plain::Text(words) => Some(words),
        }
    }

    /// Whether a class is on.
    pub fn is_on(&self) -> bool {
        !matches!(self, Plain::Absent | Plain::Flag(false))
    }

    /// The value as scripts see it.
    pub fn to_js(&self) -> JsValue {
        match self {
            Plain::Flag(on) => JsValue::from_bool(*on),
            other => other.words().map_or(JsValue::NULL, JsValue::from_str),
        }
    }
}

/// What an attribute holds as time goes by.
pub enum Value {
    /// Always the same.
    Still(Plain),
    /// Worked out anew when what it reads changes.
    Live(Box<dyn FnMut() -> Plain>),
}

/// What can be written as an attribute at one moment.
pub trait IntoPlain {
    /// The value as an attribute.
    fn into_plain(self) -> Plain;
}

/// What can be given to an attribute in a view.
pub trait IntoValue {
    /// The value of the attribute.
    fn into_value(self) -> Value;
}

/// What `view!` does to each value; here nothing is left to do.
pub trait IntoAttributeValue: Sized {
    /// The value as it is.
    fn into_attribute_value(self) -> Self {
        self
    }
}

impl<V> IntoAttributeValue for V {}

impl IntoPlain for &'static str {
    fn into_plain(self) -> Plain {
        Plain::Fixed(self)
    }
}

impl IntoPlain for String {
    fn into_plain(self) -> Plain {
        Plain::Text(self)
    }
}

impl IntoPlain for bool {
    fn into_plain(self) -> Plain {
        Plain::Flag(self)
    }
}

impl<T: IntoPlain> IntoPlain for Option<T> {
    fn into_plain(self) -> Plain {
        self.map_or(Plain::Absent, T::into_plain)
    }
}

macro_rules! numbers {
    ($($number:ty)*) => {
        $(impl IntoPlain for $number {
            fn into_plain(self) -> Plain {
                Plain::Text(self.to_string())
            }
        })*
    };
}

numbers!(i32 u16 u32 usize f64);

macro_rules! still {
    ($($plain:ty)*) => {
        $(impl IntoValue for $plain {
            fn into_value(self) -> Value {
                Value::Still(self.into_plain())
            }
        })*
    };
}

still!(&'static str String bool i32 u16 u32 usize f64);

impl<T: IntoPlain> IntoValue for Option<T> {
    fn into_value(self) -> Value {
        Value::Still(self.into_plain())
    }
}

impl<F, T> IntoValue for F
where
    F: FnMut() -> T + 'static,
    T: IntoPlain,
{
    fn into_value(mut self) -> Value {
        Value::Live(Box::new(move || self().into_plain()))
    }
}

/// What `view!` makes of a closure.
impl<T: IntoPlain + 'static> IntoValue for Arc<Mutex<dyn FnMut() -> T + Send>> {
    fn into_value(self) -> Value {
        Value::Live(Box::new(move || {
            let mut read = self.lock().expect("one thread");
            read().into_plain()
        }))
    }
}

macro_rules! signals {
    ($($signal:ident)*) => {
        $(impl<T> IntoValue for $signal<T>
        where
            T: IntoPlain + Clone + Send + Sync + 'static,
        {
            fn into_value(self) -> Value {
                Value::Live(Box::new(move || self.get().into_plain()))
            }
        })*
    };
}

signals!(Memo RwSignal Signal);
