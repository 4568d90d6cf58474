//! The marks of severity: told apart by shape, so that they need no colour.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::finding::Severity;

/// The mark of a severity, with its word beside it.
#[component]
pub fn SeverityMark(severity: Severity) -> impl IntoView {
    view! {
        <span class=format!("severity {}", severity.code())>
            <svg class="mark" viewBox="0 0 24 24" aria-hidden="true">
                <path class="outline" d=outline(severity)></path>
                <path class="sign" d=sign(severity)></path>
            </svg>
            <span>{severity.words()}</span>
        </span>
    }
}

/// Octagon, triangle, circle.
const fn outline(severity: Severity) -> &'static str {
    match severity {
        Severity::MustFix => "M8 2h8l6 6v8l-6 6H8l-6-6V8z",
        Severity::Check => "M12 2.5 22.5 21h-21z",
        Severity::GoodToKnow => "M12 2a10 10 0 1 1 0 20 10 10 0 0 1 0-20z",
    }
}

/// A bar to stop at, a stroke with a dot, an i.
const fn sign(severity: Severity) -> &'static str {
    match severity {
        Severity::MustFix => "M7 12h10",
        Severity::Check => "M12 9v6M12 17.5v1",
        Severity::GoodToKnow => "M12 6.5v1M12 10.5v7",
    }
}
