//! A table that keeps its meaning where its rows are laid out one cell under
//! the other: in large print and on small screens.

use leptos::prelude::*;

/// A column.
#[derive(Debug, Clone)]
pub struct Column {
    /// Its head; where rows are stacked it stands before each cell.
    pub head: String,
    /// Its kind, for width and stacking.
    pub kind: &'static str,
}

impl Column {
    fn class(&self) -> String {
        format!("col-{}", self.kind)
    }
}

/// A column of a kind.
pub fn column(head: impl Into<String>, kind: &'static str) -> Column {
    Column {
        head: head.into(),
        kind,
    }
}

/// One cell; `None` has nothing to say.
pub type Cell = Option<AnyView>;

/// A cell with text; empty text is an empty cell.
pub fn text(text: impl Into<String>) -> Cell {
    let text = text.into();
    (!text.is_empty()).then(|| text.into_any())
}

/// A cell with a view.
pub fn cell(view: impl IntoAny) -> Cell {
    Some(view.into_any())
}

/// A table. The cells of the column of kind `name` head their rows. Roles are
/// written out because laying rows out as blocks takes them away in some
/// browsers.
#[component]
pub fn Table(
    /// What screen readers call it.
    #[prop(into)]
    label: String,
    columns: Vec<Column>,
    rows: Vec<Vec<Cell>>,
) -> impl IntoView {
    let heads = columns
        .iter()
        .map(|c| {
            let head = c.head.clone();
            view! { <th role="columnheader" scope="col" class=c.class()>{head}</th> }
        })
        .collect_view();
    let rows = rows
        .into_iter()
        .map(|cells| {
            let cells = columns.iter().zip(cells).map(table_cell).collect_view();
            view! { <tr role="row">{cells}</tr> }
        })
        .collect_view();
    view! {
        <table role="table" aria-label=label>
            <thead role="rowgroup"><tr role="row">{heads}</tr></thead>
            <tbody role="rowgroup">{rows}</tbody>
        </table>
    }
}

fn table_cell((column, content): (&Column, Cell)) -> AnyView {
    let (head, class) = (column.head.clone(), column.class());
    if column.kind == "name" {
        return view! { <th role="rowheader" scope="row" class=class>{content}</th> }.into_any();
    }
    let none = if content.is_none() { " none" } else { "" };
    view! { <td role="cell" class=format!("{class}{none}") data-head=head>{content}</td> }
        .into_any()
}
