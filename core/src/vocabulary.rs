//! Closed lists of words: each has a code for files and words for people.

/// A closed list of choices, each with a stable code and plain words.
pub trait Vocabulary: Copy + Eq + Ord + 'static {
    /// What the list is about, for error messages: "side", "hand position".
    const NAME: &'static str;
    /// Every choice, in the order in which people read them.
    const ALL: &'static [Self];
    /// The stable code used in files: lower case, words joined by hyphens.
    fn code(self) -> &'static str;
    /// The words people read, in lower case, without a full stop.
    fn words(self) -> &'static str;
    /// The choice with this code, if there is one.
    fn from_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|item| item.code() == code)
    }
}

/// Defines an enum together with its [`Vocabulary`].
macro_rules! vocabulary {
    (
        $(#[$meta:meta])*
        pub enum $name:ident as $title:literal {
            $( $(#[$item_meta:meta])* $item:ident = $code:literal, $words:literal; )+
        }
    ) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name {
            $( $(#[$item_meta])* $item, )+
        }

        impl $crate::vocabulary::Vocabulary for $name {
            const NAME: &'static str = $title;
            const ALL: &'static [Self] = &[$( Self::$item, )+];
            fn code(self) -> &'static str {
                match self { $( Self::$item => $code, )+ }
            }
            fn words(self) -> &'static str {
                match self { $( Self::$item => $words, )+ }
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.write_str($crate::vocabulary::Vocabulary::words(*self))
            }
        }
    };
}
