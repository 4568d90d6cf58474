//! Fill patterns, named in the page by the picture that holds them.

use leptos::prelude::*;

/// Hatching that tells reach without colour: lines for a stretch, dots for a move, squares for a
/// cross-over. What is reached naturally is filled. Elements refer to them by `fill`.
#[component]
pub fn Patterns(
    /// Makes the names of this picture's patterns its own.
    prefix: String,
) -> impl IntoView {
    let named = |name: &str| format!("{prefix}-{name}");
    view! {
        <defs>
            <pattern id=named("stretch") width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <path class="hatch" d="M0 3H6"></path>
            </pattern>
            <pattern id=named("move") width="6" height="6" patternUnits="userSpaceOnUse">
                <circle class="hatch-dot" cx="3" cy="3" r="1.3"></circle>
            </pattern>
            <pattern id=named("cross-over") width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <path class="hatch" d="M0 4H8M4 0V8"></path>
            </pattern>
        </defs>
    }
}
