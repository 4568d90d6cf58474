//! What the trait of views asks for besides being drawn. This program draws in a browser only, and
//! nothing is added to a view after it was made.

macro_rules! drawn_in_a_browser {
    ($view:ty, $state:ty) => {
        impl leptos::prelude::AddAnyAttr for $view {
            type Output<A: leptos::tachys::html::attribute::Attribute> = $view;

            fn add_any_attr<A>(self, _: A) -> Self::Output<A>
            where
                A: leptos::tachys::html::attribute::Attribute,
            {
                self
            }
        }

        impl leptos::prelude::RenderHtml for $view {
            type AsyncOutput = Self;
            type Owned = Self;

            const MIN_LENGTH: usize = 0;

            fn dry_resolve(&mut self) {}

            async fn resolve(self) -> Self {
                self
            }

            fn to_html_with_buf(
                self,
                _: &mut String,
                _: &mut leptos::tachys::view::Position,
                _: bool,
                _: bool,
                _: Vec<leptos::tachys::html::attribute::any_attribute::AnyAttribute>,
            ) {
                unreachable!("there is no server")
            }

            fn hydrate<const FROM_SERVER: bool>(
                self,
                _: &leptos::tachys::hydration::Cursor,
                _: &leptos::tachys::view::PositionState,
            ) -> $state {
                unreachable!("there is no server")
            }

            fn into_owned(self) -> Self {
                self
            }
        }
    };
}

pub(crate) use drawn_in_a_browser;
