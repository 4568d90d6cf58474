//! Values that views follow, all of them kept as one type.
//!
//! They are used as their namesakes in Leptos are, which they wrap. What they
//! hold is behind a pointer, so that the graph of what follows from what is
//! compiled once, not for every type that it carries.

use std::any::Any;
use std::marker::PhantomData;
use std::sync::Arc;

use leptos::prelude::{Get, GetUntracked, Read, ReadUntracked, StoredValue, Track, Write};
use leptos::prelude::{GetValue, UntrackableGuard};
use leptos::reactive::signal::RwSignal as Cell;

/// What can be kept.
pub trait Kept: Send + Sync + 'static {}

impl<T: Send + Sync + 'static> Kept for T {}

/// A value of a type that is known to who put it there.
#[derive(Clone)]
struct Held(Arc<dyn Any + Send + Sync>);

impl Held {
    fn of<T: Kept>(&self) -> &T {
        self.0.downcast_ref().expect("it is what was put there")
    }
}

/// Methods to read what `held` and `held_untracked` give.
macro_rules! reading {
    ($signal:ident) => {
        impl<T> Clone for $signal<T> {
            fn clone(&self) -> Self {
                *self
            }
        }

        impl<T> Copy for $signal<T> {}

        impl<T: Kept> $signal<T> {
            /// Reads it, and follows it.
            pub fn with<U>(&self, read: impl FnOnce(&T) -> U) -> U {
                read(self.held().of())
            }

            /// Reads it as it stands.
            pub fn with_untracked<U>(&self, read: impl FnOnce(&T) -> U) -> U {
                read(self.held_untracked().of())
            }

            /// A copy of it, which is followed.
            pub fn get(&self) -> T
            where
                T: Clone,
            {
                self.held().of::<T>().clone()
            }

            /// A copy of it as it stands.
            pub fn get_untracked(&self) -> T
            where
                T: Clone,
            {
                self.held_untracked().of::<T>().clone()
            }
        }
    };
}

/// Worked out once for each change of what it reads, and passed on only when it
/// comes out different.
pub struct Memo<T> {
    memo: leptos::reactive::computed::Memo<Compared>,
    holds: PhantomData<fn() -> T>,
}

/// A value with the way to tell it from another one.
#[derive(Clone)]
struct Compared {
    held: Held,
    equals: fn(&Held, &Held) -> bool,
}

impl PartialEq for Compared {
    fn eq(&self, other: &Self) -> bool {
        (self.equals)(&self.held, &other.held)
    }
}

impl<T: Kept + PartialEq> Memo<T> {
    /// A memo of what a closure works out, given what it worked out before.
    pub fn new(work: impl Fn(Option<&T>) -> T + Send + Sync + 'static) -> Self {
        let work = move |old: Option<&Compared>| Compared {
            held: Held(Arc::new(work(old.map(|old| old.held.of())))),
            equals: |a, b| a.of::<T>() == b.of::<T>(),
        };
        Memo {
            memo: memo(Box::new(work)),
            holds: PhantomData,
        }
    }
}

type Work = Box<dyn Fn(Option<&Compared>) -> Compared + Send + Sync>;

/// All memos are this one.
fn memo(work: Work) -> leptos::reactive::computed::Memo<Compared> {
    leptos::reactive::computed::Memo::new(work)
}

impl<T: Kept> Memo<T> {
    fn held(&self) -> Held {
        self.memo.get().held
    }

    fn held_untracked(&self) -> Held {
        self.memo.get_untracked().held
    }

    /// Follows it without reading it.
    pub fn track(&self) {
        self.memo.track();
    }
}

reading!(Memo);

/// A value that can be set.
pub struct RwSignal<T> {
    cell: Cell<Box<dyn Any + Send + Sync>>,
    holds: PhantomData<fn() -> T>,
}

impl<T> Clone for RwSignal<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for RwSignal<T> {}

impl<T: Kept> RwSignal<T> {
    /// A signal that starts with a value.
    pub fn new(value: T) -> Self {
        RwSignal {
            cell: cell(Box::new(value)),
            holds: PhantomData,
        }
    }

    /// Reads it, and follows it.
    pub fn with<U>(&self, read: impl FnOnce(&T) -> U) -> U {
        read(known(&**self.cell.read()))
    }

    /// Reads it as it stands.
    pub fn with_untracked<U>(&self, read: impl FnOnce(&T) -> U) -> U {
        read(known(&**self.cell.read_untracked()))
    }

    /// A copy of it, which is followed.
    pub fn get(&self) -> T
    where
        T: Clone,
    {
        self.with(T::clone)
    }

    /// A copy of it as it stands.
    pub fn get_untracked(&self) -> T
    where
        T: Clone,
    {
        self.with_untracked(T::clone)
    }

    /// Whether it went with the view that made it.
    pub fn is_disposed(&self) -> bool {
        leptos::prelude::IsDisposed::is_disposed(&self.cell)
    }

    /// Puts another value in its place.
    pub fn set(&self, value: T) {
        set(self.cell, Box::new(value));
    }

    /// Changes it.
    pub fn update(&self, change: impl FnOnce(&mut T)) {
        self.maybe_update(|value| {
            change(value);
            true
        });
    }

    /// Changes it; tells who follows it if the change says so.
    pub fn maybe_update(&self, change: impl FnOnce(&mut T) -> bool) {
        let mut guard = self.cell.write();
        let value = guard.downcast_mut().expect("it is what was put there");
        if !change(value) {
            guard.untrack();
        }
    }
}

fn known<T: Kept>(value: &(dyn Any + Send + Sync)) -> &T {
    value.downcast_ref().expect("it is what was put there")
}

/// All signals are this one.
fn cell(value: Box<dyn Any + Send + Sync>) -> Cell<Box<dyn Any + Send + Sync>> {
    Cell::new(value)
}

fn set(cell: Cell<Box<dyn Any + Send + Sync>>, value: Box<dyn Any + Send + Sync>) {
    leptos::prelude::Set::set(&cell, value);
}

/// Anything that can be followed.
pub struct Signal<T> {
    read: StoredValue<Arc<dyn Fn() -> Held + Send + Sync>>,
    holds: PhantomData<fn() -> T>,
}

impl<T: Kept> Signal<T> {
    fn new(read: Arc<dyn Fn() -> Held + Send + Sync>) -> Self {
        Signal {
            read: store(read),
            holds: PhantomData,
        }
    }

    /// Worked out anew each time it is read.
    pub fn derive(work: impl Fn() -> T + Send + Sync + 'static) -> Self {
        Signal::new(Arc::new(move || Held(Arc::new(work()))))
    }

    /// Always the same.
    pub fn stored(value: T) -> Self {
        let held = Held(Arc::new(value));
        Signal::new(Arc::new(move || held.clone()))
    }

    fn held(&self) -> Held {
        held(self.read)
    }

    fn held_untracked(&self) -> Held {
        leptos::prelude::untrack(|| held(self.read))
    }
}

reading!(Signal);

fn store(
    read: Arc<dyn Fn() -> Held + Send + Sync>,
) -> StoredValue<Arc<dyn Fn() -> Held + Send + Sync>> {
    StoredValue::new(read)
}

fn held(read: StoredValue<Arc<dyn Fn() -> Held + Send + Sync>>) -> Held {
    (read.get_value())()
}

impl<T: Kept> From<Memo<T>> for Signal<T> {
    fn from(memo: Memo<T>) -> Self {
        let memo = memo.memo;
        Signal::new(Arc::new(move || memo.get().held))
    }
}

impl<T: Kept + Clone> From<RwSignal<T>> for Signal<T> {
    fn from(signal: RwSignal<T>) -> Self {
        Signal::derive(move || signal.get())
    }
}

impl<T: Kept> From<T> for Signal<T> {
    fn from(value: T) -> Self {
        Signal::stored(value)
    }
}

impl From<&str> for Signal<String> {
    fn from(value: &str) -> Self {
        Signal::stored(value.to_owned())
    }
}

impl<T: Kept + Default> Default for Signal<T> {
    fn default() -> Self {
        Signal::stored(T::default())
    }
}
