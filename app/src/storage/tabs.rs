//! Which other tabs of this browser have the open plan open, too.

use leverwright_core::ordered::SmallSet;

use leptos::prelude::*;
use serde::{Deserialize, Serialize};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{BroadcastChannel, MessageEvent};

/// What tabs call to each other.
const CHANNEL: &str = "leverwright";

/// A call from one tab to all others.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
struct Call {
    tab: String,
    plan: String,
    says: Says,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
enum Says {
    /// I opened it: who has it, too?
    Opened,
    /// I have it, too.
    HaveItToo,
    /// I no longer have it.
    Closed,
}

/// This tab among the others.
#[derive(Clone, Copy)]
pub struct Tabs {
    /// What this tab is called.
    pub name: StoredValue<String>,
    /// The other tabs that have the open plan open.
    pub others: RwSignal<SmallSet<String>>,
    plan: StoredValue<Option<String>>,
    channel: StoredValue<Option<BroadcastChannel>, LocalStorage>,
}

impl Tabs {
    /// Listens to the other tabs from now on.
    pub fn open(bits: u64) -> Tabs {
        let tabs = Tabs {
            name: StoredValue::new(format!("{bits:016x}")),
            others: RwSignal::new(SmallSet::new()),
            plan: StoredValue::new(None),
            channel: StoredValue::new_local(BroadcastChannel::new(CHANNEL).ok()),
        };
        let hear = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            let call = event.data().as_string();
            if let Some(call) = call.and_then(|call| serde_json::from_str(&call).ok()) {
                tabs.hear(call);
            }
        });
        tabs.channel.with_value(|channel| {
            if let Some(channel) = channel {
                channel.set_onmessage(Some(hear.as_ref().unchecked_ref()));
            }
        });
        // It listens as long as the page lives.
        hear.forget();
        tabs
    }

    /// Tells the others that this tab opened a plan.
    pub fn opened(self, plan: &str) {
        self.closed();
        self.plan.set_value(Some(plan.to_owned()));
        self.call(Says::Opened);
    }

    /// Tells the others that this tab has no plan open any more.
    pub fn closed(self) {
        self.call(Says::Closed);
        self.plan.set_value(None);
        self.others.set(SmallSet::new());
    }

    fn call(self, says: Says) {
        let Some(plan) = self.plan.get_value() else {
            return;
        };
        let tab = self.name.get_value();
        let Ok(text) = serde_json::to_string(&Call { tab, plan, says }) else {
            return;
        };
        self.channel.with_value(|channel| {
            if let Some(channel) = channel {
                // A closed channel has nobody to hear it.
                let _ = channel.post_message(&text.into());
            }
        });
    }

    fn hear(self, call: Call) {
        if self.plan.get_value() != Some(call.plan) {
            return;
        }
        match call.says {
            Says::Opened => {
                self.others.update(|others| {
                    others.insert(call.tab);
                });
                self.call(Says::HaveItToo);
            }
            Says::HaveItToo => self.others.update(|others| {
                others.insert(call.tab);
            }),
            Says::Closed => self.others.update(|others| {
                others.remove(&call.tab);
            }),
        }
    }
}
