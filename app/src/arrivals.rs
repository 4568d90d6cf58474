//! What came from elsewhere, by link or as a file, until somebody says what
//! becomes of it. It lies in this page only.

use leptos::prelude::*;
use leverwright_core::document::Opened;
use leverwright_core::share;
use wasm_bindgen::JsValue;

use crate::parts::{Part, desk, once_here};
use crate::route::Route;
use crate::workspace::Workspace;

/// How something came.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// By a link.
    Link,
    /// As a file of this name.
    File(String),
}

impl Origin {
    /// At the head of a sentence.
    pub fn words(&self) -> String {
        match self {
            Origin::Link => "The link".into(),
            Origin::File(name) => format!("“{name}”"),
        }
    }
}

/// Something that came.
#[derive(Debug, Clone, PartialEq)]
pub struct Arrived {
    /// How it came.
    pub from: Origin,
    /// The plan, or why it was not opened, in a sentence.
    pub opened: Result<Opened, String>,
}

/// What waits, oldest first. A context: fetch it with [`Arrivals::here`].
#[derive(Clone, Copy)]
pub struct Arrivals {
    waiting: RwSignal<Vec<Arrived>>,
}

impl Arrivals {
    /// Nothing waits.
    pub fn new() -> Self {
        Arrivals {
            waiting: RwSignal::new(Vec::new()),
        }
    }

    /// The arrivals that [`crate::App`] provides.
    pub fn here() -> Self {
        expect_context()
    }

    /// What is to be decided on now.
    pub fn first(self) -> Option<Arrived> {
        self.waiting.with(|waiting| waiting.first().cloned())
    }

    /// Puts something at the end.
    pub fn add(self, arrived: Arrived) {
        self.waiting.update(|waiting| waiting.push(arrived));
    }

    /// Takes the first away, because it is decided; whether more waits.
    pub fn settle(self) -> bool {
        self.waiting.update(|waiting| {
            if !waiting.is_empty() {
                waiting.remove(0);
            }
        });
        !self.waiting.with_untracked(Vec::is_empty)
    }

    /// Takes a plan out of the address, which no longer shows it from then on,
    /// whatever comes of it.
    pub fn take_from_address(self, workspace: Workspace) {
        let href = window().location().href().unwrap_or_default();
        if let Some(packed) = share::fragment_of(&href) {
            clear_address();
            let packed = packed.to_owned();
            once_here(Part::Desk, workspace, move || self.add(by_link(&packed)));
        }
    }

    /// Whether a plan is in the address.
    pub fn are_in_address() -> bool {
        let href = window().location().href().unwrap_or_default();
        share::fragment_of(&href).is_some()
    }

    /// Opens a link that was pasted; whether it is one.
    pub fn take_link(self, text: &str) -> bool {
        let packed = share::fragment_of(text.trim());
        if let Some(packed) = packed {
            self.add(by_link(packed));
        }
        packed.is_some()
    }
}

fn by_link(packed: &str) -> Arrived {
    Arrived {
        from: Origin::Link,
        opened: (desk().open_link)(packed),
    }
}

fn clear_address() {
    let history = window().history();
    // Fails only where the browser keeps no history at all.
    let _ = history.map(|history| {
        history.replace_state_with_url(&JsValue::NULL, "", Some(&Route::Open.href()))
    });
}
