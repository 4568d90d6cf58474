//! Lines to fill in and to tick.

/// A field of the form.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Field {
    /// What goes there.
    pub label: &'static str,
    /// What is known; `None` is a line to fill in by hand.
    pub value: Option<String>,
}

impl Field {
    /// A field with what is known of it.
    pub const fn new(label: &'static str, value: Option<String>) -> Field {
        Field { label, value }
    }

    /// A line to fill in by hand.
    pub const fn blank(label: &'static str) -> Field {
        Field { label, value: None }
    }
}

/// Something to do and tick off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tick {
    /// The balloon numbers it is about.
    pub numbers: Vec<usize>,
    /// What to do.
    pub act: String,
    /// What is to be seen; empty where doing it is enough.
    pub expect: String,
    /// How many boxes: one for each press or pull.
    pub boxes: u8,
    /// What to measure or write down.
    pub fields: Vec<&'static str>,
}

impl Tick {
    /// One box, nothing to measure.
    pub(super) fn of(act: impl Into<String>, expect: impl Into<String>) -> Tick {
        Tick {
            numbers: Vec::new(),
            act: act.into(),
            expect: expect.into(),
            boxes: 1,
            fields: Vec::new(),
        }
    }

    /// Something to do, seen by doing it.
    pub(super) fn plain(act: impl Into<String>) -> Tick {
        Tick::of(act, "")
    }

    pub(super) fn about(mut self, numbers: Vec<usize>) -> Tick {
        self.numbers = numbers;
        self
    }

    pub(super) fn times(mut self, boxes: u8) -> Tick {
        self.boxes = boxes;
        self
    }

    pub(super) fn with(mut self, field: &'static str) -> Tick {
        self.fields.push(field);
        self
    }
}

/// A list to tick off from top to bottom.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TickList {
    /// What it is called.
    pub title: &'static str,
    /// How it is done, in a sentence or two; may be empty.
    pub note: &'static str,
    /// The lines.
    pub ticks: Vec<Tick>,
}
