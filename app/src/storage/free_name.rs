//! Names that tell plans apart.

/// The name that is wanted, with the first number behind it that makes it
/// unlike all others.
pub fn free_name(wanted: &str, taken: &[String]) -> String {
    let is_free = |name: &String| !taken.contains(name);
    let numbered = (2..).map(|number| format!("{wanted} {number}"));
    std::iter::once(wanted.to_owned())
        .chain(numbered)
        .find(is_free)
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::free_name;

    #[test]
    fn a_taken_name_gets_the_first_free_number() {
        let taken = ["Flat bar".to_owned(), "Flat bar 2".to_owned()];
        assert_eq!(free_name("Gravel", &taken), "Gravel");
        assert_eq!(free_name("Flat bar", &taken), "Flat bar 3");
        assert_eq!(free_name("Flat bar", &taken[1..]), "Flat bar");
    }
}
