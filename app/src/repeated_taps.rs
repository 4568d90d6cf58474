//! Lets a tap count only some time after the one before, for hands that tap
//! twice where once was meant.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{AddEventListenerOptions, Event};

use crate::settings::Settings;

/// Decides which taps count. A tap goes from pointer down to click; a key press
/// on a button is a click without a pointer.
#[derive(Debug, Clone, Copy, Default)]
struct Filter {
    /// When the last tap that counted ended, in milliseconds.
    last: Option<f64>,
    /// Whether the tap under way counts; `None` between taps.
    under_way: Option<bool>,
}

impl Filter {
    /// Whether an event goes through, at a time in milliseconds, when so long a
    /// pause is asked for.
    fn passes(&mut self, event: Kind, now: f64, pause: f64) -> bool {
        let rested = self.last.is_none_or(|last| now - last >= pause);
        match event {
            Kind::Down => {
                self.under_way = Some(rested);
                rested
            }
            Kind::Up => {
                let counts = self.under_way.unwrap_or(true);
                if counts {
                    self.last = Some(now);
                }
                counts
            }
            Kind::Click => match self.under_way.take() {
                Some(counts) => counts,
                None => {
                    if rested {
                        self.last = Some(now);
                    }
                    rested
                }
            },
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Down,
    Up,
    Click,
}

impl Kind {
    const ALL: [(&str, Kind); 3] = [
        ("pointerdown", Kind::Down),
        ("pointerup", Kind::Up),
        ("click", Kind::Click),
    ];
}

/// Filters taps on the whole page, before anything else hears of them.
pub fn filter_taps(settings: Settings) {
    let filter = StoredValue::new(Filter::default());
    for (name, kind) in Kind::ALL {
        let listen = Closure::<dyn FnMut(Event)>::new(move |event: Event| {
            let pause = settings.tap_pause();
            let passes = filter
                .try_update_value(|filter| filter.passes(kind, event.time_stamp(), pause))
                .unwrap_or(true);
            if pause > 0.0 && !passes {
                event.stop_immediate_propagation();
                event.prevent_default();
            }
        });
        let options = AddEventListenerOptions::new();
        options.set_capture(true);
        // The page lives as long as the window, and so does this listener.
        let _ = window().add_event_listener_with_callback_and_add_event_listener_options(
            name,
            listen.into_js_value().unchecked_ref(),
            &options,
        );
    }
}

#[cfg(test)]
mod tests {
    use super::{Filter, Kind};

    fn tap(filter: &mut Filter, at: f64) -> bool {
        let parts = [
            (Kind::Down, at),
            (Kind::Up, at + 50.0),
            (Kind::Click, at + 51.0),
        ];
        let passed = parts.map(|(kind, now)| filter.passes(kind, now, 600.0));
        assert!(passed.iter().all(|part| *part == passed[0]), "{passed:?}");
        passed[0]
    }

    #[test]
    fn a_second_tap_counts_only_after_the_pause() {
        let mut filter = Filter::default();
        assert!(tap(&mut filter, 0.0));
        assert!(!tap(&mut filter, 200.0));
        assert!(!tap(&mut filter, 500.0));
        assert!(tap(&mut filter, 700.0));
    }

    #[test]
    fn taps_that_do_not_count_do_not_prolong_the_pause() {
        let mut filter = Filter::default();
        assert!(tap(&mut filter, 0.0));
        for at in [100.0, 200.0, 300.0, 400.0, 500.0] {
            assert!(!tap(&mut filter, at));
        }
        assert!(tap(&mut filter, 651.0));
    }

    #[test]
    fn keys_press_buttons_under_the_same_pause() {
        let mut filter = Filter::default();
        assert!(filter.passes(Kind::Click, 0.0, 600.0));
        assert!(!filter.passes(Kind::Click, 300.0, 600.0));
        assert!(filter.passes(Kind::Click, 700.0, 600.0));
    }

    #[test]
    fn without_a_pause_every_tap_counts() {
        let mut filter = Filter::default();
        assert!((0..10).all(|at| filter.passes(Kind::Click, f64::from(at), 0.0)));
    }
}
