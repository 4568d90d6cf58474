//! The five steps of difficulty against the ICF generic qualifier (WHO 2001,
//! seen): xxx.0 NO problem 0-4 %, xxx.1 MILD 5-24 %, xxx.2 MODERATE 25-49 %,
//! xxx.3 SEVERE 50-95 %, xxx.4 COMPLETE 96-100 %, xxx.8 not specified, xxx.9 not
//! applicable.

use leverwright_core::Vocabulary;
use leverwright_core::rider::{Answer, Difficulty, Hand, QUESTIONS, Question, QuestionId, Rider};

/// Qualifier, its word, its band in percent.
const QUALIFIER: [(u8, &str, [u8; 2]); 5] = [
    (0, "NO", [0, 4]),
    (1, "MILD", [5, 24]),
    (2, "MODERATE", [25, 49]),
    (3, "SEVERE", [50, 95]),
    (4, "COMPLETE", [96, 100]),
];

/// Codes listed as open in the ICF (WHO 2001, seen; b735 and b765 from memory),
/// as far as hands on a bike are concerned, with the words of their titles.
const OPEN_CODES: &[(&str, &str)] = &[
    ("d445", "hand and arm use"),
    ("d4401", "grasping"),
    ("d4402", "manipulating"),
    ("d4403", "releasing"),
    ("d4450", "pulling"),
    ("d4451", "pushing"),
    ("d4452", "reaching"),
    ("d4750", "driving human-powered transportation"),
    ("b735", "muscle tone"),
    ("b740", "muscle endurance"),
    ("b760", "control of voluntary movement"),
    ("b765", "involuntary movement"),
    ("b265", "touch"),
    ("b28014", "pain in upper limb"),
];

#[test]
fn steps_are_as_many_and_in_the_same_order() {
    assert_eq!(Difficulty::ALL.len(), QUALIFIER.len());
    for (step, (number, word, _)) in Difficulty::ALL.iter().zip(QUALIFIER) {
        assert_eq!(step.number(), number);
        assert_eq!(Difficulty::from_number(number), Some(*step));
        let code = step.code().to_uppercase();
        assert_eq!(if code == "NONE" { "NO" } else { &code }, word);
    }
    assert!(Difficulty::ALL.is_sorted(), "harder is greater");
}

/// A step is harder than another just where its band in percent lies above.
#[test]
fn steps_rank_as_their_bands_do() {
    for (a, (_, _, [from, to])) in Difficulty::ALL.iter().zip(QUALIFIER) {
        for (b, (_, _, [other_from, other_to])) in Difficulty::ALL.iter().zip(QUALIFIER) {
            assert_eq!(a < b, to < other_from, "{a} and {b}");
            assert_eq!(a > b, from > other_to, "{a} and {b}");
        }
    }
}

/// 8 *not specified* and 9 *not applicable* are no steps: not asked is kept
/// apart and is not "no difficulty".
#[test]
fn not_specified_is_no_step() {
    for number in 5..=9 {
        assert_eq!(Difficulty::from_number(number), None);
    }
    let not_asked: Answer<Difficulty> = Answer::NOT_ASKED;
    assert_ne!(not_asked, Answer::of(Difficulty::None));
    let rider = Rider::default();
    assert_eq!(rider.open_questions().len(), QUESTIONS.len());
    assert_ne!(Hand::default(), Hand::does_all(None));
}

/// Steps are ranks and no ratings: no percentages where people read them.
#[test]
fn people_read_no_percentages() {
    for step in Difficulty::ALL {
        let words = step.words();
        let is_number = |c: char| c == '%' || c.is_ascii_digit();
        assert!(!words.contains(is_number), "{words}");
    }
}

#[test]
fn questions_refer_to_open_codes() {
    for question in QUESTIONS {
        assert!(!question.icf.is_empty(), "{}", question.id);
        for icf in question.icf {
            assert!(OPEN_CODES.contains(&(icf.code, icf.name)), "{icf}");
        }
    }
    // What happens by itself is no control of voluntary movement.
    let by_itself = Question::named(QuestionId::OnItsOwn).expect("it is asked");
    let words = by_itself.icf_words();
    assert!(
        words.contains("b735 muscle tone") && words.contains("b765"),
        "{words}"
    );
    assert!(!words.contains("b760"), "{words}");
}
