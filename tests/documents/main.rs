//! Checks of the document format from outside.
#[test]
fn show() {
    use leverwright_core::{
        catalogue::{TemplateId, template},
        document,
    };
    let plan = template(TemplateId::Tricycle).plan("x");
    println!("{}", document::write(&plan));
    println!("{}", document::schema());
    assert_eq!(document::read(document::write(&plan)).unwrap().plan, plan);
}
