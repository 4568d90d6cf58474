//! Opening a file: by a button, or dropped on the screen.

use leptos::ev::DragEvent;
use leptos::html;
use leptos::prelude::*;
use web_sys::FileList;

use crate::arrivals::Arrivals;
use crate::route::Route;
use crate::storage::Library;

/// Opens each file as a plan of its own and goes on to its layout, or to the
/// choice of what becomes of a copy.
fn import_all(library: Library, arrivals: Arrivals, files: Option<FileList>) {
    let Some(files) = files else { return };
    (0..files.length())
        .filter_map(|at| files.get(at))
        .for_each(|file| {
            library.import(file, arrivals, || Route::Layout.go(), || Route::Open.go());
        });
}

/// A button that asks the browser for a file.
#[component]
pub fn OpenFile() -> impl IntoView {
    let (library, arrivals) = (Library::here(), Arrivals::here());
    let field = NodeRef::<html::Input>::new();
    let ask = move |_| {
        if let Some(field) = field.get_untracked() {
            field.click();
        }
    };
    view! {
        <div class="open-file">
            <button type="button" on:click=ask>"Open a file"</button>
            <input type="file" hidden multiple accept=".json,application/json" node_ref=field
                on:change:target=move |event| {
                    import_all(library, arrivals, event.target().files());
                    // So that the same file can be chosen again.
                    event.target().set_value("");
                }/>
            <p class="quiet">"Or drop one here. "<a href=Route::Open.href()>"Open a link"</a></p>
        </div>
    }
}

/// Takes files that are dropped on what it holds.
#[component]
pub fn DropZone(children: Children) -> impl IntoView {
    let (library, arrivals) = (Library::here(), Arrivals::here());
    let over = RwSignal::new(false);
    let drop = move |event: DragEvent| {
        event.prevent_default();
        over.set(false);
        import_all(
            library,
            arrivals,
            event.data_transfer().and_then(|data| data.files()),
        );
    };
    view! {
        <div class="plans" class:file-over=move || over.get()
            on:dragover=move |event| {
                event.prevent_default();
                over.set(true);
            }
            on:dragleave=move |_| over.set(false)
            on:drop=drop>
            {children()}
        </div>
    }
}
