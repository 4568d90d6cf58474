//! One function for each tag of HTML that the app uses.

use super::Element;

pub use leptos::html::*;

macro_rules! elements {
    ($($function:ident $tag:ident)*) => {
        $(
            #[doc = concat!("The element `", stringify!($function), "`.")]
            pub fn $function() -> Element<leptos::html::$tag> {
                Element::new()
            }
        )*
    };
}

elements! {
    a A
    article Article
    aside Aside
    blockquote Blockquote
    br Br
    button Button
    caption Caption
    code Code
    dd Dd
    details Details
    dialog Dialog
    div Div
    dl Dl
    dt Dt
    em Em
    fieldset Fieldset
    figcaption Figcaption
    figure Figure
    footer Footer
    form Form
    h1 H1
    h2 H2
    h3 H3
    h4 H4
    header Header
    img Img
    input Input
    kbd Kbd
    label Label
    legend Legend
    li Li
    main Main
    nav Nav
    ol Ol
    option Option_
    p P
    section Section
    select Select
    small Small
    span Span
    strong Strong
    summary Summary
    table Table
    tbody Tbody
    td Td
    textarea Textarea
    tfoot Tfoot
    th Th
    thead Thead
    tr Tr
    ul Ul
}
