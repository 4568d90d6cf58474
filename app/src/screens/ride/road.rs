//! Which road is ridden.

use std::sync::Arc;

use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, RideEdit};
use leverwright_core::ride::kept::RoadChoice;
use leverwright_core::ride::page::road_words;
use leverwright_core::ride::road::RoadKind;
use leverwright_core::ride::track::{Imported, MOST_BYTES, TrackError, TrackReader};
use wasm_bindgen_futures::JsFuture;
use web_sys::File;

use crate::erase::{text, view_of};
use crate::slices::in_slices;
use crate::widgets::Select;
use crate::workspace::Workspace;

/// Parts of a file that are read in the first slice.
const FIRST: usize = 5_000;

/// A road of our own, or a recorded one.
#[component]
pub fn ChooseRoad() -> impl IntoView {
    let workspace = Workspace::here();
    let road = text(move || {
        let plan = workspace.plan.get();
        plan.map_or_else(String::new, |plan| road_words(&plan.rides.road()))
    });
    let choices = Signal::derive(move || {
        let mut roads: Vec<(RoadChoice, String)> = Vec::new();
        for kind in RoadKind::ALL {
            roads.push((RoadChoice::BuiltIn(*kind), kind.words().to_owned()));
        }
        let imported = workspace
            .plan
            .with(|plan| plan.as_ref()?.rides.imported.clone());
        roads.extend(imported.map(|road| (RoadChoice::Imported, road.name.to_string())));
        roads
    });
    let chosen = Signal::derive(move || Some(workspace.plan.get()?.rides.choice));
    let set = move |choice| {
        workspace.commit(Edit::Ride(RideEdit::Road(choice)));
    };
    let has_import = Memo::new(move |_| {
        workspace.plan.with(|plan| {
            plan.as_ref()
                .is_some_and(|plan| plan.rides.imported.is_some())
        })
    });
    view! {
        <section aria-labelledby="ride-road">
            <h2 id="ride-road">"Road"</h2>
            <Select label="Road to ride" choices chosen set/>
            <p class="road-words">{road}</p>
            <ImportRoad/>
            {view_of(move || has_import.get().then(|| view! {
                <button type="button" on:click=move |_| {
                    workspace.commit(Edit::Ride(RideEdit::RemoveImported));
                }>"Remove the imported road"</button>
            }))}
        </section>
    }
}

#[component]
fn ImportRoad() -> impl IntoView {
    let workspace = Workspace::here();
    let field = NodeRef::<html::Input>::new();
    let reader = Reading::new();
    let (reading, notes) = (reader.part, reader.notes);
    let ask = move |_| {
        if let Some(field) = field.get_untracked() {
            field.click();
        }
    };
    let progress = move || {
        let part = reading.get()?;
        Some(format!("Reading the file: {:.0} %", part * 100.0))
    };
    view! {
        <div class="import-road">
            <button type="button" on:click=ask>"Import a GPX file"</button>
            <input type="file" hidden accept=".gpx" node_ref=field
                on:change:target=move |event| {
                    let file = event.target().files().and_then(|files| files.get(0));
                    if let Some(file) = file {
                        notes.set(Vec::new());
                        reader.read(workspace, file);
                    }
                    event.target().set_value("");
                }/>
            <p class="quiet">
                "Only distances, heights and how tight bends are get kept. Places, times and the \
                file's name are dropped while it is read."
            </p>
            <p class="import-progress">{progress}</p>
            {view_of(move || notes.get().into_iter()
                .map(|note| view! { <p class="import-note">{note}</p> })
                .collect_view())}
        </div>
    }
}

/// How far a file is read.
#[derive(Clone, Copy)]
struct Reading {
    part: RwSignal<Option<f64>>,
    notes: RwSignal<Vec<String>>,
    /// What is read; gone with the screen.
    reader: StoredValue<Option<TrackReader>>,
}

impl Reading {
    fn new() -> Reading {
        Reading {
            part: RwSignal::new(None),
            notes: RwSignal::new(Vec::new()),
            reader: StoredValue::new(None),
        }
    }

    /// Reads a file in slices. What is refused is said and changes nothing.
    fn read(self, workspace: Workspace, file: File) {
        if file.size() > MOST_BYTES as f64 {
            return workspace.refuse(&TrackError::TooLarge.to_string());
        }
        self.part.set(Some(0.0));
        leptos::task::spawn_local(async move {
            let bytes = JsFuture::from(file.array_buffer()).await;
            // Whoever left the screen wants no other road later.
            if self.reader.try_with_value(|_| ()).is_none() {
                return;
            }
            let Ok(bytes) = bytes else {
                self.part.set(None);
                return workspace.refuse("The browser could not read the file. Choose it again.");
            };
            match TrackReader::new(js_sys::Uint8Array::new(&bytes).to_vec()) {
                Ok(reader) => {
                    self.reader.set_value(Some(reader));
                    in_slices(FIRST, move |parts| self.go_on(workspace, parts));
                }
                Err(error) => self.refuse(workspace, error),
            }
        });
    }

    /// Reads on; whether there is nothing more to do.
    fn go_on(self, workspace: Workspace, parts: usize) -> bool {
        let Some(mut reader) = self.reader.try_update_value(Option::take).flatten() else {
            return true;
        };
        match reader.advance(parts) {
            Ok(false) => {
                self.part.set(Some(reader.progress()));
                self.reader.set_value(Some(reader));
                return false;
            }
            Ok(true) => match reader.finish("") {
                Ok(imported) => self.take(workspace, imported),
                Err(error) => self.refuse(workspace, error),
            },
            Err(error) => self.refuse(workspace, error),
        }
        true
    }

    fn take(self, workspace: Workspace, imported: Imported) {
        self.part.set(None);
        let words = road_words(&imported.road);
        let road = Arc::new(imported.road);
        if workspace.commit(Edit::Ride(RideEdit::Import(road))) {
            self.notes.set(imported.notes);
            workspace.say(format!("Imported. {words}"));
        }
    }

    fn refuse(self, workspace: Workspace, error: TrackError) {
        self.part.set(None);
        workspace.refuse(&error.to_string());
    }
}
